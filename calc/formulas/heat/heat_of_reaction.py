"""Heat that a fuel gives: in the inner cone, in the outer envelope, and in all.

Printed heat values are gross: they count the heat of water that condenses. A flame's
water stays vapour, so the work can get no more than the net value.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.formulas.heat.fuels import (
    EXAMPLE_PROPYNE_SHARE,
    atoms_in,
    fuel_shares,
    mixture_enthalpy,
)
from calc.formulas.heat.species import molar_enthalpy
from calc.values.quantities import (
    ATMOSPHERE,
    FIFTEEN_CELSIUS,
    GAS_CONSTANT,
    MolarEnergy,
    Pressure,
    Ratio,
    Temperature,
    Unit,
)

HEAT_OF_CONDENSATION: MolarEnergy = 44004.0
"""Water vapour to water at 25 °C: -241.826 against -285.830 kJ/mol [nasa-tp-2002-211556]."""
ROOM: Temperature = 298.15
HeatValue = Annotated[float, Unit("J/m**3")]


def cone_heat(fuel_enthalpy: MolarEnergy, carbon: Ratio, monoxide_enthalpy: MolarEnergy) -> MolarEnergy:
    """Heat of the ideal inner cone: fuel and just enough oxygen to carbon monoxide and hydrogen.

    Args:
        fuel_enthalpy: Heat of formation of the fuel, J/mol.
        carbon: Atoms of carbon in one molecule.
        monoxide_enthalpy: Heat of formation of carbon monoxide, J/mol.

    Returns:
        J for one mole of fuel.

    Valid for:
        A comparison of fuels. A torch on propane takes about four volumes of oxygen,
        not the 1.5 of this sum, so its real cone gives far more.

    Source:
        [definition] with heats of formation.
    """
    return fuel_enthalpy - carbon * monoxide_enthalpy


def net_heat(
    fuel_enthalpy: MolarEnergy,
    carbon: Ratio,
    hydrogen: Ratio,
    dioxide_enthalpy: MolarEnergy,
    vapour_enthalpy: MolarEnergy,
) -> MolarEnergy:
    """Heat of complete burning while the water stays vapour.

    Args:
        fuel_enthalpy: Heat of formation of the fuel, J/mol.
        carbon: Atoms of carbon in one molecule.
        hydrogen: Atoms of hydrogen in one molecule.
        dioxide_enthalpy: Heat of formation of carbon dioxide, J/mol.
        vapour_enthalpy: Heat of formation of water vapour, J/mol.

    Returns:
        J for one mole of fuel.

    Valid for:
        Fuels of carbon and hydrogen only, gases at 25 °C before and after.

    Source:
        [definition] with heats of formation.
    """
    return fuel_enthalpy - carbon * dioxide_enthalpy - hydrogen / 2 * vapour_enthalpy


def gross_heat(
    net: MolarEnergy, hydrogen: Ratio, condensation: MolarEnergy = HEAT_OF_CONDENSATION
) -> MolarEnergy:
    """Heat of complete burning with the water condensed, as heat values are printed.

    Args:
        net: Heat while the water stays vapour, J/mol.
        hydrogen: Atoms of hydrogen in one molecule of fuel.
        condensation: Heat of condensation of water, J/mol.

    Returns:
        J for one mole of fuel.

    Valid for:
        25 °C before and after.

    Source:
        [definition]
    """
    return net + hydrogen / 2 * condensation


def heat_value(
    heat: MolarEnergy,
    reference_pressure: Pressure = ATMOSPHERE,
    reference_temperature: Temperature = FIFTEEN_CELSIUS,
) -> HeatValue:
    """Heat for each volume of gas, where the gas counts as ideal.

    Args:
        heat: J for one mole.
        reference_pressure: Pressure that the volume is counted at, Pa.
        reference_temperature: Temperature that the volume is counted at, K.

    Returns:
        J/m³.

    Valid for:
        Gas counted as free gas. Some tables divide by the real density and print
        about 2 % more for acetylene and propane.

    Source:
        [gas-law]
    """
    return heat * reference_pressure / (GAS_CONSTANT * reference_temperature)


@dataclass(frozen=True, slots=True)
class Heats:
    """Heat of one mole of fuel, J/mol; the envelope is all that the cone leaves."""

    cone: MolarEnergy
    envelope_net: MolarEnergy
    envelope_gross: MolarEnergy
    total_net: MolarEnergy
    total_gross: MolarEnergy


def heats(fuel: str, propyne_share: Ratio = EXAMPLE_PROPYNE_SHARE) -> Heats:
    """Heat of a fuel's cone and envelope, net and gross.

    Joins the table of heats of formation to the formulas above.

    Args:
        fuel: One of `fuels.FUELS`.
        propyne_share: Mole share of propyne in methylacetylene-propadiene.

    Returns:
        Heats of one mole of fuel at 25 °C.

    Raises:
        ValueError: The fuel is unknown.

    Source:
        [nasa-tp-2002-211556] heats of formation.

    Examples:
        >>> round(heats("acetylene").total_gross / 1000)
        1301
    """
    shares = fuel_shares(fuel, propyne_share)
    atoms = atoms_in(shares)
    carbon, hydrogen = atoms.get("C", 0.0), atoms["H"]
    formation = mixture_enthalpy(shares, ROOM)
    cone = cone_heat(formation, carbon, molar_enthalpy("CO"))
    net = net_heat(formation, carbon, hydrogen, molar_enthalpy("CO2"), molar_enthalpy("H2O"))
    gross = gross_heat(net, hydrogen)
    return Heats(cone, net - cone, gross - cone, net, gross)
