"""Bending and straightening steel with a flame: how hot at most, what that looks like, how much it pulls."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import caution
from calc.answer.sentences import degrees
from calc.data.tables import source_words, table
from calc.declare import Answer, Choice, Field, Figure, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import LENGTH, TEMPERATURE
from calc.formulas.heat.shrinkage import (
    butt_shrinkage,
    heated_band_shrinkage,
    lap_shrinkage,
    simple_butt_shrinkage,
    tee_shrinkage,
)
from calc.show.drawings import swatches
from calc.trade.fields import steel_thickness
from calc.trade.heat.colours import colours
from calc.values.units import to_si

STEELS = {
    "ordinary": "Ordinary carbon or low-alloy steel",
    "quenched": "Quenched and tempered steel",
    "a514": "A514 class",
    "a709-70w": "A709 grade 70W",
}
_ROWS = {
    "ordinary": "ordinary steel",
    "quenched": "quenched and tempered steel",
    "a514": "A514 class",
    "a709-70w": "A709 grade 70W",
}
LIGHTS = {
    "dark": "Dark",
    "shade": "Shade or dusk",
    "daylight": "Daylight, out of the sun",
    "sun": "Full sun",
}
_FIRST_RED = {
    "dark": "red, visible in the dark",
    "shade": "red, visible in twilight",
    "daylight": "red, visible in daylight",
    "sun": "red, visible in sunlight",
}
PATTERNS = {
    "spot": "a spot: round, on the bulge, quick; the next one beside it, never on it while warm",
    "line": "a line: along the outside of the bend, torch moving, heat through only part of the thickness to bend "
    "the plate toward the flame",
    "wedge": "a wedge: point at the inside of the bend, base at the outside edge, from the point outward, through "
    "the whole thickness",
}
MARGIN = to_si(50.0, "degF") - to_si(0.0, "degF")
"""Kept below the limit, since a flame runs on: common practice."""
COLD = to_si(20.0, "degC")
WEAK = (
    "Weak evidence: old rules of thumb for arc welds, from memory. A flame heats a wider band and pulls more. "
    "Compare with it, set no dimension by it."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class FlameBend:
    """How hot, how it looks, and how much it pulls."""

    limit_temperature: Annotated[Figure, Shown("Never hotter than", TEMPERATURE, toward="down")]
    aim_temperature: Annotated[Figure, Shown("Stop the flame at", TEMPERATURE, toward="down")]
    colour: Annotated[Figure, Shown("What that looks like", words=True)]
    pattern: Annotated[Figure, Shown("How to heat", words=True)]
    heat_shrinkage: Annotated[Figure, Shown("One heat pulls, at most", LENGTH, toward="up", digits=2)]
    butt_shrinkage: Annotated[Figure, Shown("A butt weld pulls across", LENGTH, digits=2)]
    fillet_shrinkage: Annotated[Figure, Shown("Fillets pull a plate across", LENGTH, digits=2)]


@calculator("flame-bend", "Bend and straighten with a flame")
def flame_bend(
    *,
    steel: Annotated[str, Choice("Steel", STEELS, example="ordinary")],
    pattern: Annotated[
        str, Choice("Heat", {"spot": "Spot", "line": "Line", "wedge": "Wedge (V)"}, example="line")
    ],
    light: Annotated[str, Choice("Light you work in", LIGHTS, example="shade")],
    thickness: Annotated[float, steel_thickness("3/8 in", "10 mm")],
    heated_width: Annotated[
        float,
        Field(
            "Spot or line, across",
            LENGTH,
            low="3 mm",
            high="200 mm",
            assumed={"us": "1 in", "iso": "25 mm", "uk": "25 mm"},
        ),
    ],
    weld_area: Annotated[
        float | None,
        Field(
            "Section of a butt weld's metal",
            ("in^2", "mm^2"),
            low="1 mm^2",
            high="5000 mm^2",
            optional=True,
            hint="To see how much the weld itself pulled.",
        ),
    ],
    root_gap: Annotated[float, Field("Its root gap", LENGTH, assumed="0 mm", low="0 mm", high="15 mm")],
    leg: Annotated[
        float | None,
        Field(
            "Leg of a fillet",
            LENGTH,
            low="1 mm",
            high="50 mm",
            optional=True,
            hint="Tee with a fillet on each side, or lap with two.",
        ),
    ],
    rules: str,
) -> Answer[FlameBend]:
    """Highest temperature, its color in your light, and an estimate of what heats and welds pull.

    What is heated and held shrinks when it cools: that straightens a bent piece, and
    bends a straight one.
    """  # fmt: skip
    row = next(row for row in table("flame-straightening") if row.steel == _ROWS[steel])
    steps: list[Step] = []
    aim = row.highest - MARGIN
    pulled = worked(
        steps, "Most that one heat pulls", heated_band_shrinkage, width=heated_width, rise=aim - COLD
    )
    return Answer(
        FlameBend(
            limit_temperature=Figure(
                row.highest, row.source, row.how_sure,
                basis="Hotter, the steel's strength changes for good. What its maker or the code of the job says comes first.",
            ),
            aim_temperature=Figure(
                aim, "", "practice", basis="50 °F (28 °C) below the limit, since heat runs on when the flame is off. Use a crayon or a thermometer.",
            ),
            colour=Figure(None, "heat-colour-list", "read", words=_look(aim, light, rules), basis="Color alone is good to a hundred degrees or so. A crayon is better."),
            pattern=Figure(None, "", "practice", words=PATTERNS[pattern], basis="Common practice. Let it cool by itself and look, before the next heat."),
            heat_shrinkage=Figure(
                pulled, "definition", "computed", low=0.0, high=pulled,
                basis="Free expansion of the heated width, all of it kept as shrinkage. Real heats give a part of it, how "
                "much depends on what holds the piece.",
            ),
            butt_shrinkage=_butt(steps, weld_area, thickness, root_gap),
            fillet_shrinkage=_fillet(steps, leg, thickness),
        ),
        cautions=_CAUTIONS,
        steps=tuple(steps),
        beside=lambda: ((_limits(rules), _effects()), (_picture(row.highest, light, rules),)),
    )  # fmt: skip


def _first_red(light: str) -> float:
    return float(next(c.temperature for c in colours("glow") if c.name == _FIRST_RED[light]))


def _look(aim: float, light: str, rules: str) -> str:
    first = _first_red(light)
    where = {"dark": "the dark", "shade": "the shade", "daylight": "daylight", "sun": "full sun"}[light]
    if first >= aim - MARGIN:
        return f"in {where} the first red you can see is at {degrees(first, rules)}: that is already the end. Work in the shade"
    return f"a dull red that you begin to see in {where} at {degrees(first, rules)}; a clear dark red is too hot"


def _butt(steps: list[Step], area: float | None, thickness: float, gap: float) -> Figure:
    if area is None:
        return Figure(None, "", "practice", words="give the section of the weld to see it")
    long = worked(
        steps, "Butt weld, long form", butt_shrinkage, weld_area=area, thickness=thickness, root_gap=gap
    )
    short = worked(
        steps,
        "Butt weld, short form",
        simple_butt_shrinkage,
        weld_area=area,
        thickness=thickness,
        factor=0.1,
    )
    return Figure(
        long, "spraragen-1950", "memory", low=short, high=long,
        basis=f"The long form; the short form, 0.10 of section over thickness, gives half and is the low end. {WEAK}",
    )  # fmt: skip


def _fillet(steps: list[Step], leg: float | None, thickness: float) -> Figure:
    if leg is None:
        return Figure(None, "", "practice", words="give the leg of the fillet to see it")
    if leg > 0.75 * thickness * (1 + 1e-9):
        words = "the rule ends at a leg of three quarters of the thickness"
        return Figure(None, "blodgett-1966", "memory", words=words, basis=WEAK)
    tee = worked(steps, "Tee with a fillet on each side", tee_shrinkage, leg=leg, thickness=thickness)
    lap = worked(steps, "Lap with two fillets", lap_shrinkage, leg=leg, thickness=thickness)
    return Figure(
        tee,
        "blodgett-1966",
        "memory",
        low=tee,
        high=lap,
        basis=f"A tee; a lap joint is the high end. {WEAK}",
    )


def _limits(rules: str) -> Table:
    rows = tuple(
        (row.steel, degrees(row.highest, rules), source_words(row.source))
        for row in table("flame-straightening")
    )
    return Table(
        "Highest temperature by steel", ("Steel", "Never hotter than", "Source"), rows, "All from memory."
    )


def _effects() -> Table:
    rows = tuple(
        (row.effect, row.words, source_words(row.source)) for row in table("flame-straightening-effects")
    )
    return Table(
        "What it does to the steel",
        ("What", "How much", "Source"),
        rows,
        "Read in the abstract of the study.",
    )


def _picture(limit: float, light: str, rules: str) -> Picture:
    rows = colours("glow")[:7]
    below = [place for place, each in enumerate(rows) if each.temperature <= limit]
    sentence = (
        f"The pointer stands at the last color below {degrees(limit, rules)}; the rows under it are too hot. "
        f"In your light red begins at {degrees(_first_red(light), rules)}."
    )
    drawn = [(each.tint, each.name, degrees(each.temperature, rules)) for each in rows]
    return swatches.drawing(drawn, below[-1:], "How hot is too hot", sentence)


_CAUTIONS = (
    caution("closed-part"),
    caution("weakened-part"),
    caution("coating-fume"),
    caution("work-springs"),
    caution("quench"),
)
