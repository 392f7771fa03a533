"""What every page source must keep: read with Python-Markdown, before anything is built.

Each check returns sentences, none when the page keeps it. The tests run all of
them on every page, and on pages made to break them.
"""

import re
from dataclasses import dataclass, field
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

from markdown import Markdown

from calc.declare.catalogue import calculators
from site_overrides.build.forms import Form, FormError, form
from site_overrides.build.procedures import Procedure, ProcedureError, procedure

ROOT = Path(__file__).parents[2]
DOCS = ROOT / "docs"

FENCES = (
    "calculator", "procedure", "form", "timer", "table", "figure", "disagreement", "cards", "questions", "exercise",
    "ladder", "log", "pack", "practice", "hazards", "licences",
)  # fmt: skip

_FRONT = re.compile(r"\A---\n.*?\n---\n", re.DOTALL)
_SAFE = re.compile(r"\bsafe(?:ly|r)?\b", re.IGNORECASE)
_SIGNAL = re.compile(r"\b(?:DANGER|WARNING|CAUTION|NOTICE)\b")
_FIGURE = re.compile(
    r"(?<![\w.])\d[\d.,]*(?:\s?[-–]\s?\d[\d.,]*|\s\d/\d+|/\d+)?\s?"
    r"(?:psi|bar|kPa|MPa|°\s?[FC]|K|ft³(?:/h|/lb)?|ft|inch(?:es)?|in(?![\w ])|mm|cm|m|m³|L(?:/h|/min)?|cfh"
    r"|hours?|h|minutes?|min|seconds?|s|days?|turns?|lb|kg|lbs|percent|points?)(?![\w])"
    r"|(?<![\w.])\d[\d.,]*\s?%"
)
_BRACED = re.compile(r"\{[a-z][a-z0-9-]*\}")


@dataclass(kw_only=True)
class Page:
    """One page source, read."""

    path: Path
    headings: list[tuple[int, str]] = field(default_factory=list)
    ids: set[str] = field(default_factory=set)
    links: list[str] = field(default_factory=list)
    prose: str = ""
    classes: list[str] = field(default_factory=list)
    fences: list[tuple[str, str]] = field(default_factory=list)


class _Reader(HTMLParser):
    """Headings, links and prose; filled figures and code count as neither."""

    def __init__(self, page: Page) -> None:
        super().__init__()
        self.page, self.skipped = page, 0
        self.open: list[bool] = []
        self.heading: list[str] | None = None

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if tag in ("br", "img", "input", "hr"):
            return
        looks = set(given.get("class", "").split())
        skip = tag in ("code", "pre", "script", "style") or bool(looks & {"bb-figure", "bb-figures"})
        self.open.append(skip)
        self.skipped += skip
        if "id" in given:
            self.page.ids.add(given["id"])
        if tag == "a" and "href" in given:
            self.page.links.append(given["href"])
        self.page.classes += given.get("class", "").split()
        if re.fullmatch(r"h[1-6]", tag) and not self.skipped:
            self.page.headings.append((int(tag[1]), ""))
            self.heading = []

    def handle_endtag(self, tag: str) -> None:
        if tag in ("br", "img", "input", "hr"):
            return
        self.skipped -= self.open.pop()
        if re.fullmatch(r"h[1-6]", tag) and self.heading is not None:
            level, _ = self.page.headings[-1]
            self.page.headings[-1] = (level, "".join(self.heading))
            self.heading = None

    def handle_data(self, data: str) -> None:
        if self.skipped:
            return
        self.page.prose += data
        if self.heading is not None:
            self.heading.append(data)


def read(path: Path) -> Page:
    """A page source read with Python-Markdown, its blocks set aside."""
    page = Page(path=path)

    def keep(source: str, language: str, *_given: Any, **_more: Any) -> str:
        page.fences.append((language, source))
        return "<div></div>"

    md = Markdown(
        extensions=[
            "admonition", "attr_list", "md_in_html", "tables", "toc", "pymdownx.superfences",
            "site_overrides.build.figures",
        ],
        extension_configs={
            "pymdownx.superfences": {
                "disable_indented_code_blocks": True,
                "custom_fences": [{"name": n, "class": n, "format": keep} for n in FENCES],
            }
        },
    )  # fmt: skip
    html = md.convert(_FRONT.sub("", path.read_text(encoding="utf-8")))
    reader = _Reader(page)
    reader.feed(html)
    reader.close()
    return page


