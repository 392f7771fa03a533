"""`make dev`: serves the site as its sources are now, and loads open pages again after an edit.

No style is cut, no snapshot taken, no service worker registered, and no search made. Answers come
from this machine's Python; a page is made when it is looked at. After an edit of code or a table
the maker of pages is started anew, which takes a second.
"""

import json
import os
import subprocess
import sys
import threading
import time
from contextlib import suppress
from functools import partial
from http.server import ThreadingHTTPServer
from importlib.util import find_spec
from pathlib import Path
from urllib.parse import unquote, urlsplit

from watchdog.events import FileSystemEvent, FileSystemEventHandler
from watchdog.observers import Observer

from site_overrides.build.before import port_problem
from site_overrides.build.serve import Handler as SiteHandler

HERE = Path(__file__).parent
ROOT = Path(__file__).parents[3]
WATCHED = ("calc", "docs", "site_overrides/build", "site_overrides/theme", "site_overrides/licences")
TOGETHER = 0.08  # s in which changes count as one
OWN = {"assets/engine/engine.js": HERE / "engine.js", "-/reload.js": HERE / "reload.js"}
"""What stands in place of the site's own file."""
PLAIN = (".md", ".css", ".js", ".svg", ".png")
DEEP = (".py", ".csv", ".toml", ".json", ".txt", ".html")
"""What is read anew for each page, and what needs a new maker."""
SETTINGS, MADE = "mkdocs.yml", "formulas.json"
"""The file of the root that counts, and the one that a maker writes itself."""
TRIES = 3
ENDS = "The maker of pages ends at once; the terminal of make dev says why."
NO_PAGE = """<!doctype html><html lang="en"><title>make dev</title><body>
<p role="alert" data-dev-error>No file of docs/ makes a page at this address.</p></body></html>"""


class Makers:
    """The maker of pages that runs now."""

    def __init__(self) -> None:
        self._turn = threading.Lock()
        self._running = self._started()

    @staticmethod
    def _started() -> subprocess.Popen[str]:
        return subprocess.Popen(
            [sys.executable, "-m", "site_overrides.build.dev.maker"],
            cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, encoding="utf-8",
        )  # fmt: skip

    def renew(self) -> None:
        """Start one that reads all sources anew; who waits for the old is answered by the new."""
        old, self._running = self._running, self._started()
        old.kill()
        old.wait()

    def close(self) -> None:
        """End it."""
        self._running.kill()
        self._running.wait()

    def made(self, asked: dict[str, str]) -> dict[str, str]:
        """What a maker writes to one line."""
        with self._turn:
            for _ in range(TRIES):
                running = self._running
                line = ""
                with suppress(OSError, ValueError):
                    if running.stdin is not None and running.stdout is not None:
                        running.stdin.write(f"{json.dumps(asked)}\n")
                        running.stdin.flush()
                        line = running.stdout.readline()
                if line:
                    return dict(json.loads(line))
                if running is self._running:
                    self.renew()
        errors = json.dumps({"errors": [{"field": "", "message": ENDS}]})
        return {
            "html": f"<!doctype html><title>make dev</title><body><p role=alert>{ENDS}</p></body>",
            "reply": errors,
        }


class Changes(FileSystemEventHandler):
    """Counts changes; open pages ask for the number, and load again when it is another."""

    def __init__(self, makers: Makers) -> None:
        self.makers = makers
        self.number = time.time_ns()  # another after each start, so that open pages load again
        self._is_deep = False
        self._pending = threading.Event()

    def on_any_event(self, event: FileSystemEvent) -> None:
        """Note a change of a source."""
        if event.is_directory or event.event_type in ("opened", "closed_no_write"):
            return
        path = Path(str(event.dest_path or event.src_path))
        is_deep = (
            path.suffix in DEEP and path.parent != ROOT and path.name != MADE
        ) or path.name == SETTINGS
        if "__pycache__" in path.parts or not (is_deep or path.suffix in PLAIN):
            return
        self._is_deep |= is_deep
        self._pending.set()

    def count(self) -> None:
        """Count what was noted, for ever."""
        while self._pending.wait():
            time.sleep(TOGETHER)
            self._pending.clear()
            is_deep, self._is_deep = self._is_deep, False
            if is_deep:
                self.makers.renew()
            self.number += 1


