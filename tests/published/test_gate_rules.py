"""Verdicts of the gate that a rule, named by its paragraph, demands."""

import pytest

from calc.trade.safety.gate import Situation, room_words
from calc.trade.safety.gate import gate as judge
from tests.published.test_gate import FIRST, NONE, REFUSED, gate, text, whole


def case(rule: str, outcome: str, says: str = "", **changed: str) -> object:
    given = " ".join(changed.values()) or "the planter box"
    return pytest.param(outcome, says, changed, id=f"{given}: {outcome} [{rule}]")


R, F, N = REFUSED, FIRST, NONE
HOLLOW = {"part": "vented-hollow"}


@pytest.mark.parametrize(
    ("outcome", "says", "changed"),
    [
        # 29 CFR 1926.352 (i): hollow structures that held anything toxic or flammable are filled with water, or
        # cleaned, ventilated and tested. 29 CFR 1910.252 (a)(3)(i): used containers, and their pipes, likewise.
        case("1926.352(i)", R, "fuel", **HOLLOW, held="fuel", process="cutting"),
        case("1926.352(i)", R, "gas", **HOLLOW, held="gas", process="cutting"),
        case("1926.352(i)", R, "Brake", **HOLLOW, held="hydraulic"),
        case("1926.352(i)", R, "Drain", **HOLLOW, held="drain", process="cutting"),
        case("1926.352(i)", R, "chemical", **HOLLOW, held="chemical", process="heating"),
        case("1926.352(i); refrigerant from memory", R, "Refrigerant", **HOLLOW, held="refrigerant", process="brazing"),
        case("1926.352(i)", R, "Unknown contents", **HOLLOW, held="unknown"),
        case("1926.352(i)", R, "Unknown contents", part="closed-hollow", held="unknown"),
        case("1926.352(i)", R, "fuel", part="closed-hollow", held="fuel"),
        case("1926.352(i)", R, "Exhaust", **HOLLOW, held="exhaust", process="cutting"),
        case("1926.352(i)", R, "Exhaust", part="closed-hollow", held="exhaust"),
        case("1926.352(j)", F, "water", **HOLLOW, held="water", process="soldering", metal="copper"),
        case("1926.352(j)", N, "", **HOLLOW, held="water-drained", process="soldering", metal="copper"),
        case("1926.352(j), 1910.252(a)(3)(ii)", F, "Hollow section", part="closed-hollow", held="never"),
        case("1926.352(j), 1910.252(a)(3)(ii)", N, "", **HOLLOW, held="never"),
        case("HSE vehicle repair pages", F, "vehicle", **HOLLOW, held="frame"),
        case("HSE vehicle repair pages", N, "", **HOLLOW, held="frame-bare"),
        case("1910.252(a)(3)(i)", R, "Drum", part="container", process="soldering"),
        # 29 CFR 1910.252 (a)(2)(vi): prohibited areas.
        case("1910.252(a)(2)(vi)(B)", R, "Sprinklers", around="sprinklers-off"),
        case("1910.252(a)(2)(vi)(C)", R, "in the air", around="vapor"),
        case("1926.352(c)", R, "in the air", around="vapor", place="outdoors"),
        case("1910.252(a)(2)(vi)(D)", R, "lights easily", around="stock"),
        case("1910.252(a)(2)(vi)(A)", F, "not set up", place="building", permit="no"),
        case("1910.252(a)(2)(iv)", F, "Roof", place="roof", permit="no"),
        case("1910.252(a)(2)(iv)", F, "Wall", place="wall", permit="no"),
        case("1910.252(a)(2)(iv)", N, "", place="building", permit="yes"),
        case("1910.252(a)(2)(iv)", F, "not looked", around="not-looked"),
        case("1910.252(a)(2)(viii)", F, "Duct", around="duct"),
        case("1910.252(a)(2)(x)", N, "", place="wall", permit="yes"),
        case("1910.252(a)(2)(xi)", R, "covering", part="panel"),
        case("1910.252(a)(1)(iii)", R, "stays there", behind="fixed"),
        case("1910.252(a)(2)(vii)", F, "behind", behind="movable"),
        case("1910.252(a)(2)(iii)(A)(4)", F, "not looked", behind="not-looked"),
        # 29 CFR 1910.252 (b)(4), (c)(4): confined spaces.
        case("1910.252(b)(4), (c)(4)", R, "small space", place="small-space"),
        case("1910.252(b)(4), (c)(4)", R, "small space", place="small-space", air="air-line"),
        # 29 CFR 1910.252 (c)(6): zinc. Indoors a hood as in (c)(3).
        case("1910.252(c)(6)(ii)", F, "Zinc, without", metal="zinc", air="open"),
        case("1910.252(c)(6)(ii)", F, "Zinc, without", metal="zinc", air="respirator"),
        case("1910.252(c)(6)(ii)", N, "", metal="zinc", air="hood"),
        case("1910.252(c)(6)", N, "", metal="zinc", air="open", place="outdoors"),
        case("1910.252(c)(6)(ii)", F, "Brass", metal="brass", air="fan", process="brazing"),
        case("1910.252(c)(6)(ii)", N, "", metal="brass", air="hood", process="brazing"),
        case("1910.252(c)(6)(ii)", F, "taken off, without a hood", coating="zinc", stripped="yes", air="open"),
        # 29 CFR 1910.252 (c)(7)(iii): lead, other than as an impurity.
        case("1910.252(c)(7)(iii)", F, "Lead, without", metal="lead", air="open"),
        case("1910.252(c)(7)(iii)", F, "Lead, without", metal="lead", air="respirator"),
        case("1910.252(c)(7)(iii)", N, "", metal="lead", air="air-line"),
        case("1910.252(c)(7)(iii)", F, "Lead, without a respirator", metal="lead", air="open", place="outdoors"),
        case("1910.252(c)(7)(iii)", N, "", metal="lead", air="respirator", place="outdoors"),
        case("1910.252(c)(7)(iii)", F, "Bronze", metal="bronze", air="respirator"),
        case("1910.252(c)(7)(iii)", F, "Bronze", metal="bronze", air="open", place="outdoors"),
        case("1910.252(c)(7)(iii)", F, "Lead paint, taken off", coating="lead-paint", stripped="yes", air="open"),
        case("1926.354(c)(2)", F, "respirator", coating="lead-paint", stripped="yes", air="open", place="outdoors"),
        case("1926.354(c)(2)", N, "", coating="lead-paint", stripped="yes", air="respirator", place="outdoors"),
        case("1910.252(c)(7)(iii), bystanders", F, "People", coating="lead-paint", stripped="yes", people="unprotected"),
        # 29 CFR 1926.353 (c)(1)(iv): chromium; 1926.354 (c): toxic coatings.
        case("1926.353(c)(1)(iv)", F, "Chromium", coating="chromium", stripped="yes", air="open"),
        case("1926.354(c)(2)", F, "Chromium", coating="chromium", stripped="yes", air="open", place="outdoors"),
        case("1926.353(c)(1)(iv)", F, "Stainless", metal="stainless-steel", air="open"),
        case("1926.353(c)(1)(iv)", N, "", metal="stainless-steel", air="fan"),
        case("1910.252(b)(2)(iii), 1926.353(c)(4)", F, "People", people="unprotected"),
        case("1926.354(a)", R, "Unknown paint", coating="zinc", stripped="yes", second_coating="unknown"),
        case("1910.252(c)(9)(i)", R, "Cadmium", coating="paint", stripped="yes", second_coating="cadmium"),
        case("1926.354(c)(1)", F, "Lead paint", coating="zinc", stripped="no", second_coating="lead-paint"),
        case("1926.354(c)(1)", F, "Lead paint", coating="oil", stripped="no", second_coating="zinc", third_coating="lead-paint"),
        # What no federal rule names, common practice.
        case("practice", R, "Part under load", duty="under-load", process="cutting"),
        case("practice; Mich. R 408.17235(2) for rims", R, "carries", duty="carries"),
        case("practice", R, "Hardened", duty="hardened", process="heating"),
        case("practice", R, "pressure", duty="pressure", process="brazing"),
        case("practice", R, "duty", duty="unknown"),
        case("HSE vehicle repair pages", F, "Vehicle", place="vehicle", vehicle_ready="no"),
        case("HSE vehicle repair pages", N, "", place="vehicle", vehicle_ready="yes"),
        case("30 CFR 56.18020", F, "alone", people="alone"),
        case("30 CFR 56.18020", F, "alone", people="alone", place="roof"),
        # 29 CFR 1910.252 (c)(2)(i): less than 10,000 ft³ a welder, or a ceiling below 16 ft, wants mechanical ventilation.
        case("1910.252(c)(2)(i)", F, "No clean air", air="open"),
        case("1910.252(c)(2)(i)", F, "No clean air", air="open", metal="aluminium", process="brazing"),
        case("1910.252(c)(2)(i); a filter stops no gas", F, "respirator alone", air="respirator"),
        case("1910.252(c)(2)(ii)", N, "", air="large"),
        case("1926.353(e)(1)", N, "", air="open", place="outdoors"),
        case("1910.1000 Z-1, memory", F, "Nickel", metal="nickel", air="open"),
        case("cutting pages", R, "Aluminum", metal="aluminium", process="cutting"),
        case("cutting pages", R, "Cast iron", metal="cast-iron", process="cutting"),
        case("cutting pages", R, "Stainless", metal="stainless-steel", process="cutting", place="outdoors"),
        case("cutting pages", R, "Copper", metal="copper", process="cutting"),
        # Two answers that cannot both be true count as the worse.
        case("1926.352(i)", R, "Exhaust", **HOLLOW, held="exhaust", place="vehicle"),
        case("1926.352(j)", F, "water", part="closed-hollow", held="water-drained"),
        case("design of the page", N, ""),
    ],
)  # fmt: skip
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_the_verdict_that_a_rule_demands(outcome: str, says: str, changed: dict[str, str], rules: str) -> None:
    got = gate(**changed, rules=rules)
    assert text(got, "outcome") == outcome
    assert says.lower() in text(got, "why").lower()


