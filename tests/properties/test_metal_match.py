"""Whatever was tried: a contradicted metal is never named, and the gravest of those left counts.

The order of hazards is typed here, and what contradicts what is read from the
table's text by a reader of its own.
"""

import csv
import re
from importlib.resources import files
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from calc import answer

MILDEST_FIRST = (
    "low-carbon-steel", "low-alloy-steel", "medium-carbon-steel", "cast-iron", "aluminium", "copper", "zinc", "bronze", "brass",
    "nickel", "stainless-steel", "lead", "titanium", "magnesium", "beryllium-copper",
)  # fmt: skip
"""Our own order: common practice."""
NOT_HERE = {"titanium", "magnesium", "beryllium-copper"}
"""They burn or poison for life: no recipe. 29 CFR 1910.252(c)(8), read, for the last."""
NAMES = {
    "low-carbon-steel": "low-carbon steel", "low-alloy-steel": "low-alloy steel", "medium-carbon-steel": "carbon steel that hardens",
    "cast-iron": "cast iron", "aluminium": "aluminium", "copper": "copper", "zinc": "zinc", "bronze": "bronze",
    "brass": "brass", "nickel": "nickel", "stainless-steel": "stainless steel", "lead": "lead", "titanium": "titanium",
    "magnesium": "magnesium alloy", "beryllium-copper": "beryllium copper",
}  # fmt: skip
SHOWN = {
    "magnet": ("sticks", "weak", "no"),
    "colour": ("grey-white", "silvery", "dull-grey", "yellow", "red"),
    "rust": ("seen", "none"),
    "spark": ("none", "few-short", "long", "bursts", "red-bursts", "white"),
    "file": ("easily", "bites", "skates"),
    "chip": ("curl", "bits"),
    "origin": ("plumbing", "special"),
}


def lines(name: str) -> list[dict[str, str]]:
    text = files("calc").joinpath(f"data/{name}.csv").read_text(encoding="utf-8")
    return list(csv.DictReader(text.splitlines()))


FITS = {(row["metal"], row["test"]): row["fits"].split("|") for row in lines("metal-tests")}
FINDINGS = st.fixed_dictionaries({}, optional={test: st.sampled_from(seen) for test, seen in SHOWN.items()})


def still_left(findings: dict[str, str]) -> set[str]:
    return {
        metal
        for metal in MILDEST_FIRST
        if all(seen in FITS.get((metal, test), [seen]) for test, seen in findings.items())
    }


def results(findings: dict[str, str], **more: str) -> dict[str, Any]:
    texts = {"magnet": "not-tried", "coating": "none"} | findings | more
    return {name: got["text"] for name, got in answer("metal-match", **texts)["results"].items()}


def plain(text: str) -> str:
    """A name without what stands in brackets."""
    return re.sub(r" \([^)]*\)", "", text)


def named(text: str) -> set[str]:
    """Metals whose name stands in the names of a text, before its first colon."""
    parts = plain(text).split(":")[0].replace(" or ", ", ").split(", ")
    return {metal for metal, name in NAMES.items() if name in parts}


def gravity(got: dict[str, Any]) -> int:
    """Place of what is reckoned with in the order of hazards; unknown is the gravest."""
    if got["treat_as"].startswith("unknown"):
        return len(MILDEST_FIRST)
    (metal,) = named(got["treat_as"])
    return MILDEST_FIRST.index(metal)


def test_every_metal_and_every_finding_is_in_the_table() -> None:
    assert [row["metal"] for row in lines("metal-kinds")] == list(MILDEST_FIRST)
    for (metal, test), seen in FITS.items():
        assert metal in MILDEST_FIRST
        assert set(seen) <= set(SHOWN[test]), (metal, test)


@given(FINDINGS)
def test_a_contradicted_metal_is_never_named(findings: dict[str, str]) -> None:
    got = results(findings)
    out = set(MILDEST_FIRST) - still_left(findings)
    tried = set(findings) - {"origin"}
    if tried:
        assert not named(got["best"]) & out
        assert not named(got["treat_as"]) & out
    table = answer("metal-match", **{"magnet": "not-tried", "coating": "none"} | findings)["tables"][0]
    stand = {plain(row[0]): row[1] for row in table["rows"]}
    assert {metal for metal, name in NAMES.items() if stand[name] == "out"} == out


@given(FINDINGS)
def test_all_that_are_left_are_named_or_it_is_unknown(findings: dict[str, str]) -> None:
    got, left = results(findings), still_left(findings)
    tried = set(findings) - {"origin"}
    if tried and 0 < len(left) <= 3:
        assert named(got["best"]) == left
        assert gravity(got) == max(map(MILDEST_FIRST.index, left))
    else:
        assert got["best"].startswith("cannot be told")
        assert "Treat it as unknown" in got["best"]
        assert "do not heat it" in got["treat_as"]
        assert got["treat_as"].startswith("unknown")
        assert "nothing yet" in got["process_words"]
        assert "flame" not in got


@given(
    st.sampled_from(["none", "cadmium", "unknown"]), st.sampled_from(["not-tried", "plumbing", "special"])
)
def test_nothing_tried_is_unknown(coating: str, origin: str) -> None:
    nothing = dict.fromkeys(("colour", "rust", "spark", "file", "chip"), "not-tried")
    got = results(nothing | {"origin": origin}, coating=coating)
    assert got["best"].startswith("cannot be told: nothing was tried")
    assert "do not heat it" in got["treat_as"]


@given(FINDINGS, st.sampled_from(list(SHOWN)), st.data())
def test_one_test_more_gives_no_milder_hazard_unless_it_contradicts_the_graver(
    findings: dict[str, str], test: str, data: Any
) -> None:
    before = {name: seen for name, seen in findings.items() if name != test}
    after = before | {test: data.draw(st.sampled_from(SHOWN[test]))}
    first, second = results(before), results(after)
    if gravity(second) < gravity(first):
        left = still_left(after)
        assert all(MILDEST_FIRST.index(metal) <= gravity(second) for metal in left)
        graver = {metal for metal in still_left(before) if MILDEST_FIRST.index(metal) > gravity(second)}
        assert not graver & left


@given(FINDINGS, st.integers(50, 1200))
def test_no_recipe_while_something_left_is_not_for_this_torch(findings: dict[str, str], grams: int) -> None:
    for more in ({}, {"mass": f"{grams} g", "displaced": "100 mL"}):
        texts = {"magnet": "not-tried", "coating": "none"} | findings | more
        got = answer("metal-match", **texts)
        left = {plain(row[0]) for row in got["tables"][0]["rows"] if row[1] == "left"}
        banned = left & {NAMES[metal] for metal in NOT_HERE}
        if banned or not left or len(left) > 3:
            assert not {"flame", "filler", "flux"} & set(got["results"])
        else:
            assert got["results"]["flame"]["text"]


@given(FINDINGS, st.floats(1.6, 1.9))
def test_what_weighs_like_magnesium_is_never_called_anything_milder(
    findings: dict[str, str], density: float
) -> None:
    """1.738 g/cm³: textbook, memory. A reading 8 % off either way."""
    got = results(findings, mass=f"{100 * density:.3f} g", displaced="100 mL")
    assert gravity(got) >= MILDEST_FIRST.index("magnesium")
    assert "flame" not in got
