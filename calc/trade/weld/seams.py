"""What one seam needs: edges, technique, rod and torch time, each with its band."""

from dataclasses import replace

from calc.answer.sentences import distance
from calc.data.tables import table
from calc.formulas.setup.rods import rod_length_for_seam
from calc.formulas.setup.travel import backhand_from, travel_speed, travel_speed_beyond, travel_time
from calc.trade.weld import gaps as joint_gaps
from calc.trade.weld.joints import Preparation, preparation
from calc.values.figures import Figure
from calc.values.numbers import plain_number
from calc.values.quantities import Length
from calc.values.units import from_si

WASTE = 0.08
"""Rod lost as stubs; common practice, 6 to 8 %."""
THIN_BELOW: Length = 0.001
OTHER_METALS = (0.5, 1.5)
"""Share of steel's travel speed that other metals may take, least and most; common practice."""
gap_of_square_butt = joint_gaps.gap_of_square_butt
"""Least, taken and largest gap between square edges."""
_SPOKEN = {"leftward": ("forehand", "leftward"), "rightward": ("backhand", "rightward")}
STEEL = "low-carbon-steel"


def technique(joint: str, thickness: Length, metal: str = STEEL, process: str = "welding") -> str:
    """`leftward` or `rightward`: forehand or backhand.

    Steel is welded forehand until the handbook's rows turn to backhand, whatever the
    joint. Other metals than steel, and braze welds, are made forehand.

    Args:
        joint: Id of a joint.
        thickness: Of the sheet, m.
        metal: Id of the metal.
        process: `welding` or `braze-welding`.

    Source:
        [carvill-1993] for steel; else common practice.

    Examples:
        >>> technique("single-v", 0.006), technique("single-v", 0.006, "brass")
        ('rightward', 'leftward')
        >>> technique("outside-corner", 0.003175), technique("outside-corner", 0.0048)
        ('leftward', 'rightward')
    """
    if joint == "square-butt" or metal != STEEL or process != "welding":
        return "leftward"
    return "leftward" if thickness < backhand_from() * (1 - 1e-9) else "rightward"


def technique_words(
    joint: str, thickness: Length, rules: str, metal: str = STEEL, process: str = "welding"
) -> Figure:
    """Direction of travel in the words of a rule set.

    Args:
        joint: Id of a joint.
        thickness: Of the sheet, m.
        rules: Rule set, which decides the words.
        metal: Id of the metal.
        process: `welding` or `braze-welding`.

    Source:
        [carvill-1993] for steel; else common practice.
    """
    hand = technique(joint, thickness, metal, process)
    way = (
        "the flame points ahead, any rod before it"
        if hand == "leftward"
        else "the flame points back at the weld, any rod behind it"
    )
    steel = metal == STEEL and process == "welding"
    row = table("welding-carvill-1993")[0]
    from_here = f"Steel is welded forehand below {distance(backhand_from(), rules, 2)}, backhand from there on."
    return Figure(
        None, row.source if steel else "", row.how_sure if steel else "practice",
        words=f"{_SPOKEN[hand][0 if rules == 'us' else 1]}: {way}",
        basis=from_here if steel else "Other metals than steel, and braze welds, are made forehand: common practice.",
    )  # fmt: skip


def rod_for_seam(area: Figure, seam: Length, diameter: Length, waste: float = WASTE) -> Figure:
    """Length of rod for a seam, stubs included, m, with its band.

    Args:
        area: What the rod must bring, m², with its band.
        seam: Length of the seam, m.
        diameter: Of the rod, m.
        waste: Part of the rod that is lost.

    Source:
        [definition]
    """
    taken, least, most = (
        0.0 if part is None else rod_length_for_seam(part, seam, diameter, waste)
        for part in (area.value, area.low, area.high)
    )
    lost = f"{plain_number(100 * waste, 3)} % of the rod lost as stubs"
    return Figure(taken, area.source, area.how_sure, low=least, high=most, basis=f"{area.basis} {lost}.")


