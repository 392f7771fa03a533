"""One answer as one object: the same in Python, on the command line and in a page."""

import dataclasses
import math
from collections.abc import Callable, Mapping
from typing import Any

from calc.answer.hazards import filled, gravest_first
from calc.ask.errors import InputError
from calc.ask.inputs import Taken, rules_of, taken_inputs, units_of
from calc.ask.reading import typed
from calc.data.tables import HOW_SURE, graded, source_key, source_words, sources
from calc.declare import RULE_SETS, Answer, Calculator, Figure, Shown, by_rules
from calc.declare.catalogue import broken, calculators
from calc.release import RELEASE
from calc.values.numbers import Toward, plain_number, rounded
from calc.values.units import dimension, from_si, to_si, written


def found(calculator_id: str) -> Calculator:
    """The calculator with this id.

    Raises:
        InputError: There is none, or its declaration is broken.
    """
    known = calculators()
    if calculator_id in known:
        return known[calculator_id]
    if calculator_id in broken():
        raise InputError("calculator", "calculator", f"{broken()[calculator_id]}")
    raise InputError("calculator", "", f"There is no “{calculator_id[:60]}” here; there are {', '.join(known)}.")


def shown_unit(shown: Shown, units: str) -> str:
    """Unit that a result is shown in: US first, metric second."""
    return shown.units[0 if units == "us" or len(shown.units) == 1 else 1]


def shown_text(shown: Shown, si: float, unit: str, rules: str, toward: Toward) -> str:
    """A result with its unit, rounded as declared.

    Args:
        shown: How the result is declared.
        si: The number in SI.
        unit: Unit wanted.
        rules: Rule set, which decides the mark of an instrument.
        toward: Which way to round.

    Returns:
        Text such as `24 ft³ (70 °F, 1 atm)`.
    """
    value = from_si(si, unit, free_gas=shown.free_gas)
    if shown.step is not None:
        mark = typed(by_rules(shown.step, rules))
        size = from_si(to_si(mark.number, mark.unit), unit) - from_si(0.0, unit)
        ratio = value / size
        ways: dict[str, Callable[[float], int]] = {
            "nearest": round, "up": math.ceil, "down": math.floor,
        }  # fmt: skip
        near = ways[toward](round(ratio, 9))
        # In another unit than the gauge's own a mark is no round number: never print it above itself.
        own = mark.unit == unit
        number = plain_number(near * size) if own else rounded(near * size, shown.digits, "down")
    else:
        number = rounded(value, shown.digits, toward)
    return f"{number} {written(unit, free_gas=shown.free_gas)}".strip()


TOLD_AGAIN = {
    "clear_distance": ("clear-distance", "clear-distance-welding", "clear-distance-cutting"),
    "fire_watch": ("fire-watch",),
}
"""Results of an answer, and the figures of a caution that they come before."""


def _told_again(
    figures: Mapping[str, Figure], calculator: Calculator, rules: str, units: Mapping[str, str]
) -> dict[str, str]:
    """Clear distance and fire watch of an answer as it shows them, for the cautions beside it."""
    found: dict[str, str] = {}
    for name, again in TOLD_AGAIN.items():
        figure = figures.get(name)
        if figure is not None and figure.value is not None:
            shown = calculator.results[name]
            text = shown_text(shown, figure.value, units[name], rules, shown.toward)
            found |= dict.fromkeys(again, text)
    return found


def _result(name: str, figure: Figure, shown: Shown, rules: str, unit: str) -> dict[str, Any]:
    common = {
        "label": shown.label,
        "group": shown.group,
        "folded": shown.folded,
        "basis": figure.basis,
        "source": source_words(figure.source),
        "how_sure": HOW_SURE[graded(figure.source, figure.how_sure)],
    }
    if figure.value is None:
        return common | {
            "value": None, "si": None, "unit": "", "text": figure.words, "low": None, "high": None, "band": "",
        }  # fmt: skip
    for number in (figure.value, figure.low, figure.high):
        if number is not None and not math.isfinite(number):
            raise ArithmeticError(f"{name} came out as {number}")
    low, high = (
        None if end is None else from_si(end, unit, free_gas=shown.free_gas)
        for end in (figure.low, figure.high)
    )
    band = ""
    if figure.low is not None and figure.high is not None and figure.low != figure.high:
        coarse = dataclasses.replace(shown, digits=max(2, shown.digits - 1))
        ends: tuple[tuple[float, Toward], ...] = ((figure.low, "down"), (figure.high, "up"))
        least, most = (shown_text(coarse, end, unit, rules, toward).split(" ")[0] for end, toward in ends)
        band = f"{least} to {most} {written(unit)}".strip()
    text = shown_text(shown, figure.value, unit, rules, shown.toward)
    return common | {
        "value": from_si(figure.value, unit, free_gas=shown.free_gas),
        "si": figure.value,
        "unit": unit,
        "text": f"{text}, {figure.words}" if figure.words else text,
        "low": low,
        "high": high,
        "band": band,
    }


def _input(taken: Taken | None) -> dict[str, Any]:
    if taken is None:
        return {"label": "", "text": "", "value": None, "unit": ""}
    series = f" ({taken.series})" if taken.series else ""
    return {
        "label": taken.label,
        "text": f"{taken.text.strip()}{series}",
        "value": taken.value,
        "unit": taken.unit,
    }


def _wanted_units(calculator: Calculator, units: Mapping[str, str]) -> dict[str, str]:
    for name, unit in units.items():
        shown = calculator.results.get(name)
        if shown is None:
            raise InputError(name[:60], "", f"“{name[:60]}” is no result of {calculator.title}.")
        try:
            fits = unit in shown.units or dimension(unit) == dimension(shown.units[0])
        except Exception:  # pint raises many kinds for a word that is no unit
            fits = False
        if not fits:
            offered = ", ".join(shown.units)
            raise InputError(name, shown.label, f"it cannot be shown in “{unit[:20]}”; use {offered}.")
    return dict(units)


