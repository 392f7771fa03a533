"""Printed rows and worked examples of heat flow, preheat and distortion."""

from math import pi

import pytest

from calc.data.tables import table
from calc.formulas.heat import (
    carbon_equivalent,
    cooling,
    flame_power,
    lumped,
    rosenthal,
    shrinkage,
)
from calc.formulas.heat.slab import pipe_section

ACETYLENE = 55e6  # J/m³, printed gross heat
STEEL_A = {"carbon": 0.0018, "manganese": 0.014, "copper": 0.002, "nickel": 0.001}


@pytest.mark.parametrize(
    ("composition", "iiw", "cet"),
    [
        pytest.param(STEEL_A, 0.433, 0.3325, id="0.18C 1.4Mn-formula from memory, worked by hand"),
        pytest.param({"carbon": 0.002, "manganese": 0.0045}, 0.275, 0.245, id="0.20C 0.45Mn"),
        pytest.param({"carbon": 0.0045, "manganese": 0.0075}, 0.575, 0.525, id="0.45C 0.75Mn"),
        pytest.param(
            {"carbon": 0.004, "manganese": 0.0085, "chromium": 0.01, "molybdenum": 0.002},
            0.782,
            0.555,
            id="0.40C 0.85Mn 1.0Cr 0.2Mo",
        ),
    ],
)
def test_carbon_equivalents(composition: dict[str, float], iiw: float, cet: float) -> None:
    assert 100 * carbon_equivalent.iiw_carbon_equivalent(**composition) == pytest.approx(iiw, abs=5e-4)
    assert 100 * carbon_equivalent.cet_carbon_equivalent(**composition) == pytest.approx(cet, abs=5e-4)


def test_cracking_parameter() -> None:
    found = carbon_equivalent.cracking_parameter(**STEEL_A, silicon=0.0035)
    assert 100 * found == pytest.approx(0.2733, abs=5e-4)


def test_preheat_by_method_b() -> None:
    # EN 1011-2 C.8, from memory; worked by hand.
    found = carbon_equivalent.preheat_temperature(0.003325, 0.03175, 5e-5, 1.26e6)
    assert found - 273.15 == pytest.approx(109.7, abs=0.2)


def test_preheat_parts_add_up_to_the_printed_whole() -> None:
    parts = carbon_equivalent.preheat_parts(0.0033, 0.040, 5e-5, 1.5e6)
    assert parts == pytest.approx((97.5, 20.5, 8.9, -7.3), abs=0.05)
    # 697·CET + 160·tanh(d/35) + 62·HD^0.35 + (53·CET - 32)·Q - 328, the same rule in one piece
    assert sum(parts) == pytest.approx(119.6, abs=0.1)


@pytest.mark.parametrize(
    ("energy", "start", "thick", "transition"),
    [
        pytest.param(1.0, 20.0, 5.29, 14.66, id="1 kJ/mm 20 °C-EN 1011-2 D, from memory"),
        pytest.param(2.0, 150.0, 15.69, 23.24, id="2 kJ/mm 150 °C-EN 1011-2 D, from memory"),
        pytest.param(1.5, 100.0, 9.96, 19.2, id="1.5 kJ/mm 100 °C-EN 1011-2 D, from memory"),
    ],
)
def test_cooling_times(energy: float, start: float, thick: float, transition: float) -> None:
    joules, kelvin = energy * 1e6, start + 273.15
    found = cooling.transition_thickness(joules, kelvin)
    assert cooling.thick_plate_cooling_time(joules, kelvin) == pytest.approx(thick, abs=0.01)
    assert found * 1e3 == pytest.approx(transition, abs=0.025)  # 19.2 has one decimal
    assert cooling.thin_plate_cooling_time(joules, kelvin, found) == pytest.approx(thick, abs=0.02)


