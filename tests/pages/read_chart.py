"""A chart of `calc.show.drawings.chart` read back: numbers of its axes, its curves, and places as numbers."""

from itertools import pairwise

import pytest

from tests.pages.svg_shapes import Point, Seen, Shape

LEFT, RIGHT, TOP, FLOOR = 52.0, 328.0, 14.0, 198.0
"""The plane between the axes: 340 by 240 less 52, 12, 14 and 42."""


def axis(seen: Seen, *, upward: bool) -> list[tuple[float, float]]:
    """Values of the ticks and where their strokes stand."""
    if upward:
        strokes = [
            p.points[0][1] for p in seen.of("path") if p.box[::2] == (LEFT, RIGHT) and "opacity" in p.said
        ]
        named = [w for w in seen.words if w.anchor == "end" and w.x == LEFT - 5]
        assert [w.y - 4 for w in named] == pytest.approx(strokes, abs=0.11)
    else:
        strokes = [p.points[0][0] for p in seen.of("path") if p.box[1::2] == (FLOOR, FLOOR + 4)]
        named = [w for w in seen.words if w.y == FLOOR + 16]
        assert all(w.anchor == "middle" for w in named)
        assert [w.x for w in named] == pytest.approx(strokes, abs=0.11)
    return [(float(word.text), place) for word, place in zip(named, strokes, strict=True)]


def read(seen: Seen, place: Point) -> tuple[float, float]:
    """A place as the numbers that the axes give it."""
    found = []
    for one, upward in zip(place, (False, True), strict=True):
        (a, at_a), *_, (b, at_b) = axis(seen, upward=upward)
        found.append(a + (one - at_a) / (at_b - at_a) * (b - a))
    return found[0], found[1]


def curves(seen: Seen) -> list[Shape]:
    return [
        p for p in seen.of("path") if p.said.get("stroke-width") == "2" and p.said.get("fill") == "none"
    ]


def height_at(curve: Shape, x: float) -> float:
    """Height of a curve at a place across, straight between its points."""
    for (x1, y1), (x2, y2) in pairwise(sorted(curve.points)):
        if x1 <= x <= x2 and x2 > x1:
            return y1 + (y2 - y1) * (x - x1) / (x2 - x1)
    raise AssertionError(f"the curve does not reach {x}")


def ring(seen: Seen) -> Point:
    """Middle of the ring that marks the reader's own point."""
    outer, inner = seen.of("circle")
    assert not outer.solid
    assert inner.solid
    return (outer.box[0] + outer.box[2]) / 2, (outer.box[1] + outer.box[3]) / 2


def limits(seen: Seen) -> tuple[list[float], list[float]]:
    """Numbers of the dotted lines: those that stand, and those that lie."""
    dotted = [p for p in seen.of("path") if p.said.get("stroke-dasharray") == "1 3"]
    standing = [read(seen, p.points[0])[0] for p in dotted if p.points[0][0] == p.points[1][0]]
    return standing, [read(seen, p.points[0])[1] for p in dotted if p.points[0][1] == p.points[1][1]]
