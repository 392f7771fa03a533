"""What must never come out, whatever goes in: the rules that keep people whole.

Each rule is tied to the names of inputs and results, so a new calculator that
uses a name is held to its rule without a line here.
"""

import re
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from calc import InputError
from calc.answer.answering import computed
from calc.declare import RULE_SETS, Calculator
from calc.declare.catalogue import calculators
from tests.properties.asked import texts_of

PSI = 6894.757293168  # pint's own psi
HIGHEST_ACETYLENE = {"us": 15 * PSI, "iso": 1.5e5, "uk": 1.5e5}
"""29 CFR 1910.253(a)(2); ISO 3821 scope (uk as BS EN ISO 3821)."""
HOTTEST = {"us": 273.15 + (125 - 32) / 1.8, "iso": 323.15, "uk": 323.15}
"""Common rule and label, from memory."""
LEAST_WELDING_SHADE = {"us": ((0.003175, 4), (0.0127, 5), (9.9, 6))}
"""29 CFR 1910.133(a)(5)."""
CLEAR = {"us": 10.668}
"""35 ft, 29 CFR 1910.252(a)(2)(iii)."""
WATCH = {"us": 3600.0, "uk": 3600.0}
"""NFPA 51B-2019; UK Joint Code 10th edition."""

EVERY = pytest.mark.parametrize("calculator", calculators().values(), ids=list(calculators()))
MANY = settings(
    max_examples=60, deadline=None, derandomize=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)  # fmt: skip

_STEEL = {"metal": "low-carbon-steel", "coating": "none"}
JOBS = (
    _STEEL | {"process": "welding", "fuel": "acetylene", "thickness": "2 mm", "joint": "outside-corner"},
    _STEEL | {"process": "braze-welding", "fuel": "acetylene", "thickness": "6 mm", "joint": "single-v"},
    *(_STEEL | {"process": "brazing", "fuel": fuel, "thickness": "3 mm", "braze_service": "general", "form": "sleeve",
                "diameter": "22 mm"} for fuel in ("acetylene", "propane")),
    *(_STEEL | {"process": "soldering", "metal": "copper", "fuel": fuel, "tube_service": "drinking-water"}
      for fuel in ("acetylene", "methane")),
    *(_STEEL | {"process": "cutting", "fuel": fuel, "thickness": "25 mm", "pierces": "2"}
      for fuel in ("acetylene", "propane", "methane")),
    *(_STEEL | {"process": "heating", "fuel": fuel, "thickness": "10 mm", "length": "150 mm", "heat": "straighten",
                "heat_wanted": "3 kW"}
      for fuel in ("acetylene", "propane")),
)  # fmt: skip
CLASSES = tuple(
    {"start": "18:30", "sheet_size": "1000 mm x 2000 mm", "plate_size": "24 in x 48 in", "session_length": length,
     "exercise_1": one, "exercise_2": two, "exercise_3": three, "exercise_4": four, "tries_1": "1", "tries_2": "2"}
    for length, one, two, three, four in (
        ("6 h", "corner", "braze", "cut", "bend"), ("9 h", "bend", "solder", "flame", "lap"),
        ("12 h", "cut", "bend", "braze-weld", "tee"),
    )
)  # fmt: skip
ANSWERED = {
    "job-sheet": st.sampled_from(JOBS),
    "cut-plate": st.just({"metal": "low-carbon-steel", "shape": "straight"}),
    "class-plan": st.sampled_from(CLASSES),
}
"""What is held fast so that most draws are answered: these calculators refuse most combinations."""


def signals(got: Any) -> set[str]:
    return {caution.signal for caution in got.cautions}


@EVERY
@MANY
@given(data=st.data())
def test_no_rule_of_the_bench_is_broken(calculator: Calculator, data: Any) -> None:
    texts = data.draw(texts_of(calculator)) | data.draw(ANSWERED.get(calculator.id, st.just({})))
    try:
        got, taken, _, rules = computed(calculator, texts)
    except InputError:
        return
    given_si = {name: t.si for name, t in taken.items() if t is not None}
    given_results = {name: getattr(got.results, name) for name in calculator.results}
    shown = {name: figure for name, figure in given_results.items() if figure is not None}

    for name, figure in shown.items():
        burns = given_si.get("fuel", "acetylene" if name.startswith("acetylene") else "")
        gauge = name.startswith(("acetylene_gauge", "fuel_gauge"))
        if gauge and burns == "acetylene" and figure.value is not None:
            assert figure.value <= HIGHEST_ACETYLENE[rules] * (1 + 1e-9), name
            assert figure.high is None or figure.high <= HIGHEST_ACETYLENE[rules] * (1 + 1e-9)
        if name == "clear_distance" and rules in CLEAR:
            assert figure.value >= CLEAR[rules] * (1 - 1e-9)
        if name == "fire_watch" and rules in WATCH:
            assert figure.value >= WATCH[rules] * (1 - 1e-9)
        if name.startswith("purge") and name.endswith("time"):
            assert figure.value >= 10.0
    for name, value in given_si.items():
        if name in ("temperature", "cylinder_temperature") and isinstance(value, float):
            cylinder = "oxygen_left" in calculator.function.__name__ or "cylinder" in name
            if cylinder or calculator.id in ("acetylene-left", "liquid-fuel-left"):
                assert value <= HOTTEST[rules] + 1e-6

    draw = shown.get("draw_share")
    if draw is not None and draw.value is not None:
        per_hour = draw.value * 3600
        picked = 1 / 15 if given_si.get("duty") == "continuous" else 1 / 10
        if per_hour > picked * (1 + 1e-9):
            assert signals(got) & {"WARNING", "DANGER"}
        if per_hour > 1 / 7 * (1 + 1e-9):
            assert "DANGER" in signals(got)

    shade = shown.get("shade_minimum")
    welding = given_si.get("process", "welding") == "welding"
    if shade is not None and rules == "us" and "thickness" in given_si and welding:
        thickness = given_si["thickness"]
        least = next(n for below, n in LEAST_WELDING_SHADE["us"] if thickness < below - 1e-12)
        assert shade.value >= least


@EVERY
@MANY
@given(data=st.data())
def test_a_purge_is_five_hose_volumes(calculator: Calculator, data: Any) -> None:
    if not {"purge_volume", "hose_volume"} <= set(calculator.results):
        return
    texts = data.draw(texts_of(calculator))
    try:
        got, *_ = computed(calculator, texts)
    except InputError:
        assume(False)
        return
    assert got.results.purge_volume.value >= 5 * got.results.hose_volume.value * (1 - 1e-9)


@EVERY
@pytest.mark.parametrize("rules", RULE_SETS)
def test_no_text_calls_anything_safe(calculator: Calculator, rules: str) -> None:
    from calc.answer.answering import answer  # noqa: PLC0415
    from calc.show.answer import answer_html  # noqa: PLC0415
    from tests.properties.test_declarations import examples  # noqa: PLC0415

    got = answer(calculator.id, **examples(calculator, rules))
    html = answer_html(got | {"sources": []})  # a book may be called what it likes
    assert not re.search(r"\b(is|are|it's|this is|now) safe\b|\bsafely?\b", html, re.IGNORECASE)
