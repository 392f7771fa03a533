"""The solver that finds where a curve crosses a height stops as soon as it is near enough."""

import math

import pytest

from calc.formulas.heat.crossing import crossing


@pytest.mark.parametrize(("target", "answer"), [(2.0, 2**0.5), (0.1, 0.1**0.5), (3.9, 3.9**0.5)])
def test_it_asks_the_curve_few_times(target: float, answer: float) -> None:
    """By false position and halving in turns, 200 steps would be ten times what a parabola takes."""
    asked = []

    def parabola(x: float) -> float:
        asked.append(x)
        return x * x

    assert math.isclose(crossing(parabola, target, 0.0, 2.0), answer, rel_tol=1e-9)
    assert len(asked) <= 30


@pytest.mark.parametrize("end", [0.0, 2.0])
def test_an_end_that_is_the_answer_is_taken_at_once(end: float) -> None:
    asked = []

    def line(x: float) -> float:
        asked.append(x)
        return x

    assert crossing(line, end, 0.0, 2.0) == end
    assert len(asked) == 2
