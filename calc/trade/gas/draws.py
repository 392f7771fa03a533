"""Fuel gas drawn from a cylinder: how fast it may be, how long it lasts, and what cold does to it."""

from calc.answer.hazards import caution
from calc.declare import Caution
from calc.formulas.gas.acetylene import (
    CONTINUOUS_DRAW,
    INTERMITTENT_DRAW,
    OLDER_DRAW,
    acetylene_draw_limit,
)
from calc.formulas.gas.possible import LIQUEFIED
from calc.formulas.gas.supply import running_time
from calc.trade.gas.stocks import filled_at
from calc.values.figures import Figure
from calc.values.quantities import FreeGas, FreeGasFlow, Ratio, Temperature

DUTIES = {"intermittent": "On and off", "continuous": "Without a stop"}
PICKS: dict[str, Ratio] = {"intermittent": INTERMITTENT_DRAW, "continuous": CONTINUOUS_DRAW}
FRACTIONS = {"intermittent": "1/10", "continuous": "1/15"}
BEHIND = {"intermittent": ("draw-note", "read-m"), "continuous": ("cga-g1", "memory")}
"""Where each comes from, and how sure: the standard itself was not reached."""
TOO_FAST = "The torch draws more than 1/7 of what is in the cylinder an hour: acetone would come along."


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


def gas_lasts(usable: FreeGas, flow: Figure, basis: str) -> Figure:
    """Time that a gas lasts with the flame burning, s.

    Args:
        usable: Gas to draw, m³.
        flow: It is drawn at, m³/s, with its band.
        basis: What it was reckoned from.
    """
    assert flow.value is not None
    return Figure(
        running_time(usable, flow.value), flow.source, flow.how_sure,
        low=running_time(usable, flow.high or flow.value), high=running_time(usable, flow.low or flow.value), basis=basis,
    )  # fmt: skip


def acetylene_lasts(contents: FreeGas, kept: FreeGas, flow: Figure, duty: str, basis: str) -> tuple[Figure, Figure]:
    """How long acetylene lasts, and how long it may be drawn so fast, s; no time at all where it must not be lit.

    Args:
        contents: Acetylene in the cylinder now, m³.
        kept: What stays in it when it is changed, m³.
        flow: Acetylene drawn, m³/s, with its band.
        duty: `intermittent` or `continuous`.
        basis: What the first was reckoned from.

    Source:
        [draw-note] one tenth, by [cga-g1]; [manly-1916] one seventh.

    Examples:
        >>> draws = [Figure(flow / 3600, "", "practice") for flow in (0.1, 0.25, 0.3)]
        >>> times = [acetylene_lasts(2.0, 0.5, draw, "intermittent", "") for draw in draws]
        >>> [(round(lasts.value / 3600), round(may.value / 3600)) for lasts, may in times]
        [(15, 10), (6, 0), (0, 0)]
    """
    assert flow.value is not None
    limit = draw_limit_of(contents, duty)
    enough = flow.value * 3600 / PICKS[duty]
    may = Figure(
        max(contents - enough, 0.0) / flow.value, limit.source, limit.how_sure,
        basis=f"Until the draw is {FRACTIONS[duty]} an hour of what is then in the cylinder. Then couple cylinders, "
        "or fit a smaller tip.",
    )  # fmt: skip
    if drawn_past_any(flow.value, contents):
        return Figure(0.0, "manly-1916", "read", words="the draw is too fast from the start", basis=TOO_FAST), may
    if contents <= kept:
        return Figure(0.0, "", "practice", words="change this cylinder now: what is in it must stay in it", basis=basis), may
    return gas_lasts(contents - kept, flow, basis), may


def cold_cautions(fuel: str, temperature: Temperature | None, rules: str) -> list[Caution]:
    """Hazards of a fuel cylinder that is colder than cylinders are filled at; none of a warmer one, or of a stored gas.

    Args:
        fuel: Id of the fuel gas.
        temperature: Of the cylinder, K; None where it was not asked, so that it may be cold.
        rules: Rule set, for the temperature that cylinders are filled at.

    Examples:
        >>> [one.id for one in cold_cautions("propane", 268.0, "us")]
        ['cylinder-warmed', 'liquid-cold']
        >>> [one.id for one in cold_cautions("acetylene", None, "us")]
        ['acetylene-cold']
    """
    if temperature is not None and temperature >= filled_at(rules):
        return []
    if fuel == "acetylene":
        return [caution("acetylene-cold")]
    return [caution("cylinder-warmed"), caution("liquid-cold")] if fuel in LIQUEFIED else []


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
        return [caution("draw-never", this=this)]
    if flow > acetylene_draw_limit(contents, PICKS[duty]):
        return [caution("draw-over", this=this, share=FRACTIONS[duty])]
    return []
