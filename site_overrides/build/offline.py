"""The release manifest and the one content security policy of a built site.

Run on `site/` as the last step: every inline script is allowed by its hash,
every file is listed with its SHA-256, and the service worker is told which list
to trust.
"""

import base64
import hashlib
import json
import sys
from collections.abc import Callable
from html.parser import HTMLParser
from pathlib import Path

from calc.release import RELEASE

MANIFEST = "release.json"
WORKER = "sw.js"
ENGINE = "assets/engine/"
PLACE = "<!-- content-security-policy -->"
"""Where the theme wants the policy: in the head, before any script."""
SPARE = ("library", "lock", "whole_script", "whole_wasm")
"""Files of the engine that a start without a fault does not need."""
NEEDLESS = ("*.map", "sitemap.xml.gz", "assets/javascripts/lunr/**/*")
"""Files of the theme that no page asks for: source maps, other languages' search."""


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


def write_policy(site: Path, more: Callable[[Path], str] = lambda _: "") -> None:
    """Write the one policy into the head of every page.

    Args:
        site: Folder of the built site.
        more: Gives further tags for the head of a page.

    Raises:
        ValueError: A page has no place for it.
    """
    pages = {path: path.read_text(encoding="utf-8") for path in sorted(site.rglob("*.html"))}
    tag = f'<meta http-equiv="Content-Security-Policy" content="{policy(list(pages.values()))}">'
    for path, page in pages.items():
        if page.count(PLACE) != 1:
            raise ValueError(f"{path} must have {PLACE} once, in its head")
        path.write_text(page.replace(PLACE, tag + more(path)), encoding="utf-8")


def _early_modules(site: Path, page: Path) -> str:
    """Tags that fetch all modules of the page at once, not one after the other, behind what the page looks like."""
    if page.name != "index.html":
        return ""
    names = [f"assets/page/{module.name}" for module in sorted((site / "assets/page").glob("*.js"))]
    names += ["sw/how.js", "sw/what.js", f"{ENGINE}engine.js", f"{ENGINE}files.js"]
    up = "../" * (len(page.relative_to(site).parts) - 1) or "./"
    return "".join(f'<link rel="modulepreload" fetchpriority="low" href="{up}{name}">' for name in names)


def drop_needless(site: Path, more: tuple[str, ...] = ()) -> None:
    """Remove what no page asks for, and folders left empty.

    Args:
        site: Folder of the built site.
        more: Further files, as patterns.
    """
    for pattern in NEEDLESS + more:
        for path in site.rglob(pattern) if "/" not in pattern else site.glob(pattern):
            if path.is_file():
                path.unlink()
    for folder in sorted((p for p in site.rglob("*") if p.is_dir()), reverse=True):
        if not any(folder.iterdir()):
            folder.rmdir()


def _engine_files(site: Path) -> dict[str, dict[str, str]]:
    """Roles of the engine's large files, and their names once unpacked."""
    listed = site / ENGINE / "manifest.json"
    if not listed.is_file():
        raise ValueError(f"{listed} is missing: the engine was not copied into the site")
    files = {}
    for entry in json.loads(listed.read_text(encoding="utf-8"))["files"]:
        kept = {"role": "spare" if entry["role"] in SPARE else "engine"}
        if "unpacked" in entry:
            kept["unpacked"] = ENGINE + entry["unpacked"]["name"]
        files[ENGINE + entry["name"]] = kept
    return files


def listing(site: Path) -> dict[str, dict[str, int | str]]:
    """Every file of a built site but the manifest and the worker that trusts it.

    Args:
        site: Folder of the built site.

    Returns:
        Bytes, SHA-256 and role of each file by address: `text` is kept by
        itself, `engine` when it is used or saved, `spare` when all is saved. A
        page's address is `page/`, as a browser asks for it.
    """
    engine = _engine_files(site)
    files: dict[str, dict[str, int | str]] = {}
    for path in sorted(site.rglob("*")):
        name = path.relative_to(site).as_posix()
        if not path.is_file() or name in (MANIFEST, WORKER):
            continue
        content = path.read_bytes()
        address = name.removesuffix("index.html") if path.name == "index.html" else name
        sha256 = hashlib.sha256(content).hexdigest()
        files[address] = {"bytes": len(content), "sha256": sha256, "role": "text"}
        files[address] |= engine.get(name, {})
    return files


def _key(files: dict[str, dict[str, int | str]]) -> str:
    """Name of a release: what its files hold, whatever it calls itself."""
    sums = "".join(f"{address} {file['sha256']}\n" for address, file in files.items())
    return hashlib.sha256(sums.encode()).hexdigest()[:16]


def write(site: Path) -> None:
    """Write policy, manifest and the worker's trust in it; run once, last.

    Args:
        site: Folder of the built site.

    Raises:
        ValueError: A page or the worker has no place to write into, or there is
            no engine.
    """
    drop_needless(site)
    key = _key(listing(site))
    release = f'<meta name="benchbook-release" content="{key}">'
    write_policy(site, lambda page: release + _early_modules(site, page))
    manifest = {"release": RELEASE, "key": key, "files": listing(site)}
    listed = json.dumps(manifest, indent=0, sort_keys=True).encode()
    (site / MANIFEST).write_bytes(listed)
    worker = (site / WORKER).read_text(encoding="utf-8")
    for mark, text in (("@key@", key), ("@digest@", hashlib.sha256(listed).hexdigest())):
        if worker.count(mark) != 1:
            raise ValueError(f"{WORKER} must name {mark} once")
        worker = worker.replace(mark, text)
    (site / WORKER).write_text(worker, encoding="utf-8")


if __name__ == "__main__":
    write(Path(sys.argv[1]))
