"""One job as the job sheet was asked for it."""

from dataclasses import dataclass

from calc.values.quantities import Gauge, Length, Power, Ratio, Time


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """What is to be done, with which gas; what a process does not ask is None.

    Attributes:
        process: Id of the work.
        metal: Id of the metal.
        other_metal: Id of the other one, `same`, or None.
        fuel: Id of the fuel gas.
        thickness: m.
        joint: Id of the joint of a seam.
        form: Of a brazed joint.
        length: Of the seam, cut or line, m.
        diameter: Of a tube or pin, m.
        lap_width: Length of a lapped edge, m.
        braze_service: What a brazed joint must bear.
        tube_service: What a soldered tube carries.
        tube_system: `inch` or `metric`.
        tube_size: Id of the tube's size in it.
        joints: Number of them.
        joint_time: Torch on each, s.
        pierces: Pierced starts.
        heat: What a heating is for.
        band: Width of the heated band, m.
        heat_wanted: In the work, W.
        torch_type: `equal-pressure` or `injector`, or None.
        orifice: The tip's hole as its maker prints it, m, or None.
        oxygen_gauge: Oxygen pressure likewise, Pa.
        fuel_gauge: Fuel pressure likewise, Pa.
        rules: Rule set.
    """

    process: str
    metal: str
    other_metal: str | None
    fuel: str
    thickness: Length | None
    joint: str | None
    form: str | None
    length: Length | None
    diameter: Length | None
    lap_width: Length | None
    braze_service: str | None
    tube_service: str | None
    tube_system: str | None
    tube_size: str | None
    joints: Ratio | None
    joint_time: Time | None
    pierces: Ratio | None
    heat: str | None
    band: Length | None
    heat_wanted: Power | None
    torch_type: str | None
    orifice: Length | None
    oxygen_gauge: Gauge | None
    fuel_gauge: Gauge | None
    rules: str
