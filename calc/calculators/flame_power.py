"""Heat that a flow of fuel gas gives: cone, envelope, and what the work gets."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Answer, Field, Figure, Shown, Step, Table, calculator, worked
from calc.declare.inputs import FREE_GAS_FLOW, POWER
from calc.formulas.heat.flame_power import (
    FLAME_EFFICIENCY,
    FLAME_EFFICIENCY_BAND,
    power_into_work,
    power_of_gas,
)
from calc.show.drawings.bars import Bar
from calc.show.drawings.bars import drawing as bars
from calc.trade.fields import FUEL
from calc.trade.flame.fuel_heat import HeatOfGas, heat_of_gas
from calc.values.numbers import plain_number
from calc.values.units import from_si, to_si

HEATS = "nasa-tp-2002-211556 heats of formation"
SIXTY_FAHRENHEIT = 288.7055555555556
FIFTEEN_CELSIUS = 288.15


@dataclass(frozen=True, slots=True, kw_only=True)
class FlamePower:
    """Heat in a time, by where it is set free."""

    total_gross: Annotated[Figure, Shown("Gross, as heat values are printed", POWER)]
    total_net: Annotated[Figure, Shown("Net, all that a flame can give", POWER)]
    cone: Annotated[Figure, Shown("In the inner cone", POWER)]
    envelope_net: Annotated[Figure, Shown("In the envelope, net", POWER)]
    envelope_gross: Annotated[Figure, Shown("In the envelope, gross", POWER)]
    into_work: Annotated[Figure, Shown("Enters the work, about", POWER, digits=2)]


def _printed(fuel: str, heat: HeatOfGas) -> Table:
    """Heat values in print beside ours, in the unit and at the state that print uses."""
    to_print = (
        to_si(1.0, "ft^3") * FIFTEEN_CELSIUS / SIXTY_FAHRENHEIT / to_si(1.0, "Btu")
    )  # ours at 15 °C, print at 60 °F
    ours = [heat.cone, heat.gross - heat.cone, heat.gross]
    name = "natural gas" if fuel == "methane" else fuel
    rows = [("this sum", *(f"{value * to_print:.0f}" for value in ours), "computed")]
    for row in table("fuel-heats-aws"):
        if row.fuel == name:
            printed = [
                None if v is None else from_si(v, "Btu/ft^3") for v in (row.cone, row.envelope, row.total)
            ]
            cells = ("" if v is None else plain_number(v, 4) for v in printed)
            rows.append((source_words(row.source), *cells, HOW_SURE[row.how_sure]))
    note = "Btu from a cubic foot at 60 °F, gross, as printed."
    if fuel == "methane":
        note += " Print counts the cone of natural gas in another way: do not compare that figure."
    if fuel == "methylacetylene-propadiene":
        note += " Print is for the gas as sold, ours for its two parts alone; TC 9-237 prints 517 and 2,406, from memory."
    if fuel == "propane":
        note += " A metric 104 MJ/m³ printed beside 2498 is a slip: it is 93."
    return Table(
        "Heat of this gas in print", ("", "Cone", "Envelope", "All", "How sure"), tuple(rows), note
    )


@calculator("flame-power", "Heat of a flame")
def flame_power(
    fuel: Annotated[str, FUEL],
    flow: Annotated[
        float,
        Field(
            "Fuel gas that the torch takes",
            FREE_GAS_FLOW,
            example={"us": "5 cfh", "iso": "150 L/h", "uk": "150 L/h"},
            low="0.1 cfh",
            high="1000 cfh",
            free_gas=True,
            hint="From the flow of a tip, or from its maker.",
        ),
    ],
    efficiency: Annotated[
        float | None,
        Field(
            "Share that enters the work",
            ("%",),
            low="1 %",
            high="90 %",
            optional=True,
            hint="Empty: 20 %, between 12 and 34 %. It falls as the tip grows and as the work gets hot.",
        ),
    ],
    propyne_share: Annotated[
        float,
        Field(
            "Propyne in methylacetylene-propadiene",
            ("%",),
            assumed="50 %",
            low="0 %",
            high="100 %",
            hint="For that fuel only. 50 % is an invented example: real mixtures differ and hold other gases too.",
        ),
    ],
    rules: str,
) -> Answer[FlamePower]:
    """Heat that a flow of fuel gas sets free in the cone and in the envelope.

    The envelope burns with air from the room; only a small part of all the heat
    enters the work.
    """  # fmt: skip
    steps: list[Step] = []
    heat = heat_of_gas(steps, fuel, propyne_share)

    def power(says: str, value: float) -> float:
        return worked(steps, f"{says}: heat in a time", power_of_gas, flow=flow, heat_value=value)

    gross, net, cone = power("Gross", heat.gross), power("Net", heat.net), power("Cone", heat.cone)
    share = FLAME_EFFICIENCY if efficiency is None else efficiency
    enters = worked(
        steps, "Enters the work", power_into_work, flow=flow, heat_value=heat.gross, efficiency=share
    )
    low, high = FLAME_EFFICIENCY_BAND if efficiency is None else (share, share)

    def figure(value: float, basis: str) -> Figure:
        return Figure(value, HEATS, "computed", basis=basis)

    unit, name = ("Btu/h", "Btu/h") if rules == "us" else ("kW", "kW")

    def said(value: float) -> str:
        return f"{plain_number(from_si(value, unit), 3)} {name}"

    picture = bars(
        "Where the heat is set free",
        f"Of {said(net)} that the flame can give, {said(cone)} comes in the cone and about {said(enters)} enters the work.",
        ("cone", "envelope", "lost as vapour"),
        [
            Bar("gross, as printed", said(gross), (cone, net - cone, gross - net)),
            Bar("net, what a flame can give", said(net), (cone, net - cone)),
        ],
    )
    cautions = [caution("heat-behind")]
    cautions += brought({"fuel": fuel})
    ideal = (
        "Ideal cone: just enough oxygen to make carbon monoxide and hydrogen. A torch on other fuels than acetylene "
        "takes far more oxygen than that, so its real cone gives more."
    )
    return Answer(
        FlamePower(
            total_gross=figure(gross, "Counts the heat of water that condenses; a flame's water stays vapour."),
            total_net=figure(net, "Water stays vapour: all that the work could ever get."),
            cone=figure(cone, ideal),
            envelope_net=figure(net - cone, "Burns with air from the room."),
            envelope_gross=figure(gross - cone, "As printed; part of it is the heat of condensing water."),
            into_work=Figure(
                enters, "groover", "memory", low=gross * low, high=gross * high,
                basis=f"{plain_number(100 * share, 3)} % of the gross heat, as print counts it. The band is 12 to 34 %, inferred from "
                "the trade's own rules of flow and speed." if efficiency is None else
                f"{plain_number(100 * share, 3)} % of the gross heat, as you gave it.",
            ),
        ),
        cautions=tuple(cautions),
        steps=tuple(steps),
        tables=(_printed(fuel, heat),),
        pictures=(picture,),
    )  # fmt: skip
