"""A strip heated along a line and bent, in three steps."""

from math import pi

from calc.declare import Picture
from calc.show.drawings import INK, arrow, line, words
from calc.show.drawings.torch_shapes import bar, box, curve, melt, picture, told, torch

STEPS = {
    "mark": "Mark the band",
    "heat": "Heat it across",
    "bend": "Pull it over",
}
"""The steps that are drawn, and their names."""


def drawing(step: str) -> Picture:
    """One step of bending a strip.

    Args:
        step: One of `STEPS`.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: There is no such step.

    Examples:
        >>> drawing("bend").title
        'Pull it over'
    """
    if step == "mark":
        body = (
            f'<rect x="20" y="60" width="300" height="96" {INK}/>'
            + line(140, 60, 140, 156, dash="6 4")
            + line(190, 60, 190, 156, dash="6 4")
            + told(["chalk: the band"], 170, 30, anchor="middle")
            + arrow(165, 36, 165, 72)
            + words(70, 112, "vise", anchor="middle")
            + words(256, 112, "end you pull", anchor="middle")
            + told(["crayon stroke beside it"], 170, 192, anchor="middle")
            + curve("M198 144q6 -4 12 0t12 0t12 0", 4)
            + arrow(216, 176, 216, 152)
        )
        sentence = "From above: chalk on both sides of the band, a stroke of temperature crayon beside it, the short end for the vise."
        return picture(204, STEPS[step], sentence, body)
    vise = box(20, 132, 88, 24, "vise") + box(20, 174, 88, 24)
    if step == "heat":
        body = (
            bar(20, 156, 300, 18)
            + vise
            + melt("M140 156H190V174H140z")
            + torch(165, 154, pi / 2, off=22, tube=16)
            + arrow(196, 66, 236, 66)
            + arrow(134, 66, 94, 66)
            + told(["to and fro across the band"], 170, 30, anchor="middle")
            + told(["both faces, always moving"], 170, 226, anchor="middle")
        )
        sentence = "The flame goes to and fro over the whole band, off the metal and always moving; the crayon says when to stop."
        return picture(240, STEPS[step], sentence, body)
    if step == "bend":
        body = (
            bar(20, 156, 120, 18)
            + vise
            + melt("M140 156Q172 156 176 124L194 126Q190 174 140 174z")
            + f'<path d="M176 124L190 24L208 27L194 126z" {INK}/>'
            + curve("M300 150Q292 84 244 50", 1.5)
            + arrow(256, 58, 242, 49)
            + told(["flame away first,", "then a steady pull"], 332, 176, anchor="end")
            + told(["stop when", "the color is gone"], 8, 40)
        )
        sentence = "Flame away, then one steady pull with tongs or a bar; stop when the color is gone and heat again rather than force it."
        return picture(216, STEPS[step], sentence, body)
    raise ValueError(f"there is no step {step!r}; there are {tuple(STEPS)}")
