"""The molten pool on a thin plate: how wide, at what power and speed.

Rosenthal's line source without loss to the air. The half-width is where the melting
isotherm runs along the travel: there the ratio of K0 to K1 is the cosine of the angle
behind the source.
"""

from collections.abc import Callable
from math import cos, exp, inf, log, pi, sqrt

from calc.formulas.heat.bessel import scaled_k0, scaled_k1
from calc.formulas.heat.crossing import crossing
from calc.formulas.heat.flame_power import FLAME_EFFICIENCY
from calc.formulas.heat.heat_of_reaction import HeatValue
from calc.values.quantities import (
    Conductivity,
    Diffusivity,
    FreeGasFlow,
    HeatTransfer,
    Length,
    Power,
    Ratio,
    Speed,
    TemperatureRise,
)

WELD_CONDUCTIVITY: Conductivity = 35.0
WELD_DIFFUSIVITY: Diffusivity = 35.0 / (7850.0 * 650.0)
"""Steel at welding heat: 35 W/(m·K), 7850 kg/m³, 650 J/(kg·K); common practice in such sums."""
MELTING_RISE: TemperatureRise = 1490.0
"""From room temperature to the melting point of mild steel."""
_LEAST, _MOST = 1e-6, 1e5


def _pull(radius: float) -> float:
    return scaled_k0(radius) / scaled_k1(radius)


def _half_width(radius: float) -> float:
    ratio = _pull(radius)
    return radius * sqrt(max(0.0, (1.0 - ratio) * (1.0 + ratio)))


def _strength(radius: float) -> float:
    return exp(radius * (1.0 - _pull(radius))) / scaled_k0(radius)


_WEAKEST, _STRONGEST = _strength(_LEAST), _strength(_MOST)


def _radius(strength: float) -> float:
    if strength <= _WEAKEST:
        raise ValueError("With so little heat no pool forms on metal this thick.")
    if strength >= _STRONGEST:
        raise ValueError("So much heat is outside what this sum can say.")
    return exp(crossing(lambda u: log(_strength(exp(u))), log(strength), log(_LEAST), log(_MOST)))


def _need_positive(**given: float) -> None:
    for name, value in given.items():
        if not 0.0 < value < inf:
            raise ValueError(f"The {name} must be above zero.")


def power_for_width(
    *,
    width: Length,
    speed: Speed,
    thickness: Length,
    rise: TemperatureRise = MELTING_RISE,
    conductivity: Conductivity = WELD_CONDUCTIVITY,
    diffusivity: Diffusivity = WELD_DIFFUSIVITY,
) -> Power:
    """Heat into the work that keeps a pool of a given width.

    A solver: the place of the widest point has no closed form.

    Args:
        width: Full width of the pool, m.
        speed: Travel speed, m/s.
        thickness: Thickness of the sheet, m.
        rise: From the sheet to its melting point, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        W into the work, not the heat of the flame.

    Raises:
        ValueError: An input is not above zero, or the pool is far outside thin-plate sums.

    Valid for:
        A pool at least as wide as the sheet is thick; heat of melting left out.

    Source:
        [rosenthal-1946]
    """
    _need_positive(width=width, speed=speed, thickness=thickness, rise=rise)
    wanted = speed * width / (4.0 * diffusivity)
    radius = exp(crossing(lambda u: log(_half_width(exp(u))), log(wanted), log(_LEAST), log(_MOST)))
    return 2.0 * pi * conductivity * thickness * rise * _strength(radius)


def pool_width(
    *,
    power: Power,
    speed: Speed,
    thickness: Length,
    rise: TemperatureRise = MELTING_RISE,
    conductivity: Conductivity = WELD_CONDUCTIVITY,
    diffusivity: Diffusivity = WELD_DIFFUSIVITY,
) -> Length:
    """Width of the pool that a flame keeps on a thin sheet.

    A solver: the place of the widest point has no closed form.

    Args:
        power: Heat that goes into the work, W.
        speed: Travel speed, m/s.
        thickness: Thickness of the sheet, m.
        rise: From the sheet to its melting point, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        Full width, m.

    Raises:
        ValueError: An input is not above zero, or the heat makes no pool.

    Valid for:
        A pool at least as wide as the sheet is thick; heat of melting left out.

    Source:
        [rosenthal-1946]
    """
    _need_positive(power=power, speed=speed, thickness=thickness, rise=rise)
    radius = _radius(power / (2.0 * pi * conductivity * thickness * rise))
    return 4.0 * diffusivity / speed * _half_width(radius)


def speed_for_width(
    *,
    width: Length,
    power: Power,
    thickness: Length,
    rise: TemperatureRise = MELTING_RISE,
    conductivity: Conductivity = WELD_CONDUCTIVITY,
    diffusivity: Diffusivity = WELD_DIFFUSIVITY,
) -> Speed:
    """Travel speed at which a flame keeps a pool of a given width.

    A solver: the place of the widest point has no closed form.

    Args:
        width: Full width of the pool, m.
        power: Heat that goes into the work, W.
        thickness: Thickness of the sheet, m.
        rise: From the sheet to its melting point, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        m/s.

    Raises:
        ValueError: An input is not above zero, or the heat makes no pool.

    Valid for:
        A pool at least as wide as the sheet is thick; heat of melting left out.

    Source:
        [rosenthal-1946]
    """
    _need_positive(width=width, power=power, thickness=thickness, rise=rise)
    radius = _radius(power / (2.0 * pi * conductivity * thickness * rise))
    return 4.0 * diffusivity / width * _half_width(radius)


