"""Where things stand on dials, flames, bars, turns, stock sheets, holes and swatches, worked by hand."""

import math
from itertools import pairwise

import pytest

from calc.show.drawings import bars, gauges, stock_sheet, swatches, tip_hole, turns
from calc.trade.drawings import flame
from tests.pages.svg_shapes import Point, Seen, inside

PSI = 6894.757293168
MIDDLES = {"Cylinder": (85.0, 100.0), "Delivery": (255.0, 100.0)}


def turned(middle: Point, share: float, radius: float) -> Point:
    """A place on a dial that runs from lower left (225°) clockwise over 270°."""
    turn = math.radians(225 - 270 * share)
    return middle[0] + radius * math.cos(turn), middle[1] - radius * math.sin(turn)


def close(one: Point, other: Point, within: float = 0.2) -> bool:
    return math.dist(one, other) <= within


@pytest.mark.parametrize(
    ("rules", "gas", "held", "end", "given", "delivery_end"),
    [
        ("us", "oxygen", 1500 * PSI, 2000, 10 * PSI, 15), ("us", "oxygen", 2200 * PSI, 4000, 40 * PSI, 60),
        ("us", "acetylene", 200 * PSI, 400, 5 * PSI, 30), ("iso", "acetylene", 15e5, 40, 0.4e5, 1.5), ("iso", "oxygen", 150e5, 315, 3e5, 4),
    ],
)  # fmt: skip
def test_needles_strokes_and_numbers_of_a_dial(
    rules: str, gas: str, held: float, end: float, given: float, delivery_end: float
) -> None:
    """The smallest dial that leaves the needle, and 1.2 times the limit of acetylene, in its first nine tenths."""
    seen = Seen(gauges.drawing(held, given, rules, gas).svg)
    unit = PSI if rules == "us" else 1e5
    if gas == "acetylene":
        delivery_end = 30 if rules == "us" else 1.5  # 1.2 times 15 psi is 18, 1.2 times 1.03 bar is 1.24
    for (name, middle), value, last in zip(
        MIDDLES.items(), (held / unit, given / unit), (end, delivery_end), strict=True
    ):
        rim = [
            c
            for c in seen.of("circle")
            if not c.solid and close(((c.box[0] + c.box[2]) / 2, (c.box[1] + c.box[3]) / 2), middle)
        ]
        assert [c.box[2] - c.box[0] for c in rim] == [152]
        assert (seen.word(name).x, seen.word(name).anchor) == (middle[0], "middle")
        assert seen.word(name).box[3] < middle[1] - 76
        needle = [tip for tail, tip in seen.arrows if tail == middle]
        assert len(needle) == 1
        assert close(needle[0], turned(middle, value / last, 56))
        strokes = [line for line in seen.of("line") if math.dist(line.points[0], middle) < 80]
        assert len(strokes) == 11
        for step, stroke in enumerate(strokes):
            assert close(stroke.points[0], turned(middle, step / 10, 64 if step % 2 else 58))
            assert close(stroke.points[1], turned(middle, step / 10, 70))
        for share in (0.0, 0.5, 1.0):
            x, y = turned(middle, share, 44)
            (number,) = [w for w in seen.words if w.size == 14 and close((w.x, w.y - 5), (x, y))]
            assert float(number.text) == last * share
            assert number.anchor == "middle"
        said = [w for w in seen.words if w.size == 18 and w.x == middle[0]]
        assert len(said) == 1
        assert float(said[0].text.split()[0]) == pytest.approx(value, rel=5e-3)
        assert 8 < said[0].box[1] - (middle[1] + 76) + 8 < 20
    hatched = [p for p in seen.of("path") if p.said.get("stroke-width") == "9"]
    assert len(hatched) == (gas == "acetylene")
    for band in hatched:
        limit = (15 if rules == "us" else 1.03) / delivery_end
        assert close(band.points[0], turned(MIDDLES["Delivery"], limit, 67), 1)  # 15 psi are 103.4 kPa
        assert close(band.points[-1], turned(MIDDLES["Delivery"], 1, 67), 0.3)
        assert all(abs(math.dist(point, MIDDLES["Delivery"]) - 67) < 0.3 for point in band.points)
        middle_of_band = turned(MIDDLES["Delivery"], (1 + limit) / 2, 67)
        assert band.away(middle_of_band) < 0.5


