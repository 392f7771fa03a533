"""What brings a hazard brings it everywhere, and an answer made of others keeps theirs."""

import ast
import re
import sys
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace
from difflib import SequenceMatcher
from itertools import combinations, product
from pathlib import Path
from types import FunctionType
from typing import Any, get_type_hints

import pytest
from hypothesis import given, settings

from calc import InputError
from calc.answer.answering import computed
from calc.answer.hazards import PARTS, alternatives, caution, hazards, ids_brought
from calc.class_plan import exercises as ladder
from calc.class_plan import one_try
from calc.declare import RULE_SETS, Choice, by_rules
from calc.declare.catalogue import calculators
from calc.job_sheet.hazards import SAID_BY_STEPS
from tests.properties.asked import texts_of
from tests.properties.test_invariants import ANSWERED, MANY
from tests.properties.test_job_sheet import JOB

ROOT = Path(__file__).parents[2]
ASKED = {
    "metal": "metal", "metal_one": "metal", "metal_two": "metal", "other_metal": "metal", "coating": "coating",
    "filler": "filler", "flux": "flux", "fuel": "fuel", "gas": "fuel", "place": "place", "process": "process",
}  # fmt: skip
"""Inputs that bring a hazard, and the part of a job that each names."""
BRINGS_NONE = {
    "eye-shade": "a shade alone; process decides it, not what fumes",
    "cylinder-weather.place": "sun or shade, not where work is done",
    "fire-watch.place": "a rule's kind of place, not where work is done",
    "storage-check.place": "where cylinders stand; its own hazards name a vehicle and a store",
    "licence-questions": "questions on paper",
    "licence-key": "answers on paper",
    "problem-set": "sums on paper: nothing is lit",
    "problem-key": "sums on paper: nothing is lit",
    "may-i-heat": "cites the table by its own reasons, the strictest first",
}
"""Calculators, or one input of them, that bring no hazard by what is picked; and why."""
KEEPS_NONE = ("problem-set", "problem-key", "licence-key", "flame")
"""These ask others for sums on paper or for points of a curve; no one works by what those say."""


def _functions() -> dict[Callable[..., Any], str]:
    return {one.function: name for name, one in calculators().items()}


def _of_trade() -> set[Callable[..., Any]]:
    """Functions that several calculators share and that return cautions with their figures."""
    found = set()
    for name, module in list(sys.modules.items()):
        for one in vars(module).values() if name.startswith("calc.trade.") else ():
            if isinstance(one, FunctionType) and one.__module__ == name:
                given = get_type_hints(one).get("return")
                if is_dataclass(given) and "cautions" in {part.name for part in fields(given)}:
                    found.add(one)
    return found


class Heard:
    """Ids of the hazards that were said inside of an answer, by calculators and what they share, while it is in place."""

    def __init__(self, patch: pytest.MonkeyPatch) -> None:
        self.depth = 0
        self.inner: set[str] = set()
        wrapped = {function: self._wrap(function) for function in _functions()}
        wrapped |= {function: self._wrap(function, inside=1) for function in _of_trade()}
        for name, module in list(sys.modules.items()):
            if name.split(".")[0] == "calc":
                for key, value in list(vars(module).items()):
                    if callable(value) and getattr(value, "__hash__", None) and value in wrapped:
                        patch.setattr(module, key, wrapped[value])
        for name, one in list(calculators().items()):
            patch.setitem(calculators(), name, replace(one, function=wrapped[one.function]))

    def _wrap(self, function: Callable[..., Any], inside: int = 0) -> Callable[..., Any]:
        def run(*given: Any, **named: Any) -> Any:
            self.depth += 1
            try:
                got = function(*given, **named)
            finally:
                self.depth -= 1
            if self.depth + inside:
                self.inner |= {one.id for one in got.cautions}
            return got

        return run

    def ask(self, calculator: str, texts: dict[str, str]) -> tuple[set[str], set[str]] | None:
        """Ids that the answer says, and those that were said inside of it; None where it is refused."""
        self.inner = set()
        one_try.one_try.cache_clear()
        try:
            got, *_ = computed(calculators()[calculator], texts)
        except InputError:
            return None
        return {one.id for one in got.cautions}, set(self.inner)


