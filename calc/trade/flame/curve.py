"""A flame along its ratio: as few sums as straight lines between them need."""

from functools import cache

from calc.formulas.gas.properties import oxygen_ratio
from calc.formulas.heat.burnt_state import start_between
from calc.formulas.heat.flame import AIR, ROOM, BurntGas, burnt_gas, ratio_at_peak_temperature
from calc.formulas.heat.fuels import EXAMPLE_PROPYNE_SHARE, atoms_in, fuel_shares
from calc.values.quantities import Ratio, Temperature

NEAR: Temperature = 4.0
"""Bend at a point, K, below which both its sides stay as they are: a corner of the curve
then leaves its line by about as much, a smooth bend by a quarter of it."""
_STRETCHES = 10
_PASSES = 6

Point = tuple[Ratio, BurntGas]


def flame_points(
    *,
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

    def at(ratio: Ratio, near: Point | None, far: Point | None = None) -> Point:
        start = near[1].end if near else None
        if near and far:
            start = start_between(near[1].end, far[1].end, (ratio - near[0]) / (far[0] - near[0]))
        return ratio, burnt_gas(
            fuel=fuel,
            oxygen_ratio=ratio,
            air=air,
            oxygen_purity=oxygen_purity,
            gas_temperature=gas_temperature,
            propyne_share=propyne_share,
            start=start,
        )

    first, last = max(lowest, min(0.28 * whole, own)), max(1.2 * whole, own)
    marks = {first + (last - first) * i / _STRETCHES for i in range(_STRETCHES + 1)}
    # The sharpest corner is where one atom of oxygen comes to each of carbon.
    corner = (atoms_in(fuel_shares(fuel)).get("C", 0.0) / 2 - air * AIR["O2"]) / oxygen_purity
    if first < corner < last:
        marks.add(corner)
    points: list[Point] = []
    for ratio in sorted(marks):
        points.append(at(ratio, points[-1] if points else None))
    narrow = 1e-3 * whole
    for _ in range(_PASSES):
        inner = range(1, len(points) - 1)
        bent = {
            side
            for i in inner
            # A corner in an outermost stretch shows at one of its ends only, and there half.
            if _bend(*points[i - 1 : i + 2]) > (NEAR / 2 if i in (inner[0], inner[-1]) else NEAR)
            for side in (i - 1, i)
            if points[side + 1][0] - points[side][0] > narrow
        }
        if not bent:
            break
        finer: list[Point] = []
        for i, point in enumerate(points):
            finer.append(point)
            if i in bent:
                beyond = points[i + 1]
                finer.append(at(0.5 * (point[0] + beyond[0]), point, beyond))
        points = finer
    before = [point for point in points if point[0] < own]
    after = [point for point in points if point[0] > own]
    return (*before, at(own, (before or after)[-1]), *after)


def _bend(left: Point, middle: Point, right: Point) -> Temperature:
    """How far the curve may leave the line on the wider side of a point, K."""
    before, after = middle[0] - left[0], right[0] - middle[0]
    rise, more = middle[1].temperature - left[1].temperature, right[1].temperature - middle[1].temperature
    return max(before, after) ** 2 * abs(more / after - rise / before) / (before + after)


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
    gas = burnt_gas(
        fuel=fuel,
        oxygen_ratio=ratio,
        air=0.0,
        oxygen_purity=oxygen_purity,
        gas_temperature=gas_temperature,
        propyne_share=propyne_share,
    )
    return ratio, gas.temperature
