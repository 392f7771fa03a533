"""Worked examples of heat flow in print, through the calculators that use them."""

import pytest

from calc import answer
from calc.formulas.heat.heat_of_reaction import heat_value, heats
from tests.published.rows import Row, case, shown

MINE = heat_value(heats("acetylene").total_gross)
KILOWATT = f"{1000.0 / MINE / 0.2 * 3.6e6!r} L/h"
"""The flow that puts 1000 W into the work at 20 %."""
ROSENTHAL = {
    "metal": "low-carbon-steel", "acetylene_flow": KILOWATT, "travel_speed": "120 mm/min",
    "start_temperature": "20 degC", "aside": "5 mm", "conductivity": "41 W/(m*K)", "diffusivity": "9.1 mm^2/s",
}  # fmt: skip
TORCH = {"metal": "low-carbon-steel", "thickness": "4.5 mm", "travel_speed": "100 mm/min"}

ROWS = [
    case("Rosenthal thick plate, 1000 W at 2 mm/s, 5 mm off, worked by hand", "memory", "weld-heat",
         "temperature_there", 468.2, "degC", 0.001, thickness="50 mm", **ROSENTHAL),
    case("Rosenthal thin plate, 2 mm, worked by hand", "memory", "weld-heat",
         "temperature_there", 1664.7, "degC", 0.001, thickness="2 mm", **ROSENTHAL),
    case("Groover: 0.3 m3/h at 0.20 is 917 W", "memory", "weld-heat", "power", 917, "W", 0.005,
         acetylene_flow="0.3 m^3/h", efficiency="20 %", **TORCH),
    case("Groover: 75 % inside 9 mm is 10.81 W/mm2", "memory", "weld-heat", "power_density", 10.81, "W/mm^2", 0.005,
         acetylene_flow="0.3 m^3/h", efficiency="20 %", **TORCH),
    case("Groover: 8.5 ft3/h at 1470 Btu/ft3 and 0.30 is 3749 Btu/h; a cubic foot at 70 F holds 2 % less", "read",
         "weld-heat", "power", 3749, "Btu/h", 0.02, acetylene_flow="8.5 cfh", efficiency="30 %", **TORCH),
]  # fmt: skip


@pytest.mark.parametrize("row", ROWS)
def test_the_published_figure_comes_out(row: Row) -> None:
    assert shown(row) == pytest.approx(row.figure, rel=row.within)


@pytest.mark.parametrize(
    ("thickness", "travel"),
    [("0.8 mm", "140 mm/min"), ("1.5 mm", "113 mm/min"), ("2.5 mm", "113 mm/min"), ("3 mm", "95 mm/min")],
    ids=lambda text: f"{text}-Carvill 1993 p. 207, read",
)
def test_a_printed_setting_for_steel_penetrates(thickness: str, travel: str) -> None:
    """Middle of the printed travel, 100 L/h of acetylene for each millimetre (common practice)."""
    flow = f"{100 * float(thickness.split(maxsplit=1)[0])} L/h"
    got = answer(
        "weld-heat", metal="low-carbon-steel", thickness=thickness, acetylene_flow=flow, travel_speed=travel
    )
    assert got["results"]["verdict"]["text"].startswith("it penetrates")


def test_the_flame_that_melts_steel_leaves_copper_solid() -> None:
    """A trade rule from memory: copper takes a far larger flame, or a second one."""
    texts = {"thickness": "3 mm", "acetylene_flow": "300 L/h", "travel_speed": "95 mm/min"}
    steel = answer("weld-heat", metal="low-carbon-steel", **texts)["results"]
    copper = answer("weld-heat", metal="copper", **texts)["results"]
    assert steel["pool_width"]["value"] is not None
    assert copper["pool_width"]["value"] is None


def test_heat_along_a_copper_pipe_is_called_a_fire() -> None:
    """Madison 2009: a fire by heat along a pipe (published case)."""
    got = answer("far-side", shape="pipe", material="copper", distance="150 mm", time="3 min")["results"]
    assert "hot enough to char wood in time" in got["warning"]["text"]
    assert "sooner" in got["char_time"]["text"]
