"""Metal from the rod against numerical integration: of the shape by hand, and of the shape drawn."""

import math
from itertools import pairwise
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from calc import answer
from calc.values.units import to_si

SVG = "{http://www.w3.org/2000/svg}"
STEEL = {"process": "welding", "metal": "low-carbon-steel", "length": "500 mm", "rules": "iso"}


def mm2(texts: dict[str, str], result: str = "weld_area") -> float:
    got = answer("joint-prep", **texts)["results"][result]
    return to_si(got["value"], got["unit"]) * 1e6


def segment(width: float, height: float) -> float:
    """Area of a circle above a chord, by quadrature of the circle through both ends and the top."""
    radius = (width**2 / 4 + height**2) / (2 * height)
    centre = height - radius
    return quad(lambda x: (radius**2 - x**2) ** 0.5 + centre, -width / 2, width / 2, epsabs=1e-12)[0]


@pytest.mark.parametrize(
    ("thickness", "gap", "degrees", "face", "cap"),
    [(4.8, 1.6, 80, 1.6, 1.0), (6.4, 2.4, 60, 1.6, 1.2), (9.5, 3.2, 60, 1.6, 1.6), (3, 0, 120, 0, 1.5), (25, 4, 45, 2, 5)],
)  # fmt: skip
def test_a_v_holds_what_a_sum_over_thin_layers_gives(
    thickness: float, gap: float, degrees: float, face: float, cap: float
) -> None:
    """Width of every layer from the root to the face, and the cap above; quadrature by scipy."""

    def layer(height: float) -> float:
        return gap + 2 * max(0.0, height - face) * math.tan(math.radians(degrees) / 2)

    fill = quad(layer, 0, thickness, points=[face])[0]
    texts = STEEL | {
        "joint": "single-v", "thickness": f"{thickness} mm", "gap": f"{gap} mm", "angle": f"{degrees} deg",
        "root_face": f"{face} mm", "cap": f"{cap} mm",
    }  # fmt: skip
    assert mm2(texts, "fill_area") == pytest.approx(fill, rel=1e-9)
    assert mm2(texts) == pytest.approx(fill + segment(layer(thickness), cap), rel=1e-6)


@pytest.mark.parametrize("leg", [1.0, 3.0, 4.8, 6.4, 10.0])
@pytest.mark.parametrize("share", [0.0, 0.1, 0.3])
def test_a_fillet_holds_a_triangle_and_the_crown_on_its_face(leg: float, share: float) -> None:
    triangle = quad(lambda x: leg - x, 0, leg)[0]
    crown = segment(math.hypot(leg, leg), share * leg) if share else 0.0
    texts = STEEL | {"joint": "tee", "thickness": "10 mm", "leg": f"{leg} mm", "cap": f"{share * leg} mm"}
    assert mm2(texts) == pytest.approx(triangle + crown, rel=1e-6)


@pytest.mark.parametrize(("thickness", "process"), [(1.52, "braze-welding"), (3.04, "welding")])
def test_a_rounded_corner_holds_a_quarter_of_a_disc(thickness: float, process: str) -> None:
    disc = quad(lambda x: (thickness**2 - x**2) ** 0.5, 0, thickness)[0]
    texts = STEEL | {"joint": "outside-corner", "thickness": f"{thickness} mm", "process": process}
    assert mm2(texts) == pytest.approx(disc, rel=1e-6)


def shapes(svg: str, part: str) -> list[list[tuple[float, float]]]:
    return [
        [tuple(map(float, pair.split(","))) for pair in made.get("points").split()]
        for made in ElementTree.fromstring(svg).iter(f"{SVG}polygon")
        if made.get("data-part") == part
    ]


def area_inside(corners: list[tuple[float, float]]) -> float:
    """Area of a drawn shape: width halfway between the heights of two corners, times their distance."""
    levels, area = sorted({y for _, y in corners}), 0.0
    for low, high in pairwise(levels):
        level = (low + high) / 2
        crossed = sorted(
            x1 + (level - y1) / (y2 - y1) * (x2 - x1)
            for (x1, y1), (x2, y2) in pairwise([*corners, corners[0]])
            if (y1 < level) != (y2 < level)
        )
        area += sum(b - a for a, b in zip(crossed[::2], crossed[1::2], strict=True)) * (high - low)
    return area


def scale(joint: str, plates: list[list[tuple[float, float]]], thickness: float) -> float:
    """Points of the drawing for a millimetre, from the plate as drawn."""
    across = 0 if joint in ("tee", "edge") else 1
    ends = [corner[across] for corner in plates[0]]
    return (max(ends) - min(ends)) / thickness


JOINTS = {
    "square-butt": (1.0, 3.2), "single-v": (3.0, 25.0), "lap": (1.0, 12.7), "tee": (1.0, 12.7),
    "outside-corner": (1.6, 6.3), "edge": (1.6, 3.2),
}  # fmt: skip


@settings(max_examples=80, deadline=None, derandomize=True)
@given(
    st.sampled_from(sorted(JOINTS)), st.floats(0, 1), st.floats(0, 1), st.floats(30, 120), st.floats(0, 0.8),
    st.floats(0.5, 1), st.floats(0.02, 0.49),
)  # fmt: skip
def test_the_drawn_section_holds_the_metal_that_is_counted(
    joint: str, share: float, gap: float, degrees: float, face: float, leg: float, cap: float
) -> None:
    least, most = JOINTS[joint]
    thickness = least + share * (most - least)
    size = leg * thickness if joint in ("lap", "tee") else thickness
    texts = STEEL | {
        "joint": joint, "thickness": f"{thickness:.6f} mm", "gap": f"{gap * min(thickness, 12):.6f} mm",
        "angle": f"{degrees:.6f} deg", "root_face": f"{face * min(thickness, 14):.6f} mm", "leg": f"{size:.6f} mm",
        "cap": f"{cap * size:.6f} mm",
    }  # fmt: skip
    svg = answer("joint-prep", **texts)["pictures"][0]["svg"]
    plates, (weld,) = shapes(svg, "plate"), shapes(svg, "weld")
    drawn = area_inside(weld) / scale(joint, plates, thickness) ** 2
    assert drawn == pytest.approx(mm2(texts), rel=4e-3, abs=1e-4 * thickness**2)


@pytest.mark.parametrize("joint", sorted(JOINTS))
def test_our_own_figures_are_drawn_and_counted_alike(joint: str) -> None:
    thickness = JOINTS[joint][1]
    texts = STEEL | {"joint": joint, "thickness": f"{thickness} mm"}
    svg = answer("joint-prep", **texts)["pictures"][0]["svg"]
    drawn = area_inside(shapes(svg, "weld")[0]) / scale(joint, shapes(svg, "plate"), thickness) ** 2
    assert drawn == pytest.approx(mm2(texts), rel=4e-3)
