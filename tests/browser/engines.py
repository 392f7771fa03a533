"""Three browser engines behind the few things that a reader does, so that one list of tests runs in each."""

import base64
import gc
import json
import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from time import monotonic, sleep
from typing import Any, Protocol

from playwright.sync_api import Browser

from site_overrides.build.browser import chromium, firefox, webkit
from tests.browser.conftest import FLAGS
from tests.driver import driver

TAB = "\ue004"
"""Tab as WebDriver writes it."""


class Engine(Protocol):
    """One browser with a fresh profile and one window."""

    def go(self, address: str) -> None:
        """Open an address."""

    def run(self, script: str, *given: Any) -> Any:
        """Run the body of a function in the page; what was given stands in `arguments`."""

    def press(self, keys: str) -> None:
        """Press keys where the focus is."""

    def pdf(self) -> bytes | None:
        """The page as printed, or None where the engine's driver cannot print."""


class Blink:
    """Chromium by Playwright."""

    def __init__(self, browser: Browser) -> None:
        self.context = browser.new_context()
        self.page = self.context.new_page()

    def go(self, address: str) -> None:
        self.page.goto(address)

    def run(self, script: str, *given: Any) -> Any:
        return self.page.evaluate(f"given => (function () {{ {script} }}).apply(null, given)", list(given))

    def press(self, keys: str) -> None:
        for key in keys:
            self.page.keyboard.press("Tab") if key == TAB else self.page.keyboard.type(key)

    def pdf(self) -> bytes | None:
        return self.page.pdf()


class Gecko:
    """Firefox by its own Marionette."""

    def __init__(self, made: Any) -> None:
        self.made = made

    def go(self, address: str) -> None:
        self.made.navigate(address)

    def run(self, script: str, *given: Any) -> Any:
        return self.made.execute_script(script, script_args=list(given))

    def press(self, keys: str) -> None:
        self.made.get_active_element().send_keys(keys)

    def pdf(self) -> bytes | None:
        return base64.b64decode(self.made._send_message("WebDriver:Print", {}, key="value"))


class WebKit:
    """WebKitGTK by its WebDriver, which cannot print."""

    def __init__(self, made: Any) -> None:
        self.made = made

    def go(self, address: str) -> None:
        self.made.get(address)

    def run(self, script: str, *given: Any) -> Any:
        return self.made.execute_script(script, *given)

    def press(self, keys: str) -> None:
        self.made.switch_to.active_element.send_keys(keys)

    def pdf(self) -> bytes | None:
        return None


@contextmanager
def _blink() -> Iterator[Engine]:
    made = driver().chromium.launch(executable_path=chromium(), args=FLAGS)
    yield Blink(made)
    made.close()


@contextmanager
def _gecko() -> Iterator[Engine]:
    from marionette_driver.marionette import Marionette  # noqa: PLC0415 - only where it is used

    quiet = {
        "network.captive-portal-service.enabled": False, "network.connectivity-service.enabled": False,
        "app.update.auto": False, "browser.safebrowsing.malware.enabled": False,
        "browser.safebrowsing.phishing.enabled": False, "datareporting.policy.dataSubmissionEnabled": False,
    }  # fmt: skip
    made = Marionette(bin=firefox(), headless=True, prefs=quiet, gecko_log=os.devnull)
    made.start_session()
    made.timeout.page_load = 60
    try:
        yield Gecko(made)
    finally:
        made.quit()
        made.cleanup()
        del made
        gc.collect()  # it clears its profile away when it is forgotten, too late at the end of Python


@contextmanager
def _screen() -> Iterator[str]:
    """A screen that nobody sees; WebKitGTK wants one."""
    read, write = os.pipe()
    xvfb = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", "1280x900x24", "-nolisten", "tcp"],
        pass_fds=[write], stderr=subprocess.DEVNULL,
    )  # fmt: skip
    os.close(write)
    try:
        with os.fdopen(read) as number:
            yield f":{number.readline().strip()}"
    finally:
        xvfb.terminate()
        xvfb.wait()


@contextmanager
def _webkit() -> Iterator[Engine]:
    from selenium import webdriver  # noqa: PLC0415 - only where it is used
    from selenium.webdriver.webkitgtk.options import Options  # noqa: PLC0415
    from selenium.webdriver.webkitgtk.service import Service  # noqa: PLC0415

    options = Options()
    options.binary_location = webkit() or ""
    options.add_argument("--automation")
    with _screen() as display:
        service = Service(shutil.which("WebKitWebDriver") or "", env=os.environ | {"DISPLAY": display})
        made = webdriver.WebKitGTK(options=options, service=service)
        try:
            yield WebKit(made)
        finally:
            made.quit()


ENGINES = {"Chromium": _blink, "Firefox": _gecko, "WebKitGTK": _webkit}
"""How each is started."""


def wait_for(engine: Engine, script: str, *given: Any, seconds: float = 60.0) -> Any:
    """Until the body of a function returns something; that.

    Raises:
        AssertionError: It did not, in time.
    """
    end = monotonic() + seconds
    while monotonic() < end:
        if got := engine.run(script, *given):
            return got
        sleep(0.1)
    raise AssertionError(f"not in {seconds:g} s: {script} {json.dumps(given)}")
