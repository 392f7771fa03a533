"""The gate before any job: refused, something first, or nothing refused."""

from dataclasses import dataclass, replace
from typing import Annotated

from calc.answer.sentences import distance, duration
from calc.declare import Answer, Choice, Figure, Shown, calculator
from calc.declare.inputs import LENGTH
from calc.formulas.setup.ruled import amount, ruled_row
from calc.trade.safety import gate_sentences as gate_said
from calc.trade.safety.gate import (
    Situation,
    Verdict,
    gate,
    room_words,
    strip_row,
    strip_words,
)
from calc.trade.safety.gate_fields import (
    AIR,
    ALSO,
    AROUND,
    BEHIND,
    COATINGS,
    DUTIES,
    HELD,
    HOLLOW,
    INSPECTED,
    METALS,
    PARTS,
    PEOPLE,
    PROCESSES,
    SITES,
    STRIPPABLE,
    STRIPPED,
    YES_NO,
)
from calc.trade.safety.surroundings import OWN, clear_distance
from calc.trade.safety.surroundings import fire_watch as watch_figure

FAR = ("ft", "m")
ASIDE = "Figures for it"
FARTHER = "clear farther from a height, as the page on the ground round a flame says"
WORST_AIR = ("confined", "indoors", "outdoors")
ON_IT = tuple(coating for coating in COATINGS if coating != "none")
FURTHER = {"none": "Nothing else"} | {coating: COATINGS[coating] for coating in ON_IT}


@dataclass(frozen=True, slots=True, kw_only=True)
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


def _job_place(site: str) -> str:
    return {"small-space": "confined", "outdoors": "outdoors", "roof": "outdoors"}.get(site, "indoors")


def _strip(verdict: Verdict, stripped: str | None, rules: str) -> Figure | None:
    coated = any(reason.asked == "coating" for reason in verdict.reasons)
    if verdict.outcome != "first" or stripped == "yes" or not coated:
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
    *,
    process: Annotated[str, Choice("What you want to do", PROCESSES, example="welding")],
    part: Annotated[
        str,
        Choice(
            "What the part is",
            PARTS,
            example="closed-hollow",
            hint="A vessel counts whatever it held, clean or empty. Closed: air does not blow through.",
        ),
    ],
    held: Annotated[
        str | None,
        Choice(
            "What it holds, or ever held",
            HELD,
            example="never",
            hint="A silencer, a catalyst or a tank counts as a vessel above.",
            when={"part": HOLLOW},
        ),
    ],
    duty: Annotated[str, Choice("What depends on the part", DUTIES, example="none")],
    metal: Annotated[str, Choice("Metal", METALS, example="low-carbon-steel")],
    coating: Annotated[
        str, Choice("What is on it", COATINGS, example="zinc", hint="Both faces, the inside and the edges.")
    ],
    second_coating: Annotated[
        str | None, Choice("What else is on it", FURTHER, example="none", when={"coating": ON_IT})
    ],
    third_coating: Annotated[
        str | None,
        Choice("And what else", FURTHER, example="none", when={"coating": ON_IT, "second_coating": ON_IT}),
    ],
    stripped: Annotated[
        str | None,
        Choice(
            f"Is all of that gone {strip_words()} at least on each side of the heat?",
            STRIPPED,
            example="no",
            when={"coating": STRIPPABLE},
        ),
    ],
    place: Annotated[str, Choice("Where you want to do it", SITES, example="shop")],
    permit: Annotated[
        str | None,
        Choice(
            "Has the person responsible for the place looked at it and allowed the flame today?",
            YES_NO,
            example="no",
            when={"place": INSPECTED},
        ),
    ],
    vehicle_ready: Annotated[
        str | None,
        Choice(
            "Is the battery off, and is all that burns or bursts away from the heat?",
            YES_NO,
            example="no",
            hint="Fuel tank and lines, brake lines, airbags, belt tensioners, gas struts, air conditioning, tires, trim.",
            when={"place": ("vehicle",)},
        ),
    ],
    also: Annotated[
        str,
        Choice(
            "Also in, on or at",
            ALSO,
            assumed="none",
            hint="A vehicle over a pit, or work inside a van: two places. The stricter of the two holds.",
        ),
    ],
    also_permit: Annotated[
        str | None,
        Choice(
            "Has the person responsible for that other place allowed the flame today?",
            YES_NO,
            assumed="no",
            when={"also": INSPECTED},
        ),
    ],
    also_ready: Annotated[
        str | None,
        Choice(
            "Is that vehicle's battery off, and is all that burns or bursts away from the heat?",
            YES_NO,
            assumed="no",
            when={"also": ("vehicle",)},
        ),
    ],
    around: Annotated[str, Choice("Around the work", AROUND, example="none")],
    behind: Annotated[
        str,
        Choice(
            "Behind it, above it and below it",
            BEHIND,
            example="not-looked",
            hint="What is moved away, or shielded and watched, counts no more.",
        ),
    ],
    people: Annotated[str, Choice("People near you", PEOPLE, example="protected")],
    air: Annotated[
        str,
        Choice(
            "What keeps the fume from you and from them",
            AIR,
            example="hood",
            hint=f"Large and high: more than {room_words('space-per-welder')} and a ceiling above {room_words('ceiling')}.",
        ),
    ],
    rules: str,
) -> Answer[MayIHeat]:
    """Refused, something to do first, or nothing refused; it never calls a part harmless.

    It knows only what you tell it. When you do not know, say so: not knowing is an answer here.
    """  # fmt: skip
    verdict = gate(
        Situation(
            process=process,
            part=part,
            held=held,
            metal=metal,
            coatings=(coating, second_coating, third_coating),
            stripped=stripped,
            duty=duty,
            place=place,
            permit=permit,
            vehicle_ready=vehicle_ready,
            around=around,
            behind=behind,
            people=people,
            air=air,
            also=also,
            also_permit=also_permit,
            also_ready=also_ready,
        ),
        rules,
    )
    job = {
        "process": process,
        "work": process,
        "metal": metal,
        "place": min((_job_place(each) for each in (place, also) if each != "none"), key=WORST_AIR.index),
    }
    burns = [reason for reason in verdict.reasons if reason.asked == "behind"]
    clears = verdict.outcome == "none" or any(reason.outcome == verdict.outcome for reason in burns)
    watches = clears and verdict.outcome != "refused"
    clear, watch = clear_distance(rules, process), watch_figure(rules, roof="roof" in (place, also))
    if "roof" in (place, also):
        clear = replace(clear, words=f"{FARTHER}{f'. {clear.words}' if clear.words else ''}")
    far = distance(clear.value or 0.0, rules, 3, "up")
    told = {"clear-distance": far, "clear-distance-cutting": far, "fire-watch": duration(watch.value or 0.0)}
    cases = gate_said.cases_table(verdict)
    return Answer(
        MayIHeat(
            outcome=gate_said.outcome(verdict),
            why=gate_said.why(verdict),
            do_first=gate_said.do_first(verdict),
            who_to_ask=gate_said.who_to_ask(verdict),
            still_holds=gate_said.still_holds(verdict),
            strip_distance=_strip(verdict, stripped, rules),
            vent_hole=_vent(verdict, rules),
            clear_distance=clear if clears else None,
            fire_watch=watch if watches else None,
        ),
        cautions=gate_said.verdict_cautions(verdict, job, rules, told),
        tables=(gate_said.hazards_table(verdict), *((cases,) if cases else ())),
    )
