"""Inputs that are asked only with certain choices."""

import re
from dataclasses import dataclass
from typing import Annotated

import pytest

from calc import InputError
from calc.answer.answering import answer
from calc.declare import Answer, Calculator, Choice, DeclarationError, Field, Figure, Shown, calculator
from calc.declare.catalogue import calculators
from calc.declare.declaration import DECLARED
from calc.show.form import block

WORK = {"welding": "Weld", "cutting": "Cut"}


@dataclass(frozen=True, slots=True)
class Asked:
    """What came in."""

    cuts: Annotated[Figure | None, Shown("Cuts")]
    work: Annotated[Figure, Shown("Work", words=True)]


@pytest.fixture(autouse=True)
def declared() -> object:
    @calculator("asked-when", "Asked when")
    def asked_when(
        work: Annotated[str, Choice("Work", WORK, assumed="welding")],
        cuts: Annotated[
            float | None, Field("Cuts", ("",), example="2", low="1", high="9", when={"work": ("cutting",)})
        ],
    ) -> Answer[Asked]:
        """A calculator of a test."""
        figure = None if cuts is None else Figure(cuts, "", "practice")
        return Answer(Asked(figure, Figure(None, "", "practice", words=work)))

    calculators()["asked-when"] = getattr(asked_when, DECLARED)
    yield
    del calculators()["asked-when"]


def test_what_is_not_asked_is_neither_needed_nor_read() -> None:
    for texts in ({}, {"cuts": "rhubarb"}, {"cuts": "99"}):
        got = answer("asked-when", **texts)
        assert list(got["results"]) == ["work"]
        assert "cuts" not in got["inputs"]


def test_what_is_asked_is_needed_and_held_to_its_range() -> None:
    assert answer("asked-when", work="cutting", cuts="3")["results"]["cuts"]["value"] == 3
    for texts in ({}, {"cuts": "99"}):
        with pytest.raises(InputError, match=r"^Cuts: "):
            answer("asked-when", work="cutting", **texts)


def test_a_wrong_choice_is_named_alone() -> None:
    with pytest.raises(InputError, match=r"^Work: ") as refused:
        answer("asked-when", work="moon")
    assert len(refused.value.listed()) == 1


def test_the_form_hides_what_is_not_asked() -> None:
    assert 'data-field="cuts" data-when="{&quot;work&quot;: [&quot;cutting&quot;]}" hidden' in block(
        "asked-when"
    )
    assert 'data-field="cuts" data-when="{&quot;work&quot;: [&quot;cutting&quot;]}">' in block(
        "asked-when", {"work": "cutting"}
    )


@pytest.mark.parametrize("made", list(calculators().values()), ids=list(calculators()))
def test_a_choice_stands_in_the_form_before_what_waits_for_it(made: Calculator) -> None:
    """The page reads the form from the top: a choice further down would never show what waits for it."""
    order = re.findall(r'data-field="(\w+)"', block(made.id))
    for name, asked in made.inputs.items():
        for choice in asked.when or {}:
            assert order.index(choice) < order.index(name), name


@pytest.mark.parametrize("when", [{"later": ("cutting",)}, {"work": ("painting",)}, {"cuts": ("1",)}])
def test_waiting_for_no_earlier_choice_stops_the_import(when: dict[str, tuple[str, ...]]) -> None:
    with pytest.raises(DeclarationError, match=r"is asked when .* no earlier choice has these options"):

        @calculator("asked-wrong", "Asked wrong")
        def asked_wrong(
            work: Annotated[str, Choice("Work", WORK, assumed="welding")],
            cuts: Annotated[float, Field("Cuts", ("",), example="2", low="1", high="9", when=when)],
            later: Annotated[str, Choice("Later", WORK, assumed="welding")],
        ) -> Answer[Asked]:
            """A calculator of a test."""
            raise NotImplementedError
