"""Injector (low-pressure) torches: the published set of inserts and gauges.

The oxygen draws the acetylene in, so one pair of gauges serves every insert;
an orifice table for equal-pressure tips does not apply.
"""

from dataclasses import dataclass

from calc.data.tables import table
from calc.formulas.setup.joined import figure_of_place, place_at
from calc.formulas.setup.printed import HAIR, Spread, require_thickness
from calc.formulas.setup.welding_rows import insert_flows
from calc.values.figures import Figure
from calc.values.quantities import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class InjectorSetting:
    """What is printed for an injector torch.

    Attributes:
        thinnest: Thickness that the insert begins at, m.
        thickest: Thickness that it ends at, m.
        acetylene_flow: Flow to start from, m³/s of free gas: the nominal flow of an
            insert at the middle of its range, between two middles evenly from one
            to the other, as the insert is turned down and up within its range.
        oxygen_gauge: Regulator gauge, Pa, with its range.
        acetylene_gauge: Range of the regulator gauge, Pa; no single figure is printed.
        source: Publication, as in a table.
        how_sure: Grade of the row.
    """

    thinnest: Length
    thickest: Length
    acetylene_flow: Figure
    oxygen_gauge: Figure
    acetylene_gauge: Spread
    source: str
    how_sure: str


def injector_setting(thickness: Length, sizes_larger: int = 0) -> InjectorSetting:
    """Insert and gauges of an injector torch for steel of a thickness.

    Args:
        thickness: m. On the border of two inserts the smaller one is given.
        sizes_larger: Inserts by which the one taken is to be larger.

    Returns:
        The insert's range, its flow for the thickness, and both gauges.

    Raises:
        ValueError: No insert is printed for the thickness.

    Valid for:
        0.5-30 mm of steel, oxygen and acetylene. The maker's figures come first.

    Source:
        [din-8543]

    Examples:
        >>> round(injector_setting(0.003).acetylene_flow.value * 3.6e6)
        315
    """
    require_thickness(thickness)
    rows = table("injector-inserts")
    reaching = [
        row
        for row in rows
        if row.thinnest * (1 - HAIR) <= thickness <= row.thickest * (1 + HAIR)
    ]
    if not reaching or rows.index(reaching[0]) + sizes_larger >= len(rows):
        raise ValueError(
            f"inserts are printed for {rows[0].thinnest * 1000:g} mm to {rows[-1].thickest * 1000:g} mm"
        )
    row = rows[rows.index(reaching[0]) + sizes_larger]
    flows = insert_flows()
    flow = figure_of_place(
        flows,
        place_at(flows, thickness) + sizes_larger,
        "nominal flow of an insert at the middle of its range, evenly between two middles",
    )
    gauges = {each.gas: each for each in table("injector-gauges")}
    oxygen, acetylene = gauges["oxygen"], gauges["acetylene"]
    return InjectorSetting(
        thinnest=row.thinnest,
        thickest=row.thickest,
        acetylene_flow=flow,
        oxygen_gauge=Figure(
            oxygen.usual,
            oxygen.source,
            oxygen.how_sure,
            low=oxygen.low,
            high=oxygen.high,
            basis="printed for injector torches",
        ),
        acetylene_gauge=Spread(
            acetylene.low,
            acetylene.high,
            acetylene.source,
            acetylene.how_sure,
            "printed for injector torches",
        ),
        source=row.source,
        how_sure=row.how_sure,
    )


SOLVERS = (injector_setting,)
