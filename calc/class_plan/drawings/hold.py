"""How torch and rod are held along a seam, looked at from the side."""

from math import cos, pi, radians, sin

from calc.class_plan.exercises import exercises
from calc.class_plan.holds import held
from calc.declare import Picture
from calc.show.drawings import arrow, at, words
from calc.show.drawings.torch_shapes import WIDTH, arc, bar, curve, melt, picture, rod, told, torch

X, Y = 168.0, 206.0
"""The puddle, as drawn."""


def _bead(rise: float) -> str:
    """Ripples from the puddle to the right."""
    humps = "".join(f"q8 {at(-2 * rise)} 16 0" for _ in range(8))
    return curve(f"M{at(X + 18)} {at(Y)}{humps}")


def drawing(exercise: str) -> Picture:
    """Torch, cone, puddle and rod of one exercise from the side, with its angles.

    Args:
        exercise: Id of an exercise that the table of holds names.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: It is not held so.

    Examples:
        >>> drawing("puddle").sentence
        'The flame points where you go: the torch at 45° to 60°, the tip of the cone 1/16 to 1/8 in (1.6 to 3.2 mm) off.'
    """
    lean, cone = held(exercise, "torch"), held(exercise, "tip of the cone")
    has_rod = exercises("us")[exercise].has_rod
    middle = radians((lean.low + lean.high) / 2)
    far = cone.high > 0.2
    body = (
        bar(8, Y, WIDTH - 16, 13)
        + _bead(3.0 if has_rod else 1.5)
        + melt(
            f"M{X - 18} {Y}Q{X} {Y - 6} {X + 18} {Y}Q{X + 14} {Y + 11} {X} {Y + 12}Q{X - 14} {Y + 11} {X - 18} {Y}z"
        )
        + torch(X, Y - 2, middle, off=24 if far else 9)
        + arc(X, Y, 68, 0, middle)
        + words(X + 72 * cos(0.35), Y - 72 * sin(0.35) + 4, lean.text)
        + told(["tip of the cone", *_lines(cone.text), "off"], 8, 22)
        + arrow(112, 66, X - 3, Y - 16)
        + arrow(X - 20, Y + 38, X - 112, Y + 38)
        + words(X - 64, Y + 58, "you go this way", anchor="middle")
        + words(WIDTH - 8, Y + 48, "bead behind", anchor="end")
        + arrow(WIDTH - 40, Y + 34, WIDTH - 52, Y + 2)
    )
    said = f"The flame points where you go: the torch at {lean.text}, "
    if has_rod:
        feed = held(exercise, "rod")
        angle = radians((feed.low + feed.high) / 2)
        body += rod(X - 20, Y - 4, pi - angle, 158) + arc(X, Y, 66, pi - angle, pi)
        body += words(X - 68, Y - 22, feed.text, anchor="end") + words(8, Y - 74 - 4, "rod")
        said += f"the rod ahead of it at {feed.text}, "
    title = "Torch and rod from the side" if has_rod else "The torch from the side"
    sentence = f"{said}the tip of the cone {cone.text} off."
    return picture(Y + 70, title, sentence, body)


def _lines(text: str) -> list[str]:
    inches, _, metric = text.partition(" (")
    return [inches, f"({metric}"]
