"""How readily a steel hardens beside a weld, and the preheat that prevents it.

The preheat rule is written for arc welding. Gas welding puts in far more heat and has
no hydrogen class: there the carbon equivalent is a screen, not a preheat temperature.
"""

from math import tanh
from typing import Annotated

from calc.formulas.heat.cooling import LineEnergy
from calc.values.quantities import Length, Ratio, Temperature, Unit

Hydrogen = Annotated[float, Unit("m**3/kg")]
_MILLILITRE_IN_100_GRAM = 1e-5  # m³/kg
_KILOJOULE_PER_MILLIMETRE = 1e6  # J/m


def iiw_carbon_equivalent(
    *,
    carbon: Ratio,
    manganese: Ratio = 0.0,
    chromium: Ratio = 0.0,
    molybdenum: Ratio = 0.0,
    vanadium: Ratio = 0.0,
    nickel: Ratio = 0.0,
    copper: Ratio = 0.0,
) -> Ratio:
    """Carbon equivalent of the International Institute of Welding.

    Args:
        carbon: Share by mass.
        manganese: Share by mass.
        chromium: Share by mass.
        molybdenum: Share by mass.
        vanadium: Share by mass.
        nickel: Share by mass.
        copper: Share by mass.

    Returns:
        Share by mass; printed in percent.

    Valid for:
        Carbon and low-alloy steels with more than about 0.18 % carbon.

    Source:
        [en-1011-2] annex C, method A; from memory.
    """
    return carbon + manganese / 6 + (chromium + molybdenum + vanadium) / 5 + (nickel + copper) / 15


def cet_carbon_equivalent(
    *,
    carbon: Ratio,
    manganese: Ratio = 0.0,
    chromium: Ratio = 0.0,
    molybdenum: Ratio = 0.0,
    nickel: Ratio = 0.0,
    copper: Ratio = 0.0,
) -> Ratio:
    """Carbon equivalent CET, which the preheat rule below takes.

    Args:
        carbon: Share by mass.
        manganese: Share by mass.
        chromium: Share by mass.
        molybdenum: Share by mass.
        nickel: Share by mass.
        copper: Share by mass.

    Returns:
        Share by mass; printed in percent.

    Valid for:
        Steels that method B covers.

    Source:
        [en-1011-2] C.3; from memory.
    """
    return carbon + (manganese + molybdenum) / 10 + (chromium + copper) / 20 + nickel / 40


def cracking_parameter(
    *,
    carbon: Ratio,
    silicon: Ratio = 0.0,
    manganese: Ratio = 0.0,
    chromium: Ratio = 0.0,
    molybdenum: Ratio = 0.0,
    vanadium: Ratio = 0.0,
    nickel: Ratio = 0.0,
    copper: Ratio = 0.0,
    boron: Ratio = 0.0,
) -> Ratio:
    """Cracking parameter Pcm of Ito and Bessyo, for steels low in carbon.

    Args:
        carbon: Share by mass.
        silicon: Share by mass.
        manganese: Share by mass.
        chromium: Share by mass.
        molybdenum: Share by mass.
        vanadium: Share by mass.
        nickel: Share by mass.
        copper: Share by mass.
        boron: Share by mass.

    Returns:
        Share by mass; printed in percent.

    Valid for:
        Low-alloy steels with less than about 0.18 % carbon.

    Source:
        [ito-bessyo-1968]; from memory.
    """
    return (
        carbon
        + silicon / 30
        + (manganese + copper + chromium) / 20
        + nickel / 60
        + molybdenum / 15
        + vanadium / 10
        + 5 * boron
    )


def preheat_parts(
    cet: Ratio, thickness: Length, hydrogen: Hydrogen, line_energy: LineEnergy
) -> tuple[float, float, float, float]:
    """The four parts of a preheat temperature: steel, thickness, hydrogen, heat input.

    A fitted curve in percent, millimetres and °C.

    Args:
        cet: Carbon equivalent CET, share by mass.
        thickness: Of the thicker single plate, m; not the two together.
        hydrogen: Diffusible, m³/kg of weld metal.
        line_energy: Heat input, J/m.

    Returns:
        Four parts in °C, whose sum is the preheat temperature.

    Raises:
        ValueError: An input is outside what the rule covers.

    Valid for:
        CET 0.2-0.5 %, 10-90 mm, 1-20 ml in 100 g, 0.5-4 kJ/mm.

    Source:
        [en-1011-2] C.3-C.6; from memory.
    """
    percent = cet * 100.0
    millimetres = thickness * 1e3
    content = hydrogen / _MILLILITRE_IN_100_GRAM
    energy = line_energy / _KILOJOULE_PER_MILLIMETRE
    for value, low, high, words in (
        (percent, 0.2, 0.5, "carbon equivalent CET must be 0.2 to 0.5 percent"),
        (millimetres, 10.0, 90.0, "plate must be 10 to 90 mm thick"),
        (content, 1.0, 20.0, "hydrogen must be 1 to 20 ml in 100 g"),
        (energy, 0.5, 4.0, "heat input must be 0.5 to 4 kJ/mm"),
    ):
        if not low * (1.0 - 1e-9) <= value <= high * (1.0 + 1e-9):
            raise ValueError(f"For this preheat rule the {words}.")
    return (
        750.0 * percent - 150.0,
        160.0 * tanh(millimetres / 35.0) - 110.0,
        62.0 * content**0.35 - 100.0,
        (53.0 * percent - 32.0) * energy - 53.0 * percent + 32.0,
    )


def preheat_temperature(
    cet: Ratio, thickness: Length, hydrogen: Hydrogen, line_energy: LineEnergy
) -> Temperature:
    """Preheat for arc welding by method B. Below room temperature it means none.

    A fitted curve in percent, millimetres and °C.

    Args:
        cet: Carbon equivalent CET, share by mass.
        thickness: Of the thicker single plate, m; not the two together.
        hydrogen: Diffusible, m³/kg of weld metal.
        line_energy: Heat input, J/m.

    Returns:
        K.

    Raises:
        ValueError: An input is outside what the rule covers.

    Valid for:
        CET 0.2-0.5 %, 10-90 mm, 1-20 ml in 100 g, 0.5-4 kJ/mm, yield up to 1000 MPa.
        Arc welding: not gas welding.

    Source:
        [en-1011-2] C.8; from memory.
    """
    return 273.15 + sum(preheat_parts(cet, thickness, hydrogen, line_energy))


SOLVERS = (preheat_parts, preheat_temperature)
