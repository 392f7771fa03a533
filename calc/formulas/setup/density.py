"""Density of a piece from its weight and the water it pushes aside."""

from calc.quantities import Density, Mass, Volume


def piece_density(mass: Mass, displaced: Volume) -> Density:
    """Density of a piece.

    Args:
        mass: Of the piece, kg.
        displaced: Water that it pushes aside, m³.

    Returns:
        kg/m³.

    Valid for:
        A solid piece of one metal, wholly under water, without bubbles on it.

    Source:
        [definition]

    Examples:
        >>> round(piece_density(0.4, 51e-6))
        7843
    """
    return mass / displaced


def lowest_density(mass: Mass, displaced: Volume, mass_error: Mass, displaced_error: Volume) -> Density:
    """Least density that the two readings leave room for.

    Args:
        mass: Of the piece, kg.
        displaced: Water that it pushes aside, m³.
        mass_error: How far the scale may be off, kg.
        displaced_error: How far the volume may be off, m³.

    Returns:
        kg/m³.

    Valid for:
        Errors smaller than what was read.

    Source:
        [definition]

    Examples:
        >>> round(lowest_density(0.4, 51e-6, 0.001, 2e-6))
        7528
    """
    return (mass - mass_error) / (displaced + displaced_error)


def highest_density(mass: Mass, displaced: Volume, mass_error: Mass, displaced_error: Volume) -> Density:
    """Largest density that the two readings leave room for.

    Args:
        mass: Of the piece, kg.
        displaced: Water that it pushes aside, m³.
        mass_error: How far the scale may be off, kg.
        displaced_error: How far the volume may be off, m³.

    Returns:
        kg/m³.

    Valid for:
        Errors smaller than what was read.

    Source:
        [definition]

    Examples:
        >>> round(highest_density(0.4, 51e-6, 0.001, 2e-6))
        8184
    """
    return (mass + mass_error) / (displaced - displaced_error)
