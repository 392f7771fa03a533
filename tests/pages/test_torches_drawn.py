"""Torch and rod in drawings of the exercises: leaning as the table of holds says, at the metal they heat, the same everywhere."""

import itertools
import math

import pytest

from calc.class_plan.drawings import cut_run, hold, socket, stand
from calc.data.tables import table
from calc.show.drawings import frame, pools, sparks, strip, tacks
from calc.show.drawings.torch_shapes import arc, bar, box, melt, rod, sheet, torch
from tests.pages.svg_shapes import Point, Seen, Shape, inside

HOLDS = {
    (row.exercise, row.what.split(" ")[0] + (" across" if "across" in row.what else "")): row
    for row in table("torch-holds-benchbook-2026")
}
SEEN_FROM_THE_SIDE = ("puddle", "corner", "bead", "butt", "lap", "tee", "braze-weld")


def bare(body: str) -> Seen:
    return Seen(f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 340 300">{body}</svg>')


def axes(seen: Seen) -> list[tuple[float, Point, float]]:
    """Of each torch: its lean in degrees, the tip of its cone, and how far that is from where the flame points.

    A cone is solid with five corners, the first its tip; a tip has six and is hollow, its first and last the mouth.
    """
    cones = [s for s in seen.of("polygon") if s.solid and len(s.points) == 6]
    tips = [s for s in seen.of("polygon") if len(s.points) == 7 and "paper" in s.said.get("fill", "")]
    found = []
    for cone, tip in zip(cones, tips, strict=True):
        point = cone.points[0]
        back = tuple((a + b) / 2 for a, b in zip(tip.points[2], tip.points[3], strict=True))
        found.append(
            (
                math.degrees(math.atan2(point[1] - back[1], back[0] - point[0])),
                point,
                math.dist(point, back),
            )
        )
    return found


def middle(exercise: str, what: str) -> float:
    row = HOLDS[exercise, what]
    return (row.low + row.high) / 2


def outline(seen: Seen) -> list[Shape]:
    """Pieces of metal as drawn."""
    return [s for s in seen.shapes if s.kind in ("polygon", "rect") and not s.solid]


@pytest.mark.parametrize("lean", [0, 30, 45, 90, 140, 180])
@pytest.mark.parametrize("off", [9.0, 24.0])
def test_a_torch_points_at_its_place_and_is_even_to_both_sides(lean: float, off: float) -> None:
    """Cone 18 long, tip 36, tube 66; across it 9, 16 and 16; flame edges from beside the mouth to 17 beside the place."""
    seen = bare(torch(170, 150, math.radians(lean), off=off))
    ux, uy = math.cos(math.radians(lean)), -math.sin(math.radians(lean))

    def place(point: Point) -> tuple[float, float]:
        x, y = point[0] - 170, point[1] - 150
        return x * ux + y * uy, -x * uy + y * ux

    ((angle, _, _),) = axes(seen)
    assert angle % 360 == pytest.approx(lean, abs=0.3)
    cone, tip = ([place(p) for p in s.points] for s in seen.of("polygon"))
    flames = [[place(p) for p in s.points] for s in seen.of("path")]
    ends = {"cone": (off, off + 18), "tip": (off + 18, off + 18 + 36 + 66)}
    for name, points in (("cone", cone), ("tip", tip)):
        along = [a for a, _ in points]
        assert (min(along), max(along)) == pytest.approx(ends[name], abs=0.15)
        aside = sorted(b for _, b in points[:-1])
        assert [a + b for a, b in zip(aside, aside[::-1], strict=True)] == pytest.approx(
            [0] * len(aside), abs=0.25
        )
    assert max(b for _, b in tip) == pytest.approx(8, abs=0.15)
    assert max(b for _, b in cone) == pytest.approx(4.5, abs=0.15)
    assert {round(a) for a, b in tip if abs(b) > 7} == {round(off + 54), round(off + 120)}
    assert sorted(round(flame[1][1]) for flame in flames) == [-17, 17]
    for flame in flames:
        assert flame[1][0] == pytest.approx(2, abs=0.15)
        assert flame[0] == pytest.approx((off + 18, math.copysign(6, flame[1][1])), abs=0.15)


def test_rod_arc_bar_and_box_stand_where_they_are_put() -> None:
    (line,) = bare(rod(100, 100, math.radians(150), 50)).of("line")
    assert line.points == ((100, 100), pytest.approx((100 - 50 * math.sqrt(0.75), 75), abs=0.1))
    (turn,) = bare(arc(100, 100, 40, 0, math.pi / 2)).of("path")
    assert turn.points[0] == (140, 100)
    assert turn.points[-1] == pytest.approx((100, 60), abs=0.1)
    assert all(
        math.dist(p, (100, 100)) == pytest.approx(40, abs=0.1) and p[0] >= 99.9 and p[1] <= 100.1
        for p in turn.points
    )
    lying = bare(bar(10, 20, 90, 13))
    assert lying.of("polygon")[0].box == (10, 20, 100, 33)
    levels = sorted(p.points[0][0] + p.points[0][1] for p in lying.of("path"))
    assert [round(b - a) for a, b in itertools.pairwise(levels)] == [9] * (len(levels) - 1)
    narrow = bare(sheet([(0, 0), (40, 0), (40, 40), (0, 40)], 7))
    assert len(narrow.of("path")) == 11  # 80 in sevens, both ends left out
    brick = bare(box(10, 20, 80, 30, "brick"))
    assert brick.of("rect")[0].box == (10, 20, 90, 50)
    (word,) = brick.words
    assert (word.x, word.y, word.anchor) == (50, 40, "middle")
    assert not bare(box(10, 20, 80, 30)).words
    assert bare(melt("M0 0H10V10z")).of("path")[0].said["fill-opacity"] == "0.35"


@pytest.mark.parametrize("exercise", SEEN_FROM_THE_SIDE)
def test_torch_and_rod_lean_as_the_table_of_holds_says(exercise: str) -> None:
    """The sheet lies at 206; the puddle is at 168; the run goes to the left, torch behind it, rod before it."""
    seen = Seen(hold.drawing(exercise).svg)
    ((angle, tip, _),) = axes(seen)
    lean = middle(exercise, "torch")
    assert angle == pytest.approx(lean, abs=0.5)
    far = HOLDS[exercise, "tip"].high > 0.2
    assert math.dist(tip, (168, 204)) == pytest.approx(24 if far else 9, abs=0.3)
    arcs = [
        p
        for p in seen.of("path")
        if p.said.get("stroke-width") == "1.5" and len(p.points) > 20 and p.points[0][1] == 206
    ]
    assert arcs[0].points[0] == (236, 206)
    assert arcs[0].points[-1] == pytest.approx(
        (168 + 68 * math.cos(math.radians(lean)), 206 - 68 * math.sin(math.radians(lean))), abs=0.1
    )
    rods = [line for line in seen.of("line") if line.said.get("stroke-width") == "5"]
    assert bool(rods) == ((exercise, "rod") in HOLDS)
    for each in rods:
        (x1, y1), (x2, y2) = each.points
        assert x2 < x1 < 168
        assert math.degrees(math.atan2(y1 - y2, x1 - x2)) == pytest.approx(middle(exercise, "rod"), abs=0.4)
        assert math.dist((x1, y1), (168, 206)) < 24
    for arc_of_rod in [p for p in seen.of("path") if len(p.points) > 20 and p.points[-1] == (102, 206)]:
        up = math.radians(middle(exercise, "rod"))
        assert arc_of_rod.points[0] == pytest.approx(
            (168 - 66 * math.cos(up), 206 - 66 * math.sin(up)), abs=0.1
        )
    ways = [(tail, tip) for tail, tip in seen.arrows if tail[1] == tip[1]]
    assert [tip[0] < tail[0] for tail, tip in ways] == [True]
    assert seen.points("bead behind", (288, 208), 6)
    ripples = [p for p in seen.of("path") if p.points[0] == (186, 206)]
    assert ripples[0].box[2] == 186 + 8 * 16
    assert ripples[0].box[1] == pytest.approx(206 - (3 if rods else 1.5), abs=0.1)
    cone = [word for word in seen.words if word.text in ("tip of the cone", "off")]
    assert cone[0].y < cone[1].y
    assert any(tail[0] > 90 and math.dist(tip, (165, 190)) < 4 for tail, tip in seen.arrows)


@pytest.mark.parametrize(
    ("kind", "lean", "at"),
    [
        ("sheet", 90, (170, 168)),
        ("corner", 90, (170, 146)),
        ("butt", 90, (170, 167)),
        ("lap", 180 - 52.5, (150, 188)),
        ("braze-lap", 180 - 52.5, (150, 188)),
        ("tee", 45, (137, 216)),
    ],
)
def test_the_flame_on_a_joint_points_at_the_metal_to_melt(kind: str, lean: float, at: Point) -> None:
    """Upright where both sides are alike; across a lap 45 to 60 degrees, into the corner of a tee 40 to 50."""
    seen = Seen(stand.drawing(kind).svg)
    ((angle, tip, _),) = axes(seen)
    assert angle == pytest.approx(lean, abs=0.5)
    assert 8 <= math.dist(tip, at) <= 24.5
    pools_drawn = [p for p in seen.of("path") if "fill-opacity" in p.said]
    assert any(p.away(at) < 8 or inside(at, p.points) for p in pools_drawn)
    names = {"sheet": 2, "corner": 2, "butt": 2, "lap": 0, "braze-lap": 0, "tee": 1}
    bricks = [s for s in seen.of("rect") if s.dashed]
    assert sum(word.text == "brick" for word in seen.words) == names[kind]
    assert len(bricks) == (names[kind] or 1)  # the shim of a lap is drawn like a brick
    for word in seen.words:
        if word.text == "brick":
            assert any(inside((word.x, word.y - 5), brick.points) for brick in bricks)
    if kind in ("sheet", "corner", "butt"):
        lefts = sorted(
            x
            for s in (*outline(seen), *bricks)
            for x in (s.box[0], s.box[2])
            if "paper" not in s.said.get("fill", "")
        )
        assert [a + b for a, b in zip(lefts, lefts[::-1], strict=True)] == pytest.approx(
            [340] * len(lefts), abs=0.2
        )


@pytest.mark.parametrize(
    ("kind", "words", "place"),
    [
        ("sheet", "nothing under", (164, 190)), ("corner", "touch", (170, 168)), ("corner", "melted through?", (170, 171)), ("butt", "meeting all along", (160, 170)),
        ("butt", "melted through:", (165, 189)), ("lap", "upper sheet", (272, 177)), ("lap", "at the edge", (160, 176)), ("lap", "flame more on this one", (118, 203)),
        ("braze-lap", "rod at this edge", (160, 177)), ("tee", "square to it", (130, 218)), ("tee", "flat as on the", (152, 226)),
    ],
)  # fmt: skip
def test_words_of_a_joint_point_at_what_they_name(kind: str, words: str, place: Point) -> None:
    """Places where the sheets, the puddle and the edges are drawn."""
    seen = Seen(stand.drawing(kind).svg)
    assert seen.points(words, place, 12)


def test_a_cut_starts_half_over_the_edge_and_goes_on_leaning() -> None:
    start = Seen(cut_run.drawing("start").svg)
    ((angle, tip, _),) = axes(start)
    plate = next(s for s in start.of("polygon") if s.box[2] - s.box[0] > 150)
    assert angle == pytest.approx(90, abs=0.3)
    assert tip[0] == plate.box[2]
    assert plate.box[1] - tip[1] == pytest.approx(8, abs=0.2)
    go = Seen(cut_run.drawing("go").svg)
    ((angle, tip, _),) = axes(go)
    row = next(
        row for row in table("torch-holds-benchbook-2026") if row.exercise == "cut" and "leans" in row.what
    )
    assert 90 - angle == pytest.approx((row.low + row.high) / 2, abs=0.5)
    upright = [line for line in go.of("line") if line.dashed]
    assert [line.points for line in upright] == [((166, 148), (166, 36))]
    lags = [p for p in go.of("path") if p.box[1::2] == (160, 186) and len(p.points) > 5]
    assert len(lags) == 12
    steps = [b.points[0][0] - a.points[0][0] for a, b in itertools.pairwise(lags)]
    assert steps == [12] * 11
    lines = Seen(cut_run.drawing("lines").svg)
    chalk = [line for line in lines.of("line") if line.dashed]
    assert [line.points for line in chalk] == [((50 + 36 * n, 20), (50 + 36 * n, 236)) for n in range(1, 6)]
    assert [(w.text, w.x) for w in lines.words if w.text.isdigit()] == [
        (str(n), 50 + 36 * n) for n in range(1, 6)
    ]
    assert lines.tip_near((86, 128), 0.1)
    assert lines.tip_near((122, 128), 0.1)


@pytest.mark.parametrize("step", socket.STEPS)
def test_the_socket_stands_even_in_its_hole(step: str) -> None:
    seen = Seen(socket.drawing(step).svg)
    metal = [s for s in seen.of("polygon") if not s.solid and len(s.points) == 5]
    edges = sorted(x for s in metal for x in (s.box[0], s.box[2]))
    assert [a + b for a, b in zip(edges, edges[::-1], strict=True)] == pytest.approx([340] * 8, abs=0.1)
    walls = [s for s in metal if s.box[2] - s.box[0] == 8]
    assert len(walls) == 2
    assert all(s.box[1::2] == (126, 204) for s in walls)
    leans = sorted(angle for angle, _, _ in axes(seen))
    assert leans == pytest.approx({"fit": [], "warm": [40, 140], "feed": [40]}[step], abs=0.4)
    for _, tip, _ in axes(seen):
        assert tip[1] < 150
        assert any(wall.away(tip) < 32 for wall in walls)


@pytest.mark.parametrize(("count", "wanted"), [(3, [1, 3, 2]), (5, [1, 4, 3, 5, 2])])
def test_tacks_stand_evenly_between_the_ends_and_carry_their_order(count: int, wanted: list[int]) -> None:
    seen = Seen(tacks.drawing(count).svg)
    numbers = [(int(w.text), w.x) for w in seen.words if w.text.isdigit()]
    assert [n for n, _ in numbers] == wanted
    assert [x for _, x in numbers] == pytest.approx(
        [44 + 252 / (count - 1) * n for n in range(count)], abs=0.1
    )
    assert all(w.y == 101 for w in seen.words if w.text.isdigit())
    upper, lower = seen.of("rect")
    assert (upper.box, lower.box) == ((30, 36, 310, 96), (30, 96, 310, 156))
    assert seen.word("one sheet").y < 96 < seen.word("the other").y
    assert (seen.of("path")[0].box[0], seen.of("path")[0].box[2]) == (30, 310)


@pytest.mark.parametrize("kind", pools.KINDS)
def test_three_looks_of_a_puddle_stand_each_in_its_row(kind: str) -> None:
    seen = Seen(pools.drawing(kind).svg)
    heads = [w for w in seen.words if w.size == 18]
    assert [(w.x, w.y) for w in heads] == [(152, 24 + 108 * n) for n in range(3)]
    assert [line.box for line in seen.of("line") if line.said["stroke-width"] == "1"] == [
        (8, 108, 332, 108),
        (8, 216, 332, 216),
    ]
    for number, head in enumerate(heads):
        top = 8 + 108 * number
        own = [s for s in seen.shapes if top <= s.box[1] and s.box[3] <= top + 106 and s.box[2] <= 150]
        assert own, head.text
        middles = [(s.box[1] + s.box[3]) / 2 for s in own if "fill-opacity" in s.said or s.kind == "circle"]
        assert all(abs(y - (top + 46)) <= 33 for y in middles)
    whole = [s for s in seen.shapes if s.said.get("stroke-width") != "1"]
    assert all(s.box[2] <= 150 for s in whole)


def test_streams_of_sparks_go_to_the_right_from_their_wheel_each_as_far_as_its_kind() -> None:
    """Drawn about as the printed lengths of 65, 55, 25 and 50 inches stand to each other."""
    seen = Seen(sparks.drawing().svg)
    reaches = []
    for number, told in enumerate(sparks.KINDS.values()):
        middle_of_row = 104 * number + 64
        assert (seen.word(told).x, seen.word(told).y) == (4, 104 * number + 18)
        streams = [s for s in seen.of("line") if s.points[0] == (38, middle_of_row)]
        reaches.append(max((s.box[2] - 38 for s in streams), default=0))
        (wheel,) = [s for s in seen.of("path") if abs((s.box[1] + s.box[3]) / 2 - middle_of_row) < 1]
        assert (wheel.points[0], wheel.points[-1]) == ((14, middle_of_row - 34), (14, middle_of_row + 34))
        tilt = [math.atan2(s.points[1][1] - middle_of_row, s.points[1][0] - 38) for s in streams]
        assert sum(tilt) == pytest.approx(0, abs=0.09)
    assert [reach / reaches[0] for reach in reaches] == pytest.approx(
        [1, 55 / 66, 25 / 66, 50 / 66, 0], abs=0.2
    )
    assert reaches[0] > reaches[1] > reaches[3] > reaches[2] > reaches[4] == 0


def test_in_front_of_wood_the_flame_runs_along_the_frame_and_the_solder_comes_from_the_far_side() -> None:
    seen = Seen(frame.drawing().svg)
    ((angle, tip, _),) = axes(seen)
    rings = list(seen.of("circle"))
    assert angle % 360 == pytest.approx(180, abs=0.3)
    assert {((c.box[0] + c.box[2]) / 2, (c.box[1] + c.box[3]) / 2) for c in rings} == {(170, 136)}
    assert sorted(round((c.box[2] - c.box[0]) / 2) for c in rings) == [18, 25, 32]
    assert 8 <= 170 - 32 - tip[0] <= 12
    (solder,) = [line for line in seen.of("line") if line.said["stroke-width"] == "5"]
    assert abs(math.dist(solder.points[0], (170, 136)) - 32) < 3
    assert solder.points[1][0] > solder.points[0][0] > 170
    shield = next(s for s in seen.of("polygon") if s.box[2] - s.box[0] == 260)
    wood = next(s for s in seen.of("rect"))
    assert wood.box[3] < shield.box[1] < shield.box[3] < 136 - 32
    assert seen.points("tube in its coupling", (170, 170), 1)
    assert any(math.dist(tip, (104, 150)) < 1 for _, tip in seen.arrows)


def test_a_strip_is_heated_across_in_the_band_and_bent_there() -> None:
    mark, heat, bend = (Seen(strip.drawing(step).svg) for step in ("mark", "heat", "bend"))
    assert [line.points for line in mark.of("line")] == [((140, 60), (140, 156)), ((190, 60), (190, 156))]
    assert mark.points("chalk: the band", (165, 72), 0.1)
    assert mark.points("crayon stroke", (216, 152), 0.1)
    assert mark.word("vise").box[2] < 140
    assert mark.word("end you pull").box[0] > 190
    ((angle, tip, _),) = axes(heat)
    assert angle == pytest.approx(90, abs=0.3)
    assert tip[0] == 165
    (warm,) = [p for p in heat.of("path") if "fill-opacity" in p.said]
    assert warm.box == (140, 156, 190, 174)
    assert sorted(tip[0] - tail[0] for tail, tip in heat.arrows) == [-40, 40]
    assert [word.text for word in bend.words if bend.word("vise") is word]
    (hot,) = [p for p in bend.of("path") if "fill-opacity" in p.said]
    assert hot.points[0] == (140, 156)
    assert hot.box[1] < 130
