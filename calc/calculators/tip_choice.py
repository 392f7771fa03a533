"""Which tip: its hole, pressures and gas for a kind of work, a metal and a fuel."""

from dataclasses import dataclass, replace
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.answer.sentences import distance
from calc.declare import Answer, Caution, Choice, Field, Figure, Picture, Shown, Step, Table, calculator
from calc.declare.inputs import FREE_GAS, FREE_GAS_FLOW, GAUGE, LENGTH
from calc.formulas.setup.drills import drills_beside
from calc.formulas.setup.flows import steel_of_same_flow
from calc.formulas.setup.tips import holes_printed_for
from calc.show.drawings import tip_hole
from calc.show.scales import scale
from calc.trade.fields import FUEL_ASKED, HEAT_WANTED, HEATED, full_contents, heat_of
from calc.trade.flame.fuel_sums import equipment
from calc.trade.gas.draw_ways import contents_asked, hole_fed, ways
from calc.trade.gas.draws import draw_cautions
from calc.trade.tips.own_tip import own_tip, printed_for
from calc.trade.tips.printed_holes import flows_by_source, inserts_by_thickness, orifices_by_source
from calc.trade.tips.settings import (
    LIKE_STEEL,
    METAL_LABEL,
    METALS,
    MPS,
    PROCESSES,
    THICKNESS_LABEL,
    TORCH_LABEL,
    insert_for_heat,
    setting,
)
from calc.trade.tips.welding_torch import Setting, sizes_larger

TORCHES = {"equal-pressure": "Equal pressure (no injector)", "injector": "Injector"}
BY_THICKNESS = tuple(process for process in PROCESSES if process != "heating")



@dataclass(frozen=True, slots=True, kw_only=True)
class TipChoice:
    """The tip to start from."""

    orifice: Annotated[Figure, Shown("Hole in the tip", LENGTH, group="Tip")]
    nearest_drill: Annotated[Figure, Shown("Nearest twist drill", words=True, group="Tip")]
    preheat_holes: Annotated[Figure | None, Shown("Holes for the preheat flames", words=True, group="Tip")]
    holes: Annotated[Figure | None, Shown("Number of holes", ("",), digits=2, group="Tip")]
    made_for: Annotated[Figure, Shown("Kind", words=True, group="Tip")]
    yours: Annotated[Figure | None, Shown("The tip you have", words=True, group="Tip")]
    oxygen_gauge: Annotated[
        Figure, Shown("Oxygen, at the torch", GAUGE, digits=2, group="Pressures, gas flowing", toward="up")
    ]
    fuel_gauge: Annotated[
        Figure,
        Shown("Fuel gas, at the torch", GAUGE, digits=2, group="Pressures, gas flowing", toward="down"),
    ]
    oxygen_flow: Annotated[
        Figure, Shown("Oxygen", FREE_GAS_FLOW, free_gas=True, digits=2, group="Gas the torch takes")
    ]
    fuel_flow: Annotated[
        Figure, Shown("Fuel gas", FREE_GAS_FLOW, free_gas=True, digits=2, group="Gas the torch takes")
    ]
    hole_flow: Annotated[
        Figure | None,
        Shown("Fuel gas of one hole", FREE_GAS_FLOW, free_gas=True, digits=2, group="Gas the torch takes"),
    ]
    contents_asked: Annotated[
        Figure | None,
        Shown("Acetylene this draw asks for in the cylinders", FREE_GAS, free_gas=True, toward="up", group="Gas the torch takes"),
    ]
    hole_fed: Annotated[
        Figure | None,
        Shown("Largest hole one full cylinder may feed", LENGTH, toward="down", digits=2, group="Gas the torch takes"),
    ]


def _of_one_hole(found: Setting) -> Figure:
    holes, flow = found.holes.value or 1.0, found.fuel_flow
    assert flow.value is not None
    return Figure(
        flow.value / holes, flow.source, flow.how_sure, low=(flow.low or flow.value) / holes,
        high=(flow.high or flow.value) / holes, basis="All of it over the number of holes.",
    )  # fmt: skip


