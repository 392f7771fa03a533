"""Tip, pressures and flows where the whole flame heats: brazing, soldering, braze welding, heating.

For brazing with acetylene a table of holes is printed. For another fuel, and for heating,
the hole is the one that passes the gas of the same heat: a sum, with a wide band.
"""

from dataclasses import dataclass, replace
from math import ceil
from typing import Any

from calc.data.tables import table
from calc.declare import Step, worked
from calc.formulas.gas.acetylene import GAUGE_LIMIT
from calc.formulas.gas.nozzle import orifice_area, orifice_flow
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.supply import oxygen_for_fuel
from calc.formulas.heat.flame_power import (
    FLAME_EFFICIENCY,
    FLAME_EFFICIENCY_BAND,
    HEATING_EFFICIENCY,
    HEATING_EFFICIENCY_BAND,
)
from calc.formulas.setup.flows import steel_of_same_flow
from calc.formulas.setup.printed import HAIR, spread
from calc.formulas.setup.same_heat import flow_for_heat, flow_of_same_heat, hole_diameter, holes_area
from calc.formulas.setup.tips import brazing_tip, welding_orifice
from calc.formulas.setup.working_gauges import USUAL_GAUGE, welding_gauges_in_print
from calc.trade.flame.heat import printed_heat
from calc.trade.tips.flow import SHARE_HIGH, SHARE_LOW, SOURCE
from calc.trade.tips.welding_torch import Setting, as_its_maker_prints, nearest_drill_said, neutral_oxygen
from calc.values.figures import Figure
from calc.values.numbers import plain_number
from calc.values.quantities import Area, FreeGasFlow, Gauge, Length, Power, Ratio
from calc.values.units import to_si

