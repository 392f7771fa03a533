"""The job sheet: one job of any kind, from metal and thickness to a watched, stored outfit."""

from collections.abc import Mapping
from typing import Annotated, Any

from calc.calculators.eye_shade import eye_shade
from calc.calculators.purge_time import purge_time
from calc.declare import Answer, Beside, calculator
from calc.job_sheet import fields as asked
from calc.job_sheet.gas import (
    acetylene_held,
    draws_too_fast,
    gas_cautions,
    gas_of_job,
    liquid_held,
    oxygen_held,
    past_any,
)
from calc.job_sheet.hazards import job_cautions
from calc.job_sheet.job import Job
from calc.job_sheet.kinds import tube_wall, work_of
from calc.job_sheet.refused_metals import hold_metal
from calc.job_sheet.results import JobSheet
from calc.show.drawings import gauges
from calc.trade.fields import (
    CYLINDER_TEMPERATURE,
    DUTY,
    FUEL_ASKED,
    HEAT_WANTED,
    HEATED,
    OXYGEN_CYLINDER_GAUGE,
    OXYGEN_WATER_VOLUME,
    TIP_LABEL,
    full_contents,
    heat_of,
)
from calc.trade.gas.draw_ways import hole_fed, possible_by, ways
from calc.trade.gas.stocks import acetylene_kept
from calc.trade.safety.surroundings import clear_distance, fire_watch
from calc.trade.tips.owned import wanted_orifice
from calc.trade.tips.welding_torch import marked_regulator
from calc.values.figures import Figure

SHADE_OF = {"braze-welding": "welding"}
"""The shade table names no braze welding: the shade of gas welding is taken."""


