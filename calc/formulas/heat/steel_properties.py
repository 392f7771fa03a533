"""How steel's heat capacity and conductivity change as it gets hot."""

from calc.values.quantities import Conductivity, HeatCapacity, Temperature

STEEL_DENSITY: float = 7850.0
"""kg/m³ [en-1993-1-2] 3.4.1"""
_ZERO: Temperature = 273.15
BREAKS: tuple[Temperature, ...] = (873.15, 1008.15, 1173.15)
"""Temperatures where one piece of the heat capacity meets the next, K."""


def steel_heat_capacity(temperature: Temperature) -> HeatCapacity:
    """Heat that carbon steel takes up for each degree.

    A fitted curve in four pieces, with the peak of the magnetic change at 735 °C.

    Args:
        temperature: K.

    Returns:
        J/(kg·K).

    Raises:
        ValueError: The steel is below -20 °C or above 1200 °C.

    Valid for:
        Carbon steel, 20-1200 °C; held at its 20 °C value a little below.

    Source:
        [en-1993-1-2] 3.4.1.2

    Examples:
        >>> round(steel_heat_capacity(273.15 + 735))
        5000
    """
    celsius = temperature - _ZERO
    if not -20.0 <= celsius <= 1200.0 + 1e-9:
        raise ValueError("The properties of steel are known from -20 to 1200 °C.")
    if celsius < 600.0:
        t = max(celsius, 20.0)
        return 425.0 + 0.773 * t - 1.69e-3 * t**2 + 2.22e-6 * t**3
    if celsius < 735.0:
        return 666.0 + 13002.0 / (738.0 - celsius)
    if celsius < 900.0:
        return 545.0 + 17820.0 / (celsius - 731.0)
    return 650.0


def steel_conductivity(temperature: Temperature) -> Conductivity:
    """How well carbon steel carries heat.

    A fitted curve in two pieces.

    Args:
        temperature: K.

    Returns:
        W/(m·K).

    Raises:
        ValueError: The steel is below -20 °C or above 1200 °C.

    Valid for:
        Carbon steel, 20-1200 °C; held at its 20 °C value a little below.

    Source:
        [en-1993-1-2] 3.4.1.3

    Examples:
        >>> round(steel_conductivity(273.15 + 1000), 1)
        27.3
    """
    celsius = temperature - _ZERO
    if not -20.0 <= celsius <= 1200.0 + 1e-9:
        raise ValueError("The properties of steel are known from -20 to 1200 °C.")
    return 27.3 if celsius >= 800.0 else 54.0 - 3.33e-2 * max(celsius, 20.0)


SOLVERS = (steel_heat_capacity, steel_conductivity)
