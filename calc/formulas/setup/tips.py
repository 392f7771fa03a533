"""Tip orifices for a thickness, told by diameter and number drill.

For welding we follow the FAA table; the brazing table and the printed flows,
turned into holes by the jet speeds in print, give the band. What the maker
prints for a tip stands before all of them.
"""

from dataclasses import dataclass
from math import pi

from calc.figures import Figure
from calc.formulas.setup.flows import flows_in_print
from calc.formulas.setup.printed import HAIR, require_thickness, spread
from calc.quantities import Gauge, Length, Speed, VolumeFlow
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


def welding_orifice(thickness: Length) -> Figure:
    """Orifice of the welding tip to start from for steel of a thickness.

    Args:
        thickness: m. On the border of two rows the smaller tip is given.

    Returns:
        m, with the number drill in words and the other sources as its band.

    Raises:
        ValueError: The thickness is outside the table we follow.

    Valid for:
        0.38-9.5 mm of steel, oxygen and acetylene, equal-pressure torch.

    Source:
        [faa-ac43-13-1b]; band [navy14119], [davies], [din-8543].

    Examples:
        >>> welding_orifice(0.003).words
        'number drill 63'
    """
    require_thickness(thickness)
    rows = table("welding-orifices-faa")
    for row in rows:
        if row.thinnest * (1 - HAIR) <= thickness <= row.thickest * (1 + HAIR):
            followed = Figure(
                row.orifice,
                row.source,
                row.how_sure,
                basis="the table by thickness; the band holds what other sources print",
                words=f"number drill {row.drill}",
            )
            return spread(followed, orifices_in_print(thickness))
    raise ValueError(
        f"the table of welding tips runs from {rows[0].thinnest * 1000:.2f} mm "
        f"to {rows[-1].thickest * 1000:.1f} mm"
    )


def orifice_of_printed_flow(thickness: Length) -> Figure:
    """Orifice where the table of welding tips has no row: a printed flow at the jet speeds in print.

    Args:
        thickness: Of the steel, m.

    Returns:
        m, the middle by ratio of what the two ends of the jet speeds give, with
        the other sources as its band.

    Raises:
        ValueError: The UK textbook prints no flow for the thickness.

    Valid for:
        0.9-25 mm of steel.

    Source:
        [davies] for the flow, from memory; speeds [leeds-1910].

    Examples:
        >>> round(orifice_of_printed_flow(0.013).value * 1000, 2)  # 1300 L/h
        2.75
    """
    found = orifices_in_print(thickness)
    for figure in found:
        if figure.source == table("welding-flows-davies")[0].source:
            break
    else:
        raise ValueError("no source prints a welding flow for this thickness")
    assert figure.low is not None
    assert figure.high is not None
    basis = f"no table of holes goes this far; {figure.basis}"
    middle = Figure((figure.low * figure.high) ** 0.5, figure.source, figure.how_sure, basis=basis)
    return spread(middle, found)


def orifice_one_size_larger(orifice: Length) -> Figure | None:
    """Next hole of the table of welding tips.

    Args:
        orifice: A hole of that table, m.

    Returns:
        m, with its number drill in words; None where the table ends.

    Source:
        [faa-ac43-13-1b]

    Examples:
        >>> orifice_one_size_larger(0.031 * 0.0254).words
        'number drill 63'
    """
    for row in table("welding-orifices-faa"):
        if row.orifice > orifice * (1 + HAIR):
            return Figure(
                row.orifice,
                row.source,
                row.how_sure,
                basis="the next row of the table by thickness",
                words=f"number drill {row.drill}",
            )
    return None


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
    orifice_of_printed_flow,
    orifice_one_size_larger,
    brazing_tip,
)
