"""What the heat calculators keep, whatever a reader gives."""

import re
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc import InputError, answer
from calc.sheets.hot_metal import METALS

FEW = settings(
    max_examples=25, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow]
)
metals = st.sampled_from(list(METALS))
thicknesses = st.floats(0.5, 20.0)
flows = st.floats(30.0, 1100.0)
speeds = st.floats(10.0, 300.0)


def weld(metal: str, thickness: float, flow: float, speed: float, **more: str) -> dict[str, Any]:
    got = answer(
        "weld-heat", metal=metal, thickness=f"{thickness!r} mm", acetylene_flow=f"{flow!r} L/h",
        travel_speed=f"{speed!r} mm/min", rules="iso", **more,
    )["results"]  # fmt: skip
    return dict(got)


def width(results: dict[str, Any]) -> float:
    return float(results["pool_width"]["value"] or 0.0)


@FEW
@given(metals, thicknesses, flows, speeds, st.floats(1.02, 3.0))
def test_more_travel_never_widens_the_pool(m: str, d: float, q: float, v: float, more: float) -> None:
    assert width(weld(m, d, q, v * more)) <= width(weld(m, d, q, v)) * (1 + 1e-9)


@FEW
@given(metals, thicknesses, flows, speeds, st.floats(1.02, 1.5))
def test_more_flow_never_narrows_the_pool(m: str, d: float, q: float, v: float, more: float) -> None:
    assert width(weld(m, d, q * more, v)) >= width(weld(m, d, q, v)) * (1 - 1e-9)


@FEW
@given(metals, thicknesses, flows, speeds)
def test_the_travel_and_the_flow_found_give_the_pool_wanted(m: str, d: float, q: float, v: float) -> None:
    first = weld(m, d, q, v)
    if not first["pool_width"]["value"]:
        return
    wanted = f"{first['pool_width']['value']!r} mm"
    try:
        again = weld(m, d, q, v, wanted_width=wanted)
    except InputError:
        return  # a pool wider or narrower than can be asked for
    assert again["speed_for_pool"]["value"] == pytest.approx(v, rel=1e-3)
    assert again["flow_for_pool"]["value"] == pytest.approx(q, rel=1e-3)


@FEW
@given(metals, thicknesses, flows, speeds)
def test_every_verdict_asks_for_a_coupon_and_agrees_with_the_pool(
    m: str, d: float, q: float, v: float
) -> None:
    got = weld(m, d, q, v)
    said = got["verdict"]["text"]
    assert "trial coupon" in said
    assert (width(got) == 0.0) == said.startswith(("never melts", "the metal does not melt"))


@FEW
@given(
    st.sampled_from(["plate", "wall", "pipe"]), metals, st.floats(0.5, 90.0), st.floats(2.0, 20000.0),
    st.floats(1.02, 4.0),
)  # fmt: skip
def test_the_far_side_only_gets_hotter_with_time(
    shape: str, metal: str, distance: float, time: float, longer: float
) -> None:
    def at(seconds: float) -> float:
        got = answer(
            "far-side",
            shape=shape,
            material=metal,
            distance=f"{distance!r} mm",
            time=f"{min(seconds, 28800)!r} s",
        )
        return float(got["results"]["far_temperature"]["value"])

    assert at(time * longer) >= at(time) - 1e-6


@pytest.mark.parametrize("shape", ["plate", "wall", "pipe"])
@pytest.mark.parametrize("time", ["1 s", "5 min", "8 h"])
@pytest.mark.parametrize("distance", ["1 mm", "90 mm", "2 m"])
def test_the_far_side_is_never_given_an_all_clear(shape: str, time: str, distance: str) -> None:
    texts = {"shape": shape, "material": "brick" if shape == "wall" else "copper", "distance": distance}
    if shape == "plate" and distance == "2 m":
        with pytest.raises(InputError, match="Through it, or along the pipe"):
            answer("far-side", time=time, **texts)
        return
    got = answer("far-side", time=time, **texts)
    said = got["results"]["warning"]["text"]
    hot = got["results"]["far_temperature"]["value"] >= 212.0
    assert ("hot enough to char wood in time. Look" in said) == hot
    assert hot or said.startswith("no all-clear")
    shown = got["results"]["char_time"]["text"]
    assert re.search(r"can be sooner|no time is given; watch", shown)
    assert {c["signal"] for c in got["cautions"]} == {"DANGER"}


def test_a_plate_or_pipe_of_brick_is_refused() -> None:
    with pytest.raises(InputError, match=r"^Material: "):
        answer("far-side", shape="pipe", material="brick", distance="100 mm", time="1 min")
