"""Times of day and stock sizes as a reader writes them, and whole minutes."""

import re
from math import ceil, floor

from calc.ask.errors import InputError
from calc.ask.reading import UnreadableError, typed
from calc.values.quantities import Length, Time
from calc.values.units import from_si, to_si

DAY = 24 * 60
LEAST_SIDE, MOST_SIDE = 0.1, 6.1
"""Sides that a stock sheet may have, m."""
LENGTHS = ("in", "ft", "mm", "cm", "m")

_TIME = re.compile(r"(\d{1,2})(?:[:.](\d{2}))?\s*([ap])?\.?\s*m?\.?", re.ASCII | re.IGNORECASE)


def start_of(name: str, label: str, text: str) -> int:
    """A time of day, minutes after midnight.

    Args:
        name: Name of the input, for the message.
        label: Its label.
        text: As typed: `18:30`, `6:30 pm` or `6 pm`.

    Raises:
        InputError: It is no time of day.

    Examples:
        >>> start_of("start", "Start", "18:30"), start_of("start", "Start", "6:30 pm"), start_of("start", "Start", "12 am")
        (1110, 1110, 0)
    """
    found = _TIME.fullmatch(text.strip())
    hour = minute = -1
    if found and (found[2] or found[3]):
        hour, minute = int(found[1]), int(found[2] or 0)
        if found[3]:
            hour = hour % 12 + (12 if found[3].lower() == "p" else 0) if 1 <= hour <= 12 else -1
    if not (0 <= hour < 24 and 0 <= minute < 60):
        raise InputError(
            name, label, f"“{text[:20]}” is no time of day; give 0:00 to 23:59, as in 18:30 or 6:30 pm."
        )
    return 60 * hour + minute


def clock(minutes: int, rules: str) -> str:
    """A time of day; after midnight it begins anew.

    Examples:
        >>> clock(1110, "us"), clock(1110, "iso"), clock(1450, "iso"), clock(720, "us")
        ('6:30 pm', '18:30', '0:10', '12:00 pm')
    """
    hour, minute = divmod(minutes % DAY, 60)
    if rules != "us":
        return f"{hour}:{minute:02d}"
    return f"{(hour + 11) % 12 + 1}:{minute:02d} {'am' if hour < 12 else 'pm'}"


def whole_minutes(time: Time, *, up: bool) -> int:
    """Whole minutes of a time, rounded up or down.

    Examples:
        >>> whole_minutes(605.0, up=True), whole_minutes(605.0, up=False), whole_minutes(600.0, up=True)
        (11, 10, 10)
    """
    return ceil(time / 60 - 1e-6) if up else floor(time / 60 + 1e-6)


def stock_size(name: str, label: str, text: str, rules: str) -> tuple[Length, Length]:
    """Both sides of a stock sheet, m.

    Args:
        name: Name of the input, for the message.
        label: Its label.
        text: As typed: `48 in x 96 in` or `1000 x 2000 mm`.
        rules: Rule set, for the unit of the message.

    Raises:
        InputError: It is not two lengths, or outside what will do.

    Examples:
        >>> stock_size("sheet", "Sheet", "1000 x 2000 mm", "iso")
        (1.0, 2.0)
    """
    unit = "in" if rules == "us" else "mm"
    low, high = (f"{from_si(side, unit):.0f}" for side in (LEAST_SIDE, MOST_SIDE))
    will_do = f"give two sides of {low} to {high} {unit}, as in {'48 in x 96 in' if rules == 'us' else '1000 mm x 2000 mm'}"
    parts = re.split(r"\s*[x×X]\s*", text.strip())
    wrong = InputError(name, label, f"“{text[:30]}” is no size of a sheet; {will_do}.")
    if len(parts) != 2:
        raise wrong
    try:
        got = [typed(part) for part in parts]
    except UnreadableError:
        raise wrong from None
    if got[1].unit not in LENGTHS or got[0].unit not in ("", *LENGTHS):
        raise wrong
    sides = [to_si(part.number, part.unit or got[1].unit) for part in got]
    if not all(LEAST_SIDE - 1e-9 <= side <= MOST_SIDE + 1e-9 for side in sides):
        raise InputError(name, label, f"“{text[:30]}” is too small or too large; {will_do}.")
    return sides[0], sides[1]
