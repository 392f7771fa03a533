"""The one style sheet: what it keeps of the theme's, and what it may leave out."""

import re

import pytest
import tinycss2

from site_overrides.build.check_pages import ROOT
from site_overrides.build.styles import Words, can_match, cut, small

SITE = ROOT / "site"


def selector(text: str) -> list[tinycss2.ast.Node]:
    return tinycss2.parse_component_value_list(text)


@pytest.fixture
def words() -> Words:
    found = Words()
    found.feed(
        '<html dir="ltr"><body class="page wide"><p id="top" data-md-color-primary="indigo"><input type="radio">'
    )
    found.read_script(
        'e.classList.add("shown");e.dataset.mdState="x";e.setAttribute("aria-busy",1);document.dir==="rtl"'
    )
    found.read_script('make("md-tooltip__inner")')
    found.settle()
    return found


@pytest.mark.parametrize(
    "text",
    [
        ".page", "p.wide:hover", "#top", "[type=radio]:checked ~ p", "*", ":root", "::before", ".shown", "[data-md-state]",
        "[aria-busy]", "[dir=ltr] .page", "[data-md-color-primary=indigo]", ".page:not(.never)", "[id^=to]",
        "[type='radio' i]",
    ],
)  # fmt: skip
def test_what_a_page_or_script_may_bring_stays(text: str, words: Words) -> None:
    assert can_match(selector(text), words)


@pytest.mark.parametrize(
    "text",
    [
        ".never", "p.never", "#bottom", "video", "[dir=rtl] .page", "[data-md-color-primary=red]", "[type=file]",
        ".page .md-tooltip__inner",
    ],
)  # fmt: skip
def test_what_nothing_can_bring_goes(text: str, words: Words) -> None:
    assert not can_match(selector(text), words)


def test_a_rule_keeps_its_selectors_that_can_match(words: Words) -> None:
    css = "@media print{.never,.page>p{color:red}.never{top:0}}@supports (top:0){.never{top:0}}@font-face{src:url(a)}"
    assert cut(css, words) == "@media print{.page>p{color:red}}@font-face{src:url(a)}"


def test_a_property_goes_when_nothing_is_left_that_reads_it(words: Words) -> None:
    css = '.page{--a:url("data:;}");--b:var(--a);--c:var(--b);--d:1px;top:0;left:var(--d)}.never{top:var(--c)}'
    assert cut(css, words) == ".page{--d:1px;top:0;left:var(--d)}"
    assert (
        cut(css, words, "right:var( --b )")
        == '.page{--a:url("data:;}");--b:var(--a);--d:1px;top:0;left:var(--d)}'
    )


def test_making_small_changes_no_text() -> None:
    assert small('/* a */ .a  >\n .b::after { content: "a  /* b */";\n margin: 0 1px }') == (
        '.a > .b::after { content: "a  /* b */"; margin: 0 1px }'
    )


@pytest.mark.site
@pytest.mark.skipif(not SITE.is_dir(), reason="the site is not built; make test builds it first")
def test_every_page_has_the_one_sheet_and_no_property_is_read_that_it_lacks() -> None:
    (sheet,) = SITE.rglob("*.css")
    pages = [page.read_text(encoding="utf-8") for page in SITE.rglob("*.html")]
    assert all(
        re.findall(r'rel="stylesheet" href="[^"]*?([^"/]+)"', page) == [sheet.name] for page in pages
    )
    css = sheet.read_text(encoding="utf-8")
    read = set(re.findall(r"var\(\s*(--[\w-]+)\s*\)", css))
    given = set(re.findall(r"(--[\w-]+)\s*:", css + "".join(pages)))
    assert read <= given
