"""Gas that a tip passes: each gas, and the speed at which the mixture leaves."""

from dataclasses import dataclass
from typing import Annotated

from calc.data.tables import table
from calc.declare import Answer, Beside, Field, Figure, Picture, Shown, Step, Table, calculator
from calc.declare.inputs import FREE_GAS_FLOW, GAUGE
from calc.formulas.gas.acetylene import GAUGE_LIMIT
from calc.formulas.gas.nozzle import orifice_area, orifice_flow
from calc.formulas.gas.possible import highest_gauge
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.properties import oxygen_ratio as oxygen_ratio_of
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.show.scales import scale
from calc.trade.fields import FUEL, FUELS, GAS_TEMPERATURE, HOLES, ORIFICE, OXYGEN_RATIO
from calc.trade.tips.flow import gas_through_tip
from calc.values.units import from_si, to_si


@dataclass(frozen=True, slots=True)
class TipFlow:
    """Flow through a tip."""

    fuel_flow: Annotated[Figure, Shown("Fuel gas", FREE_GAS_FLOW, free_gas=True)]
    oxygen_flow: Annotated[Figure, Shown("Oxygen", FREE_GAS_FLOW, free_gas=True)]
    exit_speed: Annotated[Figure, Shown("Speed in the hole", ("ft/s", "m/s"))]
    margin: Annotated[Figure, Shown("Against the flame running back", words=True)]


def _margin(fuel: str, speed: float, rules: str) -> Figure:
    row = next(row for row in table("burning-velocities") if row.fuel == fuel)
    times = speed / row.high
    unit = "ft/s" if rules == "us" else "m/s"
    burns = f"{from_si(row.low, unit):.0f} to {from_si(row.high, unit):.0f} {unit}"
    if times >= 5:
        words = f"the mixture leaves many times faster than the flame can run ({burns})"
    elif times >= 2:
        words = f"little room: the flame runs at {burns}; expect pops if the tip gets hot or dirty"
    else:
        words = f"no room: the flame runs at {burns} and can burn back into the tip"
    return Figure(
        None, row.source, row.how_sure, words=words,
        basis="A comparison of speeds only. It approves no torch: follow its maker's pressures.",
    )  # fmt: skip


def _other_gauges(
    *,
    fuel: str, ratio: float, area: float, gauge: float, temperature: float, rules: str
) -> Beside:
    shown, flow = scale("gauge", rules), scale("flow", rules)
    unit = "ft/s" if rules == "us" else "m/s"
    marks = (1, 2, 3, 5, 8, 12, 15, 20, 30) if rules == "us" else (0.1, 0.2, 0.35, 0.5, 0.8, 1, 1.5, 2)
    most = GAUGE_LIMIT[rules] if fuel == "acetylene" else min(
        max(4 * gauge, to_si(marks[3], shown.unit)), highest_gauge(fuel, temperature)
    )
    rows, lines = [], {fuel: [], "oxygen": []}  # type: ignore[var-annotated]
    for mark in marks:
        at = to_si(mark, shown.unit)
        if at > most * (1 + 1e-9):
            break
        found = orifice_flow(
            gases={fuel: 1.0, "oxygen": ratio}, area=area, pressure=absolute_pressure(at), temperature=temperature
        )
        for gas, points in lines.items():
            points.append((float(mark), flow.number(found.flows[gas])))
        rows.append(
            (
                f"{mark:g}", flow.text(found.flows[fuel]), flow.text(found.flows["oxygen"]),
                f"{from_si(found.speed, unit):.0f}",
            )
        )  # fmt: skip
    title = "This tip at other gauges"
    sentence = "Flow grows less than the pressure does: for much more heat take a larger tip."
    chart = line_chart(
        title=title, sentence=sentence, x_label=f"Gauge at the tip, {shown.name}", y_label=f"Flow, {flow.name}",
        lines=[
            Line(name, tuple(lines[gas]), at=0.5, below=below)
            for gas, name, below in ((fuel, FUELS[fuel], ratio > 1), ("oxygen", "Oxygen", ratio <= 1))
        ],
        marks=[Mark("yours", shown.number(gauge), None)],
    )  # fmt: skip
    beside = Table(
        title, (f"Gauge, {shown.name}", f"Fuel gas, {flow.name}", f"Oxygen, {flow.name}", f"Speed, {unit}"), tuple(rows),
        "Middle figures; the band is as wide as above. It is no list of settings: follow the maker's.",
    )  # fmt: skip
    return (beside,), (Picture(chart, title, sentence),)


@calculator("tip-flow", "Gas that a tip passes")
def tip_flow(
    *,
    fuel: Annotated[str, FUEL],
    orifice: Annotated[float, ORIFICE],
    holes: Annotated[float, HOLES],
    gauge: Annotated[
        float,
        Field(
            "Gauge at the tip",
            GAUGE,
            example={"us": "5 psi", "iso": "0.35 bar", "uk": "0.35 bar"},
            low="0.1 psi",
            high="60 psi",
            hint="Both gases alike, at the torch: hose, valves and arrestors take some on the way.",
        ),
    ],
    oxygen_ratio: Annotated[float | None, OXYGEN_RATIO],
    temperature: Annotated[float, GAS_TEMPERATURE],
    rules: str,
) -> Answer[TipFlow]:
    """Flow of each gas through an equal-pressure tip, and how fast the mixture leaves.

    An upper estimate: an injector torch draws its fuel in and has a published
    set of pressures instead.
    """  # fmt: skip
    steps: list[Step] = []
    ratio = oxygen_ratio_of(fuel) if oxygen_ratio is None else oxygen_ratio
    found = gas_through_tip(
        fuel=fuel, orifice=orifice, holes=holes, gauge=gauge, oxygen_ratio=ratio, temperature=temperature, rules=rules,
        steps=steps,
    )  # fmt: skip
    return Answer(
        TipFlow(
            fuel_flow=found.fuel_flow,
            oxygen_flow=found.oxygen_flow,
            exit_speed=found.exit_speed,
            margin=_margin(fuel, found.exit_speed.value or 0.0, rules),
        ),
        cautions=found.cautions,
        steps=tuple(steps),
        beside=lambda: _other_gauges(fuel=fuel, ratio=ratio, area=orifice_area(orifice, holes), gauge=gauge, temperature=temperature, rules=rules),
    )
