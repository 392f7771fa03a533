"""The gate before any job: refused, something first, or nothing refused."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import LENGTH, Answer, Choice, Figure, Shown, calculator
from calc.formulas.setup.ruled import amount, ruled_row
from calc.sheets import gate_said
from calc.sheets.gate import (
    BEHIND,
    COATINGS,
    METALS,
    PARTS,
    PROCESSES,
    STRIPPABLE,
    STRIPPED,
    Verdict,
    around,
    gate,
    strip_row,
    strip_words,
)
from calc.sheets.surroundings import OWN
from calc.sheets.surroundings import fire_watch as watch_figure

FAR = ("ft", "m")
ASIDE = "Figures for it"


@dataclass(frozen=True, slots=True)
class MayIHeat:
    """What the gate says."""

    outcome: Annotated[Figure, Shown("May I heat it?", words=True)]
    why: Annotated[Figure, Shown("Why", words=True)]
    do_first: Annotated[Figure | None, Shown("Do first", words=True)]
    who_to_ask: Annotated[Figure | None, Shown("Who to ask", words=True)]
    still_holds: Annotated[Figure | None, Shown("What still holds", words=True)]
    strip_distance: Annotated[
        Figure | None, Shown("Coating off, on each side at least", LENGTH, toward="up", group=ASIDE)
    ]
    vent_hole: Annotated[Figure | None, Shown("A vent hole in print", LENGTH, toward="up", group=ASIDE)]
    clear_distance: Annotated[Figure | None, Shown("Cleared of what burns", FAR, toward="up", group=ASIDE)]
    fire_watch: Annotated[
        Figure | None, Shown("Fire watch after the last flame", ("min",), toward="up", group=ASIDE)
    ]


def _strip(verdict: Verdict, rules: str) -> Figure | None:
    if verdict.outcome != "first" or all(reason.asked != "coating" for reason in verdict.reasons):
        return None
    row = strip_row()
    return Figure(
        amount(row), row.source, row.how_sure,
        basis="The rule names it for enclosed spaces; it is the least here everywhere. Farther, where the heat runs "
        "farther: bare metal to where it stays cool enough to touch.",
        words="" if rules == "us" else f"{OWN['us']} figure",
    )  # fmt: skip


def _vent(verdict: Verdict, rules: str) -> Figure | None:
    if verdict.outcome != "first" or all(reason.id != "closed-hollow" for reason in verdict.reasons):
        return None
    row = ruled_row("gate-figures", rules, amount, topic="vent-hole").row
    return Figure(
        amount(row), row.source, row.how_sure,
        basis=f"Printed for this alone: {row.words}. General rules ask for a vent and name no size. A hole at each end; "
        "in a thin tube as large as its wall allows.",
        words="" if rules == "us" else f"{OWN['us']} figure",
    )  # fmt: skip


@calculator("may-i-heat", "May I heat this?")
def may_i_heat(
    process: Annotated[str, Choice("What you want to do", PROCESSES, example="welding")],
    part: Annotated[
        str,
        Choice(
            "What the part is",
            PARTS,
            example="open-sheet",
            hint="A vessel counts whatever it held, clean or empty. Shut: air does not blow through.",
        ),
    ],
    metal: Annotated[str, Choice("Metal", METALS, example="low-carbon-steel")],
    coating: Annotated[
        str, Choice("What is on it", COATINGS, example="none", hint="Both faces, the inside and the edges.")
    ],
    stripped: Annotated[
        str | None,
        Choice(
            f"Is that gone {strip_words()} at least on each side of the heat?",
            STRIPPED,
            example="no",
            when={"coating": STRIPPABLE},
        ),
    ],
    behind: Annotated[
        str,
        Choice(
            "Behind it, above it and below it",
            BEHIND,
            example="clear",
            hint="What is moved away, or shielded and watched, counts no more.",
        ),
    ],
    rules: str,
) -> Answer[MayIHeat]:
    """Refused, something to do first, or nothing refused; it never calls a part harmless.

    It knows only what you tell it. When you do not know, say so: not knowing is an answer here.
    """  # fmt: skip
    verdict = gate(process, part, metal, coating, stripped, behind, rules)
    burns = [reason for reason in verdict.reasons if reason.asked == "behind"]
    clears = any(reason.outcome == verdict.outcome for reason in burns)
    watches = clears and verdict.outcome == "first"
    cases = gate_said.cases_table(verdict)
    return Answer(
        MayIHeat(
            outcome=gate_said.outcome(verdict),
            why=gate_said.why(verdict),
            do_first=gate_said.do_first(verdict),
            who_to_ask=gate_said.who_to_ask(verdict),
            still_holds=gate_said.still_holds(verdict),
            strip_distance=_strip(verdict, rules),
            vent_hole=_vent(verdict, rules),
            clear_distance=around(process, rules) if clears else None,
            fire_watch=watch_figure(rules) if watches else None,
        ),
        cautions=gate_said.verdict_cautions(verdict),
        tables=(gate_said.hazards_table(verdict), *((cases,) if cases else ())),
    )
