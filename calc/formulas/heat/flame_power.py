"""How much of a flame's heat reaches the work, and what melting takes."""

from math import pi
from typing import Annotated

from calc.formulas.heat.heat_of_reaction import HeatValue
from calc.values.quantities import FreeGasFlow, Length, Power, PowerDensity, Ratio, Temperature, Unit

EnergyDensity = Annotated[float, Unit("J/m**3")]

FLAME_EFFICIENCY: Ratio = 0.20
FLAME_EFFICIENCY_BAND: tuple[Ratio, Ratio] = (0.12, 0.34)
"""Share of the fuel's heat that enters the work, inferred from the trade's own rules of
flow and speed; a textbook uses 0.20 to 0.30."""
HEATING_EFFICIENCY: Ratio = 0.30
HEATING_EFFICIENCY_BAND: tuple[Ratio, Ratio] = (0.20, 0.40)
"""Share that enters a part which the whole flame warms, in the open: common practice, no source."""
MELTING_FACTOR: Annotated[float, Unit("J/(m**3*K**2)")] = 3330.0
"""Printed as 3.33e-6 J/(mm³·K²) [groover], from memory."""


def power_of_gas(flow: FreeGasFlow, heat_value: HeatValue) -> Power:
    """Heat that a flow of fuel gas gives when it burns.

    Args:
        flow: Fuel gas, m³/s of free gas.
        heat_value: Heat of the fuel, or of one part of its flame, J/m³ of free gas.

    Returns:
        W.

    Valid for:
        Gas that burns whole; what leaks or blows away unburnt gives nothing.

    Source:
        [definition]

    Examples:
        >>> round(power_of_gas(0.3 / 3600, 55e6))
        4583
    """
    return flow * heat_value


def power_into_work(flow: FreeGasFlow, heat_value: HeatValue, efficiency: Ratio) -> Power:
    """Heat that a flame puts into the work.

    Args:
        flow: Fuel gas, m³/s of free gas.
        heat_value: Heat of the fuel, J/m³ of free gas.
        efficiency: Share that enters the work.

    Returns:
        W.

    Valid for:
        One tip on one job: the share falls as the tip grows and as the work gets hot.

    Source:
        [groover]

    Examples:
        >>> round(power_into_work(0.3 / 3600, 55e6, 0.20))
        917
    """
    return flow * heat_value * efficiency


def power_density(power: Power, share: Ratio, diameter: Length) -> PowerDensity:
    """Heat on each square metre of the spot that a flame heats.

    Args:
        power: Heat that enters the work, W.
        share: Part of it that falls inside the spot.
        diameter: Of the spot, m.

    Returns:
        W/m².

    Valid for:
        An average over the spot.

    Source:
        [groover]
    """
    return share * power / (pi * diameter**2 / 4)


def melting_energy(melting_temperature: Temperature) -> EnergyDensity:
    """Heat that melts a volume of metal from room temperature.

    Args:
        melting_temperature: K.

    Returns:
        J/m³.

    Valid for:
        A rule of thumb for common metals; within about a tenth.

    Source:
        [groover], from memory.
    """
    return MELTING_FACTOR * melting_temperature**2
