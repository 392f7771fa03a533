"""How long an outfit burns: each gas, which ends first, and where to stop."""

from dataclasses import dataclass, replace
from typing import Annotated, Any

from calc.answer.hazards import caution, gravest_first
from calc.ask.errors import InputError
from calc.data.tables import table
from calc.declare import Answer, Field, Figure, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import FREE_GAS, FREE_GAS_FLOW, GAUGE
from calc.formulas.gas.contents import free_gas_volume, usable_gas
from calc.formulas.gas.possible import OVERFULL
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.properties import oxygen_ratio as ratio_of
from calc.formulas.gas.real_gas import compressibility
from calc.formulas.gas.supply import cylinder_share, oxygen_for_fuel, running_time
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.show.scales import scale
from calc.trade.fields import (
    CYLINDER_TEMPERATURE,
    DUTY,
    FUEL,
    HOLES,
    ORIFICE,
    OXYGEN_CYLINDER_GAUGE,
    OXYGEN_RATIO,
    OXYGEN_WATER_VOLUME,
)
from calc.trade.gas.draws import (
    acetylene_lasts,
    cold_cautions,
    draw_cautions,
    draw_limit_of,
    gas_lasts,
)
from calc.trade.gas.possible import require_possible
from calc.trade.gas.stocks import FIT, OXYGEN_FLOOR, OXYGEN_REGULATOR, acetylene_kept, acetylene_stop_gauge
from calc.trade.tips.flow import LEAST_GAUGE, gas_through_tip
from calc.values.numbers import plain_number, rounded
from calc.values.units import to_si

HOURS = ("h", "h")
STOP_LABEL = "Oxygen cylinder gauge at which you stop"


@dataclass(frozen=True, slots=True, kw_only=True)
class HoursLeft:
    """What an outfit's cylinders still give."""

    fuel_flow: Annotated[Figure, Shown("Fuel gas, all torches", FREE_GAS_FLOW, free_gas=True, toward="up")]
    oxygen_flow: Annotated[Figure, Shown("Oxygen, all torches", FREE_GAS_FLOW, free_gas=True, toward="up")]
    fuel_hours: Annotated[Figure, Shown("Fuel gas lasts, flame burning", HOURS, toward="down")]
    oxygen_hours: Annotated[Figure, Shown("Oxygen lasts, flame burning", HOURS, toward="down")]
    draw_hours: Annotated[Figure, Shown("Acetylene may be drawn so fast for", HOURS, toward="down")]
    ends_first: Annotated[Figure, Shown("Which ends first", words=True)]
    stop_hours: Annotated[Figure, Shown("Stop after, flame burning", HOURS, toward="down")]
    work_hours: Annotated[Figure, Shown("On the clock, with pauses", HOURS, toward="down")]
    fuel_stop_gauge: Annotated[
        Figure, Shown("Change the acetylene cylinder when its gauge reads", GAUGE, toward="up", digits=2)
    ]
    oxygen_for_fuel: Annotated[
        Figure, Shown("Oxygen to use up this fuel gas", FREE_GAS, free_gas=True, toward="up")
    ]
    why_ratio: Annotated[Figure, Shown("Oxygen for one of fuel gas", words=True)]
    draw_share: Annotated[Figure, Shown("Acetylene drawn, share of contents", ("percent/h",), toward="up")]
    draw_limit: Annotated[
        Figure, Shown("Most to draw from this cylinder", FREE_GAS_FLOW, free_gas=True, toward="down")
    ]


def _torch_row(fuel: str) -> Any:
    rows = table("oxygen-ratios-benchbook-2026")
    return next(row for row in rows if (row.fuel, row.sense) == (fuel, "torch"))


def _why(fuel: str, ratio: float) -> Figure:
    complete = ratio_of(fuel, "complete")
    row = _torch_row(fuel)
    return Figure(
        None, row.source, row.how_sure,
        words=f"about {plain_number(ratio)} from the cylinder, not {plain_number(complete)}",
        basis="The torch burns its fuel to carbon monoxide and hydrogen in the cone; these burn on in the outer flame "
        f"with oxygen of the air. {plain_number(complete)} is for burning it all from cylinders, which no torch does.",
    )  # fmt: skip


