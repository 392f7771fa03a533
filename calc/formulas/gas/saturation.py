"""Fuel gases stored as liquid: pressure, boiling, and how fast they boil off."""

from functools import cache
from math import exp, pi
from typing import Any

from calc.data.tables import table
from calc.values.quantities import (
    Area,
    Density,
    HeatTransfer,
    Length,
    Mass,
    MassFlow,
    Pressure,
    SpecificEnergy,
    Temperature,
)

COLDEST: Temperature = 230.0
HOTTEST: Temperature = 338.151
"""−43 °C, and 65 °C with a hair against rounding: the curves' ends, not limits for use."""

AIR_TO_CYLINDER: tuple[HeatTransfer, HeatTransfer, HeatTransfer] = (5.0, 10.0, 15.0)
"""Heat passed from still air to a cylinder's wall: low, middle, high, W/m²K; from memory.
Frost lowers it, wind and a wet cylinder raise it."""

LIQUID_DENSITY: dict[str, Density] = {"propane": 507.5, "propylene": 523.0}
"""Liquid at 15 °C [coolprop-8], kg/m³; a tenth more at −20 °C, a tenth less at 40 °C."""


@cache
def _curve(gas: str) -> Any:
    for row in table("saturation-benchbook-2026"):
        if row.gas == gas:
            return row
    raise ValueError(f"No vapour-pressure curve for {gas}: propane or propylene.")


def _in_range(temperature: Temperature) -> None:
    if not COLDEST <= temperature <= HOTTEST:
        raise ValueError("A liquefied gas is reckoned from −43 °C to 65 °C only.")


def vapour_pressure(gas: str, temperature: Temperature) -> Pressure:
    """Pressure of a pure liquefied gas at rest, with some liquid left.

    A fitted curve of Wagner's form.

    Args:
        gas: `propane`, `propylene` or `propyne`.
        temperature: Temperature of the liquid, K.

    Returns:
        Absolute pressure, Pa. It does not tell how much is left: weigh the cylinder.

    Valid for:
        The pure gas from −43 °C to 65 °C. Bottled propane holds other gases, and
        their share is not known.

    Raises:
        ValueError: Another gas, or outside that range.

    Source:
        [coolprop-8] fitted; worst error 0.006 %, of propyne 0.08 %.

    Examples:
        >>> round((vapour_pressure("propane", 294.26) - 101325) / 6894.757)  # psi at 70 °F
        110
    """
    row = _curve(gas)
    _in_range(temperature)
    t = 1 - temperature / row.critical_temperature
    log_ratio = row.a * t + row.b * t**1.5 + row.c * t**2.5 + row.d * t**5
    return float(row.critical_pressure * exp(row.critical_temperature / temperature * log_ratio))


def boiling_temperature(gas: str, pressure: Pressure) -> Temperature:
    """Temperature at which a liquefied gas boils under a pressure.

    A solver: halves the span of `vapour_pressure`.

    Args:
        gas: `propane` or `propylene`.
        pressure: Absolute pressure, Pa.

    Returns:
        Temperature, K. Liquid colder than that cannot keep the pressure up.

    Valid for:
        As `vapour_pressure`.

    Raises:
        ValueError: Another gas, or a pressure it does not have in that range.

    Source:
        As `vapour_pressure`.

    Examples:
        >>> round(boiling_temperature("propane", 101325.0) - 273.15, 1)
        -42.1
    """
    low, high = COLDEST, HOTTEST
    if not vapour_pressure(gas, low) <= pressure <= vapour_pressure(gas, high):
        raise ValueError(f"Liquid {gas} has no such pressure between −43 °C and 65 °C.")
    while high - low > 1e-9:
        middle = (low + high) / 2
        if vapour_pressure(gas, middle) < pressure:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def heat_of_evaporation(gas: str, temperature: Temperature) -> SpecificEnergy:
    """Heat that boils off a liquefied gas.

    A fitted curve.

    Args:
        gas: `propane` or `propylene`.
        temperature: Temperature of the liquid, K.

    Returns:
        Heat to evaporate a kilogram, J/kg.

    Valid for:
        As `vapour_pressure`.

    Raises:
        ValueError: Another gas, or outside that range.

    Source:
        [coolprop-8] fitted; worst error 0.75 %, above 60 °C 1.1 %.

    Examples:
        >>> round(heat_of_evaporation("propane", 273.15) / 1000)
        374
    """
    row = _curve(gas)
    _in_range(temperature)
    return float(row.heat * (1 - temperature / row.critical_temperature) ** row.heat_power)


def liquid_depth(mass: Mass, density: Density, diameter: Length) -> Length:
    """Depth of liquid in an upright cylinder.

    Args:
        mass: Liquid in it, kg.
        density: Of the liquid, kg/m³.
        diameter: Of the cylinder, m.

    Returns:
        Depth, m.

    Valid for:
        A flat bottom; the wall's thickness is left out.

    Source:
        [definition]

    Examples:
        >>> round(liquid_depth(10.0, 507.5, 0.3), 2)
        0.28
    """
    return mass / density / (pi * diameter**2 / 4)


def wetted_area(diameter: Length, depth: Length) -> Area:
    """Wall of an upright cylinder that liquid touches.

    Args:
        diameter: Outside diameter of the cylinder, m.
        depth: Depth of the liquid in it, m.

    Returns:
        Side and bottom, m².

    Valid for:
        A flat bottom; a dished one differs by little.

    Source:
        [definition]

    Examples:
        >>> round(wetted_area(0.3, 0.2), 3)
        0.259
    """
    return pi * diameter * depth + pi * diameter**2 / 4


def evaporation_draw(
    heat_transfer: HeatTransfer,
    wetted: Area,
    surroundings: Temperature,
    boiling: Temperature,
    heat: SpecificEnergy,
) -> MassFlow:
    """Steady draw that the surroundings can keep boiling.

    Args:
        heat_transfer: Heat passed to the wall for an area and a difference, W/m²K.
        wetted: Wall that the liquid touches, m².
        surroundings: Temperature of the air, K.
        boiling: Temperature at which the liquid boils under the lowest pressure that
            the torch still works with, K.
        heat: Heat of evaporation there, J/kg.

    Returns:
        Draw, kg/s; nothing or less where the air is no warmer than the boiling liquid.

    Valid for:
        A steady state, which takes hours; a short draw lives on the liquid's own
        warmth. The heat transfer is a guess within a factor of two: show a band.

    Source:
        [definition] of a heat balance; the heat transfer is from memory.

    Examples:
        >>> round(3600 * evaporation_draw(10.0, 0.26, 293.15, 263.15, 388_000.0), 2)
        0.72
    """
    return heat_transfer * wetted * (surroundings - boiling) / heat


SOLVERS = (vapour_pressure, boiling_temperature, heat_of_evaporation)
