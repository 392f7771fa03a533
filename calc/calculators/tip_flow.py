"""Gas that a tip passes: each gas, and the speed at which the mixture leaves."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import (
    FREE_GAS_FLOW,
    GAUGE,
    Answer,
    Beside,
    Field,
    Figure,
    Picture,
    Shown,
    Step,
    Table,
    calculator,
    worked,
)
from calc.errors import InputError
from calc.formulas.gas.acetylene import GAUGE_LIMIT
from calc.formulas.gas.nozzle import orifice_area, orifice_flow
from calc.formulas.gas.possible import highest_gauge
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.properties import oxygen_ratio as oxygen_ratio_of
from calc.hazards import brought, caution
from calc.sheets.asked import FUEL, FUELS, GAS_TEMPERATURE, HOLES, ORIFICE, OXYGEN_RATIO
from calc.sheets.possible import require_possible
from calc.sheets.scales import scale
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.tables import table
from calc.units import from_si, to_si

SHARE_LOW, SHARE_HIGH = 0.6 / 0.75, 0.9 / 0.75
LEAST_GAUGE = to_si(0.1, "psi")
SOURCE = "gas-dynamics discharge 0.75 from memory"


@dataclass(frozen=True, slots=True)
class TipFlow:
    """Flow through a tip."""

    fuel_flow: Annotated[Figure, Shown("Fuel gas", FREE_GAS_FLOW, free_gas=True)]
    oxygen_flow: Annotated[Figure, Shown("Oxygen", FREE_GAS_FLOW, free_gas=True)]
    exit_speed: Annotated[Figure, Shown("Speed in the hole", ("ft/s", "m/s"))]
    margin: Annotated[Figure, Shown("Against the flame running back", words=True)]


def acetylene_limit_words(rules: str) -> str:
    """The highest acetylene gauge of a rule set, as a reader sees it."""
    return "15 psi" if rules == "us" else "1.5 bar"


def require_acetylene_gauge(fuel: str, gauge: float, rules: str, field: str, label: str) -> None:
    """Refuse acetylene above the rule set's limit.

    Args:
        fuel: Id of the fuel gas.
        gauge: Gauge wanted, Pa.
        rules: Rule set.
        field: Name of the input, for the message.
        label: Its label.

    Raises:
        InputError: The fuel is acetylene and the gauge is above the limit.
    """
    if fuel == "acetylene" and gauge > GAUGE_LIMIT[rules] * (1 + 1e-9):
        raise InputError(
            field,
            f"{label}: acetylene is never used above {acetylene_limit_words(rules)} on the gauge, it can "
            f"explode by itself; give 0 to {acetylene_limit_words(rules)}.",
        )


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
            {fuel: 1.0, "oxygen": ratio}, area, absolute_pressure(at), temperature=temperature
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
        title, sentence, f"Gauge at the tip, {shown.name}", f"Flow, {flow.name}",
        [
            Line(name, tuple(lines[gas]), at=0.5, below=below)
            for gas, name, below in ((fuel, FUELS[fuel], ratio > 1), ("oxygen", "Oxygen", ratio <= 1))
        ],
        [Mark("yours", shown.number(gauge), None)],
    )  # fmt: skip
    beside = Table(
        title, (f"Gauge, {shown.name}", f"Fuel gas, {flow.name}", f"Oxygen, {flow.name}", f"Speed, {unit}"), tuple(rows),
        "Middle figures; the band is as wide as above. It is no list of settings: follow the maker's.",
    )  # fmt: skip
    return (beside,), (Picture(chart, title, sentence),)


@calculator("tip-flow", "Gas that a tip passes")
def tip_flow(
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
    require_acetylene_gauge(fuel, gauge, rules, "gauge", "Gauge at the tip")
    require_possible(fuel, gauge, temperature, rules, "gauge", "Gauge at the tip", LEAST_GAUGE)
    steps: list[Step] = []
    ratio = oxygen_ratio_of(fuel) if oxygen_ratio is None else oxygen_ratio
    area = worked(steps, "Area of the holes", orifice_area, diameter=orifice, holes=holes)
    pressure = worked(steps, "Absolute pressure at the tip", absolute_pressure, gauge=gauge)
    flow = orifice_flow({fuel: 1.0, "oxygen": ratio}, area, pressure, temperature=temperature)
    basis = "The band is a discharge of 0.6 to 0.9 in place of 0.75. What the maker prints for the tip stands first."

    def figure(amount: float) -> Figure:
        return Figure(amount, SOURCE, "computed", amount * SHARE_LOW, amount * SHARE_HIGH, basis)

    cautions = (caution("starved-tip"), *brought({"fuel": fuel}))
    return Answer(
        TipFlow(
            fuel_flow=figure(flow.flows[fuel]),
            oxygen_flow=figure(flow.flows["oxygen"]),
            exit_speed=Figure(
                flow.speed, SOURCE, "computed",
                basis="At the speed of sound: more pressure gives no more speed." if flow.choked else basis,
            ),
            margin=_margin(fuel, flow.speed, rules),
        ),
        cautions=cautions,
        steps=tuple(steps),
        beside=lambda: _other_gauges(fuel, ratio, area, gauge, temperature, rules),
    )  # fmt: skip