@pytest.fixture
def heard(monkeypatch: pytest.MonkeyPatch) -> Iterator[Heard]:
    yield Heard(monkeypatch)
    one_try.one_try.cache_clear()


def _said_elsewhere(calculator: str) -> set[str]:
    """Hazards that the answer leaves to a place that it names."""
    if calculator == "class-plan":
        lesser = {name for name, row in hazards().items() if row.signal not in one_try.GRAVE}
        return lesser | {"draw-over", "draw-never"} | set(SAID_BY_STEPS)
    return set(SAID_BY_STEPS) if calculator == "job-sheet" else set()


def _jobs() -> Iterator[dict[str, str]]:
    inputs = calculators()["job-sheet"].inputs
    for process, metal, coating in product(*(inputs[name].options for name in ("process", "metal", "coating"))):  # type: ignore[union-attr]
        fuel = "propane" if process in ("cutting", "heating") else "acetylene"
        yield JOB | {"process": process, "metal": metal, "coating": coating, "stripped": "yes", "fuel": fuel}
    for process, fuel in product(*(inputs[name].options for name in ("process", "fuel"))):  # type: ignore[union-attr]
        metal = "copper" if process == "soldering" else "low-carbon-steel"
        yield JOB | {"process": process, "metal": metal, "fuel": fuel}


def test_every_job_passes_on_what_it_asks_and_what_its_parts_bring(heard: Heard) -> None:
    answered = 0
    for texts, rules in product(_jobs(), ("us", "uk")):
        got = heard.ask("job-sheet", texts | {"rules": rules})
        if got is None:
            continue
        answered += 1
        said, inner = got
        assert inner - said <= _said_elsewhere("job-sheet"), texts
        parts = {name: texts[name] for name in ("metal", "coating", "fuel", "process")} | {"place": "indoors"}
        assert set(ids_brought(parts)) <= said, texts
    assert answered > 100


OTHERS = {
    "rod-need": ("welding", "braze-welding"),
    "joint-prep": ("welding", "braze-welding"),
    "weld-heat": ("welding",),
    "tip-choice": ("welding", "braze-welding", "brazing", "soldering", "cutting", "heating"),
    "ventilation": ("welding", "braze-welding", "brazing", "soldering", "cutting", "heating"),
    "hot-work-zone": ("welding", "brazing", "soldering", "cutting", "heating"),
    "eye-shade": ("welding", "brazing", "soldering", "cutting", "heating"),
    "cut-plate": ("cutting",),
    "warm-up": ("heating",),
}
"""Calculators that the same job could be taken to, and the processes that they know."""
OF_THEM_ALONE = {
    "hot-work-zone": {"combustible-panel"},  # the wall is asked there alone; unknown counts as one that burns
    "tip-choice": {"draw-over", "draw-never", "tip-number", "old-text-gas"},
    "ventilation": {"leak-beside"},
    "weld-heat": {"puddle-drops"},
    "warm-up": {"heating-tip-draw", "soak-thick"},
}
"""What only their own further questions bring: a draw, a leak, a hole melted."""


def _examples(calculator: str) -> dict[str, str]:
    return {
        name: by_rules(asked.example, "us")
        for name, asked in calculators()[calculator].inputs.items()
        if asked.example is not None
    }


@pytest.mark.parametrize("other", OTHERS)
def test_a_job_sheet_says_all_that_another_calculator_says_of_the_job(other: str) -> None:
    asked = calculators()[other].inputs
    compared = 0
    for texts in _jobs():
        if texts["process"] not in OTHERS[other]:
            continue
        picked = {name: texts[name] for name in ("process", "metal", "coating", "fuel") if name in asked}
        given_to = _examples(other) | picked
        if "thickness" in asked:
            given_to["thickness"] = texts["thickness"]
        try:
            sheet, *_ = computed(calculators()["job-sheet"], texts)
            got, *_ = computed(calculators()[other], given_to)
        except InputError:
            continue
        compared += 1
        missing = {one.id for one in got.cautions} - {one.id for one in sheet.cautions}
        assert missing <= OF_THEM_ALONE.get(other, set()), (texts, missing)
    assert compared


