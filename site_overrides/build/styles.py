"""All style sheets of the site as one: one answer that the first picture waits for, not twelve."""

import hashlib
import re
from pathlib import Path

FOLDER = "assets/stylesheets/"
"""Where the theme's sheets lie, and what their addresses count from."""
_LINK = re.compile(r'\s*<link rel="stylesheet" href="([^"]+)">')
_HEAD = re.compile(r'^\s*@charset "utf-8";', re.IGNORECASE)


def _sheets(page: str) -> list[str]:
    """Addresses of a page's sheets from the folder of the site."""
    return [address[address.index("assets/") :] for address in _LINK.findall(page)]


def write(site: Path) -> None:
    """Put one sheet in place of all, into every page.

    Args:
        site: Folder of the built site, before its manifest is made.

    Raises:
        ValueError: Pages have different sheets.
    """
    names = _sheets((site / "index.html").read_text(encoding="utf-8"))
    texts = [_HEAD.sub("", (site / name).read_text(encoding="utf-8")) for name in names]
    css = '@charset "utf-8";' + "\n".join(texts)
    joined = f"{FOLDER}site.{hashlib.sha256(css.encode()).hexdigest()[:8]}.css"
    for path in sorted(site.rglob("*.html")):
        page = path.read_text(encoding="utf-8")
        if _sheets(page) != names:
            raise ValueError(f"{path} has other style sheets than the first page")
        before, first, *between = _LINK.split(page)
        html = [before, f'<link rel="stylesheet" href="{first.replace(names[0], joined)}">', *between[::2]]
        path.write_text("".join(html), encoding="utf-8")
    for name in names:
        (site / name).unlink()
    (site / joined).write_text(css, encoding="utf-8")
