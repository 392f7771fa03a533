"""A timer that is right whatever the phone did meanwhile, and never shorter than the answer."""

import json
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from icalendar import Calendar
from playwright.sync_api import Page, expect

from tests.browser.asking import OXYGEN, go, is_marked, mark, new_answer, wait_for_engine
from tests.browser.conftest import Server

# Fixtures of that file: a host that a test may change, and a phone on it.
from tests.browser.test_offline import LONG, _change, _installed, own, phone  # noqa: F401

pytestmark = pytest.mark.browser

WATCH = "after/fire-watch/"
FACE = "[data-timer] [role=timer]"
LINE = "[data-timer] .bb-timer-line"
NOW = datetime(2026, 11, 25, 19, 5, 20, tzinfo=UTC)
"""14:05:20 in New York."""


def press(page: Page, words: str) -> None:
    page.locator("[data-timer]").get_by_role("button", name=words).click()


def shown(page: Page) -> int:
    """Seconds that the face shows."""
    parts = [int(part) for part in page.locator(FACE).inner_text().split(":")]
    return sum(part * 60**power for power, part in enumerate(reversed(parts)))


def see(page: Page, state: str) -> None:
    """What the browser says when the page is hidden, or seen again."""
    page.evaluate(
        """state => {
            Object.defineProperty(document, "visibilityState", { configurable: true, get: () => state });
            document.dispatchEvent(new Event("visibilitychange"));
        }""",
        state,
    )


@pytest.fixture
def watch(visit: Any) -> Page:
    """The page at 14:05:20 in New York, with a clock that a test moves."""
    page: Page = visit(service_workers="block", timezone_id="America/New_York", locale="en-US")
    page.clock.install(time=NOW)
    page.goto(WATCH)
    page.clock.pause_at(NOW + timedelta(seconds=30))
    expect(page.locator("[data-timer]")).to_contain_text("Not started.")
    return page


def test_it_counts_the_answer_above_and_says_until_when(watch: Page) -> None:
    """US: an hour (NFPA 51B-2019, read-m); 14:05:50 and an hour, up to the minute."""
    press(watch, "Start the watch")
    assert shown(watch) == 3600
    expect(watch.locator(LINE)).to_contain_text("Watch until 03:06")
    watch.clock.run_for(5_000)
    assert shown(watch) == 3595


def test_after_half_an_hour_hidden_it_is_right_within_a_second(watch: Page) -> None:
    press(watch, "Start the watch")
    see(watch, "hidden")
    watch.clock.fast_forward("30:00")
    assert shown(watch) == 3600, "nothing was drawn while hidden"
    see(watch, "visible")
    assert abs(shown(watch) - 1800) <= 1


def test_a_page_out_of_the_cache_of_the_browser_is_drawn_anew(watch: Page) -> None:
    press(watch, "Start the watch")
    see(watch, "hidden")
    watch.clock.fast_forward("30:00")
    watch.evaluate("dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }))")
    assert abs(shown(watch) - 1800) <= 1


def test_it_survives_a_reload(watch: Page) -> None:
    press(watch, "Start the watch")
    watch.clock.fast_forward("10:00")
    watch.reload()
    expect(watch.locator("[data-timer=running]")).to_be_visible()
    assert abs(shown(watch) - 3000) <= 2
    expect(watch.locator(LINE)).to_contain_text("Watch until 03:06")


def test_it_survives_another_page(page: Page, addresses: list[str]) -> None:
    page.goto(WATCH)
    press(page, "Start the watch")
    kept = page.evaluate("localStorage.getItem('timer-fire-watch')")
    mark(page)
    for end in (OXYGEN, WATCH):
        go(page, next(address for address in addresses if address.endswith(end)))
    assert is_marked(page)
    expect(page.locator("[data-timer=running]")).to_be_visible()
    assert 3500 < shown(page) <= 3600
    assert page.evaluate("localStorage.getItem('timer-fire-watch')") == kept


def test_at_its_end_it_says_so_and_lets_go(watch: Page) -> None:
    press(watch, "Start the watch")
    watch.clock.run_for(3_599_000)
    expect(watch.locator("[data-timer=running]")).to_be_visible()
    watch.clock.run_for(1_500)
    expect(watch.locator(LINE)).to_contain_text("Over since")
    expect(watch.locator("[data-timer=off]")).to_be_visible()
    press(watch, "Clear the timer")
    expect(watch.locator(LINE)).to_contain_text("Not started.")
    assert watch.evaluate("localStorage.getItem('timer-fire-watch')") is None


def test_a_watch_cut_short_is_called_so(watch: Page) -> None:
    press(watch, "Start the watch")
    watch.clock.run_for(600_000)
    press(watch, "Stop before its end")
    expect(watch.locator(LINE)).to_contain_text("50 min before its end")
    watch.clock.run_for(60_000)
    assert shown(watch) == 3000, "it stands still"
    expect(watch.locator("[data-timer=off]")).to_be_visible()
    press(watch, "Somebody stayed: go on")
    assert shown(watch) == 2940, "to the end that it had"


def test_after_the_watch_it_counts_to_the_next_look(page: Page) -> None:
    """UK: an hour, then looks at most 20 min apart for an hour: Joint Code 16.15, read-m."""
    page.clock.install(time=NOW)
    page.goto(WATCH)
    wait_for_engine(page)
    with new_answer(page):
        page.select_option("[data-rules-choice]", "uk")
    press(page, "Start the watch")
    see(page, "hidden")
    page.clock.fast_forward("01:05:00")
    see(page, "visible")
    expect(page.locator(LINE)).to_contain_text("Look in again until")
    assert abs(shown(page) - 15 * 60) <= 5
    expect(page.locator("[data-timer=running]")).to_be_visible()
    see(page, "hidden")
    page.clock.fast_forward("00:56:00")
    see(page, "visible")
    expect(page.locator(LINE)).to_contain_text("Over since")


