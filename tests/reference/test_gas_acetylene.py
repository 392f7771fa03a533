"""Dissolved acetylene against printed solubility, heating points and CoolProp's acetone."""

import csv
from pathlib import Path

import pytest
from CoolProp.CoolProp import PropsSI

from calc.formulas.gas.acetylene import (
    ABSOLUTE_LIMIT,
    CONTENTS_BAND,
    CONTINUOUS_DRAW,
    FLAT_DRAW,
    FULL_LOADING,
    GAUGE_LIMIT,
    INTERMITTENT_DRAW,
    MOST_SHARE,
    OLDER_DRAW,
    PRESSURE_BAND,
    acetylene_by_weight,
    acetylene_draw_limit,
    acetylene_pressure,
    acetylene_share,
)
from calc.values.quantities import FIFTEEN_CELSIUS, GAS_CONSTANT, SEVENTY_FAHRENHEIT

ATM = 101325.0
FOOT3_AT_70F = 0.3048**3 * FIFTEEN_CELSIUS / SEVENTY_FAHRENHEIT
CFH = FOOT3_AT_70F / 3600
POUND = 0.45359237


def _points(kind: str) -> list[dict[str, str]]:
    path = Path(__file__).parent / "points" / "B2_acetylene_cylinder.csv"
    with path.open(encoding="utf-8") as file:
        return [row for row in csv.DictReader(file) if row["kind"].startswith(kind)]


@pytest.mark.parametrize("row", _points("textbook"), ids=lambda row: f"leeds-1910 {row['kind']}")
def test_solubility_is_the_textbooks(row: dict[str, str]) -> None:
    share = float(row["kg_C2H2_per_kg_acetone"]) / FULL_LOADING
    ours = acetylene_pressure(share, FIFTEEN_CELSIUS)
    assert ours == pytest.approx(float(row["P_Pa_abs"]), rel=PRESSURE_BAND)


@pytest.mark.parametrize(
    ("before", "cold", "after", "warm"),
    [(6.74, 14.0, 10.55, 35.7), (12.25, 14.0, 19.46, 36.0)],
    ids=["leeds-1910 Berthelot and Vieille, 6.74 atm", "leeds-1910 12.25 atm"],
)
def test_a_warmed_cylinder_reads_as_measured(before: float, cold: float, after: float, warm: float) -> None:
    """Read in [leeds-1910]: pressures in atm at two temperatures, contents the same."""
    share = acetylene_share(before * ATM, cold + 273.15)
    assert acetylene_pressure(share, warm + 273.15) == pytest.approx(after * ATM, rel=PRESSURE_BAND)
    assert acetylene_share(after * ATM, warm + 273.15) == pytest.approx(share, rel=CONTENTS_BAND)


def test_an_overfull_state_is_refused_where_the_model_fails() -> None:
    """[leeds-1910] 19.98 atm at 13 °C is half as much again as full: the model is 9 % off."""
    with pytest.raises(ValueError, match="above any full cylinder"):
        acetylene_share(19.98 * ATM, 286.15)


@pytest.mark.parametrize("celsius", [-30, -10, 10, 20, 40, 65])
def test_an_empty_cylinder_shows_acetones_own_vapour(celsius: int) -> None:
    theirs = PropsSI("P", "T", celsius + 273.15, "Q", 0, "Acetone")
    assert acetylene_pressure(0.0, celsius + 273.15) == pytest.approx(theirs, rel=0.005)


def test_full_is_250_psi_at_seventy_fahrenheit() -> None:
    """[cfr49-173-303 (b)], read: 250 psig at 70 °F."""
    full = acetylene_pressure(1.0, SEVENTY_FAHRENHEIT) - ATM
    assert full / 6894.757 == pytest.approx(250, abs=1)


@pytest.mark.parametrize("row", _points("recommended"), ids=lambda row: f"{row['P_psig']} psig")
def test_constants_are_copied_right(row: dict[str, str]) -> None:
    """Same equation, solved elsewhere: it guards the constants, not the gas."""
    share = float(row["kg_C2H2_per_kg_acetone"]) / FULL_LOADING
    kelvin = (float(row["T_F"]) - 32) / 1.8 + 273.15
    assert acetylene_pressure(share, kelvin) == pytest.approx(float(row["P_Pa_abs"]), rel=2e-5)


@pytest.mark.parametrize(("pounds", "feet"), [(10, 147), (1, 14.7)])
def test_weight_gives_the_trades_volume(pounds: float, feet: float) -> None:
    """[cga-g1], from memory: 14.7 ft³ a pound at 70 °F."""
    ours = acetylene_by_weight((50 + pounds) * POUND, 50 * POUND)
    assert ours / FOOT3_AT_70F == pytest.approx(feet, rel=1e-3)


def test_ideal_count_of_a_kilogram_is_what_the_doc_says() -> None:
    assert GAS_CONSTANT * FIFTEEN_CELSIUS / ATM / 0.026037 == pytest.approx(0.9081, abs=1e-4)
    assert 0.9081 / 0.8986 - 1 == pytest.approx(0.011, abs=5e-4)


@pytest.mark.parametrize(
    ("contents", "share", "feet"),
    [
        (210, OLDER_DRAW, 30),
        (210, INTERMITTENT_DRAW, 21),
        (210, CONTINUOUS_DRAW, 14),
        (225, OLDER_DRAW, 32.1),
        (225, INTERMITTENT_DRAW, 22.5),
        (225, CONTINUOUS_DRAW, 15),
    ],
)
def test_draw_limits_are_the_printed_ones(contents: float, share: float, feet: float) -> None:
    """Arithmetic of the fact file on the rules of [manly-1916] and [cga-g1]."""
    limit = acetylene_draw_limit(contents * FOOT3_AT_70F, share)
    assert limit / CFH == pytest.approx(feet, abs=0.05)


def test_the_army_flat_limit_is_looser_than_a_seventh() -> None:
    """[army-od0017], read: 50 ft³/h; on 225 ft³ that is 1/4.5."""
    assert FLAT_DRAW / CFH == pytest.approx(50)
    assert acetylene_draw_limit(225 * FOOT3_AT_70F, 1 / 4.5) == pytest.approx(FLAT_DRAW)


def test_pressure_limits_are_the_rules() -> None:
    """[cfr1910-253 (a)(2)], read: 15 psig and 30 psia, printed 103 kPa and 206 kPa."""
    assert GAUGE_LIMIT["us"] == pytest.approx(15 * 6894.757293168361, abs=0.01)
    assert GAUGE_LIMIT["us"] >= 15 * 6894.757293168361
    assert ABSOLUTE_LIMIT == pytest.approx(206e3, abs=1e3)
    assert GAUGE_LIMIT["iso"] == GAUGE_LIMIT["uk"] == 1.5e5


@pytest.mark.parametrize(
    ("share", "kelvin"),
    [(-0.1, 290.0), (MOST_SHARE + 0.01, 290.0), (0.5, 240.0), (0.5, 340.0), (float("nan"), 290.0)],
)
def test_outside_the_model_is_refused(share: float, kelvin: float) -> None:
    with pytest.raises(ValueError, match=r"reckoned|holds"):
        acetylene_pressure(share, kelvin)
