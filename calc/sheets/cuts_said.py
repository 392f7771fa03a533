"""What is said beside a cut: what is printed for it, what the edge tells, what it warns of."""

from collections.abc import Iterable

from calc.calculators.tip_flow import acetylene_limit_words
from calc.declare import Caution, Table
from calc.formulas.setup import cutting
from calc.quantities import Length
from calc.sheets.cuts import metal_row
from calc.sheets.said import distance
from calc.sheets.surroundings import clear_distance
from calc.show.numbers import plain_number
from calc.tables import HOW_SURE, source_words, table
from calc.units import from_si, written


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


def cautions(metal: str, shape: str, fuel: str, rules: str) -> tuple[Caution, ...]:
    """Hazards of cutting, the gravest first.

    Args:
        metal: Id of the metal.
        shape: `straight`, `bevel` or `stack`.
        fuel: Id of the fuel gas.
        rules: Rule set, for the distance and the limit.
    """
    clear = clear_distance(rules, "cutting")
    far = distance(clear.value or 0.0, rules, 3, "up")
    found = [
        Caution(
            "DANGER",
            "Anything that is shut or was once filled explodes under a cutting torch and will kill. Do not cut it; ask “May I "
            "heat this?” first.",
            "cfr1910-252 (a)(3)",
        ),
        Caution(
            "WARNING",
            f"Sparks and molten slag fly far and fall through gaps: fires start out of sight. Clear {far} all round, they may go "
            "further; catch slag in dry sand, post a watch.",
            clear.source,
        ),
        Caution(
            "WARNING",
            "Cutting oxygen makes a spark a fire: clothes and rags that it has blown on burn at once. Lever shut when you do "
            "not cut; blow nothing clean with it.",
            "cfr1910-253 (b)(5)(i)",
        ),
        Caution(
            "WARNING",
            "Concrete under the cut bursts in hot chips that fly into eyes. Cut over sand, steel or firebrick.",
        ),
    ]  # fmt: skip
    if fuel == "acetylene":
        limit = acetylene_limit_words(rules)
        source = "cfr1910-253 (a)(2)" if rules == "us" else "iso-3821-2019 scope"
        found.insert(
            1,
            Caution(
                "DANGER",
                f"Acetylene above {limit} can explode by itself and will kill. Never set it higher, however thick the plate.",
                source,
            ),
        )
    row = metal_row(metal)
    if row.cuts == "warm":
        found.append(
            Caution(
                "WARNING",
                f"This steel: {row.why}, also hours later, and a load on it could fall. {row.instead.capitalize()}, grind the "
                "edge: see “Preheat and cool”.",
            )
        )
    found.append(
        Caution(
            "CAUTION",
            "The piece falls and stays hot for long: it crushes feet and burns. Support both sides, write HOT on it.",
        )
    )
    if shape == "stack":
        found.append(
            Caution(
                "NOTICE",
                "A gap in the stack stops the cut. Clean the sheets and clamp them tight all along.",
            )
        )
    return tuple(found)
