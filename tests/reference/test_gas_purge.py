"""Purging, letting down and leak-down against scipy, CoolProp and printed figures."""

import csv
from math import log, sqrt
from pathlib import Path

import numpy as np
import pytest
from CoolProp.CoolProp import PropsSI
from scipy.integrate import solve_ivp

from calc.formulas.gas.contents import free_gas_volume
from calc.formulas.gas.hose import hose_volume
from calc.formulas.gas.leak import (
    cooled_pressure,
    leak_flow,
    lost_amount,
    lost_amount_error,
    smallest_leak,
    waiting_time,
)
from calc.formulas.gas.purge import bleed_time, purge_time, trapped_gas
from calc.values.quantities import FIFTEEN_CELSIUS, GAS_CONSTANT, SEVENTY_FAHRENHEIT

ATM = 101325.0
PSI = 6894.757293168361
CFH = 0.3048**3 / 3600 * FIFTEEN_CELSIUS / SEVENTY_FAHRENHEIT


@pytest.mark.parametrize(
    ("sixteenths", "at", "seconds"),
    [
        (sixteenths, at, seconds)
        for sixteenths, row in {
            3: (17, 9, 4, 1.4),
            4: (31, 15, 8, 2.6),
            5: (48, 24, 12, 4),
            6: (69, 35, 17, 6),
        }.items()
        for at, seconds in zip((5, 10, 20, 60), row, strict=True)
    ],
)
def test_five_changes_take_the_printed_time(sixteenths: int, at: float, seconds: float) -> None:
    """Fact file, G-T1: 25 ft, hose counted at 1 atm and 70 °F; computed."""
    volume = hose_volume(sixteenths / 16 * 0.0254, 25 * 0.3048)
    held = free_gas_volume(
        water_volume=volume, pressure=ATM, temperature=SEVENTY_FAHRENHEIT, compressibility=1.0
    )
    assert purge_time(held, at * CFH, least=0.0) == pytest.approx(seconds, rel=0.03, abs=0.5)
    assert purge_time(held, at * CFH) == pytest.approx(max(10.0, seconds), rel=0.03, abs=0.5)


def test_a_quarter_inch_hose_takes_the_checked_time() -> None:
    """Fact file: 14.73 in³, five volumes at 20 cfh in 7.7 s; computed."""
    volume = hose_volume(0.25 * 0.0254, 25 * 0.3048)
    assert volume / 0.0254**3 == pytest.approx(14.73, abs=0.01)
    held = free_gas_volume(
        water_volume=volume, pressure=ATM, temperature=SEVENTY_FAHRENHEIT, compressibility=1.0
    )
    assert purge_time(held, 20 * CFH, least=0.0) == pytest.approx(7.7, abs=0.05)


@pytest.mark.parametrize("gas", ["oxygen", "methane", "hydrogen"])
@pytest.mark.parametrize("psi", [2, 15, 60])
def test_trapped_gas_in_moles_is_coolprops(gas: str, psi: float) -> None:
    kelvin, volume = 296.0, 0.0006
    inside, outside = (PropsSI("Dmolar", "T", kelvin, "P", p, gas) for p in (ATM + psi * PSI, ATM))
    theirs = (inside - outside) * volume * GAS_CONSTANT * FIFTEEN_CELSIUS / ATM
    assert trapped_gas(volume, psi * PSI, kelvin) == pytest.approx(theirs, rel=0.012)


def saint_venant(pressure: float, gamma: float, mass: float, kelvin: float) -> float:
    """Mass flux through a lossless hole into the atmosphere, in the textbook's form."""
    ratio = max(ATM / pressure, (2 / (gamma + 1)) ** (gamma / (gamma - 1)))
    return pressure * sqrt(
        2 * gamma / (gamma - 1) * mass / (GAS_CONSTANT * kelvin)
        * max(0.0, ratio ** (2 / gamma) - ratio ** ((gamma + 1) / gamma))
    )  # fmt: skip


@pytest.mark.parametrize(
    ("gas", "gamma", "mass"),
    [("oxygen", 1.39521, 0.031998), ("acetylene", 1.23541, 0.026037), ("hydrogen", 1.40597, 2.016e-3)],
)
@pytest.mark.parametrize(("psi", "until"), [(60, 20), (60, 0.5), (15, 1), (5, 0.05)])
def test_letting_down_takes_the_time_of_an_integrator(
    gas: str, gamma: float, mass: float, psi: float, until: float
) -> None:
    """scipy's integrator in time, on pressures in a rigid hose at one temperature."""
    volume, area, kelvin = 5e-4, 5e-7, 293.15
    end = ATM + until * PSI

    def fall(_: float, pressure: np.ndarray) -> list[float]:
        return [
            -0.75 * area * saint_venant(pressure[0], gamma, mass, kelvin)
            * GAS_CONSTANT * kelvin / (mass * volume)
        ]  # fmt: skip

    def there(_: float, pressure: np.ndarray) -> float:
        return pressure[0] - end

    there.terminal = True  # type: ignore[attr-defined]
    theirs = solve_ivp(fall, (0, 1e4), [ATM + psi * PSI], events=there, rtol=1e-9, atol=1e-3).t_events[0][0]
    ours = bleed_time(gases={gas: 1}, volume=volume, pressure=ATM + psi * PSI, until=end, area=area)
    assert ours == pytest.approx(theirs, rel=1e-3)


