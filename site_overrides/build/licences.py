"""Whose work ships with the site, and under which licence: gathered whenever the site is built.

`site_overrides/licences/parts.toml` names each part. Its text comes from the
installed distribution, or stands beside that file where a distribution brings
none. What ships and is not named there, or has no text, stops the build.
"""

import json
import re
import sys
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from html import escape
from importlib.metadata import Distribution, distribution
from pathlib import Path
from typing import Any

from site_overrides.build.bundle_runtime import ENTERED
from site_overrides.build.bundle_wheels import PUBLISHED

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
LICENCES = ROOT / "site_overrides" / "licences"
LOCK = ROOT / "site_overrides" / "runtime" / "package-lock.json"
THEME = "mkdocs-material"
GROUPS = ("runtime", "wheels", "unpacker", "pages")
"""Groups of parts, each under its own heading of the page."""

_LICENCE_FILE = re.compile(r"(?:LICEN[CS]E|COPYING|NOTICE|AUTHORS)(?:\.\w+)?", re.IGNORECASE)
_HOLDER = re.compile(r"^(Copyright \([cC]\) .*?)[.,]?(?: +See .*)?$", re.MULTILINE)
_BUNDLED = re.compile(r"node_modules/((?:@[^/]+/)?[^/]+)")


class LicenceError(ValueError):
    """Something ships without a name, a holder or a licence text."""


@dataclass(frozen=True)
class Text:
    """A licence text, its title, and its address on the page."""

    id: str
    title: str
    content: str


@dataclass(frozen=True, kw_only=True)
class Part:
    """Something others made that ships with the site."""

    name: str
    version: str
    group: str
    does: str
    licence: str
    holders: tuple[str, ...]
    source: str
    texts: tuple[Text, ...]
    is_changed: bool
    engine: tuple[str, ...]

    @property
    def called(self) -> str:
        """Name and version."""
        return f"{self.name} {self.version}".strip()


@cache
def _listed() -> dict[str, Any]:
    return tomllib.loads((LICENCES / "parts.toml").read_text(encoding="utf-8"))


def _kept_text(name: str) -> Text:
    said = _listed()["text"].get(name)
    if said is None:
        raise LicenceError(f"parts.toml has no text “{name}”.")
    content = (LICENCES / f"{name}.txt").read_text(encoding="utf-8")
    return Text(f"text-{name}", said["title"], content.strip("\n"))


def _brought_texts(found: Distribution, only: str, name: str) -> tuple[Text, ...]:
    files = [
        file
        for file in found.files or []
        if (
            str(file) == only if only else ".dist-info/" in str(file) and _LICENCE_FILE.fullmatch(file.name)
        )
    ]
    label = re.sub(r"[^a-z0-9]+", "-", name.lower())
    return tuple(
        Text(
            f"text-{label}-{file.stem.lower()}",
            f"{name}: {file.name}",
            file.read_text(encoding="utf-8").strip("\n"),
        )
        for file in sorted(files, key=lambda file: file.name, reverse=True)
    )


def _npm_packages() -> dict[str, str]:
    """Versions of the npm packages that ship, by name."""
    packages = json.loads(LOCK.read_text(encoding="utf-8"))["packages"]
    return {name: packages[f"node_modules/{name}"]["version"] for name in packages[""]["dependencies"]}


def bundled_in_theme() -> set[str]:
    """Packages in the theme's script, search and style sheets, as their source maps name them.

    Raises:
        LicenceError: A script of the theme that ships has no source map.
    """
    theme = distribution(THEME)
    assets = Path(str(theme.locate_file("material/templates/assets")))
    names: set[str] = set()
    for shipped in [*assets.glob("javascripts/*.js"), *assets.glob("javascripts/workers/*.js"),
                    *assets.glob("stylesheets/*.css")]:  # fmt: skip
        listed = shipped.with_name(f"{shipped.name}.map")
        if not listed.is_file():
            raise LicenceError(
                f"{shipped.name} of {THEME} brings no source map, so what is in it is not known."
            )
        for address in json.loads(listed.read_text(encoding="utf-8"))["sources"]:
            names |= set(_BUNDLED.findall(address))
    return names


def _part(given: dict[str, Any]) -> Part:
    name = given["name"]
    texts = tuple(_kept_text(each) for each in given.get("text", ()))
    version = given.get("version", "")
    brought = given.get("wheel") or given.get("distribution")
    if brought:
        found = distribution(brought)
        texts = (*_brought_texts(found, given.get("file", ""), name), *texts)
        version = "" if "file" in given else found.version
    if "npm" in given:
        version = _npm_packages()[given["npm"]]
    if not texts:
        raise LicenceError(
            f"{name} has no licence text: its distribution brings none, and parts.toml names none beside it."
        )
    own = "\n".join(text.content for text in texts)
    holders = tuple(given.get("holders") or dict.fromkeys(_HOLDER.findall(own)))
    if not holders:
        raise LicenceError(f"{name} names no holder: parts.toml must say who it is.")
    return Part(
        name=name, version=version, group=given["group"], does=given["does"], licence=given["licence"], holders=holders, source=given["source"], texts=texts,
        is_changed=given.get("changed", False), engine=tuple(given.get("engine", ())),
    )  # fmt: skip


