"""The plan of a class in a browser: its files, and the one page for the wall."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.asking import wait_for_engine

pytestmark = pytest.mark.browser


def test_the_plan_offers_its_files_and_hangs_on_one_page(page: Page) -> None:
    page.goto("./class/plan-a-class/?v=1&rules=iso&learners=12&benches=6&session_length=3+h&exercise_1=corner"
              "&exercise_2=braze&day=2026-11-25&fuel_price=40")  # fmt: skip
    wait_for_engine(page)
    block = page.locator("[data-calculator=class-plan]")
    with page.expect_download() as saved:
        block.get_by_role("button", name="Plan for a calendar").click()
    assert saved.value.suggested_filename == "class-plan.ics"
    page.evaluate("() => { window.print = () => { document.documentElement.dataset.printed = ''; }; }")
    block.get_by_role("button", name="Print on one page").click()
    expect(page.locator("html[data-printed][data-one-page]")).to_be_attached()
    again = (
        "() => { document.documentElement.dataset.onePage = ''; "
        "document.querySelector('[data-calculator]').dataset.onPaper = ''; }"
    )
    for size in ("A4", "Letter"):
        page.evaluate(again)
        printed = page.pdf(format=size)
        assert len(re.findall(rb"/Type\s*/Page\b(?!s)", printed)) == 1, size
    page.emulate_media(media="print")
    page.evaluate(again)
    expect(block.get_by_role("region", name="Turns of session 1")).to_be_visible()
    expect(block.locator("[data-result=fire_watch]")).to_be_visible()
