"""Figures and words in prose: `{acetylene-limit}` and `{tip}` are filled from tables.

A Markdown extension, named in mkdocs.yml. Every figure a page used is listed at
its end with source and how sure, so no number is typed twice and none stands
without its source. An id that no table has stops the build.
"""

import re
from html import escape
from typing import Any
from xml.etree import ElementTree

from markdown import Extension, Markdown
from markdown.preprocessors import Preprocessor
from markdown.treeprocessors import Treeprocessor

from calc.data.emergencies import told
from calc.data.tables import HOW_SURE, source_words
from calc.data.texts import (
    BRACES,
    FIGURES,
    WORDS,
    UnknownIdError,
    elsewhere,
    figure_text,
    figures,
    words,
)
from calc.declare import RULE_SETS

_FENCED = re.compile(r"^```.*?^```$", re.DOTALL | re.MULTILINE)
STRAY = re.compile(r"^\s*(?:hazards?|source|want|acts|do|only|how_sure)\s*=.*", re.MULTILINE)
"""A line of a procedure that stands outside of it, so that the step lost it."""
_PLURAL = re.compile(r"\{([a-z][a-z0-9-]*)\}s\b")
_CODE_SPAN = re.compile(r"(`+)(?!`).*?(?<!`)\1(?!`)", re.DOTALL)


def figure_html(row: Any) -> str:
    """A figure in every rule set's own number.

    Read without a script it is the US figure with the others named behind it;
    the page script sets `data-rules` on the root element and one is left. A rule
    set without a row of its own keeps the US figure.
    """
    others = elsewhere(row.id)
    text = escape(figure_text(row))
    if not others:
        return f'<span class="bb-figure">{text}</span>'
    own = {other.rules: escape(other.text) for other in others}
    plain = " ".join(f"bb-for-{rules}" for rules in RULE_SETS if rules not in own)
    named = "; ".join(f"{escape(RULE_SETS[rules])}: {number}" for rules, number in own.items())
    spans = "".join(
        f'<span class="bb-for-{rules} bb-script">{number}</span>' for rules, number in own.items()
    )
    return (
        f'<span class="bb-figure bb-word"><span class="{plain}">{text}</span>{spans}'
        f'<span class="bb-for-none"> ({named})</span></span>'
    )


def word_html(row: Any, ending: str = "") -> str:
    """A word in every rule set's usage.

    Read without a script it is the US word with the others in brackets; the page
    script sets `data-rules` on the root element and one is left.
    """
    usages: dict[str, list[str]] = {}
    for rules in ("us", "uk", "iso"):
        usages.setdefault(getattr(row, rules) + ending, []).append(rules)
    if len(usages) == 1:
        return escape(row.us + ending)
    spans = [
        f'<span class="{" ".join(f"bb-for-{r}" for r in rules)}">{escape(word)}</span>'
        for word, rules in usages.items()
    ]
    first, *others = spans
    separator = '<span class="bb-for-none">, </span>'
    return (
        f'<span class="bb-word">{first}<span class="bb-for-none"> (</span>'
        f'{separator.join(others)}<span class="bb-for-none">)</span></span>'
    )


def filled(text: str, used: dict[str, Any]) -> str:
    """Text with every figure and word in it filled.

    Args:
        text: Markdown or HTML with `{id}` in it.
        used: The figures met so far, by id; those met here are added.

    Returns:
        The text with HTML in place of each id.

    Raises:
        UnknownIdError: No table has the id.
    """

    def fill(found: re.Match[str]) -> str:
        name = found[1]
        if name in figures():
            used[name] = figures()[name]
            return figure_html(used[name])
        if name in words():
            return word_html(words()[name])
        acts = told(name)
        if acts is not None:
            return filled(acts, used)
        raise UnknownIdError(f"{{{name}}} is neither in {FIGURES} nor in {WORDS}")

    text = _PLURAL.sub(lambda many: word_html(words()[many[1]], "s") if many[1] in words() else many[0], text)
    return BRACES.sub(fill, text)


def used_on(md: Markdown) -> dict[str, Any]:
    """The figures that the page being read has used, by id."""
    if not hasattr(md, "benchbook_used"):
        md.benchbook_used = {}
    used: dict[str, Any] = md.benchbook_used
    return used


class _Fill(Preprocessor):  # type: ignore[misc]
    def run(self, lines: list[str]) -> list[str]:
        text = "\n".join(lines)
        if stray := STRAY.search(_FENCED.sub("", text)):
            raise ValueError(f"“{stray[0].strip()}” stands outside a step")
        parts, end = [], 0
        for code in _CODE_SPAN.finditer(text):
            parts += [filled(text[end : code.start()], used_on(self.md)), code[0]]
            end = code.end()
        return "".join([*parts, filled(text[end:], used_on(self.md))]).split("\n")


class _List(Treeprocessor):  # type: ignore[misc]
    def run(self, root: ElementTree.Element) -> None:
        used = used_on(self.md)
        if not used:
            return
        section = ElementTree.SubElement(root, "section", {"class": "bb-figures"})
        heading = ElementTree.SubElement(section, "h2", {"id": "figures-on-this-page"})
        heading.text = "Figures on this page"
        items = ElementTree.SubElement(section, "ul")
        for row in used.values():
            item = ElementTree.SubElement(items, "li")
            item.text = f"{row.what[:1].upper()}{row.what[1:]}: "
            number = ElementTree.SubElement(item, "strong")
            number.text = figure_text(row)
            others = "".join(
                f" {RULE_SETS[other.rules]}: {other.text}, {_origin(other)}." for other in elsewhere(row.id)
            )
            number.tail = f". {_origin(row)}.{others}"


def _origin(row: Any) -> str:
    source, sure = source_words(row.source), HOW_SURE[row.how_sure]
    return f"{source}, {sure}" if source else sure[:1].upper() + sure[1:]


class FiguresExtension(Extension):  # type: ignore[misc]
    """Fills figures and words, and lists the figures at the end of the page."""

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802 - the base names it so
        """Run after the fences are taken out and after the table of contents is made."""
        md.registerExtension(self)
        self.md = md
        md.preprocessors.register(_Fill(md), "benchbook-figures", 22)
        md.treeprocessors.register(_List(md), "benchbook-figures", 1)

    def reset(self) -> None:
        """Forget the figures of the page before."""
        used_on(self.md).clear()


def makeExtension(**settings: Any) -> FiguresExtension:  # noqa: N802 - Markdown looks for this name
    """The extension, as Markdown asks for it."""
    return FiguresExtension(**settings)
