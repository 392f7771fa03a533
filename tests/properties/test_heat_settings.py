"""Settings by thickness in steps of 0.1 mm: no jump that a source does not print, more metal never less gas.

Each metal, kind of work, fuel and torch is walked from its thinnest to its thickest.
"""

from collections.abc import Iterator
from dataclasses import fields
from functools import cache
from itertools import pairwise
from math import pi

import pytest

from calc import InputError, answer
from calc.calculators.braze_joint import braze_joint
from calc.calculators.cut_plate import cut_plate
from calc.calculators.solder_tube import solder_tube
from calc.calculators.warm_up import warm_up
from calc.data.tables import table
from calc.trade.braze import tubes
from calc.trade.braze.joint_heat import Joint, heated
from calc.trade.fields import FUELS
from calc.trade.tips.settings import CUT, setting
from calc.values.figures import Figure

STEP = 1e-4
MOST = 0.15
"""Largest jump in 0.1 mm, a share."""
MELTS = ("melting",)
"""A range of melting ends where all is melted, which is the figure itself: no band of doubt."""
PIERCED = 0.0508
"""No time to pierce thicker plate is kept: a pierced start is refused there."""
FULL_HEAT = ("brazing", "soldering", "braze-welding")
WALK = [
    *((process, fuel) for process in FULL_HEAT for fuel in FUELS if process != "braze-welding" or fuel == "acetylene"),
    *(("cutting", fuel) for fuel in ("acetylene", "propane", "methane")),
]  # fmt: skip
ENDS = {"cutting": (0.003, 0.3047)}


def thicknesses(process: str) -> Iterator[float]:
    """From the thinnest that is answered: 0.1 mm apart up to 30 mm, then 1 mm apart and again 0.1 mm at every tenth."""
    low, high = ENDS.get(process, (0.0004, 0.040))
    count = round((min(high, 0.030) - low) / STEP)
    for step in range(count + 1):
        yield low + step * STEP
    at = 0.0301
    while at < high:
        yield at
        at += STEP if process != "cutting" else 5 * STEP


@cache
def walked(process: str, fuel: str, rules: str = "iso") -> list[tuple[float, dict[str, Figure]]]:
    found = []
    for thickness in thicknesses(process):
        got = setting(process=process, metal="low-carbon-steel", thickness=thickness, fuel=fuel, torch_type=None, orifice=None, oxygen_gauge=None, fuel_gauge=None, rules=rules)
        figures = {part.name: getattr(got, part.name) for part in fields(got)}
        found.append((thickness, {name: each for name, each in figures.items() if each.value is not None}))
    return found


def inside(figure: Figure, where: object) -> None:
    """The headline is strictly inside its band, and the band is not nothing."""
    if figure.low is None or figure.high is None or figure.value is None:
        return
    assert figure.low < figure.value < figure.high, (where, figure)


@pytest.mark.parametrize(("process", "fuel"), WALK)
def test_no_setting_jumps_and_each_lies_in_its_neighbours_bands(process: str, fuel: str) -> None:
    for (thin, before), (_, after) in pairwise(walked(process, fuel)):
        for name in before:
            one, other = before[name], after[name]
            where = (process, fuel, name, thin)
            inside(one, where)
            assert one.value is not None
            assert other.value is not None
            assert abs(other.value / one.value - 1.0) <= MOST, where
            for figure, value in ((one, other.value), (other, one.value)):
                if figure.low is not None and figure.high is not None:
                    assert figure.low <= value <= figure.high, where


@pytest.mark.parametrize(("process", "fuel"), WALK)
def test_more_metal_never_takes_less_gas_or_a_smaller_hole(process: str, fuel: str) -> None:
    for (thin, before), (_, after) in pairwise(walked(process, fuel)):
        for name in ("orifice", "fuel_flow"):
            assert after[name].value >= before[name].value * (1 - 1e-12), (process, fuel, name, thin)


