"""How the pieces are stood and where the flame points, cut across the seam."""

from math import pi, radians

from calc.class_plan.holds import held
from calc.declare import Picture
from calc.show.drawings import arrow, words
from calc.show.drawings.torch_shapes import arc, bar, box, melt, picture, sheet, told, torch

UP = pi / 2
THICK = 13.0


def _sheet() -> tuple[str, str, float]:
    body = (
        bar(40, 170, 260, THICK)
        + box(50, 183, 80, 30, "brick")
        + box(210, 183, 80, 30, "brick")
        + melt("M152 170Q170 166 188 170Q184 181 170 182Q156 181 152 170z")
        + torch(170, 168, UP, tube=40)
        + told(["nothing under", "the puddle"], 8, 250)
        + arrow(108, 238, 164, 190)
        + told(["torch upright,", "seen along the run"], 332, 36, anchor="end")
    )
    return (
        body,
        "The sheet lies on two bricks with air under the puddle; seen along the run the torch stands upright.",
        276,
    )


def _corner() -> tuple[str, str, float]:
    body = (
        sheet([(170, 150), (179.2, 159.2), (109.2, 229.2), (100, 220)])
        + sheet([(170, 150), (160.8, 159.2), (230.8, 229.2), (240, 220)])
        + melt("M161 157Q170 138 179 157L170 171z")
        + torch(170, 146, UP, tube=30)
        + box(40, 196, 56, 34, "brick")
        + box(244, 196, 56, 34, "brick")
        + told(["inner edges", "touch"], 8, 36)
        + arrow(70, 64, 164, 164)
        + told(["look inside:", "melted through?"], 332, 262, anchor="end")
        + arrow(200, 252, 172, 180)
        + told(["on the ridge,", "both alike"], 332, 36, anchor="end")
    )
    return (
        body,
        "The two sheets stand like a roof, their inner edges touching; the flame points straight down on the ridge.",
        292,
    )


def _butt() -> tuple[str, str, float]:
    body = (
        bar(30, 170, 139, THICK)
        + bar(171, 170, 139, THICK)
        + box(44, 183, 76, 30, "brick")
        + box(220, 183, 76, 30, "brick")
        + melt("M156 170Q170 163 184 170Q180 182 174 186Q170 189 166 186Q160 182 156 170z")
        + torch(170, 167, UP, tube=40)
        + told(["edges level,", "meeting all along"], 8, 40)
        + arrow(60, 66, 160, 164)
        + told(["melted through:", "a bead below too"], 8, 250)
        + arrow(124, 238, 165, 194)
        + told(["half on", "each edge"], 208, 40)
    )
    return (
        body,
        "The edges meet level between two bricks; the flame points at both alike and melts through to the back.",
        276,
    )


def _lap(braze: bool) -> tuple[str, str, float]:
    lean = held("lap", "torch across")
    angle = pi - radians((lean.low + lean.high) / 2)
    weld = (
        "M148 190Q148 180 160 177L164 190z"
        if braze
        else "M144 190Q146 178 160 176L168 184L164 195Q152 198 144 190z"
    )
    feed = ["rod at this edge"] if braze else ["rod goes in here,", "at the edge"]
    body = (
        bar(20, 190, 214, THICK)
        + bar(160, 177, 160, THICK)
        + box(246, 190, 66, THICK)
        + words(278, 224, "shim", anchor="middle")
        + melt(weld)
        + torch(150, 188, angle, off=22 if braze else 9, tube=46)
        + arc(150, 190, 56, angle, pi)
        + words(104, 156, lean.text, anchor="end")
        + told(["upper sheet"], 332, 140, anchor="end")
        + arrow(280, 148, 272, 174)
        + told(feed, 332, 40, anchor="end")
        + arrow(232, 50 if braze else 70, 164, 170)
        + told(["flame more on this one"], 8, 240)
        + arrow(90, 226, 118, 208)
    )
    metal = "Both sheets are heated alike and neither melts" if braze else "The edge melts first by itself"
    return (
        body,
        f"The flame points {lean.text} up from the lower sheet, mostly at that sheet. {metal}.",
        254,
    )


def _tee() -> tuple[str, str, float]:
    lean = held("tee", "torch across")
    angle = radians((lean.low + lean.high) / 2)
    body = (
        bar(30, 220, 280, THICK)
        + sheet([(120, 110), (133, 110), (133, 220), (120, 220)])
        + box(62, 162, 58, 58, "brick")
        + melt("M133 200Q146 206 153 220L140 226Q130 222 130 212z")
        + torch(137, 216, angle, tube=40)
        + arc(133, 220, 82, 0, angle)
        + words(222, 196, lean.text)
        + told(["tight here,", "square to it"], 8, 40)
        + arrow(60, 66, 130, 214)
        + told(["as much on the", "flat as on the", "standing sheet"], 194, 268)
        + arrow(190, 256, 152, 236)
    )
    return (
        body,
        f"The standing sheet is held square by a brick; the flame points into the corner, {lean.text} up from the flat one.",
        318,
    )


_KINDS = {
    "sheet": ("Sheet on its bricks", _sheet),
    "corner": ("Corner stood as a roof", _corner),
    "butt": ("Butt on its bricks", _butt),
    "lap": ("Lap with its shim", lambda: _lap(braze=False)),
    "braze-lap": ("Lap for a braze weld", lambda: _lap(braze=True)),
    "tee": ("Tee held square", _tee),
}
KINDS = tuple(_KINDS)


def drawing(kind: str) -> Picture:
    """The pieces of a practice joint on the bench, cut across, and the flame on them.

    Args:
        kind: One of `KINDS`.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: No such joint is drawn.

    Examples:
        >>> drawing("butt").title
        'Butt on its bricks'
    """
    if kind not in _KINDS:
        raise ValueError(f"there is no drawing of {kind!r}; there are {KINDS}")
    title, made = _KINDS[kind]
    body, sentence, height = made()
    return picture(height, title, sentence, body)
