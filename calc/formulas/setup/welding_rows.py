"""Printed rows for welding, as one series: holes and gauges of tips, flows of injector inserts.

The table of welding tips prints holes by ranges of thickness and leads to its end,
9.5 mm. From 10 mm on a textbook series leads, which prints flow and gauge; its hole
is the one that passes its flow at its gauge. So one nozzle sum gives back both.
"""

from functools import cache
from math import pi

from calc.data.tables import table
from calc.formulas.gas.nozzle import orifice_flow
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.setup.joined import Point, joined, middle_of_range
from calc.formulas.setup.working_gauges import USUAL_GAUGE
from calc.values.quantities import FreeGasFlow, Gauge, Length


def hole_that_passes(flow: FreeGasFlow, gauge: Gauge) -> Length:
    """Hole of an equal-pressure tip that passes a flow of acetylene and its oxygen.

    A solver: it asks the nozzle sum what a square metre passes.

    Args:
        flow: Acetylene, m³/s of free gas.
        gauge: Of both gases, Pa.

    Returns:
        Diameter, m.

    Valid for:
        One round hole, as `orifice_flow`.

    Source:
        [textbook] of gas flow; discharge from memory.

    Examples:
        >>> round(hole_that_passes(231 / 3.6e6, 34_474.0) * 1000, 2)
        1.0
    """
    oxygen = next(row.low for row in table("torch-oxygen-ratios") if row.how_sure == "practice")
    passed = orifice_flow(
        gases={"acetylene": 1.0, "oxygen": oxygen}, area=1.0, pressure=absolute_pressure(gauge)
    )
    return (4 * flow / (pi * passed.flows["acetylene"])) ** 0.5  # type: ignore[no-any-return] # a root of a float


def _both() -> tuple[tuple[Point, Point], ...]:
    """Hole and gauge of every row, the leading table first."""
    tips, series = table("welding-orifices-faa"), table("welding-flows-davies")
    ends = tips[-1].thickest, series[-1].thickness
    led = []
    for row in tips:
        at = middle_of_range(row.thinnest, row.thickest)
        led.append(
            (Point(at, row.orifice, row.source, row.how_sure), Point(at, USUAL_GAUGE, "", "practice"))
        )
    beyond = []
    for row in series:
        hole = hole_that_passes(row.flow, row.gauge)
        beyond.append(
            tuple(Point(row.thickness, value, row.source, row.how_sure) for value in (hole, row.gauge))
        )
    holes, gauges = (
        joined(([pair[which] for pair in led], ends[0]), ([pair[which] for pair in beyond], ends[1]))
        for which in (0, 1)
    )
    return tuple(zip(holes, gauges, strict=True))


@cache
def welding_holes() -> tuple[Point, ...]:
    """Holes of welding tips by thickness of steel, m.

    Source:
        [faa-ac43-13-1b] to 9.5 mm; [davies] from 10 mm, its flow through a nozzle.

    Examples:
        >>> [round(point.value / 0.0254, 3) for point in welding_holes()[:3]]
        [0.026, 0.031, 0.037]
    """
    return tuple(hole for hole, _ in _both())


@cache
def welding_gauges() -> tuple[Point, ...]:
    """Gauge of both gases at the rows of `welding_holes`, Pa.

    Source:
        Common practice with the table of tips, which prints none; [davies] beyond.
    """
    return tuple(gauge for _, gauge in _both())


def welding_reach() -> tuple[Length, Length]:
    """Least and largest thickness of steel that the welding tips are printed for, m.

    Source:
        [faa-ac43-13-1b], [davies]

    Examples:
        >>> [round(end * 1000, 2) for end in welding_reach()]
        [0.38, 25.0]
    """
    return table("welding-orifices-faa")[0].thinnest, table("welding-flows-davies")[-1].thickness


@cache
def insert_flows() -> tuple[Point, ...]:
    """Nominal acetylene flow of injector inserts at the middle of their ranges, m³/s.

    Source:
        [din-8543]

    Examples:
        >>> [round(point.value * 3.6e6) for point in insert_flows() if point.at == 0.003]
        [315]
    """
    return tuple(
        Point(middle_of_range(row.thinnest, row.thickest), row.acetylene_flow, row.source, row.how_sure)
        for row in table("injector-inserts")
    )


SOLVERS = (hole_that_passes, welding_holes, welding_gauges, welding_reach, insert_flows)
