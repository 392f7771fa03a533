"""Whether a part may be heated at all: refused, something first, or nothing refused.

The reasons are rows of `data/gate-reasons`, the cases in print rows of
`data/gate-cases` and `data/hurts`. Nothing here ever says that a part will do.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from calc.figures import Figure
from calc.formulas.setup.ruled import amount, ruled_row
from calc.quantities import Length
from calc.sheets.fumes import options
from calc.sheets.said import distance
from calc.sheets.surroundings import clear_distance
from calc.tables import table

PROCESSES = {
    "welding": "Welding",
    "braze-welding": "Braze welding",
    "brazing": "Brazing",
    "soldering": "Soldering",
    "cutting": "Cutting",
    "heating": "Heating, bending, straightening",
}
PARTS = {
    "open-sheet": "Open sheet, plate or bar",
    "vented-hollow": "Hollow, open: air blows through",
    "closed-hollow": "Hollow, shut, never a container",
    "container": "Drum, tank, can, any vessel",
    "tire": "Wheel with its tire, flat too",
    "strut": "Strut, shock, hydraulic cylinder",
    "unknown": "I do not know",
}
METALS = {
    "low-carbon-steel": "Low-carbon (mild) steel",
    "medium-carbon-steel": "Medium-carbon steel",
    "low-alloy-steel": "Low-alloy steel",
    "stainless-steel": "Stainless steel",
    "cast-iron": "Cast iron",
    "copper": "Copper",
    "brass": "Brass",
    "bronze": "Bronze",
    "beryllium-copper": "Beryllium copper",
    "aluminium": "Aluminium",
    "nickel": "Nickel",
    "lead": "Lead",
    "zinc": "Zinc",
    "magnesium": "Magnesium alloy",
    "titanium": "Titanium",
    "unknown": "I do not know",
}
GALVANISED = "galvanised-steel"
"""Asked as a metal by other pages; here it is steel with zinc on it, whatever else is."""
COATINGS = options("coating") | {"paint": "Other paint, with none of these"}
STRIPPABLE = ("zinc", "chromium", "lead-paint", "oil", "paint")
"""Coatings that may be taken off before any heat; the others are refused."""
STRIPPED = {"no": "No, or not so far", "yes": "Yes, on each side of the heat"}
BEHIND = {
    "clear": "Looked: nothing that burns",
    "movable": "Burns: can move or shield it",
    "not-looked": "Not looked yet",
    "fixed": "Burns: cannot move or shield it",
}
ALWAYS = ("told", "air", "watch", "eyes")
"""What holds for every part."""
OUTCOMES = {
    "refused": "Refused: no flame on this",
    "first": "First do this, then ask again",
    "none": "Nothing here was refused",
}
_RANK = {"refused": 2, "first": 1, "holds": 0}


@dataclass(frozen=True, slots=True)
class Case:
    """Something that happened, or a rule, in print."""

    words: str
    happened: str
    source: str
    how_sure: str


@dataclass(frozen=True, slots=True)
class Reason:
    """One hazard of a part and the one order against it.

    Attributes:
        asked: Input that it came from: `part`, `metal`, `coating`, `behind`, or `always`.
        id: Option of that input.
        outcome: `refused`, `first`, or `holds` for what holds in any case.
        gravity: The larger, the graver.
        signal: Signal word, empty for a reminder.
        words: What it is, as a reader sees it.
        reason: What it does.
        order: The one thing to do.
        who: Whom to ask; empty for nobody.
        source: As in a table.
        how_sure: Grade.
        cases: Cases and rules in print.
    """

    asked: str
    id: str
    outcome: str
    gravity: float
    signal: str
    words: str
    reason: str
    order: str
    who: str
    source: str
    how_sure: str
    cases: tuple[Case, ...] = ()


@dataclass(frozen=True, slots=True)
class Verdict:
    """What the gate says of a part.

    Attributes:
        outcome: `refused`, `first` or `none`.
        reasons: What refuses it or must be done first, refusals first, then by gravity.
        holds: What holds in any case, by gravity.
    """

    outcome: str
    reasons: tuple[Reason, ...]
    holds: tuple[Reason, ...]

    @property
    def text(self) -> str:
        """The outcome in words, one of `OUTCOMES`."""
        return OUTCOMES[self.outcome]


def strip_row() -> Any:
    """Row of the width that a coating is stripped from the heat on each side."""
    return ruled_row("ventilation", "us", amount, topic="strip-coating").row


def strip_words() -> str:
    """That width in both units, the metric one never less than the rule's.

    Examples:
        >>> strip_words()
        '4 in (102 mm)'
    """
    width: Length = amount(strip_row())
    return f"{distance(width, 'us', 3, 'up')} ({distance(width, 'iso', 3, 'up')})"


def _cases(row: Any) -> tuple[Case, ...]:
    own = [
        Case(case.words, case.happened, case.source, case.how_sure)
        for case in table("gate-cases")
        if (case.asked, case.id) == (row.asked, row.id)
    ]
    more = [
        Case(row.words, case.happened, case.source, case.how_sure)
        for case in table("hurts")
        if row.never and case.never == row.never
    ]
    return (*own, *more)


def _reasons(given: dict[str, tuple[str, ...]], filled: dict[str, str]) -> list[Reason]:
    found = []
    for row in table("gate-reasons"):
        if row.id not in given.get(row.asked, ()) or row.stripped not in ("any", *given["stripped"]):
            continue
        order = row.order
        for name, words in filled.items():
            order = order.replace(f"{{{name}}}", words)
        found.append(
            Reason(
                row.asked, row.id, row.outcome, row.gravity, row.signal, row.words, row.reason, order, row.who,
                row.source, row.how_sure, _cases(row),
            )
        )  # fmt: skip
    return sorted(found, key=lambda reason: (-_RANK[reason.outcome], -reason.gravity))


def _verdict(reasons: Iterable[Reason]) -> Verdict:
    listed = tuple(reasons)
    told = tuple(reason for reason in listed if reason.outcome != "holds")
    return Verdict(
        told[0].outcome if told else "none",
        told,
        tuple(reason for reason in listed if reason.outcome == "holds"),
    )


def _known(value: str, what: str, known: Iterable[str]) -> None:
    if value not in known:
        raise ValueError(f"the gate knows no {what} {value!r}")


def _given(process: str, metal: str, coating: str, stripped: str | None) -> dict[str, tuple[str, ...]]:
    _known(process, "process", PROCESSES)
    _known(metal, "metal", (*METALS, GALVANISED))
    _known(coating, "coating", COATINGS)
    _known(stripped or "no", "answer on stripping", STRIPPED)
    return {
        "metal": (metal,),
        "coating": (coating, "zinc") if metal == GALVANISED else (coating,),
        "stripped": (stripped or "no",),
    }


def gate(
    process: str, part: str, metal: str, coating: str, stripped: str | None, behind: str, rules: str
) -> Verdict:
    """What must be refused, or done first, before a part is heated.

    Args:
        process: Id of `PROCESSES`; no process opens what another shuts.
        part: Id of `PARTS`.
        metal: Id of `METALS`, or `galvanised-steel`.
        coating: Id of `COATINGS`.
        stripped: `yes` where the coating is gone as far as the rule asks; None counts as `no`.
        behind: Id of `BEHIND`.
        rules: Rule set of the clear distance.

    Raises:
        ValueError: An id that the gate does not know.

    Source:
        [cfr1910-252]; each reason names its own.

    Examples:
        >>> gate("cutting", "container", "low-carbon-steel", "none", None, "clear", "us").text
        'Refused: no flame on this'
        >>> gate("welding", "open-sheet", "low-carbon-steel", "zinc", "no", "clear", "us").text
        'First do this, then ask again'
        >>> gate("welding", "open-sheet", "low-carbon-steel", "none", None, "clear", "us").text
        'Nothing here was refused'
    """
    given = _given(process, metal, coating, stripped)
    _known(part, "part", PARTS)
    _known(behind, "answer on what is behind", BEHIND)
    clear = around(process, rules).value
    assert clear is not None
    filled = {"strip": strip_words(), "clear": distance(clear, rules, 3, "up")}
    return _verdict(_reasons(given | {"part": (part,), "behind": (behind,), "always": ALWAYS}, filled))


def metal_verdict(process: str, metal: str, coating: str, stripped: str | None) -> Verdict:
    """The gate by metal and coating alone: for a sheet that does not ask what the part is.

    Args:
        process: Id of `PROCESSES`.
        metal: Id of `METALS`, or `galvanised-steel`, which has zinc on it whatever else.
        coating: Id of `COATINGS`.
        stripped: `yes` where the coating is gone as far as the rule asks; None counts as `no`.

    Raises:
        ValueError: An id that the gate does not know.

    Source:
        [cfr1910-252]; each reason names its own.

    Examples:
        >>> metal_verdict("brazing", "titanium", "none", None).outcome
        'refused'
        >>> metal_verdict("brazing", "galvanised-steel", "none", None).reasons[0].words
        'Zinc (galvanized)'
    """
    return _verdict(_reasons(_given(process, metal, coating, stripped), {"strip": strip_words()}))


def around(process: str, rules: str) -> Figure:
    """Distance cleared of what burns, m; braze welding counts as welding."""
    return clear_distance(rules, "welding" if process == "braze-welding" else process)
