"""A learner at a set on a phone whose host is gone."""

import math
import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import ENGINE_STARTS, Server

pytestmark = pytest.mark.browser

SAID = "[data-practice-said]"
BOX = "[data-practice-answer]"
SET = "class/practice/?v=1&rules=us&calculator_1=hose-volume&seed=7&problems=2&help=bare"  # no two slips give one figure here


@pytest.fixture
def phone(browser: Browser, host: Server) -> Iterator[Page]:
    """A visit that loses its host on the way, so the console is not watched."""
    context = browser.new_context(base_url=host.address, viewport={"width": 360, "height": 640})
    yield context.new_page()
    context.close()
    host.stop()
    host.start()


def _number(text: str) -> float:
    return sum(
        float(part.split("/")[0]) / float(part.split("/")[1]) if "/" in part else float(part)
        for part in re.findall(r"[\d./]+", text)
    )


def _cubic_inches(page: Page) -> tuple[float, float]:
    """Inside of one hose and of all, by the circle's area; from what the page gives."""
    bore, length, hoses = (
        _number(page.locator("[data-practice-question] li", has_text=label).first.inner_text().split(":")[1].rstrip("."))
        for label in ("Bore of the hose", "Length of the hose", "Number of hoses")
    )
    one = math.pi / 4 * bore**2 * length * 12
    return one, one * hoses


def _answer(page: Page, text: str) -> None:
    page.fill(BOX, text)
    page.press(BOX, "Enter")


def test_a_set_is_worked_to_its_end_without_a_host(phone: Page, host: Server) -> None:
    phone.goto(SET)
    expect(phone.locator(BOX)).to_be_visible(timeout=ENGINE_STARTS)
    phone.wait_for_function("() => navigator.serviceWorker.controller !== null", timeout=ENGINE_STARTS)
    expect(phone.locator("[data-offline] [role=status]")).to_contain_text("Ready offline", timeout=ENGINE_STARTS)
    host.stop()
    phone.reload()
    expect(phone.locator(BOX)).to_be_visible(timeout=ENGINE_STARTS)

    _answer(phone, "<b>3</b>")
    expect(phone.locator(SAID)).to_contain_text("is not a number")
    one, every = _cubic_inches(phone)
    slipped = one if every > one else 2 * one
    _answer(phone, f"{slipped:.2f} in^3")
    expect(phone.locator(SAID)).to_contain_text("known slip: that is for")
    expect(phone.locator(SAID)).to_contain_text("It comes back at the end.")
    phone.get_by_role("button", name="Next").click()

    expect(phone.locator("[data-practice-question] h3")).to_contain_text("2 of 2")
    _answer(phone, f"{_cubic_inches(phone)[1] * 0.016387064:.5f} L")
    expect(phone.locator(SAID)).to_contain_text("Right.")

    phone.reload()  # how far it was stays on the device
    expect(phone.locator(SAID)).to_contain_text("This one was missed before", timeout=ENGINE_STARTS)
    expect(phone.locator("[data-practice-question] h3")).to_contain_text("1 of 2")
    expect(phone.get_by_text("Steps to complete", exact=True)).to_be_visible()  # with more help than at first
    _answer(phone, f"{_cubic_inches(phone)[1]:.3f} in^3")
    expect(phone.locator(SAID)).to_contain_text("Right.")
    phone.get_by_role("button", name="To the end").click()
    expect(phone.locator("[data-practice-question]")).to_contain_text("All 2 right.")
    assert phone.evaluate("document.cookie") == ""


def test_a_flame_is_named_and_the_reader_is_told_what_is_seen(page: Page) -> None:
    page.goto("class/flame-trainer/?v=1&seed=3&flames=2")
    question = page.locator("[data-practice-question]")
    expect(question.locator("fieldset")).to_have_count(2, timeout=ENGINE_STARTS)
    assert (question.locator("svg desc").text_content() or "").startswith("Seen: ")
    page.get_by_role("button", name="Check").click()
    expect(page.locator(SAID)).to_contain_text("pick one in each part")
    for part in question.locator("fieldset").all():
        part.locator("label").first.click()
    page.get_by_role("button", name="Check").click()
    expect(page.locator(SAID)).to_contain_text(re.compile("Right|Not yet"))
    expect(page.get_by_role("link", name="Read it on its page")).to_have_attribute(
        "href", re.compile("/flame/set-the-flame/$")
    )
