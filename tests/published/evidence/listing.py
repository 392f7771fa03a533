"""Which figures no row from outside holds: `python -m tests.published.evidence.listing [calculator]`.

Wanted of each calculator: every result, both ends of its band where one is shown,
its rounding where it has a direction that matters, every column of the tables beside it. Held
is what has a row in this folder, in a `case` of a published test, or a line in
`passed-on.txt`, where another calculator holds it, or in `noticed.txt`: figures whose mistake a published or reference test notices, found
by turning each wrong (`python -m tests.mutants.figures`).
"""

import importlib
import json
import sys
from collections import defaultdict
from functools import cache
from typing import Any

from calc import InputError, answer
from calc.declare.catalogue import calculators
from calc.values.numbers import rounded
from site_overrides.build.bundle_requests import usual_requests
from tests.published.evidence import FOLDER, kind, passed_on, rows, table_kind
from tests.published.rows import CASES

Part = tuple[str, str]
"""A result and value, low, high, text or rounding; or a table's title and a column."""


def asked() -> list[tuple[str, dict[str, str]]]:
    """What readers ask of calculators: each option, unit and limit, one at a time, in each rule set."""
    found = []
    for text in usual_requests():
        try:
            request = json.loads(text)
        except ValueError:
            continue
        if isinstance(request, dict) and str(request.get("calculator")) in calculators():
            texts = request.get("texts")
            if isinstance(texts, dict) and all(isinstance(t, str) and len(t) < 400 for t in texts.values()):
                found.append((request["calculator"], texts))
    return found


@cache
def wanted() -> dict[str, set[Part]]:
    """What each calculator shows over all that is asked."""
    parts: dict[str, set[Part]] = defaultdict(set)
    for calculator, texts in asked():
        try:
            given: dict[str, Any] = dict(texts)
            got = answer(calculator, **given)
        except (InputError, TypeError):
            continue
        of = parts[calculator]
        for name, result in got["results"].items():
            of.add((name, "text" if result["value"] is None else "value"))
            shown = calculators()[calculator].results[name]
            if shown.toward != "nearest" and result["value"] is not None:
                ends = {rounded(result["value"], shown.digits, way) for way in ("up", "down")}
                of |= {(name, "rounding")} if len(ends) > 1 or shown.step else set()
            if result["low"] is not None and result["low"] != result["high"]:
                of |= {(name, "low"), (name, "high")}
        for table in got["tables"]:
            of |= {(table_kind(table["title"]), kind(column)) for column in table["columns"][1:]}
    for calculator, declared in calculators().items():
        for name, shown in declared.results.items():
            if not any(part[0] == name for part in parts[calculator]):
                parts[calculator].add((name, "text" if shown.words else "value"))
    return parts


@cache
def held() -> dict[str, set[Part]]:
    """What is held to a value from outside."""
    parts: dict[str, set[Part]] = defaultdict(set)
    for row in rows():
        name, which = row.result, row.which
        if " @ " in which:
            name, which = table_kind(name), kind(which.partition(" @ ")[0])
        parts[row.calculator].add((name, "text" if which == "says" else which))
    for path in sorted(FOLDER.parent.glob("test_*.py")):
        importlib.import_module(f"tests.published.{path.stem}")
    for case in CASES:
        parts[case.calculator].add((case.result, "value"))
    noticed = FOLDER / "noticed.txt"
    for line in noticed.read_text(encoding="utf-8").splitlines() if noticed.exists() else []:
        calculator, name, which = line.split("\t")
        parts[calculator].add((name, which))
    for each in passed_on():
        rounds_alike = _rounding(each.calculator, each.result) == _rounding(each.other, each.other_result)
        parts[each.calculator] |= {
            (each.result, which)
            for name, which in parts[each.other]
            if name == each.other_result and (which != "rounding" or rounds_alike)
        }
    return parts


def _rounding(calculator: str, name: str) -> tuple[object, ...]:
    shown = calculators()[calculator].results.get(name)
    return () if shown is None else (shown.toward, shown.digits, shown.step, shown.units)


def missing(calculator: str) -> list[Part]:
    """What of a calculator nothing from outside holds."""
    known = held()[calculator]
    return sorted(
        (name, which)
        for name, which in wanted()[calculator] - known
        if not any(which == column and " " in title and name.startswith(title) for title, column in known)
    )


def main(names: list[str]) -> None:
    """Print what is missing: the count for each calculator, and each part of those named."""
    for calculator in names or sorted(calculators()):
        gaps = missing(calculator)
        print(f"{calculator}: {len(gaps)} of {len(wanted()[calculator])} missing")
        for name, which in gaps if names else ():
            print(f"    {name} | {which}")


if __name__ == "__main__":
    main(sys.argv[1:])
