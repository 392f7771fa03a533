"""A procedure: steps with their hazards, read from TOML and shown as HTML.

    id, title, kind, revised, completion, optional call, begins, ends
    [[pause]] id, title, optional begins
    [[pause.step]] id, do, want; optional hazard or hazards, only, source, how_sure, acts
    [pause.step.figure] name of a drawing, and what it is given

`hazard` is the id of a row of calc/data/hazards.csv, `hazards` a list of them. A step
cites what guards it, so it cannot drift away from it; the row is shown directly before
the step, always open, and it prints.

`acts` names what a step does to the outfit, by ids of the table of acts, or
`follow` and the id of another procedure; `begins` and `ends` name states of
`calc.outfit`. They are not shown: a check steps the outfit through them.
"""

import re
import tomllib
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date
from html import escape
from typing import Any

from calc.answer.hazards import hazards
from calc.data.tables import HOW_SURE, graded, source_key, source_words, sources
from calc.declare import RULE_SETS
from calc.outfit import ACTS, NAMED, TORCHES
from site_overrides.build.drawn import drawn_html
from site_overrides.build.hazards import hazard_html, held, origin

KINDS = {
    "read-then-do": "Read, then do: read each step, then do it.",
    "do-then-confirm": "Do, then confirm: act first, then see that nothing was left out.",
}
MOST_STEPS = 9
"""Under ten items to a pause point."""

_SWALLOWED = re.compile(r"\b(?:hazards?|source|want|acts|do|only|how_sure)\s*=")
"""A line of TOML inside a text: a quote was left open, and what it sets is lost."""
_EMPTY_WANT = re.compile(r"\b(check|checked|ok|okay|fine|done|verified)\b", re.IGNORECASE)


class ProcedureError(ValueError):
    """A procedure is written wrongly; the message says where and what to change."""


@dataclass(frozen=True, kw_only=True)
class Step:
    """One act, the ids of its hazards, and the state or value wanted after it."""

    id: str
    do: str
    want: str
    only: str = ""
    source: str = ""
    how_sure: str = "practice"
    hazards: tuple[str, ...] = ()
    figure: dict[str, str] = field(default_factory=dict)
    acts: tuple[str, ...] | None = None


@dataclass(frozen=True)
class Pause:
    """Steps between two places where one may stop."""

    id: str
    title: str
    steps: tuple[Step, ...]
    begins: str = ""


@dataclass(frozen=True, kw_only=True)
class Procedure:
    """One procedure, whole."""

    id: str
    title: str
    kind: str
    revised: date
    completion: str
    pauses: tuple[Pause, ...]
    call: str = ""
    begins: str = ""
    ends: str = ""


def _taken(given: dict[str, Any], where: str, needed: tuple[str, ...], may: tuple[str, ...]) -> None:
    for name in needed:
        if not given.get(name):
            raise ProcedureError(f"{where}: {name} is missing")
    for name, value in given.items():
        if name not in needed + may:
            raise ProcedureError(f"{where}: {name} is not known here")
        if isinstance(value, str) and _SWALLOWED.search(value):
            raise ProcedureError(f"{where}: {name} has swallowed another line: {value!r}")


def _held_source(source: str, how_sure: str, where: str) -> None:
    if how_sure not in HOW_SURE:
        raise ProcedureError(f"{where}: how_sure says {how_sure!r}")
    if source and source_key(source) not in sources():
        raise ProcedureError(f"{where}: no source named {source!r} in sources.toml")
    if not source and how_sure not in ("practice", "memory"):
        raise ProcedureError(f"{where}: a source is missing")


def _hazards(given: dict[str, Any], where: str) -> tuple[str, ...]:
    """The ids that a step cites, taken out of what it was given."""
    one, several = given.pop("hazard", None), given.pop("hazards", [])
    if one is not None and several:
        raise ProcedureError(f"{where}: write hazard for one id or hazards for several")
    ids = [one] if one is not None else several
    if not all(isinstance(name, str) for name in ids):
        raise ProcedureError(f"{where}: a hazard is the id of a row of calc/data/hazards.csv")
    if len(set(ids)) != len(ids):
        raise ProcedureError(f"{where}: a hazard is cited twice")
    return tuple(held(name, where, ProcedureError) for name in ids)


