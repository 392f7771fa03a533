"""Filler rods: diameter by thickness, and how much rod a seam takes."""

from dataclasses import replace
from math import pi

from calc.data.tables import table
from calc.formulas.setup.printed import require_thickness, spread
from calc.values.figures import Figure
from calc.values.quantities import Area, Density, Length, Mass, Ratio


def rod_diameter_by_share(thickness: Length, share: Ratio, added: Length) -> Length:
    """Rod diameter as a share of the thickness and a fixed addition.

    Args:
        thickness: Of the sheet or plate, m.
        share: Part of the thickness; a half in the usual rules.
        added: Fixed addition, m; a millimetre in the leftward rule.

    Returns:
        m.

    Valid for:
        The rules of `rod-rules`, each for its own technique and metal.

    Source:
        Common practice; [manly-1916]

    Examples:
        >>> rod_diameter_by_share(0.003, 0.5, 0.001)
        0.0025
    """
    return share * thickness + added


def rod_mass(diameter: Length, rod_length: Length, density: Density) -> Mass:
    """Mass of one bare rod.

    Args:
        diameter: m.
        rod_length: m.
        density: Of the rod metal, kg/m³.

    Returns:
        kg.

    Valid for:
        Round rod without flux coating.

    Source:
        [definition]

    Examples:
        >>> round(rod_mass(0.0032, 1.0, 7850.0), 4)
        0.0631
    """
    return density * pi * diameter**2 / 4 * rod_length


def rod_count(mass: Mass, diameter: Length, rod_length: Length, density: Density) -> Ratio:
    """Rods in a packet of a mass.

    Args:
        mass: Of the packet's rods, kg.
        diameter: m.
        rod_length: Of one rod, m.
        density: Of the rod metal, kg/m³.

    Returns:
        Rods, as a broken number.

    Valid for:
        Round rod without flux coating.

    Source:
        [definition]

    Examples:
        >>> round(rod_count(0.45359237, 0.003175, 0.9144, 7850.0), 1)
        8.0
    """
    return mass / (density * pi * diameter**2 / 4 * rod_length)


def rod_length_for_seam(area: Area, seam: Length, diameter: Length, loss: Ratio) -> Length:
    """Length of rod that fills a seam.

    Args:
        area: Cross-section of the weld metal to add, m².
        seam: Length of the seam, m.
        diameter: Of the rod, m.
        loss: Part of the rod that is thrown away or burnt, 0 to below 1.

    Returns:
        m of rod, stubs and losses included.

    Valid for:
        Round rod; the area is what the rod must bring, not the fused sheet.

    Source:
        [definition]

    Examples:
        >>> round(rod_length_for_seam(4.5e-6, 1.0, 0.0024, 0.0), 3)
        0.995
    """
    return area * seam / (pi * diameter**2 / 4 * (1 - loss))


def weld_metal_mass(area: Area, seam: Length, density: Density) -> Mass:
    """Mass of the weld metal in a seam.

    Args:
        area: Cross-section of the weld metal, m².
        seam: Length of the seam, m.
        density: Of the rod metal, kg/m³.

    Returns:
        kg, without what is lost.

    Valid for:
        One cross-section along the whole seam.

    Source:
        [definition]

    Examples:
        >>> round(weld_metal_mass(18e-6, 1.0, 7850.0), 4)
        0.1413
    """
    return density * area * seam


