"""Where things stand in drawings to scale, worked by hand from the figures: heat maps and zones."""

import itertools
import math

import pytest

from calc.show.drawings import heat_map, zone
from calc.show.drawings.heat_map import Isotherm
from tests.pages.drawn import isotherms
from tests.pages.svg_shapes import Point, Seen, Shape

MM = 1e-3


def near(one: Point, other: Point, within: float = 0.3) -> bool:
    """Whether two places are about one."""
    return math.dist(one, other) <= within


def oval(front: float, tail: float, half: float, label: str = "hot", *, through: bool = False) -> Isotherm:
    """An oval line of equal temperature, lengths in mm."""
    turns = [math.pi * n / 60 for n in range(61)]
    middle, long = (front - tail) / 2, (front + tail) / 2
    side = [((middle + long * math.cos(turn)) * MM, half * math.sin(turn) * MM) for turn in turns]
    return Isotherm(label, tuple(side), through)


def plates(seen: Seen) -> list[Shape]:
    """Boxes of a drawing."""
    return seen.of("rect")


# The heat map: the torch 84 from the right edge, its path at 112; the second line fills 0.85 of 78 aside or 70 ahead.


@pytest.mark.parametrize(("half", "scale"), [(5.0, 0.85 * 78 / 5), (1.0, 70 / 2)])
def test_lines_of_heat_are_as_far_ahead_aside_and_behind_as_the_scale_makes_them(
    half: float, scale: float
) -> None:
    """Two lines: 1 mm and 2 mm ahead, 2 mm and 4 mm behind."""
    lines = [oval(1, 2, half / 2), oval(2, 4, half)]
    seen = Seen(heat_map.drawing(lines, 60 * MM, "Hot.").svg)
    drawn = [path for path in seen.of("path") if len(path.points) > 100]
    assert len(drawn) == 2
    for path, front, tail, aside in zip(drawn, (1, 2), (2, 4), (half / 2, half), strict=True):
        left, top, right, foot = path.box
        assert right == pytest.approx(256 + front * scale, abs=0.2)
        assert left == pytest.approx(256 - tail * scale, abs=0.2)
        assert (112 - top, foot - 112) == pytest.approx((aside * scale, aside * scale), abs=0.2)
    assert drawn[0].solid
    assert "fill-opacity" in drawn[0].said
    assert not drawn[0].dashed
    assert drawn[1].dashed
    assert drawn[1].said["fill"] == "none"


def test_a_line_that_leaves_the_window_is_cut_at_its_edge_and_not_filled() -> None:
    seen = Seen(heat_map.drawing([oval(2, 60, 5), oval(3, 70, 6), oval(30, 80, 20)], 60 * MM, "Hot.").svg)
    runs = [path for path in seen.of("path") if len(path.points) > 5 and path.box[1] < 200]
    scale = 0.85 * 78 / 6
    assert not any(run.solid for run in runs)
    for run in runs:
        left, top, right, foot = run.box
        assert left >= 4
        assert right <= 336
        assert top >= 112 - 78
        assert foot <= 112 + 78
    assert min(run.box[0] for run in runs) < 20
    assert any(run.box[2] == pytest.approx(256 + 3 * scale, abs=0.3) for run in runs)


def test_one_line_alone_decides_its_own_scale() -> None:
    seen = Seen(heat_map.drawing([oval(1, 2, 4)], 60 * MM, "Hot.").svg)
    (path,) = [path for path in seen.of("path") if len(path.points) > 100]
    assert path.box[3] - path.box[1] == pytest.approx(2 * 0.85 * 78, abs=0.3)


def test_the_torch_its_path_its_arrow_and_its_word() -> None:
    seen = Seen(heat_map.drawing([oval(1, 2, 2), oval(2, 4, 5)], 20 * MM, "Hot.").svg)
    level = [line for line in seen.of("line") if line.points[0][1] == line.points[1][1] == 112]
    upright = [
        line
        for line in seen.of("line")
        if line.points[0][0] == line.points[1][0] == 256 and line.box[1] < 112
    ]
    path, cross = (
        max(level, key=lambda line: line.box[2] - line.box[0]),
        min(level, key=lambda line: line.box[2] - line.box[0]),
    )
    assert path.box[::2] == (4, 336)
    assert path.dashed
    assert cross.box[::2] == (250, 262)
    assert upright[0].box[1::2] == (106, 118)
    travel = [(tail, tip) for tail, tip in seen.arrows if tail[1] == tip[1]]
    assert len(travel) == 1
    (tail, tip) = travel[0]
    word = seen.word("travel")
    assert tip[0] > tail[0] >= 256
    assert word.x == tail[0]
    assert 8 < tail[1] - (112 + 78) + 8 < word.box[1] - (112 + 78) + 10
    assert word.box[3] < 236 - 12


