"""Gas through the calculators, against open libraries and reference points."""

import csv
from functools import cache
from itertools import product
from math import pi
from pathlib import Path

import pytest
from CoolProp.CoolProp import PropsSI
from fluids.compressible import isothermal_gas
from fluids.friction import friction_factor

from calc import InputError, answer
from calc.declare.catalogue import calculators


def _leaks() -> list[dict[str, float]]:
    path = Path(__file__).parent / "points" / "C3_leakdown.csv"
    with path.open(encoding="utf-8") as file:
        return [{k: float(v) for k, v in row.items()} for row in csv.DictReader(file)]


@pytest.mark.parametrize("row", _leaks(), ids=lambda r: f"{r['P1_psig']}-{r['P2_psig']} psig")
def test_a_leak_is_that_of_the_reference_points(row: dict[str, float]) -> None:
    """The shut volume is given as a short hose of any bore that holds it."""
    length = row["V_m3"] / (pi / 4 * 0.01**2)
    got = answer(
        "leak-test", gas="oxygen", bore="10 mm", length=f"{length!r} m", extra_volume="0 L",
        first_gauge=f"{row['P1_psig']!r} psi", last_gauge=f"{row['P2_psig']!r} psi",
        time=f"{row['dt_s']!r} s", first_temperature=f"{row['T1_K'] - 273.15!r} degC",
        last_temperature=f"{row['T2_K'] - 273.15!r} degC", units={"leak_rate": "mL/min"},
    )["results"]["leak_rate"]  # fmt: skip
    assert got["value"] == pytest.approx(max(row["leak_std_mL_min_15C"], 0.0), rel=1e-4, abs=1e-9)
    assert got["low"] <= got["value"] <= got["high"]


LIQUID = {"gross_weight": "30 kg", "tare_weight": "20 kg", "full_weight": "11 kg", "rules": "iso"}


@pytest.mark.parametrize(("fuel", "fluid"), [("propane", "n-Propane"), ("propylene", "Propylene")])
def test_the_gauge_of_a_liquefied_gas_is_coolprops(fuel: str, fluid: str) -> None:
    for celsius in range(-40, 51, 3):
        got = answer(
            "liquid-fuel-left", fuel=fuel, temperature=f"{celsius} degC", least_gauge="1 bar", **LIQUID,
            units={"vapour_gauge": "bar"},
        )["results"]["vapour_gauge"]["value"]  # fmt: skip
        theirs = PropsSI("P", "T", celsius + 273.15, "Q", 0, fluid)
        assert got * 1e5 + 101325 == pytest.approx(theirs, rel=2e-4)


@pytest.mark.parametrize(("fuel", "fluid"), [("propane", "n-Propane"), ("propylene", "Propylene")])
def test_the_steady_draw_is_a_heat_balance_on_coolprops_liquid(fuel: str, fluid: str) -> None:
    """Still air gives 10 W/m²K to bottom and wetted side, within a factor: from memory."""
    for celsius, bar in product((0.0, 10.0, 30.0), (1.0, 2.0, 4.0)):
        pressure = bar * 1e5 + 101325
        boiling = PropsSI("T", "P", pressure, "Q", 0, fluid)
        heat = PropsSI("H", "P", pressure, "Q", 1, fluid) - PropsSI("H", "P", pressure, "Q", 0, fluid)
        depth = 10.0 / PropsSI("D", "T", 288.15, "Q", 0, fluid) / (pi * 0.15**2)
        kilograms = 10.0 * (pi * 0.3 * depth + pi * 0.15**2) * (celsius + 273.15 - boiling) / heat
        theirs = max(kilograms, 0.0) / PropsSI("M", fluid) * 8.31446261815324 * 288.15 / 101325
        got = answer(
            "liquid-fuel-left", fuel=fuel, temperature=f"{celsius} degC", least_gauge=f"{bar} bar",
            diameter="300 mm", **LIQUID, units={"draw_kept": "m^3/h"},
        )["results"]["draw_kept"]  # fmt: skip
        assert got["value"] / 3600 == pytest.approx(theirs, rel=0.01)


def _moles(pressure: float, kelvin: float) -> float:
    return float(PropsSI("Dmolar", "P", pressure, "T", kelvin, "Oxygen"))


