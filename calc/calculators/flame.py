"""The flame: how hot, what is in it, what the trade calls it, what it does to iron."""

from dataclasses import dataclass
from typing import Annotated

from calc.ask.errors import InputError
from calc.declare import Answer, Field, Figure, Shown, Step, calculator, worked
from calc.declare.inputs import TEMPERATURE
from calc.formulas.gas.properties import oxygen_ratio as usual_ratio
from calc.formulas.heat.effect_on_iron import effect_on_iron
from calc.formulas.heat.flame import AIR, burnt_gas, least_oxygen_ratio, most_oxygen_ratio
from calc.formulas.heat.fuels import atoms_in, fuel_shares, oxygen_for_cone, oxygen_to_burn
from calc.trade.fields import FUEL
from calc.trade.flame.curve import flame_points, hottest
from calc.trade.flame.sentences import (
    disagreement,
    flame_cautions,
    kind_words,
    look_words,
    pictures,
    printed_temperatures,
    torch_ratio_words,
)
from calc.values.numbers import plain_number

SUM = "nasa-rp-1311"
NO_LOSS = "Equilibrium, and no heat lost: the most the gas can reach. A real flame is cooler."
DEEP = "What the burnt gas holds"
IRON = "Behind the effect on iron"


def _share(label: str) -> Shown:
    return Shown(label, ("%",), step="0.01 %", group=DEEP, folded=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Flame:
    """A flame at one ratio."""

    temperature: Annotated[Figure, Shown("Flame temperature, no heat lost", TEMPERATURE, digits=4)]
    flame_kind: Annotated[Figure, Shown("The trade calls it", words=True)]
    effect_on_iron: Annotated[Figure, Shown("What the burnt gas does to molten iron", words=True)]
    agreement: Annotated[Figure, Shown("Do the two agree", words=True)]
    look: Annotated[Figure, Shown("You see and hear", words=True)]
    torch_ratio: Annotated[Figure, Shown("A torch on this fuel takes", words=True)]
    peak_ratio: Annotated[Figure, Shown("This fuel is hottest at", ("",))]
    peak_temperature: Annotated[Figure, Shown("and then reaches", TEMPERATURE, digits=4)]
    soot: Annotated[Figure, Shown("Soot in the burnt gas", ("%",), step="0.01 %")]
    share_h2: Annotated[Figure, _share("Hydrogen, H2")]
    share_co: Annotated[Figure, _share("Carbon monoxide, CO")]
    share_h2o: Annotated[Figure, _share("Water vapour, H2O")]
    share_co2: Annotated[Figure, _share("Carbon dioxide, CO2")]
    share_h: Annotated[Figure, _share("Hydrogen atoms, H")]
    share_o: Annotated[Figure, _share("Oxygen atoms, O")]
    share_oh: Annotated[Figure, _share("Hydroxyl, OH")]
    share_o2: Annotated[Figure, _share("Oxygen, O2")]
    share_c2h2: Annotated[Figure, _share("Acetylene left, C2H2")]
    share_c2h: Annotated[Figure, _share("Broken acetylene, C2H")]
    share_n2: Annotated[Figure, _share("Nitrogen, N2")]
    share_no: Annotated[Figure, _share("Nitric oxide, NO")]
    share_ar: Annotated[Figure, _share("Argon, Ar")]
    share_other: Annotated[Figure, _share("All else")]
    carbon_activity: Annotated[
        Figure, Shown("Carbon in the gas, soot as 1", ("",), group=IRON, folded=True)
    ]
    water_to_hydrogen: Annotated[
        Figure, Shown("Water vapour over hydrogen", ("",), group=IRON, folded=True)
    ]
    oxygen_to_burn: Annotated[Figure, Shown("Oxygen that burns it whole", ("",), group=IRON, folded=True)]
    oxygen_from_air: Annotated[Figure, Shown("Of that the air must bring", ("",), group=IRON, folded=True)]


SPECIES = {
    "share_h2": "H2", "share_co": "CO", "share_h2o": "H2O", "share_co2": "CO2", "share_h": "H",
    "share_o": "O", "share_oh": "OH", "share_o2": "O2", "share_c2h2": "C2H2", "share_c2h": "C2H",
    "share_n2": "N2", "share_no": "NO", "share_ar": "Ar",
}  # fmt: skip
"""The species that have a result of their own."""


def _ratio_in_range(fuel: str, ratio: float, air: float, oxygen_purity: float) -> float:
    """Least ratio that burns here; refuses a ratio outside what the sum was checked for."""
    low, high = least_oxygen_ratio(fuel, air, oxygen_purity), most_oxygen_ratio(fuel)
    if not low <= ratio <= high:
        much = "too little oxygen to burn" if ratio < low else "more oxygen than this sum was checked for"
        raise InputError(
            "oxygen_ratio",
            "Oxygen for one of fuel",
            f"{plain_number(ratio)} is {much}; with this fuel and air give "
            f"{plain_number(low and low + 5e-4, 3)} to {plain_number(high)}.",
        )
    return low


@calculator("flame", "The flame")
def flame(
    *,
    fuel: Annotated[str, FUEL],
    oxygen_ratio: Annotated[
        float | None,
        Field(
            "Oxygen for one of fuel",
            ("",),
            example="1.1",
            optional=True,
            low="0",
            high="15",
            hint="Volumes of oxygen from its hose for one volume of fuel. Empty: what a torch on this fuel takes.",
        ),
    ],
    propyne_share: Annotated[
        float,
        Field(
            "Propyne in methylacetylene-propadiene",
            ("%",),
            assumed="50 %",
            low="0 %",
            high="100 %",
            hint="For that fuel only. 50 % is an invented example: real mixtures differ and hold other gases too.",
        ),
    ],
    oxygen_purity: Annotated[
        float,
        Field(
            "Purity of the oxygen",
            ("%",),
            assumed="100 %",
            low="90 %",
            high="100 %",
            hint="Oxygen from a cylinder is often 99.5 %. The rest counts as nitrogen.",
        ),
    ],
    air: Annotated[
        float,
        Field(
            "Air mixed in, for one of fuel",
            ("",),
            assumed="0",
            low="0",
            high="25",
            hint="0 is the gas just past the cone; further out the flame draws air in.",
        ),
    ],
    gas_temperature: Annotated[
        float,
        Field(
            "Temperature of the gases before they burn",
            TEMPERATURE,
            assumed={"us": "77 degF", "iso": "25 degC", "uk": "25 degC"},
            low="-43.15 degC",
            high="226.85 degC",
        ),
    ],
    rules: str,
) -> Answer[Flame]:
    """How hot a flame is, how it looks, its name in the trade, and what it does to iron.

    All figures are adiabatic equilibrium: what the gas would come to if it lost no heat.
    """  # fmt: skip
    ratio = usual_ratio(fuel) if oxygen_ratio is None else oxygen_ratio
    cold = min(max(gas_temperature, 230.0), 500.0)  # a limit typed in °F may miss by its last digit
    lowest = _ratio_in_range(fuel, ratio, air, oxygen_purity)
    gas = burnt_gas(
        fuel=fuel,
        oxygen_ratio=ratio,
        air=air,
        oxygen_purity=oxygen_purity,
        gas_temperature=cold,
        propyne_share=propyne_share,
    )
    peak_ratio, peak_temperature = hottest(fuel, oxygen_purity, cold, propyne_share)
    iron = effect_on_iron(gas)
    atoms = atoms_in(fuel_shares(fuel, propyne_share))
    steps: list[Step] = []
    whole = worked(
        steps, "Oxygen that burns the fuel whole, for one of fuel", oxygen_to_burn,
        carbon=atoms.get("C", 0.0), hydrogen=atoms["H"],
    )  # fmt: skip
    worked(steps, "Oxygen of the ideal inner cone", oxygen_for_cone, carbon=atoms.get("C", 0.0))
    kind, sure = kind_words(fuel, ratio, rules)
    looks = look_words(fuel, ratio, gas.soot > 0)
    oxygen_atoms = gas.elements["O"] / gas.elements["C"] if "C" in gas.elements else None

    def computed(value: float, basis: str = NO_LOSS) -> Figure:
        return Figure(value, SUM, "computed", basis=basis)

    shares = {name: gas.shares.get(species, 0.0) for name, species in SPECIES.items()}
    soot = gas.shares.get("C(gr)", 0.0)
    share = "Share of the moles of burnt gas and soot."
    return Answer(
        Flame(
            temperature=computed(gas.temperature),
            flame_kind=Figure(
                None, sure.source, sure.how_sure, words=kind,
                basis="By the ratio at the torch, in the band that print gives it; air and purity do not change the name.",
            ),
            effect_on_iron=Figure(
                None, SUM, "computed", words=iron.effect,
                basis="The burnt gas brought to equilibrium at 1811 K (1538 °C), where iron melts. Says which way, "
                "not how fast. The borders between the four are from memory.",
            ),
            agreement=Figure(
                None, SUM, "computed", words=disagreement(fuel, ratio, iron.effect, air, oxygen_purity)
            ),
            look=Figure(None, looks.source, looks.how_sure, words=looks.words),
            torch_ratio=torch_ratio_words(fuel),
            peak_ratio=computed(
                peak_ratio, "Oxygen for one of fuel at the top of the curve, without air; the top is flat."
            ),
            peak_temperature=computed(peak_temperature),
            soot=computed(
                soot,
                "Solid carbon as a share of all moles at equilibrium. "
                + (
                    f"{plain_number(oxygen_atoms, 3)} atoms of oxygen to one of carbon: below 1 a flame can "
                    "shed soot as it cools."
                    if oxygen_atoms is not None
                    else "There is no carbon here."
                ),
            ),
            **{name: computed(value, share) for name, value in shares.items()},
            share_other=computed(max(1.0 - soot - sum(shares.values()), 0.0), share),
            carbon_activity=computed(
                iron.carbon_activity, "Above 0.006 mild steel gains carbon, from memory; 1 is as much as soot."
            ),
            water_to_hydrogen=computed(
                iron.water_to_hydrogen,
                "From 0.3 manganese and the like burn, from 0.8 iron itself; both from memory.",
            ),
            oxygen_to_burn=Figure(whole, "definition", "computed"),
            oxygen_from_air=Figure(
                max(whole - ratio * oxygen_purity, 0.0), "definition", "computed",
                basis=f"Volumes of oxygen for one of fuel. Air is {plain_number(100 * AIR['O2'], 3)} % oxygen.",
            ),
        ),
        cautions=flame_cautions(fuel, iron.effect, soot > 0, oxygen_atoms),
        steps=tuple(steps),
        beside=lambda: ((printed_temperatures(fuel, rules),), ()),
        drawn=lambda: (
            (),
            pictures(
                fuel, ratio, gas,
                flame_points(fuel=fuel, own=ratio, lowest=lowest, air=air, oxygen_purity=oxygen_purity, gas_temperature=cold, propyne_share=propyne_share), rules,
            ),
        ),
    )  # fmt: skip
