"""Gas left in a cylinder that holds gas as gas: oxygen, hydrogen, methane."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution
from calc.declare import Answer, Beside, Choice, Field, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import FREE_GAS, GAUGE, TEMPERATURE, WATER_VOLUME
from calc.formulas.gas.contents import free_gas_volume
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.real_gas import compressibility, pressure_of_contents
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.trade.fields import HOT, HOTTEST
from calc.trade.gas.possible import require_filled, require_possible
from calc.trade.gas.stocks import FIT, OXYGEN_FLOOR
from calc.values.figures import Figure
from calc.values.units import from_si, to_si

GASES = {"oxygen": "Oxygen", "hydrogen": "Hydrogen", "methane": "Methane (natural gas)"}


@dataclass(frozen=True, slots=True)
class OxygenLeft:
    """Gas in the cylinder now."""

    gas_left: Annotated[Figure, Shown("Gas left, all of it", FREE_GAS, free_gas=True, toward="down")]
    usable: Annotated[Figure, Shown("Usable before the residual", FREE_GAS, free_gas=True, toward="down")]
    share_of_full: Annotated[Figure, Shown("Share of a full cylinder", ("%",), toward="down")]
    straight_line: Annotated[Figure, Shown("What the straight-line rule says", ("%",))]
    straight_line_error: Annotated[Figure, Shown("By which that rule is too high", ("%",), digits=2)]


def _constant_contents(
    *,
    gas: str, water_volume: float, gas_held: float, rules: str, gauge: float, temperature: float
) -> Beside:
    units = ("degF", "psi") if rules == "us" else ("degC", "bar")
    limit = to_si(125, "degF") if rules == "us" else to_si(50, "degC")
    rows, points = [], []
    marks = range(-20, 151, 10) if rules == "us" else range(-30, 66, 5)
    for mark in marks:
        kelvin = to_si(mark, units[0])
        try:
            reads = pressure_of_contents(gas, water_volume, gas_held, kelvin) - absolute_pressure(0.0)
        except ValueError:
            continue
        value = from_si(reads, units[1])
        points.append((float(mark), value))
        note = "not for use" if kelvin > limit else ""
        if mark % (20 if rules == "us" else 10) == 0:
            rows.append((f"{mark}", f"{value:.0f}", note))
    degrees = "°F" if rules == "us" else "°C"
    title = "The same gas at other temperatures"
    each = abs(points[-1][1] - points[0][1]) / (len(points) - 1)
    moves = f"{each:.0f}" if each >= 10 else f"{each:.1f}"
    sentence = (
        f"The gauge moves by about {moves} {units[1]} for each {10 if rules == 'us' else 5} {degrees}, "
        "with no gas used at all."
    )
    picture = Picture(
        line_chart(
            title=title,
            sentence=sentence,
            x_label=f"Cylinder temperature, {degrees}",
            y_label=f"Gauge reads, {units[1]}",
            lines=[Line("this cylinder", tuple(points))],
            marks=[
                Mark("now", from_si(temperature, units[0]), from_si(gauge, units[1])),
                Mark("not for use above", from_si(limit, units[0]), None),
            ],
        ),
        title,
        sentence,
    )
    table = Table(
        title, (f"Temperature {degrees}", f"Gauge {units[1]}", ""), tuple(rows),
        "Computed for constant contents. A cylinder at a temperature marked so is not for use.",
    )  # fmt: skip
    return (table,), (picture,)


@calculator("oxygen-left", "Gas left in an oxygen cylinder")
def oxygen_left(
    *,
    water_volume: Annotated[
        float,
        Field(
            "Water volume of the cylinder",
            WATER_VOLUME,
            example="43 L",
            low="0.5 L",
            high="150 L",
            outfit="oxygen_water_volume",
            hint="Stamped on the shoulder. A US cylinder of 244 ft³ at 2200 psi holds 43 L.",
        ),
    ],
    gauge: Annotated[
        float,
        Field("Cylinder gauge reads", GAUGE, example="1500 psi", low="0 psi", high="4500 psi"),
    ],
    temperature: Annotated[
        float,
        Field(
            "Cylinder temperature",
            TEMPERATURE,
            assumed={"us": "70 degF", "iso": "15 degC", "uk": "15 degC"},
            low="-20 degF",
            high=HOTTEST,
            too_high=HOT,
        ),
    ],
    full_gauge: Annotated[
        float,
        Field(
            "A full one reads",
            GAUGE,
            assumed={"us": "2200 psi", "iso": "200 bar", "uk": "200 bar"},
            low="500 psi",
            high="4500 psi",
            outfit="oxygen_full_gauge",
        ),
    ],
    full_temperature: Annotated[
        float,
        Field(
            "Temperature for that full reading",
            TEMPERATURE,
            assumed={"us": "70 degF", "iso": "15 degC", "uk": "15 degC"},
            low="32 degF",
            high="100 degF",
        ),
    ],
    residual_gauge: Annotated[
        float,
        Field(
            "Gauge at which you stop",
            GAUGE,
            assumed=OXYGEN_FLOOR,
            low="29 psi",
            high="500 psi",
            hint="Above what the regulator is set to, by 29 psi (2 bar) at least: below that it no longer holds its setting.",
        ),
    ],
    gas: Annotated[str, Choice("Gas", GASES, assumed="oxygen")],
    rules: str,
) -> Answer[OxygenLeft]:
    """Oxygen, hydrogen or methane left in a cylinder, from its gauge and temperature.

    For gas stored as a gas. Acetylene and liquefied gases show no such link
    between pressure and contents: weigh them.
    """  # fmt: skip
    for name, label, reading in (
        ("gauge", "Cylinder gauge reads", gauge),
        ("residual_gauge", "Gauge at which you stop", residual_gauge),
    ):
        require_filled(gas=gas, gauge=reading, full=full_gauge, full_temperature=full_temperature, temperature=temperature, rules=rules, field=name, label=label)
    require_possible(gas=gas, gauge=full_gauge, temperature=full_temperature, rules=rules, field="full_gauge", label="A full one reads", least=to_si(500.0, "psi"))
    steps: list[Step] = []

    def held(reading: float, at: float, says: str) -> float:
        pressure = worked(steps, f"{says}: absolute pressure", absolute_pressure, gauge=reading)
        return worked(
            steps, f"{says}: gas at 15 °C and 1 atm", free_gas_volume,
            water_volume=water_volume, pressure=pressure, temperature=at,
            compressibility=compressibility(gas, pressure, at),
        )  # fmt: skip

    gas_left = held(gauge, temperature, "Now")
    full = held(full_gauge, full_temperature, "Full")
    residual = held(residual_gauge, temperature, "When you stop")
    cautions = []
    if gas == "oxygen":
        cautions.append(caution("oil-in-oxygen"))
    share = gas_left / full
    return Answer(
        OxygenLeft(
            gas_left=Figure(
                gas_left, FIT, "computed", low=gas_left * 0.97, high=gas_left * 1.03,
                basis="Real gas at the pressure shown; the band is a gauge good to 3 %, from memory. "
                "It includes the gas that stays behind at 0 on the gauge.",
            ),
            usable=Figure(
                max(gas_left - residual, 0.0), FIT, "computed",
                basis="Down to the reading at which you stop.",
                words="" if gas_left > residual else "change this cylinder now: it is at or below the reading at which you stop",
            ),
            share_of_full=Figure(share, FIT, "computed", basis="All gas now over all gas when full."),
            straight_line=Figure(
                gauge / full_gauge, "manly-1916", "read",
                basis="Gauge now over gauge full. Right within a point or two at equal temperature; "
                "it ignores the temperature, and the real gas.",
            ),
            straight_line_error=Figure(
                gauge / full_gauge - share, FIT, "computed",
                basis="The rule less the real share, in points of a full cylinder; below nothing it is too low. At one "
                "temperature it is out by a point or two, in a cold cylinder by much more.",
            ),
        ),
        cautions=(*cautions, *brought({"fuel": gas})),
        steps=tuple(steps),
        beside=lambda: _constant_contents(gas=gas, water_volume=water_volume, gas_held=gas_left, rules=rules, gauge=gauge, temperature=temperature),
    )  # fmt: skip
