"""What a lesson cannot have used is refused; what is kept comes back as it was."""

import csv
import io
import json
import statistics
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.answer.answering import answer
from calc.ask.errors import InputError
from calc.bridge import run
from calc.class_plan.kept_lessons import MOST_LINES, kept, log_file, mean_factor

LESSON = {
    "fuel": "acetylene", "fuel_before": "118 lb", "fuel_after": "116 lb", "oxygen_before": "1500 psi",
    "oxygen_after": "1200 psi", "planned_fuel": "24 ft^3", "planned_oxygen": "40 ft^3", "day": "2026-11-20",
    "rules": "us",
}  # fmt: skip


@pytest.mark.parametrize(
    ("texts", "field", "says"),
    [
        ({"fuel_after": "118.5 lb"}, "fuel_after", "weighs more than before"),
        ({"fuel_after": "90 lb"}, "fuel_after", "more gas than a full one holds"),
        ({"fuel": "propane", "fuel_after": "90 lb"}, "fuel_after", "more gas than a full one holds"),
        ({"oxygen_after": "1510 psi"}, "oxygen_after", "more oxygen than before"),
        ({"oxygen_after": "1490 psi", "temperature_after": "30 degF"}, "oxygen_after", "more oxygen"),
    ],
)
def test_what_cannot_be_is_refused(texts: dict[str, str], field: str, says: str) -> None:
    with pytest.raises(InputError, match=says) as refused:
        answer("gas-log", **(LESSON | texts))
    (said,) = refused.value.listed()
    assert said["field"] == field
    assert " give " in said["message"]
    assert said["message"].endswith(".")


@given(factor=st.floats(0.2, 5.0), planned=st.floats(5.0, 200.0))
@settings(max_examples=40, deadline=None, derandomize=True)
def test_the_factor_follows_the_plan_and_its_own_factor(factor: float, planned: float) -> None:
    plain = answer("gas-log", **(LESSON | {"planned_fuel": f"{planned!r} ft^3"}))["results"]
    again = answer(
        "gas-log", **(LESSON | {"planned_fuel": f"{planned * factor!r} ft^3", "gas_factor": f"{factor!r}"})
    )["results"]
    assert again["fuel_factor"]["si"] == pytest.approx(plain["fuel_factor"]["si"], rel=1e-9)
    for got in (plain, again):
        known = (got["fuel_factor"]["si"], got["oxygen_factor"]["si"])
        assert got["next_factor"]["si"] == max(known)


def test_a_finer_scale_narrows_the_band() -> None:
    bands = []
    for division in ("1 lb", "0.5 lb", "0.1 lb"):
        got = answer("gas-log", **(LESSON | {"scale_division": division}))["results"]["fuel_used"]
        assert got["low"] <= got["value"] <= got["high"]
        bands.append(got["high"] - got["low"])
    assert bands[0] > bands[1] > bands[2] > 0


def test_the_file_reads_back_and_its_headings_carry_the_units() -> None:
    unplanned = {name: text for name, text in LESSON.items() if name != "planned_fuel"}
    lines = [LESSON, LESSON | {"day": "2026-11-27", "fuel_after": "115 lb"}, unplanned]
    rows = list(csv.reader(io.StringIO(log_file(lines, "us"))))
    heads, *body = rows
    assert [len(row) for row in rows] == [9] * 4
    assert heads[2] == "Fuel gas used [ft³ at 70 °F and 1 atm]"
    assert heads[6] == "Factor of the fuel gas [1]"
    assert [row[0] for row in body] == ["2026-11-20", "2026-11-27", "2026-11-20"]
    assert [float(row[2]) for row in body] == pytest.approx([2 * 14.7, 3 * 14.7, 2 * 14.7], rel=3e-3)
    assert [row[3] for row in body] == ["24", "24", ""]
    assert float(body[0][6]) == pytest.approx(2 * 14.7 / 24, rel=5e-3)
    assert body[2][6] == ""
    litres = next(csv.reader(io.StringIO(log_file(lines, "iso"))))
    assert litres[2] == "Fuel gas used [L at 15 °C and 1 atm]"


@given(st.lists(st.floats(110.0, 117.8), min_size=2, max_size=6))
@settings(max_examples=30, deadline=None, derandomize=True)
def test_mean_and_spread_are_those_of_the_standard_library(weights: list[float]) -> None:
    lessons = kept(
        [LESSON | {"fuel_after": f"{weight!r} lb", "oxygen_after": "1490 psi"} for weight in weights]
    )
    factors = [one.next for one in lessons if one.next is not None]
    got = mean_factor(lessons)
    assert got.count == len(factors) == len(weights)
    assert got.mean == pytest.approx(statistics.mean(factors), rel=1e-12)
    assert got.spread == pytest.approx(statistics.stdev(factors), rel=1e-9, abs=1e-12)


def _asked(lines: list[Any], **more: Any) -> dict[str, Any]:
    reply: dict[str, Any] = json.loads(run(json.dumps({"log": {"lines": lines, "rules": "us", **more}})))
    return reply


def test_what_a_device_kept_never_becomes_markup_and_hides_no_other_line() -> None:
    reply = _asked([LESSON | {"fuel": "<img src=x>"}, LESSON, LESSON | {"drawings": "x", "units": "y"}])
    assert "<img" not in reply["html"]
    assert reply["html"].count("data-line=") == 3
    assert reply["html"].count("not to be read") == 1
    assert "of 2 lessons" in reply["html"]


def test_a_log_that_cannot_be_used_gets_a_sentence() -> None:
    assert "errors" in _asked([LESSON | {"fuel_after": "300 lb"}], file=True)
    assert "at most" in _asked([LESSON] * (MOST_LINES + 1), file=True)["errors"][0]["message"]
    assert "errors" in _asked([3])
    assert "No lesson is kept" in _asked([])["html"]
