"""The engine that these tests run, made once."""

from functools import cache
from pathlib import Path

from site_overrides.build import bundle


@cache
def engine() -> Path:
    """Folder of the engine's files, made from the sources as they are now."""
    return bundle.build()
