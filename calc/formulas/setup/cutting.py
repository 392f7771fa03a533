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

from calc.figures import Figure
from calc.formulas.gas.acetylene import GAUGE_LIMIT
from calc.formulas.setup.drills import nearest_drill
from calc.formulas.setup.printed import HAIR, spread, value_between
from calc.quantities import Length
from calc.tables import table
from calc.units import to_si

READ = "cutting-carvill-1993"
"""The table that was read."""
LARGER = "cutting-aws-handbook"
"""The larger table, from memory."""
LEAST_THICKNESS: Length = 0.003
"""3 mm plate is taken by the row for 1/8 in."""
SAME_PLATE = 1.05
"""4 in plate is the plate of the row for 100 mm, and no row beyond it."""
FUELS = ("acetylene", "propane", "methane")
"""Fuels whose cutting flows are printed."""


def _held(thickness: Length) -> Length:
    """The thickness, drawn to the ends of the larger table by what rounding leaves."""
    rows = table(LARGER)
    thickest = rows[-1].thickness
    if not (isfinite(thickness) and LEAST_THICKNESS * (1 - HAIR) <= thickness <= thickest * (1 + HAIR)):
        raise ValueError(
            f"the cutting tables run from {LEAST_THICKNESS * 1000:g} mm (1/8 in) "
            f"to {thickest * 1000:.0f} mm ({rows[-1].printed})"
        )
    return float(min(max(thickness, rows[0].thickness), thickest))


def _ends(thickness: Length, quantity: str) -> tuple[float, float]:
    """Least and most of the larger table, between its rows."""
    held = _held(thickness)
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
    held = _held(thickness)
    rows = [row for row in table(READ) if quantity != "speed" or not row.doubt]
    first, last = rows[0], rows[-1]
    points = [(row.thickness, getattr(row, quantity)) for row in rows]
    beyond = [
        (row.thickness, sqrt(getattr(row, f"{quantity}_low") * getattr(row, f"{quantity}_high")))
        for row in table(LARGER)
        if not first.thickness <= row.thickness <= last.thickness * SAME_PLATE
    ]
    value = value_between(sorted([*points, *beyond]), held)
    low, high = _ends(thickness, quantity)
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
        range as the band.

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
    low, high = _ends(thickness, "orifice")
    drills = (nearest_drill(low).drill, nearest_drill(high).drill)
    return replace(_followed(thickness, "orifice"), words=f"number drills {drills[0]} to {drills[1]}")


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
    low, high = (to_si(end, "cfh", free_gas=True) for end in _ends(thickness, quantity))
    row = table(LARGER)[0]
    basis = f"{what} of the larger table, from memory; its range is the band, its middle the figure."
    return Figure(sqrt(low * high), row.source, row.how_sure, low, high, basis)


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


def _read_gauge(thickness: Length, quantity: str) -> Figure:
    held = _held(thickness)
    rows = table(READ)
    first, last = rows[0], rows[-1]
    within = min(max(held, first.thickness), last.thickness)
    value = value_between([(row.thickness, getattr(row, quantity)) for row in rows], within)
    if _was_read(thickness):
        near = [
            getattr(row, quantity)
            for row in sorted(rows, key=lambda each: abs(each.thickness - thickness))[:3]
        ]
        basis = f"The table that was read, {_place(thickness, list(rows))}; neighboring rows are the band."
        return Figure(
            value, first.source, first.how_sure, min(value, *near), max(value, *near), basis
        )  # fmt: skip
    nearest = first if held < first.thickness else last
    return Figure(
        value, "", "practice", value / 2, value * 2,
        f"No row is printed for this thickness: the figure for {nearest.thickness * 1000:g} mm is "
        "carried on, half of it to twice it as the band.",
    )  # fmt: skip


