"""Finds a Chromium or Chrome for the browser tests, or installs Debian's."""

import os
import shutil
import subprocess
import sys

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
ASK = "Install Chromium or Chrome (on Debian: apt-get install chromium), then run make test again."


def chromium() -> str | None:
    """Path of an installed Chromium or Chrome, or None."""
    for name in NAMES:
        if path := shutil.which(name):
            return path
    return None


def install() -> None:
    """Install Debian's Chromium where this machine lets us."""
    if shutil.which("apt-get") is None or os.geteuid() != 0:
        return
    for command in (
        ["apt-get", "update", "-qq"],
        ["apt-get", "install", "-y", "-qq", "--no-install-recommends", "chromium", "fonts-dejavu"],
    ):
        subprocess.run(command, check=False, stdout=subprocess.DEVNULL)


def main() -> int:
    """Exit code 0 when a browser is there."""
    if chromium() is None:
        install()
    if chromium() is None:
        print(ASK)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
