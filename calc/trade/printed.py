"""Figures of a rule table as they stand in print, with source and how sure."""

from typing import Any

from calc.answer.sentences import distance, duration
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Table
from calc.formulas.setup.ruled import amount
from calc.show.scales import scale
from calc.trade.safety.surroundings import OWN
from calc.values.numbers import plain_number
from calc.values.units import from_si, written

_METRIC = {"ft/min": "m/min", "ft^3/min": "m^3/min"}


def _told(row: Any, rules: str) -> str:
    if row.unit == "ft^3":
        return scale("contents", rules).said(amount(row, free_gas=True))
    if row.unit == "lb":
        return scale("mass", rules).said(amount(row))
    if row.unit in ("min", "h"):
        return duration(amount(row))
    if row.unit in ("ft", "in"):
        return distance(amount(row), rules, 4)
    if row.unit in _METRIC:
        unit = row.unit if rules == "us" else _METRIC[row.unit]
        return f"{plain_number(from_si(amount(row), unit), 3)} {written(unit)}"
    return f"{plain_number(row.number)} {written(row.unit)}".strip()


def printed_figures(names: tuple[str, ...], rules: str, rooms: tuple[str, ...] = ()) -> Table:
    """Every row of some rule tables, whichever rule set it belongs to.

    Args:
        names: Tables with the columns `topic`, `rules`, `number`, `unit` and `words`.
        rules: Rule set, for the units.
        rooms: Topics whose cubic feet are a room's, not gas.
    """
    rows = []
    for row in (row for name in names for row in table(name)):
        if row.topic in rooms:
            unit = "ft^3" if rules == "us" else "m^3"
            told = f"{plain_number(from_si(amount(row), unit), 3)} {written(unit)}"
        else:
            told = _told(row, rules)
        whose = f"{OWN[row.rules]}: {source_words(row.source)}, {HOW_SURE[row.how_sure]}"
        rows.append((row.topic.replace("-", " "), told, row.words, whose.replace(": ,", ":")))
    return Table("Figures in print", ("What", "Figure", "", "Source"), tuple(rows))
