"""Whether the site in a folder is what its sources give: by their content, whenever they were written."""

import hashlib
import json
import os
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
STAMP = ROOT / ".build" / "site.json"
SOURCES = (
    "calc", "docs", "site_overrides", "mkdocs.yml", "pyproject.toml", "requirements.lock", "LICENSE",
    "tests/published", "tests/reference", "tests/mutants/score.json",
)  # fmt: skip
"""What pages are made of; the tables of checks are read out of the tests."""
SKIPPED = {"node_modules", "__pycache__"}
SETTINGS = ("SITE_URL", "BENCHBOOK_RELEASE")


def _files(path: Path) -> list[Path]:
    if path.is_file():
        return [path]
    found = []
    for folder, inside, names in os.walk(path):
        inside[:] = sorted(set(inside) - SKIPPED)
        found += [Path(folder, name) for name in sorted(names)]
    return found


def made_from(root: Path = ROOT) -> str:
    """Checksum of all sources and settings of a site, and of the Python that builds it."""
    told = hashlib.sha256(sys.version.encode())
    for setting in SETTINGS:
        told.update(f"{setting}={os.environ.get(setting)}\n".encode())
    for name in SOURCES:
        for path in _files(root / name):
            content = hashlib.sha256(path.read_bytes()).hexdigest()
            told.update(f"{path.relative_to(root).as_posix()} {content}\n".encode())
    return told.hexdigest()


def _is_whole(site: Path) -> bool:
    """Whether every file of a site is the one that its own list names."""
    listed = json.loads((site / "release.json").read_text(encoding="utf-8"))["files"]
    for address, file in listed.items():
        path = site / address / "index.html" if address == "" or address.endswith("/") else site / address
        if not path.is_file() or hashlib.sha256(path.read_bytes()).hexdigest() != file["sha256"]:
            return False
    return True


def is_fresh(site: Path, key: str, stamp: Path = STAMP) -> bool:
    """Whether a site was made from these sources and is as it was left.

    Args:
        site: Its folder.
        key: What `made_from` says now.
        stamp: Where `mark` keeps what it was made from.
    """
    if not stamp.is_file() or not (site / "release.json").is_file():
        return False
    kept = json.loads(stamp.read_text(encoding="utf-8"))
    worker = hashlib.sha256((site / "sw.js").read_bytes()).hexdigest()
    return kept == {"made_from": key, "worker": worker} and _is_whole(site)


def mark(site: Path, key: str, stamp: Path = STAMP) -> None:
    """Keep what a site was made from; its worker names the list of its files by checksum."""
    worker = hashlib.sha256((site / "sw.js").read_bytes()).hexdigest()
    stamp.parent.mkdir(exist_ok=True)
    stamp.write_text(json.dumps({"made_from": key, "worker": worker}), encoding="utf-8")