HEAT_TAKEN: Power = 3000.0
"""Heat into the work that a heating tip is chosen for where the reader gives none."""
ONE_HOLE = to_si(1.0, "mm")
"""A hole of a multiflame tip is near this: common practice."""
MOST_HOLES = 60
"""A tip with more holes than this has wider ones instead: common practice."""
SOLDER_SHARE: Ratio = 1 / 3
"""Rise of temperature to melt soft solder over that to melt silver brazing alloy: about
230 and 650 °C from 20 °C, common practice."""
WEAK: Ratio = FLAME_EFFICIENCY / FLAME_EFFICIENCY_BAND[1]
STRONG: Ratio = FLAME_EFFICIENCY / FLAME_EFFICIENCY_BAND[0]
"""Gas for a heat at the best and at the worst share that enters the work, over that at the usual."""
WIDE = (STRONG / SHARE_LOW) ** 0.5
LEAST_GAS, MOST_GAS = (HEATING_EFFICIENCY / end for end in reversed(HEATING_EFFICIENCY_BAND))
"""As above, for a part that the whole flame warms."""
LEAST_HOLE, MOST_HOLE = (LEAST_GAS / SHARE_HIGH) ** 0.5, (MOST_GAS / SHARE_LOW) ** 0.5
"""Ends of the hole's band: the flow's, and the discharge against it."""
SUM = "The band is the share of the heat that enters the work and what a hole lets through."


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What a setting is asked for.

    Attributes:
        process: Kind of work.
        metal: Id of the metal.
        thickness: Of the metal, m; not used for heating.
        fuel: Id of the fuel gas.
        torch_type: `equal-pressure` or `injector`.
        orifice: The tip's hole as its maker prints it, m, or None.
        oxygen_gauge: Likewise, Pa.
        fuel_gauge: Likewise.
        rules: Rule set.
        heat: Heat into the work, W, for heating only.
        steps: List that lines of working are added to.
    """

    process: str
    metal: str
    thickness: float
    fuel: str
    torch_type: str
    orifice: float | None
    oxygen_gauge: float | None
    fuel_gauge: float | None
    rules: str
    heat: Power
    steps: list[Step]


def torch_ratio(fuel: str) -> Any:
    """Row of the oxygen that a torch draws for one of a fuel."""
    rows = table("oxygen-ratios-benchbook-2026")
    return next(row for row in rows if (row.fuel, row.sense) == (fuel, "torch"))


def oxygen_of(fuel: str, flow: Figure) -> Figure:
    """Oxygen that a torch draws with a flow of fuel gas, m³/s."""
    if fuel == "acetylene":
        return neutral_oxygen(flow)
    assert flow.value is not None
    row = torch_ratio(fuel)
    return Figure(
        oxygen_for_fuel(flow.value, row.ratio), row.source, row.how_sure,
        low=oxygen_for_fuel(flow.low or flow.value, row.low), high=oxygen_for_fuel(flow.high or flow.value, row.high),
        basis=f"{plain_number(row.ratio)} of oxygen to 1; a torch draws {plain_number(row.low)} to "
        f"{plain_number(row.high)}, the air brings the rest.",
    )  # fmt: skip


def passed_by(fuel: str, area: Area, gauge: Gauge) -> FreeGasFlow:
    """Fuel gas and oxygen together that holes pass at a gauge on both, m³/s."""
    mixture = {fuel: 1.0, "oxygen": torch_ratio(fuel).ratio}
    return orifice_flow(gases=mixture, area=area, pressure=absolute_pressure(gauge)).free_gas


def fuel_passed(fuel: str, orifice: float, holes: float, *gauges: Figure) -> Figure:
    """Fuel gas through the holes of a tip, m³/s, at the lower of both gauges.

    The mixture can stand at no more than the gas with less pressure behind it.
    """
    at = min(gauge.value or 0.0 for gauge in gauges)
    mixed = passed_by(fuel, orifice_area(orifice, holes), at)
    amount = mixed / (1.0 + torch_ratio(fuel).ratio)
    return Figure(
        amount, SOURCE, "computed", low=amount * SHARE_LOW, high=amount * SHARE_HIGH,
        basis="What the hole passes at the lower of both gauges, an equal-pressure torch; the band is a discharge of 0.6 to "
        "0.9 in place of 0.75.",
    )  # fmt: skip


def _given(figure: Figure, makers: float | None) -> Figure:
    return figure if makers is None else as_its_maker_prints(makers)


def practice_gauges(wanted: Wanted, process: str) -> tuple[Figure, Figure]:
    """Gauges of oxygen and fuel gas where no table is printed; the maker's come first."""
    rows = {row.fuel: row for row in table("flame-gauges") if row.process == process}
    row = rows.get(wanted.fuel, rows["other"])
    most = GAUGE_LIMIT[wanted.rules] if wanted.fuel == "acetylene" else row.fuel_high
    said = "Common practice with a wide band; what the maker of the tip prints comes before it"
    oxygen = Figure(row.oxygen_usual, row.source, row.how_sure, low=row.oxygen_low, high=row.oxygen_high, basis=f"{said}.")
    basis = f"{said}; {row.words}." if row.words else f"{said}."
    fuel = Figure(row.fuel_usual, row.source, row.how_sure, low=row.fuel_low, high=min(row.fuel_high, most), basis=basis)
    return _given(oxygen, wanted.oxygen_gauge), _given(fuel, wanted.fuel_gauge)


def brazing_hole(process: str, metal: str, thickness: Length) -> Figure:
    """Hole of the brazing tip to start from for a metal, m.

    Args:
        process: `brazing`, `braze-welding` or `soldering`.
        metal: Id of the metal.
        thickness: m.

    Raises:
        ValueError: The metal is thinner than any that a tip is printed for.
    """
    if metal != "copper" or process == "soldering":
        return brazing_tip(thickness)
    alike = steel_of_same_flow(thickness, metal)
    printed = brazing_tip(alike)
    return replace(
        printed, how_sure="memory",
        basis=f"{printed.basis}. Copper carries the heat off and wants a flame much larger than steel (Manly 1916): that for "
        f"metal {plain_number(alike / thickness, 3)} times as thick is taken, as for welding",
    )  # fmt: skip


