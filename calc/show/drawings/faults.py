"""Faults of a bead: the joint cut across, and where to look."""

from calc.declare import Picture
from calc.show.drawings import INK, arrow, at, svg, words

FAULTS = {
    "undercut": "Undercut",
    "overlap": "Overlap (cold lap)",
    "excess": "Too high a cap",
    "underfill": "Underfill",
    "burn-through": "Burn-through",
    "lack-of-fusion": "Lack of fusion",
    "crater-crack": "Crater crack",
    "porosity": "Porosity",
    "misalignment": "Misalignment",
}
"""Faults that are drawn, and their names."""
_SAYS = {
    "undercut": "A groove runs along the edge of the bead.",
    "overlap": "The bead lies over the edge of the plate without having melted into it.",
    "excess": "The cap stands high, its sides steep.",
    "underfill": "The face lies lower than the plate.",
    "burn-through": "The bead is gone, a hole is left and drops hang below.",
    "lack-of-fusion": "A line is left between bead and plate where neither melted.",
    "crater-crack": "A crack runs from the dip where the bead ends.",
    "porosity": "Bubbles are shut in the bead.",
    "misalignment": "One plate stands higher than the other.",
}
_LEFT, _RIGHT = "M5 36L55 36L68 62L5 62Z", "M145 36L95 36L82 62L145 62Z"
"""The plates, melted back to the edge of the bead."""
_COLD_LEFT, _COLD_RIGHT = "M5 36L60 36L68 62L5 62Z", "M145 36L90 36L82 62L145 62Z"
"""The plates where their edges stayed cold."""
_BEAD = "M55 36Q75 20 95 36L82 62Q75 70 68 62Z"
CELL_WIDTH, CELL_HEIGHT = 150.0, 84.0
_ARROWS = {
    "undercut": (49, 16, 51, 39), "overlap": (20, 14, 38, 31), "excess": (30, 8, 56, 12), "underfill": (75, 16, 75, 43),
    "burn-through": (75, 12, 75, 44), "lack-of-fusion": (116, 16, 92, 42), "crater-crack": (104, 8, 78, 34),
    "porosity": (104, 12, 78, 44), "misalignment": (118, 18, 118, 44),
}  # fmt: skip
"""Where the arrow of each fault starts and where it points."""
_FIXED = ' vector-effect="non-scaling-stroke"'


def _outline(path: str, extra: str = "") -> str:
    return f'<path d="{path}" {INK}{_FIXED}{extra}/>'


def _filled(path: str) -> str:
    return (
        f'<path d="{path}" fill="currentColor" fill-opacity="0.25" stroke="currentColor" stroke-width="2"'
        f' stroke-linejoin="round"{_FIXED}/>'
    )


def _plates(left: str = _LEFT, right: str = _RIGHT) -> str:
    return _outline(left) + _outline(right)


def _bubble(x: float, y: float, radius: float) -> str:
    return (
        f'<circle cx="{at(x)}" cy="{at(y)}" r="{at(radius)}" fill="var(--bb-paper, #fff)" stroke="currentColor" '
        f'stroke-width="2"{_FIXED}/>'
    )


_DRAWN = {
    "undercut": _plates("M5 36L44 36Q50 50 60 39L68 62L5 62Z") + _filled("M60 39Q76 22 95 36L82 62Q75 70 68 62Z"),
    "overlap": _plates(_COLD_LEFT) + _filled("M60 36L38 36Q33 28 45 25Q75 10 95 36L82 62Q75 70 68 62Z"),
    "excess": _plates() + _filled("M55 36C56 0 94 0 95 36L82 62Q75 70 68 62Z"),
    "underfill": _plates() + _filled("M55 36Q75 56 95 36L82 62Q75 70 68 62Z"),
    "burn-through": _outline("M5 36L54 36Q66 40 64 54Q66 74 58 78Q50 74 54 62L5 62Z")
    + _outline("M145 36L96 36Q84 40 86 54Q84 74 92 78Q100 74 96 62L145 62Z"),
    "lack-of-fusion": _plates(right="M145 36L94 36L83 62L145 62Z")
    + _filled("M55 36Q74 20 90 34L79 62Q74 69 68 62Z"),
    "crater-crack": _plates()
    + _filled("M55 36Q65 28 75 33Q85 28 95 36L82 62Q75 70 68 62Z")
    + _outline("M75 33L71 40L78 46L73 55"),
    "porosity": _plates()
    + _filled(_BEAD)
    + "".join(_bubble(x, y, r) for x, y, r in ((68, 36, 3), (80, 34, 2.5), (74, 46, 4), (83, 48, 2.5), (72, 57, 2.5))),
    "misalignment": _plates(right="M145 46L98 46L84 72L145 72Z") + _filled("M55 36Q78 24 98 46L84 72Q76 72 68 62Z"),
}  # fmt: skip


def _cell(fault: str, x: float, y: float, scale: float) -> str:
    x1, y1, x2, y2 = ((n * scale + off) for n, off in zip(_ARROWS[fault], (x, y, x, y), strict=True))
    moved = f'<g transform="translate({at(x)} {at(y)}) scale({at(scale)})">{_DRAWN[fault]}</g>'
    return moved + arrow(x1, y1, x2, y2)


def drawing(fault: str = "all") -> Picture:
    """One fault in section, or all of them side by side.

    Args:
        fault: One of `FAULTS`, or `all`.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: No such fault is drawn.

    Examples:
        >>> drawing("undercut").sentence
        'A groove runs along the edge of the bead. The arrow points to it.'
    """
    if fault == "all":
        body, row = "", CELL_HEIGHT + 40
        for place, (name, label) in enumerate(FAULTS.items()):
            x, y = 10 + 170 * (place % 2), 10 + row * (place // 2)
            body += _cell(name, x, y, 1.0) + words(x, y + CELL_HEIGHT + 16, label, size=14)
        height = row * ((len(FAULTS) + 1) // 2)
        title, sentence = "Faults of a bead", "Each joint is cut across; the arrow points to the fault."
        return Picture(svg(340, height, title, sentence, body), title, sentence)
    if fault not in FAULTS:
        raise ValueError(f"there is no drawing of {fault!r}; there are {tuple(FAULTS)}")
    title, sentence = FAULTS[fault], f"{_SAYS[fault]} The arrow points to it."
    return Picture(svg(340, 180, title, sentence, _cell(fault, 20, 0, 2.0)), title, sentence)