def flow_for_width(
    *,
    width: Length,
    speed: Speed,
    thickness: Length,
    heat_value: HeatValue,
    efficiency: Ratio = FLAME_EFFICIENCY,
    rise: TemperatureRise = MELTING_RISE,
    conductivity: Conductivity = WELD_CONDUCTIVITY,
    diffusivity: Diffusivity = WELD_DIFFUSIVITY,
) -> FreeGasFlow:
    """Flow of fuel gas that keeps a pool of a given width at a speed.

    A solver, as `power_for_width` is.

    Args:
        width: Full width of the pool, m.
        speed: Travel speed, m/s.
        thickness: Thickness of the sheet, m.
        heat_value: Heat of the fuel, J/m³ of free gas.
        efficiency: Share of the heat that enters the work.
        rise: From the sheet to its melting point, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        m³/s of free gas.

    Raises:
        ValueError: An input is not above zero.

    Valid for:
        As `power_for_width`; the efficiency is uncertain by a factor of 1.7 either way.

    Source:
        [rosenthal-1946]
    """
    _need_positive(heat_value=heat_value, efficiency=efficiency)
    power = power_for_width(
        width=width,
        speed=speed,
        thickness=thickness,
        rise=rise,
        conductivity=conductivity,
        diffusivity=diffusivity,
    )
    return power / (heat_value * efficiency)


def outline(
    ahead_at: Callable[[float], float], front: Length, back: Length, points: int
) -> tuple[tuple[Length, Length], ...]:
    """Points of one side of a line of equal temperature.

    A solver: it steps along the line.

    Args:
        ahead_at: Distance ahead of the torch, m, by the distance from it, m.
        front: Distance of the foremost point, m.
        back: Distance of the hindmost point, m.
        points: Steps between them.

    Returns:
        Pairs of distance ahead and distance aside, m.

    Source:
        [definition]
    """
    half = []
    for i in range(points + 1):
        distance = front + (back - front) * 0.5 * (1.0 - cos(pi * i / points))
        ahead = min(distance, max(-distance, ahead_at(distance)))
        half.append((ahead, sqrt(max(0.0, distance * distance - ahead * ahead))))
    half[0], half[-1] = (front, 0.0), (-back, 0.0)
    return tuple(half)


def thin_plate_isotherm(
    *,
    power: Power,
    speed: Speed,
    thickness: Length,
    rise: TemperatureRise,
    conductivity: Conductivity = WELD_CONDUCTIVITY,
    diffusivity: Diffusivity = WELD_DIFFUSIVITY,
    both_faces: HeatTransfer = 0.0,
    points: int = 40,
) -> tuple[tuple[Length, Length], ...]:
    """One side of a line of equal temperature round a torch on a thin plate.

    A solver: it finds the foremost and the hindmost point, then steps between them.

    Args:
        power: Heat that goes into the work, W.
        speed: Travel speed, m/s.
        thickness: Thickness of the plate, m.
        rise: Above the plate far away, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.
        both_faces: Heat lost to the air from the two faces together, W/(m²·K).
        points: Steps from front to back.

    Returns:
        Pairs of distance ahead and distance aside, m, from the front to the back.

    Raises:
        ValueError: An input is not above zero.

    Source:
        [rosenthal-1946]
    """
    _need_positive(power=power, speed=speed, thickness=thickness, rise=rise)
    pace = speed / (2.0 * diffusivity)
    reach = sqrt(pace * pace + both_faces / (conductivity * thickness))
    level = log(2.0 * pi * conductivity * thickness * rise / power)

    def ahead_at(distance: Length) -> Length:
        within = reach * distance
        return (log(scaled_k0(within)) - within - level) / pace

    scale = 1.0 / reach
    front = crossing(lambda r: ahead_at(r) - r, 0.0, 1e-9 * scale, 1e6 * scale)
    back = crossing(lambda r: ahead_at(r) + r, 0.0, front, 1e9 * scale)
    return outline(ahead_at, front, back, points)


def thick_plate_isotherm(
    *,
    power: Power,
    speed: Speed,
    rise: TemperatureRise,
    conductivity: Conductivity = WELD_CONDUCTIVITY,
    diffusivity: Diffusivity = WELD_DIFFUSIVITY,
    points: int = 40,
) -> tuple[tuple[Length, Length], ...]:
    """One side of a line of equal temperature round a torch on a thick plate.

    A solver: it finds the foremost point, then steps to the hindmost.

    Args:
        power: Heat that goes into the work, W.
        speed: Travel speed, m/s.
        rise: Above the plate far away, K.
        conductivity: W/(m·K).
        diffusivity: m²/s.
        points: Steps from front to back.

    Returns:
        Pairs of distance ahead and distance aside, m, from the front to the back. The
        distance aside is also the depth.

    Raises:
        ValueError: An input is not above zero.

    Source:
        [rosenthal-1946]
    """
    _need_positive(power=power, speed=speed, rise=rise)
    pace = speed / (2.0 * diffusivity)
    back = power / (2.0 * pi * conductivity * rise)

    def ahead_at(distance: Length) -> Length:
        return -distance + log(back / distance) / pace

    front = crossing(lambda r: ahead_at(r) - r, 0.0, 1e-12 * back, back)
    return outline(ahead_at, front, back, points)


SOLVERS = (
    power_for_width,
    pool_width,
    speed_for_width,
    flow_for_width,
    outline,
    thin_plate_isotherm,
    thick_plate_isotherm,
)
