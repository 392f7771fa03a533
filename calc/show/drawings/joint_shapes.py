"""Shapes of a joint in section: plates and weld metal as corners on the drawing, to scale."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import asin, cos, hypot, pi, sin, tan

from calc.show.drawings.hatching import Point

ROUND = 24
"""Straight pieces that stand in for an arc."""
BEAD = 3.0
"""Width of a bead on a square butt in thicknesses."""


@dataclass(frozen=True)
class Shapes:
    """What is drawn of a joint, in points of the drawing.

    Attributes:
        plates: Corners of each plate.
        weld: Corners of the weld metal; empty where there is none.
        spots: Places that labels point at, by name.
        bottom: Lowest point of plates and weld.
    """

    plates: Sequence[Sequence[Point]]
    weld: Sequence[Point]
    spots: dict[str, Point] = field(default_factory=dict)
    bottom: float = 0.0


def box(x: float, y: float, width: float, height: float) -> list[Point]:
    """Corners of a rectangle."""
    return [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]


FLAT = 1e-6
"""Height over chord below which an arc is a straight line."""


def arc(start: Point, end: Point, height: float) -> list[Point]:
    """Points of a circle's segment over a chord, both ends with it.

    Args:
        start: First end.
        end: Last end; the segment stands to the left of the way there, as the page is seen.
        height: Of the segment over the middle of the chord; one too flat to draw gives the chord.
    """
    (x1, y1), (x2, y2) = start, end
    chord = hypot(x2 - x1, y2 - y1)
    if height <= FLAT * chord:
        return [start, end]
    radius = (chord**2 / 4 + height**2) / (2 * height)
    along, out = ((x2 - x1) / chord, (y2 - y1) / chord), ((y2 - y1) / chord, -(x2 - x1) / chord)
    middle = ((x1 + x2) / 2, (y1 + y2) / 2)
    half = asin(min(1.0, chord / 2 / radius))
    half = pi - half if height > radius else half
    below = radius - height
    points = []
    for piece in range(ROUND + 1):
        turn = half * (2 * piece / ROUND - 1)
        side, up = radius * sin(turn), radius * cos(turn) - below
        points.append(
            (middle[0] + side * along[0] + up * out[0], middle[1] + side * along[1] + up * out[1])
        )
    return points


def square_butt(thick: float, gap: float, cap: float, top: float, middle: float = 165.0) -> Shapes:
    """Two square edges, a gap and a bead three thicknesses wide."""
    left, right, bottom = middle - gap / 2, middle + gap / 2, top + thick
    wide = max(gap, BEAD * thick) / 2 if cap > 0 else gap / 2
    weld = [
        (left, bottom), (left, top), *arc((middle - wide, top), (middle + wide, top), cap),
        (right, top), (right, bottom),
    ]  # fmt: skip
    return Shapes(
        [box(20, top, left - 20, thick), box(right, top, 310 - right, thick)], weld,
        {"gap": (middle, bottom), "cap": (middle, top - cap), "plate": (34, top)}, bottom,
    )  # fmt: skip


def single_v(
    *, thick: float, gap: float, angle: float, face: float, cap: float, top: float, middle: float = 165.0
) -> Shapes:
    """Two bevelled edges, a gap and a cap as wide as the V."""
    half, bottom = gap / 2, top + thick
    reach = half + (thick - face) * tan(angle / 2)
    left = [(20, top), (middle - reach, top), (middle - half, bottom - face), (middle - half, bottom), (20, bottom)]  # fmt: skip
    right = [(310, top), (middle + reach, top), (middle + half, bottom - face), (middle + half, bottom), (310, bottom)]  # fmt: skip
    weld = [
        (middle - half, bottom), (middle - half, bottom - face),
        *arc((middle - reach, top), (middle + reach, top), cap),
        (middle + half, bottom - face), (middle + half, bottom),
    ]  # fmt: skip
    return Shapes(
        [left, right], weld,
        {
            "gap": (middle, bottom), "cap": (middle, top - cap), "plate": (34, top),
            "face": (middle + half, bottom - face / 2),
            "bevel": (middle - (half + reach) / 2, top + (thick - face) / 2),
        },
        bottom,
    )  # fmt: skip


def outside_corner(thick: float, gap: float, top: float, edge: float = 190.0) -> Shapes:
    """A flat and a standing sheet that meet at their inner corners, filled round."""
    inner, bottom = top + thick, top + thick + 110
    quarter = [pi / 2 * piece / ROUND for piece in range(ROUND + 1)]
    weld = [
        (edge, inner), (edge - gap, inner), (edge - gap, top),
        *((edge + thick * sin(turn), inner - thick * cos(turn)) for turn in quarter),
    ]  # fmt: skip
    root = 0.5**0.5 * thick
    return Shapes(
        [box(30, top, edge - gap - 30, thick), box(edge, inner, thick, 110)], weld,
        {"face": (edge + root, inner - root), "plate": (44, top)}, bottom,
    )  # fmt: skip


def lap(thick: float, leg: float, cap: float, top: float) -> Shapes:
    """Two plates one on the other, a fillet at the edge of the upper one."""
    edge, seat, bottom = 190.0, top + thick, top + 2 * thick
    return Shapes(
        [box(20, top, edge - 20, thick), box(110, seat, 200, thick)],
        [(edge, seat), *arc((edge, seat - leg), (edge + leg, seat), cap)],
        {"face": (edge + leg / 2, seat - leg / 2), "root": (edge, seat), "plate": (34, top)}, bottom,
    )  # fmt: skip


def tee(thick: float, leg: float, cap: float, top: float, middle: float = 100.0) -> Shapes:
    """A plate standing on another, one fillet of the two."""
    side, seat = middle + thick / 2, top + 120
    return Shapes(
        [box(side - thick, top, thick, 120), box(20, seat, 290, thick)],
        [(side, seat), *arc((side, seat - leg), (side + leg, seat), cap)],
        {"face": (side + leg / 2, seat - leg / 2), "root": (side, seat), "plate": (side - thick, top)},
        seat + thick,
    )  # fmt: skip


def edge(thick: float, cap: float, top: float, middle: float = 130.0) -> Shapes:
    """Two sheets side by side, a crown over both edges."""
    return Shapes(
        [box(middle - thick, top, thick, 110), box(middle, top, thick, 110)],
        arc((middle - thick, top), (middle + thick, top), cap) if cap > 0 else [],
        {"cap": (middle, top - cap), "plate": (middle - thick, top)}, top + 110,
    )  # fmt: skip
