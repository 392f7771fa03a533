"""A cut from its start to its end, and the lines it follows."""

from math import pi, radians

from calc.class_plan.holds import held
from calc.declare import Picture
from calc.show.drawings import INK, arrow, at, line, words
from calc.show.drawings.torch_shapes import arc, bar, curve, picture, told, torch

STEPS = {
    "lines": "Lines to cut",
    "start": "Start at the edge",
    "go": "Go on",
}
"""The steps that are drawn, and their names."""
Y, THICK = 160.0, 26.0


def _sparks(x: float, lag: float) -> str:
    return "".join(
        curve(f"M{at(x + dx)} {at(Y + THICK + 4)}q{at(lag * 0.3)} 20 {at(lag + dx)} 46", 1.5, "6 4")
        for dx in (-5, 0, 5)
    )


def drawing(step: str) -> Picture:
    """One step of a straight cut.

    Args:
        step: One of `STEPS`.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: There is no such step.

    Examples:
        >>> drawing("start").title
        'Start at the edge'
    """
    if step not in STEPS:
        raise ValueError(f"there is no step {step!r}; there are {tuple(STEPS)}")
    title = STEPS[step]
    if step == "lines":
        apart = held("cut", "lines").text
        cuts = "".join(
            line(50 + 36 * n, 20, 50 + 36 * n, 236, width=2, dash="7 4")
            + words(50 + 36 * n, 256, str(n), anchor="middle")
            for n in range(1, 6)
        )
        body = (
            f'<rect x="50" y="20" width="216" height="216" {INK}/>'
            + cuts
            + arrow(98, 128, 86, 128)
            + arrow(110, 128, 122, 128)
            + told([f"lines {apart} apart"], 8, 282)
            + arrow(100, 268, 104, 134)
            + told(["held", "at this", "side"], 332, 110, anchor="end")
        )
        sentence = f"Five chalk lines {apart} apart, punched with a center punch; each strip falls by itself, the rest stays held."
        return picture(296, title, sentence, body)
    if step == "start":
        cones = held("cut", "cones").text
        body = (
            bar(8, Y, 192, THICK)
            + torch(200, Y, pi / 2, off=8, tube=30)
            + told(["tip upright,", "half over the edge"], 8, 30)
            + arrow(120, 56, 188, Y - 40)
            + told(["cones", *cones.replace(" (", "|(").split("|"), "off"], 332, Y + 10, anchor="end")
            + arrow(276, Y + 2, 208, Y - 6)
            + told(["bright red first,", "then the lever"], 8, Y + 62)
            + arrow(140, Y + 50, 194, Y + THICK - 2)
        )
        sentence = f"The tip stands upright, half over the edge, its cones {cones} off, until the corner is bright red; then the lever, smoothly."
        return picture(250, title, sentence, body)
    lean = held("cut", "torch leans")
    angle = pi / 2 - radians((lean.low + lean.high) / 2)
    lines = "".join(curve(f"M{182 + 12 * n} {Y}q1 {at(THICK / 2)} 5 {at(THICK)}", 1.2) for n in range(12))
    body = (
        bar(8, Y, 160, THICK)
        + f'<rect x="168" y="{at(Y)}" width="164" height="{at(THICK)}" {INK}/>{lines}'
        + torch(166, Y, angle, off=8, tube=40)
        + arc(166, Y, 92, angle, pi / 2)
        + line(166, Y - 12, 166, Y - 124, width=1, dash="4 4")
        + words(158, 56, lean.text, anchor="end")
        + _sparks(166, 6)
        + arrow(120, Y + 72, 40, Y + 72)
        + words(8, Y + 92, "you go this way")
        + told(["sparks fall", "straight through"], 332, Y + 60, anchor="end")
        + arrow(236, Y + 54, 178, Y + 46)
        + told(["cut face,", "fine lines"], 332, Y - 54, anchor="end")
        + arrow(270, Y - 28, 262, Y + 6)
    )
    sentence = f"The tip leans {lean.text} so that the jet points ahead; sparks falling straight through say that the speed is right."
    return picture(Y + 102, title, sentence, body)
