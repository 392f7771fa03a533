"""A reader's texts turned into the inputs of a calculator, or into sentences."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from calc.ask.errors import InputError
from calc.ask.reading import LONGEST, Typed, UnreadableError, typed
from calc.ask.words_and_days import day_of, words_of
from calc.declare import RULE_SETS, Asked, Calculator, Choice, Day, Field, Words, by_rules
from calc.formulas.setup.drills import drill_diameter
from calc.formulas.setup.sheet import sheet_thickness, swg_thickness
from calc.values.numbers import plain_number
from calc.values.units import WRITTEN, dimension, from_si, to_si, written

RULES = Choice("Rule set", RULE_SETS, assumed="us")
"""The rule set, asked by every calculator."""

SHOWN_IN = Choice(
    "Units of the results",
    {"us": "Inches, psi, ft³", "metric": "Millimetres, bar, litres"},
    hint="Not chosen: those of the rule set.",
    optional=True,
)
"""The units results are shown in, asked by every calculator; left out, the rule set decides."""

LONGEST_LIST = 340
"""Letters of a list of options in a message."""

METALS = {
    "low-carbon-steel": "Low-carbon steel",
    "galvanised-steel": "Galvanised steel",
    "stainless-steel": "Stainless steel",
    "aluminium": "Aluminium",
    "copper": "Copper",
    "brass": "Brass",
}
"""Metals that sheet gauges are defined for, by id."""


@dataclass(frozen=True, kw_only=True)
class Taken:
    """One input as it was taken: the text, the number as typed, and its SI value."""

    label: str
    text: str
    value: float | str | None
    unit: str
    si: Any
    series: str = ""


def _example_of(field: Asked, rules: str) -> str:
    if isinstance(field, Choice):
        return field.options[by_rules(field.example or field.assumed or "", rules)]
    if isinstance(field, Words | Day):
        return by_rules(field.example or field.assumed or "", rules)
    for text in (field.example, field.assumed, field.low):
        if text is not None:
            return as_printed(by_rules(text, rules))
    return f"1 {field.units[0]}".strip()


def as_printed(text: str) -> str:
    """A declared text with its unit as a reader writes it: `12 ft^3` as `12 ft³`."""
    number, _, unit = text.rpartition(" ")
    return f"{number} {WRITTEN[unit]}" if unit in WRITTEN else text


@cache
def _declared_si(text: str, free_gas: bool) -> float:
    got = typed(text)
    return to_si(got.number, got.unit, free_gas=free_gas)


def bound_si(field: Field, text: str) -> float:
    """A limit or an assumed text of a declaration in SI."""
    return _declared_si(text, field.free_gas)


def _in_unit(si: float, unit: str, field: Field) -> str:
    return f"{plain_number(from_si(si, unit, free_gas=field.free_gas))} {written(unit)}".strip()


def _range_words(field: Field, rules: str, unit: str) -> str:
    low = by_rules(field.low, rules) if field.low is not None else None
    high = by_rules(field.high, rules) if field.high is not None else None
    if low is not None and high is not None:
        return (
            f"give {_in_unit(bound_si(field, low), unit, field)} "
            f"to {_in_unit(bound_si(field, high), unit, field)}"
        )
    if low is not None:
        return f"give {_in_unit(bound_si(field, low), unit, field)} or more"
    if high is not None:
        return f"give {_in_unit(bound_si(field, high), unit, field)} or less"
    return "give a number"


def _from_series(
    name: str, field: Field, got: Typed, rules: str, metal: str
) -> tuple[float, str, str] | None:
    """Length of a sheet gauge or a drill, its word, and the series it belongs to."""
    word = got.unit.lower()
    if field.sheet_gauge and word in ("ga", "gauge", "gage", "ga.", "g", "swg"):
        try:
            sheet = (
                swg_thickness(got.number) if word == "swg" else sheet_thickness(got.number, metal, rules)
            )
        except ValueError as error:
            raise InputError(name, field.label, str(error)) from None
        return sheet.thickness, "swg" if word == "swg" else "ga", sheet.series
    if field.drill and word == "#":
        try:
            return drill_diameter(f"{got.number:.0f}"), "#", "number twist drills"
        except ValueError as error:
            raise InputError(name, field.label, str(error)) from None
    return None


def _number(name: str, field: Field, text: str, rules: str, metal: str) -> Taken:
    try:
        got = typed(text)
    except UnreadableError as error:
        reason = f"{error}; {_range_words(field, rules, field.units[0])}"
        if str(error).startswith("nothing"):
            reason = f"nothing is written here; write for example {_example_of(field, rules)}"
        raise InputError(name, field.label, reason) from None
    series = _from_series(name, field, got, rules, metal)
    if series is not None:
        si, unit, series_name = series
        _hold_range(name=name, field=field, si=si, text=text, rules=rules, unit=field.units[0])
        return Taken(label=field.label, text=text, value=got.number, unit=unit, si=si, series=series_name)
    unit = got.unit
    if not unit and field.units != ("",):
        if len(field.units) > 1 or field.units[0] != "%":
            raise InputError(name, field.label, f"write the unit too, for example {_example_of(field, rules)}.")
        unit = field.units[0]
    if unit not in field.units and not _same_kind(unit, field.units[0]):
        offered = ", ".join(written(u) for u in field.units) or "no unit"
        word = written(unit[:20])
        example = _example_of(field, rules)
        raise InputError(
            name, field.label, f"“{word}” does not fit here; use {offered}, as in {example}."
        )
    si = to_si(got.number, unit, free_gas=field.free_gas)
    if not math.isfinite(si):
        raise InputError(name, field.label, "that number is too large to be meant.")
    if field.whole and not float(got.number).is_integer():
        raise InputError(
            name, field.label, f"{text.strip()} is not a whole number; {_range_words(field, rules, unit)}"
        )
    _hold_range(name=name, field=field, si=si, text=text, rules=rules, unit=unit)
    return Taken(label=field.label, text=text, value=got.number, unit=unit, si=si)


def _same_kind(unit: str, wanted: str) -> bool:
    try:
        return bool(unit) and dimension(unit) == dimension(wanted)
    except Exception:  # pint raises many kinds for a word that is no unit
        return False


def _hold_range(*, name: str, field: Field, si: float, text: str, rules: str, unit: str) -> None:
    slack = 1e-9
    for limit, sign, special, word in (
        (field.low, -1.0, field.too_low, "too small"),
        (field.high, 1.0, field.too_high, "too large"),
    ):
        if limit is None:
            continue
        edge = bound_si(field, by_rules(limit, rules))
        if sign * (si - edge) > slack * max(abs(edge), 1e-12):
            what = special or f"{text.strip()} is {word}"
            raise InputError(name, field.label, f"{what}; {_range_words(field, rules, unit)}")


def _listed(words: tuple[str, ...]) -> str:
    """Options in a row; of a long list the first few, as the form shows them all."""
    whole = ", ".join(words)
    if len(whole) <= LONGEST_LIST:
        return whole
    return f"{', '.join(words[:4])} or one of {len(words) - 4} others"


EARLIER_IDS = {"steel": "low-carbon-steel", "mps": "methylacetylene-propadiene"}
"""Ids that options had in links of before, and those of today."""


def _picked(name: str, choice: Choice, text: str) -> Taken:
    wanted = text.strip().lower() if len(text) <= LONGEST else ""
    if wanted not in choice.options:
        wanted = EARLIER_IDS.get(wanted, wanted)
    for option, words in choice.options.items():
        if wanted in (option, words.lower(), option.replace("-", " ")):
            return Taken(label=choice.label, text=words, value=option, unit="", si=option)
    offered = _listed(tuple(choice.options.values()))
    said = f"“{text.strip()}” is not one of them" if wanted else "nothing fitting is picked"
    raise InputError(name, choice.label, f"{said}; pick one of: {offered}.")


def taken_input(name: str, asked: Asked, text: str, rules: str, metal: str = "") -> Taken:
    """One input as taken from a reader's text.

    Args:
        name: Its name, for the message.
        asked: Its declaration.
        text: What was typed.
        rules: Rule set that decides what is allowed.
        metal: The metal chosen in the same form, for a gauge number; none chosen: low-carbon steel.

    Raises:
        InputError: It cannot be used.
    """
    if isinstance(asked, Choice):
        return _picked(name, asked, text)
    if isinstance(asked, Words):
        words = words_of(name, asked, text)
        return Taken(label=asked.label, text=words, value=words, unit="", si=words)
    if isinstance(asked, Day):
        day = day_of(name, asked, text)
        return Taken(label=asked.label, text=day.isoformat(), value=day.isoformat(), unit="", si=day)
    return _number(name, asked, text, rules, asked.metal or metal or "low-carbon-steel")


def rules_of(texts: Mapping[str, str]) -> str:
    """Rule set named in a request, or the assumed one.

    Raises:
        InputError: It is none that we know.
    """
    return str(_picked("rules", RULES, texts.get("rules", "us")).si)


def units_of(texts: Mapping[str, str], rules: str) -> str:
    """Units that the results are shown in: `us` or `metric`.

    Raises:
        InputError: The request names others.
    """
    if "shown_in" in texts:
        return str(_picked("shown_in", SHOWN_IN, texts["shown_in"]).si)
    return "us" if rules == "us" else "metric"


def taken_inputs(
    calculator: Calculator, texts: Mapping[str, str], rules: str
) -> tuple[dict[str, Taken | None], list[str]]:
    """Inputs of a calculator as taken from a reader's texts.

    Args:
        calculator: The declared calculator.
        texts: Text of each input, by name; `rules` may be among them.
        rules: Rule set that decides what is assumed and allowed.

    Returns:
        Each input as taken, None for one that is not asked or is left out with
        nothing assumed, and the names of those that were assumed.

    Raises:
        InputError: One or more cannot be used; all are in `listed()`.
    """
    wrong: list[InputError] = []
    taken: dict[str, Taken | None] = {}
    assumed: list[str] = []
    known = {*calculator.inputs, "rules", "shown_in"}
    for name in texts:
        if name not in known:
            shown = str(name)[:LONGEST]
            wrong.append(InputError(shown, "", f"“{shown}” is no input of {calculator.title}."))
    order = sorted(calculator.inputs, key=lambda name: not isinstance(calculator.inputs[name], Choice))
    for name in order:
        asked = calculator.inputs[name]
        text = texts.get(name)
        if not calculator.asks(name, {key: t.si for key, t in taken.items() if t is not None}):
            taken[name] = None
            continue
        if text is None:
            if asked.optional:
                taken[name] = None
                continue
            if asked.assumed is None:
                lead = "pick one" if isinstance(asked, Choice) else "nothing is written here"
                wrong.append(InputError(name, asked.label, f"{lead}; for example {_example_of(asked, rules)}"))
                continue
            text = by_rules(asked.assumed, rules)
            assumed.append(name)
        if not isinstance(text, str):
            wrong.append(InputError(name, asked.label, "write it as text, with its unit."))
            continue
        try:
            chosen = taken.get("metal")
            taken[name] = taken_input(name, asked, text, rules, str(chosen.si) if chosen else "")
        except InputError as error:
            wrong.append(error)
    if wrong:
        position = {name: index for index, name in enumerate(calculator.inputs)}
        wrong.sort(key=lambda error: position.get(error.field, -1))
        raise InputError(wrong[0].field, wrong[0].label, wrong[0].reason, others=tuple(wrong[1:]))
    return {name: taken[name] for name in calculator.inputs}, [
        name for name in calculator.inputs if name in assumed
    ]


def convert_text(field: Asked, name: str, text: str, unit: str) -> str:
    """A typed quantity as it reads in another unit, to seven figures.

    Args:
        field: Declaration of the input.
        name: Its name, for the message.
        text: Number and unit as typed.
        unit: Unit wanted, one of those the field offers.

    Returns:
        The number alone, as text.

    Raises:
        InputError: The text or the unit cannot be used.
    """
    if not isinstance(field, Field) or unit not in field.units:
        raise InputError(name, field.label, f"“{unit[:20]}” is not offered here.")
    try:
        got = typed(text)
    except UnreadableError as error:
        raise InputError(name, field.label, str(error)) from None
    if got.unit == unit:
        return plain_number(got.number, 12)
    if not _same_kind(got.unit, unit):
        raise InputError(name, field.label, "write the unit too.")
    si = to_si(got.number, got.unit, free_gas=field.free_gas)
    return plain_number(from_si(si, unit, free_gas=field.free_gas), 7)
