"""An outfit goes into any calculator as if typed, comes back out of its file, and breaks nothing."""

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import InputError
from calc.answer.answering import answer
from calc.bridge import SORRY, run
from calc.declare import Choice
from calc.declare.catalogue import calculators
from calc.outfit.file import NOT_YET, OUTFIT, fill, outfit_file, outfit_texts, takes_outfit, unchecked_texts
from calc.show.form import block
from tests.properties.asked import texts_of

MINE = calculators()[OUTFIT]
CLEARED = {"history": "known", "flashback": "none"}
PARTS = {
    "torch_type": "equal-pressure",
    "fuel": "acetylene",
    "hose_bore": "5/16 in",
    "hose_length": "50 ft",
    "oxygen_water_volume": "20 L",
    "oxygen_full_gauge": "2015 psi",
    "acetylene_full_contents": "145 ft^3",
    "acetylene_tare": "88 lb",
}
TIPS = {
    "tip_1_label": "blue handle",
    "tip_1_use": "welding",
    "tip_1_orifice": "#68",
    "tip_1_oxygen_gauge": "4 psi",
    "tip_1_fuel_gauge": "3 psi",
    "tip_2_use": "welding",
    "tip_2_orifice": "#54",
    "tip_3_use": "cutting",
    "tip_3_orifice": "1.6 mm",
    "tip_4_use": "welding",
    "tip_4_orifice": "#63",
}
WHOLE = CLEARED | PARTS | TIPS
TAKERS = [each for each in calculators().values() if takes_outfit(each)]
ANY_JSON = st.recursive(
    st.none() | st.booleans() | st.floats() | st.integers() | st.text(max_size=70),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=20), inner, max_size=3),
    max_leaves=8,
)


@pytest.mark.parametrize("calculator", calculators().values(), ids=list(calculators()))
def test_an_outfit_key_names_an_input_of_the_outfit_that_is_of_its_kind(calculator: Any) -> None:
    for name, asked in calculator.inputs.items():
        if asked.outfit:
            mine = MINE.inputs[asked.outfit]
            assert type(mine) is type(asked), name
            if isinstance(asked, Choice):
                assert set(mine.options) & set(asked.options), name  # type: ignore[union-attr]


def test_the_outfit_itself_asks_for_nothing_that_must_be_given() -> None:
    assert all(asked.optional and asked.example is None for asked in MINE.inputs.values())
    assert not takes_outfit(MINE)


WELD = {"process": "welding", "metal": "low-carbon-steel", "fuel": "acetylene"}


@pytest.mark.parametrize("calculator", TAKERS, ids=lambda each: each.id)
def test_what_is_filled_in_is_what_was_typed(calculator: Any) -> None:
    got = fill(calculator.id, {}, WHOLE)
    assert got["texts"]
    for name, text in got["texts"].items():
        key = calculator.inputs[name].outfit
        assert text in ([PARTS[key]] if key else TIPS.values()), name
    assert got["said"][0].startswith("From your outfit: ")


@pytest.mark.parametrize("calculator", TAKERS, ids=lambda each: each.id)
def test_what_is_filled_in_is_worked_with(calculator: Any) -> None:
    texts = {
        n: a.example["us"] if isinstance(a.example, dict) else a.example
        for n, a in calculator.inputs.items()
        if a.example
    }
    got = fill(calculator.id, texts, WHOLE)
    try:
        inputs = answer(calculator.id, **(texts | got["texts"]))["inputs"]
    except InputError as refused:
        for error in refused.listed():
            assert error["message"].startswith(calculator.inputs[error["field"]].label)
        return
    for name, text in got["texts"].items():
        assert inputs[name]["text"].startswith(
            (text, getattr(calculator.inputs[name], "options", {}).get(text, "\0"))
        )


@pytest.mark.parametrize("calculator", calculators().values(), ids=list(calculators()))
def test_the_page_has_a_button_where_an_outfit_can_fill_anything(calculator: Any) -> None:
    part = "keep" if calculator.id == OUTFIT else "use" if takes_outfit(calculator) else None
    form = block(calculator.id)
    assert (f'data-outfit="{part}"' in form) if part else ("data-outfit" not in form)


@pytest.mark.parametrize(
    ("thickness", "hole", "name"),
    [
        # FAA AC 43.13-1B, from memory: 0.031 to 0.065 in #68; 0.065 to 0.125 in #63; 0.188 to 0.25 in #54.
        pytest.param("16 ga", "#68", "blue handle", id="faa-ac43-13-1b-memory-68"),
        pytest.param("0.1 in", "#63", "tip 4", id="faa-ac43-13-1b-memory-63"),
        pytest.param("0.22 in", "#54", "tip 2", id="faa-ac43-13-1b-memory-54"),
    ],
)
def test_the_tip_is_the_one_that_is_printed_for_the_thickness(thickness: str, hole: str, name: str) -> None:
    got = fill("job-sheet", WELD | {"thickness": thickness, "joint": "outside-corner"}, WHOLE)
    assert got["texts"]["maker_orifice"] == hole
    assert f"Tip: {name}, hole {hole}" in got["said"][0]


