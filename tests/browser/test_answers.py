"""A form on a page: what it shows, asks and refuses."""

import re
from typing import Any

import pytest
from playwright.sync_api import Page, Route, expect

from calc.answer.answering import answer as fresh_answer
from calc.ask.errors import InputError
from tests.browser.asking import (
    GAUGE,
    OXYGEN,
    answer,
    give,
    go,
    new_answer,
    texts_of,
    values,
    wait_for_engine,
)

pytestmark = pytest.mark.browser


def _fresh(calculator: str, texts: dict[str, str]) -> list[str]:
    """Texts of the results as Python gives them here, or its sentences."""
    try:
        results = fresh_answer(calculator, **texts)["results"].values()
    except InputError as error:
        return [each["message"] for each in error.listed()]
    return [" ".join(result["text"].split()) for result in results]


def test_without_a_script_every_example_is_answered(visit: Any, unlike: list[str]) -> None:
    page = visit(java_script_enabled=False)
    count = 0
    for address in unlike:
        page.goto(address)
        for block in page.locator("[data-calculator]").all():
            count += 1
            assert values(block) == _fresh(block.get_attribute("data-calculator"), texts_of(block))
    assert count > 0


def test_every_calculator_answers_in_the_page_as_at_the_desk(page: Page, unlike: list[str]) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    for address in unlike:
        go(page, address)
        for block in page.locator("[data-calculator]").all():
            calculator = block.get_attribute("data-calculator") or ""
            status = block.locator("[data-engine]")
            block.locator("[data-rules-choice]").select_option("uk")
            block.locator("[type=submit]").click()
            expect(status).to_contain_text(re.compile("New answer|No answer"))
            errors = block.locator("[data-error]:visible").all_inner_texts()
            assert values(block) + errors == _fresh(calculator, texts_of(block))


