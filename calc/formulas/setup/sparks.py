"""How far a molten droplet flies: drag, gravity, and how hot it still is where it lands.

Constants of the droplet are from memory: iron that does not burn on its way. A burning
one stays hot for longer, so a temperature here is never an upper bound.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import cos, hypot, isfinite, radians, sin
from typing import Annotated

from calc.values.quantities import (
    Angle,
    Conductivity,
    Density,
    HeatCapacity,
    Length,
    Ratio,
    SpecificEnergy,
    Speed,
    Temperature,
    Time,
    Unit,
    Viscosity,
)

GRAVITY = 9.80665
AIR_DENSITY: Density = 1.2041
AIR_VISCOSITY: Viscosity = 1.813e-5
"""Still air at 20 °C and 1 atm."""
AIR_CONDUCTIVITY: Conductivity = 0.0257
"""Air at 20 °C; hot air carries more, so this keeps the droplet at the hot end."""
PRANDTL: Ratio = 0.71
DROPLET_DENSITY: Density = 7000.0
"""Liquid iron; from memory."""
HEAT_CAPACITY: HeatCapacity = 800.0
MELTING: Temperature = 1808.0
LATENT_HEAT: SpecificEnergy = 247e3
EMISSIVITY: Ratio = 0.8
START: Temperature = 2000.0
"""Iron, hot; from memory."""
ROOM: Temperature = 293.15
STEFAN_BOLTZMANN: Annotated[float, Unit("W/(m**2*K**4)")] = 5.670374419e-8
SMALLEST: Length = 0.2e-3
LARGEST: Length = 3e-3
HIGHEST: Length = 30.0
FASTEST: Speed = 30.0
STEP: Time = 0.03
STEEPEST: Angle = radians(75.0)

_STRAIGHT: Length = 1e-9
"""What a drop still goes across while it falls, for its fall to count as straight down."""

_State = tuple[float, float, float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Flight:
    """One droplet's way to the ground.

    Attributes:
        reach: Distance over the ground, m.
        time: In the air, s.
        speed: At the ground, m/s.
        temperature: At the ground, K.
        angle: It left at, above level, rad.
        path: Distance and height of points on its way, m.
    """

    reach: Length
    time: Time
    speed: Speed
    temperature: Temperature
    angle: Angle
    path: tuple[tuple[Length, Length], ...]


def drag_coefficient(reynolds: Ratio) -> Ratio:
    """Drag of a smooth ball in still air.

    Args:
        reynolds: Reynolds number of the ball.

    Returns:
        Drag coefficient.

    Valid for:
        Reynolds numbers below 200,000. Other laws in print move the range of a spark
        by up to 4.3 %.

    Source:
        [brown-lawler-2003]

    Examples:
        >>> round(drag_coefficient(100.0), 2)
        1.07
    """
    creeping = 24 / reynolds * (1 + 0.15 * reynolds**0.681)
    return creeping + 0.407 / (1 + 8710 / reynolds)  # type: ignore[no-any-return]  # float ** float


def nusselt_number(reynolds: Ratio, prandtl: Ratio) -> Ratio:
    """How much better moving air cools a ball than resting air.

    Args:
        reynolds: Reynolds number of the ball.
        prandtl: Prandtl number of the air.

    Returns:
        Nusselt number; 2 for a ball at rest.

    Valid for:
        Small droplets; the air's properties taken once for the whole flight.

    Source:
        [ranz-marshall-1952]

    Examples:
        >>> nusselt_number(0.0, 0.71)
        2.0
    """
    return 2 + 0.6 * reynolds**0.5 * prandtl ** (1 / 3)  # type: ignore[no-any-return]  # float ** float


def widened_reach(level: Length, work_height: Length, plain_height: Length, widening: Ratio) -> Length:
    """Reach of sparks over the ground for work high up.

    Args:
        level: Reach printed for work near the floor, m.
        work_height: Height of the work, m, no lower than `plain_height`.
        plain_height: Height up to which the printed reach holds, m.
        widening: Metres added for each metre above that.

    Returns:
        Reach, m.

    Valid for:
        The German guidance: half a metre more for each metre above three.

    Source:
        [dguv-100-500] ch. 2.26 annex 2

    Examples:
        >>> widened_reach(10.0, 6.0, 3.0, 0.5)
        11.5
    """
    return level + widening * (work_height - plain_height)


def _temperature(heat: SpecificEnergy) -> Temperature:
    """Temperature of iron that holds this much heat above solid iron at its melting point."""
    if heat <= 0:
        return MELTING + heat / HEAT_CAPACITY
    return MELTING + max(heat - LATENT_HEAT, 0.0) / HEAT_CAPACITY


def _rates(
    across: Speed, up: Speed, heat: SpecificEnergy, diameter: Length, cooled: bool
) -> tuple[float, float, float]:
    """How fast the speed across, the speed up and the heat change."""
    speed = hypot(across, up)
    reynolds = AIR_DENSITY * speed * diameter / AIR_VISCOSITY
    slowing = 0.0
    if speed > 0:
        drag = drag_coefficient(reynolds)
        slowing = 0.75 * AIR_DENSITY * drag * speed / (DROPLET_DENSITY * diameter)
    cooling = 0.0
    if cooled:
        hot = _temperature(heat)
        passed = nusselt_number(reynolds, PRANDTL) * AIR_CONDUCTIVITY / diameter * (hot - ROOM)
        radiated = EMISSIVITY * STEFAN_BOLTZMANN * (hot**4 - ROOM**4)
        cooling = -6 / (DROPLET_DENSITY * diameter) * (passed + radiated)
    return -slowing * across, -slowing * up - GRAVITY, cooling


def _step(state: _State, size: Time, diameter: Length, cooled: bool) -> _State:
    """One step of the classical fourth-order Runge-Kutta rule."""
    far, high, u1, v1, heat = state
    half = size * 0.5
    a1, b1, c1 = _rates(u1, v1, heat, diameter, cooled)
    u2, v2 = u1 + half * a1, v1 + half * b1
    a2, b2, c2 = _rates(u2, v2, heat + half * c1, diameter, cooled)
    u3, v3 = u1 + half * a2, v1 + half * b2
    a3, b3, c3 = _rates(u3, v3, heat + half * c2, diameter, cooled)
    u4, v4 = u1 + size * a3, v1 + size * b3
    a4, b4, c4 = _rates(u4, v4, heat + size * c3, diameter, cooled)
    return (
        far + size * ((u1 + 2 * u2 + 2 * u3 + u4) / 6),
        high + size * ((v1 + 2 * v2 + 2 * v3 + v4) / 6),
        u1 + size * ((a1 + 2 * a2 + 2 * a3 + a4) / 6),
        v1 + size * ((b1 + 2 * b2 + 2 * b3 + b4) / 6),
        heat + size * ((c1 + 2 * c2 + 2 * c3 + c4) / 6),
    )


def _last_step(state: _State, diameter: Length) -> Time:
    """Newton's search for the moment when the height is nothing."""
    last = STEP / 2
    for _ in range(6):
        _, above, _, up, _ = _step(state, last, diameter, False)
        last = min(max(last - above / up, 0.0), STEP) if up < 0 else STEP
    return last