def test_brazing_metals_take_the_same_tip_and_every_steel_that_is_cut_too() -> None:
    """The walk above is of low-carbon steel: brazing asks the thickness alone, cutting every steel that burns alike."""
    for metal in ("copper", "brass", "stainless-steel", "cast-iron", "aluminium"):
        for process in FULL_HEAT:
            ours = setting(process=process, metal=metal, thickness=0.003, fuel="acetylene", torch_type=None, orifice=None, oxygen_gauge=None, fuel_gauge=None, rules="us")
            steel = setting(process=process, metal="low-carbon-steel", thickness=0.003, fuel="acetylene", torch_type=None, orifice=None, oxygen_gauge=None, fuel_gauge=None, rules="us")
            if metal == "copper" and process != "soldering":  # "a flame much larger than for steel": Manly 1916, read
                assert ours.orifice.value > 1.1 * steel.orifice.value
            else:
                assert ours == steel
    for metal in CUT:
        ours = setting(process="cutting", metal=metal, thickness=0.012, fuel="propane", torch_type=None, orifice=None, oxygen_gauge=None, fuel_gauge=None, rules="us")
        steel = setting(process="cutting", metal="low-carbon-steel", thickness=0.012, fuel="propane", torch_type=None, orifice=None, oxygen_gauge=None, fuel_gauge=None, rules="us")
        assert ours == steel


INSERTS = {1.5: 160, 3: 315, 5: 500, 7.5: 800, 11.5: 1250, 17: 1800, 25: 2500}
"""Inserts of an injector torch at the middles of their ranges, mm of steel and L/h; DIN 8543 practice, memory."""


@pytest.mark.parametrize("process", FULL_HEAT)
def test_an_injector_torch_brazes_with_the_insert_for_steel_as_thick(process: str) -> None:
    for millimetres, litres in INSERTS.items():
        got = setting(process=process, metal="brass", thickness=millimetres / 1000, fuel="acetylene", torch_type="injector", orifice=None, oxygen_gauge=None, fuel_gauge=None, rules="iso")
        assert got.fuel_flow.value == pytest.approx(litres / 3.6e6)
        for figure in (got.fuel_flow, got.oxygen_flow, got.fuel_gauge, got.oxygen_gauge):
            inside(figure, (process, millimetres))
        assert got.orifice.value is None
        assert "insert" in got.orifice.words


CUT_WALK = [0.003 + step * STEP for step in range(round((0.030 - 0.003) / STEP))] + [
    0.030 + step * 1e-3 for step in range(122)
]


def test_a_cut_has_no_jump_in_speed_time_gas_kerf_or_lean() -> None:
    def at(thickness: float) -> dict[str, Figure]:
        made = cut_plate(
            metal="low-carbon-steel", thickness=thickness, fuel="acetylene", length=1.0, pierces=1.0 if thickness < PIERCED else 0.0, shape="straight", bevel_angle=None, sheets=None,
            purity=0.99, maker_orifice=None, maker_oxygen_gauge=None, maker_fuel_gauge=None, rules="iso",
        ).results  # fmt: skip
        return {part.name: getattr(made, part.name) for part in fields(made)}

    seen = [(thickness, at(thickness)) for thickness in CUT_WALK]
    for (thin, before), (thick, after) in pairwise(seen):
        piercing_ends = thin < PIERCED <= thick
        for name, one in before.items():
            other = after[name]
            if one is None or one.value is None:
                continue
            inside(one, (name, thin))
            if other.value is None or (piercing_ends and name in ("cut_time", "oxygen_used", "fuel_used")):
                continue
            if name != "lead_angle":
                assert abs(other.value / one.value - 1.0) <= MOST, (name, thin, one, other)
        for name in ("oxygen_used", "fuel_used", "kerf", "drag"):
            if not piercing_ends:
                assert after[name].value >= before[name].value * (1 - 1e-9), (name, thin)


BRAZED = ("low-carbon-steel", "stainless-steel", "copper", "brass", "cast-iron")


