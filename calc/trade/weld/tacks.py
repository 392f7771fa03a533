"""Tacks: how long, how far apart, how many."""

from dataclasses import dataclass
from math import ceil
from typing import Any

from calc.data.tables import table
from calc.formulas.setup.joined import inside
from calc.values.figures import Figure
from calc.values.quantities import Length


@dataclass(frozen=True, slots=True)
class Tacks:
    """Tacks of one seam.

    Attributes:
        length: Of each, m.
        spacing: From the middle of one to the next, m; None where one is enough.
        count: How many.
    """

    length: Figure
    spacing: Figure | None
    count: Figure


BY_EYE = 0.2
"""Share by which tacks are placed off their mark: common practice, no source."""


def _row(metal: str) -> Any:
    rows = table("tacks")
    return next((row for row in rows if row.metal == metal), rows[0])


def _held(value: float, least: float, most: float) -> float:
    return min(max(value, least), most)


def _spaces(seam: Length, spacing: Length) -> int:
    return max(1, ceil(seam / spacing - 1e-9))


def tacks(metal: str, thickness: Length, seam: Length) -> Tacks:
    """Tacks of a seam, one at each end and the others evenly between.

    Args:
        metal: Id of the metal.
        thickness: Of the sheet or plate, m.
        seam: Length of the seam, m.

    Source:
        Common practice.

    Examples:
        >>> made = tacks("low-carbon-steel", 0.003, 0.3)
        >>> made.count.value, round(made.spacing.value * 1000), round(made.length.value * 1000)
        (5.0, 75, 9)
    """
    row = _row(metal)
    own = min(_held(row.length * thickness, row.shortest, row.longest), seam / 2)
    length = Figure(own, row.source, row.how_sure, basis=f"{row.words[0].upper()}{row.words[1:]}.")
    if seam <= 3 * own:
        one = Figure(1.0, row.source, row.how_sure, basis="The seam is hardly longer than a tack.")
        return Tacks(length, None, one)
    close, usual, wide = (
        _held(share * thickness, row.closest, row.widest)
        for share in (row.least_spacing, row.spacing, row.largest_spacing)
    )
    even = seam / _spaces(seam, usual)
    spacing = Figure(
        even, row.source, row.how_sure, low=min(close, even), high=max(wide, even),
        basis=f"{row.words[0].upper()}{row.words[1:]}, spaced evenly over the seam.",
    )  # fmt: skip
    return Tacks(
        length,
        inside(spacing, BY_EYE, "Tacks are placed by eye, to about a fifth."),
        Figure(
            float(_spaces(seam, usual) + 1), row.source, row.how_sure, low=float(_spaces(seam, wide) + 1),
            high=float(_spaces(seam, close) + 1), basis="One at each end, the others evenly between.",
        ),
    )  # fmt: skip
