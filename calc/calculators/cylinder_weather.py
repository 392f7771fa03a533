"""What heat, sun and cold do to a cylinder's gauge."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.answer.sentences import degrees
from calc.ask.errors import InputError
from calc.data.tables import table
from calc.declare import Answer, Caution, Choice, Field, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import GAUGE, TEMPERATURE
from calc.formulas.gas.acetylene import PRESSURE_BAND, acetylene_pressure, acetylene_share
from calc.formulas.gas.contents import free_gas_volume
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.real_gas import compressibility, pressure_of_contents
from calc.formulas.gas.saturation import vapour_pressure
from calc.formulas.setup.ruled import amount, ruled_row
from calc.formulas.setup.sunshine import ABSORBED, LOSS, SUNSHINE, sun_rise
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.show.scales import scale
from calc.trade.fields import HOT, HOTTEST
from calc.trade.gas.draws import cold_cautions
from calc.trade.gas.possible import gauge_down, require_possible
from calc.values.figures import Figure
from calc.values.quantities import ATMOSPHERE, Gauge, Temperature, TemperatureRise
from calc.values.units import to_si

GASES = {
    "oxygen": "Oxygen",
    "acetylene": "Acetylene",
    "propane": "Propane",
    "propylene": "Propylene",
    "hydrogen": "Hydrogen",
    "methane": "Methane (natural gas)",
}
LIQUEFIED = ("propane", "propylene")
LIQUID_LEFT = 0.8
"""Share of its boiling pressure below which a liquefied gas counts as out of liquid: our guess."""
PLACES = {"shade": "In the shade", "sun": "In the sun"}
LABEL = "Cylinder gauge reads now"
VOLUME = to_si(50.0, "L")
"""Any volume will do: the gauge depends on how densely it is filled."""
MODEL_END: Temperature = to_si(65.0, "degC")
NEARLY: TemperatureRise = 2.0
"""So near below the rule's hottest, K, that a cylinder counts as hot: our own choice."""
NOT_FOR_USE = "not for use: leave it, keep people away, see the page Hot cylinder"
FIT = "coolprop-8 reference equation, our fit"


@dataclass(frozen=True, slots=True)
class CylinderWeather:
    """A cylinder at other temperatures."""

    gauge_then: Annotated[Figure, Shown("Gauge at that temperature", GAUGE, toward="up")]
    gauge_at_limit: Annotated[Figure, Shown("Gauge at the rule's hottest", GAUGE, toward="up")]
    sun_temperature: Annotated[Figure, Shown("In the sun it can come to", TEMPERATURE, toward="up")]
    sun_gauge: Annotated[Figure, Shown("Gauge then", GAUGE, toward="up")]
    relief: Annotated[Figure, Shown("What lets go", words=True)]


@dataclass(frozen=True, slots=True)
class _Course:
    """Gauge of one closed cylinder by temperature, with what it rests on."""

    gauge: Callable[[Temperature], Gauge]
    source: str
    how_sure: str
    band: float
    basis: str


def _course(steps: list[Step], gas: str, gauge: Gauge | None, temperature: Temperature) -> _Course:
    if gas in LIQUEFIED:
        return _Course(
            lambda t: vapour_pressure(gas, t) - ATMOSPHERE, FIT, "computed", 0.0,
            "Pure gas with liquid left: the gauge goes by the temperature alone. Bottled gas is a mixture and can read "
            "otherwise.",
        )  # fmt: skip
    if gauge is None:
        raise InputError("gauge", LABEL, "this gas needs it; for example 1500 psi, for acetylene 150 psi.")
    pressure = worked(steps, "Absolute pressure now", absolute_pressure, gauge=gauge)
    try:
        if gas == "acetylene":
            share = acetylene_share(pressure, temperature)
            return _Course(
                lambda t: acetylene_pressure(share, t) - ATMOSPHERE, "leeds-1910 solubility, our fit", "computed",
                PRESSURE_BAND, "Acetylene in acetone at rest; the porous filling and the room left above are left out.",
            )  # fmt: skip
        held = worked(
            steps, "Gas in 50 L of it", free_gas_volume, water_volume=VOLUME, pressure=pressure,
            temperature=temperature, compressibility=compressibility(gas, pressure, temperature),
        )  # fmt: skip
    except ValueError as error:
        said = str(error)
        raise InputError("gauge", LABEL, f"{said[0].lower()}{said[1:]}") from None
    return _Course(
        lambda t: pressure_of_contents(gas, VOLUME, held, t) - ATMOSPHERE, FIT, "computed", 0.0,
        "The same gas, nothing used, the steel taken as rigid.",
    )  # fmt: skip


