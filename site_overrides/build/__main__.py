"""`python -m site_overrides.build`: the whole site into `site/`, for SITE_URL."""

import os
import signal
import subprocess
import sys
import time
from contextlib import suppress
from pathlib import Path

from site_overrides.build.fresh import is_fresh, made_from, mark
from site_overrides.build.phases import phase, said

ROOT = Path(__file__).parents[2]
SITE = ROOT / "site"
PACE = 0.05  # s
MKDOCS = ("mkdocs", "build", "--strict", "--quiet", "--site-dir", "site")


def together(commands: dict[str, tuple[str, ...]]) -> None:
    """Run modules of Python side by side; the first that fails ends the others, and this program.

    Args:
        commands: What each does, and the module with its words.
    """
    began = time.monotonic()
    running = {
        what: subprocess.Popen([sys.executable, "-m", *words], cwd=ROOT, start_new_session=True)
        for what, words in commands.items()
    }
    try:
        while running:
            time.sleep(PACE)
            for what, process in list(running.items()):
                if (code := process.poll()) is None:
                    continue
                if code:
                    sys.exit(f"{what[:1].upper()}{what[1:]} could not be made; the lines above say why.")
                said(what, time.monotonic() - began)
                del running[what]
    finally:
        for process in running.values():
            with suppress(ProcessLookupError):
                os.killpg(process.pid, signal.SIGTERM)


def main() -> None:
    """Build in order; the first failure stops the build. What is built already is left."""
    if is_fresh(SITE, made_from()):
        print("The site is in site/; nothing of it has changed.")
        return
    from site_overrides.build import bundle, descriptions, formulas, licences, offline, styles, theme  # noqa: PLC0415
    from site_overrides.build.node import node_modules  # noqa: PLC0415

    licences.stop_where_one_is_missing()
    node_modules()
    with phase("formulas"):
        formulas.write()
    key = made_from()
    together({"the engine": ("site_overrides.build.bundle",), "the pages": MKDOCS})
    with phase("scripts, styles, descriptions"):
        bundle.copy(bundle.ENGINE, SITE / "assets" / "engine")
        descriptions.write(SITE)
        theme.write(SITE)
        styles.write(SITE)
    with phase("checksums"):
        offline.write(SITE)
    mark(SITE, key)
    print("The site is in site/")


if __name__ == "__main__":
    main()
