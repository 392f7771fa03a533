"""The drawing of a tube in its cup is to scale, but for the gap, and says so."""

import math
import re
from xml.etree import ElementTree

import pytest

from calc.show.drawings import tube

SVG = "{http://www.w3.org/2000/svg}"


def shapes(picture: object) -> tuple[list[ElementTree.Element], list[ElementTree.Element]]:
    """Strips of the tube's wall and of filler."""
    boxes = list(ElementTree.fromstring(picture.svg).iter(f"{SVG}rect"))
    filler = [box for box in boxes if box.get("data-part") == "filler"]
    return [box for box in boxes if box not in filler], filler


def side(box: ElementTree.Element, name: str) -> float:
    return float(box.get(name))


@pytest.mark.parametrize(
    ("outside", "wall", "depth"),
    [(0.625, 0.040, 0.500), (0.375, 0.035, 0.310), (8.125, 0.200, 3.970), (0.866, 0.043, 0.606)],
)
@pytest.mark.parametrize("filled", [1.0, 2 / 3])
def test_outside_wall_depth_and_filler_are_in_proportion(
    outside: float, wall: float, depth: float, filled: float
) -> None:
    """Coordinates are written to a tenth, so a thin wall is true to that tenth."""
    inch = 0.0254
    picture = tube.drawing(
        outside=outside * inch, wall=wall * inch, depth=depth * inch, gap=0.005 * inch, filled=filled
    )
    (upper, lower), (above, below) = shapes(picture)
    tall = side(lower, "y") + side(lower, "height") - side(upper, "y")
    assert side(upper, "height") / tall == pytest.approx(wall / outside, abs=0.11 / tall)
    assert side(above, "width") / tall == pytest.approx(filled * depth / outside, abs=0.2 / tall)
    inserted = side(upper, "x") + side(upper, "width") - side(above, "x")
    assert inserted / tall == pytest.approx(depth / outside, abs=0.2 / tall)
    assert side(above, "y") + side(above, "height") == pytest.approx(side(upper, "y"), abs=0.11)
    assert side(below, "y") == pytest.approx(side(lower, "y") + side(lower, "height"), abs=0.11)
    said = float(re.search(r"drawn ([\d.]+) times", picture.sentence)[1])
    assert said == pytest.approx(side(above, "height") / (0.005 / outside * tall), rel=0.06)


@pytest.mark.parametrize("bad", [0.0, -1.0, math.nan, math.inf])
def test_what_is_no_length_is_refused(bad: float) -> None:
    good = {"outside": 0.015, "wall": 0.001, "depth": 0.010, "gap": 0.0001, "filled": 1.0}
    for name in good:
        with pytest.raises(ValueError, match=r"."):
            tube.drawing(**(good | {name: bad}))


def test_a_wall_of_half_the_tube_and_a_cup_deeper_than_twice_it_are_refused() -> None:
    with pytest.raises(ValueError, match="cannot be drawn"):
        tube.drawing(outside=0.010, wall=0.005, depth=0.010, gap=0.0001)
    with pytest.raises(ValueError, match="cannot be drawn"):
        tube.drawing(outside=0.010, wall=0.001, depth=0.021, gap=0.0001)


def test_the_arrow_where_the_filler_goes_in_ends_at_the_mouth_of_the_gap() -> None:
    picture = tube.drawing(outside=0.0159, wall=0.001, depth=0.0127, gap=0.00013)
    _, (above, _) = shapes(picture)
    heads = [
        [float(number) for number in re.findall(r"-?[\d.]+", head.get("points", ""))[:2]]
        for head in ElementTree.fromstring(picture.svg).iter(f"{SVG}polygon")
    ]
    top, mouth = side(above, "y"), side(above, "x")
    assert any(mouth - 6 <= x <= mouth and top <= y <= top + side(above, "height") for x, y in heads)
