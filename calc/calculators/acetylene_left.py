"""Acetylene left in a cylinder: by weight, and what its gauge can tell."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.ask.errors import InputError
from calc.declare import Answer, Beside, Field, Figure, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import FREE_GAS, GAUGE, MASS
from calc.formulas.gas.acetylene import (
    CONTENTS_BAND,
    acetylene_by_weight,
    acetylene_pressure,
    acetylene_share,
)
from calc.formulas.gas.possible import OVERFULL
from calc.formulas.gas.pressures import absolute_pressure
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.show.scales import scale
from calc.trade.fields import CYLINDER_TEMPERATURE, FULL_CONTENTS
from calc.trade.gas.draws import cold_cautions
from calc.trade.gas.possible import require_possible
from calc.trade.gas.stocks import acetylene_kept, acetylene_stop_gauge
from calc.values.quantities import FreeGas, Temperature
from calc.values.units import from_si, to_si

BY_WEIGHT = "cga-g1 weighing, 14.7 ft³ for each lb"
BY_GAUGE = "leeds-1910 solubility; the curve is computed"


@dataclass(frozen=True, slots=True)
class AcetyleneLeft:
    """Acetylene in the cylinder now."""

    gas_left: Annotated[Figure, Shown("Acetylene left", FREE_GAS, free_gas=True, toward="down")]
    share_of_full: Annotated[Figure, Shown("Share of a full cylinder", ("%",), toward="down")]
    share_by_gauge: Annotated[
        Figure, Shown("What the gauge alone would say", ("%",), toward="down", digits=2)
    ]
    usable: Annotated[
        Figure, Shown("Usable before the cylinder is changed", FREE_GAS, free_gas=True, toward="down")
    ]
    stop_gauge: Annotated[Figure, Shown("Change the cylinder when its gauge reads", GAUGE, toward="up", digits=2)]


def _why_weigh(rules: str, gauge: float | None, temperature: float) -> Beside:
    units = ("degF", "psi") if rules == "us" else ("degC", "bar")
    degrees = "°F" if rules == "us" else "°C"
    marks = (
        (-10, 10, 32, 50, 70, 90, 110, 125, 140)
        if rules == "us"
        else (-20, -10, 0, 10, 15, 20, 30, 40, 50, 60)
    )
    limit = to_si(125, "degF") if rules == "us" else to_si(50, "degC")
    shares = (0.25, 0.5, 0.75, 1.0)
    air = absolute_pressure(0.0)

    def reads(share: float, mark: float) -> float:
        return from_si(acetylene_pressure(share, to_si(mark, units[0])) - air, units[1])

    low, high = (to_si(marks[0], units[0]), to_si(marks[-1], units[0]))
    fine = [from_si(low + (high - low) * i / 24, units[0]) for i in range(25)]
    lines = [
        Line(f"{share:.0%}".replace("%", " % full"), tuple((m, reads(share, m)) for m in fine))
        for share in shares
    ]
    title = "One gauge reading, many contents"
    sentence = "A warm cylinder that is half full reads as high as a cold one that is full: weigh it."
    drawn = [Mark("not for use above", from_si(limit, units[0]), None)]
    if gauge is not None:
        drawn.append(Mark("yours", from_si(temperature, units[0]), from_si(gauge, units[1])))
    rows = tuple(
        (
            f"{mark}{' (not for use)' if to_si(mark, units[0]) > limit + 1e-6 else ''}",
            *(
                f"{reads(share, mark):.0f}" if units[1] == "psi" else f"{reads(share, mark):.1f}"
                for share in shares
            ),
        )
        for mark in marks
    )
    columns = (
        f"Temperature {degrees}",
        *(f"{share:.0%} full, {units[1]}".replace("%", " %") for share in shares),
    )
    table = Table(
        "Gauge of an acetylene cylinder at rest",
        columns,
        rows,
        "Computed; good to 5 % of the pressure at best. While gas is drawn the gauge reads lower.",
    )
    chart = line_chart(
        title=title, sentence=sentence, x_label=f"Cylinder temperature, {degrees}", y_label=f"Gauge, {units[1]}", lines=lines, marks=drawn
    )
    return (table,), (Picture(chart, title, sentence),)


def _by_gauge(gauge: float | None, temperature: float) -> Figure:
    if gauge is None:
        return Figure(None, BY_GAUGE, "computed", words="no gauge reading given")
    pressure = absolute_pressure(gauge)
    try:
        share = acetylene_share(pressure, temperature)
    except ValueError as error:
        return Figure(None, BY_GAUGE, "computed", words=f"nothing: {str(error).rstrip('.')}")
    return Figure(
        share,
        BY_GAUGE,
        "computed",
        low=share * (1 - CONTENTS_BAND),
        high=share * (1 + CONTENTS_BAND),
        basis="Acetylene is dissolved in acetone, so the reading moves with heat as much as with "
        "contents. The band is for a cylinder at rest for hours; in use it is wider.",
    )


def _unlike(by_weight: Figure, by_gauge: Figure) -> bool:
    """Whether the band by weight and the band by gauge have no share in common."""
    if by_gauge.value is None:
        return False
    low, high = by_gauge.low or 0.0, by_gauge.high or by_gauge.value
    return (by_weight.high or 0.0) < low or (by_weight.low or 0.0) > high


def _usable(
    gas_left: Figure, full: FreeGas, temperature: Temperature, other: Figure | None, *, low_gauge: bool
) -> Figure:
    """What may be drawn before the cylinder is changed: by the less of weight and gauge where they differ."""
    stop, kept = acetylene_stop_gauge(temperature), acetylene_kept(full, temperature)
    basis = "Acetylene left less what stays in the cylinder at the gauge below."
    if low_gauge:
        return Figure(
            0.0, stop.source, stop.how_sure, words="change this cylinder now: its gauge is at or below the reading at which it is changed",
            basis="By the gauge, whatever the weight says.",
        )  # fmt: skip
    if other is not None and (other.value or 0.0) * full < (gas_left.value or 0.0):
        low, value, high = ((end or 0.0) * full for end in (other.low, other.value, other.high))
        basis = f"By the gauge, which says less than the weight. {basis}"
    else:
        low, value, high = (end or 0.0 for end in (gas_left.low, gas_left.value, gas_left.high))
    words = "" if value > kept else "change this cylinder now"
    return Figure(
        max(value - kept, 0.0), stop.source, stop.how_sure, low=max(low - kept, 0.0), high=max(high - kept, 0.0), basis=basis,
        words=words,
    )  # fmt: skip


@calculator("acetylene-left", "Acetylene left in a cylinder")
def acetylene_left(
    *,
    gross_weight: Annotated[
        float | None,
        Field("Cylinder weighs now", MASS, example="118 lb", low="5 lb", high="400 lb", optional=True),
    ],
    tare_weight: Annotated[
        float | None,
        Field(
            "Tare stamped on it",
            MASS,
            example="111 lb",
            low="5 lb",
            high="400 lb",
            optional=True,
            outfit="acetylene_tare",
            hint="Empty cylinder with its acetone, as stamped on the shoulder.",
        ),
    ],
    full_contents: Annotated[float, FULL_CONTENTS],
    gauge: Annotated[
        float | None, Field(
            "Cylinder gauge reads",
            GAUGE,
            low="0 psi",
            high="400 psi",
            optional=True,
            hint="At rest: nothing drawn for some hours, the cylinder as warm as the room.",
        )
    ],
    temperature: Annotated[float, CYLINDER_TEMPERATURE],
    rules: str,
) -> Answer[AcetyleneLeft]:
    """Acetylene left, by weight; and what the gauge alone would have said, with its wide band.

    Weigh the cylinder where you can. The pressure of dissolved gas says little
    about how much is left.
    """  # fmt: skip
    steps: list[Step] = []
    if gauge is not None:
        require_possible(gas="acetylene", gauge=gauge, temperature=temperature, rules=rules, field="gauge", label="Cylinder gauge reads")
    by_gauge = _by_gauge(gauge, temperature)
    if gross_weight is None or tare_weight is None:
        if gauge is None:
            raise InputError(
                "gross_weight",
                "Cylinder weighs now", "give this and the tare, or at least the cylinder gauge; "
                "for example 118 lb.",
            )
        if by_gauge.value is None:
            raise InputError(
                "gauge",
                "Cylinder gauge reads", f"it tells {by_gauge.words}; weigh the cylinder instead.",
            )
        share = by_gauge.value
        low, high = share * (1 - CONTENTS_BAND), share * (1 + CONTENTS_BAND)
        basis = "From the gauge alone, so the band is wide. Weigh the cylinder."
        gas_left = Figure(
            share * full_contents, BY_GAUGE, "computed", low=low * full_contents, high=high * full_contents, basis=basis
        )
        left = Figure(share, BY_GAUGE, "computed", low=low, high=high, basis=basis)
    else:
        if gross_weight < tare_weight:
            raise InputError(
                "gross_weight",
                "Cylinder weighs now", "it weighs less than its tare, so one figure is wrong or acetone "
                "is lost; read both again, and give the tare or more.",
            )
        volume = worked(steps, "Gas by weight", acetylene_by_weight, gross=gross_weight, tare=tare_weight)
        error = acetylene_by_weight(to_si(0.5, "lb"), 0.0)
        if volume > full_contents * OVERFULL + error:
            mass = scale("mass", rules)
            most = tare_weight + full_contents / acetylene_by_weight(1.0, 0.0)
            raise InputError(
                "gross_weight",
                "Cylinder weighs now", "that is more gas than a full one holds; give "
                f"{mass.said(tare_weight)} to {mass.said(most)}, or correct the tare or what a full one holds.",
            )
        gas_left = Figure(
            volume, BY_WEIGHT, "memory", low=max(volume - error, 0.0), high=volume + error,
            basis="Weight now less tare. The band is half a pound either way on the scale.",
        )  # fmt: skip
        left = Figure(
            volume / full_contents, BY_WEIGHT, "memory",
            low=max(volume - error, 0.0) / full_contents, high=(volume + error) / full_contents,
            basis="Gas by weight over what a full one holds.",
        )  # fmt: skip
    stop = acetylene_stop_gauge(temperature)
    unlike = _unlike(left, by_gauge)
    low_gauge = gauge is not None and gauge <= (stop.value or 0.0) * (1 + 1e-9)
    cautions = [caution("acetylene-lay"), *brought({"fuel": "acetylene"}), *cold_cautions("acetylene", temperature, rules)]
    usable = _usable(gas_left, full_contents, temperature, by_gauge if unlike else None, low_gauge=low_gauge)
    if usable.value == 0.0:
        cautions.append(caution("acetylene-run-out"))
    if unlike:
        cautions.append(caution("weight-and-gauge-differ"))
    return Answer(
        AcetyleneLeft(
            gas_left=gas_left,
            share_of_full=left,
            share_by_gauge=by_gauge,
            usable=usable,
            stop_gauge=stop,
        ),
        cautions=gravest_first(cautions),
        steps=tuple(steps),
        beside=lambda: _why_weigh(rules, gauge, temperature),
    )
