"""Figures of the gases that torches burn, read from their tables."""

from functools import cache
from typing import Any, Literal

from calc.data.tables import table
from calc.values.quantities import MolarHeatCapacity, MolarMass, Ratio, Temperature, Viscosity

TWENTY_CELSIUS: Temperature = 293.15


@cache
def _row(name: str, gas: str) -> Any:
    for row in table(name):
        if row.gas == gas:
            return row
    raise ValueError(f"No figures for {gas}: name oxygen or one of the six fuels.")


def gas_molar_mass(gas: str) -> MolarMass:
    """Mass of a mole of a gas, kg/mol; a look-up.

    Examples:
        >>> round(1000 * gas_molar_mass("acetylene"), 3)
        26.037
    """
    return float(_row("gases-benchbook-2026", gas).molar_mass)


def gas_heat_capacity(gas: str) -> MolarHeatCapacity:
    """Heat capacity of a gas at constant pressure and 20 °C, J/(mol·K); a look-up."""
    return float(_row("gases-benchbook-2026", gas).heat_capacity)


def gas_viscosity(gas: str, temperature: Temperature = TWENTY_CELSIUS) -> Viscosity:
    """Viscosity of a gas, Pa·s; a look-up.

    Args:
        gas: `oxygen` or one of the six fuels.
        temperature: Temperature of the gas, K. From −30 °C to 65 °C a power of it fits
            within 1 %; pressure up to 26 bar moves the viscosity little.

    Examples:
        >>> round(1e6 * gas_viscosity("oxygen", 263.15), 1)
        18.6
    """
    row = _row("viscosity-benchbook-2026", gas)
    return float(row.viscosity * (temperature / TWENTY_CELSIUS) ** row.warmth_power)


def oxygen_ratio(fuel: str, sense: Literal["torch", "complete"] = "torch") -> Ratio:
    """Volumes of oxygen for one of fuel; a look-up.

    Args:
        fuel: One of the six fuels.
        sense: `torch` for what a working flame draws from the cylinder, `complete` for
            all that burning takes, most of which the air brings.

    Returns:
        Volumes of oxygen for one of fuel. The table has the band and the source.

    Examples:
        >>> oxygen_ratio("acetylene"), oxygen_ratio("acetylene", "complete")
        (1.1, 2.5)
    """
    for row in table("oxygen-ratios-benchbook-2026"):
        if (row.fuel, row.sense) == (fuel, sense):
            return float(row.ratio)
    raise ValueError(f"No oxygen ratio for {fuel}: it is not one of the six fuels.")


SOLVERS = (gas_molar_mass, gas_heat_capacity, gas_viscosity, oxygen_ratio)
