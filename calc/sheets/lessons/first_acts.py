"""The first acts in an emergency, as paper carries them: the first steps of the emergency pages."""

import re
from dataclasses import dataclass
from functools import cache
from typing import Any

from calc.tables import table

TABLE = "first-acts-benchbook-2026"
SIGNALS = ("DANGER", "WARNING", "CAUTION", "NOTICE")

_BRACES = re.compile(r"\{([a-z][a-z0-9-]*)\}")


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
    lines = tuple(
        Line(row.kind if row.kind in SIGNALS else "", said(row.text, rules))
        for row in rows
        if row.kind in (*SIGNALS, "act")
    )
    return Emergency(page, titles["page"], titles["see"], lines)


@cache
def _figures() -> dict[str, Any]:
    return {row.id: row for row in table("figures-benchbook-2026")}


def said(text: str, rules: str) -> str:
    """A text with the figures and words of one rule set in it.

    Args:
        text: Text with `{id}` for a figure or a word.
        rules: Rule set.

    Examples:
        >>> said("Call {emergency-number}; the {torch} is shut.", "uk")
        'Call 999; the blowpipe is shut.'
    """
    return _BRACES.sub(lambda found: _filled(found[1], rules), text)


def _filled(name: str, rules: str) -> str:
    for row in table("figures-by-rules"):
        if (row.id, row.rules) == (name, rules):
            return str(row.text)
    if name in _figures():
        row = _figures()[name]
        return f"{row.us} ({row.metric})" if row.metric else str(row.us)
    words = {row.id: row for row in table("words-benchbook-2026")}
    return str(getattr(words[name], rules))
