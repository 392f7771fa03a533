"""Air for the work: when a fan is asked for, how much, hoods, leaks and fume."""

from dataclasses import dataclass
from typing import Annotated, Any

from calc.answer.hazards import brought, caution, gravest_first
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Answer, Choice, Field, Figure, Shown, Step, Table, calculator, worked
from calc.declare.inputs import FREE_GAS_FLOW, LENGTH, NUMBER
from calc.formulas.setup.rooms import (
    OXYGEN_IN_AIR,
    ROOM_OXYGEN,
    dilution_flow,
    spent_air_time,
    time_to_share,
)
from calc.formulas.setup.ruled import Ruled, amount, ruled_row
from calc.trade.printed import printed_figures
from calc.trade.safety import fumes
from calc.trade.safety.gate import metal_verdict
from calc.values.numbers import Toward, plain_number, rounded
from calc.values.quantities import Length
from calc.values.units import from_si, written

AIR_FLOW = ("ft^3/min", "m^3/h")
ROOM = ("ft^3", "m^3")
FUELS = {row.gas: row.name for row in table("flammable-limits")}
CROSS_FLOW = {
    "free": "Air can cross the room freely",
    "blocked": "Partitions, screens or stacks block it",
}
QUARTER = 0.25
"""Share of the lower flammable limit for a room as a whole: common practice."""
MIXED = "mixed-room"
LEAK_BASIS = (
    "The room reckoned mixed throughout, which it never is: the jet at the leak is flammable whatever the air. "
    "A sum against fire and explosion: it does not make the air fit to breathe. Shut the leak first."
)
HAIR = 1e-9
MORE = "; what comes off asks for more, see below"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ventilation:
    """Air for the work."""

    mechanical: Annotated[Figure, Shown("Mechanical ventilation", words=True, group="Air")]
    air_flow: Annotated[Figure, Shown("Air to move", AIR_FLOW, toward="up", group="Air")]
    hood_flow: Annotated[Figure, Shown("Air through a hood", AIR_FLOW, toward="up", group="Air")]
    hood_duct: Annotated[Figure, Shown("Its duct, across", LENGTH, toward="up", group="Air")]
    given_off: Annotated[Figure, Shown("What comes off", words=True, group="Fume")]
    before_heat: Annotated[Figure | None, Shown("Before any heat", words=True, group="Fume")]
    fume_measure: Annotated[Figure, Shown("What the rules ask against it", words=True, group="Fume")]
    spent_air_time: Annotated[
        Figure,
        Shown("Flame takes a shut room to 19.5 % oxygen", ("min",), toward="down", digits=2, group="Fume"),
    ]
    leak_air_quarter: Annotated[
        Figure,
        Shown(
            "Air that holds a leak to a quarter of what burns", AIR_FLOW, toward="up", digits=2, group="Leak"
        ),
    ]
    leak_air_tenth: Annotated[
        Figure, Shown("Air that holds it to a tenth of what burns", AIR_FLOW, toward="up", digits=2, group="Leak")
    ]
    leak_time_quarter: Annotated[
        Figure,
        Shown("Without air, to a quarter of what burns", ("min",), toward="down", digits=2, group="Leak"),
    ]
    leak_time_tenth: Annotated[
        Figure, Shown("Without air, to a tenth of what burns", ("min",), toward="down", digits=2, group="Leak")
    ]  # fmt: skip


def _ruled(topic: str, rules: str) -> Ruled:
    return ruled_row("ventilation", rules, amount, topic=topic)


def _foreign(found: Ruled) -> str:
    return f"United States figure. {found.note}" if found.note else ""


