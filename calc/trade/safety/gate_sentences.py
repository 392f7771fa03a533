"""What the gate says, as figures, cautions and tables of an answer."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from calc.answer.hazards import SIGNALS, Brought, brought, caution, filled, gravest_first
from calc.data.tables import HOW_SURE, source_words
from calc.declare import Caution, Table
from calc.trade.safety.gate import Reason, Verdict
from calc.values.figures import Figure

NOTHING = "nothing that you told this page rules it out. It has not seen your part: the list below still applies"
NOBODY_SAW = "By what you told it; no page sees the part, its inside or what is behind it."
JUDGED = "closed-part"
"""The hazard that sends a reader to this very page."""
_DOES = {"refused": " (refused)", "first": " (before any heat)", "holds": ""}


def _told(reasons: Sequence[Reason], words: str, basis: str) -> Figure:
    if not reasons:
        return Figure(None, "", "practice", words=words, basis=basis)
    first = reasons[0]
    return Figure(None, first.source, first.how_sure, words=words, basis=basis)


def _source(source: str, how_sure: str) -> str:
    return ", ".join(part for part in (source_words(source), HOW_SURE[how_sure]) if part)


def outcome(verdict: Verdict) -> Figure:
    """The outcome in words, with the source of what decided it."""
    return _told(verdict.reasons, verdict.text, NOBODY_SAW)


def why(verdict: Verdict) -> Figure:
    """Every hazard, refusals first, then by gravity; what the first does, and the others by name."""
    if not verdict.reasons:
        return _told((), NOTHING, NOBODY_SAW)
    gravest, *others = verdict.reasons
    words = _named(gravest)
    if others:
        words += f" Also: {'; '.join(reason.words for reason in others)}."
    basis = " ".join(map(_named, others))
    return _told(
        verdict.reasons,
        words,
        f"The source is that of the first; the table below has each. {basis}".strip(),
    )


def do_first(verdict: Verdict) -> Figure | None:
    """One order for each hazard, the gravest first; None where something is refused, or nothing is to do."""
    if verdict.outcome != "first":
        return None
    words = " ".join(
        f"{number}) {reason.words}: {reason.order}"
        for number, reason in enumerate(verdict.reasons, start=1)
    )
    return _told(verdict.reasons, words, "Then ask again here. The source is that of the first order.")


def who_to_ask(verdict: Verdict) -> Figure | None:
    """Who decides where this page does not; None where nobody is named."""
    deciding = [reason for reason in verdict.reasons if reason.outcome == verdict.outcome and reason.who]
    if not deciding:
        return None
    words = " ".join(f"{reason.words}: {reason.who}." for reason in deciding)
    return Figure(
        None, "", "practice", words=words,
        basis="Where the law asks for a license, a permit or a competent person, that comes before this page.",
    )  # fmt: skip


def still_holds(verdict: Verdict) -> Figure | None:
    """What holds in any case; None where something is refused, or nothing holds."""
    holding = [reason for reason in verdict.holds if reason.id != "told"]
    if verdict.outcome == "refused" or not holding:
        return None
    words = " ".join(f"{reason.words}: {reason.order}" for reason in holding)
    return _told(holding, words, "The source is that of the first; the table below has each.")


def verdict_cautions(verdict: Verdict, job: Brought, rules: str, told: Mapping[str, str]) -> tuple[Caution, ...]:
    """A caution for each hazard: what it does and the one order against it, DANGER first.

    Where something is refused, that alone: an order for the rest would read as a way round it.
    Else the hazards that process, metal and place bring stand with them.

    Args:
        verdict: Of `gate.gate`.
        job: Process, metal and place, as the table of hazards names them.
        rules: Rule set whose figures fill the words.
        told: Figures by id that the answer itself tells, such as the clear distance of this work.
    """
    listed = (*verdict.reasons, *verdict.holds)
    refusing = [reason for reason in listed if reason.outcome == "refused"]
    passes = verdict.outcome == "none"
    warned = refusing or [reason for reason in listed if passes or reason.id != "told"]
    warned.sort(key=lambda reason: SIGNALS.index(reason.signal))
    once = {reason.words: reason for reason in reversed(warned)}
    own = tuple(
        replace(caution(reason.hazard, rules), text=f"{_named(reason)} {reason.order}")
        for reason in warned
        if once[reason.words] is reason
    )
    if refusing:
        return own
    met = {reason.hazard for reason in warned}
    more = (filled(one, rules, told) for one in brought(job) if one.id not in met | {JUDGED})
    return gravest_first((*own, *more))


def _named(reason: Reason) -> str:
    """What a reason is and does, its own words first where they do not say the same."""
    if reason.reason.startswith(reason.words):
        return reason.reason
    return f"{reason.words}. {reason.reason}"


def hazards_table(verdict: Verdict) -> Table:
    """Each hazard with its order, its source and how sure."""
    shown = verdict.reasons if verdict.outcome == "refused" else (*verdict.reasons, *verdict.holds)
    refused = verdict.outcome == "refused"

    def order(reason: Reason) -> str:
        return "" if refused and reason.outcome == "first" else reason.order

    return Table(
        "Each hazard and its order",
        ("What", "Order", "Source"),
        tuple(
            (
                f"{reason.words}{_DOES[reason.outcome]}",
                order(reason),
                _source(reason.source, reason.how_sure),
            )
            for reason in shown
        ),
        "By gravity. The strictest counts: your local rules, the maker and your teacher can ask for more.",
    )


def cases_table(verdict: Verdict) -> Table | None:
    """Cases and rules in print for these hazards; None where there is none."""
    rows = [
        (case.words, case.happened, _source(case.source, case.how_sure))
        for reason in verdict.reasons
        for case in reason.cases
    ]
    if not rows:
        return None
    return Table("In print", ("What", "What happened, or the rule", "Source"), tuple(dict.fromkeys(rows)))
