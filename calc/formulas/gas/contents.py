"""Gas in a cylinder that holds it as a gas: contents from pressure, and back."""

from calc.values.quantities import (
    ATMOSPHERE,
    FIFTEEN_CELSIUS,
    FreeGas,
    Pressure,
    Ratio,
    Temperature,
    Volume,
)


def free_gas_volume(
    *,
    water_volume: Volume,
    pressure: Pressure,
    temperature: Temperature,
    compressibility: Ratio,
    reference_pressure: Pressure = ATMOSPHERE,
    reference_temperature: Temperature = FIFTEEN_CELSIUS,
) -> Volume:
    """Volume that the gas in a cylinder would fill at a reference state.

    Args:
        water_volume: Inside volume of the cylinder, m³.
        pressure: Absolute pressure in the cylinder, Pa; not the gauge reading.
        temperature: Temperature of the gas, K.
        compressibility: Z of the gas at that pressure and temperature.
        reference_pressure: Pressure the answer is counted at, Pa.
        reference_temperature: Temperature the answer is counted at, K.

    Returns:
        Volume at the reference state, m³. It includes the gas that stays
        behind because the cylinder cannot empty below the reference pressure.

    Valid for:
        Gas stored as a gas. A cylinder that holds liquid, or gas dissolved in
        a solvent, shows no such link between pressure and contents: weigh it.

    Source:
        [gas-law] with the compressibility that defines it.

    Examples:
        >>> round(free_gas_volume(water_volume=0.05, pressure=20_000_000.0, temperature=288.15, compressibility=0.9195), 2)
        10.73
    """
    return (
        water_volume
        * (pressure / reference_pressure)
        * (reference_temperature / temperature)
        / compressibility
    )


def water_volume_of_rated(
    *,
    rated: FreeGas,
    full_pressure: Pressure,
    full_temperature: Temperature,
    full_compressibility: Ratio,
    reference_pressure: Pressure = ATMOSPHERE,
    reference_temperature: Temperature = FIFTEEN_CELSIUS,
) -> Volume:
    """Inside volume of a cylinder, from what it holds when full.

    Args:
        rated: Gas in a full cylinder, all of it, m³ at the reference state.
        full_pressure: Absolute pressure of a full cylinder, Pa.
        full_temperature: Temperature at which that pressure is meant, K.
        full_compressibility: Z of the gas there.
        reference_pressure: Pressure the rated gas is counted at, Pa.
        reference_temperature: Temperature the rated gas is counted at, K.

    Returns:
        Water volume, m³.

    Valid for:
        Gas stored as a gas. Rated contents are round figures of the trade; the
        water volume stamped on the shoulder is better.

    Source:
        [gas-law] with the compressibility that defines it.

    Examples:
        >>> round(water_volume_of_rated(rated=10.73, full_pressure=20_000_000.0, full_temperature=288.15, full_compressibility=0.9195), 4)
        0.05
    """
    return (
        rated
        * (reference_pressure / full_pressure)
        * (full_temperature / reference_temperature)
        * full_compressibility
    )


def usable_gas(free_gas: FreeGas, kept_gas: FreeGas) -> FreeGas:
    """Gas that can be drawn before a cylinder is changed.

    Args:
        free_gas: Gas in the cylinder now, m³ at 15 °C and 1 atm.
        kept_gas: Gas in it at the lowest pressure still used, m³ likewise.

    Returns:
        Gas to draw, m³ at 15 °C and 1 atm; below nothing when already past that.

    Valid for:
        Any gas, both counted alike.

    Source:
        [definition]
    """
    return free_gas - kept_gas


def share_of_full(free_gas: FreeGas, full_gas: FreeGas) -> Ratio:
    """Contents of a cylinder as a share of a full one.

    Args:
        free_gas: Gas in the cylinder, m³ at 15 °C and 1 atm.
        full_gas: Gas in a full one, m³ likewise.

    Returns:
        A plain number: 0.5 is half full.

    Valid for:
        Any gas, both counted alike.

    Source:
        [definition]
    """
    return free_gas / full_gas
