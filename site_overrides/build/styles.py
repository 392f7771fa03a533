"""All style sheets of the site as one, the theme's cut down to what a page can show.

The theme's sheets dress everything that the theme can do. A rule stays when every
class, element, id and attribute that it asks for stands in some built page, or is a
word of a script that runs in one; all others could never match. Sheets of our own
stay whole. One file in place of twelve is one answer that the first picture waits for.
"""

import hashlib
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import tinycss2

THEME = "assets/stylesheets/"
SCRIPTS = ("assets/javascripts/**/*.js", "assets/page/*.js")
WRITERS = Path(__file__).parents[2] / "calc" / "show"
"""Answers are put into pages as this writes them, also those that no built page has."""
FAMILIES = (
    "footnote", "highlight", "keys", "language-", "linenos", "md-annotation", "md-clipboard", "md-code",
    "md-source", "md-tag", "md-tooltip", "md-version", "mermaid", "tabbed-",
)  # fmt: skip
"""Beginnings of classes that the theme's script gives only within a family which a page brought along."""
ONLY_IN_PAGES = ("dir", "data-md-color-primary", "data-md-color-accent", "data-md-color-scheme")
"""Attributes whose values the theme's script only copies from a page, however it names others."""

_LINK = re.compile(r'\s*<link rel="stylesheet" href="([^"]+)">')
_WORD = re.compile(r"[A-Za-z_][\w-]*")
_USED = re.compile(r"var\(\s*(--[\w-]+)|[\"'`](--[\w-]+)")


