"""An outfit is entered once, kept on this device only, and used wherever it is asked."""

import json
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import Page, expect

from calc.answer.answering import answer as fresh_answer
from tests.browser.asking import go, values, wait_for_engine
from tests.browser.conftest import ENGINE_STARTS
from tests.browser.test_access import _load_axe as load_axe
from tests.browser.test_access import _violations as violations

pytestmark = pytest.mark.browser

MINE = "set-up/my-outfit/"
HOSE = "set-up/hose-volume/"
LINE = "[data-outfit-line]"
KEY = "benchbook-outfit"
BORE = "[name=hose_bore]"
MARKUP = "<img src=x onerror=alert(1)>"


def press(page: Page, name: str) -> None:
    page.get_by_role("button", name=name, exact=True).click()


def unfold(page: Page) -> None:
    page.locator("details.bb-assumed").evaluate_all("all => all.forEach(fold => { fold.open = true })")


def enter(page: Page) -> None:
    unfold(page)
    page.locator("[name=history]").select_option("known")
    page.locator("[name=flashback]").select_option("none")
    page.fill(BORE, "5/16")
    page.fill("[name=hose_length]", "50")
    page.fill("[name=oxygen_water_volume]", "20")
    page.fill("[name=tip_1_label]", "blue handle")
    page.locator("[name=tip_1_use]").select_option("welding")
    page.fill("[name=tip_1_orifice]", "#68")
    page.fill("[name=tip_1_oxygen_gauge]", "4")
    page.fill("[name=hoses_made]", "2024-05-01")
    page.locator("[name=hoses_made]").blur()


def keep(page: Page) -> None:
    page.goto(MINE)
    wait_for_engine(page)
    enter(page)
    press(page, "Keep on this phone")
    expect(page.locator(LINE)).to_contain_text("Kept on this phone", timeout=ENGINE_STARTS)


def kept(page: Page) -> Any:
    return page.evaluate(f"localStorage.getItem('{KEY}')")


def choose(page: Page, content: str, tmp_path: Path, name: str = "any.json") -> None:
    path = tmp_path / name
    path.write_text(content, encoding="utf-8")
    with page.expect_file_chooser() as asked:
        press(page, "Open a file")
    asked.value.set_files(path)


def test_an_empty_form_says_no_before_and_after_python(page: Page) -> None:
    page.goto(MINE)
    expect(page.locator("[data-result=use_it]")).to_contain_text("No. ")
    wait_for_engine(page)
    expect(page.locator("[data-result=use_it]")).to_contain_text("No. ")
    expect(page.locator(LINE)).to_contain_text("Nothing is kept")
    expect(page.get_by_text("are examples")).to_have_count(0)


def test_what_is_kept_is_there_after_a_reload_and_nothing_of_it_leaves(page: Page) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(f"{request.url} {request.post_data}"))
    keep(page)
    assert urlsplit(page.url).query == "", "what somebody has is not in the address"
    page.reload()
    unfold(page)
    assert page.input_value(BORE) == "5/16"
    assert page.input_value("[name=tip_1_label]") == "blue handle"
    assert page.input_value("[name=tip_1_use]") == "welding"
    assert page.input_value("[name=hoses_made]") == "2024-05-01"
    expect(page.locator(LINE)).to_contain_text("kept on this phone")
    expect(page.locator("[data-result=hoses]")).to_contain_text("2029-05-01", timeout=ENGINE_STARTS)
    assert "blue" not in " ".join(asked)
    assert page.evaluate("document.cookie") == ""


def test_the_day_is_the_phones_and_is_neither_kept_nor_linked(visit: Any) -> None:
    page = visit(service_workers="block", timezone_id="UTC")
    page.clock.install(time=datetime(2029, 4, 30, 12, 0, tzinfo=UTC))
    keep(page)
    assert page.input_value("[name=today]") == "2029-04-30"
    expect(page.locator("[data-result=hoses]")).to_contain_text("due on 2029-05-01")
    assert "2029-04" not in kept(page)
    page.evaluate("Object.defineProperty(navigator, 'clipboard', {value: undefined})")
    press(page, "Copy link")
    assert "today" not in page.locator("[data-copy-box] textarea").input_value()
    page.clock.set_fixed_time(datetime(2029, 5, 1, 12, 0, tzinfo=UTC))
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    expect(page.locator("[data-result=hoses]")).to_contain_text(
        "due since 2029-05-01", timeout=ENGINE_STARTS
    )


