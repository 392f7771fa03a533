"""Gas through the calculators, against open libraries and reference points."""

import csv
from math import pi
from pathlib import Path

import pytest

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
