"""The built pages: whole, in order, labelled, and asking nobody else for anything."""

import re
from collections import Counter
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path

import pytest

from site_overrides.build.check_pages import FENCES, ROOT

SITE = ROOT / "site"
BUILT = sorted(SITE.rglob("*.html"))
VOID = {
    "area",
    "base",
    "br",
    "col",
    "embed",
    "hr",
    "img",
    "input",
    "link",
    "meta",
    "source",
    "track",
    "wbr",
}

pytestmark = [
    pytest.mark.site,
    pytest.mark.skipif(not BUILT, reason="the site is not built; make test builds it first"),
]


class Built(HTMLParser):
    """What the checks look at."""

    def __init__(self) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str]]] = []
        self.labelled: set[str] = set()
        self.inside_label: list[dict[str, str]] = []
        self.open: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        self.tags.append((tag, given))
        if tag == "label" and "for" in given:
            self.labelled.add(given["for"])
        if "label" in self.open:
            self.inside_label.append(given)
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        while tag in self.open and self.open.pop() != tag:
            pass


def built(path: Path) -> Built:
    made = Built()
    made.feed(path.read_text(encoding="utf-8"))
    return made


pages = pytest.mark.parametrize("path", BUILT, ids=lambda path: str(path.relative_to(SITE)))


@pages
def test_headings_are_one_first_and_in_order(path: Path) -> None:
    levels = [int(tag[1]) for tag, _ in built(path).tags if re.fullmatch("h[1-6]", tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


@pages
def test_ids_stand_once(path: Path) -> None:
    counted = Counter(given["id"] for _, given in built(path).tags if given.get("id"))
    assert [name for name, count in counted.items() if count > 1] == []


@pages
def test_nothing_is_fetched_from_elsewhere(path: Path) -> None:
    for tag, given in built(path).tags:
        if tag == "link" and given.get("rel") in ("canonical", "prev", "next"):
            continue
        for name in ("src", "srcset", "poster", "data", "href") if tag != "a" else ():
            assert not re.match(r"(https?:)?//", given.get(name, "")), (tag, given)


@pages
def test_every_input_has_a_name(path: Path) -> None:
    made = built(path)
    for tag, given in made.tags:
        if tag in ("input", "select", "textarea") and given.get("type") != "hidden":
            if given.get("class", "").endswith("md-toggle"):
                continue  # the theme's switches, taken out of reach by its own style
            named = given.get("aria-label") or given.get("id") in made.labelled
            assert named or given in made.inside_label, given


@pages
def test_dialogs_and_scrolling_tables_have_a_name(path: Path) -> None:
    for _, given in built(path).tags:
        if given.get("role") in ("dialog", "region"):
            assert given.get("aria-label"), given


@pages
def test_no_raw_fence_is_left(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    names = "|".join(FENCES)
    assert not re.search(f"```({names})", text)
    assert not re.search(f'class="language-({names})', text)


@pages
def test_no_power_is_written_as_a_program_writes_it(path: Path) -> None:
    text = re.sub(r"<(script|pre|code)\b.*?</\1>", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)
    assert not re.search(r"\w\*\*\d", text)


@pages
def test_every_heading_of_a_table_says_something(path: Path) -> None:
    assert not re.search(r"<th(\s[^>]*)?>\s*(</th>|<t[hrd]\b)", path.read_text(encoding="utf-8"))
