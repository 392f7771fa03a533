"""A chart is read back from its own axes: lines, marks and limits stand where their numbers are."""

import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.show.drawings.chart import Line, Mark, line_chart, ticks
from tests.pages.read_chart import FLOOR, LEFT, RIGHT, TOP, axis, curves, read
from tests.pages.svg_shapes import Seen, Word


def chart(lines: list[Line], marks: list[Mark] | None = None) -> Seen:
    return Seen(
        line_chart(
            title="Chart",
            sentence="It rises.",
            x_label="time, min",
            y_label="heat, W",
            lines=lines,
            marks=marks or [],
        )
    )


CASES = {
    "from nothing": ((0.0, 0.0), (5.0, 30.0), (10.0, 100.0)),
    "far from nothing": ((20.0, 80.0), (60.0, 95.0), (100.0, 100.0)),
    "falls": ((1.0, 10.0), (2.0, 3.0), (4.0, 1.0)),
    "below nothing": ((0.0, -20.0), (1.0, 0.0), (3.0, 40.0)),
    "flat": ((0.0, 5.0), (1.0, 5.0), (2.0, 5.0)),
}


@pytest.mark.parametrize("points", CASES.values(), ids=CASES)
def test_the_points_of_a_line_are_read_back_from_the_axes(points: tuple[tuple[float, float], ...]) -> None:
    seen = chart([Line("it", points)])
    (curve,) = curves(seen)
    wide = max(x for x, _ in points) - min(x for x, _ in points)
    high = max(abs(y) for _, y in points)
    for place, (x, y) in zip(curve.points, points, strict=True):
        got = read(seen, place)
        assert got[0] == pytest.approx(x, abs=0.004 * wide)
        assert got[1] == pytest.approx(y, abs=0.006 * high)
    assert curve.points[0][0] == LEFT
    assert curve.points[-1][0] == RIGHT


@pytest.mark.parametrize(
    ("lowest", "highest", "foot"),
    [
        (3.4, 10.0, 0.0),
        (3.6, 10.0, 3.6 - 0.08 * 6.4),
        (0.0, 10.0, 0.0),
        (-4.0, 10.0, -4.0 - 0.08 * 14),
        (5.0, 5.0, 4.0),
    ],
)
def test_the_axis_begins_at_nothing_unless_all_lies_far_above_it(
    lowest: float, highest: float, foot: float
) -> None:
    """Below 0.35 of the largest it begins at 0; else there are 8 % of the span below and above, or 1 where there is none."""
    seen = chart([Line("it", ((0.0, lowest), (1.0, highest)))])
    assert read(seen, (LEFT, FLOOR))[1] == pytest.approx(foot, abs=0.02 * highest)
    span = highest - min(lowest, foot if foot == 0 else lowest)
    assert read(seen, (LEFT, TOP))[1] == pytest.approx(highest + (0.08 * span or 1.0), abs=0.02 * highest)


def test_frame_names_of_axes_and_lines_at_the_ticks() -> None:
    svg = line_chart(
        title="Chart",
        sentence="It rises.",
        x_label="time, min",
        y_label="heat, W",
        lines=[Line("it", ((0.0, 0.0), (10.0, 100.0)))],
    )
    seen = Seen(svg)
    frame = [p for p in seen.of("path") if len(p.points) == 3]
    assert [p.points for p in frame] == [((LEFT, TOP), (LEFT, FLOOR), (RIGHT, FLOOR))]
    below = seen.word("time, min")
    assert (below.x, below.y, below.anchor) == (190, 234, "middle")
    turned = re.search(
        r'<text x="12" y="106.0" text-anchor="middle" transform="rotate\(-90 12 106.0\)">heat, W<', svg
    )
    assert turned  # halfway between 14 and 198
    assert [value for value, _ in axis(seen, upward=False)] == [0, 2, 4, 6, 8, 10]
    assert [value for value, _ in axis(seen, upward=True)] == [0, 50, 100]


@given(low=st.floats(-1e5, 1e5), span=st.floats(1e-3, 1e6))
def test_ticks_are_round_evenly_apart_and_neither_few_nor_many(low: float, span: float) -> None:
    found = ticks(low, low + span)
    steps = [b - a for a, b in pairwise(found)]
    assert 2 <= len(found) <= 6
    assert min(found) >= low - 1e-6 * span
    assert max(found) <= low + span + 1e-6 * span
    assert steps == pytest.approx([steps[0]] * len(steps), rel=1e-6)
    assert f"{steps[0]:.6e}"[:2] in ("1.", "2.", "5.", "9.")
    assert found[0] - steps[0] < low + 1e-6 * span
    assert found[-1] + steps[0] > low + span - 1e-6 * span


@pytest.mark.parametrize(
    ("low", "high", "wanted"),
    [
        (0, 5, [0, 1, 2, 3, 4, 5]), (0, 5.1, [0, 2, 4]), (0, 10.1, [0, 5, 10]), (0, 25, [0, 5, 10, 15, 20, 25]),
        (0, 26, [0, 10, 20]), (0, 50, [0, 10, 20, 30, 40, 50]), (-3, 7, [-2, 0, 2, 4, 6]), (0.11, 0.59, [0.2, 0.3, 0.4, 0.5]),
    ],
)  # fmt: skip
def test_some_ticks_by_hand(low: float, high: float, wanted: list[float]) -> None:
    """At least a fifth of the span apart, in ones, twos and fives."""
    assert ticks(low, high) == pytest.approx(wanted)


