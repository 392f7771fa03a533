"""From six arguments on, a function is called by name, and a record is made by name."""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
MOST = 5
FILES = sorted([*(ROOT / "calc").rglob("*.py"), *(ROOT / "site_overrides").rglob("*.py")])


def _is_record(node: ast.ClassDef) -> bool:
    return any("dataclass" in ast.unparse(one) for one in node.decorator_list)


def _by_place(node: ast.ClassDef) -> int:
    """Fields that may be given by place."""
    if any("kw_only=True" in ast.unparse(one) for one in node.decorator_list):
        return 0
    count = 0
    for part in node.body:
        if isinstance(part, ast.AnnAssign):
            if ast.unparse(part.annotation) == "KW_ONLY":
                break
            count += 1
    return count


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(ROOT)))
def test_many_arguments_are_given_by_name(path: Path) -> None:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef):
            given = [one.arg for one in (*node.args.posonlyargs, *node.args.args) if one.arg not in ("self", "cls")]
            assert len(given) <= MOST, f"{node.name} takes {len(given)} arguments by place"
        elif isinstance(node, ast.ClassDef) and _is_record(node):
            assert _by_place(node) <= MOST, f"{node.name} takes {_by_place(node)} fields by place"
