"""What a class takes: pieces to cut, what is bought, rods, by the job sheet's own sums for one try."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from calc.class_plan.cutting_list import Kind
from calc.class_plan.one_try import Try
from calc.class_plan.passes import Evening, Wanted
from calc.job_sheet.seams import LENGTHS
from calc.values.figures import Figure
from calc.values.quantities import Length

IN_RODS = ("welding", "braze-welding")
"""Work whose filler comes in rods of a fixed length; other filler comes as wire or on a coil."""


@dataclass(frozen=True, slots=True)
class Done:
    """An exercise of the plan with its counts.

    Attributes:
        wanted: The exercise and the tries of each learner.
        one: One try of it.
        learners: How many learners.
        shown: Tries that the instructor demonstrates.
        spares: Sets of pieces kept spare.
    """

    wanted: Wanted
    one: Try
    learners: int
    shown: int
    spares: int

    @property
    def tries(self) -> int:
        """Tries that take gas and rod: of all learners, and what is demonstrated."""
        return self.wanted.tries * self.learners + self.shown

    @property
    def sets(self) -> int:
        """Sets of pieces: for every try, and spare."""
        return self.tries + self.spares


def done(
    evening: Evening, wanted: Sequence[Wanted], tries: dict[str, Try], spares: int
) -> tuple[Done, ...]:
    """Each exercise with its counts; one try of each is demonstrated where there is time for it."""
    shown = 1 if evening.demonstration else 0
    return tuple(Done(one, tries[one.id], evening.learners, shown, spares) for one in wanted)


def kinds_of(all_done: Sequence[Done]) -> dict[tuple[str, str], tuple[Kind, ...]]:
    """Pieces to cut by stock and thickness, as `("sheet", "16 ga")`."""
    kinds: dict[tuple[str, str], tuple[Kind, ...]] = {}
    for one in all_done:
        made = one.one.exercise
        if made.pieces:
            stock = (made.stock, made.job["thickness"])
            kind = Kind(made.title, made.size, made.sides, made.pieces * one.sets)
            kinds[stock] = (*kinds.get(stock, ()), kind)
    return kinds


def bought(all_done: Sequence[Done]) -> tuple[tuple[str, str, int], ...]:
    """What is bought: for which exercise, what, and how many sets."""
    return tuple(
        (one.wanted.title, one.one.exercise.bought, one.sets) for one in all_done if one.one.exercise.bought
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Rods:
    """Rod or filler of one class and diameter.

    Attributes:
        name: Class.
        diameter: m.
        exercises: Titles of those that use it.
        length: m, with least and most.
        mass: kg, likewise.
        count: Whole rods, or None where it comes as wire.
    """

    name: str
    diameter: Length
    exercises: tuple[str, ...]
    length: Figure
    mass: Figure
    count: int | None


def rods_of(all_done: Sequence[Done], rules: str) -> tuple[Rods, ...]:
    """Rod and filler by class and diameter.

    Args:
        all_done: Exercises with their counts.
        rules: Rule set, which decides how long a rod is.
    """
    groups: dict[tuple[str, float, bool], list[Done]] = {}
    for one in all_done:
        if one.one.rod is not None:
            as_rods = one.one.exercise.job["process"] in IN_RODS
            groups.setdefault((one.one.rod.name, one.one.rod.diameter, as_rods), []).append(one)
    found = []
    for (name, diameter, as_rods), users in groups.items():
        length = _summed([(one.one.rod.length, one.tries) for one in users if one.one.rod])
        mass = _summed([(one.one.rod.mass, one.tries) for one in users if one.one.rod])
        count = ceil((length.value or 0.0) / LENGTHS[rules] * (1 - 1e-9)) if as_rods else None
        found.append(
            Rods(
                name=name,
                diameter=diameter,
                exercises=tuple(one.wanted.title for one in users),
                length=length,
                mass=mass,
                count=count,
            )
        )
    return tuple(found)


def _summed(parts: Sequence[tuple[Figure, int]]) -> Figure:
    """Figures times their counts, added, each end of the band by itself."""

    def end(name: str) -> float:
        total = 0.0
        for figure, times in parts:
            taken = getattr(figure, name)
            total += times * float((figure.value if taken is None else taken) or 0.0)
        return total

    first = parts[0][0]
    low, high = sorted((end("low"), end("high")))
    value = end("value")
    return Figure(
        value, first.source, first.how_sure, low=min(low, value), high=max(high, value),
        basis="The job sheet's sum for one try, times all tries of all learners and what is demonstrated.",
    )  # fmt: skip


def total_of(figures: Sequence[Figure]) -> Figure:
    """Figures added, with their bands."""
    return _summed([(figure, 1) for figure in figures])
