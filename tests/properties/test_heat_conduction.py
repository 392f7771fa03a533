"""What heat in metal keeps, whatever the numbers."""

from math import inf, isfinite, pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.formulas.heat import pool, slab
from calc.formulas.heat.flame_patch import hottest_rise
from calc.formulas.heat.heated_spot import spot_heat_rise
from calc.formulas.heat.moving_source import depth_spread, moving_flame_rise, rise_along
from calc.formulas.heat.rosenthal import rise_in_thick_plate, rise_in_thin_plate
from calc.formulas.heat.weld_pool import weld_pool_speed, weld_pool_width

speeds = st.floats(2e-4, 0.02)
thicknesses = st.floats(0.0005, 0.02)
spreads = st.floats(0.001, 0.02)
FEW = settings(max_examples=60, deadline=None)
strengths = st.floats(0.15, 30.0)
"""Power over 2πkd·rise, above the pinprick of a flame too weak for its sheet."""
K, ALPHA = 35.0, 35.0 / (7850.0 * 650.0)


def power_of(strength: float, thickness: float) -> float:
    return strength * 2 * pi * K * thickness * pool.MELTING_RISE


@FEW
@given(strengths, speeds, thicknesses, st.floats(1.01, 3.0))
def test_more_speed_never_widens_the_pool(
    strength: float, speed: float, thickness: float, faster: float
) -> None:
    power = power_of(strength, thickness)
    assert pool.pool_width(power=power, speed=speed * faster, thickness=thickness) < pool.pool_width(
        power=power, speed=speed, thickness=thickness
    )


@FEW
@given(strengths, speeds, thicknesses, st.floats(1.01, 1.2))
def test_more_power_widens_the_pool_and_more_thickness_narrows_it(
    strength: float, speed: float, thickness: float, more: float
) -> None:
    power = power_of(strength, thickness)
    width = pool.pool_width(power=power, speed=speed, thickness=thickness)
    assert 0.0 < width < inf
    assert pool.pool_width(power=power * more, speed=speed, thickness=thickness) > width
    assert pool.pool_width(power=power, speed=speed, thickness=thickness * more) < width


@FEW
@given(strengths, speeds, thicknesses)
def test_pool_sums_invert_each_other(strength: float, speed: float, thickness: float) -> None:
    power = power_of(strength, thickness)
    width = pool.pool_width(power=power, speed=speed, thickness=thickness)
    assert pool.power_for_width(width=width, speed=speed, thickness=thickness) == pytest.approx(
        power, rel=1e-5
    )
    assert pool.speed_for_width(width=width, power=power, thickness=thickness) == pytest.approx(
        speed, rel=1e-5
    )
    flow = pool.flow_for_width(
        width=width, speed=speed, thickness=thickness, heat_value=53e6, efficiency=0.2
    )
    assert flow * 53e6 * 0.2 == pytest.approx(power, rel=1e-5)


@FEW
@given(st.floats(150.0, 3000.0), st.floats(5e-4, 0.01), thicknesses, st.floats(0.0, 100.0))
def test_an_isotherm_has_its_temperature_all_along(
    power: float, speed: float, thickness: float, loss: float
) -> None:
    rise = 700.0
    for ahead, aside in pool.thin_plate_isotherm(
        power=power, speed=speed, thickness=thickness, rise=rise, both_faces=loss, points=12
    ):
        distance = (ahead**2 + aside**2) ** 0.5
        found = rise_in_thin_plate(
            power=power,
            speed=speed,
            ahead=ahead,
            distance=distance,
            thickness=thickness,
            conductivity=K,
            diffusivity=ALPHA,
            both_faces=loss,
        )
        assert found == pytest.approx(rise, rel=1e-4)
    for ahead, aside in pool.thick_plate_isotherm(power=power, speed=speed, rise=rise, points=12):
        distance = (ahead**2 + aside**2) ** 0.5
        found = rise_in_thick_plate(
            power=power, speed=speed, ahead=ahead, distance=distance, conductivity=K, diffusivity=ALPHA
        )
        assert found == pytest.approx(rise, rel=1e-4)


def test_an_isotherm_is_as_wide_as_the_pool() -> None:
    outline = pool.thin_plate_isotherm(
        power=300.0, speed=0.002, thickness=0.0015, rise=pool.MELTING_RISE, points=400
    )
    widest = 2 * max(aside for _, aside in outline)
    assert widest == pytest.approx(pool.pool_width(power=300.0, speed=0.002, thickness=0.0015), rel=1e-4)