def test_a_tip_brings_what_its_maker_prints_and_another_brings_nothing_of_it() -> None:
    got = fill("job-sheet", WELD | {"thickness": "16 ga"}, WHOLE)["texts"]
    assert (got["maker_oxygen_gauge"], got["maker_acetylene_gauge"]) == ("4 psi", "3 psi")
    assert "maker_oxygen_gauge" not in fill("job-sheet", WELD | {"thickness": "0.1 in"}, WHOLE)["texts"]


def test_no_tip_is_better_than_a_wrong_one_and_the_size_that_lacks_is_said() -> None:
    few = {name: text for name, text in WHOLE.items() if not name.startswith(("tip_2", "tip_4"))}
    got = fill("job-sheet", WELD | {"thickness": "0.219 in"}, few)  # the middle of 0.188 to 0.25 in
    assert not [name for name in got["texts"] if name.startswith("maker")]
    lacking = got["said"][-1]
    assert "0.055 in, number drill 54" in lacking, "FAA AC 43.13-1B, from memory"
    assert "blue handle" in lacking


def test_a_cutting_tip_never_welds() -> None:
    got = fill(
        "job-sheet", WELD | {"thickness": "16 ga"}, CLEARED | {"tip_1_use": "cutting", "tip_1_orifice": "#68"}
    )
    assert "maker_orifice" not in got["texts"]
    assert "none for welding" in got["said"][-1]


@pytest.mark.parametrize(
    ("texts", "outfit", "why"),
    [
        ({}, WHOLE, "give the thickness first"),
        ({"thickness": "rhubarb"}, WHOLE, "give the thickness first"),
        ({"thickness": "16 ga"}, PARTS, "names none"),
        ({"thickness": "16 ga", "torch_type": "injector"}, TIPS, "injector"),
        ({"thickness": "16 ga"}, TIPS | {"torch_type": "injector"}, "injector"),
    ],
)
def test_why_no_tip_is_taken_is_said(texts: dict[str, str], outfit: dict[str, str], why: str) -> None:
    got = fill("job-sheet", WELD | texts, outfit)
    assert "maker_orifice" not in got["texts"]
    assert any("No tip is taken" in said and why in said for said in got["said"])


def test_the_fuel_pressure_goes_with_the_gas_of_the_outfit() -> None:
    got = fill("job-sheet", WELD | {"thickness": "16 ga"}, WHOLE | {"fuel": "propane"})
    assert "maker_acetylene_gauge" not in got["texts"]
    assert got["texts"]["maker_fuel_gauge"] == "3 psi", "the outfit's own gas, on a sheet that takes it over"


def test_what_is_acetylene_goes_into_no_other_fuel() -> None:
    assert "full_contents" in fill("hours-left", {}, PARTS)["texts"]
    assert "full_contents" not in fill("hours-left", {}, PARTS | {"fuel": "propane"})["texts"]


@pytest.mark.parametrize(
    "past",
    [{}, {"history": "known"}, {"flashback": "none"}, {"history": "unknown", "flashback": "none"},
     {"history": "known", "flashback": "unchecked"}],
)  # fmt: skip
def test_an_outfit_that_must_not_be_lit_says_so_wherever_it_is_used(past: dict[str, str]) -> None:
    assert NOT_YET in fill("hose-drop", {}, PARTS | past)["said"]


def test_a_cleared_outfit_does_not() -> None:
    assert NOT_YET not in fill("hose-drop", {}, PARTS | CLEARED)["said"]


def test_a_bad_text_is_given_and_refused_beside_its_field() -> None:
    got = fill("hose-drop", {}, {"hose_bore": "rhubarb"})
    assert got["texts"] == {"bore": "rhubarb"}
    with pytest.raises(InputError, match=r"^Bore of the hose: "):
        answer("hose-volume", length="25 ft", **got["texts"])


@given(texts=texts_of(MINE))
def test_a_file_gives_back_what_went_in_but_the_day_and_the_rules(texts: dict[str, str]) -> None:
    try:
        file = outfit_file(texts)
    except InputError:
        return
    back = outfit_texts(file, texts["rules"])
    assert back == {
        name: text for name, text in texts.items() if name not in ("rules", "shown_in", "today")
    }
    assert outfit_file(back | {"rules": texts["rules"]}) == file
    assert len(file) < 10_000


