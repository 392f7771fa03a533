"""Each known slip against the same wrong turn, taken here by hand with the definition's own arithmetic."""

import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import pytest
from CoolProp.CoolProp import PropsSI

from calc.ask.errors import InputError
from calc.practice.dice import dice
from calc.practice.problems import Problem, problem
from calc.practice.slips import SLIPS, Case, Wrong, slip_tolerance, wrong_answers
from calc.practice.verdicts import judged_number

ATMOSPHERE = 101325.0
PSI = 6894.757293168361
BAR = 1e5


def problems(calculator: str, result: str, rules: str = "us") -> Iterator[Problem]:
    for number in range(60):
        try:
            made = problem(calculator, rules, dice("slips", number))
        except InputError:
            continue
        if made.result == result:
            yield made


def with_slip(
    calculator: str, result: str, slip: str, words: str = "", rules: str = "us"
) -> Iterator[tuple[Problem, Wrong]]:
    seen = 0
    for made in problems(calculator, result, rules):
        for wrong in wrong_answers(made):
            if wrong.slip == slip and words in wrong.words:
                seen += 1
                yield made, wrong
    assert seen > 2, f"{slip} is never met in {calculator}"


def number(text: str) -> float:
    """The number of a text such as `5/16 in` or `1 1/4 in`."""
    return sum(
        float(part.split("/")[0]) / float(part.split("/")[1]) if "/" in part else float(part)
        for part in re.findall(r"[\d./]+", text.split(" in", maxsplit=1)[0] if " in" in text else text)
    )


@pytest.mark.parametrize(("rules", "unit"), [("us", PSI), ("iso", BAR)])
def test_a_gauge_taken_for_absolute_lacks_one_atmosphere(rules: str, unit: float) -> None:
    """Gas in a hose goes by absolute pressure: p over p plus 101325 Pa, definition."""
    for made, wrong in with_slip("purge-time", "purge_volume", "gauge-for-absolute", rules=rules):
        gauge = number(made.texts["gauge"]) * unit
        assert wrong.value / made.key == pytest.approx(gauge / (gauge + ATMOSPHERE), rel=1e-6)


@pytest.mark.parametrize(("rules", "unit"), [("us", PSI), ("iso", BAR)])
def test_absolute_taken_for_gauge_has_one_atmosphere_too_many(rules: str, unit: float) -> None:
    """What comes out of a hose that is let down goes by the gauge: p plus 101325 Pa over p, definition."""
    for made, wrong in with_slip("bleed-down", "oxygen_trapped", "absolute-for-gauge", rules=rules):
        gauge = number(made.texts["oxygen_gauge"]) * unit
        assert wrong.value / made.key == pytest.approx((gauge + ATMOSPHERE) / gauge, rel=1e-6)


def test_the_other_temperature_scale_changes_kelvins() -> None:
    """Gas in a cylinder goes with its density at that pressure: CoolProp's, at the two temperatures."""
    for made, wrong in with_slip("oxygen-left", "gas_left", "temperature-scale"):
        read = number(made.texts["temperature"])
        assert made.texts["temperature"].endswith("degF")
        kelvin, mistaken = (read - 32) / 1.8 + 273.15, read + 273.15
        pressure = number(made.texts["gauge"]) * PSI + ATMOSPHERE
        dense, less_dense = (PropsSI("D", "T", at, "P", pressure, "Oxygen") for at in (kelvin, mistaken))
        assert wrong.value / made.key == pytest.approx(less_dense / dense, rel=0.003)
        assert "°F was taken for °C" in wrong.words


SIXTEEN = {"galvanised": 0.0635, "aluminium": 0.0508, "stainless": 0.0625, "copper": 0.0508, "British": 0.064}
"""16 gauge in inches by series: manufacturers' standard 0.0598 for steel, galvanized sheet gauge, American wire
gauge, US standard gauge, British standard wire gauge; carvill-1993 and handbook tables, read."""


def test_a_gauge_number_of_another_series_gives_that_series_thickness() -> None:
    case = Case(
        next(
            made
            for made in problems("sheet-thickness", "thickness")
            if made.texts["gauge"] == "16 ga" and made.texts["metal"] == "low-carbon-steel"
        )
    )
    assert case.problem.key == pytest.approx(0.0598, abs=5e-5)
    slip = next(slip for slip in SLIPS if slip.id == "gauge-series")
    found = {words: si / 0.0254 for words, si in slip.wrong(case) if si is not None}
    for series, inches in SIXTEEN.items():
        told = [value for words, value in found.items() if series in words]
        assert any(value == pytest.approx(inches, abs=6e-4) for value in told), (series, found)
    listed = [wrong.value for wrong in wrong_answers(case.problem)]
    assert all(abs(value - 0.0598) > 0.003 for value in listed)  # what lies near the right one is not told


