"""Gas that a lesson used, by weight and by gauge, against what was planned."""

import datetime
from dataclasses import dataclass, replace
from typing import Annotated

from calc.answer.hazards import brought, caution
from calc.ask.errors import InputError
from calc.declare import Answer, Choice, Day, Field, Figure, Shown, Step, calculator, worked
from calc.declare.inputs import FREE_GAS, GAUGE, MASS, TEMPERATURE
from calc.formulas.gas.acetylene import acetylene_by_weight
from calc.formulas.gas.contents import free_gas_volume, usable_gas
from calc.formulas.gas.lesson import next_gas_factor
from calc.formulas.gas.nozzle import free_gas_flow
from calc.formulas.gas.possible import OVERFULL
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.properties import gas_molar_mass
from calc.formulas.gas.real_gas import compressibility, pressure_of_contents
from calc.show.scales import scale
from calc.trade.fields import FULL_CONTENTS, HOT, HOTTEST, LIQUEFIED_FUELS, OXYGEN_WATER_VOLUME
from calc.trade.gas.possible import require_possible

WEIGHED = {"acetylene": "Acetylene"} | LIQUEFIED_FUELS
"""Fuel gases whose cylinder is weighed."""
BY_WEIGHT = {"acetylene": ("cga-g1 weighing, 14.7 ft³ for each lb", "memory")}
REAL_GAS = "coolprop-8 reference equation, our fit within 0.03 %"
ROOM = {"us": "70 degF", "iso": "15 degC", "uk": "15 degC"}
MOST_PLANNED = "20000 ft^3"


