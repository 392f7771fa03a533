"""Files that an answer offers beside what it shows: a plan for a spreadsheet, for a calendar."""

from collections.abc import Callable
from dataclasses import dataclass

__all__ = ["KINDS", "Offered"]

KINDS = {
    "csv": "text/csv",
    "ics": "text/calendar",
    "txt": "text/plain",
    "xml": "application/xml",
}
"""Endings of the files that may be offered, and what a browser calls them."""


@dataclass(frozen=True)
class Offered:
    """A file that is written when a reader asks for it.

    Args:
        name: Its name, ending with one of `KINDS`.
        words: What the button says.
        text: Writes it.
    """

    name: str
    words: str
    text: Callable[[], str]

    @property
    def kind(self) -> str:
        """What a browser calls it.

        Examples:
            >>> Offered("plan.csv", "The plan as CSV", str).kind
            'text/csv'
        """
        return KINDS[self.name.rpartition(".")[2]]
