"""How densely a gas stands in hoses and cylinders at modest pressure, up to where it turns liquid.

An ideal gas is a poor guess for propane close to its vapour pressure: it is then up to a
third denser. The cubic equation of Soave, Redlich and Kwong tells it from three constants
a gas.
"""

from functools import cache
from math import acos, cbrt, cos, pi, sqrt
from typing import Any

from calc.data.tables import table
from calc.values.quantities import Pressure, Ratio, Temperature


@cache
def _constants(gas: str) -> Any:
    for row in table("critical-points-benchbook-2026"):
        if row.gas == gas:
            return row
    raise ValueError(f"No critical point for {gas}: name oxygen or one of the six fuels.")


def _largest_root(b: float, c: float, d: float) -> float:
    """The largest real root of x³ + b x² + c x + d."""
    p = c - b * b / 3
    q = 2 * b**3 / 27 - b * c / 3 + d
    inside = q * q / 4 + p**3 / 27
    if inside > 0:
        root = sqrt(inside)
        one, other = -q / 2 + root, -q / 2 - root
        return cbrt(one) + cbrt(other) - b / 3
    if p == 0:
        return -b / 3
    wide = 2 * sqrt(-p / 3)
    turn = acos(max(-1.0, min(1.0, 3 * q / (p * wide))))
    return max(wide * cos((turn - 2 * pi * k) / 3) for k in range(3)) - b / 3


def vapour_compressibility(gas: str, pressure: Pressure, temperature: Temperature) -> Ratio:
    """Compressibility of a gas: its volume as a share of an ideal gas's volume.

    A solver: the largest root of Soave's cubic equation.

    Args:
        gas: `oxygen` or one of the six fuels.
        pressure: Absolute pressure, Pa; not above the gas's vapour pressure.
        temperature: Temperature of the gas, K.

    Returns:
        A plain number, 1 for an ideal gas and less for a denser one.

    Valid for:
        −30 °C to 65 °C and up to 26 bar: within 0.3 % for oxygen, hydrogen and methane,
        within 1.7 % for propane and propylene up to their vapour pressure. For acetylene
        and methylacetylene-propadiene no figures were at hand to hold it against.

    Raises:
        ValueError: A gas that is not known.

    Source:
        [textbook] of thermodynamics, the equation of Soave, Redlich and Kwong; constants
        from [coolprop-8], acetylene's from memory.

    Examples:
        >>> round(vapour_compressibility("propane", 500_000.0, 293.15), 2)
        0.91
    """
    row = _constants(gas)
    omega: float = row.acentric
    slope = 0.480 + 1.574 * omega - 0.176 * omega * omega
    alpha = (1 + slope * (1 - sqrt(temperature / row.critical_temperature))) ** 2
    reduced = pressure / row.critical_pressure
    cooled = row.critical_temperature / temperature
    a = 0.42748 * alpha * reduced * cooled * cooled
    b = 0.08664 * reduced * cooled
    return _largest_root(-1.0, a - b - b * b, -a * b)


SOLVERS = (vapour_compressibility,)
