"""The sheets of an evening as HTML: cover, plan, a card for each bench, a score sheet for each exercise."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from html import escape
from typing import Any

from calc.answer.answering import answer
from calc.ask.errors import InputError
from calc.ask.inputs import rules_of
from calc.class_plan.bench_card import card_html
from calc.class_plan.exercises import titles
from calc.data.tables import table
from calc.declare import RULE_SETS
from calc.declare.catalogue import calculators
from calc.outfit.file import unchecked_texts
from calc.release import RELEASE
from calc.show.answer import answer_html
from calc.show.square_code import LONGEST, square_code_svg
from calc.values.numbers import plain_number

PLAN = "class-plan"
MARKS = "exercise-marks-benchbook-2026"
MOST_LEARNERS = 60
PARTS = {
    "plan": "Plan of the evening",
    "cards": "Bench card of each exercise",
    "scores": "Score sheet of each exercise",
}
"""Kinds of sheet that may be chosen, beside the pages handed out."""
MOST_HANDOUTS = 30

_EXERCISE = re.compile(r"exercise_\d{1,2}")
_SITE = re.compile(r"https?://[^\s<>\"'?#]{1,200}/")


@dataclass(frozen=True, slots=True, kw_only=True)
class Pack:
    """What goes into the pack of an evening.

    Attributes:
        rules: Rule set.
        exercises: Ids of its exercises, each once, in their order.
        learners: How many learners, or None.
        benches: How many benches, or None.
        parts: Kinds of sheet wanted.
        site: Address of the site's first page, or empty where it has none.
        plan: Texts of the class plan, none where no plan is wanted.
        handouts: Title and address of each page handed out.
        address: Address that opens this choice again.
        outfit: What was typed in `my-outfit`, or None.
    """

    rules: str
    exercises: tuple[str, ...]
    learners: int | None
    benches: int | None
    parts: tuple[str, ...]
    site: str
    plan: dict[str, str]
    handouts: tuple[tuple[str, str], ...]
    address: str
    outfit: dict[str, str] | None


def pack_of(request: Mapping[str, Any]) -> Pack:
    """A pack as a page asks for it.

    Args:
        request: `texts` as of the class plan, of which exercise_1 …, learners, benches and rules
            are read; `parts`; `site`; `address`; `handouts`, each with title and address;
            `outfit`, the text of its file, or none.

    Raises:
        InputError: Something of it cannot be used.
    """
    texts = {str(name): str(text).strip() for name, text in dict(request.get("texts") or {}).items()}
    rules = rules_of({"rules": texts["rules"]} if texts.get("rules") else {})
    parts = tuple(str(part) for part in request.get("parts", PARTS))
    for part in parts:
        if part not in PARTS:
            raise InputError("parts", "Sheets", f"there is no “{part[:40]}”; pick some of those offered.")
    handouts = [
        (str(one["title"])[:200], str(one["address"])[:1000]) for one in request.get("handouts", ())
    ]
    if len(handouts) > MOST_HANDOUTS:
        raise InputError("handouts", "Pages", f"{len(handouts)} are too many; give {MOST_HANDOUTS} or fewer.")
    exercises = _exercises(texts)
    if not exercises and not handouts:
        raise InputError("exercise_1", "Exercises", "none is picked; pick at least one, or add a page.")
    site = str(request.get("site", ""))
    return Pack(
        rules=rules, exercises=exercises, learners=_count(texts, "learners", "Learners"), benches=_count(texts, "benches", "Benches"), parts=parts,
        site=site if _SITE.fullmatch(site) else "", plan=_plan(texts) if request.get("planned") else {}, handouts=tuple(handouts),
        address=str(request.get("address", ""))[:4000],
        outfit=unchecked_texts(str(request["outfit"])) if request.get("outfit") else None,
    )  # fmt: skip


def _exercises(texts: Mapping[str, str]) -> tuple[str, ...]:
    known = titles()
    names = sorted(
        (name for name in texts if _EXERCISE.fullmatch(name)), key=lambda name: int(name.partition("_")[2])
    )
    picked: dict[str, None] = {}
    for name in names:
        exercise = texts[name].lower()
        if exercise in ("", "none"):
            continue
        if exercise not in known:
            raise InputError(
                name, "Exercises", f"“{exercise[:40]}” is none of them; pick from those that are listed."
            )
        picked[exercise] = None
    return tuple(picked)


def _count(texts: Mapping[str, str], name: str, label: str) -> int | None:
    text = texts.get(name, "")
    if not text:
        return None
    if not re.fullmatch(r"\d{1,4}", text, re.ASCII) or not 1 <= int(text) <= MOST_LEARNERS:
        raise InputError(
            name, label, f"“{text[:20]}” will not do; give a whole number of 1 to {MOST_LEARNERS}."
        )
    return int(text)


def _plan(texts: Mapping[str, str]) -> dict[str, str]:
    """What the class plan asks, of the texts; none where there is no such plan, or they are not a whole one."""
    if PLAN not in calculators():
        return {}
    asked = calculators()[PLAN].inputs
    needed = {name for name, one in asked.items() if one.example is not None and not one.optional}
    if not needed <= {name for name, text in texts.items() if text}:
        return {}
    known = {*asked, "rules", "shown_in"}
    return {name: text for name, text in texts.items() if name in known and text}


def pack_html(pack: Pack) -> tuple[str, list[str]]:
    """All sheets but the pages handed out, and what each sheet is.

    Args:
        pack: The pack.

    Returns:
        HTML, each sheet an element of class bb-pack-page; titles in their order.

    Raises:
        InputError: The class plan's values cannot be used, or score sheets have no learners.
    """
    sheets: list[tuple[str, str]] = []
    if "plan" in pack.parts and pack.plan:
        sheets.append((PARTS["plan"], _plan_html(pack.plan)))
    names = titles()
    if "cards" in pack.parts:
        sheets += [
            (f"Bench card: {names[one]}", card_html(one, pack.rules, pack.site, pack.outfit)) for one in pack.exercises
        ]
    if "scores" in pack.parts:
        sheets += _scores(pack)
    listed = [title for title, _ in sheets] + [title for title, _ in pack.handouts]
    cover = _cover_html(pack, listed)
    return cover + "".join(html for _, html in sheets), listed


def _page(kind: str, title: str, inside: str) -> str:
    return (
        f'<section class="bb-pack-page bb-pack-{kind}" data-sheet-page="{kind}">'
        f"<h2>{escape(title)}</h2>{inside}</section>"
    )


def _plan_html(texts: Mapping[str, str]) -> str:
    got = answer(PLAN, units=None, drawings=True, **texts)
    return _page("plan", got["title"], f'<div class="bb-answer">{answer_html(got)}</div>')


def _scores(pack: Pack) -> list[tuple[str, str]]:
    marked = {
        one: rows for one in pack.exercises if (rows := [r for r in table(MARKS) if r.exercise == one])
    }
    if not marked:
        return []
    if pack.learners is None:
        raise InputError(
            "learners",
            "Learners", f"a score sheet has a line for each; give a whole number of 1 to {MOST_LEARNERS}.",
        )
    names = titles()
    return [
        (f"Score sheet: {names[one]}", score_html(one, rows, pack.learners)) for one, rows in marked.items()
    ]


def score_html(exercise: str, rows: Sequence[Any], learners: int) -> str:
    """A score sheet: what is wanted, and a line for each learner to write on.

    Args:
        exercise: Id of the exercise.
        rows: Its criteria with what is wanted and the most marks.
        learners: How many lines.
    """
    full = plain_number(sum(row.marks for row in rows))
    wanted = "".join(
        f"<li><b>{escape(row.criterion)}</b> (0 to {plain_number(row.marks)}): {escape(row.wanted)}</li>"
        for row in rows
    )
    heads = "".join(
        f'<th scope="col">{escape(row.criterion)}<br>of {plain_number(row.marks)}</th>' for row in rows
    )
    blanks = "<td></td>" * (len(rows) + 2)
    lines = "".join(f'<tr><th scope="row">{number}</th>{blanks}</tr>' for number in range(1, learners + 1))
    return _page(
        "score", f"Score sheet: {titles()[exercise]}",
        f'<ul>{wanted}</ul><div class="bb-pack-marks" tabindex="0" role="region" '
        f'aria-label="Marks: {escape(titles()[exercise])}"><table><thead><tr>'
        f'<th scope="col">Learner</th>{heads}<th scope="col">Marks<br>of {full}</th><th scope="col">Seen by</th>'
        f"</tr></thead><tbody>{lines}</tbody></table></div>",
    )  # fmt: skip


def _cover_html(pack: Pack, listed: Sequence[str]) -> str:
    items = "".join(f"<li>{escape(title)}</li>" for title in listed)
    counts = [
        f"{label}: {count}"
        for label, count in (("Learners", pack.learners), ("Benches", pack.benches))
        if count
    ]
    addresses = "".join(
        f'<li>{escape(title)}: <span class="bb-address">{escape(address)}</span></li>'
        for title, address in pack.handouts
    )
    pages = f"<h3>Pages handed out, with their addresses</h3><ul>{addresses}</ul>" if addresses else ""
    missing = [titles()[one] for one in pack.exercises if "scores" in pack.parts and not _has_marks(one)]
    unplanned = "plan" in pack.parts and not pack.plan
    lacks = (
        "<p>No plan of the evening in it: that comes with the link of a class plan.</p>"
        if unplanned
        else ""
    )
    lacks += f"<p>No score sheet yet for: {escape(', '.join(missing))}.</p>" if missing else ""
    return _page(
        "cover", "Sheets of the evening",
        f"<p>{escape('. '.join([*counts, f'Rule set: {RULE_SETS[pack.rules]}']))}.</p>"
        f"<ol>{items}</ol>{lacks}{pages}{_reopened(pack.address)}"
        f'<p class="bb-release">Release {escape(RELEASE)}. Your outfit’s instructions and your local rules come '
        "first. Put away old cards: a card holds for the outfit that it names.</p>",
    )  # fmt: skip


def _has_marks(exercise: str) -> bool:
    return any(row.exercise == exercise for row in table(MARKS))


def _reopened(address: str) -> str:
    if not _SITE.match(address):
        return ""
    code = f'<div class="bb-pack-code">{square_code_svg(address)}</div>' if len(address) <= LONGEST else ""
    return f'<p>Made with: <span class="bb-address">{escape(address)}</span></p>{code}'


def pack_reply(request: Mapping[str, Any]) -> dict[str, Any]:
    """What the page of the pack asks for.

    Args:
        request: As of `pack_of`.

    Returns:
        `{"html": …, "titles": […]}`; the page puts the pages handed out behind it.
    """
    html, listed = pack_html(pack_of(request))
    return {"html": html, "titles": listed}
