"""What holds for every drawing whatever it is given: nothing cut off, nothing covered, every arrow at something."""

import math

import pytest

from calc.show.drawings.hatching import hatched
from tests.pages.drawn import pictures
from tests.pages.svg_shapes import Seen, Shape, crossed, inside, outlines

ALL = {name: Seen(picture.svg) for name, picture in pictures().items()}
MOTION = ("depth", "travel", "you go this way", "the torch goes", "to and fro", "flame away", "clear ")
"""Words beside an arrow that says where something moves, or how far."""
INK_WIDTH = 1.5


@pytest.mark.parametrize("seen", ALL.values(), ids=ALL)
def test_nothing_is_cut_off_by_the_edge_of_the_view(seen: Seen) -> None:
    for word in seen.words:
        left, top, right, foot = word.box
        assert min(left, top) > -1, word.text
        assert right < seen.width + 1, word.text
        assert foot < seen.height + 1, word.text
    ends = [(x, y) for shape in seen.shapes for x, y in shape.points] + [
        end for arrow in seen.arrows for end in arrow
    ]
    for x, y in ends:
        assert -INK_WIDTH <= x <= seen.width + INK_WIDTH
        assert -INK_WIDTH <= y <= seen.height + INK_WIDTH


@pytest.mark.parametrize("seen", ALL.values(), ids=ALL)
def test_the_view_ends_soon_below_the_last_thing_and_is_used_to_both_sides(seen: Seen) -> None:
    boxes = [word.box for word in seen.words] + [shape.box for shape in seen.shapes]
    assert seen.height - max(foot for *_, foot in boxes) <= 50
    assert min(top for _, top, *_ in boxes) <= (50 if seen.words else 75)
    assert min(left for left, *_ in boxes) <= 120
    assert seen.width - max(right for *_, right, _ in boxes) <= 120


@pytest.mark.parametrize("seen", ALL.values(), ids=ALL)
def test_no_word_lies_on_another(seen: Seen) -> None:
    for place, one in enumerate(seen.words):
        for other in seen.words[place + 1 :]:
            wide = min(one.box[2], other.box[2]) - max(one.box[0], other.box[0])
            high = min(one.box[3], other.box[3]) - max(one.box[1], other.box[1])
            assert wide <= 1 or high <= 1, (one.text, other.text)


@pytest.mark.parametrize("name", [name for name in ALL if "chart" not in name])
def test_no_arrow_and_no_line_of_an_outline_runs_through_a_word(name: str) -> None:
    seen = ALL[name]
    for word in seen.words:
        if word.text.replace(".", "").isdigit() or len(word.text) == 1:
            continue  # in a disc or on a dial
        for tail, tip in seen.arrows:
            assert not crossed(word, tail, tip), word.text
        for shape in seen.shapes:
            if float(shape.said.get("stroke-width", "2")) >= 1.5 and not shape.dashed:
                assert not any(
                    crossed(word, a, b) for a, b in zip(shape.points, shape.points[1:], strict=False)
                ), word.text


@pytest.mark.parametrize("name", [name for name, seen in ALL.items() if seen.arrows])
def test_an_arrow_has_its_head_at_its_end_and_is_long_enough_to_be_seen(name: str) -> None:
    seen = ALL[name]
    for (tail, tip), (point, *wings) in zip(seen.arrows, seen.heads, strict=True):
        assert math.dist(tail, tip) >= 10
        assert point == tip
        way = math.atan2(tip[1] - tail[1], tip[0] - tail[0])
        sides = []
        for wing in wings:
            assert math.dist(wing, tip) == pytest.approx(8, abs=0.2)
            back = math.atan2(wing[1] - tip[1], wing[0] - tip[0]) - way - math.pi
            sides.append(math.remainder(back, 2 * math.pi))
        assert min(sides) == pytest.approx(-0.4, abs=0.06)
        assert max(sides) == pytest.approx(0.4, abs=0.06)


@pytest.mark.parametrize("name", [name for name, seen in ALL.items() if seen.arrows and seen.words])
def test_an_arrow_points_at_something(name: str) -> None:
    seen = ALL[name]
    for tail, tip in seen.arrows:
        said = min(seen.words, key=lambda word: word.away(tail)).text
        if said.startswith(MOTION) or said.startswith("gap"):
            continue
        near = min(shape.away(tip) for shape in seen.shapes)
        assert near <= 10 or any(inside(tip, shape.points) for shape in seen.shapes), (said, tip)


@pytest.mark.parametrize("seen", ALL.values(), ids=ALL)
def test_no_line_and_no_shape_is_too_small_to_be_seen(seen: Seen) -> None:
    for shape in seen.shapes:
        left, top, right, foot = shape.box
        if shape.kind in ("line", "circle", "ellipse") and float(shape.said.get("stroke-width", "2")) > 1:
            assert math.hypot(right - left, foot - top) >= 2, shape


@pytest.mark.parametrize("lean", [1, -1])
@pytest.mark.parametrize("step", [4.0, 9.0, 12.0])
@pytest.mark.parametrize(
    "outline",
    [
        ((0, 0), (90, 0), (90, 30), (0, 30)),
        ((10, 5), (60, 5), (60, 90), (30, 50)),
        ((0, 0), (40, 0), (40, 20), (20, 8), (0, 20)),
    ],
)
def test_hatching_fills_its_outline_and_keeps_inside(
    outline: tuple[tuple[float, float], ...], step: float, lean: int
) -> None:
    """Lines x + lean·y = constant, one for each step between the least and the largest of the corners."""
    edge = Shape("polygon", (*outline, outline[0]))
    lines = list(outlines(hatched(outline, step, lean=lean).split('"')[1]))
    levels = [x + lean * y for x, y in outline]
    wanted = {min(levels) + step * n for n in range(1, math.ceil((max(levels) - min(levels)) / step))}
    for a, b in lines:
        assert max(edge.away(a), edge.away(b)) < 0.05
        assert inside(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), outline)
        assert a[0] + lean * a[1] == pytest.approx(b[0] + lean * b[1], abs=0.05)
    assert {round(a[0] + lean * a[1]) for a, _ in lines} == {round(level) for level in wanted}


@pytest.mark.parametrize(
    "name",
    [name for name, seen in ALL.items() if any(s.said.get("stroke-width") == "1" for s in seen.of("path"))],
)
def test_hatching_of_a_drawing_lies_within_what_it_fills(name: str) -> None:
    """Both ends of a line lie on an outline, its middle within it."""
    seen = ALL[name]
    outer = [
        shape for shape in seen.shapes if shape.said.get("stroke-width") != "1" and len(shape.points) > 2
    ]
    if name.startswith("stock"):
        return  # it fills a strip, whose edge is drawn by its pieces
    for line in seen.of("path"):
        if (
            line.said.get("stroke-width") == "1"
            and len(line.points) == 2
            and "fill-opacity" not in line.said
        ):
            near = [shape for shape in outer if max(map(shape.away, line.points)) <= 1.2]
            middle = tuple(sum(pair) / 2 for pair in zip(*line.points, strict=True))
            assert any(inside(middle, shape.points) or shape.away(middle) < 0.5 for shape in near), (
                line.points
            )
