"""What each rule asks of a steel before it is welded, so that the headline follows its own rows."""

from dataclasses import dataclass
from typing import Any

from calc.answer.sentences import degrees
from calc.data.tables import table
from calc.formulas.setup.printed import value_between
from calc.values.figures import Figure
from calc.values.quantities import Length, Ratio, Temperature
from calc.values.units import to_si

LEAST_PREHEAT: Temperature = to_si(20.0, "degC")
"""A warm bench: a rule that asks no more asks nothing."""
HARDEST: Ratio = 0.01
"""Carbon equivalent at which the warmest figure of the bench is taken; common practice."""
STEELS = ("steel up to 0.20 % carbon", "steel 0.20-0.30 % carbon", "steel 0.30-0.45 % carbon", "steel 0.45-0.80 % carbon")
ENDS: tuple[Ratio, ...] = (0.002, 0.003, 0.0045)
"""Carbon up to which each row of `STEELS` but the last holds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What one rule asks.

    Attributes:
        name: Of the rule, in a sentence.
        coldest: Least that it asks, K; a warm bench where it asks nothing.
        hottest: Upper end of its figure, K.
        by_thickness: Whether it counts how thick the steel is.
        source: As in a table.
        how_sure: Grade.
    """

    name: str
    coldest: Temperature
    hottest: Temperature
    by_thickness: bool
    source: str
    how_sure: str


def heat_treatable() -> Any:
    """Row of the preheat table for aluminum alloys that lose their strength when they get hotter."""
    return next(row for row in table("preheat-by-metal") if row.metal == "aluminium, heat-treatable")


def alloy_limit(rules: str) -> str:
    """What those alloys may be warmed to, for a sentence beside the figure of other aluminum.

    Args:
        rules: Rule set, for the unit.

    Examples:
        >>> alloy_limit("us")
        'heat-treatable alloys 248 °F at most'
    """
    return f"heat-treatable alloys {degrees(heat_treatable().high, rules)} at most"


def by_carbon_equivalent(equivalent: Ratio) -> tuple[Temperature, Temperature]:
    """Preheat of the bench by carbon equivalent, K: the figure, and the upper end of its row.

    Args:
        equivalent: Of the IIW, a share.

    Examples:
        >>> [round(end - 273.15) for end in by_carbon_equivalent(0.005)]
        [150, 200]
    """
    _, first, last = table("preheat-by-carbon-equivalent")
    if equivalent < first.low:
        return LEAST_PREHEAT, LEAST_PREHEAT
    points = [
        (first.low, first.coldest), (first.high, first.hottest), (HARDEST, last.hottest), (1.0, last.hottest)
    ]  # fmt: skip
    row = first if equivalent < first.high else last
    return value_between(points, equivalent), row.hottest


def asked_of_steel(
    carbon: Ratio, equivalent: Ratio, method_b: Figure, thickness: Length
) -> tuple[Asked, ...]:
    """Every rule that has a figure for a steel.

    Args:
        carbon: A share.
        equivalent: Carbon equivalent of the IIW, a share.
        method_b: Preheat by EN 1011-2 method B; without a value where it asks nothing.
        thickness: Of the thicker piece, m.

    Returns:
        Those by carbon first. AWS D1.1 is for its own list of structural steels: where
        the carbon equivalent asks for preheat and method B does not reach, it does not lead.
    """
    warm = LEAST_PREHEAT
    least, most = by_carbon_equivalent(equivalent)
    found = [Asked(name="the carbon equivalent", coldest=least, hottest=most, by_thickness=False, source="", how_sure="practice")]
    name = STEELS[sum(carbon > end * (1 + 1e-9) for end in ENDS)]
    row = next(row for row in table("preheat-by-metal") if row.metal == name)
    found.append(
        Asked(name=f"the manuals for {name}", coldest=row.low or warm, hottest=row.high, by_thickness=False, source=row.source, how_sure=row.how_sure)
    )
    b = method_b.value or (warm if "above" in method_b.words else None)
    if b is not None:
        found.append(Asked(name="method B of EN 1011-2", coldest=b, hottest=b, by_thickness=True, source=method_b.source, how_sure=method_b.how_sure))
    rows = table("preheat-aws-d1-1")
    if thickness >= rows[0].over * (1 - 1e-9):
        d1 = next(r for r in rows if r.up_to is None or thickness <= r.up_to * (1 + 1e-9))
        ends = max(d1.low_hydrogen, warm), max(d1.other, warm)
        known = b is not None or least <= warm
        found.append(Asked(name="AWS D1.1 by thickness", coldest=ends[0], hottest=ends[1], by_thickness=known, source=d1.source, how_sure=d1.how_sure))
    return tuple(found)
