"""Tips for another fuel and for heating, against a Cantera isentrope and heats typed from another library."""

import math
from typing import Any

import fluids
import pytest

from calc import answer
from tests.reference.test_gas_nozzle import cantera_gas, composition, isentrope

PSI, ATMOSPHERE = 6894.757293168, 101325.0
GROSS = {
    "acetylene": 55.0, "propane": 93.9, "propylene": 87.1, "methane": 37.7, "hydrogen": 12.1,
    "methylacetylene-propadiene": (82.0 + 82.1) / 2,
}  # fmt: skip
"""MJ/m³ at 15 °C from the heats of formation of `chemicals` 1.5."""
OXYGEN = {
    "acetylene": 1.1, "propane": 4.0, "propylene": 3.5, "methane": 1.75, "hydrogen": 0.25,
    "methylacetylene-propadiene": 2.5,
}  # fmt: skip
"""What a torch draws for one of fuel: OD0017 read for acetylene, the others from memory."""
DISCHARGE = 0.75
"""From memory, as the calculator takes it."""
BRAZING_PSI = dict.fromkeys(OXYGEN, 5.0)
HEATING_PSI = dict.fromkeys(OXYGEN, 10.0) | {"acetylene": 7.0, "methane": 5.0}
"""The lower of both gauges: common practice."""
SHARE = 0.30
"""Of the flame's heat that enters a part which the whole flame warms, 0.2 to 0.4: common practice."""


def free_flux(fuel: str, psi: float) -> float:
    """Fuel and oxygen that a square metre of hole passes, m³/s of free gas at 15 °C."""
    gases = {fuel: 1.0, "oxygen": OXYGEN[fuel]}
    flux, _ = isentrope(gases, 293.15, psi * PSI + ATMOSPHERE)
    gas = cantera_gas()
    gas.TPX = 293.15, ATMOSPHERE, composition(gases)
    moles = flux / (gas.mean_molecular_weight / 1000)
    return DISCHARGE * moles * 8.314462618 * 288.15 / ATMOSPHERE


def results(**texts: str) -> Any:
    given_ = {"metal": "low-carbon-steel", "fuel": "acetylene", "rules": "iso"} | texts
    return answer("tip-choice", **given_)["results"]


def litres(fuel: str, diameter: float, psi: float) -> float:
    """Fuel through a hole given in metres, L/h."""
    return 3.6e6 * free_flux(fuel, psi) * math.pi * diameter**2 / 4 / (1 + OXYGEN[fuel])


@pytest.mark.parametrize(
    ("thickness", "smaller", "hole", "larger"),
    [
        ("1/16 in", 0.026, 0.031, 0.038), ("1/8 in", 0.038, 0.0465, 0.055), ("3/8 in", 0.076, 0.086, 0.098),
        ("3/4 in", 0.110, 0.1285, 0.1285**2 / 0.110),
    ],
)  # fmt: skip
def test_a_brazing_tip_passes_what_the_isentrope_does(
    thickness: str, smaller: float, hole: float, larger: float
) -> None:
    """Holes of NAVEDTRA 14119 table 9-1, read, a size smaller and a size larger; 5 psi of each gas, common practice."""
    got = results(process="brazing", thickness=thickness)["fuel_flow"]
    assert got["value"] == pytest.approx(litres("acetylene", hole * 0.0254, 5), rel=0.01)
    assert got["low"] == pytest.approx(litres("acetylene", smaller * 0.0254, 5), rel=0.01)
    assert got["high"] == pytest.approx(litres("acetylene", larger * 0.0254, 5), rel=0.01)


