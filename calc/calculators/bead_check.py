"""Look at the bead: what a standard allows at this size, and whether what was given meets it."""

from dataclasses import dataclass
from typing import Annotated, Any

from calc.answer.hazards import caution
from calc.answer.sentences import distance
from calc.data.tables import HOW_SURE, table
from calc.declare import Answer, Choice, Field, Figure, Picture, Shown, Step, Table, calculator
from calc.declare.inputs import LENGTH
from calc.show.drawings import faults
from calc.trade.weld import beads
from calc.trade.weld.beads import Line, Size

NOT_LOOKED = {"not-looked": "Not looked for"}
SEEN = {"none": "None seen", "seen": "Seen"} | NOT_LOOKED
FUSION = {"complete": "Complete, as far as one sees", "lacking": "Lacking somewhere"} | NOT_LOOKED
_AS_SEEN = {"complete": "none", "lacking": "seen"}
JOINTS = {"butt": "Butt", "fillet": "Fillet (lap or tee)"}
RUN = {"long": "Longer, or not measured", "short": "Short, as the standard counts it"}
NOTHING = {"us": "0 in", "iso": "0 mm", "uk": "0 mm"}
LARGEST = {"us": "1 in", "iso": "25 mm", "uk": "25 mm"}
THINNEST = {"us": "0.02 in", "iso": "0.5 mm", "uk": "0.5 mm"}
WIDEST = {"us": "2 in", "iso": "50 mm", "uk": "50 mm"}
BUTT, FILLET = {"joint": ("butt",)}, {"joint": ("fillet",)}


def _measured(label: str, hint: str = "", when: dict[str, tuple[str, ...]] | None = None) -> Field:
    return Field(label, LENGTH, low=NOTHING, high=LARGEST, optional=True, hint=hint, when=when)


@dataclass(frozen=True, slots=True, kw_only=True)
class BeadCheck:
    """The verdict, and each limit at this size."""

    verdict: Annotated[Figure, Shown("What was given", words=True, group="Verdict")]
    counts_as_short: Annotated[Figure, Shown("Short is", words=True, group="Verdict")]
    undercut_limit: Annotated[Figure, Shown("Undercut, at most", LENGTH, toward="down", group="Measured")]
    excess_limit: Annotated[
        Figure | None, Shown("Height of the cap, at most", LENGTH, toward="down", group="Measured")
    ]
    convexity_limit: Annotated[
        Figure | None, Shown("Convexity, at most", LENGTH, toward="down", group="Measured")
    ]
    penetration_limit: Annotated[
        Figure | None, Shown("Bead at the root, at most", LENGTH, toward="down", group="Measured")
    ]
    underfill_limit: Annotated[
        Figure | None, Shown("Underfill, at most", LENGTH, toward="down", group="Measured")
    ]
    misalignment_limit: Annotated[
        Figure | None, Shown("Misalignment, at most", LENGTH, toward="down", group="Measured")
    ]
    crack_verdict: Annotated[Figure, Shown("Cracks", words=True, group="Looked for")]
    fusion_verdict: Annotated[Figure, Shown("Fusion", words=True, group="Looked for")]
    overlap_verdict: Annotated[Figure, Shown("Overlap", words=True, group="Looked for")]
    hole_verdict: Annotated[Figure, Shown("Holes", words=True, group="Looked for")]


