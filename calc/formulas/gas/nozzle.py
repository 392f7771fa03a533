"""Gas through the holes of a tip: flow and speed, up to the speed of sound.

The mixture expands without loss of heat to the pressure outside or, when driven hard,
to the speed of sound; what a real hole passes is a share of that, the discharge.
It holds where both gases reach the mixer at the same pressure. An injector torch
draws its fuel in and has a published set of pressures instead.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite, pi, sqrt

from calc.formulas.gas.properties import gas_heat_capacity, gas_molar_mass
from calc.values.quantities import (
    ATMOSPHERE,
    FIFTEEN_CELSIUS,
    GAS_CONSTANT,
    Area,
    FreeGasFlow,
    Length,
    MassFlow,
    MolarMass,
    Pressure,
    Ratio,
    Speed,
    Temperature,
)

DISCHARGE: Ratio = 0.75
"""Share of the lossless flow that a tip passes; from memory, about 0.6 to 0.9. The torch's
valves and mixer take pressure first, so with the regulator's pressure it is an upper figure."""
TWENTY_CELSIUS: Temperature = 293.15
HIGHEST: Pressure = 2.6e6
COLDEST: Temperature = 243.149
HOTTEST: Temperature = 338.151


def orifice_area(diameter: Length, holes: Ratio = 1.0) -> Area:
    """Area of the holes of a tip together.

    Args:
        diameter: Diameter of one hole, m.
        holes: How many there are.

    Returns:
        Area, m².

    Valid for:
        Round holes, all alike.

    Source:
        [definition]

    Examples:
        >>> round(1e6 * orifice_area(0.001), 4)
        0.7854
    """
    return holes * pi * diameter**2 / 4


def throat_ratio(pressure: Pressure, outside: Pressure, gamma: Ratio) -> Ratio:
    """Pressure in the throat of a hole, as a share of the pressure before it.

    Args:
        pressure: Absolute pressure before the hole, Pa.
        outside: Absolute pressure behind it, Pa.
        gamma: Ratio of the heat capacities of the gas.

    Returns:
        A plain number: that of the outside, or, when the gas reaches the speed of
        sound, the larger one at which it does.

    Valid for:
        A perfect gas that loses no heat.

    Source:
        [textbook] of gas flow.

    Examples:
        >>> round(throat_ratio(5e5, 1e5, 1.4), 4), throat_ratio(1.25e5, 1e5, 1.4)
        (0.5283, 0.8)
    """
    sonic = (2 / (gamma + 1)) ** (gamma / (gamma - 1))
    return max(outside / pressure, sonic)  # type: ignore[no-any-return]  # float ** float


def throat_speed(temperature: Temperature, molar_mass: MolarMass, gamma: Ratio, ratio: Ratio) -> Speed:
    """Speed of the gas in the throat of a hole.

    Args:
        temperature: Temperature of the gas before the hole, K.
        molar_mass: Mass of a mole of the gas, kg/mol.
        gamma: Ratio of its heat capacities.
        ratio: `throat_ratio`.

    Returns:
        Speed, m/s.

    Valid for:
        A perfect gas that loses no heat.

    Source:
        [textbook] of gas flow.

    Examples:
        >>> round(throat_speed(293.15, 0.028965, 1.4, 0.5283))  # air at the speed of sound
        313
    """
    cooling = 1 - ratio ** ((gamma - 1) / gamma)
    return sqrt(2 * gamma / (gamma - 1) * GAS_CONSTANT * temperature / molar_mass * cooling)


def orifice_mass_flow(
    *,
    area: Area,
    discharge: Ratio,
    pressure: Pressure,
    temperature: Temperature,
    molar_mass: MolarMass,
    gamma: Ratio,
    ratio: Ratio,
    speed: Speed,
) -> MassFlow:
    """Mass of gas that holes pass.

    Args:
        area: `orifice_area`, m².
        discharge: Share of the lossless flow that the holes pass.
        pressure: Absolute pressure before the holes, Pa.
        temperature: Temperature of the gas there, K.
        molar_mass: Mass of a mole of the gas, kg/mol.
        gamma: Ratio of its heat capacities.
        ratio: `throat_ratio`.
        speed: `throat_speed`, m/s.

    Returns:
        Flow, kg/s.

    Valid for:
        A perfect gas that loses no heat.

    Source:
        [textbook] of gas flow.
    """
    density = pressure * molar_mass / (GAS_CONSTANT * temperature)
    thinned = density * ratio ** (1 / gamma)
    return discharge * area * thinned * speed  # type: ignore[no-any-return]  # float ** float


def free_gas_flow(
    mass_flow: MassFlow,
    molar_mass: MolarMass,
    reference_pressure: Pressure = ATMOSPHERE,
    reference_temperature: Temperature = FIFTEEN_CELSIUS,
) -> FreeGasFlow:
    """Flow of free gas that a flow of mass is.

    Args:
        mass_flow: Flow, kg/s.
        molar_mass: Mass of a mole of the gas, kg/mol.
        reference_pressure: Pressure the answer is counted at, Pa.
        reference_temperature: Temperature the answer is counted at, K.

    Returns:
        Flow, m³/s at the reference state.

    Valid for:
        Any gas; counted as ideal.

    Source:
        [gas-law]

    Examples:
        >>> round(free_gas_flow(1.0, 0.031998), 4)  # a kilogram of oxygen
        0.7389
    """
    return mass_flow / molar_mass * GAS_CONSTANT * reference_temperature / reference_pressure


