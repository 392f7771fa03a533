"""A sheet is refused unless it is whole, and reads without a script; so does a timer."""

import re

import pytest
from markdown import Markdown

from site_overrides.build import check_pages
from site_overrides.build.check_pages import DOCS, forms, read
from site_overrides.build.figures import filled
from site_overrides.build.forms import FormError, form, form_html
from site_overrides.build.timer import timer_html

WHOLE = """id = "f"
title = "A <b>sheet</b>"
notice = "Not valid until signed."
[[part]]
title = "First"
note = "Look."
[[part.line]]
kind = "text"
id = "place"
label = "Place"
[[part.line]]
kind = "tick"
id = "swept"
label = "Swept for {clear-distance}"
[[part.line]]
kind = "hazard"
id = "oil-in-oxygen"
[[part.line]]
kind = "figure"
label = "Watch"
from = "fire-watch:fire_watch"
[[part.line]]
kind = "basis"
from = "fire-watch"
[[part.line]]
kind = "link"
label = "Again"
from = "fire-watch"
[[part]]
title = "Second"
[[part.line]]
kind = "sign"
id = "does"
label = "Does the work"
"""
TIMES = {"watch": "fire_watch", "later": "monitoring", "every": "check_every"}
SHEETS = ["permit", "hazards"]


def html(text: str) -> str:
    return form_html(form(text), lambda part: filled(part, {}))


@pytest.mark.parametrize(
    ("was", "becomes", "said"),
    [
        ('kind = "tick"', 'kind = "box"', "kind says"),
        ('id = "swept"', 'id = "place"', "used twice"),
        ('id = "swept"', 'id = "Not Swept"', "an id is"),
        ('id = "oil-in-oxygen"', 'id = "sharks"', "no row 'sharks'"),
        ('"fire-watch:fire_watch"', '"fire-watch:years"', "no result 'years'"),
        ('"fire-watch:fire_watch"', '"no-such:thing"', "no calculator no-such"),
        ('label = "Watch"', "", "label is missing"),
        ('notice = "Not valid until signed."', "", "notice is missing"),
        ('note = "Look."', 'colour = "red"', "colour is not known"),
        ('label = "Place"', 'label = "Place"\nvalue = "here"', "value is not known"),
        ('title = "First"', "title = First", "form:"),
    ],
)
def test_a_form_that_is_not_whole_is_refused(was: str, becomes: str, said: str) -> None:
    assert was in WHOLE
    with pytest.raises(FormError, match=re.escape(said)):
        form(WHOLE.replace(was, becomes, 1))


def test_what_is_written_in_the_page_is_escaped_and_its_figures_are_filled() -> None:
    assert "A &lt;b&gt;sheet&lt;/b&gt;" in html(WHOLE)
    assert "35 ft (10.7 m)" in html(WHOLE)


def test_without_a_script_figures_are_blanks_and_every_line_is_there() -> None:
    made = html(WHOLE)
    assert '<output class="bb-blank" data-figure="fire-watch:fire_watch"></output>' in made
    for words in ("Place", "Swept for", "Keep oil off", "Does the work", "Signature", "Date and time"):
        assert words in made


def test_nothing_on_a_sheet_can_be_sent() -> None:
    assert not re.search(r"<form|<button|action=|name=", html(WHOLE))


def test_the_fence_stops_the_build_on_a_wrong_form() -> None:
    md = Markdown(
        extensions=["pymdownx.superfences", "site_overrides.build.figures"],
        extension_configs={
            "pymdownx.superfences": {"custom_fences": [{"name": "form", "class": "form", "format": _form}]}
        },
    )
    with pytest.raises(Exception, match="notice is missing"):
        md.convert('```form\nid = "f"\ntitle = "T"\npart = []\n```')


def _form(*given: object, **more: object) -> str:
    from site_overrides.build.fences import form as fence  # noqa: PLC0415 - imports every calculator

    return fence(*given, **more)


@pytest.mark.parametrize("name", SHEETS)
def test_each_sheet_says_that_it_holds_only_signed_and_asks_for_two_signatures(name: str) -> None:
    made = next(f for path in DOCS.rglob("*.md") for f in forms(read(path)) if f.id == name)
    assert made.notice.startswith("Not valid until signed.")
    assert "shift" in made.notice
    assert len([line for part in made.parts for line in part.lines if line.kind == "sign"]) >= 2


def test_a_form_without_its_calculator_on_the_page_is_found(tmp_path: check_pages.Path) -> None:
    path = tmp_path / "page.md"
    path.write_text(f"# A\n\n```form\n{WHOLE}```\n", encoding="utf-8")
    assert check_pages.form_problems(read(path)) == ["fire-watch does not stand on the page"]
    path.write_text("# A\n\n```timer\nfire-watch\n```\n", encoding="utf-8")
    assert check_pages.form_problems(read(path)) == ["fire-watch does not stand on the page"]


def test_a_typed_figure_in_a_form_is_found(tmp_path: check_pages.Path) -> None:
    path = tmp_path / "page.md"
    for change in ("Swept for 35 ft", "It is safe"):
        text = WHOLE.replace("Swept for {clear-distance}", change)
        path.write_text(f"# A\n\n```form\n{text}```\n", encoding="utf-8")
        assert check_pages.figure_problems(read(path)) + check_pages.verdict_problems(read(path))


def test_a_timer_says_what_to_do_without_a_script_and_with_one() -> None:
    made = timer_html("fire-watch", "Count", TIMES)
    assert "Set your phone’s own timer too." in made
    assert "Write the time of the last flame" in made
    assert 'data-watch="fire_watch"' in made


@pytest.mark.parametrize(
    ("calculator", "results", "said"),
    [
        ("no-such", TIMES, "no calculator"),
        ("fire-watch", TIMES | {"watch": "years"}, "no time 'years'"),
        ("fire-watch", TIMES | {"watch": "watcher"}, "no time 'watcher'"),
        ("fire-watch", {"watch": "fire_watch"}, "for each of"),
    ],
)
def test_a_timer_that_counts_no_time_is_refused(
    calculator: str, results: dict[str, str], said: str
) -> None:
    with pytest.raises(ValueError, match=re.escape(said)):
        timer_html(calculator, "Count", results)
