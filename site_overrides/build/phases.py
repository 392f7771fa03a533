"""One line for each phase of a build, with its seconds."""

from collections.abc import Iterator
from contextlib import contextmanager
from time import monotonic

WIDE = 40


def said(what: str, seconds: float) -> None:
    """Print a phase that is through.

    Args:
        what: What was done, in a few words.
        seconds: How long it took.
    """
    print(f"{what:<{WIDE}}{seconds:6.1f} s", flush=True)


@contextmanager
def phase(what: str) -> Iterator[None]:
    """Print a phase and its seconds when it is through."""
    began = monotonic()
    yield
    said(what, monotonic() - began)
