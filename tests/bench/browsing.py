"""Browsers for the bench."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Page, ViewportSize

from site_overrides.build.browser import chromium
from tests.driver import driver

FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]  # fmt: skip
PHONE: ViewportSize = {"width": 412, "height": 823}


def program() -> str:
    """Path of Chromium; the run ends here without one."""
    path = chromium()
    if path is None:
        sys.exit("Chromium or Chrome is needed; see site_overrides/build/browser.py")
    return path


@contextmanager
def opened(address: str, profile: str, script: str | None = None) -> Iterator[Page]:
    """A page in a browser that remembers what the profile's earlier visits left.

    Args:
        address: Where it begins.
        profile: Folder of the profile.
        script: What runs in every page before its own scripts.
    """
    context = driver().chromium.launch_persistent_context(
        profile, executable_path=program(), args=FLAGS, viewport=PHONE
    )
    if script:
        context.add_init_script(script)
    page = context.pages[0]
    page.goto(address)
    try:
        yield page
    finally:
        context.close()
