"""In which order the tacks of a seam are set, looked at from above."""

from calc.declare import Picture
from calc.show.drawings import INK, at, mark, words
from calc.show.drawings.torch_shapes import curve, picture

LEFT, RIGHT, SEAM = 30.0, 310.0, 96.0
FEWEST, MOST = 3, 9
NAMES = {
    "butt": ("one sheet", "the other"),
    "corner": ("one side of the roof", "the other side"),
    "lap": ("upper sheet", "lower sheet"),
    "tee": ("behind the standing sheet", "flat sheet"),
}
"""What lies above and below the seam, by joint."""


def order(count: int) -> list[int]:
    """Number of each tack from left to right: both ends, the middle, then between.

    Raises:
        ValueError: There are too few or too many to draw.

    Examples:
        >>> order(5)
        [1, 4, 3, 5, 2]
    """
    if not FEWEST <= count <= MOST or count % 2 == 0:
        raise ValueError(f"{count} tacks are not drawn; an odd number from {FEWEST} to {MOST} is")
    middle = count // 2
    places = [0, count - 1, middle]
    between = [place for place in range(count) if place not in places]
    places += sorted(between, key=lambda place: (abs(abs(place - middle) - middle / 2), place))
    return [places.index(place) + 1 for place in range(count)]


def drawing(count: str | float = "5", kind: str = "butt") -> Picture:
    """A seam from above with its tacks numbered in the order they are set.

    Args:
        count: How many tacks, an odd number.
        kind: The joint, one of `NAMES`.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: It cannot be drawn so.
    """
    if kind not in NAMES:
        raise ValueError(f"tacks of {kind!r} are not drawn; there are {tuple(NAMES)}")
    numbers = order(int(count))
    step = (RIGHT - LEFT - 28) / (len(numbers) - 1)
    upper = f'<rect x="{at(LEFT)}" y="36" width="{at(RIGHT - LEFT)}" height="60" {INK}/>'
    lower = f'<rect x="{at(LEFT)}" y="{at(SEAM)}" width="{at(RIGHT - LEFT)}" height="60" {INK}/>'
    said = words(170, 60, NAMES[kind][0], anchor="middle") + words(
        170, 142, NAMES[kind][1], anchor="middle"
    )
    tacks = "".join(mark(LEFT + 14 + step * place, SEAM, number) for place, number in enumerate(numbers))
    ends = curve(f"M{at(LEFT)} 178V188H{at(RIGHT)}V178", 1.5) + words(
        170, 208, "the seam, end to end", anchor="middle"
    )
    sentence = "Tack one end, the other end, the middle, then between; the sheets cannot close or open as the seam runs."
    return picture(218, "Order of the tacks", sentence, upper + lower + said + tacks + ends)
