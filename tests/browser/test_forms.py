"""A sheet is kept on this device, printed whole, cleared on a tap, and sent to nobody."""

import re
from datetime import UTC, datetime
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from calc.answer.answering import answer as fresh_answer
from tests.browser.asking import OXYGEN, go, wait_for_engine

pytestmark = pytest.mark.browser

PERMIT = "class/permit/"
HAZARDS = "class/hazard-sheet/"
PLACE = "[data-keep=place]"
MARKUP = '<img src=x onerror=alert(1)> & "quotes" \''
LONG = "Behind the north wall, above the ceiling and along the steam pipe to the boiler room. " * 4


def figure(page: Page, name: str) -> str:
    return page.locator(f'[data-figure="{name}"]').inner_text()


def clear(page: Page, agree: bool = True) -> None:
    page.once("dialog", lambda asked: asked.accept() if agree else asked.dismiss())
    page.get_by_role("button", name="Clear this sheet").click()


def test_what_is_typed_and_ticked_is_kept(page: Page, addresses: list[str]) -> None:
    page.goto(PERMIT)
    page.fill(PLACE, "Shed, bench 3")
    page.check("[data-keep=cleared]")
    page.reload()
    expect(page.locator(PLACE)).to_have_value("Shed, bench 3")
    expect(page.locator("[data-keep=cleared]")).to_be_checked()
    expect(page.locator("[data-kept]")).to_contain_text("last written")
    for end in (OXYGEN, PERMIT):
        go(page, next(address for address in addresses if address.endswith(end)))
    expect(page.locator(PLACE)).to_have_value("Shed, bench 3")


def test_the_button_clears_all_and_only_when_it_is_meant(page: Page) -> None:
    page.goto(PERMIT)
    page.fill(PLACE, "Shed, bench 3")
    page.check("[data-keep=cleared]")
    clear(page, agree=False)
    expect(page.locator(PLACE)).to_have_value("Shed, bench 3")
    clear(page)
    expect(page.locator(PLACE)).to_have_value("")
    expect(page.locator("[data-keep=cleared]")).not_to_be_checked()
    assert page.evaluate("Object.keys(localStorage).filter((key) => key.startsWith('sheet'))") == []
    page.reload()
    expect(page.locator(PLACE)).to_have_value("")


def test_nothing_that_is_typed_leaves(page: Page) -> None:
    page.goto(PERMIT)
    wait_for_engine(page)
    asked: list[tuple[str, str]] = []
    page.on("request", lambda request: asked.append((request.method, request.url)))
    page.locator(PLACE).press_sequentially("Shed 3")
    page.check("[data-keep=cleared]")
    page.locator(PLACE).press("Enter")
    page.wait_for_timeout(300)
    own_list = [("GET", page.evaluate("new URL('release.json', document.baseURI.split('class/')[0]).href"))]
    assert [each for each in asked if each not in own_list] == [], "but the list of what is saved here"
    assert "Shed" not in page.url
    assert page.evaluate("document.cookie") == ""


def test_markup_that_is_typed_stays_text(page: Page) -> None:
    page.goto(PERMIT)
    page.fill(PLACE, MARKUP)
    page.reload()
    expect(page.locator(PLACE)).to_have_value(MARKUP)
    assert page.locator("[data-sheet] img").count() == 0


def test_ticks_of_another_shift_are_cleared_and_words_stay(visit: Any) -> None:
    page = visit(service_workers="block")
    page.clock.install(time=datetime(2026, 11, 25, 14, 0, tzinfo=UTC))
    page.goto(PERMIT)
    page.fill(PLACE, "Shed, bench 3")
    page.check("[data-keep=cleared]")
    page.clock.fast_forward("13:00:00")
    page.reload()
    expect(page.locator(PLACE)).to_have_value("Shed, bench 3")
    expect(page.locator("[data-keep=cleared]")).not_to_be_checked()
    expect(page.locator("[data-kept]")).to_contain_text("another shift")


