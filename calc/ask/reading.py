"""What people type, read as numbers and units.

`1 3/16 in`, `1-3/16"`, `5,5 bar`, `2200 psig`, `4 ft 6 in`, `½ in`: read.
`1,234`, `12`, where a unit is needed, or a page of text: refused, with what to
write instead. Nothing is guessed.
"""

import math
import re
import unicodedata
from dataclasses import dataclass

LONGEST = 60
"""Characters in one answer; more is pasted text, not a measurement."""

UNIT_WORDS = {
    "psig": "psi", "lb/in2": "psi", "lbf/in2": "psi", "pounds": "lb", "lbs": "lb",
    "barg": "bar", "bar(g)": "bar", "bar g": "bar", "psi(g)": "psi", "psi g": "psi",
    "kpa": "kPa", "mpa": "MPa", "pa": "Pa",
    "f": "degF", "°f": "degF", "degf": "degF", "deg f": "degF", "º f": "degF", "ºf": "degF",
    "c": "degC", "°c": "degC", "degc": "degC", "deg c": "degC", "º c": "degC", "ºc": "degC",
    "k": "K", "°": "deg", "º": "deg", "degree": "deg", "degrees": "deg",
    '"': "in", "''": "in", "″": "in", "”": "in", "inch": "in", "inches": "in", "in.": "in",
    "'": "ft", "′": "ft", "’": "ft", "foot": "ft", "feet": "ft", "ft.": "ft",
    "mm.": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
    "centimetre": "cm", "centimetres": "cm", "metre": "m", "metres": "m", "meter": "m",
    "meters": "m",
    "l": "L", "litre": "L", "litres": "L", "liter": "L", "liters": "L",
    "ml": "mL", "millilitre": "mL", "millilitres": "mL", "milliliter": "mL", "milliliters": "mL", "cc": "mL",
    "cm3": "mL", "cm³": "mL", "cm^3": "mL",
    "ft3": "ft^3", "ft³": "ft^3", "cu ft": "ft^3", "cf": "ft^3", "cuft": "ft^3", "cubic feet": "ft^3",
    "cubic foot": "ft^3",
    "m3": "m^3", "m³": "m^3", "cubic metres": "m^3", "cubic meters": "m^3",
    "scfh": "cfh", "ft3/h": "cfh", "ft³/h": "cfh", "ft^3/h": "cfh", "cu ft/h": "cfh",
    "cfm": "ft^3/min", "ft3/min": "ft^3/min", "ft³/min": "ft^3/min",
    "m3/h": "m^3/h", "m³/h": "m^3/h", "m3/min": "m^3/min", "m³/min": "m^3/min",
    "l/h": "L/h", "lph": "L/h", "l/hr": "L/h", "l/min": "L/min", "lpm": "L/min",
    "in3": "in^3", "in³": "in^3", "in2": "in^2", "in²": "in^2", "mm2": "mm^2", "mm²": "mm^2",
    "sec": "s", "secs": "s", "second": "s", "seconds": "s", "mins": "min", "minute": "min",
    "minutes": "min", "hr": "h", "hrs": "h", "hour": "h", "hours": "h", "days": "d", "day": "d",
    "weeks": "week", "percent": "%", "per cent": "%",
    "pound": "lb", "kgs": "kg", "kilogram": "kg", "kilograms": "kg", "grams": "g", "gram": "g",
    "ounce": "oz", "ounces": "oz",
    "ipm": "in/min", "kw": "kW", "w": "W", "btu/h": "Btu/h", "btu": "Btu",
}  # fmt: skip
"""Ways to write a unit, in lower case, and the name it goes by in `units.txt`."""

_DIGITS = r"\d+(?:[.,]\d+)*|[.,]\d+"
_NUMBER = re.compile(
    rf"""(?P<sign>[+\-])?\s*(?:
        (?:(?P<whole>\d+)(?:\s+|\s?-\s?))?(?P<top>\d+)\s?/\s?(?P<bottom>\d+)
        |(?P<decimal>(?:{_DIGITS})(?:[eE][+\-]?\d+)?)
    )\s*""",
    re.VERBOSE | re.ASCII,
)
_FEET_INCHES = re.compile(
    r"(?P<feet>\d+)\s?(?:ft|feet|foot|'|′|’)\s?-?\s?(?P<inches>[\d ./\-]+?)\s?"
    r"(?:in|inch|inches|\"|″|”|'')\.?",
    re.ASCII | re.IGNORECASE,
)


