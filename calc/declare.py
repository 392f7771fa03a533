"""The vocabulary in which a calculator is declared.

A calculator is one typed function. Its `Annotated` parameters say what a reader
is asked, its result dataclass says what is shown. The form, the link, the
command line, the worked steps and the property tests all read that one
declaration. A bad declaration stops the import with a sentence.
"""

import dataclasses
import inspect
import typing
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Any, Literal

from calc.figures import Figure
from calc.offered import Offered
from calc.own_words import ByRules, Day, Words

__all__ = [
    "CALCULATORS", "ENERGY", "FREE_GAS", "FREE_GAS_FLOW", "GAUGE", "LENGTH", "MASS", "NUMBER", "POWER", "RULE_SETS",
    "TEMPERATURE", "TIME", "VOLUME", "WATER_VOLUME", "Answer", "Asked", "Beside", "ByRules", "Calculator", "Caution",
    "Choice", "Day", "DeclarationError", "Field", "Figure", "Offered", "Picture", "Shown", "Step", "Table", "Words", "by_rules",
    "calculator", "worked",
]  # fmt: skip

RULE_SETS = {
    "us": "United States",
    "iso": "Europe (ISO and EN)",
    "uk": "United Kingdom",
}
"""The rule sets, by the id that links and the command line use."""

LENGTH = ("in", "mm")
GAUGE = ("psi", "bar", "kPa")
TEMPERATURE = ("degF", "degC")
VOLUME = ("ft^3", "L")
WATER_VOLUME = ("L", "ft^3")
MASS = ("lb", "kg")
FREE_GAS = ("ft^3", "L", "m^3")
FREE_GAS_FLOW = ("cfh", "L/h", "L/min")
TIME = ("min", "h", "s")
POWER = ("Btu/h", "kW")
ENERGY = ("Btu", "MJ")
NUMBER = ("",)
"""Units of a bare number."""


class DeclarationError(TypeError):
    """A calculator is declared wrongly; the message says what to change."""


def by_rules(text: ByRules, rules: str) -> str:
    """The text that holds under one rule set."""
    return text if isinstance(text, str) else text[rules]


@dataclass(frozen=True)
class Field:
    """A number that the reader gives.

    Args:
        label: What is asked, in the trade's words. Messages begin with it.
        units: Units offered, most used first; `("",)` for a bare number.
        example: Text that fills the form at build time; never a recommendation.
        assumed: Text taken when the reader gives nothing; the answer says so.
        low: Least value allowed, as text with unit.
        high: Largest value allowed.
        hint: One line under the label.
        too_low: Sentence that replaces the usual one below `low`.
        too_high: Sentence that replaces the usual one above `high`.
        free_gas: Whether the number counts gas.
        sheet_gauge: Whether `16 ga` may be typed; needs a `metal` input, or
            `metal` named here.
        metal: The metal that a gauge number belongs to where none is asked.
        drill: Whether a twist drill, `#68`, may be typed.
        whole: Whether only whole numbers will do.
        optional: Whether the reader may leave it out with nothing assumed; an
            example then fills the form all the same.
        when: Ids of other choices and the options with which this is asked at
            all; else the calculator gets None.
        group: Name of the fold of the form it stands in; none for no fold of its own.
        outfit: Input of the reader's outfit that may fill this; none for no such.
    """

    label: str
    units: tuple[str, ...]
    example: ByRules | None = None
    assumed: ByRules | None = None
    low: ByRules | None = None
    high: ByRules | None = None
    hint: str = ""
    too_low: str = ""
    too_high: str = ""
    free_gas: bool = False
    sheet_gauge: bool = False
    metal: str = ""
    drill: bool = False
    whole: bool = False
    optional: bool = False
    when: Mapping[str, tuple[str, ...]] | None = None
    group: str = ""
    outfit: str = ""