def cutting_gauges(thickness: Length, fuel: str) -> tuple[Figure, Figure]:
    """Gauges of cutting oxygen and fuel gas to start from; the maker's print stands before them.

    Args:
        thickness: Of the plate, m.
        fuel: `acetylene`, `propane` or `methane`, which stands for natural gas.

    Returns:
        Oxygen and fuel, Pa above the atmosphere, each with its band. Acetylene
        and its band stay below the lowest limit of any rule set.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm, or the fuel is another.

    Valid for:
        3-305 mm. Beyond 6 to 100 mm the nearest row is carried on, and for propane
        and natural gas no row is printed: both are common practice.

    Source:
        [carvill-1993] from 6 to 100 mm with acetylene.

    Examples:
        >>> [round(g.value) for g in cutting_gauges(0.025, "acetylene")]
        [280000, 14000]
    """
    _require_fuel(fuel, "pressure for cutting")
    oxygen = _read_gauge(thickness, "oxygen_gauge")
    if fuel == "acetylene":
        printed = _read_gauge(thickness, "acetylene_gauge")
        assert printed.high is not None
        return oxygen, replace(printed, high=min(printed.high, *GAUGE_LIMIT.values()))
    row = next(each for each in table("cutting-fuel-gauges") if each.fuel == fuel)
    basis = f"Common practice with a wide band, whatever the thickness: {row.words}."
    return oxygen, Figure(row.gauge, row.source, row.how_sure, row.low, row.high, basis)


def preheat_holes(thickness: Length) -> Figure:
    """Holes for the preheat flames around the cutting hole.

    Args:
        thickness: Of the plate, m.

    Returns:
        Words; the range is the band. Thicker plate and slower fuels take more holes.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm.

    Valid for:
        Tips for plate under 1/4 in to over 12 in.

    Source:
        [army-tc9-237-1993]

    Examples:
        >>> preheat_holes(0.025).words
        '2 to 6'
    """
    _held(thickness)
    row = next(each for each in table("cutting-facts") if each.topic == "holes")
    low, high = row.number_low, row.number_high
    words = f"{low:g} to {high:g}"
    return Figure(None, row.source, row.how_sure, low, high, f"{words} preheat holes, tips for under 1/4 in to over 12 in.", words)


def kerf(thickness: Length) -> Figure:
    """Width of the slot that the cut leaves.

    Args:
        thickness: Of the plate, m.

    Returns:
        m, with its band.

    Raises:
        ValueError: The thickness is outside 3 to 152 mm.

    Valid for:
        3-152 mm, hand or machine.

    Source:
        From memory.

    Examples:
        >>> round(1000 * kerf(0.025).value, 2)
        2.0
    """
    rows = table("cutting-kerfs")
    thinnest, thickest = rows[0].thickness, rows[-1].thickness
    if not (isfinite(thickness) and thinnest * (1 - HAIR) <= thickness <= thickest * (1 + HAIR)):
        raise ValueError(f"slots are kept for {thinnest * 1000:g} mm to {thickest * 1000:g} mm (6 in)")
    held = min(max(thickness, thinnest), thickest)
    value, low, high = (
        value_between([(row.thickness, getattr(row, name)) for row in rows], held)
        for name in ("kerf", "low", "high")
    )
    return Figure(value, "", "memory", low, high, "Figures for hand and machine cuts, between the rows.")


def drag(thickness: Length) -> Figure:
    """How far the bottom of a good cut may lag behind its top.

    Args:
        thickness: Of the plate, m.

    Returns:
        The most, m; nothing to that is the band.

    Raises:
        ValueError: The thickness is outside 3 to 305 mm.

    Valid for:
        Straight cuts in plate.

    Source:
        From memory.

    Examples:
        >>> round(1000 * drag(0.025).value, 2)
        2.5
    """
    _held(thickness)
    good, severing, lost = table("cutting-drags")
    return Figure(
        good.high * thickness, "", good.how_sure, good.low * thickness, good.high * thickness,
        f"Up to {100 * good.high:g} % of the thickness is {good.words}; {100 * severing.low:g} to "
        f"{100 * severing.high:g} % is {severing.words}; above {100 * lost.low:g} % {lost.words}.",
    )  # fmt: skip


SOLVERS = (
    cutting_orifice,
    cutting_speed,
    cutting_oxygen_flow,
    preheat_fuel_flow,
    cutting_gauges,
    preheat_holes,
    kerf,
    drag,
)
