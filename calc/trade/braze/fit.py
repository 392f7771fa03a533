"""Fit of a brazed joint: the gap cold and hot, the overlap, and the filler it takes."""

from dataclasses import dataclass
from typing import Any

from calc.answer.sentences import distance
from calc.ask.errors import InputError
from calc.data.tables import table
from calc.declare import Figure, Step, worked
from calc.formulas.setup.brazing import (
    cold_clearance,
    flat_strength_overlap,
    hot_clearance,
    lap_filler,
    largest_socket,
    sleeve_filler,
    tube_strength_overlap,
    usual_overlap,
)
from calc.formulas.setup.tube import filler_mass, wire_length
from calc.values.quantities import Density, Expansion, Length, Stress, Temperature
from calc.values.units import to_si

COLD: Temperature = to_si(20.0, "degC")
"""What a bench counts as cold; common practice."""
FILLED = 2 / 3
"""Part of a brazed joint that a handbook counts as filled [cda-copper-tube]."""
LESS = 1.25
"""An overlap by this much shorter is still made where the sum for strength agrees with the rule; common practice."""
SHORT_OVERLAP: Length = to_si(0.25, "in")
"""Below it aluminium wants the tighter gap [aws-brazing-handbook], from memory."""
GROWTH = (
    "Growth from textbook figures for 20 to 300 °C, from memory; near brazing heat metals grow faster, so the sum "
    "is a guide. Both parts taken as hot alike and centered."
)
LABELS = {
    "thickness": "Thickness of the thinner part",
    "diameter": "Diameter of the joint",
    "cold_clearance": "Gap you have, cold, on each side",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """Gap that a filler wants when hot: the printed band, and what is aimed at."""

    least: Length
    most: Length
    aim: Length
    source: str
    how_sure: str
    opens: bool


@dataclass(frozen=True, slots=True)
class Fit:
    """Two parts on the way to brazing heat.

    Attributes:
        diameter: Of a round joint, m; None for a flat lap.
        outer: Growth of the outside part, 1/K.
        inner: Growth of the inside part, 1/K.
        coolest: Lower end of the brazing range, K.
        hottest: Upper end, K.
    """

    diameter: Length | None
    outer: Expansion
    inner: Expansion
    coolest: Temperature
    hottest: Temperature

    @property
    def rises(self) -> tuple[float, float, float]:
        """From cold to the lower end, the middle and the upper end of the range, K."""
        ends = self.coolest - COLD, self.hottest - COLD
        return ends[0], sum(ends) / 2, ends[1]

    def hot(self, cold: Length) -> tuple[Length, Length, Length]:
        """Gap when hot, from a cold one: least, at the middle of the range, most, m."""
        if self.diameter is None:
            return cold, cold, cold
        gaps = [hot_clearance(cold, self.diameter, self.outer, self.inner, rise) for rise in self.rises]
        return min(gaps), gaps[1], max(gaps)

    def cold(self, hot: Length) -> Length:
        """Gap to make when cold, for one wanted at the middle of the range, m."""
        if self.diameter is None:
            return hot
        return cold_clearance(hot, self.diameter, self.outer, self.inner, self.rises[1])


def expansion_of(metal: str) -> Expansion:
    """Growth of a metal for each degree, 1/K.

    Examples:
        >>> round(expansion_of("copper") * 1e6, 1)
        16.8
    """
    return float(next(row.expansion for row in table("expansions-textbook") if row.id == metal))


def strength(part: str, name: str) -> Stress:
    """Strength of a `metal in tension`, or of a `filler in shear`, Pa."""
    rows = (row for row in table("brazing-strengths") if row.part == part)
    return float(next(row.strength for row in rows if row.name.replace(" ", "-") == name))


def rule(topic: str) -> Any:
    """Row of `brazing-rules`."""
    return next(row for row in table("brazing-rules") if row.topic == topic)


def gap_wanted(family: str, overlap: Length, fit: Fit, rules: str) -> Gap:
    """Gap that the filler wants, and what to aim at with these parts.

    Args:
        family: Of the filler.
        overlap: m.
        fit: The two parts.
        rules: Rule set, for the lengths in a message.

    Raises:
        InputError: The parts open so far when hot that no cold gap is left to make.
    """
    rows = [r for r in table("brazing-clearances") if r.family == family and r.standing == "followed"]
    row = rows[0] if overlap < SHORT_OVERLAP or len(rows) == 1 else rows[1]
    touching = fit.hot(0.0)[1]
    if touching >= row.most * (1 - 1e-9):
        assert fit.diameter is not None
        largest = largest_socket(row.most, fit.outer - fit.inner, fit.rises[1])
        raise InputError(
            "diameter",
            LABELS['diameter'], f"even parts that touch when cold stand {distance(touching, rules)} apart on each "
            "side when hot, more than the filler bridges; put the metal that grows more inside, or give less than "
            f"{distance(largest, rules, 2, 'down')}.",
        )
    least = max(row.least, touching)
    return Gap(least=row.least, most=row.most, aim=(least + row.most) / 2, source=row.source, how_sure=row.how_sure, opens=touching > row.least)


def wanted_figure(gap: Gap, round_joint: bool) -> Figure:
    """The gap wanted at brazing heat, with the printed band."""
    moved = (
        " Aimed at its upper part here, as parts that touch when cold already stand apart when hot."
        if gap.opens
        else " The middle is aimed at."
    )
    return Figure(
        gap.aim, gap.source, gap.how_sure, low=gap.least, high=gap.most,
        basis=f"Printed band of the filler at brazing heat, torch and flux.{moved}",
        words="on each side" if round_joint else "",
    )  # fmt: skip


def cold_figure(steps: list[Step], fit: Fit, gap: Gap) -> Figure:
    """The gap to make when cold, so that the wanted one is left when hot."""
    if fit.diameter is None:
        return Figure(
            gap.aim, gap.source, gap.how_sure, low=gap.least, high=gap.most,
            basis="A flat lap keeps its gap when it gets hot. A few scratches or shims of wire hold the sheets apart.",
        )  # fmt: skip
    value = worked(
        steps, "Gap to make when cold, on each side", cold_clearance, hot_gap=gap.aim, diameter=fit.diameter,
        outer_expansion=fit.outer, inner_expansion=fit.inner, rise=fit.rises[1],
    )  # fmt: skip
    return Figure(
        value, "definition", "memory", low=max(fit.cold(gap.least), 0.0), high=fit.cold(gap.most),
        basis=f"For the middle of the brazing range. The bore is larger than the part inside by twice this. {GROWTH}",
        words="on each side",
    )  # fmt: skip


def hot_figure(steps: list[Step], fit: Fit, gap: Gap, given: Length | None, rules: str) -> Figure | None:
    """The reader's own gap at brazing heat; None where none was given.

    Raises:
        InputError: Nothing is left of it when hot.
    """
    if given is None:
        return None
    least, value, most = fit.hot(given)
    if least <= 0.0:
        low, high = max(fit.cold(gap.least), 0.0), fit.cold(gap.most)
        why = (
            "two sheets that touch leave no way for the filler"
            if fit.diameter is None
            else "it closes to nothing when hot, and no filler gets in"
        )
        raise InputError(
            "cold_clearance",
            LABELS['cold_clearance'], f"{why}; give {distance(low, rules)} to {distance(high, rules)}.",
        )
    if fit.diameter is None:
        return Figure(value, "", "practice", basis="As you gave it: a flat lap keeps its gap when hot.")
    worked(
        steps, "Your gap when hot, on each side", hot_clearance, clearance=given, diameter=fit.diameter,
        outer_expansion=fit.outer, inner_expansion=fit.inner, rise=fit.rises[1],
    )  # fmt: skip
    return Figure(
        value, "definition", "memory", low=least, high=most,
        basis=f"From 20 °C (68 °F) to the middle of the brazing range; the band holds its ends. {GROWTH}",
        words="on each side",
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class Lap:
    """Overlap of a joint."""

    overlap: Figure
    strength: Figure


def lap_of(
    *,
    steps: list[Step], metals: tuple[str, str], family: str, thickness: Length, diameter: Length | None,
    service: str, given: Length | None,
) -> Lap:  # fmt: skip
    """Overlap by the rule of thumb and by strength.

    Args:
        steps: Working, which is added to.
        metals: Ids of both.
        family: Of the filler.
        thickness: Of the thinner part, m.
        diameter: Of a round joint, m; None for a flat lap.
        service: Use of the joint; one that carries a load takes a margin.
        given: The reader's own overlap, m.

    Raises:
        InputError: The wall is thicker than half the diameter.
    """
    if diameter is not None and thickness > diameter / 2 * (1 + 1e-9):
        raise InputError(
            "thickness",
            LABELS['thickness'], "a wall cannot be thicker than half the diameter; for a solid pin give half its "
            "diameter, or less where the socket is thinner.",
        )
    tensile = max(strength("metal in tension", metal) for metal in metals)
    shear = strength("filler in shear", family)
    says = "Overlap as strong as the part, without margin"
    if diameter is None:
        bare = worked(steps, says, flat_strength_overlap, tensile=tensile, thickness=thickness, shear=shear)
    else:
        bare = worked(
            steps, says, tube_strength_overlap,
            thickness=thickness, diameter=diameter, tensile=tensile, shear=shear,
        )  # fmt: skip
    times, load = rule("overlap"), rule("load")
    usual = worked(
        steps, "Overlap by the rule of thumb", usual_overlap, times=times.taken, thickness=thickness
    )
    loaded = service == "load"
    strong = bare * load.taken if loaded else bare
    unlike = (
        " The stronger metal is counted, as either may be the thin part." if metals[0] != metals[1] else ""
    )
    strength_figure = Figure(
        strong, "aws-brazing-handbook", "memory", low=bare if loaded else None, high=bare * load.high if loaded else None,
        basis="Tensile strength times thickness over the filler's shear strength, nominal figures. No margin; where "
        f"a joint carries a load four to five times as much is asked for.{unlike}",
    )  # fmt: skip
    if given is not None:
        overlap = Figure(given, "", "practice", basis="As you gave it.")
    else:
        longest = max(usual, strong)
        overlap = Figure(
            longest, times.source, times.how_sure, low=min(usual, bare) if bare != usual else usual / LESS,
            high=max(usual_overlap(times.high, thickness), longest * times.high / times.taken),
            basis="Three times the thinner part, or the sum for strength where that is more; other books say three to four. The band "
            "begins at the lesser of the two.",
        )  # fmt: skip
    return Lap(overlap, strength_figure)


@dataclass(frozen=True, slots=True)
class Taken:
    """Filler that a joint takes."""

    volume: Figure
    length: Figure
    mass: Figure


def density_of(family: str) -> Any:
    """Row of `brazing-densities`."""
    return next(row for row in table("brazing-densities") if row.family == family)


def filler_of(
    *,
    steps: list[Step], fit: Fit, gap: Length, width: Length | None, overlap: Length, family: str,
    joints: float, wire: Length,
) -> Taken:  # fmt: skip
    """Filler for the gap of one joint, and wire and mass for all of them.

    Args:
        steps: Working, which is added to.
        fit: The two parts.
        gap: At brazing heat, m.
        width: Of a flat lap along its seam, m.
        overlap: m.
        family: Of the filler.
        joints: How many.
        wire: Diameter of the filler wire, m.
    """
    says = "Filler that the gap of one joint takes"
    if fit.diameter is not None:
        volume = worked(steps, says, sleeve_filler, diameter=fit.diameter, hot_gap=gap, overlap=overlap)
    else:
        assert width is not None
        volume = worked(steps, says, lap_filler, width=width, hot_gap=gap, overlap=overlap)
    length = worked(
        steps, "Wire for all the joints", wire_length, filler=volume * joints, diameter=wire
    )
    row = density_of(family)
    density: Density = row.density
    mass = worked(steps, "Mass of it", filler_mass, filler=volume * joints, density=density)
    most = rule("use").high
    basis = (
        "The gap at brazing heat filled through, no fillet. Real use is two to three times that, says a handbook on "
        "copper tube: the band runs to three, and begins where two thirds of the joint are filled, as that handbook counts."
    )
    return Taken(
        Figure(volume, "cda-copper-tube", "computed", low=volume * FILLED, high=volume * most, basis=basis),
        Figure(length, "cda-copper-tube", "computed", low=length * FILLED, high=length * most, basis=basis),
        Figure(
            mass, row.source, row.how_sure, low=mass * FILLED * row.low / density, high=mass * most * row.high / density,
            basis=f"{basis} Density of the family, not of the one filler.",
        ),
    )  # fmt: skip
