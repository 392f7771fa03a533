"""Hypothesis strategies made from a calculator's declaration."""

import datetime
from typing import Any

from hypothesis import strategies as st

from calc.ask.inputs import SHOWN_IN, bound_si
from calc.declare import RULE_SETS, Asked, Calculator, Choice, Day, Field, Words, by_rules
from calc.values.numbers import plain_number
from calc.values.units import from_si


def _number_text(field: Field, rules: str) -> st.SearchStrategy[str]:
    low = bound_si(field, by_rules(field.low, rules)) if field.low is not None else 0.0
    high = bound_si(field, by_rules(field.high, rules)) if field.high is not None else low + 100.0

    def text(share: float, unit: str) -> str:
        value = from_si(low + share * (high - low), unit, free_gas=field.free_gas)
        number = str(round(value)) if field.whole else plain_number(value, 9)
        return f"{number} {unit}".strip()

    shares = st.one_of(st.sampled_from([0.0, 1.0, 0.5]), st.floats(0.0, 1.0))
    return st.builds(text, shares, st.sampled_from(field.units))


def _text(asked: Asked, rules: str) -> st.SearchStrategy[str]:
    if isinstance(asked, Choice):
        return st.sampled_from(list(asked.options))
    if isinstance(asked, Words):
        letters = st.characters(categories=("L", "N", "P", "Zs"), exclude_characters="<>")
        return st.text(letters, min_size=1, max_size=asked.longest).filter(str.strip)
    if isinstance(asked, Day):
        first, last = map(datetime.date.fromisoformat, (asked.earliest, asked.latest))
        return st.dates(first, last).map(datetime.date.isoformat)
    return _number_text(asked, rules)


def texts_of(calculator: Calculator) -> st.SearchStrategy[dict[str, str]]:
    """Texts that a reader may give: every choice, every unit, the whole range."""

    def for_rules(rules: str) -> st.SearchStrategy[dict[str, str]]:
        needed: dict[str, Any] = {"rules": st.just(rules)}
        free: dict[str, Any] = {"shown_in": st.sampled_from(list(SHOWN_IN.options))}
        for name, asked in calculator.inputs.items():
            texts = _text(asked, rules)
            (needed if asked.example is not None else free)[name] = texts
        return st.fixed_dictionaries(needed, optional=free)

    return st.sampled_from(list(RULE_SETS)).flatmap(for_rules)
