"""A problem made from a calculator: what is given, what is asked, the key, how near is right."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from calc.answer.answering import computed, found, shown_text, shown_unit
from calc.ask.errors import InputError
from calc.ask.inputs import Taken, as_printed
from calc.ask.reading import typed
from calc.data.texts import filled_text
from calc.declare import Answer, Calculator, Choice, Field, Figure, Shown, Step, Words, by_rules
from calc.practice.dice import Dice
from calc.practice.limits import Limits, limits_of
from calc.practice.topics import asked_of, questions, varied_in, why_not
from calc.practice.values import class_option, class_text
from calc.show.notation import unit_text
from calc.show.scales import scale
from calc.values.numbers import plain_number, rounded
from calc.values.units import dimension, from_si, to_si, written

SHARE = 0.03
"""Share of the key by which an answer may differ at least."""
WIDEST = 0.35
"""Share of the key past which no problem is made: the calculator itself does not know it well enough."""

TEXT_FIGURES = 4
"""Figures of a number in the rule that decides: with fewer the text would lead beside the key."""
TRIES = 80
GRAVE = frozenset({"DANGER", "WARNING"})


@dataclass(frozen=True, slots=True, kw_only=True)
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
        asked: The question, a whole sentence.
        unit: Unit that the key is in.
        key: The right answer in that unit.
        shown: The right answer as the calculator shows it.
        tolerance: By how much an answer may differ, in that unit.
        si_given: What the calculator's function was given, by name, in SI.
        steps: The calculator's own working.
        rule: Sentences that decide, with the figures that the reader would have to look up.
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
    rule: str = ""

    @property
    def declared(self) -> Shown:
        """How the result is declared."""
        return found(self.calculator).results[self.result]

    def si(self, value: float) -> float:
        """A number in the unit of the key, in SI."""
        return to_si(value, self.unit, free_gas=self.declared.free_gas)

    @property
    def limits(self) -> Limits:
        """What the text says that an answer is never below or above."""
        return limits_of(self.rule, self.unit, self.key)

    @property
    def accepted(self) -> tuple[float, float]:
        """The least and the largest answer that is right: the key's band, ended where the text sets a limit."""
        low, high = (self.limits.kept(self.key + way * self.tolerance) for way in (-1, 1))
        return low, high

    @property
    def within(self) -> str:
        """By how much an answer may differ, in words."""
        if self.unit == "%":
            return f"{plain_number(self.tolerance, 2)} percentage points"
        return f"{plain_number(self.tolerance, 2)} {written(self.unit)}".strip()

    @property
    def question(self) -> str:
        """What is given and what is asked, in one paragraph."""
        given = (self.title + ".", *self.given, *self.taken_for_granted, self.rule, self.asked)
        return " ".join(part for part in given if part)

    @property
    def whole_question(self) -> str:
        """The question with the unit that the number alone is wanted in, and how near is right."""
        unit = written(self.unit, free_gas=self.declared.free_gas)
        if self.is_count:
            return f"{self.question} Give a whole number."
        return f"{self.question} Give the number{f' in {unit}' if unit else ''}, right within {self.within}{self._not_past}."

    @property
    def _not_past(self) -> str:
        return ", and not past a limit that the text sets" if self.limits.any else ""

    @property
    def how_near(self) -> str:
        """How an answer is to be given, and how near is right."""
        unit = written(self.unit, free_gas=self.declared.free_gas)
        if self.is_count:
            return "Answer with a whole number."
        named = f"Unit: {unit}, or another that fits" if unit else "Answer with a number"
        return f"{named}. Right within {self.within} either way{self._not_past}."

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


def _fixed(calculator_id: str, result: str, rules: str, dice: Dice) -> dict[str, str]:
    """Inputs that a question fixes, or takes from a few."""
    row = questions()[calculator_id][result]
    text = row.fixed_us if rules == "us" else row.fixed_metric
    pairs = (part.split("=") for part in text.split(";") if part)
    return {name: dice.pick(options.split("|")) for name, options in pairs}


def _drawn(calculator: Calculator, result: str, rules: str, dice: Dice) -> dict[str, str]:
    fixed = _fixed(calculator.id, result, rules, dice)
    texts = {"rules": rules}
    chosen: dict[str, object] = {}
    more = varied_in(calculator)
    for name, asked in calculator.inputs.items():
        wanted = (asked.example is not None or name in more) and not name.endswith("_price")
        if name in fixed:
            texts[name] = fixed[name]
            if isinstance(asked, Choice):
                chosen[name] = fixed[name]
        elif isinstance(asked, Choice):
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