@pytest.mark.parametrize(
    ("ratio", "cone", "feather"),
    [
        (0.85, 60.0, 180.0), (0.90, 60.0, 150.0), (0.95, 60.0, 120.0), (0.975, 60.0, 97.5), (1.0, 60.0, 75.0), (1.04, 60.0, 0.0),
        (1.10, 60.0, 0.0), (1.14, 60.0, 0.0), (1.15, 54.0, 0.0), (1.325, 49.5, 0.0), (1.5, 45.0, 0.0), (1.6, 43.5, 0.0), (1.7, 42.0, 0.0),
    ],
)  # fmt: skip
def test_cone_and_feather_are_as_long_as_the_ratio_makes_them(
    ratio: float, cone: float, feather: float
) -> None:
    """60 for the neutral cone; the feather in cones and the shorter cones by straight lines between their rows."""
    for named in (True, False):
        seen = Seen(flame.drawing(ratio, named=named).svg)
        (solid,) = [p for p in seen.of("path") if p.solid]
        assert (solid.box[0], solid.box[2]) == pytest.approx((60, 60 + cone), abs=0.01)
        assert (solid.box[1], solid.box[3]) == (64, 76)
        pointed = [p for p in solid.points if p[0] == pytest.approx(60 + cone, abs=0.01)]
        assert pointed[0][1] == 70
        assert (len(solid.points) <= 4) == (ratio > 1.14)
        envelope = [p for p in seen.of("path") if p.dashed]
        assert len(envelope) == 1
        assert envelope[0].box[2] == pytest.approx(320 - 40 * (1 - cone / 60) / 0.3, abs=0.01)
        assert (envelope[0].box[1] + envelope[0].box[3]) / 2 == pytest.approx(70, abs=0.01)
        assert inside((61 + cone, 70), envelope[0].points)
        tip = [p for p in seen.of("path") if p.box[0] == 4]
        assert tip[0].box[1::2] == (58, 82)
        assert tip[0].box[2] == 60
        feathers = [
            p for p in seen.of("path") if p.said.get("fill") == "none" and not p.dashed and p.box[0] == 60
        ]
        assert len(feathers) == (feather > 0)
        for each in feathers:
            assert each.box[2] == pytest.approx(60 + feather, abs=0.01)
            assert (each.box[1], each.box[3]) == pytest.approx((61, 79), abs=1.01)
            xs = sorted({round(60 + feather - x, 3) for x, _ in each.points})
            assert xs[:3] == [0, 16, 24]
            above = sorted(y for x, y in each.points if x > 60)
            assert [y + above[-1 - n] for n, y in enumerate(above)] == pytest.approx([140] * len(above))
            name = seen.word("feather")
            assert (name.x, name.anchor) == pytest.approx((60 + feather - 20, "middle"), abs=0.1)
            assert seen.points("feather", (60 + feather - 20, 59), 0.2)
        assert seen.points("cone", (60 + cone / 2, 79), 0.2)
        assert seen.points("envelope", (262, 88), 0.2)
        assert any(word.text == "feather" for word in seen.words) == bool(feather)


def test_a_flame_says_below_what_it_is_and_to_be_named_does_not() -> None:
    seen = Seen(flame.drawing(0.9).svg)
    rows = [word.y for word in seen.words if word.x == 4]
    assert rows == [186 + 20 * n for n in range(5)]
    (rule,) = [line for line in seen.of("line") if line.box[::2] == (4, 336)]
    assert seen.word("cone").y < rule.box[1] < 172
    assert seen.height == rows[-1] + 10
    bare = Seen(flame.drawing(0.9, named=False).svg)
    assert {word.text for word in bare.words} == {"cone", "envelope", "feather"}
    assert bare.height < 172
    assert len(Seen(flame.drawing(1.1).svg).words) == 6


