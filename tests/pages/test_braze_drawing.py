"""The drawing of a brazed joint: whole, and its gaps to one scale."""

import math
import re
from xml.etree import ElementTree

import pytest

from calc.show.drawings import braze

SVG = "{http://www.w3.org/2000/svg}"
CASES = {
    "closes": ("sleeve", "low-carbon steel", "copper", 0.13e-3, 0.09e-3, 0.05e-3, 0.13e-3, "iso"),
    "opens": ("sleeve", "zinc or zinc die casting", "a metal nobody knows", 0.01e-3, 0.3e-3, 0.05e-3, 0.13e-3, "us"),
    "flat": ("flat-lap", "aluminium", "aluminium", 0.39e-3, 0.39e-3, 0.15e-3, 0.64e-3, "us"),
    "wide": ("sleeve", "copper", "copper", 1e-3, 1e-3, 0.02e-3, 0.13e-3, "iso"),
}  # fmt: skip
NAMES = ("form", "outside", "inside", "cold", "hot", "least", "most", "rules")
ALL = {name: braze.drawing(**dict(zip(NAMES, given, strict=True))) for name, given in CASES.items()}


def gaps_drawn(picture: object) -> tuple[float, float]:
    """Heights of the cold and the hot gap, in the drawing's own unit."""
    boxes = ElementTree.fromstring(picture.svg).findall(f"{SVG}rect")
    columns: dict[float, list[tuple[float, float]]] = {}
    for box in boxes:
        columns.setdefault(float(box.get("x")), []).append((float(box.get("y")), float(box.get("height"))))
    heights = []
    for _, ((top, height), (below, _)) in sorted(columns.items()):
        heights.append(below - top - height)
    cold, hot = heights
    return cold, hot


@pytest.mark.parametrize("picture", ALL.values(), ids=ALL)
def test_it_is_whole_and_its_text_is_large_enough_and_inside(picture: object) -> None:
    root = ElementTree.fromstring(picture.svg)
    assert [child.tag for child in root][:2] == [f"{SVG}title", f"{SVG}desc"]
    *_, width, height = map(float, root.get("viewBox").split())
    assert width <= 360
    for text in root.iter(f"{SVG}text"):
        assert float(text.get("font-size")) >= 14
        assert 0 <= float(text.get("x")) <= width
        assert 0 <= float(text.get("y")) <= height
    for element in root.iter():
        for name in ("fill", "stroke"):
            assert element.get(name) in (None, "none", "currentColor")
    assert re.fullmatch(r"[A-Z].*\.", picture.sentence)


@pytest.mark.parametrize("name", CASES)
def test_cold_hot_and_wanted_gaps_are_drawn_to_one_scale(name: str) -> None:
    _, _, _, cold, hot, least, most, _ = CASES[name]
    drawn_cold, drawn_hot = gaps_drawn(ALL[name])
    scale = drawn_hot / hot
    assert drawn_cold == pytest.approx(cold * scale, abs=0.11)
    edges = [
        float(y)
        for y in re.findall(r'y1="([\d.]+)"[^>]* stroke-width="1.5" stroke-dasharray', ALL[name].svg)
    ]
    low, high = (edge - 100.0 for edge in edges)
    assert (low, high) == pytest.approx((least * scale, most * scale), abs=0.11)


def test_the_sentence_names_both_gaps_and_the_band() -> None:
    assert ALL["closes"].sentence == (
        "The gap closes from 0.13 mm cold to 0.09 mm hot; the filler wants 0.05 mm to 0.13 mm."
    )
    assert ALL["flat"].sentence.startswith("The gap stays near ")
    assert "opens" in ALL["opens"].sentence


@pytest.mark.parametrize("bad", [-1e-6, math.nan, math.inf])
def test_a_gap_that_cannot_be_is_refused(bad: float) -> None:
    with pytest.raises(ValueError, match=r"."):
        braze.drawing(
            form="sleeve", outside="a", inside="b", cold=0.1e-3, hot=bad, least=0.05e-3, most=0.13e-3
        )
    with pytest.raises(ValueError, match="no drawing"):
        braze.drawing(
            form="butt", outside="a", inside="b", cold=0.1e-3, hot=0.1e-3, least=0.05e-3, most=0.13e-3
        )
