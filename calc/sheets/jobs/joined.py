"""Brazing a joint, and soldering copper tube."""

from calc.calculators.braze_joint import braze_joint
from calc.calculators.solder_tube import solder_tube
from calc.errors import InputError
from calc.figures import Figure
from calc.quantities import Ratio, Time
from calc.sheets.braze_choice import METALS
from calc.sheets.jobs import asked
from calc.sheets.jobs.composed import told
from calc.sheets.jobs.job import Job
from calc.sheets.jobs.work import Work
from calc.sheets.said import degrees
from calc.sheets.torch import Setting
from calc.units import to_si

WIRES = {"us": to_si(1 / 16, "in"), "iso": to_si(1.5, "mm"), "uk": to_si(1.5, "mm")}
SOLDER_WIRES = {"us": to_si(1 / 8, "in"), "iso": to_si(3.0, "mm"), "uk": to_si(3.0, "mm")}
GAP = {"us": to_si(0.005, "in"), "iso": to_si(0.127, "mm"), "uk": to_si(0.127, "mm")}
_BRAZING = {
    "metal_one": "metal",
    "metal_two": "other_metal",
    "form": "process",
    "width": "lap_width",
    "service": "braze_service",
}


def _time(count: Ratio | None, each: Time | None) -> Figure:
    assert count is not None
    assert each is not None
    return Figure(
        count * each, "", "practice", count * each / 2, count * each * 2,
        "Joints times the time on each that stands above; a beginner takes twice as long, or longer.",
    )  # fmt: skip


def brazing(job: Job, setting: Setting) -> Work:
    """Braze joints of one or two metals.

    Args:
        job: With thickness, form, its size, service and count.
        setting: Of its tip.

    Raises:
        InputError: The metals or the use are not for brazing here.
    """
    assert job.thickness is not None
    assert job.form is not None
    assert job.braze_service is not None
    one, two = job.metal, job.metal if job.other_metal in (None, "same") else job.other_metal
    for name, metal in (("metal", one), ("other_metal", two)):
        if metal not in METALS:
            label = {"metal": asked.METAL, "other_metal": asked.OTHER_METAL}[name].label
            raise InputError(
                name,
                f"{label}: no filler for {asked.METALS.get(metal or '', 'it').lower()} is kept here; ask for a procedure, "
                "or pick another metal.",
            )
    thickness, form, service = job.thickness, job.form, job.braze_service
    got = told(
        lambda: braze_joint(
            one, two or one, form, thickness, job.diameter, job.lap_width, service, None, None, None,
            job.joints or 1.0, WIRES[job.rules], job.rules,
        ),
        _BRAZING,
    )  # fmt: skip
    made = got.results
    return Work(
        setting,
        made.flame,
        _time(job.joints, job.joint_time),
        {
            "filler": made.filler,
            "melting": _span(made.melting, made.brazing_temperature, job.rules),
            "flux": made.flux,
            "overlap": made.overlap,
            "clearance": made.cold_clearance_to_make,
            "rod_length": made.filler_length,
            "filler_mass": made.filler_mass,
        },
        thickness,
        got.cautions,
        got.shown_beside,
    )


def _span(melting: Figure, brazing: Figure, rules: str) -> Figure:
    """Melting in words, and the heat that is worked at."""
    words = melting.words or degrees(melting.value or 0.0, rules)
    if brazing.value is not None:
        low, high = brazing.low or brazing.value, brazing.high or brazing.value
        words = f"{words}; work at {degrees(low, rules)} to {degrees(high, rules)}"
    return Figure(None, melting.source, melting.how_sure, words=words, basis=melting.basis)


def soldering(job: Job, setting: Setting) -> Work:
    """Solder copper tube into its fittings.

    Args:
        job: With the tube, what runs in it, and the count.
        setting: Of its tip.

    Raises:
        InputError: The metal is not copper, or the line is licensed work.
    """
    if job.metal != "copper":
        raise InputError(
            "metal",
            "Metal: soldering here is copper tube alone; pick copper, or braze "
            f"{asked.METALS[job.metal].lower()}.",
        )
    assert job.tube_system is not None
    assert job.tube_service is not None
    assert job.tube_size is not None
    service, system, size = job.tube_service, job.tube_system, job.tube_size
    got = told(
        lambda: solder_tube(
            "soldering", service, system, size, size, job.joints or 1.0, "l", "b", "copper", None, None,
            SOLDER_WIRES[job.rules], WIRES[job.rules], GAP[job.rules], None, job.rules,
        ),
        {"service": "tube_service", "solder": "tube_service", "cup": "tube_service"},
    )  # fmt: skip
    made = got.results
    assert made.wall.value is not None
    return Work(
        setting,
        Figure(
            None, "", "practice", words="neutral and soft, the fitting heated, never the solder",
            basis="The flame moves round the fitting; solder that the joint itself melts runs in.",
        ),
        _time(job.joints, job.joint_time),
        {
            "filler": made.filler,
            "melting": _span(made.melting, made.pipe_heat, job.rules),
            "flux": made.flux,
            "cup_depth": made.cup_depth,
            "clearance": made.clearance,
            "rod_length": made.filler_length,
            "filler_mass": made.filler_mass,
        },
        made.wall.value,
        got.cautions,
        got.shown_beside,
    )  # fmt: skip