def test_a_verdict_follows_the_strictest_and_names_the_rest() -> None:
    """29 CFR 1926.352 (i) refuses a fuel pipe whatever else is in order; the zinc on it is named all the same."""
    got = gate(part="vented-hollow", held="fuel", coating="zinc", stripped="no", people="unprotected")
    assert text(got, "outcome") == REFUSED
    for named in ("Zinc (galvanized)", "People near you"):
        assert named in text(got, "why")
    assert "do_first" not in got["results"]  # type: ignore[operator]


@pytest.mark.parametrize(
    ("place", "asked"),
    [("roof", "permit"), ("wall", "permit"), ("building", "permit"), ("vehicle", "vehicle_ready")],
)
def test_what_was_never_answered_counts_as_no(place: str, asked: str) -> None:
    """29 CFR 1910.252 (a)(2)(iv): no flame before the place was inspected; silence is no permit."""
    given = {name: text for name, text in whole(place=place).items() if name not in (asked, "coating")}
    unsaid = dict.fromkeys(("held", "permit", "vehicle_ready", "stripped"))
    verdict = judge(Situation(**(unsaid | given), coatings=("none",)), "us")  # type: ignore[arg-type]
    assert verdict.outcome == "first"
    assert [reason.asked for reason in verdict.reasons] == ["place"]


