"""A published row: what a source prints, and the answer that must agree with it."""

from dataclasses import dataclass
from typing import Any

import pytest

from calc import answer
from calc.values.units import from_si, to_si


@dataclass(frozen=True)
class Row:
    """One figure in print, and where it comes out here.

    `within` is a share of the figure unless it carries a unit of its own.
    """

    source: str
    how_sure: str
    calculator: str
    texts: dict[str, str]
    result: str
    figure: float
    unit: str
    within: float


CASES: list[Row] = []
"""Every row that a test has made, for the list of what is held."""


def case(*row: object, **texts: str) -> object:
    """A row as a test case whose id names source and how sure."""
    source, how_sure, calculator, result, figure, unit, within = row
    made = Row(source, how_sure, calculator, texts, result, figure, unit, within)  # type: ignore[arg-type]
    CASES.append(made)
    given = " ".join(f"{v}" for v in texts.values())
    return pytest.param(made, id=f"{calculator}: {given} -> {figure} {unit} [{source}; {how_sure}]")


def shown(row: Row) -> float:
    """The figure that comes out, in the row's unit."""
    texts: dict[str, Any] = dict(row.texts)
    got = answer(row.calculator, **texts)["results"][row.result]
    free = got["unit"] in ("ft^3", "cfh", "L", "m^3", "L/h", "L/min") and row.calculator != "purge-time"
    si = to_si(got["value"], got["unit"], free_gas=free)
    return from_si(si, row.unit, free_gas=free)
