"""Acetylene dissolved in acetone: pressure, contents, weight, and how fast to draw it.

The porous mass, the room left for swelling and the lag while gas is drawn are left
out, so the pressure is within 5 % and the contents within 15 %: weigh the cylinder.
"""

from math import exp

from calc.values.quantities import (
    FreeGas,
    FreeGasFlow,
    Gauge,
    Mass,
    MassFlow,
    Power,
    Pressure,
    Ratio,
    SpecificEnergy,
    SpecificVolume,
    Temperature,
    Time,
)

GAUGE_LIMIT: dict[str, Gauge] = {"us": 103421.36, "iso": 150000.0, "uk": 150000.0}
"""Most that acetylene may be used at, by rule set: 15 psi [cfr1910-253 (a)(2)], read;
1.5 bar [iso-2503], from memory, and [iso-3821-2019] for hose, read."""
ABSOLUTE_LIMIT: Pressure = 206842.71
"""30 psi absolute, beside the 15 psi, for pressurised places in the US [cfr1910-253 (a)(2)]."""
ARRESTOR_GAUGE: Gauge = 62000.0
"""UK: from 0.62 bar acetylene counts as compressed and wants arrestors [uk-asr-2014]."""

INTERMITTENT_DRAW: Ratio = 1 / 10
CONTINUOUS_DRAW: Ratio = 1 / 15
"""Share of the contents in an hour: a tenth by [draw-note], which names [cga-g1]; a
fifteenth from memory. Followed here."""
OLDER_DRAW: Ratio = 1 / 7
"""Older rule [manly-1916], read, which a tenth has replaced: no allowance, the line of the DANGER."""
FLAT_DRAW: FreeGasFlow = 50 * 0.3048**3 * 288.15 / 294.2611111111111 / 3600
"""50 ft³/h whatever the cylinder [army-od0017], read: looser than 1/7 on a 225 ft³ one."""

PRESSURE_BAND: Ratio = 0.05
CONTENTS_BAND: Ratio = 0.15
"""How far the answers may be out, as a share of them, either way."""

FULL_LOADING: Ratio = 0.558
"""Acetylene by acetone, kg/kg, that shows 250 psi on the gauge at 70 °F
[cfr49-173-303 (b)]."""
MOST_SHARE: Ratio = 1.3
COLDEST: Temperature = 243.149
HOTTEST: Temperature = 338.151
"""−30 °C and 65 °C, a hair wider against rounding: the model's ends, not limits for use."""
_MARGULES = -1.45
_ACETONE_MOLE = 58.079 / 26.037  # mass of a mole of acetone by that of acetylene


def _in_range(temperature: Temperature) -> None:
    if not COLDEST <= temperature <= HOTTEST:
        raise ValueError("Dissolved acetylene is reckoned from −30 °C to 65 °C only.")


def _pressure(share: Ratio, t: Temperature) -> Pressure:
    moles = share * FULL_LOADING * _ACETONE_MOLE  # of acetylene, to one of acetone
    x = moles / (1 + moles)
    acetylene = exp(44274.636 / t**2 - 2261.1154 / t + 22.464516)
    acetone = exp(-190426.47 / t**2 - 2558.0099 / t + 21.054705)
    return x * exp(_MARGULES * (1 - x) ** 2) * acetylene + (1 - x) * exp(_MARGULES * x**2) * acetone


def acetylene_pressure(share: Ratio, temperature: Temperature) -> Pressure:
    """Pressure at rest in a cylinder of dissolved acetylene.

    A fitted curve: the one-parameter Margules equation for acetylene in acetone.

    Args:
        share: Contents as a share of full, by weight; 1 is full.
        temperature: Temperature of the whole cylinder, K.

    Returns:
        Absolute pressure, Pa, within 5 % either way (`PRESSURE_BAND`).

    Valid for:
        −30 °C to 65 °C and up to 1.3 times full, the cylinder at rest for hours.
        Below a tenth of full the acetone's own vapour matters and no band is claimed.

    Raises:
        ValueError: Outside that range.

    Source:
        [leeds-1910] for the solubility it is held against; constants from memory of the
        method.

    Examples:
        >>> round((acetylene_pressure(1.0, 294.26) - 101325) / 6894.757)  # psi at 70 °F
        250
    """
    _in_range(temperature)
    if not 0 <= share <= MOST_SHARE:
        raise ValueError("An acetylene cylinder holds from nothing to 1.3 times full.")
    return _pressure(share, temperature)