def test_an_answer_that_asks_for_more_lengthens_it_and_none_shortens_it(page: Page) -> None:
    """Torch on a roof covering: two hours (NFPA 241, read-m)."""
    page.goto(WATCH)
    wait_for_engine(page)
    press(page, "Start the watch")
    with new_answer(page):
        page.select_option("[name=place]", "roof")
    expect(page.locator(LINE)).to_contain_text("Lengthened")
    assert 7100 < shown(page) <= 7200
    with new_answer(page):
        page.select_option("[name=place]", "workshop")
    assert 7000 < shown(page) <= 7200


def test_it_does_not_start_from_an_answer_that_is_not_there(page: Page) -> None:
    page.goto(WATCH)
    wait_for_engine(page)
    with new_answer(page):
        page.get_by_role("button", name="Calculate").click()
        page.evaluate("document.querySelector('[data-calculator=fire-watch] .bb-assumed').open = true")
        page.fill("[name=permit_monitoring]", "many")
        page.locator("[name=permit_monitoring]").blur()
    press(page, "Start the watch")
    expect(page.locator(LINE)).to_contain_text("gives no time yet")
    assert page.evaluate("localStorage.getItem('timer-fire-watch')") is None


@pytest.mark.parametrize(
    "kept", ["", "{}", "null", '{"start":1,"end":0,"until":0,"every":0}', '{"start":"1","end":2}']
)
def test_what_was_kept_wrongly_counts_nothing(page: Page, kept: str) -> None:
    page.evaluate("kept => localStorage.setItem('timer-fire-watch', kept)", kept)
    page.goto(WATCH)
    expect(page.locator(LINE)).to_contain_text("Not started.")


def test_a_browser_that_keeps_nothing_is_said(page: Page) -> None:
    page.add_init_script("Storage.prototype.setItem = () => { throw new Error('full') }")
    page.goto(WATCH)
    press(page, "Start the watch")
    expect(page.locator(LINE)).to_contain_text("keeps nothing")


REFUSES = "{ request: () => Promise.reject(new DOMException('low battery', 'NotAllowedError')) }"
GRANTS = """{ request: async () => {
    const lock = new EventTarget();
    window.lock = lock;
    lock.release = async () => lock.dispatchEvent(new Event("release"));
    return lock;
} }"""


def with_wake_lock(page: Page, made: str) -> Any:
    page.add_init_script(f"Object.defineProperty(navigator, 'wakeLock', {{ value: {made} }})")
    page.goto(WATCH)
    return page.get_by_role("switch", name="Keep the screen on")


@pytest.mark.parametrize("made", [REFUSES, "undefined"], ids=["refused", "unknown"])
def test_a_refusal_to_keep_the_screen_on_is_shown(page: Page, made: str) -> None:
    switch = with_wake_lock(page, made)
    switch.click()
    expect(page.locator("[data-wake]")).to_contain_text("Refused")
    expect(switch).not_to_be_checked()


def test_the_screen_is_held_again_when_the_page_is_seen_and_let_go_on_leaving(
    page: Page, addresses: list[str]
) -> None:
    switch = with_wake_lock(page, GRANTS)
    switch.click()
    expect(page.locator("[data-wake]")).to_contain_text("stays on")
    page.evaluate("window.first = window.lock")
    see(page, "hidden")
    page.evaluate("window.lock.release()")
    see(page, "visible")
    page.wait_for_function("window.lock !== window.first")
    expect(switch).to_be_checked()
    page.evaluate("window.lock.addEventListener('release', () => { window.letGo = true })")
    go(page, next(address for address in addresses if address.endswith(OXYGEN)))
    page.wait_for_function("window.letGo === true")


def test_the_phones_own_timer_is_always_asked_for(watch: Page, visit: Any) -> None:
    words = "Set your phone’s own timer too."
    expect(watch.get_by_text(words)).to_be_visible()
    press(watch, "Start the watch")
    expect(watch.get_by_text(words)).to_be_visible()
    bare = visit(java_script_enabled=False)
    bare.goto(WATCH)
    expect(bare.get_by_text(words)).to_be_visible()
    expect(bare.get_by_text("Write the time of the last flame where all can see it")).to_be_visible()


def test_the_calendar_file_ends_when_the_timer_does(page: Page, tmp_path: Path) -> None:
    page.goto(WATCH)
    wait_for_engine(page)
    press(page, "Start the watch")
    with page.expect_download() as got:
        press(page, "Calendar file")
    assert got.value.suggested_filename == "fire-watch.ics"
    got.value.save_as(tmp_path / "watch.ics")
    (event,) = Calendar.from_ical((tmp_path / "watch.ics").read_bytes()).walk("VEVENT")
    kept = json.loads(page.evaluate("localStorage.getItem('timer-fire-watch')"))
    assert 0 <= event.end.timestamp() - kept["end"] / 1000 <= 1
    assert kept["end"] - kept["start"] == 3_600_000


def test_a_new_version_waits_while_the_timer_runs(phone: Page, own: Server) -> None:  # noqa: F811
    phone.goto(WATCH)
    wait_for_engine(phone)
    _installed(phone)
    press(phone, "Start the watch")
    mark(phone)
    _change(own, "second edition")
    other = phone.context.new_page()
    other.goto("./")
    other.get_by_role("button", name="Use the new version").click(timeout=LONG)
    expect(other.locator("h1")).to_contain_text("second edition", timeout=LONG)
    phone.wait_for_timeout(500)
    assert is_marked(phone), "the page was not loaded anew"
    expect(phone.locator("[data-timer=running]")).to_be_visible()
