"""The plan of a class as tables and drawings."""

from collections.abc import Sequence
from dataclasses import dataclass

from calc.class_plan.cost import Item
from calc.class_plan.cutting_list import TENTH, CuttingList
from calc.class_plan.gas import Taken, summed
from calc.class_plan.passes import Evening, Pass
from calc.class_plan.rota import INSTRUCTOR, PHASES, WORK, Slot, last_flame
from calc.class_plan.supplies import Done, Rods
from calc.class_plan.times import clock
from calc.declare import Picture, Table
from calc.show.drawings import stock_sheet, turns
from calc.show.scales import scale
from calc.values.numbers import plain_number, rounded

MOST_DRAWN = 6
"""Sheets drawn; the table has all of them."""
STOCKS = {"sheet": "sheet", "plate": "plate"}


@dataclass(frozen=True, slots=True)
class Stock:
    """One stock and what is cut from it.

    Attributes:
        stock: `sheet` or `plate`.
        thickness: As text.
        size: As the reader wrote it.
        cuts: The packing.
    """

    stock: str
    thickness: str
    size: str
    cuts: CuttingList

    @property
    def name(self) -> str:
        """What a reader calls it."""
        return f"{self.stock.capitalize()} {self.thickness}"


def sessions_table(
    evening: Evening, sessions: Sequence[Sequence[Pass]], start: int, days: Sequence[str], rules: str
) -> Table:
    """One row a session: what is done, when the last flame goes out, what is left."""
    rows = []
    for number, passes in enumerate(sessions, start=1):
        last = last_flame(evening, passes)
        rows.append(
            (
                f"{number}", days[number - 1] if days else "no day given",
                "; ".join(f"{one.exercise.title}: {one.tries} × {one.exercise.each} min" for one in passes),
                f"{sum(one.turn for one in passes)} min", clock(start + last, rules),
                clock(start + last + evening.watch, rules), f"{evening.length - last - evening.after} min",
            )
        )  # fmt: skip
    return Table(
        "Sessions",
        (
            "Session",
            "Day",
            "What everyone does",
            "Each at the torch",
            "Last flame",
            "Watch until",
            "Left over",
        ),
        tuple(rows),
        "A turn is all these tries one after the other, with the time it takes to get ready and to clean.",
    )


def rota_tables(slots: Sequence[Slot], start: int, rules: str) -> tuple[Table, ...]:
    """Two tables a session: the turns, a column for each bench; and what stands around them."""
    tables = []
    for session in sorted({slot.session for slot in slots}):
        own = [slot for slot in slots if slot.session == session]
        turning = [slot for slot in own if slot.phase == "turns"]
        benches = max(bench for slot in turning for bench, *_ in slot.hot)
        waiting = any(_others(slot) for slot in turning)
        rows = [
            (
                clock(start + slot.start, rules), f"{slot.exercise}, {slot.tries} ×",
                *(_at(slot, bench) for bench in range(1, benches + 1)), *([_others(slot)] if waiting else []),
            )
            for slot in turning
        ]  # fmt: skip
        around = [
            (
                clock(start + slot.start, rules), _part(slot),
                "; ".join(part for part in (_led(slot), _others(slot)) if part),
            )
            for slot in own
            if slot.phase != "turns"
        ]  # fmt: skip
        heads = (*(f"Bench {n}" for n in range(1, benches + 1)), *(["The others"] if waiting else []))
        tables += [
            Table(
                f"Turns of session {session}", ("From", "What", *heads), tuple(rows),
                "Before the stroke who holds the torch, after it who watches.",
            ),
            Table(
                f"Before and after the turns of session {session}", ("From", "Part", "Learners"), tuple(around),
                "Who watches for fire has an extinguisher at hand. The instructor holds no torch but in the demonstration, and stays to the end.",
            ),
        ]  # fmt: skip
    return tuple(tables)


def _part(slot: Slot) -> str:
    return f"{PHASES[slot.phase]}: {slot.exercise}" if slot.exercise else PHASES[slot.phase]


