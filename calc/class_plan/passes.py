"""An evening cut into passes: what everyone does in turn, and how many sessions that takes."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

MOST_SESSIONS = 12
"""More sessions than this are no longer one plan: our own limit."""


class TooLittleTimeError(ValueError):
    """Not even one try of an exercise fits into a session, or it takes too many sessions.

    Attributes:
        field: Input that the sentence is about.
        says: What broke and what will do, without the label.
    """

    def __init__(self, field: str, says: str) -> None:
        super().__init__(says)
        self.field, self.says = field, says


@dataclass(frozen=True, slots=True, kw_only=True)
class Evening:
    """One session in whole minutes, and who is there.

    Attributes:
        learners: How many; at least two, or nobody could watch.
        benches: With one torch each.
        length: Of the session, min.
        set_up: Before the demonstration, min.
        demonstration: Before the first turn, min.
        shut_down: After the last flame, min; the fire watch runs beside it.
        watch: Fire watch after the last flame, min.
    """

    learners: int
    benches: int
    length: int
    set_up: int
    demonstration: int
    shut_down: int
    watch: int

    @property
    def rounds(self) -> int:
        """Turns one after the other until all have had theirs."""
        return rounds_of(self.learners, self.benches)

    @property
    def hot(self) -> int:
        """Benches hot at once: so many as the rounds need, never more than can be watched.

        Examples:
            >>> Evening(learners=13, benches=6, length=180, set_up=0, demonstration=0, shut_down=0, watch=60).hot, Evening(learners=12, benches=9, length=180, set_up=0, demonstration=0, shut_down=0, watch=60).hot
            (5, 6)
        """
        return ceil(self.learners / self.rounds)

    @property
    def before(self) -> int:
        """From the start to the first turn, min."""
        return self.set_up + self.demonstration

    @property
    def after(self) -> int:
        """From the last flame until shut-down and fire watch are both over, min."""
        return max(self.shut_down, self.watch)

    @property
    def room(self) -> int:
        """Left for turns at the torch, min; below nothing where the rest does not fit."""
        return self.length - self.before - self.after


@dataclass(frozen=True, slots=True)
class Wanted:
    """An exercise that everyone is to do.

    Attributes:
        id: Of the exercise.
        title: As a reader calls it.
        tries: Of each learner.
        each: At the bench for one try, min.
    """

    id: str
    title: str
    tries: int
    each: int


@dataclass(frozen=True, slots=True)
class Pass:
    """Some tries of one exercise, done by everyone in turn within one session.

    Attributes:
        exercise: What is done.
        tries: In one turn.
        first: Whether the exercise begins with it.
    """

    exercise: Wanted
    tries: int
    first: bool

    @property
    def turn(self) -> int:
        """One turn, min."""
        return self.tries * self.exercise.each


def rounds_of(learners: int, benches: int) -> int:
    """Turns one after the other until all had theirs, each hot bench watched by another.

    Examples:
        >>> rounds_of(12, 6), rounds_of(12, 12), rounds_of(5, 2), rounds_of(2, 9)
        (2, 2, 3, 2)
    """
    return ceil(learners / min(benches, learners // 2))


def sessions_of(evening: Evening, wanted: Sequence[Wanted]) -> tuple[tuple[Pass, ...], ...]:
    """Passes of each session, in the order wanted; a turn is split by tries where it must be.

    Args:
        evening: A session and who is there.
        wanted: Exercises, the first one first.

    Raises:
        TooLittleTimeError: One try of one of them for everybody does not fit into a session.

    Examples:
        >>> evening = Evening(learners=4, benches=2, length=120, set_up=10, demonstration=10, shut_down=10, watch=60)
        >>> [[(one.exercise.id, one.tries) for one in session]
        ...  for session in sessions_of(evening, [Wanted("lap", "Lap", 3, 10)])]
        [[('lap', 2)], [('lap', 1)]]
    """
    sessions: list[list[Pass]] = [[]]
    left = evening.room
    for one in wanted:
        cost, due, first = one.each * evening.rounds, one.tries, True
        if cost > evening.room:
            raise TooLittleTimeError("session_length", _too_short(evening, one))
        while due:
            tries = min(due, left // cost)
            if tries < 1:
                sessions.append([])
                left = evening.room
                continue
            sessions[-1].append(Pass(one, tries, first))
            left -= tries * cost
            due, first = due - tries, False
    if len(sessions) > MOST_SESSIONS:
        raise TooLittleTimeError(
            "session_length",
            f"all tries of all exercises take {len(sessions)} sessions and a plan holds {MOST_SESSIONS}; give a longer "
            "session, more benches, fewer learners or fewer tries",
        )
    return tuple(tuple(passes) for passes in sessions)


def _too_short(evening: Evening, one: Wanted) -> str:
    """What broke, and what will do."""
    takes = one.each * evening.rounds
    rest = evening.before + evening.after
    do = [f"{_hours(rest + takes)} or more"]
    most = max(evening.room, 0) // one.each
    benches = ceil(evening.learners / most) if most else evening.learners
    if most and evening.benches < benches <= evening.learners // 2:
        do.append(f"{benches} benches")
    fewer = [
        number
        for number in range(2, evening.learners)
        if rounds_of(number, evening.benches) * one.each <= evening.room
    ]
    if fewer:
        do.append(f"at most {max(fewer)} learners")
    return (
        f"one try of “{one.title}” for everybody takes {takes} min of turns, and {max(evening.room, 0)} min are left beside "
        f"the {rest} min before the first flame and after the last; give {', or '.join(do)}"
    )


def _hours(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    return f"{hours} h {rest} min" if hours and rest else f"{hours} h" if hours else f"{rest} min"
