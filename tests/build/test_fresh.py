"""What is built already is built again only when something of it changed, whenever its files were written."""

import hashlib
import json
import os
import shutil
import time
from pathlib import Path

import pytest

from site_overrides.build import bundle_runtime, fresh
from site_overrides.build.__main__ import together


@pytest.fixture
def root(tmp_path: Path) -> Path:
    for name in fresh.SOURCES:
        path = tmp_path / name
        if Path(fresh.ROOT / name).is_dir():
            path.mkdir(parents=True)
            (path / "one.txt").write_text(name, encoding="utf-8")
        else:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(name, encoding="utf-8")
    return tmp_path


@pytest.fixture
def site(tmp_path: Path) -> Path:
    made = tmp_path / "made"
    (made / "page").mkdir(parents=True)
    files = {"page/": "a page", "file.css": "css"}
    for address, text in files.items():
        (made / (address + "index.html" if address.endswith("/") else address)).write_text(
            text, encoding="utf-8"
        )
    sums = {
        address: {"sha256": hashlib.sha256(text.encode()).hexdigest()} for address, text in files.items()
    }
    (made / "release.json").write_text(json.dumps({"files": sums}), encoding="utf-8")
    (made / "sw.js").write_text("worker", encoding="utf-8")
    return made


def test_a_file_that_is_only_written_again_changes_nothing(root: Path) -> None:
    before = fresh.made_from(root)
    os.utime(root / "calc" / "one.txt", (time.time() + 60, time.time() + 60))
    (root / "calc" / "__pycache__").mkdir()
    (root / "calc" / "__pycache__" / "one.pyc").write_bytes(b"1")
    assert fresh.made_from(root) == before


@pytest.mark.parametrize("name", fresh.SOURCES)
def test_any_source_counts_by_its_content(name: str, root: Path) -> None:
    before = fresh.made_from(root)
    path = root / name
    (path / "one.txt" if path.is_dir() else path).write_text("other", encoding="utf-8")
    assert fresh.made_from(root) != before


def test_a_source_that_is_renamed_or_gone_counts(root: Path) -> None:
    before = fresh.made_from(root)
    (root / "calc" / "one.txt").rename(root / "calc" / "two.txt")
    renamed = fresh.made_from(root)
    (root / "calc" / "two.txt").unlink()
    assert len({before, renamed, fresh.made_from(root)}) == 3


@pytest.mark.parametrize("setting", fresh.SETTINGS)
def test_address_and_release_count(setting: str, root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = fresh.made_from(root)
    monkeypatch.setenv(setting, "another")
    assert fresh.made_from(root) != before


def test_a_site_is_fresh_until_its_sources_or_any_file_of_it_change(site: Path, tmp_path: Path) -> None:
    stamp = tmp_path / "site.json"
    assert not fresh.is_fresh(site, "key", stamp)
    fresh.mark(site, "key", stamp)
    assert fresh.is_fresh(site, "key", stamp)
    assert not fresh.is_fresh(site, "another", stamp)
    (site / "page" / "index.html").write_text("another page", encoding="utf-8")
    assert not fresh.is_fresh(site, "key", stamp)
    (site / "page" / "index.html").write_text("a page", encoding="utf-8")
    (site / "file.css").unlink()
    assert not fresh.is_fresh(site, "key", stamp)


def test_a_part_of_the_runtime_is_kept_by_its_key_and_the_older_dropped(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bundle_runtime, "WORK", tmp_path)
    monkeypatch.setattr(bundle_runtime, "KEPT", tmp_path / "kept")
    made: list[Path] = []
    for key in ("a" * 20, "a" * 20, "b" * 20):
        bundle_runtime._kept("part", key, made.append)
    assert len(made) == 2
    assert [path.name for path in (tmp_path / "kept").iterdir()] == [f"part-{'b' * 16}"]


def test_the_key_of_the_runtime_knows_nothing_of_our_code(tmp_path: Path) -> None:
    parts = [bundle_runtime.RUNTIME / "package-lock.json", bundle_runtime.ENTERED]
    parts += [bundle_runtime.HERE / name for name in bundle_runtime._RECIPES]
    assert all(path.is_file() and "calc" not in path.relative_to(fresh.ROOT).parts for path in parts)
    shutil.copy(bundle_runtime.ENTERED, tmp_path / "entered.txt")
    before = bundle_runtime.key(tmp_path / "entered.txt")
    with (tmp_path / "entered.txt").open("a") as listed:
        listed.write("PyDict_New\n")
    assert bundle_runtime.key(tmp_path / "entered.txt") != before


def test_the_first_that_fails_ends_the_others(capfd: pytest.CaptureFixture[str]) -> None:
    began = time.monotonic()
    with pytest.raises(SystemExit, match="The bad could not be made"):
        together(
            {
                "the slow": ("timeit", "-n1", "-r1", "import time; time.sleep(60)"),
                "the bad": ("no_such_module",),
            }
        )
    assert time.monotonic() - began < 20
    assert "the slow" not in capfd.readouterr().out
