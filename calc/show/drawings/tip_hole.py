"""Holes of tips and drills beside each other, all to one scale."""

from calc.declare import Picture
from calc.show.drawings import at, finite, svg, words
from calc.values.numbers import plain_number
from calc.values.quantities import Length
from calc.values.units import from_si, to_si

WIDTH, MIDDLE = 344.0, 66.0
WIDEST = 78.0
"""The widest circle, in units of the drawing."""
TIMES = (200, 150, 100, 80, 60, 50, 40, 30, 25, 20, 15, 12, 10, 8, 6, 5, 4, 3, 2, 1)
"""Enlargements to choose from, the largest first."""
IN_AN_INCH = 96.0
"""Units of the drawing in an inch, at its own size."""

PLAIN = 'fill="none" stroke="currentColor" stroke-width="1.5"'
LOOKS = {
    "drill": PLAIN,
    "wanted": 'fill="currentColor" stroke="currentColor" stroke-width="1.5"',
    "yours": f'{PLAIN} stroke-dasharray="4 3"',
}
"""Look of a circle: an outline, solid, or dashed."""


def _wide(diameter: Length, times: float) -> float:
    return times * from_si(diameter, "in") * IN_AN_INCH


def enlargement(widest: Length) -> int:
    """How many times its size a hole is drawn, so that it fills its place.

    Args:
        widest: Of the holes that are drawn, m.

    Raises:
        ValueError: The hole is too wide to be drawn at all.

    Examples:
        >>> enlargement(0.001), enlargement(0.004)
        (20, 5)
    """
    for times in TIMES:
        if _wide(widest, times) <= WIDEST:
            return times
    raise ValueError("the hole is too wide to be drawn")


def drawing(
    hole: Length,
    smaller: tuple[str, Length] | None = None,
    larger: tuple[str, Length] | None = None,
    yours: Length | None = None,
    rules: str = "us",
) -> Picture:
    """The hole of a tip between the two drills next to it, and the reader's own.

    Args:
        hole: Diameter of the hole, m.
        smaller: Name and diameter of the drill next below, or None.
        larger: Likewise of the drill next above.
        yours: Hole of a tip that the reader has, m, or None.
        rules: Rule set: inches in the United States, millimetres elsewhere.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: A hole is nothing, no number, or too wide to be drawn.

    Examples:
        >>> drawing(0.001).sentence
        'All are drawn about 20 times as large: the solid one is the hole to start from.'
    """
    unit, digits = ("in", 3) if rules == "us" else ("mm", 3)
    shown = [
        *([("drill", smaller[0], smaller[1])] if smaller else []),
        ("wanted", "start here", hole),
        *([("drill", larger[0], larger[1])] if larger else []),
        *([("yours", "yours", yours)] if yours is not None else []),
    ]
    if min(finite(diameter, name) for _, name, diameter in shown) <= 0:
        raise ValueError("a hole that is drawn must be wider than nothing")
    times = enlargement(max(diameter for *_, diameter in shown))
    place = WIDTH / len(shown)
    body = ""
    for number, (look, name, diameter) in enumerate(shown):
        x = place * (number + 0.5)
        body += (
            f'<circle cx="{at(x)}" cy="{at(MIDDLE)}" r="{at(_wide(diameter, times) / 2)}" {LOOKS[look]}/>'
        )
        told = f"{plain_number(from_si(diameter, unit), digits)} {unit}"
        body += words(x, 128, name, anchor="middle", size=15) + words(
            x, 148, told, anchor="middle", size=14
        )
    length = to_si(1.0, "mm")
    bar = _wide(length, times)
    body += (
        f'<path d="M{at(WIDTH / 2 - bar / 2)} 164v8h{at(bar)}v-8" fill="none" stroke="currentColor" '
        'stroke-width="1.5"/>' + words(WIDTH / 2, 190, "1 mm (0.039 in)", anchor="middle", size=14)
    )
    title = "The hole beside its neighbors"
    sentence = f"All are drawn about {times} times as large: the solid one is the hole to start from."
    if yours is not None:
        sentence = f"{sentence.removesuffix('.')}, the dashed one is yours."
    return Picture(svg(WIDTH, 200, title, sentence, body), title, sentence)
