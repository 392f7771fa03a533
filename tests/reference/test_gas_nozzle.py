"""Flow through a tip against a Cantera isentrope with heat capacities that change."""

import csv
from functools import cache
from pathlib import Path
from typing import Any

import cantera as ct
import pytest
from CoolProp.CoolProp import PropsSI
from scipy.optimize import minimize_scalar

from calc.formulas.gas.nozzle import orifice_area, orifice_flow, orifice_pressure
from calc.formulas.gas.properties import gas_heat_capacity, gas_molar_mass, gas_viscosity
from calc.values.quantities import GAS_CONSTANT

LIMIT = 0.007
NAMES = {
    "oxygen": "O2",
    "acetylene": "C2H2,acetylene",
    "propane": "C3H8",
    "propylene": "C3H6,propylene",
    "methane": "CH4",
    "hydrogen": "H2",
}
PROPYNE_PROPADIENE = {"C3H4,propyne": 0.5, "C3H4,allene": 0.5}


@cache
def cantera_gas() -> Any:
    wanted = {*NAMES.values(), *PROPYNE_PROPADIENE}
    species = [s for s in ct.Species.list_from_file("nasa_gas.yaml") if s.name in wanted]
    return ct.Solution(thermo="ideal-gas", species=species)


def composition(gases: dict[str, float]) -> dict[str, float]:
    found: dict[str, float] = {}
    for gas, n in gases.items():
        parts = {NAMES[gas]: 1.0} if gas in NAMES else PROPYNE_PROPADIENE
        for name, share in parts.items():
            found[name] = found.get(name, 0.0) + n * share
    return found


def isentrope(gases: dict[str, float], kelvin: float, pressure: float) -> tuple[float, float]:
    """Mass flux and speed of the frozen isentrope, choked where the flux is largest."""
    gas = cantera_gas()
    gas.TPX = kelvin, pressure, composition(gases)
    entropy, enthalpy = gas.entropy_mass, gas.enthalpy_mass

    def at(throat: float) -> tuple[float, float]:
        gas.SP = entropy, throat
        speed = max(0.0, 2 * (enthalpy - gas.enthalpy_mass)) ** 0.5
        return gas.density * speed, speed

    best = minimize_scalar(lambda p: -at(p)[0], bounds=(0.3 * pressure, 0.9 * pressure), method="bounded")
    return at(max(best.x, 101325.0))


@pytest.mark.parametrize("psi", [0.5, 2, 4, 6, 9, 12, 20, 45, 90])
@pytest.mark.parametrize(
    "gases",
    [
        {"acetylene": 1, "oxygen": 1.1},
        {"acetylene": 1, "oxygen": 0.85},
        {"acetylene": 1, "oxygen": 1.7},
        {"propane": 1, "oxygen": 4},
        {"propylene": 1, "oxygen": 3.5},
        {"methane": 1, "oxygen": 1.75},
        {"hydrogen": 1, "oxygen": 0.25},
        {"methylacetylene-propadiene": 1, "oxygen": 2.5},
        {"oxygen": 1},
        {"hydrogen": 1},
    ],
    ids=str,
)
def test_a_tip_passes_what_the_isentrope_does(gases: dict[str, float], psi: float) -> None:
    pressure = psi * 6894.757 + 101325
    for celsius, limit in ((-30, 2 * LIMIT), (0, LIMIT), (20, LIMIT), (45, LIMIT), (65, 2 * LIMIT)):
        kelvin = celsius + 273.15
        flux, speed = isentrope(gases, kelvin, pressure)
        ours = orifice_flow(gases=gases, area=1.0, pressure=pressure, temperature=kelvin, discharge=1.0)
        assert ours.mass_flow == pytest.approx(flux, rel=limit)
        assert ours.speed == pytest.approx(speed, rel=limit)


def _points() -> list[dict[str, str]]:
    path = Path(__file__).parent / "points" / "C1_nozzle.csv"
    with path.open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


@pytest.mark.parametrize("row", _points(), ids=lambda row: f"{row['composition']} {row['P0_psig']} psig")
def test_reference_points_are_met(row: dict[str, str]) -> None:
    theirs = {cantera: ours for ours, cantera in NAMES.items()}
    gases = {}
    for part in row["composition"].split(";"):
        name, _, share = part.rpartition("=")
        gases[theirs[name]] = float(share)
    ours = orifice_flow(
        gases=gases,
        area=orifice_area(0.001),
        pressure=float(row["P0_psig"]) * 6894.757 + 101325,
        temperature=float(row["T0_K"]),
        discharge=1.0,
    )
    assert ours.mass_flow / orifice_area(0.001) == pytest.approx(float(row["G_kg_m2s"]), rel=LIMIT)
    assert ours.speed == pytest.approx(float(row["throat_velocity_m_s"]), rel=LIMIT)
    assert 3600 * ours.free_gas == pytest.approx(float(row["ideal_flow_1mm_m3h_15C"]), rel=LIMIT)
    assert ours.choked is (row["choked"] == "True")
    assert ours.gamma == pytest.approx(float(row["gamma0"]), rel=1e-4)


@pytest.mark.parametrize("gas", [*NAMES, "methylacetylene-propadiene"])
def test_the_table_of_gases_is_canteras(gas: str) -> None:
    theirs = cantera_gas()
    theirs.TPX = 293.15, 101325, composition({gas: 1})
    assert gas_heat_capacity(gas) == pytest.approx(theirs.cp_mole / 1000, rel=1e-4)
    assert gas_molar_mass(gas) == pytest.approx(theirs.mean_molecular_weight / 1000, rel=1e-4)
    assert gas_heat_capacity(gas) > GAS_CONSTANT


@pytest.mark.parametrize("gas", ["oxygen", "propane", "propylene", "methane", "hydrogen"])
def test_viscosities_are_coolprops(gas: str) -> None:
    fluid = {"propane": "n-Propane"}.get(gas, gas.capitalize())
    theirs = PropsSI("V", "T", 293.15, "P", 101325, fluid)
    assert gas_viscosity(gas) == pytest.approx(theirs, rel=0.005)


@pytest.mark.parametrize("psi", [1, 5, 14, 60])
def test_the_pressure_for_a_flow_is_the_isentropes(psi: float) -> None:
    gases = {"acetylene": 1.0, "oxygen": 1.1}
    flux, _ = isentrope(gases, 293.15, psi * 6894.757 + 101325)
    moles = flux * 1e-6 / (cantera_gas().mean_molecular_weight / 1000)
    flow = moles * GAS_CONSTANT * 288.15 / 101325
    found = orifice_pressure(gases=gases, area=1e-6, flow=flow, discharge=1.0)
    assert (found - 101325) / 6894.757 == pytest.approx(psi, rel=2.5 * LIMIT)
