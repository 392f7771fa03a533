"""Warming a whole part with a heating flame: how long, how much gas, or never."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.answer.sentences import degrees, duration
from calc.ask.errors import InputError
from calc.declare import Answer, Caution, Choice, Field, Figure, Shown, Step, Table, calculator, worked
from calc.declare.inputs import FREE_GAS, FREE_GAS_FLOW, LENGTH, MASS, TEMPERATURE
from calc.formulas.heat.flame_power import (
    HEATING_EFFICIENCY,
    HEATING_EFFICIENCY_BAND,
    power_into_work,
)
from calc.formulas.heat.lumped import (
    LARGEST_BIOT,
    biot_number,
    gas_for_heat,
    radiation_coefficient,
    soak_time,
    surface_loss,
    warm_up_heat,
    warm_up_time,
)
from calc.formulas.heat.steel_properties import steel_heat_capacity
from calc.trade.fields import FUEL, start_temperature
from calc.trade.flame.heat import printed_heat
from calc.trade.heat.losses import AIR, EMISSIVITY, WRAPPED_SHARE
from calc.trade.heat.metals import METALS, metal_of

COVERS = {"bare": "Bare, in still air", "wrapped": "Wrapped, but for where the flame plays"}
WEAK, STRONG = (end / HEATING_EFFICIENCY for end in HEATING_EFFICIENCY_BAND)
BAND = "The band is a share of 0.2 to 0.4 of the flame's heat in place of 0.3, common practice."
SUM = "definition heat balance"


@dataclass(frozen=True, slots=True, kw_only=True)
class WarmUp:
    """Time and gas to bring a part to a temperature."""

    verdict: Annotated[Figure, Shown("Does it get there", words=True)]
    time: Annotated[Figure, Shown("Flame on the part for", ("min",), toward="up", digits=2)]
    soak: Annotated[Figure, Shown("Then wait before you measure", ("min",), toward="up", digits=2)]
    fuel_used: Annotated[Figure, Shown("Fuel gas", FREE_GAS, free_gas=True, toward="up", digits=2)]
    gas_without_losses: Annotated[
        Figure,
        Shown("Of it for the metal alone", FREE_GAS, free_gas=True, group="Deeper figures", folded=True),
    ]
    heat: Annotated[
        Figure, Shown("Heat the metal takes up", ("Btu", "MJ"), group="Deeper figures", folded=True)
    ]
    loss: Annotated[
        Figure,
        Shown("Lost to the air when hot", ("Btu/h", "W"), digits=2, group="Deeper figures", folded=True),
    ]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Part:
    """A part and what it loses heat by."""

    mass: float
    area: float
    air: float
    emissivity: float
    start: float
    target: float
    heat_capacity: Callable[[float], float]

    def time(self, power: float) -> float | None:
        return warm_up_time(
            power=power, mass=self.mass, area=self.area, heat_transfer=self.air, emissivity=self.emissivity, start=self.start, target=self.target,
            surroundings=self.start, heat_capacity=self.heat_capacity,
        )  # fmt: skip

    def hottest(self, power: float, limit: float) -> float:
        """Where the loss takes all the heat, K, or the limit."""
        low, high = self.start, limit
        for _ in range(40):
            middle = 0.5 * (low + high)
            lost = surface_loss(self.area, self.air, self.emissivity, middle, self.start)
            low, high = (middle, high) if lost < power else (low, middle)
        return low


def _constant(heat_capacity: float, _temperature: float) -> float:
    return heat_capacity


def _capacity(metal: str) -> Callable[[float], float]:
    if metal == "low-carbon-steel":
        return steel_heat_capacity
    return partial(_constant, metal_of(metal).heat_capacity)


@calculator("warm-up", "Warm a part with a flame")
def warm_up(
    *,
    metal: Annotated[str, Choice("Metal", METALS, example="cast-iron")],
    mass: Annotated[
        float,
        Field(
            "Weight of the part",
            MASS,
            example={"us": "110 lb", "iso": "50 kg", "uk": "50 kg"},
            low="0.002 kg",
            high="2000 kg",
        ),
    ],
    thickness: Annotated[
        float,
        Field(
            "Thickness where it is thickest",
            LENGTH,
            low="0.4 mm",
            high="200 mm",
            sheet_gauge=True,
            example={"us": "1 in", "iso": "25 mm", "uk": "25 mm"},
        ),
    ],
    target: Annotated[
        float,
        Field(
            "Bring it to",
            TEMPERATURE,
            low="70 degF",
            high="1500 degF",
            example={"us": "300 degF", "iso": "150 degC", "uk": "150 degC"},
        ),
    ],
    flow: Annotated[
        float,
        Field(
            "Fuel gas the torch takes",
            FREE_GAS_FLOW,
            low="20 L/h",
            high="20000 L/h",
            free_gas=True,
            example={"us": "35 cfh", "iso": "1000 L/h", "uk": "1000 L/h"},
        ),
    ],
    fuel: Annotated[str, FUEL],
    cover: Annotated[str, Choice("The part lies", COVERS, assumed="bare")],
    efficiency: Annotated[
        float,
        Field(
            "Share of the flame's heat that enters the part", ("%",), assumed="30 %", low="5 %", high="60 %"
        ),
    ],
    start_temperature: Annotated[float, start_temperature("It starts at", high="1000 degF")],
    area: Annotated[
        float | None,
        Field(
            "Its whole surface",
            ("ft^2", "m^2", "in^2"),
            low="1 in^2",
            high="500 ft^2",
            optional=True,
            hint="Empty: that of a plate of this weight and thickness.",
        ),
    ],
    rules: str,
) -> Answer[WarmUp]:
    """Time and gas to bring a whole part to a temperature, with what it loses meanwhile.

    Where the part loses heat faster than the flame gives it, the answer is “never”.
    """  # fmt: skip
    kind = metal_of(metal)
    if target <= start_temperature:
        raise InputError(
            "target", "Bring it to", "the part is that warm already; give more than it starts at."
        )
    if target >= kind.solidus - 50.0:
        raise InputError(
            "target",
            "Bring it to",
            f"{METALS[metal].lower()} begins to melt at {degrees(kind.solidus, rules)}; stay well below.",
        )
    steps: list[Step] = []
    value = printed_heat(fuel)
    power = worked(
        steps,
        "Heat that enters the part",
        power_into_work,
        flow=flow,
        heat_value=value,
        efficiency=efficiency,
    )
    heat = worked(
        steps, "Heat the metal takes up", warm_up_heat,
        mass=mass, heat_capacity=_mean_capacity(metal, start_temperature, target), rise=target - start_temperature,
    )  # fmt: skip
    bare_gas = worked(
        steps, "Gas for that heat alone", gas_for_heat, heat=heat, efficiency=efficiency, heat_value=value
    )
    wait = worked(steps, "Soak", soak_time, thickness=thickness)
    let_through = 1.0 if cover == "bare" else WRAPPED_SHARE
    surface = 2.0 * mass / (kind.density * thickness) if area is None else area
    part = _Part(
        mass=mass,
        area=surface,
        air=AIR * let_through,
        emissivity=EMISSIVITY * let_through,
        start=start_temperature,
        target=target,
        heat_capacity=_capacity(metal),
    )
    lost = surface_loss(part.area, part.air, part.emissivity, target, start_temperature)
    weak, middle, strong = (part.time(power * end) for end in (WEAK, 1.0, STRONG))
    return Answer(
        WarmUp(
            verdict=Figure(
                None, SUM, "computed", words=_verdict(part=part, power=power, weak=weak, middle=middle, strong=strong, rules=rules),
                basis="Heat in against heat lost by air and by glow, the part at one temperature throughout.",
            ),
            time=_time(weak, middle, strong),
            soak=Figure(
                wait, "en-iso-13916", "memory", basis="Two minutes for each 25 mm (1 in), flame away, so that the heat evens out."
            ),
            fuel_used=_gas(flow, weak, middle, strong),
            gas_without_losses=Figure(
                bare_gas, SUM, "computed", low=bare_gas / STRONG, high=bare_gas / WEAK,
                basis=f"Weight, heat capacity and rise over the share and the gross heat of the gas. {BAND}",
            ),
            heat=Figure(heat, SUM, "computed", basis="Weight times heat capacity times rise, nothing lost."),
            loss=Figure(lost, "carslaw-1959 1.9", "computed", basis="At the temperature wanted: still air and radiation."),
        ),
        cautions=_cautions(fuel, part, thickness, kind.conductivity, metal),
        steps=tuple(steps),
        beside=lambda: ((_on_the_way(part, power, rules),), ()),
    )  # fmt: skip


def _mean_capacity(metal: str, start: float, target: float) -> float:
    capacity = _capacity(metal)
    count = 200
    width = (target - start) / count
    return sum(capacity(start + (n + 0.5) * width) for n in range(count)) / count


def _verdict(
    *, part: _Part, power: float, weak: float | None, middle: float | None, strong: float | None, rules: str
) -> str:
    if strong is None:
        stays = degrees(part.hottest(power * STRONG, part.target), rules)
        return f"never: the losses win at about {stays}. Take a larger heating tip, or wrap the part"
    if middle is None:
        return "probably never: only the strong end of the band gets there. Take a larger tip, or wrap the part"
    if weak is None:
        return "yes, but at the weak end of the band never: wrap the part, and measure"
    return "yes. Measure the temperature; do not go by the clock"


def _time(weak: float | None, middle: float | None, strong: float | None) -> Figure:
    basis = f"Losses counted. {BAND}"
    if middle is None:
        return Figure(None, SUM, "computed", basis=basis, words="never")
    if weak is None:
        return Figure(middle, SUM, "computed", basis=f"{basis} At the weak end it never gets there.")
    return Figure(middle, SUM, "computed", low=strong, high=weak, basis=basis)


def _gas(flow: float, weak: float | None, middle: float | None, strong: float | None) -> Figure:
    time = _time(weak, middle, strong)
    if time.value is None:
        return replace(time, words="no amount")
    low, high = (None if t is None else flow * t for t in (time.low, time.high))
    return Figure(flow * time.value, SUM, "computed", low=low, high=high, basis=f"Flow times time. {BAND}")


def _on_the_way(part: _Part, power: float, rules: str) -> Table:
    rows = []
    for share in (0.25, 0.5, 0.75, 1.0):
        target = part.start + share * (part.target - part.start)
        time = replace(part, target=target).time(power)
        lost = surface_loss(part.area, part.air, part.emissivity, target, part.start)
        rows.append(
            (
                degrees(target, rules),
                "never" if time is None else duration(time),
                f"{100 * lost / power:.0f} %",
            )
        )
    return Table(
        "On the way there",
        ("Part at", "After", "Of the heat lost"),
        tuple(rows),
        "At the middle of the band.",
    )


def _cautions(
    fuel: str, part: _Part, thickness: float, conductivity: float, metal: str
) -> tuple[Caution, ...]:
    found = [
        caution("closed-part"),
        caution("heat-behind"),
        caution("hot-looks-cold"),
    ]
    if fuel == "acetylene":
        found.append(caution("heating-tip-draw"))
    around = part.air + radiation_coefficient(part.emissivity, part.target, part.start)
    if biot_number(around, thickness, conductivity) > LARGEST_BIOT:
        found.append(caution("soak-thick"))
    return gravest_first((*found, *brought({"process": "heating", "metal": metal, "fuel": fuel})))
