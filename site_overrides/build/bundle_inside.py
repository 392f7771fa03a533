"""Runs inside the browser's Python under Node: what only that Python can do."""

import ast
import importlib
import importlib.util
import io
import marshal
import sys
import zipfile
from types import CodeType

EPOCH = (1980, 1, 1, 0, 0, 0)
STAND_INS = {
    # Both hold the same JavaScript objects, in the same order, as the files they stand
    # in for: a snapshot counts on that.
    # Awaiting belongs to pages that call Python in turns; ours asks and is answered.
    "pyodide/webloop.py": (
        "from pyodide_js._api import scheduleCallback\n"
        "def _initialize_event_loop():\n"
        "    global _api\n"
        "    from pyodide_js import _api\n"
    ),
    "asyncio/__init__.py": ("def get_event_loop():\n    raise RuntimeError('nothing is awaited here')\n"),
    # Nothing is ever installed; the runtime only asks where it would go.
    "pyodide/_package_loader.py": (
        "from pathlib import Path\n"
        "from site import getsitepackages\n"
        "from pyodide_js import loadedPackages\n"
        "SITE_PACKAGES, DSO_DIR = Path(getsitepackages()[0]), Path('/usr/lib')\n"
        "def init_loaded_packages(): pass\n"
    ),
    # pint and its parsers ask for their own version, to show it; nothing here does.
    "importlib/metadata/__init__.py": "def version(name): return 'unknown'\n",
    # pint's tables of what to do with numpy's functions, which is not there.
    "pint/facets/numpy/numpy_func.py": "def __getattr__(name): return {}\n",
    # Only one of its packers is used, and that is asked for by its own name.
    "rectpack/__init__.py": "",
    # All that could keep a registry on a disk or a drawing in a file.
    "platformdirs/__init__.py": "",
    "pickle.py": "HIGHEST_PROTOCOL = 5\n",
    "tempfile.py": "",
    "shutil.py": "",
    "gzip.py": "",
    # segno quotes XML with a module that could also fetch it, given an address.
    "urllib/request.py": "",
    "ipaddress.py": "",
    # `html` needs these 2,231 names to read HTML; we only write it.
    "html/entities.py": "html5 = {}\nname2codepoint = {}\ncodepoint2name = {}\n",
}
"""Short texts in place of library files that draw in much and are never used."""

ALSO = ("encodings.ascii", "encodings.latin_1", "linecache", "random", "textwrap", "tokenize", "traceback")
"""Library modules that only an error, or starting from a snapshot, would load."""


def _imported_names(source: str) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            names.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            names.add(node.module)
    return names


def imported(names: set[str]) -> None:
    """Import all of these, so that nothing is left to be found later."""
    for name in sorted(names):
        importlib.import_module(name)


def names_imported_by(contents: dict[str, bytes], package: str) -> set[str]:
    """Every module that a package's files import, inside functions too, and themselves."""
    names = set(ALSO)
    for path, content in contents.items():
        if not path.startswith(f"{package}/") or path.endswith("/__main__.py"):
            continue
        if path.endswith(".py"):
            names |= _imported_names(content.decode())
            names.add(path.removesuffix(".py").removesuffix("/__init__").replace("/", "."))
    return names


def answered(requests: list[str]) -> list[str]:
    """Replies of the bridge to these requests, in turn."""
    bridge = importlib.import_module("calc.bridge")
    return [bridge.run(request) for request in requests]


def zip_contents(path: str) -> dict[str, bytes]:
    """Bytes of every file in a zip."""
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist() if name[-1] != "/"}


class _WithoutTypes(ast.NodeTransformer):
    """Functions without the types of what they take and give: Python keeps code for each.

    Decorated functions keep theirs, as decorators ask for them; so do our formulas,
    whose types say the units of a working.
    """

    def _plain(self, node: ast.FunctionDef | ast.AsyncFunctionDef) -> ast.AST:
        if not node.decorator_list:
            node.returns = None
            for given in ast.walk(node.args):
                if isinstance(given, ast.arg):
                    given.annotation = None
        return self.generic_visit(node)

    visit_FunctionDef = visit_AsyncFunctionDef = _plain  # noqa: N815 - named by the library


def _without_lines(code: CodeType) -> CodeType:
    """The same code without its table of line numbers, which only tracebacks read."""
    consts = [_without_lines(c) if isinstance(c, CodeType) else c for c in code.co_consts]
    return code.replace(co_linetable=b"", co_consts=tuple(consts))


def _compiled(source: bytes, name: str) -> bytes:
    tree = ast.parse(source)
    if not name.startswith("calc/formulas/"):
        tree = _WithoutTypes().visit(tree)
    code = _without_lines(compile(tree, name, "exec", dont_inherit=True, optimize=2))
    header = importlib.util.MAGIC_NUMBER + (1).to_bytes(4, "little")
    return header + importlib.util.source_hash(source) + marshal.dumps(code)


def to_hold(roots: list[str]) -> dict[str, list[str]]:
    """Modules and tables that a snapshot must hold, as nothing can be read later.

    Args:
        roots: Zips that everything is imported from.
    """
    contents: dict[str, bytes] = {}
    for root in roots:
        contents |= zip_contents(root)
    tables = [
        path.removeprefix("calc/data/").removesuffix(".csv")
        for path in sorted(contents)
        if path.startswith("calc/data/") and path.endswith(".csv")
    ]
    return {"modules": sorted(names_imported_by(contents, "calc")), "tables": tables}


def _files_of_modules(root: str) -> set[str]:
    """Files in a zip that the modules loaded by now came from."""
    files = (getattr(module, "__file__", None) or "" for module in list(sys.modules.values()))
    return {file.removeprefix(f"{root}/") for file in files if file.startswith(f"{root}/")}


def _zip_of(contents: dict[str, bytes]) -> bytes:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as archive:
        for path in sorted(contents):
            entry = zipfile.ZipInfo(path, EPOCH)
            entry.external_attr = 0o644 << 16
            archive.writestr(entry, contents[path])
    return packed.getvalue()


def library(roots: list[str], requests: list[str]) -> bytes:
    """The library that these requests need, compiled, as one stored zip.

    Args:
        roots: Zips that everything is imported from.
        requests: Requests that must be answered from it.
    """
    contents: dict[str, bytes] = {}
    for root in roots:
        contents |= zip_contents(root)
    imported(names_imported_by(contents, "calc"))
    answered(requests)
    wanted = {path for path in contents if path.startswith("calc/")}
    for root in roots:
        wanted |= _files_of_modules(root)
    compiled: dict[str, bytes] = {}
    for path in wanted:
        if path.endswith(".py"):
            source = STAND_INS[path].encode() if path in STAND_INS else contents[path]
            compiled[f"{path}c"] = _compiled(source, path)
        else:
            compiled[path] = contents[path]
    return _zip_of(compiled)


def trimmed(root: str, modules: list[str], requests: list[str]) -> bytes:
    """That library without the files which its stand-ins no longer draw in.

    Args:
        root: The library, which Python was started from.
        modules: Names that must be there.
        requests: Requests that must be answered from it.
    """
    imported(set(modules))
    answered(requests)
    wanted = _files_of_modules(root)
    return _zip_of(
        {
            path: content
            for path, content in zip_contents(root).items()
            if path in wanted or path.startswith("calc/")
        }
    )
