"""Python and `calc` for the browser: makes `.build/engine/` and copies it into a site.

    python -m site_overrides.build.bundle [FOLDER]

Wheels, checked against their lock, become one library of compiled files; a
snapshot of Python's memory with that library imported makes it start fast, on a
module cut down to what answers use. What neither foresees is answered by the
whole module from the library. All is named by content, packed by us (a host may
compress nothing) and listed in `manifest.json` for the release and in `files.js`
for the engine.
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
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from site_overrides.build import bundle_wheels as wheels
from site_overrides.build.bundle_requests import example_requests, usual_requests
from site_overrides.build.node import RUNTIME, node, node_modules

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
WORK = ROOT / ".build"
ENGINE = WORK / "engine"
PYTHON_JS = ROOT / "site_overrides" / "theme" / "assets" / "engine" / "python.js"

_LZMA = {"id": lzma.FILTER_LZMA2, "preset": 9 | lzma.PRESET_EXTREME, "dict_size": 1 << 24}
# Machine code is bytes without alignment, a snapshot is words: measured, see DEVELOPERS.md.
_BYTES = _LZMA | {"lc": 3, "lp": 0, "pb": 0}
_WORDS = _LZMA | {"lc": 2, "lp": 2, "pb": 2}

# What the module as shipped uses; with more allowed, browsers of today refuse the result.
_FEATURES = (
    "bulk-memory", "bulk-memory-opt", "exception-handling", "multivalue", "mutable-globals",
    "nontrapping-float-to-int", "reference-types", "sign-ext",
)  # fmt: skip

_IMPORTED = re.compile(r'^import \{[^}]*\} from "\./([\w.]+)";\n', re.M)
_IN_WORKER = ("places.js", "python.js", "store.js", "unxz.js")


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


def _pruned(script: Path, module: Path, folder: Path) -> Path:
    """A script and its module, cut down to what they need of each other, in the layout of the npm package."""
    folder.mkdir()
    shutil.copy(script.with_name("pyodide-lock.json"), folder)
    new_script, new_module = folder / script.name, folder / module.name
    offers = folder / "fewer-exports.wasm"
    recipe = HERE / "bundle_prune.mjs"
    subprocess.run(node(recipe, node_modules(), script, module, new_script, offers), check=True)
    _without_unreached(offers, new_module)
    return folder


def _optimizer(module: Path, *words: str | Path) -> list[str]:
    program = node_modules() / "binaryen" / "bin" / "wasm-opt"
    return node(program, module, *(f"--enable-{feature}" for feature in _FEATURES), *words)


def _without_unreached(module: Path, out: Path) -> None:
    subprocess.run(
        _optimizer(
            module, "--remove-unused-module-elements", "--strip-debug", "--strip-producers", "-o", out
        ),
        check=True,
    )


def _used_part(stock: Path, whole: Path, snapshot: Path, data: Path, work: Path) -> Path:
    """The runtime cut down further, to what answers from this snapshot use."""
    usual, marks, calls, trapped, module = (
        work / name for name in ("usual.json", "used.bin", "calls.dot", "trapped.wasm", "pyodide.asm.wasm")
    )
    usual.write_text(json.dumps(usual_requests()), encoding="utf-8")
    _inside("used", whole, snapshot, data, usual, marks)
    with calls.open("wb") as graph:
        subprocess.run(_optimizer(whole / module.name, "--print-call-graph"), check=True, stdout=graph)
    subprocess.run(node(HERE / "bundle_used.mjs", whole / module.name, marks, calls, trapped), check=True)
    _without_unreached(trapped, module)
    return _pruned(stock / "pyodide.asm.mjs", module, work / "used")


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
    """Checksum of everything that decides what the engine's files hold."""
    recipes = [*sorted(HERE.glob("bundle*")), RUNTIME / "package-lock.json", PYTHON_JS]
    parts = [packages.read_bytes(), asked.encode(), *(path.read_bytes() for path in recipes)]
    return _sha256("".join(map(_sha256, parts)).encode())


