"""A sheet to fill in and print, read from TOML and shown as HTML.

    id, title, notice
    [[part]] title, optional note
    [[part.line]] kind, and what that kind wants:
        text     id, label; optional rows     written by the reader
        tick     id, label                    a box to tick
        hazard   id                           a row of calc/data/hazards.csv, with a box to tick
        figure   label, from                  filled from `calculator:result` on the page
        basis    from                         the inputs that a calculator worked from
        link     label, from                  address that opens a calculator with its values
        sign     label                        name typed, signature and time by hand
        marks    exercise                     its criteria, a box beside each for the marks, and the total

It is whole without a script: what a script would fill is then a blank to write on.
"""

import re
import tomllib
from collections.abc import Callable
from dataclasses import dataclass
from html import escape
from typing import Any

from calc.answer.hazards import hazards
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare.catalogue import calculators
from site_overrides.build.hazards import held, origin, parts

MARKS = "exercise-marks-benchbook-2026"
LONGEST = 400
"""Letters in one box."""

_WANTS = {
    "text": ({"id", "label"}, {"rows"}),
    "tick": ({"id", "label"}, set()),
    "hazard": ({"id"}, set()),
    "figure": ({"label", "from"}, set()),
    "basis": ({"from"}, set()),
    "link": ({"label", "from"}, set()),
    "sign": ({"id", "label"}, set()),
    "marks": ({"exercise"}, set()),
}
_ID = re.compile(r"[a-z][a-z0-9-]*")

Fill = Callable[[str], str]


class FormError(ValueError):
    """A form is written wrongly; the message says where and what to change."""


@dataclass(frozen=True, kw_only=True)
class Line:
    """One line of a form."""

    kind: str
    id: str = ""
    label: str = ""
    calculator: str = ""
    result: str = ""
    rows: int = 1
    exercise: str = ""


@dataclass(frozen=True)
class Part:
    """Lines under one heading."""

    title: str
    lines: tuple[Line, ...]
    note: str = ""


@dataclass(frozen=True)
class Form:
    """One form, whole."""

    id: str
    title: str
    notice: str
    parts: tuple[Part, ...]

    @property
    def texts(self) -> list[str]:
        """Every text that a page author wrote."""
        lines = [line.label for part in self.parts for line in part.lines]
        return [self.title, self.notice, *(text for p in self.parts for text in (p.title, p.note)), *lines]


def _taken(given: dict[str, Any], where: str, needed: set[str], may: set[str]) -> None:
    for name in sorted(needed - {name for name, value in given.items() if value}):
        raise FormError(f"{where}: {name} is missing")
    for name in sorted(set(given) - needed - may):
        raise FormError(f"{where}: {name} is not known here")


def _line(given: dict[str, Any], where: str) -> Line:
    kind = given.get("kind")
    if kind not in _WANTS:
        raise FormError(f"{where}: kind says {kind!r}; use one of {tuple(_WANTS)}")
    where = f"{where}, {kind} {given.get('id', given.get('from', '?'))}"
    needed, may = _WANTS[kind]
    _taken(given, where, needed | {"kind"}, may)
    if "id" in needed and not _ID.fullmatch(given["id"]):
        raise FormError(f"{where}: an id is small letters, digits and hyphens")
    if kind == "hazard":
        held(given["id"], where, FormError)
    if kind == "marks" and given["exercise"] not in {row.exercise for row in table(MARKS)}:
        raise FormError(f"{where}: no marks for {given['exercise']!r} in {MARKS}")
    calculator, _, result = given.pop("from", "").partition(":")
    if calculator:
        _hold_from(kind, calculator, result, where)
    return Line(**given, calculator=calculator, result=result)


def _hold_from(kind: str, calculator: str, result: str, where: str) -> None:

    if calculator not in calculators():
        raise FormError(f"{where}: there is no calculator {calculator}")
    known = calculators()[calculator].results
    if kind == "figure" and result not in known:
        raise FormError(f"{where}: {calculator} has no result {result!r}; it has {', '.join(known)}")


def form(text: str) -> Form:
    """A form read from its TOML.

    Raises:
        FormError: Something is missing, unknown or used twice.
    """
    try:
        given = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise FormError(f"form: {error}") from error
    where = f"form {given.get('id', '?')}"
    _taken(given, where, {"id", "title", "notice", "part"}, set())
    parts = []
    for part in given.pop("part"):
        there = f"{where}, part {part.get('title', '?')}"
        _taken(part, there, {"title", "line"}, {"note"})
        lines = tuple(_line(dict(line), there) for line in part.pop("line"))
        parts.append(Part(**part, lines=lines))
    ids = [line.id for part in parts for line in part.lines if line.id]
    for name in ids:
        if ids.count(name) > 1:
            raise FormError(f"{where}: the id {name} is used twice")
    return Form(**given, parts=tuple(parts))


