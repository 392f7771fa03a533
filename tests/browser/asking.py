"""What the tests ask of a page."""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from playwright.sync_api import Locator, Page, expect

from tests.browser.conftest import ENGINE_STARTS

GAUGE = "[name=gauge]"
NAMES_ITS_UNIT = re.compile("[a-z#\"'°%]", re.IGNORECASE)
OXYGEN = "before/oxygen-left/"
TYPES = {
    "job sheet": "./",
    "procedure": "set-up/light/",
    "calculator": OXYGEN,
    "map": "work/other-side-of-the-wall/",
    "outfit": "set-up/my-outfit/",
    "timer": "after/fire-watch/",
    "table": "tables/cylinders/",
    "wide tables": "tables/tips/",
    "colors": "tables/colours/",
    "emergencies": "trouble/",
    "emergency": "trouble/hot-cylinder/",
    "form": "class/permit/",
    "text": "before/why-acetylene-is-different/",
}
"""One page of each type."""


def wait_for_engine(page: Page) -> None:
    """Until the status line of the first calculator says that it is ready, or answers."""
    expect(page.locator("[data-engine]").first).to_contain_text(
        "ready", timeout=ENGINE_STARTS, use_inner_text=False
    )


def answer(page: Page) -> Locator:
    return page.locator("[data-answer]").first


def values(block: Locator) -> list[str]:
    """Texts of all results that a block shows."""
    return [" ".join(text.split()) for text in block.locator("[data-result] .bb-value").all_text_contents()]


def texts_of(block: Locator) -> dict[str, str]:
    """What stands in a form, as `calc.answer` takes it."""
    texts = {}
    for wrap in block.locator("[data-field]").all():
        name = wrap.get_attribute("data-field") or ""
        text = wrap.locator(f"[name='{name}']").input_value().strip()
        unit = wrap.locator("[data-unit]")
        if text and unit.count() and not NAMES_ITS_UNIT.search(text):
            text = f"{text} {unit.input_value()}".strip()
        if text:
            texts[name] = text
    return texts


def give(page: Page, selector: str, text: str) -> None:
    """Type and leave the field."""
    page.fill(selector, text)
    page.locator(selector).blur()


@contextmanager
def new_answer(page: Page) -> Iterator[None]:
    """Do something, then wait until the answer on the page is another one and holds."""
    before = answer(page).inner_html()
    yield
    page.wait_for_function(
        """before => {
            const place = document.querySelector("[data-answer]");
            return place.innerHTML !== before && !place.hasAttribute("data-stale");
        }""",
        arg=before,
        timeout=ENGINE_STARTS,
    )


def go(page: Page, address: str) -> None:
    """Follow a link of the page, so that instant navigation may keep the visit."""
    page.evaluate(
        """address => {
            const link = document.querySelector(".bb-footer a[href]").cloneNode(true);
            link.href = address;
            document.querySelector(".bb-footer").append(link);
            link.click();
        }""",
        address,
    )
    page.wait_for_function(
        """address => location.href === address
            && document.querySelector("[data-address]")?.textContent.endsWith(new URL(address).pathname)""",
        arg=address,
    )


def mark(page: Page) -> None:
    page.evaluate("window.marked = true")


def is_marked(page: Page) -> bool:
    kept: Any = page.evaluate("window.marked === true")
    return bool(kept)
