"""The same list in three browser engines: Chromium, Firefox, WebKitGTK."""

import io
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from calc.answer.answering import answer
from site_overrides.build.browser import ASK, are_there
from tests.browser.conftest import HOST, PORT, Server
from tests.browser.engines import ENGINES, TAB, Engine, wait_for

pytestmark = pytest.mark.browser

OXYGEN = "before/oxygen-left/"
FIRST_VALUE = "document.querySelector('[data-result=gas_left] .bb-value')?.textContent"


@pytest.fixture(scope="module")
def own(site: Path) -> Iterator[Server]:
    server = Server(site, f"http://{HOST}:{PORT + 2}/bench/")
    server.start()
    yield server
    server.stop()


@pytest.fixture(scope="module", params=ENGINES)
def engine(request: Any) -> Iterator[Engine]:
    if not are_there():
        pytest.fail(ASK)
    with ENGINES[request.param]() as made:
        yield made


@pytest.fixture
def open_page(engine: Engine, own: Server) -> Engine:
    """The engine on a page with a link's values, its answer there."""
    own.start_again()
    engine.go(f"{own.address}{OXYGEN}?v=1&water_volume=50+L&gauge=140+bar&rules=iso")
    _answered(engine, "140 bar")
    return engine


def _answered(engine: Engine, gauge: str) -> None:
    """Until the page shows what Python answers, character for character."""
    wanted = answer("oxygen-left", water_volume="50 L", gauge=gauge, rules="iso")["results"]["gas_left"][
        "text"
    ]
    wait_for(engine, f"return {FIRST_VALUE} === arguments[0]", wanted)


def test_a_link_opens_with_its_values_and_their_answer(open_page: Engine) -> None:
    assert open_page.run("return document.querySelector('[name=gauge]').value") == "140"
    assert open_page.run("return document.querySelector('[name=rules]').value") == "iso"


def test_an_answer_follows_what_is_typed_with_the_keyboard_alone(open_page: Engine) -> None:
    open_page.run("document.querySelector('[name=gauge]').select()")
    open_page.press("100")
    open_page.press(TAB)
    _answered(open_page, "100 bar")
    focused = "return document.activeElement.closest('[data-field]')?.dataset.field"
    assert open_page.run(focused) == "gauge", "the unit beside the number comes next"
    assert open_page.run("return document.activeElement.matches('[data-unit]')")
    outline = open_page.run(
        "const s = getComputedStyle(document.activeElement); return s.outlineStyle + s.boxShadow"
    )
    assert outline != "nonenone", "the focus can be seen"


def test_bad_input_gets_its_sentence_and_no_number(open_page: Engine) -> None:
    open_page.run("document.querySelector('[name=gauge]').select()")
    open_page.press("9999" + TAB)
    said = wait_for(
        open_page,
        "const e = document.querySelector('[data-field=gauge] [data-error]'); return !e.hidden && e.textContent",
    )
    assert said.startswith("Cylinder gauge reads")
    assert open_page.run(f"return {FIRST_VALUE} ?? null") is None


def test_dark_colors_can_be_chosen(open_page: Engine) -> None:
    ground = "return getComputedStyle(document.body).backgroundColor"
    colors = {}
    for scheme in ("default", "slate"):
        open_page.run(
            "const wanted = document.querySelector(`input[data-md-color-scheme=${arguments[0]}]"
            "[data-md-color-media*=': ']`) ?? document.querySelector(`input[data-md-color-scheme=${arguments[0]}]`);"
            "wanted.click()",
            scheme,
        )
        wait_for(open_page, "return document.body.dataset.mdColorScheme === arguments[0]", scheme)
        colors[scheme] = sum(map(float, re.findall(r"[\d.]+", open_page.run(ground))[:3]))
    assert colors["slate"] < 200
    assert colors["default"] > 600


def test_paper_carries_the_answer_and_not_the_form(open_page: Engine) -> None:
    printed = open_page.pdf()
    if printed is not None:
        text = " ".join(page.extract_text() for page in PdfReader(io.BytesIO(printed)).pages)
        assert "Worked from these values" in text
        assert "Calculate" not in text
    # The rules for paper, put on the screen: this driver, or that of another engine, cannot print.
    hidden = open_page.run(
        """for (const sheet of document.styleSheets) for (const rule of sheet.cssRules) {
            if (rule.media?.mediaText === "print") rule.media.mediaText = "all";
        }
        const shown = (selector) => getComputedStyle(document.querySelector(selector)).display;
        return [".bb-calculator > form", ".md-header", ".bb-tools", "[data-answer]"].map(shown);"""
    )
    assert hidden[:3] == ["none"] * 3
    assert hidden[3] != "none"


def test_all_works_when_the_host_is_gone(open_page: Engine, own: Server) -> None:
    wait_for(open_page, "return navigator.serviceWorker.controller !== null")
    status = (
        "return document.querySelector('[data-offline] [role=status]').textContent.includes(arguments[0])"
    )
    wait_for(open_page, status, "Ready offline, release")
    own.stop()
    open_page.go(f"{own.address}set-up/sheet-thickness/?v=1&gauge=18+ga")
    wanted = answer("sheet-thickness", gauge="18 ga")["results"]["thickness"]["text"]
    wait_for(
        open_page,
        "return document.querySelector('[data-result=thickness] .bb-value')?.textContent === arguments[0]"
        " && document.querySelector('[data-engine]').textContent.includes('New answer.')",
        wanted,
    )
