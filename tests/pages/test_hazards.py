"""One table of hazards: each is whole, its signal word fits what it does, and something brings it."""

import ast
import re
from pathlib import Path
from typing import Any

import pytest

from calc.answer.hazards import PARTS, SIGNALS, alternatives, hazards
from calc.data.tables import table
from site_overrides.build.check_pages import _SAFE, DOCS, ROOT, forms, procedures, read

ROWS = [pytest.param(row, id=row.id) for row in hazards().values()]
CITING_TABLES = {
    "introduction-benchbook-2026": "hazards",
    "staged-faults-benchbook-2026": "hazards",
    "first-acts-benchbook-2026": "text",
}
_BRACED = re.compile(r"\{[a-z][a-z0-9_-]*\}")
LIKELY = {"DANGER": r"\bwill\b", "WARNING": r"\bcould\b", "CAUTION": r"\bcould\b"}
"""ANSI Z535.6, from memory: DANGER, if not avoided, will result in death or serious injury;
WARNING could; CAUTION could result in minor or moderate injury; NOTICE is no injury."""


def _cited_by_pages() -> set[str]:
    found = set()
    for page in map(read, sorted(DOCS.rglob("*.md"))):
        for made in procedures(page):
            found |= {name for pause in made.pauses for step in pause.steps for name in step.hazards}
        found |= {line.id for f in forms(page) for part in f.parts for line in part.lines if line.kind == "hazard"}
    return found


def _cited_by_tables() -> set[str]:
    found = set()
    for name, column in CITING_TABLES.items():
        for row in table(name):
            if name.startswith("first-acts") and row.kind != "hazard":
                continue
            found |= set(getattr(row, column).split())
    return found


def _texts_of_code() -> set[str]:
    """Every string written in the calculators: an id among them is cited by one."""
    found = set()
    for path in (ROOT / "calc").rglob("*.py"):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        found |= {node.value for node in ast.walk(tree) if isinstance(node, ast.Constant) and isinstance(node.value, str)}
    return found


def test_something_brings_or_cites_every_hazard() -> None:
    cited = _cited_by_pages() | _cited_by_tables() | _texts_of_code()
    for path in sorted(Path(ROOT / "calc" / "data").glob("*.csv")):
        if path.stem != "hazards" and re.search(r"^[^\n]*\bhazard\b", path.read_text(encoding="utf-8")):
            cited |= {getattr(row, "hazard", "") for row in table(path.stem)}
    assert [row.id for row in hazards().values() if row.id not in cited and not row.brought_by] == []


def test_what_tables_cite_exists() -> None:
    assert _cited_by_tables() <= set(hazards())


def test_ids_and_texts_are_told_once() -> None:
    rows = table("hazards")
    for column in ("id", "hazard", "avoidance"):
        told = [getattr(row, column) for row in rows]
        assert sorted({text for text in told if told.count(text) > 1}) == [], column


@pytest.mark.parametrize("row", ROWS)
def test_the_signal_word_says_how_likely_it_is(row: Any) -> None:
    assert row.signal in SIGNALS
    if row.signal != "NOTICE":
        assert re.search(LIKELY[row.signal], row.consequence), row.consequence
    if row.signal == "DANGER":
        assert not re.search(r"\b(?:could|can|may|might)\b", row.consequence)
    if row.signal == "CAUTION":
        assert not re.search(r"\b(?:kill|death|lives?|maim)\b", row.consequence)


@pytest.mark.parametrize("row", ROWS)
def test_each_part_is_whole_sentences_without_a_typed_figure(row: Any) -> None:
    for text in (row.hazard, row.consequence, row.avoidance):
        assert re.fullmatch(r"(?:[A-Z{].*[.!?])?", text), text
        typed = _BRACED.sub("", text)
        assert not _SAFE.search(typed)
    assert row.hazard
    assert row.avoidance
    assert row.consequence or row.signal == "NOTICE"


@pytest.mark.parametrize("row", ROWS)
def test_what_brings_a_hazard_is_a_part_of_a_job(row: Any) -> None:
    for alternative in alternatives(row.brought_by):
        assert set(alternative) <= set(PARTS)
        assert all(names and all(names) for names in alternative.values())


def test_no_other_table_carries_a_signal_word() -> None:
    """A second table of hazards would drift away from the first."""
    for path in sorted(Path(ROOT / "calc" / "data").glob("*.csv")):
        if path.stem != "hazards":
            text = path.read_text(encoding="utf-8")
            assert not re.search(r"(?m)(?:^|,)(?:DANGER|WARNING|CAUTION|NOTICE)(?:,|$)", text), path.name


def test_no_code_tells_a_hazard_of_its_own() -> None:
    """A signal word beside words typed in code would be a second telling."""
    found = []
    for path in (ROOT / "calc").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Caution" and node.args:
                found += [path.name] if isinstance(node.args[0], ast.Constant) else []
    assert found == []
