"""Known slips: each is one wrong turn in the givens or in the sum, and the answer it leads to.

`SLIPS` is the table. A slip concerns every calculator that has the inputs it
names. The wrong sum is the calculator's own, run on what the slip makes of the
givens, past the limits of the form: a gauge taken for absolute may be below nothing.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from calc.answer.answering import found
from calc.ask.inputs import METALS
from calc.ask.reading import typed
from calc.data.tables import table
from calc.declare import Field
from calc.formulas.gas.properties import oxygen_ratio
from calc.formulas.setup.sheet import sheet_thickness, swg_thickness
from calc.practice.problems import SHARE, Problem, fits
from calc.values.quantities import ATMOSPHERE
from calc.values.units import from_si, to_si, written

AMONG_OTHERS = ("s", "min", "h", "psi", "bar", "kPa", "in", "ft", "mm", "m", "degF", "degC", "lb", "kg", "ft^3", "m^3", "L",
                "in^3", "cfh", "L/h", "L/min", "Btu/h", "kW")  # fmt: skip
"""Units that an answer's number may have been meant in."""


BY_NET_WEIGHT = frozenset({"gas_left", "weight_left", "share_of_full"})
"""Results that go by weight less tare."""


class Case:
    """A problem as a slip sees it: the givens in SI, by name, and the calculator to run again."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.calculator = found(problem.calculator)
        self.given = dict(problem.si_given)

    def fields(self, *words: str, unit: str = "") -> list[str]:
        """Inputs that hold a number here, with one of some words in their name, and of the kind of a unit."""
        return [
            name
            for name, asked in self.calculator.inputs.items()
            if isinstance(asked, Field)
            and isinstance(self.given.get(name), float)
            and (not words or any(word in name for word in words))
            and (not unit or fits(asked.units[0], unit))
        ]

    def again(self, **changed: Any) -> float | None:
        """The result in SI with other givens; None where the sum then has no answer."""
        try:
            got = self.calculator.function(**(self.given | changed))
            figure = getattr(got.results, self.problem.result)
            value = None if figure is None else figure.value
        except (ArithmeticError, ValueError, LookupError):  # InputError is a ValueError
            return None
        return value if value is not None and math.isfinite(value) and value > 0 else None


Found = Iterator[tuple[str, float | None]]


def _gauge_taken_for_absolute(case: Case) -> Found:
    for name in case.fields("gauge", unit="psi"):
        yield (
            "a gauge reading was taken for absolute pressure: the air’s own pressure is missing",
            case.again(**{name: case.given[name] - ATMOSPHERE}),
        )


def _absolute_taken_for_gauge(case: Case) -> Found:
    for name in case.fields("gauge", unit="psi"):
        yield (
            "the air’s own pressure was added once too often: that is absolute pressure, not gauge",
            case.again(**{name: case.given[name] + ATMOSPHERE}),
        )


def _other_temperature_scale(case: Case) -> Found:
    for name in case.fields(unit="degF"):
        text = case.problem.texts.get(name)
        got = typed(text) if text else None
        if got is not None and got.unit in ("degF", "degC"):
            other = "degC" if got.unit == "degF" else "degF"
            yield (
                f"{written(got.unit)} was taken for {written(other)}",
                case.again(**{name: to_si(got.number, other)}),
            )


def _other_gauge_series(case: Case) -> Found:
    for name, text in case.problem.texts.items():
        asked = case.calculator.inputs.get(name)
        if not isinstance(asked, Field) or not asked.sheet_gauge or not text.endswith((" ga", " swg")):
            continue
        number = typed(text).number
        if text.endswith(" ga"):
            yield (
                "the number was read in the British wire gauge",
                case.again(**{name: swg_thickness(number).thickness}),
            )
        for metal, words in METALS.items():
            try:
                other = sheet_thickness(number, metal, case.problem.rules).thickness
            except ValueError:
                continue
            yield f"the number was read in the gauge series of {words.lower()}", case.again(**{name: other})


def _one_for_several(case: Case) -> Found:
    for name in case.fields("hoses", "torches", "holes", "seams", "joints"):
        if case.given[name] > 1:
            yield (
                f"that is for one; “{case.calculator.inputs[name].label}” was left out",
                case.again(**{name: 1.0}),
            )
        elif name == "hoses":
            yield "that is for two hoses, and there is one", case.again(hoses=2.0)


def _gross_for_net(case: Case) -> Found:
    if {"gross_weight", "tare_weight"} <= set(case.given) and case.problem.result in BY_NET_WEIGHT:
        gross, tare = case.given["gross_weight"], case.given["tare_weight"]
        # The calculator refuses more than a full cylinder, so this one is reckoned by its ratio.
        yield (
            "the tare was not taken off the weight",
            case.problem.si(case.problem.key) * gross / (gross - tare),
        )


def complete_ratio(fuel: str) -> float:
    """Volumes of oxygen that burn one volume of a fuel whole, air and cylinder together.

    Examples:
        >>> complete_ratio("acetylene")
        2.5
    """
    return float(
        next(
            r.ratio
            for r in table("oxygen-ratios-benchbook-2026")
            if (r.fuel, r.sense) == (fuel, "complete")
        )
    )


BY_RATIO = {"oxygen_flow": 1, "oxygen_from_cylinder": 1, "oxygen_hours": -1}
"""Results that go with the volumes of oxygen for one of fuel, or against them."""


def _complete_burn(case: Case) -> Found:
    fuel = case.given.get("fuel")
    power = BY_RATIO.get(case.problem.result)
    if power is not None and isinstance(fuel, str) and case.given.get("oxygen_ratio") is None:
        share = complete_ratio(fuel) / oxygen_ratio(fuel)
        yield (
            "that counts all the oxygen that burns the fuel whole; the air around the flame brings a good part of it",
            case.problem.si(case.problem.key) * share**power,
        )


def _diameter_for_radius(case: Case) -> Found:
    for name in case.fields("bore", "orifice", "diameter", "wire", unit="in"):
        label = case.calculator.inputs[name].label
        yield f"“{label}”: a diameter was taken for a radius", case.again(**{name: 2 * case.given[name]})
        yield f"“{label}”: a radius was taken for a diameter", case.again(**{name: case.given[name] / 2})


def _hours_for_minutes(case: Case) -> Found:
    for name in case.fields(unit="s"):
        label = case.calculator.inputs[name].label
        yield f"“{label}”: minutes were taken for hours", case.again(**{name: case.given[name] * 60})
        yield f"“{label}”: hours were taken for minutes", case.again(**{name: case.given[name] / 60})


def _gone_for_left(case: Case) -> Found:
    if case.problem.result == "share_of_full":
        left = case.problem.si(case.problem.key)
        yield "that is what is gone, not what is left", 1.0 - left if left < 1 else None


@dataclass(frozen=True, slots=True)
class Slip:
    """One known slip.

    Attributes:
        id: Its name.
        wrong: Words and answers, SI, that it leads to in a problem.
    """

    id: str
    wrong: Callable[[Case], Found]


SLIPS = (
    Slip("gauge-for-absolute", _gauge_taken_for_absolute),
    Slip("absolute-for-gauge", _absolute_taken_for_gauge),
    Slip("temperature-scale", _other_temperature_scale),
    Slip("gauge-series", _other_gauge_series),
    Slip("one-for-several", _one_for_several),
    Slip("gross-for-net", _gross_for_net),
    Slip("complete-burn", _complete_burn),
    Slip("diameter-for-radius", _diameter_for_radius),
    Slip("hours-for-minutes", _hours_for_minutes),
    Slip("gone-for-left", _gone_for_left),
)
"""Every slip that is looked for. `unit_slip` adds the units of the answer itself."""


@dataclass(frozen=True, slots=True)
class Wrong:
    """A wrong answer and the slip that leads to it.

    Attributes:
        slip: Id of the slip.
        words: What was done, for the reader.
        value: The wrong answer, in the unit of the key.
    """

    slip: str
    words: str
    value: float


def wrong_answers(problem: Problem) -> tuple[Wrong, ...]:
    """Wrong answers that tell their slip.

    Args:
        problem: The problem.

    Returns:
        Each wrong answer that lies apart from the key, and from every other slip's
        by more than both may differ; of those that lie together none is told.
    """
    case = Case(problem)
    shown = problem.declared
    all_found: list[Wrong] = []
    for slip in SLIPS:
        for words, si in slip.wrong(case):
            if si is not None:
                all_found.append(Wrong(slip.id, words, from_si(si, problem.unit, free_gas=shown.free_gas)))
    apart = [
        each
        for each in all_found
        if abs(each.value - problem.key) > problem.tolerance + slip_tolerance(each, problem)
    ]
    return tuple(
        each
        for each in _once(apart)
        if not any(_close(each, other, problem) for other in apart if other.words != each.words)
    )


def _once(found_here: list[Wrong]) -> Iterator[Wrong]:
    seen: set[str] = set()
    for each in found_here:
        if each.words not in seen:
            seen.add(each.words)
            yield each


def slip_tolerance(wrong: Wrong, problem: Problem) -> float:
    """By how much an answer may differ from a slip's, in the unit of the key: 3 % of it, as a slip is worked out as told."""
    return min(problem.tolerance, SHARE * abs(wrong.value))


def _close(one: Wrong, other: Wrong, problem: Problem) -> bool:
    return abs(one.value - other.value) <= slip_tolerance(one, problem) + slip_tolerance(other, problem)


def unit_slip(problem: Problem, number: float, unit: str) -> str:
    """What is said where the number is right in another unit than the one written; else empty.

    Args:
        problem: The problem.
        number: The number that was written.
        unit: The unit that was written.
    """
    shown = problem.declared
    for other in dict.fromkeys((*shown.units, *AMONG_OTHERS)):
        if other and other != unit and fits(other, problem.unit):
            meant = from_si(
                to_si(number, other, free_gas=shown.free_gas), problem.unit, free_gas=shown.free_gas
            )
            if abs(meant - problem.key) <= problem.tolerance:
                return f"the number is right in {written(other)}, but the unit you wrote is {written(unit)}"
    return ""
