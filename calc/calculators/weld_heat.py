"""How hot a travelling flame makes the metal: the pool, and whether it goes through."""

from dataclasses import dataclass
from math import hypot, log, sqrt
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.ask.errors import InputError
from calc.declare import Answer, Caution, Choice, Field, Figure, Shown, Step, calculator, worked
from calc.declare.inputs import FREE_GAS_FLOW, LENGTH, TEMPERATURE
from calc.formulas.heat.cooling import line_energy
from calc.formulas.heat.flame_patch import welding_spread
from calc.formulas.heat.flame_power import power_density, power_into_work
from calc.formulas.heat.moving_source import moving_flame_rises
from calc.formulas.heat.weld_pool import weld_pool_power, weld_pool_speed
from calc.trade.fields import EFFICIENCY, start_temperature, travel_speed_asked
from calc.trade.flame.heat import BAND_SAID, STRONG, WEAK, printed_heat
from calc.trade.heat.metals import METALS, Metal, metal_of
from calc.trade.heat.plate import COUPON, Plate, Pool, heat_map_of, pools, verdict_words

SUM = "rosenthal-1946 moving point on a plate"
SPOT_SHARE = 0.75
SPOT_OVER_SPREAD = sqrt(8.0 * log(4.0))
"""Across the circle that holds three quarters of a bell-shaped patch, in spreads."""
SLOWEST, FASTEST = 5e-3 / 60.0, 2.0 / 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class WeldHeat:
    """What the flame does to the metal."""

    verdict: Annotated[Figure, Shown("What the metal does", words=True)]
    pool_width: Annotated[Figure, Shown("Pool, across", LENGTH, digits=2)]
    speed_for_pool: Annotated[Figure, Shown("Travel for the pool you want", ("in/min", "mm/min"), digits=2)]
    flow_for_pool: Annotated[
        Figure, Shown("Acetylene for that pool at your travel", FREE_GAS_FLOW, free_gas=True, digits=2)
    ]
    temperature_there: Annotated[
        Figure, Shown("Metal at the place you ask about", TEMPERATURE, group="Deeper figures", folded=True)
    ]
    power: Annotated[
        Figure,
        Shown("Heat that enters the work", ("Btu/h", "W"), digits=2, group="Deeper figures", folded=True),
    ]
    power_density: Annotated[
        Figure,
        Shown(
            "Heat on the spot under the flame",
            ("Btu/(s*in^2)", "W/mm^2"),
            digits=2,
            group="Deeper figures",
            folded=True,
        ),
    ]
    line_energy: Annotated[
        Figure,
        Shown(
            "Heat in each length of seam", ("kJ/in", "kJ/mm"), digits=2, group="Deeper figures", folded=True
        ),
    ]


def _there(plate: Plate, power: float, aside: float, behind: float) -> Figure:
    rises = moving_flame_rises(
        powers=(power * WEAK, power, power * STRONG), speed=plate.speed, ahead=-behind, aside=aside, depth=0.0, thickness=plate.thickness, spread=0.0,
        conductivity=plate.conductivity, diffusivity=plate.diffusivity,
    )  # fmt: skip
    low, value, high = (plate.start + rise for rise in rises)
    flagged = "inside the pool: above melting the sum no longer describes the metal"
    return Figure(
        value, "carslaw-1959 moving source on a plate", "computed", low=low, high=high, basis=f"On the face, the flame taken as a point. {BAND_SAID}",
        words=flagged if value > plate.melting else "",
    )  # fmt: skip


