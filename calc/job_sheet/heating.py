"""Heating a band of metal: to bend or straighten it, or before welding."""

from typing import Any

from calc.answer.hazards import gravest_first
from calc.answer.sentences import degrees
from calc.ask.errors import InputError
from calc.calculators.flame_bend import flame_bend
from calc.calculators.warm_up import warm_up
from calc.data.tables import table
from calc.formulas.heat.flame_power import HEATING_EFFICIENCY
from calc.job_sheet.fields import METALS
from calc.job_sheet.kind import Work, nothing_beside
from calc.trade.heat import metals as hot_metal
from calc.trade.heat.preheats import alloy_limit
from calc.trade.tips.welding_torch import Setting
from calc.values.figures import Figure
from calc.values.quantities import Length, Temperature
from calc.values.units import to_si

STEELS = ("low-carbon-steel", "medium-carbon-steel", "low-alloy-steel")
PREHEATS = {
    "low-carbon-steel": "steel up to 0.20 % carbon",
    "medium-carbon-steel": "steel 0.30-0.45 % carbon",
    "cast-iron": "grey cast iron, fusion weld",
    "cast-iron-braze": "grey cast iron, braze weld",
    "aluminium": "aluminium, thick or cast",
    "copper": "copper",
}
COLD: Temperature = to_si(20.0, "degC")


def preheat_row(metal: str) -> Any:
    """Row of the preheat table that is followed for a metal, or None.

    Args:
        metal: Id of the metal.
    """
    name = PREHEATS.get(metal)
    rows = [r for r in table("preheat-by-metal") if r.metal == name and r.standing == "followed"]
    return rows[0] if rows else None


def preheat_words(row: Any, rules: str) -> str:
    """Words of a row of the preheat table; for aluminum the limit of the alloys that lose strength.

    Args:
        row: As `preheat_row` gives it.
        rules: Rule set, for the unit.
    """
    return alloy_limit(rules) if row.metal.startswith("aluminium") else str(row.words)


def _refused(metal: str, why: str) -> InputError:
    return InputError("metal", "Metal", f"{METALS[metal].lower()} {why}.")


def heating(
    *,
    metal: str, thickness: Length, length: Length, band: Length, heat: str, fuel: str, setting: Setting,
    rules: str,
) -> Work:  # fmt: skip
    """Heat a band along a line, to the limit of bending or to the preheat.

    Args:
        metal: Id of the metal.
        thickness: Of the part, m.
        length: Of the line, m.
        band: Width that is heated, m.
        heat: `straighten` or `preheat`.
        fuel: Id of the fuel gas.
        setting: Of the heating tip.
        rules: Rule set.

    Raises:
        InputError: No figure is kept for the metal, or the flame never gets there.
    """
    shown: dict[str, Figure | None]
    if heat == "straighten":
        if metal not in STEELS:
            raise _refused(
                metal,
                "is not bent by this sheet, no limit for it is kept here; ask for its maker's procedure, or pick a steel",
            )
        bent = flame_bend(steel="ordinary", pattern="line", light="shade", thickness=thickness, heated_width=band, weld_area=None, root_gap=0.0, leg=None, rules=rules)
        target = bent.results.aim_temperature
        shown = {
            "limit_temperature": bent.results.limit_temperature,
            "aim_temperature": target,
            "colour": bent.results.colour,
        }
        cautions, beside = bent.cautions, bent.shown_beside
    else:
        row = preheat_row(metal)
        if row is None:
            raise _refused(
                metal, "has no preheat figure of its own here; see the page Preheat and cool, or pick another metal"
            )
        target = Figure(
            row.high, row.source, row.how_sure, low=row.low, high=row.high, basis="The upper end of what is printed for this metal."
        )  # fmt: skip
        shown = {
            "aim_temperature": target,
            "preheat": Figure(None, row.source, row.how_sure, words=preheat_words(row, rules) or "cool slowly, out of drafts"),
        }
        cautions, beside = (), nothing_beside

    assert target.value is not None
    assert setting.fuel_flow.value is not None
    kind = metal if metal in hot_metal.METALS else "low-carbon-steel"
    mass = band * length * thickness * hot_metal.metal_of(kind).density
    warmed = warm_up(
        metal=kind, mass=mass, thickness=thickness, target=target.value, flow=setting.fuel_flow.value, fuel=fuel, cover="bare", efficiency=HEATING_EFFICIENCY, start_temperature=COLD, area=None, rules=rules
    )
    time = warmed.results.time
    if time.value is None:
        raise InputError(
            "band",
            "Width of the heated band", f"this flame never brings it all to {degrees(target.value, rules)} at once; give a "
            "narrower band, a shorter line, or more heat wanted.",
        )
    basis = f"The band alone, at one temperature: heat that runs on into cold metal comes on top. {time.basis}"
    return Work(
        setting=setting,
        flame=Figure(
            None, "", "practice", words="neutral, large and soft, always moving",
            basis="Keep the cone off the metal; no spot may melt.",
        ),
        time=Figure(time.value, time.source, time.how_sure, low=time.low, high=time.high, basis=basis),
        shown=shown,
        thickness=thickness,
        cautions=gravest_first((*cautions, *warmed.cautions)),
        beside=beside,
    )  # fmt: skip
