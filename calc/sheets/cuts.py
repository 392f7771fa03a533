"""What a cut in steel takes: flows and speed with impure oxygen, time, iron, and what it warns of."""

from dataclasses import dataclass, replace
from typing import Any

from calc.declare import Caution, Step, Table, worked
from calc.errors import InputError
from calc.figures import Figure
from calc.formulas.gas.supply import gas_of_use
from calc.formulas.setup import cutting
from calc.formulas.setup.cut_gas import (
    TO_FERROUS_OXIDE,
    TO_MAGNETITE,
    cut_time,
    oxygen_for_iron,
    purity_factor,
    slot_iron,
)
from calc.formulas.setup.printed import value_between
from calc.quantities import Density, Length, Ratio
from calc.sheets.flame_settings import oxygen_of
from calc.sheets.hot_metal import metal_of
from calc.sheets.said import distance
from calc.tables import HOW_SURE, source_words, table
from calc.units import to_si

METALS = {row.metal: row.name for row in table("cutting-metals")}
"""Metals that people hold under a cutting torch, by id."""
STEEL: Density = metal_of("low-carbon-steel").density


def _metal(metal: str) -> Any:
    return next((row for row in table("cutting-metals") if row.metal == metal), None)


def hold(metal: str, through: Length, rules: str) -> None:
    """Refuse what oxygen does not cut, and steel outside the tables.

    Args:
        metal: Id of the metal.
        through: Steel along the jet, m.
        rules: Rule set, for the units.

    Raises:
        InputError: The metal or the thickness is refused.
    """
    row = _metal(metal) or _metal("unknown")
    if row.cuts == "no":
        named = "a metal that nobody knows" if row.metal == "unknown" else row.name.lower()
        raise InputError("metal", f"Metal: {named} is not cut so: {row.why}; {row.instead}.")
    thickest = table("cutting-kerfs")[-1].thickness
    if not cutting.LEAST_THICKNESS * (1 - 1e-9) <= through <= thickest * (1 + 1e-9):
        least = distance(cutting.LEAST_THICKNESS, rules, 3, "up")
        most = distance(thickest, rules, 3, "down")
        raise InputError(
            "thickness",
            f"Thickness of the metal: the jet goes through {distance(through, rules, 3)} of steel, and the cutting tables "
            f"run from {least} to {most}; give a plate, bevel or stack between them.",
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
    further = lost > 1.0 + 1e-9
    ours = (
        " The sources name the first point only; that each further one does the same is ours."
        if further
        else ""
    )
    return Figure(
        figure.value * taken, "" if further else figure.source, "practice" if further else figure.how_sure,
        (figure.low or figure.value) * min(factors), (figure.high or figure.value) * max(factors),
        f"{figure.basis} {said}: {source_words(followed.source)}; the band holds the other source.{ours}",
    )  # fmt: skip


def flows(through: Length, fuel: str, purity: Ratio) -> Flows:
    """Gas that a cut takes while it runs.

    Args:
        through: Steel along the jet, m.
        fuel: Id of the fuel gas.
        purity: Of the oxygen, a share.

    Raises:
        ValueError: Nothing is printed for the fuel or the thickness.
    """
    fuel_flow = cutting.preheat_fuel_flow(through, fuel)
    jet = cutting.cutting_oxygen_flow(through)
    said = "A quarter more for each point of purity lost"
    flames = replace(oxygen_of(fuel, fuel_flow), source=fuel_flow.source, how_sure=fuel_flow.how_sure)
    return Flows(_by_point(jet, "oxygen-by-point", purity, said), flames, fuel_flow)


def speed(through: Length, purity: Ratio) -> Figure:
    """Travel speed, m/s, slower with impure oxygen.

    Args:
        through: Steel along the jet, m.
        purity: Of the oxygen, a share.
    """
    return _by_point(
        cutting.cutting_speed(through),
        "speed-by-point",
        purity,
        "15 % slower for each point of purity lost",
    )


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
            f"Pierced starts: no time is kept for piercing more than {rows[-1].thickness * 1000:.0f} mm (2 in); start at an "
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
        cut_time(length, travel.high or travel.value, pierces, least),
        cut_time(length, travel.low or travel.value, pierces, most),
        f"Length over speed; lighting and warming the edge come on top.{pierced}",
    )  # fmt: skip


def slot(through: Length) -> Figure:
    """Width of the slot, m."""
    return cutting.kerf(through)


