"""Python and `calc` for the browser: makes `.build/engine/` and copies it into a site.

    python -m site_overrides.build.bundle           makes the engine
    python -m site_overrides.build.bundle entered   renews the list of functions that answers enter

Wheels, checked against their lock, become one library of compiled files; a
snapshot of Python's memory with that library imported makes it start fast, on a
module cut down to what answers use (`bundle_runtime.py`). What neither foresees is
answered by the whole module from the library. All is named by content, packed by us
(a host may compress nothing) and listed in `manifest.json` for the release and in
`files.js` for the engine.
"""

import base64
import hashlib
import json
import lzma
import re
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterable
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from calc.release import RELEASE
from site_overrides.build import bundle_wheels as wheels
from site_overrides.build.bundle_requests import example_requests, usual_requests
from site_overrides.build.bundle_runtime import (
    ENTERED,
    HERE,
    MODULE,
    ROOT,
    SCRIPT,
    WORK,
    Runtime,
    key,
    runtime,
    whole,
)
from site_overrides.build.node import node, node_modules
from site_overrides.build.phases import phase

ENGINE = WORK / "engine"
PYTHON_JS = ROOT / "site_overrides" / "theme" / "assets" / "engine" / "python.js"

_LZMA = {"id": lzma.FILTER_LZMA2, "preset": 9 | lzma.PRESET_EXTREME, "dict_size": 1 << 24}
# Machine code is bytes without alignment, a snapshot is words: measured, see ENGINE.md.
_BYTES = _LZMA | {"lc": 3, "lp": 0, "pb": 0}
_WORDS = _LZMA | {"lc": 2, "lp": 2, "pb": 2}

_IMPORTED = re.compile(r'^import \{[^}]*\} from "\./([\w.]+)";\n', re.M)
_IN_WORKER = ("places.js", "python.js", "store.js", "unxz.js")
RELEASE_MARK = "@release@"
"""What every answer of the engine calls its release; the page's worker puts the release there."""
_RELEASE = re.compile(r"[\w ,.()+-]+")
"""A release has no sign that JSON or HTML would write otherwise."""


@dataclass(frozen=True)
class Made:
    """One file of the engine before it is named."""

    role: str
    name: str
    content: bytes
    packed: dict[str, int] | None = None  # how, or None to send it as it is


