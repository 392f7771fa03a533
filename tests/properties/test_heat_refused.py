"""What cannot be is refused by every sum of heat in metal, with a sentence."""

from math import inf, nan

import pytest

from calc.formulas.heat import carbon_equivalent, cooling, lumped, pool, shrinkage, slab
from calc.formulas.heat.crossing import crossing
from calc.formulas.heat.heated_spot import spot_heat_rise
from calc.formulas.heat.moving_source import moving_flame_rise
from calc.formulas.heat.steel_properties import steel_conductivity, steel_heat_capacity

K, ALPHA = 35.0, 35.0 / (7850.0 * 650.0)


REFUSED = {
    "a plate that never settles": lambda: moving_flame_rise(
        power=500.0,
        speed=0.0,
        ahead=0.01,
        aside=0.0,
        depth=0.0,
        thickness=0.003,
        spread=0.004,
        conductivity=K,
        diffusivity=ALPHA,
    ),
    "a point on its own place": lambda: moving_flame_rise(
        power=500.0,
        speed=0.001,
        ahead=0.0,
        aside=0.0,
        depth=0.0,
        thickness=0.003,
        spread=0.0,
        conductivity=K,
        diffusivity=ALPHA,
    ),
    "no thickness": lambda: moving_flame_rise(
        power=500.0,
        speed=0.001,
        ahead=0.0,
        aside=0.0,
        depth=0.0,
        thickness=0.0,
        spread=0.003,
        conductivity=K,
        diffusivity=ALPHA,
    ),
    "power that is no number": lambda: moving_flame_rise(
        power=inf,
        speed=0.001,
        ahead=0.0,
        aside=0.0,
        depth=0.0,
        thickness=0.003,
        spread=0.003,
        conductivity=K,
        diffusivity=ALPHA,
    ),
    "a spot without width": lambda: spot_heat_rise(
        power=500.0,
        heating_time=10.0,
        time=5.0,
        distance=0.01,
        depth=0.0,
        thickness=0.003,
        spread=0.0,
        conductivity=K,
        diffusivity=ALPHA,
    ),
    "a pool without width": lambda: pool.power_for_width(width=0.0, speed=0.002, thickness=0.0015),
    "a flame too weak": lambda: pool.pool_width(power=50.0, speed=0.002, thickness=0.05),
    "a pool at rest": lambda: pool.pool_width(power=300.0, speed=0.0, thickness=0.0015),
    "a pool of no number": lambda: pool.speed_for_width(width=nan, power=300.0, thickness=0.0015),
    "a flow without efficiency": lambda: pool.flow_for_width(
        width=0.004, speed=0.002, thickness=0.0015, heat_value=5e7, efficiency=0.0
    ),
    "a place outside the slab": lambda: slab.slab_rise(
        flux=1e5, depth=0.02, time=5.0, thickness=0.01, conductivity=K, diffusivity=ALPHA
    ),
    "time that runs back": lambda: slab.deep_body_rise(
        flux=1e5, depth=0.0, time=-1.0, conductivity=K, diffusivity=ALPHA
    ),
    "a flux of nothing": lambda: slab.time_until_slab_rises(
        flux=0.0, rise=50.0, depth=0.0, thickness=0.01, conductivity=K, diffusivity=ALPHA
    ),
    "a share above one": lambda: slab.time_until_bar_share(1.2, 0.1, 1.2e-5, 1.0),
    "a bar behind its end": lambda: slab.bar_share(-0.1, 1.0, 1.2e-5, 1.0),
    "no mass": lambda: lumped.warm_up_time(
        power=100.0, mass=0.0, area=0.1, heat_transfer=10.0, emissivity=0.8, start=300.0, target=400.0
    ),
    "an emissivity above one": lambda: lumped.warm_up_time(
        power=100.0, mass=1.0, area=0.1, heat_transfer=10.0, emissivity=1.1, start=300.0, target=400.0
    ),
    "steel too hot": lambda: steel_heat_capacity(1500.0),
    "steel too cold": lambda: steel_conductivity(200.0),
    "a steel outside the rule": lambda: carbon_equivalent.preheat_temperature(0.0055, 0.02, 5e-5, 1e6),
    "a sheet outside the rule": lambda: carbon_equivalent.preheat_temperature(0.003, 0.005, 5e-5, 1e6),
    "a plate as hot as the cooling span": lambda: cooling.thick_plate_cooling_time(1e6, 773.15),
    "a plate without thickness": lambda: cooling.thin_plate_cooling_time(1e6, 293.15, 0.0),
    "a flange without a leg": lambda: shrinkage.flange_lift(0.1, 0.0, 0.01),
    "a curve that misses": lambda: crossing(lambda x: x, 5.0, 0.0, 1.0),
}


@pytest.mark.parametrize("name", REFUSED)
def test_the_impossible_is_refused_with_a_sentence(name: str) -> None:
    with pytest.raises(ValueError, match=r"^[A-Z].* .*\.$"):
        REFUSED[name]()
