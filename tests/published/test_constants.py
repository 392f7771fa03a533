"""Named numbers of the code, each typed a second time with where it comes from: `constants.csv`.

What decides an answer and stands in no table is named at the head of its file. The figure here is typed from the
source, in the units of the source; what is our own choice says so, and stands here so that it is not changed unawares.
"""

import csv
from collections.abc import Iterator
from dataclasses import dataclass
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest

from calc.data.tables import HOW_SURE
from calc.values.figures import Figure
from tests.published.evidence import KNOWN

CLOSE = 1e-5
COARSER = {"formulas.heat.flame_patch.WELDING_SPREAD": 2e-3, "formulas.setup.sparks.AIR_DENSITY": 1e-4}
"""Rounded where they stand."""


@dataclass(frozen=True)
class Constant:
    """One line of the file."""

    constant: str
    expected: str
    source: str
    how_sure: str


def typed() -> list[Constant]:
    lines = (Path(__file__).parent / "constants.csv").read_text(encoding="utf-8").splitlines()
    return [Constant(**row) for row in csv.DictReader(lines)]


def numbers(value: Any) -> Iterator[float]:
    """Every number in it, in order."""
    if isinstance(value, dict):
        value = value.values()
    if isinstance(value, Figure):
        value = value.value
    if isinstance(value, int | float):
        yield float(value)
    else:
        for part in value:
            yield from numbers(part)


@pytest.mark.parametrize("row", typed(), ids=lambda row: f"{row.constant} [{row.source[:40]}; {row.how_sure}]")
def test_the_constant_is_what_its_source_says(row: Constant) -> None:
    assert row.source
    assert row.how_sure in HOW_SURE
    module, _, name = row.constant.rpartition(".")
    ours = list(numbers(getattr(import_module(f"calc.{module}"), name)))
    expected = list(numbers(eval(row.expected, {"__builtins__": {}}, KNOWN)))
    assert ours == pytest.approx(expected, rel=COARSER.get(row.constant, CLOSE), abs=1e-18)
