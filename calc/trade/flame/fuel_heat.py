"""Heat of a fuel gas in the cone and in the envelope, with each line of working."""

from dataclasses import dataclass

from calc.declare import Step, worked
from calc.formulas.heat.fuels import atoms_in, fuel_shares, mixture_enthalpy
from calc.formulas.heat.heat_of_reaction import (
    ROOM,
    HeatValue,
    cone_heat,
    gross_heat,
    heat_value,
    net_heat,
)
from calc.formulas.heat.species import molar_enthalpy
from calc.formulas.heat.steel_properties import steel_heat_capacity
from calc.values.quantities import HeatCapacity, MolarEnergy, Ratio, Temperature

_PIECES = 200


@dataclass(frozen=True, slots=True)
class HeatOfGas:
    """Heat of a cubic metre of free gas, J/m³."""

    cone: HeatValue
    net: HeatValue
    gross: HeatValue


def heat_of_gas(steps: list[Step], fuel: str, propyne_share: Ratio) -> HeatOfGas:
    """Heat of the ideal cone, of burning with the water as vapour, and with it condensed.

    Args:
        steps: List that each line of working is added to.
        fuel: Id of the fuel gas.
        propyne_share: Mole share of propyne in methylacetylene-propadiene.
    """
    shares = fuel_shares(fuel, propyne_share)
    atoms = atoms_in(shares)
    carbon, hydrogen = atoms.get("C", 0.0), atoms["H"]
    formation = mixture_enthalpy(shares, ROOM)

    def of_a_volume(says: str, heat: MolarEnergy) -> HeatValue:
        return worked(steps, f"{says}, for a volume of gas", heat_value, heat=heat)

    cone = worked(
        steps, "Inner cone, for a mole of fuel", cone_heat,
        fuel_enthalpy=formation, carbon=carbon, monoxide_enthalpy=molar_enthalpy("CO"),
    )  # fmt: skip
    net = worked(
        steps, "All of it, water as vapour (net), for a mole", net_heat,
        fuel_enthalpy=formation, carbon=carbon, hydrogen=hydrogen,
        dioxide_enthalpy=molar_enthalpy("CO2"), vapour_enthalpy=molar_enthalpy("H2O"),
    )  # fmt: skip
    gross = worked(
        steps, "All of it, water condensed (gross), for a mole", gross_heat, net=net, hydrogen=hydrogen
    )
    return HeatOfGas(
        max(of_a_volume("Inner cone", cone), 0.0),  # hydrogen leaves a rounding error below 0
        of_a_volume("Net", net),
        of_a_volume("Gross", gross),
    )


def mean_steel_heat_capacity(cold: Temperature, hot: Temperature) -> HeatCapacity:
    """Heat that a kilogram of steel takes for each kelvin, on average from cold to hot.

    Args:
        cold: Where it starts, K.
        hot: Where it ends, K, above `cold` and at most 1200 °C.
    """
    step = (hot - cold) / _PIECES
    inner = sum(steel_heat_capacity(cold + step * (i + 0.5)) for i in range(_PIECES))
    return inner / _PIECES
