"""Every figure that is a limit is rounded to the careful side, in every unit; the side is reasoned here.

Down: what may be done or had at most, how long a supply or a time lasts, what is left.
Up: what is needed at least, how far to keep away, how long to wait, how hot or how high something may get to.
"""

import random
import re

import pytest

from calc.answer.answering import shown_text
from calc.ask.reading import typed
from calc.declare import RULE_SETS, Shown
from calc.declare.catalogue import calculators
from calc.values.units import from_si, to_si

LIMIT = re.compile(
    r"at most|at least|\bleast\b|\bmost\b|limit|\bstop\b|never|change|needed|wanted|wants\b|up to|allow|minimum|hottest|"
    r"lasts|smallest|\bmay\b|\bmust\b|within|melted|catches fire|fire watch|clear(ed)? of|order |usable|wait|"
    r"so fast|no (higher|more|less)|or less|or more|gas left|acetylene left$|can come to|gauge then",
    re.IGNORECASE,
)
"""Words of a label that make a limit of it."""

DOWN = {
    "acetylene-left": {"gas_left": "a job must not be planned on gas that is not there", "usable": "likewise"},
    "oxygen-left": {"gas_left": "likewise", "usable": "likewise"},
    "liquid-fuel-left": {"weight_left": "likewise"},
    "hours-left": {
        "fuel_hours": "the gas must not end before the time told", "oxygen_hours": "likewise", "stop_hours": "likewise",
        "draw_hours": "the draw is too fast after it", "draw_limit": "a faster draw brings acetone",
    },
    "job-sheet": {
        "fuel_hours": "as above", "oxygen_hours": "as above", "draw_hours": "as above", "draw_limit": "as above", "limit_temperature": "hotter spoils the steel",
        "aim_temperature": "the flame is stopped before the limit", "drag": "a larger drag is a worse cut",
        "hole_fed": "a larger hole draws acetone",
    },
    "tip-choice": {"hole_fed": "a larger hole draws acetone"},
    "draw-limit": {"draw_limit": "a faster draw brings acetone", "full_draw_limit": "likewise"},
    "class-plan": {"draw_limit": "likewise"},
    "supply-plan": {
        "draw_limit": "likewise", "order_fuel": "a later order leaves the class without gas", "order_oxygen": "likewise",
    },
    "bead-check": {
        "undercut_limit": "more is a fault", "excess_limit": "likewise", "convexity_limit": "likewise",
        "penetration_limit": "likewise", "underfill_limit": "likewise", "misalignment_limit": "likewise",
    },
    "bend-test": {"longest_limit": "more fails", "together_limit": "more fails", "corner_limit": "more fails"},
    "solder-tube": {"service_limit": "a hotter joint lets go"},
    "flame-bend": {"limit_temperature": "hotter spoils the steel", "aim_temperature": "stopped before the limit"},
    "cool-down": {"transition": "a plate near the change counts as thick, which cools faster"},
    "cut-plate": {"drag": "a larger drag is a worse cut"},
    "fire-watch": {"check_every": "a longer time between looks misses a fire"},
    "storage-check": {"fuel_limit": "more is not allowed", "lpg_limit": "more is not allowed"},
    "ventilation": {"leak_time_quarter": "the room is at that share sooner, not later"},
}  # fmt: skip
UP = {
    "acetylene-left": {"stop_gauge": "lower lets acetone and air along"},
    "hours-left": {"fuel_stop_gauge": "lower lets acetone and air along"},
    "supply-plan": {"fuel_change_at": "a lower one is past the change"},
    "bend-test": {"strip": "a narrower one proves less"},
    "braze-joint": {
        "melting": "colder, some of it is not melted", "overlap_for_strength": "a shorter one breaks",
    },
    "solder-tube": {
        "melting": "colder, some of it is not melted", "clear_distance": "nearer things burn", "fire_watch": "fires start late",
        "lap": "a shorter one breaks",
    },
    "flame-bend": {"heat_shrinkage": "the part may move so far"},
    "warm-up": {"soak": "sooner, the reading is false"},
    "class-plan": {
        "fire_watch": "fires start late", "clear_distance": "nearer things burn", "shade_minimum": "a lighter one harms the eye",
    },
    "eye-shade": {"shade_minimum": "a lighter one harms the eye"},
    "job-sheet": {
        "shade_minimum": "likewise", "clear_distance": "nearer things burn", "fire_watch": "fires start late",
    },
    "cool-down": {"air_time": "sooner, it burns the hand"},
    "cut-plate": {"preheat_temperature": "colder, it does not catch fire"},
    "cylinder-weather": {
        "gauge_at_limit": "a cylinder's pressure in the heat must not be told too low", "sun_temperature": "likewise",
        "sun_gauge": "likewise",
    },
    "far-side": {"fire_watch": "fires start late"},
    "fire-watch": {"fire_watch": "fires start late"},
    "hose-proof": {"proof_gauge": "a joint tested lower is not proved"},
    "hot-work-zone": {"clear_distance": "nearer things burn", "fire_watch": "fires start late"},
    "ventilation": {"leak_air_quarter": "less air leaves more gas"},
    "purge-time": {"purge_volume": "less leaves a mixture in the hose"},
    "leak-test": {"smallest_leak": "a larger one may hide", "wait": "sooner, the gauge has not moved"},
    "licence-questions": {"needed": "fewer do not pass"},
    "may-i-heat": {
        "strip_distance": "less smokes", "clear_distance": "nearer things burn", "fire_watch": "fires start late",
    },
    "draw-limit": {"contents_needed": "less is drawn too fast"},
}  # fmt: skip
NO_LIMIT = {
    ("braze-joint", "clearance_wanted"): "a middle to aim at, with a band both ways",
    ("regulator-mark", "torch_gauge"): "what the reader gave",
    ("flame", "peak_ratio"): "where a curve is highest",
    ("flame", "share_c2h2"): "a share of the burnt gas",
    ("flame", "oxygen_from_air"): "a sum of the burning",
    ("fuel-compare", "heat"): "a heat that is needed, neither too little nor too much",
}
"""Labels with such a word that limit nothing."""


