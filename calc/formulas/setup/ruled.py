"""Figures that depend on the rule set: the row that holds, or the strictest of the others."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from calc.data.tables import table
from calc.values.units import to_si

NO_FIGURE = (
    "There is no figure for this rule set in our data. This is the strictest of the others; "
    "ask the local authority."
)


@dataclass(frozen=True, slots=True)
class Ruled:
    """A row of a rule-set table.

    Attributes:
        row: The row, numbers in SI.
        rules: Rule set that the row belongs to.
        note: Empty, or the sentence that the row is another rule set's.
    """

    row: Any
    rules: str
    note: str


def amount(row: Any, *, free_gas: bool = False) -> float:
    """Number of a row that carries its own unit, in SI.

    Listed as a solver because it reads a unit.

    Args:
        row: A row with `number` and `unit`.
        free_gas: Whether the number counts gas.

    Returns:
        The figure in SI base units; a pressure stays gauge or absolute as printed.

    Raises:
        ValueError: The row has no number.

    Valid for:
        Tables with the columns `number` and `unit`.

    Source:
        [definition]
    """
    if row.number is None:
        raise ValueError("this row is words and has no number")
    return to_si(row.number, row.unit, free_gas=free_gas)


def ruled_row(name: str, rules: str, strictness: Callable[[Any], float], **wanted: str) -> Ruled:
    """Row of a rule-set table that holds under a rule set.

    Listed as a solver because it searches a table.

    Args:
        name: The table, such as `clear-distances`.
        rules: `us`, `iso` or `uk`.
        strictness: Number of a row; the larger, the stricter. For a limit that
            must not be passed give its negative.
        wanted: What other columns must say, such as `process="cutting"`; a row
            that says `any` fits too.

    Returns:
        The row that we follow. Where the rule set has none, the strictest of
        the other rule sets' rows under its own name, with a note.

    Raises:
        ValueError: No rule set has such a row.

    Valid for:
        Tables with the columns `rules` and `standing`.

    Source:
        [definition]; each row names its own.

    Examples:
        >>> ruled_row("clear-distances", "us", amount, process="cutting").row.number
        35.0
        >>> ruled_row("clear-distances", "uk", amount, process="cutting").rules
        'us'
    """
    rows = [
        row
        for row in table(name)
        if row.standing == "followed"
        and all(getattr(row, column) in (value, "any") for column, value in wanted.items())
    ]
    own = [row for row in rows if row.rules in (rules, "any")]
    if not rows:
        raise ValueError("There is no figure for this in our data; ask the local authority.")
    row = max(own or rows, key=strictness)
    return Ruled(row, row.rules, "" if own else NO_FIGURE)


SOLVERS = (amount, ruled_row)
