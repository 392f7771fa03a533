"""What a cut in steel takes: flows and speed with impure oxygen, time, iron and its oxygen."""

from dataclasses import dataclass, replace
from typing import Any

from calc.answer.sentences import distance
from calc.ask.errors import InputError
from calc.data.tables import source_words, table
from calc.declare import Step, worked
from calc.formulas.gas.nozzle import orifice_area, orifice_flow
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.supply import gas_of_use
from calc.formulas.setup import cut_shape, cutting
from calc.formulas.setup.cut_gas import (
    TO_FERROUS_OXIDE,
    TO_MAGNETITE,
    cut_time,
    oxygen_for_iron,
    purity_factor,
    slot_iron,
)
from calc.formulas.setup.printed import value_between
from calc.trade.heat.metals import metal_of
from calc.trade.tips.flow import SHARE_HIGH, SHARE_LOW, SOURCE
from calc.trade.tips.heating_settings import oxygen_of
from calc.trade.tips.own_tip import NEAR
from calc.values.figures import Figure
from calc.values.quantities import Density, Gauge, Length, Ratio
from calc.values.units import to_si

METALS = {row.metal: row.name for row in table("cutting-metals")}
"""Metals that people hold under a cutting torch, by id."""
STEEL: Density = metal_of("low-carbon-steel").density


def metal_row(metal: str) -> Any:
    """Row of a metal: whether oxygen cuts it, why, and what to do instead; that of an unknown one else."""
    rows = {row.metal: row for row in table("cutting-metals")}
    return rows.get(metal, rows["unknown"])


def hold(metal: str, through: Length, rules: str) -> None:
    """Refuse what oxygen does not cut, and steel outside the tables.

    Args:
        metal: Id of the metal.
        through: Steel along the jet, m.
        rules: Rule set, for the units.

    Raises:
        InputError: The metal or the thickness is refused.
    """
    row = metal_row(metal)
    if row.cuts == "no":
        named = "a metal that nobody knows" if row.metal == "unknown" else row.name.lower()
        raise InputError("metal", "Metal", f"{named} is not cut so: {row.why}; {row.instead}.")
    thickest = table("cutting-kerfs")[-1].thickness
    if not cutting.LEAST_THICKNESS * (1 - 1e-9) <= through <= thickest * (1 + 1e-9):
        least = distance(cutting.LEAST_THICKNESS, rules, 3, "up")
        most = distance(thickest, rules, 3, "down")
        raise InputError(
            "thickness",
            "Thickness of the metal",
            f"the jet goes through {distance(through, rules, 3)} of steel, and the cutting tables "
            f"run from {least} to {most}; "
            + (
                f"{thin_sheet(rules)}."
                if through < thickest
                else "give a plate, bevel or stack between them."
            ),
        )


@dataclass(frozen=True, slots=True)
class Flows:
    """Gas of a cut, m³/s, each with its band.

    Attributes:
        jet: Cutting oxygen.
        flames: Oxygen of the preheat flames.
        fuel: Fuel gas of the preheat flames.
    """

    jet: Figure
    flames: Figure
    fuel: Figure


def _lost(purity: Ratio) -> Ratio:
    """Points of purity lost below what the tables are for."""
    full = next(row for row in table("cutting-facts") if row.topic == "full-purity")
    return max(0.0, float(full.number_low) - 100.0 * purity)


def _by_point(figure: Figure, topic: str, purity: Ratio, said: str) -> Figure:
    lost = _lost(purity)
    if lost == 0.0:
        return figure
    rows = [row for row in table("cutting-facts") if row.topic == topic]
    followed = next(row for row in rows if row.how_sure == "read")
    factors = [purity_factor(row.number_low, lost) for row in rows]
    assert figure.value is not None
    taken = purity_factor(followed.number_low, lost)
    percent = f"{100 * abs(followed.number_low - 1):.0f} % {said} for each point of purity lost"
    further = lost > 1.0 + 1e-9
    ours = (
        " The sources name the first point only; that each further one does the same is ours."
        if further
        else ""
    )
    return Figure(
        figure.value * taken, "" if further else figure.source, "practice" if further else figure.how_sure,
        low=(figure.low or figure.value) * min(factors), high=(figure.high or figure.value) * max(factors),
        basis=f"{figure.basis} {percent}: {source_words(followed.source)}; the band holds the other source.{ours}",
    )  # fmt: skip


