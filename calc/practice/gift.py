"""Questions as GIFT, a plain text that course systems read.

The signs that mean something in it are written with a backslash before them. A
question is one paragraph; an empty line ends it.
"""

import re

from calc.practice.choices import ChoiceQuestion
from calc.practice.sets import Numbered
from calc.practice.slips import slip_tolerance, wrong_answers
from calc.values.numbers import plain_number

_MEANS_SOMETHING = re.compile(r"([~=#:])")
_OTHER_SIGNS = str.maketrans("{}\\", "()/")
FIGURES = 7
"""Figures that a key is written with."""


def escaped(text: str) -> str:
    r"""A text on one line, the signs that mean something in GIFT made plain.

    A brace becomes a bracket and a backslash a stroke: not every reader takes them, backslash or not.

    Examples:
        >>> print(escaped("a = {b}: 50 %"))
        a \= (b)\: 50 %
    """
    return _MEANS_SOMETHING.sub(r"\\\1", " ".join(text.translate(_OTHER_SIGNS).split()))


def _near(value: float, tolerance: float) -> str:
    return f"{plain_number(value, FIGURES)}:{plain_number(tolerance, FIGURES)}"


def _number(one: Numbered) -> str:
    made = one.problem
    low, high = made.accepted
    lines = [f"={_near((low + high) / 2, (high - low) / 2)}#{escaped(f'Right. {made.shown}')}"]
    lines += [
        f"=%0%{_near(wrong.value, slip_tolerance(wrong, made))}#{escaped(f'A known slip: {wrong.words}.')}"
        for wrong in wrong_answers(made)
    ]
    title = escaped(f"Problem {one.number}, {made.title}")
    return f"::{title}::[plain]{escaped(made.whole_question)} {{#\n" + "\n".join(lines) + "\n}"


def _choice(number: int, question: ChoiceQuestion) -> str:
    part = question.parts[0]
    lines = [
        f"{'=' if place == part.right else '~'}{escaped(option)}"
        for place, option in enumerate(part.options)
    ]
    title = escaped(f"Question {number}, {question.title}")
    told = f"\n####{escaped(question.because)}" if question.because else ""
    return f"::{title}::[plain]{escaped(part.asks)} {{\n" + "\n".join(lines) + told + "\n}"


def _file(head: str, blocks: list[str]) -> str:
    return "\n\n".join([f"// {' '.join(head.split())}", *blocks]) + "\n"


def gift_of_problems(head: str, made: tuple[Numbered, ...]) -> str:
    """A set of problems as GIFT: the key with its tolerance, and each slip with its words.

    Args:
        head: What the set is, one line.
        made: The problems.
    """
    return _file(head, [_number(one) for one in made])


def gift_of_choices(head: str, questions: tuple[ChoiceQuestion, ...]) -> str:
    """Choice questions as GIFT.

    Args:
        head: What the set is, one line.
        questions: The questions, one thing to pick in each.
    """
    return _file(head, [_choice(number, each) for number, each in enumerate(questions, start=1)])
