"""What a setting keeps for any work, metal, thickness, fuel and rule set."""

import math
import re
from collections.abc import Callable
from dataclasses import astuple, fields
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc import InputError, answer
from calc.declare import RULE_SETS
from calc.declare.catalogue import calculators
from calc.trade.fields import FUELS
from calc.trade.tips.settings import METALS, PROCESSES, setting
from calc.trade.tips.welding_torch import Setting
from calc.values.figures import Figure
from tests.properties.asked import texts_of

MANY = settings(
    max_examples=300, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow]
)
PASCAL = {"psi": 6894.757293168, "bar": 1e5, "kPa": 1e3}
HIGHEST_ACETYLENE = {"us": 15 * PASCAL["psi"], "iso": 1.5e5, "uk": 1.5e5}
"""29 CFR 1910.253(a)(2), read; ISO 3821 scope, read."""
LABELS = {
    "fuel": "Fuel gas: ", "metal": "Metal: ", "thickness": "Thickness of the metal: ", "torch_type": "Torch: ",
    "maker_fuel_gauge": "Fuel gas pressure its maker prints: ",
}  # fmt: skip
OTHER_METALS = ("bronze", "nickel", "lead", "zinc", "magnesium", "titanium", "unknown")

THICKNESS = st.one_of(st.floats(1e-4, 0.4), st.floats(4e-4, 0.012))
MAKERS = st.none() | st.floats(1e3, 6e5)


def asked(call: Callable[..., Any], *given_: Any, **texts: Any) -> tuple[Any, InputError | None]:
    """What comes out, or the reason why nothing does."""
    try:
        return call(*given_, **texts), None
    except InputError as refused:
        return None, refused


def figures(found: Setting) -> list[Figure]:
    return [getattr(found, part.name) for part in fields(found)]


@MANY
@given(
    process=st.sampled_from(list(PROCESSES)), metal=st.sampled_from([*METALS, *OTHER_METALS]), thickness=THICKNESS,
    fuel=st.sampled_from(list(FUELS)), torch_type=st.sampled_from([None, "equal-pressure", "injector"]),
    orifice=st.none() | st.floats(2e-4, 6e-3), oxygen=MAKERS, gas=MAKERS, rules=st.sampled_from(list(RULE_SETS)),
    heat=st.none() | st.floats(100.0, 30e3),
)  # fmt: skip
def test_a_setting_answers_or_gives_a_reason(
    process: str, metal: str, thickness: float, fuel: str, torch_type: str | None, orifice: float | None,
    oxygen: float | None, gas: float | None, rules: str, heat: float | None,
) -> None:  # fmt: skip
    found, refused = asked(
        setting, process=process, metal=metal, thickness=thickness, fuel=fuel, torch_type=torch_type, orifice=orifice,
        oxygen_gauge=oxygen, fuel_gauge=gas, rules=rules, heat=heat,
    )  # fmt: skip
    if refused:
        assert refused.message.startswith(LABELS[refused.field]), refused
        assert refused.message.endswith(".")
        assert len(refused.message) < 400
        return
    for figure in figures(found):
        assert figure.value is not None or figure.words
        assert all(math.isfinite(n) for n in astuple(figure) if isinstance(n, float))
        assert all(n > 0 for n in astuple(figure) if isinstance(n, float))
        if figure.value is not None:
            assert figure.low is None or figure.low <= figure.value * (1 + 1e-9)
            assert figure.high is None or figure.value <= figure.high * (1 + 1e-9)
    if fuel == "acetylene":
        for pressure in (found.fuel_gauge.value, found.fuel_gauge.low, found.fuel_gauge.high):
            assert pressure is None or pressure <= HIGHEST_ACETYLENE[rules] * (1 + 1e-9)
    for ours, makers in (
        (found.orifice, orifice), (found.oxygen_gauge, oxygen), (found.fuel_gauge, gas)
    ):  # fmt: skip
        if makers is not None:
            assert ours.value == makers
            assert "maker" in ours.basis


@pytest.mark.parametrize("rules", list(RULE_SETS))
@pytest.mark.parametrize("process", list(PROCESSES))
def test_acetylene_above_its_limit_is_refused_whatever_the_maker_prints(process: str, rules: str) -> None:
    limit = HIGHEST_ACETYLENE[rules]
    given_: dict[str, Any] = {
        "process": process, "metal": "low-carbon-steel", "thickness": 0.006, "fuel": "acetylene", "torch_type": None,
        "orifice": None, "oxygen_gauge": None, "rules": rules,
    }  # fmt: skip
    setting(**given_, fuel_gauge=limit)
    with pytest.raises(
        InputError, match=r"^Fuel gas pressure its maker prints: acetylene is never used above"
    ):
        setting(**given_, fuel_gauge=limit * 1.001)


@MANY
@given(data=st.data())
def test_no_acetylene_gauge_is_printed_above_the_limit(data: Any) -> None:
    texts = data.draw(texts_of(calculators()["tip-choice"])) | {"fuel": "acetylene"}
    try:
        got = answer("tip-choice", **texts)
    except InputError:
        return
    result = got["results"]["fuel_gauge"]
    for text in (result["text"], result["band"]):
        for number in re.findall(r"[\d.]+", text):
            assert float(number) * PASCAL[result["unit"]] <= HIGHEST_ACETYLENE[got["rules"]] * (1 + 1e-9)


@MANY
@given(data=st.data(), more=st.floats(1.0, 4.0))
def test_thicker_metal_never_takes_a_smaller_tip(data: Any, more: float) -> None:
    process = data.draw(st.sampled_from(["welding", "brazing", "soldering", "braze-welding"]))
    metal = data.draw(st.sampled_from(list(METALS)))
    thickness = data.draw(st.floats(8e-4, 9e-3 / more))
    fuel = data.draw(st.sampled_from(["acetylene", "propane"])) if process == "brazing" else "acetylene"

    def hole(metres: float) -> float:
        found = setting(
            process=process,
            metal=metal,
            thickness=metres,
            fuel=fuel,
            torch_type=None,
            orifice=None,
            oxygen_gauge=None,
            fuel_gauge=None,
            rules="us",
        )
        assert found.orifice.value is not None
        return found.orifice.value

    thin, too_thin = asked(hole, thickness)
    thick, too_thick = asked(hole, thickness * more)
    for refused in (too_thin, too_thick):
        assert refused is None or refused.field == "thickness"
    assert None in (thin, thick) or thick >= thin * (1 - 1e-9)


@MANY
@given(
    process=st.sampled_from(list(PROCESSES)), fuel=st.sampled_from(list(FUELS)), own=st.floats(2e-4, 6e-3),
    rules=st.sampled_from(list(RULE_SETS)),
)  # fmt: skip
def test_something_is_said_of_every_tip(process: str, fuel: str, own: float, rules: str) -> None:
    texts = {"heat": "3 kW"} if process == "heating" else {"thickness": "4 mm", "metal": "low-carbon-steel"}
    given_ = {"process": process, "fuel": fuel, "own_orifice": f"{own * 1000} mm", "rules": rules}
    got, refused = asked(answer, "tip-choice", **given_, **texts)
    if refused:
        assert refused.field == "fuel"
        return
    assert re.match(r"(right|smaller|larger|one hole|\d+ holes)", got["results"]["yours"]["text"])
