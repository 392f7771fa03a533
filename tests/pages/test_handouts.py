"""Questions, key and cards as they stand in a page."""

import re
from html import escape

import pytest
from markdown import Markdown
from pymdownx.superfences import SuperFencesException

from calc.data.tables import table
from calc.practice.licence import questions
from site_overrides.build import fences
from site_overrides.build.check_pages import _FIGURE, _SAFE, DOCS
from site_overrides.build.questions import address

CARDS = """cards
introduction-benchbook-2026
where = evening: 1
title = block
minutes = minute, length
hazards = hazards
lines = materials: Ready, say: Say, do: Each learner
pages = pages"""


def html(fence: str) -> str:
    custom = [
        {"name": name, "class": name, "format": getattr(fences, name)} for name in ("cards", "questions")
    ]
    md = Markdown(
        extensions=["pymdownx.superfences", "site_overrides.build.figures"],
        extension_configs={"pymdownx.superfences": {"custom_fences": custom}},
    )
    return md.convert(f"# A\n\n```{fence}\n```")


def longest_part(text: str) -> str:
    """The longest part of a text between its figures and words."""
    return max(re.split(r"\{[a-z0-9-]+\}", text), key=len)


def test_the_paper_asks_every_question_with_four_letters_and_gives_nothing_away() -> None:
    paper = html("questions\npaper")
    assert [int(n) for n in re.findall(r'<li class="bb-question[^"]*" value="(\d+)"', paper)] == [
        one.number for one in questions()
    ]
    assert paper.count("bb-letter") == 4 * len(questions())
    for one in questions():
        assert escape(longest_part(one.because)) not in paper
    assert "{" not in paper


def test_the_key_gives_letter_reason_page_and_source_under_the_same_numbers() -> None:
    key = html("questions\nkey")
    for one in questions():
        entry = re.search(rf'<li class="bb-question[^"]*" value="{one.number}">.*?</li>', key, re.DOTALL)[0]
        assert f"<b>{one.letter}: " in entry
        assert f'href="{address(one.page)}"' in entry
        assert f"<b>{one.number}</b> {one.letter}</li>" in key
        assert escape(longest_part(one.because)) in entry
    assert len(re.findall(r"<b>\d+</b> [A-D]</li>", key)) == len(questions())


def test_a_question_of_one_rule_set_is_left_out_under_the_others() -> None:
    paper = html("questions\npaper")
    for one in questions():
        looks = re.search(rf'<li class="bb-question ([^"]*)" value="{one.number}"', paper)[1].split()
        wanted = [f"bb-for-{one.rules}"] if one.rules else ["bb-for-us", "bb-for-iso", "bb-for-uk"]
        assert looks == wanted


@pytest.mark.parametrize(
    ("page", "seen"),
    [
        ("set-up/light.md", "../../set-up/light/"),
        ("trouble/index.md", "../../trouble/"),
        ("class/licence.md", "../../class/licence/"),
    ],
)
def test_an_address_is_seen_from_a_page_of_the_class(page: str, seen: str) -> None:
    assert (DOCS / page).is_file()
    assert address(page) == seen


def test_a_card_shows_its_hazards_before_its_lines() -> None:
    cards = html(CARDS)
    card = next(c for c in cards.split('<section class="bb-card') if "Watch the first flame" in c)
    assert 0 < card.index("bb-warning") < card.index("<b>Ready:</b>") < card.index("<b>Say:</b>")
    assert "85 to 95 min: Watch the first flame" in card


def test_a_card_of_one_rule_set_says_so_and_is_left_out_under_the_others() -> None:
    cards = html(CARDS)
    card = next(c for c in cards.split('<section class="bb-card') if "Looks after the class" in c)
    assert card.startswith(' bb-for-iso bb-for-uk"')
    assert "Europe (ISO and EN), United Kingdom only." in card


@pytest.mark.parametrize(
    "block",
    [
        "questions\nletters",
        "questions\n",
        "cards\nno-such-table\ntitle = a\nlines = a: A",
        CARDS.replace("title = block", "title = nothing"),
        CARDS.replace("say: Say", "nothing: Say"),
        CARDS.replace("evening: 1", "evening: 9"),
    ],
)
def test_a_block_that_fails_stops_the_build(block: str) -> None:
    with pytest.raises(SuperFencesException):
        html(block)


@pytest.mark.parametrize(
    "name", ["staged-faults-benchbook-2026", "introduction-benchbook-2026", "curricula-benchbook-2026"]
)
def test_no_figure_is_typed_into_a_card_and_nothing_is_called_harmless(name: str) -> None:
    for row in table(name):
        for text in (text for text in row[:-2] if isinstance(text, str)):
            plain = re.sub(r"\{[a-z0-9-]+\}", "", text)
            assert not _FIGURE.search(plain), text
            assert not _SAFE.search(plain), text
