"""Clearing hoses before lighting, and letting them down after work."""

from collections.abc import Mapping

from calc.formulas.gas.nozzle import (
    DISCHARGE,
    TWENTY_CELSIUS,
    free_gas_flow,
    orifice_flow,
    orifice_mass_flow,
    throat_ratio,
    throat_speed,
)
from calc.values.quantities import (
    ATMOSPHERE,
    FIFTEEN_CELSIUS,
    Area,
    FreeGas,
    FreeGasFlow,
    Gauge,
    Pressure,
    Ratio,
    Temperature,
    Time,
    Volume,
)

CHANGES: Ratio = 5.0
"""Times that the gas in a hose is changed; our own assumption, no source."""
LEAST_PURGE: Time = 10.0
"""Shortest purge of a hose: published spans begin here [finnish-guide]."""
STEPS = 50


def purge_time(
    hose_gas: FreeGas,
    flow: FreeGasFlow,
    changes: Ratio = CHANGES,
    least: Time = LEAST_PURGE,
) -> Time:
    """Time to let one gas flow before lighting.

    Args:
        hose_gas: Gas that the hose holds at its working pressure, m³ at 15 °C and 1 atm:
            its volume counted as free gas.
        flow: Flow through the torch, m³/s likewise.
        changes: How many times the hose is to be filled anew.
        least: Shortest time, s.

    Returns:
        Time, s, for one hose. A small tip takes longer.

    Valid for:
        One gas at a time, ventilated, nothing alight. The maker's time comes first.

    Source:
        [finnish-guide] 10 to 30 s, longer for small torches; five changes are our own.

    Examples:
        >>> one = 0.0085 * 0.0283, 10 * 0.0283 / 3600  # 1/4 in by 25 ft at 10 ft³/h
        >>> round(purge_time(*one)), round(purge_time(one[0], 10 * one[1]))
        (15, 10)
    """
    return max(least, changes * hose_gas / flow)


def vented_gas(flow: FreeGasFlow, time: Time) -> FreeGas:
    """Gas let out in a time.

    Args:
        flow: Flow, m³/s at 15 °C and 1 atm.
        time: How long, s.

    Returns:
        Gas, m³ at 15 °C and 1 atm. It goes into the room: ventilate.

    Valid for:
        A steady flow.

    Source:
        [definition]
    """
    return flow * time


def trapped_gas(
    volume: Volume,
    gauge: Gauge,
    temperature: Temperature,
    reference_pressure: Pressure = ATMOSPHERE,
    reference_temperature: Temperature = FIFTEEN_CELSIUS,
) -> FreeGas:
    """Gas that a shut hose lets out when it is opened.

    Args:
        volume: Volume shut in, m³: hoses, regulator's low side, torch.
        gauge: Pressure shut in, Pa above the atmosphere.
        temperature: Temperature of the gas, K.
        reference_pressure: Pressure the answer is counted at, Pa.
        reference_temperature: Temperature the answer is counted at, K.

    Returns:
        Gas above the atmosphere's pressure, m³ at the reference state. As much again as
        the volume itself stays behind.

    Valid for:
        Working pressures, where the gas counts as ideal: within 1.2 % to 60 psi. Propane
        and propylene hold up to 8 % more at 30 psi.

    Source:
        [gas-law]

    Examples:
        >>> round(1000 * trapped_gas(0.000241, 103_421.0, 293.15), 3)  # litres
        0.242
    """
    return volume * (gauge / reference_pressure) * (reference_temperature / temperature)


def bleed_time(
    *,
    gases: Mapping[str, Ratio],
    volume: Volume,
    pressure: Pressure,
    until: Pressure,
    area: Area,
    outside: Pressure = ATMOSPHERE,
    temperature: Temperature = TWENTY_CELSIUS,
    discharge: Ratio = DISCHARGE,
) -> Time:
    """Time for a shut hose to blow down through a hole.

    A solver: adds up the time of many small falls of pressure, the gas kept at one
    temperature by the hose. The step is even in the root of the gauge pressure, since
    the flow fades as that root.

    Args:
        gases: Volumes of each gas in the hose; commonly one.
        volume: Volume shut in, m³.
        pressure: Absolute pressure at the start, Pa.
        until: Absolute pressure at the end, Pa; not below the outside's.
        area: Area of the hole that it leaves by, m².
        outside: Absolute pressure outside, Pa.
        temperature: Temperature of the gas, K.
        discharge: Share of the lossless flow that the hole passes.

    Returns:
        Time, s; a lower figure, as valves and hose slow the gas too.

    Valid for:
        As `orifice_flow`.

    Raises:
        ValueError: As `orifice_flow`, or the pressures are not in falling order.

    Source:
        [gas-law] with the flow of a hole.

    Examples:
        >>> quick = bleed_time(gases={"acetylene": 1}, volume=0.000241, pressure=135_799.0, until=101_325.0, area=7.9e-7)
        >>> 0 < quick < 10
        True
    """
    if not (volume > 0 and outside <= until <= pressure):
        raise ValueError("A hose lets down from a higher pressure to a lower one.")
    if until == pressure:
        return 0.0
    low, high = (until - outside) ** 0.5, (pressure - outside) ** 0.5
    amount = volume / ATMOSPHERE * FIFTEEN_CELSIUS / temperature  # free gas to a pascal
    width = (high - low) / STEPS
    gas = orifice_flow(
        gases=gases,
        area=area,
        pressure=pressure,
        outside=outside,
        temperature=temperature,
        discharge=discharge,
    )
    total = 0.0
    for step in range(STEPS):
        root = low + (step + 0.5) * width  # the middle of each step, so never at no flow
        now = outside + root**2
        ratio = throat_ratio(now, outside, gas.gamma)
        speed = throat_speed(temperature, gas.molar_mass, gas.gamma, ratio)
        mass_flow = orifice_mass_flow(
            area=area,
            discharge=discharge,
            pressure=now,
            temperature=temperature,
            molar_mass=gas.molar_mass,
            gamma=gas.gamma,
            ratio=ratio,
            speed=speed,
        )
        total += 2 * root * width / free_gas_flow(mass_flow, gas.molar_mass)
    return amount * total


SOLVERS = (bleed_time,)