@pytest.mark.parametrize("form", ["sleeve", "flat-lap"])
@pytest.mark.parametrize("metal", BRAZED)
def test_a_brazed_joint_has_no_jump_and_takes_more_filler_and_time_with_more_metal(metal: str, form: str) -> None:
    sizes = [0.0005 + step * STEP for step in range(60)]
    round_it = form == "sleeve"
    seen = []
    for thickness in sizes:
        made = braze_joint(
            metal_one=metal, metal_two=metal, form=form, thickness=thickness, diameter=0.022 if round_it else None, width=None if round_it else 0.05, service="general", cold_clearance=None, overlap=None,
            rod=None, joints=1.0, wire=0.0015, rules="iso",
        ).results  # fmt: skip
        figures = {part.name: getattr(made, part.name) for part in fields(made)}
        set_up = setting(process="brazing", metal=metal, thickness=thickness, fuel="acetylene", torch_type=None, orifice=None, oxygen_gauge=None, fuel_gauge=None, rules="iso")
        length = pi * 0.022 if round_it else 0.05
        joint = Joint(process="brazing", metals=(metal,), length=length, overlap=made.overlap.value, thickness=thickness, target=made.brazing_temperature.value)
        found = heated(joint, set_up.fuel_flow.value, "acetylene", "iso")
        assert found.time is not None, (metal, thickness)
        figures |= {"time": found.time, "mass": found.mass}
        seen.append((thickness, figures))
    for (thin, before), (thick, after) in pairwise(seen):
        for name, one in before.items():
            other = after[name]
            if one is None or one.value is None:
                continue
            if name in MELTS:
                continue
            inside(one, (metal, name, thin))
            grown = thick / thin - 1.0  # thicker metal laps farther, is heavier and heats longer: up to its cube
            assert abs(other.value / one.value - 1.0) <= max(MOST, 3.5 * grown), (metal, name, thin, one, other)
        for name in ("overlap", "filler_volume", "mass"):
            assert after[name].value >= before[name].value * (1 - 1e-9), (metal, name, thin)


def test_larger_tube_takes_more_time_metal_and_filler_and_no_size_is_refused() -> None:
    """Sizes are printed steps: the order alone is held."""
    for system in ("inch", "metric"):
        before: dict[str, float] = {}
        for size in tubes.sizes(system):
            piece = tubes.tube(system, size, {"inch": "l", "metric": "b"}[system], None)
            made = solder_tube(
                method="soldering", service="drinking-water", system=system, size_inch=size, size_metric=size, joints=1.0, wall_inch="l", wall_metric="b", fitting="copper", solder=None, brazing_filler=None, solder_wire=0.003, rod=0.002,
                clearance=0.000127, cup=None, rules="iso",
            ).results  # fmt: skip
            for part in fields(made):
                figure = getattr(made, part.name)
                if figure is not None and part.name not in MELTS:
                    inside(figure, (size, part.name))
            wall, outside, cup = (each.value or 0.0 for each in (piece.wall, piece.outside, piece.cup))
            set_up = setting(process="soldering", metal="copper", thickness=wall, fuel="acetylene", torch_type=None, orifice=None, oxygen_gauge=None, fuel_gauge=None, rules="iso")
            joint = Joint(process="soldering", metals=("copper",), length=pi * outside, overlap=cup, thickness=wall, target=made.pipe_heat.value)
            found = heated(joint, set_up.fuel_flow.value, "acetylene", "iso")
            assert found.time is not None, size
            inside(found.time, size)
            now = {"outside": outside, "filler": made.filler_length.value}
            assert all(now[name] > before.get(name, 0.0) for name in now), size
            before = now


JOB = {
    "coating": "none", "length": "100 mm", "form": "sleeve", "diameter": "22 mm", "braze_service": "general", "joints": "1",
    "tube_service": "drinking-water", "tube_system": "inch", "rules": "iso", "fuel": "acetylene",
}  # fmt: skip
COLD = 293.15


def sheet(**texts: str) -> dict[str, dict[str, object]]:
    return answer("job-sheet", **(JOB | texts))["results"]


def heat_of(metal: str, mass: float, thickness: float, target: float, flow: float) -> Figure:
    return warm_up(metal=metal, mass=mass, thickness=thickness, target=target, flow=flow, fuel="acetylene", cover="bare", efficiency=0.30, start_temperature=COLD, area=None, rules="iso").results.time


