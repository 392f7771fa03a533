"""Every procedure is stepped through an outfit, with either kind of torch; none leaves an act unsaid."""

import re

import pytest

from calc.outfit import ACTS, TORCHES, named
from site_overrides.build.check_acts import FOLLOW, StepError, acts_of, touches, unsaid, walked
from site_overrides.build.check_pages import DOCS, procedures, read
from site_overrides.build.procedures import Procedure, procedure

MADE = [made for path in sorted(DOCS.rglob("*.md")) for made in procedures(read(path))]
KNOWN = {made.id: made for made in MADE}
WALKED = [made for made in MADE if made.begins]

PURGE = """id = "p"
title = "T"
kind = "read-then-do"
begins = "{begins}"
ends = "purged"
revised = 2026-11-30
completion = "Said."
[[pause]]
id = "a"
title = "A"
[[pause.step]]
id = "fuel"
acts = ["open fuel-torch-valve", "let-run fuel", "close fuel-torch-valve"]
do = "Open the fuel valve, let the gas run, and close it."
want = "the time has passed"
[[pause.step]]
id = "oxygen"
acts = [{oxygen}]
do = "Do the same with the oxygen."
want = "the time has passed"
[[pause.step]]
id = "clear"
acts = ["clear air"]
do = "Wait."
want = "no smell"
"""
OXYGEN = '"open oxygen-torch-valve", "let-run oxygen", "close oxygen-torch-valve"'

# What a step's words have to say for each kind of act that it declares.
WORDS = {
    "stand": r"chain|upright",
    "uncap": r"\bcaps?\b",
    "cap": r"\bcaps?\b",
    "move": r"truck|carry|cylinders? back|put it|rear|apart|upright",
    "let": r"\bwait|\btime\b|stood",
    "crack": r"\bhair\b",
    "fit": r"\bfit\b|\brun\b",
    "take-off": r"\boff\b",
    "turn-out": r"screw",
    "turn-in": r"screw|pressure|\bdo both\b",
    "open": r"\bopen\b|\blet\b|\bbleed\b|\blight\b|\bcome from\b|\bdo the same\b|\bdo both\b|\bpurge\b|\ba little more oxygen\b",
    "close": r"\bclose|\bshut\b|\bout\b|\bput\b|\bdo both\b|\bdo the same\b|\bpurge\b|\bbleed\b",
    "let-run": r"\brun\b|\bcount\b|\bflows\b|\bpurge\b|\bdo the same\b|\bdo both\b",
    "feel": r"fingertip",
    "brush": r"\bbrush|\bleak-test\b",
    "hold": r"\bwait\b|\btouch nothing\b|\bwatch the gauges\b",
    "clear": r"\bsmell\b",
    "light": r"\blight\b",
    "set": r"\bset\b|\bfeather\b|\bcone\b|\bneutral\b|\bstop\b|\boxygen\b",
    "leave": r".",
    "follow": r".",
}


@pytest.mark.parametrize("torch", TORCHES)
@pytest.mark.parametrize("made", WALKED, ids=lambda made: made.id)
def test_every_step_is_possible_when_its_turn_comes(made: Procedure, torch: str) -> None:
    outfit = walked(made, torch, KNOWN)
    assert outfit.torch == torch


@pytest.mark.parametrize("made", MADE, ids=lambda made: made.id)
def test_no_step_touches_the_outfit_without_saying_which_act(made: Procedure) -> None:
    assert unsaid(made) == []


@pytest.mark.parametrize("made", MADE, ids=lambda made: made.id)
def test_each_act_stands_in_the_words_of_its_step(made: Procedure) -> None:
    for step in (step for pause in made.pauses for step in pause.steps):
        for name in {name for torch in TORCHES for name in acts_of(step, torch)}:
            verb = name.split()[0]
            assert re.search(WORDS[verb], step.do, re.IGNORECASE), f"{step.id}: {name}: {step.do}"


# The whole path, as the page of that name has it, and the state in which each list begins and ends.
PATH = ["move", "connect", "purge", "light", "set-flame", "pause", "change", "shut-down", "put-away"]


def test_on_the_path_each_list_begins_as_the_one_before_it_ends() -> None:
    ends = KNOWN[PATH[0]].ends
    for name in PATH[1:]:
        begins = {KNOWN[name].begins, *(pause.begins for pause in KNOWN[name].pauses)}
        assert ends in begins, f"{name} begins {begins}, and the list before it ends {ends}"
        ends = KNOWN[name].ends
    assert ends == KNOWN["move"].begins, "the cylinders end where they were fetched"


