"""Drawings as SVG text, made by the same code at build time and in the browser.

Each module has one `drawing(...)` that returns a Picture: ink is `currentColor`,
so it follows light, dark and print, and no meaning hangs on color alone.
"""

import math
from html import escape

INK = 'fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="round"'
"""Look of an outline."""


def finite(value: float, name: str) -> float:
    """The number, if it is one.

    Raises:
        ValueError: It is not finite.
    """
    if not math.isfinite(value):
        raise ValueError(f"{name} is {value}, which cannot be drawn")
    return value


def at(number: float) -> str:
    """A coordinate, short.

    Examples:
        >>> at(1.0), at(2.345)
        ('1', '2.3')
    """
    return f"{number:.1f}".removesuffix(".0")


def words(x: float, y: float, text: str, *, anchor: str = "start", size: int = 16) -> str:
    """Text at a place, escaped."""
    return (
        f'<text x="{at(x)}" y="{at(y)}" font-size="{size}" text-anchor="{anchor}" '
        f'fill="currentColor" font-family="inherit">{escape(text)}</text>'
    )


def line(x1: float, y1: float, x2: float, y2: float, *, width: float = 2, dash: str = "") -> str:
    """A straight line; dashed where `dash` says how."""
    dashed = f' stroke-dasharray="{dash}"' if dash else ""
    return (
        f'<line x1="{at(x1)}" y1="{at(y1)}" x2="{at(x2)}" y2="{at(y2)}" '
        f'stroke="currentColor" stroke-width="{at(width)}"{dashed}/>'
    )


def arrow(x1: float, y1: float, x2: float, y2: float) -> str:
    """A thin line with a head at its second end."""
    turn = math.atan2(y2 - y1, x2 - x1)
    wings = [(x2 - 8 * math.cos(turn + side), y2 - 8 * math.sin(turn + side)) for side in (0.4, -0.4)]
    head = " ".join(f"{at(x)},{at(y)}" for x, y in [(x2, y2), *wings])
    return line(x1, y1, x2, y2, width=1.5) + f'<polygon points="{head}" fill="currentColor"/>'


def mark(x: float, y: float, number: int) -> str:
    """A numbered disc that a key explains."""
    return (
        f'<circle cx="{at(x)}" cy="{at(y)}" r="11" fill="var(--bb-paper, #fff)" '
        'stroke="currentColor" stroke-width="2"/>' + words(x, y + 5, str(number), anchor="middle", size=14)
    )


def svg(width: float, height: float, title: str, desc: str, body: str) -> str:
    """A whole drawing with its title and description.

    Examples:
        >>> svg(10, 10, "A < B", "none", "")
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10" role="img"><title>A &lt; B</title><desc>none</desc></svg>'
    """
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {at(width)} {at(height)}" '
        f'role="img"><title>{escape(title)}</title><desc>{escape(desc)}</desc>{body}</svg>'
    )