def _sha256(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def _sum(content: bytes) -> str:
    """FNV-1a of 32-bit words in four turns, as `places.js` sums up what lies on a device.

    Examples:
        A last word of zeros gives the offset times the prime of FNV-1a.

        >>> _sum(b"") == f"{0x811C9DC5 * 16777619 % 2**32:08x}" * 4
        True
        >>> _sum(b"acetylene 15 psig") == _sum(b"acetylene 16 psig")
        False
    """
    words = memoryview(content + bytes(16 - len(content) % 16)).cast("I")
    sums = []
    for turn in range(4):
        total = 0x811C9DC5
        for word in words[turn::4]:
            total = (total ^ word) * 0x01000193 & 0xFFFFFFFF
        sums.append(f"{total:08x}")
    return "".join(sums)


def _packed(content: bytes, how: dict[str, int]) -> bytes:
    kept = WORK / "packed" / f"{_sha256(content + repr(sorted(how.items())).encode())}.xz"
    if not kept.is_file():
        kept.parent.mkdir(parents=True, exist_ok=True)
        kept.write_bytes(lzma.compress(content, lzma.FORMAT_XZ, check=lzma.CHECK_CRC32, filters=[how]))
    return kept.read_bytes()


def _unpacker() -> bytes:
    """The .xz unpacker, out of the script of the npm package that carries it."""
    script = node_modules() / "xz-decompress" / "dist" / "package" / "xz-decompress.js"
    found = re.search(r"wasm;base64,([A-Za-z0-9+/=]+)", script.read_text(encoding="utf-8"))
    if found is None:
        raise ValueError(f"{script} no longer carries its wasm as base64")
    return base64.b64decode(found[1])


def _inside(what: str, *words: str | Path) -> None:
    subprocess.run(node(HERE / "bundle_inside.mjs", what, *words), check=True)


def _checked_replies(replies: list[str]) -> None:
    faults = [reply for reply in replies if '"errors"' in reply[:12]]
    if faults:
        raise ValueError(f"the browser's Python could not answer an example: {faults[0]}")


def _named(made: Made, folder: Path) -> dict[str, Any]:
    stem, _, ending = made.name.partition(".")
    name = f"{stem}-{_sha256(made.content)[:12]}.{ending}"
    sent = made.content if made.packed is None else _packed(made.content, made.packed)
    entry: dict[str, Any] = {
        "role": made.role,
        "name": name if made.packed is None else f"{name}.xz",
        "bytes": len(sent),
        "sha256": _sha256(sent),
        "sum": _sum(sent),
    }
    if made.packed is not None:
        entry["unpacked"] = {
            "name": name, "bytes": len(made.content), "sha256": _sha256(made.content),
            "sum": _sum(made.content),
        }  # fmt: skip
    (folder / entry["name"]).write_bytes(sent)
    return entry


def _made_from(packages: Path, asked: str) -> str:
    """Checksum of everything that decides what the engine's files hold; no date is among it."""
    recipes = [*sorted(HERE.glob("bundle*")), PYTHON_JS]
    parts = [packages.read_bytes(), asked.encode(), key(ENTERED).encode()]
    return _sha256("".join(map(_sha256, [*parts, *(path.read_bytes() for path in recipes)])).encode())


def _packages(work: Path, calc: Path) -> tuple[Path, Path]:
    """Every file of the wheels in one zip, and the lock of the wheels."""
    lock, packages = work / "lock.json", work / "packages.zip"
    wheels.write_lock(
        wheels.write_wheels(work / "wheels", calc=calc),
        lock,
        runtime_lock=node_modules() / "pyodide" / "pyodide-lock.json",
    )
    packages.write_bytes(wheels.zipped(wheels.locked_files(work / "wheels", lock)))
    return packages, lock


@dataclass(frozen=True)
class _Images:
    """What Python starts from: the library, or data and snapshot."""

    library: Path
    snapshot: Path
    data: Path


def _images(work: Path, packages: Path, asked: str, module: Callable[[], Path]) -> _Images:
    """Library and snapshot; `module` gives the folder of the whole module once the library is there."""
    requests, held = work / "requests.json", work / "held.json"
    made = _Images(work / "library.zip", work / "memory.bin", work / "data.bin")
    requests.write_text(asked, encoding="utf-8")
    stock = node_modules() / "pyodide"
    with phase("engine: the library"):
        _inside("library", stock, packages, requests, HERE / "bundle_inside.py", made.library, held)
    folder = module()
    with phase("engine: the snapshot"):
        _inside("snapshot", folder, made.library, requests, held, made.snapshot, made.data)
    return made


def _files(found: Runtime, images: _Images, lock: Path) -> list[Made]:
    return [
        Made("script", "python.mjs", (found.used / SCRIPT).read_bytes()),
        Made("unpacker", "unxz.wasm", _unpacker()),
        Made("wasm", "python.wasm", (found.used / MODULE).read_bytes(), _BYTES),
        Made("data", "data.bin", images.data.read_bytes(), _WORDS),
        Made("snapshot", "memory.bin", images.snapshot.read_bytes(), _WORDS),
        Made("whole_script", "whole.mjs", (found.whole / SCRIPT).read_bytes()),
        Made("whole_wasm", "whole.wasm", (found.whole / MODULE).read_bytes(), _BYTES),
        Made("library", "library.zip", images.library.read_bytes(), _BYTES),
        Made("lock", "lock.json", lock.read_bytes()),
    ]


def _write_lists(folder: Path, entries: list[dict[str, Any]], made_from: str) -> None:
    listed = json.dumps({"made_from": made_from, "files": entries}, indent=1)
    (folder / "manifest.json").write_text(listed, encoding="utf-8")
    _write_files(folder, RELEASE_MARK)


def _write_files(folder: Path, release: str) -> None:
    """The script that tells the engine its files, and which release it is."""
    entries = json.loads((folder / "manifest.json").read_text(encoding="utf-8"))["files"]
    by_role: dict[str, Any] = {
        entry["role"]: {k: v for k, v in entry.items() if k != "role"} for entry in entries
    }
    # The lock is a record for people and tests; the engine only needs its platform.
    lock = folder / by_role.pop("lock")["name"]
    by_role["platform"] = json.loads(lock.read_text(encoding="utf-8"))["info"]
    by_role["release"] = release
    (folder / "files.js").write_text(
        f"/* Written by the build. */\nexport const FILES = {json.dumps(by_role, indent=1)};\n",
        encoding="utf-8",
    )


def _drop_unused(entries: Iterable[dict[str, Any]]) -> None:
    """Forget packed files that the engine no longer has."""
    now = {entry["sha256"] for entry in entries}
    for path in (WORK / "packed").glob("*.xz"):
        if _sha256(path.read_bytes()) not in now:
            path.unlink(missing_ok=True)


def build(calc: Path = ROOT / "calc", requests: list[str] | None = None, folder: Path = ENGINE) -> Path:
    """Make the engine's files, or leave them when nothing that goes into them changed.

    Args:
        calc: Source folder of our package.
        requests: Requests answered once before the snapshot is taken; left out,
            every calculator's example.
        folder: Where the files go; replaced as a whole.

    Returns:
        The folder.

    Raises:
        ValueError: A wheel, a reply or a runtime file is not as it should be.
    """
    WORK.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory(dir=WORK, prefix="making-") as name, ThreadPoolExecutor() as hands:
        work, made_in = Path(name), Path(name) / "engine"
        made_in.mkdir()
        packages, lock = _packages(work, calc)
        asked = json.dumps(example_requests() if requests is None else requests)
        made_from = _made_from(packages, asked)
        listed = folder / "manifest.json"
        if listed.is_file() and json.loads(listed.read_bytes())["made_from"] == made_from:
            return folder
        parts = hands.submit(runtime)  # beside the library, as neither needs the other
        images = _images(work, packages, asked, lambda: parts.result().whole)
        facts = json.loads(images.snapshot.with_suffix(".json").read_text(encoding="utf-8"))
        _checked_replies(facts.pop("replies"))
        with phase("engine: packing"):
            made = _files(parts.result(), images, lock)
            entries = list(hands.map(lambda each: _named(each, made_in), made))
        next(entry for entry in entries if entry["role"] == "snapshot").update(facts)
        _write_lists(made_in, entries, made_from)
        shutil.rmtree(folder, ignore_errors=True)
        made_in.rename(folder)
        if folder == ENGINE:
            _drop_unused(entries)
    return folder


def write_entered() -> None:
    """Ask all that pages may ask, and write down which functions of the module that enters."""
    WORK.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory(dir=WORK, prefix="making-") as name:
        work = Path(name)
        packages, _ = _packages(work, ROOT / "calc")
        images = _images(work, packages, json.dumps(example_requests()), whole)
        usual, marks, stock = work / "usual.json", work / "entered.bin", node_modules() / "pyodide"
        asked = usual_requests()
        usual.write_text(json.dumps(asked), encoding="utf-8")
        with phase(f"asking {len(asked)} requests"):
            numbered = whole() / "numbered.wasm"
            _inside("entered", whole(), numbered, images.snapshot, images.data, usual, marks)
        version = json.loads((stock / "package.json").read_text(encoding="utf-8"))["version"]
        subprocess.run(
            node(HERE / "bundle_used.mjs", "list", stock / MODULE, version, marks, ENTERED), check=True
        )
    print(f"{ENTERED.relative_to(ROOT)} names {len(ENTERED.read_text().splitlines()) - 1} functions")


def joined(scripts: dict[str, str], name: str) -> str:
    r"""One script module and all that it imports from its own folder, as one: a worker starts sooner.

    Args:
        scripts: Text of each script of the folder by its name.
        name: The one that is wanted.

    Returns:
        The text, in which nothing is imported by name and nothing exported.

    Examples:
        >>> print(joined({"b.js": "export const two = 2;\n", "a.js": 'import { two } from "./b.js";\nuse(two);\n'}, "a.js"))
        const two = 2;
        use(two);
        <BLANKLINE>
    """
    order: list[str] = []

    def take(script: str) -> None:
        for imported in _IMPORTED.findall(scripts[script]):
            take(imported)
        if script not in order:
            order.append(script)

    take(name)
    return "".join(
        re.sub(r"^export ", "", _IMPORTED.sub("", scripts[script]), flags=re.M) for script in order
    )


def copy(engine: Path, folder: Path) -> None:
    """Copy the engine's files into a site, tell it the release, and make one script of its worker.

    Args:
        engine: What `build` made.
        folder: The site's folder for them, such as `site/assets/engine`, which holds the scripts.

    Raises:
        ValueError: The release has signs that an answer would write otherwise.
    """
    if not _RELEASE.fullmatch(RELEASE):
        raise ValueError(f"a release is named by letters, digits and plain signs, not {RELEASE!r}")
    shutil.copytree(engine, folder, dirs_exist_ok=True)
    _write_files(folder, RELEASE)
    scripts = {path.name: path.read_text(encoding="utf-8") for path in folder.glob("*.js")}
    (folder / "worker.js").write_text(joined(scripts, "worker.js"), encoding="utf-8")
    for name in _IN_WORKER:
        (folder / name).unlink()


if __name__ == "__main__":
    if sys.argv[1:] not in ([], ["entered"]):
        sys.exit(f"The engine takes no words but “entered”, not {' '.join(sys.argv[1:])}.")
    with suppress(subprocess.CalledProcessError):  # it has said what is wrong
        write_entered() if sys.argv[1:] else build()
        sys.exit(0)
    sys.exit(1)
