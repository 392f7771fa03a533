"""Time and cylinders that a supply gives."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.formulas.gas.supply import (
    cylinder_share,
    cylinders_needed,
    gas_of_use,
    oxygen_for_fuel,
    running_time,
)

amounts = st.floats(1e-3, 1e3)


def test_a_printed_problem_on_running_time_comes_out() -> None:
    """[textbook] 14 L at 13,800 kPa gauge at 2.1 L/min lasts 908 min; 14 L stay behind."""
    usable = 0.014 * 13_800 / 101.325  # ideal gas, as the book has it
    assert running_time(usable, 0.0021 / 60) / 60 == pytest.approx(908, abs=0.5)


def test_complete_burning_is_a_trap_for_counting_cylinders() -> None:
    """[textbook] 9,340 L of acetylene "need 3.3 cylinders of 7,000 L": at a torch 1.3 to 1.5."""
    complete, torch = (cylinder_share(oxygen_for_fuel(9.34, r), 7.0) for r in (2.5, 1.0))
    assert complete == pytest.approx(3.3, abs=0.05)
    assert torch == pytest.approx(1.3, abs=0.05)
    assert (cylinders_needed(complete), cylinders_needed(torch)) == (4, 2)


@given(amounts, amounts, st.integers(1, 12))
def test_gas_used_is_gas_that_was_there(usable: float, flow: float, torches: int) -> None:
    lasts = running_time(usable, flow * torches)
    assert gas_of_use(flow, lasts, torches) == pytest.approx(usable)


@given(st.floats(1e-6, 1e4))
def test_whole_cylinders_are_just_enough(share: float) -> None:
    whole = cylinders_needed(share)
    assert whole >= share * (1 - 2e-6)
    assert whole == 1 or whole - 1 < share


@pytest.mark.parametrize("count", range(1, 60))
def test_arithmetic_dust_does_not_buy_a_cylinder(count: int) -> None:
    assert cylinders_needed(count * 0.1 / 0.1) == count
    assert cylinders_needed(count * 1.1 - count * 0.1) == count


@pytest.mark.parametrize("share", [0.0, -1.0, float("nan"), float("inf")])
def test_a_share_that_is_no_amount_is_refused(share: float) -> None:
    with pytest.raises(ValueError, match="more than nothing"):
        cylinders_needed(share)
