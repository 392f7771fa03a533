"""Filter shades: the least that the rules allow, and the range they guide to."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Any

from calc.data.tables import table
from calc.formulas.setup.printed import HAIR, require_thickness
from calc.formulas.setup.ruled import NO_FIGURE
from calc.values.quantities import FreeGasFlow, Length

PROCESSES = ("soldering", "brazing", "welding", "cutting")
_BY_THICKNESS = ("welding", "cutting")
_BY_FLOW = ("welding", "brazing", "cutting")


@dataclass(frozen=True, slots=True, kw_only=True)
class Shade:
    """Filter shades for one piece of work.

    Attributes:
        minimum: The least shade: where the rule set names none, the number it picks.
        lightest: Lightest of the guide.
        darkest: Darkest of the guide.
        rules: Rule set that the figures belong to.
        source: Publication and place of the minimum.
        guide_source: Publication and place of the guide.
        how_sure: Grade of the minimum.
        basis: What it was picked by.
        note: Empty, or a sentence that another rule set's figure is shown.
    """

    minimum: int
    lightest: int
    darkest: int
    rules: str
    source: str
    guide_source: str
    how_sure: str
    basis: str
    note: str


def _first(rows: Iterable[Any], process: str, size: float | None) -> Any:
    """The first row of a process that holds a size; rows rise and the last is open."""
    for row in rows:
        if row.process != process:
            continue
        below = getattr(row, "below", None)
        if below is None and row.up_to is None:
            return row
        assert size is not None
        if below is not None and size < below * (1 - HAIR):
            return row
        if row.up_to is not None and size <= row.up_to * (1 + HAIR):
            return row
    raise ValueError(f"no filter shade is kept for {process}")


def us_shade(process: str, thickness: Length | None = None) -> Shade:
    """Shades of the US rules.

    Args:
        process: `soldering`, `brazing`, `welding` or `cutting`.
        thickness: Of the work, m; needed for welding and cutting.

    Returns:
        The minimum of the one rule and the guide of the other.

    Raises:
        ValueError: The process is none of these, or the thickness is missing.

    Valid for:
        Oxy-fuel flames. Start too dark and lighten, never below the minimum.

    Source:
        [cfr1910-133] (a)(5); guide [cfr1910-252] (b)(2)(ii)(H)

    Examples:
        >>> us_shade("welding", 0.0015875).minimum
        4
    """
    if process in _BY_THICKNESS:
        if thickness is None:
            raise ValueError("the shade for this work goes by thickness; give the thickness")
        require_thickness(thickness)
    least = _first(table("shades-us-minimum"), process, thickness)
    guide = _first(table("shades-us-guide"), process, thickness)
    return Shade(
        minimum=round(least.shade),
        lightest=round(guide.lightest),
        darkest=round(guide.darkest),
        rules="us",
        source=least.source,
        guide_source=guide.source,
        how_sure=least.how_sure,
        basis=least.printed,
        note="",
    )


def en169_shade(process: str, flow: FreeGasFlow) -> Shade:
    """Shade of EN 169, which goes by the flow through the torch.

    Args:
        process: `welding` or `brazing`, by the acetylene, or `cutting`, by the cutting oxygen.
        flow: m³/s of free gas.

    Returns:
        The shade for the flow. One shade lighter or darker is allowed for
        posture and lighting; the minimum is the shade for the flow.

    Raises:
        ValueError: EN 169 names no shade for the process, or the flow is not
            above zero.

    Valid for:
        Eyes half a metre from the work, about 100 lx.

    Source:
        [en169-2002] read through [dguv-209-011] and [dguv-112-192]

    Examples:
        >>> [en169_shade("welding", flow / 3.6e6).minimum for flow in (70, 71)]
        [4, 5]
    """
    if not 0 < flow < float("inf"):
        raise ValueError("the flow must be above zero")
    row = _first(table("shades-en169-2002"), process, flow)
    shade, step = round(row.shade), round(row.step)
    return Shade(
        minimum=shade,
        lightest=shade - step,
        darkest=shade + step,
        rules="iso",
        source=row.source,
        guide_source=row.source,
        how_sure=row.how_sure,
        basis=row.printed,
        note="",
    )


def shade(
    process: str,
    rules: str,
    thickness: Length | None = None,
    flow: FreeGasFlow | None = None,
) -> Shade:
    """Filter shades for a piece of work under a rule set.

    Args:
        process: `soldering`, `brazing`, `welding` or `cutting`.
        rules: `us` goes by thickness; `iso` and `uk` go by flow, EN 169.
        thickness: Of the work, m.
        flow: Acetylene for welding and brazing, cutting oxygen for cutting, m³/s of free gas.

    Returns:
        The shades. EN 169 names none for soldering here, so it shows the US
        figures and says so.

    Raises:
        ValueError: The process is unknown, or the size that the rule set goes
            by is missing.

    Valid for:
        Oxy-fuel flames.

    Source:
        [cfr1910-133], [cfr1910-252], [en169-2002]
    """
    if process not in PROCESSES:
        raise ValueError(f"no filter shade is kept for {process}")
    if rules == "us":
        return us_shade(process, thickness)
    if process not in _BY_FLOW:
        return replace(us_shade(process), note=NO_FIGURE)
    if flow is None:
        raise ValueError("the shade under EN 169 goes by the gas flow; give the flow")
    return replace(en169_shade(process, flow), rules=rules)


SOLVERS = (us_shade, en169_shade, shade)