def _acts(names: list[str], where: str) -> tuple[str, ...]:
    for name in names:
        kind, colon, rest = name.partition(": ")
        known = (rest if colon else name) in ACTS and (not colon or kind in TORCHES)
        if not known and not name.startswith("follow "):
            raise ProcedureError(f"{where}: no act is named {name!r}")
    return tuple(names)


def _state(given: dict[str, Any], where: str) -> None:
    for name in ("begins", "ends"):
        if given.get(name, "") not in ("", *NAMED):
            raise ProcedureError(f"{where}: no state is named {given[name]!r}")


def _step(given: dict[str, Any], where: str) -> Step:
    where = f"{where}, step {given.get('id', '?')}"
    may = ("only", "source", "how_sure", "hazard", "hazards", "figure", "acts")
    _taken(given, where, ("id", "do", "want"), may)
    if "figure" in given and not given["figure"].get("name"):
        raise ProcedureError(f"{where}: the figure has no name")
    if _EMPTY_WANT.search(given["want"]):
        raise ProcedureError(f"{where}: want names a state or a value, not {given['want']!r}")
    acts = _acts(given.pop("acts"), where) if "acts" in given else None
    step = Step(hazards=_hazards(given, where), acts=acts, **given)
    _held_source(step.source, step.how_sure, where)
    return replace(step, how_sure=graded(step.source, step.how_sure))


def _pause(given: dict[str, Any], where: str) -> Pause:
    where = f"{where}, pause {given.get('id', '?')}"
    _taken(given, where, ("id", "title", "step"), ("begins",))
    _state(given, where)
    steps = tuple(_step(step, where) for step in given["step"])
    if len(steps) > MOST_STEPS:
        raise ProcedureError(f"{where}: {len(steps)} steps; at most {MOST_STEPS} to a pause point")
    return Pause(given["id"], given["title"], steps, given.get("begins", ""))


def procedure(text: str) -> Procedure:
    """A procedure read from its TOML.

    Raises:
        ProcedureError: Something is missing, unknown, too long or without a source.
    """
    try:
        given = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise ProcedureError(f"procedure: {error}") from error
    where = f"procedure {given.get('id', '?')}"
    needed = ("id", "title", "kind", "revised", "completion", "pause")
    _taken(given, where, needed, ("call", "begins", "ends"))
    _state(given, where)
    if given["kind"] not in KINDS:
        raise ProcedureError(f"{where}: kind says {given['kind']!r}; use one of {tuple(KINDS)}")
    if not isinstance(given["revised"], date):
        raise ProcedureError(f"{where}: revised is not a date")
    pauses = tuple(_pause(pause, where) for pause in given.pop("pause"))
    ids = [pause.id for pause in pauses] + [step.id for pause in pauses for step in pause.steps]
    if len(set(ids)) != len(ids):
        raise ProcedureError(f"{where}: an id is used twice")
    return Procedure(**given, pauses=pauses)


def _named(source: str, how_sure: str) -> str:
    return f"{source_words(source)}, {HOW_SURE[how_sure]}" if source else HOW_SURE[how_sure]


def _step_html(step: Step, mark: str, cited: bool, fill: Callable[[str], str]) -> str:
    only = f'<span class="bb-only">{fill(escape(step.only))} only.</span> ' if step.only else ""
    guard = "".join(hazard_html(name, fill, cited=cited) for name in step.hazards)
    settings = dict(step.figure)
    drawn = drawn_html(settings.pop("name"), settings, fill) if settings else ""
    return (
        f'<li class="bb-step" id="{mark}-{step.id}" data-step="{step.id}">{guard}'
        f'<label class="bb-do"><input type="checkbox" data-tick="{step.id}" autocomplete="off">'
        f"<span>{only}{fill(escape(step.do))}</span></label>"
        f'<p class="bb-want"><b>Wanted:</b> {fill(escape(step.want))}</p>{drawn}</li>'
    )


