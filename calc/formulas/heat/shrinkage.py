"""How much a weld pulls the work together. Weak evidence: old arc-weld rules of thumb.

Gas welding heats a wider band and shrinks the work more than these say. Use them to
compare two ways of making a joint, never to set a dimension.
"""

from calc.values.quantities import Area, Expansion, Length, Ratio, TemperatureRise

TEE_SHRINKAGE: Length = 1.02e-3
LAP_SHRINKAGE: Length = 1.52e-3
_INCH = 0.0254
STEEL_EXPANSION: Expansion = 14e-6
"""Mean for carbon steel between room temperature and dull red; from memory."""


def heated_band_shrinkage(
    width: Length, rise: TemperatureRise, expansion: Expansion = STEEL_EXPANSION
) -> Length:
    """Most that a heated spot or line can shrink across, once it is cold again.

    Args:
        width: Of the spot or the line, m.
        rise: To its hottest, K.
        expansion: For each degree, 1/K.

    Returns:
        m. Only cold metal around that gives no way would bring it so far: take a
        part of it.

    Valid for:
        An upper end, not a prediction.

    Source:
        [definition] of thermal expansion.

    Examples:
        >>> round(heated_band_shrinkage(0.025, 600.0) * 1e3, 2)
        0.21
    """
    return width * expansion * rise


def butt_shrinkage(weld_area: Area, thickness: Length, root_gap: Length) -> Length:
    """Shrinkage across a butt weld.

    Args:
        weld_area: Cross-section of the weld metal, m².
        thickness: Of the plate, m.
        root_gap: m.

    Returns:
        m.

    Valid for:
        Arc-welded steel plate; the factors have no unit, so they are the same in
        inches and millimetres.

    Source:
        [spraragen-1950]; from memory.
    """
    return 0.2 * weld_area / thickness + 0.05 * root_gap


def simple_butt_shrinkage(weld_area: Area, thickness: Length, factor: Ratio = 0.10) -> Length:
    """Shrinkage across a butt weld, in the short form that ignores the gap.

    Args:
        weld_area: Cross-section of the weld metal, m².
        thickness: Of the plate, m.
        factor: 0.10, or 0.18 in another printing of the rule.

    Returns:
        m. It is half of the longer form: where they differ, show both.

    Valid for:
        Arc-welded steel plate.

    Source:
        A public method statement; 0.18 from memory.
    """
    return factor * weld_area / thickness


def tee_shrinkage(leg: Length, thickness: Length) -> Length:
    """Shrinkage of a plate across a tee with a fillet on both sides.

    Args:
        leg: Of the fillet, m; up to three quarters of the thickness.
        thickness: Of the plate that shrinks, m.

    Returns:
        m.

    Valid for:
        Arc-welded steel plate.

    Source:
        [blodgett-1966]; from memory.
    """
    return TEE_SHRINKAGE * leg / thickness


def lap_shrinkage(leg: Length, thickness: Length) -> Length:
    """Shrinkage across a lap joint with two fillets.

    Args:
        leg: Of the fillet, m; up to three quarters of the thickness.
        thickness: Of the plate, m.

    Returns:
        m.

    Valid for:
        Arc-welded steel plate.

    Source:
        [blodgett-1966]; from memory.
    """
    return LAP_SHRINKAGE * leg / thickness


def flange_lift(flange_width: Length, leg: Length, thickness: Length) -> Length:
    """Lift of a flange's edge when a tee is welded to it on both sides.

    A fitted curve in inches: the power of the leg makes the factor depend on the unit.

    Args:
        flange_width: m.
        leg: Of the fillet, m.
        thickness: Of the flange, m.

    Returns:
        m.

    Raises:
        ValueError: A dimension is not above zero.

    Valid for:
        Arc-welded steel plate.

    Source:
        [blodgett-1966]; from memory.
    """
    if not min(flange_width, leg, thickness) > 0.0:
        raise ValueError("Width, leg and thickness must be above zero.")
    width, size, flange = flange_width / _INCH, leg / _INCH, thickness / _INCH
    lift: float = 0.02 * width * size**1.3 / flange**2
    return _INCH * lift


SOLVERS = (flange_lift,)
