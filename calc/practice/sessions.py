"""A learner at a set, one request at a time: what it holds, one question, what is said to an answer.

Nothing is kept here: the set is made again from its texts, and the page keeps how far a learner is.
"""

from collections.abc import Mapping
from typing import Any

from calc.answer.answering import found
from calc.ask.errors import InputError
from calc.ask.inputs import rules_of, taken_input, taken_inputs
from calc.declare import RULE_SETS, by_rules
from calc.practice.choices import ChoiceQuestion, licence_questions
from calc.practice.fields import FLAMES, SEED
from calc.practice.flame_trainer import flames
from calc.practice.questions_html import choice_html, problem_html
from calc.practice.sets import LEVELS, Numbered, set_of
from calc.practice.verdicts import judged_choice, judged_number
from calc.release import RELEASE

SETS = ("problems", "licence", "flame")
"""Kinds of sets, as a page and its fence name them."""

ALL_RIGHT = {
    "problems": "All {count} right.",
    "licence": "All {count} right: write the day, your name and “set {seed}, {count} of {count}” on the record. A demonstration at the bench still follows.",
    "flame": "All {count} named. Now name a real one aloud, with someone beside you who knows it.",
}
"""What is said at the end of a set."""


def _texts_of(calculator_id: str, texts: Mapping[str, str], rules: str) -> dict[str, Any]:
    calculator = found(calculator_id)
    examples = {
        name: by_rules(asked.example, rules)
        for name, asked in calculator.inputs.items()
        if asked.example is not None
    }
    taken, _ = taken_inputs(calculator, examples | dict(texts), rules)
    return {name: None if got is None else got.si for name, got in taken.items()} | {"rules": rules}


def made_set(kind: str, texts: Mapping[str, str]) -> tuple[int, tuple[Numbered | ChoiceQuestion, ...]]:
    """The number of a set and its questions.

    Args:
        kind: One of `SETS`.
        texts: What it is made from, as a link holds it; what is left out is as the form shows it.

    Raises:
        InputError: A text cannot be used, or there is no such kind.
    """
    rules = rules_of(texts)
    if kind == "problems":
        given = _texts_of("problem-set", texts, rules)
        return round(given["seed"]), set_of(given)
    if kind == "licence":
        given = _texts_of("licence-questions", texts, rules)
        questions = given["questions"]
        return round(given["seed"]), licence_questions(
            round(given["seed"]), None if questions is None else round(questions), rules
        )
    if kind != "flame":
        raise InputError("set", "Set", f"there is none of this kind; give one of {', '.join(SETS)}.")
    asked = {"seed": SEED, "flames": FLAMES}
    for name in set(texts) - set(asked) - {"rules", "shown_in"}:
        raise InputError(name[:60], "", f"“{name[:60]}” is no input of the flames.")
    seed, number = (
        round(taken_input(name, field, texts.get(name, str(field.example)), rules).si)
        for name, field in asked.items()
    )
    return seed, flames(seed, number, rules)


def _one(kind: str, texts: Mapping[str, str], number: object) -> tuple[int, int, Numbered | ChoiceQuestion]:
    _, made = made_set(kind, texts)
    if not isinstance(number, int) or isinstance(number, bool) or not 1 <= number <= len(made):
        raise InputError("number", "Number", f"there is no such question; give 1 to {len(made)}.")
    return number, len(made), made[number - 1]


def _about(kind: str, texts: Mapping[str, str]) -> dict[str, Any]:
    seed, made = made_set(kind, texts)
    rules = RULE_SETS[rules_of(texts)]
    return {
        "count": len(made),
        "words": f"Set {seed}: {len(made)} to answer. Rule set: {rules}. Release {RELEASE}.",
        "end": ALL_RIGHT[kind].format(count=len(made), seed=seed),
    }


def question_html(kind: str, texts: Mapping[str, str], number: object, level: str = "") -> str:
    """One question of a set as HTML.

    Args:
        kind: One of `SETS`.
        texts: As of `made_set`.
        number: Its place, from 1.
        level: Help it stands with; empty for that of the set.

    Raises:
        InputError: As of `made_set`, or there is no such question.
    """
    place, count, one = _one(kind, texts, number)
    if isinstance(one, Numbered):
        return problem_html(one, count, level if level in LEVELS else one.level)
    return choice_html(one, place, count)


def _judged(kind: str, texts: Mapping[str, str], number: object, text: object) -> dict[str, Any]:
    *_, one = _one(kind, texts, number)
    if not isinstance(text, str):
        raise InputError("answer", "Your answer", "write it as text.")
    got = judged_number(one.problem, text) if isinstance(one, Numbered) else judged_choice(one, text)
    return {"right": got.right, "said": got.said, "slip": got.slip, "page": got.page}


def practice_reply(asked: Mapping[str, Any]) -> dict[str, Any]:
    """What a page is told: about a set, one question, or what is said to an answer.

    Args:
        asked: `set` and `texts`; with `number` one question, with `answer` too what is said to it.

    Raises:
        InputError: It cannot be used.
    """
    kind = str(asked.get("set"))
    texts = {str(name): text for name, text in dict(asked.get("texts") or {}).items()}
    if "answer" in asked:
        return _judged(kind, texts, asked.get("number"), asked["answer"])
    if "number" in asked:
        return {"html": question_html(kind, texts, asked["number"], str(asked.get("level", "")))}
    return _about(kind, texts)
