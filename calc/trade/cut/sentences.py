"""What is said beside a cut: what is printed for it, what the edge tells, what it warns of."""

from collections.abc import Iterable

from calc.answer.hazards import brought, caution, gravest_first
from calc.answer.sentences import distance
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Caution, Table
from calc.formulas.setup import cutting
from calc.trade.cut.steel_cut import metal_row
from calc.values.numbers import plain_number
from calc.values.quantities import Length
from calc.values.units import from_si, written


def in_print_table(through: Length, rules: str) -> Table:
    """Hole and speed for a thickness by both tables, and which one is followed.

    Args:
        through: Steel along the jet, m.
        rules: Rule set, for the units.
    """
    units = {"orifice": "in", "speed": "in/min"} if rules == "us" else {"orifice": "mm", "speed": "mm/min"}
    followed = {"orifice": cutting.cutting_orifice(through), "speed": cutting.cutting_speed(through)}

    def number(si: float, unit: str) -> str:
        return plain_number(from_si(si, unit), 2)

    def said(name: str, cells: Iterable[str], *, is_followed: bool) -> tuple[str, ...]:
        first = table(name)[0]
        source = f"{source_words(first.source)}, {HOW_SURE[first.how_sure]}"
        return (f"{source}: followed" if is_followed else source, *cells)

    was_read = followed["orifice"].how_sure == "read"
    read = (
        f"{number(followed[quantity].value or 0.0, unit)} {written(unit)}" if was_read else "nothing for it"
        for quantity, unit in units.items()
    )
    ranges = (
        f"{' to '.join(number(end, unit) for end in cutting.printed_range(through, quantity))} {written(unit)}"
        for quantity, unit in units.items()
    )
    return Table(
        f"In print for {distance(through, rules, 3)} of steel, between the rows",
        ("Source", "Hole", "Speed"),
        (
            said(cutting.READ, read, is_followed=was_read),
            said(cutting.LARGER, ranges, is_followed=not was_read),
        ),
        "Where the hole that was read lies outside the other table, the band above is widened to hold both. What the maker of "
        "your tip prints comes before either.",
    )  # fmt: skip


def edges_table() -> Table:
    """What the edge looks like, why, and what to do."""

    def sentence(text: str) -> str:
        return f"{text[0].upper()}{text[1:]}."

    rows = tuple(
        (row.name, " ".join(map(sentence, (row.looks, row.cause, row.cure))))
        for row in table("cutting-edges")
    )
    return Table("What the cut tells", ("What", "How it looks, why, what to do"), rows, "All from memory.")


def purity_table() -> Table:
    """What a point of purity costs, by source."""
    rows = tuple(
        (
            {"speed-by-point": "Speed", "oxygen-by-point": "Oxygen"}[row.topic],
            f"{100 * (row.number_low - 1):+.0f} %",
            f"{source_words(row.source)}, {HOW_SURE[row.how_sure]}",
        )
        for row in table("cutting-facts")
        if row.topic in ("speed-by-point", "oxygen-by-point")
    )
    return Table(
        "One point of purity lost", ("What", "Change", "Source"), rows,
        "The sources disagree on the speed: 15 % is followed, because it was read.",
    )  # fmt: skip


def cautions(metal: str, shape: str, fuel: str) -> tuple[Caution, ...]:
    """Hazards of cutting, the gravest first.

    Args:
        metal: Id of the metal.
        shape: `straight`, `bevel` or `stack`.
        fuel: Id of the fuel gas.
    """
    found = [*brought({"process": "cutting", "work": "cutting", "metal": metal, "fuel": fuel})]
    row = metal_row(metal)
    if row.cuts == "warm":
        found.append(caution("steel-hardens", why=row.why, instead=row.instead.capitalize()))
    if shape == "stack":
        found.append(caution("stack-gap"))
    return gravest_first(found)
