"""Oxygen and fuel of a lesson, against CoolProp's reference equations and molar masses."""

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import answer

MOLE = 8.31446261815324 * 288.15 / 101325  # m³ of ideal gas at 15 °C and 1 atm
ROOM = 0.05  # m³


def held(gauge: float, celsius: float) -> float:
    """Moles of oxygen in 50 L at a gauge in bar."""
    return ROOM * PropsSI("Dmolar", "P", max(gauge, 0.0) * 1e5 + 101325, "T", celsius + 273.15, "Oxygen")


def log(**texts: str) -> dict[str, dict[str, float]]:
    readings = {
        "fuel": "acetylene", "fuel_before": "53.6 kg", "fuel_after": "52.5 kg", "oxygen_before": "105 bar",
        "oxygen_after": "84 bar", "water_volume": "50 L", "rules": "iso",
    }  # fmt: skip
    results: dict[str, dict[str, float]] = answer("gas-log", **(readings | texts))["results"]
    return results


@given(
    before=st.floats(40.0, 230.0), left=st.floats(0.05, 0.9), warm=st.floats(-10.0, 45.0),
    colder=st.floats(0.0, 20.0),
)  # fmt: skip
@settings(max_examples=80, deadline=None, derandomize=True)
def test_oxygen_used_and_its_band_agree_with_the_reference_equation(
    before: float, left: float, warm: float, colder: float
) -> None:
    after, cold = before * left, warm - colder
    used = held(before, warm) - held(after, cold)
    if used <= 0:
        return
    got = log(
        oxygen_before=f"{before!r} bar", oxygen_after=f"{after!r} bar", temperature_before=f"{warm!r} degC",
        temperature_after=f"{cold!r} degC", gauge_division="10 bar",
    )["oxygen_used"]  # fmt: skip
    within = 1e-3 * held(before, warm) * MOLE
    assert got["si"] == pytest.approx(used * MOLE, abs=within)
    most = held(before + 5, warm) - held(after - 5, cold)
    least = max(held(before - 5, warm) - held(after + 5, cold), 0.0)
    assert got["high"] == pytest.approx(most * MOLE * 1e3, abs=within * 1e3)
    assert got["low"] == pytest.approx(least * MOLE * 1e3, abs=within * 1e3)


@pytest.mark.parametrize(("fuel", "fluid"), [("propane", "n-Propane"), ("propylene", "Propylene")])
def test_a_kilogram_of_liquefied_fuel_is_its_moles(fuel: str, fluid: str) -> None:
    got = log(fuel=fuel, fuel_before="20 kg", fuel_after="19 kg")["fuel_used"]
    assert got["si"] == pytest.approx(MOLE / PropsSI("M", fluid), rel=1e-4)


def test_a_cold_cylinder_that_reads_low_has_used_less_than_it_seems() -> None:
    """At constant contents the reference equation says what a cylinder reads 20 °C colder."""
    density = held(105.0, 20.0) / ROOM
    reads = (PropsSI("P", "Dmolar", density, "T", 273.15, "Oxygen") - 101325) / 1e5
    got = log(
        oxygen_after=f"{reads - 0.05!r} bar", temperature_before="20 degC", temperature_after="0 degC"
    )["oxygen_used"]
    assert reads < 97
    assert got["si"] < 0.005
