"""Chemical equilibrium of burnt gas: which species there are, how many, and how hot.

The method is Newton's on the element potentials [nasa-rp-1311], at a fixed pressure
and either a fixed heat content (a flame that loses nothing) or a fixed temperature
(gas that has cooled to the metal it meets). Graphite is added where the gas alone
would hold more carbon than it can.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from math import exp, log, sumprod

from calc.formulas.heat.burnt_state import Equilibrium, Start
from calc.formulas.heat.species import (
    CHANGE_OVER,
    ELEMENTS,
    GRAPHITE,
    Coefficients,
    basis_of_temperature,
    species,
)
from calc.values.quantities import GAS_CONSTANT, Amount, Energy, Pressure, Ratio, Temperature

REFERENCE_PRESSURE: Pressure = 1e5
"""Pressure that the thermodynamic coefficients are counted at [nasa-tp-2002-211556]."""
COLDEST: Temperature = 200.0
HOTTEST: Temperature = 6000.0
_TRACE = -18.420681  # logarithm of a mole share of 1e-8; below it a species counts as a trace
_TRACE_LEAVES = -9.2103404  # a trace may rise to a share of 1e-4 in one step
_FLOOR = -250.0
_CLOSE_ENOUGH = 1e-6  # Newton squares the error, so the last step leaves about 1e-12
_MOST_STEPS = 300


@dataclass(frozen=True, slots=True, kw_only=True)
class _System:
    """What stays the same from step to step for one set of elements."""

    names: tuple[str, ...]
    cold: tuple[Coefficients, ...]
    hot: tuple[Coefficients, ...]
    atoms: tuple[tuple[float, ...], ...]
    molecules: tuple[tuple[float, ...], ...]
    products: tuple[tuple[tuple[float, ...], ...], ...]
    is_carbon: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Terms:
    """Heat capacity over R, enthalpy and Gibbs energy over RT, at one temperature."""

    capacity: list[float]
    heat: list[float]
    gibbs: list[float]
    solid_capacity: float
    solid_heat: float
    solid_gibbs: float


@cache
def _system(present: tuple[str, ...]) -> _System:
    chosen = [s for s in species().values() if s.role == "product" and s.elements.keys() <= set(present)]
    atoms = tuple(tuple(s.elements.get(e, 0.0) for s in chosen) for e in present)
    return _System(
        names=tuple(s.name for s in chosen),
        cold=tuple(s.coefficients[0] for s in chosen),
        hot=tuple(s.coefficients[1] for s in chosen),
        atoms=atoms,
        molecules=tuple(zip(*atoms, strict=True)),
        products=tuple(
            tuple(tuple(a * b for a, b in zip(one, other, strict=True)) for other in atoms[: i + 1])
            for i, one in enumerate(atoms)
        ),
        is_carbon=tuple(1.0 if e == "C" else 0.0 for e in present),
    )


def _answer(rows: list[list[float]]) -> list[float]:
    """Answer of a small set of linear equations, the right-hand side last in each row."""
    size = len(rows)
    for k in range(size):
        best = max(range(k, size), key=lambda i: abs(rows[i][k]))
        rows[k], rows[best] = rows[best], rows[k]
        pivot = rows[k]
        head = pivot[k]
        if head == 0.0:
            raise ValueError("The flame sum has no single answer for this mixture.")
        for i in range(k + 1, size):
            row = rows[i]
            factor = row[k] / head
            if factor:
                rows[i] = [a - factor * b for a, b in zip(row, pivot, strict=True)]
    answer = [0.0] * size
    for k in range(size - 1, -1, -1):
        row = rows[k]
        answer[k] = (row[size] - sumprod(row[k + 1 : size], answer[k + 1 :])) / row[k]
    return answer


def _share_of_step(
    changes: list[float], logs: list[float], log_total: float, total_change: float, heating: float
) -> float:
    """Share of Newton's step to take, so that no species leaps."""
    largest = max(5.0 * abs(total_change), 5.0 * abs(heating), 2.0)
    share = 1.0
    for change, own in zip(changes, logs, strict=True):
        if change > 0.0:
            depth = own - log_total
            if depth > _TRACE:
                largest = max(largest, change)
            elif change > total_change:
                share = min(share, (_TRACE_LEAVES - depth) / (change - total_change))
    return min(share, 2.0 / largest)


