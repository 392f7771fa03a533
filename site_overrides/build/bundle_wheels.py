"""The wheels that go to the browser, packed anew byte for byte, and their lock.

A published wheel is rebuilt from the files that pip installed, each checked
against the SHA-256 in its own RECORD, so that the build needs no network. Ours
is made from the source folder. `pyodide lockfile` then writes down exactly these.
"""

import base64
import csv
import hashlib
import io
import json
import subprocess
import sys
import tomllib
import zipfile
from importlib.metadata import Distribution, distribution
from pathlib import Path

from calc.release import VERSION

ROOT = Path(__file__).parents[2]
EPOCH = (1980, 1, 1, 0, 0, 0)
PUBLISHED = ("pint", "flexparser", "flexcache", "platformdirs", "typing_extensions", "rectpack", "segno")
"""pint with what it needs, rectpack and segno; nothing else of PyPI goes to the browser."""

SHIPPED = {".py", ".txt", ".csv", ".toml", ".json"}
_LEFT_BY_PIP = {"INSTALLER", "REQUESTED", "RECORD", "direct_url.json"}


def zipped(contents: dict[str, bytes]) -> bytes:
    """A stored zip of these files, the same bytes for the same contents.

    Args:
        contents: Bytes of each file by its path in the zip.
    """
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as archive:
        for path in sorted(contents):
            entry = zipfile.ZipInfo(path, EPOCH)
            entry.external_attr = 0o644 << 16
            archive.writestr(entry, contents[path])
    return packed.getvalue()


def _record_hash(content: bytes) -> str:
    digest = base64.urlsafe_b64encode(hashlib.sha256(content).digest()).rstrip(b"=").decode()
    return f"sha256={digest}"


def _wheel(name: str, version: str, contents: dict[str, bytes]) -> tuple[str, bytes]:
    info = f"{name}-{version}.dist-info"
    lines = io.StringIO()
    rows = csv.writer(lines, lineterminator="\n")
    for path in sorted(contents):
        rows.writerow([path, _record_hash(contents[path]), len(contents[path])])
    rows.writerow([f"{info}/RECORD", "", ""])
    whole = contents | {f"{info}/RECORD": lines.getvalue().encode()}
    return f"{name}-{version}-py3-none-any.whl", zipped(whole)


def _installed_files(found: Distribution) -> dict[str, bytes]:
    contents = {}
    for file in found.files or []:
        if file.hash is None or file.name in _LEFT_BY_PIP or file.parts[0] == "..":
            continue
        content = Path(str(file.locate())).read_bytes()
        if _record_hash(content) != f"{file.hash.mode}={file.hash.value}":
            raise ValueError(f"{file} is not what {found.name} {found.version} published")
        contents[file.as_posix()] = content
    return contents


def our_files(folder: Path) -> dict[str, bytes]:
    """What ships of the package `calc`, by path.

    Args:
        folder: The package's source folder.
    """
    return {
        f"calc/{path.relative_to(folder).as_posix()}": path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.suffix in SHIPPED and "__pycache__" not in path.parts
    }


def _our_wheel(folder: Path) -> tuple[str, bytes]:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    name = project["name"].replace("-", "_")
    needs = "".join(f"Requires-Dist: {need}\n" for need in project["dependencies"])
    info = f"{name}-{VERSION}.dist-info"
    return _wheel(
        name,
        VERSION,
        our_files(folder)
        | {
            f"{info}/METADATA": (
                f"Metadata-Version: 2.4\nName: {project['name']}\nVersion: {VERSION}\n"
                f"License-Expression: {project['license']}\n{needs}"
            ).encode(),
            f"{info}/WHEEL": b"Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n",
        },
    )


def write_wheels(folder: Path, *, calc: Path) -> list[Path]:
    """Write every wheel that the browser gets.

    Args:
        folder: Where they go; emptied first.
        calc: Source folder of our package.

    Returns:
        The wheels.

    Raises:
        ValueError: An installed file differs from what its publisher recorded.
    """
    folder.mkdir(parents=True, exist_ok=True)
    for old in folder.glob("*.whl"):
        old.unlink()
    wheels = [_our_wheel(calc)]
    for name in PUBLISHED:
        found = distribution(name)
        wheels.append(_wheel(name, found.version, _installed_files(found)))
    for name, content in wheels:
        (folder / name).write_bytes(content)
    return [folder / name for name, _ in wheels]


def write_lock(wheels: list[Path], lock: Path, *, runtime_lock: Path) -> None:
    """Let `pyodide lockfile` write the short lock of exactly these wheels.

    Args:
        wheels: The wheels, all in one folder.
        lock: File to write.
        runtime_lock: Lock that the runtime came with; only its platform is taken.
    """
    empty = lock.with_name("pyodide-lock-empty.json")
    info = json.loads(runtime_lock.read_text(encoding="utf-8"))["info"]
    empty.write_text(json.dumps({"info": info, "packages": {}}), encoding="utf-8")
    subprocess.run(
        [
            Path(sys.executable).with_name("pyodide"), "lockfile", "add-wheels",
            "--input", empty, "--output", lock, "--base-path", wheels[0].parent, *wheels,
        ],
        check=True,
        stdout=subprocess.DEVNULL,
    )  # fmt: skip
    empty.unlink()


def locked_files(folder: Path, lock: Path) -> dict[str, bytes]:
    """Every file inside the locked wheels.

    Args:
        folder: Where the wheels are.
        lock: Their lock.

    Returns:
        Bytes by path, dist-info left out.

    Raises:
        ValueError: A wheel's SHA-256 is not the one in the lock, or a wheel is
            there that the lock does not name.
    """
    packages = json.loads(lock.read_text(encoding="utf-8"))["packages"].values()
    named = {package["file_name"]: package["sha256"] for package in packages}
    there = {path.name for path in folder.glob("*.whl")}
    if there != set(named):
        raise ValueError(f"the lock names {sorted(named)}, the folder holds {sorted(there)}")
    contents = {}
    for name, sha256 in sorted(named.items()):
        wheel = (folder / name).read_bytes()
        if hashlib.sha256(wheel).hexdigest() != sha256:
            raise ValueError(f"{name} is not the wheel that was locked")
        with zipfile.ZipFile(io.BytesIO(wheel)) as archive:
            for path in archive.namelist():
                if ".dist-info/" not in path:
                    contents[path] = archive.read(path)
    return contents
