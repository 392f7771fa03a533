"""The engine's parts that depend on the runtime alone: kept in `.build/kept`, made anew when their key changes.

    python -m site_overrides.build.bundle_runtime    makes them, and prints where they are

The key of the whole module is the lock of npm's packages and the recipe; that of the
module which a page starts on is this and the list of functions that answers enter.
Nothing of `calc` goes into them.
"""

import hashlib
import shutil
import subprocess
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from site_overrides.build.node import RUNTIME, node, node_modules
from site_overrides.build.phases import phase

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
WORK = ROOT / ".build"
KEPT = WORK / "kept"
ENTERED = RUNTIME / "entered.txt"
"""The functions of the module that answers enter; `make engine-lock` writes it."""
MODULE, SCRIPT = "pyodide.asm.wasm", "pyodide.asm.mjs"
_RECIPES = ("bundle_prune.mjs", "bundle_used.mjs", "bundle_wasm.mjs", "bundle_runtime.py")

# What the module as shipped uses; with more allowed, browsers of today refuse the result.
_FEATURES = (
    "bulk-memory", "bulk-memory-opt", "exception-handling", "multivalue", "mutable-globals",
    "nontrapping-float-to-int", "reference-types", "sign-ext",
)  # fmt: skip


@dataclass(frozen=True)
class Runtime:
    """Folders in the layout of the npm package.

    Attributes:
        stock: The package itself.
        whole: Without what no answer could ever reach.
        used: What a page starts on.
        numbered: The module whose functions are numbered as those of the package, with the exports of `whole`.
    """

    stock: Path
    whole: Path
    used: Path

    @property
    def numbered(self) -> Path:
        """Module with the numbers of the package."""
        return self.whole / "numbered.wasm"


def key(*more: Path) -> str:
    """Checksum of the packages' lock, the recipe and further files."""
    parts = [RUNTIME / "package-lock.json", *(HERE / name for name in _RECIPES), *more]
    return hashlib.sha256(
        b"".join(hashlib.sha256(path.read_bytes()).digest() for path in parts)
    ).hexdigest()


def _kept(name: str, made_from: str, make: Callable[[Path], None]) -> Path:
    """Folder of a part; made where there is none of this key, and the older ones dropped."""
    folder = KEPT / f"{name}-{made_from[:16]}"
    if folder.is_dir():
        return folder
    KEPT.mkdir(parents=True, exist_ok=True)
    with (
        tempfile.TemporaryDirectory(dir=WORK, prefix="making-") as place,
        phase(f"engine: the {name} module"),
    ):
        new = Path(place) / name
        new.mkdir()
        make(new)
        for old in KEPT.glob(f"{name}-*"):
            shutil.rmtree(old)
        new.rename(folder)
    return folder


def _optimizer(module: Path, *words: str | Path) -> list[str]:
    program = node_modules() / "binaryen" / "bin" / "wasm-opt"
    return node(program, module, *(f"--enable-{feature}" for feature in _FEATURES), *words)


def _without_unreached(module: Path, out: Path) -> None:
    words = ("--remove-unused-module-elements", "--strip-debug", "--strip-producers", "-o", out)
    subprocess.run(_optimizer(module, *words), check=True)


def _pruned(stock: Path, module: Path, folder: Path, numbered: Path) -> None:
    """The script and a module, cut down to what they need of each other; `numbered` is the module before."""
    recipe, script = HERE / "bundle_prune.mjs", stock / SCRIPT
    subprocess.run(node(recipe, node_modules(), script, module, folder / SCRIPT, numbered), check=True)
    _without_unreached(numbered, folder / MODULE)
    shutil.copy(stock / "pyodide-lock.json", folder)


def _used_part(stock: Path, numbered: Path, folder: Path) -> None:
    """The runtime cut down further, to the functions that answers enter and what these call."""
    calls, trapped, module, before = (
        folder / name for name in ("calls.dot", "trapped.wasm", "reached.wasm", "before.wasm")
    )
    with calls.open("wb") as graph:
        subprocess.run(
            _optimizer(numbered, "--print-call-graph"), check=True, stdout=graph, stderr=subprocess.DEVNULL
        )
    recipe = HERE / "bundle_used.mjs"
    subprocess.run(node(recipe, "cut", stock / MODULE, numbered, ENTERED, calls, trapped), check=True)
    _without_unreached(trapped, module)
    _pruned(stock, module, folder, before)
    for step in (calls, trapped, module, before):
        step.unlink()


def whole() -> Path:
    """Folder of the module without what no answer could ever reach."""
    stock = node_modules() / "pyodide"
    return _kept("whole", key(), lambda new: _pruned(stock, stock / MODULE, new, new / "numbered.wasm"))


def runtime() -> Runtime:
    """All parts, made now where their key is new.

    Raises:
        CalledProcessError: The list of entered functions is that of another runtime.
    """
    stock, all_of_it = node_modules() / "pyodide", whole()
    numbered = all_of_it / "numbered.wasm"
    used = _kept("used", key(ENTERED), lambda new: _used_part(stock, numbered, new))
    return Runtime(stock, all_of_it, used)


if __name__ == "__main__":
    print(runtime())
