"""Warming a whole part with a flame: how long, how much gas, or never.

The part counts as one temperature throughout, which holds while heat runs through it
faster than it comes in (Biot number below 0.1).
"""

from collections.abc import Callable
from itertools import pairwise
from math import inf, pi
from typing import Annotated

from calc.formulas.heat.heat_of_reaction import HeatValue
from calc.formulas.heat.steel_properties import BREAKS, steel_heat_capacity
from calc.values.quantities import (
    Area,
    Conductivity,
    Density,
    Diffusivity,
    Energy,
    FreeGas,
    HeatCapacity,
    HeatTransfer,
    Length,
    Mass,
    Power,
    Ratio,
    Temperature,
    TemperatureRise,
    Time,
    Unit,
)

STEFAN_BOLTZMANN: Annotated[float, Unit("W/(m**2*K**4)")] = 5.670374419e-8
SOAK_PER_THICKNESS: Annotated[float, Unit("s/m")] = 4800.0
"""Two minutes for each 25 mm before the temperature is measured; EN ISO 13916, from memory."""
LARGEST_BIOT: Ratio = 0.1
_NODES = (
    (0.1834346424956498, 0.3626837833783620),
    (0.5255324099163290, 0.3137066458778873),
    (0.7966664774136267, 0.2223810344533745),
    (0.9602898564975363, 0.1012285362903763),
)


def warm_up_heat(mass: Mass, heat_capacity: HeatCapacity, rise: TemperatureRise) -> Energy:
    """Heat that warms a part, without losses.

    Args:
        mass: kg.
        heat_capacity: J/(kg·K).
        rise: K.

    Returns:
        J.

    Source:
        [definition]

    Examples:
        >>> round(warm_up_heat(50, 490, 130) / 1e6, 3)
        3.185
    """
    return mass * heat_capacity * rise


def gas_for_heat(heat: Energy, efficiency: Ratio, heat_value: HeatValue) -> FreeGas:
    """Fuel gas that brings an amount of heat into the work.

    Args:
        heat: Into the work, J.
        efficiency: Share of the flame's heat that enters the work.
        heat_value: Heat of the fuel, J/m³ of free gas.

    Returns:
        m³ of free gas.

    Source:
        [definition]

    Examples:
        >>> round(gas_for_heat(3.185e6, 0.3, 55e6), 3)
        0.193
    """
    return heat / (efficiency * heat_value)


def surface_loss(
    area: Area,
    heat_transfer: HeatTransfer,
    emissivity: Ratio,
    temperature: Temperature,
    surroundings: Temperature,
) -> Power:
    """Heat that a hot surface loses to air and by radiation.

    Args:
        area: m².
        heat_transfer: To still air, W/(m²·K); about 10.
        emissivity: 0 to 1; about 0.8 for rusty or scaled steel.
        temperature: Of the surface, K.
        surroundings: K.

    Returns:
        W.

    Source:
        [carslaw-1959] 1.9
    """
    return area * (
        heat_transfer * (temperature - surroundings)
        + emissivity * STEFAN_BOLTZMANN * (temperature**4 - surroundings**4)
    )


def radiation_coefficient(
    emissivity: Ratio, temperature: Temperature, surroundings: Temperature
) -> HeatTransfer:
    """Radiation written as a heat transfer, to compare it with the air's.

    Args:
        emissivity: 0 to 1.
        temperature: Of the surface, K.
        surroundings: K.

    Returns:
        W/(m²·K).

    Source:
        [carslaw-1959] 1.9
    """
    return emissivity * STEFAN_BOLTZMANN * (temperature**2 + surroundings**2) * (temperature + surroundings)


def biot_number(heat_transfer: HeatTransfer, half_thickness: Length, conductivity: Conductivity) -> Ratio:
    """Whether a part may count as one temperature: below 0.1 it may.

    Args:
        heat_transfer: At the surface, radiation included, W/(m²·K).
        half_thickness: m; the whole thickness where one face alone is heated.
        conductivity: W/(m·K).

    Returns:
        Dimensionless.

    Source:
        [carslaw-1959] 1.9
    """
    return heat_transfer * half_thickness / conductivity


def heat_reach(diffusivity: Diffusivity, time: Time) -> Length:
    """Length of metal that takes up as much heat as runs off along it from a hot end.

    Args:
        diffusivity: Of the metal, m²/s.
        time: That the end is hot, s.

    Returns:
        m, on one side: so much metal counts as hot as the end.

    Valid for:
        A strip or tube that runs on far, its end held at one temperature; losses to the
        air apart.

    Source:
        [carslaw-1959] 2.4

    Examples:
        >>> round(heat_reach(1.1e-4, 20.0) * 1000, 1)
        52.9
    """
    return 2 * (diffusivity * time / pi) ** 0.5  # type: ignore[no-any-return] # a root of a float


def fin_length(conductivity: Conductivity, thickness: Length, heat_transfer: HeatTransfer) -> Length:
    """Length over which a strip that is held hot at its end gives its heat to the air.

    Args:
        conductivity: W/(m·K).
        thickness: Of the strip, m; both faces lose heat.
        heat_transfer: To the air, radiation included, W/(m²·K).

    Returns:
        m: heat runs no farther than this much metal as hot as the end would lose.

    Valid for:
        A long thin strip at rest.

    Source:
        [carslaw-1959] 4.2

    Examples:
        >>> round(fin_length(340.0, 0.003, 60.0) * 1000, 1)
        92.2
    """
    return (conductivity * thickness / (2 * heat_transfer)) ** 0.5  # type: ignore[no-any-return] # a root of a float