@pytest.mark.parametrize("thickness", ["0.8 mm", "1.5 mm", "3 mm", "6 mm"])
@pytest.mark.parametrize("metal", ["low-carbon-steel", "copper", "stainless-steel"])
def test_the_sheets_brazing_flow_warms_its_joint_in_the_time_it_gives(metal: str, thickness: str) -> None:
    got = sheet(process="brazing", metal=metal, thickness=thickness)
    made = answer(
        "braze-joint", metal_one=metal, metal_two=metal, form="sleeve", thickness=thickness, diameter="22 mm",
        service="general", rules="iso",
    )["results"]  # fmt: skip
    millimetres = float(thickness.removesuffix(" mm")) / 1000
    time = heat_of(
        metal, got["joint_mass"]["si"], millimetres, made["brazing_temperature"]["si"], got["fuel_flow"]["si"]
    )
    assert time.value is not None
    each = got["time_each"]
    lengths = max(1.0, pi * 22 / 50)
    per = each["si"] / each["value"]
    assert each["low"] * per <= lengths * time.value <= each["high"] * per


@pytest.mark.parametrize("size", ["1/4 in", "1/2 in", "3/4 in", "1 in", "2 in", "4 in"])
def test_the_sheets_soldering_flow_warms_its_joint_in_the_time_it_gives(size: str) -> None:
    got = sheet(process="soldering", metal="copper", tube_inch=size)
    made = answer("solder-tube", method="soldering", service="drinking-water", system="inch", size_inch=size, joints="1",
                  rules="iso")["results"]  # fmt: skip
    time = heat_of("copper", got["joint_mass"]["si"], made["wall"]["si"], made["pipe_heat"]["si"], got["fuel_flow"]["si"])
    assert time.value is not None
    each = got["time_each"]
    lengths = max(1.0, pi * made["tube_outside"]["si"] / 0.050)
    per = each["si"] / each["value"]
    assert each["low"] * per <= lengths * time.value <= each["high"] * per
    assert each["si"] < 240, "a joint does not take four minutes"


@pytest.mark.parametrize("heated_thing", [row.id for row in table("heated-things")])
@pytest.mark.parametrize("fuel", ["acetylene", "propane"])
def test_the_sheets_heating_flow_warms_its_band_in_the_time_it_gives(heated_thing: str, fuel: str) -> None:
    got = sheet(process="heating", metal="low-carbon-steel", thickness="3 mm", heat="straighten", heated=heated_thing,
                band="25 mm", length="50 mm", fuel=fuel)  # fmt: skip
    mass = 0.025 * 0.050 * 0.003 * 7850.0
    time = warm_up(metal="low-carbon-steel", mass=mass, thickness=0.003, target=got["aim_temperature"]["si"], flow=got["fuel_flow"]["si"], fuel=fuel, cover="bare", efficiency=0.30,
                   start_temperature=COLD, area=None, rules="iso").results.time  # fmt: skip
    assert time.value == pytest.approx(got["torch_time"]["si"], rel=1e-6)


def test_a_heating_tip_has_no_jump_in_its_hole_or_gas_and_never_fewer_holes_for_more_heat() -> None:
    """In steps of 2 % from 0.1 to 30 kW. The number of holes is a whole one."""
    heats = [100.0 * 1.02**step for step in range(288)]
    for fuel in FUELS:
        seen = [
            setting(process="heating", metal="low-carbon-steel", thickness=None, fuel=fuel, torch_type=None, orifice=None, oxygen_gauge=None, fuel_gauge=None, rules="us", heat=heat) for heat in heats
        ]
        for before, after in pairwise(seen):
            for name in ("orifice", "fuel_flow", "oxygen_flow"):
                one, other = getattr(before, name), getattr(after, name)
                inside(one, (fuel, name))
                assert 1.0 - 1e-9 <= other.value / one.value <= 1.0 + MOST, (fuel, name, one, other)
            assert after.holes.value >= before.holes.value


