"""Without a mouse and without eyes: names of all controls, and where the focus is."""

from typing import Any

import pytest
from playwright.sync_api import Page

from tests.browser.asking import TYPES, go, wait_for_engine

pytestmark = pytest.mark.browser

PHONE = {"width": 360, "height": 640}
NEEDLESS_NAMES = {"RootWebArea"}
MOST = 400  # stops of the Tab key on a page

STOP = """() => {
    const here = document.activeElement;
    if (!here || here === document.body) return null;
    const shown = here.matches(".md-option, .md-toggle") ? here.nextElementSibling ?? here : here;
    const { outlineStyle, outlineWidth } = getComputedStyle(shown);
    const box = shown.getBoundingClientRect();
    const under = document.querySelector(".md-header").getBoundingClientRect().bottom;
    const inHeader = Boolean(here.closest(".md-header, .md-banner, .md-search"));
    const fits = box.height < innerHeight - under;
    return {
        what: here.outerHTML.slice(0, 110),
        outlined: outlineStyle !== "none" && parseFloat(outlineWidth) >= 2,
        seen: box.width > 0 && box.bottom > 0 && box.top < innerHeight,
        covered: !inHeader && (fits ? box.top < under - 2 && getComputedStyle(shown).position !== "fixed" : box.bottom < under + 44),
        last: Boolean(here.closest(".bb-all-pages")),
        first: here.matches(".md-skip") || Boolean(here.closest(".md-header")),
    };
}"""


def _name(node: dict[str, Any], nodes: dict[str, dict[str, Any]]) -> str:
    """What is read of a node: its name, or the words in it where a label took the focus."""
    name = (node.get("name", {}).get("value") or "").strip()
    if name or node["role"]["value"] != "LabelText":
        return name
    inside = [nodes[each] for each in node.get("childIds", []) if each in nodes]
    return " ".join(each["name"]["value"] for each in inside if each.get("name")).strip() or " ".join(
        _name({**each, "role": node["role"]}, nodes) for each in inside
    )


def test_every_control_has_a_name_for_a_screen_reader(page: Page, of_each_kind: list[str]) -> None:
    page.goto("./")
    browser = page.context.new_cdp_session(page)
    nameless = []
    for address in of_each_kind:
        go(page, address)
        page.evaluate("document.querySelectorAll('details').forEach((fold) => { fold.open = true; })")
        page.wait_for_selector(".bb-footer[data-whole]")
        nodes = {node["nodeId"]: node for node in browser.send("Accessibility.getFullAXTree")["nodes"]}
        controls = 0
        for node in nodes.values():
            said = {each["name"]: each["value"].get("value") for each in node.get("properties", [])}
            if node["ignored"] or not said.get("focusable") or node["role"]["value"] in NEEDLESS_NAMES:
                continue
            controls += 1
            if not _name(node, nodes):
                nameless.append(f"{address} {node['role']} {node.get('name')} {said}")
        assert controls > len(of_each_kind), "the list of all pages alone is longer"
    browser.detach()
    assert not nameless, "\n".join(nameless)


@pytest.mark.parametrize("path", TYPES.values(), ids=list(TYPES))
def test_the_focus_is_seen_on_the_way_down_and_up(page: Page, path: str) -> None:
    page.set_viewport_size(PHONE)
    page.emulate_media(reduced_motion="reduce")  # no scrolling that is still on its way
    page.goto(path)
    page.wait_for_selector("[data-offline-status]", state="attached")
    if page.locator("[data-calculator]").count():
        wait_for_engine(page)  # an answer that comes in between moves what is below it
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


def test_the_search_fetches_its_index_when_it_is_opened(page: Page) -> None:
    fetched: list[str] = []
    page.on("request", lambda request: fetched.append(request.url))
    page.goto("tables/gases/")
    page.wait_for_selector("[data-offline-status]", state="attached")
    assert not [url for url in fetched if "search_index" in url]
    page.get_by_role("textbox", name="Search").focus()
    page.keyboard.type("flashback")
    found = page.locator(".md-search-result__link").first
    found.wait_for(state="visible")
    assert "lashback" in (found.text_content() or "")
    assert [url for url in fetched if "search_index" in url]
