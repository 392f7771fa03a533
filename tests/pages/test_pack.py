"""Sheets of an evening: a card says what the job sheet and the emergency pages say, nothing else."""

import json
import re
from html import unescape
from html.parser import HTMLParser
from typing import Any
from urllib.parse import parse_qsl, urlsplit

import pytest
import segno

from calc.answer.answering import answer
from calc.answer.hazards import hazards
from calc.bridge import run
from calc.class_plan.bench_card import card_html
from calc.class_plan.exercises import exercises, titles
from calc.class_plan.first_acts import TABLE, emergencies
from calc.data.tables import table
from calc.declare import RULE_SETS, Answer, Calculator, Field, Figure, Shown
from calc.declare.catalogue import calculators
from calc.show.answer import said as as_typed
from site_overrides.build.check_emergencies import EMERGENCIES, order_problems
from site_overrides.build.check_pages import DOCS, procedures, read
from site_overrides.build.lessons import log_html, pack_form_html
from tests.reference.test_square_code import drawn_matrix

SITE = "https://bench.example/site/"
FIGURE = re.compile(
    r'data-card-figure="(\w+)"><dt>(.*?)</dt><dd><b>(.*?)</b>(?: <span class="bb-band">band (.*?)</span>)?</dd>'
)


def cards() -> list[Any]:
    return [pytest.param(one, rules, id=f"{one} {rules}") for rules in RULE_SETS for one in titles()]


@pytest.mark.parametrize(("exercise", "rules"), cards())
def test_every_figure_of_a_card_is_the_job_sheets(exercise: str, rules: str) -> None:
    one = exercises(rules)[exercise]
    got = answer("job-sheet", **one.job)
    made = card_html(exercise, rules, SITE)
    shown = {name: tuple(map(unescape, rest)) for name, *rest in FIGURE.findall(made)}
    for name in ("tip_orifice", "oxygen_gauge", "fuel_gauge", "purge_fuel_time", "purge_oxygen_time", "flame",
                 "shade_minimum", "clear_distance", "fire_watch"):  # fmt: skip
        assert name in shown, name
    assert ("filler" in shown) == (one.has_rod and "filler" in got["results"])
    for name, (label, text, band) in shown.items():
        result = got["results"][name]
        assert (label, text, band) == (result["label"], result["text"], result["band"])
    plain = unescape(made)
    for caution in got["cautions"]:
        assert f"<b>{caution['signal']}</b> {caution['text']}" in plain
    assert plain.index(got["cautions"][0]["text"]) < plain.index("data-card-figure"), "hazards come first"
    for name in ("thickness", "hose_bore", "hose_length"):
        if name in got["inputs"]:
            assert as_typed(got["inputs"][name]) in plain


@pytest.mark.parametrize(("exercise", "rules"), cards())
def test_the_square_code_of_a_card_opens_the_job_sheet_of_that_job(exercise: str, rules: str) -> None:
    made = card_html(exercise, rules, SITE)
    (address,) = re.findall(r'<span class="bb-address">(.*?)</span>', made)
    address = unescape(address)
    drawn = drawn_matrix(made)
    assert drawn == [list(map(int, row)) for row in segno.make(address, error="m", micro=False).matrix]
    assert address.startswith(f"{SITE}?v=1&")
    texts = dict(parse_qsl(urlsplit(address).query))
    assert texts.pop("v") == "1"
    assert texts["rules"] == rules
    linked = answer("job-sheet", **texts)["results"]
    assert linked == answer("job-sheet", **exercises(rules)[exercise].job)["results"]


def test_the_link_of_one_card_as_it_is_typed() -> None:
    made = unescape(card_html("tee", "us", SITE))
    assert (
        f"{SITE}?v=1&process=welding&metal=low-carbon-steel&thickness=16+ga&joint=tee&length=6+in&coating=none"
        "&fuel=acetylene&rules=us<"
    ) in made
    assert "svg" not in card_html("tee", "us")


