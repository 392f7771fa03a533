"""The blocks of a page, as custom fences.

SuperFences swallows any exception but its own and then shows raw text, so every
failure is passed on as SuperFencesException and stops the build.
"""

import csv
import functools
from collections.abc import Callable
from html import escape
from importlib.resources import files
from typing import Any

from markdown import Markdown
from pymdownx.superfences import SuperFencesException

from calc.class_plan.exercises import job_texts
from calc.data.tables import HOW_SURE, graded, source_words, sources
from calc.data.tables import table as checked_table
from calc.declare import RULE_SETS, ByRules
from calc.values.units import from_si, to_si, written
from site_overrides.build.cards import cards_html
from site_overrides.build.checked import score_rows, trust_rows
from site_overrides.build.drawn import drawn_html
from site_overrides.build.figures import filled, used_on
from site_overrides.build.forms import form as read_form
from site_overrides.build.forms import form_html
from site_overrides.build.hazard_list import hazards_html
from site_overrides.build.ladder import facts_html, rungs
from site_overrides.build.lessons import log_html, pack_form_html
from site_overrides.build.licences import licences_html
from site_overrides.build.practice import learners_html, practice_html
from site_overrides.build.procedures import procedure as read_procedure
from site_overrides.build.procedures import procedure_html
from site_overrides.build.questions import questions_html
from site_overrides.build.timer import timer_html
from site_overrides.build.unread import unread_html

DISAGREEMENTS = "disagreements-benchbook-2026"

OTHER_UNIT = {
    "in": "mm", "mm": "in", "ft": "m", "m": "ft", "psi": "bar", "bar": "psi", "kPa": "psi",
    "degF": "degC", "degC": "degF", "ft^3": "m^3", "m^3": "ft^3", "lb": "kg", "kg": "lb",
    "cfh": "L/h", "L/h": "cfh", "L": "ft^3", "ksi": "MPa", "in/min": "mm/min",
    "mm/min": "in/min",
}  # fmt: skip
"""The unit of the other system that a table shows beside its own."""

Fence = Callable[..., str]


def _fence(build: Callable[[str, Markdown], str]) -> Fence:
    @functools.wraps(build)
    def formatter(source: str, *given: Any, **_more: Any) -> str:
        *_, md = given  # language, class and options come before it
        try:
            return build(source, md)
        except Exception as error:
            raise SuperFencesException(f"{build.__name__} fence: {error}") from error

    return formatter


def parts(source: str) -> tuple[str, dict[str, str]]:
    """The first line of a fence, and its `name = text` lines.

    Raises:
        ValueError: The fence is empty, or a line has no `=`.
    """
    lines = [line.strip() for line in source.splitlines() if line.strip()]
    if not lines:
        raise ValueError("the fence is empty")
    settings = {}
    for line in lines[1:]:
        name, equals, text = line.partition("=")
        if not equals:
            raise ValueError(f"write name = text, not {line!r}")
        settings[name.strip()] = text.strip()
    return lines[0], settings


@_fence
def calculator(source: str, _md: Markdown) -> str:
    """Form and example answer of a calculator: its id, then example texts.

    `exercise = corner` takes the texts of that exercise, each in the words of the reader's rule set.
    """
    from calc.show.form import block  # noqa: PLC0415 - imports every calculator

    calculator_id, texts = parts(source)
    given: dict[str, ByRules] = dict(texts)
    exercise_id = texts.get("exercise")
    if exercise_id is not None:
        del given["exercise"]
        given = {**job_texts(exercise_id), **given}
    return block(calculator_id, given)


@_fence
def procedure(source: str, md: Markdown) -> str:
    """A procedure, from TOML."""
    used = used_on(md)
    return procedure_html(read_procedure(source), lambda text: filled(text, used))


@_fence
def form(source: str, md: Markdown) -> str:
    """A sheet to fill in and print, from TOML."""
    used = used_on(md)
    return form_html(read_form(source), lambda text: filled(text, used))


@_fence
def timer(source: str, _md: Markdown) -> str:
    """A timer for a calculator on the page: its id, `title`, and which results it counts."""
    calculator_id, settings = parts(source)
    title = settings.pop("title")
    return timer_html(calculator_id, title, settings)


@_fence
def log(source: str, _md: Markdown) -> str:
    """Lessons kept on the reader's device, of a calculator on the page: its id, `title`."""
    calculator_id, settings = parts(source)
    return log_html(calculator_id, settings.pop("title"))


