"""Sixty sets of each topic in each place: no problem of a state that cannot be, none that its text does not hold.

What can be is decided by CoolProp and by print, as in tests/reference/test_states.py. That the text names every
input is seen by moving each input that it does not name: the key must stay.
"""

import re
from collections import Counter

import pytest

from calc.answer.answering import answer, computed, found
from calc.ask.errors import InputError
from calc.ask.inputs import taken_inputs
from calc.ask.reading import typed
from calc.declare import RULE_SETS, Choice, Field, by_rules
from calc.practice.dice import dice
from calc.practice.problems import Problem, problem
from calc.practice.sets import problem_set
from calc.practice.topics import TOPICS, of_topic, offered, questions
from calc.practice.verdicts import judged_number
from calc.values.units import from_si, to_si
from tests.reference.test_states import AT_ROOM, CYLINDER_GAUGES, PSI, gas_of, most_gauge

SEEDS = range(1, 61)
MOST_GIVEN = 8
FOLLOWS = re.compile(r"\{[a-z_:0-9]+\}")
"""A figure in a rule that follows from inputs of the calculator; those of print have a hyphen in their id."""


def made(topic: str, rules: str, seed: int, count: int = 6) -> list[Problem]:
    return [one.problem for one in problem_set(calculators=(), topic=topic, seed=seed, problems=count, help_wanted="bare", rules=rules)]


def impossible(one: Problem) -> str:
    """What cannot be in a problem; empty where all can."""
    each = found(one.calculator)
    taken, _ = taken_inputs(each, one.texts, one.rules)
    values = {name: None if got is None else got.si for name, got in taken.items()}
    for name, warmth in CYLINDER_GAUGES.get(one.calculator, {}).items():
        if values[name] is not None and values[name] > most_gauge(gas_of(name, values), values[warmth]):
            return f"{name} {one.texts.get(name)} of {gas_of(name, values)}"
    for name in AT_ROOM.get(one.calculator, ()):
        if values[name] is not None and values[name] > most_gauge(gas_of(name, values), 294.26):
            return f"{name} {one.texts.get(name)}"
    for name, value in values.items():
        if name.endswith("temperature") and value is not None and not 220 < value < 1900:
            return f"{name} {value}"
    gross, tare = values.get("gross_weight"), values.get("tare_weight")
    if gross is not None and gross < tare:
        return "a cylinder lighter than its tare"
    return ""


@pytest.mark.parametrize("rules", RULE_SETS)
@pytest.mark.parametrize("topic", [topic for topic in TOPICS if topic != "all"])
def test_sixty_sets_hold_nothing_impossible_and_nothing_half_said(topic: str, rules: str) -> None:
    kinds: Counter[str] = Counter()
    for seed in SEEDS:
        for one in made(topic, rules, seed):
            assert not impossible(one), (seed, one.question)
            kinds[one.calculator] += 1
            text = one.whole_question
            # A whole sentence asks, and it is no label of a result.
            assert re.fullmatch(r"(How|What|Which|By how much) [^?{}]+ [^?{}]+\?", one.asked), one.asked
            assert one.asked not in {shown.label for shown in found(one.calculator).results.values()}
            assert "{" not in text, text
            assert "What is:" not in text
            given = (*one.given, *one.taken_for_granted)
            assert 1 <= len(given) <= MOST_GIVEN, text
            assert all(line in text for line in given)
            # The answer asked for is not the size of what nobody can read: no tolerance below a thousandth of the mark.
            assert float(one.within.split(" ")[0]) > 0
            if one.unit in ("psi", "bar"):
                assert one.tolerance >= {"psi": 0.03, "bar": 0.002}[one.unit] - 1e-12, text
            if one.unit in ("ft^3", "cfh"):
                assert one.tolerance >= 0.01, text
    assert len(kinds) == len([each for each in of_topic(topic) if (each, rules) != ("sheet-thickness", "iso")])


