"""The place of a set on a page, read without a script."""

import re

import pytest

from calc.practice import choices
from site_overrides.build.fences import parts
from site_overrides.build.practice import learners_html, practice_html
from tests.properties.questions import ROWS


def test_a_problem_stands_there_with_its_answer_in_a_fold() -> None:
    html = practice_html("problems")
    assert html.count("<details") >= 2
    assert "Answer: <strong>" in html
    assert "<strong>How much do the hoses hold inside?</strong>" in html
    assert 'role="status"' in html
    assert re.search(r"<form [^>]*hidden", html)


def test_a_flame_stands_there_with_its_name_in_a_fold() -> None:
    html = practice_html("flame")
    before, _, fold = html.partition('<details class="bb-help"><summary>The answer')
    assert "<svg" in before
    assert "Which flame is it? <strong>" in fold
    assert html.count("<svg") == 1


def test_written_questions_stand_there_with_their_answers(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(choices, "_rows", lambda _name: ROWS)
    html = practice_html("licence")
    assert html.count("<fieldset") == 3
    assert "Soap &amp; &lt;b&gt;water&lt;/b&gt;" in html
    assert html.count("The answer</summary>") == 3
    names = re.findall(r'name="(q\d+-\d+)"', html)
    assert len(set(names)) == 3  # one group of choices a question
    monkeypatch.setattr(choices, "_rows", lambda _name: ())
    assert "There are no questions here yet." in practice_html("licence")


def test_no_id_stands_twice() -> None:
    for kind in ("problems", "flame"):
        ids = re.findall(r' id="([^"]+)"', practice_html(kind))
        assert len(set(ids)) == len(ids)


def test_a_wrong_setting_stops_the_build() -> None:
    with pytest.raises(ValueError, match="there is no set 'x'"):
        practice_html("x")
    with pytest.raises(ValueError, match="makes no set"):
        learners_html("oxygen-left")
    assert parts("practice\nset = link\nof = problem-set")[1] == {"set": "link", "of": "problem-set"}
    assert 'data-learners-link="problem-set"' in learners_html("problem-set")
