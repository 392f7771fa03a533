"""The flame's calculator against Cantera run live: units, fields and names in between."""

import random
from itertools import pairwise

import pytest

from calc import answer
from calc.calculators.flame import SPECIES
from calc.formulas.heat import flame
from calc.formulas.heat.fuels import atoms_in, fuel_shares, oxygen_to_burn
from calc.trade.fields import FUELS
from calc.trade.flame.curve import flame_points
from tests.reference.test_heat_flame import NEAR, NEAR_SHARE, cantera_flame

CHECKED = list(FUELS)


def whole(fuel: str) -> float:
    atoms = atoms_in(fuel_shares(fuel))
    return oxygen_to_burn(atoms.get("C", 0.0), atoms["H"])


def drawn_by_lot(seed: int) -> dict[str, float]:
    dice = random.Random(seed)
    return {
        "part": dice.choice([dice.uniform(0.23, 0.6), dice.uniform(0.4, 1.2), dice.uniform(1.0, 3.0)]),
        "air": dice.choice([0.0, dice.uniform(0.0, 3.0), dice.uniform(0.0, 25.0)]),
        "purity": dice.choice([1.0, dice.uniform(0.9, 1.0)]),
        "celsius": dice.uniform(-40.0, 220.0),
        "propyne": dice.uniform(0.0, 1.0),
    }


@pytest.mark.parametrize("fuel", CHECKED)
@pytest.mark.parametrize("seed", [4, 15, 92])
def test_a_flame_drawn_by_lot_matches_cantera(fuel: str, seed: int) -> None:
    lot = drawn_by_lot(seed + 7 * len(fuel))
    ratio = lot["part"] * whole(fuel)
    got = answer(
        "flame",
        fuel=fuel,
        oxygen_ratio=f"{ratio:.12f}",
        air=f"{lot['air']:.12f}",
        oxygen_purity=f"{100 * lot['purity']:.12f} %",
        gas_temperature=f"{lot['celsius']:.12f} degC",
        propyne_share=f"{100 * lot['propyne']:.12f} %",
        units={"temperature": "K"},
    )["results"]
    shares = {name: got[name]["value"] / 100 for name in (*SPECIES, "soot", "share_other")}
    mixture = flame.unburnt_mixture(fuel, ratio, lot["air"], lot["purity"], lot["propyne"])
    theirs, held = cantera_flame(mixture, 273.15 + lot["celsius"], soot=shares["soot"] > 0)
    assert got["temperature"]["value"] == pytest.approx(theirs, abs=NEAR)
    for name, species in SPECIES.items():
        assert shares[name] == pytest.approx(held.get(species, 0.0), abs=NEAR_SHARE), name
    assert shares["soot"] == pytest.approx(held.get("C(gr)", 0.0), abs=NEAR_SHARE)
    assert sum(shares.values()) == pytest.approx(1.0, abs=1e-9)


@pytest.mark.parametrize("fuel", CHECKED)
def test_no_point_of_the_drawn_curve_is_five_kelvin_off(fuel: str) -> None:
    dice = random.Random(len(fuel))
    for _ in range(6):
        own = whole(fuel) * dice.uniform(0.2, 3.0)
        air = dice.choice([0.0, dice.uniform(0.0, 3.0), dice.uniform(0.0, 25.0)])
        purity = dice.choice([1.0, dice.uniform(0.9, 1.0)])
        lowest = flame.least_oxygen_ratio(fuel, air, purity)
        points = flame_points(
            fuel=fuel,
            own=own,
            lowest=lowest,
            air=air,
            oxygen_purity=purity,
            gas_temperature=298.15,
            propyne_share=0.5,
        )
        assert any(ratio == own for ratio, _ in points)
        for (left, cold), (right, hot) in pairwise(points):
            for part in (0.25, 0.5, 0.75):
                line = cold.temperature + part * (hot.temperature - cold.temperature)
                ratio = left + part * (right - left)
                there = flame.burnt_gas(
                    fuel=fuel, oxygen_ratio=ratio, air=air, oxygen_purity=purity, start=cold.end
                ).temperature
                assert line == pytest.approx(there, abs=5.0), (fuel, own, air, purity, ratio)


@pytest.mark.parametrize(("fuel", "corner"), [("acetylene", 1.0), ("propane", 1.5)])
def test_the_curve_has_its_corner_where_all_carbon_is_carbon_monoxide(fuel: str, corner: float) -> None:
    """An atom of oxygen for each of carbon: C2H2 + O2, C3H8 + 1.5 O2; by hand."""
    points = flame_points(
        fuel=fuel,
        own=1.2 * corner,
        lowest=0.2,
        air=0.0,
        oxygen_purity=1.0,
        gas_temperature=298.15,
        propyne_share=0.5,
    )
    assert any(ratio == pytest.approx(corner, abs=1e-12) for ratio, _ in points)


@pytest.mark.parametrize(("purity", "air", "corner"), [(1.0, 0.0, 1.0), (0.9, 0.0, 1 / 0.9), (0.95, 1.0, (1 - 0.20946) / 0.95)])
def test_the_curve_has_a_point_where_each_carbon_has_its_oxygen(purity: float, air: float, corner: float) -> None:
    """Two of carbon in acetylene take one O2; what the air brings needs no hose, and a poor gas takes more of it."""
    points = flame_points(
        fuel="acetylene", own=1.3, lowest=flame.least_oxygen_ratio("acetylene", air, purity), air=air, oxygen_purity=purity,
        gas_temperature=298.15, propyne_share=0.5,
    )  # fmt: skip
    assert min(abs(ratio - corner) for ratio, _ in points) < 1e-6
