"""What the rod brings to a joint: cross-section, throat, width, each with its band."""

from collections.abc import Callable
from dataclasses import dataclass
from math import pi

from calc.data.tables import table
from calc.declare import Picture, Step, worked
from calc.formulas.setup.joined import inside
from calc.formulas.setup.joints import (
    cap_area,
    fillet_area,
    fillet_face,
    fillet_throat,
    outside_corner_area,
    single_v_area,
    single_v_width,
    square_butt_area,
)
from calc.show.drawings import joint as joint_drawing
from calc.trade.weld.joints import FILLETS, HAIR, Preparation
from calc.values.figures import Figure
from calc.values.quantities import Angle, Area, Length

CAP_WIDTHS = 3.0
"""Width of a bead on a square butt in thicknesses; common practice."""
BEAD_BY_HAND = 0.25
"""Share by which a bead's width comes out off its size: common practice, no source."""
NO_ROD_UP_TO: Length = 0.0015875
"""1/16 in: thinner corners and edges are fused without rod [manly-1916]."""
FLAT: Angle = pi / 3
"""Stands for the angle of a joint that has none, where a drawing asks for one."""
_WEAKEST = ("read", "read-m", "computed", "memory", "practice")


@dataclass(frozen=True, slots=True)
class Section:
    """Weld metal of one joint, cut across.

    Attributes:
        fill: Area between the edges or in the corner, without a cap, m².
        cap: Area of the cap, m².
        width: Width that the cap covers, m; 0 where there is none.
    """

    fill: Area
    cap: Area
    width: Length

    @property
    def area(self) -> Area:
        """Fill and cap together, m²."""
        return self.fill + self.cap


def fused_without_rod(made: Preparation) -> bool:
    """Whether the edges are melted together and no rod is needed.

    Args:
        made: The joint.

    Source:
        [manly-1916]
    """
    thin = made.thickness <= NO_ROD_UP_TO * (1 + HAIR)
    return thin and made.process == "welding" and made.joint in ("outside-corner", "edge")


Worked = Callable[..., float]


def _plain(_says: str, formula: Callable[..., float], **given: float) -> float:
    return formula(**given)


def _of(figure: Figure | None, end: str) -> float:
    if figure is None or figure.value is None:
        return 0.0
    if end == "low":
        return figure.value if figure.low is None else figure.low
    if end == "high":
        return figure.value if figure.high is None else figure.high
    return figure.value


def section(made: Preparation, end: str = "value", work: Worked = _plain) -> Section:
    """Weld metal of a joint.

    Args:
        made: The joint.
        end: `value`, or `low` or `high` for the ends of every figure's band.
        work: How a formula is run; one that keeps the working may be given.

    Source:
        [definition]

    Examples:
        >>> from calc.trade.weld.joints import Own, preparation
        >>> own = Own(gap=0.0015, cap=0.0)
        >>> round(section(preparation(process="welding", metal="low-carbon-steel", joint="square-butt", thickness=0.003, own=own)).area * 1e6, 6)
        4.5
    """
    thickness, gap, cap = made.thickness, _of(made.gap, end), _of(made.cap, end)
    if made.joint == "square-butt":
        fill = work("Between the edges", square_butt_area, thickness=thickness, gap=gap)
        width = max(gap, CAP_WIDTHS * thickness)
    elif made.joint == "single-v":
        face = _of(made.root_face, {"low": "high", "high": "low"}.get(end, end))
        shape = {"thickness": thickness, "gap": gap, "root_face": face, "angle": _of(made.angle, end)}
        fill = work("In the V", single_v_area, **shape)
        width = work("Width of the V at the face", single_v_width, **shape)
    elif made.joint in FILLETS:
        leg = _of(made.leg, end)
        fill, width = work("In the fillet", fillet_area, leg=leg), fillet_face(leg)
    elif made.joint == "outside-corner":
        return Section(_corner(made, end, work), 0.0, 0.0)
    else:
        fill, width = 0.0, 2 * thickness
        cap = 0.0 if end == "value" and fused_without_rod(made) else cap
    crown = work("Cap, a segment of a circle", cap_area, width=width, height=cap) if cap > 0 else 0.0
    return Section(fill, crown, width)


def _corner(made: Preparation, end: str, work: Worked) -> Area:
    bare = made.process == "welding" and (end == "low" or (end == "value" and fused_without_rod(made)))
    if bare:
        return 0.0
    if end == "low":  # brass wets both edges all the way: a flat chamfer at least
        return fillet_area(made.thickness)
    round_one = work("Quarter of a circle that fills the corner", outside_corner_area, thickness=made.thickness)
    if end != "high":
        return round_one
    crown = next(row for row in table("weld-caps") if row.joint == "edge")
    return round_one * (1.0 + float(crown.most))


