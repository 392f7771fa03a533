"""A torch set for a thickness of steel: tip, pressures at the torch, flows, regulator marks."""

from dataclasses import dataclass

from calc.calculators.regulator_mark import regulator_mark
from calc.calculators.tip_flow import tip_flow
from calc.declare import Table
from calc.errors import InputError
from calc.figures import Figure
from calc.formulas.gas.acetylene import GAUGE_LIMIT
from calc.formulas.gas.supply import oxygen_for_fuel
from calc.formulas.setup.drills import nearest_drill
from calc.formulas.setup.flows import acetylene_flow as flow_in_print
from calc.formulas.setup.injector import injector_setting
from calc.formulas.setup.tips import orifices_in_print, welding_orifice
from calc.formulas.setup.working_gauges import equal_pressure_gauge, welding_gauges_in_print
from calc.tables import source_words
from calc.units import from_si, to_si

USUAL_GAUGE = to_si(5.0, "psi")
"""A small equal-pressure tip runs near 5 psi of each gas: common practice, no source."""
RATIO = 1.1
RATIO_BAND = (1.04, 1.14)
RATIO_SOURCE = "army-od0017 neutral flame"


@dataclass(frozen=True, slots=True)
class Setting:
    """Tip, both gauges at the torch and both flows for one kind of torch."""

    orifice: Figure
    drill: Figure
    oxygen_gauge: Figure
    acetylene_gauge: Figure
    oxygen_flow: Figure
    acetylene_flow: Figure


def _widened(value: float, figure: Figure, *others: float | None) -> Figure:
    ends = [value, *(e for e in (figure.value, figure.low, figure.high, *others) if e is not None)]
    return Figure(value, figure.source, figure.how_sure, min(ends), max(ends), figure.basis)


def _maker(value: float) -> Figure:
    return Figure(value, "", "practice", basis="As the maker prints it; it comes before ours.")


def equal_pressure_setting(
    thickness: float,
    technique: str,
    orifice: float | None,
    oxygen: float | None,
    acetylene: float | None,
    rules: str,
) -> Setting:
    """Tip, pressures at the torch and flows of an equal-pressure torch.

    Args:
        thickness: Of the steel, m.
        technique: `leftward` or `rightward`.
        orifice: The tip's hole as its maker prints it, m, or None.
        oxygen: Oxygen gauge as the maker prints it, Pa, or None.
        acetylene: Acetylene gauge likewise.
        rules: Rule set.

    Returns:
        What the maker prints where it was given, else where to start.

    Raises:
        ValueError: The thickness is outside the tables.
    """
    printed = welding_orifice(thickness)
    hole = printed if orifice is None else _maker(orifice)
    assert hole.value is not None
    spread = {gas: welding_gauges_in_print(gas) for gas in ("oxygen", "acetylene")}
    try:
        textbook = equal_pressure_gauge(thickness).value
    except ValueError:
        textbook = None

    def gauge(gas: str, given: float | None) -> Figure:
        if given is not None:
            return _maker(given)
        band = spread[gas]
        ends = [band.low, band.high, USUAL_GAUGE] + ([textbook] if textbook else [])
        return Figure(
            USUAL_GAUGE, "", "practice", min(ends), max(ends),
            "A small equal-pressure tip runs near 5 psi of each gas; the band is what texts print.",
        )  # fmt: skip

    oxygen_figure, acetylene_figure = gauge("oxygen", oxygen), gauge("acetylene", acetylene)
    at_tip = min(oxygen_figure.value or 0.0, acetylene_figure.value or 0.0)
    flow = tip_flow("acetylene", hole.value, 1.0, at_tip, RATIO, 293.15, rules).results
    print_flow = flow_in_print(thickness, "low-carbon-steel", technique)
    passed = flow.fuel_flow
    assert passed.value is not None
    fuel = _widened(passed.value, passed, print_flow.low, print_flow.high, print_flow.value)
    drill = nearest_drill(hole.value)
    return Setting(
        hole,
        Figure(None, drill.source, drill.how_sure, words=f"#{drill.drill}", basis="Nearest by diameter."),
        oxygen_figure,
        acetylene_figure,
        _oxygen_of(fuel),
        fuel,
    )


