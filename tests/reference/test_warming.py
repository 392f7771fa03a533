"""Warming and cooling of parts and of steel against scipy and against reference points."""

from pathlib import Path

import numpy as np
import pytest
from scipy import integrate

from calc.formulas.heat import cooling, lumped
from calc.formulas.heat.heated_spot import spot_heat_rise
from calc.formulas.heat.steel_properties import (
    BREAKS,
    STEEL_DENSITY,
    steel_conductivity,
    steel_heat_capacity,
)
from tests.reference.test_heat_conduction import plate_flash, points, quad_over_log_time

POINTS = Path(__file__).parent / "points"
NEAR = 1e-3  # the acceptance limit of heat conduction
STEEL = {"conductivity": 35.0, "diffusivity": 6.85938e-6}


@pytest.mark.parametrize("row", points("D7_lumped_preheat"), ids=lambda r: str(r["time_s"]))
def test_warm_up_matches_its_reference_point(row: dict[str, float | str]) -> None:
    found = lumped.warm_up_time(
        power=row["net_flame_W"],
        mass=row["mass_kg"],
        area=row["area_m2"],
        heat_transfer=row["h"],
        emissivity=row["emissivity"],
        start=row["T0_C"] + 273.15,
        target=row["target_C"] + 273.15,
    )
    if row["time_s"] == "never":
        assert found is None
    else:
        assert found == pytest.approx(row["time_s"], rel=2e-5)


@pytest.mark.parametrize(("power", "target"), [(3500.0, 760.0), (9000.0, 1100.0), (2600.0, 410.0)])
def test_warm_up_matches_scipy_run_now(power: float, target: float) -> None:
    mass, area, h, e, around = 6.3, 0.11, 12.0, 0.75, 288.0

    def rate(_: float, y: list[float]) -> list[float]:
        loss = area * (h * (y[0] - around) + e * 5.670374419e-8 * (y[0] ** 4 - around**4))
        return [(power - loss) / (mass * steel_heat_capacity(y[0]))]

    goal = target + 273.15

    def there(_: float, y: list[float]) -> float:
        return y[0] - goal

    there.terminal = True  # type: ignore[attr-defined]
    run = integrate.solve_ivp(
        rate, (0, 1e5), [310.0], "LSODA", events=there, rtol=1e-9, atol=1e-7, max_step=2.0
    )
    found = lumped.warm_up_time(
        power=power,
        mass=mass,
        area=area,
        heat_transfer=h,
        emissivity=e,
        start=310.0,
        target=goal,
        surroundings=around,
    )
    if run.t_events[0].size:
        assert found == pytest.approx(run.t_events[0][0], rel=NEAR)
    else:
        assert found is None


def test_cooling_matches_scipy_run_now() -> None:
    mass, area, h, e, around = 6.3, 0.31, 12.0, 0.75, 288.0

    def slowness(t: float) -> float:
        loss = area * (h * (t - around) + e * 5.670374419e-8 * (t**4 - around**4))
        return mass * steel_heat_capacity(t) / loss

    theirs = integrate.quad(slowness, 320.0, 1250.0, points=BREAKS, limit=400, epsrel=1e-10)[0]
    assert lumped.cooling_time(
        mass=mass, area=area, heat_transfer=h, emissivity=e, start=1250.0, target=320.0, surroundings=around
    ) == pytest.approx(theirs, rel=1e-7)


def test_cooling_times_match_their_points() -> None:
    # The points are the same equation: they pin the arithmetic, not the physics.
    for row in points("D8_t85_EN1011"):
        energy, start, thickness = row["Q_kJ_mm"] * 1e6, row["T0_C"] + 273.15, row["d_mm"] / 1e3
        for found, column in (
            (cooling.thick_plate_cooling_time(energy, start), "t85_thick_s"),
            (cooling.thin_plate_cooling_time(energy, start, thickness), "t85_thin_s"),
            (cooling.transition_thickness(energy, start) * 1e3, "d_transition_mm"),
            (cooling.weld_cooling_time(energy, start, thickness), "t85_s"),
        ):
            assert found == pytest.approx(row[column], rel=1e-4, abs=6e-4), column


