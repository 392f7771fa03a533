"""Gas through the calculators, against open libraries and reference points."""

import csv
from itertools import product
from math import pi
from pathlib import Path

import pytest
from CoolProp.CoolProp import PropsSI

from calc import answer


def _leaks() -> list[dict[str, float]]:
    path = Path(__file__).parent / "points" / "C3_leakdown.csv"
    with path.open(encoding="utf-8") as file:
        return [{k: float(v) for k, v in row.items()} for row in csv.DictReader(file)]


@pytest.mark.parametrize("row", _leaks(), ids=lambda r: f"{r['P1_psig']}-{r['P2_psig']} psig")
def test_a_leak_is_that_of_the_reference_points(row: dict[str, float]) -> None:
    """The shut volume is given as a short hose of any bore that holds it."""
    length = row["V_m3"] / (pi / 4 * 0.01**2)
    got = answer(
        "leak-test", gas="oxygen", bore="10 mm", length=f"{length!r} m", extra_volume="0 L",
        first_gauge=f"{row['P1_psig']!r} psi", last_gauge=f"{row['P2_psig']!r} psi",
        time=f"{row['dt_s']!r} s", first_temperature=f"{row['T1_K'] - 273.15!r} degC",
        last_temperature=f"{row['T2_K'] - 273.15!r} degC", units={"leak_rate": "mL/min"},
    )["results"]["leak_rate"]  # fmt: skip
    assert got["value"] == pytest.approx(max(row["leak_std_mL_min_15C"], 0.0), rel=1e-4, abs=1e-9)
    assert got["low"] <= got["value"] <= got["high"]


LIQUID = {"gross_weight": "30 kg", "tare_weight": "20 kg", "full_weight": "11 kg", "rules": "iso"}


@pytest.mark.parametrize(("fuel", "fluid"), [("propane", "n-Propane"), ("propylene", "Propylene")])
def test_the_gauge_of_a_liquefied_gas_is_coolprops(fuel: str, fluid: str) -> None:
    for celsius in range(-40, 51, 3):
        got = answer(
            "liquid-fuel-left", fuel=fuel, temperature=f"{celsius} degC", least_gauge="1 bar", **LIQUID,
            units={"vapour_gauge": "bar"},
        )["results"]["vapour_gauge"]["value"]  # fmt: skip
        theirs = PropsSI("P", "T", celsius + 273.15, "Q", 0, fluid)
        assert got * 1e5 + 101325 == pytest.approx(theirs, rel=2e-4)


@pytest.mark.parametrize(("fuel", "fluid"), [("propane", "n-Propane"), ("propylene", "Propylene")])
def test_the_steady_draw_is_a_heat_balance_on_coolprops_liquid(fuel: str, fluid: str) -> None:
    """Still air gives 10 W/m²K to bottom and wetted side, within a factor: from memory."""
    for celsius, bar in product((0.0, 10.0, 30.0), (1.0, 2.0, 4.0)):
        pressure = bar * 1e5 + 101325
        boiling = PropsSI("T", "P", pressure, "Q", 0, fluid)
        heat = PropsSI("H", "P", pressure, "Q", 1, fluid) - PropsSI("H", "P", pressure, "Q", 0, fluid)
        depth = 10.0 / PropsSI("D", "T", 288.15, "Q", 0, fluid) / (pi * 0.15**2)
        kilograms = 10.0 * (pi * 0.3 * depth + pi * 0.15**2) * (celsius + 273.15 - boiling) / heat
        theirs = max(kilograms, 0.0) / PropsSI("M", fluid) * 8.31446261815324 * 288.15 / 101325
        got = answer(
            "liquid-fuel-left", fuel=fuel, temperature=f"{celsius} degC", least_gauge=f"{bar} bar",
            diameter="300 mm", **LIQUID, units={"draw_kept": "m^3/h"},
        )["results"]["draw_kept"]  # fmt: skip
        assert got["value"] / 3600 == pytest.approx(theirs, rel=0.01)