FULL_CONTENTS_WEIGHED = replace(FULL_CONTENTS, when={"fuel": ("acetylene",)})
FULL_WEIGHT_LIQUEFIED = Field(
    "A full one holds, by weight", MASS, assumed={"us": "20 lb", "iso": "11 kg", "uk": "13 kg"}, low="0.5 lb",
    high="500 lb", when={"fuel": tuple(LIQUEFIED_FUELS)},
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class GasLog:
    """Gas of one lesson."""

    fuel_used: Annotated[Figure, Shown("Fuel gas used", FREE_GAS, free_gas=True, group="Used")]
    fuel_weight: Annotated[Figure, Shown("Fuel gas used, by weight", MASS, group="Used")]
    oxygen_used: Annotated[Figure, Shown("Oxygen used", FREE_GAS, free_gas=True, group="Used")]
    fuel_factor: Annotated[
        Figure | None, Shown("Factor of the fuel gas", digits=2, toward="up", group="Against the plan")
    ]
    oxygen_factor: Annotated[
        Figure | None, Shown("Factor of the oxygen", digits=2, toward="up", group="Against the plan")
    ]
    next_factor: Annotated[
        Figure | None,
        Shown("Gas factor for the next class plan", digits=2, toward="up", group="Against the plan"),
    ]


def _weight(label: str, us: str, metric: str) -> Field:
    return Field(
        label, MASS, example={"us": us, "iso": metric, "uk": metric}, low="2 lb", high="1000 lb",
        hint="The same cylinder on the same scale, each time with or each time without its regulator.",
    )  # fmt: skip


def _temperature(label: str, hint: str = "") -> Field:
    return Field(
        label, TEMPERATURE, assumed=ROOM, low="-20 degF", high=HOTTEST, too_high=HOT, hint=hint
    )  # fmt: skip


def _planned(label: str, us: str, metric: str) -> Field:
    return Field(
        label, FREE_GAS, example={"us": us, "iso": metric, "uk": metric}, low="1 L", high=MOST_PLANNED,
        free_gas=True, optional=True, hint="As the class plan shows it, for this lesson.",
    )  # fmt: skip


def _fuel_gas(fuel: str, before: float, after: float) -> float:
    """Free gas of a loss of weight, m³."""
    if fuel == "acetylene":
        return acetylene_by_weight(before, after)
    return free_gas_flow(before - after, gas_molar_mass(fuel))


def _oxygen(water_volume: float, gauge: float, temperature: float) -> float:
    pressure = absolute_pressure(max(gauge, 0.0))
    return free_gas_volume(
        water_volume=water_volume,
        pressure=pressure,
        temperature=temperature,
        compressibility=compressibility("oxygen", pressure, temperature),
    )


def _hold_fuel(fuel: str, before: float, after: float, full: float, rules: str) -> None:
    mass = scale("mass", rules)
    if after > before:
        raise InputError(
            "fuel_after",
            "Fuel cylinder weighs after",
            "it weighs more than before, so one figure is wrong or the cylinder was "
            f"changed; read both again, and give {mass.said(before)} or less.",
        )
    most = full * OVERFULL / (_fuel_gas(fuel, 1.0, 0.0) if fuel == "acetylene" else 1.0)
    if before - after > most:
        raise InputError(
            "fuel_after",
            "Fuel cylinder weighs after",
            "that is more gas than a full one holds, so one figure is wrong or the "
            f"cylinder was changed; give {mass.said(max(before - most, 0.0))} or more.",
        )


@calculator("gas-log", "Gas that a lesson used")
def gas_log(
    *,
    day: Annotated[datetime.date | None, Day("Day of the lesson", today=True, optional=True)],  # noqa: ARG001 - kept with the lesson
    fuel: Annotated[str, Choice("Fuel gas", WEIGHED, example="acetylene")],
    fuel_before: Annotated[float, _weight("Fuel cylinder weighs before", "118 lb", "53.6 kg")],
    fuel_after: Annotated[float, _weight("Fuel cylinder weighs after", "115.5 lb", "52.5 kg")],
    full_contents: Annotated[float | None, FULL_CONTENTS_WEIGHED],
    full_weight: Annotated[float | None, FULL_WEIGHT_LIQUEFIED],
    oxygen_before: Annotated[
        float,
        Field(
            "Oxygen gauge before",
            GAUGE,
            example={"us": "1500 psi", "iso": "105 bar", "uk": "105 bar"},
            low="0 psi",
            high="4500 psi",
        ),
    ],
    oxygen_after: Annotated[
        float,
        Field(
            "Oxygen gauge after",
            GAUGE,
            example={"us": "1200 psi", "iso": "84 bar", "uk": "84 bar"},
            low="0 psi",
            high="4500 psi",
        ),
    ],
    planned_fuel: Annotated[float | None, _planned("Fuel gas that was planned", "32 ft^3", "900 L")],
    planned_oxygen: Annotated[float | None, _planned("Oxygen that was planned", "36 ft^3", "1000 L")],
    gas_factor: Annotated[
        float,
        Field(
            "Gas factor that the plan had",
            ("",),
            assumed="1",
            low="0.1",
            high="10",
            hint="The factor that stood in the class plan when these amounts were shown.",
        ),
    ],
    water_volume: Annotated[float, OXYGEN_WATER_VOLUME],
    temperature_before: Annotated[float, _temperature("Oxygen cylinder's temperature before")],
    temperature_after: Annotated[
        float,
        _temperature("Oxygen cylinder's temperature after", "Wait until it is as warm as the room again."),
    ],
    scale_division: Annotated[
        float,
        Field(
            "One division of the scale",
            MASS,
            assumed={"us": "0.5 lb", "iso": "0.2 kg", "uk": "0.2 kg"},
            low="0.002 lb",
            high="10 lb",
        ),
    ],
    gauge_division: Annotated[
        float,
        Field(
            "One division of the oxygen cylinder gauge",
            GAUGE,
            assumed={"us": "100 psi", "iso": "10 bar", "uk": "10 bar"},
            low="1 psi",
            high="500 psi",
        ),
    ],
    rules: str,
) -> Answer[GasLog]:
    """Gas used in a lesson, from the scale and the gauge, and the factor for the next plan.

    Each reading is taken as good to half a division.
    """  # fmt: skip
    for name, label, reading, kelvin in (
        ("oxygen_before", "Oxygen gauge before", oxygen_before, temperature_before),
        ("oxygen_after", "Oxygen gauge after", oxygen_after, temperature_after),
    ):
        require_possible(
            gas="oxygen", gauge=reading, temperature=kelvin, rules=rules, field=name, label=label
        )
    full = full_contents if fuel == "acetylene" else full_weight
    _hold_fuel(fuel, fuel_before, fuel_after, full or 0.0, rules)
    steps: list[Step] = []
    lost = fuel_before - fuel_after
    if fuel == "acetylene":
        gas = worked(steps, "Fuel gas by weight", acetylene_by_weight, gross=fuel_before, tare=fuel_after)
    else:
        gas = worked(
            steps, "Fuel gas by weight", free_gas_flow, mass_flow=lost, molar_mass=gas_molar_mass(fuel)
        )  # fmt: skip
    held = [
        worked(
            steps, f"Oxygen {when}", free_gas_volume, water_volume=water_volume, pressure=absolute_pressure(gauge),
            temperature=kelvin, compressibility=compressibility("oxygen", absolute_pressure(gauge), kelvin),
        )
        for when, gauge, kelvin in (
            ("before", oxygen_before, temperature_before), ("after", oxygen_after, temperature_after),
        )
    ]  # fmt: skip
    _hold_oxygen(water_volume, held, oxygen_after, temperature_after, rules)
    drawn = worked(steps, "Oxygen used", usable_gas, free_gas=held[0], kept_gas=held[1])
    half = gauge_division / 2
    ends = [
        _oxygen(water_volume, oxygen_before + way * half, temperature_before)
        - _oxygen(water_volume, oxygen_after - way * half, temperature_after)
        for way in (-1.0, 1.0)
    ]
    source, sure = BY_WEIGHT.get(fuel, ("gas-law", "computed"))
    each = _fuel_gas(fuel, 1.0, 0.0)
    weight = Figure(
        lost, "definition", "computed", low=max(lost - scale_division, 0.0), high=lost + scale_division,
        basis="Weight before less weight after. The band is half a division of the scale at each reading.",
    )  # fmt: skip
    used = Figure(
        gas, source, sure, low=max(lost - scale_division, 0.0) * each, high=(lost + scale_division) * each,
        basis="From the weight. The band is half a division of the scale at each reading.",
    )  # fmt: skip
    oxygen = Figure(
        drawn, REAL_GAS, "computed", low=min(max(ends[0], 0.0), drawn), high=max(ends[1], drawn),
        basis="Real gas before less real gas after. The band is half a division of the gauge at each reading.",
    )  # fmt: skip
    fuel_factor = _factor(steps, "Factor of the fuel gas", used, planned_fuel, gas_factor)
    oxygen_factor = _factor(steps, "Factor of the oxygen", oxygen, planned_oxygen, gas_factor)
    return Answer(
        GasLog(fuel_used=used, fuel_weight=weight, oxygen_used=oxygen, fuel_factor=fuel_factor, oxygen_factor=oxygen_factor, next_factor=_larger(fuel_factor, oxygen_factor)),
        cautions=(caution("cylinder-falls"), *brought({"fuel": fuel})),
        steps=tuple(steps),
    )  # fmt: skip


def _hold_oxygen(
    water_volume: float, held: list[float], gauge: float, temperature: float, rules: str
) -> None:
    if held[1] <= held[0]:
        return
    try:
        most = pressure_of_contents("oxygen", water_volume, held[0], temperature) - absolute_pressure(0.0)
    except ValueError:
        most = 0.0
    said = scale("gauge", rules).said(max(min(most, gauge), 0.0))
    raise InputError(
        "oxygen_after",
        "Oxygen gauge after",
        "by gauges and temperatures there is more oxygen than before, so one figure is wrong "
        f"or the cylinder was changed; give {said} or less.",
    )


def _factor(
    steps: list[Step], says: str, used: Figure, planned: float | None, gas_factor: float
) -> Figure | None:
    if planned is None:
        return None
    assert used.value is not None
    value = worked(
        steps, says, next_gas_factor, used_gas=used.value, planned_gas=planned, plan_factor=gas_factor
    )
    return Figure(
        value, "definition", "computed", low=next_gas_factor(used.low or 0.0, planned, gas_factor),
        high=next_gas_factor(used.high or 0.0, planned, gas_factor),
        basis="Used over planned, times the factor that the plan had. The band is that of the gas used.",
    )  # fmt: skip


def _larger(*factors: Figure | None) -> Figure | None:
    known = [one for one in factors if one is not None and one.value]
    if not known:
        return None
    largest = max(known, key=lambda one: one.value or 0.0)
    return Figure(
        largest.value, "", "practice", low=largest.low, high=largest.high,
        basis="The larger of the two factors. Put it into the class plan as its gas factor, and weigh again: one lesson "
        "is one lesson.",
    )  # fmt: skip