def _led(slot: Slot) -> str:
    """Who watches the instructor's torch, or nothing."""
    return "; ".join(
        f"{watcher}: watch bench {bench}" for bench, operator, watcher in slot.hot if operator == INSTRUCTOR
    )


def _at(slot: Slot, bench: int) -> str:
    return next(
        (f"{operator} / {watcher}" for number, operator, watcher in slot.hot if number == bench), "cold"
    )


def _others(slot: Slot) -> str:
    """Who is at no hot bench, and what they do."""
    groups: dict[str, list[int]] = {}
    for duty in slot.duties:
        if duty.person != INSTRUCTOR and duty.work not in ("operates", "watches"):
            groups.setdefault(duty.work, []).append(duty.person)
    return "; ".join(f"{_numbers(people)}: {WORK[work]}" for work, people in groups.items())


def _numbers(people: Sequence[int]) -> str:
    """Numbers of learners, runs of them shortened.

    Examples:
        >>> _numbers([1, 2, 3, 5, 7, 8])
        '1 to 3, 5, 7, 8'
    """
    runs: list[list[int]] = []
    for one in people:
        if runs and one == runs[-1][-1] + 1:
            runs[-1].append(one)
        else:
            runs.append([one])
    return ", ".join(f"{run[0]} to {run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs)


def turns_pictures(
    evening: Evening, sessions: Sequence[Sequence[Pass]], slots: Sequence[Slot], start: int, rules: str
) -> tuple[Picture, ...]:
    """A drawing of each session's turns."""
    found = []
    for number, passes in enumerate(sessions, start=1):
        boxes = [
            (bench, str(operator), float(slot.start), float(slot.end))
            for slot in slots
            if slot.session == number and slot.phase == "turns"
            for bench, operator, _ in slot.hot
        ]
        last = last_flame(evening, passes)
        parts = [(0, "set up")] if evening.set_up else []
        parts += [(evening.set_up, "demonstration")] if evening.demonstration else []
        parts += [(evening.before, "turns"), (last, "last flame out, fire watch begins")]
        parts += [(last + evening.watch, "watch over"), (evening.length, "end")]
        said = [(float(at), f"{clock(start + at, rules)} {text}") for at, text in parts]
        found.append(
            turns.drawing(
                f"Turns of session {number}", evening.length, boxes, (last, last + evening.watch), said
            )
        )
    return tuple(found)


def pieces_table(all_done: Sequence[Done]) -> Table | None:
    """Pieces of each exercise: for whom, and how many in all."""
    rows = [
        (
            one.wanted.title, f"{made.size}, {STOCKS[made.stock]} {made.job['thickness']}",
            f"{made.pieces * one.wanted.tries}", f"{made.pieces * one.shown}", f"{made.pieces * one.spares}",
            f"{made.pieces * one.sets}",
        )
        for one in all_done
        if (made := one.one.exercise).pieces
    ]  # fmt: skip
    if not rows:
        return None
    return Table(
        "Pieces to cut",
        ("Exercise", "Piece", "A learner", "Demonstration", "Spare", "In all"),
        tuple(rows),
        "File the burrs off, and strip what is coated, before any flame.",
    )


def cuts_table(stock: Stock, rules: str) -> Table:
    """Strips of every sheet of one stock."""
    size = scale("bore", rules)
    rows, first = [], 1
    for layout in stock.cuts.layouts:
        name = f"{first}" if layout.sheets == 1 else f"{first} to {first + layout.sheets - 1}"
        for strip in layout.strips:
            kind = stock.cuts.kinds[strip.kind]
            place = f"{size.text(strip.x * TENTH)}, {size.text(strip.y * TENTH)}"
            rows.append((name, f"{strip.count}", kind.size, kind.title, place))
        first += layout.sheets
    return Table(
        f"How each {STOCKS[stock.stock]} is cut: {stock.thickness}",
        ("Sheet", "Pieces in the strip", "Each", "For", f"From the corner, {size.name}"),
        tuple(rows),
        "Cut the strips first, right across, then chop them.",
    )


def cuts_pictures(stock: Stock) -> tuple[Picture, ...]:
    """A drawing of each way a sheet of one stock is cut."""
    found, first = [], 1
    key = [f"{kind.title}, {kind.size}" for kind in stock.cuts.kinds]
    for layout in stock.cuts.layouts[:MOST_DRAWN]:
        many = layout.sheets > 1
        name = f"{first} to {first + layout.sheets - 1}" if many else f"{first}"
        pieces = sum(strip.count for strip in layout.strips)
        found.append(
            stock_sheet.drawing(
                title=f"{stock.name}, {'numbers' if many else 'number'} {name} of {stock.cuts.sheets}",
                sentence=f"{pieces} pieces from {'each' if many else 'it'}; what is left empty is kept for the next class.",
                width=stock.cuts.longer, height=stock.cuts.shorter,
                strips=[
                    stock_sheet.Drawn(
                        strip.kind,
                        tuple((x * TENTH, y * TENTH, w * TENTH, h * TENTH) for x, y, w, h in strip.pieces()),
                    )
                    for strip in layout.strips
                ],
                key=key,
            )
        )  # fmt: skip
        first += layout.sheets
    return tuple(found)


def rods_table(rods: Sequence[Rods], bought: Sequence[tuple[str, str, int]], rules: str) -> Table | None:
    """Rod and filler by class and diameter, and what is bought beside."""
    long, mass, thick = scale("length", rules), scale("mass", rules), scale("bore", rules)
    rows = [
        (
            one.name, thick.said(one.diameter), rounded(long.number(one.length.value or 0.0), 3, "up"),
            rounded(mass.number(one.mass.value or 0.0), 2, "up"),
            f"{one.count} rods" if one.count is not None else "as wire or rod", ", ".join(one.exercises),
        )
        for one in rods
    ]  # fmt: skip
    rows += [(what, "", "", "", f"{sets} sets", title) for title, what, sets in bought]
    if not rows:
        return None
    return Table(
        "Rods, filler, and what is bought",
        ("What", "Diameter", f"Length, {long.name}", f"Weight, {mass.name}", "Count", "For"),
        tuple(rows),
        "The job sheet's sums; whole rods of one length. Buy to the next packet.",
    )


def gas_table(rows: Sequence[Taken], rules: str) -> Table:
    """Every use of gas, and all of it."""
    gas = scale("contents", rules)
    cells = [
        (
            f"{row.session}", row.what, f"{row.flame_time / 60:.0f} min" if row.flame_time else "no flame",
            gas.text(row.gas["fuel"][1]), gas.text(row.gas["oxygen"][1]),
        )
        for row in rows
    ]  # fmt: skip
    cells.append(
        (
            "All", "", f"{sum(row.flame_time for row in rows) / 60:.0f} min",
            gas.text(summed(rows, "fuel")[1]), gas.text(summed(rows, "oxygen")[1]),
        )
    )  # fmt: skip
    return Table(
        f"Gas of the class, {gas.name}",
        ("Session", "What", "Flames, all torches", "Acetylene", "Oxygen"),
        tuple(cells),
        "Flow of the job sheet for the flame time of a learner; what purge and bleed let out once a torch and session.",
    )


def cost_table(items: Sequence[Item]) -> Table:
    """What is paid for; without a price the amount alone."""
    rows = [
        (
            item.name, f"{plain_number(item.amount, 3)} {item.unit}",
            "not given" if item.price is None else plain_number(item.price, 6),
            "" if item.cost is None else plain_number(item.cost, 6),
        )
        for item in items
    ]  # fmt: skip
    known = [item.cost for item in items if item.cost is not None]
    rows.append(
        ("All that has a price", "", "", plain_number(sum(known), 6) if known else "no price given")
    )
    return Table(
        "Cost of the plan, your money",
        ("What", "Amount", "Price of one", "Cost"),
        tuple(rows),
        "Whole sheets; rod by weight; cylinders by the part of them that is used.",
    )
