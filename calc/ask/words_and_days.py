"""Inputs that are no quantity, as typed: a few words of the reader's own, and days of the calendar."""

import datetime
import re
import unicodedata

from calc.ask.errors import InputError
from calc.declare import Day, Words


def words_of(name: str, asked: Words, text: str) -> str:
    """The reader's words, spaces at the ends taken off.

    Args:
        name: Name of the input, for the message.
        asked: Its declaration.
        text: What was typed.

    Raises:
        InputError: Nothing, too much, an angle bracket, or a sign that is not to be seen.

    Examples:
        >>> words_of("tip_label", Words("Your name for the tip"), " blue handle, no. 2 ")
        'blue handle, no. 2'
    """
    plain = text.strip()
    at_most = f"give 1 to {asked.longest} letters"
    if not plain:
        raise InputError(name, asked.label, f"nothing is written here; {at_most}.")
    if len(plain) > asked.longest:
        raise InputError(name, asked.label, f"that is {len(plain)} letters long; {at_most}.")
    if "<" in plain or ">" in plain:
        raise InputError(name, asked.label, f"< and > cannot stand here; {at_most} without them.")
    if any(
        unicodedata.category(sign)[0] == "C" or unicodedata.category(sign) in ("Zl", "Zp") for sign in plain
    ):
        raise InputError(name, asked.label, f"a sign in it cannot be shown; {at_most} on one line.")
    return plain


def day_of(name: str, asked: Day, text: str) -> datetime.date:
    """The day that a reader gave.

    Args:
        name: Name of the input, for the message.
        asked: Its declaration.
        text: What was typed, or what the page's calendar gave.

    Raises:
        InputError: It is no day, or outside what will do.

    Examples:
        >>> day_of("made", Day("Hoses made"), "2026-11-25")
        datetime.date(2026, 11, 25)
    """
    plain = text.strip()
    will_do = f"give a day from {asked.earliest} to {asked.latest}, written as in 2026-11-25"
    if not plain:
        raise InputError(name, asked.label, f"nothing is written here; {will_do}.")
    shape = re.fullmatch(r"(\d{4})-(\d{2})-(\d{2})", plain, re.ASCII)
    try:
        day = datetime.date(*map(int, shape.groups())) if shape else None
    except ValueError:
        day = None
    if day is None:
        raise InputError(name, asked.label, f"“{plain[:20]}” is no day; {will_do}.")
    if not asked.earliest <= day.isoformat() <= asked.latest:
        raise InputError(name, asked.label, f"{plain} cannot be meant; {will_do}.")
    return day
