"""Two gauges of a regulator, set to the reader's figures."""

import math

from calc.declare import Picture
from calc.show.drawings import arrow, at, finite, line, svg, words
from calc.values.numbers import plain_number
from calc.values.quantities import Gauge
from calc.values.units import from_si

SCALES = {
    "psi": (15, 30, 60, 100, 200, 400, 1000, 2000, 4000, 6000),
    "bar": (1.5, 2.5, 4, 6, 10, 16, 40, 100, 160, 315, 400),
}
"""Ends of the dials, by unit: the smallest that leaves the needle in the first nine tenths."""

START, SWEEP = math.radians(225), math.radians(270)
FREE_ACETYLENE = 103_000.0
"""Gauge pressure above which acetylene is not used, Pa: 15 psi, 29 CFR 1910.253 (a)(2)."""


def scale_end(value: float, unit: str) -> float:
    """End of the dial on which a value is read.

    Raises:
        ValueError: No dial goes that far, or the value is negative.

    Examples:
        >>> scale_end(1500, "psi"), scale_end(5, "psi")
        (2000, 15)
    """
    if value < 0:
        raise ValueError("a gauge shows nothing below zero")
    for end in SCALES[unit]:
        if value <= 0.9 * end:
            return end
    raise ValueError(f"no gauge of this drawing reads {value:g} {unit}")


def _spot(x: float, y: float, radius: float, share: float) -> tuple[float, float]:
    turn = START - SWEEP * share
    return x + radius * math.cos(turn), y - radius * math.sin(turn)


def _dial(x: float, y: float, value: float, unit: str, never_over: float | None) -> str:
    end = max(scale_end(value, unit), scale_end(1.2 * (never_over or 0.0), unit))
    parts = [
        f'<circle cx="{at(x)}" cy="{at(y)}" r="76" fill="none" stroke="currentColor" stroke-width="3"/>'
    ]
    for step in range(11):
        share = step / 10
        inner, outer = (58 if step % 2 == 0 else 64), 70
        parts.append(line(*_spot(x, y, inner, share), *_spot(x, y, outer, share)))
        if step % 5 == 0:
            lx, ly = _spot(x, y, 44, share)
            parts.append(words(lx, ly + 5, plain_number(end * share), anchor="middle", size=14))
    if never_over is not None:
        x1, y1 = _spot(x, y, 67, never_over / end)
        x2, y2 = _spot(x, y, 67, 1)
        parts.append(
            f'<path d="M{at(x1)} {at(y1)}A67 67 0 0 1 {at(x2)} {at(y2)}" fill="none" '
            'stroke="currentColor" stroke-width="9" stroke-dasharray="3 3"/>'
        )
    parts.append(arrow(x, y, *_spot(x, y, 56, value / end)))
    parts.append(f'<circle cx="{at(x)}" cy="{at(y)}" r="5" fill="currentColor"/>')
    return "".join(parts)


def drawing(cylinder: Gauge, delivery: Gauge, rules: str = "us", gas: str = "oxygen") -> Picture:
    """Cylinder gauge and delivery gauge with the needles where the figures put them.

    Args:
        cylinder: Cylinder gauge reading, Pa.
        delivery: Delivery gauge reading, Pa.
        rules: Rule set: psi in the United States, bar elsewhere.
        gas: `oxygen` or `acetylene`; acetylene marks where it must not be used.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: A reading is not finite, is negative or is beyond every dial.

    Examples:
        >>> drawing(0.0, 0.0).sentence
        'The oxygen cylinder gauge shows 0 psi and the delivery gauge 0 psi.'
    """
    unit = "psi" if rules == "us" else "bar"
    held = from_si(finite(cylinder, "cylinder"), unit)
    given = from_si(finite(delivery, "delivery"), unit)
    limit = from_si(FREE_ACETYLENE, unit) if gas == "acetylene" else None
    told = [f"{plain_number(value, 3)} {unit}" for value in (held, given)]
    dials = _dial(85, 100, held, unit, None) + _dial(255, 100, given, unit, limit)
    labels = (
        words(85, 18, "Cylinder", anchor="middle")
        + words(255, 18, "Delivery", anchor="middle")
        + words(85, 198, told[0], anchor="middle", size=18)
        + words(255, 198, told[1], anchor="middle", size=18)
    )
    title = f"The two gauges of the {gas} regulator"
    sentence = f"The {gas} cylinder gauge shows {told[0]} and the delivery gauge {told[1]}."
    if limit is not None:
        sentence += f" The hatched part, over {plain_number(limit, 2)} {unit}, is never used."
    return Picture(svg(340, 208, title, sentence, dials + labels), title, sentence)
