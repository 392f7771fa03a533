"""Where things stand in tubes in their cups and in brazed joints, worked by hand from the figures."""

import math
from itertools import pairwise

import pytest

from calc.show.drawings import braze, tube
from tests.pages.svg_shapes import Point, Seen

MM = 1e-3


def near(one: Point, other: Point, within: float = 0.3) -> bool:
    """Whether two places are about one."""
    return math.dist(one, other) <= within


# Tube in its cup: mouth of the cup at 118; outside diameter at most 130, cup at most 150 long; a gap is 8.


@pytest.mark.parametrize(
    ("outside", "wall", "depth", "filled"),
    [(15.0, 1.0, 12.0, 1.0), (22.0, 2.0, 30.0, 0.5), (100.0, 2.0, 40.0, 2 / 3)],
)
def test_tube_cup_filler_and_arrows(outside: float, wall: float, depth: float, filled: float) -> None:
    seen = Seen(
        tube.drawing(
            outside=outside * MM, wall=wall * MM, depth=depth * MM, gap=0.1 * MM, filled=filled, rules="iso"
        ).svg
    )
    scale = min(130 / outside, 150 / depth)
    tall, thick, deep = outside * scale, wall * scale, depth * scale
    walls = [rect for rect in seen.of("rect") if rect.said["fill"] == "none"]
    skin = max(thick, 6)
    assert walls[0].box == pytest.approx((16, 74, 118 + deep, 74 + thick), abs=0.2)
    assert walls[1].box == pytest.approx((16, 74 + tall - thick, 118 + deep, 74 + tall), abs=0.2)
    above, below = seen.part("filler")
    assert above.box == pytest.approx((118, 66, 118 + deep * filled, 74), abs=0.2)
    assert below.box == pytest.approx((118, 74 + tall, 118 + deep * filled, 82 + tall), abs=0.2)
    upper, lower = seen.of("polygon")
    assert upper.box == pytest.approx((118, 66 - skin, 164 + deep, 74 + thick), abs=0.2)
    assert lower.box == pytest.approx((118, 74 + tall - thick, 164 + deep, 82 + tall + skin), abs=0.2)
    for shape, edge, gap in ((upper, 74 + thick, 66), (lower, 74 + tall - thick, 82 + tall)):
        for corner in ((164 + deep, edge), (118 + deep, edge), (118 + deep, gap), (118, gap)):
            assert any(near(corner, point) for point in shape.points)
    middle = 74 + tall / 2
    assert seen.tip_near((40, 75), 0.3)
    assert seen.tip_near((40, 73 + tall), 0.3)
    assert [tail for tail, tip in seen.arrows if tip[0] == 40] == [pytest.approx((40, middle), abs=0.1)] * 2
    level = [tail for tail, tip in seen.arrows if tail[1] == tip[1]]
    assert level == [pytest.approx((118 + deep / 2, middle - 4), abs=0.2)] * 2
    assert seen.tip_near((118, middle - 4), 0.3)
    assert seen.tip_near((118 + deep, middle - 4), 0.3)
    word = seen.word("depth")
    assert near(((word.box[0] + word.box[2]) / 2, word.y), (118 + deep / 2, middle + 18), 1)
    assert seen.word("outside").y == pytest.approx(middle + 5, abs=0.1)
    assert 40 < seen.word("outside").x < 60
    assert seen.points("filler goes in here", (115, 70), 1)
    ((tail, tip),) = [(tail, tip) for tail, tip in seen.arrows if tail[1] > tip[1] > 82 + tall]
    assert (tail[0] - tip[0], tail[1] - tip[1]) == pytest.approx((20, 30), abs=0.2)
    assert tip == pytest.approx((118 + deep / 2 + 10, 82 + tall + skin + 4), abs=0.2)
    assert 30 <= seen.word("flame first").y - (82 + tall + skin) <= 60
    told = [
        seen.word(text).y
        for text in ("outside 1" if outside in (15, 100) else "outside 22", "depth of cup", "gap 0.1 mm")
    ]
    assert [b - a for a, b in pairwise(told)] == pytest.approx([22, 22], abs=0.1)
    strokes = [line for line in seen.of("line") if line.said["stroke-width"] == "1"]
    per_wall = math.ceil((math.floor(102 + deep) - 6) / 8)
    assert len(strokes) == 2 * per_wall
    for line in strokes:
        assert line.points[0][0] - line.points[1][0] == pytest.approx(
            line.points[1][1] - line.points[0][1], abs=0.3
        )
        assert any(
            box.box[0] - 0.1 <= line.box[0]
            and line.box[2] <= box.box[2] + 0.1
            and box.box[1] - 0.1 <= line.box[1]
            and line.box[3] <= box.box[3] + 0.1
            for box in walls
        )
    times = seen.word("gap 0.1 mm").text
    assert times.endswith(f"drawn {float(f'{8 / (0.1 * scale):.2g}'):g} times")