def _yours(
    *,
    own: float, found: Setting, process: str, metal: str | None, thickness: float, fuel: str, rules: str
) -> Figure:
    if found.orifice.value is None:
        return Figure(
            None, found.orifice.source, found.orifice.how_sure,
            words="an injector torch is set by its insert; a hole alone tells nothing of it",
        )  # fmt: skip
    suits = ""
    if fuel == "acetylene" and (metal in LIKE_STEEL or process in ("brazing", "soldering")):
        suits = printed_for(process, own, rules)
    printed = (
        holes_printed_for(thickness)
        if process == "welding" and fuel == "acetylene" and metal in LIKE_STEEL
        else ()
    )
    return own_tip(own, found.orifice, suits, printed)


def _yours_many(with_yours: Setting) -> Figure:
    """How many holes of the reader's size a heating tip must have."""
    holes = with_yours.holes.value or 1.0
    many = "one hole of this size passes" if holes == 1.0 else f"{holes:.0f} holes of this size pass"
    return Figure(
        None, with_yours.fuel_flow.source, with_yours.fuel_flow.how_sure, words=f"{many} the gas of this heat",
        basis="Count the holes of yours. With far more of them it starves at this gas, with far fewer it heats slowly.",
    )  # fmt: skip


def _draw_cautions(flow: Figure, rules: str) -> list[Caution]:
    """Draw on one full cylinder of the usual size, with pauses."""
    contents = full_contents(rules)
    full = scale("contents", rules).said(contents)
    return draw_cautions(
        flow.value or 0.0, contents, "intermittent", f"On one full cylinder of {full} this"
    )


def _cautions(
    process: str, metal: str | None, fuel: str, found: Setting, rules: str
) -> tuple[Caution, ...]:
    drawn = _draw_cautions(found.fuel_flow, rules) if fuel == "acetylene" else []
    historic = process == "welding" and fuel == MPS
    return gravest_first(
        (
            *drawn,
            caution("starved-tip"),
            *brought({"process": process, "metal": metal, "fuel": fuel}),
            *((caution("old-text-gas"),) if historic else ()),
            caution("tip-number"),
        )
    )


def _table(
    *,
    process: str, metal: str, thickness: float, fuel: str, torch_type: str | None, rules: str
) -> Table:
    if torch_type == "injector":
        like = "low-carbon-steel" if metal in LIKE_STEEL else metal
        alike, larger = steel_of_same_flow(thickness, like), int(sizes_larger(like))
        if process == "welding":
            return inserts_by_thickness(alike, rules, larger)
        return inserts_by_thickness(insert_for_heat(process, metal, thickness), rules, 0)
    shown, said = thickness, "this thickness"
    if process == "welding" and metal not in LIKE_STEEL:
        shown = steel_of_same_flow(thickness, metal)
        said = f"{distance(shown, rules, 3)} of steel, which takes the same gas"
    found = orifices_by_source(shown, rules, process)
    title = found.title.replace("this thickness", said)
    return replace(
        found,
        title=title
        if fuel == "acetylene" or process == "cutting"
        else title.replace("the tip", "an acetylene tip"),
    )


def _picture(found: Setting, own: float | None, rules: str) -> Picture | None:
    if found.orifice.value is None:
        return None
    smaller, larger = (
        (f"#{drill.drill}", drill.diameter) if drill else None
        for drill in drills_beside(found.orifice.value)
    )
    return tip_hole.drawing(found.orifice.value, smaller, larger, own, rules)


