"""Leak-down: what a falling gauge tells of a leak, and what it cannot.

No reading says that there is no leak. It says how large a leak could hide.
"""

from math import sqrt

from calc.values.quantities import (
    ATMOSPHERE,
    FIFTEEN_CELSIUS,
    GAS_CONSTANT,
    Amount,
    FreeGasFlow,
    Gauge,
    Pressure,
    Ratio,
    Temperature,
    TemperatureRise,
    Time,
    Volume,
)


def lost_amount(
    volume: Volume,
    first_pressure: Pressure,
    first_temperature: Temperature,
    last_pressure: Pressure,
    last_temperature: Temperature,
) -> Amount:
    """Gas lost from a shut volume between two readings.

    Args:
        volume: Volume shut in, m³.
        first_pressure: Absolute pressure at first, Pa.
        first_temperature: Temperature of the gas then, K.
        last_pressure: Absolute pressure at last, Pa.
        last_temperature: Temperature of the gas then, K.

    Returns:
        Gas lost, mol; less than nothing where the readings say that gas came in.

    Valid for:
        Working pressures, where the gas counts as ideal: within 2 %; propane and
        propylene at 30 psi within 12 %. The whole shut volume must have the
        temperature given.

    Source:
        [gas-law]

    Examples:
        >>> round(1e6 * lost_amount(0.00024132, 204746.7, 293.15, 197852.0, 293.15))
        683
    """
    return volume * (first_pressure / first_temperature - last_pressure / last_temperature) / GAS_CONSTANT


def leak_flow(
    amount: Amount,
    time: Time,
    reference_pressure: Pressure = ATMOSPHERE,
    reference_temperature: Temperature = FIFTEEN_CELSIUS,
) -> FreeGasFlow:
    """Flow of a leak that loses an amount in a time.

    Args:
        amount: Gas lost, mol.
        time: Time between the readings, s.
        reference_pressure: Pressure the answer is counted at, Pa.
        reference_temperature: Temperature the answer is counted at, K.

    Returns:
        Flow, m³/s at the reference state.

    Valid for:
        A pressure that falls by a small share, so that the leak is steady.

    Source:
        [gas-law]
    """
    return amount * GAS_CONSTANT * reference_temperature / reference_pressure / time


def cooled_pressure(pressure: Pressure, temperature: Temperature, cooled: Temperature) -> Pressure:
    """Pressure that a tight volume has after it cools or warms.

    Args:
        pressure: Absolute pressure at first, Pa.
        temperature: Temperature then, K.
        cooled: Temperature now, K.

    Returns:
        Absolute pressure, Pa. What is below it was lost; what is above it came in.

    Valid for:
        Working pressures, where the gas counts as ideal.

    Source:
        [gas-law]

    Examples:
        >>> round((204747 - cooled_pressure(204747, 293.15, 290.15)) / 6894.757, 2)  # psi
        0.3
    """
    return pressure * cooled / temperature


def lost_amount_error(
    *,
    volume: Volume,
    first_pressure: Pressure,
    first_temperature: Temperature,
    last_pressure: Pressure,
    last_temperature: Temperature,
    gauge_error: Gauge,
    temperature_error: TemperatureRise,
    volume_error: Ratio,
) -> Amount:
    """How far a lost amount may be out for what the readings may be out.

    Args:
        volume: Volume shut in, m³.
        first_pressure: Absolute pressure at first, Pa.
        first_temperature: Temperature of the gas then, K.
        last_pressure: Absolute pressure at last, Pa.
        last_temperature: Temperature of the gas then, K.
        gauge_error: What one reading of the gauge may be out, Pa.
        temperature_error: What one temperature may be out, K.
        volume_error: What the volume may be out, as a share of it.

    Returns:
        Error of the lost amount, mol, either way: as sure as the errors given.

    Valid for:
        Small errors that do not depend on one another.

    Source:
        [definition] of independent errors: the root of the sum of their squares.
    """
    first = first_pressure / first_temperature
    last = last_pressure / last_temperature
    by_gauge = (gauge_error / first_temperature) ** 2 + (gauge_error / last_temperature) ** 2
    by_warmth = (first * temperature_error / first_temperature) ** 2 + (
        last * temperature_error / last_temperature
    ) ** 2
    by_volume = (volume_error * (first - last)) ** 2
    return volume / GAS_CONSTANT * sqrt(by_gauge + by_warmth + by_volume)


def waiting_time(
    *,
    volume: Volume,
    change: Gauge,
    temperature: Temperature,
    leak: FreeGasFlow,
    reference_pressure: Pressure = ATMOSPHERE,
    reference_temperature: Temperature = FIFTEEN_CELSIUS,
) -> Time:
    """Time until a gauge shows a leak of a given size.

    Args:
        volume: Volume shut in, m³.
        change: Smallest fall that can be read off the gauge, Pa.
        temperature: Temperature of the gas, K.
        leak: Leak to be found, m³/s at the reference state.
        reference_pressure: Pressure the leak is counted at, Pa.
        reference_temperature: Temperature the leak is counted at, K.

    Returns:
        Time to wait, s, at a steady temperature.

    Valid for:
        A fall that is a small share of the pressure.

    Source:
        [gas-law]

    Examples:
        >>> round(waiting_time(volume=0.000241, change=3447.0, temperature=293.15, leak=1e-6 / 60) / 60)  # 1 mL/min: min
        8
    """
    return volume * (change / reference_pressure) * (reference_temperature / temperature) / leak


def smallest_leak(
    *,
    volume: Volume,
    change: Gauge,
    temperature: Temperature,
    waiting: Time,
    reference_pressure: Pressure = ATMOSPHERE,
    reference_temperature: Temperature = FIFTEEN_CELSIUS,
) -> FreeGasFlow:
    """Smallest leak that a gauge can show in a waiting time.

    Args:
        volume: Volume shut in, m³.
        change: Smallest fall that can be told from reading and temperature, Pa.
        temperature: Temperature of the gas, K.
        waiting: Time waited, s.
        reference_pressure: Pressure the answer is counted at, Pa.
        reference_temperature: Temperature the answer is counted at, K.

    Returns:
        Flow, m³/s at the reference state. Any smaller leak is not shown: a gauge at rest
        is never proof that nothing leaks.

    Valid for:
        A fall that is a small share of the pressure.

    Source:
        [gas-law]
    """
    return volume * (change / reference_pressure) * (reference_temperature / temperature) / waiting
