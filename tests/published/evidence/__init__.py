"""Expected values from outside the code: one file of rows a calculator.

A row says what is typed into a calculator, which figure is looked at, what must
come out, and who says so. No row may be made by running `calc`: it is typed from
a publication, or is arithmetic that stands here to be checked by hand.

| column | what stands in it |
|---|---|
| `given` | `bore=1/4 in; length=25 ft; rules=us`: the texts that are typed |
| `result` | name of the result, or the beginning of a table's title |
| `which` | `value`, `low`, `high`, `text`, `says`, `rounding`, `none`, `caution`, `no caution`, `basis`, `no basis`, `refused`, `picture`, `chart …`, `rows` or `column @ first cell` of a table |
| `expected` | arithmetic for a number (`pi/4 * 0.25**2 * 300`), the exact text for words |
| `unit` | unit of the number; empty for words and for cells of a table |
| `within` | a share such as `0.01`, or `±2` of the unit; empty for words |
| `source` | who prints it, or how it was worked by hand |
| `how_sure` | `read`, `read-m`, `memory`, `practice` or `computed` |

Inputs that a row leaves out take the calculator's assumed values; `base` in
`which` gives texts for every row below it. `rounding` holds the shown text of a
figure that the other direction would print otherwise. `none` holds that a result
is left out; `caution` and `no caution` that some caution says those words, or none does.
`basis` and `no basis` look for words among those that say what a figure rests on. `refused` holds that it is refused at the
input that stands in `result`, in a sentence with those words: the range that will do.
`chart across: label`, `chart up: label`, `chart from: label`, `chart to: label` and `chart at 20: label` hold what can be read
off the chart whose title begins so: where a mark stands, where a curve begins and ends, how high it is there.
`picture` holds that the sentence under the picture whose title begins so has those words.
`says` holds that a text has those words among others: the choice, not the phrasing. In a cell,
`=` before the arithmetic compares numbers and `…` finds words among others; else they are all of it.
`rows` holds which rows a table has: their first cells in order, with ` | ` between them.
"""

import csv
import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from calc.data.tables import HOW_SURE

FOLDER = Path(__file__).parent
HEADS = ["given", "result", "which", "expected", "unit", "within", "source", "how_sure"]
KNOWN: dict[str, Any] = {name: getattr(math, name) for name in dir(math) if not name.startswith("_")}
KNOWN |= {
    "inch": 0.0254, "foot": 0.3048, "pound": 0.45359237, "ounce": 0.028349523125, "psi": 6894.757293168, "atm": 101325.0,
    "gas_constant": 8.314462618, "kelvin": 273.15, "molar_us": 8.314462618 * 294.2611111 / 101325.0,
    "molar_iso": 8.314462618 * 288.15 / 101325.0, "abs": abs, "min": min, "max": max, "sum": sum, "round": round,
}  # fmt: skip
"""Names that the arithmetic of a row may use; all in SI, `molar_us` at 70 °F, `molar_iso` at 15 °C."""


@dataclass(frozen=True)
class Held:
    """One row, read."""

    calculator: str
    line: int
    texts: dict[str, str]
    result: str
    which: str
    expected: str
    unit: str
    within: str
    source: str
    how_sure: str

    @property
    def id(self) -> str:
        """Name of its test."""
        return f"{self.calculator}:{self.line} {self.result} {self.which} [{self.source[:40]}; {self.how_sure}]"

    def number(self) -> float:
        """What the arithmetic comes to."""
        return float(eval(self.expected.removeprefix("="), {"__builtins__": {}}, KNOWN))

    def margin(self, number: float) -> float:
        """How far the figure may be off, in its unit."""
        return float(self.within[1:]) if self.within.startswith("±") else float(self.within) * abs(number)


def _texts(given: str) -> dict[str, str]:
    parts = (part.partition("=") for part in given.split(";") if part.strip())
    return {name.strip(): text.strip() for name, _, text in parts}


def _read(path: Path) -> Iterator[Held]:
    lines = csv.reader(path.read_text(encoding="utf-8").splitlines())
    if next(lines) != HEADS:
        raise ValueError(f"{path.name}: its heads must be {', '.join(HEADS)}")
    base: dict[str, str] = {}
    for number, cells in enumerate(lines, start=2):
        if not cells:
            continue
        if len(cells) != len(HEADS):
            raise ValueError(f"{path.name}, line {number}: {len(cells)} cells, {len(HEADS)} columns")
        given, *others = cells
        if others[1] == "base":
            base = _texts(given)
            continue
        if others[6] not in HOW_SURE or not others[5]:
            raise ValueError(f"{path.name}, line {number}: it needs a source and a grade")
        yield Held(path.stem, number, base | _texts(given), *others)


@cache
def rows() -> tuple[Held, ...]:
    """Every row of every file."""
    return tuple(row for path in sorted(FOLDER.glob("*.csv")) for row in _read(path))


def kind(words: str) -> str:
    """A heading with its numbers taken out: `12.5 ft` and `25 ft` are one column.

    Examples:
        >>> kind("Turns of session 2"), kind("Gauge, bar")
        ('Turns of session #', 'Gauge, bar')
    """
    return re.sub(r"[\d½¼¾⅛][\d /.,–-]*(?=\D|$)", "# ", words).strip()


def table_kind(title: str) -> str:
    """Title of a table without what the reader's own numbers put into it.

    Examples:
        >>> table_kind("Hole in the tip for this thickness, in, by source")
        'Hole in the tip'
    """
    return re.split(r"[,:]| for | from ", kind(title))[0].strip()


@dataclass(frozen=True)
class Passed:
    """A figure, or a table, that one calculator takes from another as it stands."""

    calculator: str
    texts: dict[str, str]
    result: str
    other: str
    other_texts: dict[str, str]
    other_result: str


@cache
def passed_on() -> tuple[Passed, ...]:
    """Every line of `passed-on.txt`; what both are asked stands before the figures of it."""
    found: list[Passed] = []
    asked: tuple[str, ...] = ()
    for line in (FOLDER / "passed-on.txt").read_text(encoding="utf-8").splitlines():
        cells = [cell.strip() for cell in line.split("\t")]
        if len(cells) == 4:
            asked = tuple(cells)
        elif line.strip():
            calculator, given, other, given_there = asked
            ours, _, theirs = line.strip().partition(" < ")
            found.append(
                Passed(calculator, _texts(given), ours, other, _texts(given_there), theirs or ours)
            )
    return tuple(found)