def speed_for(joint: str, thickness: Length, metal: str = STEEL, process: str = "welding") -> Figure:
    """Travel speed to expect, m/s, with its band.

    Args:
        joint: Id of a joint.
        thickness: Of the sheet, m; below the thinnest row that row is taken, above
            the thickest the law from memory, and the basis says so.
        metal: Id of the metal; other metals take steel's figure with a wide band.
        process: `welding` or `braze-welding`.

    Source:
        [carvill-1993] for butt welds in steel; all else common practice or memory.

    Examples:
        >>> figure = speed_for("square-butt", 0.003)
        >>> [round(v * 60000) for v in (figure.low, figure.value, figure.high)]
        [78, 95, 100]
    """
    hand = technique(joint, thickness, metal, process)
    rows = table("welding-carvill-1993")
    thinnest, thickest = rows[0].thickness, rows[-1].thickness
    if thickness > thickest * (1 + 1e-9):
        found = travel_speed_beyond(thickness)
        found = replace(found, basis="The printed rows end at 8 mm: slower as the thickness grows, for one run.")
    else:
        found = travel_speed(max(thickness, thinnest), hand)
    if thickness < thinnest:
        found = Figure(
            found.value, found.source, found.how_sure, low=found.low, high=found.high,
            basis=f"Printed for {thinnest * 1000:.1f} mm, the thinnest row; thinner sheet goes faster.",
        )  # fmt: skip
    if metal == STEEL and process == "welding":
        return found
    assert found.value is not None
    least, most = OTHER_METALS
    return Figure(
        found.value, found.source, "practice", low=least * (found.low or found.value),
        high=most * (found.high or found.value),
        basis="No speed is kept for this work: steel's figure for the thickness, half to one and a half of it. Run a trial piece.",
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
        low=travel_time(seam, speed.high or speed.value), high=travel_time(seam, speed.low or speed.value),
        basis="Seam over travel speed; tacking, restarts and a beginner's pauses come on top.",
    )  # fmt: skip


def edge_words(made: Preparation, rules: str) -> Figure:
    """Edge preparation in words.

    Args:
        made: The joint.
        rules: Rule set, for the units.

    Source:
        [carvill-1993]; [manly-1916]; common practice.
    """
    source, sure = "", "practice"
    hand = technique(made.joint, made.thickness, made.metal, made.process)
    if made.thickness < THIN_BELOW and made.joint in ("outside-corner", "square-butt", "edge"):
        words = "flanged or tight edges, tack often; the sheet burns through in a moment"
        source, sure = "carvill-1993 p. 207", "read"
    elif made.angle is not None and made.angle.value is not None:
        source, sure = made.angle.source, made.angle.how_sure
        each = plain_number(from_si(made.angle.value, "deg") / 2, 3)
        face = made.root_face is not None and made.root_face.value
        root = "a narrow face left square at the root" if face else "no square face at the root"
        words = f"each edge at a slope of {each}°, {root}"
    elif made.gap is not None:
        source, sure = made.gap.source, made.gap.how_sure
        words = f"square edges, {_gap_words(made.gap, rules)}"
    elif made.joint == "outside-corner":
        words = (
            "bevel as the joint needs; arc welding is usually faster at this thickness"
            if hand == "rightward"
            else "edges meeting, tacked"
        )
    else:
        words = {
            "lap": "one on the other, tight; the edge of the upper one square",
            "tee": "the standing one cut square, tight on the flat one",
            "edge": "side by side, edges flush and touching",
        }[made.joint]
    return Figure(None, source, sure, words=words, basis="Bare bright metal on both faces beside the seam.")


def _gap_words(gap: Figure, rules: str) -> str:
    if not gap.high:
        return f"gap {distance(gap.value, rules)}" if gap.value else "edges touching"
    return f"gap {distance(gap.low or 0.0, rules)} to {distance(gap.high, rules)}"


def edges(
    joint: str, thickness: Length, rules: str, metal: str = STEEL, process: str = "welding"
) -> Figure:
    """Edge preparation and direction of travel in words.

    Args:
        joint: Id of a joint.
        thickness: Of the sheet, m.
        rules: Rule set, which decides the words.
        metal: Id of the metal.
        process: `welding` or `braze-welding`.

    Raises:
        InputError: The joint is not made so.
    """
    found = edge_words(preparation(process=process, metal=metal, joint=joint, thickness=thickness, rules=rules), rules)
    word = _SPOKEN[technique(joint, thickness, metal, process)][0 if rules == "us" else 1]
    return Figure(
        None, found.source, found.how_sure, words=f"{found.words}; {word}",
        basis="Forehand or backhand by thickness.",
    )  # fmt: skip
