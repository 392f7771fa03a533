"""A brazed joint: the gap cold and hot, the overlap, and the filler that the gap takes."""

from math import pi

from calc.values.quantities import (
    Expansion,
    Length,
    Ratio,
    Stress,
    TemperatureRise,
    Volume,
)


def hot_clearance(
    clearance: Length,
    diameter: Length,
    outer_expansion: Expansion,
    inner_expansion: Expansion,
    rise: TemperatureRise,
) -> Length:
    """Gap on each side of a round part in its socket when both are hot.

    Args:
        clearance: Gap on each side when cold, m.
        diameter: Of the inside part when cold, m.
        outer_expansion: Growth of the socket's metal, 1/K.
        inner_expansion: Growth of the inside part's metal, 1/K.
        rise: From cold to brazing heat, K.

    Returns:
        m; zero or less where the parts close on each other.

    Valid for:
        Parts centered in each other and heated alike.

    Source:
        [definition] of thermal expansion.

    Examples:
        >>> round(hot_clearance(0.05e-3, 22e-3, 13e-6, 16.5e-6, 700.0) * 1e3, 4)
        0.0235
    """
    return (
        (diameter + 2 * clearance) * (1 + outer_expansion * rise) - diameter * (1 + inner_expansion * rise)
    ) / 2


def cold_clearance(
    hot_gap: Length,
    diameter: Length,
    outer_expansion: Expansion,
    inner_expansion: Expansion,
    rise: TemperatureRise,
) -> Length:
    """Gap to make on each side when cold, so that a wanted gap is left when hot.

    Args:
        hot_gap: Gap wanted on each side at brazing heat, m.
        diameter: Of the inside part when cold, m.
        outer_expansion: Growth of the socket's metal, 1/K.
        inner_expansion: Growth of the inside part's metal, 1/K.
        rise: From cold to brazing heat, K.

    Returns:
        m; below zero where the parts open more than the wanted gap.

    Valid for:
        As `hot_clearance`, which it undoes.

    Source:
        [definition] of thermal expansion.

    Examples:
        >>> round(cold_clearance(0.0235055e-3, 22e-3, 13e-6, 16.5e-6, 700.0) * 1e3, 4)
        0.05
    """
    return (
        (2 * hot_gap + diameter * (1 + inner_expansion * rise)) / (1 + outer_expansion * rise) - diameter
    ) / 2


def largest_socket(hot_gap: Length, expansion_difference: Expansion, rise: TemperatureRise) -> Length:
    """Diameter at which parts that touch when cold stand a gap apart when hot.

    Args:
        hot_gap: Gap on each side at brazing heat, m.
        expansion_difference: How much more the socket's metal grows, 1/K.
        rise: From cold to brazing heat, K.

    Returns:
        m.

    Valid for:
        A socket that grows more than the part inside it.

    Source:
        [definition] of thermal expansion.

    Examples:
        >>> round(largest_socket(0.039375e-3, 4.5e-6, 700.0) * 1e3, 3)
        25.0
    """
    return 2 * hot_gap / (expansion_difference * rise)


def usual_overlap(times: Ratio, thickness: Length) -> Length:
    """Overlap by the rule of thumb, a number of thicknesses.

    Args:
        times: Thicknesses; three in the usual rule.
        thickness: Of the thinner part, m.

    Returns:
        m.

    Valid for:
        Silver, copper-phosphorus, copper-zinc and aluminium fillers.

    Source:
        [cda-copper-tube]

    Examples:
        >>> usual_overlap(3.0, 0.0015)
        0.0045000000000000005
    """
    return times * thickness


def flat_strength_overlap(tensile: Stress, thickness: Length, shear: Stress) -> Length:
    """Overlap at which a flat lap is as strong as its part.

    Args:
        tensile: Strength of the part in tension, Pa.
        thickness: Of the part, m.
        shear: Strength of the filler in shear, Pa.

    Returns:
        m, with no margin.

    Valid for:
        A sound lap, filled through, pulled lengthwise.

    Source:
        [aws-brazing-handbook]

    Examples:
        >>> round(flat_strength_overlap(60e3, 0.0015, 25e3), 6)
        0.0036
    """
    return tensile * thickness / shear


def tube_strength_overlap(thickness: Length, diameter: Length, tensile: Stress, shear: Stress) -> Length:
    """Overlap at which a tube in a socket is as strong as the tube.

    Args:
        thickness: Of the wall, m; half the diameter for a solid pin.
        diameter: Of the lap, m.
        tensile: Strength of the tube in tension, Pa.
        shear: Strength of the filler in shear, Pa.

    Returns:
        m, with no margin.

    Valid for:
        A sound joint, filled all round, pulled lengthwise.

    Source:
        [aws-brazing-handbook]

    Examples:
        >>> round(tube_strength_overlap(0.040, 0.625, 30e3, 25e3), 4)
        0.0449
    """
    return thickness * (diameter - thickness) * tensile / (shear * diameter)


def sleeve_filler(diameter: Length, hot_gap: Length, overlap: Length) -> Volume:
    """Filler that fills the gap of a round part in its socket.

    Args:
        diameter: Of the inside part, m.
        hot_gap: Gap on each side at brazing heat, m.
        overlap: Depth of the socket, m.

    Returns:
        m³, without a fillet.

    Valid for:
        A gap filled through.

    Source:
        [definition]

    Examples:
        >>> round(sleeve_filler(22e-3, 0.1e-3, 5e-3) * 1e9, 2)
        34.71
    """
    return pi * hot_gap * (diameter + hot_gap) * overlap


def lap_filler(width: Length, hot_gap: Length, overlap: Length) -> Volume:
    """Filler that fills the gap of a flat lap.

    Args:
        width: Length of the lap along the seam, m.
        hot_gap: Gap at brazing heat, m.
        overlap: How far the sheets lie on each other, m.

    Returns:
        m³, without a fillet.

    Valid for:
        A gap filled through.

    Source:
        [definition]

    Examples:
        >>> round(lap_filler(0.1, 0.1e-3, 5e-3) * 1e9, 6)
        50.0
    """
    return width * hot_gap * overlap
