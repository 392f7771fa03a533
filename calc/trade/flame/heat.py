"""A flame's heat and how much of it enters the work."""

from functools import cache

from calc.formulas.heat.flame_power import FLAME_EFFICIENCY, FLAME_EFFICIENCY_BAND
from calc.formulas.heat.heat_of_reaction import HeatValue, heat_value, heats
from calc.values.quantities import Ratio

WEAK: Ratio = FLAME_EFFICIENCY_BAND[0] / FLAME_EFFICIENCY
STRONG: Ratio = FLAME_EFFICIENCY_BAND[1] / FLAME_EFFICIENCY
"""The share that enters may be this much smaller or larger than it is taken."""
BAND_SAID = (
    "The band is the share of the heat that enters the work: uncertain by a factor of 1.7 either way."
)


@cache
def printed_heat(fuel: str) -> HeatValue:
    """Gross heat of a fuel gas, J/m³ of free gas, as heat values are printed.

    Examples:
        >>> round(printed_heat("acetylene") / 1e6, 1)
        55.0
    """
    return heat_value(heats(fuel).total_gross)
