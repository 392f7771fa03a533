"""Whether a part may be heated at all: refused, something first, or nothing refused.

The reasons are rows of `data/gate-reasons`, the cases in print rows of
`data/gate-cases` and `data/hurts`. Nothing here ever says that a part will do.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from calc.answer.hazards import hazards, is_brought
from calc.answer.sentences import distance
from calc.data.tables import table
from calc.data.texts import filled_text
from calc.formulas.setup.ruled import amount, ruled_row
from calc.trade.safety.gate_fields import (
    COATINGS,
    GALVANISED,
    HOLLOW,
    INSPECTED,
    METALS,
    OPEN_AIR,
    OPTIONS,
    ROOMED,
    STILL,
    STRIPPED,
)
from calc.trade.safety.surroundings import clear_distance
from calc.values.numbers import rounded
from calc.values.quantities import Length
from calc.values.units import from_si

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


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """One hazard of a part and the one order against it.

    Attributes:
        asked: Input that it came from, such as `part`, or `always`.
        id: Option of that input.
        outcome: `refused`, `first`, or `holds` for what holds in any case.
        gravity: The larger, the graver.
        hazard: Id of its row in the table of hazards.
        signal: Signal word of that row.
        words: What it is, as a reader sees it.
        reason: What it is and does, two sentences of that row.
        order: The one thing to do.
        who: Whom to ask; empty for nobody.
        source: Rule that demands the outcome, as in a table.
        how_sure: Grade.
        cases: Cases and rules in print.
    """

    asked: str
    id: str
    outcome: str
    gravity: float
    hazard: str
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


def room_words(topic: str) -> str:
    """A figure of the rule on clean air, in both units, never less than the rule's.

    Args:
        topic: `space-per-welder` or `ceiling` of the table on ventilation.

    Examples:
        >>> room_words("ceiling")
        '16 ft (4.88 m)'
    """
    figure = amount(ruled_row("ventilation", "us", amount, topic=topic).row)
    if topic == "ceiling":
        return f"{distance(figure, 'us', 3, 'up')} ({distance(figure, 'iso', 3, 'up')})"
    return f"{from_si(figure, 'ft^3'):,.0f} ft³ ({rounded(from_si(figure, 'm^3'), 3, 'up')} m³) for each torch"


def _as_it_is(held: str | None, part: str) -> str | None:
    """What a hollow holds; the worse reading where two answers cannot both be true."""
    if part not in HOLLOW:
        return None
    named = held or "unknown"
    return STILL.get(named, named) if part == "closed-hollow" else named


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


def _reasons(given: Mapping[str, tuple[str, ...]], filled: Mapping[str, str], rules: str) -> list[Reason]:
    """Reasons that hold for what was given: each input and the options picked for it."""
    alone = {asked: ids[0] for asked, ids in given.items() if len(ids) == 1}
    found = []
    for row in table("gate-reasons"):
        if row.id not in given.get(row.asked, ()) or (row.given and not is_brought(row.given, alone)):
            continue
        hazard = hazards()[row.hazard]
        order = row.order or hazard.avoidance
        for name, words in filled.items():
            order = order.replace(f"{{{name}}}", words)
        found.append(
            Reason(
                asked=row.asked, id=row.id, outcome=row.outcome, gravity=row.gravity, hazard=row.hazard, signal=hazard.signal, words=row.words,
                reason=filled_text(f"{hazard.hazard} {hazard.consequence}", rules), order=filled_text(order, rules), who=row.who,
                source=row.source, how_sure=row.how_sure, cases=_cases(row),
            )
        )  # fmt: skip
    return sorted(found, key=_gravest)


def _gravest(reason: Reason) -> tuple[int, float]:
    return -_RANK[reason.outcome], -reason.gravity


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


def _known_all(given: Mapping[str, str | None]) -> dict[str, tuple[str, ...]]:
    """Each input and what was picked for it; one that was not asked is left out."""
    for name, value in given.items():
        _known(value or next(iter(OPTIONS[name])), name.replace("_", " "), OPTIONS[name])
    return {name: (value,) for name, value in given.items() if value is not None}


def _with_coatings(
    given: dict[str, tuple[str, ...]], metal: str, coatings: Iterable[str | None], stripped: str | None
) -> dict[str, tuple[str, ...]]:
    """What was given, with metal, coatings and whether they are gone."""
    on_it = {coating for coating in coatings if coating not in (None, "none")}
    if metal == GALVANISED:
        on_it.add("zinc")
    for coating in on_it:
        _known(str(coating), "coating", COATINGS)
    _known(metal, "metal", (*METALS, GALVANISED))
    _known(stripped or "no", "answer on stripping", STRIPPED)
    return given | {"metal": (metal,), "coating": tuple(sorted(map(str, on_it))), "stripped": (stripped or "no",)}


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """A part, where it is, and what is about to be done to it.

    Attributes:
        process: Id of `PROCESSES`; no process opens what another closes.
        part: Id of `PARTS`.
        held: Id of `HELD`, what a hollow part holds or held; None counts as unknown for one.
        metal: Id of `METALS`, or `galvanised-steel`.
        coatings: Ids of `COATINGS`, all that is on it.
        stripped: `yes` where they are gone as far as the rule asks; None counts as `no`.
        duty: Id of `DUTIES`, what depends on the part.
        place: Id of `SITES`.
        permit: Whether the person responsible allowed the flame there; None counts as `no`.
        vehicle_ready: Whether what burns or bursts on a vehicle is out of the way; likewise.
        also: Second id of `SITES` that holds too, such as a pit under a vehicle; None or `none` for no other.
        also_permit: As `permit`, for that place.
        also_ready: As `vehicle_ready`, for that place.
        around: Id of `AROUND`.
        behind: Id of `BEHIND`.
        people: Id of `PEOPLE`.
        air: Id of `AIR`, what takes the fume away.
    """

    process: str
    part: str
    held: str | None
    metal: str
    coatings: tuple[str | None, ...]
    stripped: str | None
    duty: str
    place: str
    permit: str | None
    vehicle_ready: str | None
    around: str
    behind: str
    people: str
    air: str
    also: str | None = None
    also_permit: str | None = None
    also_ready: str | None = None


def _places(it: Situation) -> list[tuple[str, str | None, str | None]]:
    """Each place that holds, with its permit and whether its vehicle is ready.

    A hall or a fan in a room cannot be outdoors: such an answer is judged indoors too.
    """
    places = [(it.place, it.permit, it.vehicle_ready)]
    if it.also not in (None, "none", it.place):
        places.append((str(it.also), it.also_permit, it.also_ready))
    if it.air in ROOMED and all(place in OPEN_AIR for place, *_ in places):
        places.append(("shop", None, None))
    return places


def gate(situation: Situation, rules: str) -> Verdict:
    """What must be refused, or done first, before a part is heated.

    Args:
        situation: All that was asked. What was not asked counts as the worst of its options.
        rules: Rule set of the clear distance.

    Raises:
        ValueError: An id that the gate does not know.

    Source:
        [cfr1910-252]; each reason names its own.
    """
    it = situation
    clear = clear_distance(rules, it.process).value
    assert clear is not None
    filled = {
        "strip": strip_words(),
        "clear": distance(clear, rules, 3, "up"),
        "space": room_words("space-per-welder"),
        "ceiling": room_words("ceiling"),
    }
    found: list[Reason] = []
    for place, permit, ready in _places(it):
        given = _known_all(
            {
                "process": it.process,
                "part": it.part,
                "held": _as_it_is(it.held, it.part),
                "duty": it.duty,
                "place": place,
                "permit": (permit or "no") if place in INSPECTED else None,
                "vehicle_ready": (ready or "no") if place == "vehicle" else None,
                "around": it.around,
                "behind": it.behind,
                "people": it.people,
                "air": it.air,
            }
        )
        asked = _with_coatings(given, it.metal, it.coatings, it.stripped)
        found += _reasons(asked | {"always": ALWAYS}, filled, rules)
    return _verdict(sorted(dict.fromkeys(found), key=_gravest))


def metal_verdict(process: str, metal: str, coating: str, stripped: str | None, rules: str) -> Verdict:
    """The gate by metal and coating alone: for a sheet that does not ask what the part is.

    It takes a shop with a hood; what the rules ask of the air still stands among what holds.

    Args:
        process: Id of `PROCESSES`.
        metal: Id of `METALS`, or `galvanised-steel`, which has zinc on it whatever else.
        coating: Id of `COATINGS`.
        stripped: `yes` where the coating is gone as far as the rule asks; None counts as `no`.
        rules: Rule set whose figures fill the words.

    Raises:
        ValueError: An id that the gate does not know.

    Source:
        [cfr1910-252]; each reason names its own.

    Examples:
        >>> metal_verdict("brazing", "titanium", "none", None, "us").outcome
        'refused'
        >>> metal_verdict("brazing", "galvanised-steel", "none", None, "us").reasons[0].words
        'Zinc (galvanized)'
    """
    shop = _known_all({"process": process, "place": "shop", "air": "hood"})
    asked = _with_coatings(shop, metal, (coating,), stripped)
    verdict = _verdict(_reasons(asked, {"strip": strip_words()}, rules))

    def ours(reasons: tuple[Reason, ...]) -> tuple[Reason, ...]:
        """Of metal and coating; what is not cut so, the sheet refuses in words of its own."""
        return tuple(
            reason for reason in reasons if reason.asked in ("metal", "coating") and reason.hazard != "metal-not-cut"
        )

    return _verdict((*ours(verdict.reasons), *ours(verdict.holds)))
