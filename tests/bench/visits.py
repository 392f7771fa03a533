"""The built site as a reader meets it: first visit, next page, a tap, memory, bytes."""

import json
import os
import re
import tempfile
import time
from pathlib import Path
from statistics import median
from typing import Any
from urllib.parse import urlsplit

from playwright.sync_api import Page

from tests.bench import engines
from tests.bench.browsing import opened
from tests.bench.server import Host, Line, served
from tests.bench.table import Row
from tests.bench.throttle import renderers, throttled

SITE = Path(__file__).parents[2] / "site"
MOBILE = 10e6, 0.04  # bits a second, seconds
EMPTY = "assets/images/favicon.png"
PAGE = "before/oxygen-left/"
NEXT = "before/acetylene-left/"
LINK = PAGE + "?v=1&gauge=1430+psi"
READING = 3.0  # s
ANSWERS = 200
INSTANT = 100  # ms
OFFLINE = 12e6  # bytes
FIRST = 6500  # ms
STARTS = 120_000  # ms

LISTEN = """
    window.answers = [];
    addEventListener("answer", ({ target }) => {
        if (target.hasAttribute("data-stale")) window.isAsked = true;
        else if (window.isAsked) {
            window.isAsked = false;
            requestAnimationFrame(() => window.answers.push(performance.now()));
        }
    });
"""
TAP = """async (text) => {
    const box = document.querySelector("[name=gauge]");
    const count = window.answers.length;
    const began = performance.now();
    box.value = text;
    for (const kind of ["input", "change"]) box.dispatchEvent(new Event(kind, { bubbles: true }));
    while (window.answers.length === count) await new Promise(requestAnimationFrame);
    return window.answers.at(-1) - began;
}"""
TOUCH = """() => {
    document.querySelector("[data-form]").dispatchEvent(new Event("pointerdown"));
}"""
FOLLOW = """async (address) => {
    const link = document.querySelector(`.bb-all-pages a[href$="${address}"]`);
    link.scrollIntoView({ behavior: "instant" }); // as a reader has done who taps it
    await new Promise((done) => setTimeout(done, 1000));
    const began = performance.now();
    link.click();
    const block = () => document.querySelector("[data-calculator=acetylene-left] [data-result]");
    while (!block()) await new Promise(requestAnimationFrame);
    await new Promise(requestAnimationFrame);
    return performance.now() - began;
}"""


def host() -> tuple[Host, int]:
    """The built site at the address it was built for, from a host that compresses; and its port."""
    sitemap = (SITE / "sitemap.xml").read_text(encoding="utf-8")
    parts = urlsplit(min(re.findall(r"<loc>(.*?)</loc>", sitemap), key=len))
    return Host(SITE, parts.path, "no-cache", compresses=True), parts.port or 80


def _is_ready(page: Page) -> None:
    page.wait_for_function(
        "() => /ready|New answer/.test(document.querySelector('[data-engine]')?.textContent)",
        timeout=STARTS,
    )


def first_visit(address: str, times: float) -> float:
    """Milliseconds from opening a page to the live answer to the values of its link."""
    with (
        tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile,
        opened(address + EMPTY, profile, LISTEN) as page,
        throttled(times),
    ):
        page.goto(address + LINK, wait_until="commit")
        page.wait_for_selector("[data-calculator][data-mounted]", state="attached", timeout=STARTS)
        page.evaluate(TOUCH)  # a slow line is taken for a dear one: the engine waits for a touch
        page.wait_for_function("() => window.answers?.length", timeout=STARTS)
        return float(page.evaluate("window.answers[0]"))


def _visited(address: str, profile: str) -> None:
    """Leave behind what a first and a second visit leave."""
    for _ in range(2):
        with opened(address + PAGE, profile) as page:
            _is_ready(page)
            page.evaluate("navigator.serviceWorker.ready.then(() => true)")
            page.wait_for_function(
                "() => /Ready offline/.test(document.querySelector('[data-offline-status]')?.textContent)",
                timeout=STARTS,
            )
            time.sleep(engines.SETTLED)


