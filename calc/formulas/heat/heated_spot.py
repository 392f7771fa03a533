"""A spot of a plate that a flame heats while it is held still, and the cooling after it is taken away."""

from math import exp, isinf, log, pi

from calc.formulas.heat.moving_source import depth_spread, refuse_impossible
from calc.formulas.heat.quadrature import gauss_sum
from calc.values.quantities import (
    Conductivity,
    Diffusivity,
    HeatTransfer,
    Length,
    Power,
    TemperatureRise,
    Time,
)


def spot_heat_rise(
    *,
    power: Power,
    heating_time: Time,
    time: Time,
    distance: Length,
    depth: Length,
    thickness: Length,
    spread: Length,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
    both_faces: HeatTransfer = 0.0,
) -> TemperatureRise:
    """Rise of temperature where a flame is held still for a while and then taken away.

    A solver: it adds up the heat given, over the logarithm of time.

    Args:
        power: Heat that goes into the work, W.
        heating_time: How long the flame stays, s.
        time: Since the flame came, s.
        distance: From the middle of the flame along the plate, m.
        depth: Below the heated face, m.
        thickness: Thickness of the plate, m; may be infinite.
        spread: Standard deviation of the flame's patch, m.
        conductivity: W/(m·K).
        diffusivity: m²/s.
        both_faces: Heat lost to the air from the two faces together, W/(m²·K).

    Returns:
        K above the plate far away.

    Raises:
        ValueError: The spread is not above zero or another input is impossible.

    Valid for:
        One set of metal properties, no melting, a plate wider than the heat spreads.

    Source:
        [carslaw-1959] 10.3, a continuous source on a slab.
    """
    refuse_impossible(power, thickness, spread, conductivity, both_faces)
    if not (spread > 0.0 and heating_time > 0.0):
        raise ValueError("The flame needs a width and a time to heat.")
    if time <= 0.0:
        return 0.0
    volume_heat = conductivity / diffusivity
    decay = 0.0 if isinf(thickness) else both_faces / (volume_heat * thickness)

    def given(logarithm: float) -> float:
        since = exp(logarithm)
        width = spread * spread + 2.0 * diffusivity * since
        return (
            since
            * depth_spread(depth, since, thickness, diffusivity)
            * exp(-distance * distance / (2.0 * width) - decay * since)
            / width
        )

    since_taken = time - heating_time
    if since_taken > 0.0:
        total = gauss_sum(given, log(since_taken), log(time))
    else:
        shortest = spread * spread / diffusivity
        if not isinf(thickness):
            shortest = min(shortest, thickness * thickness / diffusivity)
        first = 1e-8 * min(shortest, time)
        total = gauss_sum(given, log(first), log(time)) + 2.0 * given(log(first))
    return power * total / (2.0 * pi * volume_heat)


SOLVERS = (spot_heat_rise,)
