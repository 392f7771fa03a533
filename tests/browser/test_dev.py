"""The site while it is written: an edit is seen in its time, and an error is a sentence on the page that has it."""

import inspect
import os
import shutil
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from site_overrides.build.formulas import displayed
from tests.browser.conftest import ROOT, Watch

pytestmark = pytest.mark.browser

WORD, DEEP = 4_000, 8_000
"""Milliseconds from an edit of a page, and of a formula or a table, until it is seen."""
LONG = 30_000
NEEDED = ("calc", "docs", "site_overrides", "mkdocs.yml", "pyproject.toml", "LICENSE")
HOSE = "set-up/hose-volume/"
NEVER = "trouble/never/"
FAULT = "[data-dev-error]"


@dataclass
class Written:
    """A copy of the project that a test edits, and where it is served."""

    root: Path
    address: str

    @contextmanager
    def edited(self, name: str, old: str, new: str) -> Iterator[None]:
        """A file with one text in place of another, and then as it was."""
        path = self.root / name
        text = path.read_text(encoding="utf-8")
        assert old in text
        path.write_text(text.replace(old, new, 1), encoding="utf-8")
        try:
            yield
        finally:
            path.write_text(text, encoding="utf-8")


def free_port() -> int:
    with socket.socket() as tried:
        tried.bind(("127.0.0.1", 0))
        return int(tried.getsockname()[1])


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Written]:
    root = tmp_path_factory.mktemp("dev")
    ignored = shutil.ignore_patterns("node_modules", "__pycache__")
    for name in NEEDED:
        path = ROOT / name
        (shutil.copytree(path, root / name, ignore=ignored) if path.is_dir() else shutil.copy(path, root))
    address = f"http://127.0.0.1:{free_port()}/"
    process = subprocess.Popen(
        [sys.executable, "-m", "site_overrides.build.dev"],
        cwd=root, env=os.environ | {"SITE_URL": address}, stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    assert process.stdout is not None
    assert address in process.stdout.readline()
    yield Written(root, address)
    process.terminate()
    process.wait()


@pytest.fixture
def page(browser: Browser, written: Written) -> Iterator[Page]:
    context = browser.new_context(base_url=written.address)
    watch = Watch(written.address)
    made = context.new_page()
    made.on("request", watch.request)
    watch.page(made)
    yield made
    context.close()
    assert watch.foreign == []
    assert watch.errors == []


@pytest.fixture
def other(page: Page) -> Page:
    """A second window, on another page."""
    return page.context.new_page()


def has_no_fault(page: Page, address: str) -> None:
    page.goto(address)
    expect(page.locator("h1")).to_be_visible()
    expect(page.locator(FAULT)).to_have_count(0)
    page.goto("about:blank")


def seen_after(began: float, page: Page, text: str, most: int) -> None:
    expect(page.locator("article")).to_contain_text(text, timeout=LONG)
    took = 1000 * (time.monotonic() - began)
    print(f"{text}: {took:.0f} ms")
    assert took < most


def source_of(name: str) -> tuple[str, str]:
    """File of a formula, and its last line."""
    function = displayed()[name]
    lines = inspect.getsource(function).rstrip().splitlines()
    return str(Path(inspect.getsourcefile(function) or "").relative_to(ROOT)), lines[-1]


def test_one_word_of_a_page_is_seen_in_four_seconds(page: Page, written: Written) -> None:
    page.goto(NEVER)
    title = page.locator("h1").inner_text()
    began = time.monotonic()
    with written.edited("docs/trouble/never.md", f"# {title}", f"# {title} newword"):
        seen_after(began, page, "newword", WORD)
    expect(page.locator("article")).not_to_contain_text("newword", timeout=LONG)


def test_a_row_of_a_table_is_seen_in_eight_seconds(page: Page, written: Written) -> None:
    page.goto(NEVER)
    table = "calc/data/figures-benchbook-2026.csv"
    began = time.monotonic()
    with written.edited(table, "\nacetylene-limit,15 psi,", "\nacetylene-limit,15.25 psi,"):
        seen_after(began, page, "15.25 psi", DEEP)
    expect(page.locator("article")).not_to_contain_text("15.25 psi", timeout=LONG)


def test_a_changed_formula_is_seen_in_eight_seconds_and_answers(page: Page, written: Written) -> None:
    page.goto(HOSE)
    before = page.locator("[data-result] .bb-value").first.inner_text()
    file, last = source_of("hose_volume")
    began = time.monotonic()
    with written.edited(file, last, last.replace("return ", "return 3 * ")):
        expect(page.locator("[data-result] .bb-value").first).not_to_have_text(before, timeout=LONG)
        assert 1000 * (time.monotonic() - began) < DEEP
        shown = page.locator("[data-result] .bb-value").first.inner_text()
        expect(page.locator("[data-engine]").first).to_contain_text(
            "ready", timeout=LONG, use_inner_text=False
        )
        page.get_by_role("button", name="Calculate").click()
        expect(page.locator("[data-engine]").first).to_contain_text(
            "New answer", timeout=LONG, use_inner_text=False
        )
        assert page.locator("[data-result] .bb-value").first.inner_text() == shown
    expect(page.locator("[data-result] .bb-value").first).to_have_text(before, timeout=LONG)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("hose-volume\n", "hose-volum\n", "hose-volum"),
        ("```calculator\nhose-volume\n```", "```calculator\nhose-volume\n", "is never ended"),
        ("# ", "# {no-such-figure} ", "no-such-figure"),
        ("\n\n", "\n\n[away](no-such-page.md)\n\n", "no-such-page.md"),
    ],
    ids=["a fence that names no calculator", "an open fence", "an unknown figure", "a link to nowhere"],
)  # fmt: skip
def test_what_is_wrong_with_a_page_is_a_sentence_on_it_and_on_no_other(
    old: str, new: str, said: str, page: Page, other: Page, written: Written
) -> None:
    page.goto(HOSE)
    expect(page.locator(FAULT)).to_have_count(0)
    with written.edited("docs/set-up/hose-volume.md", old, new):
        expect(page.locator(FAULT)).to_contain_text(said, timeout=LONG)
        assert page.locator("nav").count(), "the page around it stays"
        has_no_fault(other, NEVER)
    expect(page.locator(FAULT)).to_have_count(0, timeout=LONG)


