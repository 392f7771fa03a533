"""What both pages of a seam ask in the same words: the joint prepared, and the rod for it."""

from calc.declare import Choice, Field
from calc.declare.inputs import LENGTH
from calc.trade.weld.joints import JOINTS, METALS, OWN_LABELS, PROCESSES, THICKNESS_LABEL

PROCESS = Choice("Process", PROCESSES, example="welding")
METAL = Choice("Metal", METALS, example="low-carbon-steel")
THICKNESS = Field(
    THICKNESS_LABEL,
    LENGTH,
    example={"us": "1/8 in", "iso": "3 mm", "uk": "3 mm"},
    low="0.5 mm",
    high="25 mm",
    sheet_gauge=True,
    hint="The thinner of the two: 16 ga, 1.5 mm, 1/8 in.",
)
JOINT = Choice("Joint", JOINTS, example="square-butt")
GAP = Field(
    OWN_LABELS["gap"],
    LENGTH,
    low="0 mm",
    high="12 mm",
    optional=True,
    hint="Yours, where a drawing names it.",
    when={"joint": ("square-butt", "single-v")},
)
LEG = Field(
    OWN_LABELS["leg"],
    LENGTH,
    low="0.5 mm",
    high="25 mm",
    optional=True,
    when={"joint": ("lap", "tee")},
)
