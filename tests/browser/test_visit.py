"""One visit: one engine, one host, and a site that holds what its manifest lists."""

import hashlib
import json
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.asking import GAUGE, OXYGEN, give, go, is_marked, mark, new_answer, wait_for_engine
from tests.browser.conftest import Server

pytestmark = pytest.mark.browser

TRUSTED_ELSEWHERE = {"release.json", "sw.js"}
"""The list itself, and the worker that holds the checksum of the list."""


def test_one_engine_outlives_a_change_of_page(page: Page, addresses: list[str]) -> None:
    started: list[str] = []
    page.on("worker", lambda worker: started.append(worker.url))
    page.goto(OXYGEN)
    wait_for_engine(page)
    mark(page)
    for end in ("/bench/", OXYGEN):
        go(page, next(address for address in addresses if address.endswith(end)))
    assert is_marked(page)
    with new_answer(page):
        give(page, GAUGE, "900")
    assert len([url for url in started if "engine" in url]) == 1


def test_going_back_keeps_the_visit(page: Page) -> None:
    page.goto(OXYGEN)
    wait_for_engine(page)
    mark(page)
    with new_answer(page):
        give(page, GAUGE, "900")
    page.wait_for_url("**gauge=900**")
    page.locator(".bb-footer a[href*=hot-cylinder]").click()
    expect(page.locator("[data-calculator]")).to_have_count(0)
    page.go_back()
    expect(page.locator(GAUGE)).to_have_value("900")
    assert is_marked(page)


def test_the_site_holds_what_its_manifest_lists(site: Path) -> None:
    manifest = json.loads((site / "release.json").read_text(encoding="utf-8"))
    held = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    listed = {
        f"{name}index.html" if name == "" or name.endswith("/") else name for name in manifest["files"]
    }
    assert held - TRUSTED_ELSEWHERE == listed
    for name, file in manifest["files"].items():
        path = site / name
        content = (path / "index.html" if path.is_dir() else path).read_bytes()
        assert len(content) == file["bytes"], name
        assert hashlib.sha256(content).hexdigest() == file["sha256"], name


def test_the_worker_trusts_that_manifest(site: Path) -> None:
    digest = hashlib.sha256((site / "release.json").read_bytes()).hexdigest()
    assert digest in (site / "sw.js").read_text(encoding="utf-8")


def test_no_package_folder_is_published(site: Path) -> None:
    names = {path.name for path in site.rglob("*")}
    assert not names & {"node_modules", "package.json", "package-lock.json", "__pycache__"}
    assert not [name for name in names if name.endswith((".py", ".map"))]


def test_every_page_has_the_same_policy(site: Path) -> None:
    pages = list(site.rglob("*.html"))
    policies = {
        page.read_text(encoding="utf-8")
        .split('http-equiv="Content-Security-Policy" content="')[1]
        .split('"')[0]
        for page in pages
    }
    assert len(policies) == 1
    policy = policies.pop()
    assert "default-src 'self'" in policy
    assert "unsafe-eval'" not in policy.replace("'wasm-unsafe-eval'", "")
    assert "'unsafe-inline'" not in policy.split("style-src")[0]
    assert "http:" not in policy


def test_the_policy_stops_a_script_that_is_not_ours(browser: Browser, host: Server) -> None:
    page = browser.new_page(base_url=host.address)  # not watched: the console tells of it
    page.add_init_script("addEventListener('securitypolicyviolation', () => { window.stopped = true })")
    page.goto("./")
    page.evaluate(
        """() => {
            const script = document.createElement("script");
            script.textContent = "window.marked = 'foreign'";
            document.body.append(script);
        }"""
    )
    page.wait_for_function("() => window.stopped === true")
    assert page.evaluate("window.marked") is None
    page.context.close()


def test_ticks_come_back_with_the_pause_point_and_run_out(page: Page, addresses: list[str]) -> None:
    page.clock.install()
    page.goto(next(a for a in addresses if a.endswith("set-up/light/")))
    ticks = page.locator("[data-procedure] [data-tick]")
    first = page.locator("[data-pause]").nth(0).locator("[data-tick]").count()
    for index in range(first + 1):
        ticks.nth(index).check()
    page.reload()
    stopped = page.locator("[data-stopped]")
    expect(stopped).to_contain_text(f"You stopped at step {first + 2}.")
    expect(stopped).to_contain_text(f"last pause point: step {first + 1}.")
    assert ticks.nth(first).is_checked()
    page.clock.fast_forward("04:00:01")
    page.reload()
    expect(stopped).to_contain_text("4 hours")
    expect(page.locator("[data-tick]:checked")).to_have_count(0)


def test_ticks_are_cleared_with_one_tap(page: Page, addresses: list[str]) -> None:
    page.goto(next(a for a in addresses if a.endswith("set-up/light/")))
    page.locator("[data-tick]").first.check()
    page.get_by_role("button", name="Clear the ticks").click()
    page.reload()
    expect(page.locator("[data-tick]:checked")).to_have_count(0)
    expect(page.locator("[data-stopped]")).to_be_hidden()
