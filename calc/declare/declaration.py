"""A calculator as one typed function declares it; a wrong declaration is told what to change."""

import dataclasses
import inspect
import typing
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from calc.declare.inputs import RULE_SETS, Asked, Choice, Field, by_rules
from calc.declare.results import Answer, Shown
from calc.declare.working import hints_of

OUTFIT = "my-outfit"
"""The calculator that asks for the reader's outfit; others may be filled from it."""
DECLARED = "__calculator__"
"""Attribute of a function that declares a calculator."""


class DeclarationError(TypeError):
    """A calculator is declared wrongly; the message says what to change."""


@dataclass(frozen=True, kw_only=True)
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

    @property
    def takes_outfit(self) -> bool:
        """Whether the reader's outfit can fill any of its inputs."""
        keyed = any(asked.outfit for asked in self.inputs.values())
        return self.id != OUTFIT and (keyed or "maker_orifice" in self.inputs)


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
    if not asked.label:
        raise DeclarationError(f"{calculator_id}: input {name} has no label; write what is asked, in the trade's words")
    if isinstance(asked, Field) and not asked.units:
        raise DeclarationError(
            f'{calculator_id}: input {name} has no units; write them, such as units=("in", "mm"), or NUMBER for a bare number'
        )
    given = (asked.example is not None, asked.assumed is not None, asked.optional)
    if sum(given) != 1 and given != (True, False, True):
        raise DeclarationError(
            f"{calculator_id}: input {name} needs exactly one of example (then the reader must give it), assumed, "
            "or optional=True; example and optional=True may stand together"
        )
    if isinstance(asked, Choice):
        for text in (asked.example, asked.assumed):
            for rules in RULE_SETS:
                if text is not None and by_rules(text, rules) not in asked.options:
                    raise DeclarationError(f"{calculator_id}: input {name} has no option {text!r}; give one of {', '.join(asked.options)}")
    for choice, options in (asked.when or {}).items():
        known = earlier.get(choice)
        fits = isinstance(known, Choice) and set(options) <= set(known.options)
        if not fits or isinstance(getattr(known, "assumed", None), Mapping):
            raise DeclarationError(
                f"{calculator_id}: input {name} is asked when {choice} is one of {options}, but no earlier choice has "
                "these options; declare that choice first, or correct the options"
            )


def calculator[T](
    calculator_id: str, title: str
) -> Callable[[Callable[..., Answer[T]]], Callable[..., Answer[T]]]:
    """Declare a typed function as a calculator.

    Args:
        calculator_id: Its id, the address of its page and its hook.
        title: Its name for a reader.

    Returns:
        A decorator that leaves the function as it is, but for the attribute `DECLARED`.

    Raises:
        DeclarationError: A parameter without a Field, Choice, Words or Day, an id that does
            not match the function's name, or a result without Shown.
    """

    def register(function: Callable[..., Answer[T]]) -> Callable[..., Answer[T]]:
        if function.__name__ != calculator_id.replace("-", "_"):
            raise DeclarationError(
                f"{calculator_id}: the function is called {function.__name__}; call it {calculator_id.replace('-', '_')}"
            )
        hints = hints_of(function)
        inputs: dict[str, Asked] = {}
        for name in inspect.signature(function).parameters:
            if name == "rules":
                continue
            asked = _asked(hints[name])
            if asked is None:
                raise DeclarationError(f"{calculator_id}: input {name} is not declared; write Annotated[float, Field(...)], or Choice, Words or Day")
            _check(calculator_id, name, asked, inputs)
            inputs[name] = asked
        (result_type,) = typing.get_args(hints["return"])
        results: dict[str, Shown] = {}
        result_hints = typing.get_type_hints(result_type, include_extras=True)
        for part in dataclasses.fields(result_type):
            shown = _declared(result_hints[part.name], Shown)
            if shown is None:
                raise DeclarationError(f"{calculator_id}: result {part.name} is not declared; write Annotated[Figure, Shown(...)]")
            results[part.name] = shown
        declared = Calculator(
            id=calculator_id,
            title=title,
            about=(inspect.getdoc(function) or "").split("\n\n")[0].replace("\n", " "),
            function=function,
            inputs=inputs,
            results=results,
            takes_rules="rules" in inspect.signature(function).parameters,
        )
        setattr(function, DECLARED, declared)
        return function

    return register