def test_figures_are_the_answers_and_examples_are_called_so(page: Page) -> None:
    page.goto(PERMIT)
    wait_for_engine(page)
    assert "example values" in figure(page, "fire-watch:fire_watch")
    page.locator("[data-calculator=fire-watch] [name=place]").select_option("roof")
    expect(page.locator('[data-figure="fire-watch:fire_watch"]')).not_to_contain_text("example")
    wanted = fresh_answer("fire-watch", place="roof")["results"]["fire_watch"]["text"]
    expect(page.locator('[data-figure="fire-watch:fire_watch"]')).to_have_text(wanted)
    expect(page.locator("[data-basis=fire-watch]")).to_contain_text("Torch on a roof covering")
    assert "example values" in figure(page, "hot-work-zone:clear_distance"), (
        "that one is not worked out yet"
    )
    page.locator("[data-calculator=hot-work-zone] [type=submit]").click()
    expect(page.locator('[data-figure="hot-work-zone:clear_distance"]')).not_to_contain_text("example")


def test_a_figure_goes_when_its_answer_does(page: Page) -> None:
    page.goto(PERMIT)
    wait_for_engine(page)
    page.locator("[data-calculator=hot-work-zone] [name=height]").fill("far")
    expect(page.locator('[data-figure="hot-work-zone:clear_distance"]')).to_have_text("")
    page.locator("[data-calculator=hot-work-zone] [name=height]").blur()
    expect(page.locator("[data-calculator=hot-work-zone] [data-error]:visible")).to_have_count(1)
    expect(page.locator('[data-figure="hot-work-zone:clear_distance"]')).to_have_text("")


def test_the_hazard_sheet_has_the_link_of_its_values(page: Page) -> None:
    page.goto(HAZARDS)
    wait_for_engine(page)
    expect(page.locator("[data-link]")).to_have_text("")
    page.locator("[name=length]").fill("7 ft")
    page.locator("[name=length]").blur()
    expect(page.locator("[data-link]")).to_contain_text("length=7+ft")
    page.goto(page.locator("[data-link]").inner_text())
    expect(page.locator("[data-basis]")).to_contain_text("7 ft", timeout=60_000)


@pytest.mark.parametrize("address", [PERMIT, HAZARDS])
@pytest.mark.parametrize("size", ["Letter", "A4"])
def test_a_sheet_prints_alone_on_two_pages_at_most(page: Page, address: str, size: str) -> None:
    page.goto(address)
    wait_for_engine(page)
    for block in page.locator("[data-calculator]").all():
        block.locator("[type=submit]").click()
    expect(page.locator("[data-basis]").first).to_be_visible()
    for box in page.locator("[data-sheet] textarea").all():
        box.fill("A dozen words that somebody wrote here.")
    printed = page.pdf(format=size, margin=dict.fromkeys(("top", "bottom", "left", "right"), "12mm"))
    assert 1 <= len(re.findall(rb"/Type\s*/Page\b(?!s)", printed)) <= 2


def test_paper_has_all_that_was_typed_and_no_calculator(page: Page) -> None:
    page.goto(PERMIT)
    page.fill("[data-keep=more]", LONG[:400])
    page.fill(PLACE, LONG[:400])
    page.emulate_media(media="print")
    for box in ("[data-keep=more]", PLACE):
        assert page.locator(box).input_value() == LONG[:400]
        cut = page.locator(box).evaluate("box => box.scrollHeight - box.clientHeight")
        assert cut <= 1, "the box is as high as its text"
    expect(page.locator("[data-calculator]").first).to_be_hidden()
    expect(page.get_by_text("Not valid until signed.").first).to_be_visible()
    expect(page.get_by_text("Signature").first).to_be_visible()
    expect(page.get_by_role("button", name="Clear this sheet")).to_be_hidden()


@pytest.mark.parametrize("address", [PERMIT, HAZARDS])
def test_without_a_script_a_sheet_is_blank_lines(visit: Any, address: str) -> None:
    page = visit(java_script_enabled=False)
    page.goto(address)
    expect(page.locator("[data-sheet]")).to_contain_text("print the sheet and write by hand")
    for place in page.locator("[data-figure]").all():
        assert place.inner_text() == ""
        assert place.bounding_box()["width"] > 50