@pytest.mark.parametrize("topic", TOPICS)
@pytest.mark.parametrize("rules", RULE_SETS)
def test_every_topic_makes_a_set_everywhere(topic: str, rules: str) -> None:
    for seed in (1, 2, 999999):
        assert len(made(topic, rules, seed, 10)) == 10


def test_the_set_that_asked_for_propane_at_2000_psi_does_not() -> None:
    """Propane boils at 110 psi at 70 °F: of sixty sets none asks a liquefied gas above that."""
    asked = 0
    for seed in SEEDS:
        for one in made("gas", "us", seed, 10):
            if one.calculator == "cylinder-weather":
                asked += 1
                assert one.texts["gas"] in ("oxygen", "hydrogen")
                assert to_si(*_pair(one.texts["gauge"])) <= 2640 * PSI, "no higher than oxygen cylinders are stamped for"
    assert asked >= 30


def _pair(text: str) -> tuple[float, str]:
    got = typed(text)
    return got.number, got.unit


def moved(field: Field, text: str) -> list[str]:
    """Other values of an input, within what it takes."""
    if not text:
        return []
    got = typed(text)
    shares = (0.8, 0.93, 1.1) if not field.whole else (2.0, 3.0)
    return [f"{got.number * share if not field.whole else got.number + share:.6g} {got.unit}".strip() for share in shares]


@pytest.mark.parametrize("rules", ["us", "iso"])
@pytest.mark.parametrize("calculator", sorted(offered()))
def test_what_the_text_does_not_name_does_not_move_the_key(calculator: str, rules: str) -> None:
    each = found(calculator)
    rule_names = {row.result: row.rule for row in questions()[calculator].values()}
    moved_some = 0
    for number in range(6):
        try:
            one = problem(calculator, rules, dice("named", number))
        except InputError:
            continue
        needs = set(questions()[calculator][one.result].needs.split())
        labels = {each.inputs[name].label for name in needs}
        said = " ".join((*one.given, *one.taken_for_granted))
        assert all(f"{label}:" in said for label in labels), (labels, said)
        _, taken, _, _ = computed(each, one.texts)
        for name, asked in each.inputs.items():
            got = taken[name]
            if name in needs or got is None:
                continue
            others = (
                [option for option in asked.options if option != str(got.si)][:3]
                if isinstance(asked, Choice)
                else moved(asked, got.text) if isinstance(asked, Field) else []
            )
            for other in others:
                try:
                    result = answer(calculator, drawings=False, units={one.result: one.unit}, **(one.texts | {name: other}))
                except InputError:
                    continue
                key = result["results"].get(one.result, {}).get("value")
                if key is None or FOLLOWS.search(rule_names[one.result]) or _fixed(calculator, one.result, name):
                    continue  # the text gives what follows from it as a figure, or says it once for all
                moved_some += 1
                assert key == pytest.approx(one.key, rel=1e-9), (one.question, name, other)
    if calculator in ("acetylene-left", "bleed-down", "purge-time", "liquid-fuel-left", "warm-up", "leak-test"):
        assert moved_some, "the walk moved nothing, so it showed nothing"


def _fixed(calculator: str, result: str, name: str) -> bool:
    row = questions()[calculator][result]
    return name in {part.split("=")[0] for part in row.fixed_us.split(";")}


