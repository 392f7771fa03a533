"""A bead held against a standard: what it allows at this size, and the verdict on what was given.

Nothing is judged that was not given, and where a size is missing that the limit
hangs on, only what holds for every such size counts.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from calc.data.tables import table
from calc.declare import Step, worked
from calc.formulas.setup.beads import imperfection_limit
from calc.values.quantities import Length
from calc.values.units import to_si

STANDARDS = {
    "iso-b": "ISO 5817, level B (the strictest)",
    "iso-c": "ISO 5817, level C",
    "iso-d": "ISO 5817, level D",
    "aws": "AWS D1.1, static load",
}
NAMES = {
    "iso-b": "ISO 5817 level B",
    "iso-c": "ISO 5817 level C",
    "iso-d": "ISO 5817 level D",
    "aws": "AWS D1.1",
}
MEASURED = {
    "undercut": "undercut",
    "excess": "height of the cap",
    "convexity": "convexity",
    "penetration": "bead at the root",
    "underfill": "underfill",
    "misalignment": "misalignment",
}
"""What is measured, and how a sentence calls it."""
SEEN = {"crack": "cracks", "fusion": "fusion", "overlap": "overlap", "hole": "holes"}
"""What is looked for, and how a sentence calls it."""
OF_JOINT = {
    "butt": ("undercut", "excess", "penetration", "underfill", "misalignment"),
    "fillet": ("undercut", "convexity"),
}
AWS_FROM = to_si(3.0, "mm")
"""D1.1 begins at 1/8 in (3 mm): from memory."""
HAIR = 1e-9
MEETS, FAILS, OPEN, NOT_GIVEN = "meets", "fails", "open", "not given"


@dataclass(frozen=True, slots=True)
class Size:
    """What a limit hangs on.

    Attributes:
        thickness: Of the sheet or plate, m.
        face: Width of the cap or of the fillet's face, m, or None where it was not measured.
        root: Width of the bead at the root, m, or None.
        short: Whether undercut and underfill are short, as the standard counts it.
    """

    thickness: Length
    face: Length | None = None
    root: Length | None = None
    short: bool = False

    def width_of(self, item: str) -> Length | None:
        """Width that an item's limit counts."""
        return self.root if item == "penetration" else self.face


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One item held against its limit.

    Attributes:
        item: Its id.
        limit: Largest size allowed, m; the least that it can be where a width is
            missing; None where the standard gives no figure.
        whole: Whether the limit is the whole one.
        words: What goes with the limit.
        verdict: One of `meets`, `fails`, `open`, `not given`.
        source: As in a table.
        how_sure: Its grade.
    """

    item: str
    limit: Length | None
    whole: bool
    words: str
    verdict: str
    source: str
    how_sure: str


def _between(value: Length, above: Length | None, up_to: Length | None) -> bool:
    return (above is None or value > above * (1 + HAIR)) and (up_to is None or value <= up_to * (1 + HAIR))


def _iso_rows(item: str, level: str, size: Size) -> list[Any]:
    return [
        row
        for row in table("bead-limits-iso-5817")
        if row.item == item and row.level == level and _between(size.thickness, row.above, row.up_to)
    ]


def _aws_rows(item: str, size: Size) -> list[Any]:
    if size.thickness < AWS_FROM * (1 - HAIR):
        return []
    rows = [
        row
        for row in table("bead-limits-aws-d1-1")
        if row.item == item and _between(size.thickness, row.above, row.up_to)
    ]
    if size.face is None:  # the narrowest face is held strictest
        return [row for row in rows if row.face_above is None]
    return [row for row in rows if _between(size.face, row.face_above, row.face_up_to)]


@dataclass(frozen=True, slots=True)
class _Limit:
    value: Length
    whole: bool
    words: str
    row: Any


def _limit_of(steps: list[Step], row: Any, item: str, size: Size, rules: str) -> _Limit:
    metric = rules != "us" and hasattr(row, "fixed_metric")
    fixed, most = (row.fixed_metric, row.most_metric) if metric else (row.fixed, row.most)
    share = getattr(row, "per_width", 0.0)
    width = size.width_of(item)
    by_face = hasattr(row, "face_up_to") and (row.face_above is not None or row.face_up_to is not None)
    value = worked(
        steps, f"{MEASURED[item].capitalize()}, before the ceiling", imperfection_limit,
        fixed_part=fixed, width_share=share, bead_width=width or 0.0, thickness_share=row.per_thickness,
        thickness=size.thickness,
    )  # fmt: skip
    ceiling = most is not None and value > most
    whole = width is not None or ceiling or not (share or by_face)
    words = {"short": "short ones only", "never": "none allowed"}.get(row.length, "")
    if not whole:
        words = f"or more: give the {row.words}"
    return _Limit(most if ceiling else value, whole, words, row)


def _allowed(steps: list[Step], standard: str, item: str, size: Size, rules: str) -> _Limit | None:
    """The limit that holds, or None where the standard gives none."""
    rows = _aws_rows(item, size) if standard == "aws" else _iso_rows(item, standard[-1], size)
    if not rows:
        return None
    open_to_it = [row for row in rows if row.length != "short" or size.short]
    if not open_to_it:
        return _Limit(0.0, True, "none allowed unless it is short", rows[0])
    found = [_limit_of(steps, row, item, size, rules) for row in open_to_it]
    return max(found, key=lambda limit: limit.value)


def measured_line(
    *, steps: list[Step], standard: str, item: str, measured: Length | None, size: Size, rules: str
) -> Line:
    """One measured item against its limit.

    Args:
        steps: Working, added to.
        standard: One of `STANDARDS`.
        item: One of `MEASURED`.
        measured: What was measured, m, or None.
        size: What the limit hangs on.
        rules: Rule set: the metric print of AWS D1.1 outside the United States.
    """
    limit = _allowed(steps, standard, item, size, rules)
    if limit is None:
        thin = standard == "aws" and size.thickness < AWS_FROM * (1 - HAIR)
        words = (
            "D1.1 begins at 1/8 in (3 mm): pick a level of ISO 5817" if thin else "no figure in our data"
        )
        verdict = NOT_GIVEN if measured is None else OPEN
        return Line(
            item=item,
            limit=None,
            whole=True,
            words=words,
            verdict=verdict,
            source="aws-d1-1",
            how_sure="memory",
        )
    if measured is None:
        verdict = NOT_GIVEN
    elif measured <= limit.value * (1 + HAIR):
        verdict = MEETS
    else:
        verdict = FAILS if limit.whole else OPEN
    return Line(
        item=item,
        limit=limit.value,
        whole=limit.whole,
        words=limit.words,
        verdict=verdict,
        source=limit.row.source,
        how_sure=limit.row.how_sure,
    )


def seen_line(standard: str, item: str, seen: str) -> Line:
    """One item that is looked for.

    Args:
        standard: One of `STANDARDS`.
        item: One of `SEEN`.
        seen: `none`, `seen` or `not-looked`.
    """
    family = "aws-d1-1" if standard == "aws" else "iso-5817"
    row = next(row for row in table("bead-seen") if row.item == item and row.standard == family)
    depends = row.allowed == "depends" and standard == "iso-d"
    verdict = {"not-looked": NOT_GIVEN, "none": MEETS}.get(seen, OPEN if depends else FAILS)
    words = "up to a size that is not asked here" if depends else "none allowed"
    return Line(
        item=item,
        limit=None if depends else 0.0,
        whole=True,
        words=words,
        verdict=verdict,
        source=row.source,
        how_sure=row.how_sure,
    )


def counted(lines: Sequence[Line], verdict: str) -> list[str]:
    """Names of the items with a verdict."""
    return [(MEASURED | SEEN)[line.item] for line in lines if line.verdict == verdict]


def overall(standard: str, lines: Sequence[Line]) -> str:
    """The verdict in words, never more than what was given."""
    name, fails, opens, meets = NAMES[standard], *(counted(lines, v) for v in (FAILS, OPEN, MEETS))
    left = counted(lines, NOT_GIVEN)
    rest = f" Not looked at: {', '.join(left)}." if left else ""
    within = f" Within its limits: {', '.join(meets)}." if meets else ""
    if fails:
        said = f"does not meet {name}: {', '.join(fails)}.{within}"
        said += f" Cannot be told: {', '.join(opens)}." if opens else ""
    elif opens:
        said = f"cannot be told by {name}: {', '.join(opens)}.{within}"
    elif meets:
        said = f"meets what was given of {name}: {', '.join(meets)}."
    else:
        return f"nothing given yet to hold against {name}"
    return f"{said}{rest}".removesuffix(".")


def short_words(standard: str) -> Mapping[str, Any]:
    """What a standard counts as short: words, source and grade."""
    family = "aws-d1-1" if standard == "aws" else "iso-5817"
    row = next(row for row in table("bead-counts") if row.standard == family)
    return {"words": row.words, "source": row.source, "how_sure": row.how_sure}
