"""What every flame keeps, whatever goes into it."""

import os
import random
from math import isfinite

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.formulas.heat import effect_on_iron as iron
from calc.formulas.heat import flame
from calc.formulas.heat.fuels import (
    FUELS,
    atoms_in,
    fuel_shares,
    mixture_enthalpy,
    oxygen_to_burn,
)
from calc.formulas.heat.heat_of_reaction import heats

STATES = int(os.environ.get("BENCHBOOK_STATES", "2000"))
"""Random states tried; 20000 takes about a quarter of a minute."""


def whole(fuel: str) -> float:
    atoms = atoms_in(fuel_shares(fuel))
    return oxygen_to_burn(atoms.get("C", 0.0), atoms["H"])


def random_state(dice: random.Random) -> dict[str, float | str]:
    fuel = dice.choice(FUELS)
    return {
        "fuel": fuel,
        "oxygen_ratio": whole(fuel) * dice.uniform(0.2, 3.0),
        "air": dice.choice([0.0, 0.0, dice.uniform(0.0, 1.0), dice.uniform(0.0, 25.0)]),
        "oxygen_purity": dice.choice([1.0, dice.uniform(0.9, 1.0)]),
        "gas_temperature": dice.uniform(230.0, 500.0),
        "pressure": dice.uniform(0.8e5, 5e5),
        "propyne_share": dice.uniform(0.0, 1.0),
    }


def test_random_flames_all_settle_and_keep_their_elements_and_heat() -> None:
    dice = random.Random(2002)
    for _ in range(STATES):
        state = random_state(dice)
        gas = flame.burnt_gas(**state)
        mixture = flame.unburnt_mixture(
            state["fuel"],
            state["oxygen_ratio"],
            state["air"],
            state["oxygen_purity"],
            state["propyne_share"],
        )
        burnt = {name: share * gas.moles for name, share in gas.shares.items()}
        before, after = atoms_in(mixture), atoms_in(burnt)
        for element, amount in before.items():
            assert after[element] == pytest.approx(amount, rel=1e-9, abs=1e-6 * gas.moles), state
        heat_in = mixture_enthalpy(mixture, state["gas_temperature"])
        heat_out = mixture_enthalpy(burnt, gas.temperature)
        assert heat_out == pytest.approx(heat_in, abs=0.1 * gas.moles), state
        assert isfinite(gas.temperature), state
        assert 400.0 < gas.temperature < 4500.0, state
        assert sum(gas.shares.values()) == pytest.approx(1.0, rel=1e-12), state
        assert gas.soot >= 0.0, state
        assert gas.carbon_activity <= 1.0 + 1e-6, state


@pytest.mark.parametrize("air", [0.0, 3.0])
@pytest.mark.parametrize("fuel", FUELS)
def test_a_curve_is_the_same_as_its_points_taken_alone(fuel: str, air: float) -> None:
    ratios = [whole(fuel) * (0.25 + 0.035 * i) for i in range(20)]
    for ratio, there in zip(
        ratios, flame.flame_curve(fuel=fuel, oxygen_ratios=ratios, air=air), strict=True
    ):
        alone = flame.burnt_gas(fuel=fuel, oxygen_ratio=ratio, air=air)
        assert there.temperature == pytest.approx(alone.temperature, abs=1e-3)
        assert there.soot == pytest.approx(alone.soot, abs=1e-6)


def test_a_curve_runs_the_other_way_too() -> None:
    ratios = [2.5 - 0.05 * i for i in range(39)]
    there = flame.flame_curve(fuel="acetylene", oxygen_ratios=ratios)
    back = flame.flame_curve(fuel="acetylene", oxygen_ratios=ratios[::-1])[::-1]
    for one, other in zip(there, back, strict=True):
        assert one.temperature == pytest.approx(other.temperature, abs=1e-3)


