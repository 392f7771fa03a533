"""The one style sheet: all of the theme's and ours, in their order."""

import re
from pathlib import Path

import pytest

from site_overrides.build import styles
from site_overrides.build.check_pages import ROOT

SITE = ROOT / "site"
PAGE = '<head>{}</head><link rel="stylesheet" href="{}assets/stylesheets/main.css"> <link rel="stylesheet" href="{}assets/a.css"><p>'


@pytest.fixture
def site(tmp_path: Path) -> Path:
    (tmp_path / "assets" / "stylesheets").mkdir(parents=True)
    (tmp_path / "page").mkdir()
    (tmp_path / "assets/stylesheets/main.css").write_text(
        '@charset "UTF-8";.a{top:0}/*# map */', encoding="utf-8"
    )
    (tmp_path / "assets/a.css").write_text(".b { content: '°' }\n", encoding="utf-8")
    (tmp_path / "index.html").write_text(PAGE.format("", "", ""), encoding="utf-8")
    (tmp_path / "page/index.html").write_text(PAGE.format("", "../", "../"), encoding="utf-8")
    return tmp_path


def test_all_sheets_become_one_in_their_order(site: Path) -> None:
    styles.write(site)
    (sheet,) = site.rglob("*.css")
    css = sheet.read_text(encoding="utf-8")
    assert css == "@charset \"utf-8\";.a{top:0}/*# map */\n.b { content: '°' }\n"
    for page, up in ((site / "index.html", ""), (site / "page/index.html", "../")):
        found = re.findall(r'rel="stylesheet" href="([^"]+)"', page.read_text(encoding="utf-8"))
        assert found == [f"{up}assets/stylesheets/{sheet.name}"]


def test_a_page_with_another_sheet_stops_the_build(site: Path) -> None:
    page = site / "page/index.html"
    page.write_text(page.read_text(encoding="utf-8").replace("a.css", "b.css"), encoding="utf-8")
    with pytest.raises(ValueError, match="has other style sheets than the first page"):
        styles.write(site)


@pytest.mark.site
@pytest.mark.skipif(not SITE.is_dir(), reason="the site is not built; make test builds it first")
def test_every_page_has_the_one_sheet_and_no_property_is_read_that_it_lacks() -> None:
    (sheet,) = SITE.rglob("*.css")
    pages = [page.read_text(encoding="utf-8") for page in SITE.rglob("*.html")]
    assert all(
        re.findall(r'rel="stylesheet" href="[^"]*?([^"/]+)"', page) == [sheet.name] for page in pages
    )
    css = sheet.read_text(encoding="utf-8")
    ours = "".join(path.read_text(encoding="utf-8") for path in (ROOT / "site_overrides/theme/assets").glob("*.css"))
    read = set(re.findall(r"var\(\s*(--[\w-]+)\s*\)", ours))
    given = set(re.findall(r"(--[\w-]+)\s*:", css + "".join(pages)))
    assert read <= given
