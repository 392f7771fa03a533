"""The ground round a flame: what to clear, how far sparks go, whether a watch is needed."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.answer.sentences import degrees, distance
from calc.ask.errors import InputError
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Answer, Caution, Choice, Field, Figure, Shown, Step, Table, calculator, worked
from calc.formulas.setup.ruled import amount
from calc.formulas.setup.sparks import Flight, farthest_flight, widened_reach
from calc.show.drawings import zone
from calc.trade.safety.surroundings import clear_distance, fire_watch, guided_reach, reach_row
from calc.values.numbers import plain_number
from calc.values.quantities import Length
from calc.values.units import from_si, to_si

FAR = ("ft", "m")
PROCESSES = {
    "soldering": "Soldering",
    "brazing": "Brazing",
    "welding": "Gas welding",
    "cutting": "Oxygen cutting",
    "heating": "Heating, bending, straightening",
}
OPENINGS = {
    "none": "None found, and I looked",
    "wall": "In a wall: door, window, crack, gap",
    "floor": "In the floor: hole, crack, hatch",
    "duct": "Ducts, chutes or conveyors",
    "several": "Several of these, or nobody looked",
}
FLOORS = {
    "bare": "Bare concrete, stone or earth",
    "wood": "Wood or other that burns",
    "metal": "Metal deck or grating",
    "litter": "Chips, dust, oil, paper on it",
}
WALLS = {
    "none": "None within the distance",
    "masonry": "Brick or concrete",
    "metal": "Metal wall, ceiling or roof",
    "wood": "Wood or other that burns",
    "panel": "Metal or a panel with a covering or a filling that burns",
    "hidden": "I do not know what is in it",
}
PIPES = {"none": "None", "pipes": "Pipes, ducts or beams run from the work through a wall or floor"}
STUFF = {
    "ordinary": "Wood, cardboard, boxes, furniture",
    "easy": "Dust, fluff, paper, straw, foam, solvent rags",
    "vapour": "Flammable vapour, gas or dust in the air",
}
STUFF_LABEL = "What burns there"
WALL_LABEL = "Wall, ceiling or roof near the work"
SIZES = (0.5, 1.0, 2.0, 3.0)
DRAG_BAND = 1.043
"""Other drag laws move the reach by up to 4.3 %."""
ROLLS = to_si(2.5, "m")
"""Rolling on a hard floor after the flight: DGUV 205-001 table 7, read."""
HAIR = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class HotWorkZone:
    """The ground round a flame."""

    clear_distance: Annotated[Figure, Shown("Clear of anything that burns", FAR, toward="up")]
    spark_reach: Annotated[Figure, Shown("Sparks can go", FAR, toward="up")]
    watch: Annotated[Figure, Shown("Fire watch", words=True)]
    fire_watch: Annotated[Figure, Shown("It lasts, after the last flame", ("min",), toward="up")]
    opposite_reach: Annotated[
        Figure, Shown("Behind the main throw, in print", FAR, toward="up", group="Sparks in print")
    ]
    upward_reach: Annotated[Figure, Shown("Upward, in print", FAR, toward="up", group="Sparks in print")]
    downward_reach: Annotated[
        Figure, Shown("Downward, in print", FAR, toward="up", group="Sparks in print")
    ]


@calculator("hot-work-zone", "Clear the ground round a flame")
def hot_work_zone(
    *,
    process: Annotated[str, Choice("Work", PROCESSES, example="cutting")],
    height: Annotated[
        float,
        Field(
            "Height of the work above the lowest floor that sparks can reach",
            FAR,
            example={"us": "3 ft", "iso": "1 m", "uk": "1 m"},
            low="0 m",
            high="30 m",
        ),
    ],
    nearest: Annotated[
        float | None,
        Field(
            "Nearest thing that burns",
            FAR,
            example={"us": "20 ft", "iso": "6 m", "uk": "6 m"},
            low="0 m",
            high="200 m",
            optional=True,
            hint="Look behind walls, above and below too. Leave it out only where there is nothing at all.",
        ),
    ],
    stuff: Annotated[str, Choice(STUFF_LABEL, STUFF, assumed="ordinary")],
    openings: Annotated[str, Choice("Openings near the work", OPENINGS, assumed="several")],
    floor: Annotated[str, Choice("Floor", FLOORS, assumed="wood")],
    wall: Annotated[str, Choice(WALL_LABEL, WALLS, assumed="hidden")],
    pipes: Annotated[str, Choice("Pipes and beams", PIPES, assumed="pipes")],
    rules: str,
) -> Answer[HotWorkZone]:
    """What to clear before a flame, how far sparks go, and whether a watch is needed.

    The rule's distance is the least. Sparks have gone further than it, above all from a
    height.
    """  # fmt: skip
    _refuse(stuff, wall)
    steps: list[Step] = []
    clear = clear_distance(rules, process, height)
    assert clear.value is not None
    drop = next(row for row in table("spark-drops") if row.process == process)
    flight = farthest_flight(drop.largest, height, drop.speed)
    reach = _reach(steps=steps, process=process, height=height, flight=flight, floor=floor, rules=rules)
    assert reach.value is not None
    near, far = clear.value, reach.value
    row = reach_row(process)
    named = (
        ""
        if row.process == process
        else f"No print names {PROCESSES[process].lower()}; this is for welding."
    )
    watch = _watch(
        clear=clear.value,
        reach=reach.value,
        nearest=nearest,
        stuff=stuff,
        openings=openings,
        floor=floor,
        wall=wall,
        pipes=pipes,
        rules=rules,
    )
    return Answer(
        HotWorkZone(
            clear_distance=clear,
            spark_reach=reach,
            watch=watch,
            fire_watch=fire_watch(rules),
            opposite_reach=Figure(
                guided_reach(process, height) * (row.opposite_share or 1.0), row.source, row.how_sure,
                basis=f"Half the main throw for cutting and soldering, else the whole. {named}".strip(),
                words="may go further",
            ),
            upward_reach=Figure(row.upward, row.source, row.how_sure, basis=named, words="may go further"),
            downward_reach=Figure(
                max(row.downward, height), row.source, row.how_sure, basis=named, words="may go further"
            ),
        ),
        cautions=_cautions(process, wall),
        steps=tuple(steps),
        beside=lambda: (
            (_measures(openings, floor, wall, pipes, rules), _print(rules)),
            (zone.drawing(clear=near, reach=far, height=height, path=flight.path, nearest=nearest, rules=rules),),
        ),
        drawn=lambda: ((_drops(height, drop.speed, rules),), ()),
    )  # fmt: skip


def _printed(process: str) -> list[tuple[Length, str, str]]:
    """Reaches in print beside the German ones: far end, source, how sure."""
    return [
        (to_si(row.number_high, row.unit), row.source, row.how_sure)
        for row in table("spark-reach-print")
        if row.process == process and row.number_high is not None
    ]


def _reach(
    *, steps: list[Step], process: str, height: Length, flight: Flight, floor: str, rules: str
) -> Figure:
    row = reach_row(process)
    guided = worked(
        steps, "German guidance for that height", widened_reach,
        level=row.level, work_height=max(height, row.height), plain_height=row.height, widening=row.widening,
    )  # fmt: skip
    rolls = ROLLS if floor != "litter" else 0.0
    flown = flight.reach + rolls
    told = [(guided, row.source, row.how_sure), *_printed(process), (flown, "steel-drop", "computed")]
    value, source, how_sure = max(told)
    most = max(value, flight.reach * DRAG_BAND + rolls)
    rolled = f" and rolls {distance(ROLLS, rules)} on a hard floor" if rolls else ""
    drop = next(r for r in table("spark-drops") if r.process == process)
    return Figure(
        value, source, how_sure, low=min(length for length, *_ in told), high=most,
        basis=f"The farthest of what is printed and of a drop of {from_si(drop.largest, 'mm'):g} mm at {drop.speed:g} m/s (assumed, "
        f"from memory), which flies {distance(flight.reach, rules)}{rolled}. Wind and updraft add to it.",
        words="may go further",
    )  # fmt: skip


def _watch(
    *,
    clear: Length, reach: Length, nearest: Length | None, stuff: str, openings: str, floor: str, wall: str, pipes: str, rules: str
) -> Figure:  # fmt: skip
    named = max(clear, clear_distance("us").value or 0.0)
    far = distance(named, rules, 3, "up")
    grounds = []
    if nearest is not None and nearest < named * (1 - HAIR):
        grounds.append(f"things that burn nearer than {far}")
    elif nearest is not None and stuff == "easy":
        grounds.append("things further off that sparks light easily")
    elif nearest is not None and nearest < reach:
        grounds.append("things that burn within the reach of sparks")
    if openings != "none":
        grounds.append(f"openings within {far} with something that burns beyond, or nobody looked")
    if wall in ("metal", "hidden") or floor == "metal" or pipes == "pipes":
        grounds.append("metal or pipes that carry heat to the other side")
    if floor in ("wood", "litter") or wall == "wood":
        grounds.append("a floor or wall that burns")
    if grounds:
        said = f"needed: {'; '.join(grounds)}"
    else:
        said = (
            "no ground of the rule in what you gave; if nobody looked behind, above and below, post one. A permit or an "
            "insurer may ask for one all the same"
        )
    foreign = (
        ""
        if rules == "us"
        else " These are the United States grounds; our data has none for this rule set."
    )
    return Figure(
        None, "cfr1910-252 (a)(2)(iii)(A)", "read", words=said,
        basis="Grounds: things that burn within 35 ft (10.7 m), further ones that light easily, openings within 35 ft, metal "
        f"walls with something behind. The watcher has an extinguisher, knows how to use it and how to raise the alarm.{foreign}",
    )  # fmt: skip


def _measures(openings: str, floor: str, wall: str, pipes: str, rules: str) -> Table:
    topics = {"all", f"floor-{floor}", f"wall-{wall}", pipes}
    topics |= {f"openings-{o}" for o in ("wall", "floor", "duct") if openings in (o, "several")}
    return Table(
        "Before the flame",
        ("Do", "Source"),
        tuple(
            (
                row.words,
                ", ".join(p for p in (source_words(row.source), HOW_SURE[row.how_sure]) if p),
            )
            for row in table("hot-work-measures")
            if row.topic in topics and row.rules in ("any", rules)
        ),
        "United States rules unless they name another country." if rules != "us" else "",
    )


def _drops(height: Length, speed: float, rules: str) -> Table:
    rows = []
    for size in SIZES:
        flight = farthest_flight(size / 1000, height, speed)
        rows.append(
            (
                f"{size:g} mm",
                distance(flight.reach, rules),
                f"{plain_number(flight.time, 2)} s",
                degrees(flight.temperature, rules),
            )
        )
    return Table(
        f"Drops of molten steel at {speed:g} m/s from {distance(height, rules) if height else 'the floor'}",
        ("Across", "Flies", "In the air", "Lands at"),
        tuple(rows),
        "Drag, gravity and cooling in still air, no burning on the way: a drop that burns lands hotter. Wood, paper and cloth "
        "light at 200 to 400 °C (390 to 750 °F).",
    )  # fmt: skip


def _print(rules: str) -> Table:
    def span(low: float, high: float | None, unit: str) -> str:
        told = distance(to_si(low, unit), rules, 3)
        return told if high is None else f"{told} to {distance(to_si(high, unit), rules, 3)}"

    rows = [
        (f"clear, {row.process}", distance(amount(row), rules, 3), row.words, row.source, row.how_sure)
        for row in table("clear-distances")
    ]
    rows += [
        (f"sparks, {row.process}", span(row.number_low, row.number_high, row.unit), row.words, row.source, row.how_sure)
        for row in table("spark-reach-print")
    ]  # fmt: skip
    return Table(
        "What is in print",
        ("What", "Distance", "", "Source"),
        tuple((a, b, c, f"{source_words(s)}, {HOW_SURE[h]}".removeprefix(", ")) for a, b, c, s, h in rows),
        "They disagree. We follow the rule set for the least, and show beside it how far sparks have gone.",
    )


def _refuse(stuff: str, wall: str) -> None:
    """No distance holds where the air explodes or the wall burns inside: 29 CFR 1910.252 (a)(2)(vi)(C), (xi)."""
    if stuff == "vapour":
        raise InputError(
            "stuff",
            STUFF_LABEL,
            "light no flame here at all, as vapour, gas or dust in the air explodes at any distance; clear the "
            "air, have it tested, and then pick what else burns there.",
        )
    if wall == "panel":
        raise InputError(
            "wall",
            WALL_LABEL,
            "put no flame near a wall, ceiling or roof that burns inside, at any distance; take the work "
            "elsewhere, or join it another way.",
        )


def _cautions(process: str, wall: str) -> tuple[Caution, ...]:
    told = [
        caution("heat-behind"),
        caution("closed-part"),
        caution("cutting-sparks" if process == "cutting" else "fire-near"),
        *brought({"process": process}),
    ]
    if wall == "hidden":
        told.append(caution("combustible-panel"))
    return gravest_first(told)
