"""A caution beside a figure says what the figure says, and comes where the work calls for it."""

import re
from typing import Any

import pytest

from calc import answer

DGUV = {"welding": "7.5 m", "braze-welding": "7.5 m", "cutting": "10 m", "heating": "7.5 m"}
"""Level reach of sparks up to 3 m high, DGUV 100-500 ch. 2.26 annex 2, read."""
JOB = {"process": "welding", "metal": "low-carbon-steel", "coating": "none", "fuel": "acetylene", "thickness": "3 in"}


def signals(got: dict[str, Any]) -> dict[str, str]:
    return {one["id"]: one["text"] for one in got["cautions"]}


def cut_on(contents: str, **more: str) -> dict[str, Any]:
    return answer("job-sheet", **JOB | {"process": "cutting", "length": "12 in", "acetylene_contents": contents, **more})


@pytest.mark.parametrize("process", ["welding", "cutting"])
@pytest.mark.parametrize(("rules", "expected"), [("iso", DGUV), ("us", dict.fromkeys(DGUV, "35 ft"))])
def test_the_caution_clears_what_the_sheet_clears(process: str, rules: str, expected: dict[str, str]) -> None:
    """35 ft: 29 CFR 1910.252(a)(2)(vii), read in a copy."""
    job = JOB | {"process": process, "thickness": "1.5 mm" if process == "welding" else "10 mm", "length": "150 mm"}
    if process == "welding":
        job["joint"] = "square-butt"
    got = answer("job-sheet", rules=rules, **job)
    said = signals(got)["cutting-sparks" if process == "cutting" else "fire-near"]
    assert re.search(r"Clear ([\d.]+ \w+)", said)[1] == expected[process]  # type: ignore[index]
    assert got["results"]["clear_distance"]["text"].startswith(expected[process])


def test_a_plan_clears_the_farthest_of_its_exercises() -> None:
    """Welding 7.5 m and cutting 10 m by the German guidance: 10 m in both cautions."""
    got = answer(
        "class-plan", rules="iso", learners="8", benches="4", session_length="6 h", exercise_1="corner",
        exercise_2="cut",
    )  # fmt: skip
    said = signals(got)
    assert all("Clear 10 m" in said[name] for name in ("fire-near", "cutting-sparks"))


def test_a_hose_brings_the_hazards_of_its_gas() -> None:
    asked = {"bore": "3/16 in", "length": "100 ft", "flow": "30 cfh", "rules": "us"}
    said = signals(answer("hose-drop", gas="acetylene", gauge="15 psi", **asked))
    assert "never raise it past that to make up what a hose takes" in said["acetylene-limit"]
    assert "heavy-gas" in signals(answer("hose-drop", gas="propane", gauge="10 psi", **asked))


def test_a_gas_near_its_liquid_says_so() -> None:
    """At 0 °F propane turns liquid at 23.7 psi gauge (CoolProp): 23.3 psi is within 1 K of it, 10 psi is far."""
    asked = {"gas": "propane", "bore": "1/4 in", "length": "25 ft", "flow": "10 cfh", "temperature": "0 degF"}
    assert "liquid-holds-gauge" in signals(answer("hose-drop", gauge="23.3 psi", rules="us", **asked))
    assert "liquid-holds-gauge" not in signals(answer("hose-drop", gauge="10 psi", rules="us", **asked))


@pytest.mark.parametrize(("temperature", "cold"), [("0 degF", True), ("70 degF", False), ("90 degF", False)])
def test_a_cold_acetylene_cylinder_says_so(temperature: str, cold: bool) -> None:
    """Colder than the 70 °F that cylinders are filled at gives less; warmer does not."""
    got = answer(
        "hours-left", fuel="acetylene", orifice="#68", gauge="5 psi", fuel_contents="130 ft^3",
        cylinder_temperature=temperature, oxygen_cylinder_gauge="1500 psi", rules="us",
    )  # fmt: skip
    assert ("acetylene-cold" in signals(got)) is cold


def test_what_may_be_drawn_says_the_limit() -> None:
    assert "acetylene-limit" in signals(answer("draw-limit", flow="10 cfh", acetylene_contents="130 ft^3", rules="us"))


def test_a_draw_past_every_book_is_not_lit() -> None:
    """3 in of steel takes 9 to 20 ft³/h; 1/7 of 40 ft³ an hour is 5.7 ft³/h, of 300 ft³ 43 ft³/h (Manly 1916, read)."""
    over = cut_on("40 ft3")
    assert next(iter(over["results"])) == "first"
    assert over["results"]["first"]["text"].startswith("do not light")
    assert over["results"]["fuel_hours"]["value"] == 0
    assert over["results"]["ends_first"]["text"] == "acetylene"
    under = cut_on("130 ft3")["results"]
    assert "first" not in under
    assert under["fuel_hours"]["value"] > 1


@pytest.mark.parametrize(("learners", "benches", "alone"), [("30", "6", True), ("8", "4", True), ("6", "3", False)])
def test_more_than_one_adult_can_watch(learners: str, benches: str, alone: bool) -> None:
    """Alone with twelve at six benches: half the benches, so three; common practice, no source."""
    got = answer("class-plan", learners=learners, benches=benches, session_length="6 h", exercise_1="corner", rules="us")
    said = signals(got)
    assert ("one-adult" in said) is alone
    assert "extinguisher" in said["watcher-untrained"]


@pytest.mark.parametrize(("rules", "expected"), [("us", "248 °F"), ("iso", "120 °C")])
def test_aluminium_is_warmed_in_the_readers_unit(rules: str, expected: str) -> None:
    """120 °C for heat-treatable alloys, from memory; 120 x 1.8 + 32 = 248 °F."""
    got = answer("preheat", metal="aluminium", thickness="10 mm", rules=rules)
    assert any(f"heat-treatable alloys {expected} at most" in one["text"] for one in got["results"].values())


def test_the_oxygen_of_thin_steel_has_a_band_of_its_tip() -> None:
    """16 ga: Davies 0.14 bar (2.03 psi) at 1.2 and 2 mm; texts print 5 and 10 psi of oxygen for a small tip."""
    got = answer("job-sheet", rules="us", **JOB | {"thickness": "16 ga", "joint": "square-butt", "length": "12 in"})
    gauge = got["results"]["oxygen_gauge"]
    assert (gauge["low"], gauge["high"]) == pytest.approx((0.14e5 / 6894.757, 10), rel=1e-4)
