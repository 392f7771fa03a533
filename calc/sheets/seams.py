"""What one seam needs: edges, technique, rod and torch time, each with its band."""

from calc.figures import Figure
from calc.formulas.setup.joints import cap_area, outside_corner_area, square_butt_area
from calc.formulas.setup.rods import rod_length_for_seam
from calc.formulas.setup.travel import travel_speed, travel_time
from calc.quantities import Area, Length
from calc.tables import table

CAP_SHARE = (0.10, 0.15, 0.20)
"""Height of the cap as a share of the thickness: least, taken, most; common practice."""
CAP_WIDTHS = 3.0
"""Width of a bead on sheet in thicknesses; common practice."""
WASTE = 0.08
"""Rod lost as stubs; common practice, 6 to 8 %."""
NO_ROD_UP_TO: Length = 0.0015875
"""1/16 in: thinner corners are fused without rod [manly-1916]."""
BACKHAND_FROM: Length = 0.003
THIN_BELOW: Length = 0.001


def technique(joint: str, thickness: Length) -> str:
    """`leftward` or `rightward`: forehand or backhand.

    A square butt is welded forehand as far as it goes; else forehand to 3 mm and
    backhand above.

    Args:
        joint: `outside-corner` or `square-butt`.
        thickness: Of the sheet, m.

    Source:
        Common practice.
    """
    thin = thickness <= BACKHAND_FROM * (1 + 1e-9)
    return "leftward" if thin or joint == "square-butt" else "rightward"


def gap_of_square_butt(thickness: Length) -> tuple[Length, Length, Length]:
    """Least, taken and largest gap between square edges, m.

    Args:
        thickness: Of the sheet, m.

    Returns:
        All zero where the edges touch; else half the thickness, held between
        what is printed.

    Source:
        [carvill-1993]; the half is common practice.
    """
    row = min(table("welding-carvill-1993"), key=lambda each: abs(each.thickness - thickness))
    if row.least_gap is None:
        return 0.0, 0.0, 0.0
    least, largest = row.least_gap, min(row.largest_gap, max(thickness, row.least_gap))
    return least, min(max(thickness / 2, least), largest), largest


def rod_area(joint: str, thickness: Length) -> Figure:
    """Cross-section that the rod must bring to a seam, m², with its band.

    Args:
        joint: `outside-corner` or `square-butt`.
        thickness: Of the sheet, m.

    Source:
        Areas by geometry; cap, gap and "no rod" by common practice and [manly-1916].
    """
    if joint == "outside-corner":
        full = outside_corner_area(thickness)
        if thickness <= NO_ROD_UP_TO:
            return Figure(
                0.0, "manly-1916", "read", 0.0, full,
                "Up to 1/16 in the edges are fused together without rod; a gap or a fuller corner takes some.",
            )  # fmt: skip
        return Figure(full, "", "practice", 0.0, full, "A rounded corner; fused edges alone need none.")
    gaps = gap_of_square_butt(thickness)

    def area(gap: Length, cap: float) -> Area:
        width = max(gap, CAP_WIDTHS * thickness)
        return square_butt_area(thickness, gap) + cap_area(width, cap * thickness)

    least, taken, most = (area(gap, cap) for gap, cap in zip(gaps, CAP_SHARE, strict=True))
    return Figure(
        taken, "carvill-1993 p. 207", "read", least, most,
        "Gap as printed, half the thickness taken; cap 10 to 20 % of the thickness and three thicknesses "
        "wide, common practice.",
    )  # fmt: skip


def rod_for_seam(area: Figure, seam: Length, diameter: Length) -> Figure:
    """Length of rod for a seam, stubs included, m, with its band.

    Args:
        area: What the rod must bring, m², with its band.
        seam: Length of the seam, m.
        diameter: Of the rod, m.

    Source:
        [definition]
    """
    taken, least, most = (
        0.0 if part is None else rod_length_for_seam(part, seam, diameter, WASTE)
        for part in (area.value, area.low, area.high)
    )
    return Figure(
        taken, area.source, area.how_sure, least, most, f"{area.basis} {WASTE:.0%} added for stubs."
    )


def speed_for(joint: str, thickness: Length) -> Figure:
    """Travel speed to expect on steel sheet, m/s, with its band.

    Args:
        joint: `outside-corner` or `square-butt`.
        thickness: Of the sheet, m; below the thinnest row that row is taken, and the basis says so.

    Source:
        [carvill-1993]
    """
    thinnest = min(row.thickness for row in table("welding-carvill-1993"))
    found = travel_speed(max(thickness, thinnest), technique(joint, thickness))
    if thickness >= thinnest:
        return found
    return Figure(
        found.value, found.source, found.how_sure, found.low, found.high,
        f"Printed for {thinnest * 1000:.1f} mm, the thinnest row; thinner sheet goes faster.",
    )  # fmt: skip


def time_on_seam(seam: Length, speed: Figure) -> Figure:
    """Time that the torch is on a seam, s, with its band.

    Args:
        seam: Length of the seam, m.
        speed: Travel speed, m/s, with its band.

    Source:
        As the speed.
    """
    assert speed.value is not None
    return Figure(
        travel_time(seam, speed.value), speed.source, speed.how_sure,
        travel_time(seam, speed.high or speed.value), travel_time(seam, speed.low or speed.value),
        "Seam over travel speed; tacking, restarts and a beginner's pauses come on top.",
    )  # fmt: skip


def edges(joint: str, thickness: float, rules: str) -> Figure:
    """Edge preparation and direction of travel in words.

    Args:
        joint: `outside-corner` or `square-butt`.
        thickness: Of the sheet, m.
        rules: Rule set, which decides the words.
    """
    hand = {"leftward": ("forehand", "leftward"), "rightward": ("backhand", "rightward")}
    word = hand[technique(joint, thickness)][0 if rules == "us" else 1]
    if thickness < THIN_BELOW:
        edges = "flanged or tight edges, tack often; the sheet burns through in a moment"
    elif joint == "square-butt":
        least, _, most = gap_of_square_butt(thickness)
        gap = f"gap {least * 1000:.1f} to {most * 1000:.1f} mm" if most else "edges touching"
        edges = f"square edges, {gap}"
    elif thickness > BACKHAND_FROM:
        edges = "bevel as the joint needs; arc welding is usually faster at this thickness"
    else:
        edges = "edges meeting, tacked"
    return Figure(
        None, "carvill-1993 p. 207", "read", words=f"{edges}; {word}",
        basis="Forehand or backhand by thickness is common practice.",
    )  # fmt: skip