@calculator("bead-check", "Look at the bead")
def bead_check(
    *,
    standard: Annotated[str, Choice("Held against", beads.STANDARDS, example="iso-c")],
    joint: Annotated[str, Choice("Joint", JOINTS, example="butt")],
    thickness: Annotated[
        float,
        Field(
            "Thickness",
            LENGTH,
            example={"us": "3/16 in", "iso": "5 mm", "uk": "5 mm"},
            low=THINNEST,
            high=WIDEST,
            sheet_gauge=True,
            metal="low-carbon-steel",
            hint="Of the thinner one.",
        ),
    ],
    crack: Annotated[str | None, Choice("Cracks", SEEN, example="not-looked", optional=True)],
    fusion: Annotated[str | None, Choice("Fusion", FUSION, example="not-looked", optional=True)],
    overlap: Annotated[str | None, Choice("Overlap (cold lap)", SEEN, example="not-looked", optional=True)],
    hole: Annotated[str | None, Choice("Hole or burn-through", SEEN, example="not-looked", optional=True)],
    undercut: Annotated[
        float | None,
        Field(
            "Undercut, depth",
            LENGTH,
            example={"us": "1/64 in", "iso": "0.4 mm", "uk": "0.4 mm"},
            low=NOTHING,
            high=LARGEST,
            optional=True,
            hint="The deepest place.",
        ),
    ],
    bead_width: Annotated[
        float | None,
        Field(
            "Width of the bead's face",
            LENGTH,
            example={"us": "3/8 in", "iso": "10 mm", "uk": "10 mm"},
            low=THINNEST,
            high=WIDEST,
            optional=True,
        ),
    ],
    excess: Annotated[
        float | None,
        Field(
            "Height of the cap",
            LENGTH,
            example={"us": "3/32 in", "iso": "2 mm", "uk": "2 mm"},
            low=NOTHING,
            high=LARGEST,
            optional=True,
            hint="Above the plate, the highest place.",
            when=BUTT,
        ),
    ],
    convexity: Annotated[
        float | None,
        _measured("Convexity", "How far the face bulges beyond a line from edge to edge.", FILLET),
    ],
    penetration: Annotated[
        float | None, _measured("Bead at the root, height", "How far it hangs through.", BUTT)
    ],
    root_width: Annotated[float | None, _measured("Bead at the root, width", when=BUTT)],
    underfill: Annotated[
        float | None, _measured("Underfill, depth", "How far the face lies below the plate.", BUTT)
    ],
    misalignment: Annotated[float | None, _measured("Misalignment", "Step between the two plates.", BUTT)],
    run: Annotated[str, Choice("Undercut and underfill are", RUN, assumed="long")],
    rules: str,
) -> Answer[BeadCheck]:
    """What a standard allows at this thickness, and whether what you gave meets it.

    A classroom aid that says nothing about what was not given. It is no inspection,
    and what is inside a weld no eye sees.
    """  # fmt: skip
    steps: list[Step] = []
    size = Size(thickness, bead_width, root_width, run == "short")
    given = {
        "undercut": undercut, "excess": excess, "convexity": convexity, "penetration": penetration,
        "underfill": underfill, "misalignment": misalignment,
    }  # fmt: skip
    looked = {"crack": crack, "overlap": overlap, "hole": hole, "fusion": _AS_SEEN.get(fusion or "")}
    lines = {
        item: beads.measured_line(
            steps=steps, standard=standard, item=item, measured=given[item], size=size, rules=rules
        )
        for item in beads.OF_JOINT[joint]
    }
    seen = {item: beads.seen_line(standard, item, looked[item] or "not-looked") for item in beads.SEEN}
    every = [*seen.values(), *lines.values()]
    short = beads.short_words(standard)

    def limit(item: str) -> Figure | None:
        return _limit(lines[item], given[item], rules) if item in lines else None

    failed = [line.item for line in every if line.verdict == beads.FAILS]
    return Answer(
        BeadCheck(
            verdict=Figure(
                None, *_standing(every), words=beads.overall(standard, every),
                basis="Only what stands in the form is judged, an example left standing as well: clear what you did not measure. "
                "The standard itself, the drawing and the inspector stand first.",
            ),
            counts_as_short=Figure(None, short["source"], short["how_sure"], words=short["words"]),
            undercut_limit=_limit(lines["undercut"], undercut, rules),
            excess_limit=limit("excess"),
            convexity_limit=limit("convexity"),
            penetration_limit=limit("penetration"),
            underfill_limit=limit("underfill"),
            misalignment_limit=limit("misalignment"),
            crack_verdict=_seen(seen["crack"]),
            fusion_verdict=_seen(seen["fusion"]),
            overlap_verdict=_seen(seen["overlap"]),
            hole_verdict=_seen(seen["hole"]),
        ),
        cautions=CAUTIONS,
        steps=tuple(steps),
        tables=(*_what_went_wrong(failed), _levels(joint, size, rules)),
        pictures=_pictures(failed),
    )  # fmt: skip