def _oxygen_of(fuel: Figure) -> Figure:
    assert fuel.value is not None
    return Figure(
        oxygen_for_fuel(fuel.value, RATIO), RATIO_SOURCE, "read",
        oxygen_for_fuel(fuel.low or fuel.value, RATIO_BAND[0]),
        oxygen_for_fuel(fuel.high or fuel.value, RATIO_BAND[1]),
        "A neutral flame takes 1.04 to 1.14 of oxygen for one of acetylene, 1.1 taken; the air brings the rest.",
    )  # fmt: skip


def insert_setting(
    thickness: float, technique: str, oxygen: float | None, acetylene: float | None
) -> Setting:
    """Insert, pressures and flows of an injector torch, as published; no nozzle sum.

    Args:
        thickness: Of the steel, m.
        technique: `leftward` or `rightward`.
        oxygen: Oxygen gauge as the maker prints it, Pa, or None.
        acetylene: Acetylene gauge likewise.

    Returns:
        The published set for the thickness, the maker's pressures before it.
    """
    printed = injector_setting(thickness)
    flows = flow_in_print(thickness, "low-carbon-steel", technique)
    fuel = _widened(
        printed.acetylene_flow,
        Figure(
            printed.acetylene_flow, printed.source, printed.how_sure, flows.low, flows.high,
            "Nominal flow of the insert for this thickness; the band is what other sources print.",
        ),
    )  # fmt: skip
    band = printed.acetylene_gauge
    middle = (band.low + band.high) / 2
    sizes = f"insert marked {printed.thinnest * 1000:g} to {printed.thickest * 1000:g} mm"
    none = Figure(
        None, printed.source, printed.how_sure, words=sizes, basis="An injector torch is set by insert."
    )
    return Setting(
        none,
        none,
        printed.oxygen_gauge if oxygen is None else _maker(oxygen),
        Figure(
            middle, band.source, band.how_sure, band.low, band.high, "Middle of the printed range."
        ) if acetylene is None else _maker(acetylene),
        _oxygen_of(fuel),
        fuel,
    )  # fmt: skip


def marked_regulator(
    gas: str, wanted: Figure, flow: Figure, bore: float, length: float, torch_drop: float, rules: str
) -> Figure:
    """Regulator mark that gives a torch its pressure through a hose, with its band.

    Args:
        gas: `oxygen` or `acetylene`.
        wanted: Gauge at the torch, Pa, with its band.
        flow: Free gas, m³/s.
        bore: Of the hose, m.
        length: Of the hose, m.
        torch_drop: What valves, mixer and arrestors take, Pa.
        rules: Rule set.

    Returns:
        The mark, Pa; its band never passes the limit of acetylene.

    Raises:
        InputError: The pressure cannot be given within the limit.
    """
    assert wanted.value is not None
    try:
        mark = regulator_mark(
            gas, wanted.value, bore, length, flow.value or 0.0, torch_drop, rules
        ).results.mark
    except InputError:
        raise InputError(
            "hose_length",
            f"Length of the hoses: with these hoses the {gas} regulator cannot give the torch its pressure "
            "within the limit; give a shorter or wider hose, or a lower pressure.",
        ) from None
    assert mark.value is not None
    within = {"acetylene": GAUGE_LIMIT[rules], "oxygen": 40e5}[gas]
    return Figure(
        mark.value, wanted.source, wanted.how_sure, min(wanted.low or mark.value, mark.value),
        min(max(wanted.high or mark.value, mark.value), within), f"{wanted.basis} {mark.basis}",
    )  # fmt: skip


def orifices_by_source(thickness: float, rules: str) -> Table:
    """What each source prints for the tip's hole, and which one is followed.

    Args:
        thickness: Of the steel, m.
        rules: Rule set, which decides the unit.
    """
    unit = "in" if rules == "us" else "mm"
    rows = []

    def size(value: float | None) -> str:
        return "" if value is None else f"{from_si(value, unit):.{3 if rules == 'us' else 2}f}"

    followed = welding_orifice(thickness)
    for figure in (followed, *orifices_in_print(thickness)):
        span = (
            size(figure.value)
            if figure is followed or figure.low == figure.high
            else f"{size(figure.low)} to {size(figure.high)}"
        )
        mark = "followed" if figure is followed else ""
        rows.append((source_words(figure.source) or "common practice", span, mark))
    return Table(
        f"Hole in the tip for this thickness, {unit}, by source", ("Source", unit, ""), tuple(rows),
        "Brazing tables use a hole one or two sizes larger at the same thickness.",
    )  # fmt: skip
