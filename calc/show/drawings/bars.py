"""Bars on their sides, each of a few parts: told apart by solid, striped and hollow."""

from collections.abc import Sequence
from dataclasses import dataclass

from calc.declare import Picture
from calc.show.drawings import at, finite, svg, words

WIDTH, LEFT = 344.0, 4.0
_ROW, _THICK = 48.0, 18.0


@dataclass(frozen=True, slots=True)
class Bar:
    """One bar: its label, the text at its right, its parts in one common unit."""

    label: str
    said: str
    parts: tuple[float, ...]


def _box(x: float, y: float, width: float, part: int) -> str:
    outline = 'stroke="currentColor" stroke-width="1.5"'
    box = f'<rect x="{at(x)}" y="{at(y)}" width="{at(width)}" height="{at(_THICK)}" {outline} '
    if part == 0:
        return box + 'fill="currentColor"/>'
    if part == 1:
        return box + 'fill="none"/>'
    lines = "".join(
        f"M{at(x + 5 + 7 * i)} {at(y)}v{at(_THICK)}" for i in range(int((width + 2) // 7))
    )
    return box + f'fill="none"/><path d="{lines}" {outline} fill="none"/>'


def drawing(title: str, sentence: str, parts: Sequence[str], bars: Sequence[Bar]) -> Picture:
    """Bars under each other, with a key of their parts.

    Args:
        title: What is compared.
        sentence: What to take from it.
        parts: One to three words, for the solid, the hollow and the striped part.
        bars: One for each thing compared; parts at least 0, one of all above 0.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: A part is negative or no number, or nothing is above 0.

    Examples:
        >>> drawing("Two", "One is longer.", ["heat"], [Bar("a", "1", (1.0,)), Bar("b", "2", (2.0,))]).title
        'Two'
    """
    longest = max(sum(finite(part, bar.label) for part in bar.parts) for bar in bars)
    if longest <= 0 or any(part < 0 for bar in bars for part in bar.parts):
        raise ValueError("bars are drawn of parts that are 0 or more, with one of all above 0")
    body, x = "", LEFT
    for number, name in enumerate(parts):
        body += _box(x, 6, 18, number) + words(x + 24, 20, name, size=14)
        x += 24 + 8 * len(name) + 16
    for row, bar in enumerate(bars):
        y = 44 + _ROW * row
        body += words(LEFT, y + 8, bar.label, size=14)
        body += words(WIDTH - LEFT, y + 8, bar.said, anchor="end", size=14)
        x = LEFT
        for number, part in enumerate(bar.parts):
            width = part / longest * (WIDTH - 2 * LEFT)
            if width >= 0.5:
                body += _box(x, y + 14, width, number)
            x += width
    return Picture(svg(WIDTH, 44 + _ROW * len(bars), title, sentence, body), title, sentence)