@calculator("tip-choice", "Which tip")
def tip_choice(
    *,
    process: Annotated[str, Choice("Work", PROCESSES, example="welding")],
    metal: Annotated[
        str | None,
        Choice(METAL_LABEL, METALS, example="low-carbon-steel", when={"process": BY_THICKNESS}),
    ],
    thickness: Annotated[
        float | None,
        Field(
            THICKNESS_LABEL,
            LENGTH,
            example={"us": "16 ga", "iso": "1.5 mm", "uk": "1.5 mm"},
            low="0.4 mm",
            high="12 in",
            sheet_gauge=True,
            hint="Of the thicker piece.",
            when={"process": BY_THICKNESS},
        ),
    ],
    fuel: Annotated[str, FUEL_ASKED],
    torch_type: Annotated[
        str | None,
        Choice(
            TORCH_LABEL, TORCHES, assumed="equal-pressure",
            when={"process": ("welding", "braze-welding", "brazing", "soldering")},
        ),
    ],
    heated: Annotated[str | None, HEATED],
    heat: Annotated[float | None, HEAT_WANTED],
    own_orifice: Annotated[
        float | None,
        Field(
            "Hole of a tip you have",
            LENGTH,
            low="0.2 mm",
            high="6 mm",
            drill=True,
            optional=True,
            hint="Diameter, or the number drill whose shank just fits, such as #68.",
        ),
    ],
    rules: str,
) -> Answer[TipChoice]:
    """The hole of the tip, the pressures at the torch and the gas it takes, for the work in front of you.

    What the maker of your tip prints comes before all of it; this is where to start.
    """  # fmt: skip
    steps: list[Step] = []

    def with_hole(orifice: float | None, working: list[Step]) -> Setting:
        return setting(
            process=process, metal=metal or "", thickness=thickness, fuel=fuel, torch_type=torch_type, orifice=orifice, oxygen_gauge=None, fuel_gauge=None, rules=rules, heat=heat_of(heated, heat),
            steps=working,
        )

    found = with_hole(None, steps)
    gear = equipment(fuel, rules)
    picture = _picture(found, own_orifice, rules)
    heating = process == "heating"
    yours = None
    if own_orifice is not None:
        yours = (
            _yours_many(with_hole(own_orifice, []))
            if heating
            else _yours(own=own_orifice, found=found, process=process, metal=metal, thickness=thickness or 0.0, fuel=fuel, rules=rules)
        )
    tables = (_table(process=process, metal=metal, thickness=thickness, fuel=fuel, torch_type=torch_type, rules=rules),) if metal and thickness else ()
    if process == "welding" and fuel == "acetylene" and metal in LIKE_STEEL and thickness:
        injector = torch_type == "injector"
        tables = (*tables, flows_by_source(thickness, found.fuel_flow, rules, injector))
    drawn, full = found.fuel_flow.value or 0.0, full_contents(rules)
    one_hole = fuel == "acetylene" and not heating and process != "cutting"
    if fuel == "acetylene":
        fed = ways(process=process, flow=drawn, hole=found.orifice, contents=full, full=full, duty="intermittent", rules=rules)
        tables = (*((fed,) if fed else ()), *tables)
    return Answer(
        TipChoice(
            orifice=found.orifice,
            nearest_drill=found.drill,
            preheat_holes=found.holes if process == "cutting" else None,
            holes=found.holes if heating else None,
            made_for=Figure(None, gear.source, gear.how_sure, words=gear.tip),
            yours=yours,
            oxygen_gauge=found.oxygen_gauge,
            fuel_gauge=found.fuel_gauge,
            oxygen_flow=found.oxygen_flow,
            fuel_flow=found.fuel_flow,
            hole_flow=_of_one_hole(found) if heating else None,
            contents_asked=contents_asked(drawn, full, "intermittent") if fuel == "acetylene" else None,
            hole_fed=hole_fed(drawn, found.orifice, full, "intermittent") if one_hole else None,
        ),
        cautions=_cautions(process, metal, fuel, found, rules),
        steps=tuple(steps),
        tables=tables,
        pictures=(picture,) if picture else (),
    )
