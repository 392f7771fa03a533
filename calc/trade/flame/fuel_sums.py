"""What each fuel takes to bring the same heat into steel."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from calc.data.tables import table
from calc.declare import Step, worked
from calc.formulas.gas.properties import gas_molar_mass, oxygen_ratio
from calc.formulas.gas.supply import oxygen_for_fuel
from calc.formulas.heat.effect_on_iron import effect_on_iron
from calc.formulas.heat.flame import burnt_gas
from calc.formulas.heat.fuels import EXAMPLE_PROPYNE_SHARE
from calc.formulas.heat.lumped import gas_for_heat
from calc.trade.flame.fuel_heat import heat_of_gas
from calc.values.quantities import (
    ATMOSPHERE,
    FIFTEEN_CELSIUS,
    GAS_CONSTANT,
    Energy,
    FreeGas,
    Mass,
    Ratio,
    Temperature,
)

MOLES_OF_A_VOLUME = ATMOSPHERE / (GAS_CONSTANT * FIFTEEN_CELSIUS)
"""Moles in a cubic metre of free gas."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FuelSum:
    """One fuel for one heat.

    Attributes:
        fuel: Id.
        temperature: Flame at the torch's ratio, without air and loss, K.
        effect: What its burnt gas does to molten iron.
        cone: Share of its heat that the ideal cone sets free, of the gross heat.
        gas: Fuel gas, m³.
        weight: Of the fuel gas, kg.
        from_cylinder: Oxygen that the torch draws, m³.
        from_air: Oxygen that the air brings, m³.
        cost: In the reader's money; None without both prices.
    """

    fuel: str
    temperature: Temperature
    effect: str
    cone: Ratio
    gas: FreeGas
    weight: Mass
    from_cylinder: FreeGas
    from_air: FreeGas
    cost: float | None


@cache
def _flame(fuel: str, ratio: Ratio) -> tuple[Temperature, str]:
    gas = burnt_gas(fuel=fuel, oxygen_ratio=ratio)
    return gas.temperature, effect_on_iron(gas).effect


def fuel_sum(
    *,
    steps: list[Step],
    fuel: str,
    heat: Energy,
    efficiency: Ratio,
    prices: Mapping[str, float | None],
    costs: Callable[[Mass, FreeGas, float, float], float],
) -> FuelSum:
    """Gas, oxygen, weight and cost of one fuel for a heat in the work.

    Args:
        steps: List that each line of working is added to.
        fuel: Id of the fuel gas.
        heat: Into the work, J.
        efficiency: Share of the gross heat that enters the work.
        prices: Price of each fuel and of oxygen, by id; None where not given.
        costs: Cost of a weight of fuel and a volume of oxygen at two prices.
    """
    value = heat_of_gas(steps, fuel, EXAMPLE_PROPYNE_SHARE)
    gas = worked(steps, "Fuel gas", gas_for_heat, heat=heat, efficiency=efficiency, heat_value=value.gross)
    ratio = oxygen_ratio(fuel)
    oxygen = worked(steps, "Oxygen from the cylinder", oxygen_for_fuel, fuel=gas, oxygen_ratio=ratio)
    weight = gas * MOLES_OF_A_VOLUME * gas_molar_mass(fuel)
    own, oxygens = prices.get(fuel), prices.get("oxygen")
    temperature, effect = _flame(fuel, ratio)
    return FuelSum(
        fuel=fuel, temperature=temperature, effect=effect, cone=value.cone / value.gross, gas=gas, weight=weight, from_cylinder=oxygen,
        from_air=max(oxygen_ratio(fuel, "complete") - ratio, 0.0) * gas,
        cost=None if own is None or oxygens is None else costs(weight, oxygen, own, oxygens),
    )  # fmt: skip


def equipment(fuel: str, rules: str) -> Any:
    """Row of hose and tip for a fuel under a rule set."""
    rows = {row.fuel: row for row in table("fuel-equipment") if row.rules == rules}
    return rows.get(fuel, rows["other"])