# A brazed joint: parts 100 wide and 34 thick from 66 downward, the widest gap 110.


@pytest.mark.parametrize(("cold", "hot"), [(0.10, 0.05), (0.02, 0.30), (0.13, 0.13)])
def test_a_gap_its_parts_and_its_words(cold: float, hot: float) -> None:
    seen = Seen(
        braze.drawing(
            form="sleeve",
            outside="steel",
            inside="copper",
            cold=cold * MM,
            hot=hot * MM,
            least=0.05 * MM,
            most=0.13 * MM,
            rules="iso",
        ).svg
    )
    scale = 110 / max(cold, hot, 0.13)
    boxes = [rect.box for rect in seen.of("rect")]
    for left, gap, pair in ((4, cold, boxes[:2]), (118, hot, boxes[2:])):
        assert pair[0] == pytest.approx((left, 66, left + 100, 100), abs=0.1)
        assert pair[1] == pytest.approx((left, 100 + gap * scale, left + 100, 134 + gap * scale), abs=0.1)
    heads = {"cold": 54, "hot": 168, "wanted": 286}
    for text, middle in heads.items():
        (head,) = [word for word in seen.words if word.text == text]
        assert (head.x, head.anchor, head.y) == (middle, "middle", 24)
    bands = [line for line in seen.of("line") if line.box[0] == 246]
    assert all(line.box[2] == 326 for line in bands)
    assert sorted(line.box[1] for line in bands) == pytest.approx(
        [100, 100 + 0.05 * scale, 100 + 0.13 * scale], abs=0.1
    )
    assert [line.dashed for line in sorted(bands, key=lambda line: line.box[1])] == [False, True, True]
    for text, below in (("0.05 mm to", 20), ("0.13 mm", 38)):
        found = [word for word in seen.words if word.text == text and word.x == 286]
        assert len(found) == 1
        assert found[0].y == pytest.approx(100 + min(0.13 * scale, 110) + below, abs=0.1)
    assert seen.word("below:").y - seen.word("above:").y == 22
    assert seen.word("above:").text == "above: outside part, steel"
    assert seen.word("below:").text == "below: inside part, copper"
    hatching = [line for line in seen.of("line") if line.said["stroke-width"] == "1"]
    assert len(hatching) == 4 * 11  # 12 apart over 100 + 34
    for line in hatching:
        assert line.points[0][0] - line.points[1][0] == pytest.approx(
            line.points[1][1] - line.points[0][1], abs=0.2
        )
        assert any(
            b[0] - 0.1 <= line.box[0]
            and line.box[2] <= b[2] + 0.1
            and b[1] - 0.1 <= line.box[1]
            and line.box[3] <= b[3] + 0.1
            for b in boxes
        )


@pytest.mark.parametrize(
    ("cold", "hot", "said"),
    [
        (0.1, 0.1038, "stays near 0.1 mm"),
        (0.1, 0.104, "opens from 0.1 mm cold to 0.1 mm hot"),
        (0.1, 0.096, "closes"),
    ],
)
def test_a_change_of_three_hundredths_of_the_widest_gap_is_told(cold: float, hot: float, said: str) -> None:
    """0.03 of 0.13 mm is 0.0039 mm."""
    assert (
        said
        in braze.drawing(
            form="flat-lap",
            outside="a",
            inside="b",
            cold=cold * MM,
            hot=hot * MM,
            least=0.05 * MM,
            most=0.13 * MM,
            rules="iso",
        ).sentence
    )
    with pytest.raises(ValueError, match="gap"):
        braze.drawing(
            form="sleeve",
            outside="a",
            inside="b",
            cold=cold * MM,
            hot=hot * MM,
            least=0.13 * MM,
            most=0.13 * MM,
        )
