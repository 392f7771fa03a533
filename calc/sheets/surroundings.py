"""What stands around a job: the clear distance and the fire watch of a rule set."""

from calc.figures import Figure
from calc.formulas.setup.ruled import amount, ruled_row
from calc.tables import source_words, table


def distance_and_watch(rules: str) -> tuple[Figure, Figure]:
    """Clear distance, m, and fire watch, s, for welding under a rule set.

    Args:
        rules: Rule set; where it has no row, the strictest of the others under its own name.
    """
    clear = ruled_row("clear-distances", rules, amount, process="welding")
    watch = ruled_row("fire-watches", rules, lambda row: row.watch + row.monitoring)
    own = {"us": "United States", "uk": "United Kingdom", "iso": "Europe", "any": "elsewhere"}
    least = next(row for row in table("fire-watches") if row.rules == "us" and row.standing == "also")
    after = f"then {watch.row.monitoring / 60:.0f} min of checks" if watch.row.monitoring else ""
    legal = (
        f"{source_words(least.source)} asks {least.watch / 60:.0f} min at least. " if rules == "us" else ""
    )
    return (
        Figure(
            amount(clear.row), clear.row.source, clear.row.how_sure,
            words=f"{own[clear.rules]} figure. {clear.note}" if clear.note else "",
            basis="Nearer things are moved, shielded or watched. Sparks may go further, above all from a height.",
        ),
        Figure(
            watch.row.watch, watch.row.source, watch.row.how_sure,
            words="; ".join(p for p in (after, f"{own[watch.rules]} figure. {watch.note}" if watch.note else "") if p),
            basis=f"{legal}Look behind walls and along pipes too; fires start an hour later.",
        ),
    )  # fmt: skip
