"""Filler rod for seams: which, how thick, how much, how many."""

from dataclasses import dataclass
from math import ceil
from typing import Annotated

from calc.answer.hazards import caution
from calc.declare import Answer, Caution, Field, Figure, Shown, Step, Table, calculator, worked
from calc.declare.inputs import LENGTH, MASS, NUMBER
from calc.formulas.setup.rods import rod_length_for_seam, rod_mass, weld_metal_mass
from calc.trade.weld import fillers, weld_metal
from calc.trade.weld import seams as seam_sums
from calc.trade.weld.joints import (
    HAIR,
    Own,
    preparation,
)
from calc.trade.weld.seam_fields import GAP, JOINT, LEG, METAL, PROCESS, THICKNESS

AREA = ("in^2", "mm^2")
LONG = ("ft", "m")


@dataclass(frozen=True, slots=True, kw_only=True)
class RodNeed:
    """What to lay ready, and how much of it."""

    rod_class: Annotated[Figure, Shown("Rod", words=True, group="What to take")]
    flux: Annotated[Figure, Shown("Flux", words=True, group="What to take")]
    flame: Annotated[Figure, Shown("Flame", words=True, group="What to take")]
    rod_diameter: Annotated[Figure, Shown("Rod diameter", LENGTH, group="What to take")]
    rods: Annotated[Figure, Shown("Rods for all seams", NUMBER, toward="up", digits=4, group="How much")]
    rod_length: Annotated[Figure, Shown("Length of rod for all seams", LONG, toward="up", group="How much")]
    rod_mass: Annotated[Figure, Shown("Rod for all seams", MASS, toward="up", group="How much")]
    waste: Annotated[Figure, Shown("Of it lost", MASS, toward="up", digits=2, group="How much")]
    one_rod: Annotated[Figure, Shown("One rod weighs", ("lb", "gram"), group="How much")]
    weld_mass: Annotated[Figure, Shown("Weld metal", MASS, group="How much")]
    weld_area: Annotated[Figure, Shown("Metal from the rod, cut across", AREA, group="How much")]


@calculator("rod-need", "Rods for a seam")
def rod_need(
    *,
    process: Annotated[str, PROCESS],
    metal: Annotated[str, METAL],
    thickness: Annotated[float, THICKNESS],
    joint: Annotated[str, JOINT],
    length: Annotated[
        float,
        Field(
            "Length of one seam",
            ("in", "ft", "mm", "m"),
            example={"us": "12 in", "iso": "300 mm", "uk": "300 mm"},
            low="10 mm",
            high="100 m",
        ),
    ],
    seams: Annotated[
        float, Field("Seams", NUMBER, assumed="1", low="1", high="1000", whole=True, hint="All alike.")
    ],
    gap: Annotated[float | None, GAP],
    leg: Annotated[float | None, LEG],
    rod_diameter: Annotated[
        float | None,
        Field(
            "Diameter of the rod you have",
            LENGTH,
            low="1 mm",
            high="13 mm",
            optional=True,
            hint="Empty: the size that the rule asks for.",
        ),
    ],
    rod_length: Annotated[
        float,
        Field(
            "Length of one rod",
            ("in", "mm", "m"),
            assumed={"us": "36 in", "iso": "1 m", "uk": "1 m"},
            low="100 mm",
            high="3 m",
        ),
    ],
    waste: Annotated[
        float,
        Field(
            "Lost as stubs and burnt",
            ("%",),
            assumed="8 %",
            low="0 %",
            high="50 %",
            hint="6 to 8 % where stubs are thrown away; beginners lose more.",
        ),
    ],
    rules: str,
) -> Answer[RodNeed]:
    """Class and size of the rod, its flux and flame, and how many rods some seams take.

    Bare rod and weld metal only: buy to the next packet, and keep the label with the rods.
    """  # fmt: skip
    made = preparation(
        process=process,
        metal=metal,
        joint=joint,
        thickness=thickness,
        rules=rules,
        own=Own(gap=gap, leg=leg),
    )
    steps: list[Step] = []
    area = weld_metal.weld_area(made, steps)
    hand = seam_sums.technique(joint, thickness, metal, process)
    usual = fillers.rod_to_buy(process, metal, thickness, hand, rules)
    rod = (
        usual
        if rod_diameter is None
        else Figure(rod_diameter, "", "practice", basis="The rod you have; it comes before ours.")
    )
    density = fillers.density(process, metal)
    assert rod.value is not None
    assert density.value is not None
    seam = length * seams
    worked(
        steps, "Rod for all seams", rod_length_for_seam,
        area=area.value or 0.0, seam=seam, diameter=rod.value, loss=waste,
    )  # fmt: skip
    worked(
        steps, "Weld metal in all seams", weld_metal_mass,
        area=area.value or 0.0, seam=seam, density=density.value,
    )  # fmt: skip
    long = seam_sums.rod_for_seam(area, seam, rod.value, waste)
    metal_mass = _mass(area, seam, density)
    one = rod_mass(rod.value, rod_length, density.value)
    bought = _scaled(metal_mass, 1.0 / (1.0 - waste), "Weld metal and what is lost.")
    return Answer(
        RodNeed(
            rod_class=fillers.rod_class(process, metal, rules),
            flux=fillers.flux(process, metal),
            flame=fillers.flame(process, metal, rules),
            rod_diameter=rod,
            rods=_rods(long, rod_length),
            rod_length=long,
            rod_mass=bought,
            waste=_scaled(metal_mass, waste / (1.0 - waste), "Stubs and what burns away."),
            one_rod=Figure(one, density.source, density.how_sure, basis=f"{density.basis} Bare rod."),
            weld_mass=metal_mass,
            weld_area=area,
        ),
        cautions=(*fillers.filler_cautions(process, metal), *_fits(rod.value, usual)),
        steps=tuple(steps),
        beside=lambda: (_tables(process, metal, rod_length, rules), (weld_metal.picture(made, rules),)),
    )


def _tables(process: str, metal: str, rod_length: float, rules: str) -> tuple[Table, ...]:
    sizes = fillers.sizes_table(process, metal, rod_length, rules)
    steel = metal == "low-carbon-steel" and process == "welding"
    return (fillers.classes_table(), sizes) if steel else (sizes,)


def _mass(area: Figure, seam: float, density: Figure) -> Figure:
    assert density.value is not None
    taken, least, most = (
        weld_metal_mass(part or 0.0, seam, density.value) for part in (area.value, area.low, area.high)
    )
    sure = "practice" if area.how_sure == "practice" else density.how_sure
    return Figure(taken, area.source, sure, low=least, high=most, basis=f"{area.basis} {density.basis}")


def _scaled(mass: Figure, share: float, basis: str) -> Figure:
    taken, least, most = ((part or 0.0) * share for part in (mass.value, mass.low, mass.high))
    return Figure(taken, mass.source, mass.how_sure, low=least, high=most, basis=basis)


def _rods(long: Figure, rod_length: float) -> Figure:
    taken, least, most = (
        float(ceil((part or 0.0) / rod_length * (1 - HAIR))) for part in (long.value, long.low, long.high)
    )
    fused = "the edges are fused without rod; keep one for a hole" if taken == 0 else ""
    return Figure(
        taken,
        long.source,
        long.how_sure,
        low=least,
        high=most,
        basis=f"{long.basis} Rounded up to whole rods.",
        words=fused,
    )


def _fits(rod: float, usual: Figure) -> tuple[Caution, ...]:
    assert usual.value is not None
    if 0.5 * usual.value <= rod <= 2.0 * usual.value:
        return ()
    return (caution("rod-too-thin" if rod < usual.value else "rod-too-thick"),)