def test_letting_down_on_its_own_page_is_the_middle_of_shutting_down() -> None:
    drain = next(pause for pause in KNOWN["shut-down"].pauses if pause.id == "drain")
    assert drain.begins == KNOWN["bleed"].begins
    assert KNOWN["shut-down"].ends == KNOWN["bleed"].ends


def test_the_page_of_the_whole_path_leads_to_these_lists_in_this_order() -> None:
    links = read(DOCS / "before" / "whole-path.md").links
    pages = [
        "move-and-store", "connect-and-leak-test", "purge-time", "light", "set-the-flame", "pause", "shut-down",
        "bleed-down", "put-away",
    ]  # fmt: skip
    places = [next(n for n, link in enumerate(links) if f"{page}.md" in link) for page in pages]
    assert places == sorted(places)


def test_a_purge_of_the_right_order_goes_through() -> None:
    made = procedure(PURGE.format(begins="tested", oxygen=OXYGEN))
    assert walked(made, "injector", {}) == named("purged", "injector")


@pytest.mark.parametrize(
    ("begins", "oxygen", "said"),
    [
        ("closed", OXYGEN, "no fuel comes"),
        ("let-down", OXYGEN, "no fuel comes"),
        ("tested", "", "it does not end purged"),
        ("tested", '"open oxygen-torch-valve", "let-run oxygen"', "close both torch valves first"),
        ("tested", '"close oxygen-cylinder", "open oxygen-cylinder"', "turn the oxygen screw out first"),
        ("tested", '"close oxygen-cylinder", "take-off oxygen-regulator"', "let the oxygen side down first"),
        ("tested", '"leave outfit"', "cylinder is open"),
        ("alight", OXYGEN, "put the flame out first"),
        ("tested", '"follow light"', "does not begin, at any pause point"),
    ],
)
def test_what_is_not_possible_is_found(begins: str, oxygen: str, said: str) -> None:
    made = procedure(PURGE.format(begins=begins, oxygen=oxygen))
    with pytest.raises(StepError, match=re.escape(said)):
        walked(made, "equal-pressure", KNOWN)


@pytest.mark.parametrize(
    "text",
    [
        "Shut the fuel valve of the {torch}.", "Open both cylinders slowly.", "Turn each {adjusting-screw} out.",
        "Put out every flame.", "Do the same with the oxygen.", "Purge as always.", "Light and set the flame.",
        "Brush solution on every joint.", "Take the {regulator} off.", "Close the valve.",
    ],
)  # fmt: skip
def test_words_that_touch_the_outfit_are_known(text: str) -> None:
    assert touches(text)


@pytest.mark.parametrize("text", ["Wipe the joint dry.", "Never open the cylinder valve.", "Read the label."])
def test_words_that_do_not_touch_it_are_let_be(text: str) -> None:
    assert not touches(text)


def test_a_step_without_its_acts_is_found() -> None:
    bare = re.sub(r"^acts = .*\n", "", PURGE.format(begins="tested", oxygen=OXYGEN), flags=re.MULTILINE)
    assert "step fuel touches the outfit" in " ".join(unsaid(procedure(bare)))
    nowhere = PURGE.format(begins="tested", oxygen=OXYGEN).replace('begins = "tested"\n', "")
    assert "does not say in which states" in " ".join(unsaid(procedure(nowhere)))


@pytest.mark.parametrize("wrong", ['acts = ["open window"]', 'acts = ["gasless: clear air"]'])
def test_an_act_that_no_table_has_is_refused(wrong: str) -> None:
    text = PURGE.format(begins="tested", oxygen=OXYGEN).replace('acts = ["clear air"]', wrong)
    with pytest.raises(ValueError, match="no act is named"):
        procedure(text)


def test_a_state_that_is_not_named_is_refused() -> None:
    with pytest.raises(ValueError, match="no state is named"):
        procedure(PURGE.format(begins="ready", oxygen=OXYGEN))


def test_what_a_step_follows_is_a_procedure_and_every_act_is_used() -> None:
    said = [name for made in MADE for pause in made.pauses for step in pause.steps for name in step.acts or ()]
    for name in said:
        if name.startswith(FOLLOW):
            assert name.removeprefix(FOLLOW) in KNOWN
    plain = {name.partition(": ")[2] or name for name in said}
    assert set(ACTS) <= plain | {"crack oxygen-cylinder"}, sorted(set(ACTS) - plain)
