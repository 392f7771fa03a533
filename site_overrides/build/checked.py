"""What each calculator is held to, made from the rows of the tests; and the score of the mutants."""

import ast
import importlib
import json
import re
from collections import defaultdict
from dataclasses import dataclass
from functools import cache
from html import escape
from pathlib import Path
from typing import Any

from calc.declare.catalogue import calculators

ROOT = Path(__file__).parents[2]
LIBRARIES = {"CoolProp": "CoolProp", "cantera": "Cantera", "fluids": "fluids", "scipy": "SciPy"}
WORKED = "computed"
UNSURE = ("memory", "practice")
ROOMS = {
    "formulas": "Formulas", "calculators": "Calculators", "trade": "What calculators share", "job_sheet": "Job sheet",
    "class_plan": "Class plan", "data": "Tables",
    "show": "What is shown", "practice": "Practice problems", "calc": "Reading, units, answering",
}  # fmt: skip


@dataclass(frozen=True)
class Point:
    """One expected value: what it is of, who says so, and how far the answer is off."""

    result: str
    source: str
    how_sure: str
    off: float | None


def _off(got: float | None, number: float) -> float | None:
    return abs(got - number) / abs(number) if got is not None and number else None


@cache
def points() -> dict[str, tuple[Point, ...]]:
    """Every expected value of every calculator, from the rows that the tests hold it to."""
    from calc.answer.answering import answer  # noqa: PLC0415
    from tests.published.evidence import rows  # noqa: PLC0415
    from tests.published.rows import CASES, shown  # noqa: PLC0415

    for path in sorted((ROOT / "tests/published").glob("test_*.py")):
        importlib.import_module(f"tests.published.{path.stem}")
    found: dict[str, list[Point]] = defaultdict(list)
    for case in dict.fromkeys(map(id, CASES)):
        row = next(one for one in CASES if id(one) == case)
        found[row.calculator].append(Point(row.result, row.source, row.how_sure, _off(shown(row), row.figure)))
    for held in rows():
        off = None
        if held.which in ("value", "low", "high"):
            given: dict[str, Any] = dict(held.texts)
            got = answer(held.calculator, units={held.result: held.unit}, **given)["results"]
            off = _off(got[held.result][held.which], held.number())
        found[held.calculator].append(Point(held.result, held.source, held.how_sure, off))
    return {name: tuple(some) for name, some in found.items()}


def _imports(path: Path) -> set[str]:
    names: set[str] = set()
    for part in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(part, ast.Import):
            names |= {alias.name for alias in part.names}
        elif isinstance(part, ast.ImportFrom) and part.module:
            names |= {f"{part.module}.{alias.name}" for alias in part.names}
    return names


@cache
def libraries() -> dict[str, set[str]]:
    """Open libraries that a calculator, or a formula it calls, is compared with, by id."""
    found: dict[str, set[str]] = defaultdict(set)
    own = {
        name: {m for m in _imports(ROOT / f"{one.function.__module__.replace('.', '/')}.py") if ".formulas." in m}
        for name, one in calculators().items()
    }
    for path in sorted((ROOT / "tests/reference").glob("test_*.py")):
        used = _imports(path)
        compared = {words for name, words in LIBRARIES.items() if any(m.split(".")[0] == name for m in used)}
        text = path.read_text(encoding="utf-8")
        formulas = {m for m in used if ".formulas." in m}
        for calculator, called in own.items():
            if f'"{calculator}"' in text or formulas & called:
                found[calculator] |= compared
    return found


def _held(name: str) -> int:
    """How many figures, ends of bands, columns and roundings of a calculator are held."""
    from tests.published.evidence.listing import held  # noqa: PLC0415

    return len(held()[name])


def _name(source: str) -> str:
    return re.split(r"[:;]| \(", source)[0].strip()


def _listed(words: set[str]) -> str:
    return escape("; ".join(sorted(words, key=str.lower)))


def trust_rows() -> tuple[list[str], list[list[str]]]:
    """Headings and rows: what each calculator is held to, how often, how far it is off, what is less sure."""
    rows = []
    for name, calculator in sorted(calculators().items(), key=lambda pair: pair[1].title):
        some = points().get(name, ())
        printed = {_name(p.source) for p in some if p.how_sure in ("read", "read-m")}
        worked = sum(p.how_sure == WORKED for p in some)
        offs = [p.off for p in some if p.off is not None]
        grades: dict[str, set[str]] = defaultdict(set)
        for point in some:
            grades[point.result].add(point.how_sure)
        unsure = {
            calculator.results[result].label if result in calculator.results else result
            for result, these in grades.items()
            if these <= set(UNSURE)
        }
        rows.append(
            [
                escape(calculator.title),
                _listed(printed),
                _listed(libraries().get(name, set())),
                str(_held(name)),
                str(len(some)),
                str(worked),
                f"{max(offs):.2%}".replace("%", " %") if offs else "",
                _listed(unsure),
            ]
        )
    heads = [
        "Calculator", "Printed sources that were read", "Open libraries", "Figures held", "Expected values", "Of these worked by hand",
        "Largest difference", "Held by memory or practice only",
    ]  # fmt: skip
    return heads, rows


def score_rows() -> tuple[str, list[str], list[list[str]]]:
    """A sentence with date and seed, headings, and how many changes of each room a test noticed."""
    score = json.loads((ROOT / "tests/mutants/score.json").read_text(encoding="utf-8"))
    rows = [
        [escape(ROOMS.get(room, room.replace("_", " ").capitalize())), str(row["drawn"]), str(row["changes_an_answer"]), str(row["noticed"])]
        for room, row in score["rooms"].items()
    ]
    sentence = (
        f"{score['date']}, drawn with the seed {score['seed']}: a test noticed "
        f"{sum(row['noticed'] for row in score['rooms'].values())} of the "
        f"{sum(row['changes_an_answer'] for row in score['rooms'].values())} changes that change an answer."
    )
    return sentence, ["Where", "Changes tried", "Change an answer", "Noticed"], rows