def test_the_first_acts_are_the_first_steps_of_every_emergency_page() -> None:
    pages: dict[str, list[Any]] = {}
    for row in table(TABLE):
        pages.setdefault(row.page, []).append(row)
    assert set(pages) == {path.stem for path in EMERGENCIES}
    for name, rows in pages.items():
        page = read(DOCS / "trouble" / f"{name}.md")
        assert order_problems(page) == []
        (made,) = procedures(page)
        steps = [step for pause in made.pauses for step in pause.steps]
        heads = {row.kind: row.text for row in rows if row.kind in ("page", "see")}
        assert f"# {heads['page']} {{#top" in (DOCS / "trouble" / f"{name}.md").read_text(encoding="utf-8")
        assert heads["see"] == made.title
        wanted = []
        for step in steps[: sum(row.kind == "act" for row in rows)]:
            for cited in step.hazards:
                row = hazards()[cited]
                wanted.append((step.id, "hazard", cited, row.source, row.how_sure))
            wanted.append((step.id, "act", step.do, step.source, step.how_sure))
        carried = [(r.step, r.kind, r.text, r.source, r.how_sure) for r in rows if r.kind not in heads]
        assert carried == wanted, name
        assert len(carried) >= 2


@pytest.mark.parametrize("rules", RULE_SETS)
def test_a_card_carries_each_act_behind_its_hazard(rules: str) -> None:
    plain = unescape(card_html("cut", rules))
    assert f"Fire service or ambulance: { {'us': 911, 'uk': 999, 'iso': 112}[rules] }." in plain
    place = 0
    for one in emergencies(rules):
        for line in one.lines:
            place = plain.index(line.text, place)
    assert "{" not in plain
    assert plain.index("Go now, and take everyone with you.") < plain.index("Close the oxygen valve of the ")


