"""What an answer consists of: results and how they are shown, cautions, working, tables, pictures, files."""

from collections.abc import Callable
from dataclasses import KW_ONLY, dataclass
from typing import Literal

from calc.declare.files import Offered
from calc.declare.inputs import ByRules


@dataclass(frozen=True)
class Shown:
    """How one result is shown.

    Args:
        label: What it is.
        units: Units it can be shown in: US first, metric second.
        free_gas: Whether the number counts gas.
        toward: Which way the shown figure is rounded; limits go toward safety.
        digits: Figures that count in the shown text.
        step: Mark of the instrument, as text with unit; the exact value stays
            in the answer.
        words: Whether the result is words.
        group: Heading it stands under; results of one group follow each other.
        folded: Whether its group is a deep one, folded below the pictures and tables.
    """

    label: str
    units: tuple[str, ...] = ("",)
    _: KW_ONLY
    free_gas: bool = False
    toward: Literal["nearest", "up", "down"] = "nearest"
    digits: int = 3
    step: ByRules | None = None
    words: bool = False
    group: str = ""
    folded: bool = False


@dataclass(frozen=True)
class Caution:
    """A hazard that goes with an answer.

    Args:
        signal: `DANGER` will, `WARNING` could cause death or serious injury,
            `CAUTION` could cause lesser injury, `NOTICE` no injury.
        text: Hazard, consequence and avoidance.
        source: As in a table.
        id: Its row in the table of hazards.
        how_sure: Grade of that row, as in a table.
    """

    signal: Literal["DANGER", "WARNING", "CAUTION", "NOTICE"]
    text: str
    source: str = ""
    id: str = ""
    how_sure: str = ""


@dataclass(frozen=True)
class Step:
    """One line of the working, with the reader's own numbers in it."""

    says: str
    formula: str
    numbers: tuple[tuple[str, float, str], ...]
    value: float
    unit: str


@dataclass(frozen=True)
class Table:
    """Rows beside an answer; every cell is text as it is to be read."""

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""


@dataclass(frozen=True)
class Picture:
    """A drawing, its title, and the one sentence that says what to take from it."""

    svg: str
    title: str
    sentence: str


Beside = tuple[tuple[Table, ...], tuple[Picture, ...]]
"""Tables and pictures that stand beside an answer."""


@dataclass(frozen=True)
class Answer[T]:
    """What a calculator returns.

    Args:
        results: The result dataclass, a Figure in each field; None leaves one out.
        cautions: Hazards, the gravest first.
        steps: The working.
        tables: Rows beside it.
        pictures: Drawings.
        beside: More of both, made only where they are shown: a sheet or a problem that asks
            this calculator wants its figures alone.
        drawn: Further tables and pictures that take long, such as a map or a
            curve: a page asks for them after it has shown the answer.
        files: Files that a reader may save.
    """

    results: T
    _: KW_ONLY
    cautions: tuple[Caution, ...] = ()
    steps: tuple[Step, ...] = ()
    tables: tuple[Table, ...] = ()
    pictures: tuple[Picture, ...] = ()
    beside: Callable[[], Beside] | None = None
    drawn: Callable[[], Beside] | None = None
    files: tuple[Offered, ...] = ()

    def shown_beside(self) -> Beside:
        """Tables and pictures, those made on demand among them; not those that take long."""
        tables, pictures = self.beside() if self.beside else ((), ())
        return self.tables + tables, self.pictures + pictures
