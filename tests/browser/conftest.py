"""The built site in a real browser, served under a subfolder by a server that can be stopped."""

import os
import re
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import partial
from http.server import ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import Any
from urllib.parse import urlsplit

import pytest
from lxml import html
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, Request

from site_overrides.build.browser import ASK, chromium
from site_overrides.build.serve import Handler
from tests.driver import driver

ROOT = Path(__file__).parents[2]
PORT = int(os.environ.get("BENCHBOOK_PORT", "8123"))
ADDRESS = f"http://127.0.0.1:{PORT}/bench/"
HOST = f"127.0.0.{1 + int(os.environ.get('PYTEST_XDIST_WORKER', 'gw0')[2:])}"
"""Each of several test runs side by side has a host of its own; port and path stay those that were built for."""
FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]  # fmt: skip
ENGINE_STARTS = 60_000
"""Milliseconds; a test machine may be slow and busy."""


def _built() -> Path:
    """Folder of the site for ADDRESS; it is built unless it is what its sources give."""
    if given := os.environ.get("BENCHBOOK_SITE"):
        return Path(given).resolve()
    subprocess.run(["make", "site", f"SITE_URL={ADDRESS}"], cwd=ROOT, check=True)
    return ROOT / "site"


class _PatientServer(ThreadingHTTPServer):
    """Lets a browser that asks for forty files at once wait its turn."""

    request_queue_size = 128


class _CutHandler(Handler):
    """Sends files whole, or half of those that its server cuts."""

    server_of: "Server"

    def copyfile(self, source: Any, outputfile: Any) -> None:
        """Send what was promised, or break off midway."""
        content = source.read()
        cut = self.server_of.cut and self.server_of.cut in self.path
        outputfile.write(content[: len(content) // 2] if cut else content)


@dataclass
class Server:
    """A host of one folder that can go away and come back."""

    folder: Path
    address: str
    cut: str = ""
    """Files whose address holds this come only half, then the line breaks."""
    _running: ThreadingHTTPServer | None = None

    def start(self) -> None:
        parts = urlsplit(self.address)
        handler = type("SiteHandler", (_CutHandler,), {"base": parts.path, "server_of": self})
        self._running = _PatientServer(
            (parts.hostname or "", parts.port or 80), partial(handler, directory=str(self.folder))
        )
        Thread(target=self._running.serve_forever, kwargs={"poll_interval": 0.05}).start()

    def start_again(self) -> None:
        if self._running is None:
            self.start()

    def stop(self) -> None:
        if self._running:
            self._running.shutdown()
            self._running.server_close()
            self._running = None


@dataclass
class Watch:
    """What must not happen in a visit."""

    base: str
    foreign: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)

    def request(self, request: Request) -> None:
        if not request.url.startswith((self.base, "data:", "blob:")):
            self.foreign.append(request.url)

    def check(self) -> None:
        assert self.foreign == [], "a request left the site"
        assert self.errors == [], "the console shows an error"

    def _console(self, said: ConsoleMessage) -> None:
        if said.type == "error":
            self.errors.append(said.text)

    def page(self, page: Page) -> None:
        page.on("console", self._console)
        page.on("pageerror", lambda error: self.errors.append(str(error)))


def _addresses(site: Path) -> list[str]:
    """Every page, as this run's own host serves it."""
    found = re.findall(r"<loc>(.*?)</loc>", (site / "sitemap.xml").read_text(encoding="utf-8"))
    return [urlsplit(address)._replace(netloc=f"{HOST}:{urlsplit(address).port}").geturl() for address in found]


@pytest.fixture(scope="session")
def site() -> Path:
    return _built()


@pytest.fixture(scope="session")
def host(site: Path) -> Iterator[Server]:
    server = Server(site, min(_addresses(site), key=len))
    server.start()
    yield server
    server.stop()


@pytest.fixture(scope="session")
def addresses(site: Path) -> list[str]:
    return _addresses(site)


@pytest.fixture(scope="session")
def unlike(addresses: list[str]) -> list[str]:
    """Every page, but of the exercises, which are made of the same parts, only a weld, the tube and the cut."""
    return [address for address in addresses if not re.search(r"/class/ladder/(?!corner|solder|cut)[\w-]+/$", address)]


def _kinds(file: Path) -> set[tuple[str, ...]]:
    """Kinds of elements in a page's article, each by itself and its parent: what looks and reads alike counts once."""
    article = html.parse(str(file)).getroot().find(".//article")
    found: set[tuple[str, ...]] = set()
    for one in () if article is None else article.iter("*"):
        both = (one.getparent(), one)
        found.add(tuple(f"{each.tag} {[each.get(name) for name in ('class', 'role', 'type')]}" for each in both))
    return found


@pytest.fixture(scope="session")
def of_each_kind(site: Path, addresses: list[str]) -> list[str]:
    """So few pages that every kind of element of all pages stands on one of them; pages made of the same kinds are left out."""
    base = min(addresses, key=len)
    left = {one: _kinds(site / one.removeprefix(base) / "index.html") for one in addresses}
    chosen: list[str] = []
    while any(left.values()):
        best = max(left, key=lambda one: len(left[one]))
        new = left.pop(best)
        chosen.append(best)
        left = {one: kinds - new for one, kinds in left.items()}
    return chosen


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    path = chromium()
    if path is None:
        pytest.fail(ASK)
    made = driver().chromium.launch(executable_path=path, args=FLAGS)
    yield made
    made.close()


@pytest.fixture
def visit(browser: Browser, host: Server) -> Iterator[Any]:
    """Makes visits, each a fresh browser profile; every one is watched to its end."""
    open_visits: list[tuple[BrowserContext, Watch]] = []

    def begin(**options: Any) -> Page:
        context = browser.new_context(**({"base_url": host.address} | options))
        watch = Watch(host.address)
        context.on("request", watch.request)
        context.on("page", watch.page)
        open_visits.append((context, watch))
        return context.new_page()

    yield begin
    for context, watch in open_visits:
        context.close()
        watch.check()


@pytest.fixture(scope="session")
def phone_at_the_bench(browser: Browser, host: Server) -> Iterator[BrowserContext]:
    """A device that holds the engine from its first visit on, so that tests start fast."""
    context = browser.new_context(base_url=host.address, service_workers="block")
    yield context
    context.close()


@pytest.fixture
def page(phone_at_the_bench: BrowserContext, host: Server) -> Iterator[Page]:
    """A page on that device, which remembers nothing that another test chose."""
    made = phone_at_the_bench.new_page()
    watch = Watch(host.address)
    made.on("request", watch.request)
    watch.page(made)
    made.goto("404.html")
    made.evaluate("localStorage.clear()")
    yield made
    made.close()
    watch.check()
