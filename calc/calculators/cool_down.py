"""Cooling after the weld: how fast from 800 to 500 °C, and how long until it can be handled."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import caution
from calc.answer.sentences import degrees, distance, duration
from calc.ask.errors import InputError
from calc.declare import Answer, Beside, Choice, Field, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import FREE_GAS_FLOW, LENGTH, TEMPERATURE
from calc.formulas.heat.cooling import (
    line_energy,
    thick_plate_cooling_time,
    thin_plate_cooling_time,
    transition_thickness,
    weld_cooling_time,
)
from calc.formulas.heat.flame_power import power_into_work
from calc.formulas.heat.lumped import cooling_time
from calc.formulas.heat.steel_properties import STEEL_DENSITY
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.trade.fields import EFFICIENCY, start_temperature, steel_thickness, travel_speed_asked
from calc.trade.flame.heat import STRONG, WEAK, printed_heat
from calc.trade.heat.losses import AIR, EMISSIVITY, WRAPPED_SHARE
from calc.values.figures import Figure
from calc.values.units import from_si, to_si

JOINTS = {
    "plate": "Run on plate",
    "butt": "Butt weld",
    "corner": "Fillet on a corner",
    "tee": "Fillet of a tee",
}
SHAPES = {
    "plate": ((1.0, 1.0), (1.0, 1.0)),
    "butt": ((0.9, 0.9), (0.9, 0.9)),
    "corner": ((0.67, 0.67), (0.67, 0.9)),
    "tee": ((0.67, 0.67), (0.45, 0.67)),
}
"""Shape factors in thick plate, and in thin plate: least and most [en-1011-2] D, from memory."""
QUICK, SLOW = 5.0, 25.0
"""Below the one steel hardens readily, above the other it softens: from memory, arc welding."""
HANDLE = to_si(50.0, "degC")
HOT_END = to_si(800.0, "degC")
RULE = "en-1011-2 D.2"


@dataclass(frozen=True, slots=True, kw_only=True)
class CoolDown:
    """How fast it cools, and how long it stays hot."""

    hardening: Annotated[Figure, Shown("What that means for steel", words=True)]
    cooling_time: Annotated[Figure, Shown("From 800 to 500 °C (1472 to 932 °F)", ("s",), digits=2)]
    air_time: Annotated[
        Figure, Shown("Too hot to touch in still air, at least", ("min",), toward="up", digits=2)
    ]
    wrapped_time: Annotated[
        Figure, Shown("Under a dry blanket or in lime", ("min",), toward="up", digits=2)
    ]
    transition: Annotated[Figure, Shown("Thin plate up to", LENGTH, group="Deeper figures", folded=True, toward="down")]
    heat_per_length: Annotated[
        Figure,
        Shown("Heat in each length of seam", ("kJ/in", "kJ/mm"), group="Deeper figures", folded=True),
    ]


@calculator("cool-down", "Cooling after the weld")
def cool_down(
    *,
    thickness: Annotated[float, steel_thickness("1/4 in", "6 mm")],
    acetylene_flow: Annotated[
        float,
        Field(
            "Acetylene the torch takes", FREE_GAS_FLOW, low="20 L/h", high="5000 L/h", free_gas=True,
            example={"us": "20 cfh", "iso": "600 L/h", "uk": "600 L/h"},
        ),
    ],
    travel_speed: Annotated[float, travel_speed_asked("2.2 in/min", "55 mm/min")],
    joint: Annotated[str, Choice("Joint", JOINTS, assumed="butt")],
    heat_input: Annotated[
        float | None,
        Field(
            "Heat input, if you know it",
            ("kJ/in", "kJ/mm"),
            low="0.01 kJ/mm",
            high="50 kJ/mm",
            optional=True,
            hint="It then stands in place of flow and travel.",
        ),
    ],
    efficiency: Annotated[float, EFFICIENCY],
    plate_temperature: Annotated[float, start_temperature("Plate before the run", high="800 degF")],
    part_temperature: Annotated[
        float,
        Field(
            "Whole part when the flame goes out",
            TEMPERATURE,
            low="150 degF",
            high="1800 degF",
            assumed={"us": "600 degF", "iso": "315 degC", "uk": "315 degC"},
        ),
    ],
    rules: str,
) -> Answer[CoolDown]:
    """How fast steel beside the weld cools, which decides how hard it gets, and how long it stays hot.

    The cooling rule is written for arc welding. A flame heats a wider band, so after gas
    welding it cools more slowly than this says.
    """  # fmt: skip
    steps: list[Step] = []
    energy, weak, strong = _energy(steps, heat_input, acetylene_flow, travel_speed, efficiency)
    (thick_low, thick_high), (thin_low, thin_high) = SHAPES[joint]
    thick, thin = 0.5 * (thick_low + thick_high), 0.5 * (thin_low + thin_high)

    def cools(heat: float, in_thick: float, in_thin: float) -> float:
        return weld_cooling_time(heat, plate_temperature, thickness, in_thick, in_thin)

    value = cools(energy, thick, thin)
    low, high = cools(weak, thick_low, thin_low), cools(strong, thick_high, thin_high)
    edge = transition_thickness(energy, plate_temperature)
    if part_temperature <= HANDLE:
        raise InputError(
            "part_temperature", "Whole part when the flame goes out", "it is cool already; give more."
        )

    def beside() -> Beside:
        chart, picture = _course(thickness, part_temperature, rules)
        return (_both(energy, plate_temperature, thickness, rules), chart), (picture,)

    return Answer(
        CoolDown(
            hardening=Figure(
                None, "", "memory", words=_hardening(value),
                basis="About 5 s and 25 s are the usual limits for arc welds in common steels, from memory. "
                "Steel with little carbon forgives; see preheat for the others.",
            ),
            cooling_time=Figure(
                value, RULE, "memory", low=low, high=high,
                basis="The longer of the thick-plate and the thin-plate sum, by the joint's shape factors. A rule for arc "
                "welding; the band holds the factors and, where the heat comes from a flame, the share that enters.",
            ),
            air_time=_air(thickness, part_temperature, 1.0),
            wrapped_time=_air(thickness, part_temperature, WRAPPED_SHARE),
            transition=Figure(edge, RULE, "memory", basis="Thinner than this, heat runs off in two directions only."),
            heat_per_length=Figure(
                energy, "groover", "computed", low=weak, high=strong,
                basis="As you gave it." if heat_input is not None else "Heat that enters over travel.",
            ),
        ),
        cautions=_CAUTIONS,
        steps=tuple(steps),
        beside=beside,
    )  # fmt: skip


def _energy(
    steps: list[Step], given: float | None, flow: float, speed: float, efficiency: float
) -> tuple[float, float, float]:
    if given is not None:
        return given, given, given
    power = worked(
        steps, "Heat that enters the work", power_into_work,
        flow=flow, heat_value=printed_heat("acetylene"), efficiency=efficiency,
    )  # fmt: skip
    energy = worked(steps, "Heat in each length", line_energy, power=power, speed=speed)
    return energy, energy * WEAK, energy * STRONG


def _hardening(value: float) -> str:
    if value < QUICK:
        return "quick: steel with more than a little carbon hardens and can crack. Preheat, or weld slower"
    if value <= SLOW:
        return "usual for arc welds in common steels"
    return "slow: little hardening; the grain beside the weld grows coarse and soft"


def _cooled(thickness: float, start: float, target: float, let_through: float) -> float | None:
    """Time of a plate that loses heat from both faces, s."""
    return cooling_time(
        mass=STEEL_DENSITY * thickness, area=2.0, heat_transfer=AIR * let_through, emissivity=EMISSIVITY * let_through, start=start, target=target, surroundings=to_si(20.0, "degC")
    )  # fmt: skip


def _air(thickness: float, start: float, let_through: float) -> Figure:
    basis = (
        "Down to 50 °C (122 °F), both faces in still air at 20 °C (68 °F). On brick or in a pile it takes longer."
        if let_through == 1.0
        else "A blanket or lime taken to let a quarter of the loss through: common practice, no source."
    )
    return Figure(
        _cooled(thickness, start, HANDLE, let_through), "definition heat balance", "computed", basis=basis
    )


def _both(energy: float, start: float, thickness: float, rules: str) -> Table:
    rows = (
        (
            "Thick plate, heat runs off in three directions",
            duration(thick_plate_cooling_time(energy, start)),
        ),
        (
            f"Thin plate of {distance(thickness, rules)}, in two directions",
            duration(thin_plate_cooling_time(energy, start, thickness)),
        ),
    )
    return Table(
        "The two sums, for a run on plate",
        ("Sum", "800 to 500 °C"),
        rows,
        "The longer one holds. EN 1011-2, from memory.",
    )


def _course(thickness: float, start: float, rules: str) -> tuple[Table, Picture]:
    unit, sign = ("degF", "°F") if rules == "us" else ("degC", "°C")
    points, rows = [(0.0, from_si(start, unit))], []
    count = 16
    for n in range(1, count + 1):
        target = start + (HANDLE - start) * n / count
        bare = _cooled(thickness, start, target, 1.0) or 0.0
        points.append((bare / 60.0, from_si(target, unit)))
        if n % 4 == 0:
            wrapped = _cooled(thickness, start, target, WRAPPED_SHARE) or 0.0
            rows.append((degrees(target, rules), duration(bare), duration(wrapped)))
    title = "The part cooling in still air"
    sentence = f"It takes {duration(points[-1][0] * 60.0)} to come down to {degrees(HANDLE, rules)}, and shows no glow for nearly all of it."
    svg = line_chart(
        title=title, sentence=sentence, x_label="After the flame, min", y_label=f"Part, {sign}", lines=[Line("in still air", tuple(points))],
        marks=[Mark("too hot to touch above", None, from_si(HANDLE, unit))],
    )  # fmt: skip
    columns = ("Part at", "In still air after", "Under a blanket after")
    return Table(title, columns, tuple(rows)), Picture(svg, title, sentence)


_CAUTIONS = (
    caution("hot-looks-cold"),
    caution("quench"),
)