HOSTILE = [
    "", " ", "null", "[]", "{}", "0", "NaN", '"outfit"', "{", "[" * 19_000, '{"a":' * 5000, "9" * 19_999, "x" * 1_000_000,
    '{"kind": "oxyfuel-benchbook-outfit"}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": []}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"hose_bore": 5}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"hose_bore": NaN}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"hose_bore": {"a": "1/4 in"}}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"hose_bore": "25 in"}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"hose_bore": "<b>1/4 in</b>"}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"tip_1_label": "<img src=x onerror=alert(1)>"}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"__proto__": "x"}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"rules": "us"}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"today": "2026-11-25"}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"hoses_made": "2026-02-30"}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"tip_1_fuel_gauge": "40 psi"}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": 2, "texts": {}}',
    '{"kind": "oxyfuel-benchbook-outfit", "version": "1", "texts": {}}',
    '{"kind": "another-kind", "version": 1, "texts": {}}',
]  # fmt: skip


@pytest.mark.parametrize("file", HOSTILE, ids=lambda file: file[:60] + str(len(file)))
def test_a_hostile_or_foreign_file_gets_one_sentence(file: str) -> None:
    reply = json.loads(run(json.dumps({"outfit": {"open": file, "rules": "us"}})))
    (error,) = reply["errors"]
    assert error["message"].startswith("The file: ")
    assert error["message"].endswith(".")
    assert len(error["message"]) < 300


@given(file=st.text(max_size=300) | ANY_JSON.map(json.dumps))
def test_whatever_is_opened_gets_one_sentence_or_its_texts(file: str) -> None:
    with pytest.raises(InputError, match=r"^The file: .*\.$"):
        outfit_texts(file, "us")


@given(
    inner=st.dictionaries(st.sampled_from(list(MINE.inputs)) | st.text(max_size=9), ANY_JSON, max_size=5)
)
def test_a_file_of_the_right_form_with_anything_in_it_gets_one_sentence_or_its_texts(inner: Any) -> None:
    file = json.dumps({"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": inner})
    try:
        assert unchecked_texts(file) == {name: text for name, text in inner.items() if text.strip()}
        outfit_texts(file, "iso")
    except InputError as refused:
        assert refused.listed()[0]["message"].startswith("The file: ")  # noqa: PT017 - either way is right


@pytest.mark.parametrize("calculator", TAKERS, ids=lambda each: each.id)
@given(data=st.data())
def test_whatever_stands_in_form_and_outfit_nothing_breaks(calculator: Any, data: Any) -> None:
    names = st.sampled_from([*calculator.inputs, "rules", "shown_in"]) | st.text(max_size=9)
    own = st.sampled_from(list(MINE.inputs)) | st.text(max_size=9)
    values = ANY_JSON | st.sampled_from(
        ["16 ga", "#68", "1/4 in", "cutting", "welding", "propane", "5 psi", "1e300 ft", "-3 mm"]
    )
    texts = data.draw(st.dictionaries(names, values, max_size=6))
    outfit = data.draw(st.dictionaries(own, values, max_size=6))
    try:
        got = fill(calculator.id, texts, outfit)
    except InputError as refused:
        assert refused.field == "rules"  # noqa: PT017 - either way is right
        return
    assert set(got["texts"]) <= set(calculator.inputs)
    assert all(isinstance(text, str) and text for text in got["texts"].values())
    assert got["said"]
    assert all(said.endswith(".") for said in got["said"])


@given(request=ANY_JSON)
@pytest.mark.parametrize("door", ["outfit", "fill"])
def test_a_broken_request_gets_a_sentence(door: str, request: Any) -> None:
    reply = json.loads(run(json.dumps({door: request})))
    assert reply["errors"][0]["message"]


def test_the_door_fills_keeps_and_opens() -> None:
    file = json.loads(
        run(json.dumps({"outfit": {"keep": WHOLE | {"rules": "us", "today": "2026-11-25"}}}))
    )["text"]
    assert json.loads(file)["version"] == 1
    assert json.loads(run(json.dumps({"outfit": {"open": file, "rules": "us"}}))) == {"texts": WHOLE}
    asked = {"calculator": "hose-volume", "texts": {}, "outfit": file}
    assert json.loads(run(json.dumps({"fill": asked})))["texts"] == {"bore": "5/16 in", "length": "50 ft"}
    refused = json.loads(run(json.dumps({"fill": asked | {"outfit": "x"}})))
    assert refused["errors"][0]["message"].startswith("The file: ")
    assert SORRY not in json.dumps(refused)


def test_what_is_kept_under_one_rule_set_is_held_to_the_limit_of_another() -> None:
    file = outfit_file({"tip_1_fuel_gauge": "1.2 bar", "rules": "iso"})
    assert outfit_texts(file, "iso")
    with pytest.raises(InputError, match="acetylene is never used above"):
        outfit_texts(file, "us")
