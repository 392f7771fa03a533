"""What must stay in an acetylene cylinder, as practice has it."""

from functools import cache

from calc.figures import Figure
from calc.formulas.gas.acetylene import acetylene_pressure, acetylene_share
from calc.formulas.gas.pressures import absolute_pressure
from calc.quantities import SEVENTY_FAHRENHEIT, FreeGas, Ratio, Temperature
from calc.units import to_si

LOW_PSI, HIGH_PSI = 25.0, 29.0
"""Gauge at 70 °F at which an acetylene cylinder is changed: trade practice, no source."""


@cache
def kept_share(psi: float = HIGH_PSI) -> Ratio:
    """Share of full that a gauge at 70 °F and at rest stands for."""
    return acetylene_share(absolute_pressure(to_si(psi, "psi")), SEVENTY_FAHRENHEIT)


def acetylene_kept(full_contents: FreeGas) -> FreeGas:
    """Acetylene that stays in its cylinder, m³: what reads 29 psi at 70 °F."""
    return kept_share() * full_contents


def acetylene_stop_gauge(temperature: Temperature) -> Figure:
    """Cylinder gauge at which to change acetylene, Pa, at a temperature of the cylinder."""
    low, high = (
        acetylene_pressure(kept_share(psi), temperature) - absolute_pressure(0.0)
        for psi in (LOW_PSI, HIGH_PSI)
    )
    return Figure(
        max(high, 0.0), "", "practice", max(low, 0.0), max(high, 0.0),
        "25 to 29 psi at 70 °F (1.7 to 2 bar at 21 °C); the same contents at this temperature, at rest. "
        "While gas is drawn the gauge reads lower.",
    )  # fmt: skip
