"""Which problem a number of a set is, with how much help, and what is said to an answer near the edge of right.

A link names a set by its seed alone. So the words that its dice belong to are typed here: with others every link that
a teacher has given out would bring another set.
"""

import re
from dataclasses import replace

import pytest

from calc.ask.errors import InputError
from calc.declare import RULE_SETS, Field
from calc.practice.choices import ChoiceQuestion, Part
from calc.practice.dice import Dice, dice
from calc.practice.flame_trainer import flames
from calc.practice.problems import Problem, problem
from calc.practice.sessions import practice_reply
from calc.practice.sets import blanks, level_of, problem_set, worked_example
from calc.practice.slips import slip_tolerance, wrong_answers
from calc.practice.topics import of_topic
from calc.practice.values import class_text
from calc.practice.verdicts import judged_choice, judged_number, picked

IN3 = 0.0254**3
FLAMES = ("acetylene-alone", "carburising", "slightly-reducing", "neutral", "oxidising")


def turned_over(ids: list[str], seed: int, rules: str) -> list[str]:
    """The order of a set's calculators, by Fisher and Yates from the end, with dice of these words."""
    chance, order = dice("order", seed, rules, *ids), list(ids)
    for last in range(len(order) - 1, 0, -1):
        other = chance.number() % (last + 1)
        order[last], order[other] = order[other], order[last]
    return order


@pytest.mark.parametrize(("topic", "seed", "rules", "count"), [("hoses", 3, "us", 9), ("gas", 1, "uk", 6), ("heat", 12, "iso", 8)])
def test_each_number_of_a_set_is_drawn_from_the_next_calculator_with_dice_of_its_own(
    topic: str, seed: int, rules: str, count: int
) -> None:
    made = problem_set(calculators=(), topic=topic, seed=seed, problems=count, help_wanted="ladder", rules=rules)
    order = turned_over(of_topic(topic), seed, rules)
    met: set[str] = set()
    for place, one in enumerate(made):
        assert one.number == place + 1
        name = order[place % len(order)]
        turns = (problem(name, rules, dice("problem", name, rules, seed, one.number, turn)) for turn in range(16))
        assert one.problem == next(each for each in turns if each.question not in met)
        met.add(one.problem.question)


def test_calculators_that_are_named_are_asked_in_turn_and_each_once() -> None:
    named = ("hose-volume", "purge-time", "hose-volume")
    made = problem_set(calculators=named, topic="all", seed=5, problems=4, help_wanted="bare", rules="us")
    order = turned_over(["hose-volume", "purge-time"], 5, "us")
    assert [one.problem.calculator for one in made] == order * 2
    assert {one.level for one in made} == {"bare"}


def test_the_calculator_that_cannot_be_asked_is_named_by_its_place() -> None:
    with pytest.raises(InputError) as refused:
        problem_set(calculators=("hose-volume", "metal-match"), topic="all", seed=1, problems=3, help_wanted="bare", rules="us")
    assert refused.value.field == "calculator_2"
    assert re.fullmatch(r"Calculator 2: [^.;]+; pick another\.", refused.value.message)


@pytest.mark.parametrize("count", range(1, 41))
def test_help_goes_down_the_ladder_by_thirds(count: int) -> None:
    """Worked while three times the number before is below the count, steps while below twice it, then bare."""
    for number in range(1, count + 1):
        before = 3 * (number - 1)
        wanted = "worked" if before < count else "steps" if before < 2 * count else "bare"
        assert level_of("ladder", number, count) == wanted
        assert level_of("steps", number, count) == "steps"


def test_the_worked_example_asks_the_same_of_other_figures() -> None:
    for one in problem_set(calculators=(), topic="hoses", seed=2, problems=6, help_wanted="worked", rules="us"):
        asked = one.problem
        tries = [problem(asked.calculator, "us", dice("example", asked.question, turn)) for turn in range(8)]
        fitting = [each for each in tries if each.result == asked.result and each.question != asked.question]
        assert worked_example(one) == (fitting[0] if fitting else tries[-1])


