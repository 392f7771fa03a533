"""One line for each phase of a build, with its seconds."""

from collections.abc import Iterator
from contextlib import contextmanager
from time import monotonic

WIDE = 46


@contextmanager
def phase(what: str) -> Iterator[None]:
    """Print a phase and its seconds when it is through.

    Args:
        what: What is done, in a few words.
    """
    began = monotonic()
    yield
    print(f"{what:<{WIDE}}{monotonic() - began:6.1f} s", flush=True)