def weld_area(made: Preparation, steps: list[Step] | None = None) -> Figure:
    """Cross-section that the rod must bring to a joint, m², with its band.

    Args:
        made: The joint.
        steps: List that the working is added to, or None.

    Source:
        Areas by geometry; what they rest on by the joint.
    """
    work = (
        _plain if steps is None
        else lambda says, formula, **given: worked(steps, says, formula, **given)
    )  # fmt: skip
    taken = section(made, work=work).area
    least, most = section(made, "low").area, section(made, "high").area
    if fused_without_rod(made):
        return Figure(
            taken, "manly-1916", "read", low=least, high=most,
            basis="Up to 1/16 in the edges are fused together without rod; a gap or a fuller seam takes some.",
        )  # fmt: skip
    if made.joint == "outside-corner":
        bare = "fused edges alone need none" if made.process == "welding" else "a flat chamfer is the least"
        return Figure(taken, "", "practice", low=least, high=most, basis=f"A rounded corner; {bare}, a full one takes a fifth more.")
    if made.joint == "edge":
        return Figure(
            taken, "", "practice", low=least, high=most, basis="A crown over both edges; fused edges alone need none."
        )
    parts = [made.gap, made.angle, made.root_face, made.leg, made.cap]
    found = [part for part in parts if part is not None]
    sure = max((part.how_sure for part in found), key=_WEAKEST.index)
    sources = [part.source for part in found if part.source]
    return Figure(
        taken, sources[0] if sources else "", sure, low=min(least, taken), high=max(most, taken), basis=_BASIS[made.joint]
    )


_BASIS = {
    "square-butt": "Gap by thickness, and a cap three thicknesses wide. The band holds the least and the largest gap and cap.",
    "single-v": "V, gap and a cap as wide as the V. The band holds the least and the largest of gap, angle, root face and cap.",
    "lap": "A flat fillet with equal legs. The band holds a shorter leg, and a longer one with a full face.",
    "tee": "One flat fillet with equal legs; the other side is a seam of its own. The band holds a shorter leg, and a longer one with a full face.",
}


def fill_area(made: Preparation) -> Figure | None:
    """Cross-section without the cap, m², or None where the cap is all.

    Args:
        made: The joint.

    Source:
        [definition]
    """
    if made.joint == "edge":
        return None
    taken, least, most = (section(made, end).fill for end in ("value", "low", "high"))
    if not most:
        return Figure(taken, "definition", "computed", basis="The edges touch: the cap is all.")
    return Figure(
        taken, "definition", "computed", low=min(least, taken), high=max(most, taken),
        basis="By geometry from the figures above, without a cap.",
    )  # fmt: skip


def top_width(made: Preparation) -> Figure | None:
    """Width that the weld covers at the face, m, or None where the joint has no face.

    Args:
        made: The joint.

    Source:
        [definition]; three thicknesses for a square butt are common practice.
    """
    taken, least, most = (section(made, end).width for end in ("value", "low", "high"))
    if not taken:
        return None
    low, high = min(least, taken), max(most, taken)
    if made.joint == "square-butt":
        bead = Figure(taken, "", "practice", low=low, high=high, basis="Three thicknesses for a bead on sheet.")
        return inside(bead, BEAD_BY_HAND, "By hand it comes out a quarter more or less.")
    if made.joint == "edge":
        both = Figure(taken, "definition", "computed", low=low, high=high, basis="Both edges together.")
        return inside(both, BEAD_BY_HAND, "By hand it comes out a quarter more or less.")
    words = "Fillets from toe to toe." if made.joint in FILLETS else "By geometry from the figures above."
    return Figure(taken, "definition", "computed", low=low, high=high, basis=words)


def throat(made: Preparation) -> Figure | None:
    """Least thickness of weld metal that carries, m, or None where none is reckoned with.

    Args:
        made: The joint.

    Source:
        [definition]; only with fusion to the root.
    """
    if made.joint == "edge" or fused_without_rod(made):
        return None
    root = (
        "Only where the root is fused."
        if made.process == "welding"
        else "Only where the brass wets it all."
    )
    if made.leg is None:
        words = (
            "From the inner corner to the rounded face." if made.joint == "outside-corner"
            else "The plate's own thickness; a cap does not count."
        )  # fmt: skip
        return Figure(made.thickness, "definition", "computed", basis=f"{words} {root}")
    least, taken, most = (fillet_throat(_of(made.leg, end)) for end in ("low", "value", "high"))
    return Figure(
        taken, "definition", "computed", low=least, high=most, basis=f"From the root to the middle of a flat face. {root}"
    )


def picture(made: Preparation, rules: str) -> Picture:
    """The joint in section, to scale, with its figures.

    Args:
        made: The joint.
        rules: Rule set, for the units.
    """

    def taken(figure: Figure | None) -> float:
        return _of(figure, "value")

    fused = fused_without_rod(made)
    return joint_drawing.drawing(
        made.joint, made.thickness, taken(made.gap), rules,
        angle=taken(made.angle) or FLAT, root_face=taken(made.root_face), leg=taken(made.leg),
        cap=0.0 if fused else taken(made.cap), weld="fused" if fused else "rod",
    )  # fmt: skip
