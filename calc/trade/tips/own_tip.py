"""A tip that the reader has, held against the one to start from."""

from collections.abc import Sequence

from calc.answer.sentences import distance
from calc.data.tables import table
from calc.formulas.setup.cutting import LARGER
from calc.formulas.setup.drills import nearest_drill
from calc.formulas.setup.printed import HAIR
from calc.values.figures import Figure
from calc.values.quantities import Length

NEAR = 0.03
"""A hole within this share is the same tip: drills of neighbouring numbers differ by 2 to 9 %."""
OFF_THE_TABLE = 1.2
"""A hole this many times beyond the ends of a table belongs to none of its rows."""


def _same_tip(one: Length, other: Length) -> bool:
    if abs(one / other - 1.0) <= NEAR:
        return True
    try:
        return nearest_drill(one).drill == nearest_drill(other).drill
    except ValueError:
        return False


def printed_for(process: str, orifice: Length, rules: str) -> str:
    """Steel that print gives a hole to, in words; empty where no table has it.

    Args:
        process: `welding`, `braze-welding`, `brazing`, `soldering` or `cutting`.
        orifice: Of the tip, m; for cutting of the cutting oxygen.
        rules: Rule set, for the units.
    """
    if process == "cutting":
        rows = [
            row
            for row in table(LARGER)
            if row.orifice_low * (1 - HAIR) <= orifice <= row.orifice_high * (1 + HAIR)
        ]
        if not rows:
            return ""
        return f"{distance(rows[0].thickness, rules, 3)} to {distance(rows[-1].thickness, rules, 3)} plate"
    rows = list(table("welding-orifices-faa" if process == "welding" else "brazing-orifices-navy"))
    if not rows[0].orifice / OFF_THE_TABLE <= orifice <= rows[-1].orifice * OFF_THE_TABLE:
        return ""
    row = min(rows, key=lambda each: abs(each.orifice - orifice))
    if process == "welding":
        return f"{distance(row.thinnest, rules, 3)} to {distance(row.thickest, rules, 3)} steel"
    thicker = " and thicker" if row is rows[-1] else ""
    return f"metal near {distance(row.thickness, rules, 3)}{thicker}"


def own_tip(own: Length, wanted: Figure, suits: str, printed: Sequence[Length] = ()) -> Figure:
    """What is to be said of a tip that the reader has.

    Args:
        own: Its hole, m.
        wanted: The hole to start from, with its band.
        suits: What print gives such a hole to; may be empty.
        printed: Holes that the table followed prints for the range of the thickness.

    Returns:
        Words: the size to start from, smaller or larger, within the band or beyond it.
    """
    assert wanted.value is not None
    low = wanted.value if wanted.low is None else wanted.low
    high = wanted.value if wanted.high is None else wanted.high
    if _same_tip(own, wanted.value):
        words = "right: the size to start from"
    elif any(_same_tip(own, hole) for hole in printed):
        words = "right: the table prints this size for the thickness"
    elif own < low * (1 - HAIR):
        words = "smaller than wanted: it heats too slowly; turned up, the flame blows off the tip"
    elif own > high * (1 + HAIR):
        words = "larger than wanted: turned down it starves, gets hot and pops; fit a smaller one"
    elif own < wanted.value:
        words = "smaller than the one to start from, within the band: try it first"
    else:
        words = "larger than the one to start from, within the band: it needs its full flow"
    if suits:
        words = f"{words}. Print gives such a hole to {suits}"
    return Figure(
        None, wanted.source, wanted.how_sure, words=words,
        basis="By the hole alone, against the band above. The maker's own list for the tip comes first.",
    )  # fmt: skip
