"""The head of each page: what it is about, where it is, in words of its own; and the search waits."""

import re
from collections import Counter
from html import unescape
from pathlib import Path

import pytest

from site_overrides.build.check_pages import ROOT
from site_overrides.build.descriptions import description

SITE = ROOT / "site"
PAGES = sorted(SITE.rglob("index.html"))

pytestmark = [
    pytest.mark.site,
    pytest.mark.skipif(not PAGES, reason="the site is not built; make test builds it first"),
]


def _said(path: Path, pattern: str) -> str:
    found = re.findall(pattern, path.read_text(encoding="utf-8").split("</head>")[0])
    assert len(found) == 1, f"{path}: {pattern}"
    return unescape(found[0])


def test_each_page_says_what_it_is_about_in_words_of_its_own() -> None:
    said = {path: _said(path, r'<meta name="description" content="([^"]*)"') for path in PAGES}
    assert not [f"{path} {text}" for path, text in said.items() if not 40 <= len(text) <= 160]
    twice = [text for text, count in Counter(said.values()).items() if count > 1]
    assert twice == []
    assert not [text for text in said.values() if "torchblowpipe" in text or text.startswith("Wanted:")]


def test_each_page_has_its_title_and_one_address() -> None:
    titles = Counter(_said(path, r"<title>([^<]*)</title>") for path in PAGES)
    assert max(titles.values()) == 1
    for path in PAGES:
        address = _said(path, r'<link rel="canonical" href="([^"]*)"')
        assert address.endswith(f"/{path.parent.relative_to(SITE).as_posix()}/".replace("/./", "/"))


def test_a_description_takes_whole_sentences_outside_cautions() -> None:
    html = (
        '<h1>Purge</h1><div class="bb-caution"><strong>DANGER</strong><p>It burns.</p></div>'
        "<p>Gas runs through each hose, one after the other, until nothing else is left in it.</p>"
        f"<p>{'More words. ' * 30}</p>"
    )
    said = "Gas runs through each hose, one after the other, until nothing else is left in it."
    assert description(html, "Purge") == said
    assert description("<p>Short.</p>", "Purge") == "Purge: Short."


def test_the_search_index_waits_until_somebody_searches() -> None:
    (script,) = (SITE / "assets" / "javascripts").glob("bundle.*.min.js")
    assert '(location.protocol!=="file:"),' not in script.read_text(encoding="utf-8")
    assert all(script.name in path.read_text(encoding="utf-8") for path in PAGES)