@pytest.mark.parametrize(("thickness", "hole", "psi"), [("1/8 in", 0.0465, 5), ("3/8 in", 0.086, 5)])
@pytest.mark.parametrize("fuel", [fuel for fuel in OXYGEN if fuel != "acetylene"])
def test_another_fuel_brings_the_heat_of_the_printed_tip(
    fuel: str, thickness: str, hole: float, psi: float
) -> None:
    got = results(process="brazing", thickness=thickness, fuel=fuel)
    flow = litres("acetylene", hole * 0.0254, psi) * GROSS["acetylene"] / GROSS[fuel]
    assert got["fuel_flow"]["value"] == pytest.approx(flow, rel=0.015)
    assert got["oxygen_flow"]["value"] == pytest.approx(flow * OXYGEN[fuel], rel=0.015)
    mixed = flow / 3.6e6 * (1 + OXYGEN[fuel])
    diameter = math.sqrt(4 * mixed / free_flux(fuel, BRAZING_PSI[fuel]) / math.pi)
    assert got["orifice"]["value"] == pytest.approx(1000 * diameter, rel=0.01)
    # A hole of that size, at that gauge, passes it again.
    assert litres(fuel, got["orifice"]["value"] / 1000, BRAZING_PSI[fuel]) == pytest.approx(flow, rel=0.015)


@pytest.mark.parametrize("kilowatts", [0.5, 3.0, 20.0])
@pytest.mark.parametrize("fuel", list(OXYGEN))
def test_a_heating_tip_passes_the_gas_of_the_heat(fuel: str, kilowatts: float) -> None:
    got = results(process="heating", fuel=fuel, heat=f"{kilowatts} kW")
    flow = 3600 * kilowatts / SHARE / GROSS[fuel]
    assert got["fuel_flow"]["value"] == pytest.approx(flow, rel=0.01)
    # 20 and 40 % in place of 30.
    assert got["fuel_flow"]["low"] == pytest.approx(flow * 30 / 40, rel=0.01)
    assert got["fuel_flow"]["high"] == pytest.approx(flow * 30 / 20, rel=0.01)
    holes, one = got["holes"]["value"], got["orifice"]["value"] / 1000
    # Holes of 1 mm, common practice, as many as pass the gas and not one more; a smaller one alone, wider ones from 60 on.
    assert holes * litres(fuel, one, HEATING_PSI[fuel]) >= flow * 0.985
    assert (holes - 1) * litres(fuel, one, HEATING_PSI[fuel]) <= flow * 1.015
    if 1 < holes < 60:
        assert one == pytest.approx(1e-3)
    assert holes * got["hole_flow"]["value"] == pytest.approx(got["fuel_flow"]["value"])
    assert holes == int(holes)
    assert holes <= 60
    assert one <= 1.0001e-3 or holes == 60


def test_holes_of_ones_own_are_counted_by_their_area() -> None:
    """A hole twice as wide passes four times as much: 3 kW of acetylene take 655 L/h."""
    one = litres("acetylene", 0.5e-3, 7.0)
    got = results(process="heating", heat="3 kW", own_orifice="0.5 mm")["yours"]["text"]
    assert got == f"{math.ceil(655 / one)} holes of this size pass the gas of this heat"
    assert results(process="heating", heat="3 kW", own_orifice="2 mm")["yours"]["text"].startswith(
        "one hole"
    )


def test_a_heating_tip_stays_below_the_speed_of_sound_where_the_library_says_so() -> None:
    """At 7 psi on acetylene the flow is not choked: `fluids` with the mixture's own gamma."""
    gas = cantera_gas()
    gas.TPX = 293.15, ATMOSPHERE, composition({"acetylene": 1.0, "oxygen": 1.1})
    gamma = gas.cp_mole / gas.cv_mole
    assert not fluids.is_critical_flow(7 * PSI + ATMOSPHERE, ATMOSPHERE, gamma)


@pytest.mark.parametrize("fuel", ["acetylene", "propane"])
def test_soldering_takes_the_low_end_for_a_third_of_the_heat(fuel: str) -> None:
    """230 °C against 650 °C, from 20 °C: common practice."""
    brazing = results(process="brazing", thickness="1/8 in", fuel=fuel)
    soldering = results(process="soldering", thickness="1/8 in", fuel=fuel)
    assert soldering["orifice"]["value"] == pytest.approx(brazing["orifice"]["value"])
    third = (230 - 20) / (650 - 20)
    assert soldering["fuel_flow"]["low"] == pytest.approx(third * brazing["fuel_flow"]["low"], rel=1e-6)
    assert soldering["orifice"]["low"] == pytest.approx(third**0.5 * brazing["orifice"]["low"], rel=1e-6)
