"""A procedure is refused unless it is whole, and its HTML keeps hazards with their steps."""

import re

import pytest

from calc.answer.hazards import hazards
from site_overrides.build.check_pages import DOCS
from site_overrides.build.procedures import ProcedureError, procedure, procedure_html

WHOLE = """id = "p"
title = "T"
kind = "read-then-do"
revised = 2026-11-25
completion = "Said."
[[pause]]
id = "a"
title = "First"
[[pause.step]]
id = "one"
hazard = "acetylene-limit"
do = "Open it."
want = "both gauges at zero"
[[pause]]
id = "b"
title = "Second"
[[pause.step]]
id = "two"
do = "Shut it."
want = "no hiss"
"""

FENCE = re.compile(r"^```procedure\n(.*?)^```$", re.DOTALL | re.MULTILINE)

ALL = [
    procedure(source)
    for path in sorted(DOCS.rglob("*.md"))
    for source in FENCE.findall(path.read_text(encoding="utf-8"))
]


def html(text: str) -> str:
    return procedure_html(procedure(text), lambda part: part)


@pytest.mark.parametrize(
    ("was", "becomes", "said"),
    [
        ('kind = "read-then-do"', 'kind = "whenever"', "kind says"),
        ("revised = 2026-11-25", 'revised = "lately"', "not a date"),
        ('completion = "Said."', 'completion = ""', "completion is missing"),
        ('want = "no hiss"', 'want = "checked"', "state or a value"),
        ('want = "no hiss"', 'want = ""', "want is missing"),
        ('hazard = "acetylene-limit"', 'hazard = "sharks"', "no row 'sharks'"),
        ('hazard = "acetylene-limit"', 'hazards = ["glare", "sharks"]', "no row 'sharks'"),
        ('hazard = "acetylene-limit"', 'hazards = ["glare", "glare"]', "cited twice"),
        ('hazard = "acetylene-limit"', 'hazard = "glare"\nhazards = ["closed-part"]', "for several"),
        ('hazard = "acetylene-limit"', 'hazard = {signal = "DANGER"}', "is the id of a row"),
        ('do = "Shut it."', 'do = "Shut it."\nsource = "hearsay"', "no source named"),
        ('do = "Shut it."', 'do = "Shut it."\nhow_sure = "read"', "a source is missing"),
        ('do = "Shut it."', 'do = "Shut it."\nhow_sure = "very"', "how_sure says"),
        ('id = "two"', 'id = "one"', "used twice"),
        ('do = "Shut it."', 'do = "Shut it."\ntab = "hidden"', "tab is not known"),
        ('title = "T"', "title = T", "procedure:"),
        ('do = "Shut it."', 'do = """Shut it."\nhazards = ["glare"]\n"""', "do has swallowed another line"),
        ('want = "no hiss"', 'want = """no hiss\nsource = "navy14265" """', "want has swallowed another line"),
        ('completion = "Said."', 'completion = """Said.\nacts = []"""', "completion has swallowed"),
    ],
)
def test_a_procedure_that_is_not_whole_is_refused(was: str, becomes: str, said: str) -> None:
    assert was in WHOLE
    with pytest.raises(ProcedureError, match=re.escape(said)):
        procedure(WHOLE.replace(was, becomes, 1))


def test_ten_steps_to_a_pause_point_are_refused() -> None:
    step = '[[pause.step]]\nid = "more-{}"\ndo = "Do."\nwant = "no hiss"\n'
    assert procedure(WHOLE + "".join(step.format(n) for n in range(8)))
    with pytest.raises(ProcedureError, match="at most 9"):
        procedure(WHOLE + "".join(step.format(n) for n in range(9)))


MOST_SENTENCES = 3
"""A step longer than this is not done as it is read."""


def sentences(text: str) -> list[str]:
    return [part for part in re.split(r"(?<=[.!?])[”’]?\s+(?=[A-Z{“])", text.strip()) if part]


def test_sentences_are_counted() -> None:
    assert len(sentences("Open it. {torch} valve shut? Then “Go.” Wait, at 1.5 of it.")) == 4


