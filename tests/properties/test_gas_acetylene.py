"""What must hold of any cylinder of dissolved acetylene."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.formulas.gas.acetylene import (
    COLDEST,
    HOTTEST,
    MOST_SHARE,
    acetylene_chill,
    acetylene_pressure,
    acetylene_share,
)

temperatures = st.floats(COLDEST, HOTTEST)
shares = st.floats(0.001, MOST_SHARE * 0.999)


@given(shares, temperatures)
def test_pressure_leads_back_to_contents(share: float, temperature: float) -> None:
    pressure = acetylene_pressure(share, temperature)
    assert acetylene_share(pressure, temperature) == pytest.approx(share, abs=1e-9)


@given(shares, temperatures, st.floats(1e-4, 0.3), st.floats(0.01, 30))
def test_more_gas_and_more_heat_are_more_pressure(
    share: float, temperature: float, more: float, rise: float
) -> None:
    reads = acetylene_pressure(share, temperature)
    assert acetylene_pressure(min(share + more, MOST_SHARE), temperature) > reads
    assert acetylene_pressure(share, min(temperature + rise, HOTTEST)) >= reads


@given(st.floats(allow_nan=True, allow_infinity=True), temperatures)
def test_any_pressure_is_answered_or_refused(pressure: float, temperature: float) -> None:
    try:
        share = acetylene_share(pressure, temperature)
    except ValueError:
        return
    assert 0 <= share <= MOST_SHARE


def test_a_seventh_an_hour_chills_a_ten_kilogram_cylinder_by_a_quarter_kilowatt() -> None:
    """Reference facts, from memory: about 250 W."""
    assert acetylene_chill(10 / 7 / 3600) == pytest.approx(250, abs=5)
