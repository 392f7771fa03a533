"""Serves `site/` on this machine with the types and headers a host must send."""

import os
import sys
from contextlib import suppress
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import urlsplit

from site_overrides.build.before import port_problem

SITE = Path(__file__).parents[2] / "site"


class Handler(SimpleHTTPRequestHandler):
    """Files of the site under the path of SITE_URL."""

    extensions_map = SimpleHTTPRequestHandler.extensions_map | {
        ".js": "text/javascript",
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
        ".json": "application/json",
    }
    base = "/"

    def translate_path(self, path: str) -> str:
        """File of an address; addresses outside the base lead nowhere."""
        bare = urlsplit(path).path
        if not bare.startswith(self.base):
            return str(SITE / "no-such-page")
        return super().translate_path("/" + bare.removeprefix(self.base))

    def end_headers(self) -> None:
        """Ask browsers to check for a newer release; hashed names never change."""
        self.send_header("Cache-Control", "no-cache")
        self.send_header("X-Content-Type-Options", "nosniff")
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - the base names it so
        """Say nothing for each file."""


def server(address: str) -> ThreadingHTTPServer:
    """A server for the site under the path and port of `address`."""
    parts = urlsplit(address)
    handler = type("SiteHandler", (Handler,), {"base": parts.path or "/"})
    return ThreadingHTTPServer(
        (parts.hostname or "127.0.0.1", parts.port or 8000), partial(handler, directory=str(SITE))
    )


def main() -> None:
    """Serve until stopped."""
    address = os.environ.get("SITE_URL", "http://127.0.0.1:8000/")
    if problem := port_problem(address, "serve"):
        sys.exit(problem)
    print(f"The Benchbook is at {address}  (stop with Ctrl-C)", flush=True)
    with suppress(KeyboardInterrupt):
        server(address).serve_forever()


if __name__ == "__main__":
    main()
