"""What a flame does to molten iron under it: gives carbon, oxidises, or little of either."""

from dataclasses import dataclass

from calc.formulas.heat.burnt_state import Equilibrium
from calc.formulas.heat.equilibrium import equilibrium_at_temperature
from calc.formulas.heat.flame import BurntGas
from calc.values.quantities import Ratio, Temperature

IRON_MELTS: Temperature = 1811.0
CARBON_ACTIVITY_OF_MILD_STEEL: Ratio = 0.006
"""Molten iron with 0.2 % carbon, graphite as 1. From memory: 1 % by weight stands at
exp((22590 - 42.26 T)/RT), which is 0.028 at 1811 K; a fifth of it, with a little for
the carbon's own effect."""
WATER_TO_HYDROGEN_FOR_MANGANESE: Ratio = 0.3
"""Where half a percent of manganese in molten steel turns to oxide. From memory: the
product of manganese and oxygen, 0.028 at 1811 K, and log K = 7050/T - 3.17 for oxygen
from steam. Silicon, chromium, aluminium and zinc turn at far less."""
WATER_TO_HYDROGEN_FOR_IRON: Ratio = 0.80
"""Where iron itself turns to oxide at 1811 K; thermochemical tables, from memory."""

GIVES_CARBON = "gives carbon"
LITTLE_OF_EITHER = "little of either"
OXIDISES_ALLOYING_ELEMENTS = "oxidises alloying elements"
OXIDISES_IRON = "oxidises iron"


def gas_at_metal(gas: BurntGas, temperature: Temperature = IRON_MELTS) -> Equilibrium:
    """Burnt gas that has come to the temperature of the metal, before any soot falls out.

    A solver: it searches for the equilibrium.

    Args:
        gas: Burnt gas.
        temperature: Temperature of the metal, K.

    Returns:
        The gas at rest again. Its carbon activity tells whether it gives carbon.

    Raises:
        ValueError: The temperature is outside 600-3500 K.

    Source:
        [nasa-rp-1311], [nasa-tp-2002-211556].
    """
    if not 600.0 <= temperature <= 3500.0:
        raise ValueError("The metal must be at 600 to 3500 K.")
    return equilibrium_at_temperature(gas.elements, temperature, gas.pressure, gas.end, soot=False)


@dataclass(frozen=True, slots=True)
class EffectOnIron:
    """What burnt gas does to molten iron under it.

    Attributes:
        effect: One of four phrases.
        carbon_activity: Carbon in the gas against graphite.
        water_to_hydrogen: Steam over hydrogen, the gas's pull to oxidise.
        dioxide_to_monoxide: Carbon dioxide over monoxide; 0 without carbon.
    """

    effect: str
    carbon_activity: Ratio
    water_to_hydrogen: Ratio
    dioxide_to_monoxide: Ratio


def effect_on_iron(gas: BurntGas) -> EffectOnIron:
    """What a flame does to molten iron: gives carbon, oxidises, or little of either.

    A solver: it brings the gas to equilibrium at the melting point of iron.

    Args:
        gas: Burnt gas, with the air that reaches the pool where there is any.

    Returns:
        The effect in a phrase, and the three figures it rests on.

    Valid for:
        The direction of change at the pool, not its speed. It is not the trade's
        name of the flame, which follows the look of the cone and a ratio band.

    Source:
        [nasa-rp-1311] for the gas; the three borders are from memory.
    """
    at_pool = gas_at_metal(gas)
    shares = at_pool.shares
    water_to_hydrogen = shares["H2O"] / shares["H2"]
    dioxide_to_monoxide = shares["CO2"] / shares["CO"] if "CO" in shares else 0.0
    if water_to_hydrogen > WATER_TO_HYDROGEN_FOR_IRON:
        effect = OXIDISES_IRON
    elif water_to_hydrogen > WATER_TO_HYDROGEN_FOR_MANGANESE:
        effect = OXIDISES_ALLOYING_ELEMENTS
    elif at_pool.carbon_activity > CARBON_ACTIVITY_OF_MILD_STEEL:
        effect = GIVES_CARBON
    else:
        effect = LITTLE_OF_EITHER
    return EffectOnIron(effect, at_pool.carbon_activity, water_to_hydrogen, dioxide_to_monoxide)


SOLVERS = (gas_at_metal, effect_on_iron)
