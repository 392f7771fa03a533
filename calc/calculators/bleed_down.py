"""Letting the hoses down after work: what comes out, and how long it takes."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution
from calc.data.tables import table
from calc.declare import Answer, Beside, Field, Figure, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import GAUGE, VOLUME
from calc.formulas.gas.contents import share_of_full
from calc.formulas.gas.hose import hose_volume as volume_of_hose
from calc.formulas.gas.nozzle import orifice_area
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.purge import bleed_time, trapped_gas
from calc.show.drawings.chart import Line, line_chart
from calc.show.scales import scale
from calc.trade.fields import FUEL, FUELS, GAS_TEMPERATURE, HOLES, ORIFICE
from calc.trade.gas.acetylene_limit import require_acetylene_gauge
from calc.trade.gas.hoses import BORE, EXTRA_VOLUME, LENGTH_OF_HOSE
from calc.trade.gas.possible import require_possible
from calc.trade.tips.flow import LEAST_GAUGE
from calc.values.numbers import rounded

PRINT = "navy14265"
OURS = (
    "Until both gauges of that gas stand at zero. Print says 5 to 15 s each; ours is the gas in the hose through "
    "the tip, never under 5 s, and valves make it longer."
)
SHARES = (1.0, 0.5, 0.25, 0.1, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class BleedDown:
    """Letting down, one gas after the other."""

    fuel_trapped: Annotated[
        Figure, Shown("Fuel gas that comes out", ("ft^3", "L"), free_gas=True, toward="up")
    ]
    oxygen_trapped: Annotated[
        Figure, Shown("Oxygen that comes out", ("ft^3", "L"), free_gas=True, toward="up")
    ]
    bleed_fuel_time: Annotated[
        Figure, Shown("Fuel gas: torch valve open for", ("s",), toward="up", digits=2)
    ]
    bleed_oxygen_time: Annotated[
        Figure, Shown("Then oxygen: torch valve open for", ("s",), toward="up", digits=2)
    ]
    shut_volume: Annotated[Figure, Shown("Shut in for each gas", ("in^3", "L"))]
    room_share: Annotated[
        Figure, Shown("Fuel gas in the room, were it spread evenly", ("%",), toward="up", digits=2)
    ]


def _fall(
    gas: str, volume: float, gauge: float, area: float, temperature: float
) -> list[tuple[float, float]]:
    """Time and gauge at each share of the first gauge, s and Pa, to zero."""
    start = absolute_pressure(gauge)
    return [
        (
            bleed_time(gases={gas: 1.0}, volume=volume, pressure=start, until=absolute_pressure(gauge * share), area=area, temperature=temperature)
            if share < 1
            else 0.0,
            gauge * share,
        )
        for share in SHARES
    ]  # fmt: skip


def _time(seconds: float) -> Figure:
    least = next(row for row in table("purges") if row.topic == "bleed").least
    if seconds <= least:
        return Figure(least, PRINT, "read", basis=OURS)
    return Figure(seconds, "gas-law", "computed", basis=OURS)


def _beside(
    fuel: str, falls: dict[str, list[tuple[float, float]]], trapped: dict[str, float], rules: str
) -> Beside:
    gauge = scale("gauge", rules)
    words = {"oxygen": "Oxygen", "fuel": FUELS[fuel]}
    rows = [
        (
            words[gas],
            gauge.text(reads),
            f"{rounded(time, 2, 'up')} s",
            f"{trapped[gas] * reads / falls[gas][0][1] * 1000:.2f} L",
        )
        for gas in ("fuel", "oxygen")
        for time, reads in falls[gas]
    ]
    shown = Table(
        "How each hose lets down",
        ("Gas", f"Gauge, {gauge.name}", "After at least", "Still to come out"),
        tuple(rows),
        "Computed for gas that leaves by the tip alone. The last of it leaves slowly: wait for zero.",
    )
    title = "The gauges while the hoses let down"
    sentence = "The gauge falls fast at first and slowly at the end, so wait until it stands at zero."
    chart = line_chart(
        title=title, sentence=sentence, x_label="Time, s", y_label=f"Gauge, {gauge.name}",
        lines=[Line(words[g], tuple((t, gauge.number(p)) for t, p in falls[g])) for g in ("fuel", "oxygen")],
    )  # fmt: skip
    return (shown,), (Picture(chart, title, sentence),)


@calculator("bleed-down", "Let the hoses down")
def bleed_down(
    *,
    fuel: Annotated[str, FUEL],
    bore: Annotated[float, BORE],
    length: Annotated[float, LENGTH_OF_HOSE],
    fuel_gauge: Annotated[
        float,
        Field(
            "Fuel regulator shows",
            GAUGE,
            example={"us": "5 psi", "iso": "0.35 bar", "uk": "0.35 bar"},
            low="0.1 psi",
            high="60 psi",
        ),
    ],
    oxygen_gauge: Annotated[
        float,
        Field(
            "Oxygen regulator shows",
            GAUGE,
            example={"us": "5 psi", "iso": "0.35 bar", "uk": "0.35 bar"},
            low="0.1 psi",
            high="150 psi",
        ),
    ],
    orifice: Annotated[float, ORIFICE],
    holes: Annotated[float, HOLES],
    extra_volume: Annotated[float, EXTRA_VOLUME],
    room_volume: Annotated[
        float,
        Field(
            "Room",
            (*VOLUME, "m^3"),
            assumed={"us": "10000 ft^3", "iso": "280 m^3", "uk": "280 m^3"},
            low="100 L",
            high="100000 m^3",
        ),
    ],
    temperature: Annotated[float, GAS_TEMPERATURE],
    rules: str,
) -> Answer[BleedDown]:
    """Gas that is shut in the hoses after work, and how long to let each out.

    Cylinder valves shut; one gas at a time; then back out the regulator screws.
    """  # fmt: skip
    require_acetylene_gauge(fuel, fuel_gauge, rules, "fuel_gauge", "Fuel regulator shows")
    require_possible(gas=fuel, gauge=fuel_gauge, temperature=temperature, rules=rules, field="fuel_gauge", label="Fuel regulator shows", least=LEAST_GAUGE)
    steps: list[Step] = []
    hose = worked(steps, "Inside of each hose", volume_of_hose, bore=bore, length=length)
    volume = hose + extra_volume
    area = worked(steps, "Area of the holes", orifice_area, diameter=orifice, holes=holes)
    trapped, falls = {}, {}
    for name, gas, gauge in (("fuel", fuel, fuel_gauge), ("oxygen", "oxygen", oxygen_gauge)):
        trapped[name] = worked(
            steps, f"{name.capitalize()} shut in above the air's pressure", trapped_gas,
            volume=volume, gauge=gauge, temperature=temperature,
        )  # fmt: skip
        falls[name] = _fall(gas, volume, gauge, area, temperature)
    in_room = trapped_gas(volume, fuel_gauge, temperature, reference_temperature=temperature)
    share = worked(
        steps, "Share of the room, spread evenly", share_of_full, free_gas=in_room, full_gas=room_volume
    )
    behind = "What stays in the hose at the air's pressure, about its own volume, still burns."
    return Answer(
        BleedDown(
            fuel_trapped=Figure(trapped["fuel"], "gas-law", "computed", basis=behind),
            oxygen_trapped=Figure(trapped["oxygen"], "gas-law", "computed", basis="Above the air's pressure."),
            bleed_fuel_time=_time(falls["fuel"][-1][0]),
            bleed_oxygen_time=_time(falls["oxygen"][-1][0]),
            shut_volume=Figure(
                volume, "definition", "computed", basis="Hose, and what regulator and torch hold."
            ),
            room_share=Figure(
                share, "definition", "computed", words="but at the hose end it burns at any amount",
                basis="An average that no real room has: beside the torch the gas is far richer.",
            ),
        ),
        cautions=(caution("fuel-let-out"), caution("oxygen-let-out"), *brought({"fuel": fuel})),
        steps=tuple(steps),
        beside=lambda: _beside(fuel, falls, trapped, rules),
    )  # fmt: skip