def _through_the_hole(hole: Length, gauge: Gauge) -> Figure:
    """Oxygen that a hole passes at a gauge, m³/s."""
    flow = orifice_flow(
        gases={"oxygen": 1.0}, area=orifice_area(hole), pressure=absolute_pressure(gauge)
    ).free_gas
    return Figure(
        flow, SOURCE, "computed", low=flow * SHARE_LOW, high=flow * SHARE_HIGH,
        basis="What the hole passes at that pressure, because you gave your tip's figures; the band is a discharge of 0.6 to 0.9 "
        "in place of 0.75. Impure oxygen changes the time, not this flow.",
    )  # fmt: skip


def flows(through: Length, fuel: str, purity: Ratio, hole: Length | None, gauge: Gauge | None) -> Flows:
    """Gas that a cut takes while it runs.

    Args:
        through: Steel along the jet, m.
        fuel: Id of the fuel gas.
        purity: Of the oxygen, a share.
        hole: Of the cutting oxygen as the tip's maker prints it, m, or None.
        gauge: Of the oxygen likewise, Pa, or None. With one of the two the other
            is that of our tables, and the flow is what the hole passes, unless both are
            those of our tables.

    Raises:
        ValueError: Nothing is printed for the fuel or the thickness.
    """
    fuel_flow = cutting.preheat_fuel_flow(through, fuel)
    flames = replace(oxygen_of(fuel, fuel_flow), source=fuel_flow.source, how_sure=fuel_flow.how_sure)
    ours, at = cutting.cutting_orifice(through).value, cutting.cutting_gauges(through, fuel)[0].value
    assert ours is not None
    assert at is not None
    same_hole = hole is None or abs(hole / ours - 1.0) <= NEAR
    same_gauge = gauge is None or abs(gauge / at - 1.0) <= cutting.LIKE - 1.0
    if same_hole and same_gauge:
        jet = cutting.cutting_oxygen_flow(through)
        return Flows(_by_point(jet, "oxygen-by-point", purity, "more oxygen"), flames, fuel_flow)
    jet = _through_the_hole(ours if hole is None else hole, at if gauge is None else gauge)
    return Flows(jet, flames, fuel_flow)


def speed(through: Length, purity: Ratio) -> Figure:
    """Travel speed, m/s, slower with impure oxygen.

    Args:
        through: Steel along the jet, m.
        purity: Of the oxygen, a share.
    """
    return _by_point(cutting.cutting_speed(through), "speed-by-point", purity, "slower")


def time(steps: list[Step], length: Length, travel: Figure, pierces: Ratio, through: Length) -> Figure:
    """Time that the flame burns on a cut, s.

    Args:
        steps: Working.
        length: Of the cut, m.
        travel: Its speed, m/s.
        pierces: Pierced starts.
        through: Steel along the jet, m.

    Raises:
        InputError: No time to pierce such a plate is kept.
    """
    rows = table("cutting-pierces")
    if pierces and through > rows[-1].thickness * (1 + 1e-9):
        raise InputError(
            "pierces",
            "Pierced starts",
            f"no time is kept for piercing more than {rows[-1].thickness * 1000:.0f} mm (2 in); start at an "
            "edge, and give 0.",
        )
    thin = max(through, rows[0].thickness)
    least, most = (
        value_between([(row.thickness, getattr(row, end)) for row in rows], min(thin, rows[-1].thickness))
        for end in ("low", "high")
    )
    middle = (least * most) ** 0.5
    assert travel.value is not None
    taken = worked(
        steps, "Time of the cut", cut_time,
        length=length, speed=travel.value, pierces=pierces, pierce_time=middle,
    )  # fmt: skip
    pierced = " Piercing times are common practice." if pierces else ""
    return Figure(
        taken, "" if pierces else travel.source, "practice" if pierces else travel.how_sure,
        low=cut_time(length, travel.high or travel.value, pierces, least),
        high=cut_time(length, travel.low or travel.value, pierces, most),
        basis=f"Length over speed; lighting and warming the edge come on top.{pierced}",
    )  # fmt: skip


def slot(through: Length) -> Figure:
    """Width of the slot, m."""
    return cut_shape.kerf(through)


def lead_of(through: Length) -> Figure:
    """How far the torch leans from upright, rad."""
    return cut_shape.lead_angle(through)


def thin_sheet(rules: str) -> str:
    """What to do with sheet that is too thin for the cutting tables, as the end of a sentence.

    Args:
        rules: Rule set, for the units.
    """
    row = next(row for row in table("cutting-facts") if row.topic == "thin-lean")
    least = distance(cutting.LEAST_THICKNESS, rules, 3, "up")
    return (
        f"shear or saw thinner sheet, cut a clean stack of it clamped tight whose steel together is {least} or more, or, as a "
        f"textbook does, lean the smallest tip over to {row.number_low:g} to {row.number_high:g} degrees from the sheet"
    )


def drag_of(through: Length) -> Figure:
    """How far the bottom of a good cut lags at most, m."""
    return cut_shape.drag(through)


