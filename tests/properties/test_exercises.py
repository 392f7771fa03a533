"""Every exercise of the ladder is a job that the job sheet answers."""

import pytest

from calc.answer.answering import answer
from calc.class_plan.exercises import exercises, titles
from calc.declare import RULE_SETS


@pytest.mark.parametrize("rules", RULE_SETS)
@pytest.mark.parametrize("exercise", titles())
def test_the_job_sheet_answers_it(exercise: str, rules: str) -> None:
    one = exercises(rules)[exercise]
    got = answer("job-sheet", **one.job)
    assert got["results"]["torch_time"]["si"] <= one.flame_time, "a learner is no faster than a welder"
    assert one.flame_time < one.bench_time


@pytest.mark.parametrize("exercise", titles())
def test_pieces_have_a_size_and_a_stock_or_neither(exercise: str) -> None:
    for rules in RULE_SETS:
        one = exercises(rules)[exercise]
        assert (one.pieces > 0) == (one.stock != "none") == bool(one.size) == all(one.sides)
