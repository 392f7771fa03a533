"""Leak test: what two readings of a shut hose tell, and what they cannot."""

from dataclasses import dataclass
from math import inf, sqrt
from typing import Annotated

from calc.answer.hazards import brought, caution
from calc.answer.sentences import degrees
from calc.declare import Answer, Caution, Choice, Field, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import GAUGE, TEMPERATURE, TIME
from calc.formulas.gas.hose import hose_volume as volume_of_hose
from calc.formulas.gas.leak import (
    cooled_pressure,
    leak_flow,
    lost_amount,
    lost_amount_error,
    waiting_time,
)
from calc.formulas.gas.possible import LIQUEFIED, highest_gauge
from calc.formulas.gas.pressures import absolute_pressure
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.show.scales import scale
from calc.trade.gas.acetylene_limit import require_acetylene_gauge
from calc.trade.gas.hoses import BORE, EXTRA_VOLUME, GASES, LENGTH_OF_HOSE
from calc.trade.gas.possible import NAMES, NEAR_LIQUID, gauge_down, require_possible
from calc.values.figures import Figure
from calc.values.numbers import rounded
from calc.values.units import to_si

TEMPERATURE_ERROR = 1.0
"""What one temperature may be out, K: air beside the hose is not the gas; our assumption."""
VOLUME_ERROR = 0.1
"""What the volume may be out, as a share; our assumption."""
SURE = 2.0
"""Errors are doubled, so that one reading in twenty is further out."""
LEAK_FLOW = ("mL/min", "mL/min", "cfh", "L/h")
"""Leaks are so small that they are shown in mL/min under every rule set."""
SOAP = "Then soap every joint and repeat."
SIZES = (0.5, 1.0, 2.0, 5.0, 20.0)  # mL/min


@dataclass(frozen=True, slots=True, kw_only=True)
class LeakTest:
    """What the gauge told."""

    leak_rate: Annotated[
        Figure, Shown("Leak that the readings show", LEAK_FLOW, free_gas=True, toward="up")
    ]
    smallest_leak: Annotated[
        Figure, Shown("Smallest leak that this test could show", LEAK_FLOW, free_gas=True, toward="up")
    ]
    measured_drop: Annotated[Figure, Shown("The gauge fell by", GAUGE)]
    cooling_drop: Annotated[Figure, Shown("Cooling alone makes it fall by", GAUGE, toward="down")]
    verdict: Annotated[Figure, Shown("Could cooling make this drop?", words=True)]
    wait: Annotated[Figure, Shown("Wait for the leak you look for", ("min",), toward="up", digits=2)]


def _sizes(volume: float, division: float, temperature: float) -> Table:
    rows = []
    for size in SIZES:
        leak = to_si(size, "mL/min")
        seconds = waiting_time(volume=volume, change=division, temperature=temperature, leak=leak)
        rows.append((f"{size:g} mL/min", f"{leak * 3.6e6:g} L/h", f"{rounded(seconds / 60, 2, 'up')} min"))
    return Table(
        "How long this gauge needs to move by the least you can read",
        ("Leak", "An hour", "Wait at least"),
        tuple(rows),
        "At a steady temperature. A smaller leak takes longer still; soap finds it at once.",
    )


def _picture(first: float, cooler: float, drop: float, start: float, rules: str) -> Picture:
    gauge = scale("gauge", rules)
    degree = 1.8 if rules == "us" else 1.0
    unit = "°F" if rules == "us" else "°C"
    reach = max(abs(cooler) * 1.3, 5.0)
    falls = [reach * i / 8 for i in range(9)] if cooler >= 0 else [reach * (i / 4 - 1) for i in range(9)]
    line = tuple(
        (degree * k, gauge.number(first - cooled_pressure(first, start, start - k))) for k in falls
    )
    title = "Fall of the gauge against fall of temperature"
    sentence = "A point above the line is more than cooling makes: gas got out."
    chart = line_chart(
        title=title, sentence=sentence, x_label=f"Colder by, {unit}", y_label=f"Gauge fell by, {gauge.name}",
        lines=[Line("cooling alone", line)], marks=[Mark("yours", degree * cooler, gauge.number(drop))],
    )  # fmt: skip
    return Picture(chart, title, sentence)


