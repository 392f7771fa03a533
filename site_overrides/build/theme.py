"""What of the stock theme's files the build changes.

The theme fetches and reads the whole search index on every visit, in the very
moments in which the page is drawn and the engine comes in. It already can wait
until the search is opened, as it does on pages opened from a folder: here it
always waits.
"""

import hashlib
from pathlib import Path

CHANGES = {
    # whether the index is fetched before anybody searches
    '(location.protocol!=="file:"),': "(!1),",
    # marking what was searched for needs the index only where an address says what that was
    'z([t,r.pipe(Q(we()),g(o=>!!o.searchParams.get("h")))])': (
        'r.pipe(Q(we()),g(o=>!!o.searchParams.get("h")),b(n=>z([t,[n]])))'
    ),
    # our tables have a frame that scrolls; the theme's would undo what it puts around them
    'M("table:not([class])",e)': 'M("table:not([class])",e).filter(i=>!i.closest(".bb-table, .bb-pack-score"))',
}
"""Expressions of the theme's script, and what stands there instead."""


def write(site: Path) -> None:
    """Change the theme's script, and name it anew.

    Args:
        site: Folder of the built site, before its manifest is made.

    Raises:
        ValueError: The theme's script is another than the one this was written for.
    """
    (script,) = (site / "assets" / "javascripts").glob("bundle.*.min.js")
    text = script.read_text(encoding="utf-8")
    changed = text
    for expression, instead in CHANGES.items():
        if changed.count(expression) != 1:
            raise ValueError(f"{script.name} must hold {expression} once; look what it does there now")
        changed = changed.replace(expression, instead)
    name = f"bundle.{hashlib.sha256(changed.encode()).hexdigest()[:8]}.min.js"
    script.unlink()
    script.with_name(name).write_text(changed, encoding="utf-8")
    for page in site.rglob("*.html"):
        html = page.read_text(encoding="utf-8")
        page.write_text(html.replace(script.name, name), encoding="utf-8")
