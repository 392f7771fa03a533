"""Which requests and which tests come by each line, and what each request is answered.

Found once in two runs under `sys.monitoring` and kept in `.build/mutants`. A value
from a cache counts as if its lines had run again; a table counts as a line of its own.
"""

import functools
import hashlib
import importlib
import json
import os
import pickle
import pkgutil
import re
import sys
import time
from collections import defaultdict
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from types import CodeType, FrameType, ModuleType
from typing import Any

import pytest

from tests.mutants import KEPT, ROOT, TESTS
from tests.mutants.moved import by_now

TOOL = 4
Place = tuple[str, int]
"""A file from the root and a line; line 0 of a table for the table."""


@dataclass
class Reach:
    """What comes by a line.

    Args:
        names: Each request's JSON, or each test's id.
        seconds: How long each takes.
        by: For each line, places in `names`.
        imports: Modules that read a table while they are imported.
        replies: Sum of each reply, for requests.
    """

    names: list[str] = field(default_factory=list)
    seconds: list[float] = field(default_factory=list)
    by: dict[Place, set[int]] = field(default_factory=lambda: defaultdict(set))
    imports: dict[str, set[str]] = field(default_factory=lambda: defaultdict(set))
    replies: list[str] = field(default_factory=list)

    def of_files(self, files: set[str]) -> set[int]:
        """What comes by any line of these files."""
        return {n for (file, _), these in self.by.items() if file in files for n in these}

    def of_no_line(self) -> set[int]:
        """What comes by no line: it looks only at what stands ready after import."""
        return set(range(len(self.names))) - {n for these in self.by.values() for n in these}

    def renewed(self, files: set[str], found: "Reach") -> "Reach":
        """This, with what was found anew for the tests of these files."""
        new = Reach(imports=self.imports)
        for reach in (self, found):
            stay = [n for n, name in enumerate(reach.names) if reach is found or name.split("::")[0] not in files]
            places = {n: len(new.names) + place for place, n in enumerate(stay)}
            new.names += [reach.names[n] for n in stay]
            new.seconds += [reach.seconds[n] for n in stay]
            for line, these in reach.by.items():
                new.by[line] |= {places[n] for n in these if n in places}
        for table, modules in found.imports.items():
            new.imports[table] |= modules
        return new


class Recorder:
    """Notes the lines of `calc` that run between two calls of `taken`."""

    def __init__(self) -> None:
        self.seen: set[Place] = set()
        self.imports: dict[str, set[str]] = defaultdict(set)
        self.on = False
        self.files: dict[str, str] = {}

    def line(self, code: CodeType, number: int) -> Any:
        """A line ran: once is enough until `taken`."""
        if self.on:
            self.seen.add((self.files[code.co_filename], number))
        return sys.monitoring.DISABLE

    def taken(self) -> set[Place]:
        """What ran since the last call."""
        seen, self.seen = self.seen, set()
        sys.monitoring.restart_events()
        return seen

    def cache(self, function: Any = None, **_: Any) -> Any:
        """Instead of functools' own: a value found again brings the lines that made it."""
        if not callable(function):
            return self.cache
        kept: dict[Any, tuple[Any, set[Place]]] = {}

        @functools.wraps(function)
        def wrapper(*args: Any, **given: Any) -> Any:
            key = (args, tuple(sorted(given.items())))
            if key not in kept:
                before = self.taken()
                if function.__name__ == "table":
                    self._read(f"calc/data/{args[0]}.csv")
                value = function(*args, **given)
                kept[key] = value, self.seen
                self.seen = before | self.seen
            elif function.__name__ == "table" and not self.on:
                self._read(f"calc/data/{args[0]}.csv")
            self.seen |= kept[key][1]
            return kept[key][0]

        wrapper.cache_clear = kept.clear  # type: ignore[attr-defined]
        return wrapper

    def _read(self, path: str) -> None:
        self.seen.add((path, 0))
        frame: FrameType | None = sys._getframe(1)
        while frame and not self.on:
            if frame.f_code.co_name == "<module>" and frame.f_code.co_filename in self.files:
                self.imports[path].add(self.files[frame.f_code.co_filename])
            frame = frame.f_back


def others() -> None:
    """Import all that is not ours, once for every child."""
    for name in (
        "pint", "scipy.optimize", "scipy.integrate", "scipy.special", "scipy.stats", "cantera", "CoolProp.CoolProp",
        "fluids", "hypothesis.extra", "hypothesis.strategies", "lxml.html", "rectpack", "segno", "markdown",
    ):  # fmt: skip
        with suppress(ImportError):
            importlib.import_module(name)


def _codes(code: CodeType) -> Iterator[CodeType]:
    yield code
    for part in code.co_consts:
        if isinstance(part, CodeType):
            yield from _codes(part)


def _modules() -> list[ModuleType]:
    calc = importlib.import_module("calc")
    names = [found.name for found in pkgutil.walk_packages(calc.__path__, "calc.")]
    return [importlib.import_module(name) for name in names if not name.endswith("__main__")]


@contextmanager
def recorded() -> Iterator[Recorder]:
    """`calc` imported so that its lines are noted."""
    others()
    recorder = Recorder()
    for path in (ROOT / "calc").rglob("*.py"):
        recorder.files[str(path)] = str(path.relative_to(ROOT))
    own, own_lru = functools.cache, functools.lru_cache
    monitoring = sys.monitoring
    monitoring.use_tool_id(TOOL, "mutants")
    monitoring.register_callback(TOOL, monitoring.events.LINE, recorder.line)
    functools.cache = functools.lru_cache = recorder.cache  # type: ignore[assignment]
    try:
        _modules()
    finally:
        functools.cache, functools.lru_cache = own, own_lru
    import gc  # noqa: PLC0415

    for code in {f.__code__ for f in gc.get_objects() if type(f).__name__ == "function"}:
        if code.co_filename in recorder.files:
            for inner in _codes(code):
                monitoring.set_local_events(TOOL, inner, monitoring.events.LINE)
    recorder.taken()
    recorder.on = True
    try:
        yield recorder
    finally:
        monitoring.free_tool_id(TOOL)


