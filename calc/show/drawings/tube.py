"""A copper tube in the cup of its fitting, cut along the middle, to scale but for the gap."""

from calc.declare import Picture
from calc.show.drawings import INK, arrow, at, finite, line, svg, words
from calc.values.numbers import plain_number
from calc.values.quantities import Length
from calc.values.units import from_si

WIDTH, TALLEST, LONGEST = 340.0, 130.0, 150.0
MOUTH, TOP, GAP = 118.0, 74.0, 8.0
DEEPEST = 2.0
"""In outside diameters: beyond it there is no cup to draw."""


def _told(length: float, rules: str) -> str:
    unit = "in" if rules == "us" else "mm"
    return f"{plain_number(from_si(length, unit), 3)} {unit}"


def _outline(points: list[tuple[float, float]]) -> str:
    return f'<polygon points="{" ".join(f"{at(x)},{at(y)}" for x, y in points)}" {INK}/>'


def _hatched(x: float, y: float, width: float, height: float) -> str:
    """A strip of the tube's wall, cut."""
    strokes = [
        line(x + offset, y, x + max(0.0, offset - height), y + min(height, offset), width=1)
        for offset in range(6, int(width), 8)
    ]
    return f'<rect x="{at(x)}" y="{at(y)}" width="{at(width)}" height="{at(height)}" {INK}/>' + "".join(
        strokes
    )


def _half(outer: float, away: float, wall: float, depth: float, filled: float) -> str:
    """Tube wall, filler and fitting on one side; `away` is 1 downward from the middle, -1 upward."""
    end, bottom = MOUTH + depth + 46.0, MOUTH + depth
    fitting = max(wall, 6.0)
    gap_edge, skin, inside = outer + away * GAP, outer + away * (GAP + fitting), outer - away * wall
    return (
        _hatched(16.0, min(outer, inside), bottom - 16.0, wall)
        + f'<rect data-part="filler" x="{at(MOUTH)}" y="{at(min(outer, gap_edge))}" '
        f'width="{at(depth * filled)}" height="{at(GAP)}" fill="currentColor"/>'
        + _outline(
            [
                (MOUTH, skin),
                (end, skin),
                (end, inside),
                (bottom, inside),
                (bottom, gap_edge),
                (MOUTH, gap_edge),
            ]
        )
    )


def drawing(
    *, outside: Length, wall: Length, depth: Length, gap: Length, filled: float = 1.0, rules: str = "us"
) -> Picture:
    """A tube in its cup, with outside, wall, depth and gap in figures.

    Args:
        outside: Outside diameter of the tube, m.
        wall: Of the tube, m.
        depth: Of the cup, m.
        gap: Between tube and cup on each side, m.
        filled: Part of the depth that the filler reaches.
        rules: Rule set: inches in the United States, millimetres elsewhere.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: A length cannot be drawn.

    Examples:
        >>> drawing(outside=0.015875, wall=0.001016, depth=0.0127, gap=0.000127).sentence
        'A tube of 0.625 in goes 0.5 in into its cup: all to scale but the gap of 0.005 in, drawn 7.7 times as wide.'
    """
    for value, name in ((outside, "outside"), (wall, "wall"), (depth, "depth"), (gap, "gap")):
        if finite(value, name) <= 0:
            raise ValueError(f"{name} is nothing, which cannot be drawn")
    if (
        wall * 2 >= outside
        or depth > DEEPEST * outside * (1 + 1e-9)
        or not 0 < finite(filled, "filled") <= 1
    ):
        raise ValueError("such a tube and cup cannot be drawn")
    scale = min(TALLEST / outside, LONGEST / depth)
    tall, thick, deep = outside * scale, wall * scale, depth * scale
    low = TOP + tall
    middle, under = TOP + tall / 2, low + GAP + max(thick, 6.0)
    times = plain_number(GAP / (gap * scale), 2)
    shown = (
        _half(TOP, -1.0, thick, deep, filled)
        + _half(low, 1.0, thick, deep, filled)
        + words(16, 20, "filler goes in here")
        + arrow(92, 27, MOUTH - 3, TOP - GAP / 2)
        + arrow(MOUTH + deep / 2 + 30, under + 34, MOUTH + deep / 2 + 10, under + 4)
        + words(WIDTH - 6, under + 52, "flame first on the fitting, this side", anchor="end")
        + arrow(40, middle, 40, TOP + 1)
        + arrow(40, middle, 40, low - 1)
        + words(48, middle + 5, "outside")
        + arrow(MOUTH + deep / 2, middle - 4, MOUTH, middle - 4)
        + arrow(MOUTH + deep / 2, middle - 4, MOUTH + deep, middle - 4)
        + words(MOUTH + deep / 2, middle + 18, "depth", anchor="middle")
        + words(16, under + 80, f"outside {_told(outside, rules)}, wall {_told(wall, rules)}")
        + words(16, under + 102, f"depth of cup {_told(depth, rules)}")
        + words(16, under + 124, f"gap {_told(gap, rules)}, drawn {times} times")
    )
    title = "Tube and cup in section"
    sentence = (
        f"A tube of {_told(outside, rules)} goes {_told(depth, rules)} into its cup: all to scale but the gap of "
        f"{_told(gap, rules)}, drawn {times} times as wide."
    )
    desc = f"{sentence} The wall of the fitting is drawn like the tube's. The filler goes in on the side away from the flame."
    return Picture(svg(WIDTH, under + 134, title, desc, shown), title, sentence)