@pytest.mark.parametrize("made", ALL, ids=lambda made: made.id)
def test_no_step_holds_more_sentences_than_one_can_keep(made: object) -> None:
    steps = [step for pause in made.pauses for step in pause.steps]
    assert [(s.id, s.do) for s in steps if len(sentences(s.do)) > MOST_SENTENCES] == []
    assert [(s.id, s.want) for s in steps if len(sentences(s.want)) > MOST_SENTENCES] == []


def test_a_hazard_stands_in_its_step_before_the_act() -> None:
    (step,) = re.findall(r'<li class="bb-step"[^>]*data-step="one".*?</li>', html(WHOLE), re.DOTALL)
    assert step.index("WARNING") < step.index("Open it.")
    for part in ("It could kill", "Never turn its delivery gauge", "29 CFR 1910.253 (a)(2)"):
        assert step.index(part) < step.index("Open it.")


def test_each_of_several_hazards_stands_before_the_act() -> None:
    made = html(WHOLE.replace('hazard = "acetylene-limit"', 'hazards = ["glare", "closed-part"]'))
    places = [made.index(f'data-hazard="{name}"') for name in ("glare", "closed-part")]
    assert places == sorted(places)
    assert places[-1] < made.index("Open it.")


def test_a_hazard_is_never_folded_away() -> None:
    outside = re.sub(r"<details.*?</details>", "", html(WHOLE), flags=re.DOTALL)
    assert outside.count('role="note"') == 1
    assert "hidden" not in re.search(r'<div class="bb-caution[^>]*>', outside)[0]


def test_what_is_written_is_escaped() -> None:
    made = html(WHOLE.replace("Shut it.", "Shut <b>it</b>."))
    assert "<b>it" not in made
    assert "&lt;b&gt;it" in made


def test_steps_are_numbered_through_and_have_the_hooks() -> None:
    made = html(WHOLE)
    assert '<ol start="1">' in made
    assert '<ol start="2">' in made
    assert re.findall(r'data-tick="(\w+)"', made) == ["one", "two"]
    assert re.findall(r'data-pause="(\w+)"', made) == ["a", "b"]
    assert 'data-procedure="p"' in made


def test_acting_first_puts_the_kind_after_the_steps() -> None:
    later = html(WHOLE.replace("read-then-do", "do-then-confirm"))
    assert html(WHOLE).index("Revised") < html(WHOLE).index("Open it.")
    assert later.index("Revised") > later.index("Shut it.")


def test_who_was_interrupted_in_an_emergency_starts_at_the_first_act() -> None:
    assert "Start again at step 1." in html(WHOLE.replace("read-then-do", "do-then-confirm"))
    assert "Start again at the last pause point." in html(WHOLE)


@pytest.mark.parametrize("made", ALL, ids=lambda made: made.id)
def test_every_hazard_stands_before_the_act_that_it_guards(made: object) -> None:
    shown = procedure_html(made, lambda part: part)
    for step in (step for pause in made.pauses for step in pause.steps):
        (item,) = re.findall(rf'<li class="bb-step" id="{made.id}-{step.id}".*?</li>', shown, re.DOTALL)
        before, _, after = item.partition('class="bb-do"')
        assert re.findall(r'data-hazard="([a-z-]+)"', before) == list(step.hazards)
        assert "data-hazard" not in after


@pytest.mark.parametrize("made", ALL, ids=lambda made: made.id)
def test_no_step_stands_behind_a_wall_of_boxes(made: object) -> None:
    steps = [step for pause in made.pauses for step in pause.steps]
    assert [step.id for step in steps if len(step.hazards) > 2] == []


def step_of(procedure_id: str) -> list[str]:
    (made,) = (each for each in ALL if each.id == procedure_id)
    return [step.id for pause in made.pauses for step in pause.steps]


def test_shut_down_is_fuel_first_then_drained_one_gas_at_a_time() -> None:
    """US Army OD0017 paragraph 14, read; NAVEDTRA 14265, read."""
    assert step_of("shut-down")[:6] == [
        "fuel-valve", "oxygen-valve", "cylinders", "drain-fuel", "drain-oxygen", "screws-out",
    ]  # fmt: skip


