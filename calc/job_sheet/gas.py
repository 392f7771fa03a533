"""Gas of a job: used, left, how long it lasts, how fast it may be drawn."""

from dataclasses import dataclass, replace

from calc.answer.hazards import brought, caution
from calc.ask.errors import InputError
from calc.calculators.acetylene_left import acetylene_left
from calc.calculators.liquid_fuel_left import liquid_fuel_left
from calc.declare import Caution
from calc.formulas.gas.supply import gas_of_use
from calc.job_sheet.fields import LIQUEFIED
from calc.show.scales import scale
from calc.trade.fields import CYLINDER_TEMPERATURE, OXYGEN_CYLINDER_GAUGE
from calc.trade.gas.banks import oxygen_in
from calc.trade.gas.draw_ways import contents_asked
from calc.trade.gas.draws import (
    TOO_FAST,
    acetylene_lasts,
    cold_cautions,
    draw_cautions,
    draw_limit_of,
    drawn_past_any,
    gas_lasts,
)
from calc.trade.gas.possible import require_possible, require_warm
from calc.trade.gas.stocks import oxygen_stop
from calc.values.figures import Figure
from calc.values.quantities import FreeGas, Gauge, Mass, Temperature, Volume
from calc.values.units import to_si

LEAST: FreeGas = to_si(1.0, "ft^3", free_gas=True)

MAINS = caution("house-gas")
TOO_FAST_LATER = " Acetylene ends too where it is drawn too fast for what is then left."
USABLE = "usable over the flow, flame burning without a stop."


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """What stands at the bench, and the hazards of what told it.

    Attributes:
        oxygen: Usable oxygen, m³.
        fuel: Fuel gas in its cylinder, m³; None where it comes from a pipe.
        boil: Steady draw of a liquefied gas, or None.
        pressure_held: Whether a liquefied gas keeps the torch's pressure, or None.
        cautions: Of the calculators that told it.
        stop: Down to where the oxygen is used, in words.
    """

    oxygen: FreeGas
    fuel: FreeGas | None
    boil: Figure | None = None
    pressure_held: Figure | None = None
    cautions: tuple[Caution, ...] = ()
    stop: str = ""


def acetylene_held(
    *,
    oxygen: Held, gross: Mass | None, tare: Mass | None, contents: FreeGas, temperature: Temperature, rules: str
) -> Held:
    """Acetylene in its cylinder now beside the oxygen: by both weights, else as given.

    Args:
        oxygen: Of `oxygen_held`.
        gross: What the cylinder weighs, kg, or None.
        tare: Its stamped tare, kg, or None.
        contents: What the reader gives, m³.
        temperature: Of the cylinder, K.
        rules: Rule set.

    Raises:
        InputError: The weights cannot be used.
    """
    if gross is None and tare is None:
        return replace(oxygen, fuel=contents)
    try:
        got = acetylene_left(gross_weight=gross, tare_weight=tare, full_contents=contents, gauge=None, temperature=temperature, rules=rules)
    except InputError as error:
        raise InputError("gross_weight", "Acetylene cylinder weighs now", error.reason) from None
    weighed = max(got.results.gas_left.value or 0.0, LEAST)
    return replace(oxygen, fuel=weighed, cautions=(*oxygen.cautions, *got.cautions))


