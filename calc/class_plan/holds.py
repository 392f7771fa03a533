"""How a torch and a rod are held in an exercise, in words."""

from dataclasses import dataclass
from fractions import Fraction

from calc.data.tables import table
from calc.values.numbers import plain_number
from calc.values.units import from_si, to_si

HOLDS = "torch-holds-benchbook-2026"


@dataclass(frozen=True, slots=True)
class Hold:
    """One figure of how it is held.

    Attributes:
        what: What is measured.
        low: Least, in its own unit.
        high: Most, in its own unit.
        unit: `deg` or `in`.
    """

    what: str
    low: float
    high: float
    unit: str

    @property
    def text(self) -> str:
        """Both ends with their unit, inches with millimetres behind.

        Examples:
            >>> Hold("cone", 0.0625, 0.125, "in").text
            '1/16 to 1/8 in (1.6 to 3.2 mm)'
            >>> Hold("torch", 45, 60, "deg").text
            '45° to 60°'
        """
        ends = list(dict.fromkeys((self.low, self.high)))
        if self.unit == "deg":
            return " to ".join(f"{plain_number(end)}°" for end in ends)
        inches = " to ".join(str(Fraction(end)) for end in ends)
        metric = " to ".join(plain_number(from_si(to_si(end, "in"), "mm"), 2) for end in ends)
        return f"{inches} in ({metric} mm)"


def holds(exercise: str) -> list[Hold]:
    """How one exercise is held, in the order of the table.

    Examples:
        >>> [hold.what for hold in holds("puddle")]
        ['torch to the sheet', 'tip of the cone off the puddle']
    """
    return [Hold(row.what, row.low, row.high, row.unit) for row in table(HOLDS) if row.exercise == exercise]


def held(exercise: str, begins: str) -> Hold:
    """The first figure of an exercise whose name begins with a word.

    Raises:
        ValueError: The table has none.
    """
    for hold in holds(exercise):
        if hold.what.startswith(begins):
            return hold
    raise ValueError(f"{HOLDS} has no {begins!r} for {exercise!r}")
