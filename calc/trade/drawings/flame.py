"""A flame by its ratio of oxygen to acetylene: cone, feather, envelope."""

from itertools import pairwise

from calc.data.tables import table
from calc.declare import Picture
from calc.show.drawings import INK, arrow, finite, line, svg, words
from calc.trade.flame.bands import colours, flame_kind, flame_name
from calc.values.numbers import plain_number
from calc.values.quantities import Ratio

FEATHER = ((0.85, 3.0), (0.95, 2.0), (1.0, 1.25), (1.04, 1.0))
"""Ratio, and length of the feather in cones: common training figures; 1.04 is US Army OD0017."""

CONE = ((1.14, 1.0), (1.15, 0.9), (1.5, 0.75), (1.7, 0.7))
"""Ratio, and length of the cone against the neutral one: from memory, 10 to 25 % shorter."""

LOWEST, HIGHEST = 0.85, 1.7

TO_BE_NAMED = "A flame at the tip"
"""Title of a drawing that does not say what it shows."""


def _between(points: tuple[tuple[float, float], ...], x: float) -> float:
    if x <= points[0][0]:
        return points[0][1]
    for (x1, y1), (x2, y2) in pairwise(points):
        if x <= x2:
            return y1 + (y2 - y1) * (x - x1) / (x2 - x1)
    return points[-1][1]


def drawing(ratio: Ratio, rules: str = "us", *, named: bool = True) -> Picture:
    """The flame as it looks at a ratio of oxygen to acetylene.

    Args:
        ratio: Oxygen for one of acetylene, by volume, at the torch.
        rules: Rule set, for the words.
        named: Whether its name, ratio and sound stand with it; without them the
            sentence tells only what is to be seen, for a reader who is to name it.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: The ratio is outside 0.85 to 1.7, where nothing printed says
            how the flame looks.

    Examples:
        >>> drawing(1.1).sentence
        'Neutral: the feather has just gone into a round cone. You hear a steady soft roar.'
    """
    if not LOWEST <= finite(ratio, "ratio") <= HIGHEST:
        raise ValueError(f"a flame at a ratio of {ratio:g} is not drawn; 0.85 to 1.7 is")
    kind = flame_kind("acetylene", ratio)
    name, seen = flame_name(kind, rules), colours(kind)
    cone, reach = 60 * _between(CONE, ratio), _between(FEATHER, ratio)
    start, middle = 60, 70
    end = 320 - 40 * (1 - _between(CONE, ratio)) / 0.3
    body = (
        f'<path d="M4 {middle - 12}h44l12 5v14l-12 5H4" {INK}/>'
        f'<path d="M{start} {middle - 8}Q{start + 120} {middle - 46} {end} {middle}'
        f'Q{start + 120} {middle + 46} {start} {middle + 8}" {INK} stroke-dasharray="9 4"/>'
    )
    pointed = ratio > CONE[0][0]
    tip = start + cone
    body += (
        f'<path d="M{start} {middle - 6}L{tip} {middle}L{start} {middle + 6}z" fill="currentColor"/>'
        if pointed
        else f'<path d="M{start} {middle - 6}H{tip - 8}Q{tip} {middle - 6} {tip} {middle}'
        f'Q{tip} {middle + 6} {tip - 8} {middle + 6}H{start}z" fill="currentColor"/>'
    )
    body += words(start, 150, "cone") + arrow(start + 18, 136, start + cone / 2, middle + 9)
    body += words(250, 150, "envelope") + arrow(280, 136, 262, middle + 18)
    if reach > 1:
        end = start + 60 * reach
        body += (
            f'<path d="M{start} {middle - 8}L{end - 16} {middle - 9}L{end - 24} {middle - 4}'
            f"L{end} {middle}L{end - 24} {middle + 4}L{end - 16} {middle + 9}"
            f'L{start} {middle + 8}" {INK}/>'
        )
        body += words(end - 20, 30, "feather", anchor="middle") + arrow(end - 20, 36, end - 20, middle - 11)
    if reach > 1:
        look = f"a feather reaches {plain_number(reach, 2)} times as far as the cone"
    elif pointed:
        look = "the cone is short and pointed"
    else:
        look = "the feather has just gone into a round cone"
    if not named:
        colour = seen.cone.split(",")[0]
        shape = look if reach > 1 else f"no feather; the cone is {'short and pointed' if pointed else 'round at its end'}"
        title, sentence = TO_BE_NAMED, f"Seen: {shape}; the cone is {colour}; the outer flame is {seen.envelope}."
        return Picture(svg(340, 166, title, sentence, body), title, sentence)
    body += line(4, 165, 336, 165, width=1)
    said = [f"{name}: {plain_number(ratio, 3)} of oxygen to 1", f"cone {seen.cone}"]
    said += [f"feather {seen.feather}"] if reach > 1 else []
    said += [f"envelope {seen.envelope}", f"sound: {seen.sound}"]
    for number, text in enumerate(said):
        body += words(4, 186 + 20 * number, text, size=16 if number == 0 else 14)
    title = f"The {name} flame"
    sentence = f"{name.capitalize()}: {look}. You hear {seen.sound}."
    return Picture(svg(340, 176 + 20 * len(said), title, sentence, body), title, sentence)


def smoky_drawing() -> Picture:
    """Acetylene alone, too little of it: a long yellow flame that smokes, to be named by the reader.

    Examples:
        >>> smoky_drawing().title
        'A flame at the tip'
    """
    looks = next(row for row in table("flame-looks") if row.flame == "acetylene-alone")
    start, middle = 60, 70
    body = (
        f'<path d="M4 {middle - 12}h44l12 5v14l-12 5H4" {INK}/>'
        f'<path d="M{start} {middle - 7}Q{start + 50} {middle - 40} {start + 120} {middle - 26}T{start + 235} {middle - 34}'
        f"Q{start + 190} {middle - 8} {start + 245} {middle + 6}Q{start + 180} {middle + 12} {start + 215} {middle + 34}"
        f'Q{start + 90} {middle + 36} {start} {middle + 7}" {INK}/>'
    )
    for x, y in ((285, 26), (300, 16), (312, 30), (322, 12), (296, 96)):
        body += f'<circle cx="{x}" cy="{y}" r="5" fill="currentColor" opacity="0.5"/>'
    body += words(210, 150, "smoke, soot") + arrow(290, 136, 306, 40)
    sentence = f"Seen: one {looks.look} flame, with neither cone nor feather, and soot above it."
    return Picture(svg(340, 166, TO_BE_NAMED, sentence, body), TO_BE_NAMED, sentence)
