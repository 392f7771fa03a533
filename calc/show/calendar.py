"""Calendar files, RFC 5545, for the phone's own calendar; that of a fire watch among them."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from calc.ask.errors import InputError

DAY = 86_400.0
EARLIEST, LATEST = 946_684_800.0, 4_102_444_800.0
"""Seconds of the clock at the start of the years 2000 and 2100."""
SOONEST = 60.0
"""A watch, or a pause between looks, is never shorter than this."""
LINE = 75
"""Octets to a line."""
LOOK = "Look, feel and smell: behind walls, below, above and along pipes. Warm or smoke: raise the alarm."


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One entry of a calendar.

    Attributes:
        name: What it goes by for ever: the same name replaces itself.
        stamp: When it was made; never the clock's, so that a file stays the same.
        start: When it begins; without a zone it is the time on the wall.
        end: When it ends; without one it is a moment.
        title: What it is.
        text: What to do.
        alarm: Whether an alarm sounds at its end.
    """

    name: str
    stamp: datetime
    start: datetime
    end: datetime | None
    title: str
    text: str
    alarm: bool = True


def calendar(made_by: str, entries: Iterable[Entry]) -> str:
    """A calendar file of some entries, lines folded and ended as RFC 5545 wants them.

    Args:
        made_by: What of ours made it.
        entries: In any order.

    Examples:
        >>> calendar("Nothing", []).splitlines()[2]
        'PRODID:-//Oxyfuel Benchbook//Nothing//EN'
    """
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:-//Oxyfuel Benchbook//{made_by}//EN"]
    for entry in entries:
        lines += _lines(entry)
    return "".join(map(_folded, [*lines, "END:VCALENDAR"]))


def calendar_text(start: float, watch: float, monitoring: float, check_every: float) -> str:
    """A calendar of one fire watch, each entry with an alarm when it ends.

    The same start gives the same entries, so that a file opened twice replaces
    itself.

    Args:
        start: Last flame, s since 1970 (UTC).
        watch: Watch without a break, s.
        monitoring: Looking in again after it, s; 0 for none.
        check_every: Most between two looks, s; 0 where no rule says.

    Returns:
        Text of the file, lines folded and ended as RFC 5545 wants them.

    Raises:
        InputError: A time that no watch has.

    Examples:
        >>> calendar_text(1_780_000_000, 3600, 0, 0).splitlines()[0]
        'BEGIN:VCALENDAR'
    """
    _hold("start", "Last flame", start, EARLIEST, LATEST)
    _hold("watch", "Watch", watch, SOONEST, DAY)
    _hold("monitoring", "Looking in again", monitoring, 0.0, DAY)
    if check_every:
        _hold("check_every", "Time between looks", check_every, SOONEST, DAY)
    begin = datetime.fromtimestamp(math.ceil(start), UTC)
    end = begin + timedelta(seconds=math.ceil(watch))
    name = f"fire-watch-{_stamp(begin)}"
    watches = Entry(
        name=f"{name}-0", stamp=begin, start=begin, end=end, title="Fire watch: stay",
        text="Stay, with an extinguisher at hand. Look behind walls, below, above and along pipes. "
        "A flame in between starts the watch again.",
    )  # fmt: skip
    looks = (
        Entry(name=f"{name}-{count}", stamp=begin, start=end + timedelta(seconds=due), end=None, title="Fire watch: look in again", text=LOOK)
        for count, due in enumerate(looks_after(monitoring, check_every), start=1)
    )
    return calendar("Fire watch", (watches, *looks))


def _hold(field: str, label: str, seconds: float, low: float, high: float) -> None:
    if isinstance(seconds, bool) or not isinstance(seconds, int | float) or not low <= seconds <= high:
        raise InputError(field, label, "this is no time that a calendar can hold.")


def looks_after(monitoring: float, check_every: float) -> list[int]:
    """Seconds after the watch at which to look, the last one at the end."""
    every = check_every or monitoring
    if not monitoring:
        return []
    count = math.ceil(monitoring / every - 1e-9)
    return [math.floor(every * n) for n in range(1, count)] + [math.ceil(monitoring)]


def _stamp(time: datetime) -> str:
    """A time as the file writes it; one without a zone floats."""
    return time.strftime("%Y%m%dT%H%M%S") + ("Z" if time.tzinfo else "")


def _lines(entry: Entry) -> list[str]:
    """One entry; without an end it is a moment."""
    alarm = [
        "BEGIN:VALARM",
        "ACTION:DISPLAY",
        "TRIGGER;RELATED=END:PT0S",
        f"DESCRIPTION:{_escaped(entry.title)}",
        "END:VALARM",
    ]
    return [
        "BEGIN:VEVENT",
        f"UID:{entry.name}@oxyfuel-benchbook",
        f"DTSTAMP:{_stamp(entry.stamp.replace(tzinfo=UTC))}",
        f"DTSTART:{_stamp(entry.start)}",
        *([f"DTEND:{_stamp(entry.end)}"] if entry.end else []),
        f"SUMMARY:{_escaped(entry.title)}",
        f"DESCRIPTION:{_escaped(entry.text)}",
        *(alarm if entry.alarm else []),
        "END:VEVENT",
    ]


def _escaped(text: str) -> str:
    for sign in ("\\", ";", ","):
        text = text.replace(sign, f"\\{sign}")
    return text.replace("\n", "\\n")


def _folded(line: str) -> str:
    """A line in pieces of at most 75 octets, none cut inside a letter."""
    parts, part, size = [], "", 0
    for letter in line:
        octets = len(letter.encode())
        if size + octets > LINE:
            parts.append(part)
            part, size = "", 1  # the space that a further piece begins with
        part, size = part + letter, size + octets
    return "\r\n ".join([*parts, part]) + "\r\n"
