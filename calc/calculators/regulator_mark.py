"""What to set at the regulator, with the gas flowing."""

import math
from dataclasses import dataclass
from typing import Annotated

from calc.calculators.hose_drop import (
    BORE,
    GASES,
    LEAST_GAUGE,
    LENGTH_OF_HOSE,
    SOURCE,
    band_words,
)
from calc.calculators.tip_flow import acetylene_limit_words, require_acetylene_gauge
from calc.declare import (
    FREE_GAS_FLOW,
    GAUGE,
    Answer,
    Beside,
    Choice,
    Field,
    Figure,
    Picture,
    Shown,
    Table,
    calculator,
)
from calc.errors import InputError
from calc.formulas.gas.acetylene import ARRESTOR_GAUGE, GAUGE_LIMIT
from calc.formulas.gas.hose import HoseLine, hose_line
from calc.formulas.gas.possible import highest_gauge
from calc.formulas.gas.pressures import absolute_pressure
from calc.hazards import brought, caution
from calc.quantities import Gauge, Temperature
from calc.sheets.asked import GAS_TEMPERATURE
from calc.sheets.possible import require_possible, why_not
from calc.sheets.scales import scale
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.units import to_si

MARK = {"us": "1 psi", "iso": "0.05 bar", "uk": "0.05 bar"}
"""Smallest division of a delivery gauge, common practice."""


@dataclass(frozen=True, slots=True)
class RegulatorMark:
    """Where the regulator's needle should stand."""

    mark: Annotated[Figure, Shown("Set the regulator, gas flowing, to", GAUGE, step=MARK, toward="up")]
    drop: Annotated[Figure, Shown("Pressure the hose takes", GAUGE, toward="up", digits=2)]
    torch_gauge: Annotated[Figure, Shown("Gauge wanted at the torch", GAUGE)]


def mark_size(rules: str) -> float:
    """One division of the delivery gauge of a rule set, Pa."""
    number, unit = MARK[rules].split(" ")
    return to_si(float(number), unit)


def inlet_gauge(line: HoseLine, wanted: Gauge) -> Gauge:
    """Gauge at the regulator that leaves a wanted gauge at the torch end.

    Args:
        line: The hose and the flow in it.
        wanted: Gauge at the torch end while gas flows, Pa.

    Returns:
        Gauge at the regulator, Pa.

    Raises:
        ValueError: No pressure up to 25 bar makes the hose pass the flow.
    """
    low, high = wanted, wanted
    air = absolute_pressure(0.0)

    def enough(gauge: float) -> bool:
        return line.leaves(absolute_pressure(gauge), absolute_pressure(wanted))

    while not enough(high):
        high = (high + air) * 1.2 - air
        if high > 24e5:
            raise ValueError("the hose cannot pass that flow")
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (low, middle) if enough(middle) else (middle, high)
        if high - low < 0.5:
            break
    return high


def marked(gauge: float, rules: str) -> float:
    """The next mark of the gauge at or above a pressure, Pa."""
    size = mark_size(rules)
    return math.ceil(gauge / size - 1e-6) * size


def _drop_of(line: HoseLine, wanted: Gauge) -> float:
    try:
        return inlet_gauge(line, wanted) - wanted
    except ValueError:
        return 24e5 - wanted


def _other_lengths(
    gas: str, wanted: Gauge, bore: float, flow: float, length: float, setting: Gauge,
    temperature: Temperature, rules: str,
) -> Beside:  # fmt: skip
    shown, feet = scale("gauge", rules), scale("length", rules)
    rows, points = [], []
    for number in (12.5, 25, 50, 75, 100) if rules == "us" else (5, 10, 20, 30, 40):
        try:
            line = hose_line(gas, flow, bore, to_si(number, feet.unit), temperature=temperature)
            inlet = inlet_gauge(line, wanted)
        except ValueError:
            rows.append((f"{number:g}", "", "cannot pass the flow"))
            continue
        mark, exact = marked(inlet, rules), shown.text(inlet)
        if gas == "acetylene" and mark > GAUGE_LIMIT[rules] * (1 + 1e-6):
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
        title, sentence, f"Hose, {feet.name}", f"At the regulator, {shown.name}", [Line("this bore", tuple(points))],
        [Mark("yours, to the next mark", feet.number(length), shown.number(setting))],
    )  # fmt: skip
    return (beside,), (Picture(chart, title, sentence),)


@calculator("regulator-mark", "Where to set the regulator")
def regulator_mark(
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
    flow: Annotated[
        float,
        Field(
            "Flow",
            FREE_GAS_FLOW,
            example={"us": "10 cfh", "iso": "280 L/h", "uk": "280 L/h"},
            low="5 L/h",
            high="200000 L/h",
            free_gas=True,
        ),
    ],
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

    To the next mark of the gauge, never past the limit of acetylene. When both
    cannot hold, it is refused and says which.
    """  # fmt: skip
    require_acetylene_gauge(gas, torch_gauge, rules, "torch_gauge", "Gauge wanted at the torch")
    require_possible(gas, torch_gauge, temperature, rules, "torch_gauge", "Gauge wanted at the torch", LEAST_GAUGE)
    wanted = torch_gauge + torch_drop
    line = hose_line(gas, flow, bore, length, temperature=temperature)
    try:
        inlet = inlet_gauge(line, wanted)
    except ValueError:
        raise InputError(
            "flow",
            "Flow: this hose cannot pass so much; give less flow, or a wider or shorter hose.",
        ) from None
    setting = marked(inlet, rules)
    limit = GAUGE_LIMIT[rules]
    if gas == "acetylene" and setting > limit * (1 + 1e-6):
        raise InputError(
            "torch_gauge",
            "Gauge wanted at the torch: with this hose and flow the regulator would have to stand above "
            f"{acetylene_limit_words(rules)}, where acetylene can explode; give a lower gauge, a wider or "
            "shorter hose, or a smaller tip.",
        )
    if setting > highest_gauge(gas, temperature):
        raise InputError(
            "torch_gauge",
            "Gauge wanted at the torch: with this hose and flow the regulator would have to stand at "
            f"{scale('gauge', rules).said(setting)}, but {why_not(gas, temperature, rules)}; give a lower gauge, less "
            "flow, or a wider or shorter hose.",
        )
    cautions = [*brought({"fuel": gas})]
    if gas == "acetylene" and rules == "uk" and setting >= ARRESTOR_GAUGE:
        cautions.append(caution("arrestor-required"))
    said = "" if torch_drop else " Torch valves, mixer and arrestors are not included: ask their makers."
    return Answer(
        RegulatorMark(
            mark=Figure(
                setting, SOURCE, "computed", basis=f"Hose drop added, then up to the next mark.{said}"
            ),
            drop=Figure(
                inlet - wanted, SOURCE, "computed", _drop_of(line.least, wanted), _drop_of(line.most, wanted),
                band_words(uncertain=line.uncertain),
            ),
            torch_gauge=Figure(torch_gauge, "", "practice", basis="As given."),
        ),
        cautions=tuple(cautions),
        beside=lambda: _other_lengths(gas, wanted, bore, flow, length, setting, temperature, rules),
    )
