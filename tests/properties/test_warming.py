"""What warming and cooling of whole parts and of steel keeps, whatever the numbers."""

from math import isfinite

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.formulas.heat import carbon_equivalent, cooling, lumped
from calc.formulas.heat.crossing import crossing
from calc.formulas.heat.steel_properties import steel_conductivity, steel_heat_capacity

FEW = settings(max_examples=60, deadline=None)
K, ALPHA = 35.0, 35.0 / (7850.0 * 650.0)


@FEW
@given(
    st.floats(200.0, 20000.0),
    st.floats(0.2, 60.0),
    st.floats(0.0, 1.0),
    st.floats(0.0, 40.0),
    st.floats(0.0, 1.0),
    st.floats(300.0, 1450.0),
)
def test_warm_up_is_never_or_at_least_the_heat_over_the_power(
    power: float, mass: float, area: float, transfer: float, emissivity: float, target: float
) -> None:
    def warm_up(watts: float) -> float | None:
        return lumped.warm_up_time(
            power=watts,
            mass=mass,
            area=area,
            heat_transfer=transfer,
            emissivity=emissivity,
            start=293.15,
            target=target,
        )

    without = lumped.warm_up_time(
        power=power, mass=mass, area=0.0, heat_transfer=0.0, emissivity=0.0, start=293.15, target=target
    )
    found = warm_up(power)
    loss = lumped.surface_loss(area, transfer, emissivity, target, 293.15)
    if found is None:
        assert loss >= power * (1 - 1e-8)
    else:
        assert loss < power
        assert isfinite(found)
        assert without is not None
        assert found >= without * (1 - 1e-9)
        stronger = warm_up(power * 1.2)
        assert stronger is not None
        assert stronger < found


def test_a_warm_part_needs_no_time_and_a_cold_one_is_no_warmer_than_the_air() -> None:
    assert (
        lumped.warm_up_time(
            power=100.0, mass=1.0, area=0.1, heat_transfer=10.0, emissivity=0.8, start=400.0, target=390.0
        )
        == 0.0
    )
    assert (
        lumped.cooling_time(
            mass=1.0,
            area=0.1,
            heat_transfer=10.0,
            emissivity=0.8,
            start=400.0,
            target=293.15,
            surroundings=293.15,
        )
        is None
    )
    assert (
        lumped.cooling_time(
            mass=1.0,
            area=0.1,
            heat_transfer=10.0,
            emissivity=0.8,
            start=400.0,
            target=410.0,
            surroundings=293.15,
        )
        == 0.0
    )


def test_radiation_written_as_a_transfer_is_the_same_heat() -> None:
    coefficient = lumped.radiation_coefficient(0.8, 700.0, 290.0)
    assert coefficient * (700.0 - 290.0) == pytest.approx(lumped.surface_loss(1.0, 0.0, 0.8, 700.0, 290.0))


@FEW
@given(st.floats(0.002, 0.005), st.floats(0.010, 0.090), st.floats(1e-5, 2e-4), st.floats(5e5, 4e6))
def test_a_harder_steel_needs_more_preheat(
    cet: float, thickness: float, hydrogen: float, energy: float
) -> None:
    found = carbon_equivalent.preheat_temperature(cet, thickness, hydrogen, energy)
    assert isfinite(found)
    if cet < 0.0049:
        more = carbon_equivalent.preheat_temperature(cet + 1e-4, thickness, hydrogen, energy)
        assert more > found
    if thickness < 0.089:
        more = carbon_equivalent.preheat_temperature(cet, thickness + 1e-3, hydrogen, energy)
        assert more > found


@FEW
@given(st.floats(2e5, 5e6), st.floats(253.15, 700.0), st.floats(0.001, 0.1))
def test_thin_and_thick_cooling_meet_at_the_transition(
    energy: float, start: float, thickness: float
) -> None:
    meet = cooling.transition_thickness(energy, start)
    thick = cooling.thick_plate_cooling_time(energy, start)
    assert cooling.thin_plate_cooling_time(energy, start, meet) == pytest.approx(thick)
    found = cooling.weld_cooling_time(energy, start, thickness)
    thin = cooling.thin_plate_cooling_time(energy, start, thickness)
    assert found == (thin if thickness < meet else thick) or abs(thickness / meet - 1) < 1e-6


@FEW
@given(st.floats(253.15, 1473.15))
def test_steel_properties_are_plain_numbers(temperature: float) -> None:
    assert 425.0 < steel_heat_capacity(temperature) <= 5000.1
    assert 27.0 < steel_conductivity(temperature) < 54.0


def test_crossing_finds_a_falling_curve_too() -> None:
    assert crossing(lambda x: 1.0 / x, 0.25, 0.1, 1e6) == pytest.approx(4.0, rel=1e-9)
