"""The sums of a brazed joint against other ways to the same figures."""

import math

import pytest
from scipy.integrate import dblquad, quad
from scipy.optimize import brentq

from calc import answer
from calc.formulas.setup.brazing import (
    cold_clearance,
    flat_strength_overlap,
    hot_clearance,
    lap_filler,
    largest_socket,
    sleeve_filler,
    tube_strength_overlap,
)

MM = 1e-3


@pytest.mark.parametrize(
    ("outer", "inner", "hot"),
    [(13e-6, 16.5e-6, 0.0235), (16.5e-6, 13e-6, 0.0775)],
    ids=["steel outside copper", "copper outside steel"],
)
def test_the_gap_of_a_22_millimetre_sleeve(outer: float, inner: float, hot: float) -> None:
    """0.05 mm cold and 700 K: worked by hand, 11.05 (1 + 0.0091) - 11 (1 + 0.01155) and the reverse."""
    assert hot_clearance(0.05 * MM, 22 * MM, outer, inner, 700.0) / MM == pytest.approx(hot, abs=5e-5)


def test_a_steel_pin_in_a_copper_bush_opens() -> None:
    """25 mm x (16.5 - 12)e-6 x 700 K = 0.07875 mm more on the diameter."""
    assert 2 * hot_clearance(0.0, 25 * MM, 16.5e-6, 12e-6, 700.0) / MM == pytest.approx(0.0788, abs=1e-4)
    assert largest_socket(0.07875 / 2 * MM, 4.5e-6, 700.0) / MM == pytest.approx(25.0, rel=1e-9)


TEXTBOOK = {"low-carbon-steel": 12e-6, "copper": 16.8e-6, "brass": 20e-6, "stainless-steel": 17.2e-6}
MIDDLE = {"BAg-5": 1460.0, "BAg-24": 1427.5}
"""Middle of the printed ranges 1370 to 1550 and 1305 to 1550 °F."""


@pytest.mark.parametrize(
    ("outside", "inside", "filler", "diameter", "cold"),
    [
        ("low-carbon-steel", "copper", "BAg-5", 22.0, 0.15),
        ("copper", "low-carbon-steel", "BAg-5", 22.0, 0.02),
        ("low-carbon-steel", "brass", "BAg-5", 10.0, 0.1),
        ("stainless-steel", "copper", "BAg-24", 40.0, 0.09),
        ("copper", "stainless-steel", "BAg-24", 40.0, 0.09),
    ],
)
def test_the_hot_gap_by_radii_that_grow_in_small_steps(
    outside: str, inside: str, filler: str, diameter: float, cold: float
) -> None:
    """Each radius grows by its share of the cold one, degree by degree; textbook growth, from memory."""
    rise = (MIDDLE[filler] - 68.0) / 1.8
    bore = outer = diameter / 2 + cold
    pin = inner = diameter / 2
    for _ in range(1000):
        outer += bore * TEXTBOOK[outside] * rise / 1000
        inner += pin * TEXTBOOK[inside] * rise / 1000
    got = answer(
        "braze-joint", metal_one=outside, metal_two=inside, form="sleeve", thickness="1 mm", rules="iso",
        diameter=f"{diameter} mm", service="general", cold_clearance=f"{cold} mm",
    )["results"]  # fmt: skip
    assert got["filler"]["text"].startswith(f"{filler},")
    assert got["hot_clearance"]["value"] == pytest.approx(outer - inner, rel=1e-6)


@pytest.mark.parametrize("outer", [12e-6, 20e-6])
@pytest.mark.parametrize("inner", [10.5e-6, 16.8e-6])
def test_the_cold_gap_is_the_root_of_the_hot_one(outer: float, inner: float) -> None:
    wanted = 0.2 * MM
    root = brentq(
        lambda cold: hot_clearance(cold, 30 * MM, outer, inner, 750.0) - wanted, -MM, MM, xtol=1e-15
    )
    assert cold_clearance(wanted, 30 * MM, outer, inner, 750.0) == pytest.approx(root, rel=1e-9)


@pytest.mark.parametrize(("diameter", "gap", "overlap"), [(22, 0.1, 5), (3, 0.6, 2), (200, 0.03, 30)])
def test_a_ring_of_filler_by_quadrature(diameter: float, gap: float, overlap: float) -> None:
    inner = diameter / 2
    area = quad(lambda r: 2 * math.pi * r, inner, inner + gap)[0]
    assert sleeve_filler(diameter * MM, gap * MM, overlap * MM) / MM**3 == pytest.approx(area * overlap)


def test_a_flat_layer_of_filler_by_quadrature() -> None:
    layer = dblquad(lambda _y, _x: 0.09, 0, 120, 0, 4.5)[0]
    assert lap_filler(120 * MM, 0.09 * MM, 4.5 * MM) / MM**3 == pytest.approx(layer)


def test_filler_of_a_ring_through_the_calculator() -> None:
    """Copper in copper: 0.05 mm grows by 16.8e-6 x 768 K (BCuP-2, middle 1450 °F, from 68 °F)."""
    got = answer(
        "braze-joint", metal_one="copper", metal_two="copper", form="sleeve", thickness="1 mm", rules="iso",
        diameter="22 mm", overlap="6 mm", service="general", cold_clearance="0.05 mm", joints="12", wire="2 mm",
    )["results"]  # fmt: skip
    gap = 0.05 * (1 + 16.8e-6 * (1450 - 68) / 1.8)
    volume = quad(lambda r: 2 * math.pi * r * 6, 11, 11 + gap)[0]
    assert got["filler_volume"]["value"] == pytest.approx(volume, rel=1e-6)
    assert got["filler_length"]["value"] == pytest.approx(12 * volume / math.pi, rel=1e-6)
    assert got["filler_mass"]["value"] == pytest.approx(12 * volume * 8.28e-3, rel=1e-6)


@pytest.mark.parametrize(("wall", "diameter"), [(1.0, 22.0), (0.5, 6.0), (5.0, 10.0)])
def test_the_overlap_balances_the_pull(wall: float, diameter: float) -> None:
    """Pull on the ring of metal against shear on the cylinder of filler."""
    inside = diameter - 2 * wall
    pull = 207.0 * math.pi / 4 * (diameter**2 - inside**2)
    needed = brentq(lambda x: 172.0 * math.pi * diameter * x - pull, 0, 100)
    assert tube_strength_overlap(wall * MM, diameter * MM, 207e6, 172e6) / MM == pytest.approx(needed)


def test_a_flat_lap_balances_the_pull() -> None:
    """16 gauge sheet 100 mm wide: 414 MPa x 1.52 x 100 against 172 MPa x 100 x X."""
    assert flat_strength_overlap(414e6, 1.52 * MM, 172e6) / MM == pytest.approx(414 * 152 / 17200)
