"""A brazed joint in section, cold and hot, with its gaps to one scale."""

from calc.declare import Picture
from calc.show.drawings import INK, at, finite, line, svg, words
from calc.values.numbers import plain_number
from calc.values.quantities import Length
from calc.values.units import from_si

FORMS = {"sleeve": ("outside part", "inside part"), "flat-lap": ("first sheet", "second sheet")}
"""The forms that are drawn, and what their two parts are called."""

WIDTH, HEIGHT = 340.0, 300.0
TOP, PART, TALLEST = 66.0, 34.0, 110.0
"""Where the upper part begins, how thick a part is drawn, and the widest gap as drawn."""
STEADY = 0.03
"""A change below this share of the widest gap wanted is not told."""


def _hatched(x: float, y: float, width: float, height: float) -> str:
    lines = []
    for offset in range(10, int(width + height), 12):
        x1, y1 = x + min(offset, width), y + max(0.0, offset - width)
        x2, y2 = x + max(0.0, offset - height), y + min(offset, height)
        lines.append(line(x1, y1, x2, y2, width=1))
    box = f'<rect x="{at(x)}" y="{at(y)}" width="{at(width)}" height="{at(height)}" {INK}/>'
    return box + "".join(lines)


def _told(length: Length, rules: str) -> str:
    unit = "in" if rules == "us" else "mm"
    return f"{plain_number(from_si(length, unit), 2)} {unit}"


def _joint(x: float, heading: str, gap: float, told: str) -> str:
    below = TOP + PART + gap
    return (
        words(x + 50, 24, heading, anchor="middle", size=18)
        + words(x + 50, 46, told, anchor="middle")
        + _hatched(x, TOP, 100, PART)
        + _hatched(x, below, 100, PART)
    )


def _wanted(x: float, least: float, most: float, told: tuple[str, str]) -> str:
    edge = TOP + PART
    low, high = edge + least, edge + most
    return (
        words(x + 40, 24, "wanted", anchor="middle", size=18)
        + words(x + 40, 46, "when hot", anchor="middle")
        + line(x, edge, x + 80, edge)
        + line(x, low, x + 80, low, width=1.5, dash="6 4")
        + line(x, high, x + 80, high, width=1.5, dash="6 4")
        + words(x + 40, min(high, edge + TALLEST) + 20, f"{told[0]} to", anchor="middle", size=14)
        + words(x + 40, min(high, edge + TALLEST) + 38, told[1], anchor="middle", size=14)
    )


def drawing(
    *,
    form: str, outside: str, inside: str, cold: Length, hot: Length, least: Length, most: Length,
    rules: str = "us",
) -> Picture:  # fmt: skip
    """Both parts of a joint cut through, cold and hot, and the gap that the filler wants.

    Args:
        form: `sleeve` or `flat-lap`.
        outside: Metal of the outside part or the first sheet.
        inside: Metal of the inside part or the second sheet.
        cold: Gap on each side when cold, m.
        hot: Gap on each side at brazing heat, m.
        least: Least gap wanted, m.
        most: Largest gap wanted, m.
        rules: Rule set: inches in the United States, millimetres elsewhere.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: The form is unknown, or a gap is negative or not finite.

    Examples:
        >>> drawing(form="sleeve", outside="steel", inside="copper", cold=0.05e-3, hot=0.02e-3, least=0.05e-3, most=0.13e-3, rules="iso").sentence
        'The gap closes from 0.05 mm cold to 0.02 mm hot; the filler wants 0.05 mm to 0.13 mm.'
    """
    if form not in FORMS:
        raise ValueError(f"there is no drawing of a {form!r} joint; there are {tuple(FORMS)}")
    gaps = {"cold": cold, "hot": hot, "least": least, "most": most}
    if any(finite(gap, name) < 0 for name, gap in gaps.items()) or not least < most:
        raise ValueError("a gap of the joint cannot be drawn")
    scale = TALLEST / max(gaps.values())
    told = {name: _told(gap, rules) for name, gap in gaps.items()}
    upper, lower = FORMS[form]
    body = (
        _joint(4, "cold", cold * scale, told["cold"])
        + _joint(118, "hot", hot * scale, told["hot"])
        + _wanted(246, least * scale, most * scale, (told["least"], told["most"]))
        + words(4, HEIGHT - 30, f"above: {upper}, {outside}", size=14)
        + words(4, HEIGHT - 8, f"below: {lower}, {inside}", size=14)
    )
    change = (
        f"stays near {told['hot']}"
        if abs(hot - cold) < STEADY * most
        else f"{'closes' if hot < cold else 'opens'} from {told['cold']} cold to {told['hot']} hot"
    )
    title = "The gap in section, cold and hot"
    sentence = f"The gap {change}; the filler wants {told['least']} to {told['most']}."
    desc = f"{sentence} All gaps are drawn to one scale, the parts are not."
    return Picture(svg(WIDTH, HEIGHT, title, desc, body), title, sentence)
