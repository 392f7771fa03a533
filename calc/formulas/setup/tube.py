"""Filler and flux in the cup of a copper-tube fitting."""

from math import pi

from calc.values.quantities import Density, Length, Mass, Ratio, Volume


def filler_volume(tube_outside: Length, cup_depth: Length, clearance: Length, filled: Ratio) -> Volume:
    """Filler in the gap between a tube and the cup round it.

    Args:
        tube_outside: Outside diameter of the tube, m.
        cup_depth: How far the tube goes into the cup, m.
        clearance: Gap on each side, m.
        filled: Part of the cup's depth that the filler reaches, 0 to 1.

    Returns:
        m³, no fillet and no waste.

    Valid for:
        A gap that is thin against the tube. The ring itself is larger by the share
        of the gap in the diameter, 4 % at the most here.

    Source:
        [cda-copper-tube], whose rows it gives back.

    Examples:
        >>> round(filler_volume(0.015875, 0.0127, 0.000127, 1.0) * 1e9, 2)
        80.44
    """
    return pi * tube_outside * cup_depth * clearance * filled


def wire_length(filler: Volume, diameter: Length) -> Length:
    """Length of round wire or rod that holds a volume of filler.

    Args:
        filler: m³.
        diameter: Of the wire, m.

    Returns:
        m.

    Valid for:
        Solid wire; a cored wire holds less.

    Source:
        [definition]

    Examples:
        >>> round(wire_length(80.44e-9, 0.003175) * 1000, 2)
        10.16
    """
    return filler / (pi * diameter**2 / 4)


def filler_mass(filler: Volume, density: Density) -> Mass:
    """Mass of a volume of filler.

    Args:
        filler: m³.
        density: kg/m³.

    Returns:
        kg.

    Valid for:
        Solid filler.

    Source:
        [definition]

    Examples:
        >>> round(filler_mass(80.44e-9, 7363.0) * 1000, 3)
        0.592
    """
    return filler * density


def flux_for_solder(solder: Mass, flux_share: Ratio) -> Mass:
    """Flux that goes with a mass of solder.

    Args:
        solder: kg.
        flux_share: Mass of flux for one of solder, an eighth in print.

    Returns:
        kg.

    Valid for:
        Soft soldering of copper tube.

    Source:
        [cda-copper-tube]

    Examples:
        >>> flux_for_solder(0.8, 0.125)
        0.1
    """
    return solder * flux_share


def least_lap(wall: Length, lap_walls: Ratio) -> Length:
    """Overlap at which a brazed joint is no weaker than the tube.

    Args:
        wall: Of the thinner of tube and fitting, m.
        lap_walls: Overlap in walls, three in print.

    Returns:
        m.

    Valid for:
        A brazed joint with a full fillet, filler all the way in.

    Source:
        [cda-copper-tube]

    Examples:
        >>> round(least_lap(0.001016, 3.0) * 1000, 3)
        3.048
    """
    return wall * lap_walls
