"""What comes off the parts of a job into the air, its limits, and what the rules ask against it."""

from collections.abc import Iterable, Mapping
from typing import Any

from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Figure, Table
from calc.formulas.setup.ruled import NO_FIGURE
from calc.values.numbers import plain_number

PARTS = ("metal", "coating", "filler", "flux")
PLACES = {
    "indoors": "Indoors",
    "confined": "In a tank, pit, hold or other confined space",
    "outdoors": "Outdoors",
}
BURNT_AIR = ("carbon-monoxide", "nitric-oxide", "nitrogen-dioxide")
"""What every flame puts into the air."""
_WRITTEN = {"ug/m^3": "µg/m³", "mg/m^3": "mg/m³", "ppm": "ppm"}


def options(part: str) -> dict[str, str]:
    """Choices for one part of the job: id and words."""
    return {row.id: row.words for row in table("fume-hazards") if row.part == part}


def rows_of(picked: Mapping[str, str]) -> list[Any]:
    """Rows of `fume-hazards` for what was picked: part and id."""
    return [row for row in table("fume-hazards") if picked.get(row.part) == row.id]


def substances(picked: Mapping[str, str]) -> list[str]:
    """What they give off, each once, in the order of the parts."""
    found = [name for row in rows_of(picked) for name in row.substances.split(", ") if name]
    return list(dict.fromkeys(found))


def _of_part(picked: Mapping[str, str], part: str) -> Mapping[str, str]:
    """What was picked for one part, or all where no part is named."""
    return {name: chosen for name, chosen in picked.items() if part in ("", name)}


def asks(picked: Mapping[str, str], place: str) -> bool:
    """Whether a rule of our data asks for more than the plume kept away at a place."""
    return bool(_measures(picked, place))


def name_of(substance: str) -> str:
    """A substance as a reader sees it."""
    return str(next(row.name for row in table("exposure-limits") if row.substance == substance))


def given_off(picked: Mapping[str, str]) -> Figure:
    """What the parts give off, in words."""
    found = substances(picked)
    told = ", ".join(name_of(substance).lower() for substance in found)
    notes = [f"{row.words}: {row.what}." for row in rows_of(picked) if row.what]
    return Figure(
        None, "", "practice",
        words=told or "nothing that our data names; the flame itself makes carbon monoxide and nitrogen oxides",
        basis=" ".join([*notes, "Read the safety data sheets: filler and flux say what is in them."]),
    )  # fmt: skip


def _measures(picked: Mapping[str, str], place: str) -> list[Any]:
    """Rows of `fume-measures` for what was picked at a place, the strictest first."""
    rows = [
        row
        for row in table("fume-measures")
        if row.place == place and row.substance in substances(_of_part(picked, row.part))
    ]
    return sorted(rows, key=lambda row: -row.rank)


def measure(picked: Mapping[str, str], place: str, rules: str) -> Figure:
    """What the rules ask against it at a place, in words; the strictest comes first.

    A row that names a part holds for what comes off that part alone.
    """
    rows = _measures(picked, place)
    note = "" if rules == "us" else f" United States rules. {NO_FIGURE}"
    if not rows:
        return Figure(
            None, "", "practice",
            words="keep your head out of the plume and the plume away from others; a hood at the work is better",
            basis=f"No rule of our data names a measure for these at this place.{note}",
        )  # fmt: skip
    told = "; ".join(f"{name_of(row.substance).lower()}: {row.words}" for row in rows)
    return Figure(
        None, rows[0].source, rows[0].how_sure, words=told, basis=f"By substance and place.{note}"
    )


def limit_words(row: Any) -> str:
    """One limit as it is read: `50 µg/m³ over 8 h`."""
    number = f"{plain_number(row.number)} {_WRITTEN[row.unit]}"
    return {"8 h": f"{number} over 8 h", "15 min": f"{number} over 15 min"}.get(
        row.kind, f"{number} {row.kind}"
    )


def limits_table(wanted: Iterable[str], rules: str) -> Table:
    """Exposure limits of some substances, each with its source and how sure."""
    names = list(dict.fromkeys(wanted))
    rows = [row for name in names for row in table("exposure-limits") if row.substance == name]
    note = "" if rules == "us" else f" United States limits. {NO_FIGURE}"
    return Table(
        "Limits of what may be in the air you breathe",
        ("Substance", "Limit", "Source"),
        tuple(
            (
                row.name,
                ", ".join(part for part in (limit_words(row), row.words) if part),
                ", ".join(part for part in (source_words(row.source), HOW_SURE[row.how_sure]) if part),
            )
            for row in rows
        ),
        f"No sum says what you breathe: only a measurement does.{note}",
    )
