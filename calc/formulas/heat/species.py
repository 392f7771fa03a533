"""Heat content and entropy of the gases in a flame, as functions of temperature.

Each species has two sets of nine coefficients, below and above 1000 K. They are
carried as published [nasa-tp-2002-211556]; this file only multiplies them out.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import log, sumprod

from calc.data.tables import table
from calc.values.quantities import GAS_CONSTANT, MolarEnergy, Ratio, Temperature

Coefficients = tuple[float, float, float, float, float, float, float, float, float]
ELEMENTS = ("C", "H", "O", "N", "Ar")
GRAPHITE = "C(gr)"
CHANGE_OVER: Temperature = 1000.0
"""Where the colder and the hotter coefficients of a gas meet [nasa-tp-2002-211556]."""


@dataclass(frozen=True, slots=True)
class Species:
    """One substance: its atoms, and its coefficients from cold to hot.

    Attributes:
        name: Formula, or the name where two substances share a formula.
        elements: Atoms of each element in one molecule.
        upper: Highest temperature of each set of coefficients, K.
        coefficients: One set of nine for each span of temperature.
        role: `product` where burnt gas may hold it, `solid`, or `fuel`: kept for its
            heat content alone, since burnt gas holds no more than a trace.
    """

    name: str
    elements: Mapping[str, float]
    upper: tuple[Temperature, ...]
    coefficients: tuple[Coefficients, ...]
    role: str

    def at(self, temperature: Temperature) -> Coefficients:
        """Coefficients that hold at a temperature."""
        for upper, coefficients in zip(self.upper, self.coefficients, strict=True):
            if temperature <= upper:
                return coefficients
        return self.coefficients[-1]


@cache
def species() -> Mapping[str, Species]:
    """Every substance of the table, by name."""
    found: dict[str, Species] = {}
    for row in table("thermo-nasa-2002"):
        before = found.get(row.species)
        found[row.species] = Species(
            name=row.species,
            elements={e: n for e in ELEMENTS if (n := getattr(row, e))},
            upper=(*(before.upper if before else ()), row.hottest),
            coefficients=(
                *(before.coefficients if before else ()),
                (row.a1, row.a2, row.a3, row.a4, row.a5, row.a6, row.a7, row.b1, row.b2),
            ),
            role=row.role,
        )
    return found


Basis = tuple[Coefficients, Coefficients, Coefficients]


def basis_of_temperature(temperature: Temperature) -> Basis:
    """Multipliers of the nine coefficients at one temperature.

    Args:
        temperature: K.

    Returns:
        Three rows of nine: for heat capacity over R, for enthalpy over RT and
        for Gibbs energy over RT.

    Valid for:
        200-6000 K, the range of the coefficients.

    Source:
        [nasa-tp-2002-211556] equations for the nine-constant form.
    """
    t = temperature
    inverse = 1.0 / t
    square = t * t
    cube = square * t
    fourth = square * square
    inverse_square = inverse * inverse
    logarithm = log(t)
    heat_capacity = (inverse_square, inverse, 1.0, t, square, cube, fourth, 0.0, 0.0)
    enthalpy = (
        -inverse_square,
        logarithm * inverse,
        1.0,
        t / 2,
        square / 3,
        cube / 4,
        fourth / 5,
        inverse,
        0.0,
    )
    gibbs = (
        -inverse_square / 2,
        (logarithm + 1.0) * inverse,
        1.0 - logarithm,
        -t / 2,
        -square / 6,
        -cube / 12,
        -fourth / 20,
        inverse,
        -1.0,
    )
    return heat_capacity, enthalpy, gibbs


def molar_enthalpy(name: str, temperature: Temperature = 298.15) -> MolarEnergy:
    """Heat content of one mole, counted from the elements at 25 °C.

    Args:
        name: Species, as the table names it.
        temperature: K.

    Returns:
        J/mol. At 298.15 K it is the heat of formation.

    Valid for:
        200-6000 K.

    Source:
        [nasa-tp-2002-211556]

    Examples:
        >>> round(molar_enthalpy("H2O") / 1000, 1)
        -241.8
    """
    coefficients = species()[name].at(temperature)
    row = basis_of_temperature(temperature)[1]
    return GAS_CONSTANT * temperature * sumprod(row, coefficients)


def molar_heat_capacity(name: str, temperature: Temperature) -> Ratio:
    """Heat capacity of one mole at constant pressure, over the gas constant.

    Args:
        name: Species, as the table names it.
        temperature: K.

    Returns:
        Dimensionless.

    Valid for:
        200-6000 K.

    Source:
        [nasa-tp-2002-211556]
    """
    return sumprod(basis_of_temperature(temperature)[0], species()[name].at(temperature))
