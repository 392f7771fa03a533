"""What the gate keeps whatever it is told: no way round a refusal, and no hazard that helps."""

import re
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

import calc.calculators  # noqa: F401 - declares them
from calc import answer
from calc.answering import computed
from calc.declare import CALCULATORS, RULE_SETS
from calc.sheets.gate import COATINGS, METALS, PROCESSES, gate, metal_verdict
from calc.show.answer import answer_html
from tests.properties.asked import texts_of

MANY = settings(max_examples=300, deadline=None, derandomize=True)

OUTCOMES = ("Nothing here was refused", "First do this, then ask again", "Refused: no flame on this")
"""Mildest first."""
FORBIDDEN = {
    "part": ("container", "tire", "strut", "unknown"),
    "metal": ("magnesium", "titanium", "beryllium-copper", "unknown"),
    "coating": ("cadmium", "unknown"),
    "behind": ("fixed",),
}
GRAVER = {
    "part": [("open-sheet", "closed-hollow"), ("vented-hollow", "closed-hollow")]
    + [("closed-hollow", worst) for worst in ("container", "tire", "strut", "unknown")],
    "metal": [
        (metal, worst)
        for metal in ("low-carbon-steel", "cast-iron", "copper", "brass", "aluminium", "lead", "stainless-steel")
        for worst in ("magnesium", "titanium", "beryllium-copper", "unknown")
    ],
    "coating": [("none", some) for some in ("zinc", "chromium", "lead-paint", "paint", "oil")]
    + [(some, worst) for some in ("zinc", "chromium", "lead-paint", "paint", "oil") for worst in ("cadmium", "unknown")],
    "stripped": [("yes", "no")],
    "behind": [("clear", "movable"), ("clear", "not-looked"), ("movable", "fixed"), ("not-looked", "fixed")],
}  # fmt: skip
"""One thing put in the place of another that is no graver."""


def asked(name: str) -> st.SearchStrategy[str]:
    return st.sampled_from(list(CALCULATORS["may-i-heat"].inputs[name].options))  # type: ignore[union-attr]


EVERYTHING = st.fixed_dictionaries(
    {name: asked(name) for name in ("process", "part", "metal", "coating", "stripped", "behind")}
    | {"rules": st.sampled_from(list(RULE_SETS))}
)


@MANY
@given(texts=EVERYTHING, data=st.data())
def test_nothing_opens_what_is_refused(texts: dict[str, str], data: Any) -> None:
    what = data.draw(st.sampled_from(list(FORBIDDEN)))
    texts |= {what: data.draw(st.sampled_from(FORBIDDEN[what]))}
    got = answer("may-i-heat", **texts)
    assert got["results"]["outcome"]["text"] == OUTCOMES[2]
    assert got["cautions"][0]["signal"] == "DANGER"
    assert "do_first" not in got["results"]
    if what in ("metal", "coating"):
        got_metal = metal_verdict(texts["process"], texts["metal"], texts["coating"], texts["stripped"])
        assert got_metal.outcome == "refused"


@MANY
@given(data=st.data())
def test_the_outcome_is_one_of_three_and_never_the_word(data: Any) -> None:
    texts = data.draw(texts_of(CALCULATORS["may-i-heat"]))
    got, *_ = computed(CALCULATORS["may-i-heat"], texts)
    assert got.results.outcome.words in OUTCOMES
    signals = [caution.signal for caution in got.cautions]
    assert signals == sorted(signals, key=("DANGER", "WARNING", "CAUTION", "NOTICE").index)
    html = answer_html(answer("may-i-heat", **texts))
    assert not re.search(r"\b(?:un)?safe", html, re.IGNORECASE)


@MANY
@given(texts=EVERYTHING, data=st.data())
def test_a_hazard_more_never_makes_it_milder(texts: dict[str, str], data: Any) -> None:
    what = data.draw(st.sampled_from(list(GRAVER)))
    milder, graver = data.draw(st.sampled_from(GRAVER[what]))
    before, after = (gate(**(texts | {what: option})) for option in (milder, graver))
    assert OUTCOMES.index(after.text) >= OUTCOMES.index(before.text)
    kept = {(reason.asked, reason.id) for reason in before.reasons if reason.asked not in (what, "coating")}
    assert kept <= {(reason.asked, reason.id) for reason in after.reasons}


@MANY
@given(texts=EVERYTHING)
def test_all_hazards_are_told_with_refusals_first_and_one_order_each(texts: dict[str, str]) -> None:
    got = gate(**texts)
    ranks = [reason.outcome != "refused" for reason in got.reasons]
    assert ranks == sorted(ranks)
    for refusing in (True, False):
        gravity = [reason.gravity for reason in got.reasons if (reason.outcome == "refused") == refusing]
        assert gravity == sorted(gravity, reverse=True)
    assert len({(reason.asked, reason.id) for reason in got.reasons}) == len(got.reasons)
    assert all(reason.order for reason in got.reasons)
    assert not re.search(r"[{}]", "".join(reason.order for reason in (*got.reasons, *got.holds)))


@MANY
@given(
    process=st.sampled_from(list(PROCESSES)),
    coating=st.sampled_from(list(COATINGS)),
    stripped=st.sampled_from(["yes", "no", None]),
    rules=st.sampled_from(list(RULE_SETS)),
    metal=st.sampled_from([*METALS, "galvanised-steel"]),
)
def test_metal_alone_is_never_milder_or_graver_than_on_an_open_sheet(
    process: str, coating: str, stripped: str | None, rules: str, metal: str
) -> None:
    whole = gate(process, "open-sheet", metal, coating, stripped, "clear", rules)
    alone = metal_verdict(process, metal, coating, stripped)
    assert alone.outcome == whole.outcome
    assert alone.reasons == whole.reasons
