"""A problem made from a calculator: what is given, what is asked, the key, how near is right."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from calc.answering import computed, found, shown_text, shown_unit
from calc.asking import Taken, as_printed
from calc.declare import Answer, Calculator, Choice, Field, Shown, Step, Words, by_rules
from calc.errors import InputError
from calc.practice.dice import Dice
from calc.practice.offered import asked_of, varied_in, why_not
from calc.practice.values import class_option, class_text
from calc.reading import typed
from calc.show.numbers import plain_number
from calc.units import dimension, from_si, to_si, written

SHARE = 0.03
"""Share of the key by which an answer may differ."""

TRIES = 40
GRAVE = frozenset({"DANGER", "WARNING"})


@dataclass(frozen=True, slots=True)
class Problem:
    """One problem with its key.

    Attributes:
        calculator: Id of the calculator.
        title: Its title.
        rules: Rule set.
        texts: What is given, by input, as a reader would type it; the rule set among it.
        given: The same as sentences.
        taken_for_granted: What is assumed beside it, as sentences.
        result: Name of the result asked for.
        asked: Its label.
        unit: Unit that the key is in.
        key: The right answer in that unit.
        shown: The right answer as the calculator shows it.
        tolerance: By how much an answer may differ, in that unit.
        si_given: What the calculator's function was given, by name, in SI.
        steps: The calculator's own working.
    """

    calculator: str
    title: str
    rules: str
    texts: Mapping[str, str]
    given: tuple[str, ...]
    taken_for_granted: tuple[str, ...]
    result: str
    asked: str
    unit: str
    key: float
    shown: str
    tolerance: float
    si_given: Mapping[str, Any]
    steps: tuple[Step, ...]

    @property
    def declared(self) -> Shown:
        """How the result is declared."""
        return found(self.calculator).results[self.result]

    def si(self, value: float) -> float:
        """A number in the unit of the key, in SI."""
        return to_si(value, self.unit, free_gas=self.declared.free_gas)

    @property
    def within(self) -> str:
        """By how much an answer may differ, in words."""
        return f"{plain_number(self.tolerance, 2)} {written(self.unit)}".strip()

    @property
    def question(self) -> str:
        """What is given and what is asked, in one paragraph."""
        return f"{self.title}. {' '.join(self.given)} What is: {self.asked}?"

    @property
    def whole_question(self) -> str:
        """The question with all that is assumed beside it, and the unit the number alone is wanted in."""
        also = f" As usual: {' '.join(self.taken_for_granted)}" if self.taken_for_granted else ""
        unit = written(self.unit, free_gas=self.declared.free_gas)
        wanted = "Give a whole number." if self.is_count else f"Give the number{f' in {unit}' if unit else ''}, right within {self.within}."  # fmt: skip
        return f"{self.title}. {' '.join(self.given)}{also} What is: {self.asked}? {wanted}"

    @property
    def how_near(self) -> str:
        """How an answer is to be given, and how near is right."""
        unit = written(self.unit, free_gas=self.declared.free_gas)
        if self.is_count:
            return "Answer with a whole number."
        named = f"Unit: {unit}, or another that fits" if unit else "Answer with a number"
        return f"{named}. Right within {self.within} either way."

    @property
    def is_count(self) -> bool:
        """Whether the key counts things."""
        return not self.unit and float(self.key).is_integer()


def input_words(calculator: Calculator, name: str, text: str) -> str:
    """One input as a sentence: its label and its value.

    Examples:
        >>> input_words(found("hose-volume"), "length", "25 ft")
        'Length of the hose: 25 ft.'
    """
    asked = calculator.inputs[name]
    value = asked.options[text] if isinstance(asked, Choice) else as_printed(text)
    return f"{asked.label}: {value}."


@cache
def _usual_signals(calculator_id: str, rules: str) -> frozenset[str]:
    """Grave cautions that come with the example values; a problem brings no others."""
    calculator = found(calculator_id)
    texts = {
        name: by_rules(asked.example, rules)
        for name, asked in calculator.inputs.items()
        if asked.example is not None
    }
    got, *_ = computed(calculator, texts | {"rules": rules})
    return frozenset(caution.text for caution in got.cautions if caution.signal in GRAVE)


def _drawn(calculator: Calculator, rules: str, dice: Dice) -> dict[str, str]:
    texts = {"rules": rules}
    chosen: dict[str, object] = {}
    more = varied_in(calculator)
    for name, asked in calculator.inputs.items():
        wanted = (asked.example is not None or name in more) and not name.endswith("_price")
        if isinstance(asked, Choice):
            usual = by_rules(asked.assumed or "", rules)
            if calculator.asks(name, chosen):
                chosen[name] = class_option(asked, rules, dice) if wanted else usual
                if wanted:
                    texts[name] = str(chosen[name])
        elif wanted and calculator.asks(name, chosen):
            if isinstance(asked, Field):
                texts[name] = class_text(name, asked, rules, dice)
            elif isinstance(asked, Words):
                texts[name] = by_rules(asked.example or asked.assumed or "", rules)
    return texts


def _wanted(calculator: Calculator, got: Answer[Any], dice: Dice) -> str | None:
    names = [name for name in asked_of(calculator) if _number(got, name) is not None]
    if not names:
        return None
    from_table = len(asked_of(calculator)) <= 3  # picked by hand; else the first number it gives
    return dice.pick(names) if from_table else names[0]


def _number(got: Answer[Any], name: str) -> float | None:
    figure = getattr(got.results, name)
    return None if figure is None else figure.value


def tolerance_of(shown: Shown, key: float, unit: str, rules: str) -> float:
    """By how much an answer may differ from a key: 3 %, or one mark of the instrument if that is more.

    Args:
        shown: How the result is declared.
        key: The key, in `unit`.
        unit: Unit of the key.
        rules: Rule set, which decides the mark.
    """
    mark = 0.0
    if shown.step is not None:
        step = typed(by_rules(shown.step, rules))
        mark = from_si(to_si(step.number, step.unit), unit) - from_si(0.0, unit)
    si = to_si(key, unit, free_gas=shown.free_gas)
    printed = float(shown_text(shown, si, unit, rules, shown.toward).split(" ")[0])
    # What the calculator itself prints is right, however coarsely it rounds.
    return max(SHARE * abs(key), mark, 1.01 * abs(printed - key))


def _assumed_words(
    calculator: Calculator, taken: Mapping[str, Taken | None], names: list[str]
) -> tuple[str, ...]:
    told = []
    for name in names:
        got = taken[name]
        if got is not None and calculator.inputs[name].label:
            text = str(got.si) if isinstance(calculator.inputs[name], Choice) else got.text
            told.append(input_words(calculator, name, text))
    return tuple(told)


def _stands_among(taken: Mapping[str, Taken | None], unit: str, value: float, near: float) -> bool:
    """Whether a given value, read as it stands, would count as right: then there is nothing to work out."""
    if not unit:
        return False
    width = abs(to_si(near, unit) - to_si(0.0, unit))
    return any(
        isinstance(got.si, float) and got.unit and fits(got.unit, unit) and abs(got.si - value) <= width
        for got in taken.values()
        if got is not None
    )


def fits(unit: str, other: str) -> bool:
    """Whether two units are of one kind.

    Examples:
        >>> fits("psi", "bar"), fits("ga", "in")
        (True, False)
    """
    try:
        return dimension(unit) == dimension(other)
    except Exception:  # pint raises many kinds for a word that is no unit
        return False


def problem(calculator_id: str, rules: str, dice: Dice) -> Problem:
    """A problem made from a calculator.

    Args:
        calculator_id: Id of the calculator.
        rules: Rule set.
        dice: Where the figures come from.

    Raises:
        InputError: No problem is made from it; the message says why.
    """
    calculator = found(calculator_id)
    if why := why_not(calculator):
        raise InputError("calculator", f"{calculator.title}: no problem is made from it, as {why}.")
    for _ in range(TRIES):
        texts = _drawn(calculator, rules, dice)
        try:
            got, taken, assumed, _ = computed(calculator, texts)
        except InputError:
            continue
        grave = {caution.text for caution in got.cautions if caution.signal in GRAVE}
        name = _wanted(calculator, got, dice)
        value = None if name is None else _number(got, name)
        if name is None or value is None or grave - _usual_signals(calculator_id, rules):
            continue
        shown = calculator.results[name]
        unit = shown_unit(shown, "us" if rules == "us" else "metric")
        key = from_si(value, unit, free_gas=shown.free_gas)
        near = tolerance_of(shown, key, unit, rules)
        if key <= 0 or _stands_among(taken, unit, value, near):
            continue
        given = [input_words(calculator, each, text) for each, text in texts.items() if each != "rules"]
        return Problem(
            calculator_id, calculator.title, rules, texts, tuple(given),
            _assumed_words(calculator, taken, assumed), name, shown.label, unit, key,
            shown_text(shown, value, unit, rules, shown.toward), near,
            si_given(calculator, taken, rules), got.steps,
        )  # fmt: skip
    raise InputError(
        "calculator",
        f"{calculator.title}: no problem came of it, as most values near its examples are refused or bring a warning.",
    )


def si_given(calculator: Calculator, taken: Mapping[str, Taken | None], rules: str) -> dict[str, Any]:
    """What a calculator's function is given, by name, in SI.

    Args:
        calculator: The calculator.
        taken: Its inputs as taken.
        rules: Rule set.
    """
    given: dict[str, Any] = {name: None if got is None else got.si for name, got in taken.items()}
    return given | ({"rules": rules} if calculator.takes_rules else {})
