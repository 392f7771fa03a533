"""Values that a teacher would write into a problem: round, and near what the form shows."""

import math

from calc.ask.reading import Typed, typed
from calc.declare import Choice, Field, by_rules
from calc.practice.dice import Dice
from calc.values.numbers import plain_number
from calc.values.units import from_si, to_si

US_UNITS = frozenset(
    {"psi", "in", "ft", "ft^3", "in^3", "in^2", "ft^2", "lb", "oz", "degF", "cfh", "ft^3/min", "Btu", "Btu/h", "in/min",
     "kJ/in", "ft/s"}
)  # fmt: skip
"""Units that a class under another rule set does not meet in a problem."""

SHEET_GAUGES = (12, 14, 16, 18, 20, 22, 24)
FRACTIONS = (
    "1/16", "3/32", "1/8", "3/16", "1/4", "5/16", "3/8", "1/2", "5/8", "3/4", "7/8", "1", "1 1/4", "1 1/2", "2", "3", "4",
)  # fmt: skip
"""Inches as they stand on a rule and on a stock list."""

FULL = ("oxygen_cylinder_gauge", "full_gauge")
"""Gauges of a full cylinder: drawn no higher than they are filled to."""
LOWER = (0.6, 0.7, 0.75, 0.8, 0.9, 1.0)

STEPS = {"gross_weight": (-4, -3, -2, -1, 1, 2), "tare_weight": (-2, -1, 0, 1),
         "first_gauge": (-1, 0, 1), "last_gauge": (-4, -3, -2),
         "fuel_before": (0, 1, 2, 3), "fuel_after": (-3, -2, -1, 0)}  # fmt: skip
"""Inputs that stand close to another one: moved by so many steps, else the pair makes no sense."""

STEP = {"lb": 1.0, "kg": 0.5, "psi": 0.5, "bar": 0.02}
"""Length of such a step by unit."""

_SHARES = (0.6, 0.7, 0.75, 0.8, 0.9, 1.0, 1.1, 1.2, 1.25, 1.4, 1.5, 1.6)
_WARMER = (-30, -25, -20, -15, -10, -5, 0, 5, 10, 15, 20, 25, 30)


def round_number(value: float) -> float:
    """A number of two figures, the second a 0 or a 5 unless the first is 1.

    Examples:
        >>> round_number(1432.0), round_number(873.0), round_number(0.0463)
        (1400.0, 850.0, 0.045)
    """
    place = 10.0 ** (math.floor(math.log10(abs(value))) - 1)
    step = place if abs(value) < 20 * place else 5 * place
    return float(f"{round(value / step) * step:.6g}")


def _base(field: Field, rules: str) -> tuple[str, Typed]:
    text = by_rules(field.example or field.assumed or field.low or "", rules)
    got = typed(text)
    if rules == "us" or got.unit not in US_UNITS:
        return text, got
    unit = next((unit for unit in field.units if unit not in US_UNITS), got.unit)
    if unit == got.unit:
        return text, got
    number = from_si(to_si(got.number, got.unit, free_gas=field.free_gas), unit, free_gas=field.free_gas)
    return f"{plain_number(number)} {unit}", Typed(number, unit)


def _whole(field: Field, number: float, rules: str, dice: Dice) -> float:
    low = typed(by_rules(field.low, rules)).number if field.low is not None else 0
    high = typed(by_rules(field.high, rules)).number if field.high is not None else number * 4
    return float(dice.pick(range(int(max(low, number // 2, 1)), int(min(high, number * 2 + 3)) + 1)))


def _temperature(got: Typed, dice: Dice) -> float:
    ordinary = 120 if got.unit == "degF" else 50
    if abs(got.number) <= ordinary:
        return got.number + dice.pick(_WARMER) * (1.0 if got.unit == "degF" else 0.4)
    return round(got.number * (0.8 + 0.02 * dice.below(21)) / 10) * 10.0


def class_text(name: str, field: Field, rules: str, dice: Dice) -> str:
    """A value for one input, as a reader would type it.

    Args:
        name: Name of the input.
        field: Its declaration.
        rules: Rule set, which decides the unit.
        dice: Where the choice comes from.
    """
    text, got = _base(field, rules)
    if got.unit == "#":
        return f"#{got.number + dice.pick((-6, -4, -2, 0, 2, 4, 6)):.0f}"
    if field.sheet_gauge and got.unit.lower() in ("ga", "swg"):
        return f"{dice.pick(SHEET_GAUGES)} {got.unit}"
    if "/" in text and got.unit == "in":
        near = [size for size in FRACTIONS if 0.5 <= typed(f"{size} in").number / got.number <= 2.5]
        return f"{dice.pick(near)} in"
    if name in STEPS and got.unit in STEP:
        step = STEP[got.unit]
        number = (round(got.number / step) + dice.pick(STEPS[name])) * step
    elif field.whole:
        number = _whole(field, got.number, rules, dice)
    elif got.unit in ("degF", "degC"):
        number = _temperature(got, dice)
    elif got.number == 0:
        return text
    else:
        full = name in FULL or (name == "gauge" and "ylinder gauge" in field.label)
        number = round_number(got.number * dice.pick(LOWER if full else _SHARES))
        number = min(number, 100.0) if got.unit == "%" else number
    return f"{plain_number(number)} {got.unit}".strip()


def class_option(choice: Choice, rules: str, dice: Dice) -> str:
    """An option for one choice: the one of the form half the time, so that most problems are ordinary."""
    usual = by_rules(choice.example or choice.assumed or next(iter(choice.options)), rules)
    return usual if dice.below(2) else dice.pick(tuple(choice.options))
