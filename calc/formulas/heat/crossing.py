"""Where a curve that only rises or only falls meets a value."""

from collections.abc import Callable


def crossing(
    curve: Callable[[float], float], target: float, low: float, high: float, near: float = 1e-11
) -> float:
    """Place where a monotone curve meets a value.

    A solver: false position with the Illinois rule, and halving where that is slow.

    Args:
        curve: Rises or falls throughout.
        target: Value to meet.
        low: Place on one side.
        high: Place on the other.
        near: Width, as a share of the place, that ends the search.

    Returns:
        The place.

    Raises:
        ValueError: The value is not met between the two places.

    Examples:
        >>> round(crossing(lambda x: x * x, 2.0, 0.0, 2.0), 9)
        1.414213562
    """
    at_low, at_high = curve(low) - target, curve(high) - target
    if at_low == 0.0:
        return low
    if at_high == 0.0:
        return high
    if (at_low > 0.0) == (at_high > 0.0):
        raise ValueError("No answer lies between the limits of this sum.")
    side = 0
    for step in range(200):
        if abs(high - low) <= near * max(abs(low), abs(high)):
            break
        place = high - at_high * (high - low) / (at_high - at_low)
        if step % 3 == 2 or not min(low, high) < place < max(low, high):
            place = 0.5 * (low + high)
        value = curve(place) - target
        if value == 0.0:
            return place
        if (value > 0.0) == (at_high > 0.0):
            high, at_high = place, value
            at_low *= 0.5 if side == 1 else 1.0
            side = 1
        else:
            low, at_low = place, value
            at_high *= 0.5 if side == -1 else 1.0
            side = -1
    return 0.5 * (low + high)


SOLVERS = (crossing,)
