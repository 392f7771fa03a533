"""Burnt gas at rest: its shares, its temperature, and where a search for the next one may start."""

from collections.abc import Mapping
from dataclasses import dataclass

from calc.values.quantities import Amount, Ratio, Temperature


@dataclass(frozen=True, slots=True, kw_only=True)
class Start:
    """Where a search begins: the solution of a neighbour, or the same guess for all."""

    present: tuple[str, ...]
    temperature: Temperature
    log_moles: tuple[float, ...]
    log_total: float
    graphite: Amount
    with_graphite: bool


def start_between(one: Start, other: Start, share: Ratio) -> Start:
    """A start part of the way (`share`, 0 to 1) from one solution to another; the first where they are unlike."""
    if (one.present, one.with_graphite) != (other.present, other.with_graphite):
        return one

    def part(here: float, there: float) -> float:
        return here + share * (there - here)

    logs = tuple(map(part, one.log_moles, other.log_moles))
    heat, total = part(one.temperature, other.temperature), part(one.log_total, other.log_total)
    return Start(
        present=one.present,
        temperature=heat,
        log_moles=logs,
        log_total=total,
        graphite=part(one.graphite, other.graphite),
        with_graphite=one.with_graphite,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Equilibrium:
    """Burnt gas at rest with itself, with graphite where some has formed.

    Attributes:
        temperature: K.
        shares: Moles of each species in one mole of gas and graphite together.
        moles: Amount of gas and graphite together, mol.
        graphite: Amount of graphite, mol.
        carbon_activity: Carbon in the gas against graphite; above 1 soot can form.
        end: Where the search for a neighbour may start.
    """

    temperature: Temperature
    shares: Mapping[str, Ratio]
    moles: Amount
    graphite: Amount
    carbon_activity: Ratio
    end: Start
