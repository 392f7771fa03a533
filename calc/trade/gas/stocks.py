"""What a full cylinder is filled at, and what must stay in an acetylene one: one floor for every page."""

from functools import lru_cache

from calc.formulas.gas.acetylene import acetylene_pressure, acetylene_share
from calc.formulas.gas.pressures import absolute_pressure
from calc.values.figures import Figure
from calc.values.quantities import FIFTEEN_CELSIUS, SEVENTY_FAHRENHEIT, FreeGas, Gauge, Ratio, Temperature
from calc.values.units import to_si

FIT = "coolprop-8 reference equation, our fit within 0.03 %"
"""Source of how much oxygen, hydrogen or methane a cylinder holds at a gauge."""
FLOOR: Gauge = to_si(29.0, "psi")
"""Least cylinder gauge at which acetylene is changed, 2 bar: trade practice, no source. The
figures say it as `acetylene-low`."""
OXYGEN_FLOOR = {"us": "100 psi", "iso": "7 bar", "uk": "7 bar"}
"""Cylinder gauge at which oxygen is changed, of a rule set: trade practice, no source."""
OXYGEN_REGULATOR: Gauge = to_si(29.0, "psi")
"""What an oxygen regulator wants above what it is set to, 2 bar: below that it no longer holds its
setting, and a burning torch starves; practice."""
HOSE_AND_REGULATOR: Gauge = to_si(14.0, "psi")
"""What regulator, hose and valves want above the torch's gauge, 1 bar: what the floor leaves above
the 15 psi that acetylene may be used at; practice."""


def filled_at(rules: str) -> Temperature:
    """Temperature that the gauge of a full oxygen cylinder is meant at, K."""
    return SEVENTY_FAHRENHEIT if rules == "us" else FIFTEEN_CELSIUS


def oxygen_stop(set_gauge: Gauge, rules: str) -> Gauge:
    """Cylinder gauge at which oxygen is changed, Pa: the floor, or more where the regulator stands high.

    Args:
        set_gauge: What the regulator is set to, Pa.
        rules: Rule set of the floor.

    Examples:
        >>> [round(oxygen_stop(to_si(set_to, "psi"), "us") / to_si(1.0, "psi")) for set_to in (5.0, 90.0)]
        [100, 119]
    """
    number, unit = OXYGEN_FLOOR[rules].split(" ")
    return max(to_si(float(number), unit), set_gauge + OXYGEN_REGULATOR)


@lru_cache(maxsize=64)
def stop_gauge(temperature: Temperature, torch_gauge: Gauge = 0.0) -> Gauge:
    """Cylinder gauge at rest below which no acetylene is drawn, Pa.

    Args:
        temperature: Of the cylinder, K.
        torch_gauge: What the torch wants, Pa.

    Returns:
        The largest of the floor, of the torch's gauge with what regulator and hose want, and of
        what the contents that show the floor at 70 °F show at this temperature.
    """
    share = acetylene_share(absolute_pressure(FLOOR), SEVENTY_FAHRENHEIT)
    same_contents = acetylene_pressure(share, temperature) - absolute_pressure(0.0)
    return max(FLOOR, torch_gauge + HOSE_AND_REGULATOR, same_contents)


@lru_cache(maxsize=64)
def kept_share(temperature: Temperature, torch_gauge: Gauge = 0.0) -> Ratio:
    """Share of a full cylinder that stays in it: what shows `stop_gauge` at this temperature, at most all.

    Args:
        temperature: Of the cylinder, K.
        torch_gauge: What the torch wants, Pa.
    """
    stop = absolute_pressure(stop_gauge(temperature, torch_gauge))
    if stop >= acetylene_pressure(1.0, temperature):
        return 1.0
    return acetylene_share(stop, temperature)


def acetylene_kept(full_contents: FreeGas, temperature: Temperature, torch_gauge: Gauge = 0.0) -> FreeGas:
    """Acetylene that stays in its cylinder, m³.

    Args:
        full_contents: A full one holds, m³.
        temperature: Of the cylinder, K.
        torch_gauge: What the torch wants, Pa.
    """
    return kept_share(temperature, torch_gauge) * full_contents


def acetylene_stop_gauge(temperature: Temperature, torch_gauge: Gauge = 0.0) -> Figure:
    """Cylinder gauge at which to change acetylene, Pa, never below what the torch wants.

    Args:
        temperature: Of the cylinder, K.
        torch_gauge: What the torch wants, Pa.
    """
    return Figure(
        stop_gauge(temperature, torch_gauge), "", "practice",
        basis="Never below 29 psi (2 bar), which leaves 14 psi (1 bar) above the most that a torch is given, for the "
        "regulator and the hose. In the heat the same gas shows more, so the reading is higher; in the cold more gas "
        "stays behind. At rest: while gas is drawn the gauge reads lower.",
    )  # fmt: skip
