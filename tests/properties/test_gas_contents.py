"""What must hold of any cylinder of oxygen, hydrogen or methane."""

from math import isfinite

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.formulas.gas.contents import (
    free_gas_volume,
    share_of_full,
    usable_gas,
    water_volume_of_rated,
)
from calc.formulas.gas.real_gas import (
    COLDEST,
    HIGHEST,
    HOTTEST,
    compressibility,
    pressure_of_contents,
)

gases = st.sampled_from(["oxygen", "hydrogen", "methane"])
pressures = st.floats(1.0, HIGHEST)
temperatures = st.floats(COLDEST, HOTTEST)


@given(gases, pressures, temperatures, st.floats(1e-4, 0.2))
def test_contents_lead_back_to_the_pressure(
    gas: str, pressure: float, temperature: float, water_volume: float
) -> None:
    z = compressibility(gas, pressure, temperature)
    assert isfinite(z)
    assert 0.55 < z < 1.4
    held = free_gas_volume(
        water_volume=water_volume, pressure=pressure, temperature=temperature, compressibility=z
    )
    assert water_volume_of_rated(
        rated=held, full_pressure=pressure, full_temperature=temperature, full_compressibility=z
    ) == pytest.approx(water_volume)
    if pressure < 0.999 * HIGHEST:
        again = pressure_of_contents(gas, water_volume, held, temperature)
        assert again == pytest.approx(pressure, rel=1e-9)


@given(gases, temperatures, st.floats(1e3, HIGHEST), st.floats(1.001, 2.0))
def test_more_pressure_is_more_gas(gas: str, temperature: float, pressure: float, times: float) -> None:
    more = min(pressure * times, HIGHEST)
    less_gas, more_gas = (
        free_gas_volume(
            water_volume=0.05,
            pressure=p,
            temperature=temperature,
            compressibility=compressibility(gas, p, temperature),
        )
        for p in (pressure, more)
    )
    assert more_gas >= less_gas
    assert usable_gas(more_gas, less_gas) >= 0
    assert share_of_full(less_gas, more_gas) <= 1


@given(gases, st.floats(1e3, 0.4 * HIGHEST), st.floats(COLDEST, HOTTEST - 1), st.floats(0.1, 40))
def test_a_warmer_cylinder_reads_higher(gas: str, pressure: float, temperature: float, rise: float) -> None:
    held = free_gas_volume(
        water_volume=0.05,
        pressure=pressure,
        temperature=temperature,
        compressibility=compressibility(gas, pressure, temperature),
    )
    warmer = min(temperature + rise, HOTTEST)
    assert pressure_of_contents(gas, 0.05, held, warmer) > pressure


@pytest.mark.parametrize(
    ("water_volume", "free_gas"),
    [(0.05, 25.0), (1e-9, 1.0), (0.0, 1.0), (0.05, -1.0), (0.05, float("nan")), (-1.0, -1.0)],
)
def test_impossible_contents_are_refused(water_volume: float, free_gas: float) -> None:
    with pytest.raises(ValueError, match=r"cylinder|400 bar"):
        pressure_of_contents("oxygen", water_volume, free_gas, 290.0)
