"""Without a mouse and without eyes: names of all controls, and where the focus is."""

import pytest
from playwright.sync_api import Page

from tests.browser.asking import TYPES, go

pytestmark = pytest.mark.browser

PHONE = {"width": 360, "height": 640}
NEEDLESS_NAMES = {"RootWebArea", "generic", "none", "paragraph", "group", "Section"}
MOST = 400  # stops of the Tab key on a page

STOP = """() => {
    const here = document.activeElement;
    if (!here || here === document.body) return null;
    const shown = here.matches(".md-option, .md-toggle") ? here.nextElementSibling ?? here : here;
    const { outlineStyle, outlineWidth } = getComputedStyle(shown);
    const box = shown.getBoundingClientRect();
    const x = Math.min(Math.max(box.left + Math.min(box.width, 40) / 2, 0), innerWidth - 1);
    const first = Math.min(Math.max(box.top + Math.min(box.height, 24) / 2, 0), innerHeight - 1);
    const over = document.elementFromPoint(x, first)?.closest(".md-header");
    return {
        what: here.outerHTML.slice(0, 110),
        outlined: outlineStyle !== "none" && parseFloat(outlineWidth) >= 2,
        seen: box.width > 0 && box.bottom > 0 && box.top < innerHeight,
        covered: Boolean(over) && !over.contains(here),
        last: Boolean(here.closest(".bb-all-pages")),
        first: here.matches(".md-skip") || Boolean(here.closest(".md-header")),
    };
}"""


def test_every_control_has_a_name_for_a_screen_reader(page: Page, addresses: list[str]) -> None:
    page.goto("./")
    browser = page.context.new_cdp_session(page)
    nameless = []
    for address in addresses:
        go(page, address)
        controls = 0
        page.evaluate("document.querySelectorAll('details').forEach((fold) => { fold.open = true; })")
        for node in browser.send("Accessibility.getFullAXTree")["nodes"]:
            said = {each["name"]: each["value"].get("value") for each in node.get("properties", [])}
            role = node.get("role", {}).get("value")
            if node["ignored"] or not said.get("focusable") or role in NEEDLESS_NAMES:
                continue
            controls += 1
            if not (node.get("name", {}).get("value") or "").strip():
                nameless.append(f"{address} {role} {node.get('properties')}")
        assert controls > len(addresses), "the list of all pages alone is longer"
    browser.detach()
    assert not nameless, "\n".join(nameless)


@pytest.mark.parametrize("path", TYPES.values(), ids=list(TYPES))
def test_the_focus_is_seen_on_the_way_down_and_up(page: Page, path: str) -> None:
    page.set_viewport_size(PHONE)
    page.emulate_media(reduced_motion="reduce")  # no scrolling that is still on its way
    page.goto(path)
    page.wait_for_selector("[data-offline-status]", state="attached")
    faults, stops = [], 0
    for key, end in (("Tab", "last"), ("Shift+Tab", "first")):
        for _ in range(MOST):
            page.keyboard.press(key)
            stop = page.evaluate(STOP)
            if stop is None:
                continue
            stops += 1
            if stop["covered"] or not stop["outlined"] or not stop["seen"]:
                faults.append(f"{key} {stop}")
            if stop[end]:
                break
        else:
            pytest.fail(f"{key} never came to the {end} stop")
    assert stops > 6
    assert not faults, "\n".join(faults)
