"""A flame along its ratio: as few sums as straight lines between them need."""

from functools import cache
from itertools import pairwise

from calc.formulas.gas.properties import oxygen_ratio
from calc.formulas.heat.flame import ROOM, BurntGas, burnt_gas, ratio_at_peak_temperature
from calc.formulas.heat.fuels import EXAMPLE_PROPYNE_SHARE
from calc.quantities import Ratio, Temperature

NEAR: Temperature = 4.0
"""A stretch whose middle lies this near its chord, K, is not halved again: a smooth
curve then leaves its lines by a quarter of this, one with a corner by less than 5 K."""
_STRETCHES = 12
_HALVINGS = 5

Point = tuple[Ratio, BurntGas]


def flame_points(
    fuel: str,
    own: Ratio,
    lowest: Ratio,
    air: Ratio,
    oxygen_purity: Ratio,
    gas_temperature: Temperature,
    propyne_share: Ratio,
) -> tuple[Point, ...]:
    """Burnt gas at rising ratios, dense where the curve bends, the reader's own among them.

    Args:
        fuel: Id of the fuel gas.
        own: The reader's ratio.
        lowest: Least ratio that burns here.
        air: Volumes of air for one of fuel.
        oxygen_purity: Oxygen in the gas from the oxygen hose.
        gas_temperature: Temperature of the unburnt gas, K.
        propyne_share: Mole share of propyne in methylacetylene-propadiene.

    Returns:
        Pairs of ratio and burnt gas. On straight lines between them no temperature is
        off by more than 5 K.
    """
    whole = oxygen_ratio(fuel, "complete")

    def at(ratio: Ratio, near: Point | None) -> Point:
        start = near[1].end if near else None
        return ratio, burnt_gas(
            fuel, ratio, air, oxygen_purity, gas_temperature, propyne_share=propyne_share, start=start
        )

    def between(left: Point, right: Point, halvings: int) -> list[Point]:
        middle = at(0.5 * (left[0] + right[0]), left)
        chord = 0.5 * (left[1].temperature + right[1].temperature)
        if abs(middle[1].temperature - chord) <= NEAR or halvings == 0:
            return [middle]
        return [*between(left, middle, halvings - 1), middle, *between(middle, right, halvings - 1)]

    first, last = max(lowest, min(0.36 * whole, own)), max(1.2 * whole, own)
    ends = sorted({own, *(first + (last - first) * i / _STRETCHES for i in range(_STRETCHES + 1))})
    coarse: list[Point] = []
    for ratio in ends:
        coarse.append(at(ratio, coarse[-1] if coarse else None))
    points = coarse[:1]
    for left, right in pairwise(coarse):
        if right[0] - left[0] > 1e-3 * whole:
            points += between(left, right, _HALVINGS)
        points.append(right)
    return tuple(points)


@cache
def hottest(
    fuel: str,
    oxygen_purity: Ratio = 1.0,
    gas_temperature: Temperature = ROOM,
    propyne_share: Ratio = EXAMPLE_PROPYNE_SHARE,
) -> tuple[Ratio, Temperature]:
    """Ratio at which a fuel burns hottest without air, and how hot it then is.

    Args:
        fuel: Id of the fuel gas.
        oxygen_purity: Oxygen in the gas from the oxygen hose.
        gas_temperature: Temperature of the unburnt gas, K.
        propyne_share: Mole share of propyne in methylacetylene-propadiene.
    """
    ratio = ratio_at_peak_temperature(fuel, oxygen_purity, gas_temperature, propyne_share=propyne_share)
    gas = burnt_gas(fuel, ratio, 0.0, oxygen_purity, gas_temperature, propyne_share=propyne_share)
    return ratio, gas.temperature
