"""Where the sum over the moments of a moving flame begins and ends, and its step, worked by hand."""

from math import inf, isclose, log, sqrt
from typing import Any

import pytest

from calc.formulas.heat.moving_source import _moments

STILL = {
    "reach": 0.01, "speed": 0.0, "ahead": 0.0, "aside": 0.0, "thickness": inf, "spread": 0.001, "diffusivity": 1e-5, "decay": 0.0,
}  # fmt: skip
"""A flame of 1 mm on thick metal of 1e-5 m²/s, seen from 10 mm."""


@pytest.mark.parametrize(
    ("changed", "first", "last", "step"),
    [
        pytest.param({}, 1e-6 * 1e-6 / 2e-5, 1e12 * 1e-4 / 1e-5, 0.2, id="a millionth of the spread's time"),
        pytest.param({"reach": 0.1}, 1e-6 * 1e-5 / 2e-5, 1e12 * 1e-2 / 1e-5, 0.2, id="a thousandth of the reach, where more"),
        pytest.param({"thickness": 0.0005}, 1e-6 * 2.5e-7 / 1e-5, 1e13, 0.2, id="thin metal: the time across it"),
        pytest.param({"speed": 0.002}, 5e-8, 0.04 / 0.002 + 250 * 1e-5 / 4e-6, 0.2, id="until the torch has gone by"),
        pytest.param(
            {"speed": 0.002, "ahead": 0.02, "aside": 0.003}, 5e-8, (0.08 + 0.04 + 0.12) / 0.002 + 625, 0.2, id="ahead and aside"
        ),
        pytest.param({"decay": 1.0}, 5e-8, 45.0, 0.2, id="until all is lost to the air"),
        pytest.param(
            {"speed": 0.1, "ahead": -0.01}, 5e-8, (0.04 + 0.04) / 0.1 + 250 * 1e-5 / 0.01, sqrt(3e-6) / 0.01, id="behind a fast torch"
        ),
        pytest.param(
            {"speed": 10.0, "ahead": -1.0}, 5e-8, 4.04 / 10 + 250 * 1e-5 / 100, 0.01, id="never in steps below a hundredth"
        ),
    ],
)  # fmt: skip
def test_the_sum_begins_and_ends_where_nothing_is_left_out(
    changed: dict[str, float], first: float, last: float, step: float
) -> None:
    given: dict[str, Any] = STILL | changed
    begins, by, count = _moments(**given)
    assert isclose(begins, first, rel_tol=1e-9)
    assert isclose(by, step, rel_tol=1e-9)
    assert count == int(log(last / first) / step) + 2
