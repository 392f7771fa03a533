"""Number twist drills: the size of a tip's hole, told without any maker's number."""

from dataclasses import dataclass

from calc.data.tables import table
from calc.formulas.setup.printed import HAIR
from calc.values.quantities import Length

_TABLE = "drills-asme-b94"


@dataclass(frozen=True, slots=True)
class Drill:
    """One number drill.

    Attributes:
        drill: Its number, such as `68`.
        diameter: m.
        source: Publication and place, as in a table.
        how_sure: Grade of the row.
    """

    drill: str
    diameter: Length
    source: str
    how_sure: str


def drill_diameter(drill: str) -> Length:
    """Diameter of a number twist drill.

    Args:
        drill: Number from `1`, the largest, to `80`, the smallest.

    Returns:
        m.

    Raises:
        ValueError: There is no such number drill.

    Valid for:
        Number twist drills; Stubs' steel wire gauge looks alike and differs.

    Source:
        [asme-b94-11m]

    Examples:
        >>> round(drill_diameter("68") * 1000, 4)
        0.7874
    """
    for row in table(_TABLE):
        if row.drill == drill:
            return float(row.diameter)
    raise ValueError(f"there is no number drill {drill}; give 1 to {table(_TABLE)[-1].drill}")


def nearest_drill(diameter: Length) -> Drill:
    """Number drill nearest to a hole.

    Args:
        diameter: Of the hole, m.

    Returns:
        The drill, its own diameter and source.

    Raises:
        ValueError: The hole is wider than the largest number drill or
            narrower than the smallest.

    Valid for:
        0.343 mm to 5.79 mm.

    Source:
        [asme-b94-11m]

    Examples:
        >>> nearest_drill(0.00079).drill
        '68'
    """
    rows = table(_TABLE)
    smallest, largest = rows[-1].diameter, rows[0].diameter
    if not smallest * (1 - HAIR) <= diameter <= largest * (1 + HAIR):
        raise ValueError(
            "no number drill has that size; they run from "
            f"{smallest * 1000:.2f} mm to {largest * 1000:.2f} mm"
        )
    row = min(rows, key=lambda each: abs(each.diameter - diameter))
    return Drill(row.drill, row.diameter, row.source, row.how_sure)


def drills_beside(diameter: Length) -> tuple[Drill | None, Drill | None]:
    """Number drills next below and next above a hole.

    Args:
        diameter: Of the hole, m.

    Returns:
        The next smaller and the next larger drill; None where the series ends.
        A drill of the hole's own size is neither.

    Valid for:
        Number twist drills.

    Source:
        [asme-b94-11m]

    Examples:
        >>> [drill.drill for drill in drills_beside(0.0310 * 0.0254)]
        ['69', '67']
    """
    drills = [Drill(row.drill, row.diameter, row.source, row.how_sure) for row in table(_TABLE)]
    smaller = [drill for drill in drills if drill.diameter < diameter * (1 - HAIR)]
    larger = [drill for drill in drills if drill.diameter > diameter * (1 + HAIR)]
    return (smaller[0] if smaller else None), (larger[-1] if larger else None)


SOLVERS = (drill_diameter, nearest_drill, drills_beside)
