"""What the heat calculators keep, whatever a reader gives."""

import re
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc import InputError, answer
from calc.trade.heat.colours import colour_at
from calc.trade.heat.metals import METALS

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
            hot_temperature="1100 degF",  # below where the first of the metals, aluminum, begins to melt
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
    assert [c["id"] for c in got["cautions"]] == ["closed-part", "heat-behind"]


def test_a_plate_or_pipe_of_brick_is_refused() -> None:
    with pytest.raises(InputError, match=r"^Material: "):
        answer("far-side", shape="pipe", material="brick", distance="100 mm", time="1 min")


WARM = {"metal": "low-carbon-steel", "mass": "20 kg", "thickness": "10 mm"}


def warmed(target: float, flow: float, **more: str) -> Any:
    got = answer("warm-up", target=f"{target!r} degC", flow=f"{flow!r} L/h", rules="iso", **(WARM | more))[
        "results"
    ]
    return got["time"]["value"]


@FEW
@given(st.floats(60.0, 600.0), st.floats(200.0, 8000.0), st.floats(1.05, 2.0))
def test_a_larger_flame_is_sooner_and_a_hotter_target_later(
    target: float, flow: float, more: float
) -> None:
    first, stronger, hotter = (
        warmed(target, flow),
        warmed(target, flow * more),
        warmed(target * more**0.3, flow),
    )
    if first is None:
        assert hotter is None
        return
    assert stronger < first
    assert hotter is None or hotter > first


@FEW
@given(st.floats(60.0, 600.0), st.floats(50.0, 8000.0))
def test_losses_cost_gas_or_end_in_never(target: float, flow: float) -> None:
    got = answer("warm-up", target=f"{target!r} degC", flow=f"{flow!r} L/h", rules="iso", **WARM)["results"]
    if got["time"]["value"] is None:
        assert got["time"]["text"] == "never"
        assert "never" in got["verdict"]["text"]
        assert got["fuel_used"]["value"] is None
        return
    assert got["fuel_used"]["value"] > got["gas_without_losses"]["value"]
    wrapped = answer(
        "warm-up", target=f"{target!r} degC", flow=f"{flow!r} L/h", rules="iso", cover="wrapped", **WARM
    )["results"]
    assert wrapped["fuel_used"]["value"] < got["fuel_used"]["value"]


def test_a_small_flame_never_heats_a_large_part() -> None:
    got = answer("warm-up", target="600 degC", flow="100 L/h", rules="iso", **(WARM | {"mass": "200 kg"}))
    assert got["results"]["verdict"]["text"].startswith("never: the losses win")


@pytest.mark.parametrize(
    ("texts", "label"),
    [
        ({"target": "20 degC", "flow": "1000 L/h", "start_temperature": "100 degC"}, "Bring it to"),
        ({"target": "800 degC", "flow": "1000 L/h", "metal": "aluminium"}, "Bring it to"),
    ],
)
def test_a_target_that_makes_no_sense_is_refused(texts: dict[str, str], label: str) -> None:
    with pytest.raises(InputError, match=f"^{label}: "):
        answer("warm-up", **(WARM | texts))


def test_steel_without_its_carbon_is_refused() -> None:
    with pytest.raises(InputError, match=r"^Carbon: steel is judged by it"):
        answer("preheat", metal="steel", thickness="12 mm")


@FEW
@given(st.floats(0.05, 40.0), st.floats(0.5, 90.0), st.floats(20.0, 400.0), st.floats(1.05, 2.0))
def test_more_heat_and_a_warmer_plate_cool_more_slowly(
    q: float, d: float, start: float, more: float
) -> None:
    def cools(heat: float, plate: float) -> float:
        got = answer(
            "cool-down", thickness=f"{d!r} mm", acetylene_flow="600 L/h", travel_speed="55 mm/min",
            heat_input=f"{heat!r} kJ/mm", plate_temperature=f"{plate!r} degC", rules="iso",
        )  # fmt: skip
        return float(got["results"]["cooling_time"]["value"])

    first = cools(q, start)
    assert cools(q * more, start) > first if q * more <= 50 else first > 0
    assert cools(q, start + 10.0) > first


@pytest.mark.parametrize("steel", ["ordinary", "quenched", "a514", "a709-70w"])
@pytest.mark.parametrize("rules", ["us", "iso"])
def test_the_limit_is_never_rounded_up_and_the_aim_lies_below(steel: str, rules: str) -> None:
    got = answer("flame-bend", steel=steel, pattern="line", light="sun", thickness="10 mm", rules=rules)[
        "results"
    ]
    shown = {name: float(got[name]["text"].split()[0]) for name in ("limit_temperature", "aim_temperature")}
    assert shown["limit_temperature"] <= got["limit_temperature"]["value"]
    assert shown["aim_temperature"] < shown["limit_temperature"]


def test_every_estimate_of_shrinkage_says_how_weak_it_is() -> None:
    got = answer(
        "flame-bend",
        steel="ordinary",
        pattern="line",
        light="sun",
        thickness="10 mm",
        weld_area="60 mm^2",
        leg="5 mm",
    )["results"]
    for name in ("butt_shrinkage", "fillet_shrinkage"):
        assert "Weak evidence" in got[name]["basis"]
    assert got["heat_shrinkage"]["low"] == 0


@FEW
@given(st.floats(40.0, 1640.0), st.floats(0.0, 300.0))
def test_a_hotter_steel_never_shows_a_cooler_color(celsius: float, more: float) -> None:
    first, hotter = colour_at(celsius + 273.15), colour_at(celsius + more + 273.15)
    if first is not None and hotter is not None:
        assert hotter.temperature >= first.temperature


def test_no_color_at_all_is_refused() -> None:
    with pytest.raises(InputError, match=r"^Temperature of the steel: "):
        answer("heat-colour")
