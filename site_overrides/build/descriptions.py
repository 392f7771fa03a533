"""What a page is about, for search engines and previews: its own first sentences.

Written into the built pages. A page that says `description:` at its head keeps that.
"""

import re
from html import escape, unescape
from html.parser import HTMLParser
from pathlib import Path

SHORT, LONG = 60, 160  # characters
VOID = {"br", "img", "input", "hr", "path", "circle", "rect", "line", "use", "wbr"}
OUTSIDE = (
    "bb-caution", "bb-answer", "bb-field", "bb-table", "bb-picture", "bb-script", "bb-for-none",
    "bb-for-uk", "bb-for-iso", "bb-rules-choice", "bb-want", "bb-completion",
)  # fmt: skip
"""Classes in which no sentence says what the page is about."""
_START = '<meta name="description" content="'
_META = re.compile(rf'{_START}([^"]*)">')
_TITLE = re.compile(r"<title>([^<]*)</title>")
CALLS = ("bb-kind", "bb-example", "bb-call", "bb-engine", "bb-link")


class _Sentences(HTMLParser):
    """Texts of the paragraphs of a page, then of its steps and headings."""

    def __init__(self) -> None:
        super().__init__()
        self.paragraphs: list[str] = []
        self.steps: list[str] = []
        self._open: list[tuple[str, str]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in VOID:
            return
        classes = dict(attrs).get("class") or ""
        self._open.append((tag, classes))
        if self._taken():
            if tag == "p" and not any(call in classes.split() for call in CALLS):
                self.paragraphs.append("")
            elif tag == "h2" or (tag in ("label", "span") and "bb-do" in classes.split()):
                self.steps.append("")

    def handle_endtag(self, tag: str) -> None:
        for at in range(len(self._open) - 1, -1, -1):
            if self._open[at][0] == tag:
                del self._open[at:]
                return

    def handle_data(self, data: str) -> None:
        if not self._taken():
            return
        inside = [each for each in self._open if each[0] in ("p", "h2") or "bb-do" in each[1].split()]
        if not inside:
            return
        tag, classes = inside[-1]
        if tag == "p":
            if self.paragraphs and not any(call in classes.split() for call in CALLS):
                self.paragraphs[-1] += data
        elif self.steps:
            self.steps[-1] += data

    def _taken(self) -> bool:
        return not any(out in classes.split() for _, classes in self._open for out in OUTSIDE)


def _cut(text: str) -> str:
    if len(text) <= LONG:
        return text
    sentence = re.match(rf".{{{SHORT},{LONG - 1}}}[.?!:](?=\s)", text)
    if sentence:
        return sentence[0]
    return text[: LONG - 1].rsplit(" ", 1)[0].rstrip(",;:") + "…"


def description(html: str, title: str) -> str:
    """First sentences of a page, from 60 to 160 characters where it has as many.

    Args:
        html: The page's own part.
        title: Its title, which stands first where it has few words.
    """
    parser = _Sentences()
    parser.feed(html)
    said = ""
    for part in [*parser.paragraphs, *parser.steps]:
        words = " ".join(part.split())
        if words and words not in said:
            said = f"{said} {words}".strip()
            said += "" if said[-1] in ".?!:”" else "."
        if len(said) >= SHORT:
            break
    return _cut(said if len(said) >= SHORT else f"{title}: {said}")


def write(site: Path) -> None:
    """Give each built page its description, where it has only that of the whole site.

    Args:
        site: Folder of the built site; its first page says the site's own.
    """
    whole = _META.findall((site / "index.html").read_text(encoding="utf-8"))[0]
    for path in site.rglob("*.html"):
        text = path.read_text(encoding="utf-8")
        article = text.partition("<article")[2].partition(">")[2].partition("</article>")[0]
        if not article or whole not in _META.findall(text):
            continue
        title = unescape(_TITLE.findall(text)[0]).removesuffix(" - Oxyfuel Benchbook")
        said = escape(description(article, title))
        path.write_text(text.replace(f'{_START}{whole}">', f'{_START}{said}">', 1), encoding="utf-8")
