"""What is printed about cutting beside the rows by thickness, typed from the publications."""

import pytest

from calc import InputError, answer
from calc.formulas.setup.cut_shape import kerf
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
    case("Carvill 1993 p. 210: 430 mm/min at 6 mm, computed", "read", "cut-plate", "cutting_speed", 16.9, "in/min", 6e-3,
         **PLATE | {"thickness": "6 mm"}),
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
        pytest.param("kerf", "mm", 1.6, 2.4, id="kerf-2-mm-held-to-0.4 [practice; memory]"),
    ],
)  # fmt: skip
def test_the_printed_range_is_the_band(result: str, unit: str, low: float, high: float) -> None:
    got = answer("cut-plate", **PLATE, units={result: unit})["results"][result]
    assert got["low"] == pytest.approx(low, abs=1e-6)
    assert got["high"] == pytest.approx(high, abs=1e-6)


@pytest.mark.parametrize(
    ("thickness", "low", "high"),
    [("3 mm", 5, 20), ("6 mm", 5, 20)],
    ids=lambda each: f"{each} [two student textbooks; read]",
)
def test_thin_plate_is_cut_with_the_torch_leaning_as_printed(
    thickness: str, low: float, high: float
) -> None:
    got = answer("cut-plate", **(PLATE | {"thickness": thickness}), units={"lead_angle": "deg"})["results"]
    assert (got["lead_angle"]["low"], got["lead_angle"]["high"]) == pytest.approx((low, high))
    assert low < got["lead_angle"]["value"] < high


@pytest.mark.parametrize("thickness", ["38 mm", "3 in", "6 in"])
def test_very_thick_plate_is_cut_upright(thickness: str) -> None:
    """Welding Fundamentals 2017 p. 398, read: the work angle comes to 0; its picture is of 1 1/2 in."""
    got = answer("cut-plate", **(PLATE | {"thickness": thickness}))["results"]["lead_angle"]
    assert got["value"] is None
    assert "upright" in got["text"]


def test_the_drag_of_a_good_cut_is_a_tenth_and_rounds_down() -> None:
    """AWS C4.2 idea, memory: up to a tenth of the thickness. 1.23 in by hand: 0.123 in, shown as 0.12."""
    got = answer("cut-plate", **(PLATE | {"thickness": "1.27 in"}), shown_in="us")["results"]["drag"]
    assert got["si"] == pytest.approx(0.127 * 0.0254)
    assert got["text"].startswith("0.12 in")
    assert got["low"] is None


def test_thin_sheet_is_told_what_to_do() -> None:
    """Welding Fundamentals 2017 p. 398, read: under 1/8 in lean to 15 to 20 degrees from the sheet."""
    with pytest.raises(InputError, match=r"shear or saw .*stack .*15 to 20 degrees from the sheet\.$"):
        answer("cut-plate", **(PLATE | {"thickness": "16 ga"}))


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