@FEW
@given(
    speeds,
    st.floats(-0.05, 0.02),
    st.floats(0.0, 0.03),
    thicknesses,
    spreads,
    st.floats(0.0, 100.0),
    st.floats(0.0, 1.0),
)
def test_a_moving_flame_is_finite_and_its_back_is_never_the_hotter_face(
    speed: float, ahead: float, aside: float, thick: float, spread: float, loss: float, part: float
) -> None:
    def rise(depth: float) -> float:
        return moving_flame_rise(
            power=800.0,
            speed=speed,
            ahead=ahead,
            aside=aside,
            depth=depth,
            thickness=thick,
            spread=spread,
            conductivity=K,
            diffusivity=ALPHA,
            both_faces=loss,
        )

    face, inside, back = rise(0.0), rise(part * thick), rise(thick)
    assert isfinite(face)
    assert 0.0 <= back <= inside * (1 + 1e-6) + 1e-9
    assert inside <= face * (1 + 1e-6) + 1e-9


@FEW
@given(speeds, st.floats(0.0, 1.0), st.floats(0.0, 1.0), thicknesses, spreads)
def test_the_line_of_travel_is_as_hot_as_one_place_after_the_other(
    speed: float, part: float, deep: float, thick: float, spread: float
) -> None:
    farthest, depth = -0.05, deep * thick
    along = rise_along(
        power=800.0,
        speed=speed,
        farthest=farthest,
        depth=depth,
        thickness=thick,
        spread=spread,
        conductivity=K,
        diffusivity=ALPHA,
    )
    there = moving_flame_rise(
        power=800.0,
        speed=speed,
        ahead=part * farthest,
        aside=0.0,
        depth=depth,
        thickness=thick,
        spread=spread,
        conductivity=K,
        diffusivity=ALPHA,
    )
    assert along(part * farthest) == pytest.approx(there, rel=1e-4, abs=1e-6)


@FEW
@given(speeds, st.floats(0.0, 1.0), st.floats(-0.05, 0.02), thicknesses, spreads)
def test_no_place_on_the_line_is_hotter_than_the_hottest(
    speed: float, deep: float, ahead: float, thick: float, spread: float
) -> None:
    depth = deep * thick
    hottest = hottest_rise(
        power=800.0,
        speed=speed,
        depth=depth,
        thickness=thick,
        spread=spread,
        conductivity=K,
        diffusivity=ALPHA,
    )
    there = moving_flame_rise(
        power=800.0,
        speed=speed,
        ahead=ahead,
        aside=0.0,
        depth=depth,
        thickness=thick,
        spread=spread,
        conductivity=K,
        diffusivity=ALPHA,
    )
    assert there <= hottest * (1 + 1e-3) + 1e-6


@FEW
@given(st.floats(100.0, 20_000.0), speeds, st.floats(0.0005, 0.1))
def test_the_travel_for_a_pool_gives_that_pool(power: float, speed: float, thickness: float) -> None:
    plate = {"thickness": thickness, "rise": pool.MELTING_RISE, "conductivity": K, "diffusivity": ALPHA}
    width = weld_pool_width(power=power, speed=speed, **plate)
    assert weld_pool_speed(width=width, power=power, **plate) == pytest.approx(speed, rel=1e-6)


@FEW
@given(speeds, st.floats(0.001, 0.03), thicknesses)
def test_a_narrow_flame_is_rosenthals_source_far_off(speed: float, aside: float, thickness: float) -> None:
    aside += 6 * thickness  # where the plate is as hot at the back as on the face
    theirs = rise_in_thin_plate(
        power=500.0,
        speed=speed,
        ahead=0.0,
        distance=aside,
        thickness=thickness,
        conductivity=K,
        diffusivity=ALPHA,
    )
    ours = moving_flame_rise(
        power=500.0,
        speed=speed,
        ahead=0.0,
        aside=aside,
        depth=0.0,
        thickness=thickness,
        spread=0.0,
        conductivity=K,
        diffusivity=ALPHA,
    )
    assert ours == pytest.approx(theirs, rel=1e-4, abs=1e-6)


@FEW
@given(st.floats(0.02, 60.0), st.floats(0.001, 0.02))
def test_the_heat_of_a_flash_stays_in_the_plate(time: float, thickness: float) -> None:
    steps = 400
    inside = sum(depth_spread((i + 0.5) * thickness / steps, time, thickness, ALPHA) for i in range(steps))
    assert inside * thickness / steps == pytest.approx(1.0, rel=2e-3)


@FEW
@given(st.floats(5.0, 100.0), st.floats(0.0, 0.05), thicknesses, st.floats(0.0, 60.0))
def test_a_spot_warms_while_heated_and_cools_after(
    heating: float, distance: float, thickness: float, loss: float
) -> None:
    def rise(time: float) -> float:
        return spot_heat_rise(
            power=900.0,
            heating_time=heating,
            time=time,
            distance=distance,
            depth=0.0,
            thickness=thickness,
            spread=0.008,
            conductivity=K,
            diffusivity=ALPHA,
            both_faces=loss,
        )

    warming = [rise(heating * part) for part in (0.25, 0.5, 0.75, 1.0)]
    assert warming == sorted(warming)
    middle = [
        spot_heat_rise(
            power=900.0,
            heating_time=heating,
            time=heating * part,
            distance=0.0,
            depth=0.0,
            thickness=thickness,
            spread=0.008,
            conductivity=K,
            diffusivity=ALPHA,
            both_faces=loss,
        )
        for part in (1.0, 1.001, 1.5, 4.0)
    ]
    assert middle == sorted(middle, reverse=True)


