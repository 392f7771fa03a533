"""Acetylene drawn from a cylinder, held against what it may give."""

from calc.declare import Caution
from calc.figures import Figure
from calc.formulas.gas.acetylene import (
    CONTINUOUS_DRAW,
    INTERMITTENT_DRAW,
    OLDER_DRAW,
    acetylene_draw_limit,
)
from calc.hazards import caution
from calc.quantities import FreeGas, FreeGasFlow, Ratio, Temperature
from calc.sheets.stocks import filled_at

DUTIES = {"intermittent": "On and off", "continuous": "Without a stop"}
PICKS: dict[str, Ratio] = {"intermittent": INTERMITTENT_DRAW, "continuous": CONTINUOUS_DRAW}
FRACTIONS = {"intermittent": "1/10", "continuous": "1/15"}
BEHIND = {"intermittent": ("draw-note", "read-m"), "continuous": ("cga-g1", "memory")}
"""Where each comes from, and how sure: the standard itself was not reached."""


def draw_limit_of(contents: FreeGas, duty: str) -> Figure:
    """Most that may be drawn from what is in a cylinder now, m³/s.

    Args:
        contents: Acetylene in the cylinder now, m³.
        duty: `intermittent` or `continuous`.

    Source:
        [draw-note] a tenth, by [cga-g1]; a fifteenth from memory.
    """
    source, how_sure = BEHIND[duty]
    return Figure(
        acetylene_draw_limit(contents, PICKS[duty]),
        source,
        how_sure,
        basis=f"{FRACTIONS[duty]} of what is in the cylinder now, an hour. Older books print 1/7; a note of the trade "
        "says that the standard now has 1/10 in its place. Followed: the smaller. 1/7 is no allowance.",
    )


def drawn_past_any(flow: FreeGasFlow, contents: FreeGas) -> bool:
    """Whether acetylene is drawn faster than any book allows: DANGER, not to be lit.

    Args:
        flow: Acetylene drawn, m³/s.
        contents: Acetylene in the cylinder now, m³.

    Source:
        [manly-1916] one seventh.
    """
    return flow > acetylene_draw_limit(contents, OLDER_DRAW)


def cold_cautions(temperature: Temperature, rules: str) -> list[Caution]:
    """Hazard of an acetylene cylinder that is colder than it was filled at; none of a warmer one.

    Args:
        temperature: Of the cylinder, K.
        rules: Rule set, for the temperature that cylinders are filled at.
    """
    return [caution("acetylene-cold")] if temperature < filled_at(rules) else []


def draw_cautions(flow: FreeGasFlow, contents: FreeGas, duty: str, this: str = "This") -> list[Caution]:
    """Hazards of drawing acetylene too fast; none below the pick.

    Args:
        flow: Acetylene drawn, m³/s.
        contents: Acetylene in the cylinder now, m³.
        duty: `intermittent` or `continuous`.
        this: What draws it, as a sentence begins.

    Source:
        [draw-note] one tenth, by [cga-g1]; [manly-1916] one seventh.
    """
    if drawn_past_any(flow, contents):
        return [
            caution("draw-never", this=this)
        ]
    if flow > acetylene_draw_limit(contents, PICKS[duty]):
        return [
            caution("draw-over", this=this, share=FRACTIONS[duty])
        ]
    return []
