"""Shades, distances, watches, limits and joints against what their publications print."""

import math

import pytest

from calc.formulas.setup.joints import (
    cap_area,
    fillet_area,
    outside_corner_area,
    single_v_area,
    square_butt_area,
)
from calc.formulas.setup.ruled import NO_FIGURE, amount, ruled_row
from calc.formulas.setup.shades import en169_shade, shade, us_shade

INCH = 0.0254
FOOT = 0.3048
LITRE_AN_HOUR = 1e-3 / 3600
POUND = 0.45359237
STEEL = 0.2836 * POUND / INCH**3


@pytest.mark.parametrize(
    ("process", "inches", "minimum"),
    [
        pytest.param("soldering", None, 2, id="cfr1910-133-(a)(5)-read-soldering"),
        pytest.param("brazing", None, 3, id="cfr1910-133-(a)(5)-read-brazing"),
        pytest.param("welding", 1 / 16, 4, id="cfr1910-133-(a)(5)-read-weld-1-16"),
        pytest.param("welding", 1 / 8, 5, id="cfr1910-133-(a)(5)-read-weld-1-8"),
        pytest.param("welding", 1 / 4, 5, id="cfr1910-133-(a)(5)-read-weld-1-4"),
        pytest.param("welding", 1 / 2, 5, id="cfr1910-133-(a)(5)-read-weld-1-2"),
        pytest.param("welding", 3 / 4, 6, id="cfr1910-133-(a)(5)-read-weld-3-4"),
        pytest.param("cutting", 1 / 2, 3, id="cfr1910-133-(a)(5)-read-cut-1-2"),
        pytest.param("cutting", 1, 4, id="cfr1910-133-(a)(5)-read-cut-1"),
        pytest.param("cutting", 2, 4, id="cfr1910-133-(a)(5)-read-cut-2"),
        pytest.param("cutting", 6, 4, id="cfr1910-133-(a)(5)-read-cut-6"),
        pytest.param("cutting", 8, 5, id="cfr1910-133-(a)(5)-read-cut-8"),
    ],
)
def test_us_minimum_shades(process: str, inches: float | None, minimum: int) -> None:
    thickness = None if inches is None else inches * INCH
    assert us_shade(process, thickness).minimum == minimum
    assert shade(process, "us", thickness).minimum == minimum


def test_25_millimetres_of_plate_count_as_medium_by_the_rules_own_metric_figure() -> None:
    assert us_shade("cutting", 0.025).minimum == 4


@pytest.mark.parametrize(
    ("process", "inches", "guide"),
    [
        pytest.param("brazing", None, (3, 4), id="cfr1910-252-(b)(2)(ii)(H)-read-brazing"),
        pytest.param("cutting", 0.5, (3, 4), id="cfr1910-252-(b)(2)(ii)(H)-read-cut-1-2"),
        pytest.param("cutting", 2, (4, 5), id="cfr1910-252-(b)(2)(ii)(H)-read-cut-2"),
        pytest.param("welding", 1 / 16, (4, 5), id="cfr1910-252-(b)(2)(ii)(H)-read-weld-1-16"),
        pytest.param("welding", 1 / 4, (5, 6), id="cfr1910-252-(b)(2)(ii)(H)-read-weld-1-4"),
        pytest.param("welding", 3 / 4, (6, 8), id="cfr1910-252-(b)(2)(ii)(H)-read-weld-3-4"),
    ],
)
def test_us_guide_shades(process: str, inches: float | None, guide: tuple[int, int]) -> None:
    found = us_shade(process, None if inches is None else inches * INCH)
    assert (found.lightest, found.darkest) == guide
    assert found.lightest >= found.minimum


@pytest.mark.parametrize(
    ("process", "litres", "expected"),
    [
        *[
            pytest.param(process, flow, number, id=f"dguv-209-011-6.3-read-m-{process}-{flow}")
            for process in ("welding", "brazing")
            for flow, number in ((70, 4), (71, 5), (200, 5), (201, 6), (800, 6), (801, 7))
        ],
        *[
            pytest.param("cutting", flow, number, id=f"dguv-112-192-annex-2-read-{flow}")
            for flow, number in ((900, 4), (1500, 5), (3000, 6), (6000, 7), (8001, 8))
        ],
    ],
)
@pytest.mark.parametrize("rules", ["iso", "uk"])
def test_en169_shades(process: str, litres: float, expected: int, rules: str) -> None:
    found = shade(process, rules, flow=litres * LITRE_AN_HOUR)
    assert found.minimum == expected
    assert (found.rules, found.note) == (rules, "")


def test_soldering_shade_outside_the_us_is_the_us_one_and_says_so() -> None:
    found = shade("soldering", "iso")
    assert (found.minimum, found.rules, found.note) == (2, "us", NO_FIGURE)


def test_a_shade_without_the_size_it_goes_by_is_refused() -> None:
    with pytest.raises(ValueError, match="give the thickness"):
        shade("welding", "us")
    for process in ("welding", "brazing"):
        with pytest.raises(ValueError, match="give the flow"):
            shade(process, "iso", thickness=0.003)
    with pytest.raises(ValueError, match="no filter shade"):
        shade("polishing", "us")
    for flow in (0.0, -1.0, math.nan, math.inf):
        with pytest.raises(ValueError, match="flow"):
            en169_shade("welding", flow)
    for thickness in (0.0, math.nan, math.inf):
        with pytest.raises(ValueError, match="thickness"):
            us_shade("cutting", thickness)


