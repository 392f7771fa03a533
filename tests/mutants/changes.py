"""The changes: an operator, a constant, a comparison, a rounding, a row or a column of a table."""

import ast
import csv
import io
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from tests.mutants import ROOT, room

OPERATORS: dict[type[ast.operator], ast.operator] = {
    ast.Add: ast.Sub(), ast.Sub: ast.Add(), ast.Mult: ast.Div(), ast.Div: ast.Mult(), ast.Pow: ast.Mult(),
    ast.FloorDiv: ast.Div(), ast.Mod: ast.FloorDiv(),
}  # fmt: skip
COMPARISONS: dict[type[ast.cmpop], ast.cmpop] = {
    ast.Lt: ast.LtE(), ast.LtE: ast.Lt(), ast.Gt: ast.GtE(), ast.GtE: ast.Gt(), ast.Eq: ast.NotEq(), ast.NotEq: ast.Eq(),
    ast.In: ast.NotIn(), ast.NotIn: ast.In(), ast.Is: ast.IsNot(), ast.IsNot: ast.Is(),
}  # fmt: skip
NAMES = {"min": "max", "max": "min", "ceil": "floor", "floor": "ceil", "any": "all", "all": "any"}
DIRECTIONS = {"up": "down", "down": "up"}
LITERALS = (ast.Tuple, ast.List, ast.JoinedStr, ast.Dict, ast.Set)


@dataclass(frozen=True)
class Change:
    """One changed file.

    Args:
        path: Path of the file from the root.
        line: Line that is changed; 0 for a table as a whole.
        lines: First and last line of the statement it stands in.
        what: The change in a few words.
        text: The whole file with the change.
        name: Name that the changed statement binds at the top of its module; empty inside a function.
    """

    path: str
    line: int
    lines: tuple[int, int]
    what: str
    text: str
    name: str = ""

    @property
    def room(self) -> str:
        """Room of the file."""
        return room(self.path)


def _constant(node: ast.Constant) -> Iterator[ast.expr]:
    value = node.value
    if isinstance(value, bool):
        yield ast.Constant(not value)
    elif isinstance(value, float):
        yield ast.Constant(value * 1.03 if value else 0.03)
    elif isinstance(value, int):
        yield ast.Constant(value + 1)


def _instead(node: ast.AST) -> Iterator[ast.expr]:
    """What a piece of code may be changed to."""
    match node:
        case ast.BinOp(left, op, right) if type(op) in OPERATORS:
            wordy = isinstance(left, LITERALS) or isinstance(right, LITERALS)
            words = any(isinstance(s, ast.Constant) and isinstance(s.value, str) for s in (left, right))
            if not wordy and not words:
                yield ast.BinOp(left, OPERATORS[type(op)], right)
        case ast.Compare(left, ops, others):
            for place, sign in enumerate(ops):
                yield ast.Compare(left, [*ops[:place], COMPARISONS[type(sign)], *ops[place + 1 :]], others)
        case ast.Call(ast.Name(id) as called, args, keywords) if id in NAMES:
            yield ast.Call(ast.Name(NAMES[id]), args, keywords)
            if called.id in ("min", "max") and len(args) == 2 and not keywords:
                yield from args  # the clamp removed
        case ast.Call(ast.Attribute(ast.Name("math"), attr), args, keywords) if attr in NAMES:
            yield ast.Call(ast.Attribute(ast.Name("math"), NAMES[attr]), args, keywords)
        case ast.BoolOp(joined, values):
            yield ast.BoolOp(ast.Or() if isinstance(joined, ast.And) else ast.And(), values)
        case ast.UnaryOp(ast.Not(), operand):
            yield operand
        case ast.IfExp(test, body, orelse):
            yield ast.IfExp(test, orelse, body)
        case ast.Constant():
            yield from _constant(node)


def _toward(node: ast.AST) -> Iterator[ast.Constant]:
    """Directions of rounding among a call's arguments."""
    if isinstance(node, ast.Call):
        for value in [*node.args, *(keyword.value for keyword in node.keywords)]:
            if isinstance(value, ast.Constant) and value.value in DIRECTIONS:
                yield value


def _segment(lines: list[str], node: ast.expr) -> tuple[int, int]:
    """Where a piece of code begins and ends, in bytes of the whole."""
    starts = [0]
    for line in lines:
        starts.append(starts[-1] + len(line.encode()))
    assert node.end_lineno is not None
    assert node.end_col_offset is not None
    return starts[node.lineno - 1] + node.col_offset, starts[node.end_lineno - 1] + node.end_col_offset


