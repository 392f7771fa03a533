"""What is printed about cutting beside the rows by thickness, typed from the publications."""

import pytest

from calc import answer
from calc.formulas.setup.cutting import (
    cutting_orifice,
    cutting_oxygen_flow,
    cutting_speed,
    kerf,
    preheat_fuel_flow,
)
from tests.published.rows import Row, case, shown

INCH = 0.0254
CFH = 0.3048**3 / 3600 * 288.15 / 294.26111
PLATE = {
    "metal": "low-carbon-steel",
    "shape": "straight",
    "fuel": "acetylene",
    "length": "600 mm",
    "thickness": "25 mm",
}
ROWS = [
    case("Carvill 1993 p. 210", "read", "cut-plate", "cutting_orifice", 1.6, "mm", 1e-9, **PLATE),
    case("Carvill 1993 p. 210", "read", "cut-plate", "oxygen_gauge", 2.8, "bar", 1e-9, **PLATE),
    case("Carvill 1993 p. 210", "read", "cut-plate", "cutting_speed", 280, "mm/min", 1e-9, **PLATE),
    case("Carvill 1993 p. 210", "read", "cut-plate", "cutting_speed", 16.9, "in/min", 6e-3, **PLATE | {"thickness": "6 mm"}),
    case("Carvill 1993 p. 210, the pressures of its row for 75 mm", "read", "cut-plate", "oxygen_gauge", 3.5, "bar", 1e-9,
         **PLATE | {"thickness": "75 mm"}),
    case("Carvill 1993 p. 210, the hole of its row for 75 mm", "read", "cut-plate", "cutting_orifice", 1.6, "mm", 1e-9,
         **PLATE | {"thickness": "75 mm"}),
    case("other texts, upper working figure", "memory", "cut-plate", "preheat_temperature", 870, "degC", 1e-3, **PLATE),
]  # fmt: skip


@pytest.mark.parametrize("row", ROWS)
def test_the_published_figure_comes_out(row: Row) -> None:
    assert shown(row) == pytest.approx(row.figure, rel=row.within)


@pytest.mark.parametrize(
    ("result", "unit", "low", "high"),
    [
        pytest.param("preheat_temperature", "degC", 700, 900, id="kindling-700-to-900-C [TWI Job Knowledge; read]"),
        pytest.param("standoff", "in", 1 / 16, 1 / 8, id="standoff-1/16-to-1/8-in [two student textbooks; read]"),
        pytest.param("lead_angle", "deg", 5, 20, id="lead-5-to-20-degrees [two student textbooks; read]"),
        pytest.param("drag", "mm", 0, 2.5, id="drag-0-to-10-percent [AWS C4.2 idea; memory]"),
        pytest.param("kerf", "mm", 1.6, 2.4, id="kerf-2-mm-held-to-0.4 [practice; memory]"),
    ],
)  # fmt: skip
def test_the_printed_range_is_the_band(result: str, unit: str, low: float, high: float) -> None:
    got = answer("cut-plate", **PLATE, units={result: unit})["results"][result]
    assert got["low"] == pytest.approx(low, abs=1e-6)
    assert got["high"] == pytest.approx(high, abs=1e-6)


def test_kindling_holds_what_the_navy_prints() -> None:
    """1,400 to 1,600 °F: NAVEDTRA 14250 chapter 4, read; 1,500 °F a school exercise, read."""
    got = answer("cut-plate", **PLATE, units={"preheat_temperature": "degF"})["results"][
        "preheat_temperature"
    ]
    assert got["low"] <= 1400
    assert got["high"] >= 1600


def test_preheat_holes_are_two_to_six() -> None:
    """TC 9-237 chapter 11, read."""
    got = answer("cut-plate", **PLATE)["results"]["preheat_holes"]
    assert got["text"] == "2 to 6"
    assert "TC 9-237" in got["source"]


@pytest.mark.parametrize(
    ("inches", "hole", "speed", "oxygen", "acetylene", "gas", "propane"),
    [
        pytest.param(8, (0.095, 0.110), (3, 5), (460, 620), (15, 30), (30, 55), (15, 32), id="8-in [AWS Welding Handbook; memory]"),
        pytest.param(10, (0.095, 0.110), (2, 4), (580, 700), (15, 35), (35, 70), (15, 35), id="10-in [AWS Welding Handbook; memory]"),
        pytest.param(12, (0.110, 0.130), (2, 4), (720, 850), (20, 40), (45, 95), (20, 45), id="12-in [AWS Welding Handbook; memory]"),
    ],
)  # fmt: skip
def test_the_thickest_rows_of_the_larger_table(
    inches: int, hole: tuple[float, float], speed: tuple[float, float], oxygen: tuple[float, float],
    acetylene: tuple[float, float], gas: tuple[float, float], propane: tuple[float, float],
) -> None:  # fmt: skip
    thickness = inches * INCH
    for figure, ends, unit in (
        (cutting_orifice(thickness), hole, INCH),
        (cutting_speed(thickness), speed, INCH / 60),
        (cutting_oxygen_flow(thickness), oxygen, CFH),
        (preheat_fuel_flow(thickness, "acetylene"), acetylene, CFH),
        (preheat_fuel_flow(thickness, "methane"), gas, CFH),
        (preheat_fuel_flow(thickness, "propane"), propane, CFH),
    ):
        assert figure.low / unit == pytest.approx(ends[0], rel=1e-5)
        assert figure.high / unit == pytest.approx(ends[1], rel=1e-5)
        assert figure.how_sure == "memory"


@pytest.mark.parametrize(
    ("millimetres", "low", "high"),
    [(6, 1.0, 1.5), (50, 2.1, 3.0), (75, 2.5, 3.4), (150, 4.0, 5.0)],
    ids=lambda value: f"{value}-mm [hand and machine; memory]",
)
def test_the_slot_by_thickness(millimetres: float, low: float, high: float) -> None:
    """1 to 1.5 mm at 6 mm, 2.5 to 3 mm at 50 to 75 mm with 0.4 mm either way, 4 to 5 mm at 150 mm."""
    found = kerf(millimetres / 1000)
    assert (1000 * found.low, 1000 * found.high) == pytest.approx((low, high))


def test_both_tables_are_shown_and_the_one_followed_is_named() -> None:
    read, larger = answer("cut-plate", **PLATE, rules="iso")["tables"][0]["rows"]
    assert read == ("Carvill 1993 p. 210, read in the source: followed", "1.6 mm", "280 mm/min")
    assert larger[:2] == ("AWS Welding Handbook, from memory", "1.1 to 1.5 mm")
    read, larger = answer("cut-plate", **(PLATE | {"thickness": "150 mm"}), rules="iso")["tables"][0][
        "rows"
    ]
    assert read[1:] == ("nothing for it", "nothing for it")
    assert larger[0].endswith("followed")
