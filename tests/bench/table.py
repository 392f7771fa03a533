"""The one table: what was measured, beside stock, with its goal."""

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

PAGE = Path(__file__).parents[2] / "docs" / "tables" / "checked.md"
BEGIN, END = "<!-- measured{} -->", "<!-- end of measured{} -->"
FRAME = '<div class="bb-table" tabindex="0" role="region" aria-label="Measured: {}" markdown>'
"""Scrolls by itself on a narrow screen."""


@dataclass(frozen=True)
class Row:
    """One figure.

    Attributes:
        what: What was measured, with its unit.
        stock: The same of the stock runtime, or None where it has none.
        ours: Of this site.
        goal: What it should keep to, or None.
        at_least: Whether more is better.
    """

    what: str
    stock: float | None
    ours: float
    goal: float | None = None
    at_least: bool = False

    @property
    def met(self) -> str:
        """Whether the goal is met, in a word."""
        if self.goal is None:
            return ""
        is_met = self.ours >= self.goal if self.at_least else self.ours <= self.goal
        return "met" if is_met else "not met"


def _figure(number: float | None) -> str:
    if number is None:
        return ""
    return f"{number:.0f}" if abs(number) >= 100 or number == int(number) else f"{number:.1f}"


def table(rows: list[Row]) -> list[str]:
    """Lines of a Markdown table."""
    lines = ["| what | stock | ours | stock / ours | goal | |", "|---|---|---|---|---|---|"]
    for row in rows:
        ratio = f"{row.stock / row.ours:.1f}" if row.stock and row.ours else ""
        goal = f"{'at least ' if row.at_least else ''}{_figure(row.goal)}" if row.goal is not None else ""
        cells = [row.what, _figure(row.stock), _figure(row.ours), ratio, goal, row.met]
        lines.append(f"| {' | '.join(cells)} |")
    return lines


def keep(part: str, lines: list[str]) -> None:
    """Write the lines of a part between its marks on the page that shows them.

    Args:
        part: Name of the part, as in the marks.
        lines: What stands there from now on.
    """
    begin, end = BEGIN.format(f" {part}"), END.format(f" {part}")
    before, mark, rest = PAGE.read_text(encoding="utf-8").partition(begin + "\n")
    _, last, after = rest.partition(end)
    if not mark or not last:
        raise ValueError(f"{PAGE.name} must hold {begin} and {end}")
    told = f"Measured {datetime.now(UTC).date()} on two cores, Chromium without a window."
    framed = [FRAME.format(part), "", *lines, "", "</div>"]
    PAGE.write_text(before + mark + "\n".join(["", told, "", *framed, "", end]) + after, encoding="utf-8")