def rod_diameter(thickness: Length, metal: str, technique: str) -> Figure:
    """Rod diameter to start from.

    Args:
        thickness: m.
        metal: `low-carbon-steel`, `cast-iron` or another; metals without a rule
            of their own follow the rule of the technique.
        technique: `leftward` (forehand) or `rightward` (backhand).

    Returns:
        m, with what the other rules and, for steel, the handbook row nearest in
        thickness print as its band.

    Raises:
        ValueError: No rule is kept for the technique.

    Valid for:
        Fusion welding. Take the nearest rod sold.

    Source:
        Common practice; cast iron [manly-1916]; band [manly-1916], [carvill-1993].

    Examples:
        >>> round(rod_diameter(0.003, "low-carbon-steel", "leftward").value * 1000, 2)
        2.5
    """
    require_thickness(thickness)
    if technique not in {row.technique for row in table("rod-rules")} - {"any"}:
        raise ValueError(f"no rod rule is kept for {technique}")
    fitting = [
        row
        for row in table("rod-rules")
        if row.technique in (technique, "any") and row.metal in (metal, "any")
    ]
    followed = max(
        (row for row in fitting if row.standing == "followed"), key=lambda row: row.metal == metal
    )
    figures = []
    for row in (followed, *(row for row in fitting if row.standing == "also")):
        if row.standing == "also" and followed.metal == metal:
            continue
        diameter = rod_diameter_by_share(thickness, row.share, row.added)
        widest = diameter if row.widest_cap is None else min(diameter, row.widest_cap)
        diameter = diameter if row.cap is None else min(diameter, row.cap)
        figures.append(
            Figure(
                diameter,
                row.source,
                row.how_sure,
                low=diameter,
                high=widest,
                basis="rule of thumb by thickness; the band holds what other sources print",
            )
        )
    if metal == "low-carbon-steel":
        figures.extend(_rods_of_handbook(thickness))
    return spread(figures[0], figures[1:])


def rod_on_either_hand(thickness: Length, metal: str, technique: str, change: Length) -> Figure:
    """Rod diameter to start from, the same rule on both sides of the change of hand.

    Forehand the forehand rule. Backhand the rod of the change is kept until the
    backhand rule asks for a thicker one, so that thicker steel never takes a thinner rod.

    Args:
        thickness: m.
        metal: As of `rod_diameter`.
        technique: `leftward` or `rightward`.
        change: Thickness from which welding is backhand, m.

    Returns:
        m, with its band as of `rod_diameter`.

    Source:
        Common practice; [carvill-1993] prints 3 to 4 mm on both sides of the change.

    Examples:
        >>> [round(rod_on_either_hand(t, "low-carbon-steel", "rightward", 0.0048).value * 1000, 2)
        ...  for t in (0.0048, 0.006, 0.008)]
        [3.4, 3.4, 4.0]
    """
    own = rod_diameter(thickness, metal, technique)
    if technique == "leftward":
        return own
    kept = rod_diameter(min(thickness, change), metal, "leftward")
    assert own.value is not None
    assert kept.value is not None
    if kept.value <= own.value:
        return own
    followed = replace(kept, basis="the forehand rod is kept until half of the thickness is more", low=None, high=None)
    return spread(followed, [own])


def _rods_of_handbook(thickness: Length) -> list[Figure]:
    rows = table("welding-carvill-1993")
    if not rows[0].thickness <= thickness <= rows[-1].thickness:
        return []
    row = min(rows, key=lambda each: abs(each.thickness - thickness))
    if row.thinnest_rod is None:
        return []
    return [Figure(None, row.source, row.how_sure, low=row.thinnest_rod, high=row.thickest_rod)]


def nearest_rod(diameter: Length, rules: str = "us") -> Length:
    """Rod sold in inch sizes that is nearest to a diameter.

    Args:
        diameter: Wanted, m.
        rules: Rule set: `us` takes inch sizes, the others millimetre sizes.

    Returns:
        m.

    Raises:
        ValueError: The diameter is not above zero, or more than a quarter
            beyond the sizes kept here.

    Valid for:
        1/16 in to 1/4 in, or 1.6 mm to 6.3 mm.

    Source:
        Sizes from memory.

    Examples:
        >>> round(nearest_rod(0.0025) / 0.0254 * 32)
        3
    """
    sizes = [row.diameter for row in table("rods-per-pound" if rules == "us" else "rods-metric")]
    if not sizes[0] * 0.75 <= diameter <= sizes[-1] * 1.25:
        raise ValueError("rods are kept here from 1/16 in to 1/4 in")
    return float(min(sizes, key=lambda each: abs(each - diameter)))


SOLVERS = (rod_diameter, rod_on_either_hand, nearest_rod)