@pytest.mark.parametrize("rules", RULE_SETS)
def test_a_plan_passes_on_every_exercise(heard: Heard, rules: str) -> None:
    for exercise in ladder.exercises(rules):
        texts = _examples("class-plan") | {"exercise_1": exercise, "rules": rules}
        del texts["exercise_2"]
        got = heard.ask("class-plan", texts)
        assert got is not None, exercise
        said, inner = got
        assert inner, exercise
        assert inner - said <= _said_elsewhere("class-plan"), exercise


@pytest.mark.parametrize("name", [name for name in calculators() if name not in KEEPS_NONE])
def test_whatever_asks_another_keeps_its_hazards(heard: Heard, name: str) -> None:
    @settings(MANY, max_examples=15)
    @given(texts=texts_of(calculators()[name]), fixed=ANSWERED.get(name, texts_of(calculators()[name])))
    def hold(texts: dict[str, str], fixed: dict[str, str]) -> None:
        got = heard.ask(name, texts | (fixed if name in ANSWERED else {}))
        if got is not None:
            said, inner = got
            assert inner - said <= _said_elsewhere(name)

    hold()


def _picks() -> list[Any]:
    return [
        pytest.param(name, asked, option, id=f"{name}-{asked}-{option}")
        for name, one in calculators().items()
        for asked, declared in one.inputs.items()
        if asked in ASKED and isinstance(declared, Choice) and name not in BRINGS_NONE
        and f"{name}.{asked}" not in BRINGS_NONE
        for option in declared.options
    ]  # fmt: skip


@pytest.mark.parametrize(("name", "asked", "option"), _picks())
def test_what_is_picked_brings_its_hazards(name: str, asked: str, option: str) -> None:
    texts = _examples(name) | {asked: option}
    try:
        got, taken, *_ = computed(calculators()[name], texts)
    except InputError:
        return
    if taken[asked] is None:
        return
    assert set(ids_brought({ASKED[asked]: option})) <= {one.id for one in got.cautions}


def test_nothing_is_excused_that_is_not_there() -> None:
    for excused in BRINGS_NONE:
        name, _, asked = excused.partition(".")
        assert name in calculators()
        assert not asked or asked in calculators()[name].inputs


def test_what_a_row_waits_for_can_be_picked() -> None:
    offered: dict[str, set[str]] = {part: set() for part in PARTS}
    for one in calculators().values():
        for name, asked in one.inputs.items():
            if name in ASKED and isinstance(asked, Choice):
                offered[ASKED[name]] |= set(asked.options)
    offered["work"] = offered["process"]
    for row in hazards().values():
        for alternative in alternatives(row.brought_by):
            for part, ids in alternative.items():
                assert set(ids) <= offered[part], row.id


def test_only_the_table_makes_a_caution() -> None:
    makers = set()
    for path in (ROOT / "calc").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and "Caution" in (getattr(node.func, "id", ""), getattr(node.func, "attr", "")):
                makers.add(path.relative_to(ROOT).as_posix())
    assert makers == {"calc/answer/hazards.py"}


def test_every_id_that_the_code_cites_is_in_the_table() -> None:
    for path in (ROOT / "calc").rglob("*.py"):
        for name in re.findall(r'\bcaution\(\s*"([a-z-]+)"', path.read_text(encoding="utf-8")):
            assert name in hazards(), (path.name, name)


def test_no_two_rows_tell_one_hazard() -> None:
    degrees = {"draw-never", "draw-over"}
    harming = [row for row in hazards().values() if row.signal != "NOTICE"]
    for one, other in combinations(harming, 2):
        if {one.id, other.id} == degrees:
            continue
        likeness = SequenceMatcher(None, one.hazard, other.hazard)
        assert likeness.quick_ratio() < 0.8 or likeness.ratio() < 0.8, (one.id, other.id)


def test_a_row_needs_what_fills_it() -> None:
    with pytest.raises(ValueError, match="not filled"):
        caution("leak-hides")
    assert "2 cfh" in caution("leak-hides", hidden="2 cfh").text


def test_no_page_of_a_job_has_more_than_two_dangers() -> None:
    """DANGER is for what kills at once or surely, so that it is still read."""
    for texts in _jobs():
        try:
            got, *_ = computed(calculators()["job-sheet"], texts)
        except InputError:
            continue
        kills = [one.id for one in got.cautions if one.signal == "DANGER" and not one.id.startswith("draw-")]
        assert len(kills) <= 2, (texts, kills)