def test_the_pull_is_felt_before_the_fuel_hose_is_fitted_and_before_lighting() -> None:
    steps = step_of("light")
    order = ["screws", "oxygen-open", "pull-flow", "pull", "pull-end", "fuel-open", "soap",
             "purge-fuel", "purge-oxygen", "light-injector", "neutral"]  # fmt: skip
    assert [step for step in steps if step in order] == order


def test_the_first_act_at_a_hot_cylinder_is_to_go() -> None:
    assert step_of("hot-cylinder")[0] == "leave"


def test_connecting_feels_the_pull_before_the_fuel_hose_and_soaps_before_the_wait() -> None:
    steps = step_of("connect")
    order = ["chain", "crack", "screws", "oxygen-open", "pull", "pull-end", "fuel-open", "pressure",
             "brush", "wait"]  # fmt: skip
    assert [step for step in steps if step in order] == order


@pytest.mark.parametrize(
    ("made", "order"),
    [
        ("purge", ["air", "fuel", "oxygen", "clear"]),
        ("bleed", ["shut", "fuel", "oxygen", "screws", "again"]),
        ("change", ["torch-off", "cylinders", "drain", "undo", "label", "chain", "fit", "soap", "purge"]),
    ],
)
def test_gas_is_let_out_one_at_a_time_and_before_anything_is_undone(made: str, order: list[str]) -> None:
    """NAVEDTRA 14265, 29 CFR 1910.253 (b)(5)(iii)(D), read."""
    assert [step for step in step_of(made) if step in order] == order


def test_popping_shuts_the_oxygen_first() -> None:
    """NAVEDTRA 14250, read: fire inside the torch, oxygen valve at once."""
    assert step_of("popping")[0] == "shut"
    (first,) = (
        step for made in ALL if made.id == "popping" for step in made.pauses[0].steps if step.id == "shut"
    )
    assert first.do.index("oxygen") < first.do.index("fuel")
    assert [hazards()[name].signal for name in first.hazards] == ["DANGER"]


# What a step does to the outfit, and the hazards of which it cites one, in that step and in no other.
# Gas let out: NAVEDTRA 14265 and HSE INDG459. Regulators: 29 CFR 1910.253 (b)(5)(ii)(P), (iii)(D).
# Acetylene that lay: 29 CFR 1910.253 (b)(5)(iii)(A). Joints not tested: US Army OD0017 (5).
GUARDED = {
    r"let-run fuel": {"fuel-let-out", "mixture-in-hose"},
    r"let-run oxygen": {"oxygen-let-out", "fuel-let-out", "mixture-in-hose"},
    r"feel pull": {"oxygen-let-out", "no-pull"},
    r"open (?:fuel|oxygen)-cylinder": {"regulator-bursts"},
    r"take-off (?:fuel|oxygen)-regulator": {"regulator-under-pressure"},
    r"let acetylene-stand": {"acetylene-lay"},
    r"crack (?:fuel|oxygen)-cylinder": {"crack-puff"},
    r"brush joints": {"leak-lights", "acetylene-limit", "regulator-bursts"},
}


def let_out(acts: tuple[str, ...]) -> set[str]:
    """The gases that a step lets out and shuts again with no flame lit."""
    plain = [name.rpartition(": ")[2] for name in acts]
    return {
        gas for gas in ("fuel", "oxygen")
        if {f"open {gas}-torch-valve", f"close {gas}-torch-valve"} <= set(plain) and "light torch" not in plain
    }  # fmt: skip


@pytest.mark.parametrize("made", ALL, ids=lambda made: made.id)
def test_each_act_that_can_hurt_has_its_hazard_in_its_own_step(made: object) -> None:
    missing = []
    for step in (step for pause in made.pauses for step in pause.steps):
        acts = step.acts or ()
        for pattern, wanted in GUARDED.items():
            if any(re.search(rf"\b{pattern}$", name) for name in acts) and not wanted & set(step.hazards):
                missing.append((step.id, pattern))
        for gas in sorted(let_out(acts)):
            if not {f"{gas}-let-out", "fuel-let-out", "mixture-in-hose"} & set(step.hazards):
                missing.append((step.id, f"{gas} let out"))
    assert missing == []
