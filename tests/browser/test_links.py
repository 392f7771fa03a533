"""Links with values: as typed, checked, never trusted."""

from typing import Any
from urllib.parse import parse_qsl, urlencode, urlsplit

import pytest
from playwright.sync_api import Page, expect

from tests.browser.asking import GAUGE, OXYGEN, answer, give, new_answer, values, wait_for_engine

pytestmark = pytest.mark.browser

MARKUP = "<img src=x onerror=\"window.marked='markup'\">"


def _link(**texts: str) -> str:
    return f"{OXYGEN}?{urlencode({'v': '1'} | texts)}"


def test_a_link_restores_what_was_typed(page: Page) -> None:
    page.goto(_link(rules="iso", water_volume="43 L", gauge="5,5 bar"))
    assert page.input_value(GAUGE) == "5,5"
    assert page.input_value("[name=gauge-unit]") == "bar"
    expect(page.get_by_text("Values set by the link")).to_be_visible()
    expect(page.locator(".bb-release")).to_contain_text("Europe", timeout=60_000)
    assert page.locator("html").get_attribute("data-rules") == "iso"


def test_a_link_behind_the_hash_is_read_too(page: Page) -> None:
    page.goto(f"{OXYGEN}#{urlencode({'v': '1', 'gauge': '700 psi'})}")
    expect(page.locator(GAUGE)).to_have_value("700")


def test_a_gauge_number_comes_back_as_typed(page: Page) -> None:
    page.goto("set-up/sheet-thickness/?v=1&gauge=16+ga")
    expect(page.get_by_text("Values set by the link")).to_be_visible()
    assert page.input_value(GAUGE) in ("16 ga", "16")
    page.get_by_role("button", name="Calculate").click()
    expect(page.locator("[data-engine]")).to_contain_text("New answer.", timeout=60_000)
    page.locator("details:has([name=metal])").evaluate("fold => { fold.open = true }")
    page.locator("[name=metal]").select_option(index=2)
    page.wait_for_url("**gauge=16+ga**")


def test_the_link_of_a_form_keeps_the_order_of_its_fields(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    with new_answer(page):
        give(page, GAUGE, "1 200")  # refused: two numbers
    with new_answer(page):
        give(page, GAUGE, "1200 psig")
    names = [name for name, _ in parse_qsl(urlsplit(page.url).query)]
    order = page.locator("[data-field]").evaluate_all("all => all.map(each => each.dataset.field)")
    assert names[0] == "v"
    assert names[1:] == [name for name in order if name in names]
    assert dict(parse_qsl(urlsplit(page.url).query))["gauge"] == "1200 psig"


def test_a_bad_value_in_a_link_is_an_error_beside_its_field(page: Page) -> None:
    page.goto(_link(gauge="1,234 psi", gas="phlogiston"))
    expect(page.locator("[data-field=gauge] [data-error]")).to_be_visible(timeout=60_000)
    expect(page.locator("[data-field=gas] [data-error]")).to_be_visible()
    assert not any(sign.isdigit() for sign in answer(page).inner_text())


def test_an_unknown_name_in_a_link_is_named(page: Page) -> None:
    page.goto(_link(gauge="900 psi", colour="blue"))
    expect(page.locator("[data-link-note]")).to_contain_text("“colour”")


def test_a_later_form_of_link_is_named(page: Page) -> None:
    page.goto(f"{OXYGEN}?v=9&gauge=900+psi")
    expect(page.locator("[data-link-note]")).to_contain_text("“9”")


@pytest.mark.parametrize("name", ["gauge", "rules", "gas", MARKUP])
def test_markup_in_a_link_is_shown_as_text(page: Page, name: str) -> None:
    page.goto(_link(**{name: MARKUP}))
    wait_for_engine(page)
    page.get_by_role("button", name="Calculate").click()
    page.wait_for_timeout(400)
    assert page.evaluate("window.marked") is None
    assert page.locator("[data-calculator] img").count() == 0


def test_markup_typed_is_shown_as_text(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    with new_answer(page):
        give(page, GAUGE, MARKUP)
    expect(page.locator("[data-field=gauge] [data-error]")).to_contain_text("<img")
    assert page.evaluate("window.marked") is None
    assert page.locator("[data-calculator] img").count() == 0


def test_the_values_of_a_link_can_be_put_back(page: Page) -> None:
    page.goto(OXYGEN)
    before = values(page.locator("[data-calculator]"))
    page.goto(_link(gauge="300 psi"))
    page.get_by_role("button", name="Back to the examples").click()
    assert values(page.locator("[data-calculator]")) == before
    assert urlsplit(page.url).query == ""
    assert page.locator("[data-calculator]").get_attribute("data-changed") is None


def test_a_link_beats_the_stored_rule_set(page: Page) -> None:
    page.goto(OXYGEN)
    page.evaluate("localStorage.setItem('benchbook-rules', 'uk')")
    page.goto(_link(rules="iso", gauge="100 bar"))
    expect(page.locator(".bb-release")).to_contain_text("Europe", timeout=60_000)
    assert page.evaluate("localStorage.getItem('benchbook-rules')") == "uk"


def test_the_answer_is_copied_with_all_that_stands_behind_it(visit: Any) -> None:
    page = visit(service_workers="block", permissions=["clipboard-read", "clipboard-write"])
    page.goto(OXYGEN)
    wait_for_engine(page)
    page.get_by_role("button", name="Copy as text").click()
    expect(page.locator("[data-copied]")).to_contain_text("copied")
    text = page.evaluate("navigator.clipboard.readText()")
    shown = values(page.locator("[data-calculator]"))
    assert shown[0] in text
    assert page.input_value(GAUGE) in text
    for word in ("WARNING", "Source ", "Release ", "?v=1&", "(assumed)"):
        assert word in text


def test_the_square_code_is_drawn_and_printed(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    with new_answer(page):
        give(page, GAUGE, "640")
    figure = page.locator("[data-square]")
    expect(figure.locator("svg")).to_have_count(1)
    expect(figure).to_be_hidden()
    page.get_by_role("button", name="Square code").click()
    expect(figure).to_be_visible()
    assert "gauge=640" in figure.locator("figcaption").inner_text()
    page.get_by_role("button", name="Square code").click()
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    expect(figure).to_be_visible()


def test_without_a_clipboard_there_is_a_box_to_copy_from(page: Page) -> None:
    page.add_init_script("Object.defineProperty(navigator, 'clipboard', {value: undefined})")
    page.goto(OXYGEN)
    page.get_by_role("button", name="Copy link").click()
    assert "?v=1&" in page.locator("[data-copy-box] textarea").input_value()


def test_changing_the_address_keeps_the_place_in_the_page(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    page.evaluate("history.replaceState({y: 40}, '')")
    with new_answer(page):
        give(page, GAUGE, "640")
    page.wait_for_url("**gauge=640**")
    assert "y" in page.evaluate("history.state")