def test_a_day_that_was_written_stays_and_an_empty_one_counts_against_it(page: Page) -> None:
    page.goto(MINE)
    wait_for_engine(page)
    assert page.input_value("[name=today]") == date.today().isoformat()
    page.fill("[name=today]", "2031-01-01")
    page.locator("[name=today]").blur()
    unfold(page)
    page.fill("[name=hoses_made]", "2026-12-31")
    page.locator("[name=hoses_made]").blur()
    expect(page.locator("[data-result=hoses]")).to_contain_text("due on 2031-12-31", timeout=ENGINE_STARTS)
    page.fill("[name=today]", "")
    page.locator("[name=today]").blur()
    expect(page.locator("[data-result=against]")).to_contain_text("no day to judge")


def test_it_is_used_on_other_pages_with_its_tip_and_the_link_carries_it(
    page: Page, addresses: list[str]
) -> None:
    keep(page)
    go(page, next(address for address in addresses if address.endswith(HOSE)))
    wait_for_engine(page)
    press(page, "Use my outfit")
    expect(page.locator("[name=bore]")).to_have_value("5/16")
    expect(page.locator("[name=length]")).to_have_value("50")
    wanted = fresh_answer("hose-volume", bore="5/16 in", length="50 ft")["results"]["volume"]["text"]
    expect(page.locator("[data-result=volume] .bb-value")).to_have_text(wanted)
    expect(page.locator("[data-engine]")).to_contain_text("From your outfit: Bore of the hose: 5/16 in")
    expect(page.locator("[data-field=bore] .bb-hint")).to_contain_text("From your outfit.")
    expect(page.locator("[data-link-note]")).to_contain_text("Values from your outfit")
    query = parse_qs(urlsplit(page.url).query)
    assert (query["bore"], query["length"]) == (["5/16 in"], ["50 ft"])
    press(page, "Back to the examples")
    expect(page.locator("[name=bore]")).to_have_value("1/4")
    expect(page.locator("[data-field=bore] .bb-hint")).not_to_contain_text("outfit")

    go(page, min(addresses, key=len))
    wait_for_engine(page)
    sheet = page.locator("[data-calculator=job-sheet]")
    unfold(page)
    press(page, "Use my outfit")
    expect(sheet.locator("[name=maker_orifice]")).to_have_value("#68")
    expect(sheet.locator("[name=maker_oxygen_gauge]")).to_have_value("4")
    expect(sheet.locator("[data-engine]")).to_contain_text("Tip: blue handle")
    page.wait_for_url("**maker_orifice=%2368**")
    shown, link = values(sheet), page.url
    page.evaluate("localStorage.clear()")
    page.goto(link)
    expect(page.locator("[data-engine]").first).to_contain_text("New answer.", timeout=ENGINE_STARTS)
    assert values(page.locator("[data-calculator=job-sheet]")) == shown


def test_no_button_where_nothing_is_kept(page: Page) -> None:
    page.goto(HOSE)
    wait_for_engine(page)
    expect(page.get_by_role("button", name="Use my outfit")).to_have_count(0)


def test_a_tip_that_no_longer_fits_goes_and_the_size_that_lacks_is_said(page: Page) -> None:
    keep(page)
    page.goto("./")
    wait_for_engine(page)
    press(page, "Use my outfit")
    expect(page.locator("[name=maker_orifice]")).to_have_value("#68")
    page.fill("[name=thickness]", "0.22 in")
    page.locator("[name=thickness]").blur()
    press(page, "Use my outfit")
    expect(page.locator("[name=maker_orifice]")).to_have_value("")
    expect(page.locator("[name=maker_oxygen_gauge]")).to_have_value("")
    expect(page.locator("[data-link-note]")).to_contain_text("number drill 54")


