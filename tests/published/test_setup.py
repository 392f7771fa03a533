"""Sheet, drills, tips, flows, rods and travel against what their publications print."""

import math

import pytest

from calc.formulas.setup.drills import drill_diameter, nearest_drill
from calc.formulas.setup.flows import acetylene_flow, flows_in_print
from calc.formulas.setup.injector import injector_setting
from calc.formulas.setup.rods import (
    nearest_rod,
    rod_count,
    rod_diameter,
    rod_length_for_seam,
    rod_mass,
)
from calc.formulas.setup.sheet import sheet_thickness, swg_thickness
from calc.formulas.setup.tips import (
    brazing_tip,
    orifice_for_flow,
    orifices_in_print,
    welding_orifice,
)
from calc.formulas.setup.travel import travel_speed, travel_speed_by_law, travel_time
from calc.formulas.setup.working_gauges import equal_pressure_gauge, welding_gauges_in_print

INCH = 0.0254
FOOT = 0.3048
PSI = 6894.757293168
BAR = 1e5
LITRE_AN_HOUR = 1e-3 / 3600
POUND = 0.45359237
STEEL = 0.2836 * POUND / INCH**3


@pytest.mark.parametrize(
    ("number", "metal", "inches", "tolerance"),
    [
        pytest.param(16, "low-carbon-steel", 0.0598, 5e-5, id="sheet-gauge-table-read-16-steel"),
        pytest.param(10, "low-carbon-steel", 0.1345, 5e-5, id="sheet-gauge-table-read-10-steel"),
        pytest.param(20, "low-carbon-steel", 0.0359, 5e-5, id="sheet-gauge-table-read-20-steel"),
        pytest.param(30, "low-carbon-steel", 0.0120, 5e-5, id="sheet-gauge-table-read-30-steel"),
        pytest.param(16, "galvanised-steel", 0.0635, 5e-5, id="sheet-gauge-table-read-16-zinc"),
        pytest.param(22, "galvanised-steel", 0.0336, 5e-5, id="sheet-gauge-table-read-22-zinc"),
        pytest.param(16, "stainless-steel", 0.0625, 5e-5, id="us-standard-gauge-computed-16"),
        pytest.param(16, "aluminium", 0.0508, 1e-4, id="fluids-1-3-computed-16-aluminium"),
        pytest.param(16, "brass", 0.0508, 1e-4, id="fluids-1-3-computed-16-brass"),
    ],
)
def test_sheet_gauges_under_us_rules(number: int, metal: str, inches: float, tolerance: float) -> None:
    assert sheet_thickness(number, metal, "us").thickness / INCH == pytest.approx(inches, abs=tolerance)


@pytest.mark.parametrize("metal", ["low-carbon-steel", "galvanised-steel", "aluminium", "copper"])
def test_uk_rules_take_swg_for_every_metal(metal: str) -> None:
    sheet = sheet_thickness(16, metal, "uk")
    assert sheet.thickness == pytest.approx(1.6256e-3, abs=1e-9)
    assert sheet == swg_thickness(16)
    assert "SWG" in sheet.series


def test_iso_rules_ask_for_millimetres() -> None:
    with pytest.raises(ValueError, match="millimetres"):
        sheet_thickness(16, "low-carbon-steel", "iso")


@pytest.mark.parametrize("number", [2, 31, 16.5, -1, 0, math.nan, math.inf])
def test_a_gauge_that_the_series_lacks_is_refused(number: float) -> None:
    with pytest.raises(ValueError, match="not in the"):
        sheet_thickness(number, "low-carbon-steel", "us")


def test_galvanised_gauge_is_refused_above_its_series() -> None:
    with pytest.raises(ValueError, match="8 to 30"):
        sheet_thickness(7, "galvanised-steel", "us")


def test_a_metal_without_a_series_is_refused() -> None:
    for rules in ("us", "uk"):
        with pytest.raises(ValueError, match="no sheet gauge"):
            sheet_thickness(16, "lead", rules)


