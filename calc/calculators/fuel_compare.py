"""The fuel gases side by side, for the same heat into steel."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution
from calc.ask.errors import InputError
from calc.data.tables import table
from calc.declare import Answer, Choice, Field, Figure, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import ENERGY, FREE_GAS, MASS, TEMPERATURE
from calc.formulas.gas.properties import oxygen_ratio
from calc.formulas.heat.flame_power import FLAME_EFFICIENCY, FLAME_EFFICIENCY_BAND
from calc.formulas.heat.lumped import warm_up_heat
from calc.show.drawings.bars import Bar
from calc.show.drawings.bars import drawing as bars
from calc.show.scales import Scale
from calc.trade.fields import FUELS
from calc.trade.flame.fuel_heat import mean_steel_heat_capacity
from calc.trade.flame.fuel_sums import FuelSum, equipment, fuel_sum
from calc.values.numbers import plain_number
from calc.values.units import to_si

HEATS = "nasa-tp-2002-211556 heats of formation"
NO_PRICE = "give the price of this gas and of oxygen"
FUEL_PRICE = "In your money, for 1 lb in the United States, for 1 kg elsewhere."
OXYGEN_PRICE = "In your money, for 100 ft³ in the United States, for 1 m³ elsewhere."


def _price(label: str, hint: str, us: str = "", metric: str = "") -> Field:
    invented = " The example is invented." if us else ""
    example = {"us": us, "iso": metric, "uk": metric} if us else None
    return Field(label, ("",), low="0", high="100000", optional=True, example=example, hint=hint + invented)


@dataclass(frozen=True, slots=True, kw_only=True)
class FuelCompare:
    """One fuel for the heat wanted; the table has all six."""

    heat: Annotated[Figure, Shown("Heat wanted in the steel", ENERGY)]
    temperature: Annotated[Figure, Shown("Flame at the torch's ratio", TEMPERATURE, digits=4)]
    cone_share: Annotated[Figure, Shown("Share of its heat in the inner cone", ("%",), digits=2)]
    fuel_gas: Annotated[Figure, Shown("Fuel gas", FREE_GAS, free_gas=True, toward="up")]
    fuel_weight: Annotated[Figure, Shown("Weight of that gas", MASS, toward="up")]
    oxygen_from_cylinder: Annotated[
        Figure, Shown("Oxygen from the cylinder", FREE_GAS, free_gas=True, toward="up")
    ]
    oxygen_from_air: Annotated[Figure, Shown("Oxygen from the air", FREE_GAS, free_gas=True)]
    cost: Annotated[Figure, Shown("Cost of both, in your money", ("",), toward="up")]
    effect_on_iron: Annotated[Figure, Shown("Its burnt gas on molten iron", words=True)]
    hose: Annotated[Figure, Shown("Hose", words=True)]
    tip: Annotated[Figure, Shown("Tip", words=True)]


def _costs(rules: str) -> tuple[float, float]:
    """Weight and volume that the prices are for, kg and m³."""
    if rules == "us":
        return to_si(1.0, "lb"), to_si(100.0, "ft^3", free_gas=True)
    return 1.0, 1.0


def _tables(sums: list[FuelSum], rules: str) -> tuple[Table, Table]:
    us = rules == "us"
    heat, weight = Scale("degF" if us else "degC", 4), Scale("lb" if us else "kg")
    volume = Scale("ft^3" if us else "L", free_gas=True)
    numbers = tuple(
        (
            FUELS[s.fuel], heat.text(s.temperature), f"{100 * s.cone:.0f}", volume.text(s.gas),
            weight.text(s.weight), volume.text(s.from_cylinder), volume.text(s.from_air),
            "" if s.cost is None else plain_number(s.cost, 3),
        )
        for s in sums
    )  # fmt: skip
    gear = tuple(
        (FUELS[s.fuel], s.effect, equipment(s.fuel, rules).hose, equipment(s.fuel, rules).tip) for s in sums
    )
    return (
        Table(
            "The fuels for the same heat",
            (
                "Fuel", f"Flame {heat.name}", "In the cone %", f"Gas {volume.name}", f"Gas {weight.name}",
                f"Oxygen, cylinder {volume.name}", f"Oxygen, air {volume.name}", "Cost",
            ),
            numbers,
            "The same share of each fuel's heat is taken to enter the steel. In truth a flame with a large hot cone "
            "brings more of it to one spot, and a soft one spreads it. Methylacetylene-propadiene counts as half of each "
            "gas, an invented example.",
        ),
        Table(
            "What each needs, and what it does to steel",
            ("Fuel", "Burnt gas on molten iron", "Hose", "Tip" if us else "Nozzle"),
            gear,
            "By equilibrium at the torch's ratio. Regulator and arrestors must be made for the gas too.",
        ),
    )  # fmt: skip


def _picture(sums: list[FuelSum], rules: str) -> Picture:
    unit = Scale("ft^3" if rules == "us" else "L", free_gas=True)
    most = max(sums, key=lambda s: s.cone)
    return bars(
        "Where each fuel sets its heat free",
        f"{FUELS[most.fuel]} sets free the largest share in its cone, {100 * most.cone:.0f} %; the gas that the same "
        "heat takes stands at the right.",
        ("cone", "envelope"),
        [Bar(FUELS[s.fuel].partition(" (")[0], unit.said(s.gas), (s.cone, 1.0 - s.cone)) for s in sums],
    )


@calculator("fuel-compare", "The fuels for the same heat")
def fuel_compare(
    *,
    fuel: Annotated[str, Choice("Fuel gas", FUELS, example="propane")],
    mass: Annotated[
        float,
        Field(
            "Steel to be heated",
            MASS,
            example={"us": "10 lb", "iso": "5 kg", "uk": "5 kg"},
            low="0.01 lb",
            high="10000 lb",
        ),
    ],
    hot: Annotated[
        float,
        Field(
            "Heat it to",
            TEMPERATURE,
            example={"us": "400 degF", "iso": "200 degC", "uk": "200 degC"},
            low="60 degF",
            high="2190 degF",
        ),
    ],
    cold: Annotated[
        float,
        Field(
            "It starts at",
            TEMPERATURE,
            assumed={"us": "70 degF", "iso": "20 degC", "uk": "20 degC"},
            low="0 degF",
            high="1000 degF",
        ),
    ],
    efficiency: Annotated[
        float | None,
        Field(
            "Share of the heat that enters the steel",
            ("%",),
            low="1 %",
            high="90 %",
            optional=True,
            hint="Empty: 20 %, between 12 and 34 %, the same for every fuel.",
        ),
    ],
    oxygen_price: Annotated[float | None, _price("Price of oxygen", OXYGEN_PRICE, "30", "10")],
    acetylene_price: Annotated[float | None, _price("Price of acetylene", FUEL_PRICE, "15", "30")],
    propane_price: Annotated[float | None, _price("Price of propane", FUEL_PRICE, "1.5", "3")],
    propylene_price: Annotated[float | None, _price("Price of propylene", FUEL_PRICE)],
    methane_price: Annotated[float | None, _price("Price of methane", FUEL_PRICE)],
    hydrogen_price: Annotated[float | None, _price("Price of hydrogen", FUEL_PRICE)],
    mps_price: Annotated[float | None, _price("Price of methylacetylene-propadiene", FUEL_PRICE)],
    rules: str,
) -> Answer[FuelCompare]:
    """Six fuel gases for the same heat into steel: flame, gas, oxygen, cost, hose and tip.

    Losses of the part itself are left out; they are the same for all.
    """  # fmt: skip
    if hot <= cold:
        raise InputError("hot", "Heat it to", "the steel is that hot already; give more than it starts at.")
    steps: list[Step] = []
    share = FLAME_EFFICIENCY if efficiency is None else efficiency
    low, high = FLAME_EFFICIENCY_BAND if efficiency is None else (share, share)
    heat = worked(
        steps, "Heat into the steel", warm_up_heat,
        mass=mass, heat_capacity=mean_steel_heat_capacity(cold, hot), rise=hot - cold,
    )  # fmt: skip
    prices = {
        "oxygen": oxygen_price, "acetylene": acetylene_price, "propane": propane_price,
        "propylene": propylene_price, "methane": methane_price, "hydrogen": hydrogen_price,
        "methylacetylene-propadiene": mps_price,
    }  # fmt: skip
    of_weight, of_volume = _costs(rules)

    def costs(weight: float, oxygen: float, own: float, oxygens: float) -> float:
        return weight / of_weight * own + oxygen / of_volume * oxygens

    sums = [
        fuel_sum(
            steps=steps if each == fuel else [],
            fuel=each,
            heat=heat,
            efficiency=share,
            prices=prices,
            costs=costs,
        )
        for each in FUELS
    ]
    own = next(s for s in sums if s.fuel == fuel)
    torch = next(r for r in table("oxygen-ratios-benchbook-2026") if (r.fuel, r.sense) == (fuel, "torch"))
    gear = equipment(fuel, rules)
    ratio = oxygen_ratio(fuel)

    def banded(value: float, source: str, grade: str, basis: str) -> Figure:
        return Figure(value, source, grade, low=value * share / high, high=value * share / low, basis=basis)

    shared = "The band is the share that enters the steel, 12 to 34 %." if efficiency is None else ""
    return Answer(
        FuelCompare(
            heat=Figure(heat, "en-1993-1-2 3.4.1.2", "memory", basis="With the heat capacity of carbon steel at each temperature."),
            temperature=Figure(
                own.temperature, "nasa-rp-1311", "computed",
                basis=f"Equilibrium at {plain_number(ratio)} of oxygen to 1, no air, no heat lost.",
            ),
            cone_share=Figure(
                own.cone, HEATS, "computed",
                basis="Of the gross heat, with just the oxygen that makes carbon monoxide and hydrogen. A torch on other "
                "fuels than acetylene takes far more oxygen than that, so its real cone gives more.",
            ),
            fuel_gas=banded(own.gas, HEATS, "computed", f"From the gross heat, as print counts it. {shared}".strip()),
            fuel_weight=banded(own.weight, HEATS, "computed", "As an ideal gas."),
            oxygen_from_cylinder=banded(
                own.from_cylinder, torch.source, torch.how_sure,
                f"{plain_number(ratio)} of oxygen to 1; a torch takes {plain_number(torch.low)} to {plain_number(torch.high)}.",
            ),
            oxygen_from_air=banded(own.from_air, "definition", "computed", "What burning it whole takes beyond that."),
            cost=Figure(None, "", "practice", words=NO_PRICE)
            if own.cost is None
            else banded(
                own.cost,
                "",
                "practice",
                "Your prices, gas and oxygen only; rent of cylinders is left out.",
            ),
            effect_on_iron=Figure(
                None, "nasa-rp-1311", "computed", words=own.effect,
                basis="Burnt gas at the torch's ratio, settled at 1538 °C; the borders are from memory.",
            ),
            hose=Figure(None, gear.source, gear.how_sure, words=gear.hose),
            tip=Figure(None, gear.source, gear.how_sure, words=gear.tip),
        ),
        cautions=(
            caution("other-fuel-parts"),
            *brought({"fuel": fuel}),
        ),
        steps=tuple(steps),
        beside=lambda: (_tables(sums, rules), (_picture(sums, rules),)),
    )  # fmt: skip
