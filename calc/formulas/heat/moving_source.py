"""A flame with a width: a round, bell-shaped patch of heat on a plate of any thickness.

One sum covers a moving torch, a torch held still, and the cooling after it is taken
away. The patch is described by its spread: 39 % of the heat falls inside one spread
of the middle, 86 % inside two.
"""

from collections.abc import Callable, Sequence
from math import cos, exp, inf, isinf, log, pi, sqrt

from calc.values.quantities import (
    Conductivity,
    Diffusivity,
    HeatTransfer,
    Length,
    Power,
    Speed,
    TemperatureRise,
    Time,
)

_STEP = 0.2
_LEAST_STEP = 0.01
_NOTHING = 1e-17
"""A term this small beside 1 is lost in rounding."""


def depth_spread(depth: Length, time: Time, thickness: Length, diffusivity: Diffusivity) -> float:
    """Share of a flash of heat on the face, for each metre of depth, some time after.

    A fitted curve: two series for the same thing, each quick where the other is slow.

    Args:
        depth: Below the face, m.
        time: Since the flash, s.
        thickness: Thickness of the plate, m; may be infinite.
        diffusivity: m²/s.

    Returns:
        1/m; its integral over the depth is 1.

    Source:
        [carslaw-1959] 10.3, images and cosine series.
    """
    spread = diffusivity * time
    if isinf(thickness):
        return exp(-depth * depth / (4.0 * spread)) / sqrt(pi * spread)
    if spread < 0.35 * thickness * thickness:
        total = exp(-depth * depth / (4.0 * spread))
        for n in (1, 2, 3):
            before = total
            for image in (2.0 * n * thickness - depth, 2.0 * n * thickness + depth):
                total += exp(-image * image / (4.0 * spread))
            if total == before:  # the images farther off are fainter still
                break
        return total / sqrt(pi * spread)
    total = 1.0
    decay = pi * pi * spread / (thickness * thickness)
    for n in (1, 2, 3):
        fades = exp(-n * n * decay)
        if fades < _NOTHING:
            break
        total += 2.0 * cos(n * pi * depth / thickness) * fades
    return total / thickness


def refuse_impossible(
    power: Power, thickness: Length, spread: Length, conductivity: Conductivity, loss: HeatTransfer
) -> None:
    """Refuse a plate or a flame that cannot be.

    Args:
        power: W.
        thickness: m.
        spread: m.
        conductivity: W/(m·K).
        loss: To the air, W/(m²·K).

    Raises:
        ValueError: One of them is impossible.
    """
    if not (thickness > 0.0 and conductivity > 0.0 and 0.0 <= spread < inf):
        raise ValueError("Thickness and conductivity must be above zero, the spread not below.")
    if not (0.0 <= loss < inf and abs(power) < inf):
        raise ValueError("Power and loss to the air must be plain numbers, the loss not below zero.")


def moving_flame_rise(
    *,
    power: Power,
    speed: Speed,
    ahead: Length,
    aside: Length,
    depth: Length,
    thickness: Length,
    spread: Length,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
    both_faces: HeatTransfer = 0.0,
) -> TemperatureRise:
    """Rise of temperature near a bell-shaped flame in steady travel.

    A solver: it adds up the heat left along the path, over the logarithm of time.

    Args:
        power: Heat that goes into the work, W.
        speed: Travel speed, m/s; 0 for a flame held still for ever.
        ahead: Distance in front of the flame along the travel, m; behind is negative.
        aside: Distance to the side, m.
        depth: Below the heated face, m.
        thickness: Thickness of the plate, m; may be infinite.
        spread: Standard deviation of the flame's patch, m; 0 for a point.
        conductivity: W/(m·K).
        diffusivity: m²/s.
        both_faces: Heat lost to the air from the two faces together, W/(m²·K).

    Returns:
        K above the plate far away.

    Raises:
        ValueError: There is no steady state, or the place is the point source itself.

    Valid for:
        Steady travel, one set of metal properties, no melting. Above about 1500 °C on
        the face the sum no longer describes a plate.

    Source:
        [carslaw-1959] 10.3 and 10.7, a moving source on a slab.
    """
    return moving_flame_rises(
        powers=(power,),
        speed=speed,
        ahead=ahead,
        aside=aside,
        depth=depth,
        thickness=thickness,
        spread=spread,
        conductivity=conductivity,
        diffusivity=diffusivity,
        both_faces=both_faces,
    )[0]


