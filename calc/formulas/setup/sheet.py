"""Thickness of a sheet from its gauge number: the number means a series, the series a metal.

16 gauge is 1.52 mm in steel, 1.61 mm galvanised, 1.59 mm stainless, 1.29 mm
aluminium or brass and 1.63 mm where SWG is meant. So the metal and the rule
set must be known, and the answer names the series that was taken.
"""

from dataclasses import dataclass

from calc.data.tables import table
from calc.values.quantities import Length


@dataclass(frozen=True, slots=True)
class Sheet:
    """Thickness behind a gauge number.

    Attributes:
        thickness: m.
        series: Name of the gauge series that was taken.
        source: Publication and place, as in a table.
        how_sure: Grade of the row.
    """

    thickness: Length
    series: str
    source: str
    how_sure: str


def _series(metal: str) -> tuple[str, str]:
    for row in table("sheet-series"):
        if row.metal == metal:
            return row.series, row.name
    raise ValueError(f"no sheet gauge is kept here for {metal.replace('-', ' ')}; write the thickness")


def _thickness_in(series: str, name: str, gauge_number: float) -> Sheet:
    rows = [row for row in table("sheet-gauges") if row.series == series]
    for row in rows:
        if row.gauge == gauge_number:
            return Sheet(row.thickness, name, row.source, row.how_sure)
    raise ValueError(
        f"{gauge_number:g} is not in the {name}; give a whole number from "
        f"{rows[0].gauge:.0f} to {rows[-1].gauge:.0f}, or write the thickness"
    )


def swg_thickness(gauge_number: float) -> Sheet:
    """Thickness of a gauge number of the British standard wire gauge.

    Args:
        gauge_number: Whole number from 3 to 30.

    Returns:
        The thickness and the name of the series.

    Raises:
        ValueError: The series has no such number.

    Valid for:
        Any metal, where a drawing or a shelf says SWG.

    Source:
        [fluids-1-3] schedule BSWG. Its schedule SWG is the US steel wire gauge.

    Examples:
        >>> round(swg_thickness(16).thickness * 1000, 3)
        1.626
    """
    return _thickness_in(*_series("any"), gauge_number)


def sheet_thickness(gauge_number: float, metal: str, rules: str) -> Sheet:
    """Thickness of a sheet of one metal from its gauge number.

    Args:
        gauge_number: Whole number.
        metal: `low-carbon-steel`, `galvanised-steel`, `stainless-steel`,
            `aluminium`, `copper` or `brass`.
        rules: `us` takes the series of the metal, `uk` takes SWG for every
            metal, `iso` refuses.

    Returns:
        The thickness and the name of the series that was taken.

    Raises:
        ValueError: The rule set uses no gauge, or the series has no such
            number, or the metal has no series.

    Valid for:
        Nominal thickness; a sheet may be thinner or thicker within its
        tolerance, so measure where it matters.

    Source:
        [sheet-gauge-table], [us-standard-gauge], [fluids-1-3].

    Examples:
        >>> sheet_thickness(16, "low-carbon-steel", "us").series
        "manufacturers' standard gauge for steel"
        >>> round(sheet_thickness(16, "aluminium", "us").thickness * 1000, 2)
        1.29
    """
    if rules == "iso":
        raise ValueError("sheet gauge is not used under ISO and EN; write millimetres")
    series, name = _series(metal)
    if rules == "uk":
        return swg_thickness(gauge_number)
    return _thickness_in(series, name, gauge_number)


SOLVERS = (swg_thickness, sheet_thickness)
