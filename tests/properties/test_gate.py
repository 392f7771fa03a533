"""What the gate keeps whatever it is told: no way round a refusal, and no hazard that helps."""

import itertools
import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import answer
from calc.answer.answering import computed
from calc.data.tables import table
from calc.declare import RULE_SETS
from calc.declare.catalogue import calculators
from calc.show.answer import answer_html
from calc.trade.safety import fumes
from calc.trade.safety.gate import Situation, Verdict, gate, metal_verdict
from calc.trade.safety.gate_fields import COATINGS, HELD, METALS, OPTIONS, PROCESSES, SEVERAL
from tests.properties.asked import texts_of

MANY = settings(max_examples=300, deadline=None, derandomize=True)

OUTCOMES = ("Nothing here was refused", "First do this, then ask again", "Refused: no flame on this")
"""Mildest first."""
FORBIDDEN = {
    "part": ("container", "tire", "strut", "panel", "unknown"),
    "duty": ("carries", "under-load", "hardened", "pressure", "unknown"),
    "place": ("small-space",),
    "around": ("sprinklers-off", "vapor", "stock"),
    "second_coating": ("cadmium", "unknown"),
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
    "permit": [("yes", "no")],
    "vehicle_ready": [("yes", "no")],
    "people": [("protected", "unprotected"), ("protected", "alone")],
    "air": [(better, "open") for better in ("hood", "air-line", "respirator", "fan")]
    + [("hood", worse) for worse in ("air-line", "respirator", "fan")],
    "around": [("none", worst) for worst in ("duct", "sprinklers-off", "vapor", "stock", "not-looked")],
    "duty": [("none", worst) for worst in ("carries", "under-load", "hardened", "pressure", "unknown")],
    "held": [("never", worst) for worst in ("water", "exhaust", "frame", "fuel", "gas", "drain", "unknown")]
    + [(milder, "unknown") for milder in ("water", "exhaust", "frame", "fuel")],
    "place": [(site, "small-space") for site in ("shop", "building", "wall", "roof", "outdoors", "vehicle")],
    "behind": [("clear", "movable"), ("clear", "not-looked"), ("movable", "fixed"), ("not-looked", "fixed")],
}  # fmt: skip
"""One thing put in the place of another that is no graver."""


KEPT = {"held": ("never", "water-drained", "frame-bare")}
"""Contents of a hollow with which anything may pass: all that a reader can name as gone, or never there."""


def asked(name: str) -> st.SearchStrategy[str]:
    return st.sampled_from(list(calculators()["may-i-heat"].inputs[name].options))  # type: ignore[union-attr]


EVERYTHING = st.fixed_dictionaries(
    {name: asked(name) for name in calculators()["may-i-heat"].inputs} | {"rules": st.sampled_from(list(RULE_SETS))}
)


def judged(texts: dict[str, str]) -> Verdict:
    """The verdict on a whole set of texts."""
    given = {name: text for name, text in texts.items() if name not in (*SEVERAL, "rules")}
    return gate(Situation(**given, coatings=tuple(texts[name] for name in SEVERAL)), texts["rules"])  # type: ignore[arg-type]


@MANY
@given(texts=EVERYTHING, data=st.data())
def test_nothing_opens_what_is_refused(texts: dict[str, str], data: Any) -> None:
    what = data.draw(st.sampled_from(list(FORBIDDEN)))
    texts |= {what: data.draw(st.sampled_from(FORBIDDEN[what]))}
    if texts["process"] == "cutting":
        texts |= {"process": "welding"}
    if what == "second_coating":
        texts |= {"coating": "paint"}
    got = answer("may-i-heat", **texts)
    assert got["results"]["outcome"]["text"] == OUTCOMES[2]
    assert got["cautions"][0]["signal"] == "DANGER"
    assert "do_first" not in got["results"]
    if what in ("metal", "coating"):
        got_metal = metal_verdict(
            texts["process"], texts["metal"], texts["coating"], texts["stripped"], texts["rules"]
        )
        assert got_metal.outcome == "refused"


