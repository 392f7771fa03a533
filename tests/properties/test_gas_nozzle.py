"""What must hold of any flow through a tip."""

from math import isfinite

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.formulas.gas.nozzle import HIGHEST, orifice_area, orifice_flow, orifice_pressure
from calc.formulas.gas.properties import gas_molar_mass, oxygen_ratio
from calc.values.quantities import ATMOSPHERE, FIFTEEN_CELSIUS, GAS_CONSTANT

FUELS = (
    "acetylene",
    "propane",
    "propylene",
    "methane",
    "hydrogen",
    "methylacetylene-propadiene",
)
fuels = st.sampled_from(FUELS)
pressures = st.floats(ATMOSPHERE, HIGHEST)
temperatures = st.floats(244, 338)


@given(fuels, st.floats(0, 6), pressures, temperatures, st.floats(1e-4, 5e-3))
def test_what_enters_leaves(
    fuel: str, ratio: float, pressure: float, temperature: float, diameter: float
) -> None:
    """The flows of the gases, turned back into mass, are the mass that flows."""
    gases = {fuel: 1.0, "oxygen": ratio}
    tip = orifice_flow(gases=gases, area=orifice_area(diameter), pressure=pressure, temperature=temperature)
    moles = {gas: q * ATMOSPHERE / (GAS_CONSTANT * FIFTEEN_CELSIUS) for gas, q in tip.flows.items()}
    mass = sum(n * gas_molar_mass(gas) for gas, n in moles.items())
    assert mass == pytest.approx(tip.mass_flow)
    assert tip.flows["oxygen"] == pytest.approx(ratio * tip.flows[fuel])
    assert isfinite(tip.speed)
    assert 0 <= tip.speed < 1400


@given(fuels, pressures, pressures, st.integers(1, 12))
def test_more_pressure_and_more_holes_pass_more(fuel: str, one: float, other: float, holes: int) -> None:
    gases, area = {fuel: 1.0, "oxygen": oxygen_ratio(fuel)}, orifice_area(0.001)
    low, high = (orifice_flow(gases=gases, area=area, pressure=p) for p in sorted((one, other)))
    assert low.mass_flow <= high.mass_flow * (1 + 1e-12)
    assert low.speed <= high.speed * (1 + 1e-12)
    many = orifice_flow(gases=gases, area=orifice_area(0.001, holes), pressure=one)
    assert many.mass_flow == pytest.approx(
        holes * orifice_flow(gases=gases, area=area, pressure=one).mass_flow
    )


@given(fuels, st.floats(1.01e5 + 1000, HIGHEST))
def test_flow_leads_back_to_pressure(fuel: str, pressure: float) -> None:
    gases, area = {fuel: 1.0, "oxygen": oxygen_ratio(fuel)}, orifice_area(0.001)
    flow = orifice_flow(gases=gases, area=area, pressure=pressure).free_gas
    assert orifice_pressure(gases=gases, area=area, flow=flow) == pytest.approx(pressure, rel=1e-6)


@pytest.mark.parametrize("fuel", FUELS)
def test_a_torch_draws_less_oxygen_than_burning_takes(fuel: str) -> None:
    assert 0 < oxygen_ratio(fuel) < oxygen_ratio(fuel, "complete")


@pytest.mark.parametrize(
    ("gases", "area", "pressure", "temperature"),
    [
        ({"acetylene": 1.0}, 1e-6, 1e5, 293.0),
        ({"acetylene": 1.0}, 1e-6, HIGHEST * 1.01, 293.0),
        ({"acetylene": 1.0}, 0.0, 2e5, 293.0),
        ({"acetylene": 0.0}, 1e-6, 2e5, 293.0),
        ({"acetylene": 2.0, "oxygen": -1.0}, 1e-6, 2e5, 293.0),
        ({"acetylene": 1.0}, 1e-6, float("nan"), 293.0),
        ({"acetylene": 1.0}, 1e-6, 2e5, 200.0),
        ({"steam": 1.0}, 1e-6, 2e5, 293.0),
    ],
)
def test_what_cannot_flow_is_refused(
    gases: dict[str, float], area: float, pressure: float, temperature: float
) -> None:
    with pytest.raises(ValueError, match=r"[a-z]"):
        orifice_flow(gases=gases, area=area, pressure=pressure, temperature=temperature)