@dataclass
class Words(HTMLParser):
    """What rules may ask for: names in the tags of pages, and words of scripts."""

    tags: set[str] = field(default_factory=set)
    classes: set[str] = field(default_factory=set)
    ids: set[str] = field(default_factory=set)
    attributes: set[str] = field(default_factory=set)
    values: set[tuple[str, str]] = field(default_factory=set)
    scripts: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        super().__init__()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Take the names in a tag."""
        self.tags.add(tag)
        for name, value in attrs:
            text = value or ""
            self.attributes.add(name)
            self.values.add((name, text))
            if name == "class":
                self.classes.update(text.split())
            elif name == "id":
                self.ids.add(text)

    def read_script(self, text: str) -> None:
        """Take the words of a script for names that it may give."""
        self.scripts.update(_WORD.findall(text))

    def settle(self) -> None:
        """Forget what scripts do only within families that no page has."""
        absent = tuple(each for each in FAMILIES if not any(name.startswith(each) for name in self.classes))
        self.scripts = {word for word in self.scripts if not word.startswith(absent)}

    def has_class(self, name: str) -> bool:
        """Whether anything may be of a class."""
        return name in self.classes or name in self.scripts

    def has_tag(self, name: str) -> bool:
        """Whether there may be such an element."""
        return name.lower() in self.tags or name in self.scripts

    def has_id(self, name: str) -> bool:
        """Whether anything may have an id."""
        return name in self.ids or name in self.scripts

    def has_attribute(self, name: str, value: str | None) -> bool:
        """Whether anything may have an attribute, and with this value where one is told."""
        if value is not None and name in ONLY_IN_PAGES:
            return (name, value) in self.values
        first, *more = name.removeprefix("data-").split("-")
        dataset = first + "".join(each.capitalize() for each in more)
        given = name in self.scripts or dataset in self.scripts
        return given or (name in self.attributes if value is None else (name, value) in self.values)


def _split(tokens: Iterable[Any]) -> Iterator[list[Any]]:
    part: list[Any] = []
    for token in tokens:
        if token == ",":
            yield part
            part = []
        else:
            part.append(token)
    yield part


def _attribute(tokens: list[Any]) -> tuple[str, str | None]:
    """Name asked for in brackets, and its value where it must be just that."""
    name, *rest = (token for token in tokens if token.type != "whitespace")
    exact = len(rest) == 2 and rest[0] == "=" and rest[1].type in ("string", "ident")
    return name.value, rest[1].value if exact else None


def can_match(selector: list[Any], words: Words) -> bool:
    """Whether some page or script may bring what a selector asks for.

    Args:
        selector: Tokens of one selector. What stands in `:is()`, `:not()` and the like is not looked at.
        words: What there is.
    """
    before = ""
    for token in selector:
        if token.type == "ident" and before == ".":
            known = words.has_class(token.value)
        elif token.type == "ident" and before != ":":
            known = words.has_tag(token.value)
        elif token.type == "hash":
            known = words.has_id(token.value)
        elif token.type == "[] block":
            known = words.has_attribute(*_attribute(token.content))
        else:
            known = True
        if not known:
            return False
        before = token.value if token.type == "literal" else ""
    return True


def cut(rules: Iterable[Any], words: Words) -> str:
    """Text of the rules that can match; groups of rules left empty go too."""
    kept = []
    for rule in rules:
        if rule.type == "qualified-rule":
            able = [each for each in _split(rule.prelude) if can_match(each, words)]
            if able:
                kept.append(f"{','.join(map(_text, able))}{{{_text(rule.content)}}}")
        elif rule.type == "at-rule" and rule.lower_at_keyword in ("media", "supports"):
            inside = cut(tinycss2.parse_rule_list(rule.content, skip_comments=True, skip_whitespace=True), words)
            if inside:
                kept.append(f"@{rule.at_keyword}{_text(rule.prelude, ends=False)}{{{inside}}}")
        elif rule.type == "at-rule" and rule.lower_at_keyword != "charset":
            kept.append(rule.serialize())
        elif rule.type == "error":
            raise ValueError(f"line {rule.source_line} of the theme's style sheet: {rule.message}")
    return "".join(kept)


def _text(tokens: list[Any], *, ends: bool = True) -> str:
    """Tokens as text; `ends` also without the space around them."""
    text: str = tinycss2.serialize(tokens)
    return text.strip() if ends else text.rstrip()


def small(css: str) -> str:
    """A sheet without comments, and with one space where there were many."""
    return re.sub(r"\s+", " ", _text(_without_comments(tinycss2.parse_component_value_list(css))))


def _without_comments(tokens: list[Any]) -> list[Any]:
    kept = [token for token in tokens if token.type != "comment"]
    for token in kept:
        for content in ("content", "arguments"):
            if hasattr(token, content):
                setattr(token, content, _without_comments(getattr(token, content)))
    return kept


def _drop_unused(css: str, others: str) -> str:
    """Drop custom properties of the theme that nothing reads, until none is left."""
    while True:
        used = {name for pair in _USED.findall(css + others) for name in pair}
        told = set(re.findall(r"[{;](--[\w-]+):", css))
        unused = told - used
        if not unused:
            return css
        names = "|".join(map(re.escape, unused))
        css = re.sub(rf'(?<=[{{;])(?:{names}):(?:[^;}}("]|"[^"]*"|\((?:[^()"]|"[^"]*"|\([^()]*\))*\))*;?', "", css)
        css = re.sub(r"[^{};]+\{\}", "", css)


def _sheets(page: str) -> list[str]:
    return _LINK.findall(page)


def write(site: Path) -> None:
    """Put one sheet in place of all, into every page.

    Args:
        site: Folder of the built site, before its manifest is made.

    Raises:
        ValueError: Pages have different sheets, or the theme's cannot be read.
    """
    pages = {path: path.read_text(encoding="utf-8") for path in sorted(site.rglob("*.html"))}
    words = Words()
    for page in pages.values():
        words.feed(page)
    scripts = [path.read_text(encoding="utf-8") for pattern in SCRIPTS for path in sorted(site.glob(pattern))]
    for script in [*scripts, *(path.read_text(encoding="utf-8") for path in sorted(WRITERS.rglob("*.py")))]:
        words.read_script(script)
    words.settle()
    names = [name[name.index("assets/") :] for name in _sheets(pages[site / "index.html"])]
    texts = {name: (site / name).read_text(encoding="utf-8") for name in names}
    theirs = "".join(
        cut(tinycss2.parse_stylesheet(text, skip_comments=True, skip_whitespace=True), words)
        for name, text in texts.items() if name.startswith(THEME)
    )  # fmt: skip
    ours = "".join(small(text) for name, text in texts.items() if not name.startswith(THEME))
    css = _drop_unused(theirs, ours + "".join(scripts) + "".join(pages.values())) + ours
    joined = f"{THEME}site.{hashlib.sha256(css.encode()).hexdigest()[:8]}.css"
    for path, page in pages.items():
        found = _sheets(page)
        if [name[name.index("assets/") :] for name in found] != names:
            raise ValueError(f"{path} has other style sheets than the first page")
        path.write_text(_joined(page, found[0].replace(names[0], joined)), encoding="utf-8")
    for name in names:
        (site / name).unlink()
    (site / joined).write_text('@charset "utf-8";' + css, encoding="utf-8")


def _joined(page: str, address: str) -> str:
    first = _LINK.search(page)
    rest = _LINK.sub("", page)
    return f'{rest[: first.start()]}<link rel="stylesheet" href="{address}">{rest[first.start() :]}' if first else page
