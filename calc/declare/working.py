"""A formula worked with the reader's own numbers, kept as a line of working."""

import typing
from collections.abc import Callable
from functools import cache
from typing import Any

from calc.declare.results import Step


def worked(steps: list[Step], says: str, formula: Callable[..., float], **given: float) -> float:
    """Run a displayed formula and keep the line of working.

    Args:
        steps: List the line is added to.
        says: What the line finds, for the reader.
        formula: A closed-form formula of `calc.formulas`.
        **given: Its arguments in SI, by name.

    Returns:
        What the formula returns, SI.
    """
    units = _units_of(formula)
    value = formula(**given)
    numbers = tuple((name, number, units.get(name, "")) for name, number in given.items())
    steps.append(Step(says, formula.__name__, numbers, value, units["return"]))
    return value


def hints_of(function: Callable[..., Any]) -> dict[str, Any]:
    """Types of a function's arguments and of what it returns, as declared, by name."""
    return typing.get_type_hints(function, include_extras=True)


@cache
def _units_of(formula: Callable[..., Any]) -> dict[str, str]:
    """Unit of each argument of a formula, and of what it returns."""
    return {name: _unit_of(hint) for name, hint in hints_of(formula).items()}


def _unit_of(hint: Any) -> str:
    for extra in getattr(hint, "__metadata__", ()):
        if hasattr(extra, "name"):
            return "" if extra.name == "dimensionless" else str(extra.name)
    return ""
