"""Words of the reader's own, days, and the folds of a form."""

import datetime
import re
from dataclasses import dataclass
from typing import Annotated

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import InputError
from calc.answer.answering import answer
from calc.ask.words_and_days import day_of, words_of
from calc.declare import Answer, Day, Field, Figure, Shown, Words, calculator
from calc.declare.catalogue import calculators
from calc.declare.declaration import DECLARED
from calc.show.form import block

NAME = Words("Your name for it", longest=12, optional=True, group="Tip 1")
MADE = Day("Made on", earliest="1990-01-01", latest="2030-12-31", optional=True, group="Tip 1")
TODAY = Day("Today", today=True, optional=True)


@dataclass(frozen=True, slots=True)
class Said:
    """What came in."""

    name: Annotated[Figure, Shown("Name", words=True)]
    age: Annotated[Figure | None, Shown("Age", ("d",))]


@pytest.fixture(autouse=True)
def declared() -> object:
    @calculator("own-words", "Own words")
    def own_words(
        number: Annotated[float | None, Field("Number", ("",), optional=True)],
        name: Annotated[str | None, NAME],
        made: Annotated[datetime.date | None, MADE],
        today: Annotated[datetime.date | None, TODAY],
    ) -> Answer[Said]:
        """A calculator of a test."""
        age = Figure((today - made).days * 86400.0, "", "practice") if made and today else None
        assert number is None
        return Answer(Said(Figure(None, "", "practice", words=name or "none"), age))

    calculators()["own-words"] = getattr(own_words, DECLARED)
    yield
    del calculators()["own-words"]


def test_words_and_days_reach_the_calculator_as_what_they_are() -> None:
    got = answer("own-words", name="  blue handle ", made="2025-11-25", today="2026-11-25")
    assert got["results"]["name"]["text"] == "blue handle"
    assert got["results"]["age"]["si"] == 365 * 86400
    assert got["inputs"]["made"] == {
        "label": "Made on", "text": "2025-11-25", "value": "2025-11-25", "unit": "",
    }  # fmt: skip


def test_today_is_never_taken_from_a_clock_in_python() -> None:
    got = answer("own-words", made="2025-11-25")
    assert "today" not in got["inputs"]
    assert "age" not in got["results"]


@pytest.mark.parametrize(
    "text", ["", " ", "x" * 13, "<b>", "a>b", "two\nlines", "bell\x07", "turn\u202eround", "half\ud800"]
)
def test_words_that_will_not_do_are_refused_with_a_sentence(text: str) -> None:
    with pytest.raises(InputError, match=r"^Your name for it: .*\.$"):
        words_of("name", NAME, text)


@pytest.mark.parametrize(
    "text",
    ["", "soon", "2026-02-29", "2026-13-01", "26-11-25", "25.11.2026", "2026-11-25T00:00", "٢٠٢٦-١١-٢٥",
     "1989-12-31", "2031-01-01", "0000-01-01", "2026-11-25" * 1000],
)  # fmt: skip
def test_days_that_will_not_do_are_refused_with_a_sentence(text: str) -> None:
    with pytest.raises(InputError, match=r"^Made on: .*1990-01-01 to 2030-12-31.*\.$") as refused:
        day_of("made", MADE, text)
    assert len(refused.value.message) < 200


@given(st.dates(datetime.date(1990, 1, 1), datetime.date(2030, 12, 31)))
def test_every_day_in_range_is_read(day: datetime.date) -> None:
    assert day_of("made", MADE, f" {day.year:04}-{day.month:02}-{day.day:02} ") == day


@given(st.text(max_size=30))
def test_whatever_is_typed_is_taken_without_markup_or_refused(text: str) -> None:
    try:
        words = words_of("name", NAME, text)
    except InputError as refused:
        said = refused.listed()[0]["message"]
        assert re.fullmatch(r"Your name for it: .*\.", said)
        return
    assert words == text.strip()
    assert not re.search(r"[<>\x00-\x1f]", words)
    got = answer("own-words", name=text)
    assert got["results"]["name"]["text"] == words


def test_a_group_is_a_fold_of_its_own() -> None:
    form = block("own-words")
    fold = re.search(r'<details class="bb-assumed"><summary>Tip 1</summary>.*?</details>', form, re.DOTALL)
    assert fold
    assert re.findall(r'data-field="(\w+)"', fold[0]) == ["name", "made"]
    assert 'maxlength="12"' in fold[0]
    assert 'type="date" min="1990-01-01" max="2030-12-31"' in fold[0]
    assert form.count('<details class="bb-assumed">') == 1


def test_a_form_without_examples_says_nothing_of_examples_and_folds_nothing_else() -> None:
    form = block("own-words")
    assert "are examples" not in form
    assert form.index('data-field="number"') < form.index("<summary>Tip 1")
    assert re.search(r'type="date"[^>]*data-today', form)


def test_what_is_typed_is_escaped_where_it_is_shown() -> None:
    assert "&amp; &quot;3&quot;" in block("own-words", {"name": '& "3"'})
