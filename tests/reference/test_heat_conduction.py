"""Heat in metal against scipy: reference points, and quadrature run live at other places."""

import csv
import random
from itertools import pairwise
from math import hypot, inf
from pathlib import Path

import numpy as np
import pytest
from scipy import integrate, optimize, special

from calc.formulas.heat import bessel, pool, rosenthal, slab
from calc.formulas.heat.moving_source import moving_flame_rise

POINTS = Path(__file__).parent / "points"
NEAR = 1e-3  # the acceptance limit of heat conduction
STEEL = {"conductivity": 35.0, "diffusivity": 6.85938e-6}


def points(name: str) -> list[dict[str, float | str]]:
    def value(text: str) -> float | str:
        try:
            return float(text)
        except ValueError:
            return text

    with (POINTS / f"{name}.csv").open(encoding="utf-8") as lines:
        return [{k: value(v) for k, v in row.items()} for row in csv.DictReader(lines)]


def test_special_functions_match_their_reference_points() -> None:
    for row in points("D1_special"):
        x = row["x"]
        assert bessel.scaled_k0(x) == pytest.approx(row["exp_x_K0"], rel=5e-7)
        assert bessel.scaled_k1(x) == pytest.approx(row["K1"] * np.exp(x), rel=5e-7)
        assert bessel.scaled_erfc(x) == pytest.approx(row["erfcx"], rel=1e-12)


def test_special_functions_match_scipy_run_now() -> None:
    for x in np.geomspace(1e-6, 600.0, 400):
        assert bessel.scaled_k0(x) == pytest.approx(special.k0e(x), rel=5e-7)
        assert bessel.scaled_k1(x) == pytest.approx(special.k1e(x), rel=5e-7)
    for x in np.linspace(-5.0, 60.0, 400):
        assert bessel.scaled_erfc(x) == pytest.approx(special.erfcx(x), rel=1e-12)
    for x in np.linspace(0.0, 6.0, 40):
        theirs = integrate.quad(special.erfc, x, inf, epsabs=0, epsrel=1e-10)[0]
        assert bessel.integral_of_erfc(x) == pytest.approx(theirs, rel=1e-8)


def test_rosenthal_matches_its_reference_points() -> None:
    for row in points("D2_rosenthal"):
        ahead, aside = row["xi_m"], row["y_m"]
        place = {
            "power": row["q_W"],
            "speed": row["v_m_s"],
            "ahead": ahead,
            "distance": hypot(ahead, aside),
            "conductivity": row["k"],
            "diffusivity": row["alpha"],
        }
        found = rosenthal.rise_in_thick_plate(**place)
        assert found == pytest.approx(row["dT_thick_surface_K"], rel=1e-5)
        for thickness, loss, column in (
            (0.0015, 0.0, "dT_thin_d1.5mm_h0"),
            (0.0015, 40.0, "dT_thin_d1.5mm_h40"),
            (0.003, 0.0, "dT_thin_d3mm_h0"),
            (0.003, 40.0, "dT_thin_d3mm_h40"),
        ):
            found = rosenthal.rise_in_thin_plate(**place, thickness=thickness, both_faces=loss)
            assert found == pytest.approx(row[column], rel=1e-5), column


def test_a_moving_flame_matches_its_reference_points() -> None:
    for row in points("D3_moving_gaussian_plate"):
        found = moving_flame_rise(
            power=row["q_W"],
            speed=row["v_m_s"],
            ahead=row["xi_m"],
            aside=row["y_m"],
            depth=row["z_m"],
            thickness=row["thickness_m"],
            spread=row["sigma_m"],
            conductivity=row["k"],
            diffusivity=row["alpha"],
            both_faces=row["h_both_W_m2K"],
        )
        assert found == pytest.approx(row["dT_K"], rel=1e-5), row


