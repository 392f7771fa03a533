"""A problem's answer follows from its own text, and nothing that the text forbids is right."""

import re
from collections.abc import Callable
from math import pi

import pytest

from calc.ask.errors import InputError
from calc.declare import RULE_SETS
from calc.practice.dice import dice
from calc.practice.problems import Problem, problem
from calc.practice.topics import offered
from calc.practice.verdicts import judged_number

NUMBER = r"(\d+(?:\.\d+)?)"
SEEDS = 12


def made(calculator: str, rules: str) -> list[Problem]:
    found = []
    for seed in range(SEEDS):
        try:
            found.append(problem(calculator, rules, dice("text", seed)))
        except InputError:
            continue
    return found


def put(one: Problem, value: float) -> bool:
    return judged_number(one, f"{value:.9f} {one.unit}").right


@pytest.mark.parametrize("rules", RULE_SETS)
@pytest.mark.parametrize("calculator", ["hose-proof", "braze-joint", "purge-time", "draw-limit"])
def test_nothing_past_a_limit_of_the_text_is_right(calculator: str, rules: str) -> None:
    """The limit as the text prints it; for a share of the contents, that share worked by hand."""
    held = 0
    for one in made(calculator, rules):
        unit = "s" if one.unit == "s" else one.unit
        least = re.search(rf"never less than (?:the )?[^.]*?{NUMBER} {unit}\b", one.rule) or re.search(rf"{NUMBER} {unit} at least", one.rule)
        if least is not None:
            held += 1
            assert not put(one, float(least[1]) - 1e-6 * one.key), one.question
            assert one.accepted[0] >= float(least[1])
        if one.result == "draw_limit":
            held += 1
            contents = float(one.texts["acetylene_contents"].split()[0]) * (1 if rules == "us" else 1000)
            most = contents / (10 if "On and off" in one.question else 15)
            assert put(one, most * (1 - 1e-6))
            assert not put(one, most * (1 + 1e-6)), one.question
    assert held


@pytest.mark.parametrize("calculator", offered())
def test_a_key_lies_in_its_own_band(calculator: str) -> None:
    for rules in RULE_SETS:
        for one in made(calculator, rules)[:3]:
            low, high = one.accepted
            assert low <= one.key <= high


def first(one: Problem, label: str) -> float:
    """The number after a label of the text; where it is a fraction of an inch, that."""
    got = re.search(rf"{label}: ([\d./]+)", one.question)
    assert got is not None, (label, one.question)
    top, _, under = got[1].rstrip(".").partition("/")
    return float(top) / float(under or 1)


def said(one: Problem, words: str) -> float:
    got = re.search(words.replace("#", NUMBER), one.rule)
    assert got is not None, (words, one.rule)
    return float(got[1])


def weighed(one: Problem, before: str, after: str) -> float:
    gas = said(one, r"Acetylene makes # (?:ft|m)")
    return (first(one, before) - first(one, after)) * gas * (1000 if one.unit == "L" else 1)


SUMS: dict[tuple[str, str], Callable[[Problem], float]] = {
    ("acetylene-left", "gas_left"): lambda one: weighed(one, "Cylinder weighs now", "Tare stamped on it"),
    ("gas-log", "fuel_used"): lambda one: weighed(one, "Fuel cylinder weighs before", "Fuel cylinder weighs after"),
    ("joint-prep", "torch_time"): lambda one: first(one, "Length of the seam") / said(one, "travels at # "),
    ("bend-test", "opening"): lambda one: (
        said(one, "plunger is # ") + 2 * first(one, "Thickness of the strip") + (1 / 8 if one.unit == "in" else 3.2)
    ),
    ("hose-proof", "proof_gauge"): lambda one: max(
        2 * first(one, "Normal service pressure"), said(one, rf"(?:than |\()# {one.unit}")
    ),
    ("braze-joint", "overlap"): lambda one: max(
        3 * first(one, "Thickness of the thinner part"), said(one, "less than the # ")
    ),
    ("rod-need", "one_rod"): lambda one: (
        pi / 4 * (said(one, "bare, # ") * (25.4 if one.unit == "lb" else 1)) ** 2
        * first(one, "Length of one rod") * (25.4 if one.unit == "lb" else 1000) * said(one, "density is # ")
        * 1e-9 * (2.2046226 if one.unit == "lb" else 1000)
    ),
    ("hours-left", "fuel_hours"): lambda one: (
        (first(one, "Fuel gas in its cylinder now") - said(one, "^# "))
        * (1 if one.rules == "us" else 1000)
        / first(one, "as its maker prints") / first(one, "Torches on these cylinders")
    ),
}  # fmt: skip
"""The sum that a learner does with the text alone, by hand."""


@pytest.mark.parametrize("rules", RULE_SETS)
@pytest.mark.parametrize("calculator", sorted({calculator for calculator, _ in SUMS}))
def test_the_key_follows_from_the_numbers_of_the_text(calculator: str, rules: str) -> None:
    """Within 0.2 %: four printed figures, squared in one sum, and 14.7 ft³/lb printed beside its own metric figure."""
    held = 0
    for one in made(calculator, rules):
        if by_hand := SUMS.get((calculator, one.result)):
            held += 1
            assert by_hand(one) == pytest.approx(one.key, rel=0.002), one.question
            assert put(one, min(max(by_hand(one), one.accepted[0]), one.accepted[1]))
    assert held