@calculator("leak-test", "Leak test with the gauge")
def leak_test(
    *,
    gas: Annotated[str, Choice("Gas in the hose", GASES, example="acetylene")],
    bore: Annotated[float, BORE],
    length: Annotated[float, LENGTH_OF_HOSE],
    first_gauge: Annotated[
        float,
        Field(
            "Gauge at first",
            GAUGE,
            example={"us": "14 psi", "iso": "0.9 bar", "uk": "0.9 bar"},
            low="1 psi",
            high="350 psi",
            hint="Delivery gauge. Pressure on, then the cylinder valve shut, torch valves shut.",
        ),
    ],
    last_gauge: Annotated[
        float,
        Field(
            "Gauge at last",
            GAUGE,
            example={"us": "13.5 psi", "iso": "0.87 bar", "uk": "0.87 bar"},
            low="0 psi",
            high="350 psi",
        ),
    ],
    time: Annotated[
        float, Field("Time between the readings", TIME, example="10 min", low="1 min", high="24 h")
    ],
    first_temperature: Annotated[
        float,
        Field(
            "Temperature at first",
            TEMPERATURE,
            example={"us": "70 degF", "iso": "20 degC", "uk": "20 degC"},
            low="-20 degF",
            high="140 degF",
            hint="Of the air beside hose and regulator. Sun on a hose spoils the test.",
        ),
    ],
    last_temperature: Annotated[
        float,
        Field(
            "Temperature at last",
            TEMPERATURE,
            example={"us": "65 degF", "iso": "17 degC", "uk": "17 degC"},
            low="-20 degF",
            high="140 degF",
        ),
    ],
    extra_volume: Annotated[float, EXTRA_VOLUME],
    gauge_division: Annotated[
        float,
        Field(
            "Least you can read off the gauge",
            GAUGE,
            assumed={"us": "0.5 psi", "iso": "0.05 bar", "uk": "0.05 bar"},
            low="0.01 psi",
            high="20 psi",
        ),
    ],
    leak_sought: Annotated[
        float,
        Field(
            "Leak you look for",
            LEAK_FLOW[1:],
            assumed="1 mL/min",
            low="0.01 mL/min",
            high="10000 mL/min",
            free_gas=True,
            hint="Our assumption; gas you would not smell across a bench.",
        ),
    ],
    rules: str,
) -> Answer[LeakTest]:
    """What two gauge readings and two temperatures say of a leak, and how large a leak they would miss.

    A gauge that stands still never proves a hose tight. Soap every joint, every time.
    """  # fmt: skip
    for name, label, reading, warmth, least in (
        ("first_gauge", "Gauge at first", first_gauge, first_temperature, to_si(1.0, "psi")),
        ("last_gauge", "Gauge at last", last_gauge, last_temperature, 0.0),
    ):
        require_acetylene_gauge(gas, reading, rules, name, label)
        require_possible(
            gas=gas, gauge=reading, temperature=warmth, rules=rules, field=name, label=label, least=least
        )
    steps: list[Step] = []
    boils = highest_gauge(gas, last_temperature) if gas in LIQUEFIED else inf
    hose = worked(steps, "Inside of the hose", volume_of_hose, bore=bore, length=length)
    volume = hose + extra_volume
    first = worked(steps, "Absolute pressure at first", absolute_pressure, gauge=first_gauge)
    last = worked(steps, "Absolute pressure at last", absolute_pressure, gauge=last_gauge)
    cooled = worked(
        steps, "Pressure that a tight hose would have at last", cooled_pressure,
        pressure=first, temperature=first_temperature, cooled=last_temperature,
    )  # fmt: skip
    lost = worked(
        steps, "Gas lost", lost_amount, volume=volume, first_pressure=first,
        first_temperature=first_temperature, last_pressure=last, last_temperature=last_temperature,
    )  # fmt: skip
    leak = worked(steps, "Leak", leak_flow, amount=lost, time=time)
    wait = worked(
        steps, "Wait for the leak you look for", waiting_time, volume=volume, change=gauge_division,
        temperature=first_temperature, leak=leak_sought,
    )  # fmt: skip
    reading_error = gauge_division / 2
    out = SURE * leak_flow(
        lost_amount_error(
            volume=volume, first_pressure=first, first_temperature=first_temperature, last_pressure=last, last_temperature=last_temperature, gauge_error=reading_error, temperature_error=TEMPERATURE_ERROR, volume_error=VOLUME_ERROR
        ),
        time,
    )  # fmt: skip
    hidden = SURE * leak_flow(
        lost_amount_error(
            volume=volume, first_pressure=first, first_temperature=first_temperature, last_pressure=first, last_temperature=first_temperature, gauge_error=reading_error, temperature_error=TEMPERATURE_ERROR, volume_error=0.0
        ),
        time,
    )  # fmt: skip
    near = absolute_pressure(boils) * (1 - NEAR_LIQUID)
    wet = cooled >= near or last >= near or (
        gas in LIQUEFIED and first >= absolute_pressure(highest_gauge(gas, first_temperature)) * (1 - NEAR_LIQUID)
    )  # fmt: skip
    drop, by_cooling = first - last, first - min(cooled, absolute_pressure(boils))
    doubt = sqrt(2) * first * TEMPERATURE_ERROR / first_temperature
    if wet:
        doubt = max(doubt, NEAR_LIQUID * absolute_pressure(boils))
    leaks = drop > by_cooling + doubt
    came_in = drop < by_cooling - doubt and not wet
    flow_basis = (
        "The band doubles the error of the readings: half a division, 1 K (2 °F), a tenth of the volume."
    )
    shown_leak = max(leak, 0.0)
    liquid = Figure(
        None, "coolprop-8 reference equation, our fit", "computed",
        words="cannot be told: the gas is turning liquid in the hose",
        basis="Liquid in a hose holds the gauge at the pressure it boils at, however much leaks out.",
    )  # fmt: skip
    return Answer(
        LeakTest(
            leak_rate=liquid if wet and not leaks else Figure(
                shown_leak, "gas-law", "computed", low=max(min(leak - out, shown_leak), 0.0), high=max(leak + out, hidden),
                basis=flow_basis, words="" if leak > 0 else "these readings show none; one up to the band can hide",
            ),
            smallest_leak=liquid if wet else Figure(
                hidden, "gas-law", "computed",
                basis="Anything smaller moves the gauge less than its own marks and the weather do.",
            ),
            measured_drop=Figure(
                drop, "definition", "computed", low=drop - gauge_division, high=drop + gauge_division,
                basis="First reading less last; the band is a division.",
            ),
            cooling_drop=Figure(
                by_cooling, "gas-law", "computed", low=by_cooling - doubt, high=by_cooling + doubt,
                basis="Absolute pressure goes with absolute temperature; the band is 1 K (2 °F) in each reading.",
            ),
            verdict=_condensed(gas, boils, last_temperature, rules) if wet and not leaks else _verdict(
                leaks=leaks, came_in=came_in, drop=drop, hidden=hidden
            ),
            wait=Figure(
                wait, "gas-law", "computed",
                basis="Until the gauge has moved by the least you can read. Practice is 5 to 10 min; a long hose or "
                "a coarse gauge wants more.",
            ),
        ),
        cautions=(
            *((caution("liquid-holds-gauge", fuel=NAMES[gas]),) if wet else ()), *_cautions(gas, leaks=leaks, hidden=hidden)
        ),
        steps=tuple(steps),
        beside=lambda: (
            (_sizes(volume, gauge_division, first_temperature),),
            (_picture(first, first_temperature - last_temperature, drop, first_temperature, rules),),
        ),
    )  # fmt: skip


