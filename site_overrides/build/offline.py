"""The release manifest and the one content security policy of a built site.

Run on `site/` as the last step: every inline script is allowed by its hash,
every file is listed with its SHA-256, and the service worker is told which list
to trust.
"""

import base64
import hashlib
import json
import re
import sys
from html.parser import HTMLParser
from pathlib import Path

from calc.release import RELEASE

MANIFEST = "release.json"
WORKER = "sw.js"
MARK = "written by site_overrides/build/offline.py"
ENGINE = "assets/engine/"
NEEDLESS = ("*.map", "sitemap.xml.gz", "assets/javascripts/lunr/**/*")
"""Files of the theme that no page asks for: source maps, other languages' search."""

_HEAD = re.compile(r"<head[^>]*>", re.IGNORECASE)
_POLICY = re.compile(r'<meta http-equiv="Content-Security-Policy"[^>]*>', re.IGNORECASE)


class _InlineScripts(HTMLParser):
    """Texts of the scripts written into a page, exactly as they stand there."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=False)
        self.found: list[str] = []
        self._inside = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "script":
            given = dict(attrs)
            kind = given.get("type") or "text/javascript"
            self._inside = "src" not in given and kind in ("text/javascript", "module")
            if self._inside:
                self.found.append("")

    def handle_endtag(self, tag: str) -> None:
        if tag == "script":
            self._inside = False

    def handle_data(self, data: str) -> None:
        if self._inside:
            self.found[-1] += data


def inline_scripts(page: str) -> list[str]:
    """Inline scripts of a page that a browser would run."""
    parser = _InlineScripts()
    parser.feed(page)
    parser.close()
    return parser.found


def policy(pages: list[str]) -> str:
    """One content security policy that fits every page.

    Args:
        pages: HTML of all pages; their inline scripts differ by depth.

    Returns:
        The policy: nothing from another host, no script but ours.
    """
    scripts = {script for page in pages for script in inline_scripts(page)}
    sums = sorted(
        f"'sha256-{base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()}'"
        for script in scripts
    )
    return "; ".join(
        [
            "default-src 'self'",
            " ".join(["script-src 'self' 'wasm-unsafe-eval'", *sums]),
            "style-src 'self' 'unsafe-inline'",  # the theme sets widths in style attributes
            "img-src 'self' data:",  # the theme's icons are data addresses in its style sheet
            "connect-src 'self'",
            "worker-src 'self'",
            "object-src 'none'",
            "base-uri 'self'",
            "form-action 'self'",
        ]
    )


def _write_policy(site: Path) -> None:
    pages = {path: path.read_text(encoding="utf-8") for path in sorted(site.rglob("*.html"))}
    tag = f'<meta http-equiv="Content-Security-Policy" content="{policy(list(pages.values()))}">'
    for path, page in pages.items():
        bare = _POLICY.sub("", page)
        head = _HEAD.search(bare)
        if head is None:
            raise ValueError(f"{path} has no head to write the policy into")
        path.write_text(bare[: head.end()] + tag + bare[head.end() :], encoding="utf-8")


def _drop_needless(site: Path) -> None:
    for pattern in NEEDLESS:
        for path in site.rglob(pattern) if "/" not in pattern else site.glob(pattern):
            if path.is_file():
                path.unlink()
    for folder in sorted((p for p in site.rglob("*") if p.is_dir()), reverse=True):
        if not any(folder.iterdir()):
            folder.rmdir()


def manifest(site: Path) -> dict[str, object]:
    """Every file of a built site but the manifest and the worker that trusts it.

    Args:
        site: Folder of the built site.

    Returns:
        The release, and for each file its bytes, SHA-256 and role: `text` is
        kept by itself, `engine` when it is used or saved. A page's name is
        `page/`, as a browser asks for it.
    """
    files = {}
    for path in sorted(site.rglob("*")):
        name = path.relative_to(site).as_posix()
        if not path.is_file() or name in (MANIFEST, WORKER):
            continue
        content = path.read_bytes()
        address = name.removesuffix("index.html") if path.name == "index.html" else name
        files[address] = {
            "bytes": len(content),
            "sha256": hashlib.sha256(content).hexdigest(),
            "role": "engine" if name.startswith(ENGINE) else "text",
        }
    return {"release": RELEASE, "files": files}


def write(site: Path) -> None:
    """Write policy, manifest and the worker's trust in it; run once, last.

    Args:
        site: Folder of the built site.

    Raises:
        ValueError: A page without a head, or a worker without the mark.
    """
    _drop_needless(site)
    _write_policy(site)
    listed = json.dumps(manifest(site), indent=0, sort_keys=True).encode()
    (site / MANIFEST).write_bytes(listed)
    worker = (site / WORKER).read_text(encoding="utf-8")
    if worker.count(MARK) != 1:
        raise ValueError(f"{WORKER} must name {MARK!r} once")
    trusted = worker.replace(MARK, hashlib.sha256(listed).hexdigest())
    (site / WORKER).write_text(trusted, encoding="utf-8")


if __name__ == "__main__":
    write(Path(sys.argv[1]))