@pytest.mark.parametrize("parts", [("burnt",), ("burnt", "left"), ("burnt", "left", "lost")])
def test_bars_follow_each_other_from_the_left_each_to_the_scale_of_the_longest(
    parts: tuple[str, ...],
) -> None:
    rows = [
        bars.Bar("one", "a", (3.0, 1.0, 2.0)[: len(parts)]),
        bars.Bar("two", "b", (1.0, 4.0, 0.5)[: len(parts)]),
    ]
    longest = max(sum(bar.parts) for bar in rows)
    seen = Seen(bars.drawing("T", "S.", parts, rows).svg)
    boxes = seen.of("rect")
    key, drawn = boxes[: len(parts)], boxes[len(parts) :]
    looks = [(box.solid, box.said["fill"]) for box in key]
    assert looks == [(True, "currentColor"), (False, "none"), (False, "none")][: len(parts)]
    x = 4.0
    for box, name in zip(key, parts, strict=True):
        assert box.box == pytest.approx((x, 6, x + 18, 24), abs=0.1)
        word = seen.word(name)
        assert (word.x, word.y) == (x + 24, 20)
        x += 24 + 8 * len(name) + 16
    for row, bar in enumerate(rows):
        y, x = 44 + 48 * row, 4.0
        assert (seen.word(bar.label).x, seen.word(bar.label).y) == (4, y + 8)
        (said,) = [word for word in seen.words if word.text == bar.said]
        assert (said.x, said.y, said.anchor) == (340, y + 8, "end")
        for part in bar.parts:
            box = drawn.pop(0)
            wide = part / longest * 336
            assert box.box == pytest.approx((x, y + 14, x + wide, y + 32), abs=0.11)
            x += wide
    assert not drawn
    stripes = seen.of("path")
    assert bool(stripes) == (len(parts) == 3)
    for stripe in stripes:
        assert any(
            box.box[0] < stripe.box[0] == stripe.box[2] <= box.box[2] and stripe.box[1::2] == box.box[1::2]
            for box in boxes
        )
    assert seen.height == 44 + 96
    for box in boxes[2::3] if len(parts) == 3 else []:
        inner = [
            stripe.box[0]
            for stripe in stripes
            if box.box[0] <= stripe.box[0] <= box.box[2] and stripe.box[1] == box.box[1]
        ]
        assert len(inner) == math.floor((box.box[2] - box.box[0] - 5) / 7 + 0.01) + 1
        assert inner[0] - box.box[0] == pytest.approx(5, abs=0.11)
        assert [b - a for a, b in pairwise(inner)] == pytest.approx([7] * (len(inner) - 1), abs=0.11)


def test_a_part_thinner_than_half_a_unit_is_not_drawn() -> None:
    """336 for 1000: 1.4 are 0.47 wide, 1.6 are 0.54."""
    for part, boxes in ((1.4, 2), (1.6, 3)):
        seen = Seen(
            bars.drawing("T", "S.", ("a",), [bars.Bar("x", "", (1000.0,)), bars.Bar("y", "", (part,))]).svg
        )
        assert len(seen.of("rect")) == boxes


def test_turns_the_watch_and_the_parts_of_a_session_stand_at_their_minutes() -> None:
    """306 for 153 minutes, from 34: two for each."""
    parts = [(0, "start"), (3, "talk"), (100, "watch"), (153, "end")]
    boxes = [(1, "7", 10, 30), (2, "8", 30, 60), (2, "a long name", 60, 70), (3, "12", 0, 10)]
    seen = Seen(turns.drawing("T", 153, boxes, (100, 150), parts).svg)
    rects = seen.of("rect")
    for rect, (bench, text, start, end) in zip(rects, boxes, strict=False):
        top = 26 + 26 * (bench - 1)
        assert rect.box == pytest.approx((34 + 2 * start, top, 34 + 2 * end, top + 22), abs=0.1)
        found = [word for word in seen.words if word.text == text and word.y == top + 16]
        assert len(found) == (2 * (end - start) >= 9 * len(text) + 2)
        for word in found:
            assert (word.x, word.anchor) == (34 + start + end, "middle")
    assert rects[-1].box == pytest.approx((234, 104, 334, 126), abs=0.1)
    assert len(rects) == 5
    assert [(w.text, w.x, w.y) for w in seen.words if w.x == 4][:5] == [
        ("Bench", 4, 18), ("1", 4, 43), ("2", 4, 69), ("3", 4, 95), ("Fire", 4, 121)
    ]  # fmt: skip
    foot = 134
    (floor,) = [line for line in seen.of("line") if line.box == (34, foot, 340, foot)]
    assert floor.said["stroke-width"] == "2"
    ups = [line for line in seen.of("line") if line.dashed]
    assert [line.box for line in ups] == [(34 + 2 * start, 26, 34 + 2 * start, foot) for start, _ in parts]
    discs = [((c.box[0] + c.box[2]) / 2, (c.box[1] + c.box[3]) / 2) for c in seen.of("circle")]
    assert discs == [
        pytest.approx(place, abs=0.1) for place in ((34, 154), (57, 154), (234, 154), (332, 154))
    ]
    slants = [line for line in seen.of("line") if line.box[1::2] == (foot, foot + 10)]
    assert [line.points for line in slants] == [
        ((34 + 2 * start, foot), (x, foot + 10)) for (start, _), (x, _) in zip(parts, discs, strict=True)
    ]
    assert [(w.text, w.y) for w in seen.words if "  " in w.text] == [
        (f"{n}  {text}", 190 + 20 * (n - 1)) for n, (_, text) in enumerate(parts, start=1)
    ]
    assert seen.height == 190 + 60 + 10


