"""The map of heat and the swatches: whole, to scale, and never told by tint alone."""

import re
from xml.etree import ElementTree

import pytest

from calc import answer
from calc.data.tables import table
from calc.show.drawings import heat_map, swatches
from calc.show.drawings.heat_map import Isotherm
from calc.trade.heat.colours import colours

SVG = "{http://www.w3.org/2000/svg}"
WELD = {
    "metal": "low-carbon-steel",
    "thickness": "3 mm",
    "acetylene_flow": "300 L/h",
    "travel_speed": "90 mm/min",
}


def pictures() -> dict[str, dict[str, str]]:
    drawn = {"steel": answer("weld-heat", **WELD)["pictures"][0]}
    for metal in ("copper", "aluminium", "stainless-steel"):
        drawn[metal] = answer("weld-heat", **(WELD | {"metal": metal}))["pictures"][0]
    drawn["thick"] = answer("weld-heat", **(WELD | {"thickness": "40 mm", "acetylene_flow": "1500 L/h"}))[
        "pictures"
    ][0]
    drawn["temper"] = answer("heat-colour", temperature="560 degF")["pictures"][0]
    drawn["glow"] = answer("heat-colour", glow="cherry")["pictures"][0]
    drawn["bend"] = answer(
        "flame-bend", steel="ordinary", pattern="line", light="shade", thickness="10 mm"
    )["pictures"][0]
    return drawn


ALL = pictures()
MAPS = {name: ALL[name] for name in ("steel", "copper", "aluminium", "stainless-steel", "thick")}


@pytest.mark.parametrize("picture", ALL.values(), ids=ALL)
def test_a_drawing_is_named_and_its_text_inside_and_large_enough(picture: dict[str, str]) -> None:
    root = ElementTree.fromstring(picture["svg"])
    assert [child.tag for child in root][:2] == [f"{SVG}title", f"{SVG}desc"]
    assert root.get("role") == "img"
    assert re.fullmatch(r"[A-Z].*\.", picture["sentence"])
    *_, width, height = map(float, root.get("viewBox", "").split())
    assert width <= 360
    for text in root.iter(f"{SVG}text"):
        assert float(text.get("font-size", "0")) >= 14
        assert 0 <= float(text.get("x", "-1")) <= width
        assert 0 <= float(text.get("y", "-1")) <= height


@pytest.mark.parametrize("picture", MAPS.values(), ids=MAPS)
def test_a_map_has_no_tint_of_its_own_and_stays_in_its_frame(picture: dict[str, str]) -> None:
    root = ElementTree.fromstring(picture["svg"])
    for element in root.iter():
        for name in ("fill", "stroke"):
            assert element.get(name) in (None, "none", "currentColor", "var(--bb-paper, #fff)")
    for path in root.iter(f"{SVG}path"):
        for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", path.get("d", "")):
            assert 0 <= float(x) <= heat_map.WIDTH
            assert float(y) >= 0


@pytest.mark.parametrize("name", MAPS)
def test_every_line_of_a_map_has_its_row_beside_it(name: str) -> None:
    metal = name if name in ("copper", "aluminium", "stainless-steel") else "low-carbon-steel"
    more = {"thickness": "40 mm", "acetylene_flow": "1500 L/h"} if name == "thick" else {}
    got = answer("weld-heat", **(WELD | {"metal": metal} | more))
    rows = [row[0] for row in got["tables"][0]["rows"]]
    key = re.findall(r">(\d+ °F)(?:, melts)?<", got["pictures"][0]["svg"])
    assert key == rows[:4]
    degrees = [int(row.split()[0]) for row in rows]
    assert degrees == sorted(degrees, reverse=True)


def test_a_circle_is_drawn_as_wide_as_it_is_long() -> None:
    side = tuple((0.01 - 0.02 * i / 40, (0.01**2 - (0.01 - 0.02 * i / 40) ** 2) ** 0.5) for i in range(41))
    drawn = heat_map.drawing([Isotherm("hot", side, through=False)], 0.02, "A circle.")
    (path,) = re.findall(r'<path d="(M[^"A]*)" fill="currentColor"', drawn.svg)
    found = [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", path)]
    wide = max(y for _, y in found) - min(y for _, y in found)
    long = max(x for x, _ in found) - min(x for x, _ in found)
    assert wide == pytest.approx(long, rel=0.01)


@pytest.mark.parametrize("name", MAPS)
def test_the_arrow_of_the_travel_stands_over_its_word_and_below_the_map(name: str) -> None:
    root = ElementTree.fromstring(MAPS[name]["svg"])
    (word,) = [text for text in root.iter(f"{SVG}text") if text.text == "travel"]
    x, y = float(word.get("x", "0")), float(word.get("y", "0"))
    heads = [
        [float(number) for number in re.findall(r"-?[\d.]+", head.get("points", ""))] for head in root.iter(f"{SVG}polygon")
    ]
    # Level and to the right: both wings stand as far back.
    tips = [(head[0], head[1]) for head in heads if head[2] == head[4] < head[0]]
    assert any(x < right < x + 60 and y - 30 < high < y - 10 for right, high in tips)


def test_nothing_to_draw_is_refused() -> None:
    with pytest.raises(ValueError, match="nothing to draw"):
        heat_map.drawing([], 0.001, "None.")
    with pytest.raises(ValueError, match="nothing to draw"):
        swatches.drawing([], [], "None", "None.")


@pytest.mark.parametrize("name", ["temper", "glow", "bend"])
def test_every_swatch_has_its_name_and_its_figure_beside_it(name: str) -> None:
    root = ElementTree.fromstring(ALL[name]["svg"])
    boxes = [float(box.get("y", "0")) for box in root.iter(f"{SVG}rect")]
    texts = [(float(t.get("y", "0")), t.text or "") for t in root.iter(f"{SVG}text")]
    assert boxes
    for top in boxes:
        beside = [text for y, text in texts if top < y < top + swatches.ROW]
        assert len(beside) == 2
        assert beside[1].endswith("°F")
    assert "go by the name" in ALL[name]["sentence"] or name == "bend"


def test_every_color_that_is_followed_has_a_tint_and_no_tint_stands_alone() -> None:
    named = {(c.scale, c.name) for scale in ("temper", "glow") for c in colours(scale)}
    assert named == {(row.scale, row.colour) for row in table("colour-tints")}
    assert all(re.fullmatch(r"#[0-9a-f]{6}", row.tint) for row in table("colour-tints"))
