"""What rod, flux and flame a metal takes, and in which sizes the rod is sold."""

from typing import Any

from calc.answer.hazards import brought, caution, gravest_first
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Caution, Table
from calc.formulas.setup.joined import inside
from calc.formulas.setup.rods import rod_count, rod_mass, rod_on_either_hand
from calc.formulas.setup.travel import backhand_from
from calc.values.figures import Figure
from calc.values.numbers import plain_number
from calc.values.quantities import Density, Length
from calc.values.units import from_si, to_si

ROD_STEP = 0.8
"""Share of the next size from rod to rod, beyond the ends of a series: the metric sizes step so; common practice."""


def filler(process: str, metal: str) -> Any:
    """Row of `fillers` for a process and a metal.

    Args:
        process: `welding` or `braze-welding`.
        metal: Id of the metal.

    Raises:
        StopIteration: No filler is kept for that work.

    Source:
        From memory.
    """
    return next(row for row in table("fillers") if row.process == process and row.metal == metal)


def _figure(row: Any, words: str, basis: str = "") -> Figure:
    told = " ".join(part for part in (basis, row.note) if part)
    return Figure(None, row.source, row.how_sure, words=words, basis=told)


def rod_class(process: str, metal: str, rules: str) -> Figure:
    """Class of rod in words.

    Args:
        process: `welding` or `braze-welding`.
        metal: Id of the metal.
        rules: Rule set, which decides whose names stand first.

    Source:
        From memory; strengths of steel rod [aws-a5-2-1992].
    """
    row = filler(process, metal)
    return _figure(row, row.rods if rules == "us" else row.european)


def flux(process: str, metal: str) -> Figure:
    """Flux in words.

    Args:
        process: `welding` or `braze-welding`.
        metal: Id of the metal.

    Source:
        From memory.
    """
    row = filler(process, metal)
    return Figure(None, row.source, row.how_sure, words=row.flux, basis="The label of the rod comes first.")


def flame(process: str, metal: str, rules: str) -> Figure:
    """Flame in the words of a rule set.

    Args:
        process: `welding` or `braze-welding`.
        metal: Id of the metal.
        rules: Rule set, which decides the spelling.

    Source:
        From memory.

    Examples:
        >>> flame("welding", "brass", "us").words, flame("welding", "brass", "uk").words
        ('oxidizing', 'oxidising')
    """
    row = filler(process, metal)
    words = row.flame if rules == "us" else row.flame.replace("oxidiz", "oxidis")
    basis = (
        "1916 prints neutral for brass; a little more oxygen holds the zinc in." if metal == "brass" else ""
    )
    return Figure(None, row.source, row.how_sure, words=words, basis=basis)


def density(process: str, metal: str) -> Figure:
    """Density of the rod metal, kg/m³: that of the metal nearest to it.

    Args:
        process: `welding` or `braze-welding`.
        metal: Id of the metal.

    Source:
        Textbook values, from memory.
    """
    row = filler(process, metal)
    kept = next(each for each in table("metals") if each.metal == row.density_of)
    return Figure(kept.density, kept.source, kept.how_sure, basis=f"Taken as {row.density_of}.")


def sizes_sold(process: str, metal: str, rules: str) -> list[Length]:
    """Diameters that the rod is sold in, thinnest first, m.

    Args:
        process: `welding` or `braze-welding`.
        metal: Id of the metal.
        rules: Rule set: `us` takes inch sizes, the others millimetre sizes.

    Source:
        From memory.
    """
    if metal == "cast-iron" and process == "welding":
        kind = "us" if rules == "us" else "metric"
        return [row.diameter for row in table("rods-cast-iron") if row.rules == kind]
    if rules == "us":
        return [row.diameter for row in table("rods-per-pound")]
    return [row.diameter for row in table("rods-metric")]


