"""What others made that ships: all of it is named on the Licences page, with a holder and a licence text."""

import io
import json
import lzma
import re
import sys
import zipfile
from collections.abc import Iterator
from html import unescape
from importlib.metadata import distribution
from pathlib import Path
from typing import Any

import pytest

from site_overrides.build import licences
from site_overrides.build.check_pages import DOCS, ROOT
from site_overrides.build.licences import LICENCES, LicenceError, parts, texts

SITE = ROOT / "site"
ENGINE = SITE / "assets" / "engine"
PAGE = SITE / "tables" / "licences" / "index.html"
THEME = ROOT / "site_overrides" / "theme"
ICONS = Path(str(distribution(licences.THEME).locate_file("material/templates/.icons")))
OURS_IN_ENGINE = {"files.js", "manifest.json"}
"""Written by our build beside the scripts of the theme folder and the files that the manifest lists."""

built = pytest.mark.skipif(not PAGE.is_file(), reason="the site is not built; make test builds it first")
engine_built = pytest.mark.skipif(
    not (ENGINE / "manifest.json").is_file(), reason="the engine is not built"
)


@pytest.fixture
def fresh() -> Iterator[None]:
    """Parts are gathered anew inside the test, and again after it."""
    parts.cache_clear()
    yield
    parts.cache_clear()


def manifest() -> list[dict[str, Any]]:
    files: list[dict[str, Any]] = json.loads((ENGINE / "manifest.json").read_text(encoding="utf-8"))[
        "files"
    ]
    return files


def unpacked(role: str) -> bytes:
    (entry,) = (entry for entry in manifest() if entry["role"] == role)
    content = (ENGINE / entry["name"]).read_bytes()
    return lzma.decompress(content) if entry["name"].endswith(".xz") else content


def locked() -> dict[str, Any]:
    lock: dict[str, Any] = json.loads(unpacked("lock"))
    return lock


def called() -> set[str]:
    return {part.name.lower().replace("_", "-") for part in parts()}


def test_each_part_has_a_holder_a_source_and_a_text() -> None:
    for part in parts():
        assert part.holders, part.name
        assert part.source.startswith("https://"), part.name
        assert part.texts, part.name
        assert sum(len(text.content) for text in part.texts) > 300, part.name
        assert part.does.endswith("."), part.name


def test_each_kept_text_is_used_and_says_where_it_was_met() -> None:
    said = licences._listed()["text"]
    assert {path.stem for path in LICENCES.glob("*.txt")} == set(said)
    assert all(entry["title"] and entry["met"] for entry in said.values())
    used = {text.id for text in texts()}
    assert {f"text-{name}" for name in said} <= used


def test_a_licence_named_by_a_distribution_is_the_one_on_the_page() -> None:
    for given in licences._listed()["part"]:
        if "wheel" in given:
            named = distribution(given["wheel"]).metadata.get("License-Expression")
            assert named in (None, given["licence"]), given["name"]


