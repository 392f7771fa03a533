"""The pool on metal of any thickness: a moving point of heat on the face of a plate.

The face of a plate is hotter than the sum for thin or for thick plate says alone: the
heat comes back from the other face. Rosenthal's source with its images in both faces is
summed as it stands, or where they are many by the same sum in Bessel functions.
"""

from collections.abc import Callable
from math import exp, inf, log, pi, sqrt

from calc.formulas.heat.bessel import scaled_k0
from calc.formulas.heat.crossing import crossing
from calc.formulas.heat.pool import outline
from calc.values.quantities import (
    Conductivity,
    Diffusivity,
    Length,
    Power,
    Ratio,
    Speed,
    TemperatureRise,
)

_LEAST, _MOST = 1e-12, 1e6
_FAINT = 24.0
"""Exponent at which a term no longer counts beside the first."""
_GOLDEN = 0.6180339887498949
_LOOKS = 44
_FARTHEST: Length = 1e6


def _need_positive(**given: float) -> None:
    for name, value in given.items():
        if not 0.0 < value < inf:
            raise ValueError(f"The {name} must be above zero.")


def _half_width(reach: Ratio) -> Ratio:
    """Half the pool against the distance its widest point has from the torch, both scaled."""
    return reach * sqrt(1.0 + 2.0 * reach) / (1.0 + reach)


def _face(distance: Length, pace: float, thickness: Length) -> float:
    """What a point on the face of a plate gives at a distance on it, times e to the pace times the distance, 1/m."""
    images = 0.5 * _FAINT / (pace * thickness) + 1.0
    waves = _FAINT * thickness / (pi * distance) + 1.0
    if images <= waves:
        total = 1.0 / distance
        for n in range(1, int(images) + 1):
            off = sqrt(distance * distance + 4.0 * n * n * thickness * thickness)
            total += 2.0 * exp(-pace * (off - distance)) / off
        return total
    within = pace * distance
    total = scaled_k0(within)
    for n in range(1, int(waves) + 1):
        wave = sqrt(within * within + (n * pi * distance / thickness) ** 2)
        total += 2.0 * scaled_k0(wave) * exp(within - wave)
    return total / thickness


def _highest(curve: Callable[[float], float], low: float, high: float) -> float:
    """Largest value of a curve that rises and then falls between two places."""
    left, right = high - _GOLDEN * (high - low), low + _GOLDEN * (high - low)
    at_left, at_right = curve(left), curve(right)
    for _ in range(_LOOKS):
        if at_left > at_right:
            high, right, at_right = right, left, at_left
            left = high - _GOLDEN * (high - low)
            at_left = curve(left)
        else:
            low, left, at_left = left, right, at_right
            right = low + _GOLDEN * (high - low)
            at_right = curve(right)
    return max(at_left, at_right)


def _ends(
    power: Power, pace: float, thickness: Length, rise: TemperatureRise, conductivity: Conductivity
) -> tuple[Callable[[Length], Length], Length, Length]:
    """How far ahead the line of a temperature is by its distance from the torch; its first and last distance."""
    strength = power / (2.0 * pi * conductivity * rise)

    def lead(distance: Length) -> Length:
        return log(strength * _face(distance, pace, thickness)) / pace

    back = strength
    while lead(back) > 0.0:
        back *= 2.0
        if back > _FARTHEST:
            raise ValueError("So much heat is outside what this sum can say.")
    if back > strength:
        back = exp(crossing(lambda u: lead(exp(u)), 0.0, log(0.5 * back), log(back)))
    low = back
    while lead(low) < 2.0 * low:
        low *= 0.5
        if low < _LEAST:
            raise ValueError("With so little heat no pool forms on metal this thick.")
    front = low if low == back else exp(crossing(lambda u: lead(exp(u)) - 2.0 * exp(u), 0.0, log(low), log(2.0 * low)))
    return (lambda distance: lead(distance) - distance), front, back


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


def weld_pool_width(
    *,
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
        Full width on the face, m.

    Raises:
        ValueError: An input is not above zero, or the heat is far outside this sum.

    Valid for:
        One set of metal properties, heat of melting left out, a point for a flame.

    Source:
        [rosenthal-1946], a point on a plate of finite thickness
    """
    _need_positive(power=power, speed=speed, thickness=thickness, rise=rise)
    ahead_at, front, back = _ends(power, speed / (2.0 * diffusivity), thickness, rise, conductivity)

    def square(place: float) -> float:
        distance = exp(place)
        ahead = ahead_at(distance)
        return (distance - ahead) * (distance + ahead)

    return 2.0 * sqrt(max(0.0, _highest(square, log(front), log(back))))


def weld_pool_power(
    *,
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
        width: Full width on the face, m.
        speed: Travel speed, m/s.
        thickness: Of the plate, m.
        rise: From the plate to its melting point, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        W into the work.

    Raises:
        ValueError: An input is not above zero.

    Source:
        [rosenthal-1946], a point on a plate of finite thickness
    """
    _need_positive(width=width, speed=speed, thickness=thickness, rise=rise)
    pace = speed / (2.0 * diffusivity)
    half = 0.5 * width

    def hottest(place: float) -> float:
        behind = exp(place)
        distance = sqrt(half * half + behind * behind)
        # What the distance takes off is the aside part alone: distance less behind, without cancelling.
        return log(_face(distance, pace, thickness)) - pace * half * half / (distance + behind)

    farthest = 40.0 * half * (1.0 + pace * half)
    return 2.0 * pi * conductivity * rise / exp(_highest(hottest, log(1e-5 * half), log(farthest)))


def weld_pool_speed(
    *,
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
        width: Full width on the face, m.
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
        [rosenthal-1946], a point on a plate of finite thickness
    """
    _need_positive(width=width, power=power, thickness=thickness, rise=rise)

    def wanted(logarithm: float) -> float:
        return log(
            weld_pool_power(width=width, speed=exp(logarithm), thickness=thickness, rise=rise, conductivity=conductivity, diffusivity=diffusivity)
        )

    slow, target = log(slowest), log(power)
    if wanted(slow) >= target:
        return None
    fast = slow + 1.0
    while wanted(fast) < target:
        slow, fast = fast, fast + 1.0
    return exp(crossing(wanted, target, slow, fast, 1e-10))


def weld_isotherm(
    *,
    power: Power,
    speed: Speed,
    thickness: Length,
    rise: TemperatureRise,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
    points: int = 40,
) -> tuple[tuple[Length, Length], ...]:
    """One side of a line of equal temperature on the face round a torch.

    A solver: it finds the foremost and the hindmost point, then steps between them.

    Args:
        power: Heat that goes into the work, W.
        speed: Travel speed, m/s.
        thickness: Of the plate, m.
        rise: Above the plate far away, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.
        points: Steps from front to back.

    Returns:
        Pairs of distance ahead and distance aside, m, from the front to the back.

    Raises:
        ValueError: An input is not above zero.

    Source:
        [rosenthal-1946], a point on a plate of finite thickness
    """
    _need_positive(power=power, speed=speed, thickness=thickness, rise=rise)
    return outline(*_ends(power, speed / (2.0 * diffusivity), thickness, rise, conductivity), points)


SOLVERS = (
    thick_pool_width,
    weld_pool_width,
    weld_pool_power,
    weld_pool_speed,
    weld_isotherm,
)