@dataclass(frozen=True, slots=True, kw_only=True)
class OrificeFlow:
    """What the holes of a tip pass.

    Attributes:
        mass_flow: All gases together, kg/s.
        flows: Each gas by name, m³/s at 15 °C and 1 atm.
        speed: Speed in the throat, m/s.
        choked: Whether the gas reaches the speed of sound there.
        molar_mass: Mass of a mole of the mixture, kg/mol.
        gamma: Ratio of the mixture's heat capacities.
    """

    mass_flow: MassFlow
    flows: dict[str, FreeGasFlow]
    speed: Speed
    choked: bool
    molar_mass: MolarMass
    gamma: Ratio

    @property
    def free_gas(self) -> FreeGasFlow:
        """All gases together, m³/s at 15 °C and 1 atm."""
        return sum(self.flows.values())


def orifice_flow(
    *,
    gases: Mapping[str, Ratio],
    area: Area,
    pressure: Pressure,
    outside: Pressure = ATMOSPHERE,
    temperature: Temperature = TWENTY_CELSIUS,
    discharge: Ratio = DISCHARGE,
) -> OrificeFlow:
    """Flow of a gas, or of fuel and oxygen mixed, through the holes of a tip.

    Listed as a solver because it looks figures up, mixes them and refuses.

    Args:
        gases: Volumes of each gas in the mixture, such as
            `{"acetylene": 1, "oxygen": 1.1}`; one gas alone for a cutting jet.
        area: Area of the holes, m².
        pressure: Absolute pressure before the holes, Pa; that at the tip, which is
            below that at the regulator.
        outside: Absolute pressure behind them, Pa.
        temperature: Temperature of the gas before the holes, K.
        discharge: Share of the lossless flow that the holes pass.

    Returns:
        Mass, each gas, and speed.

    Valid for:
        Up to 26 bar, holes short against their width. Before the discharge, within
        0.7 % of an expansion whose heat capacities change, from 0 to 45 °C, and
        within 1.4 % from −30 to 65 °C.

    Raises:
        ValueError: Outside that range, no hole, or no more pressure than outside.

    Source:
        [textbook] of gas flow; discharge from memory.

    Examples:
        >>> tip = orifice_flow(gases={"acetylene": 1, "oxygen": 1.1}, area=orifice_area(0.001), pressure=135_799.0)
        >>> round(tip.speed), tip.choked, round(3.6e6 * tip.flows["acetylene"])
        (218, False, 231)
    """
    whole = sum(gases.values())
    if not (whole > 0 and isfinite(whole) and min(gases.values()) >= 0):
        raise ValueError("A mixture needs volumes of nothing or more, and some of one gas.")
    if not (area > 0 and isfinite(area) and 0 < discharge <= 1):
        raise ValueError("A tip needs a hole, and passes at most the lossless flow.")
    if not COLDEST <= temperature <= HOTTEST:
        raise ValueError("Flow through a tip is reckoned from −30 °C to 65 °C only.")
    if not 0 < outside <= pressure <= HIGHEST:
        raise ValueError("Gas flows out only from a higher pressure, here up to 26 bar.")
    molar_mass = sum(n * gas_molar_mass(gas) for gas, n in gases.items()) / whole
    heat = sum(n * gas_heat_capacity(gas) for gas, n in gases.items()) / whole
    gamma = heat / (heat - GAS_CONSTANT)
    ratio = throat_ratio(pressure, outside, gamma)
    speed = throat_speed(temperature, molar_mass, gamma, ratio)
    mass_flow = orifice_mass_flow(
        area=area,
        discharge=discharge,
        pressure=pressure,
        temperature=temperature,
        molar_mass=molar_mass,
        gamma=gamma,
        ratio=ratio,
        speed=speed,
    )
    every = free_gas_flow(mass_flow, molar_mass)
    return OrificeFlow(
        mass_flow=mass_flow,
        flows={gas: every * n / whole for gas, n in gases.items()},
        speed=speed,
        choked=ratio > outside / pressure,
        molar_mass=molar_mass,
        gamma=gamma,
    )


def orifice_pressure(
    *,
    gases: Mapping[str, Ratio],
    area: Area,
    flow: FreeGasFlow,
    outside: Pressure = ATMOSPHERE,
    temperature: Temperature = TWENTY_CELSIUS,
    discharge: Ratio = DISCHARGE,
) -> Pressure:
    """Pressure before the holes of a tip at which they pass a flow.

    A solver: halves the span of `orifice_flow`.

    Args:
        gases: Volumes of each gas in the mixture.
        area: Area of the holes, m².
        flow: All gases together, m³/s at 15 °C and 1 atm.
        outside: Absolute pressure behind the holes, Pa.
        temperature: Temperature of the gas before the holes, K.
        discharge: Share of the lossless flow that the holes pass.

    Returns:
        Absolute pressure at the tip, Pa. The regulator must be set higher.

    Valid for:
        As `orifice_flow`.

    Raises:
        ValueError: As `orifice_flow`, or more than 26 bar would be needed.

    Source:
        As `orifice_flow`.
    """

    def passed(pressure: Pressure) -> FreeGasFlow:
        return orifice_flow(
            gases=gases,
            area=area,
            pressure=pressure,
            outside=outside,
            temperature=temperature,
            discharge=discharge,
        ).free_gas

    low, high = outside, HIGHEST
    if not 0 <= flow <= passed(high):
        raise ValueError("The holes are too small for that flow.")
    while high - low > 1e-9 * high:
        middle = (low + high) / 2
        if passed(middle) < flow:
            low = middle
        else:
            high = middle
    return (low + high) / 2


SOLVERS = (orifice_flow, orifice_pressure)
