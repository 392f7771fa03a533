"""Whether a reader sees that a picture is another one: its words, its lines, or where they stand.

A margin or a stroke that is a little wider changes the text of a picture and nothing that anyone reads from it:
figures stand in its words and in the table beside it, and no one reads a line on a phone to better than a thirtieth
of the width. So a change in `calc/show/drawings` counts when a word, a shape or an attribute is another, or when
some place in the picture moves by more than that.
"""

import json
import re
import subprocess
import sys

from tests.mutants import ROOT

DRAWINGS = "/drawings/"
LEAST = 1 / 30
"""Of the width of the picture; 11 px of the 340 px that a phone shows."""
WIDTH = 340.0
"""Where a picture does not name its own."""
PLACES = re.compile(
    r'( (?:[xyr]|[xyc][12xy]|r[xy]|d[xy]?|points|width|height|transform|viewBox|font-size|stroke-width)=\\?")([^"\\]*)'
)
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
SUM = re.compile(r"chart-[0-9a-f]{8}")
"""Name of a chart, a sum of all that is in it: another where a line moves by a tenth, and read by nobody."""


def _parted(reply: str) -> tuple[str, list[float]]:
    """The reply without the numbers that place its lines, and these numbers."""
    numbers: list[float] = []

    def bare(found: re.Match[str]) -> str:
        numbers.extend(float(number) for number in NUMBER.findall(found[2]))
        return found[1] + NUMBER.sub("#", found[2])

    return PLACES.sub(bare, SUM.sub("chart", reply)), numbers


def seen(was: str, now: str) -> bool:
    """Whether a reader sees the difference of two replies.

    Examples:
        >>> line = '<svg viewBox="0 0 300 90"><path d="M8 60L250 20"/><text x="8">flame</text></svg>'
        >>> seen(line, line.replace("250", "251")), seen(line, line.replace("250", "262"))
        (False, True)
        >>> named = line.replace("<path ", '<desc id="chart-01234567-d"/><path ')
        >>> seen(named, named.replace("01234567", "89abcdef"))
        False
        >>> seen(line, line.replace("flame", "tip")), seen(line, line.replace("L250", "H250"))
        (True, True)
    """
    (rest, places), (other, moved) = _parted(was), _parted(now)
    if rest != other or len(places) != len(moved):
        return True
    width = min([float(found) for found in re.findall(r'viewBox=\\?"0 0 ([\d.]+)', was)], default=WIDTH)
    return any(abs(place - there) > LEAST * width for place, there in zip(places, moved, strict=True))


def unchanged(requests: list[str]) -> list[str]:
    """Replies of the code as it stands, from a process of its own."""
    code = "import json, sys; from calc.bridge import run; print(json.dumps([run(t) for t in json.load(sys.stdin)]))"
    told = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, input=json.dumps(requests), capture_output=True, text=True, check=True
    )
    return list(json.loads(told.stdout))
