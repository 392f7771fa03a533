"""What is done in an emergency, and in which order: one sequence of acts an event.

The pages, the first acts on paper, the cards, the licence questions and every other
text take their order from here; `{acts-flashback}` in a text is filled with it.
"""

from functools import cache
from typing import Any

from calc.data.tables import table

TABLE = "emergency-acts"
PREFIX = "acts-"
"""How a text names the acts of an event: `{acts-flashback}`."""


@cache
def events() -> dict[str, tuple[Any, ...]]:
    """Every event and its acts in order, as rows of the table.

    Examples:
        >>> [row.act for row in events()["flashback"]][:3]
        ['oxygen', 'fuel', 'cylinders']
    """
    found: dict[str, list[Any]] = {}
    for row in table(TABLE):
        found.setdefault(row.event, []).append(row)
    return {event: tuple(sorted(rows, key=lambda row: row.order)) for event, rows in found.items()}


def told(name: str) -> str | None:
    """The acts of an event in one sentence part, for a text that names them.

    Args:
        name: What stands in the braces, such as `acts-flashback`.

    Returns:
        The first acts, with words and figures still in braces; None where no event has the name.

    Examples:
        >>> told("acts-backfire")
        'close the oxygen valve of the {torch}, then the fuel valve of the {torch}'
    """
    if not name.startswith(PREFIX) or name.removeprefix(PREFIX) not in events():
        return None
    return "".join(row.told for row in events()[name.removeprefix(PREFIX)])
