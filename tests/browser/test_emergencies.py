"""An emergency page is two taps from anywhere, and its first act is on the first screen."""

from itertools import pairwise

import pytest
from playwright.sync_api import Page, expect

from site_overrides.build.check_emergencies import EMERGENCIES
from tests.browser.asking import go

pytestmark = pytest.mark.browser

SMALL = {"width": 360, "height": 640}

NAMES = [path.stem for path in EMERGENCIES]


def test_every_page_has_the_way_in_but_the_way_in_itself(page: Page, addresses: list[str]) -> None:
    page.goto("./")
    missing = []
    for address in addresses:
        go(page, address)
        if page.locator("a.bb-emergency:visible").count() != (not address.endswith("/trouble/")):
            missing.append(address)
    assert missing == []


@pytest.mark.parametrize("name", NAMES)
def test_two_taps_lead_to_the_first_act_on_the_first_screen(page: Page, name: str) -> None:
    page.set_viewport_size(SMALL)
    page.goto("tables/gases/")
    page.locator("a.bb-emergency").click()
    page.locator(f".bb-doors a[href*='{name}']").click()
    act = page.locator(f"#{name}-steps .bb-do").first
    expect(act).to_be_in_viewport(ratio=1)
    box = act.bounding_box()
    assert box
    assert box["y"] + box["height"] <= SMALL["height"]
    assert page.evaluate("scrollY") == 0


@pytest.mark.parametrize("address", ["trouble/", "trouble/finder/"])
def test_doors_are_large_enough_for_a_thumb_and_apart(page: Page, address: str) -> None:
    page.set_viewport_size(SMALL)
    page.goto(address)
    boxes = page.locator(".bb-doors a").evaluate_all(
        "all => all.map(each => each.getBoundingClientRect()).map(box => [box.top, box.bottom])"
    )
    assert len(boxes) >= len(NAMES)
    assert all(bottom - top >= 48 for top, bottom in boxes)
    assert all(after - before >= 8 for (_, before), (after, _) in pairwise(boxes))
