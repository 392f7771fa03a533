"""What stands beside the answer for a copper tube: cautions, other gaps, other rods, what is printed."""

from calc.answer.hazards import brought, caution, gravest_first
from calc.data.tables import table
from calc.declare import Caution, Table
from calc.formulas.setup.tube import filler_mass, filler_volume, wire_length
from calc.trade.braze.tubes import Filler, Tube
from calc.values.numbers import plain_number
from calc.values.quantities import Area, Length, Mass
from calc.values.units import from_si


def cautions(filler: Filler, flux: str, fitting: str) -> tuple[Caution, ...]:
    """Hazards of joining copper tube, the gravest first.

    Args:
        filler: What is used.
        flux: Id of the flux, `none` where there is none.
        fitting: `copper` or `brass`.
    """
    brazed = filler.family != "solder"
    work = "brazing" if brazed else "soldering"
    job = {
        "process": work,
        "work": work,
        "metal": fitting,
        "filler": _filler_id(filler),
        "flux": "fluoride" if brazed and flux != "none" else "none",
    }
    found = [*brought(job), caution("water-in-tube"), caution("valve-seats")]
    if filler.lead:
        found.append(caution("lead-solder-water"))
    if brazed:
        found.append(caution("tube-soft"))
    return gravest_first(found)


def _filler_id(filler: Filler) -> str:
    """Id of a filler as the table of hazards knows it."""
    if filler.family == "solder":
        return "lead-solder" if filler.lead else "tin-solder"
    return {"BAg": "silver", "BCuP": "copper-phosphorus"}[filler.family]


def told(length: Length, rules: str) -> str:
    """A length of tube in inches or millimetres.

    Examples:
        >>> told(0.0127, "us"), told(0.0127, "iso")
        ('0.5 in', '12.7 mm')
    """
    unit = "in" if rules == "us" else "mm"
    return f"{plain_number(from_si(length, unit), 3)} {unit}"


def _weight(mass: Mass, rules: str) -> str:
    unit = "lb" if rules == "us" else "g"
    return f"{plain_number(from_si(mass, unit), 3)} {unit}"


def other_gaps(gap_area: Area, wire: Length, joints: float, rules: str) -> Table:
    """Wire for the same joints at the tightest, the loosest and the widest gap in print.

    Args:
        gap_area: Filler of one joint over its gap, m².
        wire: Diameter of the wire, m.
        joints: How many.
        rules: Rule set, for the units.
    """
    row = next(row for row in table("tube-gaps") if row.filler == "solder")
    said = (("tightest good", row.tightest), ("loosest good", row.loosest), ("widest printed", row.widest))
    rows = []
    for name, gap in said:
        length = wire_length(gap_area * gap, wire)
        rows.append((f"{name}, {told(gap, rules)}", told(length, rules), told(length * joints, rules)))
    return Table(
        "The same joints at other gaps",
        ("Gap", "One joint", "All joints"),
        tuple(rows),
        "A wide gap takes more, fills badly and may crack.",
    )


def other_rods(mass: Mass, rules: str) -> Table:
    """Length of each rod in print that holds a mass of brazing filler.

    Args:
        mass: Filler for all joints, kg.
        rules: Rule set, for the units.
    """
    return Table(
        "The same filler as other wire and strip",
        ("Sold as", "All joints"),
        tuple((row.words, told(mass * row.length_per_mass, rules)) for row in table("tube-rods-cda")),
        "By the lengths to the pound in the Copper Tube Handbook, table 14.11.",
    )


def printed_weight(tube: Tube, rules: str) -> tuple[Table, ...]:
    """The printed weight of solder beside the bare volume; nothing for sizes that are not printed.

    Args:
        tube: The tube, by its name.
        rules: Rule set, for the units.
    """
    row = next((row for row in table("copper-cups-cda") if row.size == tube.size), None)
    if row is None:
        return ()
    density = next(row.density for row in table("tube-filler-densities") if row.method == "soldering")
    gap = next(row for row in table("tube-gaps") if row.filler == "solder")
    wide, usual = (
        100 * filler_mass(filler_volume(row.outside, row.depth, each, 1.0), density)
        for each in (gap.widest, gap.loosest)
    )
    return (
        Table(
            f"100 joints of {tube.size}, in print and by volume",
            ("What", "Solder"),
            (
                ("Printed weight, said to include 100 % for waste", _weight(row.solder_per_hundred, rules)),
                (f"Bare volume at a gap of {told(gap.widest, rules)}, nothing added", _weight(wide, rules)),
                (f"Bare volume at a gap of {told(gap.loosest, rules)}", _weight(usual, rules)),
            ),
            "The printed column is the bare volume at the widest gap. Against the usual gap it has the 100 %; against its own "
            "it has none.",
        ),
    )


def printed_braze(tube: Tube, rules: str) -> tuple[Table, ...]:
    """The printed weight of brazing filler; nothing for sizes that are not printed.

    Args:
        tube: The tube, by its name.
        rules: Rule set, for the units.
    """
    row = next((row for row in table("copper-cups-cda") if row.size == tube.size), None)
    if row is None:
        return ()
    return (
        Table(
            f"100 joints of {tube.size} in print",
            ("What", "Filler"),
            (("Printed weight, two thirds of the cup filled", _weight(row.filler_per_hundred, rules)),),
            "Table 14.11 of the Copper Tube Handbook. It says that real use may be two to three times as much.",
        ),
    )
