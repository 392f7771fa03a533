"""Packing: nothing overlaps, nothing hangs over, nothing is lost, and a shear can cut it."""

from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.class_plan.cutting_list import CuttingList, Kind, NoRoomError, cutting_list

Box = tuple[int, int, int, int]

KINDS = st.lists(
    st.builds(
        lambda wide, high, count: Kind("x", "", (wide / 1000, high / 1000), count),
        st.integers(20, 300), st.integers(20, 300), st.integers(1, 60),
    ),
    min_size=1, max_size=4,
)  # fmt: skip
STOCK = st.tuples(st.integers(300, 2500), st.integers(300, 2500))


def boxes(found: CuttingList, layout: int) -> list[Box]:
    return [piece for strip in found.layouts[layout].strips for piece in strip.pieces()]


def overlap(one: Box, other: Box) -> bool:
    """Whether two boxes share more than an edge."""
    return (
        one[0] < other[0] + other[2] and other[0] < one[0] + one[2]
        and one[1] < other[1] + other[3] and other[1] < one[1] + one[3]
    )  # fmt: skip


def can_be_sheared(pieces: list[Box]) -> bool:
    """Whether straight cuts, each from edge to edge of what is in hand, part all pieces."""
    if len(pieces) < 2:
        return True
    for start, size in ((0, 2), (1, 3)):
        ordered = sorted(pieces, key=lambda piece: piece[start])
        far = 0
        for place, (before, after) in enumerate(pairwise(ordered), start=1):
            far = max(far, before[start] + before[size])
            if far <= after[start]:
                return can_be_sheared(ordered[:place]) and can_be_sheared(ordered[place:])
    return False


@settings(max_examples=40, deadline=None)
@given(kinds=KINDS, stock=STOCK, gap=st.sampled_from([0.0, 0.0015875, 0.002, 0.0254]))
def test_pieces_lie_apart_inside_the_sheet_all_of_them_and_can_be_sheared(
    kinds: list[Kind], stock: tuple[int, int], gap: float
) -> None:
    found = cutting_list((stock[0] / 1000, stock[1] / 1000), gap, kinds)
    wide, high = max(stock) * 10, min(stock) * 10
    placed = [0] * len(kinds)
    for number, layout in enumerate(found.layouts):
        pieces = boxes(found, number)
        for x, y, across, up in pieces:
            assert 0 <= x < x + across <= wide
            assert 0 <= y < y + up <= high
        apart = [
            (x, y, across + round(gap * 1e4 - 0.4), up + round(gap * 1e4 - 0.4))
            for x, y, across, up in pieces
        ]
        assert not any(overlap(one, other) for one, other in combinations(apart, 2))
        assert can_be_sheared(pieces)
        for strip in layout.strips:
            placed[strip.kind] += strip.count * layout.sheets
            assert sorted((strip.width, strip.height)) == sorted(
                round(side * 1e4) for side in kinds[strip.kind].sides
            )
    assert placed == [kind.count for kind in kinds]
    area = sum(kind.sides[0] * kind.sides[1] * kind.count for kind in kinds)
    stocked = found.sheets * stock[0] * stock[1] / 1e6
    assert area <= stocked * (1 + 1e-9)
    assert found.waste == pytest.approx(1 - area / stocked, abs=1e-9)


def test_a_sheet_that_the_pieces_fill_has_no_waste() -> None:
    """48 in by 96 in holds 48/2 times 96/6 = 384 pieces of 2 in by 6 in, by hand."""
    inch = 0.0254
    found = cutting_list((48 * inch, 96 * inch), 0.0, [Kind("", "", (2 * inch, 6 * inch), 384)])
    assert found.sheets == 1
    assert found.waste == pytest.approx(0, abs=1e-9)
    assert cutting_list((48 * inch, 96 * inch), 0.0, [Kind("", "", (2 * inch, 6 * inch), 385)]).sheets == 2


def test_a_gap_is_lost_between_pieces_and_not_at_the_edge() -> None:
    """Two pieces of 100 mm and one gap of 2 mm: 202 mm, by hand."""
    pair = [Kind("", "", (0.1, 0.1), 2)]
    assert cutting_list((0.202, 0.1), 0.002, pair).sheets == 1
    assert cutting_list((0.2019, 0.1), 0.002, pair).sheets == 2


def test_a_piece_that_fits_only_turned_is_turned_and_a_larger_one_is_refused() -> None:
    assert cutting_list((0.1, 0.5), 0.0, [Kind("", "", (0.4, 0.1), 1)]).sheets == 1
    with pytest.raises(NoRoomError):
        cutting_list((0.1, 0.5), 0.0, [Kind("", "", (0.4, 0.11), 1)])
