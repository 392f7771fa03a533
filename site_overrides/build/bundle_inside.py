"""Runs inside the browser's Python under Node: what only that Python can do."""

import ast
import importlib
import importlib.util
import io
import json
import marshal
import sys
import zipfile

EPOCH = (1980, 1, 1, 0, 0, 0)
ALSO = ("encodings.ascii", "encodings.latin_1", "linecache", "textwrap", "tokenize", "traceback")
"""Library modules that only an error would load."""


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
        if path.startswith(f"{package}/") and path.endswith(".py"):
            names |= _imported_names(content.decode())
            names.add(path.removesuffix(".py").removesuffix("/__init__").replace("/", "."))
    return {name for name in names if not name.endswith("__main__")}


def answered(requests: list[str]) -> list[str]:
    """Replies of the bridge to these requests, in turn."""
    bridge = importlib.import_module("calc.bridge")
    return [bridge.run(request) for request in requests]


def zip_contents(path: str) -> dict[str, bytes]:
    """Bytes of every file in a zip."""
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist() if name[-1] != "/"}


def _compiled(source: bytes, name: str) -> bytes:
    code = compile(source, name, "exec", dont_inherit=True, optimize=2)
    header = importlib.util.MAGIC_NUMBER + (1).to_bytes(4, "little")
    return header + importlib.util.source_hash(source) + marshal.dumps(code)


def modules_of(roots: list[str]) -> list[str]:
    """Names of all modules that a snapshot must hold, as none can be loaded later.

    Args:
        roots: Zips that everything is imported from.
    """
    contents: dict[str, bytes] = {}
    for root in roots:
        contents |= zip_contents(root)
    return sorted(names_imported_by(contents, "calc"))


def library(roots: list[str], requests: list[str]) -> bytes:
    """The library that these requests need, compiled, as one stored zip.

    Args:
        roots: Zips that everything was imported from.
        requests: Requests that must be answered from it.
    """
    contents: dict[str, bytes] = {}
    for root in roots:
        contents |= zip_contents(root)
    imported(names_imported_by(contents, "calc"))
    answered(requests)
    wanted = {
        path
        for module in list(sys.modules.values())
        for root in roots
        if (path := (getattr(module, "__file__", None) or "").removeprefix(f"{root}/")) in contents
    }
    wanted |= {path for path in contents if path.startswith("calc/")}
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as archive:
        for path in sorted(wanted):
            content, name = contents[path], path
            if path.endswith(".py"):
                content, name = _compiled(content, path), f"{path}c"
            entry = zipfile.ZipInfo(name, EPOCH)
            entry.external_attr = 0o644 << 16
            archive.writestr(entry, content)
    return packed.getvalue()


def as_json(value: object) -> str:
    """Text to hand over to JavaScript."""
    return json.dumps(value)