def _refuse(diameter: Length, height: Length, speed: Speed, angle: Angle) -> None:
    hair = 1e-9
    if not SMALLEST * (1 - hair) <= diameter <= LARGEST * (1 + hair):
        raise ValueError("a spark is reckoned from 0.2 mm to 3 mm across")
    if not 0 <= height <= HIGHEST * (1 + hair):
        raise ValueError("a spark is reckoned from the ground to 30 m up")
    if not 0 <= speed <= FASTEST * (1 + hair) or not isfinite(angle):
        raise ValueError("a spark is reckoned up to 30 m/s")


def _reach(diameter: Length, height: Length, speed: Speed, angle: Angle) -> Length:
    """Reach of `spark_flight` alone: neither path nor heat, and no more of the fall once it is straight down."""
    state: _State = (0.0, height, speed * cos(angle), speed * sin(angle), 0.0)
    while True:
        after = _step(state, STEP, diameter, False)
        if after[1] <= 0:
            return _step(state, _last_step(state, diameter), diameter, False)[0]
        state = after
        if state[2] * state[1] < -_STRAIGHT * state[3]:
            return state[0]


def spark_flight(diameter: Length, height: Length, speed: Speed, angle: Angle) -> Flight:
    """Flight of one molten droplet to the ground.

    A solver: fourth-order Runge-Kutta in steps of 30 ms, the last one cut to the ground.

    Args:
        diameter: Of the droplet, m.
        height: It starts at, m above the ground.
        speed: It starts with, m/s.
        angle: It starts at, above level, rad; below level is negative.

    Returns:
        Reach, time, speed, temperature and path.

    Raises:
        ValueError: An input outside the range.

    Valid for:
        Droplets of 0.2 to 3 mm, up to 30 m high and 30 m/s, still air. Wind, an updraft,
        splashing, bouncing and rolling carry a spark farther.

    Source:
        [steel-drop]: Newton's law with [brown-lawler-2003] and [ranz-marshall-1952]; droplet constants
        from memory.

    Examples:
        >>> round(spark_flight(0.001, 2.0, 12.0, radians(45)).reach, 2)
        9.52
    """
    _refuse(diameter, height, speed, angle)
    heat = LATENT_HEAT + HEAT_CAPACITY * (START - MELTING)
    state: _State = (0.0, height, speed * cos(angle), speed * sin(angle), heat)
    path = [(0.0, height)]
    time = 0.0
    while True:
        after = _step(state, STEP, diameter, True)
        if after[1] <= 0:
            break
        state, time = after, time + STEP
        path.append((state[0], state[1]))
    last = _last_step(state, diameter)
    state = _step(state, last, diameter, True)
    path.append((state[0], 0.0))
    return Flight(
        reach=state[0],
        time=time + last,
        speed=hypot(state[2], state[3]),
        temperature=_temperature(state[4]),
        angle=angle,
        path=tuple(path),
    )


