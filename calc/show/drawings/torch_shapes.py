"""Torch, rod, brick and sheet: the parts that drawings of the exercises share."""

import math
from collections.abc import Sequence

from calc.declare import Picture
from calc.show.drawings import INK, at, finite, svg, words
from calc.show.drawings.hatching import Point, hatched
from calc.values.quantities import Angle

WIDTH = 340.0
CONE, NOZZLE, TUBE = 18.0, 36.0, 66.0
"""Lengths along the axis, as drawn."""
FILLED = 'fill="currentColor" stroke="currentColor" stroke-width="1" stroke-linejoin="round"'
MELT = (
    'fill="currentColor" fill-opacity="0.35" stroke="currentColor" stroke-width="2" stroke-linejoin="round"'
)


def points(corners: Sequence[Point]) -> str:
    """Corners as SVG writes them."""
    return " ".join(f"{at(x)},{at(y)}" for x, y in corners)


def sheet(corners: Sequence[Point], step: float = 9.0) -> str:
    """A piece cut across, hatched."""
    return f'<polygon points="{points(corners)}" {INK}/>{hatched(corners, step)}'


def bar(x: float, y: float, width: float, height: float) -> str:
    """A sheet that lies flat, cut across."""
    return sheet([(x, y), (x + width, y), (x + width, y + height), (x, y + height)])


def box(x: float, y: float, width: float, height: float, text: str = "") -> str:
    """A brick or a shim, not hatched, with its name in it."""
    named = words(x + width / 2, y + height / 2 + 5, text, anchor="middle", size=14) if text else ""
    return (
        f'<rect x="{at(x)}" y="{at(y)}" width="{at(width)}" height="{at(height)}" {INK} stroke-dasharray="6 3"/>'
        + named
    )


def melt(path: str) -> str:
    """Molten metal or filler."""
    return f'<path d="{path}" {MELT}/>'


def curve(path: str, width: float = 2.0, dash: str = "") -> str:
    """An open line."""
    dashed = f' stroke-dasharray="{dash}"' if dash else ""
    return f'<path d="{path}" fill="none" stroke="currentColor" stroke-width="{at(width)}"{dashed}/>'


def torch(x: float, y: float, lean: Angle, off: float = 9.0, tube: float = TUBE) -> str:
    """A tip and its flame, pointed at a place.

    Args:
        x: Where the flame points, across.
        y: Where the flame points, down.
        lean: Direction from there back along the tip, rad, from the right upward.
        off: From the tip of the cone to that place, as drawn.
        tube: Length of the tube behind the tip, as drawn.
    """
    ux, uy = math.cos(finite(lean, "lean")), -math.sin(lean)

    def place(along: float, aside: float) -> Point:
        return x + along * ux - aside * uy, y + along * uy + aside * ux

    mouth, neck, end = off + CONE, off + CONE + NOZZLE, off + CONE + NOZZLE + tube
    cone = [place(off, 0), place(off + 6, 4), place(mouth, 4.5), place(mouth, -4.5), place(off + 6, -4)]
    tip = [
        place(mouth, 5),
        place(neck, 8),
        place(end, 8),
        place(end, -8),
        place(neck, -8),
        place(mouth, -5),
    ]
    flame = "".join(
        curve(f"M{at(a)} {at(b)}L{at(c)} {at(d)}", 1.2, "3 3")
        for side in (1, -1)
        for (a, b), (c, d) in [(place(mouth, 6 * side), place(2, 17 * side))]
    )
    return (
        flame + f'<polygon points="{points(cone)}" {FILLED}/><polygon points="{points(tip)}" '
        f'fill="var(--bb-paper, #fff)" stroke="currentColor" stroke-width="2" stroke-linejoin="round"/>'
    )


def rod(x: float, y: float, lean: Angle, long: float) -> str:
    """A rod whose end is at a place; `lean` as for a torch."""
    x2, y2 = x + long * math.cos(finite(lean, "lean")), y - long * math.sin(lean)
    return (
        f'<line x1="{at(x)}" y1="{at(y)}" x2="{at(x2)}" y2="{at(y2)}" stroke="currentColor" '
        'stroke-width="5" stroke-linecap="round"/>'
    )


def arc(x: float, y: float, radius: float, start: Angle, end: Angle) -> str:
    """Part of a circle between two directions, from the right upward."""
    x1, y1 = x + radius * math.cos(start), y - radius * math.sin(start)
    x2, y2 = x + radius * math.cos(end), y - radius * math.sin(end)
    return curve(f"M{at(x1)} {at(y1)}A{at(radius)} {at(radius)} 0 0 0 {at(x2)} {at(y2)}", 1.5)


def told(lines: Sequence[str], x: float, y: float, *, anchor: str = "start") -> str:
    """Text in lines."""
    return "".join(words(x, y + 20 * number, text, anchor=anchor) for number, text in enumerate(lines))


def picture(height: float, title: str, sentence: str, body: str) -> Picture:
    """A drawing of the usual width."""
    return Picture(svg(WIDTH, height, title, sentence, body), title, sentence)