def computed(
    calculator: Calculator, texts: Mapping[str, str]
) -> tuple[Answer[Any], dict[str, Taken | None], list[str], str]:
    """Run a calculator on a reader's texts.

    Returns:
        The answer, the inputs as taken, the names of those assumed, the rule set.

    Raises:
        InputError: The texts cannot be used.
    """
    rules = rules_of(texts)
    taken, assumed = taken_inputs(calculator, texts, rules)
    given: dict[str, Any] = {name: None if t is None else t.si for name, t in taken.items()}
    if calculator.takes_rules:
        given["rules"] = rules
    return calculator.function(**given), taken, assumed, rules


def answer(
    calculator_id: str, *, units: Mapping[str, str] | None = None, drawings: bool = True, **texts: str
) -> dict[str, Any]:
    """Answer of one calculator, as one object.

    Args:
        calculator_id: Id of the calculator, such as `oxygen-left`.
        units: Unit wanted for a result, by the result's name.
        drawings: Whether maps and curves that take long are drawn too; without
            them `more` says whether there are any.
        **texts: Text of each input as a reader types it, such as
            `gauge="1500 psi"`; `rules` names the rule set, `shown_in` the units of
            the results, `us` or `metric`.

    Returns:
        `calculator`, `title`, `release`, `rules`, `inputs`, `assumed`, `results`,
        `cautions`, `steps`, `tables`, `pictures`, `files`, `sources`, as README.md shows.

    Raises:
        InputError: An input cannot be used; the message says what will do.

    Examples:
        >>> answer("sheet-thickness", gauge="16 ga")["results"]["thickness"]["text"]
        '0.0598 in'
    """
    told, got = told_alone(calculator_id, texts, units)
    tables, pictures = got.shown_beside()
    if drawings and got.drawn is not None:
        more_tables, more_pictures = got.drawn()
        tables, pictures = tables + more_tables, pictures + more_pictures
    return told | {
        "tables": [
            {"title": t.title, "columns": t.columns, "rows": t.rows, "note": t.note} for t in tables
        ],
        "pictures": [{"svg": p.svg, "title": p.title, "sentence": p.sentence} for p in pictures],
        "more": got.drawn is not None and not drawings,
    }


def told_alone(
    calculator_id: str, texts: Mapping[str, str], units: Mapping[str, str] | None = None
) -> tuple[dict[str, Any], Answer[Any]]:
    """The object of `answer` with nothing beside it, and the calculator's answer that it tells.

    Args:
        calculator_id: As of `answer`.
        texts: Text of each input.
        units: As of `answer`.

    Raises:
        InputError: As `answer`.
    """
    calculator = found(calculator_id)
    wanted = _wanted_units(calculator, units or {})
    got, taken, assumed, rules = computed(calculator, texts)
    system = units_of(texts, rules)
    given = {name: getattr(got.results, name) for name in calculator.results}
    figures = {name: figure for name, figure in given.items() if figure is not None}
    shown_in = {name: wanted.get(name) or shown_unit(calculator.results[name], system) for name in figures}
    told = _told_again(figures, calculator, rules, shown_in)
    cautions = gravest_first(filled(one, rules, told) for one in got.cautions)
    used = [f.source for f in figures.values()] + [c.source for c in cautions]
    keys = sorted({source_key(cell) for cell in used if cell})
    return {
        "calculator": calculator.id,
        "title": calculator.title,
        "release": RELEASE,
        "rules": rules,
        "rules_name": RULE_SETS[rules],
        "inputs": {
            name: _input(t) | {"label": calculator.inputs[name].label}
            for name, t in taken.items()
            if t is not None
        },
        "assumed": assumed,
        "results": {
            name: _result(
                name,
                figure,
                calculator.results[name],
                rules,
                shown_in[name],
            )
            for name, figure in figures.items()
        },
        "cautions": [
            {
                "id": c.id,
                "signal": c.signal,
                "text": c.text,
                "source": source_words(c.source),
                "how_sure": HOW_SURE[c.how_sure],
            }
            for c in cautions
        ],
        "steps": [
            {
                "says": s.says,
                "formula": s.formula,
                "numbers": [
                    {"name": name, "value": value, "unit": unit} for name, value, unit in s.numbers
                ],
                "result": {"value": s.value, "unit": s.unit},
            }
            for s in got.steps
        ],
        "tables": [],
        "pictures": [],
        "more": False,
        "files": [{"name": f.name, "words": f.words} for f in got.files],
        "sources": [
            {"key": key, "short": sources()[key]["short"], "title": sources()[key]["title"]} for key in keys
        ],
    }, got


def file_of(calculator_id: str, name: str, texts: Mapping[str, str]) -> dict[str, str]:
    """A file that an answer offers.

    Args:
        calculator_id: Id of the calculator.
        name: Name of the file.
        texts: As of `answer`.

    Returns:
        Its `name`, its `type` as a browser calls it, and its `text`.

    Raises:
        InputError: An input cannot be used, or there is no such file.
    """
    calculator = found(calculator_id)
    got, *_ = computed(calculator, texts)
    for offered in got.files:
        if offered.name == name:
            return {"name": name, "type": offered.kind, "text": offered.text()}
    known = ", ".join(offered.name for offered in got.files) or "none"
    raise InputError("file", "File", f"{calculator.title} has no “{name[:60]}”; it has {known}.")
