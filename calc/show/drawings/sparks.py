"""Sparks of iron and steel on a grinder, as the trade's texts describe them."""

from math import cos, radians, sin

from calc.declare import Picture
from calc.show.drawings import INK, at, line, svg, words

KINDS = {
    "long": "low-carbon steel: long, a few forks",
    "bursts": "hard carbon steel: white, many bursts",
    "red-bursts": "cast iron: short, red, fine bursts",
    "few-short": "stainless, nickel: few, orange",
    "none": "copper, brass, zinc, lead: none",
}
"""Kinds that are drawn, and whose they are."""
ROW = 104.0
_REACH = {"long": 250.0, "bursts": 190.0, "red-bursts": 95.0, "few-short": 150.0, "none": 0.0}
"""How far each stream is drawn: about as the printed lengths of 65 to 70, 55, 25 and 50 inches stand to each other."""
_ANGLES = {"long": (-8, -4, 0, 4, 8), "bursts": (-11, -6, -2, 3, 7, 11), "red-bursts": (-12, -4, 4, 12), "few-short": (-6, 4)}  # fmt: skip


def _star(x: float, y: float, points: int, size: float) -> str:
    return "".join(
        line(x, y, x + size * cos(radians(turn)), y + size * sin(radians(turn)), width=1)
        for turn in (360.0 * n / points + 20 for n in range(points))
    )


def _fork(x: float, y: float, slope: float) -> str:
    return "".join(
        line(x, y, x + 14 * cos(radians(slope + turn)), y + 14 * sin(radians(slope + turn)), width=1)
        for turn in (-24, 24)
    )


def _stream(kind: str, x: float, y: float) -> str:
    drawn = ""
    for place, slope in enumerate(_ANGLES.get(kind, ())):
        reach = _REACH[kind] * (0.8 + 0.2 * ((place * 3) % 5) / 4)
        x2, y2 = x + reach * cos(radians(slope)), y + reach * sin(radians(slope))
        drawn += line(x, y, x2, y2, width=1.5, dash="5 4" if kind == "red-bursts" else "")
        if kind == "long" and place % 2:
            drawn += _fork(x2, y2, slope)
        if kind == "bursts":
            drawn += _star(x2, y2, 7, 11) + _star((x + 2 * x2) / 3, (y + 2 * y2) / 3, 5, 8)
        if kind == "red-bursts":
            drawn += _star(x2, y2, 8, 5) + _star((x + 3 * x2) / 4, (y + 3 * y2) / 4, 6, 4)
    return drawn


def _wheel(x: float, y: float) -> str:
    return f'<path d="M{at(x - 16)} {at(y - 34)}A40 40 0 0 1 {at(x - 16)} {at(y + 34)}" {INK}/>'


def drawing() -> Picture:
    """The kinds of sparks, one under the other.

    Returns:
        The picture, its title and its sentence.

    Examples:
        >>> drawing().title
        'Sparks on a grinder'
    """
    body = ""
    for place, (kind, told) in enumerate(KINDS.items()):
        top = ROW * place
        middle = top + 64
        body += words(4, top + 18, told, size=14) + _wheel(30, middle) + _stream(kind, 38, middle)
    title = "Sparks on a grinder"
    sentence = (
        "The more carbon, the more bursts; the dashed lines are dull red. Compare with a piece you know."
    )
    return Picture(svg(340, ROW * len(KINDS), title, sentence, body), title, sentence)
