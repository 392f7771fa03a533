"""The one table of hazards: every caution on a page, a sheet or a card is a row of it.

A row says its signal word, the hazard, what it does to people, how to avoid it, its
source, and what brings it. `brought_by` lists alternatives between semicolons; an
alternative is one or more conditions that all hold, such as
`metal:brass process:welding|brazing`.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import cache
from typing import Any

from calc.data.emergencies import told as acts_told
from calc.data.tables import table
from calc.data.texts import BRACES, elsewhere, figures, filled_text, words
from calc.declare import Caution

SIGNALS = ("DANGER", "WARNING", "CAUTION", "NOTICE")
"""Signal words of ANSI Z535.6 and ISO 3864, the gravest first."""
PARTS = ("metal", "coating", "filler", "flux", "fuel", "place", "process", "work")
"""What may bring a hazard. `work` has the ids of `process`: who answers for a whole job gives both,
who answers for a part of it, such as a rod or a tip, gives the process alone."""

Brought = Mapping[str, str | None]
"""Parts of a job, by name of `PARTS`, and the id of each."""


@cache
def hazards() -> dict[str, Any]:
    """Every row of the table by its id."""
    return {row.id: row for row in table("hazards")}


def caution(hazard_id: str, rules: str | None = None, **given: str) -> Caution:
    """A hazard as a caution beside an answer.

    Args:
        hazard_id: Id of its row.
        rules: Place whose figures and words fill `{figure-id}` in the row; without it they
            stay, and `filled` fills them when the answer is told.
        **given: Texts that fill a `{name}` of the row that the answer itself works out.

    Returns:
        Signal word, then hazard, consequence and avoidance as one text, with source,
        grade and the row's id.

    Raises:
        KeyError: No row has this id.
        ValueError: A term in braces is neither given nor a figure or a word of our tables.

    Examples:
        >>> caution("cadmium-fume").signal
        'DANGER'
        >>> caution("acetylene-limit", "iso").text.partition(" can ")[0]
        'Acetylene above 1.5 bar'
    """
    row = hazards()[hazard_id]
    text = f"{row.hazard} {row.consequence} {row.avoidance}".replace("  ", " ").strip()
    for name, told in given.items():
        text = text.replace(f"{{{name}}}", told)
    for name in re.findall(r"{([^}]*)}", text):
        if name not in figures() and name not in words() and acts_told(name) is None:
            raise ValueError(f"hazard {hazard_id}: a term in braces is not filled: {text}")
    found = Caution(row.signal, text[:1].upper() + text[1:], row.source, row.id, row.how_sure)
    return found if rules is None else filled(found, rules)


def filled(one: Caution, rules: str, told: Mapping[str, str] | None = None) -> Caution:
    """A caution with the figures and words of a place, and the source of a figure of that place.

    Args:
        one: Of `caution`.
        rules: Rule set.
        told: Figures by id that the answer itself tells: one place of an answer names no other.

    Examples:
        >>> "Clear 7.5 m all round" in filled(caution("fire-near"), "iso", {"clear-distance": "7.5 m"}).text
        True
    """
    text = one.text
    for name, figure in (told or {}).items():
        text = text.replace(f"{{{name}}}", figure)
    text = filled_text(text, rules)
    own = [row for name in BRACES.findall(one.text) for row in elsewhere(name) if row.rules == rules]
    if own:
        return replace(one, text=text, source=own[0].source, how_sure=own[0].how_sure)
    return replace(one, text=text)


@cache
def alternatives(brought_by: str) -> tuple[dict[str, tuple[str, ...]], ...]:
    """What brings a hazard: for each alternative the parts of a job and the ids that fulfil them.

    Args:
        brought_by: Cell of a row.

    Examples:
        >>> alternatives("coating:cadmium; filler:silver-cadmium")
        ({'coating': ('cadmium',)}, {'filler': ('silver-cadmium',)})
    """
    found = []
    for alternative in filter(None, (text.strip() for text in brought_by.split(";"))):
        pairs = (condition.split(":") for condition in alternative.split())
        found.append({part: tuple(ids.split("|")) for part, ids in pairs})
    return tuple(found)


def is_brought(brought_by: str, job: Brought) -> bool:
    """Whether a job fulfils one of the alternatives of a cell.

    Examples:
        >>> is_brought("metal:brass process:welding|brazing", {"metal": "brass", "process": "brazing"})
        True
        >>> is_brought("metal:brass process:welding; filler:brass", {"metal": "brass", "process": "cutting"})
        False
    """
    return any(
        all(job.get(part) in ids for part, ids in conditions.items()) for conditions in alternatives(brought_by)
    )


def ids_brought(job: Brought) -> list[str]:
    """Ids of the hazards that a job brings, the gravest first.

    Args:
        job: Parts of the job and their ids; a part that is not known is left out or None.

    Examples:
        >>> ids_brought({"metal": "beryllium-copper"})
        ['beryllium-fume']
    """
    found = [row for row in hazards().values() if is_brought(row.brought_by, job)]
    return [row.id for row in sorted(found, key=lambda row: SIGNALS.index(row.signal))]


def brought(job: Brought, rules: str | None = None) -> tuple[Caution, ...]:
    """Cautions for the hazards that a job brings, the gravest first.

    Args:
        job: As of `ids_brought`.
        rules: As of `caution`.

    Examples:
        >>> [one.id for one in brought({"metal": "stainless-steel", "fuel": "hydrogen"})]
        ['chromium-nickel', 'hydrogen-flame', 'light-gas', 'other-fuel-parts']
    """
    return tuple(caution(hazard_id, rules) for hazard_id in ids_brought(job))


def gravest_first(cautions: Iterable[Caution]) -> tuple[Caution, ...]:
    """Cautions by signal word, the gravest first, each once; equal ones keep their order."""
    once = list({each.text: each for each in cautions}.values())
    return tuple(sorted(once, key=lambda each: SIGNALS.index(each.signal)))
