"""A hazard of the one table as HTML: before a step, on a card, beside a box to tick."""

from collections.abc import Callable
from html import escape
from typing import Any

from calc.answer.hazards import hazards
from calc.data.tables import HOW_SURE, source_words

Fill = Callable[[str], str]


def held(hazard_id: str, where: str, error: type[ValueError]) -> str:
    """The id of a hazard, when the table has it.

    Args:
        hazard_id: What was written.
        where: Where it was written, for the message.
        error: What is raised when the table has no such row.
    """
    if hazard_id not in hazards():
        raise error(f"{where}: calc/data/hazards.csv has no row {hazard_id!r}")
    return hazard_id


def origin(row: Any) -> str:
    """Source and grade of a row, as the reader sees them."""
    return ", ".join(part for part in (source_words(row.source), HOW_SURE[row.how_sure]) if part)


def parts(hazard_id: str, fill: Fill) -> tuple[str, str, str]:
    """Hazard, consequence and avoidance of a row, escaped and filled."""
    row = hazards()[hazard_id]
    hazard, consequence, avoidance = (
        fill(escape(text)) for text in (row.hazard, row.consequence, row.avoidance)
    )
    return hazard, consequence, avoidance


def hazard_html(hazard_id: str, fill: Fill, *, cited: bool = True) -> str:
    """A hazard whole, always open: its signal word, what it does, what to do, its source.

    Args:
        hazard_id: Id of its row.
        fill: Fills figures and words of the place.
        cited: Whether the source stands in it; in an emergency it stands below the steps.
    """
    row = hazards()[hazard_id]
    cite = f' <cite class="bb-source">{escape(origin(row))}</cite>' if cited else ""
    return (
        f'<div class="bb-caution bb-{row.signal.lower()}" role="note" data-hazard="{row.id}">'
        f"<strong>{row.signal}</strong> <span>{' '.join(parts(hazard_id, fill))}</span>{cite}</div>"
    )
