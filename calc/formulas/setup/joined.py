"""One rule for tables by thickness: which leads, how they meet, and what lies between two rows.

The table named first leads as far as it reaches; each one after it adds only its rows
beyond that end. A row that is printed for a range holds at the middle of the range.
Between two rows the figure goes evenly from one to the other, across the gap between
two tables as well; at a row it is what the row prints. Outside all rows the last one
is held. The nearest row and its neighbours give the band, so that the figure lies inside it.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from calc.data.tables import HOW_SURE
from calc.formulas.setup.printed import HAIR
from calc.values.figures import Figure
from calc.values.quantities import Length, Ratio


@dataclass(frozen=True, slots=True)
class Point:
    """One printed row: where it holds, and what it prints.

    Attributes:
        at: Thickness, m.
        value: Figure of the row, SI.
        source: Publication and place, as in a table.
        how_sure: Grade of the row.
    """

    at: Length
    value: float
    source: str
    how_sure: str


def middle_of_range(thinnest: Length, thickest: Length) -> Length:
    """Thickness at which a row that is printed for a range is taken to hold.

    Args:
        thinnest: Where the row begins, m.
        thickest: Where it ends, m.

    Returns:
        m.

    Valid for:
        Tables that give one figure to a range of thickness.

    Source:
        Common practice.

    Examples:
        >>> middle_of_range(0.002, 0.004)
        0.003
    """
    return (thinnest + thickest) / 2


def joined(*tables: tuple[Sequence[Point], Length]) -> tuple[Point, ...]:
    """Rows of several tables as one, the first table leading.

    Args:
        tables: Rows of each table, thickness rising, with the thickness that the
            table reaches, m; in the order in which they lead.

    Returns:
        Every row of the first table, then of each later one those beyond the
        reach of all before it.

    Source:
        [definition]

    Examples:
        >>> leads = [Point(0.001, 1.0, "", "read"), Point(0.003, 3.0, "", "read")], 0.004
        >>> follows = [Point(0.002, 9.0, "", "memory"), Point(0.008, 9.0, "", "memory")], 0.008
        >>> [point.at for point in joined(leads, follows)]
        [0.001, 0.003, 0.008]
    """
    found: list[Point] = []
    reached = 0.0
    for points, reach in tables:
        found.extend(point for point in points if point.at > reached * (1 + HAIR))
        reached = max(reached, reach)
    return tuple(found)


def place_at(points: Sequence[Point], at: Length) -> Ratio:
    """Place of a thickness among rows, counted from 0; between two rows a broken number.

    Args:
        points: Rows, thickness rising.
        at: Thickness, m; outside the rows the end is taken.

    Examples:
        >>> place_at([Point(0.001, 1.0, "", "read"), Point(0.003, 5.0, "", "read")], 0.0015)
        0.25
    """
    if at <= points[0].at * (1 + HAIR):
        return 0.0
    for number in range(1, len(points)):
        left, right = points[number - 1].at, points[number].at
        if at < right * (1 - HAIR):
            return number - 1 + max(0.0, at - left) / (right - left)
        if at <= right * (1 + HAIR):
            return float(number)
    return float(len(points) - 1)


def value_of_place(points: Sequence[Point], place: Ratio) -> float:
    """Figure at a place among rows.

    Args:
        points: Rows, thickness rising.
        place: As `place_at` gives it; outside the rows the end is taken.

    Examples:
        >>> value_of_place([Point(0.001, 1.0, "", "read"), Point(0.003, 5.0, "", "read")], 0.25)
        2.0
    """
    held = min(max(place, 0.0), len(points) - 1.0)
    number = int(held)
    if held == number:
        return points[number].value
    low, high = points[number].value, points[number + 1].value
    return low + (high - low) * (held - number)


def figure_of_place(points: Sequence[Point], place: Ratio, basis: str) -> Figure:
    """Figure at a place among rows, with the rows on either side as its band.

    Args:
        points: Rows, thickness rising.
        place: As `place_at` gives it.
        basis: What the figure rests on.

    Returns:
        The figure, with the source of the nearer row and the weaker grade of the
        two. Its band is the nearer row and the rows before and after that one; at
        an end of the rows it has one side only, which the caller widens.

    Source:
        Each row its own.
    """
    held = min(max(place, 0.0), len(points) - 1.0)
    number = int(held)
    nearest = round(held)
    value = value_of_place(points, held)
    source = points[nearest].source
    between = [points[number]] if held == number else points[number : number + 2]
    near = [*between, *points[max(nearest - 1, 0) : nearest + 2]]
    sure = max((point.how_sure for point in between), key=list(HOW_SURE).index)
    ends = [value, *(point.value for point in near)]
    return Figure(value, source, sure, low=min(ends), high=max(ends), basis=basis)


def inside(figure: Figure, share: Ratio, said: str) -> Figure:
    """A figure whose band reaches beyond it on both sides.

    Args:
        figure: With a value above zero; its band may be missing, nothing, or end at the value.
        share: Part of the value by which the band goes beyond it where it does not already.
        said: Sentence that names what this part rests on.

    Returns:
        The figure as it is, or with its band widened and the sentence added to its basis.

    Source:
        The sentence names it.

    Examples:
        >>> figure = inside(Figure(10.0, "", "read", low=10.0, high=14.0), 0.1, "Read to a tenth.")
        >>> figure.low, figure.high, figure.basis
        (9.0, 14.0, 'Read to a tenth.')
    """
    assert figure.value is not None
    low = figure.value if figure.low is None else figure.low
    high = figure.value if figure.high is None else figure.high
    least, most = figure.value * (1 - share), figure.value * (1 + share)
    if low < figure.value * (1 - HAIR) and high > figure.value * (1 + HAIR):
        return figure
    if low >= figure.value * (1 - HAIR):
        low = least
    if high <= figure.value * (1 + HAIR):
        high = most
    return replace(figure, low=low, high=high, basis=f"{figure.basis} {said}".strip())


SOLVERS = (middle_of_range, joined, place_at, value_of_place, figure_of_place, inside)