@calculator("weld-heat", "How fast, how hot")
def weld_heat(
    *,
    metal: Annotated[str, Choice("Metal", METALS, example="low-carbon-steel")],
    thickness: Annotated[
        float,
        Field(
            "Thickness",
            LENGTH,
            example={"us": "16 ga", "iso": "1.5 mm", "uk": "1.5 mm"},
            low="0.5 mm",
            high="50 mm",
            sheet_gauge=True,
        ),
    ],
    acetylene_flow: Annotated[
        float,
        Field(
            "Acetylene the torch takes",
            FREE_GAS_FLOW,
            example={"us": "5 cfh", "iso": "150 L/h", "uk": "150 L/h"},
            low="20 L/h",
            high="3000 L/h",
            free_gas=True,
            hint="From the page on flow, or from the tip's maker.",
        ),
    ],
    travel_speed: Annotated[float, travel_speed_asked("5 in/min", "120 mm/min")],
    wanted_width: Annotated[
        float | None,
        Field(
            "Pool you want, across",
            LENGTH,
            low="0.5 mm",
            high="50 mm",
            optional=True,
            hint="Empty: three thicknesses, common practice on sheet.",
        ),
    ],
    efficiency: Annotated[float, EFFICIENCY],
    start_temperature: Annotated[float, start_temperature("Metal starts at", high="900 degF")],
    aside: Annotated[
        float,
        Field(
            "Place you ask about: to the side of the seam",
            LENGTH,
            low="1 mm",
            high="500 mm",
            assumed={"us": "1/2 in", "iso": "12 mm", "uk": "12 mm"},
        ),
    ],
    behind: Annotated[
        float,
        Field("Place you ask about: behind the torch", LENGTH, low="0 mm", high="500 mm", assumed="0 mm"),
    ],
    conductivity: Annotated[
        float | None,
        Field(
            "Conductivity of the hot metal",
            ("W/(m*K)",),
            low="10 W/(m*K)",
            high="450 W/(m*K)",
            optional=True,
            hint="Empty: ours for the metal.",
        ),
    ],
    diffusivity: Annotated[
        float | None,
        Field(
            "Its diffusivity",
            ("mm^2/s",),
            low="3 mm^2/s",
            high="150 mm^2/s",
            optional=True,
            hint="Conductivity over density and heat capacity. Empty: ours for the metal.",
        ),
    ],
    rules: str,
) -> Answer[WeldHeat]:
    """Pool of a travelling oxy-acetylene flame, with a band, and the travel or flow for the pool you want.

    Heat flow says how the pool answers to travel, flow and thickness. How much of a
    flame's heat enters the work is known only within a factor of 1.7.
    """  # fmt: skip
    kind: Metal = metal_of(metal)
    plate = Plate(
        thickness=thickness,
        speed=travel_speed,
        start=start_temperature,
        melting=kind.liquidus,
        conductivity=kind.hot_conductivity if conductivity is None else conductivity,
        diffusivity=kind.hot_diffusivity if diffusivity is None else diffusivity,
    )
    steps: list[Step] = []
    power = worked(
        steps, "Heat that enters the work", power_into_work,
        flow=acetylene_flow, heat_value=printed_heat("acetylene"), efficiency=efficiency,
    )  # fmt: skip
    energy = worked(steps, "Heat in each length", line_energy, power=power, speed=travel_speed)
    spread = worked(steps, "Spread of the flame's patch of heat", welding_spread, flow=acetylene_flow)
    density = worked(
        steps, "Heat on the circle that holds three quarters of it", power_density,
        power=power, share=SPOT_SHARE, diameter=spread * SPOT_OVER_SPREAD,
    )  # fmt: skip
    if hypot(aside, behind) < 0.5 * spread:
        raise InputError(
            "aside", "Place you ask about: to the side of the seam", "that is under the flame; give more."
        )
    try:
        weak, middle, strong = pools(plate, power, spread)
    except ValueError as error:
        raise InputError(
            "acetylene_flow", "Acetylene the torch takes", f"{error} Give less for metal this thin."
        ) from None
    wanted = 3.0 * thickness if wanted_width is None else wanted_width
    cautions = _cautions(metal, "hole" in (middle.kind, strong.kind))
    return Answer(
        WeldHeat(
            verdict=Figure(
                None, SUM, "computed", words=verdict_words(weak, middle, strong),
                basis="Melting at the hottest place of face and back, for a flame that spreads its heat as a "
                "bell. The mark for burning through, a pool over 8 thicknesses wide, is practice and in no print.",
            ),
            pool_width=_width(weak, middle, strong),
            speed_for_pool=_speed(plate, power, wanted),
            flow_for_pool=_flow(plate, efficiency, wanted),
            temperature_there=_there(plate, power, aside, behind),
            power=Figure(
                power, "groover", "computed", low=power * WEAK, high=power * STRONG,
                basis=f"Gross heat of acetylene times the share that enters. {BAND_SAID}",
            ),
            power_density=Figure(
                density, "groover", "computed", low=density * WEAK, high=density * STRONG,
                basis=f"Three quarters of the heat over the circle that holds it. {BAND_SAID}",
            ),
            line_energy=Figure(
                energy, "groover", "computed", low=energy * WEAK, high=energy * STRONG,
                basis="Heat that enters over travel. Arc-welding rules ask for this figure.",
            ),
        ),
        cautions=cautions,
        steps=tuple(steps),
        drawn=lambda: heat_map_of(metal, plate, power, middle.kind != "solid", rules),
    )  # fmt: skip


def _width(weak: Pool, middle: Pool, strong: Pool) -> Figure:
    basis = f"A moving point of heat on a plate of this thickness; heat of melting left out. {BAND_SAID} {COUPON}"
    if middle.kind == "solid":
        return Figure(None, SUM, "computed", basis=basis, words="none: the metal does not melt")
    return Figure(middle.width, SUM, "computed", low=weak.width, high=strong.width, basis=basis)


def _speed(plate: Plate, power: float, wanted: float) -> Figure:
    def at(heat: float) -> float:
        speed = weld_pool_speed(
            width=wanted,
            power=heat,
            thickness=plate.thickness,
            rise=plate.rise,
            conductivity=plate.conductivity,
            diffusivity=plate.diffusivity,
        )
        return 0.0 if speed is None else speed

    basis = f"Faster makes the pool narrower. {BAND_SAID} {COUPON}"
    value = at(power)
    if value < SLOWEST:
        return Figure(
            None, SUM, "computed", basis=basis, words="none: this flow is too small for that pool"
        )
    low, high = at(power * WEAK), at(power * STRONG)
    words = "faster than a hand can follow: take a smaller tip" if value > FASTEST else ""
    return Figure(value, SUM, "computed", low=low, high=high, basis=basis, words=words)


def _flow(plate: Plate, efficiency: float, wanted: float) -> Figure:
    power = weld_pool_power(
        width=wanted,
        speed=plate.speed,
        thickness=plate.thickness,
        rise=plate.rise,
        conductivity=plate.conductivity,
        diffusivity=plate.diffusivity,
    )
    value = power / (printed_heat("acetylene") * efficiency)
    return Figure(
        value, SUM, "computed", low=value / STRONG, high=value / WEAK,
        basis=f"{BAND_SAID} Your cylinder must be able to give it: see acetylene left. {COUPON}",
    )  # fmt: skip


def _cautions(metal: str, hole: bool) -> tuple[Caution, ...]:
    burns_through = (caution("puddle-drops"),) if hole else ()
    return gravest_first(
        (*brought({"process": "welding", "metal": metal}), caution("hot-looks-cold"), *burns_through)
    )
