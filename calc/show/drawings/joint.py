"""Joints of sheet in section, with the reader's figures."""

from calc.declare import Picture
from calc.quantities import Length
from calc.show.drawings import INK, arrow, at, finite, line, svg, words
from calc.show.numbers import plain_number
from calc.units import from_si

KINDS = {"outside-corner": "outside corner", "square-butt": "square butt"}
"""The joints that are drawn, and their names."""

SHEET = 28.0
"""Thickness as drawn; a gap is drawn in proportion to it."""

WIDEST_GAP = 3.0
"""In thicknesses: beyond it there is no joint to draw."""


def _hatched(x: float, y: float, width: float, height: float) -> str:
    lines = []
    for offset in range(10, int(width + height), 12):
        x1, y1 = x + min(offset, width), y + max(0.0, offset - width)
        x2, y2 = x + max(0.0, offset - height), y + min(offset, height)
        lines.append(line(x1, y1, x2, y2, width=1))
    return f'<rect x="{at(x)}" y="{at(y)}" width="{at(width)}" height="{at(height)}" {INK}/>' + "".join(
        lines
    )


def _told(length: float, rules: str) -> str:
    unit = "in" if rules == "us" else "mm"
    return f"{plain_number(from_si(length, unit), 3)} {unit}"


def _butt(opening: float, thickness: str, gap: str) -> str:
    left, right = 165 - opening / 2, 165 + opening / 2
    return (
        _hatched(20, 80, left - 20, SHEET)
        + _hatched(right, 80, 310 - right, SHEET)
        + arrow(36, 54, 36, 78)
        + arrow(36, 134, 36, 110)
        + words(20, 152, f"thickness {thickness}")
        + arrow(165, 46, 165, 78)
        + words(165, 38, f"gap {gap}", anchor="middle")
    )


def _corner(opening: float, thickness: str, gap: str) -> str:
    edge = 190 - opening
    return (
        _hatched(30, 60, edge - 30, SHEET)
        + _hatched(190, 60 + SHEET, SHEET, 110)
        + arrow(44, 34, 44, 58)
        + arrow(44, 114, 44, 90)
        + words(30, 134, f"thickness {thickness}")
        + arrow(230, 48, (edge + 190 + SHEET) / 2, 60 + SHEET - 4)
        + words(232, 40, "corner to fill", anchor="middle")
        + words(30, 190, f"gap {gap}")
    )


def drawing(kind: str, thickness: Length, gap: Length = 0.0, rules: str = "us") -> Picture:
    """A joint cut across, with thickness and gap in figures.

    Args:
        kind: `outside-corner` or `square-butt`.
        thickness: Thickness of the sheet, m.
        gap: Gap between the edges, m.
        rules: Rule set: inches in the United States, millimetres elsewhere.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: The kind is unknown, or a length cannot be drawn.

    Examples:
        >>> drawing("square-butt", 0.0015).sentence
        'A square butt of 0.0591 in sheet, the edges touching.'
    """
    if kind not in KINDS:
        raise ValueError(f"there is no drawing of a {kind!r} joint; there are {tuple(KINDS)}")
    if finite(thickness, "thickness") <= 0 or not 0 <= finite(gap, "gap") <= WIDEST_GAP * thickness:
        raise ValueError("the sheet has no thickness, or the gap is wider than can be drawn")
    told, open_by = _told(thickness, rules), _told(gap, rules)
    shown = {"square-butt": _butt, "outside-corner": _corner}[kind](
        SHEET * gap / thickness, told, open_by if gap else "none"
    )
    article = "An" if KINDS[kind][0] in "aeiou" else "A"
    edges = f"the edges {open_by} apart" if gap else "the edges touching"
    title = f"{KINDS[kind].capitalize()} in section"
    sentence = f"{article} {KINDS[kind]} of {told} sheet, {edges}."
    return Picture(svg(340, 206, title, sentence, shown), title, sentence)
