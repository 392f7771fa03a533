"""Joints are drawn to scale, and their labels stand apart at any size."""

import math
import re
from itertools import combinations
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.show.drawings import joint
from calc.show.drawings.hatching import hatched

SVG = "{http://www.w3.org/2000/svg}"
EM = 0.56
"""Width of a letter, in font sizes: a wide one of the phone's own letters."""
Box = tuple[float, float, float, float]


def shapes(svg: str, part: str) -> list[list[tuple[float, float]]]:
    """Corners of the plates or the weld metal as drawn."""
    return [
        [tuple(map(float, pair.split(","))) for pair in made.get("points").split()]
        for made in ElementTree.fromstring(svg).iter(f"{SVG}polygon")
        if made.get("data-part") == part
    ]


def text_boxes(svg: str) -> dict[str, Box]:
    boxes = {}
    for text in ElementTree.fromstring(svg).iter(f"{SVG}text"):
        x, y, size = (float(text.get(name)) for name in ("x", "y", "font-size"))
        wide = EM * size * len(text.text)
        left = {"start": x, "middle": x - wide / 2, "end": x - wide}[text.get("text-anchor")]
        boxes[text.text] = (left, y - 0.8 * size, left + wide, y + 0.25 * size)
    return boxes


def touching(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def box_of(corners: list[tuple[float, float]]) -> Box:
    xs, ys = zip(*corners, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def leaders(svg: str) -> list[tuple[float, float, float, float]]:
    return [
        tuple(float(made.get(name)) for name in ("x1", "y1", "x2", "y2"))
        for made in ElementTree.fromstring(svg).iter(f"{SVG}line")
        if made.get("stroke-width") == "1.5"
    ]


def crosses(leader: tuple[float, float, float, float], box: Box) -> bool:
    x1, y1, x2, y2 = leader
    points = ((x1 + (x2 - x1) * n / 60, y1 + (y2 - y1) * n / 60) for n in range(61))
    return any(box[0] < x < box[2] and box[1] < y < box[3] for x, y in points)


SIZES = st.fixed_dictionaries(
    {
        "kind": st.sampled_from(sorted(joint.KINDS)),
        "thickness": st.floats(0.0005, 0.025),
        "gap": st.floats(0, 1),
        "angle": st.floats(math.radians(30), math.radians(120)),
        "root_face": st.floats(0, 0.9),
        "leg": st.floats(0.05, 2),
        "cap": st.floats(0, 0.5),
        "weld": st.sampled_from(joint.WELDS),
        "rules": st.sampled_from(["us", "iso"]),
    }
)


def drawn(size: dict[str, object]) -> object:
    kind, thickness = size["kind"], size["thickness"]
    gap = size["gap"] * thickness if kind in ("square-butt", "single-v") else 0.0
    leg = min(size["leg"], 2.0 if kind == "tee" else 1.0) * thickness
    measure = leg if kind in ("lap", "tee") else thickness
    return joint.drawing(
        kind, thickness, gap, size["rules"], angle=size["angle"], root_face=size["root_face"] * thickness,
        leg=leg, cap=size["cap"] * measure, weld=size["weld"],
    )  # fmt: skip


@settings(max_examples=250, deadline=None, derandomize=True)
@given(SIZES)
def test_labels_stand_apart_and_inside_at_every_size(size: dict[str, object]) -> None:
    svg = drawn(size).svg
    *_, width, height = map(float, ElementTree.fromstring(svg).get("viewBox").split())
    texts = text_boxes(svg)
    for (one, a), (other, b) in combinations(texts.items(), 2):
        assert not touching(a, b), (one, other)
    metal = [box_of(corners) for part in ("plate", "weld") for corners in shapes(svg, part)]
    for text, box in texts.items():
        assert box[0] >= 0, text
        assert box[2] <= width, text
        assert box[1] >= 0, text
        assert box[3] <= height, text
        assert not any(touching(box, other) for other in metal), text
        assert not any(crosses(leader, box) for leader in leaders(svg)), text
    for left, top, right, bottom in metal:
        assert 0 <= left <= right <= width
        assert 0 <= top <= bottom <= height


@settings(max_examples=150, deadline=None, derandomize=True)
@given(SIZES)
def test_a_joint_is_drawn_to_scale(size: dict[str, object]) -> None:
    """Gap, leg, root face and cap as drawn, over the thickness as drawn."""
    kind = size["kind"]
    svg = drawn(size | {"weld": "rod"}).svg
    plates = [box_of(corners) for corners in shapes(svg, "plate")]
    if kind in ("square-butt", "single-v"):
        scale = plates[0][3] - plates[0][1]
        corners = shapes(svg, "plate")
        gap = min(x for x, _ in corners[1]) - max(x for x, _ in corners[0])
        assert gap / scale == pytest.approx(size["gap"], abs=1e-3)
    if kind == "single-v":
        left = corners[0]
        rise, run = left[2][1] - left[1][1], left[2][0] - left[1][0]
        assert math.atan2(run, rise) == pytest.approx(size["angle"] / 2, abs=5e-3 + 0.02 / rise)
        assert (left[3][1] - left[2][1]) / scale == pytest.approx(size["root_face"], abs=1e-3)
    if kind in ("lap", "tee"):
        scale = plates[0][3] - plates[0][1] if kind == "lap" else plates[0][2] - plates[0][0]
        (weld,) = shapes(svg, "weld")
        root, top, toe = weld[0], weld[1], weld[-1]
        leg = min(size["leg"], 2.0 if kind == "tee" else 1.0)
        assert (root[1] - top[1]) / scale == pytest.approx(leg, abs=1e-3)
        assert (toe[0] - root[0]) / scale == pytest.approx(leg, abs=1e-3)


@pytest.mark.parametrize(
    "bad",
    [
        {"leg": 0.0022, "kind": "lap"},
        {"leg": 0.0041, "kind": "tee"},
        {"leg": -0.001, "kind": "tee"},
        {"root_face": 0.002, "kind": "single-v"},
        {"root_face": math.nan, "kind": "single-v"},
        {"angle": 3.0, "kind": "single-v"},
        {"angle": 0.1, "kind": "single-v"},
        {"cap": 0.0015, "kind": "square-butt"},
        {"cap": -0.001, "kind": "edge"},
        {"cap": math.inf, "kind": "edge"},
        {"weld": "glue", "kind": "tee"},
    ],
)
def test_a_weld_that_is_none_is_refused(bad: dict[str, object]) -> None:
    with pytest.raises(ValueError, match=r"."):
        joint.drawing(**({"thickness": 0.002} | bad))


def test_metal_from_the_rod_is_hatched_closer_than_the_plates() -> None:
    for kind in joint.KINDS:
        bare = joint.drawing(kind, 0.003, cap=0.0005).svg
        full = joint.drawing(kind, 0.003, cap=0.0005, weld="rod").svg
        assert bare.count("<path") < full.count("<path")
        assert 'data-part="weld"' not in bare


def test_hatching_stays_inside_a_shape_that_is_not_convex() -> None:
    hook = [(0, 0), (30, 0), (30, 30), (20, 30), (20, 10), (0, 10)]
    ends = re.findall(r"M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)", hatched(hook, 4))
    assert len(ends) > 8
    for x1, y1, x2, y2 in (map(float, line) for line in ends):
        x, y = (x1 + x2) / 2, (y1 + y2) / 2
        assert y <= 10.01 or x >= 19.99
