"""The gap between the edges of a joint."""

from typing import Any

from calc.data.tables import table
from calc.formulas.setup.joined import inside
from calc.values.figures import Figure
from calc.values.quantities import Length

SET_GAP: Length = 0.00025
"""A gap is set by eye and gauge to about this: common practice, no source."""
SET_GAP_SAID = "A gap is set to about a quarter of a millimeter."


def gap_of_square_butt(thickness: Length) -> tuple[Length, Length, Length]:
    """Least, taken and largest gap between square edges, m.

    Args:
        thickness: Of the sheet, m.

    Returns:
        All zero where the edges touch; at a row that prints a gap half the
        thickness, held between what is printed. Between the last row with
        touching edges and the first with a gap it opens slowly at first, so that
        the metal from the rod grows evenly; the band reaches from one row to the other.

    Source:
        [carvill-1993]; the half is common practice.

    Examples:
        >>> [round(gap_of_square_butt(t)[1] * 1000, 6) for t in (0.0015, 0.002, 0.0025, 0.003)]
        [0.0, 0.3125, 1.25, 1.5]
    """
    rows = [row for row in table("welding-carvill-1993") if row.technique == "leftward"]
    opened = next(row for row in rows if row.least_gap is not None)
    tight = [row for row in rows if row.thickness < opened.thickness][-1]
    if thickness <= tight.thickness:
        return 0.0, 0.0, 0.0
    measure = max(thickness, opened.thickness)
    least, largest = opened.least_gap, max(min(opened.largest_gap, measure), opened.least_gap)
    whole = (least, min(max(measure / 2, least), largest), largest)
    share = min((thickness - tight.thickness) / (opened.thickness - tight.thickness), 1.0)
    return whole if share == 1.0 else (0.0, share**2 * whole[1], whole[2])


def gap_row(process: str, joint: str) -> Any:
    """Row of the gap of a joint that is followed, for a process."""
    rows = (row for row in table("joint-gaps") if row.joint == joint and row.standing == "followed")
    return next(row for row in rows if row.process in (process, "any"))


def gap(process: str, joint: str, thickness: Length) -> Figure:
    """Gap of a joint, m, with its band and source.

    Args:
        process: `welding` or `braze-welding`.
        joint: Id of the joint.
        thickness: Of the sheet or plate, m.
    """
    if joint == "square-butt" and process == "welding":
        least, taken, most = gap_of_square_butt(thickness)
        basis = (
            "Half the thickness where a gap is printed, common practice; below, it closes to touching edges."
            if most
            else "Printed as flanged or touching edges."
        )
        if not most:
            return Figure(taken, "carvill-1993 p. 207", "read", basis=basis)
        return inside(
            Figure(taken, "carvill-1993 p. 207", "read", low=least, high=most, basis=basis),
            SET_GAP / taken,
            SET_GAP_SAID,
        )
    row = gap_row(process, joint)
    taken = min(max(row.share * thickness, row.least), row.most)
    others = [r.most for r in table("joint-gaps") if r.joint == joint and r.standing == "also"]
    most = max(taken, min(max([row.most, *others]), thickness))
    more = " The band reaches to ISO 9692-1, from memory." if others else ""
    figure = Figure(
        taken, row.source, row.how_sure, low=row.least, high=most, basis=f"{sentence(row.words)}{more}"
    )
    return inside(figure, SET_GAP / taken, SET_GAP_SAID)


def sentence(words: str) -> str:
    """Words of a row as a sentence."""
    return f"{words[0].upper()}{words[1:]}."