def tolerance_of(calculator_id: str, result: str, figure: Figure, unit: str, rules: str) -> float:
    """By how much an answer may differ from a key.

    The largest of 3 %, the calculator's own band, the rounding of what it prints, one mark of the
    instrument, and what a sound textbook method differs by; rounded up to a figure or two.

    Args:
        calculator_id: Id of the calculator.
        result: Name of the result.
        figure: What the calculator answered.
        unit: Unit of the key.
        rules: Rule set, which decides the mark.
    """
    shown = found(calculator_id).results[result]
    assert figure.value is not None

    def number(si: float) -> float:
        return from_si(si, unit, free_gas=shown.free_gas)

    def size(text: str) -> float:
        if not text:
            return 0.0
        mark = typed(text)
        si = to_si(mark.number, mark.unit, free_gas=shown.free_gas)
        return abs(number(si) - number(0.0))

    key = number(figure.value)
    printed = float(shown_text(shown, figure.value, unit, rules, shown.toward).split(" ")[0])
    row = questions().get(calculator_id, {}).get(result)
    method, least = (0.0, "") if row is None else (
        row.method or 0.0, row.least_us if rules == "us" else row.least_metric
    )  # fmt: skip
    ends = [abs(number(end) - key) for end in (figure.low, figure.high) if end is not None]
    widest = max(
        max(SHARE, method) * abs(key), size(least), size(by_rules(shown.step, rules)) if shown.step else 0.0,
        1.01 * abs(printed - key), *ends,
    )  # fmt: skip
    return max(widest, float(rounded(widest, 2, "up"))) if widest else 0.0


def _given_words(
    calculator: Calculator, taken: Mapping[str, Taken | None], names: list[str]
) -> tuple[str, ...]:
    told = []
    for name in names:
        got = taken[name]
        if got is not None and calculator.inputs[name].label:
            text = str(got.si) if isinstance(calculator.inputs[name], Choice) else got.text
            told.append(input_words(calculator, name, text))
    return tuple(told)


def _rule(calculator: Calculator, result: str, got: Answer[Any], rules: str) -> str:
    """The sentences that decide, filled with results, with numbers of the working, and with figures of print."""
    text = str(questions()[calculator.id][result].rule)
    unit_system = "us" if rules == "us" else "metric"
    for name, shown in calculator.results.items():
        figure = getattr(got.results, name)
        if f"{{{name}}}" in text and figure is not None and figure.value is not None:
            unit = shown_unit(shown, unit_system)
            number = from_si(figure.value, unit, free_gas=shown.free_gas)
            text = text.replace(f"{{{name}}}", f"{plain_number(number, TEXT_FIGURES)} {written(unit)}".strip())
    met: dict[str, int] = {}
    for step in got.steps:
        for name, value, unit in step.numbers:
            met[name] = met.get(name, 0) + 1
            said = f"{plain_number(value, TEXT_FIGURES)} {unit_text(unit)}".strip()
            if name == "kept_gas":
                contents = scale("contents", rules)
                said = f"{plain_number(contents.number(value), TEXT_FIGURES)} {contents.name}"
            text = text.replace(f"{{{name}}}" if met[name] == 1 else f"{{{name}:{met[name]}}}", said)
    return filled_text(text, rules)


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
        raise InputError("calculator", calculator.title, f"no problem is made from it, as {why}.")
    results = asked_of(calculator)
    for _ in range(TRIES):
        name = dice.pick(results)
        row = questions()[calculator_id][name]
        texts = _drawn(calculator, name, rules, dice)
        try:
            got, taken, assumed, _ = computed(calculator, texts)
        except InputError:
            continue
        grave = {caution.text for caution in got.cautions if caution.signal in GRAVE}
        figure = getattr(got.results, name)
        if figure is None or figure.value is None or grave - _usual_signals(calculator_id, rules):
            continue
        shown = calculator.results[name]
        unit = row.unit or shown_unit(shown, "us" if rules == "us" else "metric")
        key = from_si(figure.value, unit, free_gas=shown.free_gas)
        near = tolerance_of(calculator_id, name, figure, unit, rules)
        if key <= 0 or near > WIDEST * key or _stands_among(taken, unit, figure.value, near):
            continue
        needs = row.needs.split()
        rule = _rule(calculator, name, got, rules)
        return Problem(
            calculator=calculator_id, title=calculator.title, rules=rules, texts=texts,
            given=_given_words(calculator, taken, [each for each in needs if each in texts]),
            taken_for_granted=_given_words(calculator, taken, [each for each in needs if each in assumed]), result=name,
            asked=filled_text(str(row.question), rules), unit=unit, key=limits_of(rule, unit, key).kept(key), shown=shown_text(shown, figure.value, unit, rules, shown.toward), tolerance=near,
            si_given=si_given(calculator, taken, rules), steps=got.steps, rule=rule,
        )  # fmt: skip
    raise InputError(
        "calculator",
        calculator.title, "no problem came of it, as most values near its examples are refused or bring a warning.",
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