ratio_parts = st.floats(0.3, 2.0)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(FUELS), ratio_parts, st.floats(0.0, 15.0), st.floats(0.1, 8.0))
def test_more_air_never_heats_a_flame_that_has_its_oxygen(
    fuel: str, part: float, air: float, more: float
) -> None:
    ratio = whole(fuel) * max(part, 1.0)
    cooler = flame.burnt_gas(fuel=fuel, oxygen_ratio=ratio, air=air + more).temperature
    assert cooler < flame.burnt_gas(fuel=fuel, oxygen_ratio=ratio, air=air).temperature


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(FUELS), ratio_parts, st.floats(240.0, 480.0), st.floats(1.0, 20.0))
def test_warmer_gas_burns_hotter(fuel: str, part: float, gas: float, warmer: float) -> None:
    ratio = whole(fuel) * part
    cold = flame.burnt_gas(fuel=fuel, oxygen_ratio=ratio, gas_temperature=gas)
    assert (
        flame.burnt_gas(fuel=fuel, oxygen_ratio=ratio, gas_temperature=gas + warmer).temperature
        > cold.temperature
    )


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(FUELS), st.floats(0.5, 2.0), st.floats(0.9, 0.99))
def test_dirty_oxygen_never_heats_a_flame(fuel: str, part: float, purity: float) -> None:
    # Above the hottest ratio less oxygen can be hotter, so both get the same oxygen.
    ratio = whole(fuel) * part
    clean = flame.burnt_gas(fuel=fuel, oxygen_ratio=ratio)
    dirty = flame.burnt_gas(fuel=fuel, oxygen_ratio=ratio / purity, oxygen_purity=purity)
    assert dirty.temperature < clean.temperature


def test_more_oxygen_takes_carbon_away_and_oxidises_more() -> None:
    effects = [
        iron.effect_on_iron(gas)
        for gas in flame.flame_curve(fuel="acetylene", oxygen_ratios=[0.85 + 0.02 * i for i in range(45)])
    ]
    activities = [e.carbon_activity for e in effects]
    pulls = [e.water_to_hydrogen for e in effects]
    assert activities == sorted(activities, reverse=True)
    assert pulls == sorted(pulls)
    order = [
        iron.GIVES_CARBON,
        iron.LITTLE_OF_EITHER,
        iron.OXIDISES_ALLOYING_ELEMENTS,
        iron.OXIDISES_IRON,
    ]
    places = [order.index(e.effect) for e in effects]
    assert places == sorted(places)
    assert set(places) == {0, 1, 2, 3}


@pytest.mark.parametrize("ratio", [1.04, 1.09, 1.14])
def test_the_trades_neutral_band_does_little_of_either(ratio: float) -> None:
    # Neutral 1.04 to 1.14: US Army OD0017, read.
    assert iron.effect_on_iron(flame.burnt_gas(fuel="acetylene", oxygen_ratio=ratio)).effect == (
        iron.LITTLE_OF_EITHER
    )


def test_only_a_very_rich_acetylene_flame_holds_soot() -> None:
    assert flame.burnt_gas(fuel="acetylene", oxygen_ratio=0.85).soot > 0
    assert flame.burnt_gas(fuel="acetylene", oxygen_ratio=0.95).soot == 0


def test_hydrogen_burns_without_carbon() -> None:
    gas = flame.burnt_gas(fuel="hydrogen", oxygen_ratio=0.5)
    assert gas.carbon_activity == 0.0
    assert "CO" not in gas.shares
    assert iron.effect_on_iron(gas).dioxide_to_monoxide == 0.0


@pytest.mark.parametrize("fuel", FUELS)
def test_cone_and_envelope_add_to_the_total(fuel: str) -> None:
    found = heats(fuel)
    assert found.cone + found.envelope_net == pytest.approx(found.total_net)
    assert found.cone + found.envelope_gross == pytest.approx(found.total_gross)
    assert found.total_gross > found.total_net


def test_a_mixture_of_the_two_lies_between_them() -> None:
    parts = [heats("propyne").total_net, heats("propadiene").total_net]
    mixed = heats("methylacetylene-propadiene", 0.25).total_net
    assert mixed == pytest.approx(0.25 * parts[0] + 0.75 * parts[1])


GOOD = {"fuel": "acetylene", "oxygen_ratio": 1.1}


@pytest.mark.parametrize(
    "bad",
    [
        {"fuel": "coal dust"},
        {"oxygen_ratio": float("nan")},
        {"oxygen_ratio": float("inf")},
        {"oxygen_ratio": -0.1},
        {"oxygen_ratio": 0.0},
        {"oxygen_ratio": 7.6},
        {"air": -1.0},
        {"air": 25.1},
        {"gas_temperature": 229.0},
        {"gas_temperature": 501.0},
        {"pressure": 0.79e5},
        {"pressure": 5.1e5},
        {"oxygen_purity": 0.89},
        {"oxygen_purity": 1.01},
        {"fuel": "methylacetylene-propadiene", "propyne_share": 1.2},
    ],
    ids=str,
)
def test_a_flame_that_was_not_tried_is_refused(bad: dict[str, float | str]) -> None:
    with pytest.raises(ValueError, match=r"\w+ .*\.$"):
        flame.burnt_gas(**{**GOOD, **bad})


def test_air_alone_burns_a_fuel() -> None:
    assert flame.burnt_gas(fuel="acetylene", oxygen_ratio=0.0, air=11.93).temperature > 2400.0
