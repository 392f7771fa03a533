"""The hot-work zone is drawn whole and to one scale."""

import re
from xml.etree import ElementTree

import pytest

from calc.show.drawings import zone

SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("nearest", [None, 0.0, 6.0, 200.0])
@pytest.mark.parametrize("height", [0.0, 1.0, 30.0])
@pytest.mark.parametrize("rules", ["us", "iso"])
def test_text_is_large_enough_and_inside(nearest: float | None, height: float, rules: str) -> None:
    picture = zone.drawing(clear=2.0, reach=19.0, height=height, path=[(0.0, height), (9.0, height + 4), (19.0, 0.0)], nearest=nearest, rules=rules)
    root = ElementTree.fromstring(picture.svg)
    *_, width, tall = map(float, root.get("viewBox").split())
    assert width <= 360
    for text in root.iter(f"{SVG}text"):
        assert float(text.get("font-size")) >= 14
        assert 0 <= float(text.get("x")) <= width
        assert 0 <= float(text.get("y")) <= tall
    for shape in root.iter():
        for end in ("x1", "x2", "cx"):
            assert -1 <= float(shape.get(end, 0)) <= width + 1


@pytest.mark.parametrize("height", [0.0, 1.0, 30.0])
def test_a_zone_is_drawn_to_one_scale(height: float) -> None:
    """Rings, posts, height and the key's arrow stand in the ratio of their metres."""
    svg_text = zone.drawing(clear=10.0, reach=20.0, height=height, path=[(0.0, height), (20.0, 0.0)], nearest=5.0, rules="iso").svg
    clear, reach = (float(r) for r in re.findall(r'r="([\d.]+)" fill="none"', svg_text)[:2])
    assert reach / clear == pytest.approx(2.0, rel=0.02)
    posts = [float(x) for x in re.findall(r'<line x1="([\d.]+)" y1="[\d.]+" x2="\1" y2="[\d.]+" [^>]*width="3"', svg_text)]
    assert posts[1] - posts[0] == pytest.approx(2 * clear, abs=0.3)
    path = re.findall(r"M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)", svg_text)[0]
    x1, y1, x2, y2 = map(float, path)
    assert abs(x2 - x1) == pytest.approx(reach, abs=0.3)
    assert y2 - y1 == pytest.approx(height * clear / 10, abs=0.3)


def test_a_zone_without_a_distance_is_refused() -> None:
    with pytest.raises(ValueError, match="no distance"):
        zone.drawing(clear=0.0, reach=1.0, height=1.0, path=[])
