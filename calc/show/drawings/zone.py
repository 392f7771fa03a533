"""The ground round hot work, from above and from the side, to one scale."""

from collections.abc import Sequence

from calc.declare import Picture
from calc.show.drawings import INK, arrow, at, finite, line, svg, words
from calc.values.numbers import plain_number
from calc.values.quantities import Length
from calc.values.units import from_si

WIDTH, MIDDLE, HALF = 340.0, 170.0, 150.0
TOP = 26.0
TALLEST = 230.0
WORK = 4.0


def _told(length: Length, rules: str) -> str:
    unit = "ft" if rules == "us" else "m"
    return f"{plain_number(from_si(length, unit), 3)} {unit}"


def _ring(x: float, y: float, radius: float, dash: str) -> str:
    dashed = f' stroke-dasharray="{dash}"' if dash else ""
    return f'<circle cx="{at(x)}" cy="{at(y)}" r="{at(radius)}" {INK}{dashed}/>'


def _cross(x: float, y: float) -> str:
    return line(x - 6, y - 6, x + 6, y + 6) + line(x - 6, y + 6, x + 6, y - 6)


def _plan(clear: Length, reach: Length, nearest: Length | None, scale: float) -> str:
    middle = TOP + HALF
    drawn = _ring(MIDDLE, middle, clear * scale, "") + _ring(MIDDLE, middle, reach * scale, "7 5")
    drawn += f'<circle cx="{at(MIDDLE)}" cy="{at(middle)}" r="{at(WORK)}" fill="currentColor"/>'
    if nearest is not None and nearest * scale <= HALF + 6:
        drawn += _cross(MIDDLE + nearest * scale, middle)
    return drawn


def _side(
    *,
    clear: Length, height: Length, nearest: Length | None, path: Sequence[tuple[Length, Length]], scale: float, ground: float
) -> str:  # fmt: skip
    work = ground - height * scale
    drawn = line(4, ground, WIDTH - 4, ground, width=3)
    drawn += f'<circle cx="{at(MIDDLE)}" cy="{at(work)}" r="{at(WORK)}" fill="currentColor"/>'
    if height * scale > 2 * WORK:
        drawn += line(MIDDLE, work + WORK, MIDDLE, ground, width=1)
    for sign in (-1.0, 1.0):
        edge = MIDDLE + sign * clear * scale
        drawn += line(edge, ground - 26, edge, ground, width=3)
        curve = "L".join(f"{at(MIDDLE + sign * x * scale)} {at(ground - y * scale)}" for x, y in path)
        drawn += f'<path d="M{curve}" {INK} stroke-dasharray="7 5"/>'
    if nearest is not None and nearest * scale <= HALF + 6:
        drawn += _cross(MIDDLE + nearest * scale, ground - 8)
    return drawn


def drawing(
    *,
    clear: Length,
    reach: Length,
    height: Length,
    path: Sequence[tuple[Length, Length]],
    nearest: Length | None = None,
    rules: str = "us",
) -> Picture:
    """Plan and side view of a hot-work zone, both to the same scale.

    Args:
        clear: Distance that is cleared, m.
        reach: Distance that sparks can go, m.
        height: Of the work above the ground, m.
        path: Distance and height of a spark on its way, m.
        nearest: Distance to the nearest thing that burns, m; left out where it is none.
        rules: Rule set, for the unit.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: A length is not finite, or there is no distance to draw.

    Examples:
        >>> drawing(clear=10.668, reach=14.0, height=1.0, path=[(0.0, 1.0), (14.0, 0.0)]).sentence
        'Clear 35 ft all round; sparks can go 45.9 ft and may go further.'
    """
    for name, value in (
        ("clear", clear),
        ("reach", reach),
        ("height", height),
        ("nearest", nearest or 0.0),
    ):
        finite(value, name)
    top = max([height, *(y for _, y in path)])
    if clear <= 0 or reach <= 0:
        raise ValueError("there is no distance to draw")
    scale = min(HALF / max(clear, reach), TALLEST / max(top, 1e-6))
    below = TOP + 2 * HALF + 30
    ground = below + 22 + max(top * scale, 30.0)
    body = words(4, 18, "From above") + _plan(clear, reach, nearest, scale)
    body += words(4, below, "From the side")
    body += _side(clear=clear, height=height, nearest=nearest, path=path, scale=scale, ground=ground)
    bar = clear * scale
    key = ground + 28
    body += arrow(MIDDLE, key, MIDDLE + bar, key) + words(4, key + 5, f"clear {_told(clear, rules)}")
    rows = [
        ("", "full line", "clear of what burns"),
        ("7 5", "dashed", f"sparks {_told(reach, rules)}, may go further"),
    ]
    for number, (dash, _, text) in enumerate(rows):
        y = key + 28 + 24 * number
        body += line(8, y - 5, 44, y - 5, dash=dash) + words(52, y, text)
    last = key + 28 + 24 * len(rows)
    if nearest is not None:
        body += _cross(26, last - 5) + words(52, last, f"what burns, at {_told(nearest, rules)}")
        last += 24
    title = "Round the work"
    sentence = (
        f"Clear {_told(clear, rules)} all round; sparks can go {_told(reach, rules)} and may go further."
    )
    return Picture(svg(WIDTH, last, title, sentence, body), title, sentence)
