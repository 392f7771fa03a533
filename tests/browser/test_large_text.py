"""Text at twice its size on a narrow phone: all of it is there, and nothing lies on anything else."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.asking import TYPES

pytestmark = pytest.mark.browser

PHONE = {"width": 360, "height": 740}
ALL = "article, header, footer, [role=status], .md-banner"

CUT = """all => {
    const cut = [];
    for (const each of document.querySelectorAll(all.split(", ").map((part) => `${part} *, ${part}`).join(", "))) {
        const style = getComputedStyle(each);
        const clips = /hidden|clip/;
        if (!each.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
        if (each.closest("svg, math, .bb-hidden, .md-search, .md-skip, .bb-grow") || !each.textContent.trim()) continue;
        const wide = clips.test(style.overflowX) && each.scrollWidth > each.clientWidth + 1;
        const high = clips.test(style.overflowY) && each.scrollHeight > each.clientHeight + 1;
        if (wide || high) cut.push(each.outerHTML.slice(0, 120));
    }
    return cut;
}"""

OVERLAPS = """() => {
    const boxes = [];
    const walk = document.createTreeWalker(document.querySelector("article"), NodeFilter.SHOW_TEXT);
    for (let text = walk.nextNode(); text; text = walk.nextNode()) {
        const parent = text.parentElement;
        if (!text.data.trim() || parent.closest("svg, math, option, .bb-hidden, sub, sup")) continue;
        if (!parent.checkVisibility({ visibilityProperty: true })) continue;
        const range = document.createRange();
        range.selectNodeContents(text);
        for (const box of range.getClientRects()) boxes.push({ text: text.data.trim().slice(0, 40), box, parent });
    }
    boxes.sort((a, b) => a.box.top - b.box.top);
    const found = [];
    boxes.forEach((one, at) => {
        for (let next = at + 1; next < boxes.length && boxes[next].box.top < one.box.bottom; next += 1) {
            const other = boxes[next];
            const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
            const down = Math.min(one.box.bottom, other.box.bottom) - other.box.top;
            const lines = Math.min(one.box.height, other.box.height);
            if (across > 3 && down > lines / 2) found.push(`${one.text} | ${other.text}`);
        }
    });
    return found;
}"""

HEADER = """() => {
    const words = document.createRange();
    words.selectNodeContents(document.querySelector(".md-header__topic .md-ellipsis"));
    const { left, right } = words.getBoundingClientRect();
    return Array.from(document.querySelectorAll(".md-header .md-header__button"))
        .filter((each) => each.checkVisibility({ visibilityProperty: true }))
        .map((each) => each.getBoundingClientRect())
        .filter((box) => box.width && box.left < right && box.right > left).length;
}"""


@pytest.mark.parametrize("path", TYPES.values(), ids=list(TYPES))
def test_text_at_twice_its_size_is_whole(page: Page, path: str) -> None:
    page.set_viewport_size(PHONE)
    page.goto(path)
    page.wait_for_selector("[data-offline-status]", state="attached")
    before = page.evaluate("parseFloat(getComputedStyle(document.querySelector('h1')).fontSize)")
    page.evaluate(
        """() => {
            const { style } = document.documentElement;
            style.fontSize = `${2 * parseFloat(getComputedStyle(document.documentElement).fontSize)}px`;
        }"""
    )
    now = page.evaluate("parseFloat(getComputedStyle(document.querySelector('h1')).fontSize)")
    assert now == pytest.approx(2 * before)
    expect(page.locator("h1")).to_be_visible()
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    assert page.evaluate(CUT, ALL) == [], "cut off"
    assert page.evaluate(HEADER) == 0, "the site's name lies on a button"
    assert page.evaluate(OVERLAPS) == [], "one text on another"
