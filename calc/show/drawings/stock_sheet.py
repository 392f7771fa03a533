"""A stock sheet and the strips of pieces that are cut from it, to scale."""

from collections.abc import Sequence
from dataclasses import dataclass

from calc.declare import Picture
from calc.show.drawings import INK, at, finite, svg, words
from calc.show.drawings.hatching import hatched
from calc.values.quantities import Length

WIDTH, EDGE = 344.0, 4.0
LETTERS = "ABCDEFGH"
_LEANS: tuple[tuple[int, ...], ...] = ((), (1,), (-1,), (1, -1))


@dataclass(frozen=True, slots=True)
class Drawn:
    """A strip of like pieces.

    Attributes:
        kind: Number of their kind, from 0.
        pieces: Left, lower edge, width and height of each, m.
    """

    kind: int
    pieces: tuple[tuple[Length, Length, Length, Length], ...]


def drawing(
    *, title: str, sentence: str, width: Length, height: Length, strips: Sequence[Drawn], key: Sequence[str]
) -> Picture:
    """A sheet with its strips, each kind with a letter and a hatching of its own.

    Args:
        title: Which sheet it is.
        sentence: What to take from it.
        width: Longer side of the sheet, m.
        height: Its shorter side, m.
        strips: What is cut from it.
        key: What each kind is, in the order of their numbers.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: The sheet has no size, or there are more kinds than letters.

    Examples:
        >>> drawing(title="Sheet", sentence="One piece.", width=1.0, height=0.5, strips=[Drawn(0, ((0, 0, 0.1, 0.2),))], key=["Lap"]).title
        'Sheet'
    """
    if min(finite(width, "width"), finite(height, "height")) <= 0 or len(key) > len(LETTERS):
        raise ValueError("there is no such sheet to draw")
    scale = (WIDTH - 2 * EDGE) / width
    tall = height * scale
    body = f'<rect x="{at(EDGE)}" y="{at(EDGE)}" width="{at(width * scale)}" height="{at(tall)}" {INK}/>'
    edges = ""
    for strip in strips:
        boxes = [
            (EDGE + x * scale, EDGE + tall - (y + high) * scale, wide * scale, high * scale)
            for x, y, wide, high in strip.pieces
        ]
        edges += "".join(f"M{at(x)} {at(y)}h{at(w)}v{at(h)}h{at(-w)}z" for x, y, w, h in boxes)
        body += _filled(strip.kind, boxes)
    body += f'<path d="{edges}" fill="none" stroke="currentColor" stroke-width="1"/>'
    for number, text in enumerate(key):
        y = EDGE + tall + 14 + 24 * number
        body += f'<rect x="{at(EDGE)}" y="{at(y)}" width="28" height="18" {INK}/>'
        body += _hatching(number, EDGE, y, 28, 18)
        body += words(EDGE + 36, y + 14, f"{LETTERS[number]}  {text}", size=14)
    return Picture(svg(WIDTH, EDGE + tall + 14 + 24 * len(key) + 4, title, sentence, body), title, sentence)


def _hatching(kind: int, x: float, y: float, wide: float, high: float) -> str:
    shape = [(x, y), (x + wide, y), (x + wide, y + high), (x, y + high)]
    return "".join(hatched(shape, 10, lean=lean) for lean in _LEANS[kind % len(_LEANS)])


def _filled(kind: int, boxes: Sequence[tuple[float, float, float, float]]) -> str:
    """Hatching of a whole strip, and its letter where there is room for one."""
    left, top = min(x for x, *_ in boxes), min(y for _, y, *_ in boxes)
    right, foot = max(x + w for x, _, w, _ in boxes), max(y + h for _, y, _, h in boxes)
    drawn = _hatching(kind, left, top, right - left, foot - top)
    if min(right - left, foot - top) < 15:
        return drawn
    x, y = (left + right) / 2, (top + foot) / 2
    paper = f'<rect x="{at(x - 7)}" y="{at(y - 7)}" width="14" height="14" fill="var(--bb-paper, #fff)"/>'
    return drawn + paper + words(x, y + 5, LETTERS[kind], anchor="middle", size=14)
