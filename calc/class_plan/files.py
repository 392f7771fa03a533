"""The plan of a class as files: tables for a spreadsheet, and a calendar."""

import csv
from collections.abc import Iterable, Sequence
from datetime import date, datetime, time, timedelta
from io import StringIO
from typing import Any

from calc.class_plan.cost import Item
from calc.class_plan.cutting_list import TENTH
from calc.class_plan.gas import Taken
from calc.class_plan.passes import Evening, Pass
from calc.class_plan.rota import INSTRUCTOR, PHASES, WORK, Slot, last_flame
from calc.class_plan.supplies import Rods
from calc.class_plan.tables import Stock
from calc.show.calendar import LOOK, Entry, calendar, looks_after
from calc.show.scales import scale

WEEK = timedelta(days=7)


def csv_text(columns: Sequence[str], rows: Iterable[Sequence[Any]]) -> str:
    r"""A table as CSV, RFC 4180: numbers plain, an empty cell where there is none.

    Examples:
        >>> csv_text(("a", "b"), [(1.5, None)])
        'a,b\r\n1.5,\r\n'
    """
    written = StringIO()
    writer = csv.writer(written)
    writer.writerow(columns)
    writer.writerows(rows)
    return written.getvalue()


def _number(value: float) -> float:
    return float(f"{value:.9g}")


def _clock(minutes: int) -> str:
    hour, minute = divmod(minutes % (24 * 60), 60)
    return f"{hour:02d}:{minute:02d}"


def session_days(day: date | None, sessions: int) -> list[date]:
    """Day of each session, a week apart; none without a first day."""
    return [] if day is None else [day + WEEK * number for number in range(sessions)]


def rota_csv(slots: Sequence[Slot], start: int, days: Sequence[date]) -> str:
    """One row for each person in each while."""
    columns = (
        "session", "day", "from", "to", "time [min]", "part", "exercise", "tries", "person", "work", "bench",
    )  # fmt: skip
    return csv_text(
        columns,
        (
            (
                slot.session, days[slot.session - 1].isoformat() if days else None, _clock(start + slot.start),
                _clock(start + slot.end), slot.minutes, PHASES[slot.phase], slot.exercise,
                slot.tries if duty.work == "operates" else None,
                "instructor" if duty.person == INSTRUCTOR else f"learner {duty.person}", WORK[duty.work],
                duty.bench or None,
            )
            for slot in slots
            for duty in slot.duties
        ),
    )  # fmt: skip


def cutting_csv(stocks: Sequence[Stock], rules: str) -> str:
    """One row for each strip of each kind of sheet."""
    size = scale("bore", rules)
    unit = size.unit
    columns = (
        "stock", "thickness", f"stock length [{unit}]", f"stock width [{unit}]", "sheets cut alike", "exercise",
        f"piece along [{unit}]", f"piece across [{unit}]", "pieces in the strip", "pieces in all",
        f"strip from the left [{unit}]", f"strip from below [{unit}]", "strip runs",
    )  # fmt: skip
    return csv_text(
        columns,
        (
            (
                stock.stock, stock.thickness, _number(size.number(stock.cuts.longer)),
                _number(size.number(stock.cuts.shorter)), layout.sheets, stock.cuts.kinds[strip.kind].title,
                *(_number(size.number(side * TENTH)) for side in (strip.width, strip.height)),
                strip.count, strip.count * layout.sheets,
                *(_number(size.number(side * TENTH)) for side in (strip.x, strip.y)),
                "along" if strip.across else "across",
            )
            for stock in stocks
            for layout in stock.cuts.layouts
            for strip in layout.strips
        ),
    )  # fmt: skip


def materials_csv(
    stocks: Sequence[Stock], rods: Sequence[Rods], bought: Sequence[tuple[str, str, int]], rules: str
) -> str:
    """What to lay ready: stock, rods and what is bought."""
    thick, long, mass = scale("bore", rules), scale("length", rules), scale("mass", rules)
    columns = (
        "kind",
        "what",
        "for",
        f"diameter [{thick.unit}]",
        "count",
        f"length [{long.unit}]",
        f"weight [{mass.unit}]",
    )
    rows: list[Sequence[Any]] = [
        (stock.stock, f"{stock.thickness}, {stock.size}", None, None, stock.cuts.sheets, None, None)
        for stock in stocks
    ]
    rows += [
        ("rod or filler", one.name, "; ".join(one.exercises), _number(thick.number(one.diameter)), one.count,
         _number(long.number(one.length.value or 0.0)), _number(mass.number(one.mass.value or 0.0)))
        for one in rods
    ]  # fmt: skip
    rows += [("bought", what, title, None, sets, None, None) for title, what, sets in bought]
    return csv_text(columns, rows)


