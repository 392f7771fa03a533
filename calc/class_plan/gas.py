"""Gas of a class: what flames burn and what purge and bleed let out, session by session."""

from collections.abc import Sequence
from dataclasses import dataclass

from calc.class_plan.one_try import GASES, Try
from calc.class_plan.passes import Evening, Pass
from calc.formulas.gas.supply import gas_of_use
from calc.values.figures import Figure
from calc.values.quantities import FreeGas, Ratio, Time

ENDS = ("low", "value", "high")


@dataclass(frozen=True, slots=True)
class Taken:
    """Gas that one thing takes in one session, the factor of the gas log in it.

    Attributes:
        session: Its number.
        what: Exercise, demonstration, or what is let out.
        flame_time: Flames burning, all torches added, s.
        gas: Of each gas, m³: least, as reckoned, most.
    """

    session: int
    what: str
    flame_time: Time
    gas: dict[str, tuple[FreeGas, FreeGas, FreeGas]]


def _end(figure: Figure, end: str) -> float:
    taken = getattr(figure, end)
    return float((figure.value if taken is None else taken) or 0.0)


def _burnt(session: int, what: str, one: Try, times: int, factor: Ratio) -> Taken:
    time = times * one.flame_time
    gas = {}
    for name in GASES:
        low, value, high = (factor * gas_of_use(_end(one.flow[name], end), time) for end in ENDS)
        gas[name] = (low, value, high)
    return Taken(session, what, time, gas)


def gas_of_class(
    evening: Evening, sessions: Sequence[Sequence[Pass]], tries: dict[str, Try], factor: Ratio
) -> tuple[Taken, ...]:
    """Every use of gas of every session.

    Args:
        evening: A session and who is there.
        sessions: Passes of each.
        tries: One try of each exercise, by id.
        factor: Gas really used for one reckoned, as the gas log has it.
    """
    rows = []
    for number, passes in enumerate(sessions, start=1):
        for one in passes:
            made = tries[one.exercise.id]
            if one.first and evening.demonstration:
                rows.append(_burnt(number, f"{one.exercise.title}, demonstrated", made, 1, factor))
            rows.append(_burnt(number, one.exercise.title, made, one.tries * evening.learners, factor))
        out = {}
        for name in GASES:
            most = max(tries[one.exercise.id].let_out[name] for one in passes)
            out[name] = (factor * evening.hot * most,) * 3
        rows.append(Taken(number, f"Purge and bleed, {evening.hot} torches", 0.0, out))
    return tuple(rows)


def summed(rows: Sequence[Taken], gas: str) -> tuple[FreeGas, FreeGas, FreeGas]:
    """Least, reckoned and most of one gas in some rows, m³."""
    low, value, high = (sum(row.gas[gas][end] for row in rows) for end in range(3))
    return low, value, high


def thirstiest(rows: Sequence[Taken], gas: str) -> FreeGas:
    """Gas of the session that takes most of it, m³."""
    by_session: dict[int, float] = {}
    for row in rows:
        by_session[row.session] = by_session.get(row.session, 0.0) + row.gas[gas][1]
    return max(by_session.values())


def peak(evening: Evening, tries: Sequence[Try], gas: str, factor: Ratio) -> Figure:
    """Every hot bench burning at the exercise that takes most, m³/s.

    A factor of the gas log below one does not lower it: the time may have been
    shorter, not the flame smaller.

    Args:
        evening: A session and who is there.
        tries: One try of each exercise.
        gas: `fuel` or `oxygen`.
        factor: Of the gas log.
    """
    most = max((one.flow[gas] for one in tries), key=lambda flow: flow.value or 0.0)
    times = evening.hot * max(factor, 1.0)
    low, value, high = (times * _end(most, end) for end in ENDS)
    high = max(times * _end(one.flow[gas], "high") for one in tries)
    return Figure(
        value, most.source, most.how_sure, low=low, high=high,
        basis=f"{evening.hot} torches burning at the exercise that takes most, by the job sheet's flow.",
    )  # fmt: skip
