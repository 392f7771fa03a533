"""Formulas as mathematics: made at build time from the code that computes.

`data/formulas.json` holds MathML by formula name, written by
`site_overrides.build.formulas` and checked by a test. A name that is not in it
is printed as a name.
"""

import json
from functools import cache
from html import escape
from importlib.resources import files

from calc.data.tables import table
from calc.values.units import WRITTEN


@cache
def _mathml() -> dict[str, str]:
    made = files("calc").joinpath("data/formulas.json")
    if not made.is_file():
        return {}
    found: dict[str, str] = json.loads(made.read_text(encoding="utf-8"))
    return found


@cache
def _symbols() -> dict[str, str]:
    return {row.name: row.symbol for row in table("nomenclature-benchbook-2026")}


def unit_text(unit: str) -> str:
    """A unit of the working as it is printed.

    Examples:
        >>> unit_text("m**3"), unit_text("W/(m**2*K)"), unit_text("pascal")
        ('m³', 'W/(m²·K)', 'Pa')
    """
    return (
        WRITTEN.get(unit, unit)
        .replace("**3", "³")
        .replace("**2", "²")
        .replace("pascal", "Pa")
        .replace("*", "·")
    )


def symbol_html(name: str) -> str:
    """Symbol of a quantity, by the name it has in a signature.

    Args:
        name: Such as `water_volume`.

    Returns:
        HTML with a subscript where the symbol has one; the name in words where
        the nomenclature has no symbol.

    Examples:
        >>> symbol_html("water_volume")
        '<i>V</i><sub>w</sub>'
    """
    symbol = _symbols().get(name)
    if symbol is None:
        return escape(name.replace("_", " "))
    letter, _, below = symbol.partition("_")
    return f"<i>{escape(letter)}</i>" + (f"<sub>{escape(below)}</sub>" if below else "")


def formula_html(name: str) -> str:
    """A formula as MathML, by its function's name; its words where none was made."""
    made = _mathml().get(name)
    if made is None:
        return f"<p>{escape(name.replace('_', ' '))}</p>"
    return f'<div class="bb-formula" tabindex="0" role="group" aria-label="Formula">{made}</div>'