def test_a_spot_held_for_long_becomes_a_flame_held_still() -> None:
    plate = {
        "depth": 0.001, "thickness": 0.004, "spread": 0.006, "conductivity": K, "diffusivity": ALPHA, "both_faces": 40.0,
    }  # fmt: skip
    still = moving_flame_rise(power=700.0, speed=0.0, ahead=0.01, aside=0.0, **plate)
    assert spot_heat_rise(power=700.0, heating_time=1e6, time=1e6, distance=0.01, **plate) == pytest.approx(
        still, rel=1e-5
    )


@FEW
@given(st.floats(1e4, 1e6), st.floats(0.001, 0.05), st.floats(0.0, 1.0), st.floats(0.02, 20.0))
def test_a_slab_holds_the_heat_it_was_given(
    flux: float, thickness: float, part: float, settled: float
) -> None:
    steps = 200
    time = settled * thickness**2 / ALPHA
    mean = (
        sum(
            slab.slab_rise(
                flux=flux,
                depth=(i + 0.5) * thickness / steps,
                time=time,
                thickness=thickness,
                conductivity=K,
                diffusivity=ALPHA,
            )
            for i in range(steps)
        )
        / steps
    )
    assert mean * thickness * K / ALPHA == pytest.approx(flux * time, rel=2e-3)
    face = slab.slab_rise(
        flux=flux, depth=0.0, time=time, thickness=thickness, conductivity=K, diffusivity=ALPHA
    )
    inside = slab.slab_rise(
        flux=flux, depth=part * thickness, time=time, thickness=thickness, conductivity=K, diffusivity=ALPHA
    )
    assert 0.0 <= inside <= face * (1 + 1e-9)
    assert slab.deep_body_rise(
        flux=flux, depth=0.0, time=time, conductivity=K, diffusivity=ALPHA
    ) <= face * (1 + 1e-9)


@FEW
@given(st.floats(1e4, 1e6), st.floats(0.001, 0.05), st.floats(5.0, 900.0), st.floats(0.0, 1.0))
def test_the_time_of_the_far_side_is_when_it_gets_there(
    flux: float, thickness: float, rise: float, part: float
) -> None:
    depth = part * thickness
    time = slab.time_until_slab_rises(
        flux=flux, rise=rise, depth=depth, thickness=thickness, conductivity=K, diffusivity=ALPHA
    )
    assert slab.slab_rise(
        flux=flux, depth=depth, time=time, thickness=thickness, conductivity=K, diffusivity=ALPHA
    ) == pytest.approx(rise, rel=1e-6)
    assert (
        slab.time_until_slab_rises(
            flux=2 * flux, rise=rise, depth=depth, thickness=thickness, conductivity=K, diffusivity=ALPHA
        )
        < time
    )


@FEW
@given(st.floats(1e-6, 2000.0), st.floats(0.0, 0.2), st.floats(0.0, 600.0))
def test_loss_to_the_air_never_warms(loss: float, depth: float, time: float) -> None:
    lossless = slab.deep_body_rise(flux=1e5, depth=depth, time=time, conductivity=K, diffusivity=ALPHA)
    losing = slab.deep_body_rise(
        flux=1e5, depth=depth, time=time, conductivity=K, diffusivity=ALPHA, surface_loss=loss
    )
    more = slab.deep_body_rise(
        flux=1e5, depth=depth, time=time, conductivity=K, diffusivity=ALPHA, surface_loss=loss * 1.5
    )
    near = 1e-6 * lossless + 1e-9
    assert 0.0 <= more <= losing + near
    assert losing <= lossless + near


@FEW
@given(st.floats(0.001, 1.0), st.floats(1.0, 1e5), st.floats(0.0, 20.0), st.floats(0.01, 0.99))
def test_a_bar_warms_with_time_and_fades_along(
    distance: float, time: float, fading: float, share: float
) -> None:
    here = slab.bar_share(distance, time, 1.2e-5, fading)
    assert 0.0 <= here <= 1.0
    assert slab.bar_share(distance * 1.1, time, 1.2e-5, fading) <= here
    assert slab.bar_share(distance, time * 1.1, 1.2e-5, fading) >= here - 1e-15
    there = slab.time_until_bar_share(share, distance, 1.2e-5, fading)
    if there is None:
        assert slab.bar_share(distance, 1e12, 1.2e-5, fading) <= share * (1 + 1e-6)
    else:
        assert slab.bar_share(distance, there, 1.2e-5, fading) == pytest.approx(share, rel=1e-6)
