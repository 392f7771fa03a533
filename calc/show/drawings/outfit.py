"""An outfit with its parts numbered."""

from calc.declare import Picture
from calc.show.drawings import INK, line, mark, svg

PARTS = (
    "Oxygen {cylinder}",
    "Acetylene {cylinder}, upright and chained",
    "{cylinder} valve; the key stays on the acetylene one",
    "{regulator}",
    "Cylinder gauge: what is in the {cylinder}",
    "Delivery gauge: what goes to the hose",
    "{adjusting-screw}: out until loose before a {cylinder} is opened",
    "{arrestor} at the {regulator}",
    "{oxygen-hose}: right-hand nuts",
    "{fuel-hose}, dashed here: left-hand nuts with a groove round them",
    "Oxygen valve of the {torch}",
    "Fuel valve of the {torch}",
    "{tip}",
)
"""What each number of the drawing is, in the words of the rule set."""


def _cylinder(middle: float, top: float, half: float, number: int) -> str:
    """A cylinder with its valve and the chain that holds it."""
    return (
        f'<path d="M{middle - half} 290V{top + 24}q0-24 {half}-24t{half} 24V290z" {INK}/>'
        f'<rect x="{middle - 6}" y="{top - 24}" width="12" height="24" {INK}/>'
        + line(middle, top - 24, middle, top - 34, width=4)
        + line(middle - 10, top - 34, middle + 10, top - 34, width=4)
        + line(middle - half, 180, middle + half, 180, width=1)
        + line(middle - half, 186, middle + half, 186, width=1)
        + mark(middle, 232, number)
    )


def _regulator(middle: float, top: float) -> str:
    """Regulator beside a cylinder valve: two gauges, a screw, and an arrestor at its outlet."""
    x, y = middle + 36, top - 12
    return (
        line(middle + 6, y, x - 13, y, width=4) + f'<circle cx="{x}" cy="{y}" r="13" {INK}/>'
        f'<circle cx="{x - 14}" cy="{y - 32}" r="12" {INK}/>'
        f'<circle cx="{x + 14}" cy="{y - 32}" r="12" {INK}/>'
        + line(x - 6, y - 12, x - 9, y - 21)
        + line(x + 6, y - 12, x + 9, y - 21)
        + line(x - 14, y - 32, x - 8, y - 38)
        + line(x + 14, y - 32, x + 9, y - 26)
        + line(x + 13, y, x + 26, y, width=5)
        + f'<rect x="{x - 6}" y="{y + 18}" width="12" height="20" {INK}/>'
        + line(x, y + 13, x, y + 18, width=4)
        + line(x - 6, y + 28, x + 6, y + 28)
    )


def _torch() -> str:
    """Two inlets, two valves, one mixing tube and the outlet."""
    return (
        f'<path d="M222 296h44v28h-44zM266 302h26l30-48M266 318h34l32-56M322 254l10 8" {INK}/>'
        f'<path d="M322 254l10 8 10-26-8-6z" {INK}/>'
        + line(244, 296, 244, 284, width=4)
        + line(236, 284, 252, 284, width=4)
        + line(244, 324, 244, 336, width=4)
        + line(236, 336, 252, 336, width=4)
    )


def drawing() -> Picture:
    """The outfit: two cylinders, their regulators, two hoses and the torch.

    Returns:
        A picture whose numbers `PARTS` explains.

    Examples:
        >>> drawing().svg.count("<circle") > len(PARTS)
        True
    """
    title = "An outfit with its parts numbered"
    desc = (
        "Two upright cylinders. On each a valve, a regulator with two gauges and a screw, and an "
        "arrestor. Two hoses run to one torch, which has a valve for each gas and one outlet."
    )
    body = (
        _cylinder(42, 128, 28, 1)
        + _cylinder(146, 140, 30, 2)
        + _regulator(42, 128)
        + _regulator(146, 140)
        + f'<path d="M78 154v150q0 12 12 12h132" {INK}/>'
        + '<path d="M182 166v126q0 12 12 12h28" fill="none" stroke="currentColor" '
        'stroke-width="3" stroke-dasharray="7 4"/>'
        + _torch()
        + mark(14, 96, 3)
        + mark(146, 84, 4)
        + line(156, 90, 172, 120, width=1)
        + mark(150, 56, 5)
        + line(158, 64, 164, 88, width=1)
        + mark(222, 76, 6)
        + line(212, 82, 206, 90, width=1)
        + mark(224, 128, 7)
        + mark(206, 156, 8)
        + mark(78, 260, 9)
        + mark(182, 240, 10)
        + mark(270, 344, 11)
        + mark(264, 274, 12)
        + mark(314, 226, 13)
    )
    sentence = "Trace each hose by hand from its cylinder to its torch valve before you open anything."
    return Picture(svg(350, 358, title, desc, body), title, sentence)