def test_leaving_a_field_gives_a_new_answer(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    with new_answer(page):
        give(page, GAUGE, "1000")
    assert values(page.locator("[data-calculator]"))[0].startswith(
        _fresh("oxygen-left", {"water_volume": "43 L", "gauge": "1000 psi"})[0]
    )
    expect(page.locator("[data-engine]")).to_contain_text("New answer.")


def test_a_keystroke_greys_the_answer_and_asks_nothing(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    before = answer(page).inner_html()
    page.locator(GAUGE).press_sequentially("7")
    expect(page.get_by_text("Inputs changed: this answer is of earlier values.")).to_be_visible()
    page.wait_for_timeout(300)
    assert answer(page).inner_html() == before
    assert answer(page).get_attribute("data-stale") == ""


@pytest.mark.parametrize("text", ["1,234", "9000", "-3", "twelve", "12 kg", "NaN", "1e999"])
def test_a_bad_input_gets_a_sentence_and_no_number(page: Page, text: str) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    with new_answer(page):
        give(page, GAUGE, text)
    error = page.locator("[data-field=gauge] [data-error]")
    label = page.locator("[data-field=gauge] label").inner_text().split(" (")[0]
    expect(error).to_be_visible()
    assert error.inner_text().startswith(f"{label}: ")
    box = page.locator(GAUGE)
    assert box.input_value() == text
    assert box.get_attribute("aria-invalid") == "true"
    assert error.get_attribute("id") in (box.get_attribute("aria-describedby") or "").split()
    assert not any(sign.isdigit() for sign in answer(page).inner_text())
    with new_answer(page):
        give(page, GAUGE, "800")
    expect(error).to_be_hidden()
    assert box.get_attribute("aria-invalid") is None


def test_calculate_moves_to_the_first_field_in_error(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    page.fill(GAUGE, "")
    page.press(GAUGE, "Enter")
    expect(page.locator("[data-field=gauge] [data-error]")).to_be_visible()
    expect(page.locator(GAUGE)).to_be_focused()


def test_leaving_a_field_in_error_does_not_pull_the_reader_back(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    page.fill(GAUGE, "twelve")
    page.press(GAUGE, "Tab")
    expect(page.locator("[data-field=gauge] [data-error]")).to_be_visible()
    expect(page.locator("[name=gauge-unit]")).to_be_focused()


def test_a_thousand_changes_of_unit_leave_the_value_as_it_was(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    give(page, GAUGE, "1501")
    expect(page.locator("[data-engine]")).to_contain_text("New answer.")
    before = values(page.locator("[data-calculator]"))
    address = page.url
    page.evaluate(
        """async () => {
            const unit = document.querySelector("[name=gauge-unit]");
            for (let turn = 0; turn < 1000; turn += 1) {
                unit.selectedIndex = (unit.selectedIndex + 1) % unit.options.length;
                for (const kind of ["input", "change"]) {
                    unit.dispatchEvent(new Event(kind, { bubbles: true }));
                }
                if (turn % 20 === 0) await new Promise((done) => setTimeout(done, 5));
            }
        }"""
    )
    page.select_option("[name=gauge-unit]", "bar")
    # 1501 psi x 0.0689476 bar/psi = 103.490
    expect(page.locator(GAUGE)).to_have_value(re.compile(r"^103\.49\d*$"))
    page.get_by_role("button", name="Calculate").click()
    expect(page.locator("[data-engine]")).to_contain_text("New answer.")
    assert values(page.locator("[data-calculator]")) == before
    assert page.url == address
    page.select_option("[name=gauge-unit]", "psi")
    expect(page.locator(GAUGE)).to_have_value("1501")


def test_the_examples_are_marked_and_go_with_one_tap(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    assert "Example value." in page.locator("[data-field=gauge] .bb-hint").inner_text()
    page.get_by_role("button", name="Clear the examples").click()
    assert page.input_value(GAUGE) == ""
    assert not any(sign.isdigit() for sign in answer(page).inner_text())
    assert "Example value." not in page.locator("[data-field=gauge] .bb-hint").inner_text()
    give(page, GAUGE, "800")
    page.wait_for_timeout(300)
    expect(page.locator("[data-error]:visible")).to_have_count(0)  # untouched fields wait


def test_the_rule_set_is_kept_for_other_pages(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    with new_answer(page):
        page.select_option("[data-rules-choice]", "uk")
    expect(page.locator(".bb-release")).to_contain_text("United Kingdom")
    page.goto("./")
    assert page.locator("html").get_attribute("data-rules") == "uk"
    page.goto(OXYGEN)
    assert page.input_value("[data-rules-choice]") == "uk"
    assert answer(page).get_attribute("data-stale") == ""
    expect(page.locator(".bb-release")).to_contain_text("United Kingdom", timeout=60_000)


def test_a_dear_line_waits_for_the_first_touch(visit: Any) -> None:
    page = visit(service_workers="block")
    page.add_init_script("Object.defineProperty(navigator, 'connection', {value: {saveData: true}})")
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(OXYGEN)
    expect(page.locator("[data-engine]")).to_contain_text("when you touch a field")
    page.wait_for_timeout(500)
    assert not [url for url in asked if url.endswith((".xz", "worker.js"))]
    page.focus(GAUGE)
    wait_for_engine(page)


def test_an_engine_that_cannot_start_is_said_and_the_example_stays(visit: Any) -> None:
    page = visit(service_workers="block")
    page.route(
        "**/assets/engine/engine.js", lambda route: route.fulfill(body="", content_type="text/javascript")
    )
    page.goto(OXYGEN)
    before = values(page.locator("[data-calculator]"))
    expect(page.locator("[data-engine]")).to_contain_text("Use the table on this page")
    assert values(page.locator("[data-calculator]")) == before


def test_words_say_when_the_engine_takes_long(visit: Any) -> None:
    page = visit(service_workers="block")
    stub = "export const onProgress = () => {}; export const startEngine = () => new Promise(() => {});"
    page.route(
        "**/assets/engine/engine.js",
        lambda route: route.fulfill(body=stub, content_type="text/javascript"),
    )
    page.clock.install()
    page.goto(OXYGEN)
    page.clock.run_for(5_000)
    expect(page.locator("[data-engine]")).to_contain_text("Starting")
    page.clock.run_for(21_000)
    expect(page.locator("[data-engine]")).to_contain_text("takes long")


def test_an_example_follows_the_rule_set_and_what_was_typed_stays(page: Page) -> None:
    page.goto("./")
    wait_for_engine(page)
    thickness = page.locator("[name=thickness]")
    page.locator("[name=rules]").select_option("iso")
    expect(thickness).to_have_value("1.5")
    expect(page.locator("[name=thickness-unit]")).to_have_value("mm")
    expect(page.locator(".bb-release")).to_contain_text("Europe")
    page.locator("[name=rules]").select_option("us")
    expect(thickness).to_have_value("16 ga")
    give(page, "[name=thickness]", "14 ga")
    page.locator("[name=rules]").select_option("iso")
    expect(page.locator("[data-field=thickness] [data-error]")).to_contain_text("write millimetres")
    expect(thickness).to_have_value("14 ga")


def test_what_is_typed_before_the_scripts_are_there_is_not_the_example(page: Page) -> None:
    held: list[Route] = []
    page.route("**/assets/page/main.js", lambda route: held.append(route))  # noqa: PLW0108 - a built-in takes no mark
    page.goto(OXYGEN, wait_until="commit")
    page.locator(GAUGE).fill("700")
    before = values(page.locator("[data-calculator]"))
    while not held:
        page.wait_for_timeout(50)
    held[0].continue_()
    wanted = fresh_answer("oxygen-left", gauge="700 psi", water_volume="43 L")["results"]["gas_left"]["text"]
    expect(page.locator("[data-result=gas_left] .bb-value")).to_have_text(wanted, timeout=60_000)
    assert values(page.locator("[data-calculator]")) != before
    assert page.input_value(GAUGE) == "700"