@pytest.mark.parametrize(
    ("drill", "inches"),
    [
        pytest.param("1", 0.2280, id="asme-b94-11m-read-m-1"),
        pytest.param("51", 0.0670, id="asme-b94-11m-read-m-51"),
        pytest.param("56", 0.0465, id="asme-b94-11m-read-m-56"),
        pytest.param("60", 0.0400, id="asme-b94-11m-read-m-60-not-stubs-gauge"),
        pytest.param("68", 0.0310, id="asme-b94-11m-read-m-68"),
        pytest.param("80", 0.0135, id="asme-b94-11m-read-m-80"),
    ],
)
def test_number_drills(drill: str, inches: float) -> None:
    assert drill_diameter(drill) / INCH == pytest.approx(inches, abs=1e-9)
    assert nearest_drill(inches * INCH).drill == drill


@pytest.mark.parametrize("drill", ["0", "81", "", "A", "-1"])
def test_a_drill_that_is_not_made_is_refused(drill: str) -> None:
    with pytest.raises(ValueError, match="no number drill"):
        drill_diameter(drill)


@pytest.mark.parametrize("diameter", [0.0, 0.0001, 0.01, -1.0, math.nan, math.inf])
def test_a_hole_beyond_the_drills_is_refused(diameter: float) -> None:
    with pytest.raises(ValueError, match="no number drill"):
        nearest_drill(diameter)


@pytest.mark.parametrize(
    ("inches", "drill", "orifice"),
    [
        pytest.param(1 / 8, "56", 0.0465, id="navy14119-table-9-1-read-1-8"),
        pytest.param(3 / 8, "44", 0.0860, id="navy14119-table-9-1-read-3-8"),
        pytest.param(2.0, "30", 0.1285, id="navy14119-table-9-1-read-last-row-and-thicker"),
    ],
)
def test_brazing_tips(inches: float, drill: str, orifice: float) -> None:
    tip = brazing_tip(inches * INCH)
    assert tip.words == f"number drill {drill}"
    assert tip.value == pytest.approx(orifice * INCH)


def test_brazing_thin_sheet_takes_a_smaller_tip_and_foil_is_refused() -> None:
    """Between 0.031 in at 1/16 in (Navy, read) and the thinnest welding tip, 0.026 in for 0.015 to 0.031 in (FAA, memory)."""
    assert brazing_tip(0.0598 * INCH).words == "number drill 68"
    by_hand = 0.026 + (0.031 - 0.026) * (0.03 - 0.023) / (0.0625 - 0.023)
    assert brazing_tip(0.03 * INCH).value == pytest.approx(by_hand * INCH)
    with pytest.raises(ValueError, match="no tip is printed"):
        brazing_tip(0.014 * INCH)


@pytest.mark.parametrize(
    ("inches", "orifice"),
    [
        pytest.param(0.048, 0.031, id="faa-ac43-13-1b-memory-0.031-to-0.065"),
        pytest.param(0.095, 0.037, id="faa-ac43-13-1b-memory-0.065-to-0.125"),
        pytest.param(0.1565, 0.042, id="faa-ac43-13-1b-memory-0.125-to-0.188"),
        pytest.param(0.3125, 0.067, id="faa-ac43-13-1b-memory-0.250-to-0.375"),
    ],
)
def test_welding_orifices(inches: float, orifice: float) -> None:
    assert welding_orifice(inches * INCH).value == pytest.approx(orifice * INCH)


def test_band_of_a_welding_orifice_holds_the_larger_brazing_hole() -> None:
    figure = welding_orifice(INCH / 8)
    assert figure.low is not None
    assert figure.high is not None
    assert figure.value is not None
    assert figure.low <= figure.value <= figure.high
    assert figure.high >= 0.0465 * INCH - 1e-12  # navy14119, read: 1/8 in takes drill 56


