"""Gauge and absolute pressure: the one place where the atmosphere is added."""

from calc.values.quantities import ATMOSPHERE, Gauge, Pressure


def absolute_pressure(gauge: Gauge, atmosphere: Pressure = ATMOSPHERE) -> Pressure:
    """Absolute pressure behind a gauge reading.

    Args:
        gauge: Reading of the gauge, Pa above the atmosphere.
        atmosphere: Pressure outside the gauge, Pa.

    Returns:
        Absolute pressure, Pa.

    Valid for:
        A gauge that reads zero in open air. A thousand metres of height lowers
        the atmosphere by about a tenth; give it where that matters.

    Source:
        [definition]

    Examples:
        >>> absolute_pressure(0.0)
        101325.0
    """
    return gauge + atmosphere
