"""Finds the browsers for the tests, or installs Debian's: Chromium, Firefox, WebKitGTK."""

import os
import shutil
import subprocess
import sys
from glob import glob

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
ASK = (
    "Install Chromium, Firefox and WebKitGTK's driver (on Debian: apt-get install chromium firefox-esr "
    "webkit2gtk-driver xvfb), then run make test again."
)
WANTED = ("chromium", "firefox-esr", "webkit2gtk-driver", "xvfb", "fonts-dejavu")


def chromium() -> str | None:
    """Path of an installed Chromium or Chrome, or None."""
    return next((path for name in NAMES if (path := shutil.which(name))), None)


def firefox() -> str | None:
    """Path of an installed Firefox, or None."""
    return shutil.which("firefox-esr") or shutil.which("firefox")


def webkit() -> str | None:
    """Path of WebKitGTK's small browser where its driver and a screen for it are there too, or None."""
    found = sorted(glob("/usr/lib/*/webkit2gtk-4.*/MiniBrowser"))
    whole = shutil.which("WebKitWebDriver") and shutil.which("Xvfb")
    return found[-1] if found and whole else None


def are_there() -> bool:
    """Whether all three are."""
    return None not in (chromium(), firefox(), webkit())


def install() -> None:
    """Install Debian's where this machine lets us."""
    if shutil.which("apt-get") is None or os.geteuid() != 0:
        return
    for command in (
        ["apt-get", "update", "-qq"],
        ["apt-get", "install", "-y", "-qq", "--no-install-recommends", *WANTED],
    ):
        subprocess.run(command, check=False, stdout=subprocess.DEVNULL)


def main() -> int:
    """Exit code 0 when all browsers are there."""
    if not are_there():
        install()
    if not are_there():
        print(ASK)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
