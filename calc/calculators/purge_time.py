"""How long to let each gas flow before lighting."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution
from calc.declare import Answer, Beside, Field, Figure, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import FREE_GAS_FLOW, GAUGE
from calc.formulas.gas.contents import free_gas_volume
from calc.formulas.gas.hose import hose_volume as volume_of_hose
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.purge import CHANGES, vented_gas
from calc.formulas.gas.purge import purge_time as time_of_purge
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.show.scales import scale
from calc.trade.fields import FUEL
from calc.trade.gas.acetylene_limit import require_acetylene_gauge
from calc.trade.gas.hoses import BORE, LENGTH_OF_HOSE
from calc.values.numbers import rounded
from calc.values.quantities import FIFTEEN_CELSIUS

PRINT = "finnish-guide p. 77"
"""Fuel gas; of oxygen it says nothing."""
OURS = "At least five hose volumes at the torch's flow, our own rule, and never under 10 s. Print says 10 to 30 s."
OXYGEN = (
    "At least five hose volumes at the torch's flow, our own rule, and never under 10 s, as for fuel gas. A UK textbook "
    "has oxygen flow alone after the fuel gas, for 3 to 5 s."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PurgeTime:
    """Purge of both hoses, one after the other."""

    purge_fuel_time: Annotated[Figure, Shown("Let fuel gas flow for", ("s",), toward="up", digits=2)]
    purge_oxygen_time: Annotated[Figure, Shown("Then oxygen for", ("s",), toward="up", digits=2)]
    hose_volume: Annotated[Figure, Shown("Inside of each hose", ("in^3", "L"))]
    purge_volume: Annotated[
        Figure, Shown("Gas through each hose, at least", ("ft^3", "L"), free_gas=True, toward="up")
    ]
    fuel_vented: Annotated[Figure, Shown("Fuel gas let out", ("ft^3", "L"), free_gas=True, toward="up")]
    oxygen_vented: Annotated[Figure, Shown("Oxygen let out", ("ft^3", "L"), free_gas=True, toward="up")]


def _other_flows(held: float, flow: float, rules: str) -> Beside:
    rate = scale("flow", rules)
    times = [
        (flow * share, time_of_purge(held, flow * share)) for share in (0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4)
    ]
    title = "Purge of one hose at other flows"
    sentence = "A small tip takes longer; even a large one wants 10 s."
    chart = line_chart(
        title=title, sentence=sentence, x_label=f"Flow through the torch, {rate.name}", y_label="Time, s",
        lines=[Line("this hose", tuple((rate.number(q), t) for q, t in times), at=0.1, below=True)],
        marks=[Mark("your fuel flow", rate.number(flow), time_of_purge(held, flow))],
    )  # fmt: skip
    rows = tuple((rate.text(q), f"{rounded(t, 2, 'up')} s") for q, t in times)
    beside = Table(title, (f"Flow, {rate.name}", "At least"), rows, OURS)
    return (beside,), (Picture(chart, title, sentence),)


@calculator("purge-time", "Purge each hose")
def purge_time(
    *,
    fuel: Annotated[str, FUEL],
    bore: Annotated[float, BORE],
    length: Annotated[float, LENGTH_OF_HOSE],
    oxygen_flow: Annotated[
        float,
        Field(
            "Oxygen through the torch",
            FREE_GAS_FLOW,
            example={"us": "6 cfh", "iso": "170 L/h", "uk": "170 L/h"},
            low="5 L/h",
            high="100000 L/h",
            free_gas=True,
        ),
    ],
    fuel_flow: Annotated[
        float,
        Field(
            "Fuel gas through the torch",
            FREE_GAS_FLOW,
            example={"us": "5 cfh", "iso": "150 L/h", "uk": "150 L/h"},
            low="5 L/h",
            high="20000 L/h",
            free_gas=True,
        ),
    ],
    gauge: Annotated[
        float,
        Field(
            "Gauge while purging",
            GAUGE,
            assumed={"us": "5 psi", "iso": "0.35 bar", "uk": "0.35 bar"},
            low="0.1 psi",
            high="60 psi",
        ),
    ],
    rules: str,
) -> Answer[PurgeTime]:
    """How long each gas must flow, one at a time, so that no mixture is left in a hose.

    Whenever regulators were fitted or cylinders were shut and reopened.
    """  # fmt: skip
    require_acetylene_gauge(fuel, gauge, rules, "gauge", "Gauge while purging")
    steps: list[Step] = []
    volume = worked(steps, "Inside of each hose", volume_of_hose, bore=bore, length=length)
    pressure = worked(steps, "Absolute pressure in it", absolute_pressure, gauge=gauge)
    held = worked(
        steps,
        "Gas it holds, counted free",
        free_gas_volume,
        water_volume=volume,
        pressure=pressure,
        temperature=FIFTEEN_CELSIUS,
        compressibility=1.0,
    )

    def timed(says: str, flow: float) -> float:
        return worked(steps, says, time_of_purge, hose_gas=held, flow=flow)

    oxygen = timed("Oxygen", oxygen_flow)
    fuel_time = timed("Fuel gas", fuel_flow)
    vented = worked(steps, "Fuel gas let out", vented_gas, flow=fuel_flow, time=fuel_time)
    oxygen_out = worked(steps, "Oxygen let out", vented_gas, flow=oxygen_flow, time=oxygen)
    return Answer(
        PurgeTime(
            purge_oxygen_time=Figure(oxygen, "uk-plumbing-book p. 67", "practice", basis=OXYGEN),
            purge_fuel_time=Figure(fuel_time, PRINT, "read-m", basis=OURS),
            hose_volume=Figure(volume, "definition", "computed", basis="Bore and length as given."),
            purge_volume=Figure(CHANGES * held, PRINT, "practice", basis=OURS),
            fuel_vented=Figure(vented, "definition", "computed", basis="Flow for that time."),
            oxygen_vented=Figure(oxygen_out, "definition", "computed", basis="Flow for that time."),
        ),
        cautions=(caution("fuel-let-out"), caution("oxygen-let-out"), *brought({"fuel": fuel})),
        steps=tuple(steps),
        beside=lambda: _other_flows(held, fuel_flow, rules),
    )
