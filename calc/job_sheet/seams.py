"""Welding and braze welding a seam."""

from calc.answer.sentences import degrees, distance
from calc.ask.errors import InputError
from calc.calculators.joint_prep import joint_prep
from calc.calculators.rod_need import rod_need
from calc.data.tables import table
from calc.declare import Picture, Table
from calc.job_sheet import fields as asked
from calc.job_sheet.heating import preheat_row, preheat_words
from calc.job_sheet.job import Job
from calc.job_sheet.kind import Work
from calc.job_sheet.melting import melts_through
from calc.job_sheet.refusals import told
from calc.trade.drawings import flame
from calc.trade.tips.printed_holes import flows_by_source, orifices_by_source
from calc.trade.tips.welding_torch import RATIO, RATIO_SOURCE, Setting
from calc.trade.weld.joints import METALS
from calc.values.figures import Figure
from calc.values.units import to_si

LENGTHS = {"us": to_si(36.0, "in"), "iso": 1.0, "uk": 1.0}
WASTE = 0.08
"""Rod lost as stubs: common practice, 6 to 8 %."""
NAMES = {"gap": "thickness", "leg": "thickness", "rod_diameter": "thickness"}


def seam(job: Job, setting: Setting) -> Work:
    """Prepare, tack and weld or braze-weld one seam.

    Args:
        job: With thickness, joint and length.
        setting: Of its tip.

    Raises:
        InputError: The metal, the joint or the thickness is not for this process here.
    """
    assert job.thickness is not None
    assert job.length is not None
    assert job.joint is not None
    thickness, length, joint = job.thickness, job.length, job.joint
    metal = "low-carbon-steel" if job.metal == "galvanised-steel" else job.metal
    if metal not in METALS:
        known = ", ".join(words.lower() for words in METALS.values())
        raise InputError(
            "metal",
            "Metal",
            f"no rod and flame for {asked.METALS[metal].lower()} are kept here, ask for its welding procedure; "
            f"those kept are {known}.",
        )
    prepared = told(
        lambda: joint_prep(
            process=job.process,
            metal=metal,
            thickness=thickness,
            joint=joint,
            length=length,
            gap=None,
            angle=None,
            root_face=None,
            leg=None,
            cap=None,
            rules=job.rules,
        ),
        NAMES,
    )
    needed = told(
        lambda: rod_need(
            process=job.process, metal=metal, thickness=thickness, joint=joint, length=length, seams=1.0, gap=None, leg=None, rod_diameter=None, rod_length=LENGTHS[job.rules], waste=WASTE, rules=job.rules
        ),
        NAMES,
    )  # fmt: skip
    made, rods = prepared.results, needed.results
    return Work(
        setting=setting,
        flame=_told(rods.flame, job.fuel),
        time=made.torch_time,
        shown={
            "edges": Figure(
                None, made.edges.source, made.edges.how_sure, words=f"{made.edges.words}; {made.technique.words}",
                basis=f"{made.edges.basis} {made.technique.basis}".strip(),
            ),
            "tacks": _tacks(made.tacks, made.tack_length, made.tack_spacing, job.rules),
            "filler": rods.rod_class,
            "flux": rods.flux,
            "rod_diameter": rods.rod_diameter,
            "rod_length": rods.rod_length,
            "rods": rods.rods,
            "filler_mass": rods.rod_mass,
            "travel_speed": made.travel_speed,
            "melts": melts_through(metal, joint, thickness, setting.fuel_flow, made.travel_speed)
            if (job.process, job.fuel) == ("welding", "acetylene")
            else None,
            "preheat": _preheat(job),
        },
        thickness=thickness,
        cautions=(*prepared.cautions, *needed.cautions),
        beside=lambda: (_tables(job, setting.fuel_flow), (*prepared.shown_beside()[1], *_drawn(job))),
    )  # fmt: skip


def _told(flame: Figure, fuel: str) -> Figure:
    """The flame with how it is set, where it is the neutral one of acetylene."""
    if flame.words != "neutral" or fuel != "acetylene":
        return flame
    look = next(row for row in table("flame-looks") if row.flame == "neutral")
    return Figure(
        None, RATIO_SOURCE, "read", words=f"{look.name}: open the oxygen slowly until {look.look.replace('just gone', 'has just gone')}",
        basis="Open it until no streamer is left beyond the cone. One army text allows one of 1/16 to 1/8 in; with it the flame "
        "is slightly reducing.",
    )  # fmt: skip


def _tacks(count: Figure, long: Figure, apart: Figure | None, rules: str) -> Figure:
    assert count.value is not None
    assert long.value is not None
    words = f"{count.value:.0f}, each {distance(long.value, rules, 2)} long"
    if apart is not None and apart.value is not None:
        words += f", {distance(apart.value, rules, 2)} apart"
    return Figure(None, count.source, count.how_sure, words=words, basis=count.basis)


def _preheat(job: Job) -> Figure | None:
    name = "cast-iron-braze" if (job.metal, job.process) == ("cast-iron", "braze-welding") else job.metal
    row = preheat_row(name)
    if row is None or job.metal in ("low-carbon-steel", "galvanised-steel"):
        return None
    span = " to ".join(degrees(end, job.rules) for end in (row.low, row.high) if end is not None)
    return Figure(
        None, row.source, row.how_sure, words=f"{span}; {preheat_words(row, job.rules)}".rstrip("; ")
    )


def _tables(job: Job, flow: Figure) -> tuple[Table, ...]:
    if job.fuel != "acetylene" or job.metal not in ("low-carbon-steel", "galvanised-steel"):
        return ()
    try:
        found = (orifices_by_source(job.thickness or 0.0, job.rules, job.process),)
    except ValueError:
        return ()
    if job.process != "welding":
        return found
    injector = job.torch_type == "injector"
    return (*found, flows_by_source(job.thickness or 0.0, flow, job.rules, injector))


def _drawn(job: Job) -> tuple[Picture, ...]:
    if job.process != "welding" or job.fuel != "acetylene" or job.metal in ("brass", "aluminium"):
        return ()
    return (flame.drawing(RATIO, job.rules),)