@_fence
def practice(source: str, _md: Markdown) -> str:
    """Questions to answer: `set = problems`, `licence` or `flame`; or `set = link` with `of = calculator`."""
    _, settings = parts(f"practice\n{source}")
    if settings["set"] == "link":
        return learners_html(settings["of"])
    return practice_html(settings["set"])


@_fence
def pack(source: str, _md: Markdown) -> str:
    """The sheets of an evening, chosen and printed: `title`, and an exercise as example."""
    exercise, settings = parts(source)
    return pack_form_html(exercise, settings.pop("title"))


@_fence
def figure(source: str, md: Markdown) -> str:
    """A drawing of `calc.show.drawings`: its name, then what it is given."""
    name, settings = parts(source)
    used = used_on(md)
    return drawn_html(name, settings, lambda text: filled(text, used))


def table_html(caption: str, columns: list[str], rows: list[list[str]], label: str = "") -> str:
    """A table that scrolls by itself on a narrow screen; cells are HTML already.

    `label` names the region where the caption alone would not.
    """
    head = "".join(f'<th scope="col">{escape(column)}</th>' for column in columns)
    body = "".join(
        (f'<tr><th scope="row">{row[0]}</th>' if row[0] else "<tr><td></td>")
        + "".join(f"<td>{c}</td>" for c in row[1:])
        + "</tr>"
        for row in rows
    )
    return (
        f'<div class="bb-table" tabindex="0" role="region" aria-label="{escape(label or caption)}"><table>'
        f"<caption>{escape(caption)}</caption><thead><tr>{head}</tr></thead>"
        f"<tbody>{body}</tbody></table></div>"
    )


def _source_rows() -> list[list[str]]:
    rows = []
    for entry in sources().values():
        year = str(entry.get("year", ""))
        told = [entry["title"], entry.get("author", ""), year, entry.get("note", "")]
        rows.append([escape(entry["short"]), escape("; ".join(part for part in told if part))])
    return sorted(rows, key=lambda row: row[0].lower())


def _cell(text: str, unit: str) -> list[str]:
    """A cell, and where it has a unit of two systems, the other system's beside it."""
    if unit not in OTHER_UNIT:
        return [escape(text)]
    if not text:
        return ["", ""]
    return [escape(text), _in_other_unit(text, unit)]


def _in_other_unit(text: str, unit: str) -> str:
    value = round(from_si(to_si(float(text), unit), OTHER_UNIT[unit]), 9)  # 32 °F is 0 °C
    return f"{value:.3g}" if abs(value) < 1000 else f"{value:.0f}"


def _quantity(text: str, unit: str) -> str:
    """A number whose unit stands in the next column, with the other system's in brackets."""
    if not text:
        return ""
    said = f"{text} {written(unit)}".strip()
    if unit in OTHER_UNIT:
        other = OTHER_UNIT[unit]
        said += f" ({_in_other_unit(text, unit)} {written(other)})"
    return escape(said)


def _unit_words(unit: str) -> str:
    return written(unit).replace("*", "·").replace("uPa", "µPa")


def _cells(name: str, line: dict[str, str], units: dict[str, str]) -> list[str]:
    number, joined, unit = name.partition("+")
    if joined:
        return [_quantity(line[number], line[unit])]
    if name == "rules":
        return [RULE_SETS.get(line[name], "any")]
    return _cell(line[name], units[name])


def _columns(name: str, settings: dict[str, str]) -> tuple[list[str], list[dict[str, str]], dict[str, str]]:
    checked_table(name)  # refuses a row without a source
    text = files("calc").joinpath(f"data/{name}.csv").read_text(encoding="utf-8")
    heads, *lines = [line for line in csv.reader(text.splitlines()) if line]
    names = [head.partition(" [")[0] for head in heads]
    units = {n: head.partition(" [")[2].rstrip("]") for n, head in zip(names, heads, strict=True)}
    rows = [dict(zip(names, line, strict=True)) for line in lines]
    for row in rows:
        row["how_sure"] = graded(row["source"], row["how_sure"])
    if "where" in settings:
        column, _, listed = (part.strip() for part in settings["where"].partition(":"))
        wanted = listed.split(" or ")
        missing = set(wanted) - {row[column] for row in rows}
        if missing:
            raise ValueError(f"{name} has no row where {column} is {', '.join(sorted(missing))}")
        rows = [row for row in rows if row[column] in wanted]
    return names, rows, units


