"""Tip orifices for a thickness, told by diameter and number drill.

For welding we follow the rows of `welding_rows`; the brazing table and the printed
flows, turned into holes by the jet speeds in print, widen the band. What the maker
prints for a tip stands before all of them.
"""

from dataclasses import replace
from math import pi

from calc.data.tables import table
from calc.formulas.setup.drills import nearest_drill
from calc.formulas.setup.flows import flows_in_print
from calc.formulas.setup.joined import Point, figure_of_place, place_at, value_of_place
from calc.formulas.setup.printed import HAIR, require_thickness, spread
from calc.formulas.setup.welding_rows import welding_holes, welding_reach
from calc.values.figures import Figure
from calc.values.quantities import Length, Ratio, Speed, VolumeFlow


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
        found.append(replace(brazing, low=None, high=None))
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


def _brazing_holes() -> list[Point]:
    """Rows of the brazing table, after the thinnest welding tip."""
    rows = table("brazing-orifices-navy")
    points = (Point(row.thickness, row.orifice, row.source, row.how_sure) for row in rows)
    return [welding_holes()[0], *points]


def brazing_tip(thickness: Length) -> Figure:
    """Hole of the brazing tip to start from.

    Args:
        thickness: Of the thicker member, m.

    Returns:
        m, on the straight line between two rows of the brazing table, with the nearest
        number drill in words; a size smaller and a size larger are the band. Below
        1/16 in the line runs to the thinnest welding tip; the last row holds for
        anything thicker. The pressures of that table are not followed.

    Raises:
        ValueError: The metal is thinner than any that a tip is printed for.

    Valid for:
        Torch brazing, oxygen and acetylene, equal-pressure torch.

    Source:
        [navy14119]; below 1/16 in [faa-ac43-13-1b], from memory.

    Examples:
        >>> brazing_tip(0.003175).words
        'number drill 56'
    """
    require_thickness(thickness)
    thinnest, _ = welding_reach()
    if thickness < thinnest * (1 - HAIR):
        raise ValueError(f"no tip is printed for metal under {thinnest * 1000:.2f} mm")
    points = _brazing_holes()
    first, second, *_, before, last = points
    ends = (
        replace(first, value=first.value**2 / second.value), replace(last, value=last.value**2 / before.value)
    )  # fmt: skip
    sizes = (ends[0], *points, ends[1])
    place = place_at(points, thickness)
    low, value, high = (value_of_place(sizes, place + larger) for larger in (0, 1, 2))
    thin = place < 1.0 - HAIR
    rows = "between the thinnest welding tip and the first row of the brazing table" if thin else "the brazing table, between its rows"
    return Figure(
        value, second.source, first.how_sure if thin else second.how_sure, low=low, high=high,
        basis=f"{rows}; a size smaller and a size larger are the band", words=f"number drill {nearest_drill(value).drill}",
    )  # fmt: skip


SOLVERS = (
    orifices_in_print,
    welding_orifice,
    holes_printed_for,
    brazing_tip,
)
