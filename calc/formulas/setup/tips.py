"""Tip orifices for a thickness, told by diameter and number drill.

For welding we follow the rows of `welding_rows`; the brazing table and the printed
flows, turned into holes by the jet speeds in print, widen the band. What the maker
prints for a tip stands before all of them.
"""

from dataclasses import dataclass, replace
from math import pi

from calc.figures import Figure
from calc.formulas.setup.drills import nearest_drill
from calc.formulas.setup.flows import flows_in_print
from calc.formulas.setup.joined import figure_of_place, place_at
from calc.formulas.setup.printed import HAIR, require_thickness, spread
from calc.formulas.setup.welding_rows import welding_holes, welding_reach
from calc.quantities import Gauge, Length, Ratio, Speed, VolumeFlow
from calc.tables import table


@dataclass(frozen=True, slots=True)
class BrazingTip:
    """A row of the brazing table.

    Attributes:
        drill: Number drill of the orifice.
        printed: Thickness that the row is printed for.
        orifice: Diameter, m, with the neighbouring rows as its band.
        oxygen_gauge: Regulator gauge, Pa.
        acetylene_gauge: Regulator gauge, Pa.
        source: Publication and place, as in a table.
        how_sure: Grade of the row.
    """

    drill: str
    printed: str
    orifice: Figure
    oxygen_gauge: Gauge
    acetylene_gauge: Gauge
    source: str
    how_sure: str


def orifice_for_flow(flow: VolumeFlow, exit_speed: Speed) -> Length:
    """Diameter of the round hole that passes a flow at a speed.

    Args:
        flow: Mixed gas through the hole, m³/s.
        exit_speed: Speed of the jet, m/s.

    Returns:
        m.

    Valid for:
        One round hole; the speed is a mean over it.

    Source:
        [definition]

    Examples:
        >>> round(orifice_for_flow(300e-3 / 3600, 106.1) * 1000, 2)
        1.0
    """
    return (4 * flow / (pi * exit_speed)) ** 0.5  # type: ignore[no-any-return] # a root of a float


def orifices_in_print(thickness: Length) -> tuple[Figure, ...]:
    """Tip orifice for steel of a thickness by the sources that we do not follow.

    Args:
        thickness: m.

    Returns:
        m. The brazing table gives a row; the flow series give a range, from
        their flow at the jet speeds in print.

    Valid for:
        0.8-25 mm; outside fewer sources are left.

    Source:
        [navy14119], [davies], [din-8543], speeds [leeds-1910]
    """
    found = []
    try:
        brazing = brazing_tip(thickness)
    except ValueError:
        pass
    else:
        found.append(brazing.orifice)
    speeds = table("exit-speeds")
    slow, fast = min(row.slow for row in speeds), max(row.fast for row in speeds)
    oxygen = next(r.low for r in table("torch-oxygen-ratios") if r.how_sure == "practice")
    for flow in flows_in_print(thickness):
        assert flow.value is not None
        mixed = flow.value * (1 + oxygen)
        found.append(
            Figure(
                None,
                flow.source,
                flow.how_sure,
                low=orifice_for_flow(mixed, fast),
                high=orifice_for_flow(mixed, slow),
                basis=f"{flow.basis}, at the jet speeds in print",
            )
        )
    return tuple(found)


def welding_orifice(thickness: Length, sizes_larger: Ratio = 0.0) -> Figure:
    """Orifice of the welding tip to start from for steel of a thickness.

    Args:
        thickness: m.
        sizes_larger: Printed sizes by which the tip is to be larger.

    Returns:
        m; at the middle of a printed row the hole of that row, between two rows
        evenly from one to the other. The rows on either side and the other
        sources are its band.

    Raises:
        ValueError: The thickness is outside the tables.

    Valid for:
        0.38-25 mm of steel, oxygen and acetylene, equal-pressure torch.

    Source:
        [faa-ac43-13-1b] to 9.5 mm, [davies] beyond; band also [navy14119], [din-8543].

    Examples:
        >>> round(welding_orifice(0.095 * 0.0254).value / 0.0254, 4)  # middle of 0.065 to 0.125 in
        0.037
    """
    require_thickness(thickness)
    thinnest, thickest = welding_reach()
    if not thinnest * (1 - HAIR) <= thickness <= thickest * (1 + HAIR):
        raise ValueError(
            f"the tables of welding tips run from {thinnest * 1000:.2f} mm to {thickest * 1000:.1f} mm"
        )
    holes = welding_holes()
    followed = figure_of_place(
        holes,
        place_at(holes, thickness) + sizes_larger,
        "between the rows on either side, each taken at the middle of its range; the band holds those rows and "
        "what other sources print",
    )
    assert followed.value is not None
    drill = nearest_drill(followed.value)
    exact = abs(drill.diameter - followed.value) <= HAIR * drill.diameter
    words = f"{'' if exact else 'nearest '}number drill {drill.drill}"
    return spread(replace(followed, words=words), orifices_in_print(thickness))


def holes_printed_for(thickness: Length) -> tuple[Length, ...]:
    """Holes that the table of welding tips prints for the range in which a thickness lies.

    Args:
        thickness: Of the steel, m.

    Returns:
        m; two on the border of two rows, none beyond the table.

    Source:
        [faa-ac43-13-1b]

    Examples:
        >>> [round(hole / 0.0254, 3) for hole in holes_printed_for(0.125 * 0.0254)]
        [0.037, 0.042]
    """
    return tuple(
        row.orifice
        for row in table("welding-orifices-faa")
        if row.thinnest * (1 - HAIR) <= thickness <= row.thickest * (1 + HAIR)
    )


def brazing_tip(thickness: Length) -> BrazingTip:
    """Row of the brazing table nearest to a thickness.

    Args:
        thickness: Of the thicker member, m.

    Returns:
        Drill, orifice and both gauges. The last row holds for anything thicker.

    Raises:
        ValueError: The thickness is nearer to nothing than to the first row.

    Valid for:
        Torch brazing, oxygen and acetylene, balanced-pressure torch.

    Source:
        [navy14119]

    Examples:
        >>> brazing_tip(0.003175).drill
        '56'
    """
    require_thickness(thickness)
    rows = table("brazing-orifices-navy")
    if thickness < rows[0].thickness / 2:
        raise ValueError(f"the table of brazing tips begins at {rows[0].printed}")
    row = min(rows, key=lambda each: abs(each.thickness - thickness))
    thinner = [each.orifice for each in rows if each.thickness <= thickness * (1 + HAIR)]
    thicker = [each.orifice for each in rows if each.thickness >= thickness * (1 - HAIR)]
    orifice = Figure(
        row.orifice,
        row.source,
        row.how_sure,
        low=min(row.orifice, thinner[-1] if thinner else row.orifice),
        high=max(row.orifice, thicker[0] if thicker else row.orifice),
        basis=f"brazing table, row for {row.printed}",
        words=f"number drill {row.drill}",
    )
    return BrazingTip(
        row.drill,
        row.printed,
        orifice,
        row.oxygen_gauge,
        row.acetylene_gauge,
        row.source,
        row.how_sure,
    )


SOLVERS = (
    orifices_in_print,
    welding_orifice,
    holes_printed_for,
    brazing_tip,
)
