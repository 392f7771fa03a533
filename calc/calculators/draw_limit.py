"""How fast acetylene may be drawn from a cylinder."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.ask.errors import InputError
from calc.data.tables import source_words
from calc.declare import Answer, Field, Figure, Picture, Shown, Step, Table, calculator, worked
from calc.declare.inputs import FREE_GAS, FREE_GAS_FLOW
from calc.formulas.gas.acetylene import (
    CONTINUOUS_DRAW,
    FLAT_DRAW,
    INTERMITTENT_DRAW,
    OLDER_DRAW,
    acetylene_by_weight,
    acetylene_chill,
    acetylene_draw_limit,
)
from calc.formulas.gas.possible import OVERFULL
from calc.formulas.gas.supply import cylinder_share, cylinders_needed
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.show.scales import scale
from calc.trade.fields import DUTY, FULL_CONTENTS
from calc.trade.gas.draws import FRACTIONS, PICKS, cold_cautions, draw_cautions, draw_limit_of
from calc.values.units import to_si

WHOLE_WEIGHT = to_si(250.0, "lb") / to_si(225.0, "ft^3", free_gas=True)
"""Cylinder, mass, acetone and gas, to a cubic metre of rated gas [navy14250], read."""
WARMTH = 700.0
"""Heat that warms a kilogram of all that by a kelvin, J/(kg·K): our guess, from memory."""
LINES = (
    ("1/7, older books, no allowance", OLDER_DRAW, "manly-1916"),
    ("1/10, on and off", INTERMITTENT_DRAW, "draw-note"),
    ("1/15, without a stop", CONTINUOUS_DRAW, "cga-g1"),
)

@dataclass(frozen=True, slots=True, kw_only=True)
class DrawLimit:
    """What an acetylene cylinder may give, and what is asked of it."""

    draw_share: Annotated[
        Figure, Shown("You draw, share of what is in it now", ("percent/h",), toward="up")
    ]
    draw_limit: Annotated[
        Figure, Shown("Most to draw from it now", FREE_GAS_FLOW, free_gas=True, toward="down")
    ]
    full_draw_limit: Annotated[
        Figure, Shown("Most to draw from a full one", FREE_GAS_FLOW, free_gas=True, toward="down")
    ]
    contents_needed: Annotated[
        Figure,
        Shown("Acetylene that this draw wants in the cylinders", FREE_GAS, free_gas=True, toward="up"),
    ]
    cylinders: Annotated[Figure, Shown("Cylinders to couple, each as this one is now", toward="up")]
    full_cylinders: Annotated[Figure, Shown("Cylinders to couple when full", toward="up")]
    chill: Annotated[Figure, Shown("Cold that the draw makes", ("W",), digits=2, toward="up")]


def _table(contents: float, full: float, rules: str) -> Table:
    flow = scale("flow", rules)
    rows = [
        (
            rule,
            flow.text(acetylene_draw_limit(contents, share)),
            flow.text(acetylene_draw_limit(full, share)),
            source_words(source),
        )
        for rule, share, source in LINES
    ]
    rows.append(
        ("the same for any", flow.text(FLAT_DRAW), flow.text(FLAT_DRAW), source_words("army-od0017"))
    )
    return Table(
        f"What is in print for one cylinder, {flow.name}",
        ("Share of contents an hour", "As it is now", "Full", "Source"),
        tuple(rows),
        "They disagree. Followed here: 1/10 on and off, 1/15 without a stop, of what is in it now, since the standard "
        "of today is told to have 1/10 where older books have 1/7. Above 1/10 this page warns, and above 1/7 it says "
        "DANGER. The flat figure is looser than 1/7 for any cylinder under 350 ft³ and is not followed.",
    )


def _picture(flow: float, contents: float, full: float, rules: str) -> Picture:
    gas, rate = scale("contents", rules), scale("flow", rules)
    most = max(full, contents)
    title = "A cylinder may give less as it empties"
    sentence = "A draw that a full cylinder bears starves the flame when the cylinder is low."
    lines = [
        Line(
            label.split(",")[0],
            tuple(
                (gas.number(most * i / 12), rate.number(acetylene_draw_limit(most * i / 12, share)))
                for i in range(13)
            ),
        )
        for label, share, _ in LINES
    ]
    chart = line_chart(
        title=title, sentence=sentence, x_label=f"Acetylene in the cylinder, {gas.name}", y_label=f"Most to draw, {rate.name}", lines=lines,
        marks=[Mark("yours", gas.number(contents), rate.number(flow))],
    )  # fmt: skip
    return Picture(chart, title, sentence)


def _chill(steps: list[Step], flow: float, full: float, rules: str) -> Figure:
    kilograms = flow / acetylene_by_weight(1.0, 0.0)
    power = worked(steps, "Cold that the draw makes", acetylene_chill, draw=kilograms)
    kelvin = 3600 * power / (WHOLE_WEIGHT * full * WARMTH)
    degrees = f"{1.8 * kelvin:.2g} °F" if rules == "us" else f"{kelvin:.2g} °C"
    return Figure(
        power, "", "memory", low=power * 0.8, high=power * 1.2,
        basis="About 630 kJ to free a kilogram from the acetone. The fall is a guess for a cylinder that no warmth "
        "reaches; the room gives some back. A cold cylinder gives less gas at less pressure.",
        words=f"up to about {degrees} an hour",
    )  # fmt: skip


@calculator("draw-limit", "How fast acetylene may be drawn")
def draw_limit(
    flow: Annotated[
        float,
        Field(
            "Acetylene that the torch takes",
            FREE_GAS_FLOW,
            example={"us": "30 cfh", "iso": "850 L/h", "uk": "850 L/h"},
            low="5 L/h",
            high="50000 L/h",
            free_gas=True,
            hint="All torches on the cylinder together. A heating nozzle takes many times a welding tip.",
        ),
    ],
    acetylene_contents: Annotated[
        float,
        Field(
            "Acetylene in the cylinder now",
            FREE_GAS,
            example={"us": "130 ft^3", "iso": "5.7 m^3", "uk": "5.7 m^3"},
            low="1 ft^3",
            high="500 ft^3",
            free_gas=True,
            hint="By weight; the gauge tells little.",
        ),
    ],
    full_contents: Annotated[float, FULL_CONTENTS],
    duty: Annotated[str, DUTY],
    rules: str,
) -> Answer[DrawLimit]:
    """Whether a cylinder can give the acetylene that a torch takes, and how many to couple.

    Drawn too fast, acetylene brings acetone along, the gauge falls and the flame
    pops after a while.
    """  # fmt: skip
    if acetylene_contents > OVERFULL * full_contents:
        raise InputError(
            "acetylene_contents",
            "Acetylene in the cylinder now", "that is more than a full one holds; give "
            f"{scale('contents', rules).said(full_contents)} or less, or correct what a full one holds.",
        )
    steps: list[Step] = []
    pick = PICKS[duty]
    limit = draw_limit_of(acetylene_contents, duty)
    now = worked(
        steps, "Most from what is in it now", acetylene_draw_limit, contents=acetylene_contents, share=pick
    )
    full = worked(steps, "Most from a full one", acetylene_draw_limit, contents=full_contents, share=pick)
    couple = worked(steps, "Cylinders' worth, as it is now", cylinder_share, wanted=flow, usable=now)
    coupled = cylinders_needed(couple)
    rule = f"The draw is held to {FRACTIONS[duty]} of the contents an hour"
    return Answer(
        DrawLimit(
            draw_share=Figure(
                flow / acetylene_contents, "definition", "computed",
                basis="The draw of an hour over what is in the cylinder now.",
            ),
            draw_limit=limit,
            full_draw_limit=Figure(
                full, limit.source, limit.how_sure,
                basis="Many texts print this one. It is right only while the cylinder is full.",
            ),
            contents_needed=Figure(
                flow * 3600 / pick, limit.source, limit.how_sure,
                basis=f"{rule}; below this, couple more cylinders or stop.",
            ),
            cylinders=Figure(
                float(coupled), limit.source, limit.how_sure,
                basis=f"{rule}, the next whole number.",
            ),
            full_cylinders=Figure(
                float(cylinders_needed(cylinder_share(flow, full))), limit.source, limit.how_sure,
                basis=f"{rule}. They will have to be changed long before they are empty.",
            ),
            chill=_chill(steps, flow, full_contents, rules),
        ),
        cautions=gravest_first((
            *draw_cautions(flow, acetylene_contents, duty), *((caution("home-made-coupling"),) if coupled > 1 else ()),
            *brought({"fuel": "acetylene"}), *cold_cautions("acetylene", None, rules),
        )),
        steps=tuple(steps),
        beside=lambda: (
            (_table(acetylene_contents, full_contents, rules),),
            (_picture(flow, acetylene_contents, full_contents, rules),),
        ),
    )  # fmt: skip