@pytest.mark.parametrize(("thickness", "seconds"), [(0.010, 11.36), (0.006, 31.6)])
def test_thin_plate_cooling_times(thickness: float, seconds: float) -> None:
    found = cooling.weld_cooling_time(1e6, 293.15, thickness)
    assert found == pytest.approx(seconds, abs=0.05)


def test_rosenthal_thick_plate() -> None:
    found = rosenthal.rise_in_thick_plate(
        power=1000.0, speed=0.002, ahead=0.0, distance=0.005, conductivity=41.0, diffusivity=9.1e-6
    )
    assert found + 20 == pytest.approx(468.2, abs=0.3)


def test_rosenthal_thin_plate() -> None:
    found = rosenthal.rise_in_thin_plate(
        power=1000.0,
        speed=0.002,
        ahead=0.0,
        distance=0.005,
        thickness=0.002,
        conductivity=41.0,
        diffusivity=9.1e-6,
    )
    assert found + 20 == pytest.approx(1664.7, abs=1.0)


def test_groover_torch_in_metric() -> None:
    # Example from memory: 0.3 m³/h, 55 MJ/m³, 75 % inside 9 mm on 4.5 mm steel.
    whole = flame_power.power_into_work(0.3 / 3600, ACETYLENE, 1.0)
    enters = flame_power.power_into_work(0.3 / 3600, ACETYLENE, 0.20)
    assert whole == pytest.approx(4583, rel=5e-3)
    assert enters == pytest.approx(917, rel=5e-3)
    assert flame_power.power_density(enters, 0.75, 0.009) / 1e6 == pytest.approx(10.81, rel=5e-3)


def test_groover_torch_in_us_units() -> None:
    # Problem, read: 8.5 ft³/h, 30 %, 80 % inside a circle of 0.40 in.
    enters = flame_power.power_into_work(8.5 / 3600, 1470.0, 0.30)  # Btu/s
    assert enters == pytest.approx(12495 * 0.3 / 3600, rel=1e-6)
    assert flame_power.power_density(enters, 0.8, 0.40) == pytest.approx(6.63, rel=5e-3)


def test_preheat_gas_of_fifty_kilograms() -> None:
    heat = lumped.warm_up_heat(50.0, 490.0, 130.0)
    assert lumped.gas_for_heat(heat, 0.3, ACETYLENE) == pytest.approx(0.193, abs=1e-3)
    assert lumped.gas_for_heat(heat, 0.3, 93.9e6) == pytest.approx(0.113, abs=1e-3)


@pytest.mark.parametrize(
    ("metal", "joules"),
    [
        pytest.param("low-carbon steel", 10.3, id="low-carbon steel-Groover, from memory"),
        pytest.param("cast iron", 7.80, id="cast iron-Groover, from memory"),
        pytest.param("copper", 6.07, id="copper-Groover, from memory"),
        pytest.param("aluminium alloy", 2.88, id="aluminium alloy-Groover, from memory"),
    ],
)
def test_melting_energy(metal: str, joules: float) -> None:
    row = next(r for r in table("melting-energy-groover") if r.metal == metal)
    assert flame_power.melting_energy(row.melting) / 1e9 == pytest.approx(joules, abs=0.02)


def test_melting_energy_agrees_with_heat_capacity_and_heat_of_fusion() -> None:
    # 20 to 1500 °C at 0.69 kJ/(kg·K), fusion 247 kJ/kg, 7850 kg/m³: an independent way.
    other = (0.69 * 1480 + 247) * 1e3 * 7850
    assert flame_power.melting_energy(1760.0) == pytest.approx(other, rel=0.05)


def test_butt_shrinkage() -> None:
    # 60 mm² in 10 mm plate with a gap of 2 mm: 0.2·60/10 + 0.05·2, worked by hand.
    assert shrinkage.butt_shrinkage(60e-6, 0.010, 0.002) * 1e3 == pytest.approx(1.30, abs=1e-9)
    # The factors have no unit: the same joint in inches gives the same inches.
    inches = shrinkage.butt_shrinkage(60 / 645.16, 10 / 25.4, 2 / 25.4) * 25.4
    assert inches == pytest.approx(1.30, abs=1e-9)


