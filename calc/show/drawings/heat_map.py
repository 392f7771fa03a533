"""Lines of equal temperature round a moving torch: from above, and cut across."""

from collections.abc import Sequence
from dataclasses import dataclass

from calc.declare import Picture
from calc.show.drawings import INK, arrow, at, finite, line, svg, words
from calc.values.quantities import Length

WIDTH, MIDDLE, HALF, FRONT = 340.0, 112.0, 78.0, 70.0
DASHES = ("", "9 4", "5 4", "2 4")
PLATE = 236.0
DEEPEST = 60.0
THINNEST = 16.0


@dataclass(frozen=True, slots=True)
class Isotherm:
    """One line of equal temperature.

    Args:
        label: Its temperature as a reader sees it.
        side: One side of it: distance ahead and distance aside, m, front to back.
        through: Whether it reaches through the plate, as wide at the back.
    """

    label: str
    side: tuple[tuple[Length, Length], ...]
    through: bool

    def half_width(self) -> Length:
        """Largest distance aside, m."""
        return max(aside for _, aside in self.side)


def _visible(points: Sequence[tuple[float, float]]) -> list[list[tuple[float, float]]]:
    """The runs of a line that lie inside the window from above."""
    runs: list[list[tuple[float, float]]] = [[]]
    for x, y in points:
        if 4 <= x <= WIDTH - 4 and abs(y - MIDDLE) <= HALF:
            runs[-1].append((x, y))
        elif runs[-1]:
            runs.append([])
    return [run for run in runs if len(run) > 1]


def _path(points: Sequence[tuple[float, float]], dash: str, *, filled: bool = False) -> str:
    drawn = "M" + "L".join(f"{at(x)} {at(y)}" for x, y in points)
    look = (
        'fill="currentColor" fill-opacity=".35" stroke="currentColor" stroke-width="2"' if filled else INK
    )
    return f'<path d="{drawn}" {look}{f""" stroke-dasharray="{dash}" """ if dash else ""}/>'


def _from_above(isotherms: Sequence[Isotherm], torch: float, scale: float) -> str:
    drawn = line(4, MIDDLE, WIDTH - 4, MIDDLE, width=1, dash="12 3 2 3")
    for index, (isotherm, dash) in enumerate(zip(isotherms, DASHES, strict=False)):
        upper = [(torch + ahead * scale, MIDDLE - aside * scale) for ahead, aside in isotherm.side]
        lower = [(x, 2 * MIDDLE - y) for x, y in upper]
        runs = _visible(upper + lower[::-1])
        for run in runs:
            drawn += _path(run, dash, filled=index == 0 and len(runs) == 1)
    x, y = torch, MIDDLE
    cross = line(x - 6, y, x + 6, y) + line(x, y - 6, x, y + 6)
    return drawn + cross + arrow(torch + 14, MIDDLE + HALF + 4, torch + 62, MIDDLE + HALF + 4)


def _section(isotherms: Sequence[Isotherm], thickness: Length, scale: float) -> tuple[str, bool]:
    true = thickness * scale
    deep = min(max(true, THINNEST), DEEPEST)
    middle = WIDTH / 2
    drawn = f'<rect x="4" y="{at(PLATE)}" width="{at(WIDTH - 8)}" height="{at(deep)}" {INK}/>'
    for isotherm, dash in zip(isotherms, DASHES, strict=False):
        half = isotherm.half_width() * scale
        if half > middle - 6:
            continue
        if isotherm.through or half >= deep:
            for x in (middle - half, middle + half):
                drawn += line(x, PLATE, x, PLATE + deep, dash=dash)
        else:
            arc = f"M{at(middle - half)} {at(PLATE)}A{at(half)} {at(half)} 0 0 0 {at(middle + half)} {at(PLATE)}"
            dashed = f' stroke-dasharray="{dash}"' if dash else ""
            drawn += f'<path d="{arc}" {INK}{dashed}/>'
    drawn += arrow(middle, PLATE - 24, middle, PLATE - 4)
    return drawn, abs(deep - true) > 0.5


def _key(isotherms: Sequence[Isotherm], top: float) -> str:
    drawn = ""
    for index, (isotherm, dash) in enumerate(zip(isotherms, DASHES, strict=False)):
        y = top + 22 * index
        drawn += line(8, y - 5, 48, y - 5, dash=dash) + words(56, y, isotherm.label)
    return drawn


def drawing(isotherms: Sequence[Isotherm], thickness: Length, sentence: str) -> Picture:
    """The map of heat round a torch that travels to the right.

    Args:
        isotherms: One to four lines, hottest first.
        thickness: Of the plate, m.
        sentence: What to take from it.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: There is no line, or a length cannot be drawn.
    """
    if not isotherms or finite(thickness, "thickness") <= 0:
        raise ValueError("there is nothing to draw")
    shown = isotherms[min(1, len(isotherms) - 1)]
    half = finite(shown.half_width(), "width")
    front = max(shown.side[0][0], 1e-5)
    # The second line decides the scale; longer tails run out of the drawing at the left.
    scale = min(0.85 * HALF / half, FRONT / front)
    torch = WIDTH - FRONT - 14
    cut, stretched = _section(isotherms, thickness, scale)
    body = words(4, 20, "From above") + _from_above(isotherms, torch, scale)
    body += words(torch + 14, MIDDLE + HALF + 24, "travel")
    body += words(4, PLATE - 12, "Cut across") + cut
    below = PLATE + min(max(thickness * scale, THINNEST), DEEPEST) + 26
    if stretched:
        body += words(4, below, "the plate is not drawn to scale in thickness", size=14)
        below += 26
    body += _key(isotherms, below)
    title = "Heat round the torch"
    height = below + 22 * len(isotherms)
    return Picture(svg(WIDTH, height, title, sentence, body), title, sentence)
