"""A set as tables: the list that is handed out, its help, and the key."""

from collections.abc import Iterable
from urllib.parse import urlencode

from calc.declare import Step, Table
from calc.practice.choices import ChoiceQuestion
from calc.practice.problems import Problem
from calc.practice.sets import NAMED, Numbered, blanks, worked_example
from calc.practice.slips import wrong_answers
from calc.show.notation import unit_text
from calc.values.numbers import Toward, plain_number, rounded
from calc.values.units import written

OPEN = "______"
LETTERS = "ABCDEFGH"


def learners_link(page: str, texts: dict[str, str]) -> str:
    """Address of the learner's page with a set in it, beside the instructor's page.

    Args:
        page: Its folder, such as `practice`.
        texts: What the set is made from, by input.

    Examples:
        >>> learners_link("practice", {"seed": "7"})
        '../practice/?v=1&seed=7'
    """
    return f"../{page}/?{urlencode({'v': '1'} | texts)}"


def texts_of_set(given: dict[str, object]) -> dict[str, str]:
    """Texts of a set for a link, in the order of the form."""
    texts = {"rules": str(given["rules"]), "topic": str(given["topic"])}
    texts |= {name: str(given[name]) for name in NAMED if given[name]}
    return texts | {
        "seed": f"{given['seed']:.0f}", "problems": f"{given['problems']:.0f}", "help": str(given["help"]),
    }  # fmt: skip


def problems_table(made: tuple[Numbered, ...]) -> Table:
    """The problems, as they are handed out."""
    return Table(
        "The problems",
        ("No.", "Problem", "Answer"),
        tuple((f"{one.number}", one.problem.whole_question, OPEN) for one in made),
        "Each problem names all that is needed. What you look up in a table of your own may differ by a little.",
    )


def step_text(step: Step, *, is_open: bool = False) -> str:
    """One step of the working on a line, its result left open where wanted.

    Examples:
        >>> step_text(Step("Now", "absolute_pressure", (("gauge", 1e5, "pascal"),), 201325.0, "pascal"), is_open=True)
        'Now: with gauge = 100000 Pa comes ______ Pa'
    """
    numbers = ", ".join(
        f"{name.replace('_', ' ')} = {plain_number(value, 6)} {unit_text(unit)}".strip()
        for name, value, unit in step.numbers
    )
    result = OPEN if is_open else plain_number(step.value, 6)
    return f"{step.says}: with {numbers} comes {result} {unit_text(step.unit)}".strip()


def help_table(made: tuple[Numbered, ...]) -> Table | None:
    """The help that goes with a set; None where all problems are bare."""
    rows: list[tuple[str, ...]] = []
    for one in made:
        if one.level == "worked":
            like = worked_example(one)
            rows.append((f"{one.number}", "Worked example", f"{like.question} {like.shown}."))
            rows += [(f"{one.number}", "", step_text(step)) for step in like.steps]
        elif one.level == "steps":
            steps = one.problem.steps
            left_open = blanks(steps)
            rows.append(
                (f"{one.number}", "Steps to complete", "" if steps else "Its calculator shows no steps.")
            )
            rows += [
                (f"{one.number}", "", step_text(step, is_open=place in left_open))
                for place, step in enumerate(steps)
            ]
    note = "The working is in pascals, kelvins, cubic meters and seconds, as the calculators work."
    return Table("Help with them", ("No.", "Help", "Line"), tuple(rows), note) if rows else None


def key_table(made: tuple[Numbered, ...]) -> Table:
    """The answers."""
    return Table(
        "The answers",
        ("No.", "Calculator", "Asked", "Answer", "Right from", "to"),
        tuple(
            (
                f"{one.number}",
                each.title,
                each.asked,
                each.shown,
                *_ends(each),
            )
            for one in made
            for each in (one.problem,)
        ),
    )


def _ends(one: Problem) -> tuple[str, str]:
    ways: tuple[Toward, Toward] = ("up", "down") if one.limits.any else ("nearest", "nearest")
    low, high = (
        f"{plain_number(float(rounded(end, 4, way)), 4)} {written(one.unit)}".strip()
        for end, way in zip(one.accepted, ways, strict=True)
    )
    return low, high


def slips_table(made: tuple[Numbered, ...]) -> Table:
    """Wrong answers that tell their slip."""
    rows = [
        (
            f"{one.number}",
            f"{plain_number(wrong.value, 3)} {written(one.problem.unit)}".strip(),
            wrong.words,
        )
        for one in made
        for wrong in wrong_answers(one.problem)
    ]
    return Table(
        "Known slips", ("No.", "Who wrote", "did this"), tuple(rows),
        "Only slips whose answer lies apart from the right one and from every other slip's.",
    )  # fmt: skip


def key_steps(made: Iterable[Numbered]) -> tuple[Step, ...]:
    """The working of every problem, its number before each step."""
    return tuple(
        Step(f"Problem {one.number}. {step.says}", step.formula, step.numbers, step.value, step.unit)
        for one in made
        for step in one.problem.steps
    )


def questions_table(questions: tuple[ChoiceQuestion, ...]) -> Table:
    """Written questions, as they are handed out."""
    return Table(
        "The questions",
        ("No.", "Topic", "Question", "Pick one"),
        tuple(
            (
                f"{number}", each.title, each.parts[0].asks,
                "  ".join(f"{LETTERS[place]}: {option}" for place, option in enumerate(each.parts[0].options)),
            )
            for number, each in enumerate(questions, start=1)
        ),
    )  # fmt: skip


def questions_key(questions: tuple[ChoiceQuestion, ...]) -> Table:
    """Answers of the written questions."""
    return Table(
        "The answers",
        ("No.", "Right", "Because", "Source, how sure"),
        tuple(
            (
                f"{number}", f"{LETTERS[each.parts[0].right]}: {each.parts[0].options[each.parts[0].right]}",
                each.because, each.behind,
            )
            for number, each in enumerate(questions, start=1)
        ),
    )  # fmt: skip