def lap_mass(
    length: Length, overlap: Length, reach: Length, thickness: Length, density: Density
) -> Mass:
    """Metal that gets hot with a lap or a socket: both parts under the overlap, and beyond it what heat runs into.

    Args:
        length: Of the joint that is heated at once, m.
        overlap: Of the two parts, m.
        reach: Metal beyond the overlap that counts as hot, on each part, m.
        thickness: Of either part, m.
        density: Of the metal, kg/m³.

    Returns:
        kg.

    Valid for:
        Two parts of one thickness.

    Source:
        [definition]

    Examples:
        >>> round(lap_mass(0.050, 0.0127, 0.050, 0.001, 8940.0), 4)
        0.0561
    """
    return length * thickness * density * (2 * overlap + 2 * reach)


def soak_time(thickness: Length) -> Time:
    """Wait after the flame is taken away before the temperature is measured.

    Args:
        thickness: m.

    Returns:
        s.

    Source:
        [en-iso-13916], from memory.
    """
    return SOAK_PER_THICKNESS * thickness


def _gauss(curve: Callable[[float], float], low: float, high: float) -> float:
    middle, half = 0.5 * (low + high), 0.5 * (high - low)
    return half * sum(
        weight * (curve(middle - half * node) + curve(middle + half * node)) for node, weight in _NODES
    )


def _integral(curve: Callable[[float], float], low: float, high: float, whole: float, deep: int) -> float:
    middle = 0.5 * (low + high)
    left, right = _gauss(curve, low, middle), _gauss(curve, middle, high)
    if deep == 0 or abs(left + right - whole) <= 1e-9 * abs(left + right):
        return left + right
    return _integral(curve, low, middle, left, deep - 1) + _integral(curve, middle, high, right, deep - 1)


def _time_between(curve: Callable[[float], float], low: Temperature, high: Temperature) -> Time:
    edges = [low, *(t for t in BREAKS if low < t < high), high]
    return sum(_integral(curve, a, b, _gauss(curve, a, b), 24) for a, b in pairwise(edges))


def warm_up_time(
    *,
    power: Power,
    mass: Mass,
    area: Area,
    heat_transfer: HeatTransfer,
    emissivity: Ratio,
    start: Temperature,
    target: Temperature,
    surroundings: Temperature | None = None,
    heat_capacity: Callable[[Temperature], HeatCapacity] = steel_heat_capacity,
) -> Time | None:
    """Time that a flame needs to warm a part, or None where it never gets there.

    A solver: an integral over temperature, since heat capacity and loss both change.

    Args:
        power: Heat that goes into the work, W.
        mass: kg.
        area: That loses heat, m².
        heat_transfer: To the air, W/(m²·K).
        emissivity: 0 to 1.
        start: K.
        target: K.
        surroundings: K; the start where it is not given.
        heat_capacity: J/(kg·K) at a temperature.

    Returns:
        s, 0 where the part is that warm already, None where the losses win before.

    Raises:
        ValueError: An input is impossible.

    Valid for:
        A Biot number below 0.1.

    Source:
        [definition] heat balance, with [en-1993-1-2] for steel.
    """
    if not (0.0 < power < inf and 0.0 < mass < inf and 0.0 <= area < inf):
        raise ValueError("Power and mass must be above zero, the area not below.")
    if not (0.0 <= heat_transfer < inf and 0.0 <= emissivity <= 1.0):
        raise ValueError("The heat transfer cannot be below zero, nor the emissivity outside 0 to 1.")
    if target <= start:
        return 0.0
    around = start if surroundings is None else surroundings

    def gain(temperature: Temperature) -> Power:
        return power - surface_loss(area, heat_transfer, emissivity, temperature, around)

    # The loss only grows with temperature, so the target is the hardest place.
    if gain(target) <= 1e-9 * power:
        return None
    return _time_between(lambda t: mass * heat_capacity(t) / gain(t), start, target)


def cooling_time(
    *,
    mass: Mass,
    area: Area,
    heat_transfer: HeatTransfer,
    emissivity: Ratio,
    start: Temperature,
    target: Temperature,
    surroundings: Temperature,
    heat_capacity: Callable[[Temperature], HeatCapacity] = steel_heat_capacity,
) -> Time | None:
    """Time that a part takes to cool in air, or None where the air is too warm.

    A solver: an integral over temperature, since heat capacity and loss both change.

    Args:
        mass: kg.
        area: That loses heat, m².
        heat_transfer: To the air, W/(m²·K).
        emissivity: 0 to 1.
        start: K.
        target: K.
        surroundings: K.
        heat_capacity: J/(kg·K) at a temperature.

    Returns:
        s. Lying on brick or sand, or wrapped, a part takes longer.

    Raises:
        ValueError: An input is impossible.

    Valid for:
        A Biot number below 0.1.

    Source:
        [definition] heat balance, with [en-1993-1-2] for steel.
    """
    if not (0.0 < mass < inf and 0.0 < area < inf):
        raise ValueError("Mass and area must be above zero.")
    if not (0.0 < heat_transfer < inf and 0.0 <= emissivity <= 1.0):
        raise ValueError("The heat transfer must be above zero, the emissivity 0 to 1.")
    if target >= start:
        return 0.0
    if target <= surroundings + 1e-6:
        return None
    return _time_between(
        lambda t: mass * heat_capacity(t) / surface_loss(area, heat_transfer, emissivity, t, surroundings),
        target,
        start,
    )


SOLVERS = (warm_up_time, cooling_time)