def test_every_second_step_is_left_open_and_always_the_last() -> None:
    steps = problem("hose-volume", "us", Dice(1)).steps[:1]
    for many, wanted in ((1, {0}), (2, {1}), (3, {0, 2}), (4, {1, 3}), (5, {0, 2, 4})):
        assert blanks(steps * many) == wanted


@pytest.mark.parametrize(("seed", "count"), [(1, 5), (7, 12)])
def test_flames_are_dealt_in_rounds_of_all_five_and_drawn_within_their_bands(seed: int, count: int) -> None:
    """Each band is drawn in hundredths of its width, to two places of the ratio."""
    shuffles, dealt = dice("flames", seed), list[str]()
    while len(dealt) < count:
        dealt += shuffles.shuffled(FLAMES)
    bands = {"carburising": (0.85, 0.93), "slightly-reducing": (0.96, 1.0), "neutral": (1.06, 1.12), "oxidising": (1.2, 1.6)}
    for place, (kind, question) in enumerate(zip(dealt, flames(seed, count, "us"), strict=False), start=1):
        assert question.id == f"flame-{place}"
        assert question.parts[0].right == FLAMES.index(kind)
        told = re.search(r"It was ([\d.]+) of oxygen", question.because)
        if kind == "acetylene-alone":
            assert told is None
            continue
        low, high = bands[kind]
        share = dice("ratio", seed, place, kind).below(101) / 100
        assert told
        assert float(told[1]) == pytest.approx(low + (high - low) * share, abs=0.0051)
    assert len(flames(seed, count, "us")) == count