def _box(mark: str, line: Line, label: str) -> str:
    return (
        f'<div class="bb-write{" bb-wide" if line.rows > 1 else ""}"><label for="{mark}">{label}</label>'
        f'<div class="bb-grow"><textarea id="{mark}" rows="{line.rows}" maxlength="{LONGEST}" '
        f'autocomplete="off" data-keep="{line.id}"></textarea></div></div>'
    )


def _tick(line: Line, words: str) -> str:
    return (
        f'<label class="bb-do"><input type="checkbox" autocomplete="off" data-keep="{line.id}">'
        f"<span>{words}</span></label>"
    )


def _origin_html(row: Any) -> str:
    """Source of a hazard; on paper without its grade where it has a source."""
    source = source_words(row.source)
    if not source:
        return escape(origin(row))
    return f'{escape(source)}<span class="bb-grade">, {HOW_SURE[row.how_sure]}</span>'


def _hazard(line: Line, fill: Fill) -> str:
    row = hazards()[line.id]
    hazard, consequence, avoidance = parts(line.id, fill)
    words = (
        f"<b>{row.signal}</b> {hazard} {consequence} <b>Do:</b> {avoidance} "
        f'<cite class="bb-source">{_origin_html(row)}</cite>'
    )
    return f'<div class="bb-hazard" data-hazard="{line.id}">{_tick(line, words)}</div>'


def _mark_box(mark: str, words: str, most: float, look: str = "") -> str:
    """A criterion, and a box for the marks beside the most there are."""
    return (
        f'<div class="bb-marks{look}"><label for="{mark}">{words}</label><div class="bb-out-of">'
        f'<div class="bb-grow"><textarea id="{mark}" rows="1" maxlength="4" inputmode="decimal" '
        f'autocomplete="off" data-keep="{mark}"></textarea></div><span>of {most:g}</span></div></div>'
    )


def _marks(form_id: str, exercise: str, fill: Fill) -> str:
    rows = [row for row in table(MARKS) if row.exercise == exercise]
    lines = [
        _mark_box(
            f"{form_id}-mark-{number}",
            f"<b>{escape(row.criterion)}</b> {fill(escape(row.wanted))}",
            row.marks,
        )
        for number, row in enumerate(rows, start=1)
    ]
    total = sum(row.marks for row in rows)
    return "".join(lines) + _mark_box(f"{form_id}-mark-total", "<b>Total</b>", total, " bb-total")


def _line_html(form_id: str, line: Line, fill: Fill) -> str:
    label = fill(escape(line.label))
    mark = f"{form_id}-{line.id}"
    source = f"{line.calculator}:{line.result}" if line.result else line.calculator
    if line.kind == "text":
        return _box(mark, line, label)
    if line.kind == "tick":
        return _tick(line, label)
    if line.kind == "hazard":
        return _hazard(line, fill)
    if line.kind == "sign":
        by_hand = "".join(
            f'<p class="bb-by-hand"><span>{words}</span></p>' for words in ("Signature", "Date and time")
        )
        return f'<div class="bb-sign">{_box(mark, line, label)}{by_hand}</div>'
    if line.kind == "marks":
        return _marks(form_id, line.exercise, fill)
    if line.kind == "basis":
        return f'<p class="bb-worked" data-basis="{source}" hidden></p>'
    return (
        f'<p class="bb-filled"><b>{label}:</b> '
        f'<output class="bb-blank" data-{line.kind}="{source}"></output></p>'
    )


def _part_html(form_id: str, number: int, part: Part, fill: Fill) -> str:
    mark = f"{form_id}-part-{number}"
    note = f"<p>{fill(escape(part.note))}</p>" if part.note else ""
    lines = "".join(_line_html(form_id, line, fill) for line in part.lines)
    return (
        f'<section class="bb-part" aria-labelledby="{mark}"><h3 id="{mark}">{fill(escape(part.title))}</h3>'
        f'{note}<div class="bb-lines">{lines}</div></section>'
    )


def form_html(made: Form, fill: Fill) -> str:
    """A form as HTML, whole without a script.

    Args:
        made: The form.
        fill: Fills `{id}` in escaped text with figures and words.

    Returns:
        HTML with the hooks data-sheet, data-keep, data-figure, data-basis and data-link.
    """
    mark = f"{made.id}-sheet"
    parts = "".join(_part_html(mark, number, part, fill) for number, part in enumerate(made.parts, start=1))
    scores = any(line.kind == "marks" for part in made.parts for line in part.lines)
    return (
        f'<section class="bb-sheet{" bb-score" if scores else ""}" id="{mark}" data-sheet="{made.id}" aria-labelledby="{mark}-title">'
        f'<h2 id="{mark}-title">{escape(made.title)}</h2>'
        f'<p class="bb-valid"><b>{fill(escape(made.notice))}</b></p>'
        "<p data-no-print>What you write here stays in this browser, on this device. It is sent to nobody. "
        "Whoever uses this browser can read it: clear it when the job is over. Without a script nothing is "
        "kept: print the sheet and write by hand.</p>"
        f'{parts}<p class="bb-worked" data-kept role="status" data-no-print></p>'
        '<div class="bb-tools" data-sheet-tools></div></section>'
    )
