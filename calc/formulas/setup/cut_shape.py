"""How an oxygen cut in plate is held and what it leaves: lean, preheat holes, slot and drag."""

from math import isfinite

from calc.data.tables import table
from calc.formulas.setup.cutting import held_thickness
from calc.formulas.setup.printed import HAIR, value_between
from calc.values.figures import Figure
from calc.values.quantities import Length


def lead_angle(thickness: Length) -> Figure:
    """How far the torch leans from upright on a straight cut.

    Args:
        thickness: Of the plate, m.

    Returns:
        rad, with its band; words for plate that is cut upright.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm.

    Valid for:
        Straight cuts in plate, by hand.

    Source:
        [student-textbooks] 5 to 20 degrees, less as the plate gets thicker, upright for
        very thick plate; the figures between are common practice.

    Examples:
        >>> lead_angle(0.075).words
        'not at all: hold it upright'
    """
    held = held_thickness(thickness)
    rows = table("cutting-leads")
    last = rows[-1]
    if held >= last.thickness * (1 - HAIR):
        return Figure(
            None, last.source, last.how_sure, words="not at all: hold it upright", basis=f"{last.words.capitalize()}."
        )  # fmt: skip
    at = max(held, rows[0].thickness)
    value, low, high = (
        value_between([(row.thickness, getattr(row, name)) for row in rows], at)
        for name in ("lead", "low", "high")
    )
    return Figure(
        value, last.source, "practice", low=low, high=high,
        basis="Leaned away from the cut, so that you see into it. A textbook prints 5 to 20 degrees, nearer to upright as the plate "
        "gets thicker; where between is common practice.",
    )  # fmt: skip


def preheat_holes(thickness: Length) -> Figure:
    """Holes for the preheat flames around the cutting hole.

    Args:
        thickness: Of the plate, m.

    Returns:
        Words; the range is the band. Thicker plate and slower fuels take more holes.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm.

    Valid for:
        Tips for plate under 1/4 in to over 12 in.

    Source:
        [army-tc9-237-1993]

    Examples:
        >>> preheat_holes(0.025).words
        '2 to 6'
    """
    held_thickness(thickness)
    row = next(each for each in table("cutting-facts") if each.topic == "holes")
    low, high = row.number_low, row.number_high
    words = f"{low:g} to {high:g}"
    basis = f"{words} preheat holes, tips for under 1/4 in to over 12 in."
    return Figure(None, row.source, row.how_sure, low=low, high=high, basis=basis, words=words)


def kerf(thickness: Length) -> Figure:
    """Width of the slot that the cut leaves.

    Args:
        thickness: Of the plate, m.

    Returns:
        m, with its band.

    Raises:
        ValueError: The thickness is outside 3 to 152 mm.

    Valid for:
        3-152 mm, hand or machine.

    Source:
        From memory.

    Examples:
        >>> round(1000 * kerf(0.025).value, 2)
        2.0
    """
    rows = table("cutting-kerfs")
    thinnest, thickest = rows[0].thickness, rows[-1].thickness
    if not (isfinite(thickness) and thinnest * (1 - HAIR) <= thickness <= thickest * (1 + HAIR)):
        raise ValueError(f"slots are kept for {thinnest * 1000:g} mm to {thickest * 1000:g} mm (6 in)")
    held = min(max(thickness, thinnest), thickest)
    value, low, high = (
        value_between([(row.thickness, getattr(row, name)) for row in rows], held)
        for name in ("kerf", "low", "high")
    )
    return Figure(
        value,
        "",
        "memory",
        low=low,
        high=high,
        basis="Figures for hand and machine cuts, between the rows.",
    )


def drag(thickness: Length) -> Figure:
    """How far the bottom of a good cut may lag behind its top.

    Args:
        thickness: Of the plate, m.

    Returns:
        The most, m; it is a limit and has no band.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm.

    Valid for:
        Straight cuts in plate.

    Source:
        From memory.

    Examples:
        >>> round(1000 * drag(0.025).value, 2)
        2.5
    """
    held_thickness(thickness)
    good, severing, lost = table("cutting-drags")
    return Figure(
        good.high * thickness, "", good.how_sure, basis=f"Up to {100 * good.high:g} % of the thickness is {good.words}; {100 * severing.low:g} to "
        f"{100 * severing.high:g} % is {severing.words}; above {100 * lost.low:g} % {lost.words}.",
    )  # fmt: skip


SOLVERS = (lead_angle, preheat_holes, kerf, drag)
