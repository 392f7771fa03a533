"""What to do where a tip draws more acetylene than one cylinder may give: ways that work, with their figures."""

from typing import Any

from calc.answer.sentences import distance
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Table
from calc.formulas.gas.acetylene import acetylene_draw_limit
from calc.formulas.gas.supply import cylinder_share, cylinders_needed
from calc.show.scales import scale
from calc.trade.gas.draws import FRACTIONS, PICKS
from calc.values.figures import Figure
from calc.values.numbers import rounded
from calc.values.quantities import FreeGas, FreeGasFlow
from calc.values.units import to_si

WELDED = ("welding", "braze-welding")
"""Work that no other fuel gas does here."""


def contents_asked(flow: FreeGasFlow, contents: FreeGas, duty: str) -> Figure | None:
    """Acetylene that the cylinders must hold for a draw, m³; None where what is there is enough.

    Args:
        flow: Acetylene drawn, m³/s.
        contents: In the cylinder now, m³.
        duty: `intermittent` or `continuous`.
    """
    if flow <= acetylene_draw_limit(contents, PICKS[duty]):
        return None
    return Figure(
        flow * 3600.0 / PICKS[duty], "cga-g1", "memory",
        basis=f"A draw of {FRACTIONS[duty]} of the contents an hour, all coupled cylinders together.",
    )  # fmt: skip


def hole_fed(flow: FreeGasFlow, hole: Figure, contents: FreeGas, duty: str) -> Figure | None:
    """Largest hole that a cylinder may feed at the pressures of a tip, m; None where it may feed that tip.

    Args:
        flow: Acetylene that the tip draws, m³/s.
        hole: Of the tip.
        contents: In the cylinder now, m³.
        duty: `intermittent` or `continuous`.
    """
    limit = acetylene_draw_limit(contents, PICKS[duty])
    if flow <= limit or hole.value is None:
        return None
    return Figure(
        hole.value * (limit / flow) ** 0.5, "cga-g1", "memory",
        basis=f"At the pressures above its gas is {FRACTIONS[duty]} of the contents an hour: a flow goes with the area of the "
        "hole. It heats more slowly: warm the part by other means first.",
    )  # fmt: skip


def _open(
    *,
    process: str, flow: FreeGasFlow, hole: Figure, contents: FreeGas, full: FreeGas, duty: str, rules: str
) -> list[tuple[Any, dict[str, str]]]:  # fmt: skip
    """Rows of the ways that work, each with the texts that fill it; none where one cylinder may feed the tip."""
    asked = contents_asked(flow, contents, duty)
    if asked is None or asked.value is None:
        return []
    gas, flows = scale("contents", rules), scale("flow", rules)
    largest = max(
        to_si(row.number, row.unit, free_gas=True)
        for row in table("acetylene-cylinders")
        if row.rules == rules
    )
    fed = hole_fed(flow, hole, contents, duty)
    given = {
        "number": str(cylinders_needed(cylinder_share(asked.value, full))),
        "full": gas.said(full),
        "needed": f"{rounded(gas.number(asked.value), 3, 'up')} {gas.name}",
        "flow": flows.said(acetylene_draw_limit(contents, PICKS[duty])),
        "hole": "" if fed is None or fed.value is None else distance(fed.value, rules, 2, "down"),
    }
    left_out = {"larger" if asked.value > largest else "larger-none"}
    left_out |= {"smaller"} if fed is None or process == "cutting" else set()
    left_out |= {"fuel"} if process in WELDED else set()
    left_out |= {"preheat"} if process == "cutting" else set()
    return [(row, given) for row in table("draw-ways") if row.id not in left_out]


def possible_by(
    *,
    process: str, flow: FreeGasFlow, hole: Figure, contents: FreeGas, full: FreeGas, duty: str, rules: str
) -> str:  # fmt: skip
    """What makes it possible to feed a tip that one cylinder may not feed, as one clause; arguments as of `ways`."""
    found = _open(
        process=process, flow=flow, hole=hole, contents=contents, full=full, duty=duty, rules=rules
    )
    return ", or ".join(row.short.format(**given) for row, given in found if row.short)


def ways(
    *,
    process: str, flow: FreeGasFlow, hole: Figure, contents: FreeGas, full: FreeGas, duty: str, rules: str
) -> Table | None:  # fmt: skip
    """Ways to feed a tip that one cylinder may not feed; None where it may.

    Args:
        process: Id of the work.
        flow: Acetylene drawn, m³/s.
        hole: Of the tip; without a value for an injector torch.
        contents: In the cylinder now, m³.
        full: What a full one holds, m³.
        duty: `intermittent` or `continuous`.
        rules: Rule set, for the units and the sizes of cylinders.
    """
    rows = tuple(
        (row.way, row.words.format(**given), f"{source_words(row.source)}, {HOW_SURE[row.how_sure]}" if row.source else "common practice")
        for row, given in _open(process=process, flow=flow, hole=hole, contents=contents, full=full, duty=duty, rules=rules)
    )  # fmt: skip
    if not rows:
        return None
    flows = scale("flow", rules)
    most = flows.said(acetylene_draw_limit(contents, PICKS[duty]))
    return Table(
        "How to feed this tip",
        ("Way", "What it takes", "Source"), rows,
        f"One cylinder may give {most} of what is in it now; this tip takes {flows.said(flow)}.",
    )  # fmt: skip
