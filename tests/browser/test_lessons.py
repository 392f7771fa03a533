"""What an instructor makes: a link for a lesson, a log that stays, sheets that fit their paper."""

import csv
import re
from pathlib import Path
from typing import Any
from urllib.parse import parse_qsl, urlsplit

import pytest
from playwright.sync_api import Page, expect

from calc import answer as answered
from calc.class_plan.bench_card import card_html
from calc.class_plan.exercises import titles
from calc.declare import RULE_SETS
from tests.browser.asking import OXYGEN, give, new_answer, wait_for_engine

pytestmark = pytest.mark.browser

MARKUP = '<img src=x onerror="window.marked=1">[x](y)'
LONG_SITE = "https://a-rather-long-host.example.org/department/benchbook/"
LOG = "class/gas-log/"


def test_an_instructor_builds_a_link_with_two_values_and_a_phone_opens_it(page: Page, visit: Any) -> None:
    page.set_viewport_size({"width": 1280, "height": 900})
    page.goto(OXYGEN)
    wait_for_engine(page)
    with new_answer(page):
        give(page, "[name=gauge]", "640")
    page.locator("[data-lesson] > summary").click()
    fold = page.locator("[data-lesson]")
    fold.get_by_label("Those that I pick").check()
    expect(fold.locator("[data-pick=gauge]")).to_be_checked()
    fold.get_by_label("Water volume of the cylinder: 43 L").check()
    fold.get_by_label("Fix the rule set").uncheck()
    address = fold.get_by_label("Address").input_value()
    assert dict(parse_qsl(urlsplit(address).query)) == {
        "v": "1",
        "water_volume": "43 L",
        "gauge": "640 psi",
    }
    fold.get_by_label("Only those that I changed").check()
    changed = fold.get_by_label("Address").input_value()
    assert dict(parse_qsl(urlsplit(changed).query)) == {"v": "1", "gauge": "640 psi"}
    fold.get_by_label("Words that the link shows").fill(MARKUP)
    line = fold.get_by_label("Line for a page in HTML").input_value()
    shown = page.evaluate(
        "line => { const t = document.createElement('template'); t.innerHTML = line;"
        " return [t.content.children.length, t.content.firstChild.href, t.content.textContent]; }",
        line,
    )
    assert shown == [1, changed, MARKUP]
    markdown = fold.get_by_label("Line for a page in Markdown").input_value()
    assert markdown.endswith(f"](<{changed}>)")
    assert "\\<img" in markdown
    assert "\\]\\(y\\)" in markdown
    expect(fold.locator("[data-lesson-square] svg")).to_be_visible()
    phone = visit(viewport={"width": 360, "height": 640}, service_workers="block")
    phone.goto(address)
    expect(phone.get_by_text("Values set by the link")).to_be_visible()
    assert phone.input_value("[name=gauge]") == "640"
    expect(phone.locator("[data-field=full_gauge] [name=full_gauge]")).to_have_value("")
    wanted = answered("oxygen-left", gauge="640 psi", water_volume="43 L")["results"]["gas_left"]["text"]
    expect(phone.locator("[data-result=gas_left] .bb-value")).to_have_text(wanted, timeout=60_000)
    phone.locator("[data-lesson] > summary").click()
    small = phone.locator("[data-lesson] :is(summary, button, label.bb-pick):visible").evaluate_all(
        "all => all.filter(each => each.getBoundingClientRect().height < 44).map(each => each.textContent)"
    )
    assert small == []
    assert phone.evaluate("document.documentElement.scrollWidth") <= 360


def test_a_partial_link_on_an_open_page_leaves_no_value_of_before(page: Page) -> None:
    page.goto("class/gas-log/?v=1&rules=iso&fuel_after=52+kg")
    wait_for_engine(page)
    assert page.input_value("[name=fuel_before]") == "53.6", (
        "the rest is the example of the link's rule set"
    )
    assert page.input_value("[name=fuel_after]") == "52"


