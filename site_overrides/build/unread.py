"""What rests on memory or practice: every such row of the tables, those that can hurt somebody first.

Made from the tables, so a row that is read and graded up leaves the page by itself.
"""

import csv
from collections.abc import Callable
from html import escape
from importlib.resources import files

from calc.data.tables import HOW_SURE, source_words, table
from calc.data.texts import BRACES, UnknownIdError
from calc.declare import RULE_SETS
from calc.values.units import written

UNREAD = ("memory", "practice")
SAFETY = (
    "first-acts-benchbook-2026", "emergency-acts", "hazards", "gate-reasons", "lighting-rules", "purges",
    "valve-openings", "upright-waits", "acetylene-limits", "withdrawal-limits", "cylinder-temperatures",
    "inspection-checks", "inspection-intervals", "hose-rules", "hose-colours", "fuel-equipment", "storage",
    "storage-rules", "clear-distances", "fire-watches", "hot-work-measures", "job-hazards", "air-limits",
    "explosion-limits", "exposure-limits", "ventilation", "hoods", "fume-hazards", "fume-measures", "lead-limits",
    "shades-us-minimum", "shades-us-guide", "shades-en169-2002", "shades-helpers", "flammable-limits", "fuel-limits", "fuel-limits-in-oxygen",
    "cutting-metals", "brazing-nevers", "brazing-refusals", "tube-services", "heat-marks", "flame-straightening",
    "wall-materials", "oxygen-full-gauges", "licence-questions-benchbook-2026", "figures-benchbook-2026",
    "figures-by-rules",
)  # fmt: skip
"""Tables whose rows bear on somebody's safety, the nearest to harm first."""
OWN = (
    "colour-tints", "curricula-benchbook-2026", "exercise-faults-benchbook-2026", "exercise-marks-benchbook-2026",
    "exercises-benchbook-2026", "introduction-benchbook-2026", "nomenclature-benchbook-2026",
    "planter-parts-benchbook-2026", "practice-calculators-benchbook-2026", "staged-faults-benchbook-2026",
)  # fmt: skip
"""Tables that are this site's own text or choice; nothing of them could be read elsewhere."""
_QUIET = ("rules", "standing", "source", "how_sure", "gravity", "rank", "minutes", "signal", "hazards", "wrong_1",
          "wrong_2", "wrong_3", "page", "brought_by")  # fmt: skip
_TITLES = {
    "hazards": "What cautions say", "gate-reasons": "May I heat this?", "figures-benchbook-2026": "Figures in the text",
    "figures-by-rules": "Figures by rule set", "licence-questions-benchbook-2026": "Questions of the licence",
    "lighting-rules": "Rules of lighting", "storage": "Figures of storage", "first-acts-benchbook-2026": "First acts",
    "shades-en169-2002": "Shades by flow", "disagreements-benchbook-2026": "Where the books disagree",
    "heat-marks": "What heat does to a metal", "exposure-limits": "Limits of what is breathed",
}  # fmt: skip

Fill = Callable[[str], str]
TableMaker = Callable[[str, list[str], list[list[str]]], str]


def names() -> list[str]:
    """Every table of the data, those that bear on safety first, in the order of harm."""
    found = {path.name.removesuffix(".csv") for path in files("calc").joinpath("data").iterdir()
             if path.name.endswith(".csv")}  # fmt: skip
    first = [name for name in SAFETY if name in found]
    return first + sorted(found - set(first))


def title(name: str) -> str:
    """A table's name in words."""
    plain = name.removesuffix("-benchbook-2026").replace("-", " ")
    return _TITLES.get(name, plain[:1].upper() + plain[1:])


def lines(name: str) -> list[dict[str, str]]:
    """Rows of a table as they stand in the file, by plain column name, the unit behind a number."""
    table(name)  # refuses a row without a source
    text = files("calc").joinpath(f"data/{name}.csv").read_text(encoding="utf-8")
    heads, *rows = [line for line in csv.reader(text.splitlines()) if line]
    made = []
    for row in rows:
        cells = {}
        for head, cell in zip(heads, row, strict=True):
            column, _, unit = head.partition(" [")
            unit = unit.rstrip("]")
            cells[column] = f"{cell} {written(unit)}".strip() if cell and unit not in ("", "1") else cell
        if cells.get("number") and "unit" in cells:
            unit = cells.pop("unit")
            cells["number"] += "" if unit == "dimensionless" else f" {written(unit)}"
        made.append(cells)
    return made


def unread(name: str) -> list[dict[str, str]]:
    """Rows of a table that rest on memory or practice; the name of a page claims nothing."""
    return [line for line in lines(name) if line["how_sure"] in UNREAD and line.get("kind") != "page"]


def told(line: dict[str, str]) -> tuple[str, str]:
    """What a row is about, and what it says."""
    quiet = set(_QUIET) - ({"page"} if "step" in line else set())
    about, *rest = dict.fromkeys(cell for column, cell in line.items() if cell and column not in quiet)
    return about.replace("-", " "), " · ".join(rest)


def _filled(text: str, fill: Fill) -> str:
    """Figures and words put in; what only its calculator can fill is named instead."""
    try:
        return fill(text)
    except UnknownIdError:
        return BRACES.sub(lambda found: f"({found[1].replace('-', ' ')})", text)


def _row(line: dict[str, str], fill: Fill) -> list[str]:
    rules = line.get("rules", "")
    whose = f"{RULE_SETS[rules]}: " if rules in RULE_SETS else ""
    behind = source_words(line["source"])
    sure = HOW_SURE[line["how_sure"]] + (f"; compare {behind}" if behind else "")
    about, said = (escape(part) for part in told(line))
    return [about, _filled(whose + said, fill), escape(sure)]


def unread_html(fill: Fill, make: TableMaker) -> str:
    """Tables of rows from memory or practice, and a count of the rest.

    Args:
        fill: Fills `{id}` in escaped text.
        make: Makes a table of caption, headings and rows of HTML cells.
    """
    parts = []
    for name in (name for name in names() if name in SAFETY):
        cells = [_row(line, fill) for line in unread(name)]
        if cells:
            caption = f"{title(name)}: {len(cells)} of {len(lines(name))} rows"
            parts.append(make(caption, ["About", "What it says", "How sure"], cells))
    parts.append('<h2 id="rest">The rest</h2>')
    counted = []
    for name in (name for name in names() if name not in SAFETY):
        rows = unread(name)
        if rows:
            memory = sum(line["how_sure"] == "memory" for line in rows)
            own = "this site’s own text or choice" if name in OWN else ""
            counted.append(
                [escape(title(name)), str(memory), str(len(rows) - memory), str(len(lines(name))), own]
            )
    parts.append(
        make(
            "Rows that do not bear on safety at once",
            ["Table", "From memory", "Practice", "Of", "What it holds"],
            counted,
        )
    )
    return "".join(parts)