def _oxygen_table(fuel: str, ratio: float, contents: float, full: float, rules: str) -> Table:
    gas = scale("contents", rules)
    rows = [
        (
            words,
            plain_number(each),
            rounded(gas.number(oxygen_for_fuel(contents, each)), gas.digits, "up"),
            rounded(cylinder_share(oxygen_for_fuel(contents, each), full), 2, "up"),
        )
        for words, each in (
            ("what the torch draws", ratio),
            ("complete burning: a trap", ratio_of(fuel, "complete")),
        )
    ]
    return Table(
        "Oxygen for the fuel gas in the cylinder now",
        ("Reckoned by", "Oxygen for one", gas.name, "Oxygen cylinders such as yours"),
        tuple(rows),
        "Cutting oxygen comes on top.",
    )


def _picture(hours: dict[str, tuple[float, float]], stop: float) -> Picture:
    """Lines of each gas; `hours` holds the hours to its stop and the share left then."""
    title = "How the cylinders run down"
    sentence = "Work ends where the first line reaches its stop, whatever is left in the other cylinder."
    lines = [
        Line(
            name.capitalize(),
            ((0.0, 100.0), (time / 7200, 50 + 50 * kept), (time / 3600, 100 * kept)),
            at=1.0,
        )
        for name, (time, kept) in hours.items()
        if time > 0
    ]
    chart = line_chart(
        title=title,
        sentence=sentence,
        x_label="Flame burning, h",
        y_label="Left, % of what is there now",
        lines=lines,
        marks=[Mark("stop", stop / 3600, None)],
    )
    return Picture(chart, title, sentence)


