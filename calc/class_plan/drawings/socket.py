"""A drain socket brazed into a sheet, cut through the middle, in three steps."""

from math import radians

from calc.class_plan.holds import held
from calc.declare import Picture
from calc.show.drawings import arrow, words
from calc.show.drawings.torch_shapes import bar, box, melt, picture, rod, sheet, told, torch

THICK = 9.0
STEPS = {
    "fit": "Fit it",
    "warm": "Warm both",
    "feed": "Touch the filler to the joint",
}
"""The steps that are drawn, and their names."""


def _parts(y: float) -> str:
    """Sheet with the socket through it: a tube with a flange on the sheet."""
    walls = [(x, [(x, y - 24), (x + 8, y - 24), (x + 8, y + 54), (x, y + 54)]) for x in (136.0, 196.0)]
    return (
        bar(30, y, 104, THICK)
        + bar(206, y, 104, THICK)
        + "".join(sheet(corners, 7) for _, corners in walls)
        + box(40, y + THICK, 64, 34, "brick")
        + box(236, y + THICK, 64, 34, "brick")
    )


def drawing(step: str) -> Picture:
    """One step of brazing the socket.

    Args:
        step: One of `STEPS`.

    Returns:
        The picture, its title and its sentence.

    Raises:
        ValueError: There is no such step.

    Examples:
        >>> drawing("fit").title
        'Fit it'
    """
    y = 150.0
    if step == "fit":
        body = (
            told(["bright and fluxed,", "here and round the hole"], 8, 34)
            + arrow(70, 62, 134, 138)
            + told(["gap the same", "all round"], 332, 84, anchor="end")
            + arrow(250, 108, 207, 146)
            + words(170, 236, "open below", anchor="middle")
        )
        sentence = "The socket stands in the hole with the same thin gap all round, bright and fluxed, open at both ends."
    elif step == "warm":
        cone = held("braze", "tip of the cone").text
        body = (
            torch(198, y - 12, radians(40), off=26, tube=20)
            + torch(140, y - 12, radians(140), off=26, tube=20)
            + told(["go round: more on the", "socket, it is thicker"], 8, 24)
            + told(["tip of the cone off:", cone], 332, y + 72, anchor="end")
        )
        sentence = f"One flame goes round the socket and touches the sheet, the tip of the cone {cone} off, until the flux is clear as water."
    elif step == "feed":
        body = (
            rod(134, y - 3, radians(145), 120)
            + melt(f"M134 {y - 2}H136V{y + 11}H134z")
            + melt(f"M128 {y}Q134 {y - 2} 136 {y - 10}V{y}z")
            + melt(f"M212 {y}Q206 {y - 2} 204 {y - 10}V{y}z")
            + melt(f"M204 {y - 2}H206V{y + 11}H204z")
            + torch(202, y - 12, radians(40), off=26, tube=20)
            + told(["filler here,", "away from the flame"], 8, 24)
            + told(["a thin ring", "shows below"], 332, y + 70, anchor="end")
            + arrow(236, y + 58, 209, y + THICK + 4)
        )
        sentence = "The hot joint melts the filler, not the flame; it is drawn round and through, and a thin ring shows on both faces."
    else:
        raise ValueError(f"there is no step {step!r}; there are {tuple(STEPS)}")
    return picture(250, STEPS[step], sentence, _parts(y) + body)
