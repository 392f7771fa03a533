"""The highest pressure at which acetylene may be used, by place."""

from calc.ask.errors import InputError
from calc.formulas.gas.acetylene import GAUGE_LIMIT


def acetylene_limit_words(rules: str) -> str:
    """The highest acetylene gauge of a rule set, as a reader sees it."""
    return "15 psi" if rules == "us" else "1.5 bar"


def require_acetylene_gauge(fuel: str, gauge: float, rules: str, field: str, label: str) -> None:
    """Refuse acetylene above the rule set's limit.

    Args:
        fuel: Id of the fuel gas.
        gauge: Gauge wanted, Pa.
        rules: Rule set.
        field: Name of the input, for the message.
        label: Its label.

    Raises:
        InputError: The fuel is acetylene and the gauge is above the limit.
    """
    if fuel == "acetylene" and gauge > GAUGE_LIMIT[rules] * (1 + 1e-9):
        raise InputError(
            field,
            label,
            f"acetylene is never used above {acetylene_limit_words(rules)} on the gauge, because it can "
            f"explode by itself; give {acetylene_limit_words(rules)} or less.",
        )
