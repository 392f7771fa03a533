"""`python -m tests.bench`: one table of start-up and answers, beside the stock runtime.

Both are measured in the same run and in turns, so that the ratio holds on any
machine; medians, and nothing is asserted. A slow phone is the renderer let run a
quarter of the time.
"""

import argparse
import json
import shutil
import subprocess
import sys
import tempfile
import threading
import time
from collections import defaultdict
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from statistics import median
from typing import Any

from playwright.sync_api import Page

import calc.bridge
from site_overrides.build import bundle
from site_overrides.build import bundle_wheels as wheels
from site_overrides.build.browser import chromium
from site_overrides.build.node import node, node_modules
from tests.bench.throttle import throttled
from tests.driver import driver

ROOT = Path(__file__).parents[2]
PAGES = Path(__file__).parent / "pages"
PAGE = ROOT / "docs" / "tables" / "checked.md"
THEME = ROOT / "site_overrides" / "theme" / "assets" / "engine"
STOCK = (
    "pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json",
)  # fmt: skip
SETTLED = 1.5  # s between a first answer and closing, for what is kept and cached
FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]  # fmt: skip
ENGINE_SCRIPTS = ("engine.js", "files.js", "worker.js", "python.js", "store.js", "unxz.js")


def write_site(site: Path, engine: Path) -> None:
    """Put our engine and the stock runtime side by side."""
    shutil.copytree(PAGES, site, dirs_exist_ok=True)
    shutil.copytree(THEME, site / "assets" / "engine")
    bundle.copy(engine, site / "assets" / "engine")
    stock = site / "stock"
    stock.mkdir()
    for name in STOCK:
        shutil.copy(node_modules() / "pyodide" / name, stock / name)
    made = wheels.write_wheels(stock, calc=ROOT / "calc")
    (stock / "wheels.json").write_text(json.dumps([wheel.name for wheel in made]))


class Handler(SimpleHTTPRequestHandler):
    """Files as a plain host sends them: long age, no compression."""

    protocol_version = "HTTP/1.1"
    extensions_map = SimpleHTTPRequestHandler.extensions_map | {
        ".js": "text/javascript",
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
    }

    def end_headers(self) -> None:
        """Let the browser keep files, which favours the stock runtime."""
        self.send_header("Cache-Control", "max-age=86400")
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - the base names it so
        """Say nothing for each file."""


@contextmanager
def served(site: Path) -> Iterator[str]:
    """Address at which a folder is served meanwhile."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Handler, directory=str(site)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/"
    finally:
        server.shutdown()


@contextmanager
def opened(address: str, profile: str) -> Iterator[Page]:
    """A page in a browser that remembers what the profile's earlier visits left."""
    program = chromium()
    if program is None:
        sys.exit("Chromium or Chrome is needed; see site_overrides/build/browser.py")
    context = driver().chromium.launch_persistent_context(profile, executable_path=program, args=FLAGS)
    page = context.pages[0]
    page.goto(address)
    yield page
    context.close()


def visit(address: str, profile: str, kind: str, request: Any, times: float) -> float:
    """Milliseconds from `new Worker` to the first answer in one visit."""
    with opened(address, profile) as page:
        page.evaluate("navigator.serviceWorker.register('sw.js')")
        page.evaluate(f"import('./{kind}.js').then((made) => (window.bench = made))")
        with throttled(times):
            got = page.evaluate("(request) => bench.measure(request)", request)
        page.evaluate("bench.kept()")
        time.sleep(SETTLED)
    return float(got["first"])


def start_up(address: str, request: Any, rounds: int) -> dict[tuple[str, str], list[float]]:
    """Times of first and later visits, of both kinds in turns."""
    times: dict[tuple[str, str], list[float]] = defaultdict(list)
    for slower in (1, 4):
        for _ in range(rounds):
            for kind in ("stock", "ours"):
                with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
                    for when in ("first", "second", "later"):
                        spent = visit(address, profile, kind, request, slower)
                        times[kind, f"{when} visit, {slower}x"].append(spent)
    return times


