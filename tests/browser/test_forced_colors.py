"""High contrast, where the reader's few colors replace ours: meaning stays in words, lines and shapes."""

from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.browser.asking import TYPES

pytestmark = pytest.mark.browser

SEEN = """() => {
    const paint = document.createElement("canvas").getContext("2d", { willReadFrequently: true });
    const rgb = (color) => {
        paint.clearRect(0, 0, 1, 1);
        paint.fillStyle = color;
        paint.fillRect(0, 0, 1, 1);
        return Array.from(paint.getImageData(0, 0, 1, 1).data);
    };
    const light = (color) => rgb(color).slice(0, 3)
        .map((part) => part / 255)
        .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4))
        .reduce((sum, part, at) => sum + part * [0.2126, 0.7152, 0.0722][at], 0);
    const ratio = (one, other) => {
        const [low, high] = [light(one), light(other)].sort((a, b) => a - b);
        return (high + 0.05) / (low + 0.05);
    };
    const canvas = getComputedStyle(document.body).backgroundColor;
    const shown = (each) => each.checkVisibility({ visibilityProperty: true });
    const all = (selector) => Array.from(document.querySelectorAll(selector)).filter(shown);
    const bordered = (each) => {
        const style = getComputedStyle(each);
        return style.borderTopStyle !== "none" && parseFloat(style.borderTopWidth) >= 1
            && ratio(style.borderTopColor, canvas) >= 3;
    };
    const named = (each) => each.outerHTML.slice(0, 100);
    const faults = { hazards: [], words: [], shapes: [], buttons: [], drawings: [], lines: [] };
    for (const box of all(".bb-caution")) if (!bordered(box)) faults.hazards.push(named(box));
    for (const word of all(".bb-caution > strong")) {
        const { color, backgroundColor } = getComputedStyle(word);
        if (ratio(color, backgroundColor) < 7) faults.words.push(named(word));
        const shape = getComputedStyle(word, "::before");
        const hasShape = shape.content !== "none";
        if (hasShape === Boolean(word.closest(".bb-notice"))) faults.shapes.push(named(word));
        if (hasShape && ratio(shape.backgroundColor, backgroundColor) < 3) faults.shapes.push(named(word));
    }
    for (const button of all("article :is(button, input:not([type=checkbox], [type=radio]), select, textarea)")) {
        if (!bordered(button)) faults.buttons.push(named(button));
    }
    for (const text of all("article svg text")) {
        if (ratio(getComputedStyle(text).fill, canvas) < 4.5) faults.drawings.push(named(text));
    }
    for (const drawing of all("article .bb-picture svg")) {
        const lines = Array.from(drawing.querySelectorAll("path, line, rect, circle, ellipse, polyline, polygon"));
        const clear = ({ stroke, fill }) => [stroke, fill].some((color) => color !== "none" && ratio(color, canvas) >= 3);
        if (!lines.some((each) => clear(getComputedStyle(each)))) faults.lines.push(named(drawing));
    }
    return { ...faults, canvas: light(canvas) };
}"""


def _seen(page: Page) -> dict[str, Any]:
    seen: dict[str, Any] = page.evaluate(SEEN)
    return seen


@pytest.mark.parametrize("path", TYPES.values(), ids=list(TYPES))
def test_meaning_stays_with_the_readers_own_colors(page: Page, path: str) -> None:
    page.emulate_media(forced_colors="active", reduced_motion="reduce", color_scheme="dark")
    page.goto(path)
    page.wait_for_selector("[data-offline-status]", state="attached")
    page.evaluate("document.querySelectorAll('details').forEach((fold) => { fold.open = true; })")
    seen = _seen(page)
    assert seen.pop("canvas") < 0.1, "the reader's paper is dark"
    assert not any(seen.values()), seen
    page.evaluate("() => { document.body.dataset.mdColorScheme = 'default'; }")  # chosen on the page
    seen = _seen(page)
    seen.pop("canvas")
    assert not any(seen.values()), f"with light colors chosen: {seen}"
    control = page.locator("article :is(a[href], input, select, button):visible").first
    control.focus()
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Tab")
    expect(control).to_be_focused()
    assert control.evaluate("each => parseFloat(getComputedStyle(each).outlineWidth)") >= 2
