"""The gate before any job, held against the rules and the cases that it stands on."""

import pytest

from calc import InputError, answer
from calc.answer.hazards import hazards
from calc.data.tables import table
from calc.trade.safety.gate import metal_verdict
from calc.trade.safety.gate_fields import PROCESSES, STRIPPABLE

BOX = {
    "process": "welding",
    "part": "open-sheet",
    "duty": "none",
    "metal": "low-carbon-steel",
    "coating": "none",
    "place": "shop",
    "around": "none",
    "behind": "clear",
    "people": "protected",
    "air": "hood",
}
REFUSED = "Refused: no flame on this"
FIRST = "First do this, then ask again"
NONE = "Nothing here was refused"


def whole(**changed: str) -> dict[str, str]:
    """The planter box with these changes, and the mildest answer to whatever they make the form ask."""
    asked = BOX | changed
    if asked["part"] in ("vented-hollow", "closed-hollow"):
        asked = {"held": "never"} | asked
    if asked["coating"] != "none":
        asked = {"second_coating": "none"} | asked
        if asked["second_coating"] != "none":
            asked = {"third_coating": "none"} | asked
    if asked["place"] in ("building", "wall", "roof"):
        asked = {"permit": "yes"} | asked
    if asked["place"] == "vehicle":
        asked = {"vehicle_ready": "yes"} | asked
    return asked


def gate(**changed: str) -> dict[str, object]:
    return answer("may-i-heat", **whole(**changed))


def text(got: dict[str, object], name: str) -> str:
    return got["results"][name]["text"]  # type: ignore[index, no-any-return]


def printed(got: dict[str, object]) -> str:
    """All cells of all tables."""
    return "\n".join(" | ".join(row) for table in got["tables"] for row in table["rows"])  # type: ignore[attr-defined]


def refusal(source: str, how_sure: str, says: str, who: str, **changed: str) -> object:
    given = " ".join(changed.values())
    return pytest.param(source, says, who, changed, id=f"{given} refused [{source}; {how_sure}]")