@lru_cache(maxsize=64)
def farthest_flight(diameter: Length, height: Length, speed: Speed) -> Flight:
    """Flight of a droplet at the angle that carries it farthest.

    A solver: a golden-section search over the angle.

    Args:
        diameter: Of the droplet, m.
        height: It starts at, m.
        speed: It starts with, m/s.

    Returns:
        The farthest flight, to a few thousandths of a degree in angle, which moves the
        reach by less than 0.01 %.

    Raises:
        ValueError: As `spark_flight`.

    Valid for:
        As `spark_flight`; from level to 75 degrees up.

    Source:
        As `spark_flight`.

    Examples:
        >>> round(farthest_flight(0.003, 2.0, 12.0).reach, 1)
        14.0
    """
    golden = (5**0.5 - 1) / 2
    low, high = 0.0, STEEPEST
    _refuse(diameter, height, speed, low)

    def reach(angle: Angle) -> Length:
        return _reach(diameter, height, speed, angle)

    left, right = high - golden * (high - low), low + golden * (high - low)
    at_left, at_right = reach(left), reach(right)
    while high - low > radians(0.4):
        if at_left > at_right:
            high, right, at_right = right, left, at_left
            left = high - golden * (high - low)
            at_left = reach(left)
        else:
            low, left, at_left = left, right, at_right
            right = low + golden * (high - low)
            at_right = reach(right)
    return spark_flight(diameter, height, speed, left if at_left > at_right else right)


SOLVERS = (spark_flight, farthest_flight)