@calculator("ventilation", "Air for the work")
def ventilation(
    *,
    place: Annotated[str, Choice("Where you work", fumes.PLACES, example="indoors")],
    room: Annotated[
        float,
        Field(
            "Volume of the room",
            ROOM,
            example={"us": "12000 ft^3", "iso": "340 m^3", "uk": "340 m^3"},
            low="1 m^3",
            high="100000 m^3",
            hint="Length by width by height.",
        ),
    ],
    ceiling: Annotated[
        float,
        Field(
            "Height of the ceiling",
            ("ft", "m"),
            example={"us": "12 ft", "iso": "3.6 m", "uk": "3.6 m"},
            low="1 m",
            high="50 m",
        ),
    ],
    welders: Annotated[
        float, Field("People at a torch at once", NUMBER, example="6", low="1", high="100", whole=True)
    ],
    cross_flow: Annotated[str, Choice("Air across the room", CROSS_FLOW, assumed="free")],
    metal: Annotated[str, Choice("Metal", fumes.options("metal"), assumed="low-carbon-steel")],
    coating: Annotated[str, Choice("Coating on it", fumes.options("coating"), assumed="unknown")],
    filler: Annotated[
        str, Choice("Rod, brazing alloy or solder", fumes.options("filler"), assumed="steel")
    ],
    flux: Annotated[str, Choice("Flux", fumes.options("flux"), assumed="none")],
    hood_distance: Annotated[
        float | None,
        Field(
            "From the work to the hood",
            LENGTH,
            example={"us": "9 in", "iso": "230 mm", "uk": "230 mm"},
            low="1 in",
            high="12 in",
            optional=True,
            too_high="the table of hoods ends there: bring it nearer",
        ),
    ],
    fuel: Annotated[str, Choice("Fuel gas that might leak", FUELS, assumed="acetylene", outfit="fuel")],
    leak: Annotated[
        float,
        Field(
            "Leak to reckon with",
            FREE_GAS_FLOW,
            assumed={"us": "1 cfh", "iso": "30 L/h", "uk": "30 L/h"},
            low="0.1 L/h",
            high="20000 L/h",
        ),
    ],
    mixing: Annotated[
        float,
        Field(
            "Times the ideal air",
            NUMBER,
            assumed="10",
            low="3",
            high="10",
            hint="3 where fans mix the air well, 10 where nobody knows.",
        ),
    ],
    fuel_flow: Annotated[
        float,
        Field(
            "Acetylene that all the flames take",
            FREE_GAS_FLOW,
            assumed={"us": "10 cfh", "iso": "300 L/h", "uk": "300 L/h"},
            low="10 L/h",
            high="100000 L/h",
        ),
    ],
    rules: str,
) -> Answer[Ventilation]:
    """When the rules ask for a fan, how much air, and what comes off the work.

    Least figures. None of them certifies that air is fit to breathe, or lets anyone
    into a confined space.
    """  # fmt: skip
    picked = {"metal": metal, "coating": coating, "filler": filler, "flux": flux}
    steps: list[Step] = []
    rate = _ruled("rate", rules)
    gas = next(row for row in table("flammable-limits") if row.gas == fuel)
    tenth = amount(ruled_row("air-limits", rules, lambda row: -amount(row), topic="fuel-share").row)
    least = amount(ruled_row("air-limits", rules, amount, topic="deficient").row)
    hood_flow, hood_duct = _hood(hood_distance, "cadmium" in fumes.substances(picked), rules)
    airs, times = {}, {}
    for share in (QUARTER, tenth):
        limit = share * gas.low
        air = worked(
            steps, f"Air that holds the leak to {share * 100:g} % of the limit", dilution_flow,
            leak=leak, limit_share=limit, mixing=mixing, fresh_share=0.0,
        )  # fmt: skip
        time = worked(
            steps, f"Time to {share * 100:g} % of the limit", time_to_share,
            steady=1.0, room=room, leak=leak, fresh=0.0, first_share=0.0, limit_share=limit,
        )  # fmt: skip
        airs[share] = Figure(air, MIXED, "computed", basis=f"{_limit_words(gas)} {LEAK_BASIS}")
        times[share] = Figure(time, MIXED, "computed", basis=LEAK_BASIS, words="at the leak at once")
    spent = worked(
        steps, "Time to 19.5 % oxygen in a shut room", spent_air_time,
        room=room, first_share=OXYGEN_IN_AIR, limit_share=least, flow=fuel_flow, oxygen_ratio=ROOM_OXYGEN,
    )  # fmt: skip
    return Answer(
        Ventilation(
            mechanical=_mechanical(place, room / welders, ceiling, cross_flow, rules, fume=fumes.asks(picked, place)),
            air_flow=Figure(
                amount(rate.row) * welders, rate.row.source, rate.row.how_sure, words=_foreign(rate),
                basis=f"{plain_number(from_si(amount(rate.row), 'ft^3/min'))} ft³/min (57 m³/min) for each welder, "
                "the least where mechanical ventilation is asked for and no hood or respirator does the work.",
            ),
            hood_flow=hood_flow,
            hood_duct=hood_duct,
            given_off=fumes.given_off(picked),
            before_heat=_before_heat(metal, coating, rules),
            fume_measure=fumes.measure(picked, place, rules),
            spent_air_time=Figure(
                spent, MIXED, "computed",
                basis="1.5 of oxygen from the room for one of acetylene. Carbon monoxide and nitrogen dioxide harm "
                "long before that; no sum gives their amount.",
            ),
            leak_air_quarter=airs[QUARTER],
            leak_air_tenth=airs[tenth],
            leak_time_quarter=times[QUARTER],
            leak_time_tenth=times[tenth],
        ),
        cautions=gravest_first((*CAUTIONS, *brought({**picked, "place": place, "fuel": fuel}))),
        steps=tuple(steps),
        tables=(
            fumes.limits_table([*fumes.substances(picked), *fumes.BURNT_AIR, fuel], rules),
            _hoods_table(rules),
            _flammable_table(),
            printed_figures(("ventilation", "air-limits"), rules, rooms=("space-per-welder",)),
            _explosion_table(),
        ),
    )  # fmt: skip


def _before_heat(metal: str, coating: str, rules: str) -> Figure | None:
    """What the gate refuses or wants done first by metal and coating alone; None where it wants nothing."""
    reasons = metal_verdict("heating", metal, coating, None, rules).reasons
    if not reasons:
        return None
    return Figure(
        None, reasons[0].source, reasons[0].how_sure, words=" ".join(dict.fromkeys(f"{one.words}: {one.order}" for one in reasons)),
        basis="As on the page May I heat this? What follows is for what is left after that.",
    )  # fmt: skip


