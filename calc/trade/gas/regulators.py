"""Where a regulator is set, with the gas flowing, so that the torch gets its pressure through a hose."""

import math
from dataclasses import dataclass

from calc.answer.hazards import brought, caution
from calc.ask.errors import InputError
from calc.declare import Caution, Figure
from calc.formulas.gas.acetylene import ARRESTOR_GAUGE, GAUGE_LIMIT
from calc.formulas.gas.hose import HoseLine, hose_line
from calc.formulas.gas.possible import highest_gauge
from calc.formulas.gas.pressures import absolute_pressure
from calc.show.scales import scale
from calc.trade.gas.acetylene_limit import acetylene_limit_words, require_acetylene_gauge
from calc.trade.gas.hoses import LEAST_GAUGE, SOURCE, band_words
from calc.trade.gas.possible import require_possible, why_not
from calc.values.quantities import FreeGasFlow, Gauge, Length, Temperature
from calc.values.units import to_si

MARK = {"us": "1 psi", "iso": "0.05 bar", "uk": "0.05 bar"}
"""Smallest division of a delivery gauge, common practice."""

TO_MARK = {
    "any": "up to the next mark",
    "acetylene": "to the nearest mark, and down where that would be the limit of acetylene",
}
"""How a pressure becomes a mark, by gas."""


@dataclass(frozen=True, slots=True)
class RegulatorSetting:
    """A regulator's mark and the hazards that go with it.

    Attributes:
        mark: Gauge to set, Pa, a division as `marked` says.
        drop: What the hose takes, Pa.
        cautions: They go with the figures.
    """

    mark: Figure
    drop: Figure
    cautions: tuple[Caution, ...]


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


def marked(gauge: float, rules: str, gas: str) -> float:
    """The mark of the gauge to set for a pressure, Pa.

    At or above it; for acetylene the nearest, and the one below where the nearest would be its limit or more.

    Args:
        gauge: Pressure wanted at the regulator, Pa.
        rules: Rule set, which decides the divisions and the limit.
        gas: Id of the gas.

    Examples:
        >>> [round(marked(to_si(psi, "psi"), "us", "acetylene") / to_si(1, "psi")) for psi in (5.01, 5.6, 14.6, 15)]
        [5, 6, 14, 15]
    """
    size = mark_size(rules)
    if gas != "acetylene":
        return math.ceil(gauge / size - 1e-6) * size
    below, nearest = math.floor(gauge / size + 1e-6) * size, math.floor(gauge / size + 0.5) * size
    mark = below if nearest >= GAUGE_LIMIT[rules] * (1 - 1e-6) else nearest
    return max(mark, size)


def _drop_of(line: HoseLine, wanted: Gauge) -> float:
    try:
        return inlet_gauge(line, wanted) - wanted
    except ValueError:
        return 24e5 - wanted


def regulator_setting(
    *,
    gas: str,
    torch_gauge: Gauge,
    bore: Length,
    length: Length,
    flow: FreeGasFlow,
    torch_drop: Gauge,
    temperature: Temperature,
    rules: str,
) -> RegulatorSetting:
    """Regulator setting that gives a torch its pressure while gas flows, at a mark of the gauge.

    Args:
        gas: Id of the gas.
        torch_gauge: Gauge wanted at the torch, Pa.
        bore: Of the hose, m.
        length: Of the hose, m.
        flow: Free gas, m³/s.
        torch_drop: What torch valves, mixer and arrestors take, Pa.
        temperature: Of the gas, K.
        rules: Rule set.

    Raises:
        InputError: The hose cannot pass the flow, or the regulator would stand above what the gas allows.
    """
    require_acetylene_gauge(gas, torch_gauge, rules, "torch_gauge", "Gauge wanted at the torch")
    require_possible(gas=gas, gauge=torch_gauge, temperature=temperature, rules=rules, field="torch_gauge", label="Gauge wanted at the torch", least=LEAST_GAUGE)
    wanted = torch_gauge + torch_drop
    line = hose_line(gas=gas, flow=flow, bore=bore, length=length, temperature=temperature)
    try:
        inlet = inlet_gauge(line, wanted)
    except ValueError:
        raise InputError(
            "flow",
            "Flow", "this hose cannot pass so much; give less flow, or a wider or shorter hose.",
        ) from None
    setting = marked(inlet, rules, gas)
    limit = GAUGE_LIMIT[rules]
    if gas == "acetylene" and inlet > limit * (1 + 1e-6):
        raise InputError(
            "torch_gauge",
            "Gauge wanted at the torch", "with this hose and flow the regulator would have to stand above "
            f"{acetylene_limit_words(rules)}, where acetylene can explode; give a lower gauge, a wider or "
            "shorter hose, or a smaller tip.",
        )
    if setting > highest_gauge(gas, temperature):
        raise InputError(
            "torch_gauge",
            "Gauge wanted at the torch", "with this hose and flow the regulator would have to stand at "
            f"{scale('gauge', rules).said(setting)}, but {why_not(gas, temperature, rules)}; give a lower gauge, less "
            "flow, or a wider or shorter hose.",
        )
    cautions = [*brought({"fuel": gas})]
    if gas == "acetylene" and rules == "uk" and setting >= ARRESTOR_GAUGE:
        cautions.append(caution("arrestor-required"))
    said = "" if torch_drop else " Torch valves, mixer and arrestors are not included: ask their makers."
    return RegulatorSetting(
        Figure(setting, SOURCE, "computed", basis=f"Hose drop added, then {TO_MARK.get(gas, TO_MARK['any'])}.{said}"),
        Figure(
            inlet - wanted, SOURCE, "computed", low=_drop_of(line.least, wanted), high=_drop_of(line.most, wanted),
            basis=band_words(uncertain=line.uncertain),
        ),
        tuple(cautions),
    )  # fmt: skip