def procedures(page: Page) -> list[Procedure]:
    """The procedures of a page.

    Raises:
        ProcedureError: One is written wrongly.
    """
    return [procedure(source) for kind, source in page.fences if kind == "procedure"]


def forms(page: Page) -> list[Form]:
    """The sheets of a page.

    Raises:
        FormError: One is written wrongly.
    """
    return [form(source) for kind, source in page.fences if kind == "form"]


def heading_problems(page: Page) -> list[str]:
    """One first heading, none skipped, none empty, none twice."""
    levels = [level for level, _ in page.headings]
    said = [] if levels.count(1) == 1 and levels[0] == 1 else ["there must be one h1, and first"]
    said += [
        f"“{text}” is an h{level} under an h{before}"
        for before, (level, text) in zip(levels, page.headings[1:], strict=False)
        if level > before + 1
    ]
    said += ["a heading is empty" for _, text in page.headings if not text.strip()]
    names = [text for _, text in page.headings]
    said += [f"“{text}” heads two parts" for text in sorted(set(names)) if names.count(text) > 1]
    return said


@cache
def _ids(path: Path) -> frozenset[str]:
    return frozenset(read(path).ids)


def link_problems(page: Page, docs: Path = DOCS) -> list[str]:
    """Links lead to pages and headings that exist, inside the site."""
    said = []
    for link in page.links:
        if re.match(r"[a-z]+:", link):
            said.append(f"{link} leads out of the site")
            continue
        target, _, anchor = link.partition("#")
        file = (page.path.parent / target).resolve() if target else page.path
        if not file.is_file() or not file.is_relative_to(docs.resolve()):
            said.append(f"{link} leads nowhere")
        elif anchor and anchor not in _ids(file):
            said.append(f"{link} names a heading that is not there")
    return said


def _texts(page: Page) -> list[str]:
    """Prose, and every text of every procedure and form with the filled figures taken out."""
    texts = [page.prose, *(text for made in forms(page) for text in made.texts)]
    for each in procedures(page):
        texts += [each.title, each.call, each.completion]
        for pause in each.pauses:
            texts.append(pause.title)
            for step in pause.steps:
                texts += [step.do, step.want, step.only]
    return [_BRACED.sub("", text) for text in texts]


def figure_problems(page: Page) -> list[str]:
    """No number with a unit is typed; it is filled from a table."""
    return [f"“{found[0]}” is typed" for text in _texts(page) for found in _FIGURE.finditer(text)]


def verdict_problems(page: Page) -> list[str]:
    """Nothing is called harmless."""
    return [f"“{found[0]}” is a verdict" for text in _texts(page) for found in _SAFE.finditer(text)]


def hazard_problems(page: Page) -> list[str]:
    """Hazards are whole, and stand in the step they guard and nowhere else."""
    said = [f"{found[0]} stands outside a step" for found in _SIGNAL.finditer(page.prose)]
    said += ["an admonition stands in for a hazard"] if "admonition" in page.classes else []
    try:
        procedures(page)
    except ProcedureError as error:
        said.append(str(error))
    return said


def calculator_problems(page: Page) -> list[str]:
    """Every calculator named on the page exists, and once."""
    ids = [source.split()[0] for kind, source in page.fences if kind == "calculator"]
    said = [f"there is no calculator {name}" for name in ids if name not in calculators()]
    return said + [f"{name} stands twice" for name in sorted(set(ids)) if ids.count(name) > 1]


def form_problems(page: Page) -> list[str]:
    """A form or a timer takes its figures from a calculator that stands on its page."""
    there = {source.split()[0] for kind, source in page.fences if kind == "calculator"}
    wanted = {source.split()[0] for kind, source in page.fences if kind == "timer"}
    try:
        wanted |= {line.calculator for made in forms(page) for part in made.parts for line in part.lines}
    except FormError as error:
        return [str(error)]
    return [f"{name} does not stand on the page" for name in sorted(wanted - there - {""})]


CHECKS = (
    heading_problems,
    link_problems,
    figure_problems,
    verdict_problems,
    hazard_problems,
    calculator_problems,
    form_problems,
)