def _made(work: Path, packages: Path, asked: str, lock: Path) -> tuple[list[Made], dict[str, Any]]:
    """The engine's files, and what the engine must know of the snapshot."""
    stock = node_modules() / "pyodide"
    requests = work / "requests.json"
    requests.write_text(asked, encoding="utf-8")
    library, held, snapshot, data = (
        work / name for name in ("library.zip", "held.json", "memory.bin", "data.bin")
    )
    _inside("library", stock, packages, requests, HERE / "bundle_inside.py", library, held)
    whole = _pruned(stock / "pyodide.asm.mjs", stock / "pyodide.asm.wasm", work / "whole")
    _inside("snapshot", whole, library, requests, held, snapshot, data)
    used = _used_part(stock, whole, snapshot, data, work)
    facts = json.loads(snapshot.with_suffix(".json").read_text(encoding="utf-8"))
    _checked_replies(facts.pop("replies"))
    return [
        Made("script", "python.mjs", (used / "pyodide.asm.mjs").read_bytes()),
        Made("unpacker", "unxz.wasm", _unpacker()),
        Made("wasm", "python.wasm", (used / "pyodide.asm.wasm").read_bytes(), _BYTES),
        Made("data", "data.bin", data.read_bytes(), _WORDS),
        Made("snapshot", "memory.bin", snapshot.read_bytes(), _WORDS),
        Made("whole_script", "whole.mjs", (whole / "pyodide.asm.mjs").read_bytes()),
        Made("whole_wasm", "whole.wasm", (whole / "pyodide.asm.wasm").read_bytes(), _BYTES),
        Made("library", "library.zip", library.read_bytes(), _BYTES),
        Made("lock", "lock.json", lock.read_bytes()),
    ], facts


def _write_lists(folder: Path, entries: list[dict[str, Any]], head: dict[str, Any]) -> None:
    (folder / "manifest.json").write_text(json.dumps(head | {"files": entries}, indent=1), encoding="utf-8")
    by_role = {entry["role"]: {k: v for k, v in entry.items() if k != "role"} for entry in entries}
    # The lock is a record for people and tests; the engine only needs its platform.
    lock = folder / by_role.pop("lock")["name"]
    by_role["platform"] = json.loads(lock.read_text(encoding="utf-8"))["info"]
    (folder / "files.js").write_text(
        f"/* Written by the build. */\nexport const FILES = {json.dumps(by_role, indent=1)};\n",
        encoding="utf-8",
    )


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
    with tempfile.TemporaryDirectory(dir=WORK, prefix="making-") as name:
        work, made_in = Path(name), Path(name) / "engine"
        made_in.mkdir()
        lock, packages = work / "lock.json", work / "packages.zip"
        wheels.write_lock(
            wheels.write_wheels(work / "wheels", calc=calc),
            lock,
            runtime_lock=node_modules() / "pyodide" / "pyodide-lock.json",
        )
        packages.write_bytes(wheels.zipped(wheels.locked_files(work / "wheels", lock)))
        asked = json.dumps(example_requests() if requests is None else requests)
        made_from = _made_from(packages, asked)
        listed = folder / "manifest.json"
        if listed.is_file() and json.loads(listed.read_bytes())["made_from"] == made_from:
            return folder
        files, facts = _made(work, packages, asked, lock)
        entries = [_named(made, made_in) for made in files]
        next(entry for entry in entries if entry["role"] == "snapshot").update(facts)
        _write_lists(made_in, entries, {"release": wheels.release(), "made_from": made_from})
        shutil.rmtree(folder, ignore_errors=True)
        made_in.rename(folder)
    return folder


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
    """Copy the engine's files into a site, and make one script of its worker.

    Args:
        engine: What `build` made.
        folder: The site's folder for them, such as `site/assets/engine`, which holds the scripts.
    """
    shutil.copytree(engine, folder, dirs_exist_ok=True)
    scripts = {path.name: path.read_text(encoding="utf-8") for path in folder.glob("*.js")}
    (folder / "worker.js").write_text(joined(scripts, "worker.js"), encoding="utf-8")
    for name in _IN_WORKER:
        (folder / name).unlink()


if __name__ == "__main__":
    built = build()
    for target in sys.argv[1:]:
        copy(built, Path(target))