def hose() -> Problem:
    """A problem with figures that are easily reckoned: 100 in³, right within 4."""
    return replace(problem("hose-volume", "us", Dice(3)), key=100.0, tolerance=4.0, unit="in^3", shown="100 in³")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("104 in3", "Right. The calculator says 100 in³."), ("96 in3", "Right. The calculator says 100 in³."),
        (f"{104 * IN3 * 1e6:.6f} mL", "Right. The calculator says 100 in³."),
        ("104.1 in3", "Not yet. It is too large. Look at each figure again, and at what it is counted in (in³)."),
        ("95.9 in3", "Not yet. It is too small. Look at each figure again, and at what it is counted in (in³)."),
        ("0 in3", "Not yet. It is more than nothing: look at the signs."), ("-100 in3", "Not yet. It is more than nothing: look at the signs."),
        ("100 mL", "Not yet. The number is right in in³, but the unit you wrote is mL."),
        (f"{100 * IN3 * 1e3:.6f} in3", "Not yet. The number is right in L, but the unit you wrote is in³."),
    ],
)  # fmt: skip
def test_an_answer_is_right_to_the_edge_of_its_tolerance_and_told_beyond_it(text: str, said: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("calc.practice.verdicts.wrong_answers", lambda _problem: ())
    got = judged_number(hose(), text)
    assert got.said == said
    assert got.right == said.startswith("Right")
    assert got.slip == ("unit" if "number is right" in said else "")


def test_a_known_slip_is_told_within_three_hundredths_of_it() -> None:
    made = problem("hose-volume", "us", Dice(3))
    told = wrong_answers(made)
    assert told
    for wrong in told:
        assert slip_tolerance(wrong, made) == pytest.approx(min(made.tolerance, 0.03 * wrong.value))
        for share, known in ((0.99, True), (-0.99, True), (1.02, False)):
            got = judged_number(made, f"{wrong.value + share * slip_tolerance(wrong, made):.9f} {made.unit}")
            assert not got.right
            assert (got.said == f"Not yet. This looks like a known slip: {wrong.words}.") == known
            assert (got.slip == wrong.slip) == known


def test_what_is_right_and_how_near_is_said_in_the_unit_of_the_key() -> None:
    made = hose()
    assert made.within == "4 in³"
    assert made.how_near == "Unit: in³, or another that fits. Right within 4 in³ either way."
    assert made.whole_question == f"{made.question} Give the number in in³, right within 4 in³."
    assert made.si(1.0) == pytest.approx(IN3)
    share = replace(made, unit="%", tolerance=2.54)
    assert share.within == "2.5 percentage points"
    count = replace(made, unit="", key=3.0)
    assert count.is_count
    assert count.how_near == "Answer with a whole number."
    assert count.whole_question == f"{made.question} Give a whole number."
    ratio = replace(made, unit="", key=2.5, tolerance=0.1)
    assert not ratio.is_count
    assert ratio.how_near == "Answer with a number. Right within 0.1 either way."
    assert ratio.whole_question == f"{made.question} Give the number, right within 0.1."


def question(*options: int) -> ChoiceQuestion:
    """A question of as many parts, with so many options each; the second is right."""
    parts = tuple(Part(f"Part {place}?", tuple(str(n) for n in range(many)), 1) for place, many in enumerate(options, start=1))
    return ChoiceQuestion(id="q", title="T", parts=parts, because="So it is.", page="a.md")


@pytest.mark.parametrize(
    ("options", "text", "said"),
    [
        ((4,), "5", "Your answer: there is no such option; give 1 to 4."), ((4,), "0", "Your answer: there is no such option; give 1 to 4."),
        ((3, 5), "4,1", "Your answer: there is no such option; give 1 to 3."), ((4,), "1,2", "Your answer: pick one; give 1 to 4."),
        ((3, 5), "1", "Your answer: pick one in each part; give 1 to 5."), ((4,), " " * 20 + "1", "Your answer: pick one; give 1 to 4."),
    ],
)  # fmt: skip
def test_a_pick_that_is_none_says_what_there_is(options: tuple[int, ...], text: str, said: str) -> None:
    with pytest.raises(InputError) as refused:
        picked(question(*options), text)
    assert refused.value.message == said


def test_picks_are_counted_from_one_and_half_right_is_not_right() -> None:
    assert picked(question(4), "4") == (3,)
    assert picked(question(4), " " * 19 + "1") == (0,)
    assert picked(question(3, 5), "3, 5") == (2, 4)
    for text, said in (
        ("2,2", "Right. So it is."), ("2,3", "Not yet: look again at “Part 2?” So it is."), ("1,2", "Not yet: look again at “Part 1?” So it is."),
        ("1,1", "Not yet. So it is."),
    ):  # fmt: skip
        got = judged_choice(question(3, 5), text)
        assert (got.said, got.right, got.page) == (said, said.startswith("Right"), "a.md")


def test_a_page_is_told_how_many_there_are_and_which_numbers_it_may_ask_for() -> None:
    texts = {"seed": "4", "flames": "3"}
    about = practice_reply({"set": "flame", "texts": texts})
    assert about["count"] == 3
    assert about["words"].startswith(f"Set 4: 3 to answer. Rule set: {RULE_SETS['us']}. Release ")
    assert about["end"].startswith("All 3 named.")
    for number in (1, 3):
        html = practice_reply({"set": "flame", "texts": texts, "number": number})["html"]
        assert f"<h3>{number} of 3: Name the flame</h3>" in html
        assert re.findall(r'data-practice-part="(\d)"', html) == ["1", "2"]
        assert re.findall(r'name="part-1" value="(\d)"', html) == ["1", "2", "3", "4", "5"]
    for number in (0, 4, True, "1", None, 1.0):
        with pytest.raises(InputError, match=r"^Number: there is no such question; give 1 to 3\.$"):
            practice_reply({"set": "flame", "texts": texts, "number": number})
    with pytest.raises(InputError, match="is no input of the flames"):
        practice_reply({"set": "flame", "texts": {"topic": "gas"}})
    practice_reply({"set": "flame", "texts": {"shown_in": "metric", "rules": "uk"}})


def test_help_of_a_set_is_that_of_each_number_unless_another_is_asked_for() -> None:
    texts = {"topic": "hoses", "seed": "3", "problems": "3", "help": "ladder"}
    for number, level in ((1, "worked"), (2, "steps"), (3, "bare")):
        assert f'data-level="{level}"' in practice_reply({"set": "problems", "texts": texts, "number": number})["html"]
        asked = practice_reply({"set": "problems", "texts": texts, "number": number, "level": "steps"})["html"]
        assert 'data-level="steps"' in asked
        other = practice_reply({"set": "problems", "texts": texts, "number": number, "level": "none"})["html"]
        assert f'data-level="{level}"' in other


TOPICS = {
    "gas": "acetylene-left oxygen-left liquid-fuel-left draw-limit hours-left supply-plan cylinder-weather",
    "hoses": "hose-volume bleed-down tip-flow hose-drop regulator-mark leak-test purge-time",
    "heat": "flame-power warm-up fuel-compare",
    "metal": "sheet-thickness rod-need joint-prep braze-joint",
}
"""What a teacher looks for under each topic, typed a second time: our own order, no source."""


@pytest.mark.parametrize("topic", TOPICS)
def test_a_topic_has_its_calculators_in_the_order_of_a_lesson(topic: str) -> None:
    assert of_topic(topic) == TOPICS[topic].split()
    assert set(of_topic(topic)) < set(of_topic("all"))


def drawn(field: Field, name: str) -> set[float]:
    """Every number that 900 draws give."""
    return {float(class_text(name, field, "us", Dice(seed)).split()[0]) for seed in range(900)}


@pytest.mark.parametrize(
    ("name", "unit", "usual", "steps"),
    [
        ("gross_weight", "lb", 40, (-4, -3, -2, -1, 1, 2)), ("tare_weight", "lb", 20, (-2, -1, 0, 1)), ("fuel_before", "lb", 30, (0, 1, 2, 3)),
        ("fuel_after", "lb", 20, (-3, -2, -1, 0)), ("first_gauge", "psi", 10, (-0.5, 0, 0.5)), ("last_gauge", "psi", 10, (-2, -1.5, -1)),
        ("gross_weight", "kg", 20, (-2, -1.5, -1, -0.5, 0.5, 1)), ("first_gauge", "bar", 1, (-0.02, 0, 0.02)),
    ],
)  # fmt: skip
def test_a_weight_or_gauge_of_a_pair_moves_by_whole_steps(name: str, unit: str, usual: float, steps: tuple[float, ...]) -> None:
    """A pound, half a kilogram, half a psi, a fiftieth of a bar: marks that such instruments have, our own choice."""
    got = drawn(Field("One", (unit,), example=f"{usual} {unit}"), name)
    assert sorted(got) == pytest.approx(sorted(usual + step for step in steps))


def test_other_numbers_are_round_shares_of_the_usual_one() -> None:
    """Six tenths to sixteen tenths, by two figures; a full cylinder never above itself. Shares of 1300: 780, 910, 975, 1040,
    1170, 1300, 1430, 1560, 1625, 1820, 1950 and 2080.
    """
    for usual, wanted in (
        (1000, {600, 700, 750, 800, 900, 1000, 1100, 1200, 1400, 1500, 1600}), (1300, {800, 900, 1000, 1200, 1300, 1400, 1600, 1800, 2000}),
    ):  # fmt: skip
        assert drawn(Field("Length", ("ft",), example=f"{usual} ft"), "length") == wanted
    full = Field("Full", ("psi",), example="1000 psi")
    assert drawn(full, "full_gauge") == {600, 700, 750, 800, 900, 1000}
    warm = Field("Temperature", ("degF",), example="70 degF")
    assert drawn(warm, "temperature") == {40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100}
