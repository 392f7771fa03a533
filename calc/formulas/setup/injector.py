"""Injector (low-pressure) torches: the published set of inserts and gauges.

The oxygen draws the acetylene in, so one pair of gauges serves every insert;
an orifice table for equal-pressure tips does not apply.
"""

from dataclasses import dataclass

from calc.figures import Figure
from calc.formulas.setup.printed import HAIR, Spread, require_thickness
from calc.quantities import FreeGasFlow, Length
from calc.tables import table


@dataclass(frozen=True, slots=True)
class InjectorSetting:
    """What is printed for an injector torch.

    Attributes:
        thinnest: Thickness that the insert begins at, m.
        thickest: Thickness that it ends at, m.
        acetylene_flow: Nominal flow of the insert, m³/s of free gas.
        oxygen_gauge: Regulator gauge, Pa, with its range.
        acetylene_gauge: Range of the regulator gauge, Pa; no single figure is printed.
        source: Publication, as in a table.
        how_sure: Grade of the row.
    """

    thinnest: Length
    thickest: Length
    acetylene_flow: FreeGasFlow
    oxygen_gauge: Figure
    acetylene_gauge: Spread
    source: str
    how_sure: str


def injector_setting(thickness: Length) -> InjectorSetting:
    """Insert and gauges of an injector torch for steel of a thickness.

    Args:
        thickness: m. On the border of two inserts the smaller one is given.

    Returns:
        The insert's range and flow, and both gauges.

    Raises:
        ValueError: No insert is printed for the thickness.

    Valid for:
        0.5-30 mm of steel, oxygen and acetylene. The maker's figures come first.

    Source:
        [din-8543]

    Examples:
        >>> round(injector_setting(0.003).acetylene_flow * 3.6e6)
        315
    """
    require_thickness(thickness)
    rows = table("injector-inserts")
    for row in rows:
        if row.thinnest * (1 - HAIR) <= thickness <= row.thickest * (1 + HAIR):
            break
    else:
        raise ValueError(
            f"inserts are printed for {rows[0].thinnest * 1000:g} mm to {rows[-1].thickest * 1000:g} mm"
        )
    gauges = {each.gas: each for each in table("injector-gauges")}
    oxygen, acetylene = gauges["oxygen"], gauges["acetylene"]
    return InjectorSetting(
        row.thinnest,
        row.thickest,
        row.acetylene_flow,
        Figure(
            oxygen.usual,
            oxygen.source,
            oxygen.how_sure,
            low=oxygen.low,
            high=oxygen.high,
            basis="printed for injector torches",
        ),
        Spread(
            acetylene.low,
            acetylene.high,
            acetylene.source,
            acetylene.how_sure,
            "printed for injector torches",
        ),
        row.source,
        row.how_sure,
    )


SOLVERS = (injector_setting,)
