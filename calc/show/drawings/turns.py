"""Benches through a session: who holds the torch when, on a line of time."""

from collections.abc import Sequence
from itertools import pairwise

from calc.declare import Picture
from calc.show.drawings import INK, at, line, mark, svg, words
from calc.show.drawings.hatching import hatched

WIDTH, LEFT, RIGHT = 344.0, 34.0, 340.0
TOP, ROW, THICK = 26.0, 26.0, 22.0
APART = 23.0


def drawing(
    title: str,
    length: float,
    turns: Sequence[tuple[int, str, float, float]],
    watch: tuple[float, float],
    parts: Sequence[tuple[float, str]],
) -> Picture:
    """Turns at each bench of a session.

    Args:
        title: What is shown.
        length: Of the session, min.
        turns: Bench, what stands in the box, start and end, min.
        watch: Start and end of the fire watch, min.
        parts: Where each part of the session begins, min, and what it is; first to last.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: The session has no length, or something stands outside it.

    Examples:
        >>> drawing("One", 90, [(1, "1", 10, 20)], (20, 80), [(0, "start"), (20, "watch")]).sentence
        'A box is a turn with the number of who holds the torch; the striped row is the fire watch.'
    """
    ends = [
        *watch,
        *(end for _, _, start, finish in turns for end in (start, finish)),
        *(p for p, _ in parts),
    ]
    if length <= 0 or not all(0 <= end <= length for end in ends):
        raise ValueError("a turn stands outside its session")
    benches = max(bench for bench, *_ in turns)
    scale = (RIGHT - LEFT) / length
    body = words(4, 18, "Bench")
    for bench in range(1, benches + 1):
        body += words(4, TOP + ROW * (bench - 1) + 17, str(bench), size=14)
    for bench, text, start, end in turns:
        x, y, wide = LEFT + start * scale, TOP + ROW * (bench - 1), (end - start) * scale
        body += f'<rect x="{at(x)}" y="{at(y)}" width="{at(wide)}" height="{at(THICK)}" {INK}/>'
        if wide >= 9 * len(text) + 2:
            body += words(x + wide / 2, y + 16, text, anchor="middle", size=14)
    last = TOP + ROW * benches
    x1, x2 = (LEFT + end * scale for end in watch)
    box = [(x1, last), (x2, last), (x2, last + THICK), (x1, last + THICK)]
    body += f'<rect x="{at(x1)}" y="{at(last)}" width="{at(x2 - x1)}" height="{at(THICK)}" {INK}/>'
    body += hatched(box, 9) + words(4, last + 17, "Fire", size=14)
    foot = last + ROW + 4
    body += line(LEFT, foot, RIGHT, foot)
    places = _apart([LEFT + start * scale for start, _ in parts])
    for number, ((start, text), place) in enumerate(zip(parts, places, strict=True), start=1):
        x = LEFT + start * scale
        body += line(x, TOP, x, foot, width=1, dash="2 4") + line(x, foot, place, foot + 10, width=1)
        body += mark(place, foot + 20, number) + words(
            4, foot + 56 + 20 * (number - 1), f"{number}  {text}", size=14
        )
    sentence = "A box is a turn with the number of who holds the torch; the striped row is the fire watch."
    height = foot + 56 + 20 * (len(parts) - 1) + 10
    return Picture(svg(WIDTH, height, title, sentence, body), title, sentence)


def _apart(places: Sequence[float]) -> list[float]:
    """Places moved along so that discs do not touch."""
    moved = list(places)
    for before, after in pairwise(range(len(moved))):
        moved[after] = max(moved[after], moved[before] + APART)
    limit = WIDTH - 12
    for number in reversed(range(len(moved))):
        moved[number] = min(moved[number], limit)
        limit = moved[number] - APART
    return moved