def test_letting_down_at_the_speed_of_sound_is_exponential() -> None:
    """Choked all the way, pressure falls by a share in equal times: closed form."""
    per_pascal = saint_venant(1e6, 1.39521, 0.031998, 293.15) / 1e6
    rate = 0.75 * 1e-6 * per_pascal * GAS_CONSTANT * 293.15 / (0.031998 * 1e-3)
    for start, end in ((2.4e6, 1.2e6), (1.2e6, 0.3e6)):
        ours = bleed_time(gases={"oxygen": 1}, volume=1e-3, pressure=start, until=end, area=1e-6)
        assert ours == pytest.approx(log(start / end) / rate, rel=1e-4)


def _points() -> list[dict[str, float]]:
    path = Path(__file__).parent / "points" / "C3_leakdown.csv"
    with path.open(encoding="utf-8") as file:
        return [{k: float(v) for k, v in row.items()} for row in csv.DictReader(file)]


@pytest.mark.parametrize("row", _points(), ids=lambda r: f"{r['P1_psig']}-{r['P2_psig']} psig")
def test_reference_points_are_met(row: dict[str, float]) -> None:
    """Same equation, solved elsewhere: a regression value."""
    lost = lost_amount(
        row["V_m3"],
        row["P1_psig"] * PSI + ATM,
        row["T1_K"],
        row["P2_psig"] * PSI + ATM,
        row["T2_K"],
    )
    assert lost == pytest.approx(row["lost_mol"], rel=1e-4)
    assert 60e6 * leak_flow(lost, row["dt_s"]) == pytest.approx(row["leak_std_mL_min_15C"], rel=1e-4)


def test_a_loss_in_moles_is_coolprops() -> None:
    for gas in ("oxygen", "methane", "hydrogen"):
        for psi, fall, kelvin, cooler in ((60, 20, 299, 297), (15, 3, 293, 293), (30, 5, 280, 285)):
            first, last = ATM + psi * PSI, ATM + (psi - fall) * PSI
            theirs = 3e-4 * (
                PropsSI("Dmolar", "T", kelvin, "P", first, gas)
                - PropsSI("Dmolar", "T", cooler, "P", last, gas)
            )
            assert lost_amount(3e-4, first, kelvin, last, cooler) == pytest.approx(theirs, rel=0.02)


@pytest.mark.parametrize(("psi", "shows"), [(15, 0.30), (20, 0.35)])
def test_three_kelvin_look_like_the_printed_leak(psi: float, shows: float) -> None:
    """Reference facts: 0.30 psi in a 15 psig hose, 0.35 at 20 psig."""
    first = ATM + psi * PSI
    fall = first - cooled_pressure(first, 293.15, 290.15)
    assert fall / PSI == pytest.approx(shows, abs=0.006)
    theirs = first - PropsSI(
        "P", "T", 290.15, "Dmolar", PropsSI("Dmolar", "T", 293.15, "P", first, "Oxygen"), "Oxygen"
    )
    assert fall == pytest.approx(theirs, rel=0.01)


@pytest.mark.parametrize(
    ("gauge_error", "temperature_error", "volume_error"),
    [(700.0, 0.5, 0.1), (0.0, 1.0, 0.0), (1500.0, 0.0, 0.0), (200.0, 0.2, 0.3)],
)
def test_the_error_is_what_random_readings_scatter(
    gauge_error: float, temperature_error: float, volume_error: float
) -> None:
    """A million random readings, fixed seed."""
    rng = np.random.default_rng(20)
    reading = (2.4e-4, 2.05e5, 293.15, 1.95e5, 291.15)
    volume, p1, t1, p2, t2 = (
        value + error * rng.standard_normal(1_000_000)
        for value, error in zip(
            reading,
            (
                volume_error * reading[0],
                gauge_error,
                temperature_error,
                gauge_error,
                temperature_error,
            ),
            strict=True,
        )
    )
    scatter = float(np.std(volume * (p1 / t1 - p2 / t2) / GAS_CONSTANT))
    names = ("volume", "first_pressure", "first_temperature", "last_pressure", "last_temperature")
    ours = lost_amount_error(
        **dict(zip(names, reading, strict=True)),
        gauge_error=gauge_error, temperature_error=temperature_error, volume_error=volume_error,
    )  # fmt: skip
    assert ours == pytest.approx(scatter, rel=0.01)


def test_waiting_shows_a_leak_that_coolprop_lets_out() -> None:
    """1 mL/min of free oxygen out of 0.241 L at 15 psig, until 0.5 psi are gone."""
    volume, first, leak = 2.41e-4, ATM + 15 * PSI, 1e-6 / 60
    moles = volume * (
        PropsSI("Dmolar", "T", 293.15, "P", first, "Oxygen")
        - PropsSI("Dmolar", "T", 293.15, "P", first - 0.5 * PSI, "Oxygen")
    )
    theirs = moles * GAS_CONSTANT * FIFTEEN_CELSIUS / ATM / leak
    ours = waiting_time(volume=volume, change=0.5 * PSI, temperature=293.15, leak=leak)
    assert ours == pytest.approx(theirs, rel=0.005)
    assert smallest_leak(
        volume=volume, change=0.5 * PSI, temperature=293.15, waiting=theirs
    ) == pytest.approx(leak, rel=0.005)
