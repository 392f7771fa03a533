"""How fast a weld cools from 800 to 500 °C, which decides how hard it gets beside it.

Thick plate carries heat off in three directions, thin plate in two. The two sums meet
at the transition thickness.
"""

from math import sqrt
from typing import Annotated

from calc.values.quantities import Length, Power, Ratio, Speed, Temperature, Time, Unit

LineEnergy = Annotated[float, Unit("J/m")]
_ZERO = 273.15
_HOTTEST_START = 450.0
_KILOJOULE_PER_MILLIMETRE = 1e6  # J/m


def line_energy(power: Power, speed: Speed) -> LineEnergy:
    """Heat put into each metre of a weld.

    Args:
        power: Heat that enters the work, W.
        speed: Travel speed, m/s.

    Returns:
        J/m. A flame's heat counts after its efficiency, which EN 1011-1 does not list.

    Source:
        [definition]

    Examples:
        >>> line_energy(917.0, 0.002)
        458500.0
    """
    return power / speed


def _checked(energy: LineEnergy, start: Temperature) -> tuple[float, float]:
    celsius = start - _ZERO
    if not (energy > 0.0 and -50.0 <= celsius <= _HOTTEST_START):
        raise ValueError("Heat input must be above zero and the plate at -50 to 450 °C.")
    return energy / _KILOJOULE_PER_MILLIMETRE, celsius


def thick_plate_cooling_time(energy: LineEnergy, start: Temperature, shape_factor: Ratio = 1.0) -> Time:
    """Time from 800 to 500 °C in thick plate.

    A fitted curve in kJ/mm and °C.

    Args:
        energy: Heat input, J/m.
        start: Plate before the run, K.
        shape_factor: 1 for a run on plate, 0.9 for butt runs, 0.67 for fillets.

    Returns:
        s.

    Raises:
        ValueError: The heat input is not above zero or the plate is too hot.

    Valid for:
        Carbon and low-alloy steel, plate thicker than the transition thickness.

    Source:
        [en-1011-2] D.2; from memory.
    """
    heat, t0 = _checked(energy, start)
    span = 1.0 / (500.0 - t0) - 1.0 / (800.0 - t0)
    return (6700.0 - 5.0 * t0) * heat * span * shape_factor


def thin_plate_cooling_time(
    energy: LineEnergy, start: Temperature, thickness: Length, shape_factor: Ratio = 1.0
) -> Time:
    """Time from 800 to 500 °C in thin plate.

    A fitted curve in kJ/mm, mm and °C.

    Args:
        energy: Heat input, J/m.
        start: Plate before the run, K.
        thickness: m.
        shape_factor: 1 for a run on plate, 0.9 for butt runs, 0.45-0.9 for fillets.

    Returns:
        s.

    Raises:
        ValueError: An input is not above zero or the plate is too hot.

    Valid for:
        Carbon and low-alloy steel, plate thinner than the transition thickness.

    Source:
        [en-1011-2] D.2; from memory.
    """
    heat, t0 = _checked(energy, start)
    if not thickness > 0.0:
        raise ValueError("The thickness must be above zero.")
    span = 1.0 / (500.0 - t0) ** 2 - 1.0 / (800.0 - t0) ** 2
    spread = (heat / (thickness * 1e3)) ** 2
    return (4300.0 - 4.3 * t0) * 1e5 * spread * span * shape_factor


def transition_thickness(energy: LineEnergy, start: Temperature) -> Length:
    """Thickness at which thin-plate and thick-plate cooling give the same time.

    A fitted curve in kJ/mm, mm and °C.

    Args:
        energy: Heat input, J/m.
        start: Plate before the run, K.

    Returns:
        m, for shape factors of 1.

    Raises:
        ValueError: The heat input is not above zero or the plate is too hot.

    Valid for:
        Carbon and low-alloy steel.

    Source:
        [en-1011-2] D.2; from memory.
    """
    heat, t0 = _checked(energy, start)
    span = 1.0 / (500.0 - t0) + 1.0 / (800.0 - t0)
    return 1e-3 * sqrt((4300.0 - 4.3 * t0) * 1e5 / (6700.0 - 5.0 * t0) * heat * span)


def weld_cooling_time(
    energy: LineEnergy,
    start: Temperature,
    thickness: Length,
    thick_factor: Ratio = 1.0,
    thin_factor: Ratio = 1.0,
) -> Time:
    """Time from 800 to 500 °C, by the sum that fits the thickness.

    A fitted curve in kJ/mm, mm and °C.

    Args:
        energy: Heat input, J/m.
        start: Plate before the run, K.
        thickness: m.
        thick_factor: Shape factor in thick plate.
        thin_factor: Shape factor in thin plate.

    Returns:
        s; the longer of the two sums.

    Raises:
        ValueError: An input is not above zero or the plate is too hot.

    Valid for:
        Carbon and low-alloy steel.

    Source:
        [en-1011-2] D.2; from memory.
    """
    return max(
        thick_plate_cooling_time(energy, start, thick_factor),
        thin_plate_cooling_time(energy, start, thickness, thin_factor),
    )


SOLVERS = (
    thick_plate_cooling_time,
    thin_plate_cooling_time,
    transition_thickness,
    weld_cooling_time,
)
