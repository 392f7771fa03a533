"""Chemical equilibrium of burnt gas: which species there are, how many, and how hot.

The method is Newton's on the element potentials, at a fixed pressure and either
a fixed heat content (a flame that loses nothing) or a fixed temperature (gas that
has cooled to the metal it meets). Graphite is added where the gas alone would
hold more carbon than it can.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import exp, log, sumprod

from calc.formulas.heat.species import (
    ELEMENTS,
    GRAPHITE,
    Coefficients,
    basis_of_temperature,
    gas_species,
    graphite_terms,
)
from calc.quantities import (
    GAS_CONSTANT,
    Amount,
    Energy,
    Pressure,
    Ratio,
    Temperature,
)

REFERENCE_PRESSURE: Pressure = 1e5
"""Pressure that the thermodynamic coefficients are counted at [nasa-tp-2002-211556]."""
COLDEST: Temperature = 200.0
HOTTEST: Temperature = 6000.0
_TRACE = -18.420681  # natural logarithm of a mole share of 1e-8 [nasa-rp-1311 part I, 3.3]
_FLOOR = -250.0
_CLOSE_ENOUGH = 1e-6  # Newton squares the error, so the last step leaves about 1e-12
_MOST_STEPS = 300


@dataclass(frozen=True, slots=True)
class Equilibrium:
    """A gas at rest with itself, with graphite where some has formed.

    Attributes:
        temperature: K.
        shares: Moles of each species for one mole of gas and graphite together.
        moles: Amount of gas and graphite together, mol.
        graphite: Amount of graphite, mol.
        carbon_activity: Carbon in the gas against graphite: above 1 soot can form.
        start: What the next solution may start from.
    """

    temperature: Temperature
    shares: Mapping[str, Ratio]
    moles: Amount
    graphite: Amount
    carbon_activity: Ratio
    start: "Start"


@dataclass(frozen=True, slots=True)
class Start:
    """Where the search begins: a solution of a neighbour, or the same guess for all."""

    present: tuple[str, ...]
    temperature: Temperature
    log_moles: tuple[float, ...]
    log_total: float
    graphite: Amount
    with_graphite: bool


@dataclass(frozen=True, slots=True)
class _System:
    """Everything about the species that does not change from step to step."""

    names: tuple[str, ...]
    cold: tuple[Coefficients, ...]
    hot: tuple[Coefficients, ...]
    atoms: tuple[tuple[float, ...], ...]
    products: tuple[tuple[tuple[float, ...], ...], ...]
    columns: tuple[tuple[float, ...], ...]


@cache
def _system(present: tuple[str, ...]) -> _System:
    chosen = [s for s in gas_species() if s.elements.keys() <= set(present)]
    atoms = tuple(tuple(s.elements.get(e, 0.0) for s in chosen) for e in present)
    products = tuple(
        tuple(tuple(a * b for a, b in zip(one, other, strict=True)) for other in atoms[: i + 1])
        for i, one in enumerate(atoms)
    )
    return _System(
        names=tuple(s.name for s in chosen),
        cold=tuple(s.cold for s in chosen),
        hot=tuple(s.hot for s in chosen),
        atoms=atoms,
        products=products,
        columns=tuple(zip(*atoms, strict=True)),
    )


def _solution(rows: list[list[float]]) -> list[float]:
    """Solution of a small set of linear equations, the right-hand side last in each row."""
    size = len(rows)
    for k in range(size):
        best = max(range(k, size), key=lambda i: abs(rows[i][k]))
        rows[k], rows[best] = rows[best], rows[k]
        pivot = rows[k]
        head = pivot[k]
        if head == 0.0:
            raise ValueError("The equilibrium equations have no single answer.")
        for i in range(k + 1, size):
            row = rows[i]
            factor = row[k] / head
            if factor != 0.0:
                rows[i] = [a - factor * b for a, b in zip(row, pivot, strict=True)]
    answer = [0.0] * size
    for k in range(size - 1, -1, -1):
        row = rows[k]
        answer[k] = (row[size] - sumprod(row[k + 1 : size], answer[k + 1 :])) / row[k]
    return answer


def _first_guess(present: tuple[str, ...], amounts: Mapping[str, Amount]) -> Start:
    """The same start for every mixture: 3000 K and equal moles [nasa-rp-1311 part I]."""
    system = _system(present)
    total = sum(amounts.values()) / 3.0
    each = log(total / len(system.names))
    return Start(present, 3000.0, (each,) * len(system.names), log(total), 0.0, False)


def _settled(  # noqa: PLR0912, PLR0914, PLR0915 - one loop, kept in one place for speed
    amounts: Mapping[str, Amount],
    pressure: Pressure,
    enthalpy: Energy | None,
    start: Start,
    with_graphite: bool,
) -> Equilibrium:
    """Newton's iteration on the element potentials from one start.

    Heat content fixed where `enthalpy` is given, else the temperature of `start`.
    """
    system = _system(start.present)
    atoms, products, columns = system.atoms, system.products, system.columns
    wanted = [amounts[e] for e in start.present]
    elements = len(atoms)
    carbon = start.present.index("C") if "C" in start.present else -1
    smallest = min(wanted)
    temperature = start.temperature
    logs = list(start.log_moles)
    log_total = start.log_total
    graphite = start.graphite if with_graphite else 0.0
    log_pressure = log(pressure / REFERENCE_PRESSURE)
    heated = enthalpy is not None
    size = elements + (1 if with_graphite else 0) + 1 + (1 if heated else 0)
    at_total = elements + (1 if with_graphite else 0)
    fresh = True
    for _ in range(_MOST_STEPS):
        if fresh:
            for_capacity, for_enthalpy, for_gibbs = basis_of_temperature(temperature)
            coefficients = system.cold if temperature < CHANGE_OVER else system.hot
            gibbs = [sumprod(for_gibbs, c) for c in coefficients]
            heat = [sumprod(for_enthalpy, c) for c in coefficients]
            solid = graphite_at(temperature)
            fresh = heated
        moles = [exp(x) for x in logs]
        shift = log_pressure - log_total
        potential = [g + x + shift for g, x in zip(gibbs, logs, strict=True)]
        driven = [n * p for n, p in zip(moles, potential, strict=True)]
        hot = [n * h for n, h in zip(moles, heat, strict=True)]
        total = exp(log_total)
        held = [sumprod(row, moles) for row in atoms]
        rows = []
        for k in range(elements):
            row = [sumprod(pair, moles) for pair in products[k]]
            rows.append(row)
        for k in range(elements):
            rows[k].extend(rows[i][k] for i in range(k + 1, elements))
        if with_graphite:
            for k in range(elements):
                rows[k].append(1.0 if k == carbon else 0.0)
            held[carbon] += graphite
        for k in range(elements):
            rows[k].append(sumprod(atoms[k], moles))
        ...
