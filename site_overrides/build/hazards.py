"""A hazard of the one table as HTML: before a step, on a card, beside a box to tick, in the list of all."""

import re
from collections.abc import Callable
from functools import cache
from html import escape
from pathlib import Path
from typing import Any

from calc.filling import BRACES, figures, words
from calc.hazards import alternatives, hazards
from calc.tables import HOW_SURE, source_words
from site_overrides.build.questions import link

DOCS = Path(__file__).parents[2] / "docs"
_CITES = re.compile(r"^hazards? = (?P<ids>[\"\[].*)$", re.MULTILINE)

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


def hazard_html(hazard_id: str, fill: Fill) -> str:
    """A hazard whole, always open: its signal word, what it does, what to do, its source."""
    row = hazards()[hazard_id]
    return (
        f'<div class="bb-caution bb-{row.signal.lower()}" role="note" data-hazard="{row.id}">'
        f"<strong>{row.signal}</strong> <span>{' '.join(parts(hazard_id, fill))}</span> "
        f'<cite class="bb-source">{escape(origin(row))}</cite></div>'
    )


@cache
def steps_citing() -> dict[str, tuple[str, ...]]:
    """Ids of hazards, and the pages whose steps cite each."""
    found: dict[str, list[str]] = {}
    for path in sorted(DOCS.rglob("*.md")):
        page = str(path.relative_to(DOCS))
        for cite in _CITES.finditer(path.read_text(encoding="utf-8")):
            for name in re.findall(r'"([a-z-]+)"', cite["ids"]):
                if page not in found.setdefault(name, []):
                    found[name].append(page)
    return {name: tuple(pages) for name, pages in found.items()}


def _without_answers(text: str) -> str:
    """A text with … where only an answer could fill a term."""
    known = figures().keys() | words().keys()
    return re.sub(r"\{[a-z_]+\}", "…", BRACES.sub(lambda m: m[0] if m[1] in known else "…", text))


def _brought(row: Any) -> str:
    """What brings a hazard, as a reader says it."""
    told = [
        " and ".join(f"{part} {' or '.join(names)}" for part, names in conditions.items()).replace("-", " ")
        for conditions in alternatives(row.brought_by)
    ]
    return f"<p><b>Comes with:</b> {escape('; '.join(told))}.</p>" if told else ""


def _entry(row: Any, fill: Fill) -> str:
    texts = (fill(escape(_without_answers(text))) for text in (row.hazard, row.consequence, row.avoidance))
    hazard, consequence, avoidance = texts
    pages = ", ".join(link(page) for page in steps_citing().get(row.id, ()))
    before = f"<p><b>Before a step of:</b> {pages}</p>" if pages else ""
    return (
        f'<section class="bb-card" id="hazard-{row.id}"><p><strong>{hazard}</strong> {consequence}</p>'
        f"<p><b>Do:</b> {avoidance}</p>{_brought(row)}{before}"
        f'<p><cite class="bb-source">{escape(origin(row))}</cite></p></section>'
    )


def hazards_html(signal: str, fill: Fill) -> str:
    """Every hazard of one signal word, with what brings it, its source and its grade.

    Args:
        signal: One of `calc.hazards.SIGNALS`.
        fill: Fills `{id}` in escaped text with figures and words.

    Raises:
        ValueError: No row has this signal word.
    """
    rows = [row for row in hazards().values() if row.signal == signal]
    if not rows:
        raise ValueError(f"no hazard has the signal word {signal!r}")
    entries = "".join(_entry(row, fill) for row in rows)
    return f'<p>{len(rows)} hazards.</p><div class="bb-cards bb-word">{entries}</div>'
