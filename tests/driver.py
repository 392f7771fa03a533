"""One driver of browsers for a whole test run: a second one beside it refuses to start."""

import atexit
from functools import cache

from playwright.sync_api import Playwright, sync_playwright


@cache
def driver() -> Playwright:
    """The driver, started when first asked for and stopped at the end."""
    started = sync_playwright().start()
    atexit.register(started.stop)
    return started
