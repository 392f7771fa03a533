"""The copy for a folder: it reads from file://, says what it cannot do, and is live when served."""

import re
import zipfile
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from calc.answer.answering import answer as fresh_answer
from site_overrides.build import licences, zipped
from tests.browser.asking import GAUGE, give, values, wait_for_engine
from tests.browser.conftest import PORT, Server, Watch

pytestmark = pytest.mark.browser

SITE = "https://bench.example/book/"
OXYGEN = "before/oxygen-left.html"
STEPS = "trouble/hot-cylinder.html"


@pytest.fixture(scope="module")
def copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The zip, unpacked as a reader does."""
    made = tmp_path_factory.mktemp("zip")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("SITE_URL", SITE)
        zipped.build(made / "built")
    zipped.pack(made / "built", made / "one.zip")
    for path in (made / "built").rglob("*"):
        path.touch()
    zipped.pack(made / "built", made / "two.zip")
    assert (made / "one.zip").read_bytes() == (made / "two.zip").read_bytes(), "the day changes nothing"
    with zipfile.ZipFile(made / "one.zip") as archive:
        archive.extractall(made)
    return made / zipped.TOP


@pytest.fixture
def opened(browser: Browser, copy: Path) -> Iterator[Page]:
    context = browser.new_context(base_url=f"{copy.as_uri()}/")
    watch = Watch(copy.as_uri())
    context.on("request", watch.request)
    context.on("page", watch.page)
    yield context.new_page()
    context.close()
    watch.check()


class Links(HTMLParser):
    """Everything that a page points to."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        for name in ("href", "src"):
            if given.get(name) and not (tag == "link" and given.get("rel") == "canonical"):
                self.found.append(given[name] or "")


def test_every_link_leads_to_a_file_of_the_copy(copy: Path) -> None:
    pages = sorted(copy.rglob("*.html"))
    assert len(pages) > 50
    for page in pages:
        links = Links()
        links.feed(page.read_text(encoding="utf-8"))
        inside = [link for link in links.found if not re.match("https?:|data:|#", link)]
        gone = [link for link in inside if not (page.parent / re.split("[?#]", link)[0]).is_file()]
        assert gone == [], page.name
        assert {
            link for link in links.found if link.startswith("http") and not link.startswith(SITE)
        } == set()


def test_the_licences_are_inside_and_no_worker_or_search(copy: Path) -> None:
    assert (copy / "LICENSE").read_bytes() == (zipped.ROOT / "LICENSE").read_bytes()
    assert (copy / "LICENCES.txt").read_text(encoding="utf-8") == licences.licences_text()
    assert "http.server" in (copy / "READ-ME.txt").read_text(encoding="utf-8")
    assert not [name for name in ("sw.js", "search", "404.html", "release.json") if (copy / name).exists()]


def test_from_a_folder_it_reads_and_leads_on(opened: Page) -> None:
    opened.goto(STEPS)
    assert opened.locator("[data-procedure] li").count() > 3
    expect(opened.locator("[data-unzipped]")).to_have_count(0)
    opened.locator(".bb-footer a[href$='oxygen-left.html']").click()
    expect(opened.locator("h1")).to_be_visible()
    wanted = fresh_answer("oxygen-left", water_volume="43 L", gauge="1500 psi")["results"]["gas_left"][
        "text"
    ]
    assert values(opened.locator("[data-calculator]"))[0] == wanted
    expect(opened.locator("[data-unzipped]")).to_contain_text("It works out nothing new.")
    expect(opened.locator("[data-unzipped] a")).to_have_attribute("href", f"{SITE}before/oxygen-left/")
    expect(opened.locator("[data-address]")).to_have_text(f"{SITE}before/oxygen-left/")
    assert len(opened.pdf()) > 10_000


def test_values_that_a_folder_cannot_use_are_said(opened: Page) -> None:
    opened.goto(f"{OXYGEN}?v=1&gauge=900+psi&colour=blue")
    note = opened.locator("[data-unzipped]")
    expect(note).to_contain_text("Cylinder gauge reads: “900 psi”; colour: “blue”")
    link = f"{SITE}before/oxygen-left/?v=1&gauge=900+psi&colour=blue"
    expect(note.locator("a").last).to_have_attribute("href", link)
    give(opened, GAUGE, "800")
    opened.get_by_role("button", name="Calculate").click()
    expect(opened.locator("[data-engine]")).to_contain_text("stays that of the example values")
    assert opened.input_value(GAUGE) == "800"


def test_served_from_that_folder_it_is_live(copy: Path, browser: Browser) -> None:
    server = Server(copy, f"http://127.0.0.1:{PORT + 3}/")
    server.start()
    context = browser.new_context(base_url=server.address)
    page: Any = context.new_page()
    watch = Watch(server.address)
    page.on("request", watch.request)
    watch.page(page)
    page.goto(OXYGEN)
    wait_for_engine(page)
    expect(page.locator("[data-unzipped]")).to_have_count(0)
    give(page, GAUGE, "900")
    wanted = fresh_answer("oxygen-left", water_volume="43 L", gauge="900 psi")["results"]["gas_left"][
        "text"
    ]
    expect(page.locator("[data-result=gas_left] .bb-value")).to_have_text(wanted)
    context.close()
    server.stop()
    watch.check()
