"""What stands around a job: the clear distance and the fire watch of a rule set."""

from dataclasses import replace
from typing import Any

from calc.answer.sentences import distance, duration
from calc.data.tables import source_words, table
from calc.formulas.setup.ruled import Ruled, amount, ruled_row
from calc.formulas.setup.sparks import widened_reach
from calc.values.figures import Figure
from calc.values.quantities import Length

COUNTS_AS = {"braze-welding": "welding"}
"""Work that no rule on sparks names, and what it counts as."""
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
    return amount(row) + (_height_adds(process, height) if row.rules == "iso" else 0.0)


def _height_adds(process: str, height: Length) -> Length:
    return guided_reach(process, height) - guided_reach(process, 0.0)


def _row(rules: str, process: str, height: Length) -> Ruled:
    """Row that holds for a process at a height.

    Where a place has no figure of its own, the German one counts too, for welding where it does
    not name the process: the strictest leads at every height.
    """
    found = ruled_row("clear-distances", rules, lambda row: _widened(row, process, height), process=process)
    if not found.note:
        return found
    named = process if reach_row(process).process == process else "welding"
    other = ruled_row("clear-distances", "iso", amount, process=named)
    return max((found, replace(other, note=found.note)), key=lambda each: _widened(each.row, process, height))


def clear_distance(rules: str, process: str = "welding", height: Length = 0.0) -> Figure:
    """Distance that is cleared of things that burn, m: the one figure of every page.

    Args:
        rules: Rule set; where it has no row, the strictest of the others under its own name.
        process: Id of the work; braze welding counts as welding.
        height: Of the work above the floor, m; the German guidance adds for it.

    Examples:
        >>> [clear_distance("iso", "braze-welding", height).value for height in (1.0, 5.0)]
        [7.5, 8.5]
    """
    process = COUNTS_AS.get(process, process)
    found = _row(rules, process, height)
    basis = "Nearer things are moved, shielded or watched. Sparks may go further, above all from a height."
    words = f"{OWN[found.rules]} figure. {found.note}" if found.note else ""
    if found.note and found.rules == rules:
        words = "counted as welding, as no rule of this place names the work"
    if found.rules == "iso":
        basis = f"German guidance, the level reach of sparks; half a metre more for each metre above 3 m. {basis}"
        added = _height_adds(process, height)
        if added > 0:
            said = distance(added, "us" if rules == "us" else "iso", 3, "up")
            words = f"{said} of it for the height{f'. {words}' if words else ''}"
    return Figure(
        _widened(found.row, process, height), found.row.source, found.row.how_sure, words=words, basis=basis
    )


def watch_row(rules: str) -> Ruled:
    """Row of the fire watch that a rule set follows, or the strictest of the others."""
    return ruled_row("fire-watches", rules, lambda row: row.watch + row.monitoring)


def legal_words(rules: str) -> str:
    """The legal minimum of general industry in the United States; nothing elsewhere."""
    if rules != "us":
        return ""
    least = next(row for row in table("fire-watches") if row.rules == "us" and row.standing == "also")
    return f"{source_words(least.source)} asks {duration(least.watch)} at least. "


def fire_watch(rules: str, *, roof: bool = False) -> Figure:
    """Fire watch after the last flame, s, under a rule set: the one figure of every page.

    Args:
        rules: Rule set; where it has no row, the strictest of the others under its own name.
        roof: Whether the flame is on a roof, which a rule of the United States watches for longer.
    """
    watch = watch_row(rules)
    after = f"then {watch.row.monitoring / 60:.0f} min of checks" if watch.row.monitoring else ""
    foreign = f"{OWN[watch.rules]} figure. {watch.note}" if watch.note else ""
    found = Figure(
        watch.row.watch, watch.row.source, watch.row.how_sure,
        words="; ".join(part for part in (after, foreign) if part),
        basis=f"{legal_words(rules)}Look behind walls and along pipes too; fires start an hour later.",
    )  # fmt: skip
    row = next(row for row in table("fire-watches") if "roofing" in row.words)
    if not roof or row.watch <= watch.row.watch:
        return found
    foreign = "" if rules == "us" else f"{OWN['us']} figure for roofs; yours has none in our data"
    return Figure(
        row.watch, row.source, row.how_sure, words="; ".join(part for part in (after, foreign) if part),
        basis=f"After torch-applied roofing. {found.basis}",
    )  # fmt: skip
