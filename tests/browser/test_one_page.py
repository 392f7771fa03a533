"""A job sheet of each kind of work on one sheet of paper, with the code that opens it again."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.asking import wait_for_engine

pytestmark = pytest.mark.browser

JOBS = {
    "weld": "",
    "braze-weld": "process=braze-welding&metal=cast-iron&thickness=8+mm&joint=single-v&length=100+mm&rules=uk",
    "braze": "process=brazing&other_metal=copper&thickness=1.1+mm&form=sleeve&diameter=22+mm&rules=iso",
    "solder": "process=soldering&metal=copper&tube_service=drinking-water",
    "cut": "process=cutting&thickness=1/4+in&length=8+ft&fuel=propane",
    "heat": "process=heating&thickness=3/8+in&length=6+in&heat=straighten",
}


@pytest.mark.parametrize("query", JOBS.values(), ids=list(JOBS))
def test_each_kind_of_work_prints_on_one_page(page: Page, query: str) -> None:
    page.goto(f"./?v=1&{query}" if query else "./")
    wait_for_engine(page)
    page.evaluate("() => { window.print = () => { document.documentElement.dataset.printed = ''; }; }")
    block = page.locator("[data-calculator=job-sheet]")
    expect(block.locator("[data-error]:visible")).to_have_count(0)
    block.get_by_role("button", name="Print on one page").click()
    expect(page.locator("html[data-printed][data-one-page]")).to_be_attached()
    for size in ("A4", "Letter"):
        page.evaluate(
            "() => { document.documentElement.dataset.onePage = ''; "
            "document.querySelector('[data-calculator]').dataset.onPaper = ''; }"
        )
        printed = page.pdf(format=size)
        assert len(re.findall(rb"/Type\s*/Page\b(?!s)", printed)) == 1, size
    page.emulate_media(media="print")
    page.evaluate(
        "() => { document.documentElement.dataset.onePage = ''; "
        "document.querySelector('[data-calculator]').dataset.onPaper = ''; }"
    )
    expect(block.locator("[data-square] svg")).to_be_visible()
    expect(block.locator(".bb-caution").first).to_be_visible()
    expect(block.locator("[data-result=fire_watch]")).to_be_visible()


def test_fields_follow_the_kind_of_work(page: Page) -> None:
    page.goto("./")
    wait_for_engine(page)
    form = page.locator("[data-calculator=job-sheet] [data-form]")
    expect(form.locator("[data-field=joint]")).to_be_visible()
    expect(form.locator("[data-field=tube_service]")).to_be_hidden()
    form.locator("[name=process]").select_option("soldering")
    expect(form.locator("[data-field=joint]")).to_be_hidden()
    expect(form.locator("[data-field=tube_service]")).to_be_visible()
    form.locator("[name=metal]").select_option("copper")
    answer = page.locator("[data-calculator=job-sheet] [data-answer]")
    expect(answer.locator("[data-result=cup_depth]")).to_be_visible()
    expect(answer.locator("[data-result=travel_speed]")).to_have_count(0)
    assert "joint=outside-corner" not in page.url
    form.locator("[name=process]").select_option("cutting")
    expect(form.locator("[data-field=metal] [data-error]")).to_contain_text("copper is not cut so")
    expect(answer.locator("[data-result]")).to_have_count(0)


def test_a_link_opens_the_fields_that_it_fills(page: Page) -> None:
    page.goto(f"./?v=1&{JOBS['cut']}")
    wait_for_engine(page)
    form = page.locator("[data-calculator=job-sheet] [data-form]")
    expect(form.locator("[data-field=pierces]")).to_be_attached()
    expect(form.locator("[data-field=joint]")).to_be_hidden()
    expect(page.locator("[data-calculator=job-sheet] [data-result=kerf]")).to_be_visible()
