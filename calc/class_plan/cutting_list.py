"""Coupons packed on stock sheets so that a shear can cut them: the only import of rectpack.

A shear cuts straight through. So like pieces are put side by side into strips,
and the packer places the strips with straight cuts only. Lengths are whole
tenths of a millimetre here: pieces rounded up, stock rounded down.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import Any

from calc.values.quantities import Area, Length, Ratio

TENTH: Length = 1e-4
"""A tenth of a millimetre."""
MOST_SHEETS = 400


class NoRoomError(ValueError):
    """A piece is larger than the stock, or it takes too many sheets.

    Attributes:
        kind: The kind of piece that does not fit, or None.
    """

    def __init__(self, kind: "Kind | None") -> None:
        super().__init__("no room")
        self.kind = kind


@dataclass(frozen=True, slots=True)
class Kind:
    """Pieces of one size for one exercise.

    Attributes:
        title: Of the exercise.
        size: Its sides as text.
        sides: m.
        count: How many.
    """

    title: str
    size: str
    sides: tuple[Length, Length]
    count: int

    @property
    def area(self) -> Area:
        """Of one piece, m²."""
        return self.sides[0] * self.sides[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """Like pieces side by side, cut out in one and then chopped.

    Attributes:
        kind: Number of their kind.
        x: Left edge, tenths of a millimetre.
        y: Lower edge, likewise.
        width: Of one piece, along x.
        height: Of one piece, along y.
        pitch: From one piece to the next.
        count: Pieces.
        across: Whether they stand side by side along x, else along y.
    """

    kind: int
    x: int
    y: int
    width: int
    height: int
    pitch: int
    count: int
    across: bool

    def pieces(self) -> list[tuple[int, int, int, int]]:
        """Left, lower edge, width and height of each piece, tenths of a millimetre."""
        return [
            (self.x + (n * self.pitch if self.across else 0), self.y + (0 if self.across else n * self.pitch),
             self.width, self.height)
            for n in range(self.count)
        ]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Layout:
    """Sheets that are cut alike.

    Attributes:
        strips: What is cut from each.
        sheets: How many.
    """

    strips: tuple[Strip, ...]
    sheets: int

    def count(self, kind: int) -> int:
        """Pieces of a kind on one sheet."""
        return sum(strip.count for strip in self.strips if strip.kind == kind)


@dataclass(frozen=True, slots=True)
class CuttingList:
    """What is cut from one stock.

    Attributes:
        longer: Side of a stock sheet, m.
        shorter: Its other side, m.
        kinds: Pieces wanted.
        layouts: How the sheets are cut.
    """

    longer: Length
    shorter: Length
    kinds: tuple[Kind, ...]
    layouts: tuple[Layout, ...]

    @property
    def sheets(self) -> int:
        """Stock sheets that it takes."""
        return sum(layout.sheets for layout in self.layouts)

    @property
    def waste(self) -> Ratio:
        """Share of the stock that is in no piece."""
        area = sum(kind.area * kind.count for kind in self.kinds)
        return 1 - area / (self.sheets * self.longer * self.shorter)


def cutting_list(stock: tuple[Length, Length], gap: Length, kinds: Sequence[Kind]) -> CuttingList:
    """Pieces packed on as few sheets as straight cuts through strips find.

    Args:
        stock: Sides of a stock sheet, m.
        gap: Lost between two pieces, m; none at the edge of the sheet.
        kinds: What is wanted; none may be of no pieces.

    Raises:
        NoRoomError: A piece is larger than the stock, or it takes too many sheets.

    Examples:
        >>> four = cutting_list((0.2, 0.3), 0.0, [Kind("a", "", (0.1, 0.15), 4)])
        >>> four.sheets, round(four.waste, 9)
        (1, 0.0)
    """
    area = sum(kind.area * kind.count for kind in kinds)
    least = ceil(area / (stock[0] * stock[1]) - 1e-9)
    best: tuple[Layout, ...] = ()
    for way in _ways():
        try:
            found = _packed(stock, gap, kinds, way)
        except NoRoomError:
            if not best and way.turned is None:
                raise
            continue
        if not best or _sheets(found) < _sheets(best):
            best = found
        if _sheets(best) == least:
            break
    return CuttingList(max(stock), min(stock), tuple(kinds), best)


def _sheets(layouts: tuple[Layout, ...]) -> int:
    return sum(layout.sheets for layout in layouts)


@dataclass(frozen=True, slots=True)
class _Way:
    """One way to fill a sheet.

    Attributes:
        packer: Splits what is left of a sheet, one straight cut at a time.
        along: Whether strips that run along the sheet come first.
        turned: Whether pieces stand as given, turned, or either (None).
    """

    packer: Any
    along: bool
    turned: bool | None


def _ways() -> Iterator[_Way]:
    from rectpack.guillotine import (  # noqa: PLC0415 - imported when first used
        GuillotineBssfMaxas,
        GuillotineBssfSas,
    )

    for packer in (GuillotineBssfSas, GuillotineBssfMaxas):
        for along in (True, False):
            for turned in (None, False, True):
                yield _Way(packer, along, turned)


def _tenths(length: Length, up: bool) -> int:
    number = length / TENTH
    return ceil(number - 1e-6) if up else floor(number + 1e-6)


def _packed(
    stock: tuple[Length, Length], gap: Length, kinds: Sequence[Kind], way: _Way
) -> tuple[Layout, ...]:
    lost = _tenths(gap, True)
    room = (_tenths(max(stock), False) + lost, _tenths(min(stock), False) + lost)
    sides = [(_tenths(kind.sides[0], True) + lost, _tenths(kind.sides[1], True) + lost) for kind in kinds]
    order = sorted(range(len(kinds)), key=lambda kind: sorted(sides[kind], reverse=True), reverse=True)
    due = [kind.count for kind in kinds]
    layouts: list[Layout] = []
    while any(due):
        strips = _sheet(room=room, sides=sides, order=order, due=due, way=way, lost=lost)
        layout = Layout(tuple(strips), 1)
        taken = [layout.count(kind) for kind in range(len(kinds))]
        if not any(taken):
            raise NoRoomError(kinds[next(kind for kind in order if due[kind])])
        times = min(count // taken[kind] for kind, count in enumerate(due) if taken[kind])
        layouts.append(Layout(tuple(strips), times))
        due = [count - times * taken[kind] for kind, count in enumerate(due)]
        if _sheets(tuple(layouts)) > MOST_SHEETS:
            raise NoRoomError(None)
    return tuple(layouts)


def _sheet(
    *,
    room: tuple[int, int], sides: Sequence[tuple[int, int]], order: Sequence[int], due: Sequence[int],
    way: _Way, lost: int,
) -> list[Strip]:  # fmt: skip
    """One sheet, filled with strips until no piece goes in any more."""
    sheet = way.packer(*room, rot=False, merge=False)
    strips: list[Strip] = []
    for kind in order:
        left = due[kind]
        while left:
            found = [
                (count, across == way.along, across, box)
                for box in _boxes(sides[kind], way.turned)
                for across in (True, False)
                if (count := _most(sheet, box, across, min(left, max(room) // min(box))))
            ]
            if not found:
                break
            count, _, across, box = max(found)
            placed = sheet.add_rect(*_strip(box, across, count))
            pitch = box[0] if across else box[1]
            strips.append(
                Strip(
                    kind=kind,
                    x=placed.x,
                    y=placed.y,
                    width=box[0] - lost,
                    height=box[1] - lost,
                    pitch=pitch,
                    count=count,
                    across=across,
                )
            )
            left -= count
    return strips


def _boxes(sides: tuple[int, int], turned: bool | None) -> set[tuple[int, int]]:
    both = (sides, sides[::-1])
    return set(both) if turned is None else {both[turned]}


def _strip(box: tuple[int, int], across: bool, count: int) -> tuple[int, int]:
    return (box[0] * count, box[1]) if across else (box[0], box[1] * count)


def _most(sheet: Any, box: tuple[int, int], across: bool, most: int) -> int:
    """Most pieces of a strip that still goes into one of the free parts of the sheet."""
    wide, high = box
    return max(
        (
            min(most, part.width // wide if across else part.height // high)
            for part in sheet._sections  # its own question, fitness, would have to be asked by halving
            if (part.height >= high if across else part.width >= wide)
        ),
        default=0,
    )
