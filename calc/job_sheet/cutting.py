"""Cutting plate with oxygen."""

from calc.calculators.cut_plate import cut_plate
from calc.job_sheet.job import Job
from calc.job_sheet.kind import Work
from calc.job_sheet.refusals import told
from calc.trade.tips.welding_torch import Setting
from calc.values.figures import Figure

PURITY = 0.995
SURE = {"read": 0, "read-m": 1, "computed": 2, "memory": 3, "practice": 4}


def cutting(job: Job) -> Work:
    """Cut along a line in steel.

    Args:
        job: With thickness, length and pierced starts.

    Raises:
        InputError: Oxygen does not cut the metal, or nothing is printed for the fuel.
    """
    assert job.thickness is not None
    assert job.length is not None
    thickness, length = job.thickness, job.length
    metal = "low-carbon-steel" if job.metal == "galvanised-steel" else job.metal
    fuel_field = "maker_acetylene_gauge" if job.fuel == "acetylene" else "maker_fuel_gauge"
    got = told(
        lambda: cut_plate(
            metal=metal, thickness=thickness, fuel=job.fuel, length=length, pierces=job.pierces or 0.0, shape="straight", bevel_angle=None, sheets=None, purity=PURITY,
            maker_orifice=job.orifice, maker_oxygen_gauge=job.oxygen_gauge, maker_fuel_gauge=job.fuel_gauge, rules=job.rules,
        ),
        {"maker_fuel_gauge": fuel_field},
    )  # fmt: skip
    made = got.results
    setting = Setting(
        orifice=made.cutting_orifice, drill=made.nearest_drill, oxygen_gauge=made.oxygen_gauge, fuel_gauge=made.fuel_gauge, oxygen_flow=made.preheat_oxygen_flow,
        fuel_flow=made.fuel_flow, holes=made.preheat_holes,
    )  # fmt: skip
    return Work(
        setting=setting,
        flame=Figure(
            None, "", "practice", words="neutral with the cutting oxygen open; cones short and sharp, just above the plate",
            basis="Set it with the cutting lever pressed: letting oxygen run changes the flame.",
        ),
        time=made.cut_time,
        shown={"travel_speed": made.cutting_speed, "kerf": made.kerf, "drag": made.drag},
        thickness=thickness,
        cautions=got.cautions,
        beside=got.shown_beside,
        oxygen_flow=_both(made.cutting_oxygen_flow, made.preheat_oxygen_flow),
    )  # fmt: skip


def _both(cut: Figure, flame: Figure) -> Figure:
    """Oxygen of the cut and of the flame together."""
    assert cut.value is not None
    assert flame.value is not None
    return Figure(
        cut.value + flame.value, cut.source, max((cut.how_sure, flame.how_sure), key=SURE.__getitem__),
        low=(cut.low or cut.value) + (flame.low or flame.value), high=(cut.high or cut.value) + (flame.high or flame.value),
        basis=f"Cutting oxygen and that of the flame. {cut.basis}",
    )  # fmt: skip