def rod_to_buy(process: str, metal: str, thickness: Length, technique: str, rules: str) -> Figure:
    """Diameter of rod to start from: the size sold that is nearest to the rule, m.

    Args:
        process: `welding` or `braze-welding`.
        metal: Id of the metal.
        thickness: Of the sheet or plate, m.
        technique: `leftward` or `rightward`.
        rules: Rule set, which decides the sizes sold.

    Source:
        Common practice; [manly-1916] for cast iron; sizes from memory.
    """
    metal_ruled = metal if process == "welding" else "any"
    rule = rod_on_either_hand(thickness, metal_ruled, technique, backhand_from())
    sizes = sizes_sold(process, metal, rules)
    assert rule.value is not None
    wanted = rule.value
    sold = min(sizes, key=lambda each: abs(each - wanted))
    basis = f"{rule.basis[0].upper()}{rule.basis[1:]}; the nearest size sold."
    if wanted > sizes[-1] * 1.25:
        basis += " The rule asks for more than the thickest sold: it will take several runs."
    if metal != "low-carbon-steel" and rule.source == "":
        basis += " The rule is that for steel."
    beside = [size for size in sizes if abs(sizes.index(size) - sizes.index(sold)) == 1]
    ends = [sold, *beside, *(end for end in (rule.low, rule.high) if end is not None)]
    basis += " The band reaches to the next sizes sold."
    figure = Figure(sold, rule.source, rule.how_sure, low=min(ends), high=max(ends), basis=basis)
    return inside(figure, 1 - ROD_STEP, "There the series of sizes ends; the band goes on by one step more.")


def sizes_table(process: str, metal: str, rod_length: Length, rules: str) -> Table:
    """What rods of each size weigh, and how many go to a pound or a kilogram.

    Args:
        process: `welding` or `braze-welding`.
        metal: Id of the metal.
        rod_length: Of one rod, m.
        rules: Rule set, for sizes and units.
    """
    weight = density(process, metal).value or 0.0
    us = rules == "us"
    packet = to_si(1.0, "lb" if us else "kg")
    rows = tuple(
        (_size(diameter, us), *_weighed(diameter, rod_length, weight, packet))
        for diameter in sizes_sold(process, metal, rules)
    )
    return Table(
        "Rods of this length by size",
        ("Diameter", "One weighs, g", f"Rods in a {'pound' if us else 'kilogram'}"),
        rows,
        "Computed from size and density, bare rod. Packets are printed in round numbers.",
    )


def _size(diameter: Length, us: bool) -> str:
    if not us:
        return f"{plain_number(from_si(diameter, 'mm'), 3)} mm"
    whole = round(diameter / 0.0254 * 32)
    over, under = whole, 32
    while over % 2 == 0 and under > 1:
        over, under = over // 2, under // 2
    return f"{over}/{under} in"


def _weighed(diameter: Length, rod_length: Length, weight: Density, packet: float) -> tuple[str, str]:
    one = rod_mass(diameter, rod_length, weight)
    return plain_number(from_si(one, "gram"), 3), plain_number(
        rod_count(packet, diameter, rod_length, weight), 3
    )


def classes_table() -> Table:
    """Strength of each class of steel rod, as printed."""
    rows = tuple(
        (
            row.rod,
            row.words
            if row.tensile is None
            else f"{from_si(row.tensile, 'ksi'):g} ksi ({from_si(row.printed_tensile, 'MPa'):g} MPa)",
            "" if row.elongation is None else f"{from_si(row.elongation, '%'):g} %",
            f"{source_words(row.source)}, {HOW_SURE[row.how_sure]}",
        )
        for row in table("rods-aws-a5-2")
    )
    return Table(
        "Steel rods by class", ("Class", "Tensile strength, at least", "Elongation", "Source"), rows,
        "Packets often carry a G behind the R: RG45, RG60. In Europe EN 12536 names O I to O VI, from memory.",
    )  # fmt: skip


def filler_cautions(process: str, metal: str) -> tuple[Caution, ...]:
    """Hazards of metal, rod and flux, the gravest first.

    Args:
        process: `welding` or `braze-welding`.
        metal: Id of the metal.
    """
    row = filler(process, metal)
    picked = {"process": process, "metal": row.fume_metal, "filler": row.filler_id, "flux": row.flux_id}
    return gravest_first((*brought(picked), caution("coating-fume")))
