"""Which of the eight masks a square code gets: the standard's penalties, counted on whole lines at once.

A line of squares is one whole number here, a bit for each square, dark is 1. The library
finds the same mask square by square, which takes a phone most of the time of a code.
"""

from collections.abc import Callable, Sequence
from functools import cache
from itertools import pairwise

MASKS: tuple[Callable[[int, int], bool], ...] = (
    lambda i, j: (i + j) % 2 == 0,
    lambda i, j: i % 2 == 0,  # noqa: ARG005
    lambda i, j: j % 3 == 0,  # noqa: ARG005
    lambda i, j: (i + j) % 3 == 0,
    lambda i, j: (i // 2 + j // 3) % 2 == 0,
    lambda i, j: i * j % 2 + i * j % 3 == 0,
    lambda i, j: (i * j % 2 + i * j % 3) % 2 == 0,
    lambda i, j: ((i + j) % 2 + i * j % 3) % 2 == 0,
)
"""Where each mask turns a square over, by row and column, as the library has them (ISO/IEC 18004, 7.8.2)."""
_PERIOD = 12
"""Rows and columns after which every mask repeats."""
_FINDER = "1011101"

Lines = list[int]


def best_mask(masked: Sequence[Sequence[int]], free: Sequence[Sequence[bool]]) -> int:
    """Number of the mask with the least penalty, the first of several.

    Args:
        masked: The code under mask 0, by row, its fixed squares as they count in the search.
        free: Which squares belong to the data, by row.
    """
    size = len(masked)
    across, down = _lines(masked), _lines(list(zip(*masked, strict=True)))
    data, data_down = _lines(free), _lines(list(zip(*free, strict=True)))

    def penalty(number: int) -> int:
        turned, turned_down = _turned(number, size)
        rows = [line ^ (turned[n % _PERIOD] & data[n]) for n, line in enumerate(across)]
        columns = [line ^ (turned_down[n % _PERIOD] & data_down[n]) for n, line in enumerate(down)]
        return (
            _runs(rows, size) + _runs(columns, size) + _blocks(rows, size) + _finders(rows + columns, size)
            + _balance(rows, size)
        )  # fmt: skip

    return min(range(len(MASKS)), key=penalty)


def _lines(squares: Sequence[Sequence[int]]) -> Lines:
    return [int("".join("1" if square else "0" for square in line), 2) for line in squares]


@cache
def _periods(number: int) -> tuple[str, ...]:
    """What a mask turns over that mask 0 does not, or the other way: rows of one period, then columns."""
    turns = [
        ["01"[MASKS[number](i, j) != MASKS[0](i, j)] for j in range(_PERIOD)] for i in range(_PERIOD)
    ]
    return tuple(map("".join, turns + list(map(list, zip(*turns, strict=True)))))


def _turned(number: int, size: int) -> tuple[Lines, Lines]:
    lines = [int((period * (size // _PERIOD + 1))[:size], 2) for period in _periods(number)]
    return lines[:_PERIOD], lines[_PERIOD:]


def _alike(line: int, size: int) -> int:
    """A bit where a square is like its neighbour."""
    return ~(line ^ line >> 1) & (1 << size - 1) - 1


def _runs(lines: Lines, size: int) -> int:
    """Five alike in a line cost 3, each further one 1."""
    cost = 0
    for line in lines:
        alike = _alike(line, size)
        fives = alike & alike >> 1 & alike >> 2 & alike >> 3
        cost += fives.bit_count() + 2 * (fives & ~(fives << 1)).bit_count()
    return cost


def _blocks(rows: Lines, size: int) -> int:
    """Each block of two by two alike costs 3."""
    cost = 0
    for row, after in pairwise(rows):
        cost += (_alike(row, size) & _alike(after, size) & ~(row ^ after)).bit_count()
    return 3 * cost


def _finders(lines: Lines, size: int) -> int:
    """What looks like a corner mark beside four light squares, or at an end of the line, costs 40."""
    cost = 0
    for line in lines:
        squares = f"{line:0{size}b}"
        found = squares.find(_FINDER)
        while found >= 0:
            after = found + len(_FINDER)
            beside = squares[max(found - 4, 0) : found], squares[after : after + 4]
            counts = found == 0 or after == size or any("1" not in four for four in beside)
            cost += 40 if counts else 0
            found = squares.find(_FINDER, after if counts else found + 4)
    return cost


def _balance(rows: Lines, size: int) -> int:
    """Each 5 % away from half dark costs 10."""
    dark = sum(row.bit_count() for row in rows)
    return 10 * int(abs(dark / size**2 * 100 - 50) / 5)