@dataclass(frozen=True)
class Choice:
    """One of a few things that the reader picks.

    Args:
        label: What is asked.
        options: Id of each option and the words a reader sees.
        example: Id that fills the form at build time.
        assumed: Id taken when the reader picks nothing.
        hint: One line under the label.
        optional: Whether it may be left out with nothing assumed.
        when: As of a Field, likewise `group` and `outfit`.
    """

    label: str
    options: Mapping[str, str]
    example: str | None = None
    assumed: ByRules | None = None
    hint: str = ""
    optional: bool = False
    when: Mapping[str, tuple[str, ...]] | None = None
    group: str = ""
    outfit: str = ""


Asked = Field | Choice | Words | Day
"""What a parameter of a calculator may be declared as."""


@dataclass(frozen=True)
class Shown:
    """How one result is shown.

    Args:
        label: What it is.
        units: Units it can be shown in: US first, metric second.
        free_gas: Whether the number counts gas.
        toward: Which way the shown figure is rounded; limits go toward safety.
        digits: Figures that count in the shown text.
        step: Mark of the instrument, as text with unit; the exact value stays
            in the answer.
        words: Whether the result is words.
        group: Heading it stands under; results of one group follow each other.
        folded: Whether its group is a deep one, folded below the pictures and tables.
    """

    label: str
    units: tuple[str, ...] = ("",)
    free_gas: bool = False
    toward: Literal["nearest", "up", "down"] = "nearest"
    digits: int = 3
    step: ByRules | None = None
    words: bool = False
    group: str = ""
    folded: bool = False


@dataclass(frozen=True)
class Caution:
    """A hazard that goes with an answer.

    Args:
        signal: `DANGER` will, `WARNING` could cause death or serious injury,
            `CAUTION` could cause lesser injury, `NOTICE` no injury.
        text: Hazard, consequence and avoidance.
        source: As in a table.
        id: Its row in the table of hazards.
        how_sure: Grade of that row, as in a table.
    """

    signal: Literal["DANGER", "WARNING", "CAUTION", "NOTICE"]
    text: str
    source: str = ""
    id: str = ""
    how_sure: str = ""


@dataclass(frozen=True)
class Step:
    """One line of the working, with the reader's own numbers in it."""

    says: str
    formula: str
    numbers: tuple[tuple[str, float, str], ...]
    value: float
    unit: str


@dataclass(frozen=True)
class Table:
    """Rows beside an answer; every cell is text as it is to be read."""

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""


@dataclass(frozen=True)
class Picture:
    """A drawing, its title, and the one sentence that says what to take from it."""

    svg: str
    title: str
    sentence: str


Beside = tuple[tuple[Table, ...], tuple[Picture, ...]]
"""Tables and pictures that stand beside an answer."""


@dataclass(frozen=True)
class Answer[T]:
    """What a calculator returns.

    Args:
        results: The result dataclass, a Figure in each field; None leaves one out.
        cautions: Hazards, the gravest first.
        steps: The working.
        tables: Rows beside it.
        pictures: Drawings.
        beside: More of both, made only where they are shown: a sheet or a problem that asks
            this calculator wants its figures alone.
        drawn: Further tables and pictures that take long, such as a map or a
            curve: a page asks for them after it has shown the answer.
        files: Files that a reader may save.
    """

    results: T
    cautions: tuple[Caution, ...] = ()
    steps: tuple[Step, ...] = ()
    tables: tuple[Table, ...] = ()
    pictures: tuple[Picture, ...] = ()
    beside: Callable[[], Beside] | None = None
    drawn: Callable[[], Beside] | None = None
    files: tuple[Offered, ...] = ()

    def shown_beside(self) -> Beside:
        """Tables and pictures, those made on demand among them; not those that take long."""
        tables, pictures = self.beside() if self.beside else ((), ())
        return self.tables + tables, self.pictures + pictures


@dataclass(frozen=True)
class Calculator:
    """One declared calculator."""

    id: str
    title: str
    about: str
    function: Callable[..., Answer[Any]]
    inputs: Mapping[str, Asked]
    results: Mapping[str, Shown]
    takes_rules: bool = field(default=False)

    def asks(self, name: str, chosen: Mapping[str, object]) -> bool:
        """Whether an input is asked, with these options chosen."""
        conditions = self.inputs[name].when or {}
        return all(chosen.get(choice) in options for choice, options in conditions.items())


