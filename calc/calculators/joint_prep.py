"""A joint made ready: edges, gap, tacks, and the weld that will fill it."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.declare import Answer, Caution, Field, Figure, Shown, Step, calculator
from calc.declare.inputs import LENGTH
from calc.trade.weld import seams, weld_metal
from calc.trade.weld.joints import OWN_LABELS, Own, preparation
from calc.trade.weld.printed_settings import edges_in_print
from calc.trade.weld.seam_fields import GAP, JOINT, LEG, METAL, PROCESS, THICKNESS
from calc.trade.weld.tacks import tacks as tacks_of

AREA = ("in^2", "mm^2")
ANGLE = ("deg",)


@dataclass(frozen=True, slots=True, kw_only=True)
class JointPrep:
    """One joint, in the order of the work; what it has no use for is left out."""

    edges: Annotated[Figure, Shown("Edges", words=True, group="Edges")]
    bevel_angle: Annotated[Figure | None, Shown("Bevel of each edge", ANGLE, group="Edges")]
    included_angle: Annotated[Figure | None, Shown("Angle between the bevels", ANGLE, group="Edges")]
    root_face: Annotated[Figure | None, Shown("Root face, left square", LENGTH, digits=2, group="Edges")]
    gap: Annotated[Figure | None, Shown("Gap between the edges", LENGTH, digits=2, group="Edges")]
    tack_length: Annotated[Figure, Shown("Length of a tack", LENGTH, digits=2, group="Tacks")]
    tack_spacing: Annotated[Figure | None, Shown("From tack to tack", LENGTH, digits=2, group="Tacks")]
    tacks: Annotated[Figure, Shown("Tacks", ("",), group="Tacks")]
    technique: Annotated[Figure, Shown("Technique", words=True, group="Weld")]
    travel_speed: Annotated[Figure, Shown("Travel speed", ("in/min", "mm/min"), digits=2, group="Weld")]
    torch_time: Annotated[
        Figure, Shown("Torch on the seam for", ("min",), toward="up", digits=2, group="Weld")
    ]
    leg: Annotated[Figure | None, Shown("Leg of the fillet", LENGTH, digits=2, group="Weld")]
    throat: Annotated[Figure | None, Shown("Throat", LENGTH, digits=2, group="Weld")]
    top_width: Annotated[Figure | None, Shown("Width of the weld", LENGTH, digits=2, group="Weld")]
    cap_height: Annotated[Figure | None, Shown("Cap", LENGTH, digits=2, group="Weld")]
    fill_area: Annotated[Figure | None, Shown("Metal to fill the joint", AREA, group="Weld")]
    weld_area: Annotated[Figure, Shown("Metal from the rod, cap with it", AREA, group="Weld")]


@calculator("joint-prep", "Prepare a joint")
def joint_prep(
    *,
    process: Annotated[str, PROCESS],
    metal: Annotated[str, METAL],
    thickness: Annotated[float, THICKNESS],
    joint: Annotated[str, JOINT],
    length: Annotated[
        float,
        Field(
            "Length of the seam",
            ("in", "ft", "mm", "m"),
            example={"us": "12 in", "iso": "300 mm", "uk": "300 mm"},
            low="10 mm",
            high="100 m",
        ),
    ],
    gap: Annotated[float | None, GAP],
    angle: Annotated[
        float | None,
        Field(
            OWN_LABELS["angle"],
            ANGLE,
            low="30 deg",
            high="120 deg",
            optional=True,
            hint="Both edges together.",
            when={"joint": ("single-v",)},
        ),
    ],
    root_face: Annotated[
        float | None,
        Field(
            OWN_LABELS["root_face"],
            LENGTH,
            low="0 mm",
            high="12 mm",
            optional=True,
            when={"joint": ("single-v",)},
        ),
    ],
    leg: Annotated[float | None, LEG],
    cap: Annotated[
        float | None,
        Field(
            OWN_LABELS["cap"],
            LENGTH,
            low="0 mm",
            high="12 mm",
            optional=True,
            hint="Height above the plate or the flat face.",
            when={"joint": ("square-butt", "single-v", "lap", "tee", "edge")},
        ),
    ],
    rules: str,
) -> Answer[JointPrep]:
    """Edges, gap, tacks and the size of the weld, for one seam between two pieces of one thickness.

    A drawing or a welding procedure comes before all of it; the figures here are where to start.
    """  # fmt: skip
    made = preparation(
        process=process,
        metal=metal,
        joint=joint,
        thickness=thickness,
        rules=rules,
        own=Own(gap, angle, root_face, leg, cap),
    )
    steps: list[Step] = []
    tacked = tacks_of(metal, thickness, length)
    speed = seams.speed_for(joint, thickness, metal, process)
    return Answer(
        JointPrep(
            edges=seams.edge_words(made, rules),
            bevel_angle=_half(made.angle),
            included_angle=made.angle,
            root_face=made.root_face,
            gap=made.gap,
            tack_length=tacked.length,
            tack_spacing=tacked.spacing,
            tacks=tacked.count,
            technique=seams.technique_words(joint, thickness, rules, metal, process),
            travel_speed=speed,
            torch_time=seams.time_on_seam(length, speed),
            leg=made.leg,
            throat=weld_metal.throat(made),
            top_width=weld_metal.top_width(made),
            cap_height=None if weld_metal.fused_without_rod(made) else made.cap,
            fill_area=weld_metal.fill_area(made),
            weld_area=weld_metal.weld_area(made, steps),
        ),
        cautions=_cautions(process, metal),
        steps=tuple(steps),
        beside=lambda: ((edges_in_print(thickness, rules),), (weld_metal.picture(made, rules),)),
    )


def _half(angle: Figure | None) -> Figure | None:
    if angle is None or angle.value is None:
        return None
    low, high = (None if end is None else end / 2 for end in (angle.low, angle.high))
    return Figure(
        angle.value / 2,
        angle.source,
        angle.how_sure,
        low=low,
        high=high,
        basis="Half of the angle between the bevels.",
    )


def _cautions(process: str, metal: str) -> tuple[Caution, ...]:
    found = [
        caution("coating-fume"),
        caution("oil-smoke"),
        caution("grinding"),
    ]
    return gravest_first((*found, *brought({"process": process, "metal": metal})))