def _refuse_unnamed(given: Iterable[dict[str, Any]]) -> None:
    for key, ships, how in (
        ("wheel", set(PUBLISHED), "goes to the browser"),
        ("npm", set(_npm_packages()), "goes to the browser"),
        ("script", bundled_in_theme(), "is bundled in the theme's script"),
    ):
        named = {part[key] for part in given if key in part}
        for missing in sorted(ships - named):
            raise LicenceError(f"{missing} {how}, and no part of parts.toml names it as its {key}.")
        for gone in sorted(named - ships):
            raise LicenceError(f"parts.toml names the {key} {gone}, which does not ship.")


@cache
def parts() -> tuple[Part, ...]:
    """Every part that others made, with version, holders and texts.

    Raises:
        LicenceError: Something ships that is not named, or a part has no text or no holder.
    """
    given = _listed()["part"]
    _refuse_unnamed(given)
    return tuple(_part(each) for each in given)


def stop_where_one_is_missing() -> None:
    """End the program with one sentence when something ships without name, holder or text."""
    try:
        parts()
    except LicenceError as error:
        sys.exit(f"The site is not built: {error}")


def texts() -> list[Text]:
    """Each text once, our own first; parts that bring the very same words share it."""
    own = (ROOT / "LICENSE").read_text(encoding="utf-8").strip("\n")
    found = [Text("text-own", "Oxyfuel Benchbook", own), _kept_text("cc-by-4-0")]
    found += [text for part in parts() for text in part.texts]
    distinct: dict[str, Text] = {}
    for text in found:
        distinct.setdefault(text.content, text)
    return list(distinct.values())


def recipe() -> dict[str, str]:
    """What changes the runtime's files: each program of the recipe, and the list it goes by, by name.

    Raises:
        LicenceError: The programs are not where the licence note says.
    """
    found = {path.name: path.read_text(encoding="utf-8") for path in sorted(HERE.glob("bundle_*.mjs"))}
    if not found:
        raise LicenceError(
            f"{HERE} holds no bundle_*.mjs, so the recipe of the changed runtime cannot be shown."
        )
    return found | {ENTERED.name: ENTERED.read_text(encoding="utf-8")}


def _part_html(part: Part, address: dict[str, str]) -> str:
    links = ", ".join(f'<a href="#{address[text.content]}">{escape(text.title)}</a>' for text in part.texts)
    changed = '<br><a href="#changed">This site carries a changed copy.</a>' if part.is_changed else ""
    return (
        f"<li><p><b>{escape(part.called)}</b>, {escape(part.licence)}. {escape(part.does)}</p>"
        f"<p>{'<br>'.join(map(escape, part.holders))}<br>Source: {escape(part.source)}{changed}"
        f"<br>Text: {links}</p></li>"
    )


def _folds(contents: Iterable[tuple[str, str, str]]) -> str:
    # The address is that of the inner element, as a browser then opens the fold around it.
    folds = "".join(
        f'<details class="bb-licence"><summary>{escape(title)}</summary>'
        f'<pre id="{address}">{escape(content)}</pre></details>'
        for address, title, content in contents
    )
    return f'<div class="bb-licence-texts" data-search-exclude>{folds}</div>'


def licences_html(what: str) -> str:
    """A group of parts with holders and sources, or what folds: the `recipe` or the `texts`.

    Args:
        what: One of GROUPS, `recipe` or `texts`.

    Raises:
        LicenceError: There is no such group, or something that ships lacks name, holder or text.
    """
    if what == "texts":
        return _folds((text.id, text.title, text.content) for text in texts())
    if what == "recipe":
        return _folds((f"recipe-{name.partition('.')[0]}", name, text) for name, text in recipe().items())
    if what not in GROUPS:
        raise LicenceError(
            f"a licences fence holds texts, recipe or one of {', '.join(GROUPS)}, not {what}."
        )
    address = {text.content: text.id for text in texts()}
    items = "".join(_part_html(part, address) for part in parts() if part.group == what)
    return f'<ul class="bb-licences">{items}</ul>'


def licences_text() -> str:
    """All of it as one plain text, for the copy in a folder."""
    titles = {text.content: text.title for text in texts()}
    lines = ["Oxyfuel Benchbook: licences of all that is in this copy"]
    for part in parts():
        changed = " This copy holds it changed, by the recipe at the end." if part.is_changed else ""
        lines += [
            "",
            f"{part.called}, {part.licence}. {part.does}{changed}",
            *(f"  {holder}" for holder in part.holders),
            f"  Source: {part.source}",
            f"  Text: {', '.join(titles[text.content] for text in part.texts)}",
        ]
    folded = [(text.title, text.content) for text in texts()] + list(recipe().items())
    for title, content in folded:
        lines += ["", "", "=" * 100, title, "=" * 100, "", content.rstrip()]
    return "\n".join(lines) + "\n"
