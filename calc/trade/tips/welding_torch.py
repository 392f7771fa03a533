"""Welding with acetylene: tip, pressures at the torch, flows and regulator marks for a thickness."""

from dataclasses import dataclass, replace

from calc.ask.errors import InputError
from calc.data.tables import table
from calc.declare import Caution
from calc.formulas.gas.acetylene import GAUGE_LIMIT
from calc.formulas.gas.properties import TWENTY_CELSIUS
from calc.formulas.gas.supply import oxygen_for_fuel
from calc.formulas.setup.drills import nearest_drill
from calc.formulas.setup.flows import acetylene_flow as flow_in_print
from calc.formulas.setup.flows import steel_of_same_flow
from calc.formulas.setup.injector import injector_setting
from calc.formulas.setup.joined import figure_of_place, inside, place_at
from calc.formulas.setup.printed import spread
from calc.formulas.setup.tips import welding_orifice
from calc.formulas.setup.welding_rows import welding_gauges
from calc.formulas.setup.working_gauges import (
    READ_SAID,
    READING,
    SMALL_TIP,
    equal_pressure_gauge,
    welding_gauges_in_print,
)
from calc.trade.gas.regulators import regulator_setting
from calc.trade.tips.flow import gas_through_tip
from calc.values.figures import Figure

