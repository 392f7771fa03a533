"""A set of problems: the same for a whole class, from seed, calculators, rule set and release."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from calc.ask.errors import InputError
from calc.declare import Step
from calc.practice.dice import dice
from calc.practice.problems import Problem, problem
from calc.practice.topics import of_topic

HELP = {
    "ladder": "A ladder: worked at first, bare at the end",
    "worked": "A worked example with each",
    "steps": "Steps to complete with each",
    "bare": "Bare problems",
}
"""How much help a set gives, by id."""

LEVELS = ("worked", "steps", "bare")
MOST = 40
"""Problems in a set at most."""

NAMED = ("calculator_1", "calculator_2", "calculator_3", "calculator_4")
"""Inputs that name single calculators."""


@dataclass(frozen=True, slots=True)
class Numbered:
    """One problem of a set.

    Attributes:
        number: Its place, from 1.
        problem: The problem.
        level: `worked`, `steps` or `bare`: the help it stands with.
    """

    number: int
    problem: Problem
    level: str


def level_of(help_wanted: str, number: int, problems: int) -> str:
    """Help that one problem of a set stands with.

    Examples:
        >>> [level_of("ladder", number, 6) for number in range(1, 7)]
        ['worked', 'worked', 'steps', 'steps', 'bare', 'bare']
    """
    if help_wanted != "ladder":
        return help_wanted
    return LEVELS[min(3 * (number - 1) // problems, 2)]


@lru_cache(maxsize=16)
def problem_set(
    *, calculators: tuple[str, ...], topic: str, seed: int, problems: int, help_wanted: str, rules: str
) -> tuple[Numbered, ...]:
    """The problems of a set.

    Args:
        calculators: Ids of the calculators; none for those of the topic.
        topic: Id of the topic.
        seed: Number of the set.
        problems: How many.
        help_wanted: Id of the help.
        rules: Rule set.

    Raises:
        InputError: No problem can be made of a calculator that was named.
    """
    ids = list(dict.fromkeys(calculators)) or of_topic(topic)
    order = dice("order", seed, rules, *ids).shuffled(ids)
    made: list[Problem] = []
    seen: set[str] = set()
    place = 0
    while len(made) < problems and order:
        name = order[place % len(order)]
        try:
            made.append(_another(name, rules, seed, len(made) + 1, seen))
            place += 1
        except InputError as error:
            if calculators:
                which = NAMED[calculators.index(name)]
                raise InputError(which, LABELS[which], f"{error.message[:-1]}; pick another.") from None
            order.remove(name)
    if not made:
        raise InputError(
            "topic", "Topic", "no problem can be made of it under this rule set; pick another."
        )
    return tuple(
        Numbered(number, each, level_of(help_wanted, number, problems))
        for number, each in enumerate(made, start=1)
    )


LABELS = {name: f"Calculator {number}" for number, name in enumerate(NAMED, start=1)}
"""What those inputs are called."""


def _another(name: str, rules: str, seed: int, number: int, seen: set[str]) -> Problem:
    """A problem whose question the set does not have yet, as long as there are others."""
    for turn in range(16):
        found = problem(name, rules, dice("problem", name, rules, seed, number, turn))
        if found.question not in seen:
            break
    seen.add(found.question)
    return found


def set_of(given: dict[str, Any]) -> tuple[Numbered, ...]:
    """The set that belongs to the inputs of `problem-set`, as taken from a reader."""
    named = tuple(given[name] for name in NAMED if given[name])
    return problem_set(
        calculators=named,
        topic=given["topic"],
        seed=round(given["seed"]),
        problems=round(given["problems"]),
        help_wanted=given["help"],
        rules=given["rules"],
    )


def worked_example(one: Numbered) -> Problem:
    """A problem like it with other figures, to be shown with its answer."""
    asked = one.problem
    for turn in range(8):
        found = problem(asked.calculator, asked.rules, dice("example", asked.question, turn))
        if found.result == asked.result and found.question != asked.question:
            return found
    return found


def blanks(steps: tuple[Step, ...]) -> frozenset[int]:
    """Which steps are left open: every second one, and always the last."""
    last = len(steps) - 1
    return frozenset(place for place in range(len(steps)) if (last - place) % 2 == 0)