def _pause_html(
    *,
    pause: Pause, mark: str, count: int, start: int, cited: bool, fill: Callable[[str], str]
) -> str:
    """One pause point; `count` is 0 where it is the only one and needs no heading."""
    steps = "".join(_step_html(step, mark, cited, fill) for step in pause.steps)
    title = fill(escape(pause.title))
    heading = f'<h3 id="{mark}-{pause.id}-title">Pause point {count}: {title}</h3>' if count else ""
    name = f'aria-labelledby="{mark}-{pause.id}-title"' if count else f'aria-label="{title}"'
    return (
        f'<section class="bb-pause" id="{mark}-{pause.id}" data-pause="{pause.id}" {name}>'
        f'{heading}<ol start="{start}">{steps}</ol></section>'
    )


def _acts_first(procedure: Procedure) -> bool:
    """Whether the first act comes first on the screen: in an emergency."""
    return procedure.kind == "do-then-confirm"


def _origins(procedure: Procedure) -> str:
    lines, number = [], 0
    for pause in procedure.pauses:
        for step in pause.steps:
            number += 1
            hazards_of = [origin(hazards()[name]) for name in step.hazards] if _acts_first(procedure) else []
            told = "".join(f" Its hazard: {escape(said)}." for said in hazards_of)
            lines.append(f"<li>Step {number}: {escape(_named(step.source, step.how_sure))}.{told}</li>")
    return (
        '<details class="bb-basis"><summary>Where the steps come from</summary>'
        f"<ul>{''.join(lines)}</ul></details>"
    )


def rules_choice(mark: str) -> str:
    """Choice of the rule set whose words and figures are shown; of use to a script only, so hidden."""
    options = "".join(f'<option value="{key}">{escape(words)}</option>' for key, words in RULE_SETS.items())
    return (
        f'<p class="bb-rules-choice" data-rules-place hidden><label for="{mark}-rules">Words and figures for</label> '
        f'<select id="{mark}-rules" name="rules" data-rules-choice><option value="">all rule sets</option>'
        f"{options}</select></p>"
    )


def procedure_html(procedure: Procedure, fill: Callable[[str], str]) -> str:
    """A procedure as HTML, whole without a script.

    Args:
        procedure: The procedure.
        fill: Fills `{id}` in escaped text with figures and words.

    Returns:
        HTML with the hooks data-procedure, data-pause, data-step and data-tick.
    """
    mark, start, parts, act_first = procedure.id, 1, [], _acts_first(procedure)
    first = 1 if len(procedure.pauses) > 1 else 0
    for count, pause in enumerate(procedure.pauses, start=first):
        parts.append(_pause_html(pause=pause, mark=mark, count=count, start=start, cited=not act_first, fill=fill))
        start += len(pause.steps)
    call = f'<p class="bb-call">{fill(escape(procedure.call))}</p>' if procedure.call else ""
    kind = f'<p class="bb-kind">{KINDS[procedure.kind]} Revised {procedure.revised.isoformat()}.</p>'
    # Where acting comes first, the first act comes first on the screen too.
    before, after = ("", kind) if act_first else (kind, "")
    looks = "bb-procedure bb-act-first" if act_first else "bb-procedure"
    again = "step 1" if act_first else "the last pause point"
    choice = "" if act_first else rules_choice(mark)
    return (
        f'<section class="{looks}" id="{mark}-steps" data-procedure="{mark}" '
        f'data-kind="{procedure.kind}" data-revised="{procedure.revised.isoformat()}" '
        f'aria-labelledby="{mark}-title">'
        f'<h2 id="{mark}-title">{escape(procedure.title)}</h2>{call}'
        f'{choice}{before}<p class="bb-stopped" data-stopped hidden></p>{"".join(parts)}'
        f'<p class="bb-completion"><b>Say aloud:</b> {fill(escape(procedure.completion))}</p>'
        f'{after}<p class="bb-kind">Interrupted? Start again at {again}. '
        "Ticks run out by themselves; this list is not a record.</p>"
        f"{_origins(procedure)}</section>"
    )
