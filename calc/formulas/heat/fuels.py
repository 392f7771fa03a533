"""What the fuel gases are made of, and how much oxygen they take."""

from collections.abc import Mapping

from calc.formulas.heat.species import molar_enthalpy, species
from calc.values.quantities import MolarEnergy, Ratio, Temperature

FUELS = (
    "acetylene",
    "propane",
    "propylene",
    "methane",
    "hydrogen",
    "methylacetylene-propadiene",
    "propyne",
    "propadiene",
)
"""Fuels by name. The last two are the parts of methylacetylene-propadiene, each alone."""
_ONE_GAS = {
    "acetylene": "C2H2",
    "propane": "C3H8",
    "propylene": "C3H6",
    "methane": "CH4",
    "hydrogen": "H2",
    "propyne": "propyne",
    "propadiene": "propadiene",
}
EXAMPLE_PROPYNE_SHARE: Ratio = 0.5
"""Invented: real mixtures differ, and hold propane, propylene or butane as well."""


def fuel_shares(fuel: str, propyne_share: Ratio = EXAMPLE_PROPYNE_SHARE) -> dict[str, Ratio]:
    """Substances in one mole of a fuel gas.

    A look-up, not a formula.

    Args:
        fuel: One of `FUELS`.
        propyne_share: Mole share of propyne where the fuel is
            methylacetylene-propadiene; the rest is propadiene.

    Returns:
        Mole share of each substance, by the name the thermodynamic table uses.

    Raises:
        ValueError: The fuel is unknown or the share is not between 0 and 1.

    Examples:
        >>> fuel_shares("acetylene")
        {'C2H2': 1.0}
    """
    if fuel == "methylacetylene-propadiene":
        if not 0.0 <= propyne_share <= 1.0:
            raise ValueError("The share of propyne must be between 0 and 1.")
        return {"propyne": propyne_share, "propadiene": 1.0 - propyne_share}
    if fuel not in _ONE_GAS:
        raise ValueError(f"No such fuel: {fuel}. Known are {', '.join(FUELS)}.")
    return {_ONE_GAS[fuel]: 1.0}


def atoms_in(shares: Mapping[str, float]) -> dict[str, float]:
    """Moles of each element in a mixture.

    Args:
        shares: Moles of each substance.

    Returns:
        Moles of each element that is present.

    Examples:
        >>> atoms_in({"CH4": 1.0, "O2": 2.0})
        {'C': 1.0, 'H': 4.0, 'O': 4.0}
    """
    found: dict[str, float] = {}
    for name, moles in shares.items():
        if moles:
            for element, count in species()[name].elements.items():
                found[element] = found.get(element, 0.0) + count * moles
    return found


def mixture_enthalpy(shares: Mapping[str, float], temperature: Temperature) -> MolarEnergy:
    """Heat content of a mixture, counted from the elements at 25 °C.

    Args:
        shares: Moles of each substance.
        temperature: K.

    Returns:
        J for the moles given.
    """
    return sum(n * molar_enthalpy(name, temperature) for name, n in shares.items() if n)


def oxygen_to_burn(carbon: Ratio, hydrogen: Ratio) -> Ratio:
    """Oxygen that burns a fuel to carbon dioxide and water, volumes for one of fuel.

    Args:
        carbon: Atoms of carbon in one molecule.
        hydrogen: Atoms of hydrogen in one molecule.

    Returns:
        Moles of oxygen for one mole of fuel.

    Valid for:
        Fuels of carbon and hydrogen only.

    Source:
        [definition]

    Examples:
        >>> oxygen_to_burn(2, 2)
        2.5
    """
    return carbon + hydrogen / 4


def oxygen_for_cone(carbon: Ratio) -> Ratio:
    """Oxygen that turns a fuel to carbon monoxide and hydrogen, volumes for one of fuel.

    Args:
        carbon: Atoms of carbon in one molecule.

    Returns:
        Moles of oxygen for one mole of fuel.

    Valid for:
        The ideal inner cone. Propane is run with far more oxygen than this.

    Source:
        [definition]

    Examples:
        >>> oxygen_for_cone(2)
        1.0
    """
    return carbon / 2
