"""Every exercise of the ladder has its page, its marks add up, and its settings are the table's."""

import csv
import re
from html import unescape
from xml.etree import ElementTree

import pytest

from calc.answer.answering import answer
from calc.class_plan.drawings import cut_run, hold, socket, stand
from calc.class_plan.exercises import job_texts
from calc.class_plan.holds import held
from calc.data.tables import table
from calc.declare import RULE_SETS
from calc.show.drawings import frame, pools, strip, tacks
from site_overrides.build import fences, forms, ladder
from site_overrides.build.check_pages import DOCS, ROOT, procedures, read
from site_overrides.build.check_pages import forms as sheets
from site_overrides.build.figures import filled
from site_overrides.build.ladder import coupon, facts_html, gas_of_try
from tests.pages.test_drawings import (
    SVG,
    test_a_drawing_has_no_color_of_its_own,
    test_a_drawing_has_title_description_and_sentence,
    test_text_is_large_enough_and_inside,
)

LADDER = DOCS / "class" / "ladder"
LINES = list(csv.DictReader((ROOT / "calc/data/exercises-benchbook-2026.csv").open(encoding="utf-8")))
IDS = [line["id"] for line in LINES]
EM = 0.6
"""Width of a letter in font sizes: a wide one of the phone's own letters."""

PICTURES = {
    **{
        f"hold {e}": hold.drawing(e)
        for e in ("puddle", "corner", "bead", "butt", "lap", "tee", "braze-weld")
    },
    **{f"stand {kind}": stand.drawing(kind) for kind in stand.KINDS},
    **{f"pools {kind}": pools.drawing(kind) for kind in pools.KINDS},
    **{f"tacks {kind}": tacks.drawing("5", kind) for kind in tacks.NAMES},
    **{f"socket {step}": socket.drawing(step) for step in socket.STEPS},
    **{f"cut {step}": cut_run.drawing(step) for step in cut_run.STEPS},
    **{f"strip {step}": strip.drawing(step) for step in strip.STEPS},
    "frame": frame.drawing(),
}


def job(line: dict[str, str], rules: str) -> dict[str, str]:
    """The job sheet's texts as they stand in the table."""
    cell = line["job_us" if rules == "us" else "job_metric"]
    return dict(part.strip().split("=") for part in cell.split(";"))


@pytest.mark.parametrize("exercise", IDS)
def test_an_exercise_has_its_page_with_everything_in_it(exercise: str) -> None:
    page = read(LADDER / f"{exercise}.md")
    title = next(line["title"] for line in LINES if line["id"] == exercise)
    assert page.headings[0] == (1, title)
    assert f"class/ladder/{exercise}.md" in (ROOT / "mkdocs.yml").read_text(encoding="utf-8")
    (steps,) = procedures(page)
    assert steps.id == f"rung-{exercise}"
    assert steps.pauses[0].id == "ready"
    assert any(step.hazards for step in steps.pauses[0].steps), "hazards stand before the flame"
    (sheet,) = sheets(page)
    assert [line.exercise for part in sheet.parts for line in part.lines if line.kind == "marks"] == [
        exercise
    ]
    fenced = {(kind, " ".join(source.split())) for kind, source in page.fences}
    assert ("calculator", f"job-sheet exercise = {exercise}") in fenced
    assert ("exercise", exercise) in fenced
    follows = IDS[IDS.index(exercise) + 1 :]
    assert not follows or f"{follows[0]}.md" in page.links


def test_the_overview_names_every_exercise_in_the_order_of_the_table() -> None:
    links = [link.removesuffix(".md") for link in read(LADDER / "index.md").links]
    assert [link for link in links if link in IDS] == IDS
    titles = {line["id"]: line["title"] for line in LINES}
    for row in table("planter-parts-benchbook-2026"):
        assert row.rung == titles[row.exercise]


@pytest.mark.parametrize("exercise", IDS)
def test_marks_add_up_to_the_total_that_is_printed(exercise: str) -> None:
    """A school's scheme, read: 1 for cleaning and 3 each for appearance, penetration, freedom from faults."""
    marks = [row for row in table(forms.MARKS) if row.exercise == exercise]
    (sheet,) = sheets(read(LADDER / f"{exercise}.md"))
    made = forms.form_html(sheet, lambda text: filled(text, {}))
    out_of = [int(number) for number in re.findall(r"<span>of (\d+)</span>", made)]
    assert out_of == [*(int(row.marks) for row in marks), 10]
    assert sum(out_of[:-1]) == out_of[-1]
    if exercise in ("puddle", "corner", "bead", "butt", "lap", "tee", "braze-weld", "braze"):
        assert out_of[:-1] == [1, 3, 3, 3]


def test_a_scorched_frame_costs_marks() -> None:
    assert any("scorched" in row.wanted for row in table(forms.MARKS) if row.exercise == "solder")


def test_marks_of_an_unknown_exercise_are_refused() -> None:
    text = 'id = "f"\ntitle = "T"\nnotice = "N"\n[[part]]\ntitle = "P"\n[[part.line]]\nkind = "marks"\nexercise = "juggling"\n'
    with pytest.raises(forms.FormError, match="no marks for 'juggling'"):
        forms.form(text)


