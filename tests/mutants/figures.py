"""Each shown figure turned wrong, one at a time: `python -m tests.mutants.figures [calculator …]`.

What a published or reference test notices goes into `tests/published/evidence/noticed.txt`:
a value, an end of a band or a column 3 % off, words that are others, a rounding turned round.
"""

import dataclasses
import os
import re
import sys
from collections.abc import Callable
from typing import Any

import pytest
from _pytest.runner import runtestprotocol

from calc import declare
from calc.declare import Answer, Calculator, Figure, Shown, Table
from calc.declare.catalogue import calculators
from tests.mutants import KEPT, ROOT
from tests.mutants.reach import Reach, kept
from tests.published.evidence import FOLDER, kind, listing, rows, table_kind

FOLDERS = ("tests/published", "tests/reference")
DIRECTION: dict[str, Any] = {"up": "down", "down": "up"}
LONGEST = 5.0
"""Seconds of tests tried for one figure."""


def _figure(figure: Figure | None, which: str) -> Figure | None:
    if figure is None:
        return None
    if which == "text":
        return dataclasses.replace(figure, words=f"{figure.words} otherwise") if figure.value is None else figure
    number = getattr(figure, which)
    if number is None:
        return figure
    wrong: dict[str, Any] = {which: number * 1.03 if number else 0.03}
    return dataclasses.replace(figure, **wrong)


def _cell(text: str) -> str:
    found = re.search(r"\d+(\.\d+)?", text)
    if not found:
        return f"{text} otherwise"
    return text[: found.start()] + f"{float(found[0]) * 1.03 + 0.01:.6g}" + text[found.end() :]


def _table(table: Table, column: str) -> Table:
    places = [n for n, head in enumerate(table.columns) if n and kind(head) == column]
    lines = tuple(
        tuple(_cell(cell) if n in places else cell for n, cell in enumerate(row)) for row in table.rows
    )
    return dataclasses.replace(table, rows=lines)


def _wrong(function: Callable[..., Answer[Any]], part: tuple[str, str]) -> Callable[..., Answer[Any]]:
    """The calculator with one part of its answer wrong."""
    name, which = part

    def tables(some: tuple[Table, ...]) -> tuple[Table, ...]:
        return tuple(_table(t, which) if table_kind(t.title) == name else t for t in some)

    def beside(made: Callable[[], declare.Beside] | None) -> Callable[[], declare.Beside] | None:
        if made is None:
            return None
        return lambda: (tables(made()[0]), made()[1])

    def wrong(*given: Any, **named: Any) -> Answer[Any]:
        got = function(*given, **named)
        if hasattr(got.results, name):
            changed = {name: _figure(getattr(got.results, name), which)}
            return dataclasses.replace(got, results=dataclasses.replace(got.results, **changed))
        return dataclasses.replace(
            got, tables=tables(got.tables), beside=beside(got.beside), drawn=beside(got.drawn)
        )

    return wrong


def _results(calculator: Calculator, name: str) -> dict[str, Shown]:
    shown = calculator.results[name]
    return {**calculator.results, name: dataclasses.replace(shown, toward=DIRECTION[shown.toward])}


class Turned:
    """Instead of a plain run: turns each part wrong and runs tests until one fails."""

    def __init__(self, calculator: str, parts: list[tuple[str, str]], tests: list[str]) -> None:
        self.calculator, self.parts, self.tests = calculator, parts, set(tests)
        self.noticed: list[tuple[str, str]] = []
        self.failed = False

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        """Keep the tests that are tried; one that has gone since it was found is left out."""
        items[:] = [item for item in items if item.nodeid in self.tests]

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Note a failure."""
        self.failed |= report.failed and report.when == "call"

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Every part in turn."""
        calculator = calculators()[self.calculator]
        right: dict[str, Any] = {"function": calculator.function, "results": calculator.results}
        for part in self.parts:
            if part[1] == "rounding":
                object.__setattr__(calculator, "results", _results(calculator, part[0]))
            else:
                object.__setattr__(calculator, "function", _wrong(right["function"], part))
            self.failed = False
            for item in session.items:
                runtestprotocol(item, log=True, nextitem=None)
                if self.failed:
                    self.noticed.append(part)
                    break
            for name, value in right.items():
                object.__setattr__(calculator, name, value)
        return True


def _tests(calculator: str, reach: Reach) -> list[str]:
    file = {calculators()[calculator].function.__code__.co_filename.removeprefix(f"{ROOT}/")}
    own = [n for n in reach.of_files(file) if reach.names[n].startswith(FOLDERS)]
    chosen, seconds = [], 0.0
    for place in sorted(own, key=reach.seconds.__getitem__):
        seconds += reach.seconds[place]
        if seconds < LONGEST and "test_evidence" not in reach.names[place]:
            chosen.append(reach.names[place])
    return chosen


def _of_one(calculator: str, reach: Reach) -> list[str]:
    """Lines of the figures of a calculator whose mistake is noticed."""
    has_row = {(row.calculator, row.result, row.which) for row in rows()}
    parts = sorted(part for part in listing.wanted()[calculator] if (calculator, *part) not in has_row)
    chosen = _tests(calculator, reach)
    turned = Turned(calculator, parts, chosen)
    if parts and chosen:
        files = sorted({name.partition("::")[0] for name in chosen})
        pytest.main(["-q", "-p", "no:cacheprovider", *files], plugins=[turned])
    return ["\t".join((calculator, *part)) for part in turned.noticed]


def _in_a_child(calculator: str, reach: Reach) -> list[str]:
    file = KEPT / f"figures-{calculator}.txt"
    child = os.fork()
    if not child:
        with open(os.devnull, "w", encoding="utf-8") as nowhere:
            os.dup2(nowhere.fileno(), 1)
            os.dup2(nowhere.fileno(), 2)
        file.write_text("\n".join(_of_one(calculator, reach)), encoding="utf-8")
        os._exit(0)
    os.waitpid(child, 0)
    return file.read_text(encoding="utf-8").splitlines()


def main(names: list[str]) -> None:
    """Each calculator in a child of its own, so that each begins afresh."""

    def missing(*_: str) -> Reach:
        raise RuntimeError("first: python -m tests.mutants.reach tests")

    reach = kept("tests", missing)
    listing.wanted()
    listed = FOLDER / "noticed.txt"
    kept_lines = listed.read_text(encoding="utf-8").splitlines() if listed.exists() else []
    chosen = names or sorted(calculators())
    lines = [line for line in kept_lines if line.split("\t")[0] not in chosen]
    for calculator in chosen:
        found = _in_a_child(calculator, reach)
        print(f"{calculator}: {len(found)} noticed", flush=True)
        lines += found
        listed.write_text("\n".join(sorted(set(lines))) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
