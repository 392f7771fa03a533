"""A brazed joint: filler, flux, flame, the gap cold and hot, the overlap and the filler it takes."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import Answer, Choice, Field, Figure, Shown, Step, calculator
from calc.declare.inputs import LENGTH, TEMPERATURE
from calc.show.drawings import braze as drawing
from calc.trade.braze import fit as braze_fit
from calc.trade.braze import sentences as braze_said
from calc.trade.braze.choice import LABELS, METALS, RODS, SERVICES, match_for

FORMS = {"sleeve": "Round: part in a socket", "flat-lap": "Flat: sheet on sheet"}
CHOICE, GAP, AMOUNT = "Filler, flux and flame", "Gap", "Overlap and filler"


@dataclass(frozen=True, slots=True, kw_only=True)
class BrazeJoint:
    """What a brazed joint asks for."""

    filler: Annotated[Figure, Shown("Filler", words=True, group=CHOICE)]
    melting: Annotated[Figure, Shown("Filler is all melted at", TEMPERATURE, digits=3, group=CHOICE, toward="up")]
    brazing_temperature: Annotated[
        Figure, Shown("Heat the parts to about", TEMPERATURE, digits=3, group=CHOICE)
    ]
    flux: Annotated[Figure, Shown("Flux", words=True, group=CHOICE)]
    flame: Annotated[Figure, Shown("Flame", words=True, group=CHOICE)]
    clearance_wanted: Annotated[Figure, Shown("Gap wanted at brazing heat", LENGTH, digits=2, group=GAP)]
    cold_clearance_to_make: Annotated[Figure, Shown("Gap to make when cold", LENGTH, digits=2, group=GAP)]
    hot_clearance: Annotated[Figure | None, Shown("Your gap at brazing heat", LENGTH, digits=2, group=GAP)]
    overlap: Annotated[Figure, Shown("Overlap", LENGTH, digits=2, toward="up", group=AMOUNT)]
    overlap_for_strength: Annotated[
        Figure, Shown("Overlap as strong as the part", LENGTH, digits=2, toward="up", group=AMOUNT)
    ]
    filler_volume: Annotated[
        Figure, Shown("Filler in one joint", ("in^3", "mm^3"), digits=2, toward="up", group=AMOUNT)
    ]
    filler_length: Annotated[
        Figure, Shown("Filler wire for all the joints", LENGTH, digits=2, toward="up", group=AMOUNT)
    ]
    filler_mass: Annotated[
        Figure, Shown("Filler for all the joints", ("oz", "g"), digits=2, toward="up", group=AMOUNT)
    ]


@calculator("braze-joint", "Braze a joint")
def braze_joint(
    *,
    metal_one: Annotated[str, Choice(LABELS["metal_one"], METALS, example="low-carbon-steel")],
    metal_two: Annotated[str, Choice(LABELS["metal_two"], METALS, example="copper")],
    form: Annotated[str, Choice("Form of the joint", FORMS, example="sleeve")],
    thickness: Annotated[
        float,
        Field(
            braze_fit.LABELS["thickness"],
            LENGTH,
            example={"us": "0.045 in", "iso": "1.1 mm", "uk": "1.1 mm"},
            low="0.2 mm",
            high="25 mm",
            hint="Of a tube its wall, of a solid pin half its diameter.",
        ),
    ],
    diameter: Annotated[
        float | None,
        Field(
            braze_fit.LABELS["diameter"],
            LENGTH,
            example={"us": "7/8 in", "iso": "22 mm", "uk": "22 mm"},
            low="2 mm",
            high="220 mm",
            hint="Outside of the part that goes in.",
            when={"form": ("sleeve",)},
        ),
    ],
    width: Annotated[
        float | None,
        Field(
            "Length of the lap along the seam",
            LENGTH,
            example={"us": "4 in", "iso": "100 mm", "uk": "100 mm"},
            low="5 mm",
            high="1000 mm",
            when={"form": ("flat-lap",)},
        ),
    ],
    service: Annotated[str, Choice(LABELS["service"], SERVICES, example="general")],
    cold_clearance: Annotated[
        float | None,
        Field(
            braze_fit.LABELS["cold_clearance"],
            LENGTH,
            low="0 mm",
            high="1 mm",
            example={"us": "0.005 in", "iso": "0.12 mm", "uk": "0.12 mm"},
            optional=True,
            hint="Bore less diameter, halved. Empty: only the gap to make.",
        ),
    ],
    overlap: Annotated[
        float | None,
        Field(
            "Overlap you have",
            LENGTH,
            low="1 mm",
            high="200 mm",
            optional=True,
            hint="Empty: three times the thinner part, or more where strength asks for it.",
        ),
    ],
    rod: Annotated[
        str | None,
        Choice(LABELS["rod"], RODS, optional=True, hint="AWS class on its label. Empty: we name one."),
    ],
    joints: Annotated[float, Field("Joints alike", ("",), assumed="1", low="1", high="1000", whole=True)],
    wire: Annotated[
        float,
        Field(
            "Diameter of the filler wire",
            LENGTH,
            assumed={"us": "1/16 in", "iso": "1.5 mm", "uk": "1.5 mm"},
            low="0.5 mm",
            high="6.5 mm",
        ),
    ],
    rules: str,
) -> Answer[BrazeJoint]:
    """What to braze two metals with, how wide the gap must be cold so that it is right when hot, and how much filler.

    Some metals and uses are refused, with the reason.
    """  # fmt: skip
    metals = (metal_one, metal_two)
    match = match_for(metal_one, metal_two, service, rod, rules)
    row = match.filler
    fit = braze_fit.Fit(
        diameter, braze_fit.expansion_of(metal_one), braze_fit.expansion_of(metal_two),
        row.braze_low, row.braze_high,
    )  # fmt: skip
    steps: list[Step] = []
    lap = braze_fit.lap_of(steps=steps, metals=metals, family=row.family, thickness=thickness, diameter=diameter, service=service, given=overlap)
    lies_on = lap.overlap.value or 0.0
    gap = braze_fit.gap_wanted(row.family, lies_on, fit, rules)
    make = braze_fit.cold_figure(steps, fit, gap)
    hot = braze_fit.hot_figure(steps, fit, gap, cold_clearance, rules)
    filled = gap.aim if hot is None or hot.value is None else hot.value
    taken = braze_fit.filler_of(steps=steps, fit=fit, gap=filled, width=width, overlap=lies_on, family=row.family, joints=joints, wire=wire)
    cold = (make.value or 0.0) if cold_clearance is None else cold_clearance
    return Answer(
        BrazeJoint(
            filler=braze_said.filler_words(match),
            melting=braze_said.melting(match, rules),
            brazing_temperature=braze_said.brazing_temperature(match),
            flux=braze_said.flux_words(match, rules),
            flame=braze_said.flame_words(match),
            clearance_wanted=braze_fit.wanted_figure(gap, diameter is not None),
            cold_clearance_to_make=make,
            hot_clearance=hot,
            overlap=lap.overlap,
            overlap_for_strength=lap.strength,
            filler_volume=taken.volume,
            filler_length=taken.length,
            filler_mass=taken.mass,
        ),
        cautions=braze_said.cautions(
            match=match, metals=metals, service=service, fit=fit, gap=gap, given=cold_clearance, make=make.value or 0.0, overlap=lies_on, thickness=thickness, rules=rules
        ),
        steps=tuple(steps),
        beside=lambda: (
            (braze_said.what_else(match, metals, service),),
            (
                drawing.drawing(
                    form=form, outside=METALS[metal_one].lower(), inside=METALS[metal_two].lower(), cold=cold, hot=filled, least=gap.least, most=gap.most, rules=rules
                ),
            ),
        ),
    )  # fmt: skip