@calculator("cylinder-weather", "Cylinders in heat, sun and cold")
def cylinder_weather(
    *,
    gas: Annotated[str, Choice("Gas", GASES, example="oxygen")],
    gauge: Annotated[
        float | None,
        Field(
            LABEL,
            GAUGE,
            example={"us": "2200 psi", "iso": "200 bar", "uk": "200 bar"},
            low="0 psi",
            high="4500 psi",
            optional=True,
            hint="Not needed for propane and propylene.",
        ),
    ],
    cylinder_temperature: Annotated[
        float,
        Field(
            "Cylinder is now at",
            TEMPERATURE,
            assumed={"us": "70 degF", "iso": "15 degC", "uk": "15 degC"},
            low="-20 degF",
            high=HOTTEST,
            too_high=HOT,
        ),
    ],
    weather: Annotated[
        float,
        Field(
            "It will be at",
            TEMPERATURE,
            example={"us": "100 degF", "iso": "40 degC", "uk": "40 degC"},
            low="-20 degF",
            high="65 degC",
            too_high="this page ends there, far above what any cylinder is used or kept at",
        ),
    ],
    place: Annotated[str, Choice("Where it stands", PLACES, assumed="sun")],
    rules: str,
) -> Answer[CylinderWeather]:
    """What heat, sun and cold do to the gauge of a closed cylinder.

    It tells what happens, not what is allowed: above the rule's temperature no
    cylinder is used, moved or opened.
    """  # fmt: skip
    steps: list[Step] = []
    if gauge is not None:
        require_possible(
            gas=gas, gauge=gauge, temperature=cylinder_temperature, rules=rules, field="gauge", label=LABEL
        )
        _require_liquid(gas, gauge, cylinder_temperature, rules)
    course = _course(steps, gas, gauge, cylinder_temperature)
    hottest = ruled_row("cylinder-temperatures", rules, lambda row: -amount(row), topic="hottest")
    limit = amount(hottest.row)
    try:
        then = _reading(course=course, temperature=weather, limit=limit, coldest=weather, hottest=weather)
        at_limit = _reading(course=course, temperature=limit, limit=limit, coldest=limit, hottest=limit)
        table_, picture = _by_temperature(course, cylinder_temperature, limit, rules)
        sun_temperature, sun_gauge = _sun(
            steps=steps, course=course, weather=weather, limit=limit, place=place, rules=rules
        )
    except ValueError:
        raise InputError(
            "gauge", LABEL, "so much gas would pass 400 bar, or 1.3 times full, in the heat; check it."
        ) from None
    return Answer(
        CylinderWeather(
            gauge_then=then,
            gauge_at_limit=at_limit,
            sun_temperature=sun_temperature,
            sun_gauge=sun_gauge,
            relief=_relief(gas, weather, rules),
        ),
        cautions=_cautions(gas, place, weather > limit - NEARLY, rules),
        steps=tuple(steps),
        tables=(table_,),
        pictures=(picture,),
    )  # fmt: skip


def _require_liquid(gas: str, gauge: Gauge, temperature: Temperature, rules: str) -> None:
    """Refuse a liquefied gas that shows far less than its liquid would: then there is none."""
    if gas not in LIQUEFIED:
        return
    boils = vapour_pressure(gas, temperature)
    if absolute_pressure(gauge) >= LIQUID_LEFT * boils:
        return
    least = scale("gauge", rules).said(max(LIQUID_LEFT * boils - ATMOSPHERE, 0.0))
    raise InputError(
        "gauge",
        LABEL,
        f"with liquid left {gas} shows {gauge_down(boils - ATMOSPHERE, rules)} at {degrees(temperature, rules)}, so "
        f"by this reading no liquid is left and this page cannot follow it; leave it empty, or give {least} to "
        f"{gauge_down(boils - ATMOSPHERE, rules)}.",
    )


def _reading(
    *,
    course: _Course, temperature: Temperature, limit: Temperature, coldest: Temperature, hottest: Temperature,
    basis: str = "",
) -> Figure:  # fmt: skip
    value = course.gauge(min(temperature, MODEL_END))
    hot = temperature > limit * (1 + 1e-9)
    if value < 0:
        return Figure(
            None, course.source, course.how_sure, basis=course.basis,
            words="nothing on the gauge: too cold for it to give gas",
        )  # fmt: skip
    low, high = (course.gauge(min(end, MODEL_END)) for end in (coldest, hottest))
    return Figure(
        value, course.source, course.how_sure, low=max(low - course.band * (low + ATMOSPHERE), 0.0),
        high=high + course.band * (high + ATMOSPHERE), basis=course.basis + basis, words=NOT_FOR_USE if hot else "",
    )  # fmt: skip


def _sun(
    *, steps: list[Step], course: _Course, weather: Temperature, limit: Temperature, place: str, rules: str
) -> tuple[Figure, Figure]:
    if place == "shade":
        words = "keep it in the shade: a wall, a roof, a cover with air under it"
        none = Figure(None, "", "practice", words=words)
        return none, none
    rise = worked(
        steps, "Rise in full sun", sun_rise, absorbed=ABSORBED[1], sunshine=SUNSHINE, heat_transfer=LOSS[1]
    )
    low, high = (sun_rise(ABSORBED[end], SUNSHINE, LOSS[end]) for end in (0, 2))
    warm = weather + rise
    basis = (
        f"{degrees(weather, rules)} of air and full sun on dark paint for hours, light air; the band runs from light paint in "
        "a breeze to black paint in still air. A shut vehicle is hotter still."
    )
    hot = warm > limit
    temperature = Figure(
        warm,
        "",
        "memory",
        low=weather + low,
        high=weather + high,
        basis=basis,
        words=NOT_FOR_USE if hot else "",
    )
    if warm > MODEL_END:
        return temperature, Figure(
            None, course.source, course.how_sure, basis=course.basis,
            words=f"hotter than this page reckons; {NOT_FOR_USE}",
        )  # fmt: skip
    ends = f" The band is that of the temperature in the sun, as far as {degrees(MODEL_END, rules)}, where this page ends."
    return temperature, _reading(
        course=course,
        temperature=warm,
        limit=limit,
        coldest=weather + low,
        hottest=weather + high,
        basis=ends,
    )