def test_the_sheets_heating_has_no_jump_in_time_or_gas() -> None:
    def made(millimetres: float) -> dict[str, dict[str, object]]:
        return sheet(process="heating", metal="low-carbon-steel", thickness=f"{millimetres:.1f} mm", heat="straighten",
                     heated="bar", band="25 mm", length="50 mm")  # fmt: skip

    seen = [made(1.0 + 0.1 * step) for step in range(60)]
    for place, (before, after) in enumerate(pairwise(seen)):
        for name in ("torch_time", "fuel_used", "oxygen_used"):
            one, other = before[name]["si"], after[name]["si"]
            assert one * (1 - 1e-9) <= other <= one * (1 + MOST), (name, 1.0 + 0.1 * place)


def test_a_time_of_ones_own_that_the_flame_does_not_bear_out_is_called_doubtful() -> None:
    own = sheet(process="soldering", metal="copper", tube_inch="1/2 in", joint_time="20 min")
    assert "doubtful" in str(own["time_each"]["basis"])
    fits = sheet(process="soldering", metal="copper", tube_inch="1/2 in", joint_time="20 s")
    assert "doubtful" not in str(fits["time_each"]["basis"])


def test_a_thick_casting_is_offered_ways_that_work() -> None:
    """0.086 in at 5 psi: 40 cfh by the isentrope; a tenth an hour asks 397 ft³, four full cylinders of 130 ft³, by hand."""
    got = answer("tip-choice", process="braze-welding", metal="cast-iron", fuel="acetylene", thickness="3/8 in")
    asked = got["results"]["contents_asked"]
    assert asked["value"] == pytest.approx(10 * got["results"]["fuel_flow"]["value"])
    rows = {row[0]: row[1] for row in got["tables"][0]["rows"]}
    assert rows["Couple cylinders"].startswith(f"{-int(-asked['value'] // 130)} full ones of 130 ft³")
    fed = got["results"]["hole_fed"]["si"]
    small = setting(process="braze-welding", metal="cast-iron", thickness=0.0095, fuel="acetylene", torch_type=None, orifice=fed, oxygen_gauge=None, fuel_gauge=None, rules="us").fuel_flow.value
    limit = 130 * 0.3048**3 * 288.15 / 294.26111 / 10 / 3600
    assert small == pytest.approx(limit, rel=1e-3), "the smaller hole draws a tenth an hour"
    assert "Preheat by other means" in rows


def test_a_tip_that_one_cylinder_feeds_needs_no_other_way() -> None:
    got = answer("tip-choice", process="brazing", metal="copper", fuel="acetylene", thickness="1/16 in")
    assert "contents_asked" not in got["results"]
    assert "hole_fed" not in got["results"]


def test_no_refusal_is_left_between_answers() -> None:
    """From foil to 40 mm every thickness of a braze is answered, and of a cut from 3 mm on."""
    for process, low in (("brazing", 0.0004), ("cutting", 0.003)):
        setting(process=process, metal="low-carbon-steel", thickness=low, fuel="acetylene", torch_type=None, orifice=None, oxygen_gauge=None, fuel_gauge=None, rules="us")
    with pytest.raises(InputError, match="shear or saw"):
        setting(process="cutting", metal="low-carbon-steel", thickness=0.0029, fuel="acetylene", torch_type=None, orifice=None, oxygen_gauge=None, fuel_gauge=None, rules="us")


@pytest.mark.parametrize("diameter", ["12 mm", "15 mm", "22 mm", "28 mm"])
def test_a_large_sleeve_of_thin_tube_gets_the_tip_that_heats_it(diameter: str) -> None:
    """More metal takes a larger flame: common practice, and the heat balance that the sheet shows."""
    texts = {
        "process": "brazing", "metal": "low-carbon-steel", "coating": "none", "fuel": "acetylene", "other_metal": "copper",
        "form": "sleeve", "braze_service": "general", "joints": "6", "thickness": "1.1 mm", "rules": "iso",
    }  # fmt: skip
    got, least = (answer("job-sheet", **texts, diameter=size)["results"] for size in (diameter, "10 mm"))
    assert got["tip_orifice"]["value"] >= least["tip_orifice"]["value"]
    assert got["tip_orifice"]["low"] < got["tip_orifice"]["value"] < got["tip_orifice"]["high"]