def test_a_lesson_survives_a_reload_and_stands_in_the_file(page: Page, tmp_path: Path) -> None:
    page.goto(LOG)
    wait_for_engine(page)
    page.get_by_role("button", name="Keep this lesson").click()
    expect(page.locator("[data-log-said]")).to_contain_text("Not kept, as these are example values")
    page.get_by_role("button", name="Clear the examples").click()
    page.get_by_text("What is assumed: give yours").click()
    page.fill("[name=day]", "2026-11-24")
    for name, text in {"fuel_before": "118", "fuel_after": "116", "oxygen_before": "1500",
                       "oxygen_after": "1300", "planned_fuel": "24"}.items():  # fmt: skip
        give(page, f"[name={name}]", text)
    page.get_by_role("button", name="Keep this lesson").click()
    expect(page.locator("[data-log-said]")).to_contain_text("kept on this device", timeout=60_000)
    page.reload()
    row = page.locator("[data-log-list] tbody tr")
    expect(row).to_have_count(1, timeout=60_000)
    expect(row).to_contain_text("2026-11-24")
    with page.expect_download() as saving:
        page.get_by_role("button", name="Kept lessons as CSV").click()
    saving.value.save_as(tmp_path / "log.csv")
    heads, line = csv.reader((tmp_path / "log.csv").read_text(encoding="utf-8").splitlines())
    assert dict(zip(heads, line, strict=True))["Day"] == "2026-11-24"
    assert float(line[2]) == pytest.approx(2 * 14.7, rel=3e-3)
    page.on("dialog", lambda asked: asked.accept())
    page.get_by_role("button", name="Delete lesson 1").click()
    expect(page.locator("[data-log-list]")).to_contain_text("No lesson is kept")
    assert page.evaluate("localStorage.getItem('log-gas-log')") is None


def test_every_card_fits_the_two_sides_of_one_sheet_of_either_paper(page: Page) -> None:
    page.goto("class/pack/")
    for rules in RULE_SETS:
        made = "".join(card_html(one, rules, LONG_SITE) for one in titles())
        page.evaluate("made => { document.querySelector('[data-pack-sheets]').innerHTML = made; }", made)
        for size in ("A4", "Letter"):
            printed = page.pdf(format=size)
            assert len(re.findall(rb"/Type\s*/Page\b(?!s)", printed)) == 2 * len(titles()), (rules, size)


def test_a_pack_holds_the_pages_handed_out_with_their_answers(page: Page, host: Any) -> None:
    page.goto("class/pack/?v=1&exercise_1=corner&exercise_2=cut&learners=3&rules=us")
    form = page.locator("[data-pack-form]")
    expect(form.locator("[data-exercise][value=cut]")).to_be_checked()
    form.locator("[data-page-link]").fill("https://example.org/?v=1")
    form.get_by_role("button", name="Add this link").click()
    expect(form.locator("[data-pack-said]")).to_contain_text("leads out of this site")
    form.locator("[data-page-link]").fill(f"{host.address}{OXYGEN}?v=1&gauge=640+psi&rules=us")
    form.get_by_role("button", name="Add this link").click()
    form.locator("[data-page-choice]").select_option(label="Hot-work permit")
    form.get_by_role("button", name="Add this page").click()
    form.get_by_role("button", name="Make the sheets").click()
    expect(form.locator("[data-pack-said]")).to_contain_text("sheets are ready", timeout=60_000)
    sheets = page.locator("[data-sheet-page]")
    assert sheets.nth(0).get_attribute("data-sheet-page") == "cover"
    oxygen = sheets.filter(has=page.locator("h1", has_text="Oxygen left"))
    wanted = answered("oxygen-left", gauge="640 psi", water_volume="43 L")["results"]["gas_left"]["text"]
    assert wanted in values_of(oxygen)
    expect(page.locator(".bb-pack-handout form")).to_have_count(0)
    expect(page.locator("[data-card] .bb-card-code svg")).to_have_count(2)
    page.emulate_media(media="print")
    permit = sheets.filter(has=page.locator("h1", has_text="Hot-work permit"))
    expect(permit.locator(".bb-sheet")).to_be_visible()
    expect(permit.locator(".bb-calculator").first).to_be_hidden()
    expect(form).to_be_hidden()


def values_of(sheet: Any) -> list[str]:
    """Texts of the results on a sheet, whose hooks are gone."""
    return [" ".join(text.split()) for text in sheet.locator(".bb-value").all_text_contents()]
