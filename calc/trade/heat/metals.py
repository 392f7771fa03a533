"""Metals as a flame finds them: hot figures where we have them, and the words a reader sees."""

from dataclasses import dataclass
from functools import cache

from calc.data.tables import table
from calc.values.quantities import Conductivity, Density, Diffusivity, HeatCapacity, Temperature

METALS = {
    "low-carbon-steel": "Low-carbon steel",
    "stainless-steel": "Stainless steel",
    "cast-iron": "Cast iron, grey",
    "copper": "Copper",
    "brass": "Brass",
    "aluminium": "Aluminium",
}
"""Metals of the heat calculators, by id."""
_ROWS = {
    "low-carbon-steel": "mild steel",
    "stainless-steel": "stainless steel 304",
    "cast-iron": "grey cast iron",
    "copper": "copper C122",
    "brass": "brass 70/30",
    "aluminium": "aluminium 1100",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Metal:
    """One metal: where it melts, and its figures cold and hot."""

    solidus: Temperature
    liquidus: Temperature
    density: Density
    heat_capacity: HeatCapacity
    conductivity: Conductivity
    hot_conductivity: Conductivity
    hot_diffusivity: Diffusivity


@cache
def metal_of(metal: str) -> Metal:
    """Figures of a metal.

    Args:
        metal: One of `METALS`.

    Examples:
        >>> round(metal_of("low-carbon-steel").hot_diffusivity * 1e6, 2)
        6.86
    """
    row = next(row for row in table("metals") if row.metal == _ROWS[metal])
    return Metal(
        solidus=row.solidus,
        liquidus=row.liquidus,
        density=row.density,
        heat_capacity=row.heat_capacity,
        conductivity=row.conductivity,
        hot_conductivity=row.hot_conductivity,
        hot_diffusivity=row.hot_conductivity / (row.density * row.hot_heat_capacity),
    )