def brazing_gauge(gas: str) -> Figure:
    """Gauge of one gas for brazing with acetylene at an equal-pressure torch, Pa.

    Args:
        gas: `oxygen` or `acetylene`.
    """
    rows = table("brazing-orifices-navy")
    texts = welding_gauges_in_print("acetylene")
    printed = [getattr(row, f"{gas}_gauge") for row in rows]
    return Figure(
        USUAL_GAUGE, "", "practice", low=texts.low, high=max(texts.high, *printed),
        basis="A small equal-pressure tip runs near 5 psi of each gas, the pressure of the welding tip with that hole. The "
        "pressures of the brazing table are not followed: it prints 1 psi for thin metal, for the numbered tips of one old "
        "torch, while its own steps set the acetylene to 5 to 7 psi; the band ends at its highest.",
    )  # fmt: skip


def _hole_of_the_work(wanted: Wanted, hole: Figure) -> Figure:
    """The hole of the brazing table with the band of the work that is asked for."""
    if wanted.process == "soldering":
        assert hole.low is not None
        return replace(
            hole, low=hole.low * SOLDER_SHARE**0.5,
            basis=f"{hole.basis}; printed for brazing. Solder takes about a third of the heat: begin with the "
            "smallest tip in the band that you have",
        )  # fmt: skip
    if wanted.process == "braze-welding":
        try:
            other = welding_orifice(wanted.thickness)
        except ValueError:
            return hole
        basis = f"{hole.basis}; no source prints braze welding apart, the band reaches to the welding tip"
        return replace(spread(hole, [replace(other, low=None, high=None)]), basis=basis)
    return hole


def brazing_setting(wanted: Wanted) -> Setting:
    """Setting for brazing, soldering or braze welding with acetylene: the printed hole at usual pressures.

    Raises:
        ValueError: The metal is thinner than any that a tip is printed for.
    """
    hole = _given(_hole_of_the_work(wanted, brazing_hole(wanted.process, wanted.metal, wanted.thickness)), wanted.orifice)
    oxygen = _given(brazing_gauge("oxygen"), wanted.oxygen_gauge)
    fuel = _given(brazing_gauge("acetylene"), wanted.fuel_gauge)
    assert hole.value is not None
    flow = fuel_passed("acetylene", hole.value, 1.0, oxygen, fuel)
    if hole.low is not None and hole.high is not None:
        assert flow.value is not None
        flow = replace(
            flow, low=flow.value * (hole.low / hole.value) ** 2, high=flow.value * (hole.high / hole.value) ** 2,
            basis="What the hole passes at the lower of both gauges, an equal-pressure torch; the band is what the holes "
            "of its band pass.",
        )  # fmt: skip
    if wanted.process == "soldering":
        flow = replace(flow, basis=f"{flow.basis} Solder takes about a third of the heat of a braze.")
    return Setting(
        orifice=hole, drill=nearest_drill_said(hole.value), oxygen_gauge=oxygen, fuel_gauge=fuel, oxygen_flow=oxygen_of("acetylene", flow), fuel_flow=flow,
        holes=Figure(1.0, "", "practice", basis="The table is for tips of one hole."),
    )  # fmt: skip