class _Balance(HTMLParser):
    """Finds an element that is left open or shut twice."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:  # noqa: ARG002 - the base names it
        if tag not in ("br", "input"):
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def _asked(**pack: Any) -> dict[str, Any]:
    reply: dict[str, Any] = json.loads(run(json.dumps({"pack": pack})))
    return reply


TEXTS = {
    "exercise_1": "corner",
    "exercise_2": "cut",
    "exercise_3": "none",
    "learners": "12",
    "benches": "6",
}


def test_a_pack_has_a_cover_a_card_for_each_exercise_and_score_sheets() -> None:
    reply = _asked(texts=TEXTS, site=SITE, address=f"{SITE}class/pack/?v=1&exercise_1=corner", handouts=[
        {"title": "Oxygen left", "address": f"{SITE}before/oxygen-left/?v=1&gauge=640+psi"}])  # fmt: skip
    html = reply["html"]
    parser = _Balance()
    parser.feed(html)
    assert parser.open == []
    kinds = re.findall(r'data-sheet-page="(\w+)"', html)
    assert kinds[:3] == ["cover", "card", "card"]
    assert kinds[3:] == ["score"] * (len(kinds) - 3)
    assert reply["titles"][:2] == ["Bench card: Outside corner, no rod", "Bench card: Cut a straight line"]
    assert reply["titles"][-1] == "Oxygen left"
    score = html[html.index('data-sheet-page="score"') :].partition("</section>")[0]
    marks = [row for row in table("exercise-marks-benchbook-2026") if row.exercise == "corner"]
    assert f"of {sum(row.marks for row in marks):g}</th>" in score
    assert re.findall(r'<th scope="row">(\d+)</th>', score) == [str(n) for n in range(1, 13)]
    for row in marks:
        assert row.wanted in unescape(score)


def test_a_plan_is_put_in_where_there_is_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """A stand-in: the pack finds the class plan by its id and passes the texts on."""

    class Made:
        benches_used = Figure(6.0, "", "practice")

    stand_in = Calculator(
        id="class-plan", title="Plan of a class", about="A stand-in.",
        function=lambda learners, exercise_1: Answer(Made()),  # noqa: ARG005 - only what is asked
        inputs={
            "learners": Field("Learners", ("",), example="12", low="1", high="60"),
            "exercise_1": Field("First exercise", ("",), optional=True),
        },
        results={"benches_used": Shown("Benches in use")},
    )  # fmt: skip
    texts = {"learners": "8", "benches": "4"}
    monkeypatch.setitem(calculators(), "class-plan", stand_in)
    handouts = [{"title": "x", "address": SITE}]
    html = _asked(texts=texts, planned=True, handouts=handouts)["html"]
    assert 'data-sheet-page="plan"' in html
    assert "Learners: 8" in html
    assert "Benches in use" in html
    assert 'data-sheet-page="plan"' not in _asked(texts=texts, planned=False, handouts=handouts)["html"]
    refused = _asked(texts=texts | {"learners": "9000"}, planned=True, handouts=handouts)
    assert refused["errors"][0]["message"].startswith("Learners:")


@pytest.mark.parametrize(
    ("change", "begins"),
    [
        ({"texts": {"exercise_1": "<b>juggle</b>", "learners": "12"}}, "Exercises: “<b>juggle"),
        ({"texts": {"exercise_1": "none"}}, "Exercises: none is picked"),
        ({"texts": TEXTS | {"learners": "0"}}, "Learners: “0” will not do"),
        ({"texts": TEXTS | {"learners": "٣"}}, "Learners: "),
        ({"texts": TEXTS | {"benches": "1e3"}}, "Benches: “1e3” will not do"),
        ({"texts": {"exercise_1": "corner"}}, "Learners: a score sheet has a line for each"),
        ({"parts": ["cards", "cake"]}, "Sheets: there is no “cake”"),
        ({"texts": TEXTS | {"rules": "moon"}}, "Rule set: "),
        ({"handouts": [{"title": "x", "address": SITE}] * 31}, "Pages: 31 are too many"),
    ],
)
def test_a_pack_that_cannot_be_made_gets_a_sentence(change: dict[str, Any], begins: str) -> None:
    (said, *_) = _asked(**({"texts": TEXTS} | change))["errors"]
    assert said["message"].startswith(begins)
    assert said["message"].endswith(".")


def test_what_is_handed_in_never_becomes_markup() -> None:
    bad = "<img src=x onerror=alert(1)>"
    html = _asked(texts=TEXTS, site=f"https://x/{bad}/", address=f"https://x/{bad}",
                  handouts=[{"title": bad, "address": f"javascript:{bad}"}])["html"]  # fmt: skip
    assert "<img" not in html
    assert "href" not in html


def test_the_built_page_shows_a_card_and_every_choice_without_a_script() -> None:
    made = pack_form_html("corner", "Sheets")
    parser = _Balance()
    parser.feed(made)
    assert parser.open == []
    assert made.count("data-exercise") == len(titles())
    assert 'data-card="corner"' in made
    with pytest.raises(ValueError, match="no exercise"):
        pack_form_html("juggle", "Sheets")
    with pytest.raises(ValueError, match="no calculator"):
        log_html("no-such", "Log")


def test_a_card_can_be_for_the_outfit_that_is_kept() -> None:
    mine = {
        "torch_type": "equal-pressure", "fuel": "acetylene", "hose_length": "40 ft", "tip_1_label": "brass one",
        "tip_1_use": "welding", "tip_1_orifice": "0.035 in", "tip_1_oxygen_gauge": "5 psi", "tip_1_fuel_gauge": "5 psi",
    }  # fmt: skip
    plain = unescape(re.sub(r"<[^>]+>", " ", card_html("corner", "us", SITE, mine)))
    assert "“brass one”" in plain
    assert "Length of the hoses: 40 ft" in plain
    assert "0.035 in" in plain
    assert "nothing is lit with it yet" in plain, "the outfit names neither its arrestors nor its past"
    assert "maker_orifice=0.035+in" in plain, "the code opens the same values"
