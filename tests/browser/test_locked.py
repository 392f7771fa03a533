"""A hostile link and pasted text do no harm: nothing runs, text stays text, one sentence answers."""

from collections.abc import Iterator
from typing import Any
from urllib.parse import quote, urlencode

import pytest
from playwright.sync_api import Page, expect

from tests.browser.asking import OXYGEN, wait_for_engine

pytestmark = pytest.mark.browser

PERMIT = "class/permit/"
THICKNESS = "set-up/sheet-thickness/"
MARKUP = "\"'><script>window.ran='script'</script><img src=x onerror=\"window.ran='image'\">"
ADDRESS = "javascript:window.ran='address'"
MEGABYTE = 1_000_000
TURNED = "12 \u202eisp\u202c\u200b\u2066\ufeff psi"
SURROGATE = "5\ud800 psi"
COMBINING = "5" + "\u0301" * 50 + " psi"
PROTOTYPES = ("__proto__", "constructor", "toString", "hasOwnProperty")
HOSTILE = (MARKUP, ADDRESS, "9 " * (MEGABYTE // 2), "1" * MEGABYTE, TURNED, COMBINING, "\0", *PROTOTYPES)
PASTE = "(box, text) => { box.focus(); box.select(); document.execCommand('insertText', false, text); }"
WATCH = """
  window.stopped = [];
  addEventListener("securitypolicyviolation", ({ violatedDirective }) => window.stopped.push(violatedDirective));
"""


@pytest.fixture
def hostile(page: Page) -> Iterator[Page]:
    """A page on which nothing foreign may run; its console is watched too."""
    dialogs: list[str] = []
    page.on("dialog", lambda asked: (dialogs.append(asked.message), asked.dismiss()))
    page.add_init_script(WATCH)
    yield page
    assert dialogs == []
    assert page.evaluate("window.stopped") == []
    assert page.evaluate("window.ran") is None
    assert page.locator("a[href^='javascript:' i], script:text('window.ran')").count() == 0
    assert page.locator("[data-calculator] img, [data-sheet] img").count() == 0
    assert page.evaluate("({}).harmed ?? Object.prototype.own ?? null") is None


def _names(page: Page) -> list[str]:
    """Inputs of the calculator on the page that take typed text."""
    names: list[str] = page.locator("[data-calculator] [data-field] input[type=text]").evaluate_all(
        "all => all.map((box) => box.name)"
    )
    return names


def _said(page: Page, name: str) -> str:
    """The one sentence beside a field."""
    error = page.locator(f"[data-field='{name}'] [data-error]")
    expect(error).to_be_visible(timeout=20_000)
    return error.inner_text()


def _is_one_sentence(text: str) -> None:
    assert text.endswith(".")
    assert len(text) < 400
    assert "\n" not in text
    assert not set(text) & set("\u202e\u2066\u200b\ufeff\0"), "it can be read as it stands"


@pytest.mark.parametrize(("address", "mark"), [(OXYGEN, "?"), (THICKNESS, "#")], ids=["query", "fragment"])
def test_a_hostile_link_sets_text_and_nothing_else(hostile: Page, address: str, mark: str) -> None:
    values = {"v": MARKUP, "rules": "__proto__", "gauge": TURNED, "shown_in": ADDRESS}
    values |= {MARKUP: "1", ADDRESS: MARKUP, "\u202egauge": "1", "x" * 5_000: "1", "for": ""}
    values |= dict.fromkeys(PROTOTYPES, '{"harmed": true, "own": 1}')
    hostile.goto(f"{address}{mark}{urlencode(values)}&water_volume=%ED%A0%80&%00=%FF")
    wait_for_engine(hostile)
    hostile.get_by_role("button", name="Calculate").click()
    _is_one_sentence(_said(hostile, "rules"))
    assert not any(sign.isdigit() for sign in hostile.locator("[data-answer]").inner_text())
    note = hostile.locator("[data-link-note]")
    for name in (*PROTOTYPES, "<script>"):
        expect(note).to_contain_text(f"“{name}" if name in PROTOTYPES else name)
    for line in note.locator("p").all_inner_texts():
        _is_one_sentence(line)
    for name, option in (("rules", "us"), ("shown_in", "metric")):
        hostile.select_option(f"[name={name}]", option)
    _is_one_sentence(_said(hostile, "gauge"))


def test_a_link_of_a_megabyte_is_refused_in_a_sentence(hostile: Page) -> None:
    hostile.goto(f"{OXYGEN}#v=1&gauge={quote('9' * MEGABYTE)}")
    _is_one_sentence(_said(hostile, "gauge"))


@pytest.mark.parametrize("address", [OXYGEN, THICKNESS])
def test_hostile_text_in_a_field_is_refused_in_a_sentence(hostile: Page, address: str) -> None:
    hostile.goto(address)
    wait_for_engine(hostile)
    box = hostile.locator("[name=gauge]")
    for text in (*HOSTILE, SURROGATE):
        # As pasted: a page of text would take the driver longer than the reader's phone.
        box.evaluate("(box, text) => { box.value = text }", text)
        box.dispatch_event("input")
        hostile.get_by_role("button", name="Calculate").click()
        expect(hostile.locator("[data-answer]:not([data-stale]) .bb-none")).to_be_visible()
        _is_one_sentence(_said(hostile, "gauge"))
    box.fill("700 psi" if address == OXYGEN else "18 ga")
    hostile.get_by_role("button", name="Calculate").click()
    expect(hostile.locator("[data-answer] [data-result]").first).to_be_visible()


def test_hostile_text_in_a_sheet_stays_text(hostile: Page) -> None:
    hostile.goto(f"{PERMIT}?{urlencode({'v': '1', '__proto__': MARKUP, 'place': ADDRESS})}")
    boxes = hostile.locator("[data-sheet] textarea")
    texts = [*HOSTILE, SURROGATE]
    for index, text in enumerate(texts):
        boxes.nth(index % boxes.count()).evaluate(PASTE, text)
    hostile.evaluate("""() => {
        const kept = JSON.parse(localStorage.getItem("sheet-permit") ?? "{}");
        localStorage.setItem("sheet-permit", JSON.stringify(kept).replace("{", '{"__proto__":{"harmed":1},'));
    }""")
    hostile.reload()
    left: list[Any] = boxes.evaluate_all("all => all.map(({ value, maxLength }) => [value.length, maxLength])")
    assert any(length for length, _ in left)
    assert all(length <= longest for length, longest in left), "a page of text does not fill the store"
    hostile.emulate_media(media="print")
    expect(hostile.locator("[data-sheet]")).to_be_visible()
