"""How each result is shown: `shown.csv`, our own choice, so that none is changed unawares.

Figures, the side to which it is rounded, a step, and whether it waits in a fold. What the file leaves out is shown
with three figures, to the nearest, in the open. This says nothing of what a number is worth: `evidence/` does.
"""

import csv
from pathlib import Path

import pytest

from calc.declare.catalogue import calculators

LINES = (Path(__file__).parent / "shown.csv").read_text(encoding="utf-8").splitlines()
TYPED = {(row["calculator"], row["result"]): row for row in csv.DictReader(LINES)}
USUAL = {"figures": "3", "toward": "nearest", "step": "", "fold": ""}


def step_words(step: object) -> str:
    """A step as the file has it: one for each place where they differ."""
    return " / ".join(step.values()) if isinstance(step, dict) else str(step or "")


@pytest.mark.parametrize("calculator", sorted(calculators()))
def test_each_result_is_shown_as_we_chose(calculator: str) -> None:
    for name, shown in calculators()[calculator].results.items():
        typed = TYPED.get((calculator, name), USUAL)
        ours = (str(shown.digits), shown.toward, step_words(shown.step), "folded" if shown.folded else "")
        assert ours == tuple(typed[part] for part in USUAL), name


def test_no_line_of_the_file_is_about_a_result_that_has_gone() -> None:
    assert not [name for calculator, name in TYPED if name not in calculators()[calculator].results]
