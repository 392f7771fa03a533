"""What must hold of gas along any hose."""

from math import isfinite, log, pi

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.formulas.gas.hose import (
    ROUGHNESS,
    UNCERTAIN_BELOW,
    UNCERTAIN_FROM,
    HoseFlow,
    friction_factor,
    hose_flow,
    hose_line,
    hose_volume,
)
from calc.formulas.gas.properties import gas_molar_mass
from calc.values.quantities import ATMOSPHERE, FIFTEEN_CELSIUS, GAS_CONSTANT

gases = st.sampled_from(["oxygen", "acetylene", "propane", "propylene", "methane", "hydrogen"])
flows = st.floats(1e-6, 5e-3)
inlets = st.floats(1.1e5, 1.2e6)
bores = st.floats(0.003, 0.0125)
lengths = st.floats(0.5, 100)


NAMES = ("gas", "flow", "inlet", "bore", "length", "fittings")


def passed(*case: object) -> HoseFlow | None:
    try:
        return hose_flow(**dict(zip(NAMES[: len(case)], case, strict=True)))  # type: ignore[arg-type]
    except ValueError:
        return None


@given(gases, flows, inlets, bores, lengths)
def test_an_answer_solves_the_equation(
    gas: str, flow: float, inlet: float, bore: float, length: float
) -> None:
    try:
        end = hose_flow(gas=gas, flow=flow, inlet=inlet, bore=bore, length=length, compressibility=1.0)
    except ValueError:
        assume(False)
    assert isfinite(end.drop)
    assert 0 < end.outlet < inlet
    mass = gas_molar_mass(gas)
    flux = flow * ATMOSPHERE / (GAS_CONSTANT * FIFTEEN_CELSIUS) * mass / (pi * bore**2 / 4)
    loss = friction_factor(end.reynolds, ROUGHNESS / bore) * length / bore
    push = (inlet - end.outlet) * (inlet + end.outlet)
    drag = flux**2 * GAS_CONSTANT * 293.15 / mass * (loss + 2 * log(inlet / end.outlet))
    assert push == pytest.approx(drag, rel=1e-6, abs=1e-11 * inlet**2)
    assert end.uncertain is (UNCERTAIN_FROM <= end.reynolds <= UNCERTAIN_BELOW)
    assert 0 < end.least_drop < end.drop < end.most_drop <= inlet


@given(gases, flows, inlets, bores, lengths)
def test_a_hose_leaves_what_comes_out_of_it_and_no_more(
    gas: str, flow: float, inlet: float, bore: float, length: float
) -> None:
    end = passed(gas, flow, inlet, bore, length)
    line = hose_line(gas=gas, flow=flow, bore=bore, length=length)
    if end is None:
        assert not line.leaves(inlet, 1.0)
        return
    assert line.leaves(inlet, 1.0)
    assert line.leaves(inlet, end.outlet)
    assert not line.leaves(inlet, end.outlet + 1e-6 * inlet)


@given(gases, flows, st.floats(1.05, 3), inlets, bores, lengths)
def test_more_flow_or_more_hose_drops_more(
    gas: str, flow: float, times: float, inlet: float, bore: float, length: float
) -> None:
    end = passed(gas, flow, inlet, bore, length)
    for harder in (
        (gas, flow * times, inlet, bore, length),
        (gas, flow, inlet, bore, length * times),
        (gas, flow, inlet, bore, length, 10.0),
    ):
        worse = passed(*harder)
        assert worse is None or (end is not None and worse.drop > end.drop)


@given(gases, inlets, bores, lengths)
def test_nothing_flows_nothing_drops(gas: str, inlet: float, bore: float, length: float) -> None:
    assert hose_flow(gas=gas, flow=0.0, inlet=inlet, bore=bore, length=length).drop == 0
    assert hose_volume(bore, 2 * length) == pytest.approx(2 * hose_volume(bore, length))


@pytest.mark.parametrize(
    ("flow", "inlet", "bore", "length"),
    [
        (1e-4, 2e5, 0.0, 5.0),
        (1e-4, 2e5, 0.006, 0.0),
        (-1e-4, 2e5, 0.006, 5.0),
        (1e-4, 0.0, 0.006, 5.0),
        (1e-4, 3e6, 0.006, 5.0),
        (float("nan"), 2e5, 0.006, 5.0),
        (float("inf"), 2e5, 0.006, 5.0),
        (1e-4, 2e5, float("inf"), 5.0),
        (1e-4, 2e5, 0.006, float("inf")),
        (1e-2, 1.1e5, 0.003, 100.0),
    ],
)
def test_what_cannot_flow_is_refused(flow: float, inlet: float, bore: float, length: float) -> None:
    with pytest.raises(ValueError, match=r"hose|flow"):
        hose_flow(gas="oxygen", flow=flow, inlet=inlet, bore=bore, length=length)