def oxygen_held(
    water_volume: Volume, gauge: Gauge, temperature: Temperature, set_gauge: Gauge, rules: str
) -> Held:
    """Oxygen that can be used from its cylinder down to where it is changed, with no fuel gas beside it.

    Args:
        water_volume: Of the cylinder, m³.
        gauge: It reads, Pa.
        temperature: Of the cylinder, K.
        set_gauge: What its regulator is set to, Pa.
        rules: Rule set.

    Raises:
        InputError: No cylinder shows so much at that temperature, or it shows too little for that regulator.
    """
    require_possible(
        gas="oxygen", gauge=gauge, temperature=temperature, rules=rules, field="oxygen_cylinder_gauge", label=OXYGEN_CYLINDER_GAUGE.label, least=to_si(10.0, "psi")
    )  # fmt: skip
    stop, said = oxygen_stop(set_gauge, rules), scale("gauge", rules)
    if gauge <= stop * (1 + 1e-9):
        raise InputError(
            "oxygen_cylinder_gauge",
            OXYGEN_CYLINDER_GAUGE.label, f"the regulator is set to {said.said(set_gauge)} and oxygen is changed at "
            f"{said.said(stop)}, so this cylinder gives no steady flame; change it, and give more than {said.said(stop)}.",
        )
    usable = oxygen_in(water_volume, gauge, temperature) - oxygen_in(water_volume, stop, temperature)
    return Held(oxygen=usable, fuel=None, stop=f"down to {said.said(stop)} on its cylinder gauge, where it is changed")


def liquid_held(
    *,
    oxygen: Held, fuel: str, weight: Mass, temperature: Temperature, gauge: Gauge, flow: Figure, rules: str
) -> Held:
    """Liquefied fuel gas at the bench beside the oxygen.

    Args:
        oxygen: Of `oxygen_held`.
        fuel: One of `LIQUEFIED`.
        weight: Left in the cylinder, kg.
        temperature: Of the cylinder, K.
        gauge: Lowest that the torch works with, Pa.
        flow: It takes, m³/s.
        rules: Rule set.

    Raises:
        InputError: The cylinder is too cold to push with that gauge.
    """
    require_warm(gas=fuel, gauge=gauge, temperature=temperature, rules=rules, field="cylinder_temperature", label=CYLINDER_TEMPERATURE.label)
    tare = to_si(10.0, "kg")
    got = liquid_fuel_left(
        fuel=fuel, gross_weight=tare + weight, tare_weight=tare, full_weight=weight, temperature=temperature, least_gauge=max(gauge, to_si(5.0, "psi")), flow=flow.value,
        diameter=to_si(300.0, "mm"), air_temperature=None, rules=rules,
    )  # fmt: skip
    told = got.results
    return Held(
        oxygen=oxygen.oxygen, fuel=max(told.gas_left.value or 0.0, LEAST), boil=told.draw_kept, pressure_held=told.pressure_held,
        cautions=(*oxygen.cautions, *got.cautions), stop=oxygen.stop,
    )  # fmt: skip


def _used(flow: Figure, time: Figure, vented: FreeGas) -> Figure:
    assert flow.value is not None
    assert time.value is not None
    return Figure(
        gas_of_use(flow.value, time.value) + vented, flow.source, flow.how_sure,
        low=gas_of_use(flow.low or flow.value, time.low or time.value) + vented,
        high=gas_of_use(flow.high or flow.value, time.high or time.value) + vented,
        basis="Flow for the torch time, and the purge.",
    )  # fmt: skip


