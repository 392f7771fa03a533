"""What the job sheet answers; a result that a kind of work does not have is left out."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import Figure, Shown
from calc.declare.inputs import FREE_GAS, FREE_GAS_FLOW, GAUGE, LENGTH, MASS, TEMPERATURE
from calc.trade.gas.regulators import MARK

SPEED = ("in/min", "mm/min")
_EYES, _TIP, _LIGHT, _WORK, _GAS, _FIRE = (
    "Eyes", "Tip and pressures", "Purge and light", "The work", "Gas", "Fire",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class JobSheet:
    """One sheet, in the order of the work."""

    first: Annotated[Figure | None, Shown("Before any flame", words=True, group="First")] = None
    shade_minimum: Annotated[
        Figure, Shown("Least filter shade", ("",), toward="up", digits=1, group=_EYES)
    ]
    shade_usual: Annotated[Figure, Shown("Usual shades", words=True, group=_EYES)]
    your_tip: Annotated[Figure | None, Shown("Tip", words=True, group=_TIP)] = None
    tip_orifice: Annotated[Figure | None, Shown("Hole in the tip", LENGTH, group=_TIP)] = None
    nearest_drill: Annotated[Figure | None, Shown("Nearest twist drill", words=True, group=_TIP)] = None
    holes: Annotated[Figure | None, Shown("Holes for the flame", words=True, group=_TIP)] = None
    oxygen_gauge: Annotated[
        Figure | None, Shown("Oxygen regulator, gas flowing", GAUGE, step=MARK, toward="up", group=_TIP)
    ] = None
    fuel_gauge: Annotated[
        Figure | None, Shown("Fuel regulator, gas flowing", GAUGE, step=MARK, toward="down", group=_TIP)
    ] = None
    purge_fuel_time: Annotated[
        Figure | None, Shown("Purge the fuel gas for", ("s",), toward="up", digits=2, group=_LIGHT)
    ] = None
    purge_oxygen_time: Annotated[
        Figure | None, Shown("Then purge oxygen for", ("s",), toward="up", digits=2, group=_LIGHT)
    ] = None
    flame: Annotated[Figure | None, Shown("Flame", words=True, group=_LIGHT)] = None
    oxygen_flow: Annotated[
        Figure, Shown("Oxygen the torch takes", FREE_GAS_FLOW, free_gas=True, group=_LIGHT)
    ]
    fuel_flow: Annotated[
        Figure, Shown("Fuel gas the torch takes", FREE_GAS_FLOW, free_gas=True, group=_LIGHT)
    ]
    edges: Annotated[Figure | None, Shown("Edges and technique", words=True, group=_WORK)] = None
    tacks: Annotated[Figure | None, Shown("Tacks", words=True, group=_WORK)] = None
    filler: Annotated[Figure | None, Shown("Rod or filler", words=True, group=_WORK)] = None
    melting: Annotated[Figure | None, Shown("It melts", words=True, group=_WORK)] = None
    flux: Annotated[Figure | None, Shown("Flux", words=True, group=_WORK)] = None
    cup_depth: Annotated[Figure | None, Shown("Depth of the cup", LENGTH, group=_WORK)] = None
    overlap: Annotated[Figure | None, Shown("Overlap", LENGTH, toward="up", group=_WORK)] = None
    clearance: Annotated[Figure | None, Shown("Clearance, cold, each side", LENGTH, group=_WORK)] = None
    rod_diameter: Annotated[Figure | None, Shown("Rod diameter", LENGTH, group=_WORK)] = None
    rod_length: Annotated[
        Figure | None, Shown("Rod or wire for it all", ("ft", "m"), toward="up", group=_WORK)
    ] = None
    rods: Annotated[Figure | None, Shown("Whole rods", ("",), toward="up", group=_WORK)] = None
    filler_mass: Annotated[
        Figure | None, Shown("Filler for it all, by weight", MASS, toward="up", digits=2, group=_WORK)
    ] = None
    travel_speed: Annotated[Figure | None, Shown("Travel speed", SPEED, digits=2, group=_WORK)] = None
    melts: Annotated[Figure | None, Shown("Does it melt through?", words=True, group=_WORK)] = None
    kerf: Annotated[Figure | None, Shown("Kerf, lost to the cut", LENGTH, digits=2, group=_WORK)] = None
    drag: Annotated[Figure | None, Shown("Drag of a good cut, at most", LENGTH, digits=2, group=_WORK, toward="down")] = None
    limit_temperature: Annotated[
        Figure | None, Shown("Never hotter than", TEMPERATURE, toward="down", group=_WORK)
    ] = None
    aim_temperature: Annotated[
        Figure | None, Shown("Stop the flame at", TEMPERATURE, toward="down", group=_WORK)
    ] = None
    colour: Annotated[Figure | None, Shown("What that looks like", words=True, group=_WORK)] = None
    preheat: Annotated[Figure | None, Shown("Preheat and cooling", words=True, group=_WORK)] = None
    joint_mass: Annotated[
        Figure | None, Shown("Metal that gets hot with one joint", MASS, digits=2, group=_WORK)
    ] = None
    time_each: Annotated[
        Figure | None, Shown("Torch on each joint for", ("s",), toward="up", digits=2, group=_WORK)
    ] = None
    torch_time: Annotated[
        Figure, Shown("Torch on the work for", ("min",), toward="up", digits=2, group=_WORK)
    ]
    oxygen_used: Annotated[
        Figure, Shown("Oxygen for the job", FREE_GAS, free_gas=True, toward="up", group=_GAS)
    ]
    fuel_used: Annotated[
        Figure, Shown("Fuel gas for the job", FREE_GAS, free_gas=True, toward="up", group=_GAS)
    ]
    oxygen_hours: Annotated[
        Figure, Shown("Oxygen lasts, flame burning", ("h", "h"), toward="down", group=_GAS)
    ]
    fuel_hours: Annotated[
        Figure | None, Shown("Fuel gas lasts, flame burning", ("h", "h"), toward="down", group=_GAS)
    ] = None
    draw_hours: Annotated[
        Figure | None, Shown("Acetylene may be drawn so fast for", ("h", "h"), toward="down", group=_GAS)
    ] = None
    ends_first: Annotated[Figure, Shown("Which ends first", words=True, group=_GAS)]
    draw_share: Annotated[
        Figure | None, Shown("Acetylene drawn, share of contents", ("percent/h",), toward="up", group=_GAS)
    ] = None
    draw_limit: Annotated[
        Figure | None,
        Shown("Most to draw from this cylinder", FREE_GAS_FLOW, free_gas=True, toward="down", group=_GAS),
    ] = None
    contents_asked: Annotated[
        Figure | None,
        Shown("Acetylene this draw asks for in the cylinders", FREE_GAS, free_gas=True, toward="up", group=_GAS),
    ] = None
    hole_fed: Annotated[
        Figure | None, Shown("Largest hole this cylinder may feed", LENGTH, toward="down", digits=2, group=_GAS)
    ] = None
    pressure_held: Annotated[Figure | None, Shown("Is the pressure held?", words=True, group=_GAS)] = None
    clear_distance: Annotated[
        Figure, Shown("Clear of anything that burns", ("ft", "m"), toward="up", group=_FIRE)
    ]
    fire_watch: Annotated[
        Figure, Shown("Fire watch after the last flame", ("min",), toward="up", group=_FIRE)
    ]