def reply_sum(text: str) -> str:
    """A short sum of the reply to a request."""
    from calc.bridge import run  # noqa: PLC0415

    return _sum(run(text))


def _sum(reply: str) -> str:
    return hashlib.sha256(reply.encode("utf-8", "surrogatepass")).hexdigest()[:16]


def requests() -> dict[str, str]:
    """What is asked, with the sum of its reply: all that pages send that is answered, and some of what is refused."""
    from calc.bridge import run  # noqa: PLC0415
    from site_overrides.build.bundle_requests import usual_requests  # noqa: PLC0415

    chosen = {}
    for number, text in enumerate(dict.fromkeys(usual_requests())):
        if len(text) < 5000:
            reply = run(text)
            if '"errors"' not in reply[:12] or number % 6 == 0:
                chosen[text] = _sum(reply)
    return chosen


def of_requests() -> Reach:
    """What each request comes by."""
    found = Reach()
    with recorded() as recorder:
        asked = requests()
        recorder.taken()
        for text, before in asked.items():
            started = time.perf_counter()
            reply = reply_sum(text)
            seen = recorder.taken()
            if reply != before:
                continue  # it tells the time, or draws anew
            for place in seen:
                found.by[place].add(len(found.names))
            found.names.append(text)
            found.seconds.append(time.perf_counter() - started)
            found.replies.append(reply)
        found.imports = recorder.imports
    return found


class _Notes:
    """Takes the lines of each test that passes."""

    def __init__(self, recorder: Recorder) -> None:
        self.recorder, self.found = recorder, Reach()
        self.while_imported: dict[str, set[Place]] = {}

    @pytest.hookimpl(wrapper=True)
    def pytest_make_collect_report(self, collector: pytest.Collector) -> Iterator[None]:
        """Note what a file of tests works out while it is imported: it counts for each of its tests."""
        self.recorder.taken()
        result = yield
        if isinstance(collector, pytest.Module):
            self.while_imported[collector.nodeid] = self.recorder.taken()
        return result

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        """Note what one test comes by."""
        self.recorder.taken()
        started = time.perf_counter()
        result = yield
        for place in self.recorder.taken() | self.while_imported.get(item.nodeid.partition("::")[0], set()):
            self.found.by[place].add(len(self.found.names))
        self.found.names.append(item.nodeid)
        self.found.seconds.append(time.perf_counter() - started)
        return result


def of_tests(*files: str) -> Reach:
    """What each test comes by; of these files alone, if some are given."""
    with recorded() as recorder:
        notes = _Notes(recorder)
        pytest.main(["-q", "-p", "no:cacheprovider", "-m", "not browser and not site", *(files or TESTS)], plugins=[notes])
        notes.found.imports = recorder.imports
    return notes.found


def _texts(folder: str, *apart: str) -> dict[str, str]:
    paths = [p for p in sorted((ROOT / folder).rglob("*")) if p.suffix in (".py", ".csv", ".toml")]
    named = {p.relative_to(ROOT): p for p in paths}
    return {str(path): p.read_text(encoding="utf-8") for path, p in named.items() if not set(apart) & set(path.parts)}


def _stale(was: dict[str, str], now: dict[str, str]) -> set[str]:
    """Files of tests that changed or are new, or that name a helper that changed."""
    changed = {path for path in was.keys() | now.keys() if was.get(path) != now.get(path)}
    helpers = {Path(path).stem for path in changed if not Path(path).name.startswith("test_")}
    mention = re.compile(rf"\b({'|'.join(sorted(helpers))})\b" if helpers else r"(?!)")
    return {p for p, text in (was | now).items() if "/test_" in p and (p in changed or mention.search(text))}


def kept(what: str, make: Callable[..., Reach]) -> Reach:
    """What was found before for this very code, else found now.

    Tests whose own files are as they were are not run again: what they come by is looked up where its lines stand now.
    Rows of evidence are chosen by calculator and decide nothing here.
    """
    file = KEPT / f"{what}.pickle"
    code = _texts("calc")
    tests = _texts("tests", "mutants", "evidence", "bench", "browser", "wasm") if what == "tests" else {}
    found = None
    with suppress(OSError, EOFError, ValueError):
        was, had, found = pickle.loads(file.read_bytes())
        if (was, had) == (code, tests) or "MUTANTS_AS_KEPT" in os.environ:
            return found  # type: ignore[no-any-return]
    if found and what == "tests":
        found.by = by_now(found.by, was, code)
        stale = _stale(had, tests)
        found = found.renewed(stale, make(*sorted(stale & tests.keys()))) if stale else found
    else:
        found = make()
    KEPT.mkdir(parents=True, exist_ok=True)
    file.write_bytes(pickle.dumps((code, tests, found)))
    print(f"{what}: {len(found.names)} in {sum(found.seconds):.0f} s", json.dumps(len(found.by)), flush=True)
    return found


MAKERS = {"requests": of_requests, "tests": of_tests}

if __name__ == "__main__":
    # By its own name, so that what is kept can be read by others.
    once = importlib.import_module("tests.mutants.reach")
    once.kept(sys.argv[1], once.MAKERS[sys.argv[1]])