@pytest.mark.parametrize("rules", RULE_SETS)
def test_the_calculators_own_band_is_right(rules: str) -> None:
    """Both ends of its band, and what it prints, count as right, but for an end that lies less than a thousandth beyond a limit
    of the text: the text prints that limit rounded, and what it says counts."""
    met = 0
    for topic in ("gas", "hoses", "heat", "metal", "other"):
        for seed in range(1, 13):
            for one in made(topic, rules, seed):
                figure = getattr(computed(found(one.calculator), one.texts)[0].results, one.result)
                free = one.declared.free_gas
                ends = [end for end in (figure.low, figure.high) if end is not None]
                met += bool(ends)
                for end in (*ends, figure.value):
                    number = from_si(end, one.unit, free_gas=free)
                    text = f"{number:.12g} {one.unit}".strip()
                    printed = [float(said) for said in re.findall(r"\d+(?:\.\d+)?", one.rule)]
                    at_a_limit = any(said == pytest.approx(number, rel=1e-3) for said in printed)
                    if end > 0 and not at_a_limit:
                        assert judged_number(one, text).right, (one.whole_question, text, one.shown)
                assert one.tolerance <= 0.35 * one.key + 1e-9
                assert one.tolerance >= 0.03 * one.key - 1e-12
                assert f"within {one.within}" in one.whole_question or one.is_count
    assert met >= 40


PIPES = range(40)


def test_a_textbook_answer_to_a_hose_is_right() -> None:
    """Darcy and Weisbach with Blasius' 0.316/Re^0.25 and 64/Re, the gas ideal at the inlet's density: by hand."""
    mass = {"oxygen": 0.032, "acetylene": 0.026, "propane": 0.0441, "propylene": 0.0421, "methane": 0.016, "hydrogen": 0.002,
            "methylacetylene-propadiene": 0.0401}  # fmt: skip
    thick = {"oxygen": 20.3e-6, "acetylene": 10.2e-6, "propane": 8.0e-6, "propylene": 8.4e-6, "methane": 11.0e-6,
             "hydrogen": 8.8e-6, "methylacetylene-propadiene": 8.4e-6}  # fmt: skip
    met = right = 0
    for number in PIPES:
        one = problem("hose-drop", "us", dice("book", number))
        if one.result != "drop":
            continue
        given = one.si_given
        m = given["flow"] * 101325 / (8.314 * 288.15) * mass[given["gas"]]
        area = 3.14159 / 4 * given["bore"] ** 2
        reynolds = m * given["bore"] / (area * thick[given["gas"]])
        f = 64 / reynolds if reynolds < 2000 else 0.316 / reynolds**0.25
        dense = (given["gauge"] + 101325) * mass[given["gas"]] / (8.314 * given["temperature"])
        drop = f * given["length"] / given["bore"] * m**2 / (2 * area**2 * dense)
        if drop > 0.1 * (given["gauge"] + 101325):
            continue  # there the gas expands on its way, and the book says so
        met += 1
        right += judged_number(one, f"{drop / PSI:.6f} psi").right
    assert met >= 8
    assert right == met


def test_an_ideal_gas_reckoned_with_the_compressibility_given_is_right() -> None:
    met = 0
    for number in range(30):
        one = problem("oxygen-left", "us", dice("ideal", number))
        if one.result != "gas_left":
            continue
        given, z = one.si_given, float(re.search(r"gas is ([\d.]+) there", one.rule)[1])  # type: ignore[index]
        free = given["water_volume"] * (given["gauge"] + 101325) / 101325 * 288.15 / given["temperature"] / z
        assert judged_number(one, f"{from_si(free, 'ft^3', free_gas=True):.6f} ft^3").right
        met += 1
    assert met >= 8


def test_what_is_assumed_is_a_text_of_the_place() -> None:
    """A metric class meets no psi, and a class in the United States no bar."""
    for rules, foreign in (("us", r"\d bar\b"), ("iso", r"\d psi\b|\d °F|ft³/h"), ("uk", r"\d °F|ft³/h")):
        for topic in ("gas", "hoses"):
            for one in made(topic, rules, 4, 12):
                lines = [line for line in one.given if not line.endswith(": 0 psi.")]
                assert not re.search(foreign, " ".join(lines)), one.question


def test_examples_of_the_rule_sets_can_be() -> None:
    for name in offered():
        each = found(name)
        for rules in RULE_SETS:
            texts = {n: by_rules(a.example, rules) for n, a in each.inputs.items() if a.example is not None}
            assert answer(name, drawings=False, rules=rules, **texts)["results"]
