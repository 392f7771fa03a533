"""The limits that a problem's own words set, and the key and the band that keep to them."""

import re
from dataclasses import dataclass

from calc.values.units import dimension, from_si, to_si

_AMOUNT = r"(?P<number>\d+(?:\.\d+)?) ?(?P<unit>in|ft|mm|m|psi|bar|kPa|s|min|h|lb|kg|L)(?![\w/])"
_LEAST = tuple(re.compile(way) for way in (rf"(?:never less than|at least) (?:the )?{_AMOUNT}", rf"{_AMOUNT} at least"))
_MOST = tuple(re.compile(way) for way in (rf"(?:never more than|at most) (?:the )?{_AMOUNT}", rf"{_AMOUNT} at most"))
_SHARE = re.compile(r"at most (?:1/\d+|\d+(?:\.\d+)? ?%)")
"""A largest share of what is given: then the key is the limit itself."""


@dataclass(frozen=True, slots=True)
class Limits:
    """What an answer never lies below or above by the text, in the unit of the key.

    Attributes:
        least: Never less than this, or None.
        most: Never more than this, or None.
    """

    least: float | None = None
    most: float | None = None

    @property
    def any(self) -> bool:
        """Whether the text sets one."""
        return self.least is not None or self.most is not None

    def kept(self, value: float) -> float:
        """A value brought between them."""
        if self.least is not None:
            value = max(value, self.least)
        return value if self.most is None else min(value, self.most)


def _said(patterns: tuple[re.Pattern[str], ...], text: str, unit: str) -> list[float]:
    return [
        float(found["number"]) if found["unit"] == unit else from_si(to_si(float(found["number"]), found["unit"]), unit)
        for pattern in patterns
        for found in pattern.finditer(text)
        if dimension(found["unit"]) == dimension(unit)
    ]


def limits_of(text: str, unit: str, key: float) -> Limits:
    """Limits that a text names for a result.

    An amount counts exactly as it is printed. A largest share of something
    given (“at most 1/10 of the contents”) makes the key itself the limit.

    Args:
        text: The sentences that decide.
        unit: Unit of the key.
        key: The key in that unit.

    Examples:
        >>> limits_of("A joint holds twice that, and never less than 300 psi (20.7 bar).", "psi", 300.0)
        Limits(least=300.0, most=None)
        >>> limits_of("Draw at most 1/10 of the contents in an hour.", "cfh", 8.0)
        Limits(least=None, most=8.0)
        >>> limits_of("It flows for 10 s at least.", "s", 29.0)
        Limits(least=10.0, most=None)
    """
    if not unit:
        return Limits()
    least, most = _said(_LEAST, text, unit), _said(_MOST, text, unit)
    if _SHARE.search(text):
        most.append(key)
    return Limits(max(least, default=None), min(most, default=None))
