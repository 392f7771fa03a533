"""What the plan of a class answers."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import Figure, Shown
from calc.declare.inputs import FREE_GAS, FREE_GAS_FLOW, MASS

_TIME, _CUT, _ROD, _GAS, _BANK, _COST, _FIRE = (
    "The evening", "Cut list", "Rods", "Gas", "Draw and limits", "Cost", "Fire and eyes",
)  # fmt: skip
MINUTES = ("min",)


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassPlan:
    """The plan of an evening."""

    sessions_needed: Annotated[Figure, Shown("Sessions that it takes", toward="up", group=_TIME)]
    hot_benches: Annotated[Figure, Shown("Benches hot at once", toward="up", group=_TIME)]
    rounds: Annotated[Figure, Shown("Turns until all had theirs", toward="up", group=_TIME)]
    torch_time: Annotated[Figure, Shown("Each learner at the torch, in all", MINUTES, group=_TIME)]
    last_flame: Annotated[Figure, Shown("Last flame out, first session", words=True, group=_TIME)]
    left_over: Annotated[Figure, Shown("Left over, shortest session", MINUTES, toward="down", group=_TIME)]
    fire_watch: Annotated[
        Figure, Shown("Fire watch after the last flame", MINUTES, toward="up", group=_FIRE)
    ]
    watchers: Annotated[Figure, Shown("Who watches first", words=True, group=_FIRE)]
    monitoring: Annotated[
        Figure | None, Shown("Then look in again for", MINUTES, toward="up", group=_FIRE)
    ] = None
    clear_distance: Annotated[
        Figure, Shown("Clear of anything that burns", ("ft", "m"), toward="up", group=_FIRE)
    ]
    shade_minimum: Annotated[Figure, Shown("Least filter shade", digits=1, toward="up", group=_FIRE)]
    coupons: Annotated[Figure, Shown("Tries of all learners", digits=4, group=_CUT)]
    pieces: Annotated[Figure | None, Shown("Pieces to cut", digits=5, toward="up", group=_CUT)] = None
    sheets: Annotated[Figure | None, Shown("Sheets", digits=4, toward="up", group=_CUT)] = None
    sheet_waste: Annotated[
        Figure | None, Shown("Of the sheets not in a piece", ("%",), toward="up", digits=2, group=_CUT)
    ] = None
    plates: Annotated[Figure | None, Shown("Plates", digits=4, toward="up", group=_CUT)] = None
    plate_waste: Annotated[
        Figure | None, Shown("Of the plates not in a piece", ("%",), toward="up", digits=2, group=_CUT)
    ] = None
    bought: Annotated[Figure | None, Shown("Bought ready", words=True, group=_CUT)] = None
    rods: Annotated[Figure | None, Shown("Whole rods", digits=4, toward="up", group=_ROD)] = None
    rod_length: Annotated[
        Figure | None, Shown("Rod and filler, length", ("ft", "m"), toward="up", group=_ROD)
    ] = None
    rod_mass: Annotated[
        Figure | None, Shown("Rod and filler, weight", MASS, toward="up", digits=2, group=_ROD)
    ] = None
    fuel_plan: Annotated[
        Figure, Shown("Acetylene for the plan", FREE_GAS[::2], free_gas=True, toward="up", group=_GAS)
    ]
    oxygen_plan: Annotated[
        Figure, Shown("Oxygen for the plan", FREE_GAS[::2], free_gas=True, toward="up", group=_GAS)
    ]
    fuel_peak: Annotated[
        Figure,
        Shown("Acetylene, every hot bench burning", FREE_GAS_FLOW, free_gas=True, toward="up", group=_GAS),
    ]
    oxygen_peak: Annotated[
        Figure,
        Shown("Oxygen, every hot bench burning", FREE_GAS_FLOW, free_gas=True, toward="up", group=_GAS),
    ]
    fuel_in_use: Annotated[Figure, Shown("Acetylene cylinders in use, coupled", toward="up", group=_GAS)]
    oxygen_in_use: Annotated[Figure, Shown("Oxygen cylinders in use", toward="up", group=_GAS)]
    fuel_reserve: Annotated[Figure, Shown("Acetylene cylinders in reserve", toward="up", group=_GAS)]
    oxygen_reserve: Annotated[Figure, Shown("Oxygen cylinders in reserve", toward="up", group=_GAS)]
    coupon_cost: Annotated[Figure, Shown("A try costs, your money", digits=4, toward="up", group=_COST)]
    learner_cost: Annotated[
        Figure | None, Shown("A learner costs, your money", digits=4, toward="up", group=_COST)
    ] = None
    session_cost: Annotated[
        Figure | None, Shown("A session costs, your money", digits=4, toward="up", group=_COST)
    ] = None
    term_cost: Annotated[
        Figure | None, Shown("A term costs, your money", digits=4, toward="up", group=_COST)
    ] = None
    draw_share: Annotated[
        Figure,
        Shown(
            "Acetylene then drawn, share of a full bank",
            ("percent/h",),
            toward="up",
            group=_BANK,
            folded=True,
        ),
    ]
    one_torch_share: Annotated[
        Figure,
        Shown(
            "One torch on one full cylinder draws", ("percent/h",), toward="up", group=_BANK, folded=True
        ),
    ]
    draw_limit: Annotated[
        Figure,
        Shown(
            "Most to draw from the full bank",
            FREE_GAS_FLOW,
            free_gas=True,
            toward="down",
            group=_BANK,
            folded=True,
        ),
    ]
    fuel_cylinders: Annotated[
        Figure, Shown("Acetylene cylinders used up", digits=2, toward="up", group=_BANK, folded=True)
    ]
    oxygen_cylinders: Annotated[
        Figure, Shown("Oxygen cylinders used up", digits=2, toward="up", group=_BANK, folded=True)
    ]
    manifold_limit: Annotated[
        Figure, Shown("Acetylene manifold against the rule", words=True, group=_BANK, folded=True)
    ]
