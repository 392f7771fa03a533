"""Gauge series against `fluids`, an independent open library.

Its key `SWG` is the US steel wire gauge; the British gauge is `BSWG`. It has no
sheet-steel and no galvanised gauge; those follow their weight. Its `SSWG`,
Stubs' steel wire gauge, looks like the number drills and is not.
"""

import pytest
from fluids.piping import t_from_gauge, wire_schedules

from calc.formulas.setup.drills import drill_diameter
from calc.formulas.setup.sheet import sheet_thickness, swg_thickness

INCH = 0.0254
OUNCES = {3: 160, 7: 120, 8: 110, 11: 80, 14: 50, 16: 40, 18: 32, 22: 20, 26: 12, 27: 11, 29: 9, 30: 8}
"""Weight of sheet, oz/ft², by the US standard gauge of 1893 (from memory)."""


@pytest.mark.parametrize("number", range(3, 31))
def test_aluminium_gauge_is_awg(number: int) -> None:
    ours = sheet_thickness(number, "aluminium", "us").thickness
    assert ours == pytest.approx(t_from_gauge(number, SI=True, schedule="AWG"), abs=0.06e-3 * INCH)


@pytest.mark.parametrize("number", range(3, 31))
def test_awg_follows_its_law(number: int) -> None:
    ours = sheet_thickness(number, "copper", "us").thickness
    assert ours / INCH == pytest.approx(0.005 * 92 ** ((36 - number) / 39), abs=5.1e-5)


@pytest.mark.parametrize("number", range(3, 31))
def test_swg_is_the_british_gauge(number: int) -> None:
    ours = swg_thickness(number).thickness
    assert ours == pytest.approx(t_from_gauge(number, SI=True, schedule="BSWG"), rel=1e-9)


def test_swg_is_not_the_us_steel_wire_gauge() -> None:
    assert t_from_gauge(16, SI=True, schedule="SWG") == pytest.approx(1.5875e-3)
    assert swg_thickness(16).thickness == pytest.approx(1.6256e-3)


def test_the_library_has_no_sheet_steel_gauge_to_confuse_with_ours() -> None:
    assert set(wire_schedules) == {"BWG", "AWG", "SWG", "MWG", "BSWG", "SSWG"}
    ours = sheet_thickness(16, "low-carbon-steel", "us").thickness
    for schedule in wire_schedules:
        if 16 in wire_schedules[schedule][0]:
            assert abs(t_from_gauge(16, SI=True, schedule=schedule) - ours) > 0.01e-3


def test_number_drills_are_not_stubs_gauge() -> None:
    assert t_from_gauge(60, SI=True, schedule="SSWG") / INCH == pytest.approx(0.039)
    assert drill_diameter("60") / INCH == pytest.approx(0.040)
    assert t_from_gauge(1, SI=True, schedule="SSWG") / INCH == pytest.approx(0.227)
    assert drill_diameter("1") / INCH == pytest.approx(0.228)


@pytest.mark.parametrize("number", OUNCES)
def test_steel_gauge_is_a_weight_at_41_82_pounds_a_square_foot_an_inch(number: int) -> None:
    ours = sheet_thickness(number, "low-carbon-steel", "us").thickness
    assert ours / INCH == pytest.approx(OUNCES[number] / 16 / 41.82, abs=5.1e-5)


@pytest.mark.parametrize("number", [n for n in OUNCES if n >= 8])
def test_galvanised_gauge_carries_two_and_a_half_ounces_of_zinc(number: int) -> None:
    ours = sheet_thickness(number, "galvanised-steel", "us").thickness
    assert ours / INCH == pytest.approx((OUNCES[number] + 2.5) / 16 / 41.82, abs=5.1e-5)


@pytest.mark.parametrize("number", OUNCES)
def test_stainless_gauge_is_a_weight_at_40_pounds_a_square_foot_an_inch(number: int) -> None:
    ours = sheet_thickness(number, "stainless-steel", "us").thickness
    assert ours / INCH == pytest.approx(OUNCES[number] / 16 / 40, abs=5.1e-5)
