"""How the edges of a joint are made ready, by process, metal and thickness."""

from collections.abc import Callable
from dataclasses import dataclass
from math import radians
from typing import Any

from calc.answer.sentences import distance
from calc.ask.errors import InputError
from calc.data.tables import table
from calc.formulas.setup.joined import inside
from calc.trade.weld.gaps import gap, gap_row, sentence
from calc.values.figures import Figure
from calc.values.quantities import Angle, Length

PROCESSES = {
    "welding": "Welding: the edges melt",
    "braze-welding": "Braze welding: only the brass melts",
}
METALS = {
    "low-carbon-steel": "Low-carbon steel",
    "stainless-steel": "Stainless steel",
    "cast-iron": "Gray cast iron",
    "copper": "Copper",
    "brass": "Brass",
    "aluminium": "Aluminum",
}
JOINTS = {
    "outside-corner": "Outside corner",
    "square-butt": "Square butt",
    "single-v": "Single V",
    "lap": "Lap",
    "tee": "Tee",
    "edge": "Edge",
}
BUTTS = ("square-butt", "single-v")
FILLETS = ("lap", "tee")
THINNEST: Length = 0.0005
THICKEST: Length = 0.025
"""Steel of 25 mm can be gas welded, most is near 2 mm [carvill-1993]."""
THICKNESS_LABEL = "Thickness of the sheet or plate"
HAIR = 1e-9
CUT_ANGLE: Angle = radians(5.0)
"""A bevel is ground or cut to about this: common practice, no source."""
LEG_BY_HAND = 0.1
"""Share by which a fillet comes out off its size: common practice, no source."""
OWN_LABELS = {
    "gap": "Gap",
    "angle": "Angle between the bevels",
    "root_face": "Root face",
    "leg": "Leg of the fillet",
    "cap": "Cap",
}
"""What the calculators call the reader's own figures, by the names in `Own`."""
_LABELS = {"metal": "Metal", "joint": "Joint"}


@dataclass(frozen=True, slots=True)
class Own:
    """Figures of the reader's own, each None where ours is taken.

    Attributes:
        gap: Between the edges, m.
        angle: Between the bevels, rad.
        root_face: Height left square at the root, m.
        leg: Of a fillet, m.
        cap: Height of the cap, m.
    """

    gap: Length | None = None
    angle: Angle | None = None
    root_face: Length | None = None
    leg: Length | None = None
    cap: Length | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Preparation:
    """One joint made ready; a figure is None where the joint has no such thing.

    Attributes:
        process: Id of `PROCESSES`.
        metal: Id of `METALS`.
        joint: Id of `JOINTS`.
        thickness: m.
        gap: Between the edges of a butt, m.
        angle: Between the bevels of a single V, rad.
        root_face: Height left square at the root of a single V, m.
        leg: Of a fillet, m.
        cap: Height of what stands above the plate or the face of a fillet, m.
    """

    process: str
    metal: str
    joint: str
    thickness: Length
    gap: Figure | None
    angle: Figure | None
    root_face: Figure | None
    leg: Figure | None
    cap: Figure | None


def _fits(row: Any, **picked: str) -> bool:
    return all(getattr(row, name) in (value, "any") for name, value in picked.items())


def unfit(process: str, metal: str, joint: str) -> tuple[str, str] | None:
    """Input to change and why, where a joint is not made at all; else None.

    Args:
        process: Id of `PROCESSES`.
        metal: Id of `METALS`.
        joint: Id of `JOINTS`.

    Source:
        Common practice.

    Examples:
        >>> unfit("braze-welding", "aluminium", "lap")[0]
        'metal'
        >>> unfit("welding", "aluminium", "lap") is None
        True
    """
    for row in table("joint-limits"):
        if row.never and _fits(row, process=process, metal=metal, joint=joint):
            return row.never, f"{row.why}; {row.instead}."
    return None


def thicknesses(process: str, metal: str, joint: str) -> tuple[Length, Length]:
    """Least and largest thickness that a joint is made in, m.

    Args:
        process: Id of `PROCESSES`.
        metal: Id of `METALS`.
        joint: Id of `JOINTS`.

    Source:
        [manly-1916], [carvill-1993]; ISO 9692-1 from memory; common practice.

    Examples:
        >>> [round(1000 * each, 2) for each in thicknesses("welding", "low-carbon-steel", "square-butt")]
        [0.5, 3.2]
    """
    rows = [row for row in table("joint-limits") if _fits(row, process=process, metal=metal, joint=joint)]
    thinnest = [row.thinnest for row in rows if row.thinnest is not None]
    thickest = [row.thickest for row in rows if row.thickest is not None]
    return max([THINNEST, *thinnest]), min([THICKEST, *thickest])