def acetylene_share(pressure: Pressure, temperature: Temperature) -> Ratio:
    """Contents that a pressure and a temperature stand for.

    A solver: halves the span between empty and overfull.

    Args:
        pressure: Absolute pressure at rest, Pa.
        temperature: Temperature of the whole cylinder, K.

    Returns:
        Contents as a share of full, within 15 % of it (`CONTENTS_BAND`). More than
        1 means warmer than thought, or overfull.

    Valid for:
        As `acetylene_pressure`. The same reading means more gas in the cold.

    Raises:
        ValueError: The state is outside the range, the pressure is below that of
            acetone alone, or above that of 1.3 times full.

    Source:
        As `acetylene_pressure`.

    Examples:
        >>> [round(acetylene_share(150 * 6894.757 + 101325, t), 2) for t in (283.15, 305.37)]
        [0.77, 0.45]
    """
    _in_range(temperature)
    if not _pressure(0.0, temperature) <= pressure:
        raise ValueError("So low a reading tells nothing of the acetylene left: weigh it.")
    if not pressure <= _pressure(MOST_SHARE, temperature):
        raise ValueError("So high a reading is above any full cylinder at that temperature.")
    low, high = 0.0, MOST_SHARE
    while high - low > 1e-12:
        middle = (low + high) / 2
        if _pressure(middle, temperature) < pressure:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def acetylene_by_weight(gross: Mass, tare: Mass, specific_volume: SpecificVolume = 0.8986) -> FreeGas:
    """Gas left in an acetylene cylinder, from its weight.

    Args:
        gross: Weight of the cylinder as it stands, without cap or regulator, kg.
        tare: Weight stamped on it, kg; it counts the acetone.
        specific_volume: Free gas to a kilogram, m³/kg. The trade's 14.7 ft³/lb at 70 °F
            is 0.8986 at 15 °C, real gas; counted as ideal at 26.037 g/mol it is
            0.9081 (14.86 ft³/lb), 1.1 % more.

    Returns:
        Gas left, m³ at 15 °C and 1 atm.

    Valid for:
        The tare of that very cylinder. Acetone lost makes the answer too small.

    Source:
        [cga-g1] for the method and the 14.7, from memory. A 1916 book prints 13.6,
        about 7 % low [manly-1916].

    Examples:
        >>> round(acetylene_by_weight(54.0, 50.0), 2)
        3.59
    """
    return (gross - tare) * specific_volume


def acetylene_draw_limit(contents: FreeGas, share: Ratio, period: Time = 3600.0) -> FreeGasFlow:
    """Most that may be drawn from an acetylene cylinder.

    Args:
        contents: Gas in the cylinder, m³ at 15 °C and 1 atm. The gas that is there
            now is the careful reading; many texts take a full cylinder's.
        share: Share of the contents in the period.
        period: The period, s.

    Returns:
        Flow, m³/s at 15 °C and 1 atm.

    Valid for:
        A cylinder upright and not cold. Faster draw carries acetone along.

    Source:
        [draw-note] a tenth an hour by [cga-g1]; a fifteenth without a stop, from memory;
        [manly-1916] a seventh, read; they disagree, the careful ones are followed.
    """
    return contents * share / period


def acetylene_chill(draw: MassFlow, heat_of_solution: SpecificEnergy = 630e3) -> Power:
    """Heat that acetylene takes from its cylinder as it leaves the acetone.

    Args:
        draw: Acetylene drawn, kg/s.
        heat_of_solution: Heat to free a kilogram, J/kg; about 630 kJ/kg.

    Returns:
        Cooling of the cylinder, W.

    Valid for:
        A rough figure, to see why the draw is limited.

    Source:
        From memory.

    Examples:
        >>> round(acetylene_chill(10 / 7 / 3600))  # 10 kg at a seventh an hour
        250
    """
    return draw * heat_of_solution


SOLVERS = (acetylene_pressure, acetylene_share)
