"""What is said to an answer: right, which slip it looks like, or what to look at again."""

from dataclasses import dataclass

from calc.ask.errors import InputError
from calc.ask.inputs import Taken, taken_input
from calc.ask.reading import UnreadableError, typed
from calc.declare import Field
from calc.practice.choices import ChoiceQuestion
from calc.practice.problems import Problem
from calc.practice.slips import slip_tolerance, unit_slip, wrong_answers
from calc.values.units import from_si, written

LABEL = "Your answer"


@dataclass(frozen=True, slots=True)
class Verdict:
    """What is said to one answer.

    Attributes:
        right: Whether it is right.
        said: A sentence or two.
        slip: Id of the slip it looks like, or empty.
        page: Source file of a page to read, or empty.
    """

    right: bool
    said: str
    slip: str = ""
    page: str = ""


def _read(problem: Problem, text: str) -> Taken:
    shown = problem.declared
    units = tuple(dict.fromkeys((problem.unit, *shown.units)))
    example = f"10 {written(problem.unit)}".strip()
    try:
        typed(text)
    except UnreadableError as error:
        raise InputError("answer", LABEL, f"{error}; write it as in {example}.") from None
    asked = Field(LABEL, units, example=f"10 {problem.unit}".strip(), free_gas=shown.free_gas)
    return taken_input("answer", asked, text, problem.rules)


def judged_number(problem: Problem, text: str) -> Verdict:
    """What is said to a number with its unit.

    Args:
        problem: The problem.
        text: What was typed.

    Raises:
        InputError: It cannot be read as a number with a unit that fits.
    """
    got = _read(problem, text)
    shown = problem.declared
    value = from_si(got.si, problem.unit, free_gas=shown.free_gas)
    low, high = problem.accepted
    hair = 1e-9 * problem.key
    if low - hair <= value <= high + hair:
        return Verdict(True, f"Right. The calculator says {problem.shown}.")
    for wrong in wrong_answers(problem):
        if abs(value - wrong.value) <= slip_tolerance(wrong, problem):
            return Verdict(False, f"Not yet. This looks like a known slip: {wrong.words}.", wrong.slip)
    number = got.value if isinstance(got.value, float) else value
    if words := unit_slip(problem, number, got.unit or problem.unit):
        return Verdict(False, f"Not yet. {words[0].upper()}{words[1:]}.", "unit")
    if abs(value - problem.key) <= problem.tolerance:
        return Verdict(
            False, f"Not yet. It is near, but {'below the least' if value < low else 'above the most'} that the text allows: round to the other side."
        )
    way = "too large" if value > problem.key else "too small"
    if value <= 0 < problem.key:
        return Verdict(False, "Not yet. It is more than nothing: look at the signs.")
    unit = written(problem.unit)
    return Verdict(False, f"Not yet. It is {way}. Look at each figure again, and at what it is counted in{f' ({unit})' if unit else ''}.")  # fmt: skip


def picked(question: ChoiceQuestion, text: str) -> tuple[int, ...]:
    """Places that were picked, one for each part.

    Args:
        question: The question.
        text: Numbers from 1, with commas between parts.

    Raises:
        InputError: They name no options.
    """
    named = text.split(",") if len(text) <= 20 else []
    most = max(len(part.options) for part in question.parts)
    if len(named) != len(question.parts) or not all(
        each.strip().isdecimal() and each.isascii() for each in named
    ):
        each_part = "one in each part" if len(question.parts) > 1 else "one"
        raise InputError("answer", LABEL, f"pick {each_part}; give 1 to {most}.")
    places = tuple(int(each) - 1 for each in named)
    for place, part in zip(places, question.parts, strict=True):
        if not 0 <= place < len(part.options):
            raise InputError("answer", LABEL, f"there is no such option; give 1 to {len(part.options)}.")
    return places


def judged_choice(question: ChoiceQuestion, text: str) -> Verdict:
    """What is said to what was picked.

    Args:
        question: The question.
        text: As of `picked`.

    Raises:
        InputError: As of `picked`.
    """
    places = picked(question, text)
    wrong = [part for place, part in zip(places, question.parts, strict=True) if place != part.right]
    if not wrong:
        return Verdict(True, f"Right. {question.because}", page=question.page)
    if len(question.parts) > 1 and len(wrong) < len(question.parts):
        return Verdict(
            False, f"Not yet: look again at “{wrong[0].asks}” {question.because}", page=question.page
        )
    return Verdict(False, f"Not yet. {question.because}", page=question.page)
