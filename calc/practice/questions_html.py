"""Questions of a set as HTML, the same at build time and in the browser; all texts are escaped here."""

from html import escape

from calc.declare import Step
from calc.practice.choices import ChoiceQuestion
from calc.practice.handouts import OPEN
from calc.practice.problems import Problem
from calc.practice.sets import Numbered, blanks, worked_example
from calc.show.notation import formula_html, symbol_html, unit_text
from calc.values.numbers import plain_number

NO_STEPS = (
    "<p>Its calculator shows no steps. Open its page, give it the same values, and see what changes.</p>"
)
SI_NOTE = "<p>The working is in pascals, kelvins, cubic meters and seconds, as the calculators work.</p>"


def _steps_html(steps: tuple[Step, ...], left_open: frozenset[int] = frozenset()) -> str:
    if not steps:
        return NO_STEPS
    lines = []
    for place, step in enumerate(steps):
        numbers = ", ".join(
            f"{symbol_html(name)} = {plain_number(value, 6)} {escape(unit_text(unit))}".rstrip()
            for name, value, unit in step.numbers
        )
        found = OPEN if place in left_open else f"{plain_number(step.value, 6)}"
        lines.append(
            f"<li><p>{escape(step.says)}</p>{formula_html(step.formula)}"
            f'<p class="bb-numbers">with {numbers}</p><p>= <strong>{found}</strong> {escape(unit_text(step.unit))}</p></li>'
        )
    return f"{SI_NOTE}<ol>{''.join(lines)}</ol>"


def _given_html(made: Problem) -> str:
    given = "".join(f"<li>{escape(line)}</li>" for line in (*made.given, *made.taken_for_granted))
    rule = f"<p>{escape(made.rule)}</p>" if made.rule else ""
    return f"<ul>{given}</ul>{rule}<p><strong>{escape(made.asked)}</strong></p>"


def example_html(like: Problem) -> str:
    """A problem with its whole working and its answer."""
    return (
        f"{_given_html(like)}{_steps_html(like.steps)}"
        f"<p>Answer: <strong>{escape(like.shown)}</strong></p>"
    )


def _help_html(one: Numbered, level: str) -> str:
    if level == "bare":
        return ""
    if level == "steps":
        steps = one.problem.steps
        body, words = _steps_html(steps, blanks(steps)), "Steps to complete"
    else:
        body, words = example_html(worked_example(one)), "A worked example with other figures"
    return f'<details class="bb-help" open><summary>{words}</summary>{body}</details>'


def problem_html(one: Numbered, count: int, level: str) -> str:
    """One problem with the help it stands with, and a box for the answer.

    Args:
        one: The problem.
        count: How many the set has.
        level: `worked`, `steps` or `bare`.
    """
    made = one.problem
    return (
        f'<div data-level="{level}"><h3>{one.number} of {count}: {escape(made.title)}</h3>{_given_html(made)}'
        f"{_help_html(one, level)}"
        '<p><label for="practice-answer">Your answer, with its unit</label></p>'
        f'<p class="bb-hint" id="practice-near">{escape(made.how_near)}</p>'
        '<input id="practice-answer" data-practice-answer type="text" inputmode="text" autocomplete="off" maxlength="80" '
        'aria-describedby="practice-near"></div>'
    )


def choice_html(question: ChoiceQuestion, number: int, count: int) -> str:
    """One choice question.

    Args:
        question: The question.
        number: Its place, from 1.
        count: How many the set has.
    """
    picture = (
        f'<figure class="bb-picture">{question.picture}<figcaption>{escape(question.seen)}</figcaption></figure>'
        if question.picture
        else ""
    )
    parts = "".join(
        f'<fieldset data-practice-part="{place}"><legend>{escape(part.asks)}</legend>'
        + "".join(
            f'<label class="bb-do"><input type="radio" name="part-{place}" value="{value}"><span>{escape(option)}</span></label>'
            for value, option in enumerate(part.options, start=1)
        )
        + "</fieldset>"
        for place, part in enumerate(question.parts, start=1)
    )
    return f"<div><h3>{number} of {count}: {escape(question.title)}</h3>{picture}{parts}</div>"


def answered_choice_html(question: ChoiceQuestion) -> str:
    """What is right, and why, for a fold of a page that is read without a script."""
    picked = "".join(
        f"<p>{escape(part.asks)} <strong>{escape(part.options[part.right])}</strong></p>"
        for part in question.parts
    )
    behind = f' <cite class="bb-source">{escape(question.behind)}</cite>' if question.behind else ""
    return f"{picked}<p>{escape(question.because)}{behind}</p>"
