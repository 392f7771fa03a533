"""Regulator gauges in print for welding; the maker's figure for the tip comes first."""

from calc.data.tables import HOW_SURE, table
from calc.formulas.setup.printed import HAIR, Spread, require_thickness
from calc.values.figures import Figure
from calc.values.quantities import Gauge, Length
from calc.values.units import to_si

USUAL_GAUGE: Gauge = to_si(5.0, "psi")
"""A small equal-pressure tip runs near 5 psi of each gas: common practice, no source."""
READING: Gauge = to_si(1.0, "psi")
"""A delivery gauge is set and read to about this: common practice, no source."""
READ_SAID = "A gauge on a regulator is set to about 1 psi (0.07 bar)."


def equal_pressure_gauge(thickness: Length) -> Figure:
    """Gauge that a UK textbook prints for both gases of an equal-pressure torch.

    Args:
        thickness: Of the steel, m.

    Returns:
        Pa above the atmosphere, of the row nearest in thickness. The series
        changes torch at 13 mm, so rows are not mixed; the neighbours are the band.

    Raises:
        ValueError: The thickness is outside the series.

    Valid for:
        0.9-25 mm of steel.

    Source:
        [davies]

    Examples:
        >>> round(equal_pressure_gauge(0.004).value)
        21000
    """
    require_thickness(thickness)
    rows = table("welding-flows-davies")
    if not rows[0].thickness * (1 - HAIR) <= thickness <= rows[-1].thickness * (1 + HAIR):
        raise ValueError(
            f"the series runs from {rows[0].thickness * 1000:.1f} mm to {rows[-1].thickness * 1000:.0f} mm"
        )
    place = min(range(len(rows)), key=lambda each: abs(rows[each].thickness - thickness))
    near = [row.gauge for row in rows[max(0, place - 1) : place + 2]]
    row = rows[place]
    return Figure(
        row.gauge,
        row.source,
        row.how_sure,
        low=min(near),
        high=max(near),
        basis=f"UK textbook, row for {row.thickness * 1000:g} mm; neighbouring rows as the band",
    )


SMALL_TIP = "a small tip"


def welding_gauges_in_print(gas: str, meant_for: str | None = None) -> Spread:
    """Spread of the regulator gauges that teaching texts print for welding.

    Args:
        gas: `acetylene` or `oxygen`.
        meant_for: Only the texts that mean this tip, such as `SMALL_TIP`; None takes all.

    Returns:
        Pa above the atmosphere. None is followed: the maker's print for the
        tip comes first.

    Raises:
        ValueError: It is another gas.

    Valid for:
        Welding with oxygen and acetylene at an equal-pressure torch.

    Source:
        [teaching-texts], [navy14119]

    Examples:
        >>> round(welding_gauges_in_print("acetylene").low)
        27579
    """
    if gas not in ("acetylene", "oxygen"):
        raise ValueError(f"no welding pressures are kept for {gas}")
    rows = [row for row in table("welding-gauges") if meant_for in (None, row.meant_for)]
    grades = list(HOW_SURE)
    return Spread(
        min(getattr(row, f"{gas}_low") for row in rows),
        max(getattr(row, f"{gas}_high") for row in rows),
        rows[0].source,
        max((row.how_sure for row in rows), key=grades.index),
        "what teaching texts print; the maker's figure for the tip comes first",
    )


SOLVERS = (equal_pressure_gauge, welding_gauges_in_print)