@pytest.mark.usefixtures("fresh")
def test_a_wheel_that_brings_no_text_stops_the_build(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(licences, "_LICENCE_FILE", re.compile("no such file"))
    with pytest.raises(LicenceError, match=r"^pint has no licence text: .+\.$"):
        parts()
    with pytest.raises(SystemExit, match=r"^The site is not built: pint has no licence text: .+\.$"):
        licences.stop_where_one_is_missing()


@pytest.mark.usefixtures("fresh")
@pytest.mark.parametrize(
    ("where", "ships", "said"),
    [
        ("PUBLISHED", (*licences.PUBLISHED, "pypdf"), "pypdf goes to the browser"),
        (
            "_npm_packages",
            lambda: {"pyodide": "1", "xz-decompress": "1", "ws": "1"},
            "ws goes to the browser",
        ),
        ("bundled_in_theme", lambda: {"rxjs", "jquery"}, "jquery is bundled in the theme's script"),
        ("PUBLISHED", licences.PUBLISHED[1:], "which does not ship"),
    ],
)
def test_what_ships_without_a_name_stops_the_build(
    monkeypatch: pytest.MonkeyPatch, where: str, ships: Any, said: str
) -> None:
    monkeypatch.setattr(licences, where, ships)
    with pytest.raises(LicenceError, match=said):
        parts()


def test_every_group_and_the_recipe_stand_on_the_page() -> None:
    source = (DOCS / "tables" / "licences.md").read_text(encoding="utf-8")
    shown = re.findall(r"```licences\n(\w+)\n```", source)
    assert sorted(shown) == sorted([*licences.GROUPS, "recipe", "texts"])
    assert {part.group for part in parts()} == set(licences.GROUPS)
    with pytest.raises(LicenceError, match="not fonts"):
        licences.licences_html("fonts")


def test_the_plain_text_holds_every_part_and_every_text() -> None:
    text = licences.licences_text()
    assert [part.called for part in parts() if f"\n{part.called}, {part.licence}." not in text] == []
    assert [each.title for each in texts() if each.content.rstrip() not in text] == []


@built
def test_the_built_page_names_every_part_and_each_link_leads_to_a_text() -> None:
    page = PAGE.read_text(encoding="utf-8")
    shown = unescape(page)
    for part in parts():
        assert f"<b>{part.called}</b>, {part.licence}." in shown
    for each in texts():
        assert each.content in shown, each.title
    main = page[page.index('class="bb-licences"') :]
    addresses = set(re.findall(r'<pre id="([^"]+)"', main))
    assert set(re.findall(r'href="#(text-[^"]+)"', main)) <= addresses


@built
def test_every_page_leads_to_the_licences() -> None:
    for path in SITE.rglob("*.html"):
        foot = path.read_text(encoding="utf-8").partition('<footer class="bb-footer')[2]
        assert re.search(r'href="[^"]*licences/"|href="\./"|href="[^"]*licences\.html"', foot), path


@engine_built
def test_every_file_of_the_engine_has_a_part_or_is_ours() -> None:
    for entry in manifest():
        inside = [part.name for part in parts() if entry["role"] in part.engine]
        assert inside, f"no part of parts.toml is in the engine's {entry['role']}"
    listed = {entry["name"] for entry in manifest()}
    scripts = {path.name for path in (THEME / "assets" / "engine").glob("*.js")}
    assert {path.name for path in ENGINE.iterdir()} <= listed | scripts | OURS_IN_ENGINE


@engine_built
def test_every_wheel_of_the_engine_is_a_part() -> None:
    assert set(locked()["packages"]) - {"oxyfuel-benchbook"} <= called()


@engine_built
def test_every_module_of_the_library_comes_from_a_part() -> None:
    wheels = {name for package in locked()["packages"].values() for name in package["imports"]}
    python = set(sys.stdlib_module_names) | {"annotationlib", "compression", "_pyodide", "pyodide"}
    with zipfile.ZipFile(io.BytesIO(unpacked("library"))) as archive:
        tops = {name.split("/")[0].partition(".")[0] for name in archive.namelist()}
    built_for = {name for name in tops if name.startswith("_sysconfig")}
    new = {"_py_warnings", "_ast_unparse"}  # of Python 3.14, which the build's own Python may not have
    assert tops - wheels - python - built_for - new == set()


@engine_built
def test_versions_are_those_that_the_runtime_itself_carries() -> None:
    version = {part.name: part.version for part in parts()}
    info = locked()["info"]
    assert version["CPython"] == info["python"]
    assert version["Emscripten"] == info["platform"].removeprefix("emscripten_").replace("_", ".")
    data = unpacked("data")
    for name, sign in (
        ("zlib", " inflate {} Copyright 1995-2024 Mark Adler"),
        ("SQLite", "{}"),
        ("liblzma of XZ Utils", "{}"),
        ("Zstandard", "{}"),
    ):
        assert sign.format(version[name]).encode() in data, name


@built
def test_every_script_is_ours_or_the_themes() -> None:
    own = {path.relative_to(THEME).as_posix() for path in THEME.rglob("*.js")}
    stock = {re.sub(r"\.\w{8}\.", ".", path.name) for path in (ICONS.parent / "assets").rglob("*.js")}
    for path in SITE.rglob("*.js"):
        name = path.relative_to(SITE).as_posix()
        if name.startswith("assets/engine/") or name in own:
            continue
        assert name.startswith("assets/javascripts/"), name
        assert re.sub(r"\.\w{8}\.", ".", path.name) in stock, name


@built
def test_every_set_of_signs_that_ships_is_a_part() -> None:
    """A sign that several sets hold is found when one of them is named."""
    named = {Path(part["file"]).parent.name for part in licences._listed()["part"] if "file" in part}
    drawn: dict[str, set[str]] = {}
    for path in ICONS.rglob("*.svg"):
        for line in re.findall(r' d="([^"]+)"', path.read_text(encoding="utf-8")):
            drawn.setdefault(line, set()).add(path.relative_to(ICONS).parts[0])
    found = set()
    for path in [*SITE.rglob("*.html"), *SITE.glob("assets/stylesheets/*.css")]:
        found |= set(re.findall(r'<path d=["\']([^"\']+)', path.read_text(encoding="utf-8"))) & set(drawn)
    assert found
    assert {name for line in found if not drawn[line] & named for name in drawn[line]} == set()


@built
def test_no_font_ships() -> None:
    assert [path for path in SITE.rglob("*") if path.suffix in (".woff", ".woff2", ".ttf", ".otf")] == []
    for path in SITE.glob("assets/stylesheets/*.css"):
        assert "@font-face" not in path.read_text(encoding="utf-8")
