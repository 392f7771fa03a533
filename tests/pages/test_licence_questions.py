"""Every written question is whole under its rule set, rests on a row of the tables, and takes the site's one order."""

import csv
import re
from collections import Counter

import pytest

from calc.data.tables import HOW_SURE, graded
from calc.data.texts import filled_text
from calc.declare import RULE_SETS
from calc.practice.licence import LETTERS, TABLE, asked, by_topic, questions
from site_overrides.build.check_pages import _FIGURE, _SAFE, DOCS, ROOT, procedures, read

ALL = questions()
TOPICS = {
    "Cylinders", "Acetylene", "Oxygen", "Fit and open", "Leak test and purge", "Light and hold", "Eyes and dress",
    "The place", "What is heated", "Fume and air", "When something goes wrong", "Shut down and watch", "Hoses and store",
}  # fmt: skip
FIRST_ACTS = {
    "squeal": ("flashback", "oxygen", "oxygen valve of the {torch}"),
    "pop": ("popping-and-starving", "shut", "oxygen"),
    "valve-fire": ("valve-fire", "shut", "one try"),
    "hot-cylinder": ("hot-cylinder", "leave", "go"),
}
"""Question: page of docs/trouble, its first step, and words that stand in step and answer."""


def held_rows() -> set[tuple[str, str]]:
    """Source and grade of every row of every other table."""
    found = set()
    for path in (ROOT / "calc" / "data").glob("*.csv"):
        if path.stem != TABLE:
            rows = list(csv.reader(path.read_text(encoding="utf-8").splitlines()))
            found |= {(row[-2], graded(row[-2], row[-1])) for row in rows[1:] if row}
    return found


HELD = held_rows()
each = pytest.mark.parametrize("one", ALL, ids=lambda one: one.id)


@each
def test_it_rests_on_a_row_that_is_held(one: object) -> None:
    assert (one.source, one.how_sure) in HELD
    assert one.how_sure in HOW_SURE


@each
def test_its_page_is_there(one: object) -> None:
    assert (DOCS / one.page).is_file()


@each
def test_every_text_is_filled_and_four_options_differ(one: object) -> None:
    for rules in [one.rules] if one.rules else RULE_SETS:
        texts = [filled_text(text, rules) for text in one.texts]
        assert not any("{" in text or "}" in text or not text.strip() for text in texts)
        options = [text.lower().rstrip(".") for text in texts[1:5]]
        assert len(set(options)) == 4
        right = options.pop(one.right)
        assert right not in options


@each
def test_no_figure_is_typed_and_nothing_is_called_harmless(one: object) -> None:
    for text in one.texts:
        plain = re.sub(r"\{[a-z0-9-]+\}", "", text)
        assert not _FIGURE.search(plain)
        assert not _SAFE.search(plain)
    assert len(one.because) > 20, "a wrong answer is met with a reason"


def test_ids_stand_once_and_numbers_run_on() -> None:
    assert len({one.id for one in ALL}) == len(ALL)
    assert [one.number for one in ALL] == list(range(1, len(ALL) + 1))


@pytest.mark.parametrize("rules", RULE_SETS)
def test_every_topic_is_asked_and_the_paper_has_a_size(rules: str) -> None:
    assert set(by_topic(asked(rules))) == TOPICS
    assert 30 <= len(asked(rules)) <= 40


@pytest.mark.parametrize("rules", RULE_SETS)
def test_a_question_of_one_rule_set_is_asked_under_that_alone(rules: str) -> None:
    for name in ("limit", "hose"):
        assert [one.id for one in asked(rules) if re.fullmatch(f"{name}-(us|iso|uk)", one.id)] == [
            f"{name}-{rules}"
        ]


@pytest.mark.parametrize("rules", RULE_SETS)
def test_no_letter_gives_the_answer_away(rules: str) -> None:
    counted = Counter(one.letter for one in asked(rules))
    assert set(counted) == set(LETTERS)
    assert max(counted.values()) <= 0.4 * len(asked(rules))


@pytest.mark.parametrize("question", FIRST_ACTS)
def test_the_first_act_is_that_of_the_emergency_page(question: str) -> None:
    page, step_id, words = FIRST_ACTS[question]
    (one,) = (each for each in ALL if each.id == question)
    assert one.page == f"trouble/{page}.md"
    (made,) = procedures(read(DOCS / one.page))
    first = made.pauses[0].steps[0]
    assert first.id == step_id
    assert words in first.do.lower()
    assert words in one.options[one.right].lower()
