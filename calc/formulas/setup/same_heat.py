"""A tip for another fuel, or for many holes: the hole that passes the gas of a wanted heat."""

from math import pi, sqrt

from calc.formulas.heat.heat_of_reaction import HeatValue
from calc.values.quantities import Area, FreeGasFlow, Length, Power, Ratio, Speed


def flow_for_heat(power: Power, efficiency: Ratio, heat_value: HeatValue) -> FreeGasFlow:
    """Fuel gas whose flame brings a heat into the work.

    Args:
        power: Heat wanted in the work, W.
        efficiency: Share of the flame's heat that enters the work.
        heat_value: Heat of the fuel, cone and envelope together, J/m³ of free gas.

    Returns:
        m³/s of free gas.

    Valid for:
        Gas that burns whole. The share is uncertain by a factor of 1.7 either way.

    Source:
        [definition]

    Examples:
        >>> round(flow_for_heat(917.0, 0.20, 55e6) * 3.6e6)
        300
    """
    return power / (efficiency * heat_value)


def flow_of_same_heat(
    known_flow: FreeGasFlow, known_heat_value: HeatValue, heat_value: HeatValue
) -> FreeGasFlow:
    """Flow of a fuel gas that gives the heat of a known flow of another.

    Args:
        known_flow: Of the known fuel gas, m³/s of free gas.
        known_heat_value: Its heat, cone and envelope together, J/m³.
        heat_value: Heat of the fuel asked for, likewise.

    Returns:
        m³/s of free gas.

    Valid for:
        Work that the whole flame heats: brazing, soldering, heating. Welding
        lives on the cone alone.

    Source:
        [definition]

    Examples:
        >>> round(flow_of_same_heat(100.0, 55.0e6, 93.9e6), 1)
        58.6
    """
    return known_flow * known_heat_value / heat_value


def holes_area(flow: FreeGasFlow, passed_by_area: Speed) -> Area:
    """Area of all holes together that passes a flow.

    Args:
        flow: Of one gas or of the mixture, m³/s of free gas.
        passed_by_area: What an area of one square metre passes of the same gas
            at that pressure, m³/s of free gas.

    Returns:
        m².

    Valid for:
        Holes short against their width.

    Source:
        [definition]
    """
    return flow / passed_by_area


def hole_diameter(area: Area, holes: Ratio = 1.0) -> Length:
    """Diameter of one hole of several that make an area.

    Args:
        area: Of all holes together, m².
        holes: How many there are.

    Returns:
        m.

    Valid for:
        Round holes, all alike.

    Source:
        [definition]

    Examples:
        >>> round(hole_diameter(4 * 0.7853982e-6, 4.0) * 1000, 4)
        1.0
    """
    return sqrt(4 * area / (pi * holes))
