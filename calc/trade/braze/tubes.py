"""Copper tube and its cups, and the filler, flux and services that go with them."""

from dataclasses import dataclass
from typing import Any

from calc.ask.errors import InputError
from calc.data.tables import table
from calc.values.figures import Figure
from calc.values.quantities import Length, Temperature

BRAZING_FILLERS = ("BCuP-2", "BCuP-3", "BCuP-4", "BCuP-5", "BAg-5", "BAg-7")
"""Fillers that copper tube is brazed with, by their AWS class; none with cadmium."""
INCH, METRIC = "inch", "metric"
WALLS_INCH = {"k": "K, the thickest", "l": "L", "m": "M, the thinnest"}
WALLS_METRIC = {"a": "A, the thickest", "b": "B", "c": "C, the thinnest"}
WIDE_RANGE = 28.0
"""Kelvin between solidus and liquidus from which a solder counts as pasty; common practice."""


def sizes(system: str) -> dict[str, str]:
    """Sizes of a system by id, in the words of a choice: the name, then what it measures outside.

    Args:
        system: `inch` or `metric`.

    Examples:
        >>> sizes("inch")["1/2 in"], sizes("metric")["15 mm"]
        ('1/2 in, 0.625 in', '15 mm')
    """
    if system == METRIC:
        return {row.size: row.size for row in table("copper-tubes-astm-b88m")}
    return {
        row.size: f"{row.size}, {row.outside / 0.0254:.3f} in" for row in table("copper-tubes-astm-b88")
    }


def _row(name: str, size: str) -> Any:
    return next((row for row in table(name) if row.size == size), None)


@dataclass(frozen=True, slots=True)
class Tube:
    """A tube and the cup it goes into: outside diameter, wall and depth with their sources."""

    size: str
    outside: Figure
    wall: Figure
    cup: Figure


def _wall(system: str, size: str, wall: str) -> Figure:
    if system == INCH and wall == "m":
        row = _row("copper-tubes-type-m", size)
        if row is None:
            raise InputError("wall_inch", "Wall", f"type M is not made in {size}; pick K or L.")
        return Figure(row.wall, row.source, row.how_sure, basis="Type M as remembered; measure yours.")
    row = _row("copper-tubes-astm-b88" if system == INCH else "copper-tubes-astm-b88m", size)
    return Figure(
        getattr(row, f"wall_{wall}"), row.source, row.how_sure, basis=f"Type {wall.upper()}, as made; yours may differ."
    )  # fmt: skip


def tube(system: str, size: str, wall: str, measured: Length | None) -> Tube:
    """A tube by name, with the cup of a fitting for it.

    Args:
        system: `inch` or `metric`.
        size: Name of the size, such as `1/2 in` or `15 mm`.
        wall: Type of the wall, `k`, `l`, `m`, or `a`, `b`, `c`.
        measured: Depth of the reader's own cup, m; None takes the table's.

    Raises:
        InputError: That wall is not made in that size.

    Source:
        [astm-b88], [cda-copper-tube], [en-1254-1]
    """
    row = _row("copper-tubes-astm-b88" if system == INCH else "copper-tubes-astm-b88m", size)
    name = (
        "an eighth of an inch over its name" if system == INCH else "it is called by its outside diameter"
    )
    outside = Figure(row.outside, row.source, row.how_sure, basis=f"{name[:1].upper()}{name[1:]}.")
    cup = _row("copper-cups-cda" if system == INCH else "copper-cups-en1254", size)
    depth = Figure(
        cup.depth, cup.source, cup.how_sure,
        basis="Cup of a solder fitting. Fittings with short cups for brazing are shallower: measure yours.",
    )  # fmt: skip
    if measured is not None:
        depth = Figure(measured, "definition", "computed", basis="As you measured it.")
    return Tube(size, outside, _wall(system, size, wall), depth)


@dataclass(frozen=True, slots=True, kw_only=True)
class Filler:
    """A solder or a brazing filler.

    Attributes:
        id: As in its table.
        said: Name and composition for a reader.
        lead: Part of it that is lead.
        family: `solder`, `BCuP` or `BAg`.
        melting: Liquidus, its band from the solidus, K.
        works_from: Where it flows, K.
        works_to: Top of its own range, K; None where none is printed.
        density: kg/m³.
    """

    id: str
    said: str
    lead: float
    family: str
    melting: Figure
    works_from: Temperature
    works_to: Temperature | None
    density: float


def _density(method: str) -> float:
    return float(next(row.density for row in table("tube-filler-densities") if row.method == method))


