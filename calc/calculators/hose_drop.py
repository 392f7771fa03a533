"""Pressure that a hose takes while gas flows."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution
from calc.ask.errors import InputError
from calc.data.tables import table
from calc.declare import Answer, Beside, Caution, Choice, Field, Figure, Picture, Shown, Table, calculator
from calc.declare.inputs import GAUGE
from calc.formulas.gas.hose import hose_flow
from calc.formulas.gas.possible import LIQUEFIED, highest_gauge
from calc.formulas.gas.pressures import absolute_pressure
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.show.scales import scale
from calc.trade.fields import GAS_TEMPERATURE
from calc.trade.gas.acetylene_limit import require_acetylene_gauge
from calc.trade.gas.hoses import BORE, GASES, LEAST_GAUGE, LENGTH_OF_HOSE, SOURCE, drop_figure, flow_asked
from calc.trade.gas.possible import NAMES, NEAR_LIQUID, require_possible
from calc.values.units import to_si


@dataclass(frozen=True, slots=True)
class HoseDrop:
    """What the hose takes."""

    drop: Annotated[Figure, Shown("Pressure the hose takes", ("psi", "bar", "kPa"), toward="up")]
    outlet_gauge: Annotated[
        Figure, Shown("Gauge left at the torch end", ("psi", "bar", "kPa"), toward="down")
    ]


def _lost(
    *, gas: str, flow: float, gauge: float, bore: float, length: float, temperature: float
) -> float | None:
    """Drop along a hose, Pa, or None where it leaves nothing at the torch."""
    try:
        found = hose_flow(
            gas=gas,
            flow=flow,
            inlet=absolute_pressure(gauge),
            bore=bore,
            length=length,
            temperature=temperature,
        )
    except ValueError:
        return None
    return found.drop if found.drop < gauge else None


def _beside(
    *, gas: str, flow: float, gauge: float, bore: float, length: float, temperature: float, rules: str
) -> Beside:
    shown, rate, feet = scale("gauge", rules), scale("flow", rules), scale("length", rules)
    lengths = [
        to_si(number, feet.unit) for number in ((12.5, 25, 50, 100) if rules == "us" else (5, 10, 20, 40))
    ]
    rows = []
    for row in table("hose-bores"):
        if row.rules == rules:
            size = to_si(row.number, row.unit)
            lost = [
                _lost(gas=gas, flow=flow, gauge=gauge, bore=size, length=each, temperature=temperature)
                for each in lengths
            ]
            rows.append((row.size, *("too much" if drop is None else shown.text(drop) for drop in lost)))
    beside = Table(
        f"The same flow through other hoses, drop in {shown.name}",
        ("Bore", *(f"{feet.text(each)} {feet.name}" for each in lengths)), tuple(rows),
        "A wider hose loses far less; a longer one loses more in proportion.",
    )  # fmt: skip
    points = []
    for share in (0.1, 0.25, 0.5, 0.75, 1.0, 1.25, 1.5):
        drop = _lost(
            gas=gas, flow=flow * share, gauge=gauge, bore=bore, length=length, temperature=temperature
        )
        if drop is not None:
            points.append((rate.number(flow * share), shown.number(drop)))
    title = "What this hose takes at other flows"
    sentence = "Twice the flow costs nearly four times the pressure, where it is turbulent."
    if len(points) < 2:
        return (beside,), ()
    chart = line_chart(
        title=title, sentence=sentence, x_label=f"Flow, {rate.name}", y_label=f"Drop, {shown.name}", lines=[Line("this hose", tuple(points))],
        marks=[Mark("yours", rate.number(flow), None)],
    )  # fmt: skip
    return (beside,), (Picture(chart, title, sentence),)


def _cautions(gas: str, inlet: float, temperature: float) -> tuple[Caution, ...]:
    """Hazards of the gas; the first where it stands so near its liquid that the sum may not hold."""
    near = absolute_pressure(highest_gauge(gas, temperature)) * (1 - NEAR_LIQUID)
    wet = gas in LIQUEFIED and inlet >= near
    return (*((caution("liquid-holds-gauge", fuel=NAMES[gas]),) if wet else ()), *brought({"fuel": gas}))


@calculator("hose-drop", "Pressure that a hose takes")
def hose_drop(
    *,
    gas: Annotated[str, Choice("Gas", GASES, example="oxygen")],
    gauge: Annotated[
        float,
        Field(
            "Gauge at the regulator",
            GAUGE,
            example={"us": "40 psi", "iso": "2.5 bar", "uk": "2.5 bar"},
            low="0.5 psi",
            high="350 psi",
        ),
    ],
    bore: Annotated[float, BORE],
    length: Annotated[float, LENGTH_OF_HOSE],
    flow: Annotated[float, flow_asked("100 cfh", "2800 L/h")],
    temperature: Annotated[float, GAS_TEMPERATURE],
    rules: str,
) -> Answer[HoseDrop]:
    """Drop along a hose while gas flows through it.

    Refused where the hose cannot pass the flow, where acetylene would stand above its
    limit, and where a liquefied gas would turn liquid.
    """  # fmt: skip
    require_acetylene_gauge(gas, gauge, rules, "gauge", "Gauge at the regulator")
    require_possible(
        gas=gas,
        gauge=gauge,
        temperature=temperature,
        rules=rules,
        field="gauge",
        label="Gauge at the regulator",
        least=LEAST_GAUGE,
    )
    inlet = absolute_pressure(gauge)
    try:
        found = hose_flow(
            gas=gas, flow=flow, inlet=inlet, bore=bore, length=length, temperature=temperature
        )
    except ValueError:
        raise InputError(
            "flow",
            "Flow",
            "this hose cannot pass so much at this gauge; give less flow, a wider or shorter hose, "
            "or more pressure within the gas's limit.",
        ) from None
    outlet = found.outlet - absolute_pressure(0.0)
    if outlet < 0:
        raise InputError(
            "flow",
            "Flow",
            "nothing would be left at the torch end; give less flow, or a wider or shorter hose.",
        )
    drop = drop_figure(found)
    low = max(gauge - (drop.high or 0.0), 0.0)
    return Answer(
        HoseDrop(
            drop=drop,
            outlet_gauge=Figure(
                outlet,
                SOURCE,
                "computed",
                low=min(low, outlet),
                high=max(gauge - (drop.low or 0.0), outlet),
                basis=drop.basis,
            ),
        ),
        cautions=_cautions(gas, inlet, temperature),
        beside=lambda: _beside(
            gas=gas, flow=flow, gauge=gauge, bore=bore, length=length, temperature=temperature, rules=rules
        ),
    )