def why_not(process: str, metal: str, joint: str, thickness: Length, rules: str) -> str:
    """Why a joint is not made in a thickness and what will do; empty where it is made.

    Args:
        process: Id of `PROCESSES`.
        metal: Id of `METALS`.
        joint: Id of `JOINTS`.
        thickness: m.
        rules: Rule set, for the units.

    Returns:
        What follows the label of the thickness in a message: why, which joint to
        take instead, and the range that will do.

    Examples:
        >>> why_not("welding", "low-carbon-steel", "square-butt", 0.004, "iso")
        'thicker square edges are not fused through; bevel the edges and take a single V. For a square butt give 0.5 mm to 3.2 mm.'
    """
    least, most = thicknesses(process, metal, joint)
    if least * (1 - HAIR) <= thickness <= most * (1 + HAIR):
        return ""
    reason = (
        f"that is outside {distance(THINNEST, rules, 2, 'up')} to {distance(THICKEST, rules, 2, 'down')}"
    )
    for row in table("joint-limits"):
        if row.never or not _fits(row, process=process, metal=metal, joint=joint):
            continue
        if (row.thinnest is not None and thickness < row.thinnest * (1 - HAIR)) or (
            row.thickest is not None and thickness > row.thickest * (1 + HAIR)
        ):
            reason = f"{row.why}; {row.instead}"
            break
    name = JOINTS[joint][0].lower() + JOINTS[joint][1:]
    article = "an" if name[0] in "aeiou" else "a"
    span = f"{distance(least, rules, 3, 'up')} to {distance(most, rules, 3, 'down')}"
    return f"{reason}. For {article} {name} give {span}."


def require_joint(
    *,
    process: str, metal: str, joint: str, thickness: Length, rules: str, label: str = THICKNESS_LABEL
) -> None:
    """Refuse what is not made, with the input to change.

    Args:
        process: Id of `PROCESSES`.
        metal: Id of `METALS`.
        joint: Id of `JOINTS`.
        thickness: m.
        rules: Rule set, for the units.
        label: What the calculator calls the thickness.

    Raises:
        InputError: Metal, joint or thickness do not go together.
    """
    never = unfit(process, metal, joint)
    if never is not None:
        raise InputError(never[0], _LABELS[never[0]], f"{never[1]}")
    said = why_not(process, metal, joint, thickness, rules)
    if said:
        raise InputError("thickness", label, f"{said}")


def _or_own(value: float | None, ours: Callable[[], Figure]) -> Figure:
    if value is None:
        return ours()
    return Figure(value, "", "practice", basis="Your own figure; it comes before ours.")


def _root_face(process: str, thickness: Length) -> Figure:
    row = gap_row(process, "single-v")
    largest = max(
        r.largest_root_face for r in table("joint-gaps") if r.largest_root_face is not None
    )  # fmt: skip
    most = min(largest, thickness / 2)
    return Figure(
        min(row.root_face, most), row.source, row.how_sure, low=0.0, high=most,
        basis="Common practice; ISO 9692-1 goes to 2 mm, from memory. Half the thickness at most.",
    )  # fmt: skip


def _angle(process: str, metal: str, thickness: Length) -> Figure:
    rows = [
        row
        for row in table("joint-bevels")
        if _fits(row, process=process, metal=metal)
        and (row.thinnest is None or thickness > row.thinnest * (1 + HAIR))
        and (row.thickest is None or thickness <= row.thickest * (1 + HAIR))
    ]
    followed = next(row for row in rows if row.standing == "followed")
    ends = [end for row in rows for end in (row.angle, row.least, row.largest) if end is not None]
    figure = Figure(
        followed.angle, followed.source, followed.how_sure, low=min(ends), high=max(ends),
        basis=f"{sentence(followed.words)} The band holds what others print.",
    )  # fmt: skip
    return inside(figure, CUT_ANGLE / followed.angle, "A bevel is ground or cut to about 5 degrees.")


def _leg(joint: str, thickness: Length) -> Figure:
    row = next(row for row in table("joint-legs") if row.joint == joint)
    figure = Figure(
        row.taken * thickness, row.source, row.how_sure, low=row.least * thickness, high=row.largest * thickness,
        basis=sentence(row.words),
    )  # fmt: skip
    return inside(figure, LEG_BY_HAND, "By hand it comes out a tenth more or less.")


