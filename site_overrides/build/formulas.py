"""Displayed formulas, made from the code that computes them.

`latexify` turns a closed-form function into LaTeX, `latex2mathml` into MathML.
latexify writes no subscripts, so the code's names go through as plain
placeholders and one function swaps in the symbols of the nomenclature table.
"""

import inspect
import json
import pkgutil
import re
import typing
from collections.abc import Callable, Iterator
from importlib import import_module
from pathlib import Path
from types import ModuleType

import latex2mathml.converter
import latexify

import calc.formulas
from calc.data.tables import table
from calc.values.quantities import Unit

TARGET = Path(__file__).parents[2] / "calc" / "data" / "formulas.json"


def _modules() -> Iterator[ModuleType]:
    for found in pkgutil.walk_packages(calc.formulas.__path__, "calc.formulas."):
        if not found.ispkg:
            yield import_module(found.name)


def _is_quantity(hint: object) -> bool:
    return any(isinstance(extra, Unit) for extra in getattr(hint, "__metadata__", ()))


def displayed() -> dict[str, Callable[..., float]]:
    """Every closed-form formula by name: quantities in, one quantity out, no solver."""
    shown: dict[str, Callable[..., float]] = {}
    for module in _modules():
        solvers = {f.__name__ for f in getattr(module, "SOLVERS", ())}
        for name, function in inspect.getmembers(module, inspect.isfunction):
            if function.__module__ != module.__name__ or name.startswith("_") or name in solvers:
                continue
            hints = typing.get_type_hints(function, include_extras=True)
            if not hints or not all(map(_is_quantity, hints.values())):
                continue
            if name in shown:
                raise ValueError(f"two formulas are named {name}")
            shown[name] = function
    return shown


def symbols() -> dict[str, str]:
    """LaTeX symbol of each quantity, by its name in a signature."""
    made = {}
    for row in table("nomenclature-benchbook-2026"):
        letter, _, below = row.symbol.partition("_")
        greek = rf"\{letter} " if len(letter) > 1 and letter.isascii() else letter
        made[row.name] = greek + (rf"_{{\mathrm{{{below}}}}}" if below else "")
    return made


_WORD = re.compile(r"\\mathrm\{((?:[A-Za-z0-9]|\\_)+)\}")


def with_symbols(latex: str, known: dict[str, str]) -> str:
    r"""LaTeX with each quantity's name swapped for its symbol, or its words.

    Args:
        latex: What latexify wrote, names as `\\mathrm{water\\_volume}`.
        known: Symbol of each name.

    Returns:
        LaTeX with subscripts.
    """

    def swapped(found: re.Match[str]) -> str:
        name = found[1].replace(r"\_", "_")
        return known.get(name, rf"\text{{{name.lower().replace('_', ' ')}}}")

    return _WORD.sub(swapped, latex)


def mathml(function: Callable[..., float], known: dict[str, str]) -> str:
    """MathML of one closed-form formula, made from its code."""
    latex = latexify.get_latex(function, use_math_symbols=False, reduce_assignments=False)
    head = re.escape(rf"\mathrm{{{function.__name__.replace('_', r'\_')}}}") + r"\([^=]*\) ="
    words = function.__name__.replace("_", " ")
    body = with_symbols(re.sub(head, lambda _: rf"\text{{{words}}} =", latex), known)
    return latex2mathml.converter.convert(body, display="block")


def made() -> dict[str, str]:
    """MathML of every displayed formula by name.

    Raises:
        ValueError: A formula is written so that it cannot be displayed; the message names it.
    """
    known = symbols()
    shown = {}
    for name, function in sorted(displayed().items()):
        try:
            shown[name] = mathml(function, known)
        except Exception as error:
            raise ValueError(f"{function.__module__}.{name} cannot be displayed: {error}") from error
    return shown


def write() -> None:
    """Write `calc/data/formulas.json`, which ships with the package."""
    text = json.dumps(made(), ensure_ascii=False, indent=0) + "\n"
    if not TARGET.is_file() or TARGET.read_text(encoding="utf-8") != text:
        TARGET.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    write()