def iron(steps: list[Step], length: Length, through: Length, kerf: Figure) -> Figure:
    """Steel that leaves the slot, kg.

    Args:
        steps: Working.
        length: Of the cut, m.
        through: Steel along the jet, m.
        kerf: Width of the slot, m.
    """
    assert kerf.value is not None
    taken = worked(
        steps, "Steel out of the slot", slot_iron, length=length, thickness=through, kerf=kerf.value, density=STEEL
    )  # fmt: skip
    low, high = (slot_iron(length, through, end or kerf.value, STEEL) for end in (kerf.low, kerf.high))
    return Figure(
        taken, kerf.source, kerf.how_sure, low=low, high=high, basis="Kerf times thickness times length."
    )


def oxygen_needed(steps: list[Step], burnt: Figure) -> Figure:
    """Oxygen that burns the steel of the slot, m³: to Fe3O4, and to FeO as the least.

    Args:
        steps: Working.
        burnt: Steel out of the slot, kg.
    """
    assert burnt.value is not None
    taken = worked(
        steps,
        "Oxygen that burns it to Fe3O4",
        oxygen_for_iron,
        iron=burnt.value,
        oxygen_by_iron=TO_MAGNETITE,
    )
    unburned = next(row for row in table("cutting-facts") if row.topic == "unburned")
    least = oxygen_for_iron(burnt.low or burnt.value, TO_FERROUS_OXIDE) * (1 - unburned.number_high / 100)
    return Figure(
        taken, "definition", burnt.how_sure, low=least, high=oxygen_for_iron(burnt.high or burnt.value, TO_MAGNETITE),
        basis=f"All of it burned to Fe3O4; the kerf is from memory. The band begins where it burns to FeO and "
        f"{unburned.number_high:g} % leaves unburned, from memory.",
    )  # fmt: skip


def used(gas: Flows, burns: Figure) -> tuple[Figure, Figure]:
    """Oxygen and fuel gas for the cut, m³.

    Args:
        gas: Flows.
        burns: Time that the flame burns, s.
    """
    assert burns.value is not None

    def of(said: str, *figures: Figure) -> Figure:
        first = figures[0]
        value, low, high = (
            sum(getattr(each, end) or each.value or 0.0 for each in figures)
            for end in ("value", "low", "high")
        )
        return Figure(
            gas_of_use(value, burns.value or 0.0), first.source, first.how_sure,
            low=gas_of_use(low, burns.low or burns.value or 0.0), high=gas_of_use(high, burns.high or burns.value or 0.0),
            basis=said,
        )  # fmt: skip

    took = "Flow for the time of the cut"
    oxygen = of(f"{took}; the cutting oxygen counted all the while.", gas.jet, gas.flames)
    return oxygen, of(f"{took}.", gas.fuel)


def share(needed: Figure, jet: Figure, length: Length, travel: Figure) -> Figure:
    """Oxygen that the burning takes over what the jet gives on the way: a check of the two tables.

    Args:
        needed: For the iron, m³.
        jet: Cutting oxygen, m³/s.
        length: Of the cut, m.
        travel: Its speed, m/s.
    """
    assert needed.value is not None
    assert jet.value is not None
    assert travel.value is not None
    given = jet.value * length / travel.value
    return Figure(
        needed.value / given, jet.source, needed.how_sure, low=(needed.low or 0.0) / given, high=(needed.high or needed.value) / given,
        basis="A cut cannot burn more than the jet brings: near or above 100 % the flow is too small for the kerf and speed.",
    )  # fmt: skip


def fact(topic: str) -> Figure:
    """A printed fact of cutting with its ends as the band, the middle taken."""
    row = next(row for row in table("cutting-facts") if row.topic == topic)
    low, high = to_si(row.number_low, row.unit), to_si(row.number_high, row.unit)
    return Figure(
        (low + high) / 2, row.source, row.how_sure, low=low, high=high, basis=f"{row.words.capitalize()}."
    )


def kindling() -> Figure:
    """Heat at which steel begins to burn in oxygen, K: the upper figure, with what sources print."""
    rows = [row for row in table("cutting-facts") if row.topic == "kindling"]
    ends = [to_si(end, row.unit) for row in rows for end in (row.number_low, row.number_high)]
    followed = max(
        rows, key=lambda row: to_si(row.number_high, row.unit) if row.how_sure == "memory" else 0.0
    )
    return Figure(
        to_si(followed.number_high, followed.unit), followed.source, followed.how_sure, low=min(ends), high=max(ends),
        basis="Bright red to orange. Sources print 700 to 900 °C; the figure near the upper end is taken, so that it starts.",
    )  # fmt: skip
