"""Which gauge a gas can show at a temperature: the one place that says what cannot be.

A liquefied gas pushes no harder than it boils. Acetylene shows no more than its full
cylinder. A gas stored as gas shows no more than the cylinder is filled to.
"""

from functools import cache, lru_cache

from calc.data.tables import table
from calc.formulas.gas.acetylene import PRESSURE_BAND, acetylene_pressure
from calc.formulas.gas.contents import free_gas_volume
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.real_gas import COLDEST, HIGHEST, HOTTEST, compressibility, pressure_of_contents
from calc.formulas.gas.saturation import vapour_pressure
from calc.values.quantities import (
    ATMOSPHERE,
    FIFTEEN_CELSIUS,
    SEVENTY_FAHRENHEIT,
    Gauge,
    Ratio,
    Temperature,
    Volume,
)

MPS = "methylacetylene-propadiene"
LIQUEFIED = ("propane", "propylene", MPS)
"""Fuel gases that stand in their cylinders as liquid."""
STORED_AS_GAS = ("oxygen", "hydrogen", "methane")
"""Gases that stand in their cylinders as gas."""
MIXTURE_BAND: Ratio = 0.05
"""How far the pressure of methylacetylene-propadiene may go by its maker: our guess."""
OVERFULL: Ratio = 1.05
"""Contents that a full cylinder may be found with, as a share of what it is said to hold: our guess, as
rated contents are round figures."""
GAUGE_ERROR: Ratio = 0.03
"""How far a gauge may be out: from memory."""
HIGHEST_FULL: Gauge = 30_000_000.0
"""Highest filling of `oxygen-full-gauges`, 300 bar at 15 °C."""
ANY_VOLUME: Volume = 0.05
"""The gauge depends on how densely a cylinder is filled, not on its size."""


@cache
def _propane_in_mps() -> Ratio:
    """Share of propane that, with propyne, makes the gauge that is printed for the mixture."""
    printed = max(row.number for row in table("mps-facts") if row.topic == "full-gauge") * 6894.757
    propyne, propane = (vapour_pressure(gas, SEVENTY_FAHRENHEIT) for gas in ("propyne", "propane"))
    return float((absolute_pressure(printed) - propyne) / (propane - propyne))


def boiling_gauge(gas: str, temperature: Temperature) -> Gauge:
    """Gauge at which a liquefied gas boils: more it cannot show, in a cylinder or in a hose.

    A solver by `vapour_pressure`.

    Args:
        gas: `propane`, `propylene` or `methylacetylene-propadiene`.
        temperature: Temperature of the coldest liquid or gas, K.

    Returns:
        Gauge, Pa; below nothing where it does not boil in open air.

    Valid for:
        −43 °C to 65 °C. Propane and propylene as pure gases: bottled ones hold others too.
        Methylacetylene-propadiene as a mixture of propyne and propane that shows 95 psi at
        70 °F, and a twentieth more, as makers mix it differently.

    Raises:
        ValueError: Another gas, or outside that range.

    Source:
        [coolprop-8] fitted; [navy14265] for the 95 psi; the mixing by Raoult's law [textbook].

    Examples:
        >>> round(boiling_gauge("propane", 255.37) / 6894.757)  # psi at 0 °F
        24
    """
    if gas != MPS:
        return vapour_pressure(gas, temperature) - ATMOSPHERE
    share = _propane_in_mps()
    mixed = share * vapour_pressure("propane", temperature) + (1 - share) * vapour_pressure(
        "propyne", temperature
    )
    return (1 + MIXTURE_BAND) * mixed - ATMOSPHERE


def full_gauge_at(gas: str, full: Gauge, full_temperature: Temperature, temperature: Temperature) -> Gauge:
    """Gauge of a full cylinder at another temperature, the gas stored as gas.

    A solver by `pressure_of_contents`.

    Args:
        gas: One of `STORED_AS_GAS`.
        full: Gauge of a full one, Pa.
        full_temperature: Temperature that this is meant at, K.
        temperature: Temperature of the gas, K.

    Returns:
        Gauge, Pa, at most 400 bar, where the equation ends.

    Valid for:
        As `compressibility`.

    Source:
        As `compressibility`.

    Examples:
        >>> round(full_gauge_at("oxygen", 20e6, 288.15, 258.15) / 1e5)
        167
    """
    pressure = absolute_pressure(full)
    held = free_gas_volume(
        water_volume=ANY_VOLUME,
        pressure=pressure,
        temperature=full_temperature,
        compressibility=compressibility(gas, pressure, full_temperature),
    )
    try:
        return pressure_of_contents(gas, ANY_VOLUME, held, temperature) - ATMOSPHERE
    except ValueError:
        return HIGHEST - ATMOSPHERE


@lru_cache(maxsize=256)
def highest_gauge(gas: str, temperature: Temperature) -> Gauge:
    """Highest gauge that a cylinder of a gas can show, and so the highest that it can push with.

    A solver: by the kind of gas.

    Args:
        gas: `oxygen` or one of the six fuels.
        temperature: Temperature of the cylinder, K.

    Returns:
        Gauge, Pa. For a liquefied gas `boiling_gauge`; for acetylene that of a full cylinder
        and its band; for the others that of a cylinder filled to 300 bar at 15 °C, the
        highest filling in our tables, and the error of a gauge.

    Valid for:
        −30 °C to 65 °C.

    Raises:
        ValueError: Another gas, or outside that range.

    Source:
        As `boiling_gauge`, `acetylene_pressure` and `full_gauge_at`.

    Examples:
        >>> 260 < highest_gauge("acetylene", 294.26) / 6894.757 < 266  # psi at 70 °F: 250 printed, and 5 %
        True
    """
    if gas in LIQUEFIED:
        return boiling_gauge(gas, temperature)
    if gas == "acetylene":
        return (1 + PRESSURE_BAND) * acetylene_pressure(1.0, temperature) - ATMOSPHERE
    full = full_gauge_at(gas, HIGHEST_FULL, FIFTEEN_CELSIUS, temperature)
    return min((1 + GAUGE_ERROR) * full, HIGHEST - ATMOSPHERE)


def coldest_for(gas: str, gauge: Gauge) -> Temperature:
    """Coldest cylinder that can push with a gauge.

    A solver: halves the span of `highest_gauge`.

    Args:
        gas: `oxygen` or one of the six fuels.
        gauge: Wanted of the cylinder, Pa.

    Returns:
        Temperature, K: the cold end of the range where any will do, its hot end where none.

    Valid for:
        As `highest_gauge`.

    Source:
        As `highest_gauge`.

    Examples:
        >>> round(coldest_for("propane", 24.0 * 6894.757) - 255.37)  # 24 psi at 0 °F
        0
    """
    low, high = COLDEST, HOTTEST
    while high - low > 1e-3:
        middle = (low + high) / 2
        low, high = (low, middle) if highest_gauge(gas, middle) >= gauge else (middle, high)
    return high


SOLVERS = (coldest_for, boiling_gauge, full_gauge_at, highest_gauge)
