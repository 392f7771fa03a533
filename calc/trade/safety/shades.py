"""Filter shades of every process side by side, as the rules print them."""

from typing import Any

from calc.data.tables import source_words, table
from calc.declare import Table
from calc.values.numbers import plain_number

_NAMES = {
    "soldering": "torch soldering",
    "brazing": "torch brazing",
    "welding": "gas welding",
    "cutting": "oxygen cutting",
}


def helper_row(work: str) -> Any:
    """Row of the shades beside the main ones: `helper`, `light-cutting` or `carbon-arc`."""
    return next(row for row in table("shades-helpers") if row.work == work)


def every_shade() -> Table:
    """United States minimum and guide by thickness, EN 169 by flow."""
    rows = []
    for least, guide in zip(table("shades-us-minimum"), table("shades-us-guide"), strict=True):
        # The two tables are printed with the same processes and thicknesses, in one order.
        guided = (
            f"{guide.lightest:g}"
            if guide.lightest == guide.darkest
            else f"{guide.lightest:g} to {guide.darkest:g}"
        )
        name = _NAMES[least.process]
        size = "" if least.printed == name else f", {least.printed}"
        rows.append((f"{name}{size}", f"{least.shade:g} at least", guided, "United States"))
    rows += [
        (
            f"{_NAMES[row.process]}, {row.printed}",
            plain_number(row.shade),
            f"{row.shade - row.step:g} to {row.shade + row.step:g}",
            "EN 169",
        )
        for row in table("shades-en169-2002")
    ]
    rows += [
        (
            row.words,
            f"{row.lightest:g} to {row.darkest:g}" if row.lightest < row.darkest else f"{row.darkest:g}",
            "",
            source_words(row.source),
        )
        for row in table("shades-helpers")
    ]
    return Table(
        "Every shade in print",
        ("Work", "Shade", "Guide", "Rule"),
        tuple(rows),
        "EN 169 is meant for eyes half a metre from the work and about 100 lx; one shade either way for posture and light. "
        "EN ISO 16321 is taking its place (from memory).",
    )
