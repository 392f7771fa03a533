"""The flame: how hot the burnt gas is, what it holds, and what it does to iron.

All figures are adiabatic equilibrium: no heat is lost, and the gas has had time to
settle. A real flame is a little cooler. The ratio is what the torch delivers, oxygen
to fuel by volume; air that the outer flame draws in is counted apart.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import isfinite, sqrt

from calc.formulas.heat.burnt_state import Start
from calc.formulas.heat.equilibrium import equilibrium_at_enthalpy
from calc.formulas.heat.fuels import (
    EXAMPLE_PROPYNE_SHARE,
    atoms_in,
    fuel_shares,
    mixture_enthalpy,
    oxygen_to_burn,
)
from calc.values.quantities import ATMOSPHERE, Amount, Pressure, Ratio, Temperature

ROOM: Temperature = 298.15
AIR: Mapping[str, Ratio] = {"N2": 0.78084, "O2": 0.20946, "Ar": 0.00934, "CO2": 0.00036}
"""Dry air, mole shares [us-standard-atmosphere], carbon dioxide taking what the others leave."""
_LEAST_OXYGEN = 0.179  # a fifth, from oxygen of 90 % purity, with a hair to spare
_MOST_OXYGEN = 3.0
_MOST_AIR = 25.0
_COLDEST_GAS, _HOTTEST_GAS = 230.0, 500.0
_LOWEST_PRESSURE, _HIGHEST_PRESSURE = 0.8e5, 5e5
_LOWEST_PURITY = 0.9


@dataclass(frozen=True, slots=True, kw_only=True)
class BurntGas:
    """What a flame turns to, for one mole of fuel.

    Attributes:
        temperature: K.
        shares: Mole share of each species, soot counted as `C(gr)`.
        moles: Amount of burnt gas and soot, mol.
        soot: Solid carbon, mol.
        carbon_activity: Carbon in the gas against graphite; 1 where soot is present.
        elements: Amount of each element, mol.
        pressure: Pa.
        end: Where the search for a neighbour may start.
    """

    temperature: Temperature
    shares: Mapping[str, Ratio]
    moles: Amount
    soot: Amount
    carbon_activity: Ratio
    elements: Mapping[str, Amount]
    pressure: Pressure
    end: Start


def unburnt_mixture(
    fuel: str,
    oxygen_ratio: Ratio,
    air: Ratio = 0.0,
    oxygen_purity: Ratio = 1.0,
    propyne_share: Ratio = EXAMPLE_PROPYNE_SHARE,
) -> dict[str, Amount]:
    """Substances that go into a flame, for one mole of fuel.

    Args:
        fuel: One of `fuels.FUELS`.
        oxygen_ratio: Volumes of gas from the oxygen hose for one of fuel.
        air: Volumes of air for one of fuel.
        oxygen_purity: Oxygen in the gas from the oxygen hose. The rest counts as
            nitrogen: in a cylinder it is mostly argon, which would leave the flame
            about a tenth less cooled by it.
        propyne_share: Mole share of propyne in methylacetylene-propadiene.

    Returns:
        Moles of each substance.
    """
    mixture = dict(fuel_shares(fuel, propyne_share))
    for name, moles in (
        ("O2", oxygen_ratio * oxygen_purity),
        ("N2", oxygen_ratio * (1.0 - oxygen_purity)),
        *((name, air * share) for name, share in AIR.items()),
    ):
        if moles:
            mixture[name] = mixture.get(name, 0.0) + moles
    return mixture


def _oxygen_of_complete_burning(fuel: str) -> Ratio:
    atoms = atoms_in(fuel_shares(fuel))
    return oxygen_to_burn(atoms.get("C", 0.0), atoms["H"])


def least_oxygen_ratio(fuel: str, air: Ratio = 0.0, oxygen_purity: Ratio = 1.0) -> Ratio:
    """Least gas from the oxygen hose for one of fuel that this file was checked for.

    A look-up, not a formula.

    Args:
        fuel: One of `fuels.FUELS`.
        air: Volumes of air for one of fuel.
        oxygen_purity: Oxygen in the gas from the oxygen hose.

    Returns:
        Volumes for one of fuel; 0 where the air alone is enough.
    """
    wanted = _LEAST_OXYGEN * _oxygen_of_complete_burning(fuel)
    return max(0.0, wanted - air * AIR["O2"]) / oxygen_purity


def most_oxygen_ratio(fuel: str) -> Ratio:
    """Most gas from the oxygen hose for one of fuel that this file was checked for; a look-up."""
    return _MOST_OXYGEN * _oxygen_of_complete_burning(fuel)


def _refuse_what_was_not_tried(
    *,
    fuel: str,
    oxygen_ratio: Ratio,
    air: Ratio,
    oxygen_purity: Ratio,
    gas_temperature: Temperature,
    pressure: Pressure,
) -> None:
    if not all(map(isfinite, (oxygen_ratio, air, oxygen_purity, gas_temperature, pressure))):
        raise ValueError("A flame needs plain numbers.")
    if not _COLDEST_GAS <= gas_temperature <= _HOTTEST_GAS:
        raise ValueError("The gas must come at 230 to 500 K.")
    if not _LOWEST_PRESSURE <= pressure <= _HIGHEST_PRESSURE:
        raise ValueError("The pressure of the flame must be 0.8 to 5 bar.")
    if not _LOWEST_PURITY <= oxygen_purity <= 1.0:
        raise ValueError("The purity of the oxygen must be 90 to 100 percent.")
    if not 0.0 <= air <= _MOST_AIR:
        raise ValueError("The air must be 0 to 25 volumes for one of fuel.")
    most = most_oxygen_ratio(fuel)
    if not 0.0 <= oxygen_ratio <= most:
        raise ValueError(f"The oxygen must be 0 to {most:g} volumes for one of {fuel}.")
    if oxygen_ratio < least_oxygen_ratio(fuel, air, oxygen_purity) - 1e-12:
        raise ValueError(f"There is too little oxygen here for {fuel} to burn.")


def burnt_gas(
    *,
    fuel: str,
    oxygen_ratio: Ratio,
    air: Ratio = 0.0,
    oxygen_purity: Ratio = 1.0,
    gas_temperature: Temperature = ROOM,
    pressure: Pressure = ATMOSPHERE,
    propyne_share: Ratio = EXAMPLE_PROPYNE_SHARE,
    start: Start | None = None,
) -> BurntGas:
    """Burnt gas of a flame that loses no heat.

    A solver: it searches for the equilibrium.

    Args:
        fuel: One of `fuels.FUELS`.
        oxygen_ratio: Volumes of gas from the oxygen hose for one of fuel; may be 0
            where air is mixed in.
        air: Volumes of air for one of fuel.
        oxygen_purity: Oxygen in the gas from the oxygen hose; the rest counts as nitrogen.
        gas_temperature: Temperature of the unburnt gas, K.
        pressure: Absolute pressure of the flame, Pa.
        propyne_share: Mole share of propyne in methylacetylene-propadiene.
        start: End of a neighbour's search.

    Returns:
        Temperature and make-up of the burnt gas.

    Raises:
        ValueError: An input is outside what the sum was checked for.

    Valid for:
        Adiabatic equilibrium, gas at 230-500 K, 0.8-5 bar, oxygen from a fifth of to
        three times what complete burning takes.

    Source:
        [nasa-rp-1311], [nasa-tp-2002-211556].
    """
    _refuse_what_was_not_tried(
        fuel=fuel,
        oxygen_ratio=oxygen_ratio,
        air=air,
        oxygen_purity=oxygen_purity,
        gas_temperature=gas_temperature,
        pressure=pressure,
    )
    mixture = unburnt_mixture(fuel, oxygen_ratio, air, oxygen_purity, propyne_share)
    elements = atoms_in(mixture)
    enthalpy = mixture_enthalpy(mixture, gas_temperature)
    found = equilibrium_at_enthalpy(elements, enthalpy, pressure, start)
    return BurntGas(
        temperature=found.temperature,
        shares=found.shares,
        moles=found.moles,
        soot=found.graphite,
        carbon_activity=found.carbon_activity,
        elements=elements,
        pressure=pressure,
        end=found.end,
    )


def flame_curve(
    *,
    fuel: str,
    oxygen_ratios: Iterable[Ratio],
    air: Ratio = 0.0,
    oxygen_purity: Ratio = 1.0,
    gas_temperature: Temperature = ROOM,
    pressure: Pressure = ATMOSPHERE,
    propyne_share: Ratio = EXAMPLE_PROPYNE_SHARE,
) -> tuple[BurntGas, ...]:
    """Burnt gas along a row of ratios, each sum begun where its neighbour ended.

    A solver, for the same reason as `burnt_gas`.

    Args:
        fuel: One of `fuels.FUELS`.
        oxygen_ratios: Ratios in rising or falling order.
        air: Volumes of air for one of fuel.
        oxygen_purity: Oxygen in the gas from the oxygen hose.
        gas_temperature: Temperature of the unburnt gas, K.
        pressure: Absolute pressure of the flame, Pa.
        propyne_share: Mole share of propyne in methylacetylene-propadiene.

    Returns:
        One burnt gas for each ratio.

    Raises:
        ValueError: An input is outside what the sum was checked for.

    Valid for:
        As `burnt_gas`.

    Source:
        [nasa-rp-1311], [nasa-tp-2002-211556].
    """
    curve: list[BurntGas] = []
    start = None
    for ratio in oxygen_ratios:
        gas = burnt_gas(
            fuel=fuel,
            oxygen_ratio=ratio,
            air=air,
            oxygen_purity=oxygen_purity,
            gas_temperature=gas_temperature,
            pressure=pressure,
            propyne_share=propyne_share,
            start=start,
        )
        curve.append(gas)
        start = gas.end
    return tuple(curve)


def ratio_at_peak_temperature(
    fuel: str,
    oxygen_purity: Ratio = 1.0,
    gas_temperature: Temperature = ROOM,
    pressure: Pressure = ATMOSPHERE,
    propyne_share: Ratio = EXAMPLE_PROPYNE_SHARE,
) -> Ratio:
    """Oxygen to fuel at which the flame without air is hottest.

    A solver: golden section towards the one top that the curve has, then a parabola.

    Args:
        fuel: One of `fuels.FUELS`.
        oxygen_purity: Oxygen in the gas from the oxygen hose.
        gas_temperature: Temperature of the unburnt gas, K.
        pressure: Absolute pressure of the flame, Pa.
        propyne_share: Mole share of propyne in methylacetylene-propadiene.

    Returns:
        Volumes of oxygen for one of fuel, found to about 0.3 % of complete burning.
        The top is so flat that 1 % either way changes the flame by less than a kelvin.

    Raises:
        ValueError: An input is outside what the sum was checked for.

    Valid for:
        As `burnt_gas`.

    Source:
        [nasa-rp-1311], [nasa-tp-2002-211556].
    """
    whole = _oxygen_of_complete_burning(fuel)
    start: Start | None = None

    def temperature_at(ratio: Ratio) -> Temperature:
        nonlocal start
        gas = burnt_gas(
            fuel=fuel,
            oxygen_ratio=ratio,
            air=0.0,
            oxygen_purity=oxygen_purity,
            gas_temperature=gas_temperature,
            pressure=pressure,
            propyne_share=propyne_share,
            start=start,
        )
        start = gas.end
        return gas.temperature

    golden = (sqrt(5.0) - 1.0) / 2.0
    low, high = 0.45 * whole, 1.15 * whole
    left, right = high - golden * (high - low), low + golden * (high - low)
    at_left, at_right = temperature_at(left), temperature_at(right)
    while high - low > 0.1 * whole:
        if at_left > at_right:
            high, right, at_right = right, left, at_left
            left = high - golden * (high - low)
            at_left = temperature_at(left)
        else:
            low, left, at_left = left, right, at_right
            right = low + golden * (high - low)
            at_right = temperature_at(right)
    # So near the top the curve is a parabola.
    here, apart = 0.5 * (left + right), 0.02 * whole
    before, at, after = (temperature_at(here + apart * i) for i in (-1, 0, 1))
    return here + 0.5 * apart * (before - after) / (before - 2.0 * at + after)


SOLVERS = (burnt_gas, flame_curve, ratio_at_peak_temperature)
