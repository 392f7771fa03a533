"""Faults made on purpose: a cut line, a full disk, cleared storage, two tabs at once."""

import json
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from calc.answer.answering import answer as fresh_answer
from tests.browser.asking import GAUGE, OXYGEN, give, wait_for_engine
from tests.browser.conftest import Server

# Fixtures of that file: a host that a test may change, and a phone on it.
from tests.browser.test_offline import LONG, STATUS, TEXT, _installed, own, phone  # noqa: F401

pytestmark = pytest.mark.browser

ENGINE_LINE = "[data-engine]"
KEPT = r"""async () => {
  const sizes = {};
  const root = await navigator.storage.getDirectory();
  const folder = await root.getDirectoryHandle("engine").catch(() => null);
  for await (const [name, file] of folder?.entries() ?? []) sizes[name] = (await file.getFile()).size;
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    for (const { url } of await cache.keys()) {
      if (!/-[0-9a-f]{12}\./.test(url)) continue;
      sizes[url.split("/").at(-1)] = (await (await cache.match(url)).blob()).size;
    }
  }
  return sizes;
}"""
"""Sizes of what is kept of the engine, in the caches and in the private files."""
CLEAR = """async () => {
  for (const name of await caches.keys()) await caches.delete(name);
  const root = await navigator.storage.getDirectory();
  for await (const name of root.keys()) await root.removeEntry(name, { recursive: true });
}"""
"""What a browser does when space is short, and what a reader may do."""
HOLD = """async () => {
  const root = await navigator.storage.getDirectory();
  const folder = await root.getDirectoryHandle("engine");
  window.held = [];
  for await (const file of folder.values()) window.held.push(await file.createWritable());
  return window.held.length;
}"""
"""Take the private files, so that no other tab gets a handle to itself."""


def _whole_sizes(server: Server) -> dict[str, int]:
    """Sizes that the build wrote down for the engine's files."""
    listed = json.loads((server.folder / "assets/engine/manifest.json").read_text(encoding="utf-8"))
    parts = [part for file in listed["files"] for part in (file, file.get("unpacked"))]
    return {part["name"]: part["bytes"] for part in parts if part}


def _half_files(page: Page, server: Server) -> dict[str, int]:
    whole = _whole_sizes(server)
    return {name: size for name, size in page.evaluate(KEPT).items() if size != whole[name]}


def _answers(page: Page, gauge: str) -> None:
    """Give a gauge reading; until the page shows what Python answers."""
    wanted = fresh_answer("oxygen-left", water_volume="43 L", gauge=f"{gauge} psi")["results"]["gas_left"]
    give(page, GAUGE, gauge)
    expect(page.locator("[data-answer]:not([data-stale]) [data-result=gas_left] .bb-value")).to_have_text(
        wanted["text"], timeout=LONG
    )


def test_a_first_download_that_breaks_off_falls_back(phone: Page, own: Server) -> None:  # noqa: F811
    own.cut = "/memory-"
    phone.goto(OXYGEN)
    wait_for_engine(phone)
    _answers(phone, "900")
    assert _half_files(phone, own) == {}
    expect(phone.locator(STATUS)).not_to_contain_text("Ready offline")


def test_a_first_download_that_cannot_come_is_said_and_tried_again(
    phone: Page,  # noqa: F811
    own: Server,  # noqa: F811
) -> None:
    own.cut = ".wasm.xz"
    phone.goto(OXYGEN)
    expect(phone.locator(ENGINE_LINE)).to_contain_text("could not start here", timeout=LONG)
    assert _half_files(phone, own) == {}
    own.cut = ""
    phone.get_by_role("button", name="Calculate").click()
    wait_for_engine(phone)
    _answers(phone, "900")


def test_a_full_disk_stops_no_answer_and_is_not_called_saved(phone: Page, own: Server) -> None:  # noqa: F811
    disk = phone.context.new_cdp_session(phone)
    origin = own.address.split("/bench/")[0]
    disk.send("Storage.overrideQuotaForOrigin", {"origin": origin, "quotaSize": 1_000})
    phone.goto(OXYGEN)
    wait_for_engine(phone)
    _answers(phone, "900")
    expect(phone.locator(STATUS)).to_contain_text("Not saved on this device.")
    phone.get_by_role("button", name="Save for offline").click()
    expect(phone.locator(STATUS)).to_contain_text("no room for", timeout=LONG)
    assert not any(phone.evaluate(KEPT).values()), "half a file would only take room"
    disk.send("Storage.overrideQuotaForOrigin", {"origin": origin})  # room was made
    phone.get_by_role("button", name="Save for offline").click()
    expect(phone.locator(STATUS)).to_contain_text("Ready offline", timeout=LONG)


def test_what_was_cleared_is_not_called_saved_and_comes_again(phone: Page, own: Server) -> None:  # noqa: F811
    phone.goto(OXYGEN)
    wait_for_engine(phone)
    _installed(phone)
    expect(phone.locator(STATUS)).to_contain_text("Ready offline", timeout=LONG)
    phone.goto(TEXT)
    phone.evaluate(CLEAR)
    phone.reload()
    expect(phone.locator(STATUS)).to_contain_text(
        "saved on this device. The calculators are not", timeout=LONG
    )
    phone.goto(OXYGEN)
    wait_for_engine(phone)
    expect(phone.locator(STATUS)).to_contain_text("Ready offline", timeout=LONG)
    own.stop()
    phone.reload()
    wait_for_engine(phone)
    _answers(phone, "900")


def test_two_tabs_answer_while_one_saves_and_one_holds_the_files(phone: Page) -> None:  # noqa: F811
    phone.goto(TEXT)
    _installed(phone)
    other: Any = phone.context.new_page()
    phone.get_by_role("button", name="Save for offline").click()
    other.goto(OXYGEN)
    wait_for_engine(other)
    _answers(other, "900")
    expect(phone.locator(STATUS)).to_contain_text("Ready offline", timeout=LONG)
    phone.goto(OXYGEN)
    other.reload()
    _answers(phone, "700")
    _answers(other, "800")
    assert phone.evaluate(HOLD) > 0
    other.reload()
    _answers(other, "600")
    _answers(phone, "500")
