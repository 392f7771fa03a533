"""Gas in a cylinder, through the calculator, against CoolProp's reference equations."""

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calc import answer

ROOM = 0.043  # m³
MOLE = 8.31446261815324 * 288.15 / 101325  # m³ of ideal gas at 15 °C and 1 atm


def moles(gas: str, pressure: float, celsius: float) -> float:
    return ROOM * PropsSI("Dmolar", "P", pressure, "T", celsius + 273.15, gas)


def left(gas: str, pressure: float, celsius: float) -> float:
    got = answer(
        "oxygen-left", water_volume="43 L", gauge=f"{(pressure - 101325) / 1e5!r} bar",
        temperature=f"{celsius!r} degC", gas=gas, rules="iso", units={"gas_left": "m^3"}, full_gauge="300 bar",
    )  # fmt: skip
    return got["results"]["gas_left"]["value"]


@pytest.mark.parametrize(("gas", "within"), [("oxygen", 5e-4), ("hydrogen", 5e-4), ("methane", 2e-3)])
@given(bar=st.floats(1.02, 300.0), celsius=st.floats(-28.8, 50.0))
@settings(max_examples=150, deadline=None, derandomize=True)
def test_gas_left_agrees_with_the_reference_equation(
    gas: str, within: float, bar: float, celsius: float
) -> None:
    assume(moles(gas, bar * 1e5, celsius) <= moles(gas, 30.1e6, 15.0))  # no fuller than full
    expected = moles(gas, bar * 1e5, celsius) * MOLE
    assert left(gas, bar * 1e5, celsius) == pytest.approx(expected, rel=within)


@given(bar=st.floats(50.0, 250.0), celsius=st.floats(-20.0, 50.0))
@settings(max_examples=50, deadline=None, derandomize=True)
def test_warming_at_constant_contents_moves_the_gauge_as_the_reference_equation_says(
    bar: float, celsius: float
) -> None:
    assume(moles("oxygen", bar * 1e5 + 101325, celsius) <= moles("oxygen", 30.1e6, 15.0))  # no fuller than full
    got = answer(
        "oxygen-left", water_volume="43 L", gauge=f"{bar!r} bar", temperature=f"{celsius!r} degC", rules="iso",
        full_gauge="300 bar",
    )  # fmt: skip
    density = PropsSI("Dmolar", "P", bar * 1e5 + 101325, "T", celsius + 273.15, "oxygen")
    for degrees, gauge, _ in got["tables"][0]["rows"]:
        reads = PropsSI("P", "Dmolar", density, "T", float(degrees) + 273.15, "oxygen")
        assert float(gauge) == pytest.approx((reads - 101325) / 1e5, abs=0.5 + 1e-3 * bar)
