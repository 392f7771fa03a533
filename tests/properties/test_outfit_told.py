"""What is said when an outfit fills a form, and which files are opened: each sentence whole, each limit at its edge."""

import json
import re

import pytest

from calc import InputError
from calc.ask.reading import LONGEST
from calc.declare.catalogue import calculators
from calc.outfit.file import (
    LONGEST_FILE,
    NO_OUTFIT,
    NOT_YET,
    fill,
    outfit_file,
    takes_outfit,
    unchecked_texts,
)

CLEARED = {"history": "known", "flashback": "none"}
JOB = {"process": "welding", "metal": "low-carbon-steel", "thickness": "16 ga", "joint": "outside-corner"}
TIP = {"tip_3_label": "blue", "tip_3_use": "welding", "tip_3_orifice": "#68", "tip_3_fuel_gauge": "3 psi", "tip_3_oxygen_gauge": "4 psi"}


def file(texts: object, **more: object) -> str:
    return json.dumps({"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": texts} | more)


def refused(text: str) -> str:
    with pytest.raises(InputError) as error:
        unchecked_texts(text)
    assert error.value.field == "file"
    return error.value.message


def test_a_file_is_opened_up_to_its_longest_and_to_a_hundred_brackets() -> None:
    """20,000 signs: spaces behind the text count. Brackets stand twice in the form itself."""
    good = file({"hose_bore": "1/4 in"})
    assert unchecked_texts(good.ljust(LONGEST_FILE)) == {"hose_bore": "1/4 in"}
    assert refused(good.ljust(LONGEST_FILE + 1)) == f"The file: {NO_OUTFIT}"
    assert unchecked_texts(file({"hose_bore": "{" * 49 + "[" * 49})) == {"hose_bore": "{" * 49 + "[" * 49}
    assert refused(file({"hose_bore": "{" * 50 + "[" * 49})) == f"The file: {NO_OUTFIT}"


@pytest.mark.parametrize("text", ["", "[]", "5", '"x"', "null", '{"kind": "other", "version": 1, "texts": {}}', file([]), file(None), file({"hose_bore": 5}), file({"hose_bore": None})])
def test_what_has_not_the_form_of_an_outfit_is_refused(text: str) -> None:
    assert refused(text) == f"The file: {NO_OUTFIT}"


def test_another_form_and_an_input_that_is_not_asked_are_named() -> None:
    for version, said in ((2, "2"), (0, "0"), ("1", "1"), (None, "None"), ("x" * 30, "x" * 20)):
        if version == "1":
            continue  # as text it looks the same and is not
        assert refused(file({}, version=version)) == (
            f"The file: it has the form “{said}”, which this release does not know; nothing is changed."
        )
    assert refused(file({"y" * 50: "1"})) == f"The file: it names “{'y' * 40}”, which is not asked; nothing is changed."
    assert refused(file({"today": "2026-11-25"})) == "The file: it names “today”, which is not asked; nothing is changed."


def test_a_file_is_written_with_its_form_and_without_the_day() -> None:
    made = json.loads(outfit_file({"hose_bore": "1/4 in", "today": "2026-11-25", "rules": "us"}))
    assert made == {"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"hose_bore": "1/4 in"}}
    assert unchecked_texts(file({"hose_bore": "1/4 in", "hose_length": "  "})) == {"hose_bore": "1/4 in"}


def test_what_is_taken_is_said_in_the_order_of_the_form() -> None:
    got = fill("hose-volume", {}, CLEARED | {"hose_length": " 50 ft ", "hose_bore": "1/4 in"})
    inputs = calculators()["hose-volume"].inputs
    names = [name for name in inputs if name in got["texts"]]
    assert got["texts"] == {"bore": "1/4 in", "length": "50 ft"}
    assert got["said"] == ["From your outfit: " + "; ".join(f"{inputs[name].label}: {got['texts'][name]}" for name in names) + "."]


@pytest.mark.parametrize(
    ("past", "lit"),
    [(CLEARED, True), ({"history": "known", "flashback": "checked"}, True), ({"history": "known", "flashback": "yes"}, False), ({"flashback": "none"}, False),
     ({"history": "unknown", "flashback": "none"}, False), ({}, False)],
)  # fmt: skip
def test_an_outfit_whose_past_is_not_known_is_not_lit(past: dict[str, str], lit: bool) -> None:
    said = fill("hose-volume", {}, past | {"hose_bore": "1/4 in"})["said"]
    assert (said[0] == NOT_YET) == (not lit)
    assert len(said) == 2 - lit


def test_nothing_that_is_asked_is_said_so() -> None:
    assert fill("hose-volume", {}, {"acetylene_tare": "88 lb"}) == {"texts": {}, "said": ["Your outfit has nothing that is asked here."]}
    assert fill("hose-volume", {}, {"hose_bore": " "})["texts"] == {}
    edge = "1/4 in".rjust(LONGEST)
    assert fill("hose-volume", {}, {"hose_bore": edge})["texts"] == {"bore": "1/4 in"}
    assert fill("hose-volume", {}, {"hose_bore": "x" * LONGEST})["texts"] == {"bore": "x" * LONGEST}
    assert fill("hose-volume", {}, {"hose_bore": "x" * (LONGEST + 1)})["texts"] == {}
    assert fill("hose-volume", {}, {"hose_bore": 5})["texts"] == {}


def test_the_tip_is_told_with_its_hole_and_brings_both_gauges() -> None:
    got = fill("job-sheet", JOB, CLEARED | TIP | {"fuel": "acetylene"})
    assert got["said"][0].endswith("; Tip: blue, hole #68.")
    assert {name: text for name, text in got["texts"].items() if name.startswith(("maker", "tip"))} == {
        "maker_orifice": "#68", "maker_oxygen_gauge": "4 psi", "maker_acetylene_gauge": "3 psi", "tip_label": "blue",
    }  # fmt: skip


def test_the_tip_that_lacks_is_told_with_its_band_and_the_nearest_there_is() -> None:
    """The hole wanted lies in its own band, and the drill is one of the two that are next to it: #66 is 0.033 in, #67 0.032 in."""
    got = fill("job-sheet", JOB, CLEARED | {"tip_1_use": "welding", "tip_1_orifice": "0.1 in", "tip_2_use": "welding", "tip_2_orifice": "0.09 in", "tip_3_use": "cutting", "tip_3_orifice": "#68"})  # fmt: skip
    (lacking,) = [said for said in got["said"] if said.startswith("No tip is taken")]
    told = re.fullmatch(
        r"No tip is taken: you have none for welding with the hole wanted here \(([\d.]+) in, number drill (\d+), in print ([\d.]+) in "
        r"to ([\d.]+) in\); the nearest you have is tip 2, 0.09 in\.",
        lacking,
    )
    assert told
    hole, drill, low, high = map(float, told.groups())
    assert low < hole < high
    assert 0.032 <= hole <= 0.033
    assert drill in (66, 67)
    none = fill("job-sheet", JOB, CLEARED | {"tip_3_use": "cutting", "tip_3_orifice": "#68"})["said"][-1]
    assert "the nearest you have" not in none
    assert none.endswith(").")


def test_only_what_asks_for_a_part_of_the_outfit_takes_one() -> None:
    taking = {each.id for each in calculators().values() if takes_outfit(each)}
    assert {"job-sheet", "hose-volume", "oxygen-left"} <= taking
    assert not {"my-outfit", "sheet-thickness", "licence-key"} & taking
