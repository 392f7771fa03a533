"""How soon leaking oxygen makes a space enriched."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import caution
from calc.answer.sentences import duration
from calc.data.tables import table
from calc.declare import Answer, Field, Figure, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import FREE_GAS_FLOW
from calc.formulas.setup.rooms import (
    OXYGEN_IN_AIR,
    dilution_flow,
    share_after,
    steady_share,
    time_to_share,
)
from calc.formulas.setup.ruled import amount, ruled_row
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.values.numbers import plain_number, rounded
from calc.values.units import from_si, to_si, written

AIR_FLOW = ("ft^3/min", "m^3/h")
ROOM = ("ft^3", "m^3")
MIXED = "mixed-room"
NOT_MIXED = "The air is reckoned mixed throughout, which it never is: beside the leak and low down it is rich at once."
LEAST_MIXING, MOST_MIXING = 3.0, 10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class OxygenRich:
    """What leaking oxygen makes of a space."""

    condition: Annotated[Figure, Shown("The air now, by the worse figure", words=True)]
    time_to_22: Annotated[Figure, Shown("To 22 % oxygen", ("min",), toward="down", digits=2)]
    time_to_23_5: Annotated[Figure, Shown("To 23.5 % oxygen", ("min",), toward="down", digits=2)]
    oxygen_then: Annotated[Figure, Shown("Oxygen after that time", ("%",), toward="up")]
    oxygen_at_last: Annotated[Figure, Shown("Oxygen in the end", ("%",), toward="up")]
    air_needed: Annotated[
        Figure, Shown("Fresh air that holds the mixed space at 22 %", AIR_FLOW, toward="up", digits=2)
    ]


def enriched_limits() -> tuple[float, float]:
    """The two limits above which air counts as enriched: shipyards, general."""
    rows = [row for row in table("air-limits") if row.topic == "enriched" and row.rules == "us"]
    low, high = sorted(amount(row) for row in rows)
    return low, high


def _condition(first: float, then: float, rules: str) -> Figure:
    """What the air is by the worse of both shares: the one given and the one that the leak has made of it."""
    deficient = ruled_row("air-limits", rules, amount, topic="deficient")
    enriched = ruled_row("air-limits", rules, lambda row: -amount(row), topic="enriched")
    shipyard, general = enriched_limits()
    least, lowest, highest = amount(deficient.row), min(first, then), max(first, then)
    said = []
    if lowest < least - 1e-9:
        said.append(f"short of oxygen, below {from_si(least, '%'):g} %: people faint without a warning. Go out")
    if highest > general + 1e-9:
        said.append(
            f"enriched, above {from_si(general, '%'):g} %: things burn fiercely. Go out, no spark, no flame"
        )
    elif highest > shipyard + 1e-9:
        said.append(
            f"enriched by the shipyard rule, above {from_si(shipyard, '%'):g} %, not yet by the general one, "
            f"{from_si(general, '%'):g} %. Go out, no spark, no flame"
        )
    if not said:
        said.append(
            "between the limits if it were mixed; beside the leak it is rich all the same. No sum lets anyone in, "
            "only a meter does"
        )
    also = " UK guidance calls 24 % already dangerous." if rules == "uk" else ""
    note = f" United States figures. {enriched.note}" if enriched.note else ""
    return Figure(
        None, enriched.row.source, enriched.row.how_sure, words=". Then ".join(said),
        basis="The worse of two: the oxygen you gave, and the oxygen after the time that the leak ran. "
        f"Limits: 19.5 % and 23.5 % in general, 22.0 % in shipyards.{also}{note}",
    )  # fmt: skip


def _time(
    *,
    steps: list[Step], says: str, limit: float, steady: float, room: float, leak: float, fresh: float, first: float
) -> Figure:  # fmt: skip
    if first >= limit * (1 - 1e-12):
        return Figure(0.0, MIXED, "computed", basis=NOT_MIXED, words="it is there already")
    if steady <= limit * (1 + 1e-9):
        return Figure(
            None, MIXED, "computed", basis=NOT_MIXED,
            words="not in the mixed space, while that air keeps coming; beside the leak at once",
        )  # fmt: skip
    found = worked(
        steps, says, time_to_share,
        steady=steady, room=room, leak=leak, fresh=fresh, first_share=first, limit_share=limit,
    )  # fmt: skip
    return Figure(found, MIXED, "computed", basis=NOT_MIXED, words="sooner beside the leak")


@calculator("oxygen-rich", "How soon leaking oxygen fills a space")
def oxygen_rich(
    *,
    room: Annotated[
        float,
        Field(
            "Volume of the space",
            ROOM,
            example={"us": "800 ft^3", "iso": "25 m^3", "uk": "25 m^3"},
            low="0.1 m^3",
            high="20000 m^3",
            hint="Length by width by height. A small cellar room is about 800 ft³, 25 m³.",
        ),
    ],
    leak: Annotated[
        float,
        Field(
            "Oxygen that leaks",
            FREE_GAS_FLOW,
            example={"us": "20 cfh", "iso": "600 L/h", "uk": "600 L/h"},
            low="1 L/h",
            high="200000 L/h",
            hint="A torch valve left open passes what the torch takes; an open hose passes far more.",
        ),
    ],
    fresh_air: Annotated[
        float,
        Field(
            "Fresh air that comes in",
            AIR_FLOW,
            assumed={"us": "0 ft^3/min", "iso": "0 m^3/h", "uk": "0 m^3/h"},
            low="0 m^3/h",
            high="200000 m^3/h",
        ),
    ],
    oxygen_now: Annotated[
        float,
        Field(
            "Oxygen in its air when the leak began",
            ("%",),
            assumed="20.95 %",
            low="5 %",
            high="60 %",
            hint="Plain air holds 20.8 to 21 %. If a meter reads it now, give that and 0 min for the leak.",
        ),
    ],
    waiting: Annotated[
        float,
        Field("The leak has gone on for", ("min", "h", "s"), assumed="30 min", low="0 s", high="72 h"),
    ],
    rules: str,
) -> Answer[OxygenRich]:
    """How soon leaking oxygen takes a space to the limits of an enriched air.

    Nothing here certifies an entry. Only a tested space, on a permit, is entered.
    """  # fmt: skip
    steps: list[Step] = []
    steady = worked(
        steps, "Where the mixed space ends", steady_share,
        leak=leak, fresh=fresh_air, leak_share=1.0, fresh_share=OXYGEN_IN_AIR,
    )  # fmt: skip
    shipyard, general = enriched_limits()
    then = worked(
        steps, "After that time", share_after,
        steady=steady, first_share=oxygen_now, leak=leak, fresh=fresh_air, room=room, waiting=waiting,
    )  # fmt: skip
    needed = worked(
        steps, "Fresh air for 22 %", dilution_flow,
        leak=leak, limit_share=shipyard, mixing=MOST_MIXING, fresh_share=OXYGEN_IN_AIR,
    )  # fmt: skip
    to_shipyard, to_general = (
        _time(steps=steps, says=f"Time to {from_si(limit, '%'):g} %", limit=limit, steady=steady, room=room, leak=leak, fresh=fresh_air, first=oxygen_now)
        for limit in (shipyard, general)
    )
    return Answer(
        OxygenRich(
            condition=_condition(oxygen_now, then, rules),
            time_to_22=to_shipyard,
            time_to_23_5=to_general,
            oxygen_then=Figure(then, MIXED, "computed", basis=NOT_MIXED),
            oxygen_at_last=Figure(
                steady, MIXED, "computed", basis="If the leak and the air go on as they are."
            ),
            air_needed=Figure(
                needed, MIXED, "computed", low=needed * LEAST_MIXING / MOST_MIXING, high=needed,
                basis="Ten times what ideal mixing would need; three times in a very well mixed space. First shut the leak.",
            ),
        ),
        cautions=CAUTIONS,
        steps=tuple(steps),
        beside=lambda: (
            (_by_air(room, leak, oxygen_now, (shipyard, general), rules),),
            (_course(room=room, leak=leak, fresh=fresh_air, first=oxygen_now, steady=steady, limits=(shipyard, general), to_general=to_general),),
        ),
    )  # fmt: skip


def _by_air(room: float, leak: float, first: float, limits: Sequence[float], rules: str) -> Table:
    unit = AIR_FLOW[0 if rules == "us" else 1]
    rows = []
    for number in (0, 10, 50, 200, 1000):
        fresh = to_si(float(number), unit)
        steady = steady_share(leak, fresh, 1.0, OXYGEN_IN_AIR)
        times = []
        for limit in limits:
            if first >= limit:
                times.append("already")
            elif steady <= limit * (1 + 1e-9):
                times.append("not in the mixed space")
            else:
                times.append(duration(time_to_share(steady=steady, room=room, leak=leak, fresh=fresh, first_share=first, limit_share=limit), "down"))
        rows.append((str(number), *times, f"{rounded(from_si(steady, '%'), 3, 'up')} %"))
    return Table(
        "The same leak with more fresh air",
        (f"Fresh air, {written(unit)}", "To 22 %", "To 23.5 %", "In the end"),
        tuple(rows),
        "Air from outside, let in low and far from the leak. Oxygen is never used as air.",
    )


def _course(
    *,
    room: float, leak: float, fresh: float, first: float, steady: float, limits: Sequence[float], to_general: Figure
) -> Picture:  # fmt: skip
    last = max(2 * (to_general.value or 1800.0), 120.0)
    scale, per = ("min", 60.0) if last < 3 * 3600 else ("h", 3600.0)
    points = tuple(
        (
            last * n / 24 / per,
            from_si(share_after(steady=steady, first_share=first, leak=leak, fresh=fresh, room=room, waiting=last * n / 24), "%"),
        )
        for n in range(25)
    )
    title = "Oxygen in the mixed space"
    sentence = (
        f"In {duration(last)} it goes from {plain_number(points[0][1], 3)} % to "
        f"{plain_number(points[-1][1], 3)} %; beside the leak it is rich from the start."
    )
    marks = [Mark(f"{from_si(limit, '%'):g} %", None, from_si(limit, "%")) for limit in limits]
    chart = line_chart(
        title=title, sentence=sentence, x_label=f"Leak has gone on, {scale}", y_label="Oxygen, %", lines=[Line("mixed space", points)], marks=marks
    )
    return Picture(chart, title, sentence)


CAUTIONS = (
    caution("oxygen-in-clothes"),
    caution("oxygen-not-air"),
    caution("space-air"),
    )
