"""What the puddle looks like from above: too cold, as wanted, too hot."""

from collections.abc import Callable
from textwrap import wrap

from calc.declare import Picture
from calc.show.drawings import at, line, words
from calc.show.drawings.torch_shapes import WIDTH, curve, melt, picture, told

HIGH = 108.0
SEAM = 46.0
"""Height of the seam in its row."""
TELLS = 152.0
LETTERS = 18
"""Most letters in a line beside a drawing."""


def _ripples(y: float, half: float, start: float = 62.0, end: float = 142.0, step: float = 9.0) -> str:
    count = int((end - start) / step)
    arcs = "".join(
        f"M{at(start + step * n)} {at(y - half)}q{at(step)} {at(half)} 0 {at(2 * half)}"
        for n in range(count)
    )
    sides = f"M{at(start)} {at(y - half)}H{at(end)}M{at(start)} {at(y + half)}H{at(end)}"
    return curve(arcs + sides, 1.5)


def _round(x: float, y: float, a: float, b: float) -> str:
    return melt(
        f"M{at(x - a)} {at(y)}A{at(a)} {at(b)} 0 1 0 {at(x + a)} {at(y)}A{at(a)} {at(b)} 0 1 0 {at(x - a)} {at(y)}z"
    )


def _seam(y: float, x1: float = 8, x2: float = 142) -> str:
    return line(x1, y, x2, y, width=1.5, dash="5 4")


def _hole(x: float, y: float, a: float, b: float) -> str:
    return (
        f'<ellipse cx="{at(x)}" cy="{at(y)}" rx="{at(a)}" ry="{at(b)}" fill="var(--bb-paper, #fff)" '
        'stroke="currentColor" stroke-width="2"/>'
    )


def _dots(y: float) -> str:
    return "".join(
        f'<circle cx="{x}" cy="{at(y + dy)}" r="5" fill="currentColor"/>'
        for x, dy in ((40, -4), (58, 7), (78, -8), (96, 4), (118, -3))
    )


def _edge_eaten(y: float) -> str:
    return curve(f"M8 {at(y)}H40Q58 {at(y - 20)} 84 {at(y - 16)}T142 {at(y - 14)}", 2)