def moving_flame_rises(
    *,
    powers: Sequence[Power],
    speed: Speed,
    ahead: Length,
    aside: Length,
    depth: Length,
    thickness: Length,
    spread: Length,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
    both_faces: HeatTransfer = 0.0,
) -> tuple[TemperatureRise, ...]:
    """`moving_flame_rise` for several flames that go the same way; the sum is made once.

    Args:
        powers: Heat of each flame that goes into the work, W.
        speed: As of `moving_flame_rise`, likewise all that follow.
        ahead: m.
        aside: m.
        depth: m.
        thickness: m.
        spread: m.
        conductivity: W/(m·K).
        diffusivity: m²/s.
        both_faces: W/(m²·K).

    Returns:
        K above the plate far away, for each flame in turn.

    Raises:
        ValueError: As `moving_flame_rise`.

    Source:
        [carslaw-1959] 10.3 and 10.7
    """
    refuse_impossible(max(map(abs, powers)), thickness, spread, conductivity, both_faces)
    volume_heat = conductivity / diffusivity
    decay = 0.0 if isinf(thickness) else both_faces / (volume_heat * thickness)
    if speed == 0.0 and decay == 0.0 and not isinf(thickness):
        raise ValueError("A flame held still on a plate that loses no heat never settles.")
    reach = sqrt(ahead * ahead + aside * aside + depth * depth)
    if spread == 0.0 and reach == 0.0:
        raise ValueError("A point source has no temperature at the point itself.")
    first, step, count = _moments(
        reach=reach,
        speed=speed,
        ahead=ahead,
        aside=aside,
        thickness=thickness,
        spread=spread,
        diffusivity=diffusivity,
        decay=decay,
    )
    growth = exp(step)

    def laid(time: Time) -> float:
        width = spread * spread + 2.0 * diffusivity * time
        off = ahead + speed * time
        arrived = exp(-(off * off + aside * aside) / (2.0 * width) - decay * time)
        if arrived == 0.0:
            return 0.0
        return time * depth_spread(depth, time, thickness, diffusivity) * arrived / width

    time = first
    total = 0.0
    for _ in range(count):
        total += laid(time)
        time *= growth
    tail = _tail(step)
    total += laid(first) * tail
    if speed == 0.0 and decay == 0.0:
        total += laid(time) * (tail + 1.0)
    return tuple(power * step * total / (2.0 * pi * volume_heat) for power in powers)


def rise_along(
    *,
    power: Power,
    speed: Speed,
    farthest: Length,
    depth: Length,
    thickness: Length,
    spread: Length,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
) -> Callable[[Length], TemperatureRise]:
    """The sum of `moving_flame_rise` for many places on the line of travel, what they share made once.

    Args:
        power: Heat that goes into the work, W.
        speed: Travel speed, m/s, above 0.
        farthest: Place farthest behind the flame that will be asked for, m ahead of it, below 0.
        depth: Below the heated face, m.
        thickness: Thickness of the plate, m; may be infinite.
        spread: Standard deviation of the flame's patch, m, above 0.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        K above the plate far away, by the distance ahead of the flame in m.

    Raises:
        ValueError: An input is impossible.

    Source:
        [carslaw-1959] 10.3 and 10.7
    """
    refuse_impossible(power, thickness, spread, conductivity, 0.0)
    if not (spread > 0.0 and speed > 0.0 and farthest < 0.0):
        raise ValueError("The flame needs a width and a travel, and places behind it.")
    first, step, count = _moments(
        reach=depth,
        speed=speed,
        ahead=farthest,
        aside=0.0,
        thickness=thickness,
        spread=spread,
        diffusivity=diffusivity,
        decay=0.0,
    )
    times = [first * exp(step * number) for number in range(count)]
    widths = [spread * spread + 2.0 * diffusivity * time for time in times]
    shares = [
        time * depth_spread(depth, time, thickness, diffusivity) / width
        for time, width in zip(times, widths, strict=True)
    ]
    shares[0] *= 1.0 + _tail(step)
    laid = [
        (speed * time, -0.5 / width, share)
        for time, width, share in zip(times, widths, shares, strict=True)
        if share > 0.0
    ]
    scale = power * step * diffusivity / (2.0 * pi * conductivity)

    def rise(ahead: Length) -> TemperatureRise:
        total = 0.0
        for way, narrow, share in laid:
            off = ahead + way
            total += share * exp(off * off * narrow)
        return scale * total

    return rise


def _tail(step: float) -> float:
    """What the terms outside the sum come to, each as many times the last one inside.

    Before the first moment the terms fall as the root of time; after the last, where
    neither travel nor loss ends the sum, as its inverse. Both tails are geometric.
    """
    return 1.0 / (exp(step / 2.0) - 1.0)


def _moments(
    *,
    reach: Length,
    speed: Speed,
    ahead: Length,
    aside: Length,
    thickness: Length,
    spread: Length,
    diffusivity: Diffusivity,
    decay: float,
) -> tuple[Time, float, int]:
    """First moment of the sum over the logarithm of time, its step and how many there are."""
    shortest = max(spread * spread, reach * reach * 1e-3) / (2.0 * diffusivity)
    if not isinf(thickness):
        shortest = min(shortest, thickness * thickness / diffusivity)
    first = 1e-6 * shortest
    last = 1e12 * max(reach * reach, spread * spread) / diffusivity
    if speed > 0.0:
        passing = 4.0 * abs(ahead) + 40.0 * spread + 40.0 * aside
        last = min(last, passing / speed + 250.0 * diffusivity / speed**2)
    if decay > 0.0:
        last = min(last, 45.0 / decay)
    step = _STEP
    if speed > 0.0 and ahead < 0.0:
        # Far behind a fast torch the heat was laid down in a short moment: look closer.
        then = -ahead / speed
        moment = sqrt(spread * spread + 2.0 * diffusivity * then) / -ahead
        step = max(_LEAST_STEP, min(step, moment))
    return first, step, int(log(last / first) / step) + 2


SOLVERS = (depth_spread, moving_flame_rise)