@calculator("hours-left", "How long the outfit burns")
def hours_left(
    *,
    fuel: Annotated[str, FUEL],
    orifice: Annotated[float, ORIFICE],
    gauge: Annotated[
        float,
        Field(
            "Gauge at the tip",
            GAUGE,
            example={"us": "5 psi", "iso": "0.35 bar", "uk": "0.35 bar"},
            low="0.1 psi",
            high="60 psi",
        ),
    ],
    fuel_contents: Annotated[
        float,
        Field(
            "Fuel gas in its cylinder now",
            FREE_GAS,
            example={"us": "130 ft^3", "iso": "5.7 m^3", "uk": "5.7 m^3"},
            low="1 ft^3",
            high="5000 ft^3",
            free_gas=True,
            hint="By weight: acetylene-left, liquid-fuel-left.",
        ),
    ],
    full_contents: Annotated[
        float,
        Field(
            "A full fuel cylinder holds",
            FREE_GAS,
            assumed={"us": "130 ft^3", "iso": "5.7 m^3", "uk": "5.7 m^3"},
            low="5 ft^3",
            high="5000 ft^3",
            free_gas=True,
            outfit="acetylene_full_contents",
            hint="For the acetylene that must stay in it.",
        ),
    ],
    fuel_flow: Annotated[
        float | None,
        Field(
            "Fuel gas that one torch takes, as its maker prints",
            FREE_GAS_FLOW,
            low="5 L/h",
            high="50000 L/h",
            free_gas=True,
            optional=True,
            hint="It comes before the sum from the hole.",
        ),
    ],
    oxygen_ratio: Annotated[float | None, OXYGEN_RATIO],
    holes: Annotated[float, HOLES],
    torches: Annotated[
        float, Field("Torches on these cylinders", ("",), assumed="1", low="1", high="40", whole=True)
    ],
    burning: Annotated[
        float,
        Field(
            "Flame burns, share of the working time",
            ("%",),
            assumed="30 %",
            low="1 %",
            high="100 %",
            hint="Our guess for a class.",
        ),
    ],
    duty: Annotated[str, DUTY],
    water_volume: Annotated[float, OXYGEN_WATER_VOLUME],
    oxygen_cylinder_gauge: Annotated[float, OXYGEN_CYLINDER_GAUGE],
    oxygen_stop_gauge: Annotated[
        float,
        Field(
            STOP_LABEL,
            GAUGE,
            low="29 psi",
            high="500 psi",
            assumed=OXYGEN_FLOOR,
            hint="Above the pressure that the torch needs, by 29 psi (2 bar) at least.",
        ),
    ],
    cylinder_temperature: Annotated[float, CYLINDER_TEMPERATURE],
    rules: str,
) -> Answer[HoursLeft]:
    """Hours that each cylinder still gives, which ends first, and where to stop.

    A torch draws about as much oxygen as acetylene; the air brings the rest.
    """  # fmt: skip
    require_possible(gas=fuel, gauge=gauge, temperature=cylinder_temperature, rules=rules, field="gauge", label="Gauge at the tip", least=LEAST_GAUGE)
    require_possible(
        gas="oxygen", gauge=oxygen_cylinder_gauge, temperature=cylinder_temperature, rules=rules, field="oxygen_cylinder_gauge",
        label=OXYGEN_CYLINDER_GAUGE.label, least=to_si(10.0, "psi"),
    )  # fmt: skip
    if fuel_contents > OVERFULL * full_contents and fuel == "acetylene":
        raise InputError(
            "fuel_contents",
            "Fuel gas in its cylinder now", "that is more than a full one holds; give "
            f"{scale('contents', rules).said(full_contents)} or less, or correct what a full one holds.",
        )
    _require_stop(oxygen_stop_gauge, gauge, oxygen_cylinder_gauge, rules)
    steps: list[Step] = []
    ratio = ratio_of(fuel) if oxygen_ratio is None else oxygen_ratio
    tip = gas_through_tip(
        fuel=fuel, orifice=orifice, holes=holes, gauge=gauge, oxygen_ratio=ratio, temperature=293.15, rules=rules
    )
    one = tip.fuel_flow
    if fuel_flow is not None:
        one = Figure(fuel_flow, "", "practice", basis="As its maker prints.")
    fuel_draw = _times(one, torches)
    oxygen_draw = _times(one, torches * ratio)
    kept = acetylene_kept(full_contents, cylinder_temperature, gauge) if fuel == "acetylene" else 0.0
    usable = max(worked(steps, "Fuel gas to draw", usable_gas, free_gas=fuel_contents, kept_gas=kept), 0.0)
    fuel_time = _hours(steps, "Fuel gas", usable, fuel_draw)
    oxygen, oxygen_kept = (
        _oxygen_in(steps, water_volume, reading, cylinder_temperature)
        for reading in (oxygen_cylinder_gauge, oxygen_stop_gauge)
    )
    oxygen_time = _hours(steps, "Oxygen", max(oxygen - oxygen_kept, 0.0), oxygen_draw)
    drawn = fuel_draw.value or 0.0
    draw_time = Figure(None, "", "practice", words="no such rule for this gas")
    share = limit = draw_time
    cautions = cold_cautions(fuel, cylinder_temperature, rules)
    if fuel == "acetylene":
        limit = draw_limit_of(fuel_contents, duty)
        fuel_time, draw_time = acetylene_lasts(fuel_contents, kept, fuel_draw, duty, fuel_time.basis)
        share = Figure(
            drawn / fuel_contents, one.source, one.how_sure, low=(fuel_draw.low or drawn) / fuel_contents,
            high=(fuel_draw.high or drawn) / fuel_contents, basis="Flow over what is in the cylinder now.",
        )  # fmt: skip
        cautions += [*draw_cautions(drawn, fuel_contents, duty), caution("acetylene-run-out")]
    ends = {"fuel gas": fuel_time.value or 0.0, "oxygen": oxygen_time.value or 0.0}
    first = min(ends, key=lambda name: ends[name])
    stop, why = ends[first], f"then the {first} is at its stop"
    if draw_time.value is not None and draw_time.value < stop:
        stop, why = draw_time.value, "then the draw is too fast for the acetylene left"
    if oxygen_ratio is not None and ratio >= 0.9 * ratio_of(fuel, "complete"):
        cautions.append(
            caution("complete-burning", ratio=plain_number(ratio), usual=plain_number(ratio_of(fuel)))
        )
    matched = oxygen_for_fuel(fuel_contents, ratio)
    row = _torch_row(fuel)
    low, high = (ratio if oxygen_ratio is not None or end is None else end for end in (row.low, row.high))
    full_oxygen = _oxygen_in([], water_volume, oxygen_cylinder_gauge, cylinder_temperature)
    return Answer(
        HoursLeft(
            fuel_flow=fuel_draw,
            oxygen_flow=oxygen_draw,
            fuel_hours=fuel_time,
            oxygen_hours=oxygen_time,
            draw_hours=draw_time,
            ends_first=Figure(None, "definition", "computed", words=first, basis="The shorter of the first two times above."),
            stop_hours=Figure(stop, one.source, one.how_sure, basis="The first of the times above.", words=why),
            work_hours=Figure(
                stop / burning, "", "practice", basis="Burning time over the share that the flame burns, our guess."
            ),
            fuel_stop_gauge=acetylene_stop_gauge(cylinder_temperature, gauge) if fuel == "acetylene" else Figure(
                None, "", "practice", words="weigh it; a liquefied gas shows no such reading, a stored gas its torch's need"
            ),
            oxygen_for_fuel=Figure(
                matched, row.source, row.how_sure, low=oxygen_for_fuel(fuel_contents, low),
                high=oxygen_for_fuel(fuel_contents, high),
                basis="Fuel gas in the cylinder times the oxygen for one.",
            ),
            why_ratio=_why(fuel, ratio),
            draw_share=share,
            draw_limit=limit,
        ),
        cautions=gravest_first((*cautions, *tip.cautions)),
        steps=tuple(steps),
        beside=lambda: (
            (_oxygen_table(fuel, ratio, fuel_contents, full_oxygen, rules),),
            (
                _picture(
                    {
                        "fuel gas": (ends["fuel gas"], min(kept / fuel_contents, 1.0)),
                        "oxygen": (ends["oxygen"], min(oxygen_kept / oxygen, 1.0)),
                    },
                    stop,
                ),
            ) if ends["fuel gas"] > 0 or ends["oxygen"] > 0 else (),
        ),
    )  # fmt: skip