def later_visit(address: str, times: float) -> dict[str, float]:
    """Milliseconds of a tap after some reading, and of the next page, on a later visit."""
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        _visited(address, profile)
        with opened(address + EMPTY, profile, LISTEN) as page, throttled(times):
            page.goto(address + PAGE)
            time.sleep(READING)
            tap = float(page.evaluate(TAP, "1490"))
            time.sleep(1)
            following = float(page.evaluate(FOLLOW, NEXT))
    return {"tap": tap, "next": following}


def _private(pids: list[int]) -> float:
    """Bytes that processes hold for themselves."""
    total = 0
    for pid in pids:
        said = Path(f"/proc/{pid}/smaps_rollup").read_text(encoding="ascii")
        total += sum(int(found) for found in re.findall(r"^Private_\w+:\s+(\d+) kB", said, re.MULTILINE))
    return total * 1024.0


def memory(address: str) -> list[Row]:
    """Memory after many answers, of the page's scripts and of the whole renderer."""
    with (
        tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile,
        opened(address + PAGE, profile, LISTEN) as page,
    ):
        _is_ready(page)
        browser = page.context.new_cdp_session(page)

        def heap() -> tuple[float, float]:
            browser.send("HeapProfiler.collectGarbage")
            used: Any = browser.send("Runtime.getHeapUsage")["usedSize"]
            return float(used), _private(renderers(os.getpid()))

        page.evaluate(TAP, "1499")
        before = heap()
        for count in range(ANSWERS):
            page.evaluate(TAP, str(1000 + count))
        after = heap()
    return [
        Row(f"script heap of the page after {ANSWERS} answers, MB", None, after[0] / 1e6),
        Row(f"script heap gained in {ANSWERS} answers, MB", None, (after[0] - before[0]) / 1e6, 1),
        Row(f"renderers' own memory after {ANSWERS} answers, Python in it, MB", None, after[1] / 1e6),
        Row(f"renderers' own memory gained in {ANSWERS} answers, MB", None, (after[1] - before[1]) / 1e6),
    ]


def offline_bytes(site: Host) -> list[Row]:
    """Bytes of all that is saved for offline, as they are sent."""
    listed = json.loads((SITE / "release.json").read_text(encoding="utf-8"))["files"]
    names = [name + "index.html" if name == "" or name.endswith("/") else name for name in listed]
    names += ["release.json", "sw.js"]
    plain = sum((SITE / name).stat().st_size for name in names)
    packed = sum(len(site.body(SITE / name)) for name in names)
    return [
        Row("all for offline, host compresses text, bytes sent", None, packed, OFFLINE),
        Row("all for offline, host compresses nothing, bytes sent", None, plain),
    ]


def rows(engine: Path, rounds: int) -> list[Row]:
    """All of it; medians of so many rounds."""
    found = []
    site, port = host()
    for times in (1, 4):
        site.line = Line(*MOBILE)
        with served(site, port) as address:
            ours = median(first_visit(address, times) for _ in range(rounds))
        stock = engines.stock_first_visits(engine, Line(*MOBILE), times, rounds)
        what = f"first visit over 10 Mbit/s and 40 ms, page open to live answer, {times}x, ms"
        found.append(Row(what, stock, ours, FIRST))
    site.line = None
    with served(site, port) as address:
        for times in (1, 4):
            later = [later_visit(address, times) for _ in range(rounds)]
            tap, following = (median(each[kind] for each in later) for kind in ("tap", "next"))
            found.append(
                Row(
                    f"tap to answer after a short reading on a later visit, {times}x, ms",
                    None,
                    tap,
                    INSTANT,
                )
            )
            found.append(Row(f"next page, tap to its example, {times}x, ms", None, following, INSTANT))
        found += memory(address)
    return found + offline_bytes(site)
