"""Hatching of any shape, as one path."""

from collections.abc import Sequence

Point = tuple[float, float]


def _crossings(shape: Sequence[Point], level: float, lean: int) -> list[Point]:
    """Where the line x + lean·y = level crosses the outline, left to right."""
    found = []
    for (x1, y1), (x2, y2) in zip(shape, [*shape[1:], shape[0]], strict=True):
        at1, at2 = x1 + lean * y1 - level, x2 + lean * y2 - level
        if (at1 < 0) != (at2 < 0):
            share = at1 / (at1 - at2)
            found.append((x1 + share * (x2 - x1), y1 + share * (y2 - y1)))
    return sorted(found)


def hatched(shape: Sequence[Point], step: float, *, lean: int = 1) -> str:
    """Slanting lines inside a shape.

    Args:
        shape: Its corners in order.
        step: From one line to the next, measured along x.
        lean: 1 for lines that rise to the right, -1 for lines that fall.

    Returns:
        An SVG path, empty where the shape is too small for a line.

    Examples:
        >>> hatched([(0, 0), (10, 0), (10, 10), (0, 10)], 10)
        '<path d="M0 10L10 0" stroke="currentColor" stroke-width="1" fill="none"/>'
    """
    levels = [x + lean * y for x, y in shape]
    level, last, lines = min(levels) + step, max(levels), []
    while level < last:
        ends = _crossings(shape, level, lean)
        lines += [
            f"M{x1:.4g} {y1:.4g}L{x2:.4g} {y2:.4g}"
            for (x1, y1), (x2, y2) in zip(ends[::2], ends[1::2], strict=False)
        ]
        level += step
    if not lines:
        return ""
    return f'<path d="{"".join(lines)}" stroke="currentColor" stroke-width="1" fill="none"/>'