@MANY
@given(data=st.data())
def test_the_outcome_is_one_of_three_and_never_the_word(data: Any) -> None:
    texts = data.draw(texts_of(calculators()["may-i-heat"]))
    got, *_ = computed(calculators()["may-i-heat"], texts)
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
    before, after = (judged(texts | {what: option}) for option in (milder, graver))
    assert OUTCOMES.index(after.text) >= OUTCOMES.index(before.text)
    bound = {what, "coating", "metal", "held"} if what in ("air", "part", "place") else {what, "coating"}
    kept = {(reason.asked, reason.id) for reason in before.reasons if reason.asked not in bound}
    assert kept <= {(reason.asked, reason.id) for reason in after.reasons}


@MANY
@given(texts=EVERYTHING)
def test_all_hazards_are_told_with_refusals_first_and_one_order_each(texts: dict[str, str]) -> None:
    got = judged(texts)
    ranks = [reason.outcome != "refused" for reason in got.reasons]
    assert ranks == sorted(ranks)
    for refusing in (True, False):
        gravity = [reason.gravity for reason in got.reasons if (reason.outcome == "refused") == refusing]
        assert gravity == sorted(gravity, reverse=True)
    assert len({(reason.asked, reason.id, reason.order) for reason in got.reasons}) == len(got.reasons)
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
    mildest = {
        "process": "welding" if process == "cutting" else process, "part": "open-sheet", "held": "never", "duty": "none", "place": "shop", "permit": "yes",
        "vehicle_ready": "yes", "around": "none", "behind": "clear", "people": "protected", "air": "hood",
        "metal": metal, "stripped": stripped, "coating": coating, "second_coating": "none",
        "third_coating": "none", "rules": rules,
    }  # fmt: skip
    whole = judged(mildest)  # type: ignore[arg-type]
    alone = metal_verdict("welding" if process == "cutting" else process, metal, coating, stripped, rules)
    assert alone.outcome == whole.outcome
    assert alone.reasons == whole.reasons


def test_no_combination_passes_with_a_hollow_whose_contents_are_unknown() -> None:
    """Every combination that passes, of part, contents, place, people and air.

    Duty, surroundings and what is behind stand for themselves: no reason joins them to another input, so that they
    are walked alone. A reason that joins more would fail here first.
    """
    joined = {condition.split(":")[0] for row in table("gate-reasons") for condition in row.given.split()}
    assert joined == {"stripped", "place", "air", "process", "permit", "vehicle_ready"}
    passed: set[str] = set()
    for part, held, place, people, air in itertools.product(
        ("vented-hollow", "closed-hollow"), (*HELD, None), OPTIONS["place"], OPTIONS["people"], OPTIONS["air"]
    ):
        got = gate(
            Situation(
                part=part, held=held, place=place, duty="none", around="none", behind="clear", people=people, air=air,
                permit="yes", vehicle_ready="yes", process="cutting", metal="low-carbon-steel", coatings=(),
                stripped=None,
            ),
            "us",
        )  # fmt: skip
        if got.outcome == "none":
            passed.add(str(held))
    assert passed == set(KEPT["held"])


def test_every_row_is_reached_and_no_metal_of_the_rules_passes_without_its_air() -> None:
    """29 CFR 1910.252 (c)(6), (c)(7), 1926.353 (c): lead, zinc and chromium ask for more than an open door."""
    passing = set()
    for metal, coating, place, air, stripped in itertools.product(
        METALS, COATINGS, OPTIONS["place"], OPTIONS["air"], ("yes", "no")
    ):
        got = gate(
            Situation(
                part="open-sheet", held=None, duty="none", around="none", behind="clear", people="protected",
                permit="yes", vehicle_ready="yes", process="welding", metal=metal, coatings=(coating,),
                stripped=stripped, place=place, air=air,
            ),
            "us",
        )  # fmt: skip
        if got.outcome == "none":
            passing.add((metal, coating, place, air, stripped))
    assert passing
    for metal, coating, place, air, stripped in passing:
        indoors = place != "outdoors"
        assert place != "small-space"
        assert coating == "none" or stripped == "yes"
        if metal in ("lead", "bronze") or coating == "lead-paint":
            assert air in (("hood", "air-line") if indoors else ("hood", "air-line", "respirator"))
        if (metal in ("zinc", "brass") or coating == "zinc") and indoors:
            assert air == "hood"
        if (metal == "stainless-steel" or coating == "chromium") and indoors:
            assert air in ("hood", "air-line", "fan")


