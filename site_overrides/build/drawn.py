"""A drawing of `calc` as it stands on a page."""

from collections.abc import Callable, Mapping
from html import escape
from importlib import import_module
from importlib.util import find_spec
from types import ModuleType

from calc.ask.reading import typed
from calc.declare import Picture
from calc.values.units import to_si

ROOMS = ("calc.show.drawings", "calc.trade.drawings", "calc.class_plan.drawings")
"""Rooms that have drawings: those of plain values, those that need a look-up of the trade, those of the exercises."""


def _module(name: str) -> ModuleType:
    for room in ROOMS:
        if find_spec(f"{room}.{name}"):
            return import_module(f"{room}.{name}")
    raise ModuleNotFoundError(f"there is no drawing {name!r} in {', '.join(ROOMS)}")


def _given(text: str) -> float | str:
    try:
        got = typed(text)
    except ValueError:
        return text
    return to_si(got.number, got.unit) if got.unit else got.number


def _picture_html(picture: Picture, key: str) -> str:
    return (
        f'<figure class="bb-picture">{picture.svg}<figcaption><strong>{escape(picture.title)}.'
        f"</strong> {escape(picture.sentence)}{key}</figcaption></figure>"
    )


def drawn_html(name: str, settings: Mapping[str, str], fill: Callable[[str], str]) -> str:
    """A drawing with its title, its sentence and, where it has numbered parts, their key.

    Args:
        name: Module in a room of `ROOMS`.
        settings: What its `drawing` is given, as text; a number with a unit is read as one.
        fill: Fills `{id}` in escaped text with figures and words.
    """
    module = _module(name)
    picture = module.drawing(**{key: _given(text) for key, text in settings.items()})
    key = ""
    if hasattr(module, "PARTS"):
        items = "".join(f"<li>{fill(escape(part))}</li>" for part in module.PARTS)
        key = f'<ol class="bb-key">{items}</ol>'
    return _picture_html(picture, key)