def test_discs_of_parts_that_lie_close_stand_apart_and_inside() -> None:
    """23 apart; the last at most 12 from the edge, those before it move left."""
    for starts, places in (
        ((0, 1, 2, 153), (34, 57, 80, 332)), ((0, 151, 152, 153), (34, 286, 309, 332)), ((0, 130, 140, 153), (34, 286, 309, 332)),
    ):  # fmt: skip
        seen = Seen(
            turns.drawing("T", 153, [(1, "1", 0, 5)], (100, 150), [(start, "x") for start in starts]).svg
        )
        assert [(c.box[0] + c.box[2]) / 2 for c in seen.of("circle")] == pytest.approx(places, abs=0.1)


@pytest.mark.parametrize(
    "bad",
    [
        (0, [(1, "1", 0, 0)], (0, 0)),
        (60, [(1, "1", 0, 61)], (0, 0)),
        (60, [(1, "1", -1, 5)], (0, 0)),
        (60, [(1, "1", 0, 5)], (10, 61)),
    ],
)
def test_a_session_holds_all_that_is_drawn_in_it(
    bad: tuple[float, list[tuple[int, str, float, float]], tuple[float, float]],
) -> None:
    with pytest.raises(ValueError, match="outside"):
        turns.drawing("T", *bad, [(0, "a")])
    turns.drawing("T", 60, [(1, "1", 0, 60)], (0, 60), [(0, "a"), (60, "b")])


def test_pieces_of_a_sheet_their_letters_and_their_key() -> None:
    """336 for 2 m: 168 for a meter; a letter stands in a strip that is at least 15 high and wide."""
    strips = [
        stock_sheet.Drawn(0, ((0.0, 0.0, 0.5, 0.25), (0.5, 0.0, 0.5, 0.25))), stock_sheet.Drawn(1, ((1.2, 0.5, 0.3, 0.4),)),
        stock_sheet.Drawn(2, ((0.0, 0.5, 0.085, 0.3),)), stock_sheet.Drawn(3, ((0.3, 0.5, 0.3, 0.092), )),
    ]  # fmt: skip
    seen = Seen(
        stock_sheet.drawing(
            title="S", sentence="All.", width=2.0, height=1.0, strips=strips, key=list("wxyz")
        ).svg
    )
    sheet, *_ = seen.of("rect")
    assert sheet.box == pytest.approx((4, 4, 340, 172), abs=0.1)
    edges = [p for p in seen.of("path") if len(p.points) == 5]
    pieces = [piece for strip in strips for piece in strip.pieces]
    for edge, (x, y, wide, high) in zip(edges, pieces, strict=True):
        wanted = (4 + 168 * x, 172 - 168 * (y + high), 4 + 168 * (x + wide), 172 - 168 * y)
        assert edge.box == pytest.approx(wanted, abs=0.11)
    letters = {word.text: (word.x, word.y) for word in seen.words if len(word.text) == 1}
    assert letters["A"] == pytest.approx((4 + 84, 172 - 21 + 5), abs=0.11)
    assert letters["B"] == pytest.approx((4 + 168 * 1.35, 172 - 168 * 0.7 + 5), abs=0.11)
    assert set(letters) == {"A", "B", "D"}  # C is 14.3 wide, D 15.5 high
    papers = [r for r in seen.of("rect") if "paper" in r.said["fill"]]
    assert [
        ((p.box[0] + p.box[2]) / 2, (p.box[1] + p.box[3]) / 2, p.box[2] - p.box[0]) for p in papers
    ] == [pytest.approx((x, y - 5, 14), abs=0.11) for x, y in letters.values()]
    keys = [r for r in seen.of("rect") if r.box[2] - r.box[0] == 28]
    assert [r.box for r in keys] == [
        pytest.approx((4, 186 + 24 * n, 32, 204 + 24 * n), abs=0.1) for n in range(4)
    ]
    assert [(w.text, w.x, w.y) for w in seen.words if "  " in w.text] == [
        (f"{letter}  {text}", 40, pytest.approx(200 + 24 * n, abs=0.1))
        for n, (letter, text) in enumerate(zip("ABCD", "wxyz", strict=True))
    ]
    assert seen.height == pytest.approx(172 + 14 + 96 + 4, abs=0.1)