@pytest.mark.parametrize(
    ("millimetres", "printed"),
    [pytest.param(6, 0.76, id="6-method statement, read"), pytest.param(8, 0.87, id="8-read")],
)
def test_simple_butt_shrinkage_of_a_printed_table(millimetres: float, printed: float) -> None:
    # 60° V, gap 2, face 2; the print adds its own reinforcement, so ours is below it.
    t = millimetres
    area = 2 * t + (t - 2) ** 2 * 0.57735
    found = shrinkage.simple_butt_shrinkage(area * 1e-6, t * 1e-3) * 1e3
    assert 0.3 * printed < found < printed


def test_fillet_shrinkage_by_hand() -> None:
    assert shrinkage.tee_shrinkage(0.006, 0.012) * 1e3 == pytest.approx(0.51)
    assert shrinkage.lap_shrinkage(0.006, 0.012) * 1e3 == pytest.approx(0.76)
    # 0.02·6·0.25^1.3/0.5² inches = 0.0792 in, worked by hand
    found = shrinkage.flange_lift(6 * 0.0254, 0.25 * 0.0254, 0.5 * 0.0254) / 0.0254
    assert found == pytest.approx(0.0792, abs=2e-4)


@pytest.mark.parametrize(
    ("name", "colour", "celsius"),
    [
        pytest.param("temper-colours", "straw", 238, id="straw-heat colour list, read"),
        pytest.param("temper-colours", "full blue", 293, id="full blue-heat colour list, read"),
        pytest.param("glow-colours", "cherry", 899, id="cherry-heat colour list, read"),
    ],
)
def test_heat_colours(name: str, colour: str, celsius: float) -> None:
    row = next(r for r in table(name) if r.colour == colour and r.standing == "followed")
    assert row.temperature - 273.15 == pytest.approx(celsius, abs=0.6)


def test_the_two_colour_lists_agree_but_for_one_row() -> None:
    # Process facts: the temper colours agree to 0 °F on shared names, the glow
    # colours differ only at "bright".
    ours = {r.colour: r for r in table("temper-colours") if r.standing == "followed"}
    for row in table("temper-colours"):
        if row.standing == "also" and row.colour in ours:
            assert row.temperature == pytest.approx(ours[row.colour].temperature)
    assert [r.colour for r in table("glow-colours") if r.standing == "differs"] == ["bright red"]


def test_straightening_stays_below_where_steel_transforms() -> None:
    # The limits, 1200 and 1100 °F, lie below the 723 °C where steel transforms.
    highest = [r.highest for r in table("flame-straightening")]
    assert max(highest) - 273.15 == pytest.approx(649, abs=1)
    assert max(highest) < 996.0


@pytest.mark.parametrize("row", table("metals"), ids=lambda r: f"{r.metal}-textbook, from memory")
def test_a_metals_diffusivity_is_the_printed_one(row: object) -> None:
    printed = {  # mm²/s, printed beside the values
        "mild steel": 13.3, "stainless steel 304": 4.05, "grey cast iron": 14, "copper C122": 98,
        "aluminium 1100": 91, "aluminium": 97, "copper": 116, "brass 70/30": 37.5,
        "brass 60/40": 39, "tin bronze 5 %": 21, "nickel": 23, "lead": 24, "zinc": 42,
        "tin": 40, "silver": 174,
    }  # fmt: skip
    found = row.conductivity / (row.density * row.heat_capacity)  # type: ignore[attr-defined]
    assert found * 1e6 == pytest.approx(printed[row.metal], rel=0.03)  # type: ignore[attr-defined]


def test_a_pipes_section_is_that_of_its_wall() -> None:
    assert pipe_section(0.022, 0.020) == pytest.approx(pi * 0.021 * 0.001)
