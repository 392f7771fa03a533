"""The key of the written questions."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import Answer, Figure, Shown, calculator
from calc.practice import fields as asked
from calc.practice.choices import licence_questions
from calc.practice.handouts import questions_key


@dataclass(frozen=True, slots=True)
class LicenceKey:
    """The key of a written test."""

    count: Annotated[Figure, Shown("Questions")]


@calculator("licence-key", "Key of the written questions")
def licence_key(
    seed: Annotated[float, asked.SEED],
    questions: Annotated[float | None, asked.QUESTIONS],
    rules: str,
) -> Answer[LicenceKey]:
    """The right answers in the order of a sheet: give what the sheet was made from."""
    made = licence_questions(round(seed), None if questions is None else round(questions), rules)
    return Answer(
        LicenceKey(Figure(float(len(made)), "", "practice", basis="Of those kept here for this rule set.")),
        tables=(questions_key(made),),
    )
