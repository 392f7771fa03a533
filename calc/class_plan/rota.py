"""Who is where in every minute of a session: one at a torch, one beside it, the others at work."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from calc.class_plan.passes import Evening, Pass

INSTRUCTOR = 0
SHIFT = 15
"""Longest shift of a fire watcher, min: our own choice."""

WORK = {
    "sets-up": "set up and leak-test",
    "looks-on": "look on through a filter, well back",
    "operates": "hold the torch",
    "watches": "watch the operator, and for fire",
    "cleans": "clean and mark the next coupon",
    "judges": "look at the last bead with the score sheet",
    "problems": "practice problems",
    "dry-run": "dry run with a torch that is connected to nothing",
    "watches-fire": "fire watch, nothing else",
    "shuts-down": "shut down and bleed",
    "tidies": "score sheets, tidy up",
    "demonstrates": "demonstrate",
    "teaches": "go round, hold no torch",
}
"""What a person does, by its id."""

PHASES = {
    "set-up": "Set up",
    "demonstration": "Demonstration",
    "turns": "Turns",
    "after": "Fire watch, shut down",
    "left": "Left over",
}
"""Parts of a session, by id."""


@dataclass(frozen=True, slots=True)
class Duty:
    """What one person does for a while.

    Attributes:
        person: Number of a learner; `INSTRUCTOR` for the instructor.
        work: One of `WORK`.
        bench: Number of the bench, 0 where it is none.
    """

    person: int
    work: str
    bench: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """A while in which everyone does one thing.

    Attributes:
        session: Its number, from 1.
        start: From the start of the session, min.
        end: Likewise.
        phase: One of `PHASES`.
        exercise: Title of the exercise, or empty.
        tries: That an operator does in it; 0 where it is no turn.
        duties: Of everybody, the instructor first.
    """

    session: int
    start: int
    end: int
    phase: str
    exercise: str
    tries: int
    duties: tuple[Duty, ...]

    @property
    def minutes(self) -> int:
        """How long it lasts, min."""
        return self.end - self.start

    def doing(self, work: str) -> tuple[Duty, ...]:
        """Duties of one kind."""
        return tuple(duty for duty in self.duties if duty.work == work)

    @property
    def hot(self) -> tuple[tuple[int, int, int], ...]:
        """Each hot bench with its operator and its watcher."""
        watchers = {duty.bench: duty.person for duty in self.doing("watches")}
        held = (*self.doing("demonstrates"), *self.doing("operates"))
        return tuple((duty.bench, duty.person, watchers[duty.bench]) for duty in held if duty.bench)


def rota(evening: Evening, sessions: Sequence[Sequence[Pass]]) -> tuple[Slot, ...]:
    """Every while of every session; together they fill it from start to end.

    Args:
        evening: A session and who is there.
        sessions: Passes of each, as `sessions_of` puts them.

    Examples:
        >>> from calc.class_plan.passes import Wanted, sessions_of
        >>> two = Evening(learners=2, benches=1, length=90, set_up=5, demonstration=5, shut_down=10, watch=60)
        >>> [(slot.start, slot.end, slot.hot) for slot in rota(two, sessions_of(two, [Wanted("lap", "Lap", 1, 10)]))][1:4]
        [(5, 10, ((1, 0, 1),)), (10, 20, ((1, 1, 2),)), (20, 30, ((1, 2, 1),))]
    """
    slots: list[Slot] = []
    for number, passes in enumerate(sessions, start=1):
        slots += _session(number, evening, passes)
    return tuple(slots)


def _session(number: int, evening: Evening, passes: Sequence[Pass]) -> Iterator[Slot]:
    everyone = range(1, evening.learners + 1)
    clock = 0

    def slot(
        minutes: int, phase: str, lead: Duty, duties: Sequence[Duty], *, exercise: str = "", tries: int = 0
    ) -> Slot:
        return Slot(
            session=number,
            start=clock,
            end=clock + minutes,
            phase=phase,
            exercise=exercise,
            tries=tries,
            duties=(lead, *duties),
        )

    teaches = Duty(INSTRUCTOR, "teaches")
    if evening.set_up:
        yield slot(evening.set_up, "set-up", teaches, [Duty(one, "sets-up") for one in everyone])
        clock += evening.set_up
    if evening.demonstration:
        new = [one.exercise.title for one in passes if one.first]
        yield slot(
            evening.demonstration, "demonstration", *_demonstration(everyone, bool(new)), exercise=", ".join(new)
        )
        clock += evening.demonstration
    before: set[int] = set()
    for one in passes:
        for turn in range(evening.rounds):
            duties = _turn(evening, turn, before)
            yield slot(one.turn, "turns", teaches, duties, exercise=one.exercise.title, tries=one.tries)
            before = {duty.person for duty in duties if duty.work == "operates"}
            clock += one.turn
    last = clock
    for start, end in _cuts(evening):
        yield slot(end - start, "after", teaches, _after(evening, start))
        clock = last + end
    if clock < evening.length:
        yield slot(
            evening.length - clock, "left", teaches, [Duty(one, "tidies") for one in everyone]
        )


def last_flame(evening: Evening, passes: Sequence[Pass]) -> int:
    """When the last flame goes out, min from the start of the session."""
    return evening.before + sum(one.turn for one in passes) * evening.rounds


def _demonstration(everyone: Sequence[int], flame: bool) -> tuple[Duty, list[Duty]]:
    if not flame:
        return Duty(INSTRUCTOR, "teaches"), [Duty(one, "judges") for one in everyone]
    first, *others = everyone
    lead = Duty(INSTRUCTOR, "demonstrates", 1)
    return lead, [Duty(first, "watches", 1), *(Duty(one, "looks-on") for one in others)]


def _turn(evening: Evening, turn: int, before: set[int]) -> list[Duty]:
    """Learners of one round: those of the next round watch it, or those of the first."""
    hot, count = evening.hot, evening.learners
    at = {turn * hot + bench: bench for bench in range(hot) if turn * hot + bench < count}
    beside = {(place + hot if place + hot < count else bench): bench for place, bench in at.items()}
    soon = range((turn + 2) * hot, (turn + 3) * hot)
    duties = []
    for place in range(count):
        if place in at:
            duties.append(Duty(place + 1, "operates", at[place] + 1))
        elif place in beside:
            duties.append(Duty(place + 1, "watches", beside[place] + 1))
        elif place + 1 in before:
            duties.append(Duty(place + 1, "judges"))
        elif place in soon:
            duties.append(Duty(place + 1, "cleans"))
        else:
            duties.append(Duty(place + 1, "problems" if (place + turn) % 2 else "dry-run"))
    return duties


def _cuts(evening: Evening) -> list[tuple[int, int]]:
    """Whiles, counted from the last flame: shifts of the watch, and the end of the shut-down."""
    marks = {0, evening.shut_down, evening.watch, *range(0, evening.watch, SHIFT)}
    ends = sorted(mark for mark in marks if mark <= evening.after)
    return list(pairwise(ends))


def fire_watchers(evening: Evening, since: int) -> tuple[int, ...]:
    """Learners who watch at a time after the last flame; none when the watch is over.

    Args:
        evening: A session and who is there.
        since: Of the last flame, min.
    """
    if since >= evening.watch:
        return ()
    at_once = 2 if evening.learners >= 4 else 1
    first = since // SHIFT * at_once
    return tuple((first + place) % evening.learners + 1 for place in range(at_once))


def _after(evening: Evening, since: int) -> list[Duty]:
    watch = fire_watchers(evening, since)
    rest = "shuts-down" if since < evening.shut_down else "tidies"
    return [Duty(one, "watches-fire" if one in watch else rest) for one in range(1, evening.learners + 1)]
