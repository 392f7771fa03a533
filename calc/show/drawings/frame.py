"""A tube joint in front of a wooden frame, cut across the tube."""

from math import pi

from calc.declare import Picture
from calc.show.drawings import INK, arrow, at, words
from calc.show.drawings.torch_shapes import bar, curve, picture, rod, told, torch

X, Y = 170.0, 136.0
"""Middle of the tube, as drawn."""


def _ring(radius: float) -> str:
    return f'<circle cx="{at(X)}" cy="{at(Y)}" r="{at(radius)}" {INK}/>'


def drawing() -> Picture:
    """Where flame, solder and shield stand at a joint in front of wood.

    Returns:
        The picture, its title and its sentence.
    """
    body = (
        f'<rect x="16" y="14" width="308" height="34" {INK}/>'
        + curve("M30 22q40 6 70 0M236 40q40 -6 76 0M30 40q30 -4 60 0", 1)
        + words(170, 36, "wooden frame", anchor="middle")
        + bar(40, 62, 260, 11)
        + words(170, 94, "shield that does not burn", anchor="middle")
        + _ring(32)
        + _ring(25)
        + _ring(18)
        + torch(X - 33, Y, pi, off=8, tube=34)
        + rod(X + 30, Y - 4, 0.22, 118)
        + told(["flame on the", "fitting, along", "the frame"], 8, 196)
        + arrow(80, 178, 104, 150)
        + told(["solder on", "the far side"], 332, 160, anchor="end")
        + arrow(244, 152, X + 36, Y + 2)
        + told(["tube in its coupling"], X, 250, anchor="middle")
        + arrow(X, 234, X, Y + 34)
    )
    sentence = "Cut across the tube: a shield stands between joint and wood, the flame points along the frame and never at it, the solder goes in on the far side."
    return picture(262, "Joint in front of wood", sentence, body)
