"""A set of questions on a page: `set = problems`, `licence` or `flame`; or `set = link` beside a calculator of a set.

The script asks the engine for a set and shows one question at a time. What is
read without a script stands here: one question, its answer in a fold.
"""

from html import escape

from calc.declare import RULE_SETS, Choice
from calc.practice.choices import ChoiceQuestion
from calc.practice.fields import LEVEL, TOPIC
from calc.practice.questions_html import answered_choice_html, choice_html, example_html
from calc.practice.sessions import SETS, made_set
from calc.practice.sets import Numbered

TITLES = {"problems": "Practice problems", "licence": "The written questions", "flame": "Name the flame"}
SMALL = "hose-volume"
"""Calculator of the example that stands on the page: the smallest sum there is."""

NONE_YET = "<p>There are no questions here yet.</p>"
OF = ("problem-set", "licence-questions")
"""Calculators that a learners' link may belong to."""


def _choice(name: str, asked: Choice) -> str:
    usual = str(asked.example or asked.assumed)
    options = "".join(
        f'<option value="{escape(key)}"{" selected" if key == usual else ""}>{escape(words)}</option>'
        for key, words in asked.options.items()
    )
    mark = f"practice-{name}"
    return (
        f'<div class="bb-field"><label for="{mark}">{escape(asked.label)}</label><div class="bb-entry">'
        f'<select id="{mark}" data-practice-choice="{name}">{options}</select></div></div>'
    )


def _without_script(kind: str) -> str:
    _, made = made_set(kind, {"seed": "1"} | ({"calculator_1": SMALL} if kind == "problems" else {}))
    if not made:
        return NONE_YET
    first = made[0]
    if isinstance(first, Numbered):
        return (
            f"<h3>For example: {escape(first.problem.title)}</h3>"
            f'<details class="bb-help"><summary>A problem with its working and its answer</summary>{example_html(first.problem)}</details>'
        )
    return _questions(kind, made)


def _questions(kind: str, made: tuple[Numbered | ChoiceQuestion, ...]) -> str:
    shown = [each for each in made if isinstance(each, ChoiceQuestion)]
    if kind == "flame":
        shown = shown[:1]
    return "".join(
        f'{choice_html(each, number, len(shown)).replace("part-", f"q{number}-")}<details class="bb-help"><summary>The answer'
        f"</summary>{answered_choice_html(each)}</details>"
        for number, each in enumerate(shown, start=1)
    )


def practice_html(kind: str) -> str:
    """A set of questions as HTML.

    Args:
        kind: `problems`, `licence` or `flame`.

    Returns:
        HTML with the hook data-practice.

    Raises:
        ValueError: There is no such kind.
    """
    if kind not in SETS:
        raise ValueError(f"there is no set {kind!r}; write one of {', '.join(SETS)} or link")
    rules = Choice("Rule set", RULE_SETS, assumed="us")
    choices = _choice("rules", rules).replace("<select ", "<select data-rules-choice ")
    if kind == "problems":
        choices += _choice("topic", TOPIC) + _choice("help", LEVEL)
    return (
        f'<section class="bb-practice" data-practice="{kind}" aria-labelledby="practice-title">'
        f'<h2 id="practice-title">{TITLES[kind]}</h2>'
        f"<div data-practice-first>{_without_script(kind)}</div>"
        '<form data-practice-form novalidate hidden autocomplete="off"><div data-practice-question tabindex="-1" role="group" aria-label="Question"></div>'
        '<p data-practice-said role="status"></p><div data-practice-buttons></div>'
        f'<details class="bb-help" data-practice-choices><summary>Choose another set</summary>{choices}'
        '<div class="bb-tools" data-practice-tools></div></details></form></section>'
    )


def learners_html(calculator_id: str) -> str:
    """The place of the learners' link beside a calculator that makes a set.

    Raises:
        ValueError: That calculator makes none.
    """
    if calculator_id not in OF:
        raise ValueError(f"{calculator_id} makes no set; write of = {' or '.join(OF)}")
    return (
        f'<section class="bb-learners" data-learners-link="{calculator_id}" aria-labelledby="learners-title">'
        '<h2 id="learners-title">The learners’ link</h2>'
        "<p data-by-hand>The address stands in the answer above: put it behind the address of this page.</p></section>"
    )
