"""What a cut keeps for any plate, fuel, shape, purity and rule set."""

import re
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc import InputError, answer
from calc.ask.inputs import SHOWN_IN
from calc.declare.catalogue import calculators
from tests.properties.asked import texts_of

CUT = calculators()["cut-plate"]
MANY = settings(max_examples=60, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
HIGHEST_ACETYLENE = {"us": 15 * 6894.757293168, "iso": 1.5e5, "uk": 1.5e5}
"""29 CFR 1910.253(a)(2), read; ISO 3821 scope, read."""
BURNS = ("low-carbon-steel", "medium-carbon-steel", "low-alloy-steel")
PRINTED = ("acetylene", "propane", "methane")
STEEL = st.sampled_from(BURNS)
FUEL = st.sampled_from(PRINTED)
MILLIMETRES = st.floats(3.0, 152.0)
RULES = st.sampled_from(list(HIGHEST_ACETYLENE))


def answered(texts: dict[str, str]) -> tuple[dict[str, Any], InputError | None]:
    """What comes out, or the reason why nothing does."""
    try:
        return answer("cut-plate", **({"fuel": "acetylene", "shape": "straight"} | texts))["results"], None
    except InputError as refused:
        return {}, refused


@MANY
@given(texts=texts_of(CUT))
def test_it_answers_or_gives_a_reason_that_begins_with_the_label(texts: dict[str, str]) -> None:
    got, refused = answered(texts)
    if refused is None:
        assert texts["metal"] in BURNS
        assert texts.get("fuel", "acetylene") in PRINTED
        assert got
        return
    assert refused.message.startswith(f"{CUT.inputs[refused.field].label}: "), refused
    assert refused.message.endswith(".")
    assert len(re.findall(r"[.!?](?= |$)", refused.message)) == 1, refused
    assert len(refused.message) < 400


@MANY
@given(
    rules=RULES, shown_in=st.sampled_from(list(SHOWN_IN.options)), metal=STEEL, fuel=FUEL, thickness=MILLIMETRES,
    purity=st.floats(95.0, 100.0), length=st.floats(20.0, 9e4), pierces=st.integers(0, 1000),
)  # fmt: skip
def test_every_band_holds_its_figure(
    rules: str, shown_in: str, metal: str, fuel: str, thickness: float, purity: float, length: float, pierces: int
) -> None:  # fmt: skip
    got, refused = answered(
        {
            "rules": rules, "shown_in": shown_in, "metal": metal, "fuel": fuel, "thickness": f"{thickness} mm",
            "purity": f"{purity} %", "length": f"{length} mm", "pierces": str(pierces if thickness <= 50 else 0),
        }
    )  # fmt: skip
    assert refused is None, refused
    banded = [name for name, figure in got.items() if figure.get("low") is not None and "value" in figure]
    assert len(banded) >= 16, banded
    for name in banded:
        figure = got[name]
        assert figure["low"] <= figure["high"], name
        assert figure["low"] * (1 - 1e-9) <= figure["value"] <= figure["high"] * (1 + 1e-9), name


@MANY
@given(rules=RULES, metal=STEEL, thickness=MILLIMETRES, share=st.none() | st.floats(0.02, 1.0))
def test_acetylene_stays_below_its_limit_in_figure_and_band(
    rules: str, metal: str, thickness: float, share: float | None
) -> None:
    limit = HIGHEST_ACETYLENE[rules]
    texts = {
        "rules": rules,
        "metal": metal,
        "thickness": f"{thickness} mm",
        "length": "600 mm",
        "shown_in": "metric",
    }
    makers = {} if share is None else {"maker_fuel_gauge": f"{share * limit * (1 - 1e-9) / 1e5} bar"}
    got, refused = answered(texts | makers)
    assert refused is None, refused
    gauge = got["fuel_gauge"]
    assert gauge["si"] <= limit
    if share is None:
        assert gauge["high"] * 1e5 <= limit
    shown = re.match(r"([\d.]+) bar", gauge["text"])
    assert shown, gauge["text"]
    assert float(shown[1]) * 1e5 <= limit


@MANY
@given(
    rules=RULES, thickness=MILLIMETRES, share=st.floats(1.0001, 4.0), metal=STEEL
)  # fmt: skip
def test_a_print_above_the_limit_of_acetylene_is_refused(
    rules: str, thickness: float, share: float, metal: str
) -> None:
    gauge = share * HIGHEST_ACETYLENE[rules]
    _, refused = answered(
        {
            "metal": metal, "thickness": f"{thickness} mm", "length": "600 mm", "rules": rules,
            "maker_fuel_gauge": f"{min(gauge, 4.1e5) / 1e5} bar",
        }
    )  # fmt: skip
    assert refused is not None
    assert refused.field == "maker_fuel_gauge"


@MANY
@given(thickness=MILLIMETRES, fuel=FUEL, purity=st.floats(95.0, 99.4), length=st.floats(20.0, 9e4))
def test_impure_oxygen_never_makes_a_cut_faster_or_cheaper(
    thickness: float, fuel: str, purity: float, length: float
) -> None:
    asked = {
        "metal": "low-carbon-steel", "thickness": f"{thickness} mm", "fuel": fuel, "length": f"{length} mm", "rules": "iso",
    }  # fmt: skip
    pure, _ = answered(asked)
    got, _ = answered(asked | {"purity": f"{purity} %"})
    assert got["cutting_speed"]["si"] < pure["cutting_speed"]["si"]
    for name in ("cut_time", "cutting_oxygen_flow", "oxygen_used", "fuel_used"):
        assert got[name]["si"] > pure[name]["si"], name
    assert got["fuel_flow"]["si"] == pure["fuel_flow"]["si"]


@MANY
@given(thickness=st.floats(3.0, 50.0), fuel=FUEL, pierces=st.integers(1, 1000))
def test_piercing_takes_time_and_gas(thickness: float, fuel: str, pierces: int) -> None:
    asked = {
        "metal": "low-carbon-steel", "thickness": f"{thickness} mm", "fuel": fuel, "length": "600 mm", "rules": "iso",
    }  # fmt: skip
    plain, _ = answered(asked)
    got, _ = answered(asked | {"pierces": str(pierces)})
    for name in ("cut_time", "oxygen_used", "fuel_used"):
        assert got[name]["si"] > plain[name]["si"], name
    assert got["iron_burnt"]["si"] == plain["iron_burnt"]["si"], "what a pierced hole loses is not counted"
