"""When the parts of an outfit are due, and what is looked over how often."""

import datetime
from dataclasses import dataclass
from typing import Any

from calc.answer.sentences import duration
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Table
from calc.formulas.setup.ruled import ruled_row
from calc.trade.safety.surroundings import OWN
from calc.values.figures import Figure

INTERVALS = "inspection-intervals"
CHECKS = "inspection-checks"
UNKNOWN = "unknown: treat as due"


@dataclass(frozen=True, slots=True)
class Due:
    """Whether one thing is due, and since when or from when on.

    Attributes:
        part: What it is about.
        act: What is then done, such as `replace`.
        is_due: Whether it counts as due; what is not known does.
        figure: The verdict in words with its interval, source and grade.
    """

    part: str
    act: str
    is_due: bool
    figure: Figure


def months_later(day: datetime.date, months: int) -> datetime.date:
    """The same day of a later month, or the last day that month has.

    Examples:
        >>> months_later(datetime.date(2024, 2, 29), 60)
        datetime.date(2029, 2, 28)
    """
    year, month = divmod(day.year * 12 + day.month + months, 12)
    last = datetime.date(year, month + 1, 1) - datetime.timedelta(days=1)
    return last.replace(day=min(day.day, last.day))


def due(
    part: str,
    act: str,
    since: datetime.date | None,
    today: datetime.date | None,
    rules: str,
    *,
    counted: str = "",
) -> Due:
    """Verdict on one thing by its interval in print.

    Args:
        part: Part as the table of intervals names it.
        act: What is done then, as the table names it.
        since: Day the interval is counted from; None where nobody knows it.
        today: The day to judge by; None leaves the verdict open, which counts as due.
        rules: Rule set.
        counted: What the days are counted from, where the table's words do not say it.

    Returns:
        The verdict. Where the rule set has no interval, the strictest of the others
        under its own name.
    """
    found = ruled_row(INTERVALS, rules, lambda row: -row.months, part=part, act=act)
    months = int(found.row.months)
    foreign = f" {OWN[found.rules]} figure. {found.note}" if found.note else ""
    basis = f"{_told(months)} {counted or found.row.words}.{foreign}"
    is_due, words = _verdict(None if since is None else months_later(since, months), today)
    return Due(
        part, act, is_due, Figure(None, found.row.source, found.row.how_sure, words=words, basis=basis)
    )


def _verdict(on: datetime.date | None, today: datetime.date | None) -> tuple[bool, str]:
    if on is None:
        return True, UNKNOWN
    if today is None:
        return True, f"due on {on}; give today’s date to see whether that is past"
    if on <= today:
        return True, f"due since {on}"
    return False, f"due on {on}"


def _told(months: int) -> str:
    years, left = divmod(months, 12)
    if left:
        return f"{months} months"
    return "1 year" if years == 1 else f"{years} years"


def _said(row: Any) -> str:
    wait = next(
        each for each in table("upright-waits") if each.how_sure == "memory" and each.standing == "followed"
    )
    return str(row.words).replace("{upright}", duration(wait.least))


def _whose(row: Any) -> str:
    return ", ".join(part for part in (source_words(row.source), HOW_SURE[row.how_sure]) if part)


def _by_part(lines: list[tuple[str, str]]) -> tuple[tuple[str, str], ...]:
    """Lines of one part together, in the order in which the parts come."""
    wanted: dict[str, list[str]] = {}
    for part, words in lines:
        wanted.setdefault(part, []).append(words)
    return tuple((part, "; ".join(all_of_it)) for part, all_of_it in wanted.items())


def _lines(when: str) -> list[tuple[str, str]]:
    return [(row.part, f"{_said(row)} [{_whose(row)}]") for row in table(CHECKS) if row.when == when]


def checks(title: str, when: str, note: str = "") -> Table:
    """What is looked over on one occasion, with its source.

    Args:
        title: Heading of the table.
        when: `each-use`, `each-year`, `flashback` or `unknown`.
        note: Line under it.
    """
    return Table(title, ("Part", "Wanted, and who says so"), _by_part(_lines(when)), note)


def to_do(when: tuple[str, ...], late: list[Due]) -> Table | None:
    """What stands before the first flame.

    Args:
        when: Occasions whose lists hold, `flashback` or `unknown`.
        late: What is due.

    Returns:
        None where nothing does.
    """
    lines = [line for each in when for line in _lines(each)]
    lines += [
        (each.part.capitalize(), f"{each.act}, {each.figure.words} [{_whose(each.figure)}]")
        for each in late
    ]
    if not lines:
        return None
    return Table(
        "Nothing is lit until", ("Part", "Wanted, and who says so"), _by_part(lines),
        "Tag the outfit so that nobody lights it meanwhile.",
    )  # fmt: skip
