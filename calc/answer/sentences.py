"""Quantities inside a sentence or a table cell, in the units of a rule set."""

from math import ceil

from calc.values.numbers import Toward, rounded
from calc.values.quantities import Length, Temperature, Time
from calc.values.units import from_si


def degrees(temperature: Temperature, rules: str) -> str:
    """A temperature, to the whole degree.

    Examples:
        >>> degrees(373.15, "us"), degrees(373.15, "iso")
        ('212 °F', '100 °C')
    """
    unit, sign = ("degF", "°F") if rules == "us" else ("degC", "°C")
    return f"{from_si(temperature, unit):.0f} {sign}"


def degrees_at_least(temperature: Temperature, rules: str) -> str:
    """A temperature that is to be reached, to the next whole degree above.

    Examples:
        >>> degrees_at_least(315.2, "us"), degrees_at_least(293.15, "iso")
        ('108 °F', '20 °C')
    """
    unit, sign = ("degF", "°F") if rules == "us" else ("degC", "°C")
    return f"{ceil(from_si(temperature, unit) - 1e-6)} {sign}"


def distance(length: Length, rules: str, digits: int = 2, toward: Toward = "nearest") -> str:
    """A length in inches or millimetres; far ones in feet or metres.

    Examples:
        >>> distance(0.0254, "us"), distance(0.0254, "iso"), distance(2.5, "iso")
        ('1 in', '25 mm', '2.5 m')
    """
    far = length > 0.9
    unit = ("ft" if far else "in") if rules == "us" else ("m" if far else "mm")
    return f"{rounded(from_si(length, unit), digits, toward)} {unit}"


def duration(time: Time, toward: Toward = "nearest") -> str:
    """A time in the unit that reads best.

    Examples:
        >>> duration(45), duration(600), duration(9000), duration(4722, "down")
        ('45 s', '10 min', '2.5 h', '78 min')
    """
    if time < 90.0:
        return f"{rounded(time, 2, toward)} s"
    if time < 5400.0:
        return f"{rounded(time / 60.0, 2, toward)} min"
    return f"{rounded(time / 3600.0, 2, toward)} h"