def gas_of_job(
    *,
    fuel: str, held: Held, fuel_flow: Figure, oxygen_flow: Figure, time: Figure,
    vented: tuple[FreeGas, FreeGas], duty: str, kept: FreeGas = 0.0,
) -> dict[str, Figure | None]:  # fmt: skip
    """Results of the group Gas, by their names on the job sheet.

    Args:
        fuel: Id of the fuel gas.
        held: What stands at the bench.
        fuel_flow: While the flame burns, m³/s.
        oxygen_flow: Of the flame, and of the cut where there is one, m³/s.
        time: Torch burns on the job, s.
        vented: Fuel and oxygen let out at the purge, m³.
        duty: `intermittent` or `continuous`.
        kept: Acetylene that stays in its cylinder when it is changed, m³.
    """
    assert fuel_flow.value is not None
    oxygen_hours = gas_lasts(held.oxygen, oxygen_flow, f"Oxygen {held.stop}, over the flow, flame burning without a stop.")
    found: dict[str, Figure | None] = {
        "oxygen_used": _used(oxygen_flow, time, vented[1]),
        "fuel_used": _used(fuel_flow, time, vented[0]),
        "oxygen_hours": oxygen_hours,
    }
    if held.fuel is None:
        words = "oxygen; the piped gas does not end"
        return found | {"ends_first": Figure(None, "", "practice", words=words)}
    fuel_hours, draw_hours = (
        acetylene_lasts(held.fuel, kept, fuel_flow, duty, f"Fuel gas {USABLE} What must stay in the cylinder is left out.")
        if fuel == "acetylene" else (gas_lasts(held.fuel, fuel_flow, f"Fuel gas {USABLE}"), None)
    )  # fmt: skip
    fuel_ends = min(each.value or 0.0 for each in (fuel_hours, draw_hours) if each is not None)
    oxygen_first = (oxygen_hours.value or 0.0) < fuel_ends
    found |= {
        "fuel_hours": fuel_hours,
        "draw_hours": draw_hours,
        "ends_first": Figure(
            None, "", "practice", words="oxygen" if oxygen_first else fuel.replace("-", " "), basis=f"By the times above.{TOO_FAST_LATER if draw_hours is not None else ''}"
        ),
        "pressure_held": held.pressure_held,
    }  # fmt: skip
    if fuel in LIQUEFIED:
        return found | {"draw_limit": held.boil}
    return found | {
        "draw_share": Figure(
            fuel_flow.value / held.fuel, fuel_flow.source, fuel_flow.how_sure,
            low=(fuel_flow.low or fuel_flow.value) / held.fuel, high=(fuel_flow.high or fuel_flow.value) / held.fuel,
            basis="Flow over what is in the cylinder now.",
        ),
        "draw_limit": draw_limit_of(held.fuel, duty),
        "contents_asked": contents_asked(fuel_flow.value, held.fuel, duty),
    }  # fmt: skip


def past_any(fuel: str, held: Held, flow: Figure) -> bool:
    """Whether a torch on this cylinder must not be lit: acetylene drawn past what every book allows."""
    return fuel == "acetylene" and held.fuel is not None and drawn_past_any(flow.value or 0.0, held.fuel)


def draws_too_fast(first: Figure | None, possible: str) -> Figure:
    """What comes first on the sheet where acetylene is drawn past every rule: not to light, and what makes it possible.

    Args:
        first: What must be known before any flame, or None.
        possible: Ways to make it possible, of `draw_ways.possible_by`.
    """
    words = f"do not light on this cylinder: {possible}, and ask this page again. Until then this sheet gives no tip and no pressure"
    if first is not None:
        words = f"{words}. {first.words}"
    return Figure(None, "manly-1916", "read", words=words, basis=TOO_FAST)


def gas_cautions(
    *,
    fuel: str, held: Held, flow: Figure, duty: str, temperature: Temperature, rules: str
) -> list[Caution]:
    """Hazards of drawing a fuel gas, the gravest first.

    Args:
        fuel: Id of the fuel gas.
        held: What stands at the bench.
        flow: Fuel gas that the torch takes, m³/s.
        duty: `intermittent` or `continuous`.
        temperature: Of the cylinder, K.
        rules: Rule set, for the units.
    """
    assert flow.value is not None
    said = [*brought({"fuel": fuel}), *held.cautions]
    if fuel == "acetylene" and held.fuel is not None:
        return [*draw_cautions(flow.value, held.fuel, duty), *said, *cold_cautions(fuel, temperature, rules)]
    if fuel == "methane":
        return [MAINS, *said]
    if fuel not in LIQUEFIED:
        return said
    boil = held.boil
    if boil is not None and boil.value is not None and flow.value > (boil.high or boil.value):
        rate = scale("flow", rules)
        said.append(
            caution("boils-too-slowly", flow=rate.said(flow.value))
        )
    return said