CALCULATORS: dict[str, Calculator] = {}
"""Every calculator by id, in the order of their files."""


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


def _hints(function: Callable[..., Any]) -> dict[str, Any]:
    return typing.get_type_hints(function, include_extras=True)


@cache
def _units_of(formula: Callable[..., Any]) -> dict[str, str]:
    """Unit of each argument of a formula, and of what it returns."""
    return {name: _unit_of(hint) for name, hint in _hints(formula).items()}


def _unit_of(hint: Any) -> str:
    for extra in getattr(hint, "__metadata__", ()):
        if hasattr(extra, "name"):
            return "" if extra.name == "dimensionless" else str(extra.name)
    return ""


def _declared[T](hint: Any, kind: type[T]) -> T | None:
    if typing.get_origin(hint) is typing.Annotated:
        for extra in hint.__metadata__:
            if isinstance(extra, kind):
                return extra
    return None


def _asked(hint: Any) -> Asked | None:
    extras = getattr(hint, "__metadata__", ())
    return next((extra for extra in extras if isinstance(extra, Asked)), None)


def _check(calculator_id: str, name: str, asked: Asked, earlier: Mapping[str, Asked]) -> None:
    given = (asked.example is not None, asked.assumed is not None, asked.optional)
    if sum(given) != 1 and given != (True, False, True):
        raise DeclarationError(
            f"{calculator_id}: input {name} needs one of example (it is required), assumed, "
            "optional, or example and optional"
        )
    if isinstance(asked, Choice):
        for text in (asked.example, asked.assumed):
            for rules in RULE_SETS:
                if text is not None and by_rules(text, rules) not in asked.options:
                    raise DeclarationError(f"{calculator_id}: {name} has no option {text!r}")
    for choice, options in (asked.when or {}).items():
        known = earlier.get(choice)
        fits = isinstance(known, Choice) and set(options) <= set(known.options)
        if not fits or isinstance(getattr(known, "assumed", None), Mapping):
            raise DeclarationError(
                f"{calculator_id}: {name} waits for {choice!r}, no earlier choice with that"
            )


def calculator[T](
    calculator_id: str, title: str
) -> Callable[[Callable[..., Answer[T]]], Callable[..., Answer[T]]]:
    """Register a typed function as a calculator.

    Args:
        calculator_id: Its id, the address of its page and its hook.
        title: Its name for a reader.

    Returns:
        A decorator that leaves the function as it is.

    Raises:
        DeclarationError: A parameter without a Field, Choice, Words or Day, an id that does
            not match the function's name, or a result without Shown.
    """

    def register(function: Callable[..., Answer[T]]) -> Callable[..., Answer[T]]:
        if function.__name__ != calculator_id.replace("-", "_"):
            raise DeclarationError(f"{calculator_id}: name the function {calculator_id!r} with _")
        hints = _hints(function)
        inputs: dict[str, Asked] = {}
        for name in inspect.signature(function).parameters:
            if name == "rules":
                continue
            asked = _asked(hints[name])
            if asked is None:
                raise DeclarationError(f"{calculator_id}: input {name} has no Field, Choice, Words or Day")
            _check(calculator_id, name, asked, inputs)
            inputs[name] = asked
        (result_type,) = typing.get_args(hints["return"])
        results: dict[str, Shown] = {}
        result_hints = typing.get_type_hints(result_type, include_extras=True)
        for part in dataclasses.fields(result_type):
            shown = _declared(result_hints[part.name], Shown)
            if shown is None:
                raise DeclarationError(f"{calculator_id}: result {part.name} has no Shown")
            results[part.name] = shown
        CALCULATORS[calculator_id] = Calculator(
            id=calculator_id,
            title=title,
            about=(inspect.getdoc(function) or "").split("\n\n")[0].replace("\n", " "),
            function=function,
            inputs=inputs,
            results=results,
            takes_rules="rules" in inspect.signature(function).parameters,
        )
        return function

    return register