@calculator("job-sheet", "Job sheet")
def job_sheet(
    *,
    process: Annotated[str, asked.PROCESS],
    metal: Annotated[str, asked.METAL],
    other_metal: Annotated[str | None, asked.OTHER_METAL],
    coating: Annotated[str, asked.COATING],
    stripped: Annotated[str | None, asked.STRIPPED_OFF],
    fuel: Annotated[str, FUEL_ASKED],
    thickness: Annotated[float | None, asked.THICKNESS],
    joint: Annotated[str | None, asked.JOINT],
    form: Annotated[str | None, asked.FORM],
    length: Annotated[float | None, asked.LENGTH_OF_WORK],
    diameter: Annotated[float | None, asked.DIAMETER],
    lap_width: Annotated[float | None, asked.LAP_WIDTH],
    braze_service: Annotated[str | None, asked.BRAZE_SERVICE],
    tube_service: Annotated[str | None, asked.TUBE_SERVICE],
    tube_system: Annotated[str | None, asked.TUBE_SYSTEM],
    tube_inch: Annotated[str | None, asked.TUBE_INCH],
    tube_metric: Annotated[str | None, asked.TUBE_METRIC],
    joints: Annotated[float | None, asked.COUNT],
    joint_time: Annotated[float | None, asked.JOINT_TIME],
    pierces: Annotated[float | None, asked.PIERCES],
    heat: Annotated[str | None, asked.HEAT],
    band: Annotated[float | None, asked.BAND],
    heated: Annotated[str | None, HEATED],
    heat_wanted: Annotated[float | None, HEAT_WANTED],
    torch_type: Annotated[str | None, asked.TORCH],
    hose_bore: Annotated[float, asked.HOSE_BORE],
    hose_length: Annotated[float, asked.HOSE_LENGTH],
    tip_label: Annotated[str | None, TIP_LABEL],
    maker_orifice: Annotated[float | None, asked.MAKER_ORIFICE],
    maker_oxygen_gauge: Annotated[float | None, asked.MAKER_OXYGEN_GAUGE],
    maker_acetylene_gauge: Annotated[float | None, asked.MAKER_ACETYLENE_GAUGE],
    maker_fuel_gauge: Annotated[float | None, asked.MAKER_FUEL_GAUGE],
    torch_drop: Annotated[float, asked.TORCH_DROP],
    water_volume: Annotated[float, OXYGEN_WATER_VOLUME],
    oxygen_cylinder_gauge: Annotated[float, OXYGEN_CYLINDER_GAUGE],
    cylinder_temperature: Annotated[float, CYLINDER_TEMPERATURE],
    acetylene_contents: Annotated[float | None, asked.ACETYLENE_CONTENTS],
    gross_weight: Annotated[float | None, asked.GROSS_WEIGHT],
    tare_weight: Annotated[float | None, asked.TARE_WEIGHT],
    liquid_left: Annotated[float | None, asked.LIQUID_LEFT],
    duty: Annotated[str, DUTY],
    rules: str,
) -> Answer[JobSheet]:
    """Everything for one job: weld, braze-weld, braze, solder, cut or heat.

    What your torch's maker prints comes before ours; ours is where to start.
    """  # fmt: skip
    first = hold_metal(process=process, metal=metal, other=other_metal, coating=coating, stripped=stripped, rules=rules)
    maker_fuel = maker_acetylene_gauge if fuel == "acetylene" else maker_fuel_gauge
    job = Job(
        process=process, metal=metal, other_metal=other_metal, fuel=fuel, thickness=thickness, joint=joint, form=form, length=length, diameter=diameter, lap_width=lap_width, braze_service=braze_service,
        tube_service=tube_service, tube_system=tube_system, tube_size=tube_inch or tube_metric, joints=joints, joint_time=joint_time, pierces=pierces, heat=heat, band=band, heat_wanted=heat_of(heated, heat_wanted), torch_type=torch_type, orifice=maker_orifice,
        oxygen_gauge=maker_oxygen_gauge, fuel_gauge=maker_fuel, rules=rules,
    )  # fmt: skip
    work = work_of(job)
    setting = work.setting
    oxygen, flow = setting.oxygen_flow, setting.fuel_flow
    assert oxygen.value is not None
    assert flow.value is not None
    oxygen_all = work.oxygen_flow or oxygen
    hoses: dict[str, Any] = {"bore": hose_bore, "length": hose_length, "torch_drop": torch_drop, "rules": rules}
    oxygen_mark, of_oxygen = marked_regulator(gas="oxygen", wanted=setting.oxygen_gauge, flow=oxygen_all, **hoses)
    fuel_mark, of_fuel = marked_regulator(gas=fuel, wanted=setting.fuel_gauge, flow=flow, **hoses)
    purged = purge_time(
        fuel=fuel, bore=hose_bore, length=hose_length, oxygen_flow=oxygen.value, fuel_flow=flow.value, gauge=setting.fuel_gauge.value or 0.0, rules=rules
    )
    purge = purged.results
    held = oxygen_held(water_volume, oxygen_cylinder_gauge, cylinder_temperature, oxygen_mark.value or 0.0, rules)
    if fuel == "acetylene":
        held = acetylene_held(
            oxygen=held, gross=gross_weight, tare=tare_weight, contents=acetylene_contents or 0.0, temperature=cylinder_temperature, rules=rules
        )
    elif liquid_left is not None:
        held = liquid_held(
            oxygen=held, fuel=fuel, weight=liquid_left, temperature=cylinder_temperature, gauge=fuel_mark.value or 0.0, flow=flow, rules=rules
        )
    vented = (purge.fuel_vented.value or 0.0, purge.oxygen_vented.value or 0.0)
    shaded = eye_shade(
        SHADE_OF.get(process, process), work.thickness, flow.high or flow.value, oxygen_all.high or oxygen_all.value,
        rules,
    )  # fmt: skip
    shades = shaded.results
    if fuel == "acetylene" and held.fuel is not None and process != "cutting":
        work.shown["hole_fed"] = hole_fed(flow.value, setting.orifice, held.fuel, duty)
    full = max(held.fuel or 0.0, acetylene_contents or 0.0, full_contents(rules))
    kept = acetylene_kept(full, cylinder_temperature, setting.fuel_gauge.value or 0.0) if fuel == "acetylene" else 0.0
    kind: dict[str, Any] = work.shown | gas_of_job(fuel=fuel, held=held, fuel_flow=flow, oxygen_flow=oxygen_all, time=work.time, vented=vented, duty=duty, kept=kept)
    unlit = past_any(fuel, held, flow)
    feeding: dict[str, Any] = {
        "process": process, "flow": flow.value, "hole": setting.orifice, "contents": held.fuel or 0.0, "full": full,
        "duty": duty, "rules": rules,
    }  # fmt: skip
    settings: dict[str, Any] = {} if unlit else {
        "your_tip": _tip(tip_label),
        "tip_orifice": None if setting.orifice.value is None else setting.orifice,
        "nearest_drill": setting.drill if setting.drill.words else None,
        "holes": setting.holes,
        "oxygen_gauge": oxygen_mark,
        "fuel_gauge": fuel_mark,
        "purge_oxygen_time": purge.purge_oxygen_time,
        "purge_fuel_time": purge.purge_fuel_time,
        "flame": work.flame,
    }  # fmt: skip

    def beside() -> Beside:
        fed = ways(**feeding) if fuel == "acetylene" and held.fuel is not None else None
        found = (fed,) if fed else ()
        if unlit:
            return found, ()
        tables, pictures = work.beside()
        drawn = gauges.drawing(oxygen_cylinder_gauge, oxygen_mark.value or 0.0, rules, "oxygen")
        return (*found, *tables), (*pictures, drawn)

    return Answer(
        JobSheet(
            first=draws_too_fast(first, possible_by(**feeding)) if unlit else first,
            shade_minimum=shades.shade_minimum,
            shade_usual=shades.shade_usual,
            oxygen_flow=oxygen_all,
            fuel_flow=flow,
            torch_time=work.time,
            clear_distance=clear_distance(rules, process),
            fire_watch=fire_watch(rules),
            **settings,
            **kind,
        ),
        cautions=job_cautions(
            (process, metal, other_metal, coating),
            gas_cautions(fuel=fuel, held=held, flow=flow, duty=duty, temperature=cylinder_temperature, rules=rules), work.cautions, purged.cautions, shaded.cautions, of_oxygen, of_fuel,
        ),
        beside=beside,
    )  # fmt: skip


def _tip(label: str | None) -> Figure | None:
    if label is None:
        return None
    return Figure(None, "", "practice", words=f"“{label}”", basis="Your own name for it.")


def wanted_tip(given: Mapping[str, Any]) -> tuple[str, Figure]:
    """The process whose tips fit a job, and the hole wanted for it.

    Args:
        given: Inputs in SI, as far as they can be read.

    Raises:
        ValueError: No table chooses a tip for it; the clause says why.
    """
    process = str(given.get("process", "welding"))
    if process == "soldering":
        size = given.get("tube_inch") or given.get("tube_metric")
        if size is None:
            raise ValueError("pick the tube first")
        wall = tube_wall(given.get("tube_system"), str(size))
        return "brazing", wanted_orifice("brazing", wall)
    if "thickness" not in given and process != "heating":
        raise ValueError("give the thickness first")
    metal = str(given.get("metal", "low-carbon-steel"))
    return process, wanted_orifice(process, given.get("thickness", 0.0), metal)