def label(seen: Seen, text: str) -> Word:
    return seen.word(text)


def test_a_line_alone_has_its_name_at_three_fifths_and_above() -> None:
    points = tuple((float(n), float(n)) for n in range(11))
    seen = chart([Line("rises", points)])
    (curve,) = curves(seen)
    name = label(seen, "rises")
    assert (name.x, name.y) == pytest.approx((curve.points[6][0], curve.points[6][1] - 6), abs=0.11)
    assert name.anchor == "end"  # right of 0.55 of the width


def test_names_of_several_lines_stand_each_at_its_own_place() -> None:
    """At 0.95 of the points, and 0.25 earlier for each line more."""
    points = tuple((float(n), float(n)) for n in range(21))
    seen = chart([Line(f"line {n}", tuple((x, (n + 1) * y) for x, y in points)) for n in range(4)])
    assert len({curve.said.get("stroke-dasharray") for curve in curves(seen)}) == 4
    for number, (curve, place, anchor) in enumerate(
        zip(curves(seen), (19, 14, 9, 4), ("end", "end", "start", "start"), strict=True)
    ):
        name = label(seen, f"line {number}")
        assert (name.x, name.y) == pytest.approx(
            (curve.points[place][0], curve.points[place][1] - 6), abs=0.11
        )
        assert name.anchor == anchor


def test_of_two_lines_the_first_is_named_near_its_end_and_the_second_before() -> None:
    points = tuple((float(n), float(n)) for n in range(21))
    seen = chart([Line("upper", points), Line("lower", tuple((x, 0.5 * y) for x, y in points))])
    for curve, text, place in zip(curves(seen), ("upper", "lower"), (19, 14), strict=True):
        assert seen.word(text).x == pytest.approx(curve.points[place][0], abs=0.11)


@pytest.mark.parametrize(("at", "place"), [(0.0, 0), (0.3, 3), (1.0, 9)])
def test_a_name_stands_where_it_is_told_and_below_where_it_is_told(at: float, place: int) -> None:
    points = tuple((float(n), 10.0 - n) for n in range(10))
    for below, right, down in ((False, 0.0, -6.0), (True, 8.0, 14.0)):
        seen = chart([Line("falls", points, at, below)])
        (curve,) = curves(seen)
        name = label(seen, "falls")
        assert (name.x, name.y) == pytest.approx(
            (curve.points[place][0] + right, curve.points[place][1] + down), abs=0.11
        )
        assert name.anchor == ("end" if curve.points[place][0] > 187 and not below else "start")


def test_limits_run_across_the_plane_at_their_numbers() -> None:
    seen = chart(
        [Line("it", ((0.0, 0.0), (10.0, 100.0)))], [Mark("most", None, 80.0), Mark("end", 4.0, None)]
    )
    dotted = [p for p in seen.of("path") if p.said.get("stroke-dasharray") == "1 3"]
    level, upright = dotted
    assert level.box[::2] == (LEFT, RIGHT)
    assert level.box[1] == level.box[3]
    assert read(seen, level.points[0])[1] == pytest.approx(80, abs=0.5)
    assert upright.box[1::2] == (TOP, FLOOR)
    assert upright.box[0] == upright.box[2]
    assert read(seen, upright.points[0])[0] == pytest.approx(4, abs=0.05)
    most, end = label(seen, "most"), label(seen, "end")
    assert (most.x, most.y, most.anchor) == pytest.approx((56, level.box[1] - 4, "start"), abs=0.11)
    assert (end.x, end.y, end.anchor) == pytest.approx((upright.box[0] - 4, 22, "end"), abs=0.11)


@pytest.mark.parametrize(
    ("x", "y", "anchor"), [(2.0, 50.0, "start"), (9.0, 50.0, "end"), (0.0, 0.0, "start")]
)
def test_the_own_point_is_a_ring_round_a_dot_with_its_name_beside(x: float, y: float, anchor: str) -> None:
    """Its name stands to the left where the point lies right of six tenths of the width."""
    seen = chart([Line("it", ((0.0, 0.0), (10.0, 100.0)))], [Mark("you", x, y)])
    ring, dot = seen.of("circle")
    middle = ((ring.box[0] + ring.box[2]) / 2, (ring.box[1] + ring.box[3]) / 2)
    assert read(seen, middle) == pytest.approx((x, y), abs=0.3)
    assert ((dot.box[0] + dot.box[2]) / 2, (dot.box[1] + dot.box[3]) / 2) == pytest.approx(middle, abs=0.01)
    assert (ring.box[2] - ring.box[0], dot.box[2] - dot.box[0]) == pytest.approx((10, 3), abs=0.1)
    assert dot.solid
    assert not ring.solid
    name = label(seen, "you")
    assert (name.x, name.y, name.anchor) == pytest.approx(
        (middle[0] + (8 if anchor == "start" else -8), middle[1] + 14, anchor), abs=0.11
    )


def test_marks_outside_the_lines_widen_the_axes() -> None:
    seen = chart(
        [Line("it", ((2.0, 10.0), (4.0, 20.0)))],
        [Mark("you", 0.0, 40.0), Mark("most", None, 50.0), Mark("late", 8.0, None)],
    )
    ring, _ = seen.of("circle")
    assert ring.box[0] + 5 == pytest.approx(LEFT, abs=0.1)
    assert read(seen, (LEFT, TOP))[1] == pytest.approx(54, abs=0.7)
    assert read(seen, (RIGHT, FLOOR)) == pytest.approx((8, 0), abs=0.2)
