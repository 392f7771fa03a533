"""Open to all: axe, the keyboard alone, narrow screens."""

from typing import Any

import pytest
from playwright.sync_api import Page, expect

from site_overrides.build.node import node_modules
from tests.browser.asking import GAUGE, OXYGEN, go, wait_for_engine

pytestmark = pytest.mark.browser

PHONE = {"width": 360, "height": 740}
DESK = {"width": 1280, "height": 800}
NARROW = {"width": 320, "height": 640}


AXE = node_modules() / "axe-core" / "axe.min.js"
CONTRAST = {"runOnly": {"type": "rule", "values": ["color-contrast"]}}
OF_THE_WIDTH = {
    "runOnly": {
        "type": "rule",
        "values": ["scrollable-region-focusable", "target-size", "aria-hidden-focus"],
    }
}
"""Rules on which the width has a say inside an article; its words and colors are the same."""
WHOLE = {"include": ["html"]}
ARTICLE = {"include": ["article"]}
NOT_THE_MENUS = {"include": ["html"], "exclude": [".md-nav", ".bb-all-pages"]}
PARTS = 2
"""Shares of the pages, so that several browsers can look at once."""
NO_CONTRAST = {"rules": {"color-contrast": {"enabled": False}}}


def _load_axe(page: Page) -> None:
    page.evaluate(AXE.read_text(encoding="utf-8"))


def _violations(
    page: Page, options: dict[str, Any] | None = None, context: dict[str, Any] | None = None
) -> list[str]:
    found = page.evaluate(
        "([context, options]) => axe.run(context, options)",
        [context or WHOLE, options or {}],
    )
    return [
        f"{rule['id']}: {node['target']} {node['failureSummary'][:200]}"
        for rule in found["violations"]
        for node in rule["nodes"][:3]
    ]


def _scheme(page: Page, scheme: str) -> None:
    page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
    wanted = "slate" if scheme == "dark" else "default"
    page.wait_for_function("wanted => document.body.dataset.mdColorScheme === wanted", arg=wanted)


def _looks(page: Page) -> list[str]:
    """Of each visible element of the article: its colors on what is behind it, and the size and weight of its words.

    Contrast follows from these alone, and what a screen reader finds from what is visible.
    """
    looks: list[str] = page.evaluate(
        """() => {
            const grounds = new Map();
            const ground = (each) => {
                if (!each) return "";
                if (!grounds.has(each)) {
                    const { backgroundColor, backgroundImage } = getComputedStyle(each);
                    const own = backgroundColor === "rgba(0, 0, 0, 0)" && backgroundImage === "none" ? "" : backgroundColor + backgroundImage;
                    grounds.set(each, own || ground(each.parentElement));
                }
                return grounds.get(each);
            };
            return Array.from(document.querySelectorAll("article, article *"), (each) => {
                if (!each.checkVisibility({ visibilityProperty: true, opacityProperty: true })) return "";
                const { color, fontSize, fontWeight, opacity, fill } = getComputedStyle(each);
                return [each.tagName, color, ground(each), fontSize, fontWeight, opacity, fill].join(" ");
            });
        }"""
    )
    return looks


def _unfold(page: Page) -> None:
    """Open all folds; of each table leave the first rows, as the others are made by the same code."""
    page.evaluate(
        """() => {
            document.querySelectorAll("details").forEach((fold) => { fold.open = true; });
            document.querySelectorAll("tbody tr:nth-child(n+5)").forEach((row) => row.remove());
        }"""
    )


def _faults(page: Page, seen: set[str]) -> dict[str, list[str]]:
    """Faults of a page at both widths and in both schemes.

    The first page is looked at whole, with its menus, which list every page on every page.
    Contrast is looked at wherever an element looks as none of an earlier page did; on a desk the
    other rules again where other elements are visible than on a phone, else those on which the
    width has a say.

    Args:
        page: The page, opened.
        seen: Looks of the pages before it; those of this one are added.
    """
    _unfold(page)
    around, parts = (NOT_THE_MENUS, ARTICLE) if seen else (WHOLE, WHOLE)
    found: dict[str, list[str]] = {}
    on_a_phone: list[bool] = []
    for size in (PHONE, DESK):
        page.set_viewport_size(size)
        width = size["width"]
        for scheme in ("light", "dark"):
            _scheme(page, scheme)
            looks = _looks(page)
            if not seen.issuperset(looks):
                found[f"{width} {scheme}"] = _violations(page, CONTRAST, parts)
            seen.update(looks)
        visible = [bool(look) for look in looks]
        rules = OF_THE_WIDTH if size is DESK and visible == on_a_phone and parts is ARTICLE else NO_CONTRAST
        found[f"{width}"] = _violations(page, rules, around)
        on_a_phone = visible
    return found


@pytest.mark.parametrize("part", range(PARTS))
def test_no_page_has_a_fault_that_axe_finds(page: Page, of_each_kind: list[str], part: int) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    _load_axe(page)
    faults = []
    seen: set[str] = set()
    for address in of_each_kind[part::PARTS]:
        go(page, address)
        for where, found in _faults(page, seen).items():
            faults += [f"{address} {where} {fault}" for fault in found]
    assert not faults, "\n".join(faults)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_form_with_errors_has_no_fault_that_axe_finds(page: Page, scheme: str) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    _scheme(page, scheme)
    page.fill(GAUGE, "twelve")
    page.press(GAUGE, "Enter")
    expect(page.locator("[data-field=gauge] [data-error]")).to_be_visible()
    _load_axe(page)
    faults = _violations(page)
    assert not faults, "\n".join(faults)


def test_nothing_is_wider_than_a_narrow_phone(page: Page, addresses: list[str]) -> None:
    page.set_viewport_size(NARROW)
    page.goto("./")
    wide = {}
    for address in addresses:
        go(page, address)
        width = page.evaluate("document.documentElement.scrollWidth")
        if width > NARROW["width"]:
            wide[address] = width
    assert wide == {}


def test_controls_of_a_form_are_large_enough_for_a_thumb(page: Page) -> None:
    page.set_viewport_size(PHONE)
    page.goto(OXYGEN)
    wait_for_engine(page)
    small = page.locator("[data-calculator] :is(input, select, button, summary):visible").evaluate_all(
        """all => all.map((each) => [each.outerHTML.slice(0, 80), each.getBoundingClientRect().height])
            .filter(([, height]) => height < 44)"""
    )
    assert small == [], "lower than 44 px"


def test_a_form_works_by_keyboard_alone(page: Page) -> None:
    page.emulate_media(reduced_motion="reduce")  # no scrolling that is still on its way
    page.goto(OXYGEN)
    wait_for_engine(page)
    for _ in range(80):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement?.name") == "gauge":
            break
    expect(page.locator(GAUGE)).to_be_focused()
    page.keyboard.press("Control+A")
    page.keyboard.type("820")
    page.keyboard.press("Enter")
    page.wait_for_url("**gauge=820**")
    expect(page.locator("[data-engine]")).to_contain_text("New answer.")
    seen = set()
    for _ in range(60):
        page.keyboard.press("Tab")
        seen.add(page.evaluate("document.activeElement?.textContent.trim()"))
        covered = page.evaluate(
            """() => {
                const box = document.activeElement.getBoundingClientRect();
                const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
                const over = document.elementFromPoint(x, y)?.closest(".md-header");
                return Boolean(over) && !over.contains(document.activeElement);
            }"""
        )
        assert not covered, page.evaluate("document.activeElement.outerHTML")
    assert {"Calculate", "Copy link", "Copy as text"} <= seen
