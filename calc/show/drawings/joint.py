"""Joints in section, to scale, with the reader's figures."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import pi, tan

from calc.declare import Picture
from calc.show.drawings import INK, arrow, finite, line, svg, words
from calc.show.drawings import joint_shapes as shapes
from calc.show.drawings.hatching import Point, hatched
from calc.show.drawings.joint_shapes import Shapes
from calc.values.numbers import plain_number
from calc.values.quantities import Angle, Length
from calc.values.units import from_si

KINDS = {
    "outside-corner": "outside corner",
    "square-butt": "square butt",
    "single-v": "single V",
    "lap": "lap",
    "tee": "tee",
    "edge": "edge joint",
}
"""The joints that are drawn, and their names."""
WELDS = ("", "rod", "fused")
"""Whether weld metal is drawn: none, from the rod, or edges fused without any."""

SHEET = 32.0
"""Thickness as drawn; everything else is drawn in proportion to it."""
PLATE = 60.0
"""Thickness of a plate with a V, as drawn."""
WIDEST_V = 190.0

WIDEST_GAP = 3.0
"""In thicknesses: beyond it there is no joint to draw."""
NARROWEST_ANGLE, WIDEST_ANGLE = pi / 12, 2.2


@dataclass(frozen=True, slots=True)
class _Asked:
    """What a drawing is made from: lengths of the joint, points for a metre, label texts."""

    given: dict[str, float]
    scale: float
    told: dict[str, str]
    weld: str

    def drawn(self, name: str) -> float:
        """A length of the joint as drawn."""
        return self.given[name] * self.scale


@dataclass(frozen=True, slots=True)
class _Drawn:
    """Shapes of a joint, their labels, and the height of the whole."""

    shape: Shapes
    labels: str
    height: float


def _told(length: float, rules: str) -> str:
    unit, places = ("in", 4) if rules == "us" else ("mm", 3)
    return f"{plain_number(round(from_si(length, unit), places), 3)} {unit}"


def _before(text: str) -> float:
    """Where an arrow begins to the left of a text that ends at 320."""
    return 314 - 9.0 * len(text)


def _outline(corners: Sequence[Point], part: str) -> str:
    points = " ".join(f"{x:.6g},{y:.6g}" for x, y in corners)
    return f'<polygon data-part="{part}" points="{points}" {INK}/>'


def _plate(corners: Sequence[Point]) -> str:
    return _outline(corners, "plate") + hatched(corners, 12)


def _weld(corners: Sequence[Point]) -> str:
    return _outline(corners, "weld") + hatched(corners, 5, lean=-1) if len(corners) > 2 else ""


def _thickness_arrows(at: Point, thick: float) -> str:
    x, y = at
    return arrow(x, y - 24, x, y - 2) + arrow(x, y + thick + 24, x, y + thick + 2)


def _above(shape: Shapes, thick: float, asked: _Asked) -> str:
    """Thickness on the left and cap on the right, both over the plates."""
    (x, y), told = shape.spots["cap"], asked.told
    parts = words(20, 20, f"thickness {told['thickness']}") + _thickness_arrows(shape.spots["plate"], thick)
    if asked.weld == "rod" and "cap" in told:
        parts += words(320, 20, f"cap {told['cap']}", anchor="end") + arrow(240, 28, x + 6, y - 2)
    return parts


def _gap_below(shape: Shapes, told: dict[str, str]) -> str:
    x, y = shape.spots["gap"]
    return arrow(x, y + 30, x, y + 3) + words(x, y + 46, told["gap"], anchor="middle")


def _square_butt(asked: _Asked) -> _Drawn:
    told = asked.told
    cap = asked.drawn("cap")
    shape = shapes.square_butt(SHEET, asked.drawn("gap"), cap, 62 + cap)
    return _Drawn(shape, _above(shape, SHEET, asked) + _gap_below(shape, told), shape.bottom + 56)


def _single_v(asked: _Asked) -> _Drawn:
    told = asked.told
    thick, cap = asked.drawn("thickness"), asked.drawn("cap")
    shape = shapes.single_v(
        thick=thick,
        gap=asked.drawn("gap"),
        angle=asked.given["angle"],
        face=asked.drawn("root_face"),
        cap=cap,
        top=86 + cap,
    )
    (bx, by), (fx, fy), (gx, gy) = (shape.spots[name] for name in ("bevel", "face", "gap"))
    low = shape.bottom
    labels = (
        _above(shape, thick, asked)
        + words(20, 44, told["bevel"])
        + arrow(96, 50, bx, by)
        + words(20, low + 44, told["gap"])
        + arrow(min(118.0, 26 + 9.0 * len(told["gap"])), low + 28, gx - 3, gy + 2)
        + words(320, low + 44, told["face"], anchor="end")
        + arrow(240, low + 28, fx + 2, fy + 2)
    )
    return _Drawn(shape, labels, low + 56)


def _outside_corner(asked: _Asked) -> _Drawn:
    told = asked.told
    shape = shapes.outside_corner(SHEET, asked.drawn("gap"), 60)
    x, y = shape.spots["face"]
    said = {"": "corner to fill", "rod": "filled round", "fused": "fused, no rod"}[asked.weld]
    arc = "" if asked.weld == "rod" else _dashed_arc(shape)
    labels = (
        words(30, 22, f"thickness {told['thickness']}")
        + _thickness_arrows(shape.spots["plate"], SHEET)
        + words(320, 46, said, anchor="end")
        + arrow(262, 54, x + 3, y - 3)
        + words(30, 190, told["gap"])
        + arc
    )
    return _Drawn(shape, labels, shape.bottom + 8)


def _dashed_arc(shape: Shapes) -> str:
    points = shape.weld[-shapes.ROUND - 1 :: 4]
    return "".join(line(*a, *b, width=1.5, dash="3 3") for a, b in pairwise(points))


def _throat(shape: Shapes) -> str:
    (x1, y1), (x2, y2) = shape.spots["root"], shape.spots["face"]
    return line(x1, y1, x2, y2, width=1.5, dash="4 3")


def _lap(asked: _Asked) -> _Drawn:
    told = asked.told
    leg, cap = asked.drawn("leg"), asked.drawn("cap")
    shape = shapes.lap(SHEET, leg, cap, 62)
    (x, y), (rx, ry) = shape.spots["face"], shape.spots["root"]
    labels = (
        words(20, 20, f"thickness {told['thickness']}")
        + _thickness_arrows(shape.spots["plate"], SHEET)
        + words(320, 44, told["leg"], anchor="end")
        + arrow(262, 52, x + 4, y - 4)
        + words(20, shape.bottom + 34, told["throat"])
        + arrow(96, shape.bottom + 18, rx - 2, ry + 2)
        + _throat(shape)
    )
    return _Drawn(shape, labels, shape.bottom + 46)


def _tee(asked: _Asked) -> _Drawn:
    told = asked.told
    leg, cap = asked.drawn("leg"), asked.drawn("cap")
    shape = shapes.tee(SHEET, leg, cap, 20)
    (x, y), (rx, ry), (px, py) = (shape.spots[name] for name in ("face", "root", "plate"))
    labels = (
        arrow(px - 26, py + 16, px - 2, py + 16)
        + arrow(px + SHEET + 26, py + 16, px + SHEET + 2, py + 16)
        + words(px + SHEET + 34, py + 22, f"thickness {told['thickness']}")
        + words(320, 74, told["leg"], anchor="end")
        + arrow(_before(told["leg"]), 78, x + 4, y - 4)
        + words(320, 216, told["throat"], anchor="end")
        + arrow(206, 200, rx + 2, ry + 2)
        + words(20, 216, "one side drawn")
        + _throat(shape)
    )
    return _Drawn(shape, labels, 228)


def _edge(asked: _Asked) -> _Drawn:
    told = asked.told
    cap = asked.drawn("cap")
    shape = shapes.edge(SHEET, cap, 48 + cap)
    (x, y), (px, py) = shape.spots["cap"], shape.spots["plate"]
    said = {"": "edges to fuse", "rod": f"cap {told.get('cap', '')}", "fused": "fused, no rod"}[asked.weld]
    level = py + 60
    labels = (
        words(320, 34, said, anchor="end")
        + arrow(_before(said), 34, x + 6, y - 3)
        + arrow(px - 26, level, px - 2, level)
        + arrow(px + 2 * SHEET + 26, level, px + 2 * SHEET + 2, level)
        + words(px + 2 * SHEET + 34, level - 6, "two of")
        + words(px + 2 * SHEET + 34, level + 16, told["thickness"])
    )
    return _Drawn(shape, labels, shape.bottom + 8)


_KINDS = {
    "square-butt": _square_butt,
    "single-v": _single_v,
    "outside-corner": _outside_corner,
    "lap": _lap,
    "tee": _tee,
    "edge": _edge,
}


def drawing(
    kind: str,
    thickness: Length,
    gap: Length = 0.0,
    rules: str = "us",
    *,
    angle: Angle = pi / 3,
    root_face: Length = 0.0,
    leg: Length = 0.0,
    cap: Length = 0.0,
    weld: str = "",
) -> Picture:
    """A joint cut across, to scale, with its figures.

    Args:
        kind: One of `KINDS`.
        thickness: Thickness of the sheet or plate, m.
        gap: Gap between the edges of a butt or a corner, m.
        rules: Rule set: inches in the United States, millimetres elsewhere.
        angle: Between the bevels of a single V, rad.
        root_face: Height left square at the root of a single V, m.
        leg: Of a fillet, m; 0 takes the thickness.
        cap: Height of the cap, or of a full fillet over its flat face, m.
        weld: One of `WELDS`.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: The kind is unknown, or a length cannot be drawn.

    Examples:
        >>> drawing("square-butt", 0.0015).sentence
        'A square butt of 0.0591 in sheet, the edges touching.'
    """
    if kind not in KINDS or weld not in WELDS:
        raise ValueError(f"there is no drawing of a {kind!r} joint with {weld!r}; there are {tuple(KINDS)}")
    if finite(thickness, "thickness") <= 0 or not 0 <= finite(gap, "gap") <= WIDEST_GAP * thickness:
        raise ValueError("the sheet has no thickness, or the gap is wider than can be drawn")
    leg = leg or thickness
    most_leg = {"tee": 2.0}.get(kind, 1.0) * thickness
    if not 0 < finite(leg, "leg") <= most_leg * 1.001:
        raise ValueError("the leg is too long to be drawn")
    if not 0 <= finite(cap, "cap") <= 0.501 * max(thickness, leg):
        raise ValueError("the cap is too high to be drawn")
    if not 0 <= finite(root_face, "root face") < thickness:
        raise ValueError("the root face leaves no bevel")
    if kind == "single-v" and not NARROWEST_ANGLE <= finite(angle, "angle") <= WIDEST_ANGLE:
        raise ValueError("the V is too narrow or too wide to be drawn")
    given = {
        "thickness": thickness, "gap": gap, "angle": angle, "root_face": root_face, "leg": leg,
        "cap": cap if weld == "rod" else 0.0,
    }  # fmt: skip
    scale = _scale(kind, given)
    told = _labels(given, rules)
    drawn = _KINDS[kind](_Asked(given, scale, told, weld))
    metal = _weld(drawn.shape.weld) if weld == "rod" else ""
    body = "".join(map(_plate, drawn.shape.plates)) + metal + drawn.labels
    title = f"{KINDS[kind][0].upper()}{KINDS[kind][1:]} in section"
    sentence = _sentence(kind, given, told, weld)
    return Picture(svg(340, drawn.height, title, sentence, body), title, sentence)


def _scale(kind: str, given: dict[str, float]) -> float:
    """Points of the drawing for a metre."""
    thickness = given["thickness"]
    if kind != "single-v":
        return SHEET / thickness
    wide = given["gap"] + 2 * (thickness - given["root_face"]) * tan(given["angle"] / 2)
    return min(PLATE / thickness, WIDEST_V / wide)


def _labels(given: dict[str, float], rules: str) -> dict[str, str]:
    each = plain_number(from_si(given["angle"], "deg") / 2, 3)
    told = {
        "thickness": _told(given["thickness"], rules),
        "gap": f"gap {_told(given['gap'], rules)}" if given["gap"] else "edges touching",
        "bevel": f"bevel {each}° each side",
        "face": f"face {_told(given['root_face'], rules)}" if given["root_face"] else "no root face",
        "leg": f"leg {_told(given['leg'], rules)}",
        "throat": f"throat {_told(given['leg'] * 0.5**0.5, rules)}",
    }
    if given["cap"]:
        told["cap"] = _told(given["cap"], rules)
    return told


def _sentence(kind: str, given: dict[str, float], told: dict[str, str], weld: str) -> str:
    name = KINDS[kind]
    article = "An" if name[0] in "aeiou" else "A"
    gap = told["gap"].removeprefix("gap ")
    apart = f"the edges {gap} apart" if given["gap"] else "the edges touching"
    if kind == "single-v":
        between = plain_number(from_si(given["angle"], "deg"), 3)
        more = f"{between}° between the bevels, {told['face'].replace('face', 'root face', 1)}, {apart}"
        more = more.replace("no root root face", "no root face")
    elif kind in ("lap", "tee"):
        more = f"one fillet, {told['leg']}, {told['throat']}"
    elif kind == "edge":
        more = "the edges flush"
    else:
        more = apart
    end = {"": "", "rod": "; the close hatching is metal from the rod", "fused": "; the edges are melted together without rod"}[weld]  # fmt: skip
    return f"{article} {name} of {told['thickness']} sheet, {more}{end}."
