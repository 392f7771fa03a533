"""Figures, words and emergency acts in a text at run time: `{acetylene-limit}` as the rule set has it."""

import re
from functools import cache
from typing import Any

from calc.data.emergencies import told
from calc.data.tables import table

FIGURES = "figures-benchbook-2026"
WORDS = "words-benchbook-2026"
BY_RULES = "figures-by-rules"

BRACES = re.compile(r"\{([a-z][a-z0-9-]*)\}")
"""How a text names a figure or a word."""


class UnknownIdError(ValueError):
    """A text names a figure or a word that no table has."""


@cache
def figures() -> dict[str, Any]:
    """Every figure by id."""
    return {row.id: row for row in table(FIGURES)}


@cache
def words() -> dict[str, Any]:
    """Every word that the rule sets call differently, by id."""
    return {row.id: row for row in table(WORDS)}


@cache
def elsewhere(name: str) -> tuple[Any, ...]:
    """Rows of other rule sets for a figure, where our data have any."""
    return tuple(row for row in table(BY_RULES) if row.id == name)


def figure_text(row: Any, rules: str = "us") -> str:
    """A figure as it stands in a sentence, the other system's in brackets.

    Args:
        row: Row of the figure.
        rules: Rule set; the US figure comes first in `us`, else the metric one.
    """
    if not row.metric:
        return str(row.us)
    first, second = (row.us, row.metric) if rules == "us" else (row.metric, row.us)
    return f"{first} ({second})"


def filled_text(text: str, rules: str) -> str:
    """A text with every figure and word in it as one rule set has it.

    Args:
        text: Text with `{id}` in it.
        rules: Rule set; one without a figure of its own has the US figure, in metric units first.

    Raises:
        UnknownIdError: No table has the id.

    Examples:
        >>> filled_text("Never over {acetylene-limit}.", "us"), filled_text("Never over {acetylene-limit}.", "iso")
        ('Never over 15 psi (103 kPa).', 'Never over 1.5 bar.')
    """

    def fill(found: re.Match[str]) -> str:
        name = found[1]
        if name in figures():
            own = next((row.text for row in elsewhere(name) if row.rules == rules), None)
            return own or figure_text(figures()[name], rules)
        if name in words():
            return str(getattr(words()[name], rules))
        acts = told(name)
        if acts is not None:
            return filled_text(acts, rules)
        raise UnknownIdError(f"{{{name}}} is neither in {FIGURES} nor in {WORDS}")

    return BRACES.sub(fill, text)
