"""Tables of figures, typed a second time from where they were printed: `tables/<table>.csv`, compared cell by cell.

A second file names its columns as the table does, in a unit of its own choice, and says for each row where it was
typed from: the publication, or memory of it. It holds every row of the table, so that one left out is missed.

What is our own choice has no outside: orders, marks, fits, and which rows a table of words has. There the second file
only keeps a row or a number from going unawares; it says so, as `practice`. A table of words may gain rows.
"""

import csv
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from calc.data.tables import HOW_SURE, table
from calc.values.units import to_si

FOLDER = Path(__file__).parent / "tables"
CLOSE = 5e-4
"""Of the number: what the last printed figure of a table may round away."""


@cache
def typed(name: str) -> tuple[dict[str, Any], ...]:
    """Rows of a second file: texts as they stand, numbers in SI."""
    heads, *lines = csv.reader((FOLDER / f"{name}.csv").read_text(encoding="utf-8").splitlines())
    rows = []
    for cells in lines:
        assert len(cells) == len(heads), cells
        assert cells[-2], cells
        assert cells[-1] in HOW_SURE, cells
        rows.append({head.partition(" [")[0]: _value(head, cell) for head, cell in zip(heads[:-2], cells[:-2], strict=True)})
    return tuple(rows)


def _value(head: str, cell: str) -> str | float | None:
    unit = head.partition(" [")[2].rstrip("]")
    if not unit:
        return cell
    if not cell:
        return None
    return float(cell) if unit == "1" else to_si(float(cell), unit)


def _same(one: Any, other: Any) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return abs(one - other) <= CLOSE * abs(other) + 1e-15
    return bool(one == other)


@pytest.mark.parametrize("name", sorted(path.stem for path in FOLDER.glob("*.csv")))
def test_every_row_stands_in_the_table_as_it_was_typed_again(name: str) -> None:
    left, heads = list(table(name)), (FOLDER / f"{name}.csv").read_text(encoding="utf-8").partition("\n")[0]
    for row in typed(name):
        found = [ours for ours in left if all(_same(getattr(ours, column), value) for column, value in row.items())]
        assert found, f"no row of {name} says {row}"
        left.remove(found[0])
    assert not left or "[" not in heads, f"rows of {name} that were not typed again: {left}"
