"""Tables of published figures: frozen rows in SI, none without a source.

A table is `data/<what>-<who>-<year>.csv`. A heading `thickness [in]` makes the
attribute `thickness`, a float in metres; `ratio [1]` a plain number; a heading
without brackets stays text. An empty cell is None. The last two columns are
`source` (a key of `sources.toml`, then the place in it) and `how_sure`.
"""

import csv
import tomllib
from collections import namedtuple
from functools import cache
from importlib.resources import files
from typing import Any

from calc.values.units import to_si

HOW_SURE = {
    "read": "read in the source",
    "read-m": "read in a copy or a page that repeats it",
    "memory": "from memory",
    "computed": "computed",
    "practice": "common practice, no source",
}
"""The grades a row may carry, and the words a reader sees."""


class TableError(ValueError):
    """A table is not fit to be used; the message names the file and the line."""


@cache
def sources() -> dict[str, dict[str, Any]]:
    """Every publication once, by key: title, and where known author, year, part."""
    text = files("calc").joinpath("data/sources.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def graded(source: str, how_sure: str) -> str:
    """A grade as its source allows it: what was read in a copy alone is not read in itself.

    An entry of `sources.toml` with `met = "copy"` says that only a copy was met.

    Examples:
        >>> graded("cfr1910-252 (c)(6)", "read")
        'read-m'
        >>> graded("manly-1916", "read")
        'read'
    """
    copied = source and sources().get(source_key(source), {}).get("met") == "copy"
    return "read-m" if copied and how_sure == "read" else how_sure


def source_key(cell: str) -> str:
    """Key of the publication that a source cell names.

    Examples:
        >>> source_key("cfr1910-133 (a)(5)")
        'cfr1910-133'
    """
    return cell.split(" ", 1)[0]


def source_words(cell: str) -> str:
    """A source cell as a reader sees it: the short title, then the place in it."""
    key, _, place = cell.partition(" ")
    if not key:
        return ""
    return f"{sources()[key]['short']} {place}".strip()


def _value(text: str, unit: str | None) -> Any:
    if unit is None:
        return text
    if not text:
        return None
    number = float(text)
    return number if unit == "1" else to_si(number, unit)


@cache
def table(name: str) -> tuple[Any, ...]:
    """Rows of one table, numbers in SI.

    Args:
        name: File name without its ending, such as `drills-asme-b94`.

    Returns:
        One frozen row for each line, with an attribute for each column.

    Raises:
        TableError: The table has a row without a source, names a source that
            `sources.toml` lacks, or grades a row with an unknown word.

    Examples:
        >>> table("drills-asme-b94")[0].drill
        '1'
    """
    text = files("calc").joinpath(f"data/{name}.csv").read_text(encoding="utf-8")
    lines = list(csv.reader(text.splitlines()))
    heads = [head.partition(" [") for head in lines[0]]
    columns = [head[0].strip() for head in heads]
    units = [head[2].rstrip("]") or None for head in heads]
    if columns[-2:] != ["source", "how_sure"]:
        raise TableError(f"{name}: the last two columns must be source and how_sure")
    row_type = namedtuple("Row", columns)  # type: ignore[misc]
    rows = []
    for number, cells in enumerate(lines[1:], start=2):
        if not cells:
            continue
        if len(cells) != len(columns):
            raise TableError(f"{name}, line {number}: {len(cells)} cells, {len(columns)} columns")
        source, how_sure = cells[-2:]
        if how_sure not in HOW_SURE:
            raise TableError(f"{name}, line {number}: how_sure says {how_sure!r}")
        if how_sure not in ("practice", "memory") and source_key(source) not in sources():
            raise TableError(f"{name}, line {number}: no source named {source!r} in sources.toml")
        if source and source_key(source) not in sources():
            raise TableError(f"{name}, line {number}: no source named {source!r} in sources.toml")
        rows.append(row_type(*map(_value, [*cells[:-1], graded(source, how_sure)], units)))
    return tuple(rows)
