"""When gas must be ordered, and what it costs by the reader's own prices."""

from collections.abc import Mapping

from calc.values.figures import Figure
from calc.values.quantities import FreeGas, Ratio, Time, Volume

GAS_OF_LIQUID: Ratio = 843.0
"""Oxygen gas at 15 °C and 1 atm from one of liquid [coolprop-8], computed."""
WEEK: Time = 7 * 24 * 3600.0
ASKED = "give your prices and it is worked out"


def order_time(stock: float, share: Ratio, lead_time: Time, sessions: float) -> Figure:
    """Time until an order must go out, s.

    Args:
        stock: Full cylinders there now.
        share: Cylinders used in a week.
        lead_time: From order to delivery, s.
        sessions: Lessons in a week.
    """
    spare = stock - share * lead_time / WEEK - share / sessions
    wait = max(spare, 0.0) / share * WEEK
    return Figure(
        wait, "", "practice", words="" if spare > 0 else "today: what is there will not last",
        basis="Until what is left lasts just for the delivery and one lesson, from the cylinders there now.",
    )  # fmt: skip


def cylinder_cost(
    share: Mapping[str, Ratio], prices: Mapping[str, float | None], rent: float | None, cylinders: float
) -> Figure:
    """Cost of a week's cylinders.

    Args:
        share: Cylinders used in a week, by gas.
        prices: Price of a cylinder's gas, by gas; None where it was not given.
        rent: Of one cylinder in a week, or None.
        cylinders: Cylinders there, in use and in reserve.
    """
    known = {gas: price for gas, price in prices.items() if price is not None}
    if not known:
        return Figure(None, "", "practice", words=ASKED)
    missing = [gas for gas in prices if gas not in known]
    return Figure(
        sum(share[gas] * price for gas, price in known.items()) + (rent or 0.0) * cylinders,
        "", "practice", words=f"without the {missing[0]}" if missing else "",
        basis="Cylinders used times their price, and the rent of all that stand there.",
    )  # fmt: skip


def liquid_cost(
    oxygen: FreeGas, price: float | None, rent: float | None, container: Volume, boil_off: Ratio
) -> Figure:
    """Cost of a week's oxygen bought as liquid.

    Args:
        oxygen: Oxygen used in a week, m³.
        price: Of a litre of liquid, or None.
        rent: Of the container in a week, or None.
        container: What it holds, m³ of liquid.
        boil_off: Share of the container that boils off in a day.
    """
    lost = 7 * boil_off * container
    used = oxygen / GAS_OF_LIQUID
    said = f"{1000 * used:.3g} L used and {1000 * lost:.3g} L boiled off in a week"
    if price is None:
        return Figure(None, "coolprop-8 843 L of gas from a litre", "computed", words=f"{said}; {ASKED}")
    return Figure(
        1000 * (used + lost) * price + (rent or 0.0), "coolprop-8 843 L of gas from a litre", "computed",
        words=said, basis="A litre gives 843 L of gas. What boils off is paid for, used or not; an upper figure.",
    )  # fmt: skip


def compared(cylinders: Figure, liquid: Figure) -> Figure:
    """Which of the two costs less, in words; `cylinders` counts oxygen alone."""
    if cylinders.value is None or liquid.value is None:
        return Figure(None, "", "practice", words=ASKED)
    cheaper = "liquid" if liquid.value < cylinders.value else "cylinders"
    return Figure(
        None, "", "practice",
        words=f"{cheaper} cost less: {cylinders.value:.4g} in cylinders, {liquid.value:.4g} as liquid, a week",
        basis="Oxygen alone. Liquid oxygen has rules and dangers of its own: it wants the supplier's advice.",
    )  # fmt: skip