def test_a_printed_running_time_comes_out_longer_by_the_real_gas() -> None:
    """[textbook] 14 L at 13,800 kPa gauge at 2.1 L/min lasts 908 min as ideal gas; what stays at 300 kPa would last on."""
    got = answer(
        "hours-left", orifice="#68", gauge="5 psi", fuel_contents="3 m^3", fuel_flow="2.1 L/min", oxygen_ratio="1",
        water_volume="14 L", oxygen_cylinder_gauge="13800 kPa", oxygen_stop_gauge="300 kPa",
        cylinder_temperature="15 degC", units={"oxygen_hours": "min"},
    )["results"]["oxygen_hours"]["value"]  # fmt: skip
    minutes = 0.014 * 8.31446261815324 * 288.15 / 101325 / 0.0021
    assert got == pytest.approx((_moles(13_800e3 + 101325, 288.15) - _moles(300e3 + 101325, 288.15)) * minutes, rel=5e-4)
    assert 908 < got + (_moles(300e3 + 101325, 288.15) - _moles(101325, 288.15)) * minutes < 1.08 * 908


def test_oxygen_used_is_reckoned_from_absolute_pressures() -> None:
    """[textbook] 30 L, 15 to 11 atm gauge, 27 to 17 °C: prints 0.131 kg, gauge taken as absolute; 0.140."""
    left = [
        answer(
            "oxygen-left", water_volume="30 L", gauge=f"{atm * 1.01325} bar", temperature=f"{celsius} degC",
            units={"gas_left": "m^3"},
        )["results"]["gas_left"]["value"]
        for atm, celsius in ((15, 27), (11, 17))
    ]  # fmt: skip
    kilograms = (left[0] - left[1]) * 101325 / (8.31446261815324 * 288.15) * 0.031998
    assert kilograms == pytest.approx(0.140, rel=0.015)  # the real gas is 1.2 % more
    assert abs(kilograms - 0.131) > 0.008


def test_half_used_and_cooled_reads_a_little_under_half() -> None:
    """[textbook] 15 MPa at 25 °C, half used, now 15 °C: prints 7.2 MPa; 7.25 as ideal gas. Here the share
    that the real gas has at 7.25 MPa is within two points of half.
    """
    got = answer(
        "oxygen-left", water_volume="40 L", gauge=f"{(7.25e6 - 101325) / 1e5!r} bar", temperature="15 degC",
        full_gauge=f"{(15e6 - 101325) / 1e5!r} bar", full_temperature="25 degC",
    )["results"]["share_of_full"]["value"]  # fmt: skip
    theirs = 100 * _moles(7.25e6, 288.15) / _moles(15e6, 298.15)
    assert got == pytest.approx(theirs, rel=5e-4)
    assert got == pytest.approx(50, abs=1)


def test_the_oxygen_gauge_after_a_lesson_is_coolprops() -> None:
    got = answer(
        "supply-plan", welding_benches="6", welding_hours="4 h", brazing_benches="2", brazing_hours="1 h",
        cutting_benches="1", cutting_hours="0.5 h", sessions="1", rules="iso", units={"oxygen_left_lesson": "m^3"},
    )  # fmt: skip
    free = got["results"]["oxygen_left_lesson"]["value"]
    density = (
        free * 101325 / (8.31446261815324 * 288.15) / (got["results"]["oxygen_in_use"]["value"] * 0.05)
    )
    theirs = PropsSI("P", "Dmolar", density, "T", 288.15, "Oxygen")
    *_, last = got["tables"][1]["rows"]
    assert float(last[4]) == pytest.approx((theirs - 101325) / 1e5, abs=0.6)
    assert float(last[3]) == pytest.approx(free, rel=3e-3)


FLUID = {
    "oxygen": "Oxygen", "propane": "n-Propane", "propylene": "Propylene", "methane": "Methane", "hydrogen": "Hydrogen",
}  # fmt: skip
VISCOSITY = {
    "oxygen": 20.3e-6, "acetylene": 10.2e-6, "propane": 8.0e-6, "propylene": 8.4e-6, "methane": 11.0e-6,
    "hydrogen": 8.8e-6,
}  # fmt: skip
MASS = {
    "oxygen": 31.998e-3, "acetylene": 26.037e-3, "propane": 44.097e-3, "propylene": 42.081e-3,
    "methane": 16.043e-3, "hydrogen": 2.016e-3,
}  # fmt: skip
"""Pa·s at 20 °C and kg/mol, as the reference facts have them."""


