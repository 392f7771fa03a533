"""The ladder of exercises: what each is, as a job and as pieces to cut."""

from dataclasses import dataclass
from functools import cache

from calc.ask.reading import typed
from calc.data.tables import table
from calc.declare import RULE_SETS
from calc.values.quantities import Length, Time
from calc.values.units import to_si

TABLE = "exercises-benchbook-2026"
FUEL = "acetylene"
"""Gas of the ladder; a class with another one asks the job sheet itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Exercise:
    """One exercise under one rule set.

    Attributes:
        id: Its id, and the last part of its page's address.
        title: What a reader calls it.
        job: Texts of the job sheet for one try.
        has_rod: Whether rod or filler is fed.
        stock: `sheet`, `plate` or `none`: what its pieces are cut from.
        pieces: Pieces of one size for one try.
        size: Their two sides as text, or empty.
        sides: Their two sides, m; zero where none is cut.
        bought: What is bought for one try beside them, or empty.
        tries: How often it is usually done.
        bench_time: At the bench for one try, flame on and off, s.
        flame_time: Flame burning in it, s: a learner's, not a welder's.
        how_sure: Grade of the row.
    """

    id: str
    title: str
    job: dict[str, str]
    has_rod: bool
    stock: str
    pieces: int
    size: str
    sides: tuple[Length, Length]
    bought: str
    tries: int
    bench_time: Time
    flame_time: Time
    how_sure: str


@cache
def exercises(rules: str) -> dict[str, Exercise]:
    """Every exercise by id, the easiest first.

    Args:
        rules: Rule set; `us` gives inches and gauge numbers, the others millimetres.

    Examples:
        >>> list(exercises("us"))[:3], exercises("iso")["butt"].size
        (['flame', 'puddle', 'corner'], '50 mm x 150 mm')
    """
    return {row.id: _exercise(row, rules) for row in table(TABLE)}


def titles() -> dict[str, str]:
    """Title of each exercise by id, for a choice."""
    return {row.id: row.title for row in table(TABLE)}


def job_texts(exercise_id: str) -> dict[str, dict[str, str]]:
    """Texts of the job sheet for one try of an exercise, by input name and rule set.

    Args:
        exercise_id: Its id.

    Raises:
        ValueError: There is no such exercise.

    Examples:
        >>> job_texts("corner")["thickness"]
        {'us': '16 ga', 'iso': '1.5 mm', 'uk': '1.5 mm'}
    """
    if exercise_id not in titles():
        raise ValueError(f"there is no exercise {exercise_id!r}; there are {', '.join(titles())}")
    jobs = {rules: exercises(rules)[exercise_id].job for rules in RULE_SETS}
    names = [name for job in jobs.values() for name in job if name != "rules"]
    # What one rule set does not ask, such as an inch tube, keeps the text of another.
    spare = {name: text for job in reversed(jobs.values()) for name, text in job.items()}
    return {
        name: {rules: job.get(name, spare[name]) for rules, job in jobs.items()}
        for name in dict.fromkeys(names)
    }


def _exercise(row: object, rules: str) -> Exercise:
    given = row._asdict()  # type: ignore[attr-defined]
    kind = "us" if rules == "us" else "metric"
    pairs = (part.partition("=") for part in given[f"job_{kind}"].split(";"))
    job = {name.strip(): text.strip() for name, _, text in pairs}
    size = given[f"size_{kind}"]
    sides = [_length(side) for side in size.split(" x ")] if size else [0.0, 0.0]
    return Exercise(
        id=given["id"], title=given["title"], job=job | {"coating": "none", "fuel": FUEL, "rules": rules}, has_rod=given["rod"] == "yes",
        stock=given["stock"], pieces=int(given["pieces"]), size=size, sides=(sides[0], sides[1]), bought=given["bought"], tries=int(given["tries"]),
        bench_time=given["bench_time"], flame_time=given["flame_time"], how_sure=given["how_sure"],
    )  # fmt: skip


def _length(text: str) -> Length:
    got = typed(text)
    return to_si(got.number, got.unit)
