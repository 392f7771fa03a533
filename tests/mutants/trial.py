"""One change tried in a process of its own, forked from one that has all that is not ours imported."""

import contextlib
import importlib.abc
import importlib.machinery
import importlib.util
import io
import json
import os
import re
import signal
import sys
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import islice
from pathlib import Path
from types import CodeType
from typing import Any

import pytest

from tests.mutants import KEPT, ROOT
from tests.mutants.changes import Change
from tests.mutants.pictures import DRAWINGS, seen, unchanged
from tests.mutants.reach import Reach, reply_sum

LONGEST = 300
"""Seconds after which a change counts as noticed: it runs on."""


@dataclass
class Outcome:
    """What became of a change: whether an answer changed, which, and what noticed it."""

    changes_answer: bool = False
    answer: str = ""
    noticed_by: str = ""


class _Changed(importlib.abc.MetaPathFinder, importlib.machinery.SourceFileLoader):  # type: ignore[misc]
    """Imports one module from its changed text."""

    def __init__(self, change: Change) -> None:
        name = change.path.removesuffix(".py").removesuffix("/__init__").replace("/", ".")
        super().__init__(name, str(ROOT / change.path))
        self.change = change

    def find_spec(self, fullname: str, path: Any, target: Any = None) -> Any:  # noqa: ARG002
        """Only this module."""
        if fullname != self.name:
            return None
        return importlib.util.spec_from_file_location(fullname, self.path, loader=self)

    def get_code(self, fullname: str) -> CodeType:  # noqa: ARG002
        """The changed text, compiled."""
        return compile(self.change.text, self.path, "exec")


def _put_in(change: Change) -> None:
    if change.path.endswith(".py"):
        sys.meta_path.insert(0, _Changed(change))
        return
    read, changed = Path.read_text, ROOT / change.path

    def read_text(self: Path, *given: Any, **named: Any) -> str:
        return change.text if self == changed else read(self, *given, **named)

    Path.read_text = read_text  # type: ignore[method-assign]


def comes_by(change: Change, reach: Reach) -> list[int]:
    """Places in `reach.names` of what a change may touch."""
    if change.path.endswith(".csv"):
        modules = reach.imports.get(change.path, set())
        found = reach.by.get((change.path, 0), set()) | reach.of_files(modules)
    elif change.name:
        mention = re.compile(rf"\b{re.escape(change.name)}\b")
        files = {
            str(path.relative_to(ROOT))
            for path in (ROOT / "calc").rglob("*.py")
            if change.name != "*" and mention.search(path.read_text(encoding="utf-8"))
        }
        found = reach.of_files(files | {change.path}) | reach.of_no_line()
    else:
        found = set()
        for line in range(change.lines[0], change.lines[1] + 1):
            found |= reach.by.get((change.path, line), set())
    return sorted(found, key=reach.seconds.__getitem__)


def _difference(text: str) -> str:
    """What of the answer to a request is another, as far as it can be told in a line."""
    request = json.loads(text) if text[:1] == "{" else {}
    asked = request.get("calculator") or next(iter(request), "?")
    return f"{asked}: {json.dumps(request.get('texts', request), ensure_ascii=False)[:300]}"


def batches(places: Iterable[int], reach: Reach) -> list[list[str]]:
    """Tests by file, those of published rows and of quick files first, in three helpings."""
    files: dict[str, list[int]] = defaultdict(list)
    for place in places:
        if (ROOT / reach.names[place].split("::")[0]).exists() and not reach.names[place].startswith(EVIDENCE):
            files[reach.names[place].split("::")[0]].append(place)

    def cost(file: str) -> float:
        seconds = 0.3 + sum(reach.seconds[n] for n in files[file])
        return float(seconds / len(files[file]) ** 0.5)

    order = sorted(files, key=cost)
    helpings = [order[:2], order[2:8], order[8:]]
    return [[reach.names[n] for file in some for n in files[file]] for some in helpings if some]


