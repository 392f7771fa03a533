"""The two evenings add up with the fire watch inside; staged faults are dead; the crosswalk names real rungs."""

import csv
from itertools import pairwise

import pytest

from calc.answer.answering import answer
from calc.answer.hazards import hazards
from calc.class_plan.exercises import exercises, titles
from calc.data.tables import graded, table
from calc.declare import RULE_SETS
from calc.values.units import from_si
from site_overrides.build.check_pages import DOCS, ROOT

SESSION = 180
"""Minutes of an evening for a learner."""

EVENINGS = (1, 2)


def blocks(evening: int, rules: str) -> list[object]:
    rows = [row for row in table("introduction-benchbook-2026") if row.evening == evening]
    return [row for row in rows if not row.rules or rules in row.rules.split()]


def ends(row: object) -> float:
    return row.minute + row.length


evenings = pytest.mark.parametrize("evening", EVENINGS)
rule_sets = pytest.mark.parametrize("rules", RULE_SETS)


@evenings
@rule_sets
def test_blocks_follow_one_another_and_fill_the_evening(evening: int, rules: str) -> None:
    rows = blocks(evening, rules)
    assert rows[0].minute == 0
    assert all(ends(before) == after.minute for before, after in pairwise(rows))
    assert sum(row.length for row in rows if not row.rules) == SESSION


@evenings
@rule_sets
def test_the_fire_watch_lies_inside(evening: int, rules: str) -> None:
    """What the fire watch page answers for a workshop, from the end of the last block with a flame."""
    got = answer("fire-watch", place="workshop", rules=rules)["results"]
    watch, looks = (from_si(got[name]["si"], "min") for name in ("fire_watch", "until"))
    rows = blocks(evening, rules)
    last_flame = max(ends(row) for row in rows if row.flame == "yes")
    (end_of_watch,) = (row for row in rows if row.block == "End of the watch")
    assert last_flame + watch <= ends(end_of_watch) == SESSION
    assert last_flame + looks <= ends(rows[-1])


@evenings
def test_both_learners_of_a_bench_have_the_time_of_the_exercise(evening: int) -> None:
    done = {row.exercise: row.length for row in blocks(evening, "us") if row.exercise}
    assert set(done) == ({"flame"} if evening == 1 else {"puddle", "corner", "bead"})
    for name, length in done.items():
        assert length >= 2 * from_si(exercises("us")[name].bench_time, "min")


@evenings
def test_no_flame_before_the_leak_test_the_purge_and_the_clear_ground(evening: int) -> None:
    rows = blocks(evening, "us")
    first = next(place for place, row in enumerate(rows) if row.flame == "yes")
    before = " ".join(row.pages for row in rows[:first])
    for page in (
        "before/dress.md",
        "before/clear-the-area.md",
        "connect-and-leak-test.md",
        "purge-time.md",
    ):
        assert page in before
    assert rows[first].hazards.split()
    assert all({"glare", "flashback"} <= set(row.hazards.split()) for row in rows if row.flame == "yes")


@pytest.mark.parametrize("name", ["introduction-benchbook-2026", "staged-faults-benchbook-2026"])
def test_hazards_and_pages_exist(name: str) -> None:
    for row in table(name):
        assert set(row.hazards.split()) <= set(hazards())
        assert row.pages.split()
        assert all((DOCS / page).is_file() for page in row.pages.split())


STAGED = [row for row in table("staged-faults-benchbook-2026") if row.kind == "stage"]
NEVER = [row for row in table("staged-faults-benchbook-2026") if row.kind == "never"]


@pytest.mark.parametrize("row", STAGED, ids=lambda row: row.id)
def test_a_staged_fault_is_dead_or_carries_its_hazards(row: object) -> None:
    dead = (
        "cylinders shut",
        "cylinder shut",
        "before any gas",
        "no flame",
        "no gas",
        "unconnected",
        "ends cut off",
    )
    assert row.hazards or any(words in row.stage.lower() for words in dead)
    assert all((row.stage, row.seen, row.teaches, row.back))


def test_what_kills_is_never_staged() -> None:
    never = " ".join(row.title.lower() for row in NEVER)
    for what in (
        "oil",
        "leak of fuel",
        "flashback",
        "past its limit",
        "screw in",
        "closed",
        "oxygen blown",
    ):
        assert what in never
    assert {row.id for row in NEVER}.isdisjoint({row.id for row in STAGED})


def test_each_rule_a_fault_teaches_is_held_elsewhere_too() -> None:
    held = set()
    for path in (ROOT / "calc" / "data").glob("*.csv"):
        if path.stem != "staged-faults-benchbook-2026":
            lines = list(csv.reader(path.read_text(encoding="utf-8").splitlines()))
            held |= {(line[-2], graded(line[-2], line[-1])) for line in lines[1:] if line}
    missing = {(row.source, row.how_sure) for row in (*STAGED, *NEVER)} - held
    assert missing == set()


UNITS = [
    ("India, welder syllabus, week 2", "read", "G1", "puddle, bead"),
    ("India, welder syllabus, week 4", "read", "G3", "butt"),
    ("India, welder syllabus, week 4", "read", "G5", "lap"),
    ("India, welder syllabus, week 6", "read", "G7", "cut"),
    ("India, welder syllabus, week 8", "read", "G9", "tee"),
    ("India, welder syllabus, week 8", "read", "G11", "corner"),
    (
        "Ethiopia, module title page",
        "read",
        "EIS BRP2 M07 0322",
        "flame, puddle, corner, bead, butt, lap, tee",
    ),
    ("South Africa, unit standard title", "read", "243067", "cut"),
    ("South Africa, unit standard title", "read", "243069", "braze"),
]


@pytest.mark.parametrize(
    ("number", "rungs"),
    [pytest.param(*row[2:], id=f"{row[2]} -> {row[3]} [{row[0]}; {row[1]}]") for row in UNITS],
)
def test_a_unit_stands_at_its_rungs(number: str, rungs: str) -> None:
    (row,) = (row for row in table("curricula-benchbook-2026") if row.number == number)
    assert row.rungs == rungs


def test_the_crosswalk_names_rungs_and_leaves_none_out() -> None:
    named = {rung for row in table("curricula-benchbook-2026") for rung in row.rungs.split(", ")}
    assert named == set(titles())
