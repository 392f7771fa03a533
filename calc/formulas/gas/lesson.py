"""What a lesson used, held against what was planned for it."""

from calc.values.quantities import FreeGas, Ratio


def next_gas_factor(used_gas: FreeGas, planned_gas: FreeGas, plan_factor: Ratio = 1.0) -> Ratio:
    """Factor by which a plan of gas is to be multiplied the next time.

    Args:
        used_gas: Gas that the lesson used, m³ at 15 °C and 1 atm.
        planned_gas: Gas that the plan gave for it, m³ likewise.
        plan_factor: Factor that this plan was already multiplied by.

    Returns:
        A plain number: 1 leaves a plan as it is reckoned, 1.2 adds a fifth.

    Valid for:
        A lesson like the one that was weighed; planned gas above nothing.

    Source:
        [definition]

    Examples:
        >>> next_gas_factor(1.2, 1.0)
        1.2
        >>> round(next_gas_factor(1.1, 1.0, plan_factor=1.2), 2)
        1.32
    """
    return plan_factor * used_gas / planned_gas
