"""What to set at the regulator, with the gas flowing."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import Answer, Beside, Choice, Field, Figure, Picture, Shown, Table, calculator
from calc.declare.inputs import GAUGE
from calc.formulas.gas.acetylene import GAUGE_LIMIT
from calc.formulas.gas.hose import hose_line
from calc.formulas.gas.possible import highest_gauge
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.show.scales import scale
from calc.trade.fields import GAS_TEMPERATURE
from calc.trade.gas.acetylene_limit import acetylene_limit_words
from calc.trade.gas.hoses import BORE, GASES, LENGTH_OF_HOSE, flow_asked
from calc.trade.gas.regulators import MARK, inlet_gauge, marked, regulator_setting
from calc.values.quantities import Gauge, Temperature
from calc.values.units import to_si


@dataclass(frozen=True, slots=True)
class RegulatorMark:
    """Where the regulator's needle should stand."""

    mark: Annotated[Figure, Shown("Set the regulator, gas flowing, to", GAUGE, step=MARK, toward="up")]
    drop: Annotated[Figure, Shown("Pressure the hose takes", GAUGE, toward="up", digits=2)]
    torch_gauge: Annotated[Figure, Shown("Gauge wanted at the torch", GAUGE)]


def _other_lengths(
    *,
    gas: str, wanted: Gauge, bore: float, flow: float, length: float, setting: Gauge,
    temperature: Temperature, rules: str,
) -> Beside:  # fmt: skip
    shown, feet = scale("gauge", rules), scale("length", rules)
    rows, points = [], []
    for number in (12.5, 25, 50, 75, 100) if rules == "us" else (5, 10, 20, 30, 40):
        try:
            line = hose_line(
                gas=gas, flow=flow, bore=bore, length=to_si(number, feet.unit), temperature=temperature
            )
            inlet = inlet_gauge(line, wanted)
        except ValueError:
            rows.append((f"{number:g}", "", "cannot pass the flow"))
            continue
        mark, exact = marked(inlet, rules, gas), shown.text(inlet)
        if gas == "acetylene" and inlet > GAUGE_LIMIT[rules] * (1 + 1e-6):
            rows.append((f"{number:g}", exact, f"above {acetylene_limit_words(rules)}: not allowed"))
            continue
        if mark > highest_gauge(gas, temperature):
            rows.append((f"{number:g}", exact, "more than the gas can push"))
            continue
        rows.append((f"{number:g}", exact, shown.text(mark)))
        points.append((float(number), shown.number(inlet)))
    beside = Table(
        "The same torch on other hose lengths",
        (f"Hose, {feet.name}", f"Wants, {shown.name}", f"Set to, {shown.name}"),
        tuple(rows),
    )
    if len(points) < 2:
        return (beside,), ()
    title = "Regulator pressure by hose length"
    sentence = "The longer the hose, the higher the regulator must stand while the gas flows."
    chart = line_chart(
        title=title, sentence=sentence, x_label=f"Hose, {feet.name}", y_label=f"At the regulator, {shown.name}", lines=[Line("this bore", tuple(points))],
        marks=[Mark("yours, to a mark", feet.number(length), shown.number(setting))],
    )  # fmt: skip
    return (beside,), (Picture(chart, title, sentence),)


@calculator("regulator-mark", "Where to set the regulator")
def regulator_mark(
    *,
    gas: Annotated[str, Choice("Gas", GASES, example="acetylene")],
    torch_gauge: Annotated[
        float,
        Field(
            "Gauge wanted at the torch",
            GAUGE,
            example={"us": "5 psi", "iso": "0.35 bar", "uk": "0.35 bar"},
            low="0.5 psi",
            high="150 psi",
        ),
    ],
    bore: Annotated[float, BORE],
    length: Annotated[float, LENGTH_OF_HOSE],
    flow: Annotated[float, flow_asked("10 cfh", "280 L/h")],
    torch_drop: Annotated[
        float,
        Field(
            "Torch valves, mixer and arrestors take",
            GAUGE,
            assumed="0 psi",
            low="0 psi",
            high="60 psi",
            hint="Ask the makers; often more than the hose.",
        ),
    ],
    temperature: Annotated[float, GAS_TEMPERATURE],
    rules: str,
) -> Answer[RegulatorMark]:
    """Regulator setting, read with the gas flowing, that gives the torch its pressure.

    Up to the next mark of the gauge; acetylene to the nearest, and down where that would be its limit. A pressure
    above the limit is refused.
    """  # fmt: skip
    found = regulator_setting(
        gas=gas, torch_gauge=torch_gauge, bore=bore, length=length, flow=flow, torch_drop=torch_drop,
        temperature=temperature, rules=rules,
    )  # fmt: skip
    setting = found.mark.value or 0.0
    return Answer(
        RegulatorMark(
            mark=found.mark,
            drop=found.drop,
            torch_gauge=Figure(torch_gauge, "", "practice", basis="As given."),
        ),
        cautions=found.cautions,
        beside=lambda: _other_lengths(
            gas=gas,
            wanted=torch_gauge + torch_drop,
            bore=bore,
            flow=flow,
            length=length,
            setting=setting,
            temperature=temperature,
            rules=rules,
        ),
    )