def _marks(rules: str) -> list[Temperature]:
    """Temperatures of the table, cold to hot."""
    unit = "degF" if rules == "us" else "degC"
    numbers = range(-20, 141, 10) if rules == "us" else range(-25, 66, 5)
    return [*(to_si(float(n), unit) for n in numbers), *([MODEL_END] if rules == "us" else [])]


def _by_temperature(
    course: _Course, now: Temperature, limit: Temperature, rules: str
) -> tuple[Table, Picture]:
    warmth, pressure = scale("temperature", rules), scale("gauge", rules)
    rows, points = [], []
    for mark in _marks(rules):
        value = course.gauge(mark)
        if value < 0:
            rows.append((warmth.text(mark), "nothing", ""))
            continue
        points.append((warmth.number(mark), pressure.number(value)))
        hot = mark > limit * (1 + 1e-9)
        rows.append(
            (
                warmth.text(mark),
                f"{pressure.number(value):.0f}" if value > 1e6 else pressure.text(value),
                "not for use" if hot else "",
            )
        )
    title = "The same cylinder at other temperatures"
    first, last = points[0], points[-1]
    sentence = (
        f"From {first[0]:.0f} to {last[0]:.0f} {warmth.name} the gauge goes from {first[1]:.3g} to {last[1]:.4g} "
        f"{pressure.name} with no gas used."
    )
    here = course.gauge(now)
    marks = [Mark("not for use above", warmth.number(limit), None)]
    if here >= 0:
        marks.insert(0, Mark("now", warmth.number(now), pressure.number(here)))
    chart = line_chart(
        title=title, sentence=sentence, x_label=f"Cylinder temperature, {warmth.name}", y_label=f"Gauge reads, {pressure.name}",
        lines=[Line("this cylinder", tuple(points))], marks=marks,
    )  # fmt: skip
    also = next(row for row in table("cylinder-temperatures") if row.topic == "acetylene-store")
    return (
        Table(
            title, (f"Temperature, {warmth.name}", f"Gauge, {pressure.name}", ""), tuple(rows),
            "A cylinder at a temperature marked so is not for use. An older US Army text stores acetylene up to "
            f"{degrees(amount(also), rules)}; this page follows the lower limit.",
        ),
        Picture(chart, title, sentence),
    )  # fmt: skip


def _relief(gas: str, weather: Temperature, rules: str) -> Figure:
    if gas == "acetylene":
        row = ruled_row("acetylene-limits", rules, amount, topic="fusible-plug").row
        plug = amount(row)
        below = to_si(1.0, "degF") - to_si(0.0, "degF") if rules == "us" else 1.0
        sign = "°F" if rules == "us" else "°C"
        return Figure(
            None, row.source, row.how_sure,
            words=f"fusible plugs melt at about {degrees(plug, rules)}, {(plug - weather) / below:.0f} {sign} above that "
            "temperature, and let all the gas out; that is fire, not rescue",
            basis="A plug that has let go does not mean that the cylinder is cool: one heated in a fire can burst hours later.",
        )  # fmt: skip
    if gas in LIQUEFIED:
        return Figure(
            None, "", "practice",
            words="a relief valve opens and blows fuel; the liquid swells with heat, and a cylinder filled too far bursts",
            basis="Never lie it down, never fill it yourself.",
        )  # fmt: skip
    row = next(row for row in table("cylinder-temperatures") if row.topic == "disc-backing")
    share = next(row for row in table("cylinder-temperatures") if row.topic == "service-share")
    return Figure(
        None, row.source, row.how_sure,
        words=f"a burst disc, in the United States often backed with metal that melts at about {degrees(amount(row), rules)}; "
        "when it goes all the gas goes",
        basis=f"Filling keeps it below 5/4 of the service pressure at {degrees(amount(share), rules)} (49 CFR 173.301a(d), "
        "read). Elsewhere cylinders may have none.",
    )  # fmt: skip


def _cautions(gas: str, place: str, hot: bool, rules: str) -> tuple[Caution, ...]:
    heat = (caution("cylinder-in-fire"),) if hot else (caution("cylinder-in-sun"),) if place == "sun" else ()
    told = (*heat, caution("cylinder-in-vehicle"), *cold_cautions(gas, None, rules))
    return gravest_first((*told, *brought({"fuel": gas})))