def _require_stop(stop: float, gauge: float, cylinder: float, rules: str) -> None:
    """Refuse an oxygen reading that leaves the regulator nothing to hold its setting with."""
    said = scale("gauge", rules)
    least = gauge + OXYGEN_REGULATOR
    if stop < least * (1 - 1e-9):
        raise InputError(
            "oxygen_stop_gauge",
            STOP_LABEL, f"the regulator no longer holds its setting so near to it; give {said.text(least)} to "
            f"{said.said(to_si(500.0, 'psi'))}.",
        )
    if cylinder <= stop * (1 + 1e-9):
        raise InputError(
            "oxygen_cylinder_gauge",
            OXYGEN_CYLINDER_GAUGE.label, "that is at or below the reading at which you stop; change the cylinder, and "
            f"give more than {said.said(stop)}.",
        )


def _times(flow: Figure, count: float) -> Figure:
    low, high = (None if end is None else end * count for end in (flow.low, flow.high))
    return Figure((flow.value or 0.0) * count, flow.source, flow.how_sure, low=low, high=high, basis=flow.basis)


def _oxygen_in(steps: list[Step], water_volume: float, gauge: float, temperature: float) -> float:
    pressure = absolute_pressure(gauge)
    return worked(
        steps, "Oxygen in its cylinder", free_gas_volume, water_volume=water_volume, pressure=pressure,
        temperature=temperature, compressibility=compressibility("oxygen", pressure, temperature),
    )  # fmt: skip


def _hours(steps: list[Step], name: str, usable: float, flow: Figure) -> Figure:
    worked(steps, f"{name}: burning time", running_time, usable=usable, flow=flow.value or 0.0)
    said = gas_lasts(usable, flow, f"{name} down to its stop over the flow, flame burning without a pause.")
    return replace(said, source=flow.source or (FIT if name == "Oxygen" else ""))