def _said(flow: float) -> str:
    return f"{rounded(flow * 6e7, 2, 'up')} mL/min"


def _condensed(gas: str, boils: float, temperature: float, rules: str) -> Figure:
    words = (
        f"the gauge tells nothing: at {degrees(temperature, rules)} {NAMES[gas]} turns liquid at {gauge_down(boils, rules)}, "
        f"and the gauge stays there whatever leaks. Repeat in the warm or at a lower gauge. {SOAP}"
    )
    return Figure(
        None, "coolprop-8 reference equation, our fit", "computed", words=words,
        basis="Readings within 3 % of the pressure at which it boils count as liquid: a temperature that is out by "
        "1 K moves it by as much.",
    )  # fmt: skip


def _verdict(*, leaks: bool, came_in: bool, drop: float, hidden: float) -> Figure:
    if leaks:
        words = "no: the gauge fell more than cooling makes. Shut the cylinders, find the leak"
    elif came_in:
        words = (
            "the gauge fell less than cooling makes: a regulator that creeps, a cylinder valve not shut, or a wrong "
            f"reading. Repeat. {SOAP}"
        )
    elif drop > 0:
        words = f"it could make all of it, and a leak up to {_said(hidden)} can hide behind it. {SOAP}"
    else:
        words = f"the gauge did not fall, and a leak up to {_said(hidden)} can hide all the same. {SOAP}"
    return Figure(
        None, "", "practice", words=words,
        basis="The doubt in the two temperatures is given to cooling; the gauge's own error is not.",
    )  # fmt: skip


def _cautions(gas: str, *, leaks: bool, hidden: float) -> tuple[Caution, ...]:
    told = caution("leak-found") if leaks else caution("leak-hides", hidden=_said(hidden))
    return (told, *brought({"fuel": gas}))
