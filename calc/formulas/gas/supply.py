"""How long a supply of gas lasts, and how many cylinders a job needs."""

from math import ceil, isfinite

from calc.values.quantities import FreeGas, FreeGasFlow, Ratio, Time


def running_time(usable: FreeGas, flow: FreeGasFlow) -> Time:
    """Time that a supply lasts at a steady flow.

    Args:
        usable: Gas that can be drawn, m³ at 15 °C and 1 atm.
        flow: Flow while the torch burns, m³/s likewise.

    Returns:
        Burning time, s.

    Valid for:
        A flow above nothing.

    Source:
        [definition]

    Examples:
        >>> round(running_time(1.908, 0.0021 / 60) / 60)  # 1,908 L at 2.1 L/min
        909
    """
    return usable / flow


def gas_of_use(flow: FreeGasFlow, burning: Time, torches: Ratio = 1.0) -> FreeGas:
    """Gas that torches use while they burn.

    Args:
        flow: Flow of one torch, m³/s at 15 °C and 1 atm.
        burning: Time that the flame burns, s; not the time on the job.
        torches: How many torches burn at once.

    Returns:
        Gas used, m³ at 15 °C and 1 atm.

    Valid for:
        A steady flow; purging, lighting and leaks come on top.

    Source:
        [definition]

    Examples:
        >>> round(gas_of_use(300e-3 / 3600, 2 * 3600.0, 6), 3)  # six torches at 300 L/h
        3.6
    """
    return flow * burning * torches


def oxygen_for_fuel(fuel: FreeGas, oxygen_ratio: Ratio) -> FreeGas:
    """Oxygen that a torch draws for an amount of fuel gas.

    Args:
        fuel: Fuel gas, m³ at 15 °C and 1 atm.
        oxygen_ratio: Volumes of oxygen drawn from the cylinder for one of fuel. The
            ratio of complete burning is far larger: the air brings the rest.

    Returns:
        Oxygen, m³ at 15 °C and 1 atm.

    Valid for:
        Welding and heating flames. Cutting oxygen comes on top.

    Source:
        [definition]
    """
    return fuel * oxygen_ratio


def cylinder_share(wanted: FreeGas, usable: FreeGas) -> Ratio:
    """Cylinders' worth of gas, as a broken number.

    Args:
        wanted: Gas that the job needs, m³ at 15 °C and 1 atm; or a flow.
        usable: Gas that one cylinder gives, m³ likewise; or the most it may give.

    Returns:
        A plain number, not rounded.

    Valid for:
        Both counted alike.

    Source:
        [definition]

    Examples:
        >>> round(cylinder_share(9.340 * 1.1, 7.0), 2)  # a torch, at 1.1 volumes of oxygen
        1.47
    """
    return wanted / usable


def cylinders_needed(share: Ratio) -> int:
    """Whole cylinders that a job needs.

    Listed as a solver because it rounds up and refuses.

    Args:
        share: Cylinders' worth of gas, as a broken number.

    Returns:
        The next whole number, never below 1. A share above a whole number by less
        than a millionth, as arithmetic leaves it, counts as that number.

    Valid for:
        A share above nothing.

    Raises:
        ValueError: The share is nothing or not a number.

    Source:
        [definition]

    Examples:
        >>> cylinders_needed(3.3), cylinders_needed(2.0), cylinders_needed(0.1)
        (4, 2, 1)
    """
    if not (share > 0 and isfinite(share)):
        raise ValueError("The gas needed must be more than nothing.")
    return max(1, ceil(share * (1 - 1e-6)))


SOLVERS = (cylinders_needed,)
