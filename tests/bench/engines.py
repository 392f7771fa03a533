"""Our engine beside the stock runtime: start-up, each answer, bytes.

Both are measured in the same run and in turns, so that the ratio holds on any
machine; medians. A slow phone is the renderer let run a quarter of the time.
"""

import json
import shutil
import subprocess
import tempfile
import time
from collections import defaultdict
from pathlib import Path
from statistics import median
from typing import Any

import calc.bridge
from site_overrides.build import bundle
from site_overrides.build import bundle_wheels as wheels
from site_overrides.build.bundle_requests import example_requests
from site_overrides.build.node import node, node_modules
from tests.bench.browsing import opened
from tests.bench.server import Host, Line, served
from tests.bench.table import Row
from tests.bench.throttle import throttled

ROOT = Path(__file__).parents[2]
PAGES = Path(__file__).parent / "pages"
THEME = ROOT / "site_overrides" / "theme" / "assets" / "engine"
STOCK = (
    "pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json",
)  # fmt: skip
FULL_SPEED = 3
SETTLED = 5.0  # s that a reader stays after a first answer, in which things are kept
ENGINE_SCRIPTS = ("engine.js", "files.js", "worker.js")
QUICK, LONG = 50, 300
"""Goals in ms for a later answer of a calculator, and of a sheet, a plan, a curve or a map."""
NATIVE, NATIVE_LONG = 3, 60
"""The same without a browser, on this machine."""
LATER_VISIT, SOONER, SLOW_LATER = 800, 15, "later visit, 4x"
"""Goals for what it names: ms to the first answer, and stock over ours."""


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
    """Times of first and later visits, of both kinds in turns; unthrottled no more than three."""
    times: dict[tuple[str, str], list[float]] = defaultdict(list)
    for slower, turns in ((1, min(rounds, FULL_SPEED)), (4, rounds)):
        for _ in range(turns):
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
    wanted = {"script", "unpacker", "wasm", "data", "snapshot"}
    ours = sum(entry["bytes"] for entry in files if entry["role"] in wanted)
    ours += sum((site / "assets" / "engine" / name).stat().st_size for name in ENGINE_SCRIPTS)
    stock = sum(path.stat().st_size for path in (site / "stock").iterdir())
    return {"stock": stock, "ours": ours}


def _is_long(calculator: str) -> bool:
    return calculator.endswith(("-sheet", "-plan", "-set", "-key"))


def has_drawings(request: str) -> bool:
    """Whether an answer has maps or curves that follow it."""
    alone = json.dumps({**json.loads(request), "drawings": False})
    return bool(json.loads(calc.bridge.run(alone))["answer"]["more"])


def later_times(address: str, requests: list[str], times: float) -> list[float]:
    """Milliseconds that each request takes in a browser so slow, asked a second time."""
    asked = [json.loads(request) for request in requests]
    with (
        tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile,
        opened(address, profile) as page,
    ):
        page.evaluate("import('./ours.js').then((made) => (window.bench = made))")
        page.evaluate("(asked) => bench.timeEach(asked)", asked[:1])
        with throttled(times):
            return list(page.evaluate("(asked) => bench.timeEach(asked)", asked))


def first_stock_visit(address: str, request: Any, times: float) -> float:
    """Milliseconds from opening an empty page to the stock runtime's first answer."""
    with (
        tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile,
        opened(address + "empty", profile) as page,
        throttled(times),
    ):
        page.goto(address)
        return float(
            page.evaluate(
                "(request) => import('./stock.js').then((made) => made.measure(request)).then(() => performance.now())",
                request,
            )
        )


def start_rows(engine: Path, rounds: int) -> list[Row]:
    """Rows of start-up, medians of so many rounds, and bytes."""
    requests = example_requests()
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder)
        write_site(site, engine)
        sent = bytes_sent(site)
        with served(Host(site)) as address:
            times = start_up(address, json.loads(requests[0]), rounds)
    found = [
        Row(
            f"worker start to first answer, {when}, ms",
            median(times["stock", when]),
            median(times["ours", when]),
            LATER_VISIT if when == SLOW_LATER else None,
        )
        for kind, when in times
        if kind == "stock"
    ]
    sooner = median(times["stock", SLOW_LATER]) / median(times["ours", SLOW_LATER])
    found.append(Row(f"stock over ours, {SLOW_LATER}", None, sooner, SOONER, at_least=True))
    found.append(
        Row("bytes to first answer, from a host that compresses nothing", sent["stock"], sent["ours"])
    )
    return found


def answer_rows(engine: Path, rounds: int) -> list[Row]:
    """Rows of answers: the slowest natively, the slowest first one, each later one in a slow browser.

    Maps and curves follow an answer and are asked for after it, as the page does.
    """
    whole = example_requests()
    alone = [json.dumps({**json.loads(request), "drawings": False}) for request in whole]
    drawn = [request for request in whole if has_drawings(request)]
    asked = {request: json.loads(request)["calculator"] for request in alone}
    asked |= {request: f"{json.loads(request)['calculator']} with its drawings" for request in drawn}
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder)
        write_site(site, engine)
        with served(Host(site)) as address:
            browsers = [later_times(address, list(asked), 4) for _ in range(rounds)]
    natives = [native_times(list(asked)) for _ in range(rounds)]
    first = dict(zip(alone, under_node(engine, alone), strict=True))
    in_browser, native = (
        {request: median(each[place] for each in times) for place, request in enumerate(asked)}
        for times in (browsers, natives)
    )
    long = {request for request, name in asked.items() if request in drawn or _is_long(name)}
    found = []
    for what, some, goal in (
        ("calculator", asked.keys() - long, NATIVE),
        ("sheet, plan, curve or map", long, NATIVE_LONG),
    ):
        slowest = max(some, key=native.__getitem__)
        found.append(
            Row(
                f"answer of a {what}, natively: the slowest, {asked[slowest]}, ms",
                None,
                native[slowest],
                goal,
            )
        )
    slowest = max(first, key=first.__getitem__)
    found.append(
        Row(f"first answer asked, under Node: the slowest, {asked[slowest]}, ms", None, first[slowest])
    )
    return found + [
        Row(f"later answer, 4x: {name}, ms", None, in_browser[request], LONG if request in long else QUICK)
        for request, name in asked.items()
    ]


def stock_first_visits(engine: Path, line: Line, times: float, rounds: int) -> float:
    """Median milliseconds of the stock runtime's first visit over a line, from a host that compresses."""
    request = json.loads(example_requests()[0])
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder)
        write_site(site, engine)
        with served(Host(site, compresses=True, line=line)) as address:
            return median(first_stock_visit(address, request, times) for _ in range(rounds))