def _standing(lines: list[Line]) -> tuple[str, str]:
    """Source and weakest grade of what was judged."""
    judged = [line for line in lines if line.verdict != beads.NOT_GIVEN] or lines
    weakest = max(judged, key=lambda line: list(HOW_SURE).index(line.how_sure))
    return weakest.source, weakest.how_sure


def _limit(line: Line, measured: float | None, rules: str) -> Figure:
    told = "" if measured is None else f"{distance(measured, rules, 3)} measured"
    verdict = {
        beads.MEETS: f"{told}: within it", beads.FAILS: f"{told}: over it", beads.OPEN: f"{told}: cannot be told",
        beads.NOT_GIVEN: "not measured",
    }[line.verdict]  # fmt: skip
    said = "; ".join(part for part in (line.words, verdict) if part)
    basis = "For this thickness and width; the ceiling of the line counted."
    return Figure(line.limit, line.source, line.how_sure, words=said, basis=basis)


def _seen(line: Line) -> Figure:
    verdict = {
        beads.MEETS: "nothing to be seen", beads.FAILS: "seen: it does not meet", beads.OPEN: "seen: cannot be told",
        beads.NOT_GIVEN: "not looked for",
    }[line.verdict]  # fmt: skip
    row = next(
        row
        for row in table("bead-seen")
        if row.item == line.item and row.source == line.source and row.how_sure == line.how_sure
    )
    basis = f"{row.words[:1].upper()}{row.words[1:]}." if row.words else ""
    return Figure(None, line.source, line.how_sure, words=f"{verdict}; {line.words}", basis=basis)


def _told(line: Line, rules: str) -> str:
    if line.limit is None:
        return line.words
    if line.limit == 0.0:
        return line.words or "none allowed"
    lead = "" if line.whole else "at least "
    text = f"{lead}{distance(line.limit, rules, 3, 'down')}"
    return f"{text}, {line.words}" if line.whole and line.words else text


def _levels(joint: str, size: Size, rules: str) -> Table:
    unused: list[Step] = []
    rows = []
    for item in beads.OF_JOINT[joint]:
        cells = [
            _told(
                beads.measured_line(
                    steps=unused, standard=standard, item=item, measured=None, size=size, rules=rules
                ),
                rules,
            )
            for standard in beads.STANDARDS
        ]
        rows.append((beads.MEASURED[item].capitalize(), *cells))
    return Table(
        "The same bead by every level",
        ("At most", *beads.NAMES.values()),
        tuple(rows),
        "“At least” stands where the width was not given: then the limit of the narrowest bead. On the line between two "
        "sizes the smaller limit holds.",
    )


def _rows_of(failed: list[str]) -> list[Any]:
    return [row for row in table("bead-faults") if set(row.item.split()) & set(failed)]


def _what_went_wrong(failed: list[str]) -> tuple[Table, ...]:
    rows = tuple((row.name, row.looks, row.cause, row.cure) for row in _rows_of(failed))
    if not rows:
        return ()
    heads = ("Fault", "It looks like", "It comes from", "Next time")
    return (Table("What went wrong", heads, rows, "Common practice, no source."),)


def _pictures(failed: list[str]) -> tuple[Picture, ...]:
    return tuple(faults.drawing(row.fault) for row in _rows_of(failed) if row.fault in faults.FAULTS)[:3]


CAUTIONS = (
    caution("load-joint"),
    caution("hot-looks-cold"),
)
