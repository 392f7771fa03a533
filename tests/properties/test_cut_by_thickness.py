"""Cutting: what thickness does to every figure, and what never comes out."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import InputError, answer
from calc.formulas.setup.cut_gas import bevel_thickness
from calc.formulas.setup.cut_shape import drag, kerf, preheat_holes
from calc.formulas.setup.cutting import (
    FUELS,
    cutting_gauges,
    cutting_orifice,
    cutting_oxygen_flow,
    cutting_speed,
    preheat_fuel_flow,
)

THICK = st.floats(0.003, 0.3048)
PLATE = st.floats(0.003, 0.1524)
PASCAL = {"psi": 6894.757293168, "bar": 1e5}
LIMIT = {"us": 15 * PASCAL["psi"], "iso": 1.5e5, "uk": 1.5e5}
"""29 CFR 1910.253(a)(2); ISO 3821 scope; both read."""
GROWS = [cutting_orifice, cutting_oxygen_flow, drag] + [
    lambda thickness, fuel=fuel: preheat_fuel_flow(thickness, fuel) for fuel in FUELS
]


@pytest.mark.parametrize("figure", GROWS)
@given(one=THICK, other=THICK)
def test_thicker_plate_never_takes_less(figure: Any, one: float, other: float) -> None:
    thin, thick = sorted((one, other))
    assert figure(thin).value <= figure(thick).value * (1 + 1e-9)


@given(one=THICK, other=THICK)
def test_thicker_plate_is_never_cut_faster(one: float, other: float) -> None:
    thin, thick = sorted((one, other))
    assert cutting_speed(thin).value >= cutting_speed(thick).value * (1 - 1e-9)


@given(one=PLATE, other=PLATE)
def test_the_slot_never_narrows_with_thickness(one: float, other: float) -> None:
    thin, thick = sorted((one, other))
    assert kerf(thin).value <= kerf(thick).value * (1 + 1e-9)


@given(thickness=THICK, fuel=st.sampled_from(FUELS))
def test_every_band_holds_its_figure(thickness: float, fuel: str) -> None:
    figures = [
        cutting_orifice(thickness), cutting_speed(thickness), cutting_oxygen_flow(thickness),
        preheat_fuel_flow(thickness, fuel), *cutting_gauges(thickness, fuel), drag(thickness),
    ]  # fmt: skip
    for figure in figures:
        if figure.low is not None:  # a limit has no band
            assert figure.low < figure.value < figure.high
        assert figure.basis
        assert figure.source or figure.how_sure in ("practice", "memory")


@given(thickness=THICK)
def test_acetylene_and_its_band_stay_below_every_limit(thickness: float) -> None:
    _, fuel = cutting_gauges(thickness, "acetylene")
    assert fuel.high <= min(LIMIT.values())


@given(thickness=st.floats(3, 60), degrees=st.floats(5, 60))
def test_a_bevel_is_the_plate_that_the_jet_meets(thickness: float, degrees: float) -> None:
    along = 1000 * bevel_thickness(thickness / 1000, math.radians(degrees))
    texts = {"metal": "low-carbon-steel", "shape": "straight", "fuel": "acetylene", "length": "1 m"}
    bevel = answer(
        "cut-plate",
        **(texts | {"shape": "bevel"}),
        thickness=f"{thickness!r} mm",
        bevel_angle=f"{degrees!r} deg",
    )["results"]
    plain = answer("cut-plate", **texts, thickness=f"{along!r} mm")["results"]
    assert "lead_angle" in plain
    assert "lead_angle" not in bevel
    for name in ("cutting_orifice", "oxygen_gauge", "cutting_speed", "kerf", "drag", "oxygen_used"):
        assert bevel[name]["si"] == pytest.approx(plain[name]["si"], rel=1e-6)


@pytest.mark.parametrize("bad", [0.0, -0.01, 0.0029, 0.306, math.nan, math.inf])
def test_plate_outside_the_tables_is_refused(bad: float) -> None:
    for figure in (cutting_orifice, cutting_speed, cutting_oxygen_flow, preheat_holes, kerf, drag):
        with pytest.raises(ValueError, match="mm"):
            figure(bad)
    with pytest.raises(ValueError, match="mm"):
        cutting_gauges(bad, "acetylene")
    with pytest.raises(ValueError, match="mm"):
        preheat_fuel_flow(bad, "propane")


@pytest.mark.parametrize("fuel", ["propylene", "hydrogen", "methylacetylene-propadiene", "", "air"])
def test_a_fuel_without_a_table_is_refused_with_the_reason(fuel: str) -> None:
    with pytest.raises(ValueError, match="no flow to the preheat flames is kept for"):
        preheat_fuel_flow(0.01, fuel)
    with pytest.raises(ValueError, match="no pressure for cutting is kept for"):
        cutting_gauges(0.01, fuel)


@pytest.mark.parametrize(
    ("rules", "far"),
    [("us", "35 ft (10.7 m)"), ("iso", "10 m")],
    ids=["29 CFR 1910.252(a)(2)(iii)(A)(1)-read", "DGUV 100-500 2.26 annex 2-read"],
)
def test_the_distance_to_clear_is_said(rules: str, far: str) -> None:
    got = answer(
        "cut-plate",
        metal="low-carbon-steel",
        shape="straight",
        fuel="propane",
        length="1 m",
        thickness="12 mm",
        rules=rules,
    )
    (said,) = (caution for caution in got["cautions"] if caution["id"] == "cutting-sparks")
    assert said["signal"] == "WARNING"
    assert f"Clear {far}" in said["text"]
    assert "acetylene-limit" not in {caution["id"] for caution in got["cautions"]}


@pytest.mark.parametrize("metal", ["medium-carbon-steel", "low-alloy-steel"])
def test_a_steel_that_hardens_is_warned_of(metal: str) -> None:
    got = answer(
        "cut-plate", metal=metal, shape="straight", fuel="acetylene", length="1 m", thickness="12 mm"
    )
    assert any("turns hard" in c["text"] and c["signal"] == "WARNING" for c in got["cautions"])
    plain = answer(
        "cut-plate",
        metal="low-carbon-steel",
        shape="straight",
        fuel="acetylene",
        length="1 m",
        thickness="12 mm",
    )
    assert not any("turns hard" in c["text"] for c in plain["cautions"])


def test_a_pierce_takes_time_and_thick_plate_is_not_pierced() -> None:
    texts = {
        "metal": "low-carbon-steel",
        "shape": "straight",
        "fuel": "acetylene",
        "length": "1 m",
        "thickness": "12 mm",
    }
    none, three = (answer("cut-plate", **texts, pierces=n)["results"]["cut_time"]["si"] for n in ("0", "3"))
    assert 3 * 5 <= three - none <= 3 * 30  # 5 to 30 s a hole, common practice
    with pytest.raises(InputError, match=r"^Pierced starts: .*give 0"):
        answer("cut-plate", **(texts | {"thickness": "75 mm"}), pierces="1")
