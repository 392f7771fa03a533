"""The student bend test: plunger, strip, how far it stretches, and what may open."""

from dataclasses import dataclass
from typing import Annotated, Any

from calc.answer.hazards import caution
from calc.answer.sentences import distance
from calc.ask.errors import InputError
from calc.data.tables import table
from calc.declare import Answer, Field, Figure, Shown, Step, calculator, worked
from calc.declare.inputs import LENGTH
from calc.formulas.setup.beads import bend_stretch, die_opening, plunger_diameter
from calc.values.quantities import Length

THICKNESSES = 4.0
"""Diameter of the plunger in thicknesses, steel of 50 ksi yield or less: AWS D1.1, from memory."""
HAIR = 1e-9
NOTHING = {"us": "0 in", "iso": "0 mm", "uk": "0 mm"}
LARGEST = {"us": "4 in", "iso": "100 mm", "uk": "100 mm"}
FOUND = {
    "longest": "the longest opening",
    "together": "all openings together",
    "corner": "the corner crack",
}


def _opening(label: str, hint: str = "") -> Field:
    return Field(label, LENGTH, low=NOTHING, high=LARGEST, optional=True, hint=hint)


@dataclass(frozen=True, slots=True, kw_only=True)
class BendTest:
    """What to bend it round, what may open, and the verdict."""

    verdict: Annotated[Figure, Shown("What was given", words=True, group="Verdict")]
    plunger: Annotated[Figure, Shown("Plunger, across", LENGTH, digits=4, group="Set-up")]
    radius: Annotated[Figure, Shown("Its radius", LENGTH, digits=4, group="Set-up")]
    opening: Annotated[Figure, Shown("Between the shoulders", LENGTH, digits=4, group="Set-up")]
    strip: Annotated[Figure, Shown("Strip, least width", LENGTH, group="Set-up", toward="up")]
    stretch: Annotated[Figure, Shown("The outside stretches", ("%",), group="Set-up")]
    longest_limit: Annotated[Figure, Shown("Any opening, at most", LENGTH, toward="down", group="May open")]
    together_limit: Annotated[Figure, Shown("All added, at most", LENGTH, toward="down", group="May open")]
    corner_limit: Annotated[Figure, Shown("Corner crack, at most", LENGTH, toward="down", group="May open")]


@calculator("bend-test", "The student bend test")
def bend_test(
    *,
    thickness: Annotated[
        float,
        Field(
            "Thickness of the strip",
            LENGTH,
            example={"us": "1/8 in", "iso": "3 mm", "uk": "3 mm"},
            low={"us": "0.02 in", "iso": "0.5 mm", "uk": "0.5 mm"},
            high={"us": "1 in", "iso": "25 mm", "uk": "25 mm"},
            sheet_gauge=True,
            metal="low-carbon-steel",
            hint="Ground flush on both faces.",
        ),
    ],
    longest: Annotated[float | None, _opening("Longest opening on the bent face")],
    together: Annotated[float | None, _opening("All openings added", "Their longest sizes, added up.")],
    corner: Annotated[float | None, _opening("Crack that starts at a corner")],
    plunger_used: Annotated[
        float | None,
        Field(
            "Plunger used, across",
            LENGTH,
            low={"us": "0.04 in", "iso": "1 mm", "uk": "1 mm"},
            high={"us": "8 in", "iso": "200 mm", "uk": "200 mm"},
            optional=True,
            hint="Empty: the one that the rule asks for.",
        ),
    ],
    rules: str,
) -> Answer[BendTest]:
    """Plunger and strip for a bend through 180 degrees, and how much may open.

    For practice coupons of ordinary low-carbon steel, bent once with the face
    outward and once with the root. It qualifies nobody.
    """  # fmt: skip
    if longest is not None and together is not None and together < longest * (1 - HAIR):
        raise InputError(
            "together",
            "All openings added", "less than the longest of them; give the longest or more, up to 4 in (100 mm).",
        )
    steps: list[Step] = []
    rows = {row.topic: row for row in table("bend-limits-aws-d1-1")}
    wanted = worked(steps, "Plunger", plunger_diameter, thickness=thickness, thicknesses=THICKNESSES)
    used = wanted if plunger_used is None else plunger_used
    play = _size(rows["play"], rules)
    opening = worked(
        steps, "Between the shoulders", die_opening, thickness=thickness, plunger=used, play=play
    )
    stretch = worked(steps, "Stretch of the outside", bend_stretch, thickness=thickness, plunger=used)
    found = {"longest": longest, "together": together, "corner": corner}
    loose = used > wanted * (1 + HAIR)
    limits = {topic: _size(rows[topic], rules) for topic in FOUND}
    return Answer(
        BendTest(
            verdict=_verdict(found, limits, loose=loose),
            plunger=Figure(
                wanted, "aws-d1-1", "memory", basis="Four thicknesses, for steel of 50 ksi (345 MPa) yield or less."
            ),
            radius=Figure(wanted / 2, "aws-d1-1", "memory", basis="Two thicknesses."),
            opening=Figure(
                opening, "aws-d1-1", "memory",
                basis="Plunger, two thicknesses and a little play: wider, and the strip kinks beside the weld.",
            ),
            strip=Figure(
                _size(rows["narrowest"], rules), "", "memory", low=_size(rows["narrowest"], rules), high=_size(rows["widest"], rules),
                basis="Edges rounded with a file, or they start a crack.",
            ),
            stretch=Figure(
                stretch, "definition", "computed",
                basis="If the strip follows the plunger. A looser bend stretches it less and proves less.",
            ),
            **{f"{topic}_limit": _limit(rows[topic], limits[topic], found[topic], rules) for topic in FOUND},
        ),
        cautions=CAUTIONS,
        steps=tuple(steps),
    )  # fmt: skip


def _size(row: Any, rules: str) -> Length:
    return float(row.value if rules == "us" else row.metric)


def _limit(row: Any, limit: Length, measured: Length | None, rules: str) -> Figure:
    if measured is None:
        said = "not measured"
    else:
        said = f"{distance(measured, rules, 3)} measured: {'over it' if _over(measured, limit) else 'within it'}"
    return Figure(
        limit, row.source, row.how_sure, words=said, basis=f"{row.words[:1].upper()}{row.words[1:]}."
    )


def _over(measured: Length, limit: Length) -> bool:
    return measured > limit * (1 + HAIR)


def _verdict(found: dict[str, Length | None], limits: dict[str, Length], *, loose: bool) -> Figure:
    over = [
        FOUND[topic] for topic, size in found.items() if size is not None and _over(size, limits[topic])
    ]
    within = [
        FOUND[topic] for topic, size in found.items() if size is not None and not _over(size, limits[topic])
    ]
    left = [FOUND[topic] for topic, size in found.items() if size is None]
    rest = f". Not measured: {', '.join(left)}" if left else ""
    if over:
        said = f"does not meet: {', '.join(over)}{rest}"
    elif not within:
        said = "nothing given yet"
    elif loose:
        said = f"cannot be told: the plunger is larger than the rule's, so the strip was stretched too little{rest}"
    else:
        said = f"meets what was given: {', '.join(within)}{rest}"
    return Figure(
        None, "aws-d1-1", "memory", words=said,
        basis="An opening is counted on the bent face, in any direction. Bend one strip with the face outward, one with the root.",
    )  # fmt: skip


CAUTIONS = (
    caution("strip-snaps"),
)