MOST = 40e5
"""No delivery gauge of an outfit reads higher, Pa: common practice."""
RATIO = 1.1
RATIO_BAND = (1.04, 1.14)
RATIO_SOURCE = "army-od0017 neutral flame"
NEAR_NOMINAL = 1 / 6
"""Share by which an insert is turned up or down from its nominal flow: common practice, no source."""
ONE_HOLE = Figure(1.0, "", "practice", basis="A welding tip has one hole.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """Tip, both gauges at the torch and both flows for one kind of torch.

    Attributes:
        orifice: Hole of the tip, m; for cutting the hole of the cutting oxygen.
        drill: Number drill nearest to it, in words.
        oxygen_gauge: Pa above the atmosphere.
        fuel_gauge: Likewise.
        oxygen_flow: All oxygen that the torch takes, m³/s of free gas.
        fuel_flow: Likewise.
        holes: Holes for the flame; words where only a range is printed.
    """

    orifice: Figure
    drill: Figure
    oxygen_gauge: Figure
    fuel_gauge: Figure
    oxygen_flow: Figure
    fuel_flow: Figure
    holes: Figure = ONE_HOLE


def widened(value: float, figure: Figure, *others: float | None) -> Figure:
    """A value with the source of a figure, and a band that holds that figure and others."""
    ends = [value, *(e for e in (figure.value, figure.low, figure.high, *others) if e is not None)]
    return Figure(value, figure.source, figure.how_sure, low=min(ends), high=max(ends), basis=figure.basis)


def as_its_maker_prints(value: float) -> Figure:
    """A figure that the reader took from the maker of the tip."""
    return Figure(value, "", "practice", basis="As the maker prints it; it comes before ours.")


def nearest_drill_said(orifice: float) -> Figure:
    """Number drill nearest to a hole, in words."""
    try:
        drill = nearest_drill(orifice)
    except ValueError as error:
        return Figure(None, "asme-b94-11m", "read-m", words="none", basis=f"{error}.".capitalize())
    return Figure(None, drill.source, drill.how_sure, words=f"#{drill.drill}", basis="Nearest by diameter.")


def sizes_larger(metal: str) -> float:
    """Tip sizes by which print goes above the tip for steel of the same gas; 0 where it names none."""
    rows = [row.sizes_larger for row in table("tip-sizes-by-metal") if row.metal == metal]
    return max(0.0, *(float(size) for size in rows if size is not None), 0.0)


def welding_tip(thickness: float, metal: str) -> Figure:
    """Hole of the welding tip to start from, of one hole.

    Args:
        thickness: Of the metal, m.
        metal: As in `formulas.setup.flows.acetylene_flow`.

    Returns:
        m, with the number drill in words and what the other sources print as its band.

    Raises:
        ValueError: No source reaches the thickness.
    """
    alike = steel_of_same_flow(thickness, metal)
    printed = welding_orifice(alike)
    if metal == "low-carbon-steel":
        return printed
    if sizes_larger(metal):
        row = next(row for row in table("tip-sizes-by-metal") if row.metal == metal)
        larger = welding_orifice(alike, sizes_larger(metal))
        return spread(replace(larger, source=row.source, how_sure=printed.how_sure, basis=row.words), [printed])
    return spread(
        replace(printed, basis=f"the tip for steel that takes the same gas: {printed.basis}"),
        _holes_of_the_rule(thickness, metal),
    )


def _holes_of_the_rule(thickness: float, metal: str) -> list[Figure]:
    """Holes for the ends of a metal's own rule of flow, and for steel as thick as the metal."""
    rule, alike = flow_in_print(thickness, metal, "leftward"), steel_of_same_flow(thickness, metal)
    assert rule.value is not None
    found = []
    for steel in (
        thickness,
        *(alike * end / rule.value for end in (rule.low, rule.high) if end is not None),
    ):
        try:
            found.append(welding_orifice(steel))
        except ValueError:
            continue
    return found


BAND_OF = {
    "oxygen": "The band holds a UK textbook's rows about this thickness, and what texts print for a small tip. A navy "
    "manual's oxygen pressure is not in it, as it names no tip, nor is a range of 1916, which runs over all tips.",
    "acetylene": "The band is what texts print.",
}
"""What the band of a gauge for welding rests on, by gas."""


def _welding_gauge(gas: str, steel: float, larger: float) -> Figure:
    """Gauge that goes with the tip: the rows of holes have one each."""
    band = welding_gauges_in_print(gas, SMALL_TIP if gas == "oxygen" else None)
    ends = [band.low, band.high]
    try:
        textbook = equal_pressure_gauge(steel)
    except ValueError:
        pass
    else:
        ends += [textbook.low or band.low, textbook.high or band.high]
    gauges = welding_gauges()
    ours = figure_of_place(gauges, place_at(gauges, steel) + larger, "")
    said = (
        "The UK textbook's row, both gases alike." if ours.source
        else "A small equal-pressure tip runs near 5 psi of each gas."
    )  # fmt: skip
    ours = replace(ours, basis=f"{said} {BAND_OF[gas]}")
    return inside(widened(ours.value or 0.0, ours, *ends), READING / (ours.value or READING), READ_SAID)


def equal_pressure_setting(
    *,
    thickness: float,
    technique: str,
    orifice: float | None,
    oxygen: float | None,
    acetylene: float | None,
    rules: str,
    metal: str = "low-carbon-steel",
) -> Setting:
    """Tip, pressures at the torch and flows of an equal-pressure torch.

    Args:
        thickness: Of the metal, m.
        technique: `leftward` or `rightward`.
        orifice: The tip's hole as its maker prints it, m, or None.
        oxygen: Oxygen gauge as the maker prints it, Pa, or None.
        acetylene: Acetylene gauge likewise.
        rules: Rule set.
        metal: As in `formulas.setup.flows.acetylene_flow`.

    Returns:
        What the maker prints where it was given, else where to start.

    Raises:
        ValueError: The thickness is outside the tables.
    """
    hole = welding_tip(thickness, metal) if orifice is None else as_its_maker_prints(orifice)
    assert hole.value is not None
    steel = steel_of_same_flow(thickness, metal)
    oxygen_figure, acetylene_figure = (
        _welding_gauge(gas, steel, sizes_larger(metal)) if given is None else as_its_maker_prints(given)
        for gas, given in (("oxygen", oxygen), ("acetylene", acetylene))
    )
    at_tip = min(oxygen_figure.value or 0.0, acetylene_figure.value or 0.0)
    flow = gas_through_tip(
        fuel="acetylene", orifice=hole.value, holes=1.0, gauge=at_tip, oxygen_ratio=RATIO, temperature=293.15, rules=rules
    )
    print_flow = flow_in_print(thickness, metal, technique)
    passed = flow.fuel_flow
    assert passed.value is not None
    fuel = widened(passed.value, passed, print_flow.low, print_flow.high, print_flow.value)
    return Setting(
        orifice=hole,
        drill=nearest_drill_said(hole.value),
        oxygen_gauge=oxygen_figure,
        fuel_gauge=acetylene_figure,
        oxygen_flow=neutral_oxygen(fuel),
        fuel_flow=fuel,
    )


def neutral_oxygen(fuel: Figure) -> Figure:
    """Oxygen that a neutral flame takes from the cylinder for a flow of acetylene."""
    assert fuel.value is not None
    return Figure(
        oxygen_for_fuel(fuel.value, RATIO), RATIO_SOURCE, "read",
        low=oxygen_for_fuel(fuel.low or fuel.value, RATIO_BAND[0]),
        high=oxygen_for_fuel(fuel.high or fuel.value, RATIO_BAND[1]),
        basis="A neutral flame takes 1.04 to 1.14 of oxygen for one of acetylene, 1.1 taken; the air brings the rest.",
    )  # fmt: skip


def insert_setting(
    thickness: float,
    technique: str,
    oxygen: float | None,
    acetylene: float | None,
    metal: str = "low-carbon-steel",
) -> Setting:
    """Insert, pressures and flows of an injector torch, as published; no nozzle sum.

    Args:
        thickness: Of the metal, m.
        technique: `leftward` or `rightward`.
        oxygen: Oxygen gauge as the maker prints it, Pa, or None.
        acetylene: Acetylene gauge likewise.
        metal: As in `formulas.setup.flows.acetylene_flow`.

    Returns:
        The published set for the thickness, the maker's pressures before it.

    Raises:
        ValueError: No insert is printed for the thickness.
    """
    printed = injector_setting(steel_of_same_flow(thickness, metal), int(sizes_larger(metal)))
    flows = flow_in_print(thickness, metal, technique)
    flow = printed.acetylene_flow
    assert flow.value is not None
    said = "Nominal flow of an insert at the middle of its range; the band is what other sources print."
    fuel = widened(flow.value, replace(flow, basis=said), flows.low, flows.value, flows.high)
    fuel = inside(fuel, NEAR_NOMINAL, "An insert is turned up and down by about a sixth.")
    band = printed.acetylene_gauge
    middle = (band.low + band.high) / 2
    sizes = f"insert marked {printed.thinnest * 1000:g} to {printed.thickest * 1000:g} mm"
    none = Figure(
        None, printed.source, printed.how_sure, words=sizes, basis="An injector torch is set by insert."
    )
    return Setting(
        orifice=none,
        drill=none,
        oxygen_gauge=printed.oxygen_gauge if oxygen is None else as_its_maker_prints(oxygen),
        fuel_gauge=Figure(
            middle, band.source, band.how_sure, low=band.low, high=band.high, basis="Middle of the printed range."
        ) if acetylene is None else as_its_maker_prints(acetylene),
        oxygen_flow=neutral_oxygen(fuel),
        fuel_flow=fuel,
    )  # fmt: skip


def marked_regulator(
    *,
    gas: str, wanted: Figure, flow: Figure, bore: float, length: float, torch_drop: float, rules: str
) -> tuple[Figure, tuple[Caution, ...]]:
    """Regulator mark that gives a torch its pressure through a hose, with its band.

    Args:
        gas: Id of the gas.
        wanted: Gauge at the torch, Pa, with its band.
        flow: Free gas, m³/s.
        bore: Of the hose, m.
        length: Of the hose, m.
        torch_drop: What valves, mixer and arrestors take, Pa.
        rules: Rule set.

    Returns:
        The mark, Pa, whose band never passes the limit of acetylene; and what comes with it.

    Raises:
        InputError: The pressure cannot be given within the limit.
    """
    assert wanted.value is not None
    try:
        got = regulator_setting(
            gas=gas, torch_gauge=wanted.value, bore=bore, length=length, flow=flow.value or 0.0, torch_drop=torch_drop,
            temperature=TWENTY_CELSIUS, rules=rules,
        )  # fmt: skip
    except InputError:
        raise InputError(
            "hose_length",
            "Length of the hoses", f"with these hoses the {gas.replace('-', ' ')} regulator cannot give the torch its pressure "
            "within the limit; give a shorter or wider hose, or a lower pressure.",
        ) from None
    mark = got.mark
    assert mark.value is not None
    within = GAUGE_LIMIT[rules] if gas == "acetylene" else MOST
    figure = Figure(
        mark.value, wanted.source, wanted.how_sure, low=min(wanted.low or mark.value, mark.value),
        high=min(max(wanted.high or mark.value, mark.value), within), basis=f"{wanted.basis} {mark.basis}",
    )  # fmt: skip
    return figure, got.cautions
