import ast
import json
import subprocess
import sys
import zipfile
from importlib.metadata import distribution
from pathlib import Path

import hypothesis
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis._native.internal import floats
from packaging.requirements import Requirement

from site_overrides.build.node import node, node_modules
from tests.wasm import plain_floats
from tests.wasm.built import engine

ROOT = Path(__file__).parents[2]
TESTS = ROOT / "tests"
HERE = Path(__file__).parent
WITH = {"calc", "pint", "pytest", "hypothesis"}
NOT_IN_A_BROWSER = {"subprocess", "socket", "threading", "multiprocessing"}
WHOLE = ("properties", "published")


def imported(path: Path) -> set[str]:
    """Modules that a file imports, by full name."""
    names: set[str] = set()
    for part in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(part, ast.Import):
            names.update(alias.name for alias in part.names)
        elif isinstance(part, ast.ImportFrom):
            names.add(part.module or "")
            names.update(f"{part.module}.{alias.name}" for alias in part.names)
    return names


def helpers(path: Path) -> set[Path]:
    """Our own test helpers that a file needs, itself included."""
    found = {path}
    for name in imported(path):
        file = ROOT / Path(*name.split(".")).with_suffix(".py")
        if name.startswith("tests.") and file.is_file() and file not in found:
            found |= helpers(file)
    return found


def fits(path: Path) -> bool:
    """Whether a test file needs nothing that a browser's Python lacks."""
    roots = {name.split(".")[0] for file in helpers(path) for name in imported(file)}
    return not (roots - WITH - {"tests"} - set(sys.stdlib_module_names) | roots & NOT_IN_A_BROWSER)


FILES = sorted(path for folder in WHOLE for path in (TESTS / folder).rglob("test_*.py") if fits(path))
"""Tests of what is computed; drawings and pages come out of the same code, and every answer is compared with its drawings."""


def packages(*names: str) -> set[str]:
    """These packages and all that they need."""
    found: set[str] = set()
    for name in names:
        if name in found:
            continue
        needs = [Requirement(text) for text in distribution(name).requires or []]
        wanted = [r.name for r in needs if r.marker is None or r.marker.evaluate({"extra": ""})]
        found |= {name} | packages(*wanted)
    return found


PLAIN = {
    "__init__": f"__version__ = {hypothesis.__version__!r}\n",
    "internal/__init__": "",
    "internal/cathetus": "from tests.wasm.plain_floats import cathetus\n",
    "internal/floats": "from tests.wasm.plain_floats import *\n",
}
"""The part of hypothesis that is machine code for another machine."""


def write_tree(tree: Path) -> None:
    """Zip the project's own files and the packages that its tests need."""
    with zipfile.ZipFile(tree, "w") as archive:
        for folder in ("calc", "tests"):
            for path in (ROOT / folder).rglob("*"):
                if path.is_file() and "__pycache__" not in path.parts:
                    archive.write(path, f"project/{path.relative_to(ROOT)}")
        archive.write(ROOT / "pyproject.toml", "project/pyproject.toml")
        files = [str(path.relative_to(ROOT)) for path in FILES]
        archive.writestr("project/files.json", json.dumps(files))
        for name, text in PLAIN.items():
            archive.writestr(f"packages/hypothesis/_native/{name}.py", text)
        for name in sorted(packages("pint", "rectpack", "segno", "pytest", "hypothesis")):
            for file in distribution(name).files or []:
                if ".." not in file.parts and file.suffix not in {".pyc", ".so", ".pth"}:
                    archive.write(str(file.locate()), f"packages/{file}")


@given(st.floats(allow_nan=False))
def test_the_plain_floats_equal_those_in_machine_code(x: float) -> None:
    assert plain_floats.float_to_int(x) == floats.float_to_int(x)
    assert plain_floats.next_up(x) == floats.next_up(x)
    assert plain_floats.next_down(x) == floats.next_down(x)
    for normal in (plain_floats.next_up_normal, plain_floats.next_down_normal):
        theirs = getattr(floats, normal.__name__)
        assert normal(x, 64, allow_subnormal=False) == theirs(x, 64, allow_subnormal=False)
    assert plain_floats.count_between_floats(-1.0, abs(x)) == floats.count_between_floats(-1.0, abs(x))


@pytest.mark.parametrize("folder", WHOLE)
def test_no_file_of_these_folders_is_left_out(folder: str) -> None:
    there = set((TESTS / folder).rglob("test_*.py"))
    assert there
    assert there <= set(FILES)


def test_the_suite_passes_in_the_python_that_is_shipped(tmp_path: Path) -> None:
    write_tree(tmp_path / "tree.zip")
    library = node_modules() / "pyodide" / "python_stdlib.zip"
    said = subprocess.run(
        node(HERE / "engine.mjs", "suite", engine(), library, tmp_path / "tree.zip", HERE / "suite.py"),
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert said.returncode == 0, said.stdout[-6000:] + said.stderr[-3000:]
    passed = json.loads(said.stdout.splitlines()[-1])["passed"]
    assert passed == [str(path.relative_to(ROOT)) for path in FILES]
