"""Density of a piece from its weight and the water it pushes aside."""

from calc.values.quantities import Density, Mass, Volume


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