@pytest.mark.parametrize("inches", [0.01, 1.0, 0.0, -1.0, math.nan, math.inf])
def test_a_thickness_beyond_the_welding_table_is_refused(inches: float) -> None:
    with pytest.raises(ValueError, match=r"thickness|table"):
        welding_orifice(inches * INCH)


@pytest.mark.parametrize(
    ("speed", "litres"),
    [
        pytest.param(100, 282.7, id="computed-1mm-jet-100-m-s-leeds-1910"),
        pytest.param(150, 424.1, id="computed-1mm-jet-150-m-s-leeds-1910"),
    ],
)
def test_a_millimetre_jet_passes_its_flow(speed: float, litres: float) -> None:
    diameter = orifice_for_flow(litres * LITRE_AN_HOUR, speed)
    assert diameter == pytest.approx(1e-3, rel=1e-3)


def test_three_millimetres_of_steel_take_300_litres_an_hour_practice() -> None:
    figure = acetylene_flow(0.003, "low-carbon-steel", "leftward")
    assert figure.value is not None
    assert figure.value / LITRE_AN_HOUR == pytest.approx(300)
    assert figure.value / (FOOT**3 / 3600) == pytest.approx(10.59, abs=0.1)


@pytest.mark.parametrize(
    ("millimetres", "litres"),
    [
        pytest.param(3.2, 200, id="davies-memory-3.2"),
        pytest.param(3.6, 240, id="davies-memory-halfway-3.2-to-4.0"),
        pytest.param(4.0, 280, id="davies-memory-4.0"),
        pytest.param(10, 1000, id="davies-memory-10"),
    ],
)
def test_flows_in_print_begin_with_the_uk_textbook(millimetres: float, litres: float) -> None:
    first = flows_in_print(millimetres / 1000)[0]
    assert first.source == "davies"
    assert first.value == pytest.approx(litres * LITRE_AN_HOUR)
    rule = acetylene_flow(millimetres / 1000, "low-carbon-steel", "leftward")
    assert rule.low is not None
    assert rule.high is not None
    assert rule.low <= litres * LITRE_AN_HOUR * (1 + 1e-9)
    assert rule.high >= litres * LITRE_AN_HOUR * (1 - 1e-9)


def test_flows_in_print_name_the_textbook_torches_groover() -> None:
    read = flows_in_print(INCH / 4)[-1]
    assert (read.source, read.how_sure) == ("groover end-of-chapter problem", "read")
    assert read.value == pytest.approx(8.5 * FOOT**3 / 3600 * 288.15 / 294.2611111)
    memory = flows_in_print(0.0045)[-1]
    assert memory.value == pytest.approx(0.3 / 3600)
    assert memory.how_sure == "memory"


def test_a_printed_flow_is_a_hole_at_the_jet_speeds_in_print_by_hand() -> None:
    # 280 L/h of acetylene with 1.1 times as much oxygen is 588 L/h, 1.6333e-4 m³/s:
    # 1.0749 mm at 180 m/s and 1.5201 mm at 90 m/s.
    davies = next(f for f in orifices_in_print(0.004) if f.source == "davies")
    assert davies.low == pytest.approx(1.0749e-3, rel=1e-4)
    assert davies.high == pytest.approx(1.5201e-3, rel=1e-4)


@pytest.mark.parametrize(
    ("metal", "technique", "low", "high"),
    [
        pytest.param("low-carbon-steel", "rightward", 120, 150, id="memory-rightward-steel"),
        pytest.param("copper", "leftward", 150, 200, id="practice-copper"),
        pytest.param("aluminium", "leftward", 50, 100, id="practice-aluminium"),
    ],
)
def test_flow_bands_of_other_rules(metal: str, technique: str, low: float, high: float) -> None:
    figure = acetylene_flow(0.001, metal, technique)
    assert figure.low is not None
    assert figure.high is not None
    assert figure.low / LITRE_AN_HOUR == pytest.approx(low)
    assert figure.high / LITRE_AN_HOUR == pytest.approx(high)


