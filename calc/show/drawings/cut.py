"""The edge that a cut leaves: its drag lines to scale, and what four mistakes do to it."""

from calc.declare import Picture
from calc.show.drawings import INK, arrow, at, finite, line, svg, words
from calc.values.numbers import plain_number
from calc.values.quantities import Length, Speed, Time
from calc.values.units import from_si

WIDTH = 340.0
LEFT, RIGHT, TOP, HIGH = 8.0, 332.0, 46.0, 120.0
"""The plate of the whole edge, as drawn; its height stands for the thickness."""
BEATS: tuple[Time, ...] = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0)
CLOSEST = 14.0
"""Drag lines stand no nearer than this."""
ROW, FACE_LEFT, FACE_WIDE, FACE_HIGH = 112.0, 8.0, 120.0, 62.0
WORDS_LEFT = 142.0
FAULTS = (
    ("Too fast", ("Lines sweep far back,", "and the far corner below", "is left uncut.")),
    ("Too slow", ("The top edge melts, lines", "are coarse, lumps of slag", "hang below.")),
    ("Too much preheat", ("The top edge is round,", "with beads along it; slag", "is welded on below.")),
    ("Too much oxygen", ("A hollow runs under the", "top edge, the lines there", "are rough.")),
)
"""Name and sentence of each drawn mistake, the sentence in lines."""


def _told(length: Length, rules: str) -> str:
    unit = "in" if rules == "us" else "mm"
    return f"{plain_number(from_si(length, unit), 2)} {unit}"


def _drag_line(x: float, top: float, high: float, lag: float, width: float = 1.5) -> str:
    """A line upright at the top that falls behind by `lag` at the bottom."""
    return (
        f'<path d="M{at(x)} {at(top)}Q{at(x)} {at(top + high / 2)} {at(x - lag)} {at(top + high)}" '
        f'fill="none" stroke="currentColor" stroke-width="{at(width)}"/>'
    )


