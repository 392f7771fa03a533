import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from calc.release import RELEASE
from site_overrides.build.bundle_requests import example_requests
from tests.bench.browsing import opened
from tests.bench.engines import write_site
from tests.bench.server import Host, served
from tests.wasm.built import engine

pytestmark = pytest.mark.browser
ASK = """async ([options, request]) => {
  const { ask, onProgress, startEngine } = await import("./assets/engine/engine.js");
  const seen = {};
  onProgress((state) => Object.assign(seen, state));
  try {
    await startEngine(options);
    const reply = await ask(request);
    seen.answered = "answer" in reply;
    seen.release = reply.answer?.release;
    while (!seen.kept) await new Promise((done) => setTimeout(done, 50));
  } catch (error) {
    seen.failed = error.message;
  }
  return seen;
}"""
DAMAGE = """async () => {
  const root = await navigator.storage.getDirectory();
  const folder = await root.getDirectoryHandle("engine");
  for await (const name of folder.keys()) {
    const writable = await (await folder.getFileHandle(name)).createWritable({ keepExistingData: true });
    await writable.write({ type: "write", position: 5000, data: new Uint8Array([1, 2, 3, 4]) });
    await writable.close();
  }
}"""

DAMAGE_CACHED = """async () => {
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      if (!request.url.endsWith("ENDING")) continue;
      const kept = await cache.match(request);
      const bytes = new Uint8Array(await kept.arrayBuffer());
      bytes[5000] ^= 1;
      await cache.put(request, new Response(bytes, { headers: kept.headers }));
      window.damaged = (window.damaged ?? 0) + 1;
    }
  }
  await navigator.serviceWorker.register("sw.js");
  while (!navigator.serviceWorker.controller) await new Promise((done) => setTimeout(done, 50));
  return window.damaged;
}"""
CONTROL = DAMAGE_CACHED.replace("ENDING", "nothing")
WARMED = """async (name) => {
  const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle("engine");
  return folder.getFileHandle(name).then(() => true, () => false);
}"""


class Changing(Host):
    """A host of files that a test may spoil."""

    def body(self, path: Path) -> bytes:
        return path.read_bytes()


@pytest.fixture
def site(tmp_path: Path) -> Path:
    write_site(tmp_path / "site", engine())
    return tmp_path / "site"


@pytest.fixture
def address(site: Path) -> Iterator[str]:
    with served(Changing(site)) as at:
        yield at


def visited(address: str, profile: Path, *, first: str = "", **options: Any) -> dict[str, Any]:
    """What one visit saw: the last state, whether it was answered, how it failed."""
    request = json.loads(example_requests()[0])
    with opened(address, str(profile)) as page:
        if first:
            assert page.evaluate(first) != 0
        return dict(page.evaluate(ASK, [options, request]))


def file_of(site: Path, start: str) -> Path:
    (found,) = (site / "assets" / "engine").glob(start)
    return found


def spoil(file: Path) -> None:
    content = bytearray(file.read_bytes())
    content[1000] ^= 1
    file.write_bytes(content)


def test_the_memory_is_restored_as_built_and_a_later_visit_downloads_nothing(
    address: str, tmp_path: Path
) -> None:
    first = visited(address, tmp_path / "profile", check=True)
    assert first["answered"]
    assert first["memoryChecked"]
    assert first["loaded"] == first["total"]
    assert first["release"] == RELEASE
    later = visited(address, tmp_path / "profile", check=True)
    assert later["answered"]
    assert later["memoryChecked"]
    assert later["loaded"] == 0
    assert not later["whole"]


def test_behind_a_service_worker_the_module_comes_as_it_is_and_is_warmed_up(
    site: Path, address: str, tmp_path: Path
) -> None:
    profile = str(tmp_path / "profile")
    request = json.loads(example_requests()[0])
    visited(address, tmp_path / "profile")
    with opened(address, profile) as page:
        page.evaluate(CONTROL)
        seen = page.evaluate(ASK, [{"check": True}, request])
        warm = f"warm-{file_of(site, 'python-*.wasm.xz').stem}"
        for _ in range(150):
            if page.evaluate(WARMED, warm):
                break
            page.wait_for_timeout(100)
        assert page.evaluate(WARMED, warm)
    assert seen["answered"]
    assert seen["memoryChecked"]
    assert seen["loaded"] == 0
    assert not seen["whole"]


@pytest.mark.parametrize("ending", [".wasm", ".mjs"])
def test_a_damaged_module_or_script_in_the_cache_is_noticed(
    ending: str, address: str, tmp_path: Path
) -> None:
    visited(address, tmp_path / "profile")
    seen = visited(
        address, tmp_path / "profile", first=DAMAGE_CACHED.replace("ENDING", ending), check=True
    )
    assert seen["answered"]
    assert seen["memoryChecked"]
    assert not seen["whole"]


def test_damaged_copies_on_the_device_are_noticed_and_made_again(address: str, tmp_path: Path) -> None:
    visited(address, tmp_path / "profile")
    seen = visited(address, tmp_path / "profile", first=DAMAGE, check=True)
    assert seen["answered"]
    assert seen["memoryChecked"]


def test_a_wrong_snapshot_is_refused_and_the_library_answers(
    site: Path, address: str, tmp_path: Path
) -> None:
    spoil(file_of(site, "memory-*"))
    seen = visited(address, tmp_path / "profile", check=True)
    assert seen["answered"]
    assert seen["release"] == RELEASE
    assert "memoryChecked" not in seen


def test_without_snapshot_and_library_it_says_that_it_failed(
    site: Path, address: str, tmp_path: Path
) -> None:
    spoil(file_of(site, "memory-*"))
    file_of(site, "library-*").unlink()
    seen = visited(address, tmp_path / "profile")
    assert seen["step"] == "failed"
    assert "library-" in seen["failed"]


@pytest.mark.parametrize("kind", ["*.mjs", "*.wasm.xz"])
def test_of_a_changed_runtime_only_the_whole_one_answers(
    kind: str, site: Path, address: str, tmp_path: Path
) -> None:
    spoil(file_of(site, f"python-{kind}"))
    seen = visited(address, tmp_path / "profile")
    assert seen["answered"]
    assert seen["whole"]
    spoil(file_of(site, f"whole-{kind}"))
    seen = visited(address, tmp_path / "other")
    assert seen["step"] == "failed"
    assert "answered" not in seen


def test_what_was_left_out_is_answered_by_the_whole_module(
    site: Path, address: str, tmp_path: Path
) -> None:
    worker = site / "assets" / "engine" / "worker.js"
    script = worker.read_text(encoding="utf-8")
    asked = "run = (request) => bridge.run(request).replaceAll(RELEASE, files.release);"
    assert script.count(asked) == 1
    worker.write_text(
        # The runtime's own way to run words needs much that no answer does.
        script.replace(asked, f"{asked} if (!settings.fallback) run = () => python.runPython('1j ** 2');"),
        encoding="utf-8",
    )
    seen = visited(address, tmp_path / "profile")
    assert seen["answered"]
    assert seen["whole"]