def _bound(statement: ast.stmt) -> str:
    match statement:
        case ast.Assign([ast.Name(id)]) | ast.AnnAssign(ast.Name(id)):
            return id
        case ast.FunctionDef(name) | ast.ClassDef(name):
            return name
    return "*"


def _sites(tree: ast.Module) -> Iterator[tuple[ast.expr, ast.expr, ast.stmt, str]]:
    """Each piece, what it becomes, the statement around it, and the name if it runs on import."""

    def walk(node: ast.AST, statement: ast.stmt, name: str) -> Iterator[tuple[ast.expr, ast.expr, ast.stmt, str]]:
        for new in _instead(node):
            assert isinstance(node, ast.expr)
            yield node, new, statement, name
        for old in _toward(node):
            yield old, ast.Constant(DIRECTIONS[str(old.value)]), statement, name
        inside = isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda)
        body = node.body if isinstance(node, ast.FunctionDef) else []
        for child in ast.iter_child_nodes(node):
            here = child if isinstance(child, ast.stmt) else statement
            if isinstance(child, ast.JoinedStr):
                continue  # a position inside text is not reliable
            within = inside and (not isinstance(node, ast.FunctionDef) or child in body)
            yield from walk(child, here, "" if within else name)

    for statement in tree.body:
        yield from walk(statement, statement, _bound(statement))


def code_changes(path: Path) -> Iterator[Change]:
    """Every change of one file of code."""
    source = path.read_text(encoding="utf-8")
    whole, lines = source.encode(), source.splitlines(keepends=True)
    where = str(path.relative_to(ROOT))
    for old, new, statement, name in _sites(ast.parse(source)):
        start, end = _segment(lines, old)
        ast.fix_missing_locations(ast.copy_location(new, old))
        becomes = ast.unparse(new)
        text = (whole[:start] + f"({becomes})".encode() + whole[end:]).decode()
        was = " ".join(whole[start:end].decode().split())
        span = (statement.lineno, old.end_lineno or old.lineno)
        yield Change(where, old.lineno, span, f"{was[:90]}  ->  {becomes[:90]}", text, name)


def _written(rows: list[list[str]]) -> str:
    out = io.StringIO()
    csv.writer(out, lineterminator="\n").writerows(rows)
    return out.getvalue()


def _number(cell: str, share: float) -> str:
    return f"{float(cell) * share:.10g}"


def table_changes(path: Path) -> Iterator[Change]:
    """A number 3 % larger in one row, a row left out, a column 3 % larger."""
    rows = list(csv.reader(path.read_text(encoding="utf-8").splitlines()))
    where, heads = str(path.relative_to(ROOT)), rows[0]
    columns = [place for place, head in enumerate(heads) if "[" in head]
    for number, row in enumerate(rows[1:], start=1):
        for place in columns:
            if number < len(rows) and row and row[place]:
                cells = [*row[:place], _number(row[place], 1.03), *row[place + 1 :]]
                said = f"{heads[place]} of “{row[0][:40]}”: {row[place]}  ->  {cells[place]}"
                yield Change(where, number + 1, (0, 0), said, _written([*rows[:number], cells, *rows[number + 1 :]]))
        if row:
            said = f"row “{', '.join(row[:3])[:70]}” left out"
            yield Change(where, number + 1, (0, 0), said, _written(rows[:number] + rows[number + 1 :]))
    for place in columns:
        scaled = [
            [*row[:place], _number(row[place], 1.03), *row[place + 1 :]] if row and row[place] else row
            for row in rows[1:]
        ]
        yield Change(where, 1, (0, 0), f"column {heads[place]} 3 % larger", _written([heads, *scaled]))


def all_changes(only: str = "") -> dict[str, list[Change]]:
    """Every change, by room.

    Args:
        only: Beginning of the paths wanted.
    """
    found: dict[str, list[Change]] = {}
    for path in sorted((ROOT / "calc").rglob("*.py")) + sorted((ROOT / "calc/data").glob("*.csv")):
        where = str(path.relative_to(ROOT))
        if where.startswith(only):
            made = table_changes(path) if path.suffix == ".csv" else code_changes(path)
            found.setdefault(room(where), []).extend(made)
    return found
