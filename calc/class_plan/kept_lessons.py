"""Lessons whose gas was kept on a device: a row for each, their mean factor, and a file of them.

A device keeps what was typed; every figure is worked out anew from it.
"""

import csv
import io
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import fsum, sqrt

from calc.answer.answering import computed, found
from calc.ask.errors import InputError
from calc.calculators.gas_log import WEIGHED
from calc.show.scales import Scale, scale
from calc.values.figures import Figure
from calc.values.numbers import plain_number, rounded

LOG = "gas-log"
MOST_LINES = 400
NAME = "gas-log.csv"
_OURS = ("calculator_id", "units", "drawings")
"""Names that no input may have."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """One lesson that was kept.

    Attributes:
        day: Its day as typed, or empty.
        fuel: Fuel gas, in words.
        used: Gas used, m³ at 15 °C and 1 atm: fuel gas, oxygen.
        planned: Gas planned, m³ likewise, None where none was given.
        factors: Factor with low and high of its band, None where none was planned.
        next: Gas factor for the next plan, or None.
    """

    day: str
    fuel: str
    used: tuple[float, float]
    planned: tuple[float | None, float | None]
    factors: tuple[tuple[float, float, float] | None, tuple[float, float, float] | None]
    next: float | None


def kept(lines: Sequence[Mapping[str, str]]) -> list[Kept]:
    """The lessons that a device kept, each worked out from its texts.

    Args:
        lines: Texts of the inputs of each lesson, by name.

    Raises:
        InputError: A line cannot be worked out, or there are too many.
    """
    if len(lines) > MOST_LINES:
        raise InputError(
            "log", "Kept lessons", f"there are {len(lines)}; {MOST_LINES} at most, delete some."
        )
    return [kept_one(texts) for texts in lines]


def kept_one(texts: Mapping[str, str]) -> Kept:
    """One lesson that a device kept, worked out from its texts.

    Raises:
        InputError: It cannot be worked out.
    """
    given = {str(name): str(text) for name, text in texts.items() if str(name) not in _OURS}
    got, taken, *_ = computed(found(LOG), given)
    day, fuel = taken["day"], taken["fuel"]
    assert fuel is not None
    used, factor = got.results, got.results.next_factor
    planned_fuel, planned_oxygen = (
        None if one is None else one.si for one in (taken["planned_fuel"], taken["planned_oxygen"])
    )
    return Kept(
        day="" if day is None else day.text, fuel=WEIGHED.get(fuel.text, fuel.text),
        used=(used.fuel_used.value, used.oxygen_used.value), planned=(planned_fuel, planned_oxygen),
        factors=(_band(used.fuel_factor), _band(used.oxygen_factor)), next=None if factor is None else factor.value,
    )  # fmt: skip


def _band(factor: Figure | None) -> tuple[float, float, float] | None:
    if factor is None:
        return None
    assert factor.value is not None
    assert factor.low is not None
    assert factor.high is not None
    return factor.value, factor.low, factor.high


@dataclass(frozen=True, slots=True)
class Mean:
    """Mean of the factors of several lessons.

    Attributes:
        count: Lessons that have a factor.
        mean: Their mean, or None where there is none.
        spread: Standard deviation of one lesson, or None below two.
    """

    count: int
    mean: float | None
    spread: float | None


def mean_factor(lessons: Sequence[Kept]) -> Mean:
    """Mean and spread of the gas factors that lessons gave.

    Args:
        lessons: Kept lessons; those without a plan do not count.

    Returns:
        The mean, and the standard deviation of one lesson about it.

    Examples:
        >>> one = Kept(day="", fuel="Acetylene", used=(1.0, 1.0), planned=(1.0, 1.0), factors=(None, None), next=1.0)
        >>> mean_factor([one]).spread is None
        True
    """
    factors = [one.next for one in lessons if one.next is not None]
    if not factors:
        return Mean(0, None, None)
    mean = fsum(factors) / len(factors)
    if len(factors) == 1:
        return Mean(1, mean, None)
    spread = sqrt(fsum((factor - mean) ** 2 for factor in factors) / (len(factors) - 1))
    return Mean(len(factors), mean, spread)


def scale_of(rules: str) -> Scale:
    """Unit that kept gas is listed in: cubic feet in the US, litres elsewhere."""
    return scale("contents", rules) if rules == "us" else Scale("L", free_gas=True)


def counted_at(rules: str) -> str:
    """The state at which the listed gas is counted."""
    return "at 70 °F and 1 atm" if rules == "us" else "at 15 °C and 1 atm"


def columns(rules: str, state: str = "") -> tuple[str, ...]:
    """Headings, each with its unit.

    Args:
        rules: Rule set.
        state: State that gas is counted at, where a heading is to say it.
    """
    counted = f"{scale_of(rules).name} {state}".strip()
    return (
        "Day", "Fuel gas", f"Fuel gas used [{counted}]", f"Fuel gas planned [{counted}]", f"Oxygen used [{counted}]",
        f"Oxygen planned [{counted}]", "Factor of the fuel gas [1]", "Factor of the oxygen [1]",
        "Gas factor for the next plan [1]",
    )  # fmt: skip


def cells(one: Kept, rules: str) -> tuple[str, ...]:
    """One lesson as the list and the file show it."""
    unit = scale_of(rules)
    gas = [one.used[0], one.planned[0], one.used[1], one.planned[1]]
    factors = [None if factor is None else factor[0] for factor in one.factors]
    return (
        one.day or "no day", one.fuel, *("" if amount is None else unit.text(amount) for amount in gas),
        *("" if factor is None else plain_number(factor, 3) for factor in (*factors, one.next)),
    )  # fmt: skip


def mean_words(lessons: Sequence[Kept]) -> str:
    """What the kept lessons say together, in a sentence."""
    mean = mean_factor(lessons)
    if mean.mean is None:
        return "No lesson here has planned amounts, so there is no factor yet."
    said = rounded(mean.mean, 2, "up")
    if mean.spread is None:
        return f"One lesson gives a gas factor of {said}. Keep more of them before you lean on it."
    least, most = rounded(mean.mean - mean.spread, 2, "down"), rounded(mean.mean + mean.spread, 2, "up")
    return (
        f"Mean gas factor of {mean.count} lessons: {said}, usual spread {least} to {most} (one standard deviation "
        "either way). Put the mean into the class plan as its gas factor."
    )


def log_file(lines: Sequence[Mapping[str, str]], rules: str) -> str:
    """The kept lessons as CSV, units in its headings.

    Args:
        lines: As of `kept`.
        rules: Rule set that decides the units.
    """
    written = io.StringIO()
    rows = csv.writer(written)
    rows.writerow(columns(rules, counted_at(rules)))
    rows.writerows(cells(one, rules) for one in kept(lines))
    return written.getvalue()
