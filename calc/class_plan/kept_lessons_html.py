"""The list of kept lessons as HTML; the page puts a button into each place for one."""

from collections.abc import Mapping, Sequence
from html import escape
from typing import Any

from calc.ask.errors import InputError
from calc.ask.inputs import rules_of
from calc.class_plan.kept_lessons import (
    MOST_LINES,
    NAME,
    Kept,
    cells,
    columns,
    counted_at,
    kept_one,
    log_file,
    mean_words,
)


def kept_html(lessons: Sequence[Kept | str], rules: str) -> str:
    """Table of the lessons, and what they say together.

    Args:
        lessons: The lessons in the order in which they were kept, or why one cannot be read.
        rules: Rule set that decides the units.

    Returns:
        HTML with the hook data-line, numbered from 0, where a line may be deleted.
    """
    if not lessons:
        return "<p>No lesson is kept on this device.</p>"
    head = "".join(f'<th scope="col">{escape(name.removesuffix(" [1]"))}</th>' for name in columns(rules))
    body = "".join(_row(one, number, rules) for number, one in enumerate(lessons))
    return (
        f'<p class="bb-log-mean" data-log-mean><b>{escape(mean_words([one for one in lessons if isinstance(one, Kept)]))}</b></p>'
        '<div class="bb-table" tabindex="0" role="region" aria-label="List of the kept lessons"><table>'
        f"<caption>Kept lessons, gas counted {escape(counted_at(rules))}</caption>"
        f"<thead><tr><td data-no-print></td>{head}</tr></thead>"
        f"<tbody>{body}</tbody></table></div>"
    )


def _row(one: Kept | str, number: int, rules: str) -> str:
    if isinstance(one, str):
        one_cell = f'<td colspan="{len(columns(rules)) - 1}">{escape(one)}</td>'
        return f'<tr>{_deleted(number)}<th scope="row">not to be read</th>{one_cell}</tr>'
    day, *others = cells(one, rules)
    rest = "".join(f"<td>{escape(cell)}</td>" for cell in others)
    return f'<tr>{_deleted(number)}<th scope="row">{escape(day)}</th>{rest}</tr>'


def _deleted(number: int) -> str:
    return f'<td data-no-print><span data-line="{number}">Delete lesson {number + 1}</span></td>'


def log_reply(request: Mapping[str, Any]) -> dict[str, Any]:
    """What the page of kept lessons asks for.

    Args:
        request: `{"lines": [{name: text}], "rules": id}`, with `"file": true` for the file.

    Returns:
        `{"html": …}` with a place for a button on each line, or `{"name", "type", "text"}`.
    """
    rules = rules_of({"rules": str(request.get("rules") or "us")})
    lines = [dict(line) for line in request["lines"]]
    if request.get("file"):
        return {"name": NAME, "type": "text/csv", "text": log_file(lines, rules)}
    return {"html": kept_html([_kept_or_why(line) for line in lines[:MOST_LINES]], rules)}


def _kept_or_why(texts: Mapping[str, str]) -> Kept | str:
    try:
        return kept_one(texts)
    except InputError as error:
        return error.listed()[0]["message"]
