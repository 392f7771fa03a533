"""Cross-sections of weld metal."""

from math import atan, cos, pi, sin, sqrt, tan

from calc.values.quantities import Angle, Area, Length


def square_butt_area(thickness: Length, gap: Length) -> Area:
    """Area between two square edges.

    Args:
        thickness: Of the sheet, m.
        gap: Between the edges, m.

    Returns:
        m², without a cap.

    Valid for:
        Equal sheets, edges square to the face.

    Source:
        [definition]

    Examples:
        >>> round(square_butt_area(0.003, 0.0015) * 1e6, 6)
        4.5
    """
    return gap * thickness


def single_v_area(thickness: Length, gap: Length, root_face: Length, angle: Angle) -> Area:
    """Area of a single V.

    Args:
        thickness: Of the plate, m.
        gap: Between the root faces, m.
        root_face: Height left square at the root, m.
        angle: Included angle of both bevels, rad.

    Returns:
        m², without a cap.

    Valid for:
        Equal plates, both bevelled alike; root face up to the thickness.

    Source:
        [definition]

    Examples:
        >>> round(single_v_area(0.006, 0.002, 0.001, 1.0471975511965976) * 1e6, 2)
        26.43
    """
    return gap * thickness + (thickness - root_face) ** 2 * tan(angle / 2)


def single_v_width(thickness: Length, gap: Length, root_face: Length, angle: Angle) -> Length:
    """Width of a single V where it opens at the face of the plate.

    Args:
        thickness: Of the plate, m.
        gap: Between the root faces, m.
        root_face: Height left square at the root, m.
        angle: Included angle of both bevels, rad.

    Returns:
        m.

    Valid for:
        Equal plates, both bevelled alike; root face up to the thickness.

    Source:
        [definition]

    Examples:
        >>> round(single_v_width(0.006, 0.002, 0.001, 1.0471975511965976) * 1e3, 2)
        7.77
    """
    return gap + 2 * (thickness - root_face) * tan(angle / 2)


def fillet_area(leg: Length) -> Area:
    """Area of a flat-faced fillet with equal legs.

    Args:
        leg: m.

    Returns:
        m².

    Valid for:
        Members at a right angle.

    Source:
        [definition]

    Examples:
        >>> round(fillet_area(0.006) * 1e6, 6)
        18.0
    """
    return leg**2 / 2


def fillet_throat(leg: Length) -> Length:
    """Least height of a flat-faced fillet, from its root to its face.

    Args:
        leg: m.

    Returns:
        m.

    Valid for:
        Equal legs, members at a right angle, fused to the root.

    Source:
        [definition]

    Examples:
        >>> round(fillet_throat(0.006) * 1e3, 2)
        4.24
    """
    return leg / sqrt(2)


def fillet_face(leg: Length) -> Length:
    """Width of the face of a fillet, from toe to toe.

    Args:
        leg: m.

    Returns:
        m.

    Valid for:
        Equal legs, members at a right angle.

    Source:
        [definition]

    Examples:
        >>> round(fillet_face(0.006) * 1e3, 2)
        8.49
    """
    return leg * sqrt(2)


def outside_corner_area(thickness: Length) -> Area:
    """Area of a quarter circle that rounds an outside corner.

    Args:
        thickness: Of both sheets, m.

    Returns:
        m².

    Valid for:
        Sheets of one thickness at a right angle, meeting edge to edge.

    Source:
        [definition]

    Examples:
        >>> round(outside_corner_area(0.00152) * 1e6, 3)
        1.815
    """
    return pi * thickness**2 / 4


def cap_area(width: Length, height: Length) -> Area:
    """Area of a cap or a penetration bead: a segment of a circle.

    Args:
        width: Across the cap, m.
        height: Above the plate, m.

    Returns:
        m².

    Valid for:
        Width and height above zero.

    Source:
        [definition]

    Examples:
        >>> round(cap_area(0.004, 0.0005) * 1e6, 5)
        1.34985
    """
    half_angle = 2 * atan(2 * height / width)
    radius = width / (2 * sin(half_angle))
    return radius**2 * (half_angle - sin(half_angle) * cos(half_angle))
