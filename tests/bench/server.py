"""A host for the bench: plain or one that compresses, over a line as fast as told.

The throttle of DevTools does not reach workers, so the line is slow at its far end.
"""

import gzip
import io
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

PART = 8192  # bytes sent in one go
COMPRESSED = {".html", ".css", ".js", ".mjs", ".json", ".svg", ".wasm", ".xml", ".zip", ".whl"}
"""What a host that compresses makes smaller; archives too, which favors the stock runtime."""


@dataclass
class Line:
    """A line that all connections share.

    Attributes:
        rate: Bits a second.
        delay: Seconds from a request to its answer, and to open a connection.
    """

    rate: float
    delay: float
    _free_at: float = 0.0
    _lock: threading.Lock = field(default_factory=threading.Lock)

    def carry(self, amount: int) -> None:
        """Wait as long as the line takes for so many bytes."""
        with self._lock:
            self._free_at = max(time.monotonic(), self._free_at) + amount * 8 / self.rate
            until = self._free_at
        time.sleep(max(0.0, until - time.monotonic()))


@dataclass
class Host:
    """What is served, and how.

    Attributes:
        folder: Folder of the files.
        base: Path under which they stand.
        age: What `Cache-Control` says.
        compresses: Whether text and programs are sent gzipped.
        line: The line in between, or None.
    """

    folder: Path
    base: str = "/"
    age: str = "max-age=86400"
    compresses: bool = False
    line: Line | None = None
    made: dict[Path, bytes] = field(default_factory=dict)

    def body(self, path: Path) -> bytes:
        """Bytes of a file as they are sent, made once."""
        if path not in self.made:
            content = path.read_bytes()
            if self.compresses and path.suffix in COMPRESSED:
                content = gzip.compress(content, 9)
            self.made[path] = content
        return self.made[path]

    def warm_up(self) -> None:
        """Make all that will be sent before anything is measured."""
        for path in self.folder.rglob("*"):
            if path.is_file():
                self.body(path)


class Handler(SimpleHTTPRequestHandler):
    """Sends the files of a host."""

    protocol_version = "HTTP/1.1"
    extensions_map = SimpleHTTPRequestHandler.extensions_map | {
        ".js": "text/javascript",
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
        ".json": "application/json",
    }

    def __init__(self, *words: Any, host: Host) -> None:
        self.host = host
        super().__init__(*words, directory=str(host.folder))

    def setup(self) -> None:
        """Take the time that opening a connection takes."""
        if self.host.line:
            time.sleep(self.host.line.delay)
        super().setup()

    def translate_path(self, path: str) -> str:
        """File of an address; addresses outside the base lead nowhere."""
        bare = urlsplit(path).path
        if not bare.startswith(self.host.base):
            return str(self.host.folder / "no-such-page")
        return super().translate_path("/" + bare.removeprefix(self.host.base))

    def send_head(self) -> Any:
        """Headers of a file, and its bytes as they are sent."""
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() else path
        if not path.is_file():
            return super().send_head()
        body = self.host.body(path)
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Length", str(len(body)))
        if self.host.compresses and path.suffix in COMPRESSED:
            self.send_header("Content-Encoding", "gzip")
        self.end_headers()
        return io.BytesIO(body)

    def copyfile(self, source: Any, outputfile: Any) -> None:
        """Send a body, as fast as the line lets it through."""
        line = self.host.line
        if line is None:
            super().copyfile(source, outputfile)
            return
        time.sleep(line.delay)
        while part := source.read(PART):
            line.carry(len(part))
            outputfile.write(part)

    def end_headers(self) -> None:
        """Say how long files may be kept."""
        self.send_header("Cache-Control", self.host.age)
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - the base names it so
        """Say nothing for each file."""


class _PatientServer(ThreadingHTTPServer):
    request_queue_size = 128
    daemon_threads = True

    def handle_error(self, request: Any, client_address: Any) -> None:
        """A browser that is closed in mid-answer is no fault."""


@contextmanager
def served(host: Host, port: int = 0) -> Iterator[str]:
    """Address at which a host answers meanwhile.

    Args:
        host: What is served.
        port: Where; 0 for any that is free.
    """
    host.warm_up()
    server = _PatientServer(("127.0.0.1", port), partial(Handler, host=host))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{server.server_port}{host.base}"
    finally:
        server.shutdown()
        server.server_close()