@_fence
def table(source: str, md: Markdown) -> str:
    """Rows of a data file, each with source and how sure.

    Its name, then `caption`, and if wanted `columns = name: Heading, name: Heading`
    and `where = column: text` or `column: text or text`. `number+unit` shows a number with the unit of its row.
    `sources` and `grades` list what calc/data/tables.py knows; `unread` all rows from memory or practice.
    """
    name, settings = parts(source)
    caption = settings["caption"]
    if name == "sources":
        return table_html(caption, ["Short name", "Publication"], _source_rows())
    if name == "grades":
        rows = [[escape(grade), escape(words)] for grade, words in HOW_SURE.items()]
        return table_html(caption, ["Grade in the tables", "What it means"], rows)
    if name == "unread":
        used = used_on(md)
        return unread_html(lambda text: filled(text, used), table_html)
    names, lines, units = _columns(name, settings)
    shown = {n: n.replace("_", " ").capitalize() for n in names[:-2]}
    if "columns" in settings:
        pairs = (pair.partition(":") for pair in settings["columns"].split(","))
        shown = {n.strip(): heading.strip() for n, _, heading in pairs}
    heads: list[str] = []
    for n, heading in shown.items():
        unit = units.get(n, "")
        both = [unit, OTHER_UNIT[unit]] if unit in OTHER_UNIT else [unit]
        heads += [f"{heading}, {_unit_words(u)}" if u and u != "1" else heading for u in both]
    rows = []
    for line in lines:
        cells = [cell for n in shown for cell in _cells(n, line, units)]
        rows.append([*cells, escape(source_words(line["source"])), escape(HOW_SURE[line["how_sure"]])])
    return table_html(caption, [*heads, "Source", "How sure"], rows)


@_fence
def cards(source: str, md: Markdown) -> str:
    """Rows of a data file as cards: its name, then what `cards.py` takes, and `where = column: text`."""
    name, settings = parts(source)
    _, lines, _ = _columns(name, settings)
    used = used_on(md)
    return cards_html(lines, settings, lambda text: filled(text, used))


@_fence
def hazards(source: str, md: Markdown) -> str:
    """Every hazard of one signal word, such as `DANGER`."""
    signal, _ = parts(source)
    used = used_on(md)
    return hazards_html(signal, lambda text: filled(text, used))


@_fence
def licences(source: str, _md: Markdown) -> str:
    """What others made that ships with the site: a group of parts, the `recipe` of changed ones, or the `texts`."""
    return licences_html(parts(source)[0])


@_fence
def questions(source: str, md: Markdown) -> str:
    """The written questions of the licence: `paper`, or their `key`."""
    kind, _ = parts(source)
    used = used_on(md)
    return questions_html(kind, lambda text: filled(text, used))


@_fence
def exercise(source: str, _md: Markdown) -> str:
    """What one exercise of the ladder takes: its id."""
    return facts_html(parts(source)[0])


@_fence
def ladder(source: str, _md: Markdown) -> str:
    """Every exercise in order, with its pieces, minutes and gas: a caption."""
    heads, rows = rungs()
    return f'<div class="bb-ladder">{table_html(parts(source)[0], heads, rows)}</div>'


@_fence
def disagreement(source: str, _md: Markdown) -> str:
    """One point on which books disagree: what is in print, why, what this site follows."""
    point, settings = parts(source)
    rows = [row for row in checked_table(DISAGREEMENTS) if row.point == point]
    says = [row for row in rows if row.kind == "says"]
    (why,) = (row for row in rows if row.kind == "why")
    (follows,) = (row for row in rows if row.kind == "follows")
    if len(says) < 2:
        raise ValueError(f"{point}: fewer than two statements do not disagree")
    printed = table_html(
        "What is in print",
        ["In print", "Who says so", "How sure"],
        [
            [escape(row.text), escape(source_words(row.source)), escape(HOW_SURE[row.how_sure])]
            for row in says
        ],
        label=f"What is in print: {settings['about']}",
    )
    behind = source_words(follows.source)
    after = f" ({escape(behind)})" if behind else ""
    return (
        f"{printed}<p><b>Why they differ.</b> {escape(why.text)}</p>"
        f"<p><b>This site follows:</b> {escape(follows.text)}{after}. "
        "Your outfit’s instructions win.</p>"
    )


@_fence
def checked(source: str, _md: Markdown) -> str:
    """What the tests hold: `calculators` or `mutants`, and a caption."""
    kind, settings = parts(source)
    if kind == "calculators":
        return table_html(settings["caption"], *trust_rows())
    sentence, heads, rows = score_rows()
    return f"<p>{escape(sentence)}</p>{table_html(settings['caption'], heads, rows)}"