def _terms(system: _System, temperature: Temperature) -> _Terms:
    """Heat and Gibbs energy of every species at one temperature."""
    for_capacity, for_heat, for_gibbs = basis_of_temperature(temperature)
    gases = system.cold if temperature < CHANGE_OVER else system.hot
    solid = species()[GRAPHITE].at(temperature)
    return _Terms(
        capacity=[sumprod(for_capacity, c) for c in gases],
        heat=[sumprod(for_heat, c) for c in gases],
        gibbs=[sumprod(for_gibbs, c) for c in gases],
        solid_capacity=sumprod(for_capacity, solid),
        solid_heat=sumprod(for_heat, solid),
        solid_gibbs=sumprod(for_gibbs, solid),
    )


def _equations(
    *,
    system: _System,
    amounts: tuple[Amount, ...],
    moles: list[float],
    total: float,
    potential: list[float],
    terms: _Terms,
    graphite: Amount | None,
    content: float | None,
) -> list[list[float]]:
    """Newton's equations, one in each row, the right-hand side last.

    The unknowns: the pull of each element, the change of graphite where there is any,
    of the logarithm of the total, and of the logarithm of temperature where the heat
    content is fixed. The square is symmetric.
    """
    atoms, is_carbon = system.atoms, system.is_carbon
    driven = [n * p for n, p in zip(moles, potential, strict=True)]
    in_gas = [sumprod(row, moles) for row in atoms]
    all_moles = sum(moles)
    rows = [[sumprod(pair, moles) for pair in line] for line in system.products]
    for k, row in enumerate(rows):
        row.extend([below[k] for below in rows[k + 1 :]])
    right = [b - g + sumprod(row, driven) for b, g, row in zip(amounts, in_gas, atoms, strict=True)]
    total_row = [*in_gas]
    if graphite is not None:
        for row, one in zip(rows, is_carbon, strict=True):
            row.append(one)
        right = [r - graphite * one for r, one in zip(right, is_carbon, strict=True)]
        rows.append([*is_carbon, 0.0])
        right.append(terms.solid_gibbs)
        total_row.append(0.0)
    for row, held in zip(rows, total_row, strict=True):
        row.append(held)
    rows.append([*total_row, all_moles - total])
    right.append(total - all_moles + sum(driven))
    if content is not None:
        hot = [n * h for n, h in zip(moles, terms.heat, strict=True)]
        heat_row = [sumprod(row, hot) for row in atoms]
        capacity = sumprod(moles, terms.capacity) + sumprod(hot, terms.heat)
        lack = content - sum(hot)
        if graphite is not None:
            heat_row.append(terms.solid_heat)
            capacity += graphite * terms.solid_capacity
            lack -= graphite * terms.solid_heat
        heat_row.append(sum(hot))
        for row, held in zip(rows, heat_row, strict=True):
            row.append(held)
        rows.append([*heat_row, capacity])
        right.append(lack + sumprod(hot, potential))
    for row, value in zip(rows, right, strict=True):
        row.append(value)
    return rows


def _settled(
    amounts: tuple[Amount, ...],
    pressure: Pressure,
    enthalpy: Energy | None,
    start: Start,
    with_graphite: bool,
) -> Equilibrium:
    """Newton's iteration from one start.

    The heat content is fixed where `enthalpy` is given, else the temperature of `start`.
    """
    system = _system(start.present)
    elements = len(amounts)
    temperature, log_total = start.temperature, start.log_total
    logs = list(start.log_moles)
    graphite = start.graphite if with_graphite else None
    log_pressure = log(pressure / REFERENCE_PRESSURE)
    terms = _terms(system, temperature)
    for _ in range(_MOST_STEPS):
        moles = [exp(x) for x in logs]
        total = exp(log_total)
        shift = log_pressure - log_total
        potential = [g + x + shift for g, x in zip(terms.gibbs, logs, strict=True)]
        content = None if enthalpy is None else enthalpy / (GAS_CONSTANT * temperature)
        answer = _answer(
            _equations(
                system=system,
                amounts=amounts,
                moles=moles,
                total=total,
                potential=potential,
                terms=terms,
                graphite=graphite,
                content=content,
            )
        )
        pulls = answer[:elements]
        heating = 0.0 if enthalpy is None else answer[-1]
        total_change = answer[elements] if graphite is None else answer[elements + 1]
        changes = [
            sumprod(molecule, pulls) + total_change + h * heating - p
            for molecule, h, p in zip(system.molecules, terms.heat, potential, strict=True)
        ]
        share = _share_of_step(changes, logs, log_total, total_change, heating)
        logs = [max(_FLOOR, x + share * c) for x, c in zip(logs, changes, strict=True)]
        log_total += share * total_change
        largest = max([n * abs(c) for n, c in zip(moles, changes, strict=True)]) / total
        if graphite is not None:
            graphite += share * answer[elements]
            largest = max(largest, abs(answer[elements]) / total)
        if heating:
            temperature = min(HOTTEST, max(COLDEST, temperature * exp(share * heating)))
            terms = _terms(system, temperature)
        if share == 1.0 and max(largest, abs(total_change), abs(heating)) < _CLOSE_ENOUGH:
            break
    else:
        raise ValueError("The flame sum did not settle for this mixture.")
    activity = 0.0
    if "C" in start.present:
        activity = exp(sumprod(pulls, system.is_carbon) - terms.solid_gibbs)
    return _described(
        present=start.present,
        temperature=temperature,
        logs=logs,
        log_total=log_total,
        graphite=graphite,
        activity=activity,
    )


