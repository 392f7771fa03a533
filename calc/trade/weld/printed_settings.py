"""What sources print for a joint's thickness, side by side."""

from typing import Any

from calc.answer.sentences import distance
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Table
from calc.values.numbers import plain_number
from calc.values.quantities import Length
from calc.values.units import from_si

_HANDS = {
    "leftward": ("forehand", "leftward"),
    "rightward": ("backhand", "rightward"),
    "any": ("any", "any"),
}


def _range(low: Length | None, high: Length | None, rules: str) -> str:
    if low is None:
        return f"to {distance(high or 0.0, rules)}"
    return (
        f"from {distance(low, rules)}"
        if high is None
        else f"{distance(low, rules)} to {distance(high, rules)}"
    )


def _holds(row: Any, thickness: Length) -> bool:
    low, high = row.thinnest or 0.0, row.thickest or 1.0
    return bool(low * (1 - 1e-9) <= thickness <= high * (1 + 1e-9))


def _edge(row: Any, rules: str) -> str:
    parts = [row.edge]
    if row.included_angle is not None and "degrees" not in row.edge:
        parts.append(f"{plain_number(from_si(row.included_angle, 'deg'))}° between the edges")
    if row.widest_gap is not None:
        parts.append(f"gap to {distance(row.widest_gap, rules)}")
    if row.largest_root_face is not None:
        parts.append(f"root face to {distance(row.largest_root_face, rules)}")
    return ", ".join(parts)


def edges_in_print(thickness: Length, rules: str) -> Table:
    """Edges and technique that sources print for steel of a thickness.

    Args:
        thickness: m.
        rules: Rule set, for units and words.
    """
    place = 0 if rules == "us" else 1
    rows = [
        (
            _range(row.thinnest, row.thickest, rules),
            _edge(row, rules),
            _HANDS[row.technique][place],
            _whose(row),
        )
        for row in table("techniques")
        if _holds(row, thickness)
    ]
    near = min(table("welding-carvill-1993"), key=lambda row: abs(row.thickness - thickness))
    gap = "" if near.least_gap is None else f", gap {_range(near.least_gap, near.largest_gap, rules)}"
    rows.append(
        (distance(near.thickness, rules), f"{near.edge}{gap}", _HANDS[near.technique][place], _whose(near))
    )
    return Table(
        "Edges in print for this thickness, steel",
        ("Thickness", "Edges", "Technique", "Source"),
        tuple(rows),
        "They differ, and the limits of this page follow the strictest that could be read.",
    )


def _whose(row: Any) -> str:
    return ", ".join(part for part in (source_words(row.source), HOW_SURE[row.how_sure]) if part)
