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
    CHANGE_OVER,
    ELEMENTS,
    GRAPHITE,
    Coefficients,
    basis_of_temperature,
    species,
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
    molecules: tuple[tuple[float, ...], ...]
    carbon: int


@cache
def _system(present: tuple[str, ...]) -> _System:
    chosen = [
        s for s in species().values() if s.role == "product" and s.elements.keys() <= set(present)
    ]
    atoms = tuple(tuple(s.elements.get(e, 0.0) for s in chosen) for e in present)
    products = tuple(
        tuple(tuple(a * b for a, b in zip(one, other, strict=True)) for other in atoms[: i + 1])
        for i, one in enumerate(atoms)
    )
    return _System(
        names=tuple(s.name for s in chosen),
        cold=tuple(s.coefficients[0] for s in chosen),
        hot=tuple(s.coefficients[1] for s in chosen),
        atoms=atoms,
        products=products,
        molecules=tuple(zip(*atoms, strict=True)),
        carbon=present.index("C") if "C" in present else -1,
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


def _step_share(
    changes: list[float], logs: list[float], log_total: float, total_change: float, heating: float
) -> float:
    """Share of Newton's step to take, so that no large species leaps [nasa-rp-1311 part I, 3.3]."""
    largest = max(5.0 * abs(total_change), 5.0 * abs(heating), 2.0)
    share = 1.0
    for change, own in zip(changes, logs, strict=True):
        if change > 0.0:
            depth = own - log_total
            if depth > _TRACE:
                largest = max(largest, change)
            elif change > total_change:
                share = min(share, abs((-depth - 9.2103404) / (change - total_change)))
    return min(share, 2.0 / largest, 0.4 / abs(heating) if heating else 1.0)


def _settled(
    amounts: Mapping[str, Amount],
    pressure: Pressure,
    enthalpy: Energy | None,
    start: Start,
    with_graphite: bool,
) -> Equilibrium:
    """Newton's iteration on the element potentials from one start.

    The heat content is fixed where `enthalpy` is given, else the temperature of `start`.
    """
    system = _system(start.present)
    atoms, products, molecules = system.atoms, system.products, system.molecules
    wanted = [amounts[e] for e in start.present]
    span = range(len(atoms))
    solids = 1 if with_graphite else 0
    at_total = len(atoms) + solids
    heated = enthalpy is not None
    temperature = start.temperature
    logs = list(start.log_moles)
    log_total = start.log_total
    graphite = start.graphite if with_graphite else 0.0
    log_pressure = log(pressure / REFERENCE_PRESSURE)
    stale = True
    for _ in range(_MOST_STEPS):
        if stale:
            for_capacity, for_heat, for_gibbs = basis_of_temperature(temperature)
            coefficients = system.cold if temperature < CHANGE_OVER else system.hot
            gibbs = [sumprod(for_gibbs, c) for c in coefficients]
            heat = [sumprod(for_heat, c) for c in coefficients]
            solid = species()[GRAPHITE].at(temperature)
            solid_gibbs = sumprod(for_gibbs, solid)
            stale = heated
        moles = [exp(x) for x in logs]
        total = exp(log_total)
        shift = log_pressure - log_total
        potential = [g + x + shift for g, x in zip(gibbs, logs, strict=True)]
        driven = [n * p for n, p in zip(moles, potential, strict=True)]
        in_gas = [sumprod(row, moles) for row in atoms]
        all_moles = sum(moles)
        # One row for each element, one for graphite, one for the total, one for the heat.
        rows = [[sumprod(pair, moles) for pair in line] for line in products]
        for k in span:
            rows[k].extend([rows[i][k] for i in span[k + 1 :]])
            if with_graphite:
                rows[k].append(1.0 if k == system.carbon else 0.0)
            rows[k].append(in_gas[k])
        missing = [b - g for b, g in zip(wanted, in_gas, strict=True)]
        if with_graphite:
            missing[system.carbon] -= graphite
            rows.append([1.0 if k == system.carbon else 0.0 for k in span] + [0.0, 0.0])
        rows.append([*in_gas, *([0.0] * solids), all_moles - total])
        if heated:
            hot = [n * h for n, h in zip(moles, heat, strict=True)]
            in_heat = [sumprod(row, hot) for row in atoms]
            all_heat = sum(hot)
            capacity = sumprod(moles, [sumprod(for_capacity, c) for c in coefficients])
            content = all_heat
            last = [*in_heat, *([0.0] * solids), all_heat]
            if with_graphite:
                solid_heat = sumprod(for_heat, solid)
                last[-2] = solid_heat
                capacity += graphite * sumprod(for_capacity, solid)
                content += graphite * solid_heat
            for row, extra in zip(rows, last, strict=True):
                row.append(extra)
            lack = enthalpy / (GAS_CONSTANT * temperature) - content
            rows.append([*last, capacity + sumprod(hot, heat), lack + sumprod(hot, potential)])
        for k in span:
            rows[k].append(missing[k] + sumprod(atoms[k], driven))
        if with_graphite:
            rows[len(atoms)].append(solid_gibbs)
        rows[at_total].append(total - all_moles + sum(driven))
        answer = _solution(rows)
        pulls = answer[: len(atoms)]
        total_change = answer[at_total]
        heating = answer[-1] if heated else 0.0
        changes = [
            sumprod(molecule, pulls) + total_change + h * heating - p
            for molecule, h, p in zip(molecules, heat, potential, strict=True)
        ]
        share = _step_share(changes, logs, log_total, total_change, heating)
        logs = [max(_FLOOR, x + share * c) for x, c in zip(logs, changes, strict=True)]
        log_total += share * total_change
        largest = max(
            max(n * abs(c) for n, c in zip(moles, changes, strict=True)) / total,
            abs(total_change),
            abs(heating),
        )
        if with_graphite:
            graphite += share * answer[len(atoms)]
            largest = max(largest, abs(answer[len(atoms)]) / total)
        if heated:
            temperature = min(HOTTEST, max(COLDEST, temperature * exp(share * heating)))
        if share == 1.0 and largest < _CLOSE_ENOUGH:
            break
    else:
        raise ValueError("The flame sum did not settle for this mixture.")
    return _described(system, start.present, temperature, logs, log_total, graphite, ...)