def test_the_section_has_each_line_as_wide_as_from_above_and_as_deep_as_it_is_wide() -> None:
    """A plate 5 mm thick: the first line reaches 2 mm to each side, and as deep; the others go through."""
    lines = [
        oval(2, 4, 2, "a"),
        oval(3, 6, 4, "b", through=True),
        oval(4, 8, 8, "c"),
        oval(5, 10, 40, "d", through=True),
    ]
    seen = Seen(heat_map.drawing(lines, 5 * MM, "Hot.").svg)
    scale = 0.85 * 78 / 4
    (plate,) = plates(seen)
    assert plate.box[:3] == (4, 236, 336)
    assert plate.box[3] - 236 == pytest.approx(60, abs=0.1)  # 5 mm would be 82.9: never deeper than 60
    bows = [path for path in seen.of("path") if path.box[1] == 236 and len(path.points) > 10]
    assert len(bows) == 1
    left, top, right, foot = bows[0].box
    assert (left, right) == pytest.approx((170 - 2 * scale, 170 + 2 * scale), abs=0.2)
    assert foot - top == pytest.approx(2 * scale, abs=0.2)
    through = [line for line in seen.of("line") if line.box[1] == 236 and line.box[3] == plate.box[3]]
    assert sorted(line.box[0] for line in through) == pytest.approx(
        sorted(170 + sign * aside * scale for sign in (-1, 1) for aside in (4, 8)), abs=0.2
    )
    assert seen.word("the plate is not drawn to scale").y == pytest.approx(236 + 60 + 26, abs=0.1)
    assert seen.tip_near((170, 232), 1)
    assert [word.y for word in seen.words if len(word.text) == 1] == pytest.approx(
        [348 + 22 * n for n in range(4)], abs=0.1
    )
    keys = [line for line in seen.of("line") if line.box[::2] == (8, 48)]
    assert [line.points[0][1] for line in keys] == pytest.approx([343 + 22 * n for n in range(4)], abs=0.1)
    dashes = [line.said.get("stroke-dasharray") for line in keys]
    assert len(set(dashes)) == 4
    assert bows[0].said.get("stroke-dasharray") == dashes[0]
    assert [line.said.get("stroke-dasharray") for line in through] == [
        dashes[1],
        dashes[1],
        dashes[2],
        dashes[2],
    ]
    assert seen.height == pytest.approx(348 + 88, abs=0.1)


@pytest.mark.parametrize(
    ("thick", "drawn", "told"), [(1.0, 16.575, False), (0.5, 16.0, True), (3.0, 49.725, False)]
)
def test_a_plate_that_is_not_to_scale_says_so(thick: float, drawn: float, told: bool) -> None:
    """4 mm aside are 0.85 of 78; a millimeter is 16.575, and a plate is never drawn thinner than 16."""
    seen = Seen(heat_map.drawing([oval(1, 2, 2), oval(2, 4, 4)], thick * MM, "Hot.").svg)
    (plate,) = plates(seen)
    assert plate.box[3] - plate.box[1] == pytest.approx(drawn, abs=0.1)
    assert any("not drawn to scale" in word.text for word in seen.words) == told


def test_hotter_lines_lie_within_colder_ones() -> None:
    for wide in (3 * MM, 8 * MM):
        seen = Seen(heat_map.drawing(isotherms(wide, 10 * MM), 10 * MM, "Hot.").svg)
        fronts = [path.box[2] for path in seen.of("path") if path.box[1] < 190 and len(path.points) > 5]
        assert fronts[:2] == sorted(fronts[:2])


# The zone: from above the work stands at 170, 176; the wider of both distances is 150.