_Row = tuple[str, str, Callable[[float], str]]
_ROWS: dict[str, tuple[tuple[str, str], _Row, _Row, _Row]] = {
    "puddle": (
        ("The puddle", "Round, quiet and as wide as two or three thicknesses is right."),
        ("Too cold", "small, dull, pointed behind; a narrow run", lambda y: melt(f"M38 {y}A8 8 0 0 1 50 {y - 7}L74 {y}L50 {y + 7}A8 8 0 0 1 38 {y}z") + _ripples(y, 4, 76)),
        ("Right", "round, bright, quiet; even ripples behind it", lambda y: _round(48, y, 15, 15) + _ripples(y, 14)),
        ("Too hot", "wide, sinking, it sways: lift now", lambda y: _round(46, y, 30, 27) + curve(f"M28 {y - 8}q18 22 36 0M30 {y + 4}q16 12 32 0", 1.2) + _ripples(y, 24, 78)),
    ),
    "corner": (
        ("The puddle on a corner", "Both edges must run into one puddle that reaches the inside."),
        ("Too cold", "each edge melts by itself; a line stays", lambda y: _round(44, y - 8, 12, 6) + _round(44, y + 8, 12, 6) + _seam(y)),
        ("Right", "one puddle over both edges", lambda y: _seam(y, 8, 34) + _round(48, y, 15, 15) + _ripples(y, 14)),
        ("Too hot", "a hole opens: flame away, then go on faster", lambda y: _seam(y, 8, 24) + _round(46, y, 28, 20) + _hole(46, y, 14, 10) + _ripples(y, 16, 76)),
    ),
    "bead": (
        ("The bead", "An even bead, a little proud, with its edges run into the sheet is right."),
        ("Too cold", "narrow, high: rod laid on unmelted sheet", lambda y: _round(48, y, 9, 7) + _ripples(y, 6, 58, step=14) + _dots(y + 24)),
        ("Right", "two to three times as wide as the sheet is thick", lambda y: _round(48, y, 15, 15) + _ripples(y, 14)),
        ("Too hot", "wide, flat or sunk; long pointed ripples", lambda y: _round(46, y, 28, 24) + curve("".join(f"M{80 + 20 * n} {y - 22}q34 22 0 44" for n in range(3)), 1.5)),
    ),
    "keyhole": (
        ("The keyhole of a butt", "A small notch that opens ahead of the puddle and closes in it shows that the root melts."),
        ("Too cold", "no notch: it lies on top, the back is bare", lambda y: _seam(y, 8, 34) + _round(48, y, 14, 11) + _ripples(y, 10)),
        ("Right", "a notch opens ahead and closes again", lambda y: _seam(y, 8, 22) + _round(54, y, 17, 15) + _hole(32, y, 7, 5) + _ripples(y, 14, 70)),
        ("Too hot", "the notch grows to a hole: lift, rod in", lambda y: _seam(y, 8, 16) + _round(54, y, 26, 22) + _hole(36, y, 19, 13) + _ripples(y, 16, 82)),
    ),
    "fillet": (
        ("The puddle of a fillet", "One puddle that holds both pieces, the edge not eaten away, is right."),
        ("Flame too low", "only the lower sheet melts", lambda y: curve(f"M8 {y - 12}H142", 2) + _round(48, y + 12, 18, 11) + _ripples(y + 12, 9, 68)),
        ("Right", "one puddle over edge and sheet", lambda y: curve(f"M8 {y - 12}H32M64 {y - 12}H142", 2) + _round(48, y - 4, 17, 16) + _ripples(y - 4, 14, 66)),
        ("Flame too high", "the edge is eaten away, the corner stays empty", lambda y: _edge_eaten(y - 4) + _round(54, y - 14, 17, 9)),
    ),
    "tinning": (
        ("Tinning", "A thin film that runs ahead of the bead is right; balls are too cold, white smoke too hot."),
        ("Too cold", "filler balls up: warm the sheet, not the rod", _dots),
        ("Right", "film ahead, bead behind; sheet not melted", lambda y: melt(f"M14 {y}Q20 {y - 16} 48 {y - 15}V{y + 15}Q20 {y + 16} 14 {y}z") + _ripples(y, 14, 50)),
        ("Too hot", "white smoke, pits: flame away, fan on", lambda y: _round(50, y, 26, 20) + "".join(_hole(40 + 11 * n, y - 4 + 5 * (n % 2), 3, 3) for n in range(3)) + curve(f"M34 {y - 22}q-6 -8 0 -14M50 {y - 24}q-6 -8 0 -14M66 {y - 22}q-6 -8 0 -14", 1.5) + _ripples(y, 16, 78)),
    ),
}  # fmt: skip
KINDS = tuple(_ROWS)


def drawing(kind: str) -> Picture:
    """Three looks of a puddle side by side with what each means; the run goes to the left.

    Args:
        kind: One of `KINDS`.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: No such puddle is drawn.

    Examples:
        >>> drawing("puddle").sentence
        'Round, quiet and as wide as two or three thicknesses is right.'
    """
    if kind not in _ROWS:
        raise ValueError(f"there is no drawing of {kind!r}; there are {KINDS}")
    (title, sentence), *rows = _ROWS[kind]
    body = ""
    for number, (name, tells, made) in enumerate(rows):
        top = 8 + HIGH * number
        body += (
            made(top + SEAM)
            + words(TELLS, top + 16, name, size=18)
            + told(wrap(tells, LETTERS), TELLS, top + 38)
        )
        body += line(8, top + HIGH - 8, WIDTH - 8, top + HIGH - 8, width=1) if number < 2 else ""
    return picture(8 + 3 * HIGH, title, sentence, body)
