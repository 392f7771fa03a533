"""Oxygen is never reckoned to nothing: one floor, on every page, above what its regulator is set to.

100 psi (7 bar), and 29 psi (2 bar) above the setting, are trade practice without a source.
"""

import pytest

from calc import InputError, answer
from calc.declare import RULE_SETS
from calc.declare.catalogue import calculators

STOPS = {"oxygen-left": "residual_gauge", "hours-left": "oxygen_stop_gauge", "supply-plan": "oxygen_stop_gauge"}
FLOOR = {"us": "100 psi", "iso": "7 bar", "uk": "7 bar"}
CUT = {"process": "cutting", "metal": "low-carbon-steel", "coating": "none", "fuel": "acetylene", "length": "2 ft", "pierces": "0",
       "acetylene_contents": "300 ft^3"}  # fmt: skip
TORCH = {"orifice": "#68", "gauge": "5 psi", "fuel_contents": "130 ft^3"}


@pytest.mark.parametrize("calculator", STOPS)
def test_every_page_stops_at_the_same_reading(calculator: str) -> None:
    field = calculators()[calculator].inputs[STOPS[calculator]]
    assert field.assumed == FLOOR


@pytest.mark.parametrize("calculator", STOPS)
def test_nothing_left_is_no_reading_to_stop_at(calculator: str) -> None:
    texts = {
        "oxygen-left": {"water_volume": "43 L", "gauge": "1500 psi"},
        "hours-left": TORCH,
        "supply-plan": {
            "welding_benches": "6", "welding_hours": "2 h", "brazing_benches": "2", "brazing_hours": "1 h",
            "cutting_benches": "1", "cutting_hours": "0.5 h", "sessions": "1",
        },
    }[calculator]  # fmt: skip
    with pytest.raises(InputError, match=r"too small; give 29 psi to 500 psi") as refused:
        answer(calculator, **texts, **{STOPS[calculator]: "0 psi"})
    assert refused.value.field == STOPS[calculator]


@pytest.mark.parametrize(("thickness", "gauge"), [("1 in", "30 psi"), ("1 in", "90 psi"), ("1/4 in", "100 psi"), ("6 in", "100 psi")])
def test_no_job_is_set_up_on_a_cylinder_below_the_floor(thickness: str, gauge: str) -> None:
    with pytest.raises(InputError, match=r"^Oxygen cylinder gauge reads: .*change it, and give more than \d+ psi\.$"):
        answer("job-sheet", **CUT, thickness=thickness, oxygen_cylinder_gauge=gauge, rules="us")


@pytest.mark.parametrize("rules", RULE_SETS)
def test_the_sheet_says_down_to_which_reading_it_counts(rules: str) -> None:
    got = answer("job-sheet", **CUT, thickness="1/2 in", oxygen_cylinder_gauge="150 bar", rules=rules)["results"]
    assert f"down to {FLOOR[rules]} on its cylinder gauge" in got["oxygen_hours"]["basis"]


def test_where_the_regulator_stands_high_the_floor_rises_with_it() -> None:
    """A maker's 90 psi and 29 psi are 119 psi, and the hose takes a little more."""
    sheet = CUT | {"thickness": "1 in", "maker_oxygen_gauge": "90 psi", "maker_orifice": "0.06 in", "rules": "us"}
    with pytest.raises(InputError, match="Oxygen cylinder gauge reads"):
        answer("job-sheet", **sheet, oxygen_cylinder_gauge="119 psi")
    assert answer("job-sheet", **sheet, oxygen_cylinder_gauge="200 psi")["results"]["oxygen_hours"]["value"] > 0


@pytest.mark.parametrize("gauge", [2.0, 30.0, 58.0])
def test_hours_are_refused_where_the_stop_leaves_the_regulator_nothing(gauge: float) -> None:
    texts = TORCH | {"fuel": "methane", "gauge": f"{gauge} psi"}
    with pytest.raises(InputError, match=rf"^Oxygen cylinder gauge at which you stop: .*give {gauge + 29:.0f} to 500 psi"):
        answer("hours-left", **texts, oxygen_stop_gauge=f"{gauge + 28.0} psi")
    assert answer("hours-left", **texts, oxygen_stop_gauge=f"{gauge + 29.5} psi")
    with pytest.raises(InputError, match=r"^Oxygen cylinder gauge reads: .*give more than 100 psi"):
        answer("hours-left", **texts, oxygen_cylinder_gauge="100 psi")
