"""Brazing a joint, and soldering copper tube."""

from math import pi

from calc.answer.sentences import degrees, duration
from calc.ask.errors import InputError
from calc.calculators.braze_joint import braze_joint
from calc.calculators.solder_tube import solder_tube
from calc.job_sheet import fields as asked
from calc.job_sheet.job import Job
from calc.job_sheet.kind import Work
from calc.job_sheet.refusals import told
from calc.trade.braze.choice import METALS
from calc.trade.braze.joint_heat import Joint, heated
from calc.trade.tips.welding_torch import Setting
from calc.values.figures import Figure
from calc.values.units import to_si

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


class NeverHotError(InputError):
    """A flame never brings a joint to its heat; a larger tip may."""


def _times(job: Job, setting: Setting, joint: Joint) -> tuple[Figure, dict[str, Figure | None]]:
    """Torch time of all the joints, and the results that it rests on.

    Raises:
        NeverHotError: The flame never brings the joint to its heat.
    """
    assert setting.fuel_flow.value is not None
    count = job.joints or 1.0
    found = heated(joint, setting.fuel_flow.value, job.fuel, job.rules)
    if found.time is None:
        name = "maker_orifice" if job.orifice is not None else "process"
        label = asked.MAKER_ORIFICE.label if job.orifice is not None else asked.PROCESS.label
        raise NeverHotError(
            name,
            label,
            f"this flame never brings the joint to {degrees(joint.target, job.rules)}; take a larger tip, thinner "
            "metal or a shorter overlap.",
        )
    each = found.time
    assert each.value is not None
    assert each.low is not None
    assert each.high is not None
    if job.joint_time is not None:
        own = job.joint_time
        doubt = (
            ""
            if each.low <= own <= each.high
            else f" By the heat of this flame it takes {duration(each.low)} to {duration(each.high)}: one of the two is "
            "doubtful, so time a joint and look at the flame."
        )
        each = Figure(
            own, "", "practice", low=own / 2, high=own * 2,
            basis=f"As you timed it; a beginner takes twice as long, or longer.{doubt}",
        )  # fmt: skip
    assert each.value is not None
    total = Figure(
        count * each.value, each.source, each.how_sure, low=count * (each.low or each.value),
        high=count * (each.high or each.value), basis=f"Joints times the time on each. {each.basis}",
    )  # fmt: skip
    return total, {"joint_mass": found.mass, "time_each": each}


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
                label,
                f"no filler for {asked.METALS.get(metal or '', 'it').lower()} is kept here; ask for a procedure, "
                "or pick another metal.",
            )
    thickness, form, service = job.thickness, job.form, job.braze_service
    got = told(
        lambda: braze_joint(
            metal_one=one, metal_two=two or one, form=form, thickness=thickness, diameter=job.diameter, width=job.lap_width, service=service, cold_clearance=None, overlap=None, rod=None,
            joints=job.joints or 1.0, wire=WIRES[job.rules], rules=job.rules,
        ),
        _BRAZING,
    )  # fmt: skip
    made = got.results
    around = pi * (job.diameter or 0.0) if form == "sleeve" else job.lap_width or 0.0
    target = made.brazing_temperature.value or made.melting.value
    assert target is not None
    joint = Joint(
        process="brazing",
        metals=(one, two or one),
        length=around,
        overlap=made.overlap.value or 0.0,
        thickness=thickness,
        target=target,
    )
    time, rests_on = _times(job, setting, joint)
    return Work(
        setting=setting,
        flame=made.flame,
        time=time,
        shown=rests_on
        | {
            "filler": made.filler,
            "melting": _span(made.melting, made.brazing_temperature, job.rules),
            "flux": made.flux,
            "overlap": made.overlap,
            "clearance": made.cold_clearance_to_make,
            "rod_length": made.filler_length,
            "filler_mass": made.filler_mass,
        },
        thickness=thickness,
        cautions=got.cautions,
        beside=got.shown_beside,
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
            "Metal",
            "soldering here is copper tube alone; pick copper, or braze "
            f"{asked.METALS[job.metal].lower()}.",
        )
    assert job.tube_system is not None
    assert job.tube_service is not None
    assert job.tube_size is not None
    service, system, size = job.tube_service, job.tube_system, job.tube_size
    got = told(
        lambda: solder_tube(
            method="soldering", service=service, system=system, size_inch=size, size_metric=size, joints=job.joints or 1.0, wall_inch="l", wall_metric="b", fitting="copper", solder=None, brazing_filler=None,
            solder_wire=SOLDER_WIRES[job.rules], rod=WIRES[job.rules], clearance=GAP[job.rules], cup=None, rules=job.rules,
        ),
        {"service": "tube_service", "solder": "tube_service", "cup": "tube_service"},
    )  # fmt: skip
    made = got.results
    assert made.wall.value is not None
    assert made.pipe_heat.value is not None
    around = pi * (made.tube_outside.value or 0.0)
    joint = Joint(
        process="soldering",
        metals=("copper",),
        length=around,
        overlap=made.cup_depth.value or 0.0,
        thickness=made.wall.value,
        target=made.pipe_heat.value,
    )
    time, rests_on = _times(job, setting, joint)
    return Work(
        setting=setting,
        flame=Figure(
            None, "", "practice", words="neutral and soft, the fitting heated, never the solder; a torch that burns fuel gas with air is the usual "
            "tool and gentler",
            basis="The flame moves round the fitting; solder that the joint itself melts runs in.",
        ),
        time=time,
        shown=rests_on
        | {
            "filler": made.filler,
            "melting": _span(made.melting, made.pipe_heat, job.rules),
            "flux": made.flux,
            "cup_depth": made.cup_depth,
            "clearance": made.clearance,
            "rod_length": made.filler_length,
            "filler_mass": made.filler_mass,
        },
        thickness=made.wall.value,
        cautions=got.cautions,
        beside=got.shown_beside,
    )  # fmt: skip