@pytest.mark.parametrize(
    ("clear", "reach", "height", "nearest"),
    [(10.0, 15.0, 1.0, 6.0), (11.0, 5.0, 3.0, 11.4), (10.0, 15.0, 45.0, None)],
)
def test_a_zone_from_above_and_from_the_side(
    clear: float, reach: float, height: float, nearest: float | None
) -> None:
    path = [(0.0, height), (reach, 0.0)]
    seen = Seen(
        zone.drawing(clear=clear, reach=reach, height=height, path=path, nearest=nearest, rules="iso").svg
    )
    scale = min(150 / max(clear, reach), 230 / height)
    rings = [ring for ring in seen.of("circle") if not ring.solid]
    middle = (170.0, 176.0)
    for ring, far, dashed in zip(rings, (clear, reach), (False, True), strict=True):
        assert ring.box == pytest.approx(
            (170 - far * scale, 176 - far * scale, 170 + far * scale, 176 + far * scale), abs=0.2
        )
        assert ring.dashed is dashed
    work = [dot.box for dot in seen.of("circle") if dot.solid]
    assert near(((work[0][0] + work[0][2]) / 2, (work[0][1] + work[0][3]) / 2), middle)
    ground = max(line.box[1] for line in seen.of("line") if line.box[::2] == (4, 336))
    assert ((work[1][0] + work[1][2]) / 2, ground - (work[1][1] + work[1][3]) / 2) == pytest.approx(
        (170, height * scale), abs=0.2
    )
    walls = [
        line for line in seen.of("line") if line.said["stroke-width"] == "3" and line.box[0] == line.box[2]
    ]
    assert sorted(wall.box[0] for wall in walls) == pytest.approx(
        [170 - clear * scale, 170 + clear * scale], abs=0.1
    )
    assert all(wall.box[3] == ground and wall.box[1] == ground - 26 for wall in walls)
    for sign, flight in zip((-1, 1), seen.of("path"), strict=True):
        assert near(flight.points[0], (170, ground - height * scale))
        assert near(flight.points[-1], (170 + sign * reach * scale, ground))
        assert flight.dashed
    post = [line for line in seen.of("line") if line.box[::2] == (170, 170)]
    assert len(post) == (height * scale > 8)
    if post:
        assert post[0].box[1::2] == pytest.approx((ground - height * scale + 4, ground), abs=0.1)
    ((tail, tip),) = seen.arrows
    assert (tail[0], tip[0]) == pytest.approx((170, 170 + clear * scale), abs=0.1)
    assert tail[1] == tip[1] == pytest.approx(seen.word(f"clear {clear:g} m").y - 5, abs=0.1)
    assert ground < tail[1] < ground + 40
    crosses = [
        line
        for line in seen.of("line")
        if abs(line.box[2] - line.box[0]) == abs(line.box[3] - line.box[1]) == 12
    ]
    middles = sorted({((c.box[0] + c.box[2]) / 2, (c.box[1] + c.box[3]) / 2) for c in crosses})
    slopes = [(c.points[1][1] - c.points[0][1]) / (c.points[1][0] - c.points[0][0]) for c in crosses]
    assert sum(slopes) == 0
    assert sum(slope > 0 for slope in slopes) * 2 == len(slopes)
    if nearest is None:
        assert not crosses
        return
    assert seen.word("what burns, at").box[0] > middles[0][0] + 6
    assert abs(seen.word("what burns, at").y - 5 - middles[0][1]) < 1
    assert [x for x, _ in middles[1:]] == pytest.approx([170 + nearest * scale] * 2, abs=0.1)
    assert {y for _, y in middles[1:]} == {176.0, ground - 8}


def test_what_burns_is_drawn_only_where_it_fits_and_told_in_any_case() -> None:
    """150 for 10 m: 10.4 m are 156 and still drawn, 10.5 m are not."""
    for nearest, drawn in ((10.39, 6), (10.41, 2)):
        seen = Seen(
            zone.drawing(
                clear=10.0, reach=5.0, height=1.0, path=[(0, 1), (5, 0)], nearest=nearest, rules="iso"
            ).svg
        )
        diagonal = [
            line for line in seen.of("line") if line.box[2] - line.box[0] == line.box[3] - line.box[1] == 12
        ]
        assert len(diagonal) == drawn
        assert seen.word("what burns, at 10.4 m")


def test_words_of_a_zone_stand_under_each_other_beside_their_lines() -> None:
    seen = Seen(
        zone.drawing(
            clear=10.0, reach=15.0, height=1.0, path=[(0, 1), (15, 0)], nearest=6.0, rules="us"
        ).svg
    )
    ground = max(line.box[1] for line in seen.of("line") if line.box[::2] == (4, 336))
    rows = [
        seen.word(text)
        for text in (
            "clear 32.8 ft",
            "clear of what burns",
            "sparks 49.2 ft, may go further",
            "what burns, at 19.7 ft",
        )
    ]
    steps = [lower.y - upper.y for upper, lower in itertools.pairwise(rows)]
    assert all(20 <= step <= 30 for step in steps)
    assert rows[0].y - ground == 33
    assert seen.word("From above").box[3] < 26
    assert 326 < seen.word("From the side").box[1] < seen.word("From the side").y == 356
    keys = [line for line in seen.of("line") if line.box[::2] == (8, 44)]
    assert [line.dashed for line in keys] == [False, True]
    assert [line.box[1] for line in keys] == [rows[1].y - 5, rows[2].y - 5]
