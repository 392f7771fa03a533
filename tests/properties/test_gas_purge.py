"""What must hold of purging, letting down and leak-down."""

from math import isfinite

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.formulas.gas.contents import free_gas_volume
from calc.formulas.gas.leak import (
    cooled_pressure,
    leak_flow,
    lost_amount,
    lost_amount_error,
    smallest_leak,
    waiting_time,
)
from calc.formulas.gas.purge import LEAST_PURGE, bleed_time, purge_time, trapped_gas, vented_gas
from calc.values.quantities import ATMOSPHERE, GAS_CONSTANT

volumes = st.floats(1e-5, 5e-3)
flows = st.floats(1e-6, 1e-2)
gauges = st.floats(100.0, 1e6)
temperatures = st.floats(250, 330)


@given(volumes, flows)
def test_a_purge_changes_the_gas_five_times_and_is_never_short(held: float, flow: float) -> None:
    time = purge_time(held, flow)
    assert time >= LEAST_PURGE
    assert vented_gas(flow, time) >= 5 * held * (1 - 1e-12)
    assert purge_time(held, flow / 2) >= time


@given(volumes, gauges, temperatures)
def test_trapped_gas_is_what_was_there_less_what_stays(
    volume: float, gauge: float, temperature: float
) -> None:
    there, stays = (
        free_gas_volume(water_volume=volume, pressure=p, temperature=temperature, compressibility=1.0)
        for p in (ATMOSPHERE + gauge, ATMOSPHERE)
    )
    assert trapped_gas(volume, gauge, temperature) == pytest.approx(there - stays, rel=1e-6)


@given(volumes, gauges, st.floats(1e-8, 1e-5), st.floats(1.1, 3))
def test_letting_down_further_or_through_less_takes_longer(
    volume: float, gauge: float, area: float, times: float
) -> None:
    start = ATMOSPHERE + gauge
    time = bleed_time(gases={"oxygen": 1}, volume=volume, pressure=start, until=ATMOSPHERE, area=area)
    assert 0 < time
    assert isfinite(time)
    part = bleed_time(
        gases={"oxygen": 1}, volume=volume, pressure=start, until=ATMOSPHERE + gauge / times, area=area
    )
    assert part < time
    smaller = bleed_time(
        gases={"oxygen": 1}, volume=volume, pressure=start, until=ATMOSPHERE, area=area / times
    )
    assert smaller == pytest.approx(times * time)


@given(volumes, gauges, temperatures, temperatures)
def test_a_tight_hose_loses_nothing_by_cooling(
    volume: float, gauge: float, warm: float, cool: float
) -> None:
    first = ATMOSPHERE + gauge
    last = cooled_pressure(first, warm, cool)
    whole = volume * first / (GAS_CONSTANT * warm)
    assert lost_amount(volume, first, warm, last, cool) == pytest.approx(0, abs=1e-12 * whole)


@given(volumes, gauges, temperatures, st.floats(1, 1e4))
def test_a_leak_that_just_shows_is_the_smallest(
    volume: float, change: float, temperature: float, waiting: float
) -> None:
    leak = smallest_leak(volume=volume, change=change, temperature=temperature, waiting=waiting)
    assert waiting_time(volume=volume, change=change, temperature=temperature, leak=leak) == pytest.approx(
        waiting
    )
    lost = lost_amount(volume, 5e6 + change, temperature, 5e6, temperature)
    assert leak_flow(lost, waiting) == pytest.approx(leak, rel=1e-6)


@given(volumes, gauges, temperatures, st.floats(0, 5e3), st.floats(0, 5), st.floats(0, 1))
def test_worse_readings_are_a_larger_error(
    volume: float, gauge: float, warm: float, reads: float, warmth: float, size: float
) -> None:
    reading = {
        "volume": volume, "first_pressure": ATMOSPHERE + gauge, "first_temperature": warm,
        "last_pressure": ATMOSPHERE + gauge / 2, "last_temperature": warm - 1,
    }  # fmt: skip
    error = lost_amount_error(**reading, gauge_error=reads, temperature_error=warmth, volume_error=size)
    assert 0 <= error < float("inf")
    double = lost_amount_error(
        **reading, gauge_error=2 * reads, temperature_error=2 * warmth, volume_error=2 * size
    )
    assert double == pytest.approx(2 * error)


@pytest.mark.parametrize(
    ("volume", "start", "until"),
    [(0.0, 2e5, 1.1e5), (1e-3, 1.1e5, 2e5), (1e-3, 2e5, 9e4), (1e-3, float("nan"), 1.1e5)],
)
def test_what_cannot_let_down_is_refused(volume: float, start: float, until: float) -> None:
    with pytest.raises(ValueError, match="lets down"):
        bleed_time(gases={"oxygen": 1}, volume=volume, pressure=start, until=until, area=1e-6)
