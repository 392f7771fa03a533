"""One file for each calculator; importing this package declares them all."""

from importlib import import_module
from pkgutil import iter_modules

LAST = ("problem_set", "problem_key")
"""These offer the other calculators as choices, so all others are declared before them."""

for _name in (*sorted({found.name for found in iter_modules(__path__)} - set(LAST)), *LAST):
    import_module(f"{__name__}.{_name}")