def _cap(metal: str, joint: str, measure: Length) -> Figure:
    kind = "butt" if joint in BUTTS else "fillet" if joint in FILLETS else "edge"
    rows = [row for row in table("weld-caps") if row.joint == kind and row.metal in (metal, "any")]
    plain = next(row for row in rows if row.height is None)
    least, taken, most = (share * measure for share in (plain.least, plain.taken, plain.most))
    for row in rows:
        if row.height is None:
            continue
        # From the plain rule on the thinnest metal up to the printed height, slowly at first.
        thinnest = thicknesses("welding", metal, joint)[0]
        share = min(max((measure - thinnest) / (row.from_thickness - thinnest), 0.0), 1.0)
        taken += share**2 * (row.height - taken)
        words = f"{sentence(row.words)} Thin castings take less; by hand it comes out a quarter more or less."
        return Figure(taken, row.source, row.how_sure, low=min(least, 0.75 * taken), high=max(most, 1.25 * taken), basis=words)
    return Figure(taken, plain.source, plain.how_sure, low=least, high=most, basis=sentence(plain.words))


def _hold(own: Own, name: str, most: Length, why: str, rules: str) -> None:
    value: float | None = getattr(own, name)
    if value is not None and value > most * (1 + HAIR):
        least = distance(THINNEST, rules, 2, "up") if name == "leg" else "0"
        raise InputError(
            name, OWN_LABELS[name], f"{why}; give {least} to {distance(most, rules, 3, 'down')}."
        )


def _require_own(joint: str, thickness: Length, leg: Figure | None, own: Own, rules: str) -> None:
    """Refuse the reader's own figures where no such joint can be made."""
    if joint in BUTTS:
        _hold(own, "gap", thickness, "wider than the metal is thick, it falls through", rules)
    if joint == "single-v":
        _hold(own, "root_face", 0.9 * thickness, "it leaves no bevel, take a square butt for that", rules)
    measure = thickness
    if leg is not None:
        row = next(row for row in table("joint-legs") if row.joint == joint)
        why = {
            "lap": "a lap's fillet is no higher than its plate",
            "tee": "more than twice the plate is metal wasted",
        }[joint]
        _hold(own, "leg", row.own_largest * thickness, why, rules)
        measure = leg.value or 0.0
    if joint != "outside-corner":
        _hold(own, "cap", measure / 2, "half of the thickness or of the leg is the most", rules)


def preparation(
    *,
    process: str, metal: str, joint: str, thickness: Length, rules: str = "us", own: Own | None = None
) -> Preparation:
    """How the edges of a joint are made ready.

    Args:
        process: Id of `PROCESSES`.
        metal: Id of `METALS`.
        joint: Id of `JOINTS`.
        thickness: Of the sheet or plate, m; of the thinner one of two.
        rules: Rule set, for the units of messages.
        own: The reader's own figures, which come before ours.

    Returns:
        Gap, angle, root face, leg and cap, each with its band.

    Raises:
        InputError: The joint is not made so; the sentence says what to take.

    Source:
        [manly-1916], [carvill-1993]; ISO 9692-1 from memory; common practice.

    Examples:
        >>> made = preparation(process="welding", metal="low-carbon-steel", joint="single-v", thickness=0.006)
        >>> round(made.gap.value * 1000, 2), round(made.root_face.value * 1000, 2)
        (2.0, 1.0)
    """
    require_joint(process=process, metal=metal, joint=joint, thickness=thickness, rules=rules)
    own = own or Own()
    butt, v, fillet = joint in BUTTS, joint == "single-v", joint in FILLETS
    leg = _or_own(own.leg, lambda: _leg(joint, thickness)) if fillet else None
    _require_own(joint, thickness, leg, own, rules)
    measure = thickness if leg is None else leg.value or 0.0
    crowned = joint != "outside-corner"
    return Preparation(
        process=process,
        metal=metal,
        joint=joint,
        thickness=thickness,
        gap=_or_own(own.gap, lambda: gap(process, joint, thickness)) if butt else None,
        angle=_or_own(own.angle, lambda: _angle(process, metal, thickness)) if v else None,
        root_face=_or_own(own.root_face, lambda: _root_face(process, thickness)) if v else None,
        leg=leg,
        cap=_or_own(own.cap, lambda: _cap(metal, joint, measure)) if crowned else None,
    )
