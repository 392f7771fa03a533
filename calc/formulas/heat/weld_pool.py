"""The pool on metal of any thickness: the wider of the thin-plate and the thick-plate sum.

A flame heats from the face. On a plate of some thickness the face is hotter than by
either sum alone, so the wider pool is the nearer one, as the longer of two cooling
times is in EN 1011-2.
"""

from math import exp, inf, log, log1p, pi, sqrt

from calc.formulas.heat.crossing import crossing
from calc.formulas.heat.pool import pool_width, power_for_width, speed_for_width
from calc.quantities import (
    Conductivity,
    Diffusivity,
    Length,
    Power,
    Ratio,
    Speed,
    TemperatureRise,
)

_LEAST, _MOST = 1e-12, 1e6


def _need_positive(**given: float) -> None:
    for name, value in given.items():
        if not 0.0 < value < inf:
            raise ValueError(f"The {name} must be above zero.")


def _half_width(reach: Ratio) -> Ratio:
    """Half the pool against the distance its widest point has from the torch, both scaled."""
    return reach * sqrt(1.0 + 2.0 * reach) / (1.0 + reach)


def _narrowing(reach: Ratio) -> float:
    """Logarithm of how much wider the pool is at a stand than where its widest point has this scaled reach."""
    return reach / (1.0 + reach) + log1p(reach) - 0.5 * log1p(2.0 * reach)


def thick_pool_width(
    power: Power,
    speed: Speed,
    rise: TemperatureRise,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
) -> Length:
    """Width of the pool on a plate so thick that its back stays cold.

    A solver: the place of the widest point has no closed form.

    Args:
        power: Heat that goes into the work, W.
        speed: Travel speed, m/s.
        rise: From the plate to its melting point, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        Full width, m; the depth is half of it.

    Raises:
        ValueError: An input is not above zero.

    Source:
        [rosenthal-1946]
    """
    _need_positive(power=power, speed=speed, rise=rise)
    pace = speed / (2.0 * diffusivity)
    strength = pace * power / (2.0 * pi * conductivity * rise)
    low, high = 0.3 * min(strength, _MOST), strength

    def excess(reach: float) -> float:
        return log(reach) + reach / (1.0 + reach)

    reach = crossing(excess, log(strength), low, high) if strength > _LEAST else strength
    return 2.0 * _half_width(reach) / pace


def thick_power_for_width(
    width: Length,
    speed: Speed,
    rise: TemperatureRise,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
) -> Power:
    """Heat that keeps a pool of a given width on thick plate.

    A solver: the place of the widest point has no closed form.

    Args:
        width: Full width, m.
        speed: Travel speed, m/s.
        rise: From the plate to its melting point, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        W into the work.

    Raises:
        ValueError: An input is not above zero.

    Source:
        [rosenthal-1946]
    """
    _need_positive(width=width, speed=speed, rise=rise)
    pace = speed / (2.0 * diffusivity)
    wanted = 0.5 * pace * width
    # The half-width lies between 0.6 and 1 of the reach below 3, and beyond grows as its root.
    reach = crossing(_half_width, wanted, 0.5 * wanted, 4.0 * wanted + 4.0 * wanted * wanted)
    return 2.0 * pi * conductivity * rise * reach * exp(reach / (1.0 + reach)) / pace


def weld_pool_width(
    power: Power,
    speed: Speed,
    thickness: Length,
    rise: TemperatureRise,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
) -> Length:
    """Width of the pool on a plate of any thickness.

    A solver: the place of the widest point has no closed form.

    Args:
        power: Heat that goes into the work, W.
        speed: Travel speed, m/s.
        thickness: Of the plate, m.
        rise: From the plate to its melting point, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        Full width, m; the wider of the two sums.

    Raises:
        ValueError: An input is not above zero, or the heat is far outside these sums.

    Valid for:
        One set of metal properties, heat of melting left out, a point for a flame.

    Source:
        [rosenthal-1946]
    """
    thick = thick_pool_width(power, speed, rise, conductivity, diffusivity)
    if power <= 0.5 * conductivity * thickness * rise:
        return thick  # the thin-plate pool is a pinprick
    return max(thick, pool_width(power, speed, thickness, rise, conductivity, diffusivity))


def weld_pool_power(
    width: Length,
    speed: Speed,
    thickness: Length,
    rise: TemperatureRise,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
) -> Power:
    """Heat into the work that keeps a pool of a given width on a plate of any thickness.

    A solver: the place of the widest point has no closed form.

    Args:
        width: Full width, m.
        speed: Travel speed, m/s.
        thickness: Of the plate, m.
        rise: From the plate to its melting point, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        W into the work; the smaller of the two sums.

    Raises:
        ValueError: An input is not above zero.

    Source:
        [rosenthal-1946]
    """
    return min(
        thick_power_for_width(width, speed, rise, conductivity, diffusivity),
        power_for_width(width, speed, thickness, rise, conductivity, diffusivity),
    )


def weld_pool_speed(
    width: Length,
    power: Power,
    thickness: Length,
    rise: TemperatureRise,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
    slowest: Speed = 1e-5,
) -> Speed | None:
    """Travel speed that keeps a pool of a given width, or None where none is so slow.

    A solver: it searches for the speed.

    Args:
        width: Full width, m.
        power: Heat that goes into the work, W.
        thickness: Of the plate, m.
        rise: From the plate to its melting point, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.
        slowest: Travel that counts as standing still, m/s.

    Returns:
        m/s, or None where the pool stays narrower at any travel.

    Raises:
        ValueError: An input is not above zero.

    Source:
        [rosenthal-1946]
    """
    _need_positive(width=width, power=power, thickness=thickness, rise=rise)
    found = []
    if power > 0.5 * conductivity * thickness * rise:
        found.append(speed_for_width(width, power, thickness, rise, conductivity, diffusivity))
    # On thick plate the pool is widest at a stand; how much wider than wanted tells the widest point's reach.
    wider = power / (pi * conductivity * rise) / width
    if wider > 1.0:
        reach = crossing(_narrowing, log(wider), 0.0, 2.0 * wider * wider)
        found.append(4.0 * diffusivity / width * _half_width(reach))
    fast = max(found, default=0.0)
    return fast if fast > slowest else None


SOLVERS = (
    thick_pool_width,
    thick_power_for_width,
    weld_pool_width,
    weld_pool_power,
    weld_pool_speed,
)
