"""Rooms of `calc`: each imports only from rooms before it, none for its side effects, and says what it is."""

import ast
from functools import cache
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
ROOMS = (
    "values", "data", "formulas", "declare", "ask", "answer", "show", "trade", "calculators", "job_sheet", "outfit",
    "class_plan", "practice",
)  # fmt: skip
"""Each may import from itself and from those before it."""
DOORS = ("__init__", "__main__", "bridge", "release")
"""Modules that stand in no room: the doors, which import from every room, and the release, which imports nothing."""
LONGEST = 400


@cache
def modules() -> dict[str, Path]:
    """Every module of `calc` by its dotted name."""
    found = {}
    for path in sorted((ROOT / "calc").rglob("*.py")):
        name = ".".join(path.relative_to(ROOT).with_suffix("").parts)
        found[name.removesuffix(".__init__")] = path
    return found


@cache
def imports(name: str) -> frozenset[str]:
    """Modules of `calc` that a module imports, inside functions too."""
    found = set()
    for node in ast.walk(ast.parse(modules()[name].read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {one.name for one in node.names if one.name.split(".")[0] == "calc"}
        elif isinstance(node, ast.ImportFrom) and (node.module or "").split(".")[0] == "calc":
            for one in node.names:
                full = f"{node.module}.{one.name}"
                found.add(full if full in modules() else str(node.module))
    return frozenset(found - {name})


def room(name: str) -> str:
    """Room of a module; empty for a door."""
    second = name.split(".")[1] if "." in name else "__init__"
    return "" if second in DOORS else second


def test_every_folder_is_a_room_and_every_room_a_folder() -> None:
    folders = {path.name for path in (ROOT / "calc").iterdir() if path.is_dir() and path.name != "__pycache__"}
    assert folders == set(ROOMS)
    loose = {path.stem for path in (ROOT / "calc").glob("*.py")}
    assert loose == set(DOORS)


@pytest.mark.parametrize("name", sorted(modules()))
def test_a_room_imports_from_rooms_before_it(name: str) -> None:
    here = room(name)
    for other in sorted(imports(name)):
        there = room(other)
        if here:
            assert there or other == "calc.release", f"{name} goes out by the door {other}"
        if here and there:
            assert ROOMS.index(there) <= ROOMS.index(here), f"{name} imports {other}, of a room above it"


def test_no_calculator_is_a_library() -> None:
    for name in modules():
        if room(name) == "calculators":
            assert not [other for other in imports(name) if room(other) == "calculators"], name


def test_no_circle() -> None:
    TopologicalSorter({name: imports(name) - {"calc"} for name in modules()}).prepare()


def test_nothing_is_imported_for_its_side_effects() -> None:
    for name, path in modules().items():
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import):
                assert not [one.name for one in node.names if one.name.startswith("calc")], name


@pytest.mark.parametrize("name", sorted(modules()))
def test_a_module_says_what_it_is_and_is_short(name: str) -> None:
    text = modules()[name].read_text(encoding="utf-8")
    assert (ast.get_docstring(ast.parse(text)) or "").split("\n")[0].endswith((".", "?", "!", "`.", ":", "…")), name
    assert text.count("\n") < LONGEST, name
