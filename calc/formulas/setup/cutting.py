"""Cutting low-carbon steel with oxygen: hole, pressures, speed, gas and cut by thickness.

Two tables are kept. The one for oxygen and acetylene was read in its source, so
its hole, pressures and speed are followed from 6 to 100 mm. The larger one is from
memory: it gives the bands there, the figures beyond, and the flows of gas. A
middle of its ranges is the one by ratio, the root of least times most. What the
maker of the tip prints stands before both.
"""

from dataclasses import replace
from math import isfinite, sqrt
from typing import Any

from calc.data.tables import table
from calc.formulas.setup.drills import nearest_drill
from calc.formulas.setup.printed import HAIR, spread, value_between
from calc.values.figures import Figure
from calc.values.quantities import Length
from calc.values.units import to_si

READ = "cutting-carvill-1993"
"""The table that was read."""
LARGER = "cutting-aws-handbook"
"""The larger table, from memory."""
LEAST_THICKNESS: Length = 0.003
"""3 mm plate is taken by the row for 1/8 in."""
LIKE = 1.1
"""Share by which two gauge readings are taken for one; common practice."""
SAME_HOLE = 1.03
"""A hole within this share is the same tip: drills of neighboring numbers differ by as much; common practice."""
SAME_PLATE = 1.05
"""4 in plate is the plate of the row for 100 mm, and no row beyond it."""
FUELS = ("acetylene", "propane", "methane")
"""Fuels whose cutting flows are printed."""


def held_thickness(thickness: Length) -> Length:
    """The thickness, drawn to the ends of the larger table by what rounding leaves.

    Args:
        thickness: Of the plate, m.

    Raises:
        ValueError: It is outside 3 to 305 mm.
    """
    rows = table(LARGER)
    thickest = rows[-1].thickness
    if not (isfinite(thickness) and LEAST_THICKNESS * (1 - HAIR) <= thickness <= thickest * (1 + HAIR)):
        raise ValueError(
            f"the cutting tables run from {LEAST_THICKNESS * 1000:g} mm (1/8 in) "
            f"to {thickest * 1000:.0f} mm ({rows[-1].printed})"
        )
    return float(min(max(thickness, rows[0].thickness), thickest))


def printed_range(thickness: Length, quantity: str) -> tuple[float, float]:
    """Least and most of the larger table, between its rows.

    Args:
        thickness: Of the plate, m.
        quantity: `orifice`, m, or `speed`, m/s; a flow is in the table's own unit.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm.
    """
    held = held_thickness(thickness)
    low, high = (
        value_between([(row.thickness, getattr(row, f"{quantity}_{end}")) for row in table(LARGER)], held)
        for end in ("low", "high")
    )
    return low, high


def _was_read(thickness: Length) -> bool:
    rows = table(READ)
    return bool(rows[0].thickness * (1 - HAIR) <= thickness <= rows[-1].thickness * (1 + HAIR))


def _place(thickness: Length, rows: list[Any]) -> str:
    """Where in the table that was read a thickness stands."""
    if any(abs(row.thickness - thickness) <= row.thickness * HAIR for row in rows):
        return f"row for {thickness * 1000:g} mm"
    return "between its rows"


def _followed(thickness: Length, quantity: str) -> Figure:
    """Figure of the table that was read, joined to the larger table beyond it."""
    held = held_thickness(thickness)
    rows = [row for row in table(READ) if not row.doubt]
    first, last = rows[0], rows[-1]
    points = [(row.thickness, getattr(row, quantity)) for row in rows]
    beyond = [
        (row.thickness, sqrt(getattr(row, f"{quantity}_low") * getattr(row, f"{quantity}_high")))
        for row in table(LARGER)
        if not first.thickness <= row.thickness <= last.thickness * SAME_PLATE
    ]
    value = value_between(sorted([*points, *beyond]), held)
    low, high = printed_range(thickness, quantity)
    if _was_read(thickness):
        basis = (
            f"The smaller table, {_place(thickness, rows)}: it is followed because it was read. "
            "The band holds the larger table, which is from memory."
        )
        followed = Figure(value, first.source, first.how_sure, basis=basis)
    else:
        larger = table(LARGER)[0]
        basis = (
            "The middle of the larger table, from memory; the one that was read "
            f"has no row beyond {first.thickness * 1000:g} to {last.thickness * 1000:g} mm."
        )
        followed = Figure(value, larger.source, larger.how_sure, basis=basis)
    return spread(followed, [Figure(None, "", "memory", low=low, high=high)])


def cutting_orifice(thickness: Length) -> Figure:
    """Hole for the cutting oxygen.

    Args:
        thickness: Of the plate, m.

    Returns:
        Diameter, m; the number drills of the larger table's range in words, the
        range and the drills next to the hole as the band. The row for 75 mm is passed
        over: its hole and speed repeat the row above, most likely a misprint.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm.

    Valid for:
        3-305 mm of clean low-carbon steel, not preheated, one straight-bored hole.

    Source:
        [carvill-1993] from 6 to 100 mm; band and beyond [aws-welding-handbook], from memory.

    Examples:
        >>> hole = cutting_orifice(0.025)
        >>> round(hole.value * 1000, 2), hole.how_sure
        (1.6, 'read')
    """
    low, high = printed_range(thickness, "orifice")
    drills = (nearest_drill(low).drill, nearest_drill(high).drill)
    followed = _followed(thickness, "orifice")
    assert followed.value is not None
    same_tip = Figure(None, "", "practice", low=followed.value / SAME_HOLE, high=followed.value * SAME_HOLE)
    return replace(spread(followed, [same_tip]), words=f"number drills {drills[0]} to {drills[1]}")