def test_four_kinds_are_hatched_in_four_ways_ten_apart_and_the_next_four_by_letter() -> None:
    strips = [stock_sheet.Drawn(kind, ((0.25 * kind, 0.0, 0.2, 1.0),)) for kind in range(8)]
    seen = Seen(
        stock_sheet.drawing(
            title="S", sentence="All.", width=2.0, height=1.0, strips=strips, key=list("abcdefgh")
        ).svg
    )
    lines = [p for p in seen.of("path") if len(p.points) == 2]
    for kind in range(8):
        left, right = 4 + 42 * kind, 4 + 42 * kind + 33.6
        own = [p for p in lines if left - 0.2 <= p.box[0] and p.box[2] <= right + 0.2 and p.box[3] <= 172.2]
        leans = {
            math.copysign(1, (p.points[1][0] - p.points[0][0]) * (p.points[0][1] - p.points[1][1]))
            for p in own
        }
        assert leans == [set(), {1.0}, {-1.0}, {1.0, -1.0}][kind % 4]
        for lean in leans:
            levels = sorted(
                p.points[0][0] + lean * p.points[0][1]
                for p in own
                if (p.points[1][0] - p.points[0][0]) * (p.points[0][1] - p.points[1][1]) * lean > 0
            )
            assert [b - a for a, b in pairwise(levels)] == pytest.approx([10] * (len(levels) - 1), abs=0.1)


def test_holes_and_their_words_stand_in_equal_places() -> None:
    cases = (
        ({}, 1),
        ({"smaller": ("#60", 1.016e-3)}, 2),
        ({"smaller": ("#60", 1.016e-3), "larger": ("#57", 1.092e-3), "yours": 0.9e-3}, 4),
    )
    for more, count in cases:
        seen = Seen(tip_hole.drawing(1.05e-3, rules="iso", **more).svg)
        places = [344 / count * (n + 0.5) for n in range(count)]
        circles = seen.of("circle")
        assert [(c.box[0] + c.box[2]) / 2 for c in circles] == pytest.approx(places, abs=0.1)
        assert {round(c.box[1] + c.box[3], 1) for c in circles} == {132.0}
        names = [w for w in seen.words if w.y == 128]
        told = [w for w in seen.words if w.y == 148]
        assert [w.x for w in names] == [w.x for w in told] == pytest.approx(places, abs=0.1)
        assert all(w.anchor == "middle" for w in names + told)
        wanted = [n for n, circle in enumerate(circles) if circle.solid]
        assert [names[n].text for n in wanted] == ["start here"]
        assert told[wanted[0]].text == "1.05 mm"
        dashed = [n for n, circle in enumerate(circles) if circle.dashed]
        assert [names[n].text for n in dashed] == (["yours"] if "yours" in more else [])
        (scale,) = seen.of("path")
        assert (scale.box[0] + scale.box[2]) / 2 == pytest.approx(172, abs=0.1)
        assert seen.word("1 mm").x == 172
        assert 0 < seen.word("1 mm").box[1] - scale.box[3] < 14


@pytest.mark.parametrize(
    ("millimeters", "times"), [(1.0, 20), (0.1, 200), (1.03, 20), (1.04, 15), (20.6, 1), (4.0, 5)]
)
def test_the_largest_round_enlargement_that_fits_is_taken(millimeters: float, times: int) -> None:
    """78 of 96 to the inch are 20.64 mm: twenty times 1.03 mm still fits, twenty times 1.04 does not."""
    assert tip_hole.enlargement(millimeters * 1e-3) == times


def test_swatches_their_names_and_the_pointer_stand_in_rows() -> None:
    rows = [("#aa0000", "red", "600 °C"), ("#bb4400", "orange", "800 °C"), ("#ffffff", "white", "1200 °C")]
    seen = Seen(swatches.drawing(rows, [1], "T", "S.").svg)
    for place, (box, (tint, name, figure)) in enumerate(zip(seen.of("rect"), rows, strict=True)):
        assert box.said["fill"] == tint
        assert box.box == (20, 8 + 26 * place, 64, 30 + 26 * place)
        assert (seen.word(name).x, seen.word(name).y, seen.word(name).anchor) == (
            74,
            24 + 26 * place,
            "start",
        )
        assert (seen.word(figure).x, seen.word(figure).y, seen.word(figure).anchor) == (
            336,
            24 + 26 * place,
            "end",
        )
    (pointer,) = seen.of("polygon")
    assert pointer.points[1] == (14, 45)  # halfway down the second swatch
    assert (pointer.points[0], pointer.points[2]) == ((2, 37), (2, 53))
    assert seen.height == 90
    (foot,) = seen.of("line")
    assert foot.box == (0, 89, 340, 89)
