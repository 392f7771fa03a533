"""What each source prints for the hole in a tip, and which one is followed."""

from dataclasses import replace

from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Table
from calc.formulas.setup.cutting import LARGER, cutting_orifice
from calc.formulas.setup.flows import flows_in_print
from calc.formulas.setup.injector import injector_setting
from calc.formulas.setup.printed import value_between
from calc.formulas.setup.tips import (
    brazing_tip,
    orifices_in_print,
    welding_orifice,
)
from calc.show.scales import Scale, scale
from calc.values.figures import Figure

BY_FLOW = "Where a range stands, the source prints a flow: the jet speeds in print make it a hole."
NOTES = {
    "welding": f"Brazing tables use a hole one or two sizes larger at the same thickness. {BY_FLOW}",
    "braze-welding": "No source prints braze welding apart: its hole lies between those of brazing and welding. "
    f"{BY_FLOW}",
    "brazing": f"Welding tables use a hole one or two sizes smaller at the same thickness. {BY_FLOW}",
    "soldering": f"No source prints soldering apart. It takes less heat than brazing. {BY_FLOW}",
    "cutting": "Of the hole for the cutting oxygen; the preheat holes are not counted.",
}


def _welding(thickness: float) -> list[Figure]:
    followed = welding_orifice(thickness)
    return [followed, *(each for each in orifices_in_print(thickness) if each.source != followed.source)]


def _brazing(thickness: float) -> list[Figure]:
    followed = brazing_tip(thickness)
    try:
        first, *others = _welding(thickness)
    except ValueError:
        return [followed]
    welding = replace(first, low=first.value, high=first.value)
    return [followed, *(each for each in (welding, *others) if each.source != followed.source)]


def _cutting(thickness: float) -> list[Figure]:
    followed = cutting_orifice(thickness)
    larger = table(LARGER)
    if followed.source == larger[0].source:
        return [followed]
    low, high = (
        value_between([(row.thickness, getattr(row, end)) for row in larger], thickness)
        for end in ("orifice_low", "orifice_high")
    )
    return [followed, Figure(None, larger[0].source, larger[0].how_sure, low=low, high=high)]


_PRINTED = {
    "welding": _welding,
    "braze-welding": _brazing,
    "brazing": _brazing,
    "soldering": _brazing,
    "cutting": _cutting,
}


def orifices_by_source(thickness: float, rules: str, process: str = "welding") -> Table:
    """What each source prints for the tip's hole, and which one is followed.

    Args:
        thickness: Of the metal, m; the rows are printed for steel.
        rules: Rule set, which decides the unit.
        process: `welding`, `braze-welding`, `brazing`, `soldering` or `cutting`.

    Raises:
        ValueError: The thickness is outside the table that is followed.
    """
    unit = Scale("in", 3) if rules == "us" else Scale("mm", 3)
    rows = []
    for place, figure in enumerate(_PRINTED[process](thickness)):
        followed = place == 0
        if figure.value is not None and (followed or figure.low == figure.high):
            span = unit.text(figure.value)
        else:
            low, high = (unit.text(end or 0.0) for end in (figure.low, figure.high))
            span = low if low == high else f"{low} to {high}"
        source = source_words(figure.source) or "common practice"
        rows.append((source, span, HOW_SURE[figure.how_sure], "followed" if followed else ""))
    return Table(
        f"Hole in the tip for this thickness, {unit.name}, by source",
        ("Source", unit.name, "How sure", ""), tuple(rows),
        NOTES[process],
    )  # fmt: skip


def flows_by_source(thickness: float, ours: Figure, rules: str, injector: bool = False) -> Table:
    """Acetylene for steel of a thickness: ours, the practice in Europe and what is printed, side by side.

    Args:
        thickness: Of the steel, m.
        ours: Flow of the answer, m³/s.
        rules: Rule set, which decides the units.
        injector: Whether the answer is an insert of an injector torch.
    """
    flow, each = scale("flow", rules), Scale("L/h", 2, free_gas=True)
    assert ours.value is not None
    rows = [("This answer", flow.text(ours.value), each.text(ours.value / (thickness * 1e3)), "", "followed")]
    practice = table("welding-flows-europe")
    for row in practice:
        ends = dict.fromkeys((row.low, row.high))
        whole, a_millimetre = (
            " to ".join(shown.text(end * each_of) for end in ends)
            for shown, each_of in ((flow, thickness), (each, 1e-3))
        )
        rows.append(
            (row.words.capitalize().replace("europe", "Europe"), whole, a_millimetre, HOW_SURE[row.how_sure], "")
        )
    for printed in flows_in_print(thickness):
        value = printed.value or 0.0
        rows.append(
            (source_words(printed.source), flow.text(value), each.text(value / (thickness * 1e3)),
             HOW_SURE[printed.how_sure], "")
        )  # fmt: skip
    return Table(
        f"Acetylene for this thickness, {flow.name}, by source",
        ("Source", flow.name, "L/h for each mm of steel", "How sure", ""), tuple(rows),
        "This answer follows the printed set of inserts, as one set belongs to one torch." if injector
        else "This answer follows the tip, as its hole is what you can measure: it is the gas that the hole passes. If "
        "the puddle is slow to form, take a tip that passes more, up to the practice in Europe.",
    )  # fmt: skip


def inserts_by_thickness(thickness: float, rules: str, sizes_larger: int = 0) -> Table:
    """The published set of inserts of an injector torch, the one for a thickness marked.

    Args:
        thickness: Of the steel, m; of another metal, that of steel which takes the same gas.
        rules: Rule set, which decides the units.
        sizes_larger: Inserts by which the one taken is to be larger.
    """
    length, flow = scale("bore", rules), scale("flow", rules)
    taken = injector_setting(thickness, sizes_larger)
    rows = tuple(
        (
            f"{length.text(row.thinnest)} to {length.text(row.thickest)}",
            flow.text(row.acetylene_flow),
            f"{source_words(row.source)}, {HOW_SURE[row.how_sure]}",
            "for this thickness" if row.thinnest == taken.thinnest else "",
        )
        for row in table("injector-inserts")
    )
    return Table(
        "Inserts of an injector torch",
        (f"Steel, {length.name}", f"Acetylene, {flow.name}", "Source", ""), rows,
        "One pair of pressures serves every insert: the oxygen draws the fuel gas in.",
    )  # fmt: skip
