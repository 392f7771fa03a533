"""The unit that charts and tables of a rule set are drawn in."""

from dataclasses import dataclass

from calc.values.numbers import plain_number
from calc.values.units import from_si, written


@dataclass(frozen=True, slots=True)
class Scale:
    """A unit with the figures that count in it.

    Attributes:
        unit: Unit as `units.txt` names it.
        digits: Figures that count in a table.
        free_gas: Whether it counts gas.
    """

    unit: str
    digits: int = 3
    free_gas: bool = False

    @property
    def name(self) -> str:
        """The unit as it is printed."""
        return written(self.unit)

    def number(self, si: float) -> float:
        """A quantity in SI as a number of this unit."""
        return from_si(si, self.unit, free_gas=self.free_gas)

    def text(self, si: float) -> str:
        """A quantity in SI as the number that a table shows."""
        return plain_number(self.number(si), self.digits)

    def said(self, si: float) -> str:
        """A quantity in SI with its unit, for a sentence."""
        return f"{self.text(si)} {self.name}"


_SCALES = {
    "temperature": (Scale("degF"), Scale("degC")),
    "gauge": (Scale("psi"), Scale("bar")),
    "contents": (Scale("ft^3", free_gas=True), Scale("m^3", free_gas=True)),
    "flow": (Scale("cfh", free_gas=True), Scale("L/h", free_gas=True)),
    "mass": (Scale("lb"), Scale("kg")),
    "length": (Scale("ft"), Scale("m")),
    "bore": (Scale("in"), Scale("mm")),
}


def scale(kind: str, rules: str) -> Scale:
    """Scale of a kind of quantity under a rule set.

    Args:
        kind: `temperature`, `gauge`, `contents`, `flow`, `mass`, `length` or `bore`.
        rules: Rule set; US units for `us`, metric for the others.
    """
    us, metric = _SCALES[kind]
    return us if rules == "us" else metric