@pytest.mark.parametrize(
    ("rules", "process", "metres", "whose", "note"),
    [
        pytest.param("us", "cutting", 35 * FOOT, "us", "", id="cfr1910-252-(a)(2)(iii)-read"),
        pytest.param("us", "soldering", 35 * FOOT, "us", "", id="cfr1910-252-(a)(2)(iii)-read-2"),
        pytest.param("iso", "cutting", 10, "iso", "", id="dguv-100-500-read-cutting"),
        pytest.param("iso", "welding", 7.5, "iso", "", id="dguv-100-500-read-welding"),
        pytest.param("iso", "brazing", 35 * FOOT, "us", NO_FIGURE, id="iso-brazing-falls-to-us"),
        pytest.param("uk", "welding", 35 * FOOT, "us", NO_FIGURE, id="uk-falls-to-the-strictest"),
    ],
)
def test_clear_distances(rules: str, process: str, metres: float, whose: str, note: str) -> None:
    found = ruled_row("clear-distances", rules, amount, process=process)
    assert amount(found.row) == pytest.approx(metres)
    assert (found.rules, found.note) == (whose, note)


@pytest.mark.parametrize(
    ("rules", "watch", "monitoring", "longest", "every", "whose"),
    [
        pytest.param("us", 60, 0, 180, None, "us", id="nfpa51b-2019-read-m"),
        pytest.param("uk", 60, 60, 180, 20, "uk", id="joint-code-10-read-m"),
        pytest.param("iso", 60, 60, 180, 20, "uk", id="iso-falls-to-the-strictest"),
    ],
)
def test_fire_watches(
    rules: str, watch: float, monitoring: float, longest: float, every: float | None, whose: str
) -> None:
    found = ruled_row("fire-watches", rules, lambda row: row.watch + row.monitoring)
    row = found.row
    assert (row.watch / 60, row.monitoring / 60, row.longest_monitoring / 60) == pytest.approx(
        (watch, monitoring, longest)
    )
    assert row.check_every == (None if every is None else pytest.approx(every * 60))
    assert found.rules == whose


@pytest.mark.parametrize(
    ("rules", "kilopascal"),
    [
        pytest.param("us", 103.4, id="cfr1910-253-(a)(2)-read-15-psig-is-103-kPa"),
        pytest.param("iso", 150.0, id="iso-3821-2019-read-1.5-bar"),
        pytest.param("uk", 150.0, id="iso-3821-2019-read-1.5-bar-uk"),
    ],
)
def test_acetylene_gauge_limits(rules: str, kilopascal: float) -> None:
    found = ruled_row("acetylene-limits", rules, lambda row: -amount(row), topic="gauge")
    assert amount(found.row) / 1000 == pytest.approx(kilopascal, abs=0.05)


def test_a_limit_that_only_another_rule_set_has_is_the_lowest_of_the_others() -> None:
    found = ruled_row("acetylene-limits", "iso", lambda row: -amount(row), topic="absolute")
    assert (found.rules, found.note) == ("us", NO_FIGURE)
    assert amount(found.row) / 1000 == pytest.approx(206.8, abs=0.1)


def test_a_fusible_plug_melts_at_100_celsius_army_od0017_read() -> None:
    found = ruled_row("acetylene-limits", "uk", amount, topic="fusible-plug")
    assert amount(found.row) - 273.15 == pytest.approx(100, abs=0.01)
    assert found.note == ""


def test_us_storage_volume_counts_gas_at_70_fahrenheit() -> None:
    found = ruled_row("storage", "us", amount, topic="indoor-fuel-gas")
    free = amount(found.row, free_gas=True)
    assert free == pytest.approx(2000 * FOOT**3 * 288.15 / 294.2611111, rel=1e-9)


def test_a_rule_that_nobody_has_is_refused() -> None:
    with pytest.raises(ValueError, match="no figure"):
        ruled_row("storage", "us", amount, topic="moon")
    with pytest.raises(ValueError, match="no number"):
        amount(ruled_row("withdrawal-limits", "us", lambda r: r.emptied_in, topic="intermittent").row)


def test_joint_areas_computed_check_values() -> None:
    assert single_v_area(0.006, 0.002, 0.001, math.radians(60)) * 1e6 == pytest.approx(26.43, abs=0.005)
    assert fillet_area(0.006) * 1e6 == pytest.approx(18)
    assert square_butt_area(0.003, 0.0015) * 1e6 == pytest.approx(4.5)
    assert outside_corner_area(0.003) * 1e6 == pytest.approx(7.0686, abs=1e-4)


def test_a_quarter_inch_fillet_weighs_106_thousandths_of_a_pound_a_foot_computed() -> None:
    assert fillet_area(INCH / 4) * FOOT * STEEL / POUND == pytest.approx(0.106, abs=5e-4)


def test_a_cap_as_high_as_half_its_width_is_a_half_circle() -> None:
    assert cap_area(0.002, 0.001) == pytest.approx(math.pi * 0.001**2 / 2)


def test_a_flat_cap_is_two_thirds_of_its_box() -> None:
    assert cap_area(0.01, 0.0001) == pytest.approx(2 / 3 * 0.01 * 0.0001, rel=1e-3)