def limits() -> dict[tuple[str, str], Shown]:
    return {
        (each.id, name): shown
        for each in calculators().values()
        for name, shown in each.results.items()
        if not shown.words and LIMIT.search(shown.label) and (each.id, name) not in NO_LIMIT
    }


def test_every_limit_is_reasoned_and_rounded_to_the_careful_side() -> None:
    typed_here = {
        (calculator, name): way
        for way, table in (("down", DOWN), ("up", UP))
        for calculator, names in table.items()
        for name in names
    }
    wrong = {
        key: (calculators()[key[0]].results[key[1]].label, calculators()[key[0]].results[key[1]].toward)
        for key, way in typed_here.items()
        if key[1] in calculators()[key[0]].results and calculators()[key[0]].results[key[1]].toward != way
    }
    assert not wrong
    missing = {
        key: (shown.label, shown.toward)
        for key, shown in limits().items()
        if key not in typed_here
    }
    assert not missing, "say here on which side each is careful"
    gone = [key for key in typed_here if key[1] not in calculators()[key[0]].results]
    assert not gone


@pytest.mark.parametrize("rules", RULE_SETS)
def test_the_printed_limit_is_never_past_the_exact_one(rules: str) -> None:
    """In every unit that it is offered in, a hundred values drawn between 1e-3 and 1e3 of it."""
    draws = random.Random(14)
    for table, way in ((DOWN, -1), (UP, 1)):
        for calculator, names in table.items():
            for name in names:
                shown = calculators()[calculator].results[name]
                for unit in shown.units:
                    for _ in range(20):
                        number = draws.uniform(1.0, 10.0) * 10 ** draws.randint(-2, 3)
                        si = to_si(number, unit, free_gas=shown.free_gas)
                        text = shown_text(shown, si, unit, rules, shown.toward)
                        printed, exact = typed(text.split(" ")[0]).number, from_si(si, unit, free_gas=shown.free_gas)
                        assert (printed - exact) * way >= -1e-6 * abs(exact), (calculator, name, unit, exact, text)


def test_the_hottest_gauge_and_the_drag_are_shown_on_the_careful_side() -> None:
    """2,200 psi at 70 °F; the exact gauge at 125 °F lies between two whole ones. 10 % of 0.26 in is 0.026 in."""
    from calc import answer  # noqa: PLC0415

    got = answer("cylinder-weather", gas="oxygen", gauge="2200 psi", weather="100 degF")["results"]["gauge_at_limit"]
    assert float(got["text"].split(" ")[0]) >= got["value"]
    cut = answer(
        "cut-plate", metal="low-carbon-steel", fuel="acetylene", thickness="0.2674 in", length="10 in", shape="straight"
    )["results"]["drag"]
    assert cut["value"] == pytest.approx(0.02674)
    assert float(cut["text"].split(" ")[0]) == 0.026
