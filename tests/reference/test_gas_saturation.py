"""Propane and propylene against CoolProp and printed pressures."""

import csv
from pathlib import Path

import numpy as np
import pytest
from CoolProp.CoolProp import PropsSI

from calc.formulas.gas.saturation import (
    COLDEST,
    HOTTEST,
    boiling_temperature,
    evaporation_draw,
    heat_of_evaporation,
    vapour_pressure,
)

FLUIDS = {"propane": "n-Propane", "propylene": "Propylene"}


@pytest.mark.parametrize("gas", FLUIDS)
def test_vapour_pressure_is_coolprops(gas: str) -> None:
    for kelvin in np.linspace(COLDEST, HOTTEST, 97).tolist():
        theirs = PropsSI("P", "T", kelvin, "Q", 0, FLUIDS[gas])
        assert vapour_pressure(gas, kelvin) == pytest.approx(theirs, rel=1e-4)
        if COLDEST < kelvin < HOTTEST:
            assert boiling_temperature(gas, theirs) == pytest.approx(kelvin, abs=0.01)


@pytest.mark.parametrize("gas", FLUIDS)
def test_heat_of_evaporation_is_coolprops(gas: str) -> None:
    for kelvin in np.linspace(COLDEST, HOTTEST, 97).tolist():
        liquid, vapour = (PropsSI("H", "T", kelvin, "Q", q, FLUIDS[gas]) for q in (0, 1))
        limit = 0.0075 if kelvin <= 333.15 else 0.012
        assert heat_of_evaporation(gas, kelvin) == pytest.approx(vapour - liquid, rel=limit)


def test_reference_points_are_met() -> None:
    path = Path(__file__).parent / "points" / "B3_lpg_saturation.csv"
    names = {fluid: gas for gas, fluid in FLUIDS.items()}
    with path.open(encoding="utf-8") as file:
        rows = [r for r in csv.DictReader(file) if float(r["T_C"]) <= 65]
    assert len(rows) >= 20
    for row in rows:
        gas, kelvin = names[row["fluid"]], float(row["T_C"]) + 273.15
        assert vapour_pressure(gas, kelvin) == pytest.approx(float(row["Psat_Pa"]), rel=2e-4)
        assert heat_of_evaporation(gas, kelvin) == pytest.approx(float(row["hvap_J_kg"]), rel=0.01)


@pytest.mark.parametrize(
    ("gas", "fahrenheit", "psig"),
    [
        (gas, f, p)
        for gas, row in {
            "propane": {0: 24, 32: 54, 70: 110, 100: 174, 130: 259},
            "propylene": {0: 33, 32: 70, 70: 137, 100: 213, 130: 313},
        }.items()
        for f, p in row.items()
    ],
    ids=str,
)
def test_gauges_read_the_printed_pressures(gas: str, fahrenheit: int, psig: int) -> None:
    """Fact file, rows C44 and C45: computed from the pure gas."""
    ours = vapour_pressure(gas, (fahrenheit - 32) / 1.8 + 273.15) - 101325
    assert ours / 6894.757 == pytest.approx(psig, abs=0.6)


def test_a_draw_takes_the_heat_that_the_wall_passes() -> None:
    """Heat balance with CoolProp's heat of evaporation at 2 bar on the gauge."""
    pressure = 3.01325e5
    cold = PropsSI("T", "P", pressure, "Q", 0, "n-Propane")
    heat = PropsSI("H", "P", pressure, "Q", 1, "n-Propane") - PropsSI(
        "H", "P", pressure, "Q", 0, "n-Propane"
    )
    wanted = 10.0 * 0.5 * (288.15 - cold) / heat
    boils = boiling_temperature("propane", pressure)
    ours = evaporation_draw(10.0, 0.5, 288.15, boils, heat_of_evaporation("propane", boils))
    assert ours == pytest.approx(wanted, rel=0.008)


@pytest.mark.parametrize(
    ("gas", "kelvin"),
    [("propane", 229.9), ("propylene", 338.2), ("methane", 290.0), ("propane", float("nan"))],
)
def test_outside_the_curve_is_refused(gas: str, kelvin: float) -> None:
    with pytest.raises(ValueError, match=r"reckoned|No vapour"):
        vapour_pressure(gas, kelvin)
    with pytest.raises(ValueError, match=r"reckoned|No vapour"):
        heat_of_evaporation(gas, kelvin)
