"""Filler of a tube in its cup against the ring itself, integrated, centred and pushed aside."""

from math import cos, pi, sin, sqrt

import pytest
from scipy.integrate import quad

from calc import answer

INCH = 0.0254


def ring(outside: float, gap: float, aside: float) -> float:
    """Area between a tube and a cup whose middle is `aside` from the tube's, by quadrature."""
    inner, outer = outside / 2, outside / 2 + gap

    def slice_at(angle: float) -> float:
        edge = aside * cos(angle) + sqrt(outer**2 - (aside * sin(angle)) ** 2)
        return (edge**2 - inner**2) / 2

    return quad(slice_at, 0, 2 * pi, epsabs=0, epsrel=1e-11, limit=200)[0]


@pytest.mark.parametrize("share", [0.0, 0.5, 1.0], ids=["centred", "half aside", "touching"])
@pytest.mark.parametrize(
    ("size", "outside", "depth", "gap"),
    [("1/4 in", 0.375, 0.310, 0.010), ("1/2 in", 0.625, 0.500, 0.005), ("8 in", 8.125, 3.970, 0.002)],
)
def test_the_ring_holds_the_share_of_gap_in_diameter_more_wherever_the_tube_sits(
    size: str, outside: float, depth: float, gap: float, share: float
) -> None:
    """The printed tables take a thin film; the ring is larger by gap over diameter, centred or not."""
    got = answer(
        "solder-tube", method="soldering", service="heating-water", system="inch", size_inch=size, joints="1",
        clearance=f"{gap} in", solder_wire="0.1 in",
    )["results"]["filler_length_joint"]["si"]  # fmt: skip
    volume = got / INCH * pi * 0.1**2 / 4
    whole = ring(outside, gap, share * gap) * depth
    assert whole == pytest.approx(volume * (1 + gap / outside), rel=1e-8)
    assert whole > volume


@pytest.mark.parametrize(("size", "outside", "depth"), [("15 mm", 15.0, 10.6), ("54 mm", 54.0, 32.0)])
def test_a_braze_fills_two_thirds_of_the_ring(size: str, outside: float, depth: float) -> None:
    got = answer(
        "solder-tube", method="brazing", service="heating-water", system="metric", size_metric=size, joints="1",
        clearance="0.1 mm", rod="2 mm",
    )["results"]["filler_length_joint"]["si"]  # fmt: skip
    whole = ring(outside, 0.1, 0.05) * depth * 2 / 3
    assert got * 1000 * pi == pytest.approx(whole, rel=0.1 / outside + 1e-6)
    assert got * 1000 * pi < whole