@pytest.mark.parametrize(
    ("source", "says", "who", "changed"),
    [
        refusal("29 CFR 1910.252 (a)(3)", "read", "explodes", "cleans, tests and tags", part="container"),
        refusal("NIOSH FACE 17OR007", "read", "explodes", "cleans, tests and tags", part="container"),
        refusal("NIOSH FACE 00-MA-042-01", "read", "explodes", "cleans, tests and tags", part="container"),
        refusal("CSB hot work review", "read-m", "explodes", "cleans, tests and tags", part="container"),
        refusal("MSHA IG 60", "read-m", "in a flat tire too", "tire service", part="tire"),
        refusal("MSHA FAB99M10", "read", "in a flat tire too", "tire service", part="tire"),
        refusal("MSHA FTL06C37", "read", "in a flat tire too", "tire service", part="tire"),
        refusal("NIOSH FACE 06CA004", "read", "after the flame is out", "tire service", part="tire"),
        refusal("62 Ill. Adm. Code 140.20 (a)", "read", "rubber", "tire service", part="tire"),
        refusal("WAC 296-864 20010", "read", "rubber", "forbids heat on a truck rim", part="tire"),
        refusal("MSHA FTL99M16", "read", "the rod flies out", "hydraulics workshop", part="strut"),
        refusal("OSHA inspection 1277965", "read", "under pressure", "supervisor", part="unknown"),
        refusal("29 CFR 1910.252 (c)(8)", "read", "ruin the lungs", "air tests", metal="beryllium-copper"),
        refusal("a magnesium trade page", "read", "brilliant white light", "a works", metal="magnesium"),
        refusal("US defense report AD0609342", "read", "caught fire in air", "inert gas", metal="titanium"),
        refusal("MSHA FAB10M06", "read", "magnesium or titanium", "metal analyzer", metal="unknown"),
        refusal("29 CFR 1910.146 (b)", "read", "12 to 72 hours later", "hygienist", coating="cadmium"),
        refusal("Br J Ind Med 1966", "read", "mild at first", "hygienist", coating="cadmium"),
        refusal("WAC 296-155 420 (1)", "read", "lead, cadmium or chromium", "competent person", coating="unknown"),
        refusal("WAC 296-24 69501 (3)", "read", "breaks out later", "fire service", behind="fixed"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_what_is_refused(source: str, says: str, who: str, changed: dict[str, str], rules: str) -> None:
    got = gate(**changed, rules=rules)
    assert text(got, "outcome") == REFUSED
    assert says in text(got, "why")
    assert who in text(got, "who_to_ask")
    assert got["cautions"][0]["signal"] == "DANGER"
    assert says in got["cautions"][0]["text"]
    assert source in printed(got)
    assert "do_first" not in got["results"]
    assert "still_holds" not in got["results"]


def order(source: str, how_sure: str, signal: str, says: str, do: str, **changed: str) -> object:
    given = " ".join(changed.values())
    return pytest.param(source, signal, says, do, changed, id=f"{given} first [{source}; {how_sure}]")


@pytest.mark.parametrize(
    ("source", "signal", "says", "do", "changed"),
    [
        order("29 CFR 1910.252 (a)(3)(ii)", "read", "DANGER", "bursts", "Open it cold", part="closed-hollow"),
        order("OSHA shipyard pages", "read", "DANGER", "hydrogen", "drill a hole at each end", part="closed-hollow"),
        order("MSHA FAB10M06", "read", "DANGER", "bursts", "air blows through", part="closed-hollow"),
        order("29 CFR 1910.252 (c)(6)", "read", "WARNING", "fever and chills", "other means than heat", coating="zinc"),
        order("29 CFR 1926.354 (c)(1)", "read", "WARNING", "poison blood", "4 in", coating="lead-paint"),
        order("MMWR, Georgia 1992", "read", "WARNING", "outdoors too", "dry grinding", coating="lead-paint"),
        order("29 CFR 1926.354 (c)(1)", "read", "WARNING", "cancer", "other means than heat", coating="chromium"),
        order("WAC 296-155 420 (4)", "read", "WARNING", "smoke", "other means than heat", coating="paint"),
        order("Cal. Title 8 §8395 (b)(4)", "read", "WARNING", "poison gas", "without heat", coating="oil"),
        order("29 CFR 1910.252 (a)(2)(vii)", "read", "WARNING", "Sparks", "post a watcher", behind="movable"),
        order("29 CFR 1910.252 (a)(2)(iii)(A)(4)", "read", "WARNING", "along pipes", "Go and look", behind="not-looked"),
        order("City of Madison, 2009", "read", "WARNING", "along pipes", "Go and look", behind="not-looked"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_what_is_done_first(
    source: str, signal: str, says: str, do: str, changed: dict[str, str], rules: str
) -> None:
    stripped = {"stripped": "no"} if "coating" in changed else {}
    got = gate(**changed, **stripped, rules=rules)
    assert text(got, "outcome") == FIRST
    assert says.lower() in text(got, "why").lower()
    assert do in text(got, "do_first")
    assert text(got, "do_first").count(") ") - text(got, "do_first").count("mm) ") == 1, "one order"
    assert any(c["signal"] == signal and do in c["text"] for c in got["cautions"])
    assert source in printed(got)
    assert "still_holds" in got["results"]


@pytest.mark.parametrize(
    ("source", "says", "changed"),
    [
        pytest.param("", "Air: ", {}, id="the planter box sheet [design of the page]"),
        pytest.param("", "Air: ", {"part": "vented-hollow"}, id="open hollow [29 CFR 1926.352 (j); read]"),
        pytest.param("29 CFR 1910.252 (c)(6)(ii)", "hood at the work", {"coating": "zinc"}, id="zinc off [(c)(6)(ii); read]"),
        pytest.param("29 CFR 1910.252 (c)(7)(iii)", "air-line respirator", {"coating": "lead-paint"}, id="lead paint off [(c)(7)(iii); read]"),
        pytest.param("29 CFR 1910.252 (c)(7)(iii)", "let everyone near have the same", {"metal": "lead"}, id="lead [(c)(7)(iii); read]"),
        pytest.param("29 CFR 1910.252 (c)(6)", "hood at the work", {"metal": "zinc"}, id="zinc [(c)(6); read]"),
        pytest.param("29 CFR 1926.353 (c)(1)(iv)", "hood at the work", {"coating": "chromium"}, id="chromium off [1926.353(c)(1)(iv); read]"),
        pytest.param("29 CFR 1926.353 (c)(1)(iv)", "hood at the work", {"metal": "stainless-steel"}, id="stainless [1926.353(c)(1)(iv); read]"),
        pytest.param("WAC 296-155 420 (4)", "strip farther", {"coating": "paint"}, id="paint off [WAC 296-155-420; read]"),
        pytest.param("common practice", "Stop when it smokes", {"coating": "oil"}, id="oil off [practice]"),
        pytest.param("29 CFR 1910.252 (c)(6)(ii)", "no more heat than the joint needs", {"metal": "brass"}, id="brass [(c)(6)(ii); read]"),
        pytest.param("", "Eyes: ", {"metal": "aluminium"}, id="aluminium [no rule refuses it]"),
    ],
)  # fmt: skip
def test_what_is_not_refused_still_has_its_list(source: str, says: str, changed: dict[str, str]) -> None:
    stripped = {"stripped": "yes"} if "coating" in changed else {}
    got = gate(**changed, **stripped)
    assert text(got, "outcome") == NONE
    assert "has not seen your part" in text(got, "why")
    for always in ("Air: ", "Watch: ", "Eyes: "):
        assert always in text(got, "still_holds")
    assert says in text(got, "still_holds")
    assert source in printed(got)
    assert got["cautions"][0]["signal"] == "DANGER"
    assert "only what you told it" in got["cautions"][0]["text"]
    assert not {"do_first", "who_to_ask", "strip_distance", "vent_hole"} & set(got["results"])
    assert {"clear_distance", "fire_watch"} <= set(got["results"])


@pytest.mark.parametrize(
    ("name", "figure", "unit", "changed"),
    [
        pytest.param("strip_distance", 4, "in", {"coating": "zinc", "stripped": "no"}, id="4 in [29 CFR 1926.354(c)(1); read]"),
        pytest.param("strip_distance", 4, "in", {"coating": "lead-paint", "stripped": "no", "rules": "uk"}, id="4 in elsewhere, named [29 CFR 1926.354(c)(1); read]"),
        pytest.param("vent_hole", 0.5, "in", {"part": "closed-hollow"}, id="1/2 in [30 CFR 57.6802; read]"),
        pytest.param("clear_distance", 35, "ft", {"behind": "movable"}, id="35 ft [29 CFR 1910.252(a)(2)(vii); read]"),
        pytest.param("clear_distance", 35, "ft", {"behind": "fixed"}, id="35 ft, refused [29 CFR 1910.252(a)(2)(vii); read]"),
        pytest.param("clear_distance", 10, "m", {"behind": "movable", "rules": "iso", "process": "cutting"}, id="cutting 10 m [DGUV 100-500; read]"),
        pytest.param("clear_distance", 7.5, "m", {"behind": "movable", "rules": "iso"}, id="welding 7.5 m [DGUV 100-500; read]"),
        pytest.param("clear_distance", 7.5, "m", {"behind": "movable", "rules": "iso", "process": "braze-welding"}, id="braze welding as welding 7.5 m [DGUV 100-500; read]"),
        pytest.param("clear_distance", 2, "m", {"behind": "not-looked", "rules": "iso", "process": "soldering"}, id="soldering 2 m [DGUV 100-500; read]"),
        pytest.param("fire_watch", 60, "min", {"behind": "movable"}, id="60 min [NFPA 51B-2019; read-m]"),
        pytest.param("fire_watch", 60, "min", {"behind": "movable", "rules": "uk"}, id="60 min [UK Joint Code 16.15; read-m]"),
    ],
)  # fmt: skip
def test_the_figures_that_go_with_an_order(
    name: str, figure: float, unit: str, changed: dict[str, str]
) -> None:
    got = answer("may-i-heat", **whole(**changed), units={name: unit})
    assert got["results"][name]["value"] == pytest.approx(figure, rel=1e-9)


def test_the_metric_width_is_never_less_than_the_rule() -> None:
    """4 in is 101.6 mm, by definition."""
    shown = gate(coating="zinc", stripped="no", rules="iso")["results"]["strip_distance"]["text"]  # type: ignore[index]
    assert float(shown.split()[0]) >= 101.6
    assert "United States figure" in shown


def test_a_refused_part_gets_no_order_that_reads_as_a_way_round_it() -> None:
    got = gate(part="container", coating="zinc", stripped="no", behind="movable")
    assert text(got, "outcome") == REFUSED
    assert not {"do_first", "strip_distance", "clear_distance", "fire_watch"} & set(got["results"])
    assert "Take it off" not in str(got["cautions"]) + printed(got)


def test_refusals_stand_first_and_each_hazard_has_one_order() -> None:
    got = gate(part="tire", metal="titanium", coating="zinc", stripped="no", behind="fixed")
    why = text(got, "why")
    places = [
        why.index(what)
        for what in (
            "Wheel with its tire on.",
            "Also: Titanium;",
            "Something that burns behind it",
            "Zinc (galvanized).",
        )
    ]
    assert places == sorted(places)
    assert [c["signal"] for c in got["cautions"]] == ["DANGER"] * 3
    first = text(
        gate(part="closed-hollow", coating="lead-paint", stripped="no", behind="not-looked"), "do_first"
    )
    orders = [
        first.index(mark) for mark in ("1) Hollow section", "2) Behind it you have not looked", "3) Lead paint")
    ]
    assert orders == sorted(orders)
    assert "4) " not in first


def test_whether_the_coating_is_gone_is_asked_where_it_can_be_taken_off() -> None:
    """Cadmium and unknown coatings are refused, stripped or not: 29 CFR 1910.252(c)(9), 1926.354(a)."""
    for coating in ("zinc", "chromium", "lead-paint", "paint", "oil"):
        assert coating in STRIPPABLE
        with pytest.raises(InputError, match="Is all of that gone 4 in"):
            gate(coating=coating)
    for coating in ("none", "cadmium", "unknown"):
        assert "stripped" not in gate(coating=coating)["inputs"]  # type: ignore[operator]


@pytest.mark.parametrize("process", list(PROCESSES))
@pytest.mark.parametrize(
    ("metal", "coating", "stripped", "outcome"),
    [
        pytest.param("titanium", "none", None, "refused", id="titanium [AD0609342; read]"),
        pytest.param("magnesium", "none", None, "refused", id="magnesium [a trade page; read]"),
        pytest.param("beryllium-copper", "none", None, "refused", id="beryllium [1910.252(c)(8); read]"),
        pytest.param("unknown", "none", None, "refused", id="unknown metal [practice]"),
        pytest.param("copper", "cadmium", "yes", "refused", id="cadmium, stripped [1910.252(c)(9); read]"),
        pytest.param("copper", "unknown", "yes", "refused", id="unknown coating [1926.354(a); read in WAC 296-155-420]"),
        pytest.param("low-carbon-steel", "zinc", None, "first", id="zinc [1910.252(c)(6); read]"),
        pytest.param("low-carbon-steel", "zinc", "yes", "none", id="zinc off [1910.252(c)(6); read]"),
        pytest.param("galvanised-steel", "none", "no", "first", id="galvanised [1910.252(c)(6); read]"),
        pytest.param("galvanised-steel", "paint", "no", "first", id="galvanised and painted [1910.252(c)(6); read]"),
        pytest.param("galvanised-steel", "cadmium", "yes", "refused", id="galvanised, cadmium [1910.252(c)(9); read]"),
        pytest.param("stainless-steel", "none", None, "none", id="stainless, chromium named [memory]"),
        pytest.param("lead", "none", None, "none", id="lead, named [1910.252(c)(7); read]"),
        pytest.param("aluminium", "none", None, "none", id="aluminium [no rule refuses it]"),
    ],
)  # fmt: skip
def test_metal_and_coating_alone(
    process: str, metal: str, coating: str, stripped: str | None, outcome: str
) -> None:
    got = metal_verdict(process, metal, coating, stripped, "us")
    assert got.outcome == outcome
    named = " ".join(f"{reason.words} {reason.reason}" for reason in (*got.reasons, *got.holds))
    for found, word in (("stainless-steel", "chromium"), ("lead", "poison blood"), ("galvanised-steel", "Zinc")):
        assert metal != found or word in named
    assert all(reason.asked in ("metal", "coating") for reason in (*got.reasons, *got.holds))


@pytest.mark.parametrize(
    "given",
    [("melting", "copper", "none", None), ("brazing", "gold", "none", None), ("brazing", "copper", "rust", None),
     ("brazing", "copper", "zinc", "perhaps")],
)  # fmt: skip
def test_an_id_that_the_gate_does_not_know_never_passes(given: tuple[str, str, str, str | None]) -> None:
    with pytest.raises(ValueError, match="the gate knows no"):
        metal_verdict(*given, "us")


def test_every_refusal_has_a_danger_somebody_to_ask_and_something_in_print() -> None:
    refused = [row for row in table("gate-reasons") if row.outcome == "refused"]
    assert refused
    shown = {(case.asked, case.id) for case in table("gate-cases")}
    for row in refused:
        assert hazards()[row.hazard].signal == ("WARNING" if row.hazard == "metal-not-cut" else "DANGER")
        assert row.who
        assert row.source or (row.asked, row.id) in shown or row.how_sure in ("practice", "memory")


@pytest.mark.parametrize(
    ("what", "source"),
    [
        pytest.param("plasma torch", "niosh-face-17or007", id="NIOSH FACE 17OR007, read"),
        pytest.param("cut plated bolts", "beton-1966", id="Br J Ind Med 23:292, summary read"),
        pytest.param("with an oxy-acetylene torch, in a laboratory", "dtic-ad0609342", id="AD0609342, abstract read"),
        pytest.param("suspension cylinder", "msha-ftl99m16", id="MSHA FTL99M16, overview read"),
        pytest.param("drill rod", "msha-fab10m06", id="MSHA FAB10M06, read"),
        pytest.param("rust had made hydrogen", "osha-shipyard-etool", id="OSHA shipyard pages, read"),
        pytest.param("no rim wheel is heated at any time", "wac-296-864 20010", id="WAC 296-864-20010, read"),
        pytest.param("all hollow spaces are vented", "cal-title-8-5166 (b)(2)", id="Cal. Title 8 5166(b)(2), read"),
        pytest.param("neither moved nor guarded", "wac-296-24 69501 (3)", id="WAC 296-24-69501(3), read"),
        pytest.param("soft and greasy", "cal-title-8-8395 (b)(4)", id="Cal. Title 8 8395(b)(4), read"),
    ],
)  # fmt: skip
def test_a_case_keeps_its_source(what: str, source: str) -> None:
    (case,) = (row for row in table("gate-cases") if what in row.happened)
    assert (case.source, case.how_sure) == (source, "read")


@pytest.mark.parametrize("part", ["container", "tire", "strut", "unknown"])
def test_what_bursts_at_once_stands_before_what_poisons_or_burns(part: str) -> None:
    """A part that explodes, then cadmium, then a metal that burns, then fire behind."""
    got = gate(part=part, metal="magnesium", coating="cadmium", behind="fixed")
    words = {"container": "Drum", "tire": "Wheel", "strut": "Strut", "unknown": "A part you do not know"}
    texts = [caution["text"] for caution in got["cautions"]]  # type: ignore[attr-defined]
    starts = (words[part], "Cadmium", "Magnesium", "Something that burns behind it")
    assert [t.startswith(start) for t, start in zip(texts, starts, strict=True)] == [True] * 4
