"""The list of every hazard: what it is, what to do, what brings it, its source and grade."""

import re
from functools import cache
from html import escape
from pathlib import Path
from typing import Any

from calc.answer.hazards import alternatives, hazards
from calc.data.emergencies import told as acts_told
from calc.data.texts import BRACES, figures, words
from site_overrides.build.hazards import Fill, origin
from site_overrides.build.questions import link

DOCS = Path(__file__).parents[2] / "docs"
_CITES = re.compile(r"^hazards? = (?P<ids>[\"\[].*)$", re.MULTILINE)


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
    return BRACES.sub(lambda m: m[0] if m[1] in known or acts_told(m[1]) is not None else "…", text)


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
    pages = ", ".join(link(page, fill) for page in steps_citing().get(row.id, ()))
    before = f"<p><b>Before a step of:</b> {pages}</p>" if pages else ""
    return (
        f'<section class="bb-card" id="hazard-{row.id}"><p><strong>{hazard}</strong> {consequence}</p>'
        f"<p><b>Do:</b> {avoidance}</p>{_brought(row)}{before}"
        f'<p><cite class="bb-source">{escape(origin(row))}</cite></p></section>'
    )


def hazards_html(signal: str, fill: Fill) -> str:
    """Every hazard of one signal word, with what brings it, its source and its grade.

    Args:
        signal: One of `calc.answer.hazards.SIGNALS`.
        fill: Fills `{id}` in escaped text with figures and words.

    Raises:
        ValueError: No row has this signal word.
    """
    rows = [row for row in hazards().values() if row.signal == signal]
    if not rows:
        raise ValueError(f"no hazard has the signal word {signal!r}")
    entries = "".join(_entry(row, fill) for row in rows)
    return f'<p>{len(rows)} hazards.</p><div class="bb-cards bb-word">{entries}</div>'
