"""What was found for lines that have moved since: tests that came by a line come by it where it stands now.

A test that comes by a line for the first time is not known until all is found anew; so a change may count as not
noticed that is, never the other way round.
"""

from collections import defaultdict
from collections.abc import Iterable
from difflib import SequenceMatcher

Place = tuple[str, int]


def new_lines(was: str, now: str) -> dict[int, list[int]]:
    """Where each line of a text stands now; for lines that were rewritten, what stands in their place.

    Examples:
        >>> new_lines("a\\nb\\nc", "a\\nx\\ny\\nb\\nc")
        {1: [1, 2, 3], 2: [4], 3: [5]}
    """
    places: dict[int, list[int]] = defaultdict(list)
    matched = SequenceMatcher(None, was.splitlines(), now.splitlines(), autojunk=False)
    for tag, start, end, first, last in matched.get_opcodes():
        if tag == "equal":
            for line in range(start, end):
                places[line + 1].append(first + line - start + 1)
        else:
            for line in range(start, end) or [max(0, start - 1)]:
                places[line + 1] += range(first + 1, last + 1)
    return dict(places)


def by_now(by: dict[Place, set[int]], was: dict[str, str], now: dict[str, str]) -> dict[Place, set[int]]:
    """What comes by each line, for the lines as they stand now.

    Args:
        by: For each line as it stood, what came by it.
        was: Text of each file as it stood.
        now: Text of each file.
    """
    other = {path: new_lines(was[path], text) for path, text in now.items() if was.get(path, text) != text}
    found: dict[Place, set[int]] = defaultdict(set)
    for (path, line), these in by.items():
        if path in now:
            lines: Iterable[int] = other[path].get(line, ()) if path in other and line else (line,)
            for each in lines:
                found[path, each] |= these
    return found