@cache
def _hose_drop() -> object:
    answer("sheet-thickness", gauge="16 ga")  # declares the calculators
    return calculators()["hose-drop"].function


def _theirs(gas: str, flow: float, inlet: float, bore: float, length: float) -> float:
    m = flow * 101325 / (8.31446261815324 * 288.15) * MASS[gas]
    f = friction_factor(Re=4 * m / (pi * bore * VISCOSITY[gas]), eD=1.5e-6 / bore)
    rho = inlet * MASS[gas] / (8.31446261815324 * 293.15)
    if gas in FLUID:  # the density that goes with the inlet's pressure, at the compressibility of the mean one
        ideal = inlet - float(isothermal_gas(rho=rho, fd=f, P1=inlet, L=length, D=bore, m=m))
        rho /= PropsSI("Z", "P", inlet - ideal / 2, "T", 293.15, FLUID[gas])
    return inlet - float(isothermal_gas(rho=rho, fd=f, P1=inlet, L=length, D=bore, m=m))


def test_every_hose_drops_and_refuses_as_fluids_does() -> None:
    met = refused = 0
    hose_drop = _hose_drop()
    for gas, bar, bore, length, litres in product(
        VISCOSITY, (0.15, 0.35, 0.7, 1.0, 2.5, 4.0), (0.0048, 0.0063, 0.0095), (7.0, 20.0, 50.0),
        (70.0, 300.0, 900.0, 3000.0, 12000.0),
    ):  # fmt: skip
        gauge, flow = bar * 1e5, litres / 3.6e6
        if gas == "acetylene" and bar > 1.5:
            with pytest.raises(InputError, match="acetylene is never used above"):
                hose_drop(gas=gas, gauge=gauge, bore=bore, length=length, flow=flow, temperature=293.15, rules="iso")  # type: ignore[operator]
            continue
        try:
            theirs = _theirs(gas, flow, gauge + 101325, bore, length)
        except ZeroDivisionError:  # `fluids` loses its critical pressure on a long slow hose
            continue
        except ValueError:
            theirs = float("inf")
        if theirs > gauge:
            with pytest.raises(InputError, match=r"^Flow: "):
                hose_drop(gas=gas, gauge=gauge, bore=bore, length=length, flow=flow, temperature=293.15, rules="iso")  # type: ignore[operator]
            refused += 1
            continue
        ours = hose_drop(gas=gas, gauge=gauge, bore=bore, length=length, flow=flow, temperature=293.15, rules="iso").results.drop  # type: ignore[operator]
        if theirs > 138:  # 0.02 psi
            # Acetylene is not in CoolProp: held to the ideal gas, less the 2 % that its second virial coefficient
            # of -191 cm3/mol (from memory) takes at 2.5 bar.
            within = {"acetylene": 0.02, "propane": 0.01, "propylene": 0.01}.get(gas, 4e-3)
            assert ours.value == pytest.approx(theirs, rel=within), (gas, bar, bore, length, litres)
            met += 1
    assert met >= 300
    assert refused >= 100


def _nozzle() -> list[dict[str, str]]:
    path = Path(__file__).parent / "points" / "C1_nozzle.csv"
    with path.open(encoding="utf-8") as file:
        return [
            row
            for row in csv.DictReader(file)
            if row["mixture"] == "acetylene" and float(row["P0_psig"]) <= 15
        ]


@pytest.mark.parametrize("row", _nozzle(), ids=lambda row: f"{row['P0_psig']} psig")
def test_a_tip_passes_what_the_reference_points_say(row: dict[str, str]) -> None:
    """A 1 mm hole and acetylene with 1.1 of oxygen; three quarters of the lossless flow, from memory."""
    got = answer(
        "tip-flow", orifice="1 mm", gauge=f"{row['P0_psig']} psi", oxygen_ratio="1.1", units={"exit_speed": "m/s"},
        temperature=f"{float(row['T0_K']) - 273.15!r} degC",
    )["results"]  # fmt: skip
    both = got["fuel_flow"]["value"] + got["oxygen_flow"]["value"]
    assert both == pytest.approx(0.75 * float(row["ideal_flow_1mm_cfh_70F"]), rel=7e-3)
    assert got["exit_speed"]["value"] == pytest.approx(float(row["throat_velocity_m_s"]), rel=7e-3)
