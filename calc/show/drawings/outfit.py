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


def _cylinder(x: float, top: float, width: float, number: int) -> str:
    middle = x + width / 2
    shell = (
        f'<path d="M{x} 290V{top + 24}q0-24 {width / 2}-24t{width / 2} 24V290z" {INK}/>'
        f'<rect x="{middle - 6}" y="{top - 16}" width="12" height="16" {INK}/>'
    )
    return shell + mark(middle, 220, number)


def _regulator(x: float, y: float, side: int) -> str:
    """Regulator at a cylinder valve with two gauges, a screw and an arrestor."""
    return (
        f'<circle cx="{x}" cy="{y}" r="14" {INK}/>'
        f'<circle cx="{x - 15}" cy="{y - 31}" r="13" {INK}/>'
        f'<circle cx="{x + 15}" cy="{y - 31}" r="13" {INK}/>'
        + line(x - 15, y - 31, x - 8, y - 38)
        + line(x + 15, y - 31, x + 9, y - 25)
        + line(x + side * 14, y, x + side * 30, y, width=4)
        + f'<rect x="{x - 5}" y="{y + 14}" width="10" height="18" {INK}/>'
        + line(x - 5, y + 23, x + 5, y + 23)
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
        _cylinder(20, 116, 60, 1)
        + _cylinder(130, 136, 70, 2)
        + line(4, 180, 216, 180, width=3)
        + _regulator(50, 84, 1)
        + _regulator(165, 104, 1)
        + f'<path d="M50 116v14h48v176q0 12 12 12h110" {INK}/>'
        + '<path d="M165 136v-2h62v150q0 12 8 16" fill="none" stroke="currentColor" '
        'stroke-width="3" stroke-dasharray="7 4"/>'
        + f'<path d="M220 300h70l34-46M220 318h76l38-56" {INK}/>'
        + f'<path d="M324 254l8-22 8 4-6 26z" {INK}/>'
        + line(255, 300, 255, 288, width=4)
        + line(255, 318, 255, 330, width=4)
        + mark(26, 112, 3)
        + mark(50, 84, 4)
        + mark(150, 52, 5)
        + mark(196, 62, 6)
        + mark(94, 84, 7)
        + mark(190, 128, 8)
        + mark(110, 270, 9)
        + mark(227, 230, 10)
        + mark(255, 338, 11)
        + mark(255, 280, 12)
        + mark(312, 226, 13)
    )
    sentence = "Trace each hose by hand from its cylinder to its torch valve before you open anything."
    return Picture(svg(350, 352, title, desc, body), title, sentence)