def test_one_hose_for_two_is_a_part_of_it() -> None:
    for made, wrong in with_slip("hose-volume", "volume", "one-for-several", "that is for one;"):
        assert wrong.value == pytest.approx(made.key / number(made.texts["hoses"]))
    for made, wrong in with_slip("hose-volume", "volume", "one-for-several", "two hoses"):
        assert made.texts["hoses"] == "1"
        assert wrong.value == pytest.approx(2 * made.key)


@pytest.mark.parametrize("calculator", ["acetylene-left", "liquid-fuel-left"])
def test_gross_for_net_forgets_the_tare(calculator: str) -> None:
    for made, wrong in with_slip(calculator, "gas_left", "gross-for-net"):
        gross, tare = number(made.texts["gross_weight"]), number(made.texts["tare_weight"])
        assert wrong.value / made.key == pytest.approx(gross / (gross - tare), rel=1e-6)


def test_complete_burn_counts_two_and_a_half_of_oxygen_to_one() -> None:
    """C2H2 + 2.5 O2 = 2 CO2 + H2O, definition; a torch draws about 1.1."""
    for made, wrong in with_slip("tip-flow", "oxygen_flow", "complete-burn"):
        assert wrong.value / made.key == pytest.approx(2.5 / 1.1)
    for made, wrong in with_slip("hours-left", "oxygen_hours", "complete-burn"):
        assert wrong.value / made.key == pytest.approx(1.1 / 2.5)


def test_diameter_for_radius_is_four_areas_or_a_quarter() -> None:
    for made, wrong in with_slip("hose-volume", "volume", "diameter-for-radius", "diameter was taken"):
        bore, length, hoses = (number(made.texts[name]) for name in ("bore", "length", "hoses"))
        assert made.key == pytest.approx(3.141592653589793 / 4 * bore**2 * length * 12 * hoses, rel=1e-6)
        assert wrong.value == pytest.approx(3.141592653589793 * bore**2 * length * 12 * hoses, rel=1e-6)
    for made, wrong in with_slip("hose-volume", "volume", "diameter-for-radius", "radius was taken"):
        assert wrong.value == pytest.approx(made.key / 4)


def test_minutes_for_hours_burn_sixty_times_as_long() -> None:
    """A welding torch of the plan takes 5.5 ft³/h and burns 40 % of the time, its own assumptions."""
    for made, wrong in with_slip("supply-plan", "fuel_week", "hours-for-minutes", "welding in a week”: minutes"):
        benches, hours = number(made.texts["welding_benches"]), number(made.texts["welding_hours"])
        assert wrong.value - made.key == pytest.approx(benches * hours * 59 * 5.5 * 0.4, rel=1e-3)


def test_gone_for_left_is_the_rest_of_a_full_one() -> None:
    for made, wrong in with_slip("oxygen-left", "share_of_full", "gone-for-left"):
        assert wrong.value == pytest.approx(100 - made.key)


def test_every_slip_has_a_test_here() -> None:
    source = Path(__file__).read_text(encoding="utf-8")
    assert [slip.id for slip in SLIPS if f'"{slip.id}"' not in source] == []


@pytest.mark.parametrize("calculator", ["hose-volume", "tip-flow", "purge-time", "oxygen-left", "bleed-down"])
def test_slips_lie_apart_and_are_told(calculator: str) -> None:
    for seed in range(12):
        made = problem(calculator, "us", dice("apart", seed))
        ends = [(made.key - made.tolerance, made.key + made.tolerance)]
        for wrong in wrong_answers(made):
            near = slip_tolerance(wrong, made)
            ends.append((wrong.value - near, wrong.value + near))
            said = judged_number(made, f"{wrong.value:.9f} {made.unit}")
            assert not said.right
            assert said.slip == wrong.slip
            assert wrong.words in said.said
        ends.sort()
        assert all(before[1] < after[0] for before, after in pairwise(ends)), made.question


def test_the_right_number_with_the_wrong_unit_is_told() -> None:
    made = next(problems("hose-drop", "drop"))
    in_bar = made.key * PSI / BAR
    assert judged_number(made, f"{in_bar:.7f} bar").right
    said = judged_number(made, f"{in_bar:.7f} psi")
    assert said.slip == "unit"
    assert "right in bar" in said.said
    hours = next(problems("hours-left", "fuel_hours"))
    assert judged_number(hours, f"{hours.key * 60:.4f} min").right
    assert judged_number(hours, f"{hours.key * 60:.4f} h").slip == "unit"
