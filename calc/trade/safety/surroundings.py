"""What stands around a job: the clear distance and the fire watch of a rule set."""

from typing import Any

from calc.answer.sentences import duration
from calc.data.tables import source_words, table
from calc.formulas.setup.ruled import Ruled, amount, ruled_row
from calc.formulas.setup.sparks import widened_reach
from calc.values.figures import Figure
from calc.values.quantities import Length

OWN = {"us": "United States", "uk": "United Kingdom", "iso": "Europe", "any": "elsewhere"}


def reach_row(process: str) -> Any:
    """Row of the German guidance for a process; that of welding where it names none."""
    rows = {row.process: row for row in table("spark-reach-dguv")}
    return rows.get(process, rows["welding"])


def guided_reach(process: str, height: Length) -> Length:
    """Level reach of sparks by the German guidance, m, for work at a height."""
    row = reach_row(process)
    return widened_reach(row.level, max(height, row.height), row.height, row.widening)


def _widened(row: Any, process: str, height: Length) -> Length:
    """Distance of a row, with what the German guidance adds for height."""
    plain = amount(row)
    if row.rules != "iso":
        return plain
    return plain + guided_reach(process, height) - guided_reach(process, 0.0)


def clear_distance(rules: str, process: str = "welding", height: Length = 0.0) -> Figure:
    """Distance that is cleared of things that burn, m.

    Args:
        rules: Rule set; where it has no row, the strictest of the others under its own name.
        process: `welding`, `cutting`, `soldering`, `brazing` or `heating`.
        height: Of the work above the floor, m; the German guidance adds for it.
    """
    found = ruled_row("clear-distances", rules, lambda row: _widened(row, process, height), process=process)
    basis = "Nearer things are moved, shielded or watched. Sparks may go further, above all from a height."
    if found.rules == "iso":
        basis = f"German guidance, the level reach of sparks; half a metre more for each metre above 3 m. {basis}"
    return Figure(
        _widened(found.row, process, height), found.row.source, found.row.how_sure,
        words=f"{OWN[found.rules]} figure. {found.note}" if found.note else "", basis=basis,
    )  # fmt: skip


def watch_row(rules: str) -> Ruled:
    """Row of the fire watch that a rule set follows, or the strictest of the others."""
    return ruled_row("fire-watches", rules, lambda row: row.watch + row.monitoring)


def legal_words(rules: str) -> str:
    """The legal minimum of general industry in the United States; nothing elsewhere."""
    if rules != "us":
        return ""
    least = next(row for row in table("fire-watches") if row.rules == "us" and row.standing == "also")
    return f"{source_words(least.source)} asks {duration(least.watch)} at least. "


def fire_watch(rules: str) -> Figure:
    """Fire watch after the last flame, s, under a rule set."""
    watch = watch_row(rules)
    after = f"then {watch.row.monitoring / 60:.0f} min of checks" if watch.row.monitoring else ""
    foreign = f"{OWN[watch.rules]} figure. {watch.note}" if watch.note else ""
    return Figure(
        watch.row.watch, watch.row.source, watch.row.how_sure,
        words="; ".join(part for part in (after, foreign) if part),
        basis=f"{legal_words(rules)}Look behind walls and along pipes too; fires start an hour later.",
    )  # fmt: skip


def distance_and_watch(rules: str) -> tuple[Figure, Figure]:
    """Clear distance, m, and fire watch, s, for welding under a rule set.

    Args:
        rules: Rule set; where it has no row, the strictest of the others under its own name.
    """
    return clear_distance(rules), fire_watch(rules)
