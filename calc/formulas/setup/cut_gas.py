"""A cut as a sum: thickness along the jet, time, iron out of the slot, oxygen that it takes."""

from math import cos

from calc.values.quantities import (
    ATMOSPHERE,
    FIFTEEN_CELSIUS,
    GAS_CONSTANT,
    Angle,
    Density,
    FreeGas,
    Length,
    Mass,
    MolarMass,
    Pressure,
    Ratio,
    Speed,
    Temperature,
    Time,
)

IRON_MOLAR_MASS: MolarMass = 55.845e-3
"""Standard atomic weight of iron."""
TO_MAGNETITE: Ratio = 2 / 3
"""Moles of oxygen for one of iron: 3 Fe + 2 O2 = Fe3O4, what most of the slag is."""
TO_FERROUS_OXIDE: Ratio = 1 / 2
"""2 Fe + O2 = 2 FeO, the least that burning takes."""


def bevel_thickness(thickness: Length, bevel_angle: Angle) -> Length:
    """Steel that the jet goes through in a bevel cut.

    Args:
        thickness: Of the plate, m.
        bevel_angle: Between the jet and an upright cut, rad.

    Returns:
        m; what the tip, the pressures and the speed are taken for.

    Valid for:
        A flat plate; below a right angle.

    Source:
        [definition]

    Examples:
        >>> round(1000 * bevel_thickness(0.010, 0.7853981633974483), 2)
        14.14
    """
    return thickness / cos(bevel_angle)


def stack_thickness(thickness: Length, sheets: Ratio) -> Length:
    """Steel that the jet goes through in a stack of sheets.

    Args:
        thickness: Of one sheet, m.
        sheets: How many lie on each other.

    Returns:
        m.

    Valid for:
        Clean sheets clamped without a gap; a gap stops the cut.

    Source:
        [definition]

    Examples:
        >>> stack_thickness(0.002, 5)
        0.01
    """
    return thickness * sheets


def purity_factor(factor: Ratio, lost: Ratio) -> Ratio:
    """What impure oxygen makes of a speed or of a consumption.

    Args:
        factor: What one point of purity lost makes of it, such as 0.85.
        lost: Points of purity lost below 99.5 %.

    Returns:
        A factor. The publications name the first point; that each further point
        does the same is ours.

    Valid for:
        95 to 99.5 %; below it nothing is cut.

    Source:
        [oxyfuel-note], [twi-jk]

    Examples:
        >>> purity_factor(0.85, 1.0)
        0.85
    """
    return factor**lost  # type: ignore[no-any-return] # a power of a float


def cut_time(length: Length, speed: Speed, pierces: Ratio, pierce_time: Time) -> Time:
    """Time that the torch burns for a cut.

    Args:
        length: Of the cut, m.
        speed: Of travel, m/s.
        pierces: Holes pierced to begin from.
        pierce_time: For one of them, warming and all, s.

    Returns:
        s, without lighting, and without warming the edge where a cut begins there.

    Valid for:
        One pass.

    Source:
        [definition]

    Examples:
        >>> cut_time(0.6, 0.006, 2, 20.0)
        140.0
    """
    return length / speed + pierces * pierce_time


def slot_iron(length: Length, thickness: Length, kerf: Length, density: Density) -> Mass:
    """Metal that leaves the slot of a cut.

    Args:
        length: Of the cut, m.
        thickness: Of the steel along the jet, m.
        kerf: Width of the slot, m.
        density: Of the steel, kg/m³.

    Returns:
        kg.

    Valid for:
        A slot with straight sides.

    Source:
        [definition]

    Examples:
        >>> round(slot_iron(0.4, 0.0127, 0.0015, 7850.0), 4)
        0.0598
    """
    return length * thickness * kerf * density


def oxygen_for_iron(
    iron: Mass,
    oxygen_by_iron: Ratio,
    molar_mass: MolarMass = IRON_MOLAR_MASS,
    reference_pressure: Pressure = ATMOSPHERE,
    reference_temperature: Temperature = FIFTEEN_CELSIUS,
) -> FreeGas:
    """Oxygen that burns an amount of iron.

    Args:
        iron: kg.
        oxygen_by_iron: Moles of oxygen gas for a mole of iron: 2/3 to Fe3O4, 1/2 to FeO.
        molar_mass: Mass of a mole of iron, kg/mol.
        reference_pressure: Pressure the answer is counted at, Pa.
        reference_temperature: Temperature the answer is counted at, K.

    Returns:
        m³ at the reference state.

    Valid for:
        All of the iron burning; 30 to 40 % of it, from memory, leaves unburned.

    Source:
        [definition] of the oxides

    Examples:
        >>> round(oxygen_for_iron(1.0, 2 / 3), 3)
        0.282
    """
    return (
        iron
        / molar_mass
        * oxygen_by_iron
        * GAS_CONSTANT
        * reference_temperature
        / reference_pressure
    )