@pytest.mark.parametrize("thickness", [0.0, 0.0001, 0.1, math.nan, math.inf, -0.003])
def test_a_thickness_beyond_the_flows_is_refused(thickness: float) -> None:
    with pytest.raises(ValueError, match=r"thickness|flows"):
        acetylene_flow(thickness, "low-carbon-steel", "leftward")


def test_a_metal_without_a_flow_rule_is_refused() -> None:
    with pytest.raises(ValueError, match="no flow is kept"):
        acetylene_flow(0.003, "lead", "leftward")


def test_welding_gauges_spread_over_the_teaching_texts_read_m() -> None:
    acetylene = welding_gauges_in_print("acetylene")
    oxygen = welding_gauges_in_print("oxygen")
    assert (acetylene.low / PSI, acetylene.high / PSI) == pytest.approx((4, 7))
    assert (oxygen.low / PSI, oxygen.high / PSI) == pytest.approx((2, 25))
    assert acetylene.how_sure == "read-m"
    with pytest.raises(ValueError, match="hydrogen"):
        welding_gauges_in_print("hydrogen")


def test_equal_pressure_gauge_davies_memory() -> None:
    figure = equal_pressure_gauge(0.005)
    assert figure.value == pytest.approx(0.28 * BAR)
    with pytest.raises(ValueError, match="series"):
        equal_pressure_gauge(0.030)


@pytest.mark.parametrize(
    ("millimetres", "litres"),
    [
        pytest.param(1.5, 160, id="din-8543-memory-1-to-2"),
        pytest.param(3, 315, id="din-8543-memory-2-to-4"),
        pytest.param(25, 2500, id="din-8543-memory-20-to-30"),
    ],
)
def test_injector_set(millimetres: float, litres: float) -> None:
    setting = injector_setting(millimetres / 1000)
    assert setting.acetylene_flow.value / LITRE_AN_HOUR == pytest.approx(litres)
    oxygen = setting.oxygen_gauge
    assert (oxygen.low, oxygen.value, oxygen.high) == pytest.approx((1.5e5, 2.5e5, 3.5e5))
    assert (setting.acetylene_gauge.low, setting.acetylene_gauge.high) == pytest.approx((0.2e5, 0.8e5))


@pytest.mark.parametrize("millimetres", [0.4, 31, math.nan])
def test_a_thickness_without_an_insert_is_refused(millimetres: float) -> None:
    with pytest.raises(ValueError, match=r"thickness|inserts"):
        injector_setting(millimetres / 1000)


@pytest.mark.parametrize(
    ("metal", "technique", "millimetres", "rod"),
    [
        pytest.param("low-carbon-steel", "leftward", 3, 2.5, id="practice-leftward"),
        pytest.param("low-carbon-steel", "rightward", 6, 3.0, id="practice-rightward"),
        pytest.param("low-carbon-steel", "rightward", 20, 6.0, id="practice-rightward-capped"),
        pytest.param("cast-iron", "leftward", 6, 6.0, id="manly-1916-read-cast-iron"),
        pytest.param("cast-iron", "leftward", 20, 12.7, id="manly-1916-read-cast-iron-half-inch"),
    ],
)
def test_rod_diameters(metal: str, technique: str, millimetres: float, rod: float) -> None:
    figure = rod_diameter(millimetres / 1000, metal, technique)
    assert figure.value is not None
    assert figure.value * 1000 == pytest.approx(rod)


def test_band_of_a_rod_holds_the_handbook_row_carvill_1993_read() -> None:
    figure = rod_diameter(0.004, "low-carbon-steel", "leftward")
    assert figure.low is not None
    assert figure.high is not None
    assert figure.low <= 0.003
    assert figure.high >= 0.004


