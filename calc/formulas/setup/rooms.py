"""A room whose air is mixed throughout: what a leak makes of it, and how soon.

One balance, room · dx/dt = what comes in − what goes out, in closed form. Real air is
never mixed throughout: beside the leak the gas is always dense, whatever the room says.
What leaks is counted as warm as the room, so a cubic foot of it fills a cubic foot.
"""

from math import exp, log

from calc.values.quantities import FreeGas, FreeGasFlow, Ratio, Time, Volume, VolumeFlow

OXYGEN_IN_AIR: Ratio = 0.2095
ENRICHED: Ratio = 0.235
"""29 CFR 1910.146 (b); see `data/air-limits`."""
ROOM_OXYGEN: Ratio = 1.5
"""Oxygen that a neutral acetylene flame takes from the room, 1.4 to 1.5 for one of acetylene."""


def steady_share(leak: VolumeFlow, fresh: VolumeFlow, leak_share: Ratio, fresh_share: Ratio) -> Ratio:
    """Share of a gas that a mixed room comes to in the end.

    Args:
        leak: What leaks in, m³/s.
        fresh: Fresh air that comes in, m³/s.
        leak_share: Share of the gas in what leaks, 1 for the pure gas.
        fresh_share: Share of the gas in fresh air.

    Returns:
        Share, 0 to 1.

    Valid for:
        A mixed room; as much goes out as comes in.

    Source:
        [definition] of a balance

    Examples:
        >>> round(steady_share(2.0, 50.0, 1.0, 0.2095), 4)
        0.2399
    """
    return (leak * leak_share + fresh * fresh_share) / (leak + fresh)


def share_after(
    *, steady: Ratio, first_share: Ratio, leak: VolumeFlow, fresh: VolumeFlow, room: Volume, waiting: Time
) -> Ratio:
    """Share of a gas in a mixed room after a while.

    Args:
        steady: Share it comes to in the end.
        first_share: Share at first.
        leak: What leaks in, m³/s.
        fresh: Fresh air that comes in, m³/s.
        room: Volume of the room, m³.
        waiting: Time since, s.

    Returns:
        Share, 0 to 1.

    Valid for:
        A mixed room.

    Source:
        [definition] of a balance

    Examples:
        >>> round(share_after(steady=1.0, first_share=0.2095, leak=0.3, fresh=0.0, room=20.0, waiting=0.5), 5)
        0.21541
    """
    return steady + (first_share - steady) * exp(-(leak + fresh) * waiting / room)


def time_to_share(
    *,
    steady: Ratio,
    room: Volume,
    leak: VolumeFlow,
    fresh: VolumeFlow,
    first_share: Ratio = OXYGEN_IN_AIR,
    limit_share: Ratio = ENRICHED,
) -> Time:
    """Time until a mixed room comes to a share of a gas.

    Args:
        steady: Share it comes to in the end, beyond the limit.
        room: Volume of the room, m³.
        leak: What leaks in, m³/s.
        fresh: Fresh air that comes in, m³/s.
        first_share: Share at first.
        limit_share: Share looked for, between the first and the steady one.

    Returns:
        Time, s.

    Valid for:
        A mixed room, the limit short of the steady share; callers check.

    Source:
        [definition] of a balance

    Examples:
        >>> round(time_to_share(steady=1.0, room=20.0, leak=0.3, fresh=0.0), 3)  # m³ and m³/h, so hours
        2.186
    """
    return room / (leak + fresh) * log((steady - first_share) / (steady - limit_share))


def dilution_flow(
    leak: VolumeFlow, limit_share: Ratio, mixing: Ratio, fresh_share: Ratio = 0.0
) -> VolumeFlow:
    """Fresh air that holds a mixed room at a share of the gas that leaks.

    Args:
        leak: Pure gas that leaks in, m³/s.
        limit_share: Share not to be passed.
        mixing: How many times the ideal air is asked for, as real air mixes badly; 3 to 10.
        fresh_share: Share of that gas in fresh air; oxygen's is 0.2095.

    Returns:
        Fresh air, m³/s.

    Valid for:
        The room as a whole. Near the leak the gas stays dense whatever the air.

    Source:
        [definition] of a balance; the mixing factor is common practice.

    Examples:
        >>> round(dilution_flow(1.0, 0.00625, 1.0))
        159
    """
    return mixing * leak * (1 - limit_share) / (limit_share - fresh_share)


def filled_volume(released: FreeGas, limit_share: Ratio) -> Volume:
    """Space that an amount of gas fills at a share.

    Args:
        released: Gas let out, m³.
        limit_share: Share.

    Returns:
        Volume, m³.

    Valid for:
        Gas mixed throughout.

    Source:
        [definition]

    Examples:
        >>> round(filled_volume(0.105, 0.025), 1)
        4.2
    """
    return released / limit_share


def spent_air_time(
    room: Volume, first_share: Ratio, limit_share: Ratio, flow: FreeGasFlow, oxygen_ratio: Ratio
) -> Time:
    """Time in which a flame takes the oxygen of a shut room down to a share.

    Args:
        room: Volume of the room, m³.
        first_share: Oxygen at first.
        limit_share: Oxygen looked for.
        flow: Fuel burnt, m³/s.
        oxygen_ratio: Oxygen taken from the room for one of fuel, by volume.

    Returns:
        Time, s.

    Valid for:
        A shut, mixed room. Burnt gas harms long before that.

    Source:
        [definition] of a balance

    Examples:
        >>> round(spent_air_time(20.0, 0.2095, 0.195, 0.3, 1.5), 2)  # m³ and m³/h, so hours
        0.64
    """
    return room * (first_share - limit_share) / (flow * oxygen_ratio)
