"""An integral as a sum over panels, eight points of Gauss and Legendre in each."""

from collections.abc import Callable

# Nodes and weights of Gauss and Legendre for eight points [abramowitz-1964] table 25.4.
_NODES = (
    (0.1834346424956498, 0.3626837833783620),
    (0.5255324099163290, 0.3137066458778873),
    (0.7966664774136267, 0.2223810344533745),
    (0.9602898564975363, 0.1012285362903763),
)
_PANEL = 0.8


def gauss_sum(function: Callable[[float], float], low: float, high: float) -> float:
    """Integral of a smooth function, panels 0.8 wide or less.

    Args:
        function: Of one number.
        low: Where it begins.
        high: Where it ends.

    Source:
        [abramowitz-1964] table 25.4.

    Examples:
        >>> round(gauss_sum(lambda x: 3 * x * x, 0.0, 2.0), 12)
        8.0
    """
    panels = int((high - low) / _PANEL) + 1
    half = 0.5 * (high - low) / panels
    total = 0.0
    for panel in range(panels):
        middle = low + half * (2 * panel + 1)
        for node, weight in _NODES:
            total += weight * (function(middle - half * node) + function(middle + half * node))
    return total * half


SOLVERS = (gauss_sum,)
