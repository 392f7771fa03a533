"""The key of a set of practice problems."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import Answer, Figure, Shown, calculator
from calc.practice import fields as asked
from calc.practice.handouts import key_steps, key_table, slips_table
from calc.practice.sets import set_of


@dataclass(frozen=True, slots=True)
class ProblemKey:
    """The key of a set."""

    problems: Annotated[Figure, Shown("Problems in the set")]


@calculator("problem-key", "Key of the practice problems")
def problem_key(
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
) -> Answer[ProblemKey]:
    """Answers, working and known slips of a set: give what the set was made from."""
    made = set_of(
        {
            "topic": topic, "seed": seed, "problems": problems, "help": help, "rules": rules,
            "calculator_1": calculator_1, "calculator_2": calculator_2, "calculator_3": calculator_3,
            "calculator_4": calculator_4,
        }
    )  # fmt: skip
    return Answer(
        ProblemKey(
            Figure(
                float(len(made)), "", "practice",
                basis="Each answer is the calculator's own, worked again here. It is right within 3 % or one mark of the "
                "instrument, whichever is more.",
            )
        ),
        steps=key_steps(made),
        tables=(key_table(made), slips_table(made)),
    )  # fmt: skip
