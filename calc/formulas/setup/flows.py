"""Acetylene flow for a thickness, with what other sources print.

We follow the rule of 100 L/h of acetylene for each millimetre of steel, and its
kin for other metals. The other printed series give the band.
"""

from typing import Any

from calc.data.tables import table
from calc.formulas.setup.printed import HAIR, require_thickness, spread, value_between
from calc.values.figures import Figure
from calc.values.quantities import FreeGasFlow, Length
from calc.values.units import to_si


def _davies_flow(thickness: Length) -> FreeGasFlow | None:
    points = [(row.thickness, row.flow) for row in table("welding-flows-davies")]
    if not points[0][0] * (1 - HAIR) <= thickness <= points[-1][0] * (1 + HAIR):
        return None
    return value_between(points, min(max(thickness, points[0][0]), points[-1][0]))


def _insert_flow(thickness: Length) -> Any:
    for row in table("injector-inserts"):
        if row.thinnest * (1 - HAIR) <= thickness <= row.thickest * (1 + HAIR):
            return row
    return None


def flows_in_print(thickness: Length) -> tuple[Figure, ...]:
    """Acetylene flow that other sources print for steel of a thickness.

    Args:
        thickness: m.

    Returns:
        One figure for each source that reaches the thickness, m³/s of free gas.

    Valid for:
        0.5-30 mm; outside no source is left.

    Source:
        [davies], [din-8543], [groover]
    """
    found = []
    davies = _davies_flow(thickness)
    if davies is not None:
        row = table("welding-flows-davies")[0]
        found.append(Figure(davies, row.source, row.how_sure, basis="UK textbook, between its rows"))
    insert = _insert_flow(thickness)
    if insert is not None:
        found.append(
            Figure(
                insert.acetylene_flow,
                insert.source,
                insert.how_sure,
                basis="nominal flow of the insert for this thickness",
            )
        )
    for row in table("welding-flows-textbooks"):
        if abs(row.thickness - thickness) <= row.thickness * HAIR:
            found.append(
                Figure(
                    to_si(row.number, row.unit, free_gas=True),
                    row.source,
                    row.how_sure,
                    basis=row.printed,
                )
            )
    return tuple(found)


def _rule(metal: str, technique: str) -> Any:
    for row in table("welding-flows-by-metal"):
        if (row.metal, row.technique) == (metal, technique):
            return row
    raise ValueError(f"no flow is kept for {metal} welded {technique}")


def _each_length(row: Any) -> float:
    """Acetylene for each metre of thickness that a rule takes, m³/s to the metre."""
    return float(row.usual if row.usual is not None else (row.low + row.high) / 2)


def steel_of_same_flow(thickness: Length, metal: str) -> Length:
    """Thickness of low-carbon steel that takes the acetylene of another metal.

    Args:
        thickness: Of the metal, m.
        metal: As in `acetylene_flow`.

    Returns:
        m, by the forehand rules.

    Raises:
        ValueError: No rule is kept for that metal.

    Valid for:
        Choosing a tip or an insert from a table that is printed for steel.

    Source:
        Common practice, as `acetylene_flow`.

    Examples:
        >>> round(steel_of_same_flow(0.004, "aluminium") * 1000, 3)  # 75 L/h for each mm, steel 100
        3.0
    """
    steel = _each_length(_rule("low-carbon-steel", "leftward"))
    return thickness * _each_length(_rule(metal, "leftward")) / steel


def acetylene_flow(thickness: Length, metal: str, technique: str) -> Figure:
    """Acetylene flow to start from when welding a thickness.

    Args:
        thickness: m.
        metal: `low-carbon-steel`, `stainless-steel`, `aluminium`, `copper`,
            `brass` or `cast-iron`.
        technique: `leftward` (forehand) or `rightward` (backhand).

    Returns:
        m³/s of free gas. The band holds the rule's own range and, for steel,
        the UK textbook series and the insert ranges. A rule without a range
        leaves the band empty.

    Raises:
        ValueError: No rule is kept for that metal and technique, or the
            thickness is beyond the printed series.

    Valid for:
        0.5-25 mm.

    Source:
        Common practice; band [davies], [din-8543], [groover].

    Examples:
        >>> round(acetylene_flow(0.003, "low-carbon-steel", "leftward").value * 3.6e6)
        300
    """
    require_thickness(thickness)
    thinnest = table("injector-inserts")[0].thinnest
    thickest = table("welding-flows-davies")[-1].thickness
    if not thinnest * (1 - HAIR) <= thickness <= thickest * (1 + HAIR):
        raise ValueError(f"the printed flows run from {thinnest * 1000:.1f} mm to {thickest * 1000:.0f} mm")
    row = _rule(metal, technique)
    basis = "rule of thumb by thickness" if row.usual else "middle of the range in print"
    if row.words:
        basis = f"{basis}; {row.words}"
    rule = Figure(
        _each_length(row) * thickness,
        row.source,
        row.how_sure,
        low=None if row.low is None else row.low * thickness,
        high=None if row.high is None else row.high * thickness,
        basis=basis,
    )
    if metal != "low-carbon-steel" or technique != "leftward":
        return rule
    return spread(rule, flows_in_print(thickness))


SOLVERS = (flows_in_print, steel_of_same_flow, acetylene_flow)
