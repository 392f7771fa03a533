"""Where things stand in the edge of a cut, in wrong edges and in faults of a bead."""

import math
from itertools import pairwise

import pytest

from calc.show.drawings import cut, faults
from tests.pages.svg_shapes import Seen, Shape


@pytest.mark.parametrize(
    ("thick", "minutes", "share", "beat"),
    [(12.0, 0.36, 0.1, 0.5), (50.0, 0.18, 0.2, 2.0), (3.0, 0.6, 0.0, 0.1)],
)
def test_the_drag_of_a_cut_is_measured_at_a_line_in_the_middle(
    thick: float, minutes: float, share: float, beat: float
) -> None:
    """120 high for the thickness: 12 mm at 6 mm/s are 30 in half a second; 50 mm at 3 mm/s 14.4 in two; 3 mm at 10 mm/s 40 in a tenth."""
    seen = Seen(cut.drawing(thick * 1e-3, minutes / 60, share * thick * 1e-3, "iso").svg)
    step = minutes / 60 * beat * 120 / (thick * 1e-3)
    lag = share * 120
    (plate,) = seen.of("rect")
    assert plate.box == (8, 46, 332, 166)
    heads = [p.points[0][0] for p in seen.of("path")]
    assert heads == pytest.approx([8 + lag + step * (n + 1) for n in range(len(heads))], abs=0.1)
    assert heads[-1] < 330 <= heads[-1] + step + 0.1
    for path in seen.of("path"):
        assert path.points[0][1] == 46
        assert path.points[-1] == pytest.approx((path.points[0][0] - lag, 166), abs=0.11)
    shown = heads[len(heads) // 2]
    dashes = [line for line in seen.of("line") if line.dashed]
    assert [line.box for line in dashes] == [
        pytest.approx((shown, 46, shown, 186), abs=0.1),
        pytest.approx((shown - lag, 166, shown - lag, 186), abs=0.1),
    ]
    rows = [seen.word(text) for text in ("dashes: drag", "one line for each", "from top to bottom")]
    assert [(word.x, word.y) for word in rows] == [(8, 208), (8, 232), (8, 256)]
    assert f"{beat:g} s" in rows[1].text
    ((tail, tip),) = seen.arrows
    assert tail[1] == tip[1] == seen.word("the torch").y - 5
    assert tip[0] > tail[0] > seen.word("the torch").box[2]
    assert seen.height == 266


def test_a_cut_slower_than_its_rarest_line_shows_lines_as_close_as_they_may_stand() -> None:
    seen = Seen(cut.drawing(0.15, 0.00001, 0.015, "iso").svg)
    heads = [p.points[0][0] for p in seen.of("path")]
    assert [b - a for a, b in pairwise(heads)] == pytest.approx([14] * (len(heads) - 1), abs=0.11)


def test_each_wrong_edge_shows_its_mistake_inside_its_own_row() -> None:
    """A face 120 wide and 62 high at the left of each of four rows 112 apart; what hangs below stays within 14."""
    seen = Seen(cut.faults().svg)
    tops = [10 + 112 * n for n in range(4)]
    for top, (name, said) in zip(tops, cut.FAULTS, strict=True):
        assert (seen.word(name).x, seen.word(name).y) == (142, top + 14)
        assert [(seen.word(text).x, seen.word(text).y) for text in said] == [
            (142, top + 36 + 19 * n) for n in range(3)
        ]
    rows: dict[int, list[Shape]] = {top: [] for top in tops}
    for shape in seen.shapes:
        left, high, right, low = shape.box
        (top,) = [top for top in tops if top - 5 <= high <= low <= top + 62 + 14]
        rows[top].append(shape)
        assert 8 <= left <= right <= 128.5
    fast, slow, hot, oxygen = (rows[top] for top in tops)
    for row, top in zip((fast, slow, hot, oxygen), tops, strict=True):
        face = row[0].box
        assert (face[0], face[2], face[3]) == (8, 128, top + 62)
    corner = (128.0, 10 + 62.0)
    uncut = [line for line in fast if line.kind == "line" and not line.dashed]
    assert len(uncut) == 3
    for line in uncut:
        assert line.points[0][0] == corner[0]
        assert line.points[1][1] == corner[1]
    (front,) = [line for line in fast if line.dashed]
    assert all(
        line.points[0][1] > front.points[0][1] and line.points[1][0] > front.points[1][0] for line in uncut
    )
    drops = [shape for shape in slow if shape.solid]
    assert len(drops) == 5
    assert all(drop.box[1] == 122 + 62 and 10 <= drop.box[3] - drop.box[1] <= 13 for drop in drops)
    assert len([s for s in slow if s.said.get("stroke-width") == "2.5"]) == 5
    beads = [shape for shape in hot if shape.kind == "circle"]
    assert len(beads) == 7
    assert all(bead.solid and 234 <= (bead.box[1] + bead.box[3]) / 2 <= 240 for bead in beads)
    (shell,) = [shape for shape in hot if shape.kind == "rect"]
    assert shell.box == (12, 234 + 62, 124, 234 + 70)
    rounded = hot[0].points
    assert (8.0, 234.0) not in rounded
    assert any(math.dist(point, (24, 234)) < 0.2 for point in rounded)
    assert any(math.dist(point, (112, 234)) < 0.2 for point in rounded)
    edges = [shape for shape in oxygen if shape.dashed]
    depths = sorted(shape.points[len(shape.points) // 2][1] - 346 for shape in edges)
    assert depths == pytest.approx([9, 19], abs=0.1)  # bowed toward each other by half of six from 6 and 22
    rough = [s for s in oxygen if s.kind == "line"]
    assert len(rough) == 12
    assert all(355 <= s.box[1] < s.box[3] <= 365 for s in rough)


def test_all_faults_of_a_bead_stand_in_two_columns_with_their_names_below() -> None:
    seen = Seen(faults.drawing("all").svg)
    assert len(seen.arrows) == len(faults.FAULTS) == len(seen.words)
    for place, name in enumerate(faults.FAULTS.values()):
        x, y = 10 + 170 * (place % 2), 10 + 124 * (place // 2)
        assert (seen.word(name).x, seen.word(name).y) == (x, y + 100)
        cell = [tip for _, tip in seen.arrows if x <= tip[0] <= x + 150 and y <= tip[1] <= y + 84]
        assert len(cell) == 1
    assert seen.height == 5 * 124


@pytest.mark.parametrize("fault", faults.FAULTS)
def test_one_fault_is_drawn_twice_as_large_as_among_the_others(fault: str) -> None:
    place = list(faults.FAULTS).index(fault)
    x, y = 10 + 170 * (place % 2), 10 + 124 * (place // 2)
    alone, among = Seen(faults.drawing(fault).svg), Seen(faults.drawing("all").svg)
    ((tail, tip),) = alone.arrows
    small = [(a, b) for a, b in among.arrows if x <= b[0] <= x + 150 and y <= b[1] <= y + 84]
    assert [(tail[0] - 20) / 2, tail[1] / 2, (tip[0] - 20) / 2, tip[1] / 2] == pytest.approx(
        [small[0][0][0] - x, small[0][0][1] - y, small[0][1][0] - x, small[0][1][1] - y], abs=0.1
    )
    left, top, right, foot = (
        min(s.box[0] for s in alone.shapes),
        min(s.box[1] for s in alone.shapes),
        max(s.box[2] for s in alone.shapes),
        max(s.box[3] for s in alone.shapes),
    )
    assert 20 <= left < right <= 320
    assert 0 <= top < foot <= 168