class Handler(SiteHandler):
    """Pages from the maker, the rest from the folders of the sources."""

    makers: Makers
    changes: Changes
    folders: tuple[Path, ...] = ()

    def _bare(self) -> str | None:
        path = unquote(urlsplit(self.path).path)
        return path.removeprefix(self.base) if path.startswith(self.base) else None

    def translate_path(self, path: str) -> str:  # noqa: ARG002 - the base gives it
        """File of an address in the first folder that has it."""
        bare = self._bare()
        if bare in OWN:
            return str(OWN[bare])
        for folder in self.folders:
            found = (folder / (bare or "")).resolve()
            if (
                bare
                and found.is_file()
                and found.is_relative_to(folder)
                and found.suffix not in (".html", ".md", ".py")
            ):
                return str(found)
        return str(ROOT / "no-such-file")

    def _send(self, content: bytes, kind: str, status: int = 200) -> None:
        self.send_response(status)
        self.send_header("Content-Type", kind)
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        self.wfile.write(content)

    def do_GET(self) -> None:  # noqa: N802 - the base names it so
        """A page, a file, or the number of changes."""
        bare = self._bare()
        if bare == "-/changes":
            return self._send(str(self.changes.number).encode(), "text/plain")
        if bare is not None and (bare == "" or bare.endswith("/")):
            number = self.changes.number  # of before the page is made: what changes meanwhile counts
            html = self.makers.made({"page": bare}).get("html")
            script = f'<script src="{self.base}-/reload.js" data-number="{number}"></script></body>'
            whole = (html or NO_PAGE).replace("</body>", script)
            return self._send(whole.encode(), "text/html; charset=utf-8", 200 if html else 404)
        if bare == "sitemap.xml":
            return self._send(self.makers.made({"page": bare})["html"].encode(), "application/xml")
        if bare == "release.json":
            return self._send(b"{}", "application/json")  # nothing is kept on a device
        if bare is not None and "." not in bare.rpartition("/")[2]:
            self.send_response(302)
            query = urlsplit(self.path).query
            self.send_header("Location", f"{self.base}{bare}/" + (f"?{query}" if query else ""))
            return self.end_headers()
        return super().do_GET()

    def do_POST(self) -> None:  # noqa: N802 - the base names it so
        """An answer."""
        asked = self.rfile.read(int(self.headers.get("Content-Length", 0))).decode()
        self._send(self.makers.made({"ask": asked})["reply"].encode(), "application/json")


class Server(ThreadingHTTPServer):
    """Lets a browser ask for forty files at once, and turn away when it likes."""

    request_queue_size = 128
    daemon_threads = True

    def handle_error(self, request: object, client_address: object) -> None:
        """A page that is loaded again lets its other requests go."""


def server(address: str) -> tuple[Server, Makers]:
    """Everything at an address, watching; not yet serving."""
    spec = find_spec("material")
    stock = Path(next(iter(spec.submodule_search_locations or [""]))) / "templates" if spec else ROOT
    makers = Makers()
    changes = Changes(makers)
    watch = Observer()
    for name in WATCHED:
        watch.schedule(changes, str(ROOT / name), recursive=True)
    watch.schedule(changes, str(ROOT), recursive=False)
    watch.start()
    threading.Thread(target=changes.count, daemon=True).start()
    parts = urlsplit(address)
    folders = tuple(
        folder.resolve() for folder in (ROOT / "docs", ROOT / "site_overrides" / "theme", stock)
    )
    handler = type(
        "DevHandler",
        (Handler,),
        {"base": parts.path or "/", "makers": makers, "changes": changes, "folders": folders},
    )
    return Server((parts.hostname or "127.0.0.1", parts.port or 8001), partial(handler)), makers


def main() -> None:
    """Serve until stopped."""
    address = os.environ.get("SITE_URL", "http://127.0.0.1:8001/")
    if problem := port_problem(address, "dev"):
        sys.exit(problem)
    made, makers = server(address)
    print(f"The Benchbook as you write it is at {address}  (stop with Ctrl-C)", flush=True)
    with suppress(KeyboardInterrupt):
        made.serve_forever()
    makers.close()


if __name__ == "__main__":
    main()
