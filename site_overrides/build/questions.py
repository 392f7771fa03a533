"""The written questions of the licence on paper, and the key to them.

Numbers are the same under every rule set, so that one key fits every paper: a
question of another rule set is left out and its number with it.
"""

import re
from collections.abc import Callable
from functools import cache
from html import escape
from pathlib import Path

from calc.data.tables import HOW_SURE, source_words
from calc.data.texts import filled_text
from calc.declare import RULE_SETS
from calc.practice.licence import LETTERS, Question, by_topic, questions
from site_overrides.build.procedures import rules_choice

DOCS = Path(__file__).parents[2] / "docs"
UP = "../../"
"""From a page in `docs/class/` to the root of the site."""

Fill = Callable[[str], str]


def address(page: str) -> str:
    """Address of a documentation page as seen from a page in `docs/class/`."""
    path = page.removesuffix(".md")
    return f"{UP}{path.removesuffix('index')}".rstrip("/") + "/"


@cache
def title(page: str) -> str:
    """First heading of a documentation page, plain."""
    text = (DOCS / page).read_text(encoding="utf-8")
    (heading,) = re.findall(r"^# (.+?)(?: *\{[^}]*\})?$", text, re.MULTILINE)
    return str(heading)


def link(page: str, fill: Fill) -> str:
    """A link to a documentation page by its heading, words in braces filled."""
    return f'<a href="{address(page)}">{fill(escape(title(page)))}</a>'


def _filled(one: Question, text: str, fill: Fill) -> str:
    """A text of a question; one of a single rule set takes that rule set's own figures."""
    return escape(filled_text(text, one.rules)) if one.rules else fill(escape(text))


def _looks(one: Question) -> str:
    rules = [one.rules] if one.rules else list(RULE_SETS)
    return " ".join(f"bb-for-{each}" for each in rules)


def _only(one: Question) -> str:
    return f'<span class="bb-for-none">{escape(RULE_SETS[one.rules])} only.</span> ' if one.rules else ""


def _asked(one: Question, fill: Fill) -> str:
    options = "".join(
        f'<li><span class="bb-letter">{letter}</span> <span>{_filled(one, text, fill)}</span></li>'
        for letter, text in zip(LETTERS, one.options, strict=True)
    )
    return (
        f'<li class="bb-question {_looks(one)}" value="{one.number}"><p>{_only(one)}<b>{_filled(one, one.question, fill)}</b></p>'
        f'<ul class="bb-options">{options}</ul></li>'
    )


def _answered(one: Question, fill: Fill) -> str:
    behind = ", ".join(part for part in (source_words(one.source), HOW_SURE[one.how_sure]) if part)
    right = _filled(one, one.options[one.right], fill)
    return (
        f'<li class="bb-question {_looks(one)}" value="{one.number}"><p>{_only(one)}<b>{one.letter}: {right}.</b> '
        f"{_filled(one, one.because, fill)} Read {link(one.page, fill)}. "
        f'<cite class="bb-source">{escape(behind)}</cite></p></li>'
    )


def _letters() -> str:
    cells = "".join(
        f'<li class="{_looks(one)}"><b>{one.number}</b> {one.letter}</li>' for one in questions()
    )
    return f'<ul class="bb-letters bb-word" aria-label="Right letters by number">{cells}</ul>'


def questions_html(kind: str, fill: Fill) -> str:
    """The questions by topic, as a paper or as its key.

    Args:
        kind: `paper` or `key`.
        fill: Fills `{id}` in escaped text with figures and words.

    Raises:
        ValueError: Another kind is asked for.
    """
    if kind not in ("paper", "key"):
        raise ValueError(f"say paper or key, not {kind!r}")
    one_html = _asked if kind == "paper" else _answered
    parts = [
        f'<h3 id="topic-{number}">{escape(topic)}</h3><ol class="bb-word">'
        + "".join(one_html(one, fill) for one in under)
        + "</ol>"
        for number, (topic, under) in enumerate(by_topic(questions()).items(), start=1)
    ]
    letters = _letters() if kind == "key" else ""
    return (
        f'<section class="bb-questions bb-{kind}">{rules_choice(kind)}{letters}{"".join(parts)}</section>'
    )