def test_thick_plate_cooling_is_near_rosenthals() -> None:
    # Straight behind a point source T - T0 = Q/(2πk·t). With steel's own conductivity
    # at 650 °C that is a quarter less than the standard's fit to measured welds.
    energy = 1.1e6
    for start in (20.0, 100.0):
        found = cooling.thick_plate_cooling_time(energy, start + 273.15)
        spans = 1 / (500.0 - start) - 1 / (800.0 - start)
        theirs = energy / (2 * np.pi * steel_conductivity(650.0 + 273.15)) * spans
        assert 0.7 < theirs / found < 1.0


def test_spot_heating_matches_its_reference_points() -> None:
    for row in points("D9_spot_heat_plate"):
        found = spot_heat_rise(
            power=row["q_W"],
            heating_time=row["heat_time_s"],
            time=row["t_s"],
            distance=row["r_m"],
            depth=row["z_m"],
            thickness=row["thickness_m"],
            spread=row["sigma_m"],
            conductivity=row["k"],
            diffusivity=row["alpha"],
            both_faces=row["h_total_W_m2K"],
        )
        assert found == pytest.approx(row["dT_K"], rel=5e-4, abs=1e-3)


@pytest.mark.parametrize("time", [3.0, 41.0, 75.0, 400.0])
def test_spot_heating_matches_scipy_run_now(time: float) -> None:
    k, alpha, thickness, spread, loss, heating = 38.0, 8e-6, 0.005, 0.009, 35.0, 45.0
    decay = loss / (k / alpha * thickness)

    def given(t: float) -> float:
        width = spread**2 + 2 * alpha * t
        return (
            plate_flash(0.001, t, thickness, alpha) * np.exp(-(0.02**2) / (2 * width) - decay * t) / width
        )

    low = max(time - heating, 1e-9)
    theirs = 1100.0 * alpha / (2 * np.pi * k) * quad_over_log_time(given, low, time)
    found = spot_heat_rise(
        power=1100.0,
        heating_time=heating,
        time=time,
        distance=0.02,
        depth=0.001,
        thickness=thickness,
        spread=spread,
        conductivity=k,
        diffusivity=alpha,
        both_faces=loss,
    )
    assert found == pytest.approx(theirs, rel=5e-4)


def test_steel_heat_capacity_sums_to_the_textbook_heat() -> None:
    # Iron from 25 to 900 °C takes 0.61 MJ/kg (NIST-JANAF enthalpy of iron at 1173 K,
    # 34.0 kJ/mol, from memory): the fitted pieces must hold about that much.
    total = integrate.quad(steel_heat_capacity, 298.15, 1173.15, points=BREAKS[:2], limit=300)[0]
    assert total == pytest.approx(34.0e3 / 0.055845, rel=0.08)
    assert STEEL_DENSITY == 7850.0


@pytest.mark.parametrize(
    ("celsius", "capacity", "conductivity"),
    [
        # Tables of the standard as textbooks print them, from memory.
        pytest.param(20.0, 440.0, 53.3, id="20-EN 1993-1-2, from memory"),
        pytest.param(100.0, 488.0, 50.7, id="100-EN 1993-1-2, from memory"),
        pytest.param(500.0, 667.0, 37.4, id="500-EN 1993-1-2, from memory"),
        pytest.param(700.0, 1008.0, 30.7, id="700-EN 1993-1-2, from memory"),
        pytest.param(735.0, 5000.0, 29.5, id="735-EN 1993-1-2, from memory"),
        pytest.param(800.0, 803.0, 27.3, id="800-EN 1993-1-2, from memory"),
        pytest.param(1000.0, 650.0, 27.3, id="1000-EN 1993-1-2, from memory"),
    ],
)
def test_steel_when_hot(celsius: float, capacity: float, conductivity: float) -> None:
    assert steel_heat_capacity(celsius + 273.15) == pytest.approx(capacity, rel=2e-3)
    assert steel_conductivity(celsius + 273.15) == pytest.approx(conductivity, rel=3e-3)
