"""The first acts in an emergency, as paper carries them: the first steps of the emergency pages."""

from dataclasses import dataclass
from typing import Any

from calc.answer.hazards import caution
from calc.data.tables import table
from calc.data.texts import filled_text

TABLE = "first-acts-benchbook-2026"


@dataclass(frozen=True, slots=True)
class Line:
    """A hazard, or the act that it stands before.

    Attributes:
        signal: Signal word of a hazard; empty for an act.
        text: What it says, figures and words filled in.
    """

    signal: str
    text: str


@dataclass(frozen=True, slots=True)
class Emergency:
    """One emergency.

    Attributes:
        page: Name of its page.
        title: Title of that page.
        seen: What one sees or smells.
        lines: Acts in their order, each behind its hazard.
    """

    page: str
    title: str
    seen: str
    lines: tuple[Line, ...]


def emergencies(rules: str) -> tuple[Emergency, ...]:
    """Every emergency with its first acts, the gravest first.

    Args:
        rules: Rule set, which decides words and figures.

    Examples:
        >>> [one.title for one in emergencies("us")][:2]
        ['Hot cylinder', 'Fire at the cylinder valve']
    """
    pages: dict[str, list[Any]] = {}
    for row in table(TABLE):
        pages.setdefault(row.page, []).append(row)
    return tuple(_emergency(page, rows, rules) for page, rows in pages.items())


def _emergency(page: str, rows: list[Any], rules: str) -> Emergency:
    titles = {row.kind: row.text for row in rows}
    lines = tuple(_line(row, rules) for row in rows if row.kind in ("hazard", "act"))
    return Emergency(page, titles["page"], titles["see"], lines)


def _line(row: Any, rules: str) -> Line:
    """An act, or the hazard whose id its text is."""
    if row.kind == "act":
        return Line("", filled_text(row.text, rules))
    told = caution(row.text, rules)
    return Line(told.signal, told.text)
