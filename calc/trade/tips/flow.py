"""Gas that a tip passes, by its hole and the gauge at it."""

from dataclasses import dataclass

from calc.answer.hazards import brought, caution
from calc.declare import Caution, Figure, Step, worked
from calc.formulas.gas.nozzle import orifice_area, orifice_flow
from calc.formulas.gas.pressures import absolute_pressure
from calc.trade.gas.acetylene_limit import require_acetylene_gauge
from calc.trade.gas.possible import require_possible
from calc.values.quantities import Gauge, Length, Ratio, Temperature
from calc.values.units import to_si

SHARE_LOW, SHARE_HIGH = 0.6 / 0.75, 0.9 / 0.75
"""Ends of the band: a discharge of 0.6 or 0.9 in place of 0.75."""
LEAST_GAUGE = to_si(0.1, "psi")
SOURCE = "gas-dynamics discharge 0.75 from memory"
BASIS = "The band is a discharge of 0.6 to 0.9 in place of 0.75. What the maker prints for the tip comes first."


@dataclass(frozen=True, slots=True)
class TipGas:
    """What passes a tip.

    Attributes:
        fuel_flow: Fuel gas, m³/s of free gas.
        oxygen_flow: Oxygen likewise.
        exit_speed: Of the mixture in the hole, m/s.
        cautions: Hazards of the gas and of a starved tip; they go with the figures.
    """

    fuel_flow: Figure
    oxygen_flow: Figure
    exit_speed: Figure
    cautions: tuple[Caution, ...]


def gas_through_tip(
    *,
    fuel: str,
    orifice: Length,
    holes: Ratio,
    gauge: Gauge,
    oxygen_ratio: Ratio,
    temperature: Temperature,
    rules: str,
    steps: list[Step] | None = None,
) -> TipGas:
    """Flow of each gas through an equal-pressure tip, and how fast the mixture leaves.

    Args:
        fuel: Id of the fuel gas.
        orifice: Diameter of a hole, m.
        holes: How many there are.
        gauge: At the tip, both gases alike, Pa.
        oxygen_ratio: Oxygen for one of fuel, by volume.
        temperature: Of the gas, K.
        rules: Rule set.
        steps: List that the working is added to.

    Raises:
        InputError: Acetylene above its limit, or a gauge that the gas cannot show; the field is `gauge`.

    Examples:
        >>> found = gas_through_tip(
        ...     fuel="acetylene", orifice=0.8e-3, holes=1.0, gauge=34e3, oxygen_ratio=1.1, temperature=293.15, rules="us"
        ... )
        >>> round(found.oxygen_flow.value / found.fuel_flow.value, 6)
        1.1
    """
    require_acetylene_gauge(fuel, gauge, rules, "gauge", "Gauge at the tip")
    require_possible(
        gas=fuel,
        gauge=gauge,
        temperature=temperature,
        rules=rules,
        field="gauge",
        label="Gauge at the tip",
        least=LEAST_GAUGE,
    )
    kept = [] if steps is None else steps
    area = worked(kept, "Area of the holes", orifice_area, diameter=orifice, holes=holes)
    pressure = worked(kept, "Absolute pressure at the tip", absolute_pressure, gauge=gauge)
    flow = orifice_flow(
        gases={fuel: 1.0, "oxygen": oxygen_ratio}, area=area, pressure=pressure, temperature=temperature
    )

    def figure(amount: float) -> Figure:
        return Figure(
            amount, SOURCE, "computed", low=amount * SHARE_LOW, high=amount * SHARE_HIGH, basis=BASIS
        )

    at_sound = "At the speed of sound: more pressure gives no more speed."
    return TipGas(
        figure(flow.flows[fuel]),
        figure(flow.flows["oxygen"]),
        Figure(flow.speed, SOURCE, "computed", basis=at_sound if flow.choked else BASIS),
        (caution("starved-tip"), *brought({"fuel": fuel})),
    )