def _mechanical(
    place: str, space: float, ceiling: Length, cross_flow: str, rules: str, *, fume: bool
) -> Figure:
    """Whether the rule on clean air asks for a fan, and whether what comes off asks for more."""
    wanted_space, wanted_ceiling = _ruled("space-per-welder", rules), _ruled("ceiling", rules)
    grounds = []
    if place == "confined":
        grounds.append("a confined space")
    if space < amount(wanted_space.row) * (1 - HAIR):
        grounds.append("less than 10,000 ft³ (284 m³) for each welder")
    if ceiling < amount(wanted_ceiling.row) * (1 - HAIR):
        grounds.append("a ceiling below 16 ft (5 m)")
    if cross_flow == "blocked":
        grounds.append("partitions that block the air")
    if place == "outdoors":
        said = "outdoors the rule names none; stand so that the wind crosses the work"
        said += MORE if fume else ""
    elif grounds:
        said = f"asked for: {'; '.join(grounds)}{MORE if fume else ''}"
    else:
        said = "not asked for by the rule's three grounds"
        said += MORE if fume else "; toxic fume and your own eyes may still ask for a hood"
    return Figure(
        None, "cfr1910-252 (c)(2)(i)", wanted_space.row.how_sure, words=said,
        basis=" ".join(
            part
            for part in (
                "Three grounds: space for each welder, ceiling, blocked air. The number of people, the height and what "
                "comes off count too.",
                _foreign(wanted_space),
            )
            if part
        ),
    )  # fmt: skip


def _hood(distance: Length | None, cadmium: bool, rules: str) -> tuple[Figure, Figure]:
    if distance is None:
        missing = Figure(
            None, "cfr1910-252 (c)(3)(i)", "read", words="give the distance from the work to the hood"
        )
        return missing, missing
    rows = table("hoods")
    row = next((row for row in rows if distance < row.below * (1 - HAIR)), rows[-1])
    more = "more than this for cadmium" if cadmium else ""
    speed = _ruled("hood-speed", rules)
    words = "; ".join(part for part in (more, _foreign(speed)) if part)
    basis = (
        "A flanged slot 3 in (75 mm) wide, 4000 ft/min in the duct, so that 100 ft/min (30 m/min) reaches the "
        "farthest place of the work. On the line between two rows the larger holds."
    )
    return (
        Figure(row.flow, row.source, row.how_sure, basis=basis, words=words),
        Figure(row.duct, row.source, row.how_sure, basis=basis),
    )


def _limit_words(gas: Any) -> str:
    return f"Lower limit of {gas.name.lower()} in air: {plain_number(from_si(gas.low, '%'))} %."


def _hoods_table(rules: str) -> Table:
    units = ("in", "ft^3/min", "in") if rules == "us" else ("mm", "m^3/h", "mm")

    def text(value: float, unit: str, toward: Toward = "nearest") -> str:
        return rounded(from_si(value, unit), 3, toward)

    rows = tuple(
        (
            f"{text(row.above, units[0])} to {text(row.below, units[0])}",
            text(row.flow, units[1], "up"),
            text(row.duct, units[2], "up"),
        )
        for row in table("hoods")
    )
    heads = (f"Hood to work, {units[0]}", f"Air, {written(units[1])}", f"Duct, {units[2]}")
    return Table(
        "Hoods by distance", heads, rows,
        "29 CFR 1910.252 (c)(3)(i), read in a copy. A fixed enclosure has a top and two sides or more and draws "
        "100 ft/min (30 m/min) away from the welder.",
    )  # fmt: skip


def _flammable_table() -> Table:
    def number(value: float | None, unit: str) -> str:
        return "" if value is None else plain_number(value if unit == "1" else from_si(value, unit), 3)

    return Table(
        "Fuel gases in air",
        ("Gas", "Burns from, %", "to, %", "Lights at, °C", "Weight, air 1", "Source"),
        tuple(
            (
                row.name,
                number(row.low, "%"),
                number(row.high, "%"),
                number(row.lights, "degC"),
                number(row.air_weight, "1"),
                "; ".join(p for p in (source_words(row.source), HOW_SURE[row.how_sure], row.words) if p),
            )
            for row in table("flammable-limits")
        ),
        "Heavier than 1 sinks into pits, cellars and drains. Other texts print 2.4 or 2.5 % for acetylene's lower limit.",
    )


def _explosion_table() -> Table:
    return Table(
        "Shares of gas in the air set against explosions, not for breathing",
        ("Gas", "Most, %", "What it is", "Source"),
        tuple(
            (
                row.name,
                plain_number(from_si(row.number, "%"), 3),
                row.words,
                f"{source_words(row.source)}, {HOW_SURE[row.how_sure]}",
            )
            for row in table("explosion-limits")
        ),
        "What may be breathed stands in the table of limits above; for a poison it is far less.",
    )


CAUTIONS = (
    caution("leak-beside"),
)