def test_a_coating_that_is_gone_needs_no_width_to_be_stripped() -> None:
    """29 CFR 1926.354 (c)(1) asks 4 in; where that is done, the order that is left is clean air."""
    done = gate(coating="zinc", stripped="yes", air="open")
    assert text(done, "outcome") == FIRST
    assert "strip_distance" not in done["results"]  # type: ignore[operator]
    assert "strip_distance" in gate(coating="zinc", stripped="no", air="open")["results"]  # type: ignore[operator]


@pytest.mark.parametrize(
    ("changed", "brought"),
    [
        pytest.param({"process": "cutting"}, "cutting-sparks", id="29 CFR 1910.252(a)(2), read-m"),
        pytest.param({"air": "fan"}, "flame-gases", id="29 CFR 1910.1000 Z-1, read-m"),
        pytest.param({"metal": "cast-iron"}, "cast-iron-cracks", id="practice"),
        pytest.param({"metal": "aluminium"}, "aluminium-no-glow", id="practice"),
    ],
)
def test_a_part_that_passes_keeps_the_hazards_of_its_metal_and_work(changed: dict[str, str], brought: str) -> None:
    got = gate(**changed)
    ids = [one["id"] for one in got["cautions"]]  # type: ignore[attr-defined]
    assert text(got, "outcome") == NONE
    assert brought in ids
    assert "closed-part" not in ids, "this page has judged that"
    assert len(ids) == len(set(ids))


def test_the_hall_that_needs_no_fan_is_the_rules() -> None:
    """29 CFR 1910.252 (c)(2)(i): 10,000 cubic feet (284 m³) a welder, and a ceiling of 16 feet (5 m)."""
    assert room_words("space-per-welder") == "10,000 ft³ (284 m³) for each torch"
    assert room_words("ceiling").startswith("16 ft ")
