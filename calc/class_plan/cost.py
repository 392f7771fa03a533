"""Cost of a class by the reader's own prices."""

from collections.abc import Sequence
from dataclasses import dataclass

from calc.trade.gas.costs import ASKED
from calc.values.figures import Figure
from calc.values.quantities import Ratio


@dataclass(frozen=True, slots=True)
class Item:
    """Something that is paid for.

    Attributes:
        name: What it is.
        amount: How much of it, in the unit of its price.
        unit: That unit, in words.
        price: Of one, or None where it was not given.
    """

    name: str
    amount: float
    unit: str
    price: float | None

    @property
    def cost(self) -> float | None:
        """Amount times price, or None.

        Examples:
            >>> Item("sheet", 3, "sheets", 40.0).cost, Item("sheet", 3, "sheets", None).cost
            (120.0, None)
        """
        return None if self.price is None else self.amount * self.price


def cost_of(items: Sequence[Item], share: Ratio, of: str, also: str = "") -> Figure:
    """A share of what all items cost.

    Args:
        items: What is paid for.
        share: Part of the whole plan, or times it.
        of: What the share is, one clause for the basis.
        also: What is not among the items at all, or empty.
    """
    known = [item.cost for item in items if item.cost is not None]
    if not known:
        return Figure(None, "", "practice", words=ASKED)
    missing = [item.name.lower() for item in items if item.price is None]
    without = [*missing, *([also] if also else [])]
    return Figure(
        share * sum(known), "", "practice", words=f"without {', '.join(without)}" if without else "",
        basis=f"Your prices times what the plan takes, {of}.",
    )  # fmt: skip