def plate_flash(depth: float, time: float, thickness: float, diffusivity: float) -> float:
    """A flash on the face of a slab by images alone, many of them."""
    images = np.arange(-60, 61)
    reach = (depth + 2 * images * thickness) ** 2 if thickness < inf else np.array([depth**2])
    return float(np.exp(-reach / (4 * diffusivity * time)).sum() / np.sqrt(np.pi * diffusivity * time))


def quad_over_log_time(laid: object, low: float, high: float) -> float:
    edges = np.linspace(np.log(low), np.log(high), 60)
    return sum(
        integrate.quad(lambda u: np.exp(u) * laid(np.exp(u)), a, b, epsrel=1e-10)[0]  # type: ignore[operator]
        for a, b in pairwise(edges)
    )


@pytest.mark.parametrize(
    ("speed", "ahead", "aside", "depth", "thickness", "spread", "loss"),
    [
        (0.0015, -0.004, 0.003, 0.0005, 0.002, 0.004, 25.0),
        (0.006, -0.08, 0.002, 0.0, 0.0012, 0.002, 60.0),
        (0.010, -0.30, 0.0, 0.0, 0.003, 0.003, 0.0),
        (0.0, 0.02, 0.01, 0.003, 0.006, 0.008, 30.0),
        (0.0, 0.01, 0.0, 0.0, inf, 0.005, 0.0),
        (0.002, 0.004, 0.001, 0.004, 0.020, 0.0, 15.0),
        (0.002, 0.002, 0.0, 0.0, inf, 0.0, 0.0),
    ],
)
def test_a_moving_flame_matches_scipy_run_now(
    speed: float,
    ahead: float,
    aside: float,
    depth: float,
    thickness: float,
    spread: float,
    loss: float,
) -> None:
    k, alpha = STEEL["conductivity"], STEEL["diffusivity"]
    decay = loss / (k / alpha * thickness) if thickness < inf else 0.0

    def laid(t: float) -> float:
        width = spread**2 + 2 * alpha * t
        off = (ahead + speed * t) ** 2 + aside**2
        return plate_flash(depth, t, thickness, alpha) * np.exp(-off / (2 * width) - decay * t) / width

    # Past the last moment 60 images no longer do, but the loss or the travel has ended it.
    high = 1e7 if thickness == inf and speed == 0 else 3e4 if speed == 0 else 300.0
    theirs = 900.0 * alpha / (2 * np.pi * k) * quad_over_log_time(laid, 1e-12, high)
    found = moving_flame_rise(
        power=900.0,
        speed=speed,
        ahead=ahead,
        aside=aside,
        depth=depth,
        thickness=thickness,
        spread=spread,
        conductivity=k,
        diffusivity=alpha,
        both_faces=loss,
    )
    assert found == pytest.approx(theirs, rel=NEAR)


def test_power_for_width_matches_its_reference_points() -> None:
    for row in points("D4_power_for_width"):
        found = pool.power_for_width(
            width=row["pool_width_m"],
            speed=row["v_m_s"],
            thickness=row["thickness_m"],
            rise=row["dTm_K"],
            conductivity=row["k"],
            diffusivity=row["alpha"],
        )
        assert found == pytest.approx(row["P_required_W"], rel=1e-5)


@pytest.mark.parametrize(("power", "speed"), [(260.0, 0.0013), (480.0, 0.0027), (900.0, 0.0061)])
def test_pool_width_is_the_widest_point_that_scipy_finds(power: float, speed: float) -> None:
    k, alpha, thickness = 35.0, 6.85938e-6, 0.0017

    def half_width(ahead: float) -> float:
        def excess(aside: float) -> float:
            r = hypot(ahead, aside)
            pace = speed / (2 * alpha)
            rise = power / (2 * np.pi * k * thickness) * np.exp(-pace * ahead)
            return rise * special.k0(pace * r) - 1490.0

        return optimize.brentq(excess, 1e-9, 0.1) if excess(1e-9) > 0 else 0.0

    best = optimize.minimize_scalar(
        lambda a: -half_width(a), bounds=(-0.01, 0.0), method="bounded", options={"xatol": 1e-10}
    )
    found = pool.pool_width(
        power=power, speed=speed, thickness=thickness, rise=1490.0, conductivity=k, diffusivity=alpha
    )
    assert found == pytest.approx(-2 * best.fun, rel=1e-5)