@pytest.mark.parametrize("line", LINES, ids=IDS)
def test_the_sheet_of_a_page_is_of_the_tables_texts_in_every_rule_set(line: dict[str, str]) -> None:
    made = fences.calculator(f"job-sheet\nexercise = {line['id']}", None)
    texts = job_texts(line["id"])
    for rules in RULE_SETS:
        got = answer("job-sheet", rules=rules, coating="none", fuel="acetylene", **job(line, rules))
        assert "errors" not in got
        for name, text in job(line, rules).items():
            assert texts[name][rules] == text
            if texts[name]["us"] == job(line, "us").get(name):
                field = re.search(rf'<(?:input|select)[^>]* name="{name}"[^>]*>', made)
                assert field, name
                assert f'data-example-{rules}="{text}"' in unescape(field[0]), (name, rules)
    fresh = answer("job-sheet", coating="none", fuel="acetylene", **job(line, "us"))["results"].values()
    shown = [
        unescape(re.sub("<.*?>", "", text)) for text in re.findall(r'class="bb-value"[^>]*>(.*?)</', made)
    ]
    assert shown
    assert [text for text in shown if text not in {result["text"] for result in fresh}] == []
    built = ROOT / "site" / "class" / "ladder" / line["id"] / "index.html"
    if built.is_file():
        assert re.findall(r'class="bb-value"[^>]*>.*?</', made) == re.findall(
            r'class="bb-value"[^>]*>.*?</', built.read_text(encoding="utf-8")
        )


def test_an_exercise_that_is_none_is_refused() -> None:
    for fence in ("job-sheet\nexercise = juggling", "job-sheet\nexercise ="):
        with pytest.raises(Exception, match="no exercise"):
            fences.calculator(fence, None)
    with pytest.raises(ValueError, match="no exercise"):
        facts_html("juggling")


def test_a_try_takes_the_flow_for_its_minutes() -> None:
    """Rung 3, by hand, for 4 minutes; free gas at 70 °F is 2.1 % more.

    A hole of 0.031 in takes 5.17 ft³/h of acetylene and 5.68 of oxygen. 16 gauge lies between the middles 0.048 and
    0.095 in of the rows for 0.031 and 0.037 in, so that its hole is 0.0325 in and takes a tenth more.
    """
    hole = 0.031 + 0.006 * (0.0598 - 0.048) / (0.095 - 0.048)
    for gas, flow in zip(gas_of_try("corner", "us"), (5.68, 5.17), strict=True):
        assert gas == pytest.approx(flow * (hole / 0.031) ** 2 * 4 / 60 * 0.028317 / 1.021, rel=0.006)
    # Litres for 1.5 mm, a little thinner than 16 gauge: 11.5, so 11.
    assert "oxygen 0.42 ft³ (11 L), acetylene 0.38 ft³" in facts_html("corner")
    assert ladder.rungs()[1][2][0] == "3. Outside corner, no rod"


def test_a_coupon_is_the_tables() -> None:
    assert coupon("corner") == "2 pieces of 16 ga (1.5 mm) sheet, each 2 in × 6 in (50 mm × 150 mm)"
    assert coupon("flame") == "nothing is cut"


@pytest.mark.parametrize("picture", PICTURES.values(), ids=PICTURES)
def test_a_drawing_of_the_ladder_is_whole_and_inside(picture: object) -> None:
    test_a_drawing_has_title_description_and_sentence(picture)
    test_a_drawing_has_no_color_of_its_own(picture)
    test_text_is_large_enough_and_inside(picture)
    root = ElementTree.fromstring(picture.svg)
    *_, width, height = map(float, root.get("viewBox").split())
    for text in root.iter(f"{SVG}text"):
        x, wide = float(text.get("x")), EM * float(text.get("font-size")) * len(text.text)
        left = {"start": x, "middle": x - wide / 2, "end": x - wide}[text.get("text-anchor")]
        assert -1 <= left <= left + wide <= width + 1, text.text
    for made in root.iter(f"{SVG}line"):
        for x, y in (("x1", "y1"), ("x2", "y2")):
            assert 0 <= float(made.get(x)) <= width
            assert 0 <= float(made.get(y)) <= height
    for made in root.iter(f"{SVG}polygon"):
        for pair in made.get("points").split():
            x, y = map(float, pair.split(","))
            assert 0 <= x <= width
            assert 0 <= y <= height


def test_tacks_begin_at_the_ends_and_every_number_stands_once() -> None:
    for count in (3, 5, 7, 9):
        order = tacks.order(count)
        assert (order[0], order[-1], order[count // 2]) == (1, 2, 3)
        assert sorted(order) == list(range(1, count + 1))


@pytest.mark.parametrize(
    ("exercise", "begins", "low", "high"),
    [
        pytest.param("cut", "torch leans", 5, 20, id="student-textbooks-read"),
        pytest.param("cut", "cones", 0.0625, 0.125, id="student-textbooks-stand-off-read"),
        pytest.param("cut", "lines", 1, 1, id="student-textbooks-p400-read"),
        pytest.param("braze", "tip of the cone", 0.25, 0.375, id="army-tm1-1500-1992-read"),
    ],
)
def test_how_it_is_held_as_printed(exercise: str, begins: str, low: float, high: float) -> None:
    hold_read = held(exercise, begins)
    assert (hold_read.low, hold_read.high) == (low, high)


@pytest.mark.parametrize(
    ("module", "given"),
    [
        (stand, "shelf"),
        (pools, "swimming"),
        (socket, "turn"),
        (cut_run, "hole"),
        (strip, "fold"),
        (hold, "solder"),
    ],
)
def test_what_nobody_drew_is_refused(module: object, given: str) -> None:
    with pytest.raises(ValueError, match=re.escape(repr(given))):
        module.drawing(given)
