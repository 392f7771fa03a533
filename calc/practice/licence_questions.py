"""The written questions before anyone lights a torch, as a sheet and as files."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import Answer, Figure, Offered, Shown, calculator
from calc.practice import fields as asked
from calc.practice.choices import licence_questions as questions_of
from calc.practice.gift import gift_of_choices
from calc.practice.handouts import learners_link, questions_table
from calc.practice.qti import qti_of_choices


@dataclass(frozen=True, slots=True)
class LicenceQuestions:
    """A written test."""

    count: Annotated[Figure, Shown("Questions")]
    needed: Annotated[Figure, Shown("Right answers wanted", ("%",), toward="up")]
    link: Annotated[Figure, Shown("Learners open, from this page", words=True)]


@calculator("licence-questions", "Written questions before the torch")
def licence_questions(
    seed: Annotated[float, asked.SEED],
    questions: Annotated[float | None, asked.QUESTIONS],
    rules: str,
) -> Answer[LicenceQuestions]:
    """The written questions in an order of their own: a sheet to print, a link for learners, files for a course system.

    The key stands on a page of its own.
    """  # fmt: skip
    made = questions_of(round(seed), None if questions is None else round(questions), rules)
    texts = {"rules": rules, "seed": f"{seed:.0f}"}
    texts |= {} if questions is None else {"questions": f"{questions:.0f}"}
    head = f"Written questions, set {seed:.0f}"
    return Answer(
        LicenceQuestions(
            Figure(float(len(made)), "", "practice", basis="Of those kept here for this rule set."),
            Figure(
                1.0,
                "",
                "practice",
                basis="All of them, before anyone lights a torch; a wrong one comes back.",
            ),
            Figure(None, "", "practice", words=learners_link("written-test", texts)),
        ),
        tables=(questions_table(made),),
        files=(
            Offered("written-questions.txt", "The questions as GIFT", lambda: gift_of_choices(head, made)),
            Offered(
                "written-questions-qti.xml", "The questions as QTI", lambda: qti_of_choices(head, made)
            ),
        ),
    )
