"""Limits that grow with a bead's width or a sheet's thickness, and the stretch of a bent strip."""

from calc.values.quantities import Length, Ratio


def imperfection_limit(
    fixed_part: Length, width_share: Ratio, bead_width: Length, thickness_share: Ratio, thickness: Length
) -> Length:
    """Largest size that a standard's line allows, before its own ceiling.

    Args:
        fixed_part: What the line allows whatever the size, m.
        width_share: Share of the width that is added.
        bead_width: Width that the line counts, of the face or of the root, m.
        thickness_share: Share of the thickness that is added.
        thickness: Of the sheet or plate, m.

    Returns:
        m; the standard's ceiling cuts it off.

    Valid for:
        Lines of the form of ISO 5817, table 1.

    Source:
        [iso-5817-2014]

    Examples:
        >>> round(imperfection_limit(0.001, 0.15, 0.010, 0.0, 0.006) * 1000, 6)
        2.5
        >>> round(imperfection_limit(0.0, 0.0, 0.0, 0.05, 0.006) * 1000, 6)
        0.3
    """
    return fixed_part + width_share * bead_width + thickness_share * thickness


def plunger_diameter(thickness: Length, thicknesses: Ratio) -> Length:
    """Diameter of the plunger for a bend test.

    Args:
        thickness: Of the strip, m.
        thicknesses: Its diameter in thicknesses of the strip.

    Returns:
        m.

    Valid for:
        Weldable steel of ordinary strength.

    Source:
        [aws-d1-1]

    Examples:
        >>> round(plunger_diameter(0.009525, 4.0) / 0.0254, 4)
        1.5
    """
    return thicknesses * thickness


def bend_stretch(thickness: Length, plunger: Length) -> Ratio:
    """Stretch of the outside of a strip bent round a plunger.

    Args:
        thickness: Of the strip, m.
        plunger: Diameter of the plunger, m.

    Returns:
        Growth of the outer fibre as a share of its length.

    Valid for:
        A strip that follows the plunger, its middle neither stretched nor squeezed.

    Source:
        [definition]

    Examples:
        >>> round(bend_stretch(0.003, 0.012), 6)
        0.2
    """
    return thickness / (plunger + thickness)


def die_opening(thickness: Length, plunger: Length, play: Length) -> Length:
    """Opening between the shoulders that a strip is bent into.

    Args:
        thickness: Of the strip, m.
        plunger: Diameter of the plunger, m.
        play: Room left over, m.

    Returns:
        m.

    Valid for:
        A strip that is pushed right through.

    Source:
        [definition]

    Examples:
        >>> round(die_opening(0.003, 0.012, 0.003) * 1000, 6)
        21.0
    """
    return plunger + 2 * thickness + play