def test_a_value_that_is_refused_stands_beside_its_field(page: Page) -> None:
    page.goto(HOSE)
    wait_for_engine(page)
    spoiled = {"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"hose_bore": "1,234 in"}}
    page.evaluate("([key, file]) => localStorage.setItem(key, file)", [KEY, json.dumps(spoiled)])
    page.reload()
    press(page, "Use my outfit")
    expect(page.locator("[data-field=bore] [data-error]")).to_contain_text("1,234", timeout=ENGINE_STARTS)
    expect(page.locator("[name=bore]")).to_have_value("1,234")


@pytest.mark.parametrize("file", ["not a file of ours", "null", '{"texts": {"hose_bore": "<b>"}}'])
def test_what_is_kept_wrongly_breaks_no_page(page: Page, file: str) -> None:
    page.goto("404.html")
    page.evaluate("([key, file]) => localStorage.setItem(key, file)", [KEY, file])
    page.goto(HOSE)
    wait_for_engine(page)
    press(page, "Use my outfit")
    expect(page.locator("[data-engine]")).to_contain_text("The file: ", timeout=ENGINE_STARTS)
    expect(page.locator("[name=bore]")).to_have_value("1/4")
    page.goto(MINE)
    wait_for_engine(page)
    expect(page.locator("[data-answer]")).not_to_contain_text("Nothing is due")
    page.once("dialog", lambda asked: asked.accept())
    press(page, "Forget it")
    expect(page.locator("[data-result=use_it]")).to_contain_text("No. ", timeout=ENGINE_STARTS)


def test_it_goes_out_as_a_file_and_comes_in_on_another_device(visit: Any, tmp_path: Path) -> None:
    page = visit(service_workers="block")
    keep(page)
    with page.expect_download() as saved:
        press(page, "Save as a file")
    path = tmp_path / saved.value.suggested_filename
    saved.value.save_as(path)
    assert path.name == "my-outfit.json"
    content = path.read_text(encoding="utf-8")
    assert json.loads(content)["version"] == 1

    other = visit(service_workers="block")
    other.goto(MINE)
    wait_for_engine(other)
    unfold(other)
    other.fill("[name=acetylene_tare]", "88")
    choose(other, content, tmp_path)
    expect(other.locator(LINE)).to_contain_text("Opened")
    assert other.input_value(BORE) == "5/16"
    assert other.input_value("[name=acetylene_tare]") == "", "it is the outfit of the file, whole"
    assert kept(other) is None, "nothing is kept until it was looked at"
    press(other, "Keep on this phone")
    expect(other.locator(LINE)).to_contain_text("Kept on this phone")
    assert kept(other) == kept(page) == content


@pytest.mark.parametrize(
    "content",
    [
        "",
        "[]",
        "PK\x03\x04",
        "x" * 300_000,
        '{"kind": "oxyfuel-benchbook-outfit", "version": 7, "texts": {}}',
        json.dumps({"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"tip_1_label": MARKUP}}),
        json.dumps({"kind": "oxyfuel-benchbook-outfit", "version": 1, "texts": {"hose_bore": "rhubarb"}}),
    ],
    ids=["empty", "list", "zip", "long", "later", "markup", "unreadable"],
)
def test_a_file_that_will_not_do_changes_nothing(page: Page, tmp_path: Path, content: str) -> None:
    keep(page)
    before = kept(page)
    choose(page, content, tmp_path)
    expect(page.locator(LINE)).to_contain_text("The file: ")
    assert page.input_value(BORE) == "5/16"
    assert kept(page) == before
    assert page.locator("[data-calculator] img").count() == 0
    page.reload()
    assert page.input_value(BORE) == "5/16"


def test_what_is_refused_is_not_kept(page: Page) -> None:
    page.goto(MINE)
    wait_for_engine(page)
    unfold(page)
    page.fill(BORE, "rhubarb")
    press(page, "Keep on this phone")
    expect(page.locator("[data-field=hose_bore] [data-error]")).to_be_visible(timeout=ENGINE_STARTS)
    expect(page.locator(LINE)).to_contain_text("Not kept")
    assert kept(page) is None


def test_it_is_forgotten_only_when_that_is_meant(page: Page, addresses: list[str]) -> None:
    keep(page)
    page.once("dialog", lambda asked: asked.dismiss())
    press(page, "Forget it")
    assert kept(page) is not None
    assert page.input_value(BORE) == "5/16"
    page.once("dialog", lambda asked: asked.accept())
    press(page, "Forget it")
    expect(page.locator(LINE)).to_contain_text("Forgotten")
    assert kept(page) is None
    assert page.input_value(BORE) == ""
    go(page, next(address for address in addresses if address.endswith(HOSE)))
    expect(page.get_by_role("button", name="Use my outfit")).to_have_count(0)


def test_markup_in_a_name_is_refused_and_signs_stay_text(page: Page) -> None:
    page.goto(MINE)
    wait_for_engine(page)
    unfold(page)
    page.fill("[name=tip_1_label]", MARKUP)
    page.locator("[name=tip_1_label]").blur()
    expect(page.locator("[data-field=tip_1_label] [data-error]")).to_be_visible(timeout=ENGINE_STARTS)
    page.fill("[name=tip_1_label]", '& "blue" &lt;b&gt;')
    page.locator("[name=tip_1_label]").blur()
    expect(page.locator("[data-answer] table").filter(has_text="nearest drill")).to_contain_text(
        '& "blue" &lt;b&gt;'
    )
    assert page.locator("[data-calculator] img").count() == 0


def test_with_the_keyboard_alone_and_on_large_targets(page: Page) -> None:
    page.set_viewport_size({"width": 360, "height": 640})
    keep(page)
    for name in ("Keep on this phone", "Save as a file", "Open a file", "Forget it"):
        key = page.get_by_role("button", name=name, exact=True)
        key.focus()
        expect(key).to_be_focused()
        assert key.bounding_box()["height"] >= 44
    page.goto(HOSE)
    wait_for_engine(page)
    use = page.get_by_role("button", name="Use my outfit")
    assert use.bounding_box()["height"] >= 44
    use.focus()
    page.keyboard.press("Enter")
    expect(page.locator("[name=bore]")).to_have_value("5/16")
    wide = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    assert wide <= 0


def test_paper_has_the_outfit_and_its_lists(page: Page) -> None:
    keep(page)
    page.emulate_media(media="print")
    for words in ("What it is", "The tips", "Before each use", "Once a year"):
        expect(page.locator("[data-answer] caption").filter(has_text=words)).to_be_visible()
    expect(page.locator("[data-answer]")).to_contain_text("blue handle")
    expect(page.get_by_role("button", name="Forget it")).to_be_hidden()


def test_it_works_without_a_line(visit: Any) -> None:
    page = visit()
    keep(page)
    expect(page.locator("[data-offline] [role=status]")).to_contain_text(
        "Ready offline", timeout=ENGINE_STARTS
    )
    page.context.set_offline(True)
    page.reload()
    unfold(page)
    expect(page.locator(BORE)).to_have_value("5/16")
    wait_for_engine(page)
    press(page, "Keep on this phone")
    expect(page.locator(LINE)).to_contain_text("Kept on this phone", timeout=ENGINE_STARTS)
    page.goto(HOSE)
    press(page, "Use my outfit")
    expect(page.locator("[data-engine]")).to_contain_text("From your outfit", timeout=ENGINE_STARTS)


def test_the_form_and_its_buttons_have_no_fault_that_axe_finds(page: Page) -> None:
    keep(page)
    load_axe(page)
    for width in (360, 1280):
        page.set_viewport_size({"width": width, "height": 740})
        assert violations(page, context={"include": ["article"]}) == []