def same_heat_setting(wanted: Wanted) -> Setting:
    """Setting for brazing or soldering with another fuel: the heat of the printed acetylene tip.

    Raises:
        ValueError: The thickness is below the table of acetylene tips.
    """
    fuel, steps = wanted.fuel, wanted.steps
    printed = brazing_setting(
        replace(wanted, fuel="acetylene", orifice=None, oxygen_gauge=None, fuel_gauge=None)
    )
    assert printed.fuel_flow.value is not None
    oxygen, gas = practice_gauges(wanted, "brazing")
    flow = worked(
        steps, "Fuel gas for the heat of the acetylene tip", flow_of_same_heat,
        known_flow=printed.fuel_flow.value, known_heat_value=printed_heat("acetylene"),
        heat_value=printed_heat(fuel),
    )  # fmt: skip
    least = WEAK * (SOLDER_SHARE if wanted.process == "soldering" else 1.0)
    if wanted.orifice is not None:
        hole = as_its_maker_prints(wanted.orifice)
        fuel_flow = fuel_passed(fuel, wanted.orifice, 1.0, oxygen, gas)
    else:
        area = _area(wanted, flow, oxygen, gas)
        diameter = worked(steps, "Hole, if it were one", hole_diameter, area=area)
        hole = Figure(
            diameter, SOURCE, "computed", low=diameter * (least / SHARE_HIGH) ** 0.5, high=diameter * WIDE,
            basis="Passes the gas of the heat of the printed acetylene tip, counted as one hole: several small ones count by "
            f"their areas together. {SUM}",
        )  # fmt: skip
        fuel_flow = Figure(
            flow, SOURCE, "computed", low=flow * SHARE_LOW * least, high=flow * SHARE_HIGH * STRONG,
            basis=f"The heat of the printed acetylene tip, cone and envelope together. {SUM}",
        )  # fmt: skip
    assert hole.value is not None
    return Setting(
        orifice=hole, drill=nearest_drill_said(hole.value), oxygen_gauge=oxygen, fuel_gauge=gas, oxygen_flow=oxygen_of(fuel, fuel_flow), fuel_flow=fuel_flow,
        holes=Figure(
            None, "", "practice", words="counted as one",
            basis="A tip for this gas often has several small holes: their areas count together.",
        ),
    )  # fmt: skip


def _area(wanted: Wanted, flow: FreeGasFlow, *gauges: Figure) -> Area:
    """Area of all holes for a flow of fuel, m²."""
    at = min(gauge.value or 0.0 for gauge in gauges)
    return worked(
        wanted.steps, "Area of the holes together", holes_area,
        flow=flow * (1.0 + torch_ratio(wanted.fuel).ratio), passed_by_area=passed_by(wanted.fuel, 1.0, at),
    )  # fmt: skip


def heating_setting(wanted: Wanted) -> Setting:
    """Setting for heating: fuel gas, and holes of a multiflame tip, from the heat wanted."""
    fuel, steps = wanted.fuel, wanted.steps
    oxygen, gas = practice_gauges(wanted, "heating")
    flow = worked(
        steps, "Fuel gas for the heat", flow_for_heat,
        power=wanted.heat, efficiency=HEATING_EFFICIENCY, heat_value=printed_heat(fuel),
    )  # fmt: skip
    area = _area(wanted, flow, oxygen, gas)
    share = area / orifice_area(wanted.orifice or ONE_HOLE)
    holes = max(ceil(share * (1 - HAIR)), 1)
    if wanted.orifice is not None:
        hole = as_its_maker_prints(wanted.orifice)
    else:
        holes = min(holes, MOST_HOLES)
        worth = min(max(share, 1.0), float(MOST_HOLES))
        diameter = worked(steps, "One hole of them", hole_diameter, area=area, holes=worth)
        hole = Figure(
            diameter, SOURCE, "computed", low=diameter * LEAST_HOLE, high=diameter * MOST_HOLE,
            basis=f"One of {holes} holes that pass the gas of the heat together, or a little more. {SUM}",
        )  # fmt: skip
    assert hole.value is not None
    fuel_flow = Figure(
        flow, "", "practice", low=flow * LEAST_GAS, high=flow * MOST_GAS,
        basis="The heat wanted over the share that enters the work: 30 % taken, 20 to 40 % the band, as “Warm a part” takes it.",
    )  # fmt: skip
    return Setting(
        orifice=hole, drill=nearest_drill_said(hole.value), oxygen_gauge=oxygen, fuel_gauge=gas, oxygen_flow=oxygen_of(fuel, fuel_flow), fuel_flow=fuel_flow,
        holes=Figure(float(holes), "", "practice", basis="Holes near 1 mm, common practice, as many as pass the gas."),
    )  # fmt: skip
