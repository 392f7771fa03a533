"""Fuel gas stored as a liquid: what is left, its pressure, and how fast it boils off."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.ask.errors import InputError
from calc.data.tables import source_words, table
from calc.declare import (
    Answer,
    Beside,
    Caution,
    Choice,
    Field,
    Picture,
    Shown,
    Step,
    Table,
    calculator,
    worked,
)
from calc.declare.inputs import FREE_GAS, FREE_GAS_FLOW, GAUGE, LENGTH, MASS, TEMPERATURE
from calc.formulas.gas.contents import share_of_full as share_of
from calc.formulas.gas.nozzle import free_gas_flow
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.properties import gas_molar_mass
from calc.formulas.gas.saturation import (
    AIR_TO_CYLINDER,
    LIQUID_DENSITY,
    boiling_temperature,
    evaporation_draw,
    heat_of_evaporation,
    liquid_depth,
    vapour_pressure,
    wetted_area,
)
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.show.scales import scale
from calc.trade.fields import HOT, HOTTEST, LIQUEFIED_FUELS
from calc.trade.gas.draws import cold_cautions
from calc.values.figures import Figure
from calc.values.quantities import ATMOSPHERE, SEVENTY_FAHRENHEIT
from calc.values.units import to_si

MPS = "methylacetylene-propadiene"
CURVE = "coolprop-8 reference equation, our fit within 0.02 %"
SCALE_ERROR = to_si(0.5, "lb")


@dataclass(frozen=True, slots=True, kw_only=True)
class LiquidFuelLeft:
    """Liquefied fuel gas in the cylinder now."""

    weight_left: Annotated[Figure, Shown("Gas left, by weight", MASS, toward="down")]
    gas_left: Annotated[Figure, Shown("The same as gas", FREE_GAS, free_gas=True, toward="down")]
    share_of_full: Annotated[Figure, Shown("Share of a full cylinder", ("%",), toward="down")]
    vapour_gauge: Annotated[Figure, Shown("Its gauge at rest", GAUGE)]
    draw_kept: Annotated[
        Figure,
        Shown(
            "Steady draw that the air keeps boiling", FREE_GAS_FLOW, free_gas=True, toward="down", digits=2
        ),
    ]
    pressure_held: Annotated[Figure, Shown("Is the torch's pressure held?", words=True)]


def _gauge_at_rest(fuel: str, temperature: float) -> Figure:
    if fuel != MPS:
        return Figure(
            vapour_pressure(fuel, temperature) - ATMOSPHERE, CURVE, "computed",
            basis="Pure gas with liquid left. It depends on the temperature alone and does not tell how much is "
            "left. Bottled propane holds other gases and can read otherwise.",
        )  # fmt: skip
    rows = [row for row in table("mps-facts") if row.topic == "full-gauge"]
    followed = min(rows, key=lambda row: row.number)
    if abs(temperature - SEVENTY_FAHRENHEIT) > 0.6:  # a degree Fahrenheit
        return Figure(
            None, followed.source, followed.how_sure,
            words=f"only the figure at 70 °F is known here, {followed.number:g} psi",
            basis="No other pressure of this mixture is in our data.",
        )  # fmt: skip
    return Figure(
        to_si(followed.number, "psi"), followed.source, followed.how_sure,
        low=to_si(followed.number, "psi"), high=to_si(max(row.number for row in rows), "psi"),
        basis="At 70 °F only; sources print 94 and 95 psi.",
    )  # fmt: skip


def _draw(
    *,
    steps: list[Step], fuel: str, mass: float, diameter: float, air: float, least_gauge: float
) -> Figure:
    if fuel == MPS:
        return Figure(None, "", "practice", words="no figure: its boiling is not in our data")
    least = worked(steps, "Lowest absolute pressure", absolute_pressure, gauge=least_gauge)
    boiling = boiling_temperature(fuel, least)
    if boiling >= air:
        return Figure(
            0.0, CURVE, "computed", words="the air is too cold for that pressure",
            basis="Liquid no colder than the air takes no warmth from it.",
        )  # fmt: skip
    density = LIQUID_DENSITY[fuel]
    depth = worked(
        steps, "Depth of the liquid", liquid_depth, mass=mass, density=density, diameter=diameter
    )
    wetted = worked(steps, "Wall that the liquid touches", wetted_area, diameter=diameter, depth=depth)
    heat = heat_of_evaporation(fuel, boiling)
    molar_mass = gas_molar_mass(fuel)
    low, middle, high = AIR_TO_CYLINDER
    boiled = worked(
        steps, "Steady draw", evaporation_draw, heat_transfer=middle, wetted=wetted, surroundings=air,
        boiling=boiling, heat=heat,
    )  # fmt: skip
    draw = worked(steps, "The same as gas", free_gas_flow, mass_flow=boiled, molar_mass=molar_mass)
    return Figure(
        draw, "", "memory", low=draw * low / middle, high=draw * high / middle,
        basis="After hours, from the warmth of still air alone. The warmth that air gives is a guess within a factor of "
        "two or more: frost lowers it, wind raises it. A short draw lives on the liquid's own warmth.",
    )  # fmt: skip


def _held(rest: Figure, draw: Figure, flow: float | None, least: float, rules: str) -> Figure:
    gauge, rate = scale("gauge", rules), scale("flow", rules)
    if rest.value is None:
        words = "not known here; ask the supplier for the pressure at your temperature"
    elif rest.value < least:
        words = (
            f"no: the cylinder gives {gauge.said(rest.value)} and {gauge.said(least)} is needed. Use a warmer place "
            "or a gas with more pressure; never heat the cylinder"
        )
    elif draw.value is None or flow is None:
        words = f"at rest yes, {gauge.said(rest.value)}; drawing cools the liquid and lowers it"
    elif flow > (draw.high or 0.0):
        words = f"not for long: {rate.said(flow)} is more than the air keeps boiling. Couple cylinders or take a larger one"
    elif flow > (draw.low or 0.0):
        words = "perhaps: the draw lies inside the band. Watch for frost and a falling gauge"
    else:
        words = (
            "likely while the liquid lasts: the draw is below the band. It falls as the cylinder empties"
        )
    return Figure(
        None, rest.source, rest.how_sure, words=words, basis="Pressure at rest first, then the draw's band."
    )


def _beside(
    temperature: float, rest: Figure, least: float, fuel: str, rules: str
) -> Beside:
    gauge, degree = scale("gauge", rules), scale("temperature", rules)
    if fuel == MPS:
        printed = tuple(
            ("70 °F (21 °C)", gauge.text(to_si(row.number, "psi")), source_words(row.source))
            for row in table("mps-facts")
            if row.topic == "full-gauge"
        )
        kept = Table(
            "Gauge of methylacetylene-propadiene, as printed",
            ("Temperature", f"Gauge, {gauge.name}", "Source"),
            printed,
        )
        return (kept,), ()
    limit = to_si(125, "degF") if rules == "us" else to_si(50, "degC")
    marks = range(-40, 141, 20) if rules == "us" else range(-40, 61, 10)

    def reads(gas: str, mark: float) -> float:
        return vapour_pressure(gas, to_si(mark, degree.unit)) - ATMOSPHERE

    rows = tuple(
        (
            f"{mark}",
            gauge.text(reads("propane", mark)),
            gauge.text(reads("propylene", mark)),
            "not for use" if to_si(mark, degree.unit) > limit + 1e-6 else "",
        )
        for mark in marks
    )
    title = "Pressure of the liquid by temperature"
    sentence = "The gauge follows the temperature and says nothing of how much is left."
    chart = line_chart(
        title=title, sentence=sentence, x_label=f"Cylinder temperature, {degree.name}", y_label=f"Gauge at rest, {gauge.name}",
        lines=[
            Line(
                LIQUEFIED_FUELS[gas],
                tuple((float(mark), gauge.number(reads(gas, mark))) for mark in marks),
                at=0.7,
                below=gas == "propane",
            )
            for gas in ("propylene", "propane")
        ],
        marks=[
            Mark("not for use above", degree.number(limit), None),
            Mark("needed", None, gauge.number(least)),
            Mark("yours", degree.number(temperature), gauge.number(rest.value or 0.0)),
        ],
    )  # fmt: skip
    beside = Table(
        f"Gauge at rest, {gauge.name}", (f"Temperature, {degree.name}", "Propane", "Propylene", ""), rows,
        "Pure gas, computed. A cylinder at a temperature marked so is not for use.",
    )  # fmt: skip
    return (beside,), (Picture(chart, title, sentence),)


def _cautions(fuel: str, temperature: float, rules: str) -> tuple[Caution, ...]:
    told = (caution("liquid-cylinder-lies"), *brought({"fuel": fuel}), *cold_cautions(fuel, temperature, rules))
    return gravest_first(told)


@calculator("liquid-fuel-left", "Liquefied fuel gas left in a cylinder")
def liquid_fuel_left(
    *,
    fuel: Annotated[str, Choice("Fuel gas", LIQUEFIED_FUELS, assumed="propane")],
    gross_weight: Annotated[
        float,
        Field(
            "Cylinder weighs now",
            MASS,
            example={"us": "30 lb", "iso": "20 kg", "uk": "20 kg"},
            low="2 lb",
            high="1000 lb",
        ),
    ],
    tare_weight: Annotated[
        float,
        Field(
            "Tare stamped on it",
            MASS,
            example={"us": "17 lb", "iso": "13 kg", "uk": "13 kg"},
            low="2 lb",
            high="1000 lb",
        ),
    ],
    full_weight: Annotated[
        float,
        Field(
            "A full one holds, by weight",
            MASS,
            assumed={"us": "20 lb", "iso": "11 kg", "uk": "13 kg"},
            low="0.5 lb",
            high="500 lb",
        ),
    ],
    temperature: Annotated[
        float,
        Field(
            "Cylinder temperature",
            TEMPERATURE,
            low="-40 degF",
            high=HOTTEST,
            too_high=HOT,
            assumed={"us": "70 degF", "iso": "15 degC", "uk": "15 degC"},
        ),
    ],
    least_gauge: Annotated[
        float,
        Field(
            "Lowest cylinder gauge that the torch works with",
            GAUGE,
            example={"us": "30 psi", "iso": "2 bar", "uk": "2 bar"},
            low="5 psi",
            high="150 psi",
            hint="Torch pressure, and what regulator and hose take. It decides the steady draw.",
        ),
    ],
    flow: Annotated[
        float | None,
        Field(
            "Gas that the torch takes",
            FREE_GAS_FLOW,
            example={"us": "15 cfh", "iso": "400 L/h", "uk": "400 L/h"},
            low="5 L/h",
            high="50000 L/h",
            free_gas=True,
            optional=True,
        ),
    ],
    diameter: Annotated[
        float,
        Field(
            "Cylinder is wide",
            LENGTH,
            assumed={"us": "12 in", "iso": "300 mm", "uk": "300 mm"},
            low="3 in",
            high="40 in",
        ),
    ],
    air_temperature: Annotated[
        float | None,
        Field(
            "Air around it",
            TEMPERATURE,
            low="-40 degF",
            high="125 degF",
            optional=True,
            hint="Left empty: as the cylinder.",
        ),
    ],
    rules: str,
) -> Answer[LiquidFuelLeft]:
    """Propane, propylene or methylacetylene-propadiene left, by weight, and whether its pressure holds.

    The gauge of a liquefied gas shows its temperature, not its contents.
    """  # fmt: skip
    if gross_weight < tare_weight:
        raise InputError(
            "gross_weight",
            "Cylinder weighs now", "it weighs less than its tare, so one figure is wrong; read both again, and give "
            "the tare or more.",
        )
    left = gross_weight - tare_weight
    mass = scale("mass", rules)
    if left > full_weight + SCALE_ERROR:
        raise InputError(
            "gross_weight",
            "Cylinder weighs now", "that is more liquid than a full one holds; give "
            f"{mass.said(tare_weight)} to {mass.said(tare_weight + full_weight)}, or correct what a full one holds. If both "
            "weights are right it is overfilled, and the liquid can burst it as it warms: do not use it, ask its supplier.",
        )
    steps: list[Step] = []
    gas = worked(steps, "Gas left, as gas", free_gas_flow, mass_flow=left, molar_mass=gas_molar_mass(fuel))
    share = worked(steps, "Share of a full cylinder", share_of, free_gas=left, full_gas=full_weight)
    low, high = max(left - SCALE_ERROR, 0.0), left + SCALE_ERROR
    each = gas / left if left else 0.0
    band = "Weight now less tare. The band is half a pound either way on the scale."
    rest = _gauge_at_rest(fuel, temperature)
    air = temperature if air_temperature is None else air_temperature
    draw = _draw(steps=steps, fuel=fuel, mass=left, diameter=diameter, air=air, least_gauge=least_gauge)
    return Answer(
        LiquidFuelLeft(
            weight_left=Figure(left, "definition", "computed", low=low, high=high, basis=band),
            gas_left=Figure(
                gas, "gas-law", "computed", low=low * each, high=max(high * each, gas),
                basis="Counted as an ideal gas; the real gas fills up to 2 % less.",
            ),
            share_of_full=Figure(
                share, "definition", "computed", low=low / full_weight, high=high / full_weight, basis="By weight."
            ),
            vapour_gauge=rest,
            draw_kept=draw,
            pressure_held=_held(rest, draw, flow, least_gauge, rules),
        ),
        cautions=_cautions(fuel, min(temperature, air), rules),
        steps=tuple(steps),
        beside=lambda: _beside(temperature, rest, least_gauge, fuel, rules),
    )  # fmt: skip