@pytest.mark.parametrize(
    ("inches", "rods"),
    [
        pytest.param(1 / 16, 31.9, id="computed-0.2836-lb-in3-1-16"),
        pytest.param(3 / 32, 14.2, id="computed-0.2836-lb-in3-3-32"),
        pytest.param(1 / 8, 7.98, id="computed-0.2836-lb-in3-1-8"),
        pytest.param(3 / 16, 3.55, id="computed-0.2836-lb-in3-3-16"),
        pytest.param(1 / 4, 2.00, id="computed-0.2836-lb-in3-1-4"),
    ],
)
def test_rods_in_a_pound(inches: float, rods: float) -> None:
    count = rod_count(POUND, inches * INCH, 36 * INCH, STEEL)
    assert count == pytest.approx(rods, rel=4e-3)


def test_mass_of_an_eighth_rod_computed() -> None:
    assert rod_mass(INCH / 8, 36 * INCH, STEEL) == pytest.approx(0.0568, abs=5e-5)


def test_68_centimetres_of_rod_for_a_fifth_of_a_metre_printed_problem() -> None:
    area = 3.40 * math.pi * 0.004**2 / 4  # the problem prints 340 cm of rod for each metre
    assert rod_length_for_seam(area, 0.2, 0.004, 0.0) == pytest.approx(0.68)
    assert rod_length_for_seam(area, 0.2, 0.004, 0.2) == pytest.approx(0.85)


@pytest.mark.parametrize("diameter", [0.0, 0.02, math.nan, math.inf])
def test_a_rod_that_is_not_sold_is_refused(diameter: float) -> None:
    with pytest.raises(ValueError, match="rods are kept"):
        nearest_rod(diameter)


@pytest.mark.parametrize("thickness", [0.0, -0.003, math.nan, math.inf])
def test_a_rod_for_no_thickness_is_refused(thickness: float) -> None:
    with pytest.raises(ValueError, match="thickness"):
        rod_diameter(thickness, "low-carbon-steel", "leftward")


def test_an_unknown_technique_is_refused() -> None:
    with pytest.raises(ValueError, match="upward"):
        rod_diameter(0.003, "low-carbon-steel", "upward")
    with pytest.raises(ValueError, match="upward"):
        travel_speed(0.003, "upward")


@pytest.mark.parametrize(
    ("millimetres", "technique", "slow", "fast"),
    [
        pytest.param(1.5, "leftward", 100, 127, id="carvill-1993-p207-read-1.5"),
        pytest.param(3.0, "leftward", 90, 100, id="carvill-1993-p207-read-3.0"),
        pytest.param(6.0, "rightward", 50, 60, id="carvill-1993-p207-read-inferred-6.0"),
        pytest.param(8.0, "rightward", 35, 40, id="carvill-1993-p207-read-inferred-8.0"),
    ],
)
def test_travel_speeds(millimetres: float, technique: str, slow: float, fast: float) -> None:
    figure = travel_speed(millimetres / 1000, technique)
    assert figure.low is not None
    assert figure.high is not None
    assert figure.value is not None
    assert figure.value * 60000 == pytest.approx((slow + fast) / 2)
    assert figure.low * 60000 <= slow + 1e-9
    assert figure.high * 60000 >= fast - 1e-9


@pytest.mark.parametrize(
    ("millimetres", "constant", "speed"),
    [
        pytest.param(3, 14, 78, id="memory-leftward-law-3"),
        pytest.param(8, 18, 37.5, id="memory-rightward-law-8"),
    ],
)
def test_travel_law(millimetres: float, constant: float, speed: float) -> None:
    law = constant * 1e-3 / 3600
    assert travel_speed_by_law(millimetres / 1000, law) * 60000 == pytest.approx(speed, abs=0.5)


def test_thicknesses_beyond_the_travel_rows_are_refused() -> None:
    for millimetres in (0.7, 9.0, 0.0, math.nan):
        with pytest.raises(ValueError, match=r"thickness|travel"):
            travel_speed(millimetres / 1000, "leftward")


def test_a_seam_takes_its_minutes() -> None:
    assert travel_time(0.3, 0.1 / 60) == pytest.approx(180)