class UnreadableError(ValueError):
    """What was typed is no number; the message says what to write instead."""


@dataclass(frozen=True, slots=True)
class Typed:
    """A number and the unit word behind it, as typed; the word may be empty."""

    number: float
    unit: str


def _plain(text: str) -> str:
    """Text with vulgar fractions, minus signs and odd spaces in their plain form."""
    if text.isascii():
        return " ".join(text.split())
    out = []
    for sign in text:
        if unicodedata.category(sign) == "No" and "FRACTION" in unicodedata.name(sign, ""):
            out.append(" " + unicodedata.normalize("NFKD", sign).replace("\u2044", "/"))
        elif sign in "\u2212\u2013\u2010\u2011":
            out.append("-")
        elif sign == "\u2044":
            out.append("/")
        else:
            out.append(" " if sign.isspace() else sign)
    return " ".join("".join(out).split())


def _decimal(text: str) -> float:
    """A decimal number with a point or a comma."""
    digits, mark, power = text.partition("e" if "e" in text else "E")
    points, commas = digits.count("."), digits.count(",")
    if points and commas:
        last = max(digits.rfind("."), digits.rfind(","))
        head, tail = digits[:last], digits[last + 1 :]
        groups = re.split(r"[.,]", head)
        if digits.count(digits[last]) > 1 or any(len(g) != 3 for g in groups[1:]):
            raise UnreadableError(f"“{text}” can be read in two ways; write it without separators")
        digits = head.replace(",", "").replace(".", "") + "." + tail
    elif points + commas > 1:
        raise UnreadableError(f"“{text}” can be read in two ways; write it without separators")
    elif commas:
        head, tail = digits.split(",")
        if len(tail) == 3 and head.strip("0"):
            raise UnreadableError(f"“{text}” can mean {head}{tail} or {head}.{tail}; write one of these")
        digits = f"{head or '0'}.{tail}"
    value = float(digits + mark + power)
    if not math.isfinite(value):
        raise UnreadableError("that number is too large to be meant")
    return value


def typed(text: str) -> Typed:
    """Number and unit word that a reader typed.

    Args:
        text: What was typed, such as `1 3/16 in`.

    Returns:
        The number, and the unit as `units.txt` names it, or the word as typed
        where it is no unit we know. Gauge and drill numbers keep their word:
        `16 ga`, `#68`.

    Raises:
        UnreadableError: Empty, too long, ambiguous, or no number at all.

    Examples:
        >>> typed('1-3/16"')
        Typed(number=1.1875, unit='in')
        >>> typed("5,5 bar")
        Typed(number=5.5, unit='bar')
        >>> typed("4 ft 6 in")
        Typed(number=54.0, unit='in')
    """
    if len(text) > LONGEST:
        raise UnreadableError(f"that is {len(text)} characters long; write one number and its unit")
    plain = _plain(text)
    if not plain:
        raise UnreadableError("nothing is written here")
    if not plain.isprintable():
        raise UnreadableError("a sign in it cannot be shown; type it anew")
    if both := _FEET_INCHES.fullmatch(plain):
        inches = typed(both["inches"] + " in").number
        return Typed(int(both["feet"]) * 12 + inches, "in")
    if plain[0] in "#№" or re.match(r"(?i)(no\.?|drill|swg)\s?\d", plain):
        word, number = re.match(r"(?i)(#|№|no\.?|drill|swg)\s?#?(.*)", plain).groups()  # type: ignore[union-attr]
        if not number.strip().isdecimal():
            raise UnreadableError(f"“{plain}” names no size; write a whole number, as in #68")
        return Typed(float(number), "swg" if word.lower() == "swg" else "#")
    found = _NUMBER.match(plain)
    if found is None:
        raise UnreadableError(f"“{plain}” is not a number")
    rest = plain[found.end() :].strip()
    if found["top"]:
        if int(found["bottom"]) == 0:
            raise UnreadableError("a fraction cannot have 0 below the line")
        number = int(found["whole"] or 0) + int(found["top"]) / int(found["bottom"])
    else:
        number = _decimal(found["decimal"])
    if found["sign"] == "-":
        number = -number
    if rest[:1].isdigit() or rest[:1] in {"/", ".", ",", "-", "+"}:
        raise UnreadableError(f"“{plain}” is not one number; write it without spaces or signs")
    if not math.isfinite(number):
        raise UnreadableError("that number is too large to be meant")
    return Typed(number, UNIT_WORDS.get(rest.lower(), rest))
