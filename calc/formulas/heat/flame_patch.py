"""How wide the spot is that a flame heats, and how hot its middle gets on a moving torch."""

from math import log, sqrt

from calc.formulas.heat.moving_source import rise_along
from calc.values.quantities import (
    Conductivity,
    Diffusivity,
    FreeGasFlow,
    Length,
    Power,
    Ratio,
    Speed,
    TemperatureRise,
)

WELDING_SPREAD: Length = 2.70e-3
"""75 % of the heat inside 9 mm [groover], from memory."""
WELDING_FLOW: FreeGasFlow = 0.3 / 3600.0
"""Acetylene flow of that example, m³/s."""
_GOLDEN = 0.6180339887498949
_LOOKS = 13


def patch_spread(diameter: Length, share: Ratio) -> Length:
    """Spread of a bell-shaped patch of heat, from a circle that holds a share of it.

    Args:
        diameter: Of the circle, m.
        share: Of the heat inside it, above 0 and below 1.

    Returns:
        Standard deviation of the patch, m.

    Valid for:
        A round patch whose heat falls off as a bell.

    Source:
        [definition]

    Examples:
        >>> round(patch_spread(0.009, 0.75), 5)
        0.0027
    """
    return diameter / sqrt(8 * log(1 / (1 - share)))


def welding_spread(
    flow: FreeGasFlow,
    known_flow: FreeGasFlow = WELDING_FLOW,
    known_spread: Length = WELDING_SPREAD,
) -> Length:
    """Spread of a welding flame's patch: its area grows as its flow.

    Args:
        flow: Acetylene, m³/s of free gas.
        known_flow: Flow of the example it is scaled from, m³/s.
        known_spread: Spread of that example, m.

    Returns:
        Standard deviation of the patch, m.

    Valid for:
        Welding tips run at about one speed of gas. The scaling is our assumption.

    Source:
        [groover] for the example, from memory.
    """
    return known_spread * sqrt(flow / known_flow)


def hottest_rise(
    *,
    power: Power,
    speed: Speed,
    depth: Length,
    thickness: Length,
    spread: Length,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
) -> TemperatureRise:
    """Highest rise on the line of travel at a depth, wherever behind the flame it falls.

    A solver: the place of the peak has no closed form.

    Args:
        power: Heat that goes into the work, W.
        speed: Travel speed, m/s.
        depth: Below the heated face, m; the thickness for the back.
        thickness: Of the plate, m.
        spread: Standard deviation of the flame's patch, m.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        K above the plate far away.

    Raises:
        ValueError: As `rise_along`.

    Source:
        [carslaw-1959] 10.3 and 10.7
    """
    lag = speed * (depth * depth + spread * spread) / diffusivity
    back, front = -(4.0 * spread + 2.0 * depth + lag), spread
    rise = rise_along(
        power=power,
        speed=speed,
        farthest=back,
        depth=depth,
        thickness=thickness,
        spread=spread,
        conductivity=conductivity,
        diffusivity=diffusivity,
    )
    left, right = front - _GOLDEN * (front - back), back + _GOLDEN * (front - back)
    at_left, at_right = rise(left), rise(right)
    for _ in range(_LOOKS):
        if at_left > at_right:
            front, right, at_right = right, left, at_left
            left = front - _GOLDEN * (front - back)
            at_left = rise(left)
        else:
            back, left, at_left = left, right, at_right
            right = back + _GOLDEN * (front - back)
            at_right = rise(right)
    return max(at_left, at_right)


SOLVERS = (hottest_rise,)
