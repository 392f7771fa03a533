"""Heat colours as swatches, each with its name and its temperature beside it."""

from collections.abc import Sequence

from calc.declare import Picture
from calc.show.drawings import line, svg, words

ROW = 26.0


def drawing(
    rows: Sequence[tuple[str, str, str]], marked: Sequence[int], title: str, sentence: str
) -> Picture:
    """A column of swatches, some of them marked.

    Args:
        rows: Tint, name and temperature of each, as a reader sees them.
        marked: Places of the rows that a pointer shows.
        title: What it shows.
        sentence: What to take from it.

    Returns:
        The picture. A screen and an eye change a tint: the name and the figure count.

    Raises:
        ValueError: There is no row.
    """
    if not rows:
        raise ValueError("there is nothing to draw")
    body = ""
    for place, (tint, name, temperature) in enumerate(rows):
        top = 6 + ROW * place
        middle = top + ROW / 2 + 5
        if place in marked:
            body += f'<polygon points="2,{top + 5:.0f} 14,{top + 13:.0f} 2,{top + 21:.0f}" fill="currentColor"/>'
        body += (
            f'<rect x="20" y="{top + 2:.0f}" width="44" height="{ROW - 4:.0f}" fill="{tint}" '
            'stroke="currentColor" stroke-width="1"/>'
        )
        body += words(74, middle, name, size=14) + words(336, middle, temperature, anchor="end", size=14)
    height = 12 + ROW * len(rows)
    body += line(0, height - 1, 340, height - 1, width=1)
    return Picture(svg(340, height, title, sentence, body), title, sentence)
