"""`python -m site_overrides.build.picture`: the README's picture, made from the built site."""

import threading
from pathlib import Path

from playwright.sync_api import sync_playwright

from site_overrides.build.browser import chromium
from site_overrides.build.serve import server

ROOT = Path(__file__).parents[2]
TARGET = ROOT / "docs" / "assets" / "job-sheet.png"
ADDRESS = "http://127.0.0.1:8457/bench/"


def main() -> None:
    """Photograph the job sheet as a phone shows it, with its answer below."""
    serving = server(ADDRESS)
    threading.Thread(target=serving.serve_forever, daemon=True).start()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=chromium(), args=["--no-sandbox", "--disable-gpu", "--disable-quic"]
        )
        page = browser.new_page(viewport={"width": 1280, "height": 1000}, color_scheme="light")
        page.goto(ADDRESS)
        page.locator("[data-calculator=job-sheet]").wait_for()
        page.wait_for_timeout(4000)
        page.screenshot(path=TARGET)
        browser.close()
    serving.shutdown()
    print(f"Wrote {TARGET.relative_to(ROOT)}")


if __name__ == "__main__":
    main()
