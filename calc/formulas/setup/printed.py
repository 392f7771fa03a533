"""Printed figures: read between two rows, and the spread of several sources."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import isfinite

from calc.values.figures import Figure

HAIR = 1e-9
"""Share by which a typed figure may miss a printed limit, as arithmetic leaves it."""


@dataclass(frozen=True, slots=True)
class Spread:
    """What the sources print where none of them is followed.

    Attributes:
        low: Least figure printed, SI.
        high: Largest figure printed, SI.
        source: Publications and places, as in a table.
        how_sure: Weakest grade among them.
        basis: What the figures rest on.
    """

    low: float
    high: float
    source: str
    how_sure: str
    basis: str


def value_between(points: Sequence[tuple[float, float]], at: float) -> float:
    """Value on the straight line between two neighbouring points.

    Listed as a solver because it searches for the neighbours.

    Args:
        points: Pairs of place and value, places rising.
        at: Place asked for.

    Returns:
        The value there.

    Raises:
        ValueError: The place is outside the points.

    Valid for:
        Tables whose rows change smoothly.

    Source:
        [definition]

    Examples:
        >>> value_between([(1.0, 10.0), (3.0, 20.0)], 2.0)
        15.0
    """
    for (left, low), (right, high) in pairwise(points):
        if left <= at <= right:
            return low + (high - low) * (at - left) / (right - left)
    raise ValueError("that is outside the printed table")


def spread(followed: Figure, others: Iterable[Figure]) -> Figure:
    """The figure we follow, with a band that holds what the others print.

    Listed as a solver because it compares any number of figures.

    Args:
        followed: The figure that gives the value, the source and the grade.
        others: Figures of other sources.

    Returns:
        The followed figure with `low` and `high` widened.

    Raises:
        ValueError: The followed figure has no number.

    Valid for:
        Figures of one quantity in SI.

    Source:
        [definition]
    """
    if followed.value is None:
        raise ValueError("there is no figure to follow")
    ends = [
        end
        for figure in (followed, *others)
        for end in (figure.value, figure.low, figure.high)
        if end is not None
    ]
    return replace(followed, low=min(ends), high=max(ends))


def require_thickness(thickness: float) -> None:
    """Refuse a thickness that no metal has.

    Listed as a solver because it refuses and returns nothing.

    Args:
        thickness: m.

    Raises:
        ValueError: It is not above zero or not a number.

    Source:
        [definition]
    """
    if not (thickness > 0 and isfinite(thickness)):
        raise ValueError("the thickness must be above zero")


SOLVERS = (value_between, spread, require_thickness)
