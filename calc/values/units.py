"""Units: the only file that imports pint.

A reader's ft³, cfh or scfh of gas is counted at 70 °F and 1 atm; inside, free
gas is counted at 15 °C and 1 atm. `_COUNTED_AT` turns the one into the other.
"""

from functools import cache
from importlib.resources import files
from typing import Any

from calc.values.quantities import FIFTEEN_CELSIUS, SEVENTY_FAHRENHEIT

_COUNTED_AT = FIFTEEN_CELSIUS / SEVENTY_FAHRENHEIT  # US gas volumes, 70 °F to 15 °C, ideal
_US_GAS_UNITS = frozenset({"ft^3", "cfh"})

WRITTEN = {
    "ft^3": "ft³",
    "m^3": "m³",
    "in^3": "in³",
    "g/cm^3": "g/cm³",
    "lb/in^3": "lb/in³",
    "lb/in**3": "lb/in³",
    "kg/m**3": "kg/m³",
    "in^2": "in²",
    "mm^2": "mm²",
    "mm^3": "mm³",
    "um/(m*K)": "µm/m·K",
    "cm^2": "cm²",
    "deg": "°",
    "gram": "g",
    "degF": "°F",
    "degC": "°C",
    "delta_degF": "°F",
    "delta_degC": "°C",
    "cfh": "ft³/h",
    "ft^3/min": "ft³/min",
    "m^3/h": "m³/h",
    "m^3/min": "m³/min",
    "dimensionless": "",
    "percent/h": "% an hour",
    "Btu/(h*ft^2)": "Btu/h·ft²",
    "W/(m*K)": "W/m·K",
    "mm^2/s": "mm²/s",
    "W/mm^2": "W/mm²",
    "Btu/(s*in^2)": "Btu/s·in²",
    "mm/min": "mm/min",
    "in/min": "in/min",
}
"""How a unit is printed where that differs from how it is typed."""


@cache
def registry() -> Any:
    """The one registry, read from `units.txt` when first needed."""
    import pint  # noqa: PLC0415 - imported when first used, as it is slow on a phone

    lines = files("calc").joinpath("values/units.txt").read_text(encoding="utf-8").splitlines()
    return pint.UnitRegistry(lines, cache_folder=None)


@cache
def _line(unit: str) -> tuple[float, float]:
    """Slope and offset that take a number in `unit` to SI base units."""
    quantity = registry().Quantity
    if unit in ("degF", "degC"):
        zero = float(quantity(0.0, unit).to_base_units().magnitude)
        one = float(quantity(100.0, unit).to_base_units().magnitude)
        return (one - zero) / 100.0, zero
    return float(quantity(1.0, unit or "dimensionless").to_base_units().magnitude), 0.0


def to_si(value: float, unit: str, *, free_gas: bool = False) -> float:
    """Value in SI base units.

    Args:
        value: Number as read.
        unit: One of the units that `units.txt` defines, or a product of them.
        free_gas: Whether the number counts gas, so that a US unit means 70 °F.

    Returns:
        The same quantity in m, kg, s, K, mol.

    Examples:
        >>> round(to_si(2200, "psi"))
        15168466
        >>> round(to_si(1, "ft^3", free_gas=True), 6), round(to_si(1, "ft^3"), 6)
        (0.027729, 0.028317)
    """
    slope, offset = _line(unit)
    counted = _COUNTED_AT if free_gas and unit in _US_GAS_UNITS else 1.0
    return value * slope * counted + offset


def from_si(value: float, unit: str, *, free_gas: bool = False) -> float:
    """Value in `unit` of a quantity held in SI base units; undoes `to_si`.

    Args:
        value: Number in SI base units.
        unit: Unit wanted.
        free_gas: Whether the number counts gas, so that a US unit means 70 °F.

    Returns:
        The number to print in front of the unit.

    Examples:
        >>> round(from_si(294.2611111, "degF"), 3)
        70.0
    """
    slope, offset = _line(unit)
    counted = _COUNTED_AT if free_gas and unit in _US_GAS_UNITS else 1.0
    return (value - offset) / (slope * counted)


@cache
def dimension(unit: str) -> str:
    """Dimension of a unit as text, to compare two units.

    Examples:
        >>> dimension("psi") == dimension("bar")
        True
    """
    return str(registry().Unit(unit or "dimensionless").dimensionality)


def written(unit: str, *, free_gas: bool = False) -> str:
    """Unit as it is printed; gas volumes name the state they are counted at.

    Examples:
        >>> written("ft^3", free_gas=True)
        'ft³ (70 °F, 1 atm)'
        >>> written("psi")
        'psi'
    """
    text = WRITTEN.get(unit, unit)
    if not free_gas:
        return text
    return f"{text} ({'70 °F' if unit in _US_GAS_UNITS else '15 °C'}, 1 atm)"