def drag_of(through: Length) -> Figure:
    """How far the bottom of a good cut lags at most, m."""
    return cutting.drag(through)


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
    return Figure(taken, kerf.source, kerf.how_sure, low, high, "Kerf times thickness times length.")


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
        taken, "definition", burnt.how_sure, least, oxygen_for_iron(burnt.high or burnt.value, TO_MAGNETITE),
        "All of it burnt to Fe3O4, of a kerf from memory. The band begins where it burns to FeO and 40 % leaves unburnt.",
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
            gas_of_use(low, burns.low or burns.value or 0.0), gas_of_use(high, burns.high or burns.value or 0.0),
            said,
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
        needed.value / given, jet.source, jet.how_sure, (needed.low or 0.0) / given, (needed.high or needed.value) / given,
        "A cut cannot burn more than the jet brings: near or above 100 % the flow is too small for the kerf and speed.",
    )  # fmt: skip


def fact(topic: str) -> Figure:
    """A printed fact of cutting with its ends as the band, the middle taken."""
    row = next(row for row in table("cutting-facts") if row.topic == topic)
    low, high = to_si(row.number_low, row.unit), to_si(row.number_high, row.unit)
    return Figure((low + high) / 2, row.source, row.how_sure, low, high, f"{row.words.capitalize()}.")


def kindling() -> Figure:
    """Heat at which steel begins to burn in oxygen, K: the upper figure, with what sources print."""
    rows = [row for row in table("cutting-facts") if row.topic == "kindling"]
    ends = [to_si(end, row.unit) for row in rows for end in (row.number_low, row.number_high)]
    followed = max(
        rows, key=lambda row: to_si(row.number_high, row.unit) if row.how_sure == "memory" else 0.0
    )
    return Figure(
        to_si(followed.number_high, followed.unit), followed.source, followed.how_sure, min(ends), max(ends),
        "Bright red to orange. Sources print 700 to 900 °C; the figure near the upper end is taken, so that it starts.",
    )  # fmt: skip


def edges_table() -> Table:
    """What the edge looks like, why, and what to do."""
    rows = tuple((row.name, row.looks, row.cause, row.cure) for row in table("cutting-edges"))
    return Table("What the cut tells", ("What", "How it looks", "Why", "Do"), rows, "All from memory.")


def purity_table() -> Table:
    """What a point of purity costs, by source."""
    rows = tuple(
        (
            {"speed-by-point": "Speed", "oxygen-by-point": "Oxygen"}[row.topic],
            f"{100 * (row.number_low - 1):+.0f} %",
            f"{source_words(row.source)}, {HOW_SURE[row.how_sure]}",
        )
        for row in table("cutting-facts")
        if row.topic in ("speed-by-point", "oxygen-by-point")
    )
    return Table(
        "One point of purity lost", ("What", "Change", "Source"), rows,
        "The sources disagree on the speed: 15 % is followed, because it was read.",
    )  # fmt: skip


def cautions(metal: str, shape: str) -> tuple[Caution, ...]:
    """Hazards of cutting, the gravest first.

    Args:
        metal: Id of the metal.
        shape: `straight`, `bevel` or `stack`.
    """
    found = [
        Caution(
            "DANGER",
            "A drum, tank, tube or anything shut or once filled bursts or explodes under a cutting torch and will kill, "
            "whatever it held. Do not cut it; ask at “May I heat this?”.",
            "cfr1910-252 (a)(3)",
        ),
        Caution(
            "WARNING",
            "Cutting throws sparks and molten slag far, through gaps and down shafts: they start fires out of sight. Clear "
            "the distance, cover what stays, catch the slag in dry sand, post a watch.",
            "cfr1910-252 (a)(2)",
        ),
        Caution(
            "WARNING",
            "Concrete under the cut spalls: its moisture turns to steam and hot chips fly into eyes. Cut over sand, steel or "
            "firebrick.",
        ),
        Caution(
            "CAUTION",
            "The piece falls when it is cut through and is hot for long: it crushes feet and burns. Support both sides, stand "
            "clear, write HOT on it.",
        ),
    ]  # fmt: skip
    if shape == "stack":
        found.append(
            Caution(
                "NOTICE",
                "A gap in the stack stops the cut. Clean the sheets and clamp them tight all along.",
            )
        )
    row = _metal(metal)
    if row.cuts == "warm":
        found.append(Caution("NOTICE", f"This steel: {row.why}. {row.instead.capitalize()}."))
    return tuple(found)
