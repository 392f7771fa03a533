"""One file for each calculator; importing this package declares them all."""

from importlib import import_module
from pkgutil import iter_modules

for _module in sorted(iter_modules(__path__), key=lambda found: found.name):
    import_module(f"{__name__}.{_module.name}")
