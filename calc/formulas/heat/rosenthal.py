"""Temperature round a torch that moves steadily: Rosenthal's point and line sources."""

from math import exp, pi

from calc.formulas.heat.bessel import scaled_k0
from calc.values.quantities import (
    Conductivity,
    Diffusivity,
    HeatTransfer,
    Length,
    Power,
    Speed,
    TemperatureRise,
)


def rise_in_thick_plate(
    *,
    power: Power,
    speed: Speed,
    ahead: Length,
    distance: Length,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
) -> TemperatureRise:
    """Rise of temperature near a point source on a plate so thick that its back stays cold.

    Args:
        power: Heat that goes into the work, W.
        speed: Travel speed, m/s.
        ahead: Distance in front of the source along the travel, m; behind is negative.
        distance: Distance from the source, m.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        K above the plate far away.

    Valid for:
        Steady travel, one set of metal properties. At the source itself there is no value.

    Source:
        [rosenthal-1946]
    """
    return power / (2 * pi * conductivity * distance) * exp(-speed * (ahead + distance) / (2 * diffusivity))


def rise_in_thin_plate(
    *,
    power: Power,
    speed: Speed,
    ahead: Length,
    distance: Length,
    thickness: Length,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
    both_faces: HeatTransfer = 0.0,
) -> TemperatureRise:
    """Rise of temperature near a line source through a thin plate.

    Args:
        power: Heat that goes into the work, W.
        speed: Travel speed, m/s.
        ahead: Distance in front of the source along the travel, m; behind is negative.
        distance: Distance from the source, m.
        thickness: Thickness of the plate, m.
        conductivity: W/(m·K).
        diffusivity: m²/s.
        both_faces: Heat lost to the air from the two faces together, W/(m²·K).

    Returns:
        K above the plate far away.

    Valid for:
        A plate that is as hot on its back as on its face; steady travel. The sum has
        no value at rest without loss to the air.

    Source:
        [rosenthal-1946]
    """
    pace = speed / (2 * diffusivity)
    reach = (pace**2 + both_faces / (conductivity * thickness)) ** 0.5
    return (
        power
        / (2 * pi * conductivity * thickness)
        * exp(-pace * ahead - reach * distance)
        * scaled_k0(reach * distance)
    )