def cutting_speed(thickness: Length) -> Figure:
    """Speed of travel of a cut.

    Args:
        thickness: Of the plate, m.

    Returns:
        m/s, the larger table's range as the band. The row for 75 mm is passed
        over: it repeats the speed of the row above, most likely a misprint.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm.

    Valid for:
        3-305 mm of clean low-carbon steel, not preheated, by hand or machine, with
        oxygen of 99.5 % or better.

    Source:
        [carvill-1993] from 6 to 100 mm; band and beyond [aws-welding-handbook], from memory.

    Examples:
        >>> [round(60000 * v) for v in (cutting_speed(0.025).value, cutting_speed(0.075).value)]
        [280, 175]
    """
    return _followed(thickness, "speed")


def _flow(thickness: Length, quantity: str, what: str) -> Figure:
    low, high = (to_si(end, "cfh", free_gas=True) for end in printed_range(thickness, quantity))
    row = table(LARGER)[0]
    basis = f"{what} of the larger table, from memory; its range is the band, its middle the figure."
    return Figure(sqrt(low * high), row.source, row.how_sure, low=low, high=high, basis=basis)


def cutting_oxygen_flow(thickness: Length) -> Figure:
    """Flow of the cutting oxygen, without that of the preheat flames.

    Args:
        thickness: Of the plate, m.

    Returns:
        m³/s of free gas with its band. The table that was read prints no flow.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm.

    Valid for:
        3-305 mm of clean low-carbon steel, not preheated.

    Source:
        [aws-welding-handbook], from memory.

    Examples:
        >>> round(3.6e6 * cutting_oxygen_flow(0.0254).value, -1)
        3680.0
    """
    return _flow(thickness, "oxygen", "The cutting oxygen")


def _require_fuel(fuel: str, what: str) -> None:
    if fuel not in FUELS:
        raise ValueError(
            f"no {what} is kept for {fuel}: the tables print acetylene, propane and natural gas; "
            "take what the maker of the tip prints"
        )


def preheat_fuel_flow(thickness: Length, fuel: str) -> Figure:
    """Flow of fuel gas to the preheat flames.

    Args:
        thickness: Of the plate, m.
        fuel: `acetylene`, `propane` or `methane`, which stands for natural gas.

    Returns:
        m³/s of free gas with its band.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm, or the fuel is another.

    Valid for:
        3-305 mm of clean low-carbon steel, not preheated.

    Source:
        [aws-welding-handbook], from memory.

    Examples:
        >>> flow = preheat_fuel_flow(0.0254, "propane")
        >>> flow.low < flow.value < flow.high
        True
    """
    _require_fuel(fuel, "flow to the preheat flames")
    return _flow(thickness, fuel, "The preheat fuel")


def _oxygen_gauge(thickness: Length) -> Figure:
    held = held_thickness(thickness)
    rows = table(READ)
    first, last = rows[0], rows[-1]
    within = min(max(held, first.thickness), last.thickness)
    value = value_between([(row.thickness, row.oxygen_gauge) for row in rows], within)
    if _was_read(thickness):
        near = [
            row.oxygen_gauge for row in sorted(rows, key=lambda each: abs(each.thickness - thickness))[:3]
        ]
        return Figure(
            value, first.source, first.how_sure, low=min(value / LIKE, *near), high=max(value * LIKE, *near),
            basis=f"The table that was read, {_place(thickness, list(rows))}; neighboring rows and a tenth either way are the "
            "band.",
        )  # fmt: skip
    nearest = first if held < first.thickness else last
    return Figure(
        value, "", "practice", low=value / 2, high=value * 2,
        basis=f"No row is printed for this thickness: the figure for {nearest.thickness * 1000:g} mm is "
        "carried on, half of it to twice it as the band.",
    )  # fmt: skip


def cutting_gauges(thickness: Length, fuel: str) -> tuple[Figure, Figure]:
    """Gauges of cutting oxygen and fuel gas to start from; the maker's print stands before them.

    Args:
        thickness: Of the plate, m.
        fuel: `acetylene`, `propane` or `methane`, which stands for natural gas.

    Returns:
        Oxygen and fuel, Pa above the atmosphere, each with its band. That of acetylene
        stays below the lowest limit of any rule set.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm, or the fuel is another.

    Valid for:
        3-305 mm. Beyond 6 to 100 mm the nearest row of oxygen is carried on, and the fuel
        gas has one figure whatever the thickness: both are common practice.

    Source:
        [carvill-1993] for the oxygen from 6 to 100 mm. Its acetylene column falls as the
        plate gets thicker and is not followed.

    Examples:
        >>> [round(g.value) for g in cutting_gauges(0.025, "acetylene")]
        [280000, 34474]
    """
    _require_fuel(fuel, "pressure for cutting")
    oxygen = _oxygen_gauge(thickness)
    row = next(each for each in table("cutting-fuel-gauges") if each.fuel == fuel)
    basis = f"Common practice with a wide band, whatever the thickness: {row.words}."
    return oxygen, Figure(row.gauge, row.source, row.how_sure, low=row.low, high=row.high, basis=basis)


SOLVERS = (
    held_thickness,
    printed_range,
    cutting_orifice,
    cutting_speed,
    cutting_oxygen_flow,
    preheat_fuel_flow,
    cutting_gauges,
)
