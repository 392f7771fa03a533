"""The one table: what was measured, beside stock, with its goal."""

import json
from dataclasses import asdict, dataclass
from datetime import UTC, datetime
from pathlib import Path

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "docs" / "tables" / "checked.md"
KEPT = ROOT / ".build" / "bench"
BEGIN, END = "<!-- measured -->", "<!-- end of measured -->"
FRAME = '<div class="bb-table" tabindex="0" role="region" aria-label="What was measured" markdown>'
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
    def goal_kept(self) -> str:
        """Whether the goal was kept, in a word."""
        if self.goal is None:
            return ""
        is_kept = self.ours >= self.goal if self.at_least else self.ours <= self.goal
        return "yes" if is_kept else "no"


def _figure(number: float | None) -> str:
    if number is None:
        return ""
    return f"{number:.0f}" if abs(number) >= 100 or number == int(number) else f"{number:.1f}"


def table(rows: list[Row]) -> list[str]:
    """Lines of a Markdown table."""
    lines = ["| what | stock | ours | stock / ours | goal | goal kept |", "|---|---|---|---|---|---|"]
    for row in rows:
        ratio = f"{row.stock / row.ours:.1f}" if row.stock and row.ours else ""
        goal = f"{'at least ' if row.at_least else ''}{_figure(row.goal)}" if row.goal is not None else ""
        cells = [row.what, _figure(row.stock), _figure(row.ours), ratio, goal, row.goal_kept]
        lines.append(f"| {' | '.join(cells)} |")
    return lines


def keep_rows(part: str, rows: list[Row]) -> None:
    """Keep the figures of a part of the bench for the table."""
    KEPT.mkdir(parents=True, exist_ok=True)
    (KEPT / f"{part}.json").write_text(json.dumps([asdict(row) for row in rows]), encoding="utf-8")


def kept_rows(part: str) -> list[Row]:
    """The last figures of a part of the bench, none where it never ran."""
    path = KEPT / f"{part}.json"
    return [Row(**row) for row in json.loads(path.read_text(encoding="utf-8"))] if path.is_file() else []


def keep(lines: list[str]) -> None:
    """Write the table between its marks on the page that shows it.

    Args:
        lines: What stands there from now on.
    """
    before, mark, rest = PAGE.read_text(encoding="utf-8").partition(BEGIN + "\n")
    _, last, after = rest.partition(END)
    if not mark or not last:
        raise ValueError(f"{PAGE.name} must hold {BEGIN} and {END}")
    told = f"Measured {datetime.now(UTC).date()} on two cores, Chromium without a window."
    framed = [FRAME, "", *lines, "", "</div>"]
    PAGE.write_text(before + mark + "\n".join(["", told, "", *framed, "", END]) + after, encoding="utf-8")
