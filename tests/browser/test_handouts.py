"""The sheets of the licence print on one page each, and the paper prints without its answers."""

import re

import pytest
from playwright.sync_api import Page, expect

from calc.practice.licence import asked

pytestmark = pytest.mark.browser

MARGINS = dict.fromkeys(("top", "bottom", "left", "right"), "12mm")


@pytest.mark.parametrize("name", ["licence-check", "licence-record"])
@pytest.mark.parametrize("size", ["Letter", "A4"])
def test_a_sheet_of_the_licence_prints_on_one_page(page: Page, name: str, size: str) -> None:
    page.goto(f"class/{name}/")
    for box in page.locator("textarea").all():
        box.fill("Bench three, equal pressure")
    printed = page.pdf(format=size, margin=MARGINS)
    assert len(re.findall(rb"/Type\s*/Page\b", printed)) == 1


def test_the_paper_shows_one_rule_set_and_prints_alone(page: Page) -> None:
    page.goto("class/licence/")
    page.locator("[data-rules-choice]").select_option("uk")
    expect(page.locator(".bb-question:visible")).to_have_count(len(asked("uk")))
    page.emulate_media(media="print")
    expect(page.get_by_role("heading", name="What can go wrong")).to_be_hidden()
    expect(page.locator(".bb-question:visible")).to_have_count(len(asked("uk")))
