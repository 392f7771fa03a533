"""Cutting steel plate with oxygen: tip, pressures, speed, gas, and what the edge tells."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import Answer, Choice, Field, Figure, Shown, Step, calculator, worked
from calc.declare.inputs import FREE_GAS, FREE_GAS_FLOW, GAUGE, LENGTH, MASS, TEMPERATURE
from calc.formulas.setup.cut_gas import bevel_thickness, stack_thickness
from calc.show.drawings import cut as drawing
from calc.trade.cut import sentences as cuts_said
from calc.trade.cut import steel_cut as cuts
from calc.trade.fields import FUEL_ASKED
from calc.trade.gas.regulators import MARK
from calc.trade.tips.settings import setting

_TIP, _HEAT, _CUT, _GAS, _CHECK = "Tip and pressures", "Preheat", "Cut", "Gas", "Check"


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPlate:
    """One cut, from the tip to the iron that burns in it."""

    cutting_orifice: Annotated[Figure, Shown("Hole for the cutting oxygen", LENGTH, group=_TIP)]
    nearest_drill: Annotated[Figure, Shown("Nearest twist drill", words=True, group=_TIP)]
    preheat_holes: Annotated[Figure, Shown("Holes for the preheat flames", words=True, group=_TIP)]
    oxygen_gauge: Annotated[Figure, Shown("Oxygen at the torch", GAUGE, step=MARK, toward="up", group=_TIP)]
    fuel_gauge: Annotated[
        Figure, Shown("Fuel gas at the torch", GAUGE, toward="down", digits=2, group=_TIP)
    ]
    preheat_temperature: Annotated[Figure, Shown("Steel catches fire at", TEMPERATURE, group=_HEAT, toward="up")]
    standoff: Annotated[Figure, Shown("Cone tips to the plate", LENGTH, digits=2, group=_HEAT)]
    lead_angle: Annotated[Figure | None, Shown("Torch leans from upright", ("deg",), digits=2, group=_HEAT)]
    cutting_speed: Annotated[Figure, Shown("Travel speed", ("in/min", "mm/min"), digits=2, group=_CUT)]
    cut_time: Annotated[Figure, Shown("Flame burns for", ("min",), toward="up", digits=2, group=_CUT)]
    kerf: Annotated[Figure, Shown("Kerf, lost to the cut", LENGTH, digits=2, group=_CUT)]
    drag: Annotated[Figure, Shown("Drag of a good cut, at most", LENGTH, digits=2, group=_CUT, toward="down")]
    cutting_oxygen_flow: Annotated[
        Figure, Shown("Cutting oxygen", FREE_GAS_FLOW, free_gas=True, digits=2, group=_GAS)
    ]
    preheat_oxygen_flow: Annotated[
        Figure, Shown("Oxygen of the flames", FREE_GAS_FLOW, free_gas=True, digits=2, group=_GAS)
    ]
    fuel_flow: Annotated[
        Figure, Shown("Fuel gas of the flames", FREE_GAS_FLOW, free_gas=True, digits=2, group=_GAS)
    ]
    oxygen_used: Annotated[
        Figure, Shown("Oxygen for it all", FREE_GAS, free_gas=True, toward="up", digits=2, group=_GAS)
    ]
    fuel_used: Annotated[
        Figure, Shown("Fuel gas for it all", FREE_GAS, free_gas=True, toward="up", digits=2, group=_GAS)
    ]
    iron_burnt: Annotated[Figure, Shown("Steel out of the slot", MASS, digits=2, group=_CHECK, folded=True)]
    oxygen_for_iron: Annotated[
        Figure,
        Shown("Oxygen that burns it all", FREE_GAS, free_gas=True, digits=2, group=_CHECK, folded=True),
    ]
    oxygen_share: Annotated[
        Figure, Shown("Of the cutting oxygen used", ("%",), digits=2, group=_CHECK, folded=True)
    ]


@calculator("cut-plate", "Cut steel plate with oxygen")
def cut_plate(
    *,
    metal: Annotated[str, Choice("Metal", cuts.METALS, example="low-carbon-steel")],
    thickness: Annotated[
        float,
        Field(
            "Thickness of the metal",
            LENGTH,
            example={"us": "1/4 in", "iso": "6 mm", "uk": "6 mm"},
            low={"us": "0.02 in", "iso": "0.5 mm", "uk": "0.5 mm"},
            high={"us": "6 in", "iso": "152 mm", "uk": "152 mm"},
            sheet_gauge=True,
            hint="Of one plate or sheet.",
        ),
    ],
    fuel: Annotated[str, FUEL_ASKED],
    length: Annotated[
        float,
        Field(
            "Length of the cut",
            ("in", "ft", "mm", "m"),
            example={"us": "24 in", "iso": "600 mm", "uk": "600 mm"},
            low={"us": "1/2 in", "iso": "10 mm", "uk": "10 mm"},
            high={"us": "300 ft", "iso": "100 m", "uk": "100 m"},
        ),
    ],
    pierces: Annotated[
        float, Field("Pierced starts", ("",), assumed="0", low="0", high="1000", whole=True)
    ],
    shape: Annotated[
        str,
        Choice(
            "Cut",
            {"straight": "Square across", "bevel": "Bevel", "stack": "Stack of sheets"},
            example="straight",
        ),
    ],
    bevel_angle: Annotated[
        float | None,
        Field(
            "Bevel, from upright",
            ("deg",),
            example="30 deg",
            low="5 deg",
            high="60 deg",
            when={"shape": ("bevel",)},
        ),
    ],
    sheets: Annotated[
        float | None,
        Field(
            "Sheets in the stack",
            ("",),
            example="5",
            low="2",
            high="50",
            whole=True,
            when={"shape": ("stack",)},
        ),
    ],
    purity: Annotated[
        float,
        Field(
            "Purity of the oxygen",
            ("%",),
            assumed="99.5 %",
            low="95 %",
            high="100 %",
            hint="What the supplier prints. The tables are for 99.5 %.",
            too_low="below 95 % oxygen melts and washes, it does not cut",
        ),
    ],
    maker_orifice: Annotated[
        float | None,
        Field(
            "Your tip's middle hole, as its maker prints it",
            LENGTH,
            low="0.35 mm",
            high="5.5 mm",
            drill=True,
            optional=True,
        ),
    ],
    maker_oxygen_gauge: Annotated[
        float | None,
        Field("Oxygen pressure its maker prints", GAUGE, low="5 psi", high="150 psi", optional=True),
    ],
    maker_fuel_gauge: Annotated[
        float | None,
        Field("Fuel gas pressure its maker prints", GAUGE, low="0.1 psi", high="60 psi", optional=True),
    ],
    rules: str,
) -> Answer[CutPlate]:
    """Tip, pressures, speed, kerf, gas and time for a cut in steel, and what the cut edge tells.

    Oxygen cuts what burns below its melting point and whose slag runs out: steel. What
    your torch's maker prints comes before ours.
    """  # fmt: skip
    steps: list[Step] = []
    through = thickness
    if bevel_angle is not None:
        through = worked(
            steps, "Steel along the jet", bevel_thickness, thickness=thickness, bevel_angle=bevel_angle
        )
    elif sheets is not None:
        through = worked(steps, "Steel along the jet", stack_thickness, thickness=thickness, sheets=sheets)
    cuts.hold(metal, through, rules)
    tip = setting(
        process="cutting", metal="low-carbon-steel", thickness=through, fuel=fuel, torch_type=None, orifice=maker_orifice, oxygen_gauge=maker_oxygen_gauge, fuel_gauge=maker_fuel_gauge, rules=rules
    )  # fmt: skip
    flows = cuts.flows(through, fuel, purity, maker_orifice, maker_oxygen_gauge)
    speed = cuts.speed(through, purity)
    time = cuts.time(steps, length, speed, pierces, through)
    slot = cuts.slot(through)
    iron = cuts.iron(steps, length, through, slot)
    needed = cuts.oxygen_needed(steps, iron)
    oxygen, fuel_used = cuts.used(flows, time)
    return Answer(
        CutPlate(
            cutting_orifice=tip.orifice,
            nearest_drill=tip.drill,
            preheat_holes=tip.holes,
            oxygen_gauge=tip.oxygen_gauge,
            fuel_gauge=tip.fuel_gauge,
            preheat_temperature=cuts.kindling(),
            standoff=cuts.fact("standoff"),
            lead_angle=cuts.lead_of(through) if shape == "straight" else None,
            cutting_speed=speed,
            cut_time=time,
            kerf=slot,
            drag=cuts.drag_of(through),
            cutting_oxygen_flow=flows.jet,
            preheat_oxygen_flow=flows.flames,
            fuel_flow=flows.fuel,
            oxygen_used=oxygen,
            fuel_used=fuel_used,
            iron_burnt=iron,
            oxygen_for_iron=needed,
            oxygen_share=cuts.share(needed, flows.jet, length, speed),
        ),
        cautions=cuts_said.cautions(metal, shape, fuel),
        steps=tuple(steps),
        beside=lambda: (
            (cuts_said.in_print_table(through, rules), cuts_said.edges_table(), cuts_said.purity_table()),
            (
                drawing.drawing(through, speed.value or 0.0, cuts.drag_of(through).value or 0.0, rules),
                drawing.faults(),
            ),
        ),
    )