class _First:
    """Remembers the first test that fails, of those that are tried; one that has gone since is left out."""

    def __init__(self, tests: list[str]) -> None:
        self.tests = set() if EVIDENCE in tests else set(tests)
        self.failed = ""

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        """Keep the tests that are tried."""
        items[:] = [item for item in items if not self.tests or item.nodeid in self.tests]

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Note a failure."""
        if report.failed and not self.failed:
            self.failed = report.nodeid

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        """A file that cannot be imported counts."""
        if report.failed and not self.failed:
            self.failed = f"{report.nodeid} (import)"


EVIDENCE = "tests/published/test_evidence.py"
"""Its rows grow daily, so that they are not looked up but chosen by calculator."""


def _helpings(change: Change, asked: Reach, tests: Reach) -> list[list[str]]:
    requests = (asked.names[place] for place in comes_by(change, asked))
    names = {found[1] for text in requests if (found := re.match(r'\{"calculator": "([a-z-]+)"', text))}
    rows = [[EVIDENCE, "-k", " or ".join(f"{name}:" for name in sorted(names))]] if names else []
    first, *others = batches(comes_by(change, tests), tests) or [[]]
    return [*([first] if first else []), *rows, *others]


def _tested(change: Change, asked: Reach, tests: Reach) -> str:
    for some in _helpings(change, asked, tests):
        first = _First(some)
        given = some if EVIDENCE in some else sorted({name.partition("::")[0] for name in some})
        code = pytest.main(["-x", "-q", "-p", "no:cacheprovider", *given], plugins=[first])
        if first.failed or code not in (pytest.ExitCode.OK, pytest.ExitCode.NO_TESTS_COLLECTED):
            return first.failed or f"pytest ends with {code!r}"
    return ""


MOST_PICTURES = 40
"""Requests whose pictures are held against the unchanged ones, for one change."""


def _first_other(change: Change, asked: Reach) -> str:
    """The first request to which a reader sees another answer; empty if there is none."""
    others = (asked.names[n] for n in comes_by(change, asked) if reply_sum(asked.names[n]) != asked.replies[n])
    if DRAWINGS not in change.path:
        return next(others, "")
    some = list(islice(others, MOST_PICTURES))
    run = importlib.import_module("calc.bridge").run
    return next((text for text, was in zip(some, unchanged(some), strict=True) if seen(was, run(text))), "")


def _tried(change: Change, asked: Reach, tests: Reach) -> Outcome:
    _put_in(change)
    try:
        importlib.import_module("calc.bridge")
        importlib.import_module("calc.declare.catalogue").calculators()
    except BaseException as error:
        return Outcome(True, "nothing can be imported", f"import: {type(error).__name__}")
    text = _first_other(change, asked)
    return Outcome(True, _difference(text), _tested(change, asked, tests)) if text else Outcome()


def start(number: int, change: Change, asked: Reach, tests: Reach) -> int:
    """Begin a trial in a child; its outcome goes into a file named by the number.

    Returns:
        The child's process id.
    """
    child = os.fork()
    if child:
        return child
    signal.alarm(LONGEST)
    os.chdir(ROOT)
    with open(os.devnull, "w", encoding="utf-8") as nowhere:
        os.dup2(nowhere.fileno(), 1)
        os.dup2(nowhere.fileno(), 2)
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        outcome = _tried(change, asked, tests)
    (KEPT / f"trial-{number}.json").write_text(json.dumps(vars(outcome)), encoding="utf-8")
    os._exit(0)


def ended(number: int, status: int) -> Outcome:
    """The outcome of a child that has ended."""
    file = KEPT / f"trial-{number}.json"
    if not file.exists():
        return Outcome(True, "no answer comes", f"the process ends with {status}")
    outcome = Outcome(**json.loads(file.read_text(encoding="utf-8")))
    file.unlink()
    return outcome
