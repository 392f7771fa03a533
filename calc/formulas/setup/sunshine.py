"""How much warmer than the air a cylinder in the sun gets."""

from math import pi

from calc.values.quantities import HeatTransfer, PowerDensity, Ratio, TemperatureRise

SUNSHINE: PowerDensity = 1000.0
"""Full sun on a surface that faces it; from memory."""
ABSORBED: tuple[Ratio, Ratio, Ratio] = (0.5, 0.9, 0.95)
"""Share that paint takes up: light, dark, black; from memory."""
LOSS: tuple[HeatTransfer, HeatTransfer, HeatTransfer] = (21.0, 16.0, 11.0)
"""Heat given off to air and by radiation: breeze, light air, still air, W/(m²·K); from memory."""


def sun_rise(absorbed: Ratio, sunshine: PowerDensity, heat_transfer: HeatTransfer) -> TemperatureRise:
    """Steady rise of an upright or lying cylinder over the air, one side in the sun.

    Args:
        absorbed: Share of the sunshine that its paint takes up.
        sunshine: On a surface that faces the sun, W/m².
        heat_transfer: Given off by its whole side to air and surroundings, W/(m²·K).

    Returns:
        Rise, K: it takes up by its width and gives off by its outline, π times as long.

    Valid for:
        A cylinder alone in the open, after hours. Hot ground, a wall or a shut vehicle
        adds to it.

    Source:
        [definition] of a heat balance; the figures put in are from memory.

    Examples:
        >>> round(sun_rise(0.9, 1000.0, 16.0))
        18
    """
    return absorbed * sunshine / (pi * heat_transfer)
