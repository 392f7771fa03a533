"""Cutting against sums made another way: gas dynamics, chemistry, geometry."""

import math

import pytest

from calc import answer
from calc.formulas.setup.cut_gas import (
    bevel_thickness,
    cut_time,
    purity_factor,
    stack_thickness,
)
from calc.formulas.setup.cutting import cutting_gauges, cutting_orifice

IRON, OXYGEN = 55.845e-3, 15.999e-3
"""Standard atomic weights, kg/mol."""
R = 8.31446261815324
CUBIC_FOOT_AN_HOUR = 0.3048**3 / 3600 * 288.15 / 294.26111
"""A US cubic foot of gas is counted at 70 °F, ours at 15 °C."""
PLATE = {
    "metal": "low-carbon-steel",
    "shape": "straight",
    "fuel": "acetylene",
    "length": "600 mm",
    "rules": "iso",
}


def sonic_flow(diameter: float, gauge: float) -> float:
    """Free oxygen that a round hole passes without loss at the speed of sound, by the textbook's one line."""
    gamma, temperature = 1.4, 293.15
    pressure = gauge + 101325
    function = math.sqrt(gamma) * (2 / (gamma + 1)) ** ((gamma + 1) / (2 * (gamma - 1)))
    mass = math.pi / 4 * diameter**2 * pressure * function / math.sqrt(R / (2 * OXYGEN) * temperature)
    return mass / (2 * OXYGEN) * R * 288.15 / 101325


@pytest.mark.parametrize(
    ("thickness", "hole", "gauge", "low", "high"),
    [
        # mm, hole mm and oxygen bar of the one table; cfh between the rows of the other
        pytest.param(6, 0.8, 1.8, 28, 54, id="carvill-1993-read-6-mm-against-aws-handbook-memory"),
        pytest.param(13, 1.2, 2.1, 57, 88, id="carvill-1993-read-13-mm-against-aws-handbook-memory"),
        pytest.param(25, 1.6, 2.8, 109, 159, id="carvill-1993-read-25-mm-against-aws-handbook-memory"),
        pytest.param(50, 1.6, 3.2, 129, 189, id="carvill-1993-read-50-mm-against-aws-handbook-memory"),
        # The row of 75 mm repeats the hole of 50 mm: 1.8 mm lies midway to 100 mm.
        pytest.param(
            75, 1.8, 3.5, 187, 295, id="between-carvill-1993-rows-75-mm-against-aws-handbook-memory"
        ),
        pytest.param(100, 2.0, 3.2, 240, 360, id="carvill-1993-read-100-mm-against-aws-handbook-memory"),
    ],
)
def test_the_hole_and_pressure_of_one_table_pass_the_flow_of_the_other(
    thickness: float, hole: float, gauge: float, low: float, high: float
) -> None:
    """Two tables that print different things agree through the physics of a jet: 0.6 to 1 of the lossless flow."""
    assert cutting_orifice(thickness / 1000).value == pytest.approx(hole / 1000)
    assert cutting_gauges(thickness / 1000, "acetylene")[0].value == pytest.approx(gauge * 1e5)
    lossless = sonic_flow(hole / 1000, gauge * 1e5) / CUBIC_FOOT_AN_HOUR
    assert 0.6 * lossless <= high
    assert lossless >= low


@pytest.mark.parametrize(("hole", "gauge"), [("1.2 mm", "2 bar"), ("#53", "40 psi"), ("3 mm", "5 bar")])
def test_a_makers_hole_and_pressure_decide_the_flow(hole: str, gauge: str) -> None:
    """Number drill 53 is 0.0595 in: ASME B94.11M, read-m. Discharge 0.75, 0.6 to 0.9: from memory."""
    diameter = {"1.2 mm": 1.2e-3, "#53": 0.0595 * 0.0254, "3 mm": 3e-3}[hole]
    pascal = {"2 bar": 2e5, "40 psi": 40 * 6894.757293168, "5 bar": 5e5}[gauge]
    got = answer("cut-plate", **PLATE, thickness="25 mm", maker_orifice=hole, maker_oxygen_gauge=gauge)
    flow = got["results"]["cutting_oxygen_flow"]
    lossless = sonic_flow(diameter, pascal)
    assert flow["si"] == pytest.approx(0.75 * lossless, rel=5e-3)
    per = flow["value"] / flow["si"]
    assert flow["low"] == pytest.approx(0.6 * lossless * per, rel=5e-3)
    assert flow["high"] == pytest.approx(0.9 * lossless * per, rel=5e-3)
    used = got["results"]["oxygen_used"]["si"]
    flames = got["results"]["preheat_oxygen_flow"]["si"]
    assert used == pytest.approx((flow["si"] + flames) * got["results"]["cut_time"]["si"])


def test_our_own_hole_and_pressure_given_back_change_nothing() -> None:
    """25 mm: 1.6 mm and 2.8 bar, Carvill, read."""
    ours = answer("cut-plate", **PLATE, thickness="25 mm")["results"]
    back = answer(
        "cut-plate", **PLATE, thickness="25 mm", maker_orifice="1.6 mm", maker_oxygen_gauge="2.8 bar"
    )
    for name in ("cutting_oxygen_flow", "oxygen_used", "fuel_used", "cut_time"):
        assert back["results"][name]["si"] == pytest.approx(ours[name]["si"])


def test_the_printed_hole_of_75_mm_would_pass_less_than_is_printed_for_it() -> None:
    """Why that hole is passed over: Carvill's 1.6 mm at 3.5 bar, read, against 187 cfh at the usual discharge of 0.75."""
    assert 0.75 * sonic_flow(1.6e-3, 3.5e5) / CUBIC_FOOT_AN_HOUR < 187


def test_a_makers_figure_stands_before_ours() -> None:
    got = answer(
        "cut-plate", **PLATE, thickness="25 mm", maker_orifice="1.2 mm", maker_oxygen_gauge="4 bar",
        maker_fuel_gauge="0.3 bar",
    )["results"]  # fmt: skip
    assert got["cutting_orifice"]["value"] == pytest.approx(1.2)
    assert got["oxygen_gauge"]["value"] == pytest.approx(4.0)
    assert got["fuel_gauge"]["value"] == pytest.approx(0.3)
    for name in ("cutting_orifice", "oxygen_gauge", "fuel_gauge"):
        assert "maker" in got[name]["basis"]


@pytest.mark.parametrize("degrees", [5, 15, 22.5, 30, 45, 60])
def test_a_bevel_is_as_long_as_pythagoras_says(degrees: float) -> None:
    sideways = 12.0 * math.tan(math.radians(degrees))
    assert bevel_thickness(12.0, math.radians(degrees)) == pytest.approx(math.hypot(12.0, sideways))


def test_a_stack_is_the_sum_of_its_sheets() -> None:
    assert stack_thickness(0.0015, 7) == pytest.approx(sum([0.0015] * 7))


def test_two_points_of_purity_are_one_point_twice() -> None:
    assert purity_factor(0.85, 2.0) == pytest.approx(0.85 * 0.85)
    assert purity_factor(0.85, 0.0) == 1.0


def test_a_cut_with_two_pierces_takes_so_long() -> None:
    """600 mm at 280 mm/min is 128.6 s."""
    assert cut_time(0.6, 0.28 / 60, 2, 30.0) == pytest.approx(128.57 + 60, abs=0.01)