def drawing(thickness: Length, speed: Speed, drag: Length, rules: str = "us") -> Picture:
    """The edge of a good cut, looked at from the side, drag lines to scale.

    Args:
        thickness: Of the steel along the jet, m.
        speed: Of travel, m/s.
        drag: How far the bottom lags at most in a good cut, m.
        rules: Rule set: inches in the United States, millimetres elsewhere.

    Returns:
        The picture, its title and its sentence. A line stands where the jet was at
        equal times, so the lines are as far apart as this speed makes them.

    Raises:
        ValueError: A figure cannot be drawn.

    Examples:
        >>> drawing(0.0127, 0.006, 0.00127).sentence
        'A good cut in 0.5 in at this speed: each line is 0.5 s of travel, and its foot lags at most 0.05 in.'
    """
    for name, value in (("thickness", thickness), ("speed", speed), ("drag", drag)):
        finite(value, name)
    if thickness <= 0 or speed <= 0 or not 0 <= drag <= thickness / 2:
        raise ValueError("there is no steel or no travel, or the drag is too long to draw")
    scale = HIGH / thickness
    beat = next((b for b in BEATS if speed * b * scale >= CLOSEST), BEATS[-1])
    step, lag = max(speed * beat * scale, CLOSEST), drag * scale
    foot = TOP + HIGH
    body = arrow(200, 18, 326, 18) + words(8, 23, "the torch goes this way")
    body += f'<rect x="{at(LEFT)}" y="{at(TOP)}" width="{at(RIGHT - LEFT)}" height="{at(HIGH)}" {INK}/>'
    x = LEFT + lag + step
    places = []
    while x < RIGHT - 2:
        places.append(x)
        body += _drag_line(x, TOP, HIGH, lag)
        x += step
    if not places:
        places = [(LEFT + RIGHT) / 2]
        body += _drag_line(places[0], TOP, HIGH, lag)
    shown = places[len(places) // 2]
    body += line(shown, TOP, shown, foot + 20, width=1.5, dash="5 4")
    body += line(shown - lag, foot, shown - lag, foot + 20, width=1.5, dash="5 4")
    body += words(8, foot + 42, f"dashes: drag, at most {_told(drag, rules)}")
    body += words(8, foot + 66, f"one line for each {plain_number(beat)} s of travel")
    body += words(8, foot + 90, f"from top to bottom {_told(thickness, rules)} of steel")
    title = "The edge of a good cut"
    sentence = (
        f"A good cut in {_told(thickness, rules)} at this speed: each line is {plain_number(beat)} s of travel, "
        f"and its foot lags at most {_told(drag, rules)}."
    )
    return Picture(svg(WIDTH, foot + 100, title, sentence, body), title, sentence)


def _face(top: float) -> str:
    return (
        f'<rect x="{at(FACE_LEFT)}" y="{at(top)}" width="{at(FACE_WIDE)}" height="{at(FACE_HIGH)}" {INK}/>'
    )


def _drops(top: float, places: tuple[float, ...]) -> str:
    """Slag that hangs below a face."""
    foot = top + FACE_HIGH
    return "".join(
        f'<path d="M{at(x - 6)} {at(foot)}q0 12 6 12q6 0 6 -12z" fill="currentColor"/>' for x in places
    )


def _beads(top: float, places: tuple[float, ...]) -> str:
    return "".join(f'<circle cx="{at(x)}" cy="{at(top)}" r="4" fill="currentColor"/>' for x in places)


def _too_fast(top: float) -> str:
    right, foot = FACE_LEFT + FACE_WIDE, top + FACE_HIGH
    lines = "".join(_drag_line(x, top, FACE_HIGH, 34) for x in range(56, 120, 12))
    uncut = "".join(line(right, foot - h, right - 1.6 * h, foot, width=1) for h in (6, 12, 18))
    return _face(top) + lines + uncut + line(right, foot - 22, right - 36, foot, dash="4 3")


def _too_slow(top: float) -> str:
    right, foot = FACE_LEFT + FACE_WIDE, top + FACE_HIGH
    waves = "".join(f"q7.5 {dip} 15 0" for dip in (9, 4, 11, 5, 8, 10, 4, 9))
    edge = f'<path d="M{at(FACE_LEFT)} {at(top)}{waves}V{at(foot)}H{at(FACE_LEFT)}Z" {INK}/>'
    coarse = "".join(
        f'<path d="M{x} {at(top + 8)}l{a} 14l{-a - 2} 14l{a} 14l-2 10" fill="none" '
        'stroke="currentColor" stroke-width="2.5"/>'
        for x, a in ((26, 4), (50, -3), (66, 5), (94, -4), (right - 14, 3))
    )
    return edge + coarse + _drops(top, (24, 46, 62, 92, 112))


def _preheat(top: float) -> str:
    right, foot = FACE_LEFT + FACE_WIDE, top + FACE_HIGH
    edge = (
        f'<path d="M{at(FACE_LEFT)} {at(foot)}V{at(top + 16)}Q{at(FACE_LEFT)} {at(top)} {at(FACE_LEFT + 16)} '
        f'{at(top)}H{at(right - 16)}Q{at(right)} {at(top)} {at(right)} {at(top + 16)}V{at(foot)}Z" {INK}/>'
    )
    lines = "".join(_drag_line(x, top + 12, FACE_HIGH - 12, 4) for x in range(24, 124, 14))
    beads = _beads(top + 5, (30, 44, 52, 70, 82, 98, 108))
    shell = f'<rect x="{at(FACE_LEFT + 4)}" y="{at(foot)}" width="{at(FACE_WIDE - 8)}" height="8" fill="currentColor"/>'
    return edge + lines + beads + shell


def _oxygen(top: float) -> str:
    right = FACE_LEFT + FACE_WIDE
    hollow = "".join(
        f'<path d="M{at(FACE_LEFT)} {at(top + y)}Q{at((FACE_LEFT + right) / 2)} {at(top + y + bend)} {at(right)} '
        f'{at(top + y)}" fill="none" stroke="currentColor" stroke-width="1.5" stroke-dasharray="4 3"/>'
        for y, bend in ((6, 6), (22, -6))
    )
    rough = "".join(line(x, top + 9, x + 6, top + 19, width=2) for x in range(14, 122, 9))
    lines = "".join(_drag_line(x, top + 22, FACE_HIGH - 22, 5) for x in range(22, 126, 14))
    return _face(top) + hollow + rough + lines


def faults() -> Picture:
    """The same edge after four mistakes, each with its name and its sentence.

    Examples:
        >>> faults().title
        'Four wrong edges'
    """
    made = (_too_fast, _too_slow, _preheat, _oxygen)
    body = ""
    for number, ((name, said), draw) in enumerate(zip(FAULTS, made, strict=True)):
        top = 10 + ROW * number
        body += draw(top) + words(WORDS_LEFT, top + 14, name)
        for place, text in enumerate(said):
            body += words(WORDS_LEFT, top + 36 + 19 * place, text, size=14)
    title = "Four wrong edges"
    sentence = "Read the edge after the first short cut: it says what to change before the long one."
    return Picture(svg(WIDTH, ROW * len(made), title, sentence, body), title, sentence)
