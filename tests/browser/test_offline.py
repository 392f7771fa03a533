"""Without a host: what is kept, what is refused, what is said."""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from site_overrides.build import offline
from tests.browser.asking import GAUGE, OXYGEN, answer, give, mark, new_answer, values, wait_for_engine
from tests.browser.conftest import HOST, PORT, Server

pytestmark = pytest.mark.browser

STATUS = "[data-offline] [role=status]"
LONG = 60_000
TEXT = "trouble/hot-cylinder/"
"""A page without a calculator, so that no engine starts."""


@pytest.fixture
def own(site: Path, tmp_path: Path) -> Iterator[Server]:
    """A host of its own copy of the site, which a test may change or stop."""
    shutil.copytree(site, tmp_path / "site", copy_function=_linked)
    server = Server(tmp_path / "site", f"http://{HOST}:{PORT + 1}/bench/")
    server.start()
    yield server
    server.stop()


def _linked(source: str, target: str) -> None:
    Path(target).hardlink_to(source) if Path(source).suffix in (".xz", ".mjs") else shutil.copy2(
        source, target
    )


@pytest.fixture
def phone(browser: Browser, own: Server) -> Iterator[Page]:
    """A visit that may lose its host, so the console is not watched."""
    context = browser.new_context(base_url=own.address)
    yield context.new_page()
    context.close()


def _installed(page: Page) -> None:
    page.wait_for_function("() => navigator.serviceWorker.controller !== null", timeout=LONG)


def _change(server: Server, words: str) -> None:
    """Another release of the same site, there from one moment to the next.

    A host that changes file by file would hand out a worker of one second and,
    as it tells ages by the second, call it unchanged for good.
    """
    new, old = (server.folder.with_name(name) for name in ("new", "old"))
    shutil.copytree(server.folder, new, copy_function=_linked)
    page = new / "index.html"
    text = page.read_text(encoding="utf-8")
    page.write_text(text.replace("</h1>", f" {words}</h1>"), encoding="utf-8")
    _written_again(new)
    server.folder.rename(old)
    new.rename(server.folder)


def _written_again(folder: Path) -> None:
    worker = (folder / "sw.js").read_text(encoding="utf-8")
    source = (Path(offline.__file__).parents[1] / "theme" / "sw.js").read_text(encoding="utf-8")
    assert worker != source
    (folder / "sw.js").write_text(source, encoding="utf-8")
    for page in folder.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        start = text.index('<meta http-equiv="Content-Security-Policy"')
        last = max(text.rfind('rel="modulepreload"'), text.index('name="benchbook-release"'))
        end = text.index(">", last) + 1
        page.write_text(text[:start] + offline.PLACE + text[end:], encoding="utf-8")
    offline.write(folder)


def _release_of_scripts(page: Page) -> str:
    """Release whose cache the scripts that run on the page keep to."""
    name: str = page.evaluate("async () => (await import('./assets/page/store.js')).releaseCache")
    return name.removeprefix("benchbook-")


def test_all_works_when_the_host_is_gone(phone: Page, own: Server) -> None:
    phone.goto(OXYGEN)
    wait_for_engine(phone)
    _installed(phone)
    expect(phone.locator(STATUS)).to_contain_text("Ready offline, release", timeout=LONG)
    own.stop()
    phone.reload()
    wait_for_engine(phone)
    with new_answer(phone):
        give(phone, GAUGE, "1000")
    expect(phone.locator(STATUS)).to_contain_text("Ready offline, release")

    phone.goto("set-up/sheet-thickness/?v=1&gauge=18+ga")  # a page never opened before
    expect(phone.locator("[data-engine]")).to_contain_text("New answer.", timeout=LONG)
    assert values(phone.locator("[data-calculator]"))

    phone.goto("set-up/sheet-thickness?v=1")  # without the slash that a host would add
    assert phone.url.endswith("/set-up/sheet-thickness/?v=1")
    phone.goto("index.html")
    assert phone.locator("h1").count() == 1
    phone.goto("no/such/page/")
    assert "404" in phone.content()


def test_the_text_is_saved_without_being_asked(phone: Page, own: Server) -> None:
    phone.goto(TEXT)
    _installed(phone)
    expect(phone.locator(STATUS)).to_contain_text("The pages are saved", timeout=LONG)
    expect(phone.get_by_role("button", name="Save for offline")).to_contain_text("MB")
    own.stop()
    phone.goto(OXYGEN)
    assert values(phone.locator("[data-calculator]"))
    expect(phone.locator("[data-engine]")).to_contain_text("Use the table", timeout=LONG)


def test_saving_fetches_the_rest_and_says_so(phone: Page, own: Server) -> None:
    phone.goto(TEXT)
    _installed(phone)
    phone.get_by_role("button", name="Save for offline").click()
    expect(phone.locator(STATUS)).to_contain_text("Ready offline, release", timeout=LONG)
    expect(phone.locator(STATUS)).to_contain_text("The browser")
    expect(phone.get_by_role("button", name="Save for offline")).to_be_hidden()
    own.stop()
    phone.goto(OXYGEN)
    wait_for_engine(phone)
    with new_answer(phone):
        give(phone, GAUGE, "1000")


