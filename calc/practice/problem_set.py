"""A set of practice problems for a class, with its files."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import Answer, Figure, Offered, Shown, calculator
from calc.practice import fields as asked
from calc.practice.gift import gift_of_problems
from calc.practice.handouts import help_table, learners_link, problems_table, texts_of_set
from calc.practice.qti import qti_of_problems
from calc.practice.sets import set_of


@dataclass(frozen=True, slots=True)
class ProblemSet:
    """A set of problems."""

    problems: Annotated[Figure, Shown("Problems in the set")]
    link: Annotated[Figure, Shown("Learners open, from this page", words=True)]


@calculator("problem-set", "Practice problems for a class")
def problem_set(
    *,
    topic: Annotated[str, asked.TOPIC],
    seed: Annotated[float, asked.SEED],
    problems: Annotated[float, asked.PROBLEMS],
    help: Annotated[str, asked.LEVEL],  # noqa: A002 - the link's own word
    calculator_1: Annotated[str | None, asked.calculator_choice("calculator_1")],
    calculator_2: Annotated[str | None, asked.calculator_choice("calculator_2")],
    calculator_3: Annotated[str | None, asked.calculator_choice("calculator_3")],
    calculator_4: Annotated[str | None, asked.calculator_choice("calculator_4")],
    rules: str,
) -> Answer[ProblemSet]:
    """Problems made from the calculators of this site: a list to print, a link for learners, files for a course system.

    The key stands on a page of its own.
    """  # fmt: skip
    given = {
        "topic": topic, "seed": seed, "problems": problems, "help": help, "rules": rules, "calculator_1": calculator_1,
        "calculator_2": calculator_2, "calculator_3": calculator_3, "calculator_4": calculator_4,
    }  # fmt: skip
    made = set_of(given)
    head = f"Practice problems, set {seed:.0f}"
    folded = help_table(made)
    return Answer(
        ProblemSet(
            Figure(
                float(len(made)), "", "practice",
                basis="Made by the calculators named, from round figures near their examples. A value that a calculator "
                "refuses, or meets with a warning of its own, is not asked.",
            ),
            Figure(
                None, "", "practice", words=learners_link("practice", texts_of_set(given)),
                basis="The same set on the learners' page; it keeps their progress on their own device.",
            ),
        ),
        tables=(problems_table(made), *((folded,) if folded else ())),
        files=(
            Offered("problem-set.txt", "The set as GIFT", lambda: gift_of_problems(head, made)),
            Offered("problem-set-qti.xml", "The set as QTI", lambda: qti_of_problems(head, made)),
        ),
    )  # fmt: skip