def test_an_error_of_python_is_a_sentence_with_its_file_and_line(
    page: Page, other: Page, written: Written
) -> None:
    page.goto(HOSE)
    file, last = source_of("hose_volume")
    with written.edited(file, last, "    return 1 / 0"):
        expect(page.locator(FAULT)).to_contain_text("division by zero", timeout=LONG)
        expect(page.locator(FAULT)).to_contain_text(f"{file}, line ")
        has_no_fault(other, NEVER)
    expect(page.locator(FAULT)).to_have_count(0, timeout=LONG)
    with written.edited(file, last, "    return ("):
        expect(page.locator(FAULT)).to_contain_text(
            f"never closed (SyntaxError in {file}, line ", timeout=LONG
        )
    expect(page.locator(FAULT)).to_have_count(0, timeout=LONG)
    expect(page.locator("[data-result]").first).to_be_visible()


def test_nothing_of_a_release_is_there(page: Page) -> None:
    page.goto(HOSE)
    expect(page.locator("[data-engine]").first).to_contain_text("ready", timeout=LONG, use_inner_text=False)
    assert page.evaluate("navigator.serviceWorker.getRegistrations().then((all) => all.length)") == 0
    assert page.locator("meta[name=benchbook-release]").count() == 0
    loaded = page.evaluate("performance.getEntriesByType('resource').map(({ name }) => name)")
    assert not [name for name in loaded if ".wasm" in name or name.endswith("search_index.json")]