def gas_csv(rows: Sequence[Taken], rules: str) -> str:
    """Every use of gas with its band."""
    gas = scale("contents", rules)
    at = "ft³ at 70 °F and 1 atm" if rules == "us" else "m³ at 15 °C and 1 atm"
    columns = ["session", "what", "flame, all torches [min]"]
    for name in ("acetylene", "oxygen"):
        columns += [f"{name} {end}[{at}]" for end in ("least ", "", "most ")]
    return csv_text(
        columns,
        (
            (
                row.session, row.what, _number(row.flame_time / 60),
                *(_number(gas.number(value)) for name in ("fuel", "oxygen") for value in row.gas[name]),
            )
            for row in rows
        ),
    )  # fmt: skip


def cost_csv(items: Sequence[Item]) -> str:
    """What is paid for; price and cost stay empty without a price."""
    columns = ("what", "amount", "unit", "price of one [your money]", "cost [your money]")
    return csv_text(
        columns, ((item.name, _number(item.amount), item.unit, item.price, item.cost) for item in items)
    )


def plan_calendar(
    *,
    evening: Evening, sessions: Sequence[Sequence[Pass]], slots: Sequence[Slot], start: int,
    days: Sequence[date], monitoring: float, check_every: float,
) -> str:  # fmt: skip
    """The plan as a calendar, in the time on the wall; the same plan has the same entries.

    Args:
        evening: A session and who is there.
        sessions: Passes of each.
        slots: The rota.
        start: Time of day, minutes after midnight.
        days: Of each session.
        monitoring: Looking in again after the watch, s.
        check_every: Most between two looks, s; 0 where no rule says.
    """
    first = datetime.combine(days[0], time()) + timedelta(minutes=start)
    entries: list[Entry] = []

    def add(session: int, begin: int, minutes: int | None, title: str, text: str) -> None:
        at = first + WEEK * (session - 1) + timedelta(minutes=begin)
        entries.append(
            Entry(
                name=f"class-plan-{first:%Y%m%dT%H%M}-{session}-{begin}-{len(entries)}", stamp=first, start=at,
                end=None if minutes is None else at + timedelta(minutes=minutes), title=title, text=text, alarm=minutes is not None,
            )
        )  # fmt: skip

    for number, passes in enumerate(sessions, start=1):
        own = [slot for slot in slots if slot.session == number]
        for slot in own:
            if slot.phase not in ("after", "left"):
                add(number, slot.start, slot.minutes, _title(slot), _text(slot))
        last = last_flame(evening, passes)
        watchers = "; ".join(
            f"{_clock(start + slot.start)} {', '.join(f'learner {one.person}' for one in slot.doing('watches-fire'))}"
            for slot in own
            if slot.doing("watches-fire")
        )
        add(
            number,
            last,
            evening.watch,
            "Fire watch: stay",
            f"{watchers}. A flame in between starts the watch again.",
        )
        if evening.shut_down:
            add(
                number,
                last,
                evening.shut_down,
                "Shut down and bleed",
                "By the page Shut down, those who do not watch.",
            )
        for due in looks_after(monitoring, check_every):
            add(number, last + evening.watch + due // 60, None, "Fire watch: look in again", LOOK)
    return calendar("Class plan", entries)


def _title(slot: Slot) -> str:
    turn = f"{slot.exercise}, {slot.tries} tries" if slot.phase == "turns" else PHASES[slot.phase]
    return f"Class: {turn}"


def _text(slot: Slot) -> str:
    benches = "; ".join(
        f"bench {bench}: {'instructor' if operator == INSTRUCTOR else f'learner {operator}'}, watched by learner {watcher}"
        for bench, operator, watcher in slot.hot
    )
    return benches or WORK[slot.duties[-1].work].capitalize()
