"""All style sheets of the site as one, the theme's cut down to what a page can show.

The theme's sheets dress everything that the theme can do. A rule stays when every
class, element, id and attribute that it asks for stands in some built page, or is a
word of a script that runs in one; all others could never match. Sheets of our own
stay whole. One file in place of twelve is one answer that the first picture waits for.
"""

import hashlib
import re
from collections.abc import Iterable, Iterator
from dataclasses import KW_ONLY, dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import tinycss2

THEME = "assets/stylesheets/"
SCRIPTS = ("assets/javascripts/**/*.js", "assets/page/*.js", "assets/*.js")
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
_READ = re.compile(r"var\(\s*(--[\w-]+)|[\"'`](--[\w-]+)")


@dataclass
class Words(HTMLParser):
    """What rules may ask for: names in the tags of pages, and words of scripts."""

    tags: set[str] = field(default_factory=set)
    _: KW_ONLY
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


def cut(css: str, words: Words, others: str = "") -> str:
    """A sheet cut down to the rules that can match and the custom properties that are read.

    Args:
        css: A sheet of the theme's.
        words: What there is.
        others: All other text in which custom properties may be read.

    Raises:
        ValueError: Something in it is no rule and no declaration.
    """
    rules = tinycss2.parse_stylesheet(css, skip_comments=True, skip_whitespace=True)
    read: set[str] | None = None
    while True:
        kept = _rules(rules, words, read)
        now = {name for pair in _READ.findall(kept + others) for name in pair}
        if now == read:  # what only a dropped property read is dropped too
            return kept
        read = now


def _rules(rules: Iterable[Any], words: Words, read: set[str] | None) -> str:
    kept = []
    for rule in rules:
        if rule.type == "qualified-rule":
            able = [
                tinycss2.serialize(each).strip() for each in _split(rule.prelude) if can_match(each, words)
            ]
            told = _declarations(rule.content, read) if able else ""
            if told:
                kept.append(f"{','.join(able)}{{{told}}}")
        elif rule.type == "at-rule" and rule.lower_at_keyword in ("media", "supports"):
            group = tinycss2.parse_rule_list(rule.content, skip_comments=True, skip_whitespace=True)
            inside = _rules(group, words, read)
            if inside:
                kept.append(f"@{rule.at_keyword}{tinycss2.serialize(rule.prelude)}{{{inside}}}")
        elif rule.type != "at-rule":
            raise ValueError(f"line {rule.source_line} of the theme's style sheet: {rule.message}")
        elif rule.lower_at_keyword != "charset":  # it may only stand first
            kept.append(rule.serialize())
    return "".join(kept)


def _declarations(content: list[Any], read: set[str] | None) -> str:
    kept = []
    for each in tinycss2.parse_declaration_list(content, skip_comments=True, skip_whitespace=True):
        if each.type != "declaration":
            raise ValueError(f"line {each.source_line} of the theme's style sheet: it is no declaration")
        if read is None or not each.name.startswith("--") or each.name in read:
            kept.append(each.serialize().removesuffix(";"))
    return ";".join(kept)


def small(css: str) -> str:
    """A sheet without comments, and with one space where there were many."""
    text: str = tinycss2.serialize(_small(tinycss2.parse_component_value_list(css, skip_comments=True)))
    return text.strip()


def _small(tokens: list[Any]) -> list[Any]:
    kept = [token for token in tokens if token.type != "comment"]
    for token in kept:
        if token.type == "whitespace":
            token.value = " "
        for inside in ("content", "arguments"):
            if hasattr(token, inside):
                setattr(token, inside, _small(getattr(token, inside)))
    return kept


def _sheets(page: str) -> list[str]:
    """Addresses of a page's sheets from the folder of the site."""
    return [address[address.index("assets/") :] for address in _LINK.findall(page)]


def write(site: Path) -> None:
    """Put one sheet in place of all, into every page.

    Args:
        site: Folder of the built site, before its manifest is made.

    Raises:
        ValueError: Pages have different sheets, or the theme's cannot be read.
    """
    pages = {path: path.read_text(encoding="utf-8") for path in sorted(site.rglob("*.html"))}
    scripts = [
        path.read_text(encoding="utf-8") for pattern in SCRIPTS for path in sorted(site.glob(pattern))
    ]
    words = Words()
    for page in pages.values():
        words.feed(page)
    for script in [*scripts, *(path.read_text(encoding="utf-8") for path in sorted(WRITERS.rglob("*.py")))]:
        words.read_script(script)
    words.settle()
    names = _sheets(pages[site / "index.html"])
    texts = {name: (site / name).read_text(encoding="utf-8") for name in names}
    ours = "".join(small(text) for name, text in texts.items() if not name.startswith(THEME))
    theirs = "".join(text for name, text in texts.items() if name.startswith(THEME))
    css = '@charset "utf-8";' + cut(theirs, words, "".join([ours, *scripts, *pages.values()])) + ours
    joined = f"{THEME}site.{hashlib.sha256(css.encode()).hexdigest()[:8]}.css"
    for path, page in pages.items():
        if _sheets(page) != names:
            raise ValueError(f"{path} has other style sheets than the first page")
        before, first, *between = _LINK.split(page)
        html = [before, f'<link rel="stylesheet" href="{first.replace(names[0], joined)}">', *between[::2]]
        path.write_text("".join(html), encoding="utf-8")
    for name in names:
        (site / name).unlink()
    (site / joined).write_text(css, encoding="utf-8")