def native_times(requests: list[str]) -> list[float]:
    """Milliseconds that each request takes here, asked a second time."""
    times = []
    for request in requests:
        calc.bridge.run(request)
        began = time.perf_counter()
        calc.bridge.run(request)
        times.append((time.perf_counter() - began) * 1000)
    return times


def browser_times(address: str, requests: list[str]) -> list[float]:
    """Milliseconds that each request takes in the browser, asked a second time."""
    with (
        tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile,
        opened(address, profile) as page,
    ):
        page.evaluate("import('./ours.js').then((made) => (window.bench = made))")
        asked = [json.loads(request) for request in requests]
        return list(page.evaluate("(asked) => bench.timeEach(asked)", asked))


def under_node(engine: Path, requests: list[str]) -> list[float]:
    """Milliseconds that each request takes in the shipped Python, the first time asked."""
    said = subprocess.run(
        node(ROOT / "tests" / "wasm" / "engine.mjs", "answer", engine, "snapshot"),
        input=json.dumps(requests), capture_output=True, text=True, check=True,
    )  # fmt: skip
    return [each["ms"] for each in json.loads(said.stdout)]


def bytes_sent(site: Path) -> dict[str, int]:
    """Bytes to a first answer as a host sends them that compresses nothing."""
    files = json.loads((site / "assets" / "engine" / "manifest.json").read_text())["files"]
    wanted = {"script", "unpacker", "wasm", "snapshot"}
    ours = sum(entry["bytes"] for entry in files if entry["role"] in wanted)
    ours += sum((site / "assets" / "engine" / name).stat().st_size for name in ENGINE_SCRIPTS)
    stock = sum(path.stat().st_size for path in (site / "stock").iterdir())
    return {"stock": stock, "ours": ours}


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench")
    parser.add_argument("--rounds", type=int, default=5, help="visits of each kind")
    parser.add_argument("--keep", action="store_true", help="write the table on How this is checked")
    words = parser.parse_args()
    rounds = words.rounds
    engine = bundle.build()
    requests = bundle.example_requests()
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder)
        write_site(site, engine)
        sent = bytes_sent(site)
        with served(site) as address:
            times = start_up(address, json.loads(requests[0]), rounds)
            in_browser = browser_times(address, requests)
    lines = [
        f"| worker start to first answer, ms, medians of {rounds} | stock | ours | stock / ours |",
        "|---|---|---|---|",
    ]
    for kind, when in times:
        if kind == "stock":
            stock, ours = (median(times[each, when]) for each in ("stock", "ours"))
            lines.append(f"| {when} | {stock:.0f} | {ours:.0f} | {stock / ours:.1f} |")
    ratio = sent["stock"] / sent["ours"]
    lines.append(
        f"| bytes to first answer, sent as they are | {sent['stock']} | {sent['ours']} | {ratio:.1f} |"
    )
    lines += [
        "",
        "| answer, ms | native | in the browser | first time asked, under Node |",
        "|---|---|---|---|",
    ]
    rows = zip(requests, native_times(requests), in_browser, under_node(engine, requests), strict=True)
    for request, native, browser, first in rows:
        name = json.loads(request)["calculator"]
        lines.append(f"| {name} | {native:.1f} | {browser:.1f} | {first:.1f} |")
    print("\n".join(lines))
    if words.keep:
        keep(lines)


def keep(lines: list[str]) -> None:
    """Write the table between its marks on the page that shows it."""
    before, mark, rest = PAGE.read_text(encoding="utf-8").partition("<!-- measured -->\n")
    _, end, after = rest.partition("<!-- end of measured -->")
    told = f"Measured {datetime.now(UTC).date()} on two cores, Chromium without a window.\n\n"
    PAGE.write_text(before + mark + "\n" + told + "\n".join(lines) + "\n\n" + end + after, encoding="utf-8")


if __name__ == "__main__":
    main()