def _described(
    *,
    present: tuple[str, ...],
    temperature: Temperature,
    logs: list[float],
    log_total: float,
    graphite: Amount | None,
    activity: Ratio,
) -> Equilibrium:
    solid = graphite or 0.0
    moles = [exp(x) for x in logs]
    everything = sum(moles) + solid
    names = _system(present).names
    shares = {name: n / everything for name, n in zip(names, moles, strict=True)}
    if graphite is not None:
        shares[GRAPHITE] = solid / everything
    end = Start(
        present=present,
        temperature=temperature,
        log_moles=tuple(logs),
        log_total=log_total,
        graphite=solid,
        with_graphite=graphite is not None,
    )
    return Equilibrium(
        temperature=temperature,
        shares=shares,
        moles=everything,
        graphite=solid,
        carbon_activity=activity,
        end=end,
    )


def _found(
    *,
    elements: Mapping[str, Amount],
    pressure: Pressure,
    enthalpy: Energy | None,
    temperature: Temperature,
    start: Start | None,
    soot: bool,
) -> Equilibrium:
    present = tuple(e for e in ELEMENTS if elements.get(e, 0.0) > 0.0)
    if not present:
        raise ValueError("A mixture needs at least one element.")
    amounts = tuple(elements[e] for e in present)
    if start is None or start.present != present:
        total = sum(amounts) / 3.0
        names = _system(present).names
        guess = log(total / len(names))
        start = Start(
            present=present,
            temperature=temperature,
            log_moles=(guess,) * len(names),
            log_total=log(total),
            graphite=0.0,
            with_graphite=False,
        )
    elif enthalpy is None:
        start = replace(start, temperature=temperature)
    if soot and start.with_graphite:
        with_soot = _settled(amounts, pressure, enthalpy, start, with_graphite=True)
        if with_soot.graphite > 0.0:
            return with_soot
    gas = _settled(amounts, pressure, enthalpy, start, with_graphite=False)
    if soot and gas.carbon_activity > 1.0:
        return _settled(amounts, pressure, enthalpy, gas.end, with_graphite=True)
    return gas


def equilibrium_at_enthalpy(
    elements: Mapping[str, Amount],
    enthalpy: Energy,
    pressure: Pressure,
    start: Start | None = None,
) -> Equilibrium:
    """State that a mixture reaches when it burns and loses no heat.

    A solver: the equations have no closed form.

    Args:
        elements: Amount of each element, mol.
        enthalpy: Heat content of the unburnt mixture, counted from the elements, J.
        pressure: Absolute pressure, Pa.
        start: End of a neighbour's search; saves about half the time.

    Returns:
        The equilibrium, with graphite where that is stable.

    Raises:
        ValueError: No element is present, or the search did not settle.

    Valid for:
        Products between 200 and 6000 K; water stays vapour.

    Source:
        [nasa-rp-1311] part I, with the coefficients of [nasa-tp-2002-211556].
    """
    return _found(
        elements=elements, pressure=pressure, enthalpy=enthalpy, temperature=3000.0, start=start, soot=True
    )


def equilibrium_at_temperature(
    elements: Mapping[str, Amount],
    temperature: Temperature,
    pressure: Pressure,
    start: Start | None = None,
    soot: bool = True,
) -> Equilibrium:
    """State that burnt gas reaches when it is held at a temperature.

    A solver: the equations have no closed form.

    Args:
        elements: Amount of each element, mol.
        temperature: K.
        pressure: Absolute pressure, Pa.
        start: End of a neighbour's search.
        soot: Whether graphite may form. Without it the carbon activity tells how
            much more carbon the gas carries than it could keep.

    Returns:
        The equilibrium.

    Raises:
        ValueError: No element is present, or the search did not settle.

    Valid for:
        200-6000 K; water stays vapour.

    Source:
        [nasa-rp-1311] part I, with the coefficients of [nasa-tp-2002-211556].
    """
    return _found(
        elements=elements, pressure=pressure, enthalpy=None, temperature=temperature, start=start, soot=soot
    )


SOLVERS = (equilibrium_at_enthalpy, equilibrium_at_temperature)
