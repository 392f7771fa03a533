"""Every calculator by its id, found in the rooms that declare them.

A room is opened when a calculator is first asked for, so nothing has to be
imported beforehand. A declaration that cannot be used takes down itself alone.
"""

from functools import cache
from importlib import import_module
from pkgutil import iter_modules

from calc.declare.declaration import DECLARED, Calculator, DeclarationError

ROOMS = ("calculators", "job_sheet", "class_plan", "practice")
"""Rooms that declare calculators, each later one asking those before it."""


@cache
def _opened(room: str) -> tuple[dict[str, Calculator], dict[str, str]]:
    package = import_module(f"calc.{room}")
    found: dict[str, Calculator] = {}
    broken: dict[str, str] = {}
    for name in sorted(one.name for one in iter_modules(package.__path__) if not one.ispkg):
        try:
            module = import_module(f"{package.__name__}.{name}")
        except DeclarationError as error:
            broken[name.replace("_", "-")] = str(error)
        except Exception as error:
            broken[name.replace("_", "-")] = f"calc/{room}/{name}.py cannot be imported: {type(error).__name__}: {error}"
        else:
            declared = (vars(one).get(DECLARED) for one in vars(module).values() if callable(one) and hasattr(one, DECLARED))
            found |= {one.id: one for one in declared if one and one.function.__module__ == module.__name__}
    return found, broken


@cache
def calculators(*rooms: str) -> dict[str, Calculator]:
    """Every calculator by its id, in the order of rooms and files.

    Args:
        rooms: Of `ROOMS`; none for all.

    Examples:
        >>> calculators("calculators")["hose-volume"].title
        'Inside of a hose'
    """
    return {name: one for room in rooms or ROOMS for name, one in _opened(room)[0].items()}


def broken(*rooms: str) -> dict[str, str]:
    """Calculators that cannot be used, by id, and what to change: a sentence that names the input.

    Args:
        rooms: As of `calculators`.

    Examples:
        >>> broken()
        {}
    """
    return {name: said for room in rooms or ROOMS for name, said in _opened(room)[1].items()}