def test_slab_and_deep_body_match_their_reference_points() -> None:
    for row in points("D5_slab_flux"):
        flux, k, alpha = row["flux_W_m2"], row["k"], row["alpha"]
        depth, time = row["x_m"], row["t_s"]
        near = {"rel": 1e-5, "abs": 1e-4}  # the points carry four decimals
        found = slab.slab_rise(
            flux=flux,
            depth=depth,
            time=time,
            thickness=row["thickness_m"],
            conductivity=k,
            diffusivity=alpha,
        )
        assert found == pytest.approx(row["dT_slab_insulated_back_K"], **near)
        found = slab.deep_body_rise(flux=flux, depth=depth, time=time, conductivity=k, diffusivity=alpha)
        assert found == pytest.approx(row["dT_semi_infinite_K"], **near)
        found = slab.deep_body_rise(
            flux=flux, depth=depth, time=time, conductivity=k, diffusivity=alpha, surface_loss=100.0
        )
        assert found == pytest.approx(row["dT_semi_inf_h100_K"], **near)


@pytest.mark.parametrize("loss", [0.02, 0.5, 4.0, 900.0])
def test_a_losing_body_matches_scipy_run_now(loss: float) -> None:
    # The face's rise solves an integral equation; check instead that the flux left over
    # at the face, flux - loss·rise, is what flows in by the gradient there.
    k, alpha, flux, time = 41.0, 9.1e-6, 3e5, 37.0
    step = 1e-6
    rises = [
        slab.deep_body_rise(
            flux=flux, depth=i * step, time=time, conductivity=k, diffusivity=alpha, surface_loss=loss
        )
        for i in range(3)
    ]
    gradient = (-3 * rises[0] + 4 * rises[1] - rises[2]) / (2 * step)
    assert -k * gradient == pytest.approx(flux - loss * rises[0], rel=1e-4)
    # and that warmth inside is the heat that came in
    inside = integrate.quad(
        lambda x: slab.deep_body_rise(
            flux=flux, depth=x, time=time, conductivity=k, diffusivity=alpha, surface_loss=loss
        ),
        0.0,
        0.3,
        limit=200,
    )[0]
    came = integrate.quad(
        lambda t: (
            flux
            - loss
            * slab.deep_body_rise(
                flux=flux, depth=0.0, time=t, conductivity=k, diffusivity=alpha, surface_loss=loss
            )
        ),
        0.0,
        time,
    )[0]
    assert inside * k / alpha == pytest.approx(came, rel=1e-4)


def test_a_bar_matches_its_reference_points() -> None:
    for row in points("D6_bar_end_fixed"):
        found = slab.bar_share(row["x_m"], row["t_s"], row["alpha"], row["m_1_per_m"])
        # Below 1e-20 the points themselves are off; scipy's erfc is checked next.
        assert found == pytest.approx(row["theta_ratio"], rel=1e-6, abs=1e-20)


def test_a_bar_matches_scipy_run_now() -> None:
    dice = random.Random(4)
    for _ in range(60):
        x, t, m = dice.uniform(0.005, 0.5), dice.uniform(5, 5000), dice.uniform(0.0, 12.0)
        reach = np.sqrt(1.2e-5 * t)
        place, lost = x / (2 * reach), m * reach
        theirs = 0.5 * np.exp(-m * x) * special.erfc(place - lost)
        theirs += 0.5 * np.exp(-(place**2) - lost**2) * special.erfcx(place + lost)
        assert slab.bar_share(x, t, 1.2e-5, m) == pytest.approx(theirs, rel=1e-9)
