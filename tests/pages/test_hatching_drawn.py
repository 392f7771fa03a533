"""Hatching of rows and strips lies in its own box; letters, stripes and enlargements at the very edge of their rules."""

import pytest

from calc.show.drawings import bars, stock_sheet, tip_hole, turns
from tests.pages.svg_shapes import Seen


def test_the_fire_watch_is_hatched_within_its_box() -> None:
    seen = Seen(turns.drawing("T", 153, [(1, "1", 0, 20)], (100, 150), [(0, "a")]).svg)
    left, top, right, foot = seen.of("rect")[-1].box
    lines = seen.of("path")
    assert len(lines) == 13  # 100 wide and 22 high, in nines: 9 to 117
    for line in lines:
        assert left - 0.1 <= line.box[0]
        assert line.box[2] <= right + 0.1
        assert top - 0.1 <= line.box[1]
        assert line.box[3] <= foot + 0.1


def test_strips_and_keys_are_hatched_within_themselves_and_a_flat_or_narrow_one_has_no_letter() -> None:
    """168 for a meter: 0.08 m is 13.4, and a letter wants 15 both ways."""
    strips = [
        stock_sheet.Drawn(1, ((0.2, 0.6, 0.5, 0.3),)), stock_sheet.Drawn(1, ((0.2, 0.1, 0.5, 0.08),)), stock_sheet.Drawn(1, ((1.0, 0.1, 0.08, 0.5),)),
    ]  # fmt: skip
    seen = Seen(stock_sheet.drawing(title="S", sentence="All.", width=2.0, height=1.0, strips=strips, key=["a", "b"]).svg)
    assert [word.text for word in seen.words if len(word.text) == 1] == ["B"]
    homes = [edge.box for edge in seen.of("path") if len(edge.points) == 5]
    homes += [box.box for box in seen.of("rect") if box.box[2] - box.box[0] == 28]
    for line in (path for path in seen.of("path") if len(path.points) == 2):
        assert any(
            home[0] - 0.2 <= line.box[0] and line.box[2] <= home[2] + 0.2 and home[1] - 0.2 <= line.box[1] and line.box[3] <= home[3] + 0.2
            for home in homes
        )


@pytest.mark.parametrize(("wide", "stripes"), [(39.5, 5), (40.5, 6), (4.0, 0), (5.5, 1)])
def test_stripes_begin_five_from_the_edge_and_stand_seven_apart(wide: float, stripes: int) -> None:
    """Five and five times seven are 40."""
    seen = Seen(bars.drawing("T", "S.", ("a", "b", "c"), [bars.Bar("x", "", (336.0 - wide, 0.0, wide))]).svg)
    drawn = [path for path in seen.of("path") if path.box[1] > 40]
    assert len(drawn) == stripes


@pytest.mark.parametrize("times", [200, 150, 100, 80, 60, 50, 40, 30, 25, 20, 15, 12, 10, 8, 6, 5, 4, 3, 2, 1])
def test_each_enlargement_holds_up_to_the_widest_hole_that_fits_it(times: int) -> None:
    """78 of 96 to the inch are 20.6375 mm at their own size."""
    assert tip_hole.enlargement(0.02063 / times) == times


def test_a_hole_is_told_to_three_figures() -> None:
    for rules, told in (("iso", "1.02 mm"), ("us", "0.04 in")):
        assert Seen(tip_hole.drawing(1.0163e-3, rules=rules).svg).word("1.02" if rules == "iso" else "0.04").text == told