PLACES = {"indoors": "shop", "outdoors": "outdoors", "confined": "small-space"}
MEASURES = {"hood": r"\bhood\b", "fan": r"\bfan\b|ventilation", "respirator": r"\brespirator\b"}


@pytest.mark.parametrize("place", ["indoors", "outdoors"])
@pytest.mark.parametrize("metal", fumes.options("metal"))
@pytest.mark.parametrize("coating", fumes.options("coating"))
def test_the_page_on_air_asks_no_less_than_the_gate(place: str, metal: str, coating: str) -> None:
    """29 CFR 1910.252 (c), 1926.353 (c), 1926.354 (c): whichever page is asked, the same fume asks for the same."""
    hall = {"room": "20000 ft^3", "ceiling": "20 ft", "welders": "1", "filler": "none", "flux": "none"}
    got = answer("ventilation", **hall, place=place, metal=metal, coating=coating, rules="us")["results"]
    told = " ".join(got[name]["text"] for name in ("fume_measure", "before_heat") if name in got)
    bare = "steel-with-zinc" if metal == "galvanised-steel" else metal
    verdict = gate(
        Situation(
            process="heating", part="open-sheet", held=None, metal="low-carbon-steel" if bare == "steel-with-zinc" else metal,
            coatings=(coating, "zinc" if bare == "steel-with-zinc" else None), stripped="yes", duty="none", place=PLACES[place],
            permit="yes", vehicle_ready="yes", around="none", behind="clear", people="protected",
            air="open" if place == "outdoors" else "large",
        ),
        "us",
    )  # fmt: skip
    for reason in verdict.reasons:
        if reason.asked not in ("metal", "coating"):
            continue
        if reason.outcome == "refused":
            assert reason.order in told, reason.id
        else:
            wanted = [words for words in MEASURES.values() if re.search(words, reason.order)]
            assert any(re.search(words, told) for words in wanted), (reason.order, told)


@pytest.mark.parametrize(("first", "second"), list(itertools.permutations(OPTIONS["place"], 2)))
def test_of_two_places_the_stricter_holds(first: str, second: str) -> None:
    """29 CFR 1910.252 (b)(4), (c)(4): a pit stays a confined space with a vehicle over it, whichever is named first."""
    bare = {
        "process": "welding", "part": "open-sheet", "duty": "none", "metal": "low-carbon-steel", "coating": "none",
        "around": "none", "behind": "clear", "people": "protected", "air": "hood", "rules": "us",
    }  # fmt: skip
    for yes in ("yes", "no"):
        said = {"permit": yes, "vehicle_ready": yes}
        alone = [answer("may-i-heat", **bare, **said, place=place) for place in (first, second)]
        both = answer("may-i-heat", **bare, **said, place=first, also=second, also_permit=yes, also_ready=yes)
        told = [OUTCOMES.index(got["results"]["outcome"]["text"]) for got in (*alone, both)]
        assert told[2] == max(told[:2])
        assert "small-space" not in (first, second) or told[2] == 2
        if "fire_watch" in both["results"]:
            assert both["results"]["fire_watch"]["si"] == (7200 if "roof" in (first, second) else 3600)


@pytest.mark.parametrize(("metal", "air"), list(itertools.product(("zinc", "lead"), ("large", "fan"))))
def test_the_air_of_a_room_does_not_count_outdoors(metal: str, air: str) -> None:
    """29 CFR 1910.252 (c)(6)(ii), (c)(7)(iii): in a room these metals want a hood, and there is no hall outdoors."""
    got = answer(
        "may-i-heat", process="welding", part="open-sheet", duty="none", metal=metal, coating="none", place="outdoors",
        around="none", behind="clear", people="protected", air=air, rules="us",
    )  # fmt: skip
    assert got["results"]["outcome"]["text"] == OUTCOMES[1]
    assert "hood" in got["results"]["do_first"]["text"]
