"""What must hold of any liquefied gas."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.formulas.gas.saturation import (
    COLDEST,
    HOTTEST,
    boiling_temperature,
    evaporation_draw,
    heat_of_evaporation,
    vapour_pressure,
    wetted_area,
)

gases = st.sampled_from(["propane", "propylene"])
temperatures = st.floats(COLDEST, HOTTEST)


@given(gases, temperatures)
def test_pressure_leads_back_to_temperature(gas: str, temperature: float) -> None:
    again = boiling_temperature(gas, vapour_pressure(gas, temperature))
    assert again == pytest.approx(temperature, abs=1e-6)


@given(gases, temperatures, st.floats(0.01, 50))
def test_warmth_raises_pressure_and_eases_boiling(gas: str, temperature: float, rise: float) -> None:
    warmer = min(temperature + rise, HOTTEST)
    assert vapour_pressure(gas, warmer) >= vapour_pressure(gas, temperature)
    assert heat_of_evaporation(gas, warmer) <= heat_of_evaporation(gas, temperature)


@given(gases, st.floats(allow_nan=True, allow_infinity=True))
def test_any_pressure_is_answered_or_refused(gas: str, pressure: float) -> None:
    try:
        temperature = boiling_temperature(gas, pressure)
    except ValueError:
        return
    assert COLDEST <= temperature <= HOTTEST


@given(st.floats(0.05, 1), st.floats(0.01, 2), st.floats(240, 280), st.floats(0, 60))
def test_a_fuller_or_warmer_cylinder_gives_more(
    diameter: float, depth: float, boiling: float, warmer: float
) -> None:
    little = evaporation_draw(10, wetted_area(diameter, depth), boiling + warmer, boiling, 4e5)
    more = evaporation_draw(10, wetted_area(diameter, 2 * depth), boiling + warmer, boiling, 4e5)
    assert 0 <= little <= more <= 2 * little
