"""The other side of the metal or the wall: how hot, and how soon it can char wood."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import caution
from calc.answer.sentences import degrees, duration
from calc.ask.errors import InputError
from calc.data.tables import table
from calc.declare import Answer, Choice, Field, Figure, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import FREE_GAS_FLOW, LENGTH, TEMPERATURE
from calc.formulas.heat.crossing import crossing
from calc.formulas.heat.flame_patch import patch_spread
from calc.formulas.heat.flame_power import power_into_work
from calc.formulas.heat.heated_spot import spot_heat_rise
from calc.formulas.heat.slab import bar_share
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.trade.fields import EFFICIENCY, start_temperature
from calc.trade.flame.heat import STRONG, WEAK, printed_heat
from calc.trade.heat.metals import METALS, metal_of
from calc.trade.safety.surroundings import fire_watch
from calc.values.units import from_si, to_si

SHAPES = {
    "plate": "Flame held on a plate; its back",
    "wall": "Hot spot on a wall; its other face",
    "pipe": "Pipe or bar that runs through a wall",
}
WALLS = {row.material: row.words for row in table("wall-materials")}
MATERIALS = METALS | WALLS
CHARS = to_si(100.0, "degC")
"""Held for long enough this chars wood and can light it: from memory."""
CHAR_WORDS = "hot enough to char wood in time"
DAY = 86400.0
SOONEST = 1.0
FLAME = to_si(3100.0, "degC")
"""Nothing that a flame heats gets hotter than the flame."""
CIRCLE_SHARE = 0.8
LEAST_HOT = to_si(300.0, "degF")
LABEL = {"material": "Material", "distance": "Through it, or along the pipe"}


@dataclass(frozen=True, slots=True)
class FarSide:
    """What the hidden side can come to."""

    warning: Annotated[Figure, Shown("What to reckon with", words=True)]
    far_temperature: Annotated[Figure, Shown("Far side at that time, as hot as", TEMPERATURE, toward="up")]
    char_time: Annotated[Figure, Shown("Hot enough to char wood", ("min",), toward="down", digits=2)]
    fire_watch: Annotated[Figure, Shown("Fire watch after the last flame", ("min",), toward="up")]


@dataclass(frozen=True, slots=True)
class _Stuff:
    conductivity: float
    diffusivity: float


def _stuff(material: str) -> _Stuff:
    if material in METALS:
        metal = metal_of(material)
        # The cold figures carry heat faster than the hot ones: the sooner of the two.
        cold = metal.conductivity / (metal.density * metal.heat_capacity)
        return _Stuff(metal.conductivity, max(cold, metal.hot_diffusivity))
    row = next(row for row in table("wall-materials") if row.material == material)
    return _Stuff(row.conductivity, row.conductivity / (row.density * row.heat_capacity))


def _first_time(curve: Callable[[float], float], wanted: float) -> float | None:
    """First time within a day that a rising curve passes a value."""
    if curve(DAY) <= wanted:
        return None
    if curve(SOONEST) >= wanted:
        return SOONEST
    return crossing(curve, wanted, SOONEST, DAY, near=1e-3)


@calculator("far-side", "The other side of the wall")
def far_side(
    *,
    shape: Annotated[str, Choice("Where the flame is", SHAPES, example="pipe")],
    material: Annotated[str, Choice(LABEL["material"], MATERIALS, example="copper")],
    distance: Annotated[
        float,
        Field(
            LABEL["distance"],
            LENGTH,
            example={"us": "6 in", "iso": "150 mm", "uk": "150 mm"},
            low="0.5 mm",
            high="3 m",
            hint="Thickness of the plate or wall, or from the flame along the pipe to where it vanishes.",
        ),
    ],
    time: Annotated[
        float,
        Field("Flame held for", ("min", "s", "h"), example="3 min", low="1 s", high="8 h"),
    ],
    acetylene_flow: Annotated[
        float,
        Field(
            "Acetylene the torch takes, for a plate",
            FREE_GAS_FLOW,
            low="20 L/h",
            high="5000 L/h",
            assumed={"us": "10 cfh", "iso": "300 L/h", "uk": "300 L/h"},
            free_gas=True,
        ),
    ],
    spot: Annotated[
        float,
        Field(
            "Spot the flame heats, across",
            LENGTH,
            low="3 mm",
            high="100 mm",
            assumed={"us": "0.4 in", "iso": "10 mm", "uk": "10 mm"},
        ),
    ],
    efficiency: Annotated[float, EFFICIENCY],
    hot_temperature: Annotated[
        float,
        Field(
            "Hot spot on a wall or pipe",
            TEMPERATURE,
            low="300 degF",
            high="2700 degF",
            assumed={"us": "1500 degF", "iso": "800 degC", "uk": "800 degC"},
            hint="Soldering about 450 °F, brazing 1500 °F, dark red 1290 °F.",
        ),
    ],
    start_temperature: Annotated[float, start_temperature("All was at", high="200 degF")],
    rules: str,
) -> Answer[FarSide]:
    """How hot the hidden side can get, and how soon it can char what touches it.

    Every time here can be shorter at the job. No answer of this page says that
    nothing will happen.
    """  # fmt: skip
    if shape != "wall" and material in WALLS:
        raise InputError(
            "material", LABEL["material"], "a plate or a pipe is of metal; pick a metal, or a wall."
        )
    if shape != "plate" and material in METALS and hot_temperature > metal_of(material).solidus:
        melts = degrees(metal_of(material).solidus, rules)
        raise InputError(
            "hot_temperature",
            "Hot spot on a wall or pipe",
            f"{METALS[material].lower()} begins to melt at {melts}, so no spot of it is "
            f"hotter; give {degrees(LEAST_HOT, rules)} to {melts}.",
        )
    if shape == "plate" and distance > 0.1:
        raise InputError(
            "distance",
            LABEL["distance"],
            "a plate is at most 100 mm (4 in) thick; thicker, pick a wall.",
        )
    steps: list[Step] = []
    stuff = _stuff(material)
    rise_at = _plate_rise(
        steps=steps, stuff=stuff, thickness=distance, flow=acetylene_flow, spot=spot, efficiency=efficiency
    )
    if shape != "plate":
        steps = []
        rise_at = _conducted_rise(stuff, distance, hot_temperature - start_temperature, shape == "wall")
    middle = start_temperature + rise_at(time, 1.0)
    hottest = min(start_temperature + rise_at(time, STRONG), FLAME)
    coldest = min(start_temperature + rise_at(time, WEAK), hottest)
    middle = min(middle, hottest)
    soonest = _first_time(lambda t: start_temperature + rise_at(t, STRONG), CHARS)
    source = "carslaw-1959 10.3 and 4.5"
    molten = material in METALS and hottest > metal_of(material).solidus
    watch = fire_watch(rules)
    return Answer(
        FarSide(
            warning=Figure(None, "", "memory", words=_warning(hottest, soonest), basis=_BASIS[shape]),
            far_temperature=Figure(
                hottest, source, "computed", low=coldest, high=hottest,
                basis=f"The hot end of what heat flow gives, {degrees(middle, rules)} in its middle. {_BASIS[shape]}",
                words="by then the metal itself may have melted through" if molten else "",
            ),
            char_time=_char_time(soonest),
            fire_watch=watch,
        ),
        cautions=_CAUTIONS,
        steps=tuple(steps),
        drawn=lambda: _course(
            lambda t: min(start_temperature + rise_at(t, STRONG), FLAME), time, hottest, rules
        ),
    )  # fmt: skip


_BASIS = {
    "plate": "No heat lost to the air, none to a backing; the flame held still on one spot.",
    "wall": "The hot face at that temperature from the start, the other face covered, no heat lost. Gaps, "
    "pipes, wires and nails carry heat faster.",
    "pipe": "The hot end at that temperature from the start, no heat lost along the pipe. Hot gas inside a "
    "pipe, or a pipe that ends there, brings more.",
}


def _plate_rise(
    *, steps: list[Step], stuff: _Stuff, thickness: float, flow: float, spot: float, efficiency: float
) -> Callable[[float, float], float]:
    power = worked(
        steps, "Heat that enters the work", power_into_work,
        flow=flow, heat_value=printed_heat("acetylene"), efficiency=efficiency,
    )  # fmt: skip
    spread = worked(
        steps,
        "Spread of a spot that holds 80 % of the heat",
        patch_spread,
        diameter=spot,
        share=CIRCLE_SHARE,
    )

    def rise(time: float, end: float) -> float:
        return spot_heat_rise(
            power=power * end,
            heating_time=time,
            time=time,
            distance=0.0,
            depth=thickness,
            thickness=thickness,
            spread=spread,
            conductivity=stuff.conductivity,
            diffusivity=stuff.diffusivity,
        )

    return rise


def _conducted_rise(
    stuff: _Stuff, distance: float, hot: float, covered: bool
) -> Callable[[float, float], float]:
    def rise(time: float, end: float) -> float:
        # The band is a factor of 1.7 on how fast the stuff carries heat.
        share = bar_share(distance, time, stuff.diffusivity * end, 0.0)
        # Heat piles up at a covered face: twice the share is never too little.
        return hot * (min(1.0, 2.0 * share) if covered else share)

    return rise


def _warning(hottest: float, soonest: float | None) -> str:
    if hottest >= CHARS:
        return (
            f"the far side is {CHAR_WORDS}. Look there before, during and after; wet it, clear it, watch it"
        )
    later = (
        "By this sum that takes more than a day, which is no promise"
        if soonest is None
        else f"It can be {CHAR_WORDS} sooner than {duration(soonest)} of flame, and heat goes on moving when "
        "the flame is gone"
    )
    return f"no all-clear. {later}: look there, feel there, watch there"


def _char_time(soonest: float | None) -> Figure:
    basis = "When 100 °C (212 °F) is passed: held for long it chars wood, and charred wood lights (from memory)."
    if soonest is None:
        words = "no time is given; watch it all the same"
        return Figure(None, "carslaw-1959 10.3 and 4.5", "computed", basis=basis, words=words)
    return Figure(
        soonest, "carslaw-1959 10.3 and 4.5", "computed", basis=basis, words="can be sooner than that"
    )


def _course(
    hot: Callable[[float], float], time: float, reached: float, rules: str
) -> tuple[tuple[Table, ...], tuple[Picture, ...]]:
    unit, sign = ("degF", "°F") if rules == "us" else ("degC", "°C")
    last = max(time * 1.5, 60.0)
    scale, per = ("s", 1.0) if last < 300 else ("min", 60.0) if last < 3 * 3600 else ("h", 3600.0)
    count = 24
    points = tuple(
        (last * n / count / per, from_si(hot(max(last * n / count, 0.01)), unit)) for n in range(count + 1)
    )
    title = "The hidden side while the flame is held"
    sentence = f"By {duration(time)} it can be as hot as {degrees(reached, rules)}, and it is still rising."
    picture = Picture(
        line_chart(
            title=title,
            sentence=sentence,
            x_label=f"Flame held, {scale}",
            y_label=f"Far side, {sign}",
            lines=[Line("as hot as", points)],
            marks=[
                Mark("your time", time / per, from_si(reached, unit)),
                Mark("chars wood in time", None, from_si(CHARS, unit)),
            ],
        ),
        title,
        sentence,
    )
    rows = tuple(
        (
            duration(held),
            degrees(reaches, rules),
            CHAR_WORDS if reaches >= CHARS else "still rising: watch it",
        )
        for held, reaches in ((t, hot(t)) for t in (10.0, 60.0, 300.0, 900.0, 3600.0, 4 * 3600.0))
    )
    table_title = "As hot as, by how long the flame is held"
    told = Table(table_title, ("Flame held", "Far side", ""), rows, "It can be sooner.")
    return (told,), (picture,)


_CAUTIONS = (
    caution("heat-behind"),
    caution("closed-part"),
)
