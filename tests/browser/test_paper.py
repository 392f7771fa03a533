"""Every page type on Letter and A4: whole, with its cautions and sources, without its form."""

import io
import re
import unicodedata

import pytest
from playwright.sync_api import Page
from pypdf import PdfReader

from tests.browser.asking import TYPES

pytestmark = pytest.mark.browser

SIZES = {"Letter": 816, "A4": 794}  # px wide
MARGIN = 38  # px, 10 mm

WORDS = """() => {
    const shown = (each) => each.checkVisibility({ visibilityProperty: true });
    const texts = (selector) => Array.from(document.querySelectorAll(`article ${selector}`)).filter(shown)
        .map((each) => each.innerText);
    return { cautions: texts(".bb-caution"), sources: texts(":is(.bb-source, .bb-sources li, .bb-basis li)"),
        headings: texts("th"), title: document.querySelector("h1").textContent };
}"""
WIDE = """width => Array.from(document.querySelectorAll("article :is(table, svg, pre, p, dl, ul)"))
    .filter((each) => each.checkVisibility() && each.getBoundingClientRect().right > width + 1)
    .map((each) => each.outerHTML.slice(0, 100))"""


def _squeezed(text: str) -> str:
    """A text without blanks and hyphens, which paper puts where it likes, and without ligatures."""
    return re.sub(r"[\s\u00ad\u2010-]+", "", unicodedata.normalize("NFKC", text))


@pytest.mark.parametrize("path", TYPES.values(), ids=list(TYPES))
def test_a_page_is_whole_on_paper(page: Page, path: str) -> None:
    page.goto(path)
    page.wait_for_selector("[data-offline-status]", state="attached")
    page.emulate_media(media="print")
    for size, width in SIZES.items():
        page.set_viewport_size({"width": width - 2 * MARGIN, "height": 1000})
        assert page.evaluate(WIDE, width - 2 * MARGIN) == [], f"cut off on {size}"
        wanted = page.evaluate(WORDS)
        margins = dict.fromkeys(("top", "right", "bottom", "left"), f"{MARGIN}px")
        sheets = PdfReader(io.BytesIO(page.pdf(format=size, margin=margins))).pages
        texts = [sheet.extract_text() for sheet in sheets]
        assert all(len(text.split()) > 3 for text in texts), f"an empty sheet of {size}"
        printed = _squeezed("".join(texts))
        for kind in ("cautions", "sources", "headings"):
            lost = [text for text in wanted[kind] if _squeezed(text) not in printed]
            assert lost == [], f"{kind} not on {size}"
        assert not re.search(
            r"\b(Calculate|Clear the examples|Copy link|Save for offline)\b", " ".join(texts)
        )
        assert "Release" in " ".join(texts)
        assert wanted["sources"] or not wanted["cautions"]
