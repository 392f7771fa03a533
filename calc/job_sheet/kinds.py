"""The work of a job, whichever kind it is."""

from dataclasses import replace

from calc.data.tables import table
from calc.job_sheet.brazing import NeverHotError, brazing, soldering
from calc.job_sheet.cutting import cutting
from calc.job_sheet.heating import heating
from calc.job_sheet.job import Job
from calc.job_sheet.kind import Work
from calc.job_sheet.refusals import told
from calc.job_sheet.seams import seam
from calc.trade.braze import tubes
from calc.trade.tips.settings import setting
from calc.trade.tips.welding_torch import Setting
from calc.values.figures import Figure
from calc.values.quantities import Length

_FIRST = {"galvanised-steel": "low-carbon-steel"}


def tube_wall(system: str | None, size: str) -> Length:
    """Wall of copper tube of a size, m: type L in inches, type B in millimetres.

    Args:
        system: `inch` or `metric`.
        size: Id of the size in it.
    """
    named = system or "inch"
    return tubes.tube(named, size, {"inch": "l", "metric": "b"}[named], None).wall.value or 0.0


def _setting(job: Job) -> Setting:
    thickness = job.thickness
    if job.process == "soldering" and job.tube_size:
        thickness = tube_wall(job.tube_system, job.tube_size)
    fuel_field = "maker_acetylene_gauge" if job.fuel == "acetylene" else "maker_fuel_gauge"
    return told(
        lambda: setting(
            process=job.process, metal=_FIRST.get(job.metal, job.metal), thickness=thickness, fuel=job.fuel, torch_type=job.torch_type, orifice=job.orifice,
            oxygen_gauge=job.oxygen_gauge, fuel_gauge=job.fuel_gauge, rules=job.rules, heat=job.heat_wanted,
        ),
        {"maker_fuel_gauge": fuel_field},
    )  # fmt: skip


def _hot_enough(job: Job, set_up: Setting) -> Work:
    """A brazed or soldered joint; where the hole for its thickness never heats it, with the next in print that does.

    Raises:
        InputError: The job is refused, or no hole in print heats it.
    """
    joined = brazing if job.process == "brazing" else soldering
    try:
        return joined(job, set_up)
    except NeverHotError:
        if job.orifice is not None or set_up.orifice.value is None:
            raise
        for row in table("brazing-orifices-navy"):
            if row.orifice <= set_up.orifice.value:
                continue
            larger = _setting(replace(job, orifice=row.orifice))
            hole = Figure(
                row.orifice, row.source, row.how_sure, low=set_up.orifice.value, high=1.2 * row.orifice,
                basis="The hole for this thickness would never bring so large a joint to its heat; this is the next one in print "
                "that does. The upper end of the band is common practice.",
            )  # fmt: skip
            try:
                return joined(job, replace(larger, orifice=hole))
            except NeverHotError:
                continue
        raise


def work_of(job: Job) -> Work:
    """What the job needs: setting, flame, time, and what belongs to its kind.

    Args:
        job: As it was asked for.

    Raises:
        InputError: The job is refused, with the reason.
    """
    if job.process == "cutting":
        return cutting(job)
    set_up = _setting(job)
    if job.process in ("welding", "braze-welding"):
        return seam(job, set_up)
    if job.process in ("brazing", "soldering"):
        return _hot_enough(job, set_up)
    assert job.thickness is not None
    assert job.length is not None
    metal = _FIRST.get(job.metal, job.metal)
    return heating(
        metal=metal, thickness=job.thickness, length=job.length, band=job.band or 0.05, heat=job.heat or "straighten", fuel=job.fuel, setting=set_up, rules=job.rules
    )