def test_saving_that_is_cut_midway_is_not_called_saved(phone: Page) -> None:
    phone.goto(TEXT)
    _installed(phone)
    phone.route("**/*.xz", lambda _: None)  # the line hangs
    phone.get_by_role("button", name="Save for offline").click()
    phone.get_by_role("button", name="Cancel").click()
    expect(phone.locator(STATUS)).to_contain_text("Not saved")
    phone.unroute("**/*.xz")
    phone.get_by_role("button", name="Save for offline").click()
    expect(phone.locator(STATUS)).to_contain_text("Ready offline", timeout=LONG)


def test_one_wrong_byte_is_refused(phone: Page, own: Server) -> None:
    spoiled = next((own.folder / "assets" / "engine").glob("memory-*"))
    content = bytearray(spoiled.read_bytes())
    content[len(content) // 2] ^= 1
    spoiled.unlink()
    spoiled.write_bytes(content)
    phone.goto(TEXT)
    _installed(phone)
    phone.get_by_role("button", name="Save for offline").click()
    expect(phone.locator(STATUS)).to_contain_text("Not saved", timeout=LONG)


def test_a_release_with_one_wrong_byte_is_not_installed(phone: Page, own: Server) -> None:
    page = own.folder / OXYGEN / "index.html"
    page.write_bytes(page.read_bytes().replace(b"Oxygen", b"Oxygon", 1))
    phone.goto(TEXT)
    end = phone.evaluate(
        """async (address) => {
            const settings = { type: "module", updateViaCache: "none" };
            const { installing, active } = await navigator.serviceWorker.register(address, settings);
            const worker = installing ?? active;
            while (!["redundant", "activated"].includes(worker.state)) {
                await new Promise((done) => setTimeout(done, 50));
            }
            return worker.state;
        }""",
        f"{own.address}sw.js",
    )
    assert end == "redundant"
    assert phone.evaluate("navigator.serviceWorker.controller") is None
    assert phone.evaluate("caches.keys()") == []
    expect(phone.locator(STATUS)).to_contain_text("Not saved")


def test_a_new_version_is_offered_and_taken_on_a_tap(phone: Page, own: Server) -> None:
    phone.goto(OXYGEN)
    wait_for_engine(phone)
    _installed(phone)
    expect(phone.locator(STATUS)).to_contain_text("Ready offline", timeout=LONG)
    _change(own, "second edition")
    phone.goto("./")
    expect(phone.get_by_text("New version ready.")).to_be_visible(timeout=LONG)
    assert "second edition" not in phone.locator("h1").inner_text()
    phone.get_by_role("button", name="Use the new version").click()
    expect(phone.locator("h1")).to_contain_text("second edition", timeout=LONG)
    assert len(phone.evaluate("caches.keys()")) == 1
    own.stop()
    phone.goto(OXYGEN)  # whole before, whole after: the engine came along
    wait_for_engine(phone)


def _as_built_for(server: Server) -> None:
    """Make the copy's own list of pages fit its address: only there a click keeps the scripts."""
    listed = server.folder / "sitemap.xml"
    text = listed.read_text(encoding="utf-8")
    built_for = min(re.findall("<loc>(.*?)</loc>", text), key=len)
    listed.write_text(text.replace(built_for, server.address), encoding="utf-8")
    _written_again(server.folder)


def test_a_new_version_takes_no_form_and_no_page_mixes_two(phone: Page, own: Server) -> None:
    _as_built_for(own)
    phone.goto(OXYGEN)
    wait_for_engine(phone)
    _installed(phone)
    with new_answer(phone):
        give(phone, GAUGE, "1000")
    _change(own, "second edition")
    other = phone.context.new_page()
    other.goto("./")
    other.get_by_role("button", name="Use the new version").click(timeout=LONG)
    expect(other.locator("h1")).to_contain_text("second edition", timeout=LONG)
    phone.wait_for_timeout(500)
    assert phone.input_value(GAUGE) == "1000"
    with new_answer(phone):
        give(phone, GAUGE, "1100")
    assert answer(phone).is_visible()
    assert "second edition" not in phone.locator("h1").inner_text()
    mark(phone)
    phone.locator(".bb-footer a").first.click()  # a page of the new version, into scripts of the old
    expect(phone.locator("h1")).to_contain_text("second edition", timeout=LONG)
    phone.wait_for_function("() => window.marked === undefined && document.readyState === 'complete'")
    assert _release_of_scripts(phone) == phone.get_attribute("meta[name=benchbook-release]", "content")


def test_an_iphone_is_told_of_the_home_screen_while_saving(browser: Browser, own: Server) -> None:
    agent = "Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605 Safari/604"
    context = browser.new_context(base_url=own.address, user_agent=agent)
    page: Any = context.new_page()
    page.goto(TEXT)
    _installed(page)
    note = page.get_by_text("add this site to the Home Screen")
    expect(note).to_be_hidden()
    page.get_by_role("button", name="Save for offline").click()
    expect(note).to_be_visible()
    context.close()
