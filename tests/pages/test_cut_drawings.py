"""The edge of a cut is drawn to scale, and the wrong ones say in words what they show."""

import math
import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import answer
from calc.declare import Picture
from calc.show.drawings import cut

SVG = "{http://www.w3.org/2000/svg}"
EM = 0.56
"""Width of a letter, in font sizes: a wide one of the phone's own letters."""
HIGH = 120.0
ALL = {
    "half an inch": cut.drawing(0.0127, 0.006, 0.00127),
    "thin": cut.drawing(0.003, 0.0096, 0.0003, "iso"),
    "thick": cut.drawing(0.150, 0.002, 0.015, "iso"),
    "faults": cut.faults(),
}


def lines(picture: Picture) -> list[tuple[float, float, float]]:
    """Head, foot and depth of each drag line."""
    found = re.findall(r'd="M([\d.]+) ([\d.]+)Q[\d.]+ [\d.]+ ([\d.]+) ([\d.]+)"', picture.svg)
    return [(float(x), float(foot), float(low) - float(top)) for x, top, foot, low in found]


@pytest.mark.parametrize("picture", ALL.values(), ids=ALL)
def test_it_is_whole_and_has_no_color_of_its_own(picture: Picture) -> None:
    root = ElementTree.fromstring(picture.svg)
    assert [child.tag for child in root][:2] == [f"{SVG}title", f"{SVG}desc"]
    assert root[0].text == picture.title
    assert re.fullmatch(r"[A-Z].*\.", picture.sentence)
    for element in root.iter():
        for name in ("fill", "stroke"):
            assert element.get(name) in (None, "none", "currentColor")


@pytest.mark.parametrize("picture", ALL.values(), ids=ALL)
def test_every_word_stands_inside_and_is_large_enough(picture: Picture) -> None:
    root = ElementTree.fromstring(picture.svg)
    *_, width, height = map(float, root.get("viewBox").split())
    assert width <= 360
    for text in root.iter(f"{SVG}text"):
        size = float(text.get("font-size"))
        assert size >= 14
        assert float(text.get("x")) + EM * size * len(text.text) <= width, text.text
        assert size <= float(text.get("y")) <= height


@given(
    thickness=st.floats(0.003, 0.1524),
    minutes=st.floats(0.07, 0.8),
    share=st.floats(0.0, 0.25),
)
def test_drag_lines_are_as_far_apart_and_lag_as_far_as_the_cut_says(
    thickness: float, minutes: float, share: float
) -> None:
    """The plate stands 120 high for its thickness; a line for each so many seconds of travel, in the sentence."""
    speed = minutes / 60
    picture = cut.drawing(thickness, speed, share * thickness, "iso")
    seconds = float(re.search(r"each line is ([\d.]+) s", picture.sentence)[1])
    drawn = lines(picture)
    assert drawn
    for head, foot, deep in drawn:
        assert deep == pytest.approx(HIGH, abs=0.1)
        assert head - foot == pytest.approx(share * HIGH, abs=0.11)
    for one, other in pairwise(drawn):
        apart = other[0] - one[0]
        assert apart >= 13.8
        assert apart == pytest.approx(speed * seconds * HIGH / thickness, abs=0.2)


def test_the_answer_draws_its_own_plate() -> None:
    got = answer(
        "cut-plate",
        metal="low-carbon-steel",
        shape="straight",
        fuel="acetylene",
        length="1 m",
        thickness="25 mm",
        rules="iso",
    )
    edge, wrong = got["pictures"]
    assert "25 mm" in edge["sentence"]
    assert "at most 2.5 mm" in edge["sentence"]
    assert wrong["title"] == "Four wrong edges"


def test_each_wrong_edge_has_its_name_and_its_sentence() -> None:
    said = [text.text for text in ElementTree.fromstring(cut.faults().svg).iter(f"{SVG}text")]
    for name, sentence in cut.FAULTS:
        place = said.index(name)
        assert said[place + 1 : place + 1 + len(sentence)] == list(sentence)
        assert " ".join(sentence)[0].isupper()
        assert " ".join(sentence).endswith(".")
    assert [name for name, _ in cut.FAULTS] == [
        "Too fast",
        "Too slow",
        "Too much preheat",
        "Too much oxygen",
    ]


def test_too_fast_lags_farther_than_any_good_cut() -> None:
    """Above a quarter of the thickness the cut may be lost: from memory."""
    high = cut.FACE_HIGH
    fast = [head - foot for head, foot, deep in lines(cut.faults()) if deep == pytest.approx(high)][:5]
    assert min(fast) > 0.25 * high
    assert len(fast) == 5


@pytest.mark.parametrize(
    ("thickness", "speed", "drag"),
    [(0.0, 0.006, 0.0), (-0.01, 0.006, 0.0), (0.01, 0.0, 0.001), (0.01, 0.006, -0.001), (0.01, 0.006, 0.006),
     (math.nan, 0.006, 0.001), (0.01, math.inf, 0.001), (0.01, 0.006, math.nan)],
)  # fmt: skip
def test_what_cannot_be_drawn_is_refused(thickness: float, speed: float, drag: float) -> None:
    with pytest.raises(ValueError, match=r"."):
        cut.drawing(thickness, speed, drag)
