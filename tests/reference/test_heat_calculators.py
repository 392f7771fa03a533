"""The heat calculators against scipy, run now, at places that no table gives."""

import random
from math import log, pi, sqrt

import numpy as np
import pytest
from scipy import integrate, optimize, special

from calc import answer
from calc.formulas.heat.heat_of_reaction import heat_value, heats
from calc.formulas.heat.weld_pool import thick_pool_width
from calc.trade.heat.metals import METALS, metal_of

NEAR = 1e-3
MINE = heat_value(heats("acetylene").total_gross)


def half_width(rise_at: object, reach: float) -> float:
    """Half the width of a line of one rise, by the place where it is widest."""

    def aside(ahead: float) -> float:
        return (
            optimize.brentq(lambda y: rise_at(ahead, y) - 1.0, 1e-9, 50 * reach)
            if rise_at(ahead, 1e-9) > 1
            else 0.0
        )  # type: ignore[operator]

    # Look coarsely first: the line may be far longer behind than it is ahead.
    places = -np.concatenate([np.linspace(-1, 1, 41) * reach, np.geomspace(reach, 400 * reach, 80)])
    best = places[int(np.argmax([aside(x) for x in places]))]
    found = optimize.minimize_scalar(
        lambda x: -aside(x), bounds=(best - 0.3 * abs(best) - 0.2 * reach, best + 0.3 * abs(best) + 0.2 * reach),
        method="bounded", options={"xatol": 1e-7},
    )  # fmt: skip
    return -float(found.fun)


@pytest.mark.parametrize("seed", range(8))
def test_the_pool_is_that_of_a_point_and_its_images_in_both_faces_by_scipy(seed: int) -> None:
    """Rosenthal's point source on a plate of finite thickness, as many images as count."""
    made = random.Random(seed)
    metal = made.choice(list(METALS))
    kind = metal_of(metal)
    k, alpha = kind.hot_conductivity, kind.hot_diffusivity
    thickness, speed = made.uniform(1e-3, 8e-3), made.uniform(5e-4, 4e-3)
    rise = kind.liquidus - 293.15
    flow = (
        made.uniform(60.0, 600.0) * thickness * 1e3 / 3.6e6
        if kind.hot_conductivity < 50
        else made.uniform(3e-4, 4.7e-4)
    )
    flow = min(flow, 4.7e-4)
    power = flow * MINE * 0.2

    pace = speed / (2 * alpha)
    images = 2 * thickness * np.arange(1, int(30 / (pace * thickness)) + 2)

    def plate(ahead: float, aside: float) -> float:
        r = np.hypot(ahead, aside)
        far = np.hypot(r, images)
        face = np.exp(-pace * (ahead + r)) / r + 2 * np.sum(np.exp(-pace * (ahead + far)) / far)
        return float(power / (2 * pi * k) * face / rise)

    widest = 2 * half_width(plate, 3e-3)
    got = answer(
        "weld-heat", metal=metal, thickness=f"{thickness * 1e3!r} mm", acetylene_flow=f"{flow * 3.6e6!r} L/h",
        travel_speed=f"{speed * 6e4!r} mm/min", start_temperature="20 degC", rules="iso",
    )["results"]["pool_width"]  # fmt: skip
    if got["value"] is None:
        assert widest < 2 * thickness  # the flame's own width keeps so small a pool from forming
        return
    assert got["value"] == pytest.approx(widest * 1e3, rel=NEAR)


def test_a_thick_plates_pool_by_scipy() -> None:
    for power, speed in ((300.0, 1e-3), (2500.0, 4e-3), (9000.0, 2e-2)):

        def thick(ahead: float, aside: float, power: float = power, speed: float = speed) -> float:
            r = np.hypot(ahead, aside)
            return power / (2 * pi * 35.0 * r) * np.exp(-speed * (ahead + r) / (2 * 6.86e-6)) / 1490.0

        theirs = 2 * half_width(thick, power / (2 * pi * 35 * 1490))
        assert thick_pool_width(power, speed, 1490.0, 35.0, 6.86e-6) == pytest.approx(theirs, rel=NEAR)


@pytest.mark.parametrize(("distance", "time"), [(0.15, 90.0), (0.4, 1800.0), (1.1, 9000.0)])
def test_heat_along_a_pipe_by_scipy(distance: float, time: float) -> None:
    kind = metal_of("copper")
    fast = max(kind.conductivity / (kind.density * kind.heat_capacity), kind.hot_diffusivity) * 1.7
    theirs = 20 + 780 * special.erfc(distance / (2 * sqrt(fast * time)))
    got = answer(
        "far-side",
        shape="pipe",
        material="copper",
        distance=f"{distance * 1e3!r} mm",
        time=f"{time!r} s",
        rules="iso",
    )
    assert got["results"]["far_temperature"]["value"] == pytest.approx(theirs, rel=NEAR)


def test_a_plates_back_by_scipy() -> None:
    """A bell-shaped patch held still, the plate's depth by images, the sum over time by quadrature."""
    kind, thickness, time, spot, flow = metal_of("low-carbon-steel"), 0.008, 25.0, 0.020, 400 / 3.6e6
    k = kind.conductivity
    alpha = max(k / (kind.density * kind.heat_capacity), kind.hot_diffusivity)
    spread = spot / sqrt(8 * log(5))
    images = np.arange(-40, 41)

    def laid(t: float) -> float:
        depth = np.exp(-((thickness + 2 * images * thickness) ** 2) / (4 * alpha * t)).sum() / sqrt(
            pi * alpha * t
        )
        return depth / (spread**2 + 2 * alpha * t)

    power = flow * MINE * 0.2 * 1.7
    total = integrate.quad(laid, 0, time, epsrel=1e-9, limit=200)[0]
    theirs = 20 + power * alpha / (2 * pi * k) * total
    got = answer(
        "far-side", shape="plate", material="low-carbon-steel", distance="8 mm", time="25 s", spot="20 mm",
        acetylene_flow="400 L/h", rules="iso",
    )["results"]["far_temperature"]  # fmt: skip
    assert got["value"] == pytest.approx(theirs, rel=NEAR)


@pytest.mark.parametrize(
    ("target", "flow", "mass"), [(180.0, 900.0, 23.0), (420.0, 2500.0, 23.0), (95.0, 450.0, 8.0)]
)
def test_warming_with_losses_by_scipy(target: float, flow: float, mass: float) -> None:
    """Cast iron, 490 J/kgK, a plate of 14 mm; the differential equation run by scipy."""
    area = 2 * mass / (7200 * 0.014)
    power = flow / 3.6e6 * MINE * 0.3

    def slope(_: float, t: list[float]) -> list[float]:
        kelvin = t[0] + 273.15
        lost = area * (10 * (t[0] - 20) + 0.8 * 5.670374419e-8 * (kelvin**4 - 293.15**4))
        return [(power - lost) / (mass * 490)]

    def there(_: float, t: list[float]) -> float:
        return t[0] - target

    there.terminal = True  # type: ignore[attr-defined]
    run = integrate.solve_ivp(slope, (0, 1e5), [20.0], events=there, rtol=1e-9, atol=1e-9)
    got = answer(
        "warm-up", metal="cast-iron", mass=f"{mass!r} kg", thickness="14 mm", target=f"{target!r} degC",
        flow=f"{flow!r} L/h", rules="iso",
    )["results"]["time"]  # fmt: skip
    assert got["value"] * 60 == pytest.approx(run.t_events[0][0], rel=NEAR)