def solder(solder_id: str, rules: str) -> Filler:
    """A soft solder under a rule set.

    Args:
        solder_id: As in the table, such as `sn95sb5`.
        rules: Rule set; the United States reads ASTM B32, the others ISO 9453.

    Examples:
        >>> solder("sn50pb50", "us").lead
        0.5
    """
    standard = "astm" if rules == "us" else "iso"
    row = next(row for row in table("solders") if row.id == solder_id and row.standard in (standard, "any"))
    kind = "lead solder" if row.lead else "lead-free solder"
    grade = f" (ASTM B32 grade {row.grade})" if rules == "us" and row.grade else ""
    basis = "It begins to melt at the lower end of the band."
    melts_over = row.solidus < row.liquidus
    pasty = row.liquidus - row.solidus >= WIDE_RANGE
    if pasty:
        basis += " It flows half-molten: feed at the first sign, do not chase the upper end."
    return Filler(
        id=row.id, said=f"{kind} {row.name}{grade}: {row.words}", lead=row.lead, family="solder",
        melting=Figure(
            row.liquidus, row.source, row.how_sure, low=row.solidus if melts_over else None,
            high=row.liquidus if melts_over else None, basis=basis if melts_over else "It melts at one temperature.",
        ),
        works_from=row.solidus if pasty else row.liquidus, works_to=None, density=row.density or _density("soldering"),
    )  # fmt: skip


def brazing_filler(filler_id: str, rules: str) -> Filler:
    """A brazing filler for copper tube, none with lead or cadmium.

    Args:
        filler_id: As in the table, such as `bcup-5`.
        rules: Rule set; outside the United States the nearest ISO name stands beside.

    Examples:
        >>> brazing_filler("bcup-5", "us").family
        'BCuP'
    """
    name = next(each for each in BRAZING_FILLERS if each.lower() == filler_id)
    row = next(r for r in table("brazing-fillers-aws") if r.filler == name and r.standing == "followed")
    near = next(each for each in table("brazing-fillers-iso-17672") if each.filler == name)
    also = "" if rules == "us" else f" (nearest in ISO 17672, from memory: {near.iso})"
    return Filler(
        id=filler_id, said=f"brazing filler {name}{also}: {row.composition}", lead=0.0, family=name.partition("-")[0],
        melting=Figure(
            row.liquidus, row.source, row.how_sure, low=row.solidus, high=row.liquidus,
            basis="It begins to melt at the lower end of the band, and is worked before all of it is molten.",
        ),
        works_from=row.braze_low, works_to=row.braze_high, density=_density("brazing"),
    )  # fmt: skip


def brazing_fillers() -> dict[str, str]:
    """Brazing fillers for tube by id, in the words of a choice."""
    rows = {row.filler: row for row in table("brazing-fillers-aws") if row.standing == "followed"}
    return {name.lower(): f"{name}: {rows[name].composition}" for name in BRAZING_FILLERS}


def picked_filler(method: str, own: str | None, rules: str) -> Filler:
    """The filler that the reader has, else the one this site takes.

    Never one with lead, unless the reader names it.

    Args:
        method: `soldering` or `brazing`.
        own: Id of the reader's filler, or None.
        rules: Rule set, which decides the usual solder.
    """
    if method == "soldering":
        return solder(own or ("sn95sb5" if rules == "us" else "sn99.3cu0.7"), rules)
    return brazing_filler(own or "bcup-5", rules)


def flux_row(method: str, family: str, fitting: str, rules: str) -> Any:
    """Row of the flux that goes with a filler and a fitting."""
    rule_set = "us" if rules == "us" else "metric"
    return next(
        row
        for row in table("tube-fluxes")
        if row.method == method
        and row.filler == family
        and row.fitting in (fitting, "any")
        and row.rules in (rule_set, "any")
    )


def services() -> dict[str, str]:
    """What may run in a tube, by id, in the words of a choice."""
    return {
        row.id: row.words if row.taken == "yes" else f"{row.words} (not here)"
        for row in table("tube-services")
    }


def require_service(service: str, label: str) -> None:
    """Refuse what is licensed work or unknown ground, with the reason and whom to ask.

    Args:
        service: Id of what runs in the tube.
        label: Label of the field, which the message begins with.

    Raises:
        InputError: It is not done here.
    """
    row = next(row for row in table("tube-services") if row.id == service)
    if row.taken == "yes":
        return
    raise InputError(
        "service",
        label,
        f"{row.words.lower()} is not worked out here, because {row.reason}; ask {row.ask}, and pick "
        "drinking water or heating water for those lines only.",
    )


def lead_said(service: str, fitting: str, lead: float, rules: str) -> Figure:
    """What the law and sense say of lead in this joint, in words."""
    if lead:
        return Figure(
            None, "cpsc-5056", "read",
            words=f"this solder is {lead * 100:.0f} % lead: for heating water only, never near a drinking-water line",
            basis="Solder with more than 0.2 % lead carries a label that forbids drinking water.",
        )  # fmt: skip
    rows = {row.topic: row for row in table("lead-limits") if row.rules == rules}
    if service == "heating-water":
        return Figure(
            None, "", "practice", words="heating water: no drinking-water rule, lead-free all the same",
            basis="The spool then does no harm on the next job.",
        )  # fmt: skip
    said = rows["filler"].words
    if fitting == "brass" and "fittings" in rows:
        said += f"; {rows['fittings'].words}"
    row = rows["filler"]
    return Figure(
        None, row.source, row.how_sure, words=said,
        basis="Read it on the spool and on the flux: lead cannot be seen in the wire.",
    )  # fmt: skip
