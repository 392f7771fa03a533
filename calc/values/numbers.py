"""Numbers as a reader sees them."""

import math
from typing import Literal

Toward = Literal["nearest", "up", "down"]


def plain_number(value: float, digits: int = 4) -> str:
    """A number with the digits that count, no exponent and no tail of zeros.

    Args:
        value: The number.
        digits: Figures that count; whole numbers keep all of theirs.

    Examples:
        >>> plain_number(0.0598), plain_number(2200.04), plain_number(14.5)
        ('0.0598', '2200', '14.5')
    """
    return rounded(value, digits, "nearest")


def rounded(value: float, digits: int, toward: Toward) -> str:
    """A number rounded to the figures that count, upward, downward or to the nearest.

    Args:
        value: The number.
        digits: Figures that count.
        toward: Which way; a limit is rounded toward safety.

    Examples:
        >>> rounded(14.99, 2, "down"), rounded(9.12, 2, "up"), rounded(0.0, 3, "nearest")
        ('14', '9.2', '0')
    """
    if value == 0:
        return "0"
    places = digits - 1 - math.floor(math.log10(abs(value)))
    places = max(min(places, 12), 0)
    scale = 10.0**places
    scaled = value * scale
    near = round(scaled)
    if toward != "nearest" and abs(scaled - near) > 1e-9 * max(1.0, abs(scaled)):
        near = math.ceil(scaled) if toward == "up" else math.floor(scaled)
    text = f"{near / scale:.{places}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
