"""The built release: one policy of exactly its own scripts, checksums of all that runs, and its weight."""

import base64
import gzip
import hashlib
import json
import re
import tomllib
from html.parser import HTMLParser
from pathlib import Path

import pytest

from calc.release import VERSION
from site_overrides.build.check_pages import ROOT

SITE = ROOT / "site"
PAGES = sorted(SITE.rglob("*.html"))
ENGINE = SITE / "assets" / "engine"
MOST = 12_000_000
"""Bytes of everything that a phone saves, as a host sends it that packs texts."""
PACKED = (".xz",)

pytestmark = [
    pytest.mark.site,
    pytest.mark.skipif(not PAGES, reason="the site is not built; make test builds it first"),
]


class Head(HTMLParser):
    """Policy, inline scripts, handlers written into tags, and addresses that would run."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.policies: list[str] = []
        self.scripts: list[str] = []
        self.handlers: list[str] = []
        self.inside = False
        self.before_policy: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if tag == "meta" and given.get("http-equiv", "").lower() == "content-security-policy":
            self.policies.append(given["content"])
        self.handlers += [name for name in given if name.startswith("on")]
        self.handlers += [v for n, v in given.items() if n in ("href", "src", "action", "formaction") and "script:" in v]
        runs = given.get("type", "") in ("", "text/javascript", "module")
        if tag == "script" and not self.policies:
            self.before_policy.append(str(given))
        self.inside = tag == "script" and "src" not in given and runs
        if self.inside:
            self.scripts.append("")

    def handle_data(self, data: str) -> None:
        if self.inside:
            self.scripts[-1] += data

    def handle_endtag(self, tag: str) -> None:
        self.inside = self.inside and tag != "script"


def read(page: Path) -> Head:
    head = Head()
    head.feed(page.read_text(encoding="utf-8"))
    head.close()
    return head


def sum_of(script: str) -> str:
    return f"'sha256-{base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()}'"


def test_the_policy_allows_the_scripts_that_stand_in_the_pages_and_no_other() -> None:
    heads = [read(page) for page in PAGES]
    assert all(len(head.policies) == 1 for head in heads)
    assert len({head.policies[0] for head in heads}) == 1
    rules = dict(rule.split(" ", 1) for rule in heads[0].policies[0].split("; "))
    allowed = set(rules.pop("script-src").split())
    inline = {sum_of(script) for head in heads for script in head.scripts}
    assert inline
    assert allowed == inline | {"'self'", "'wasm-unsafe-eval'"}
    assert rules == {
        "default-src": "'self'",
        "style-src": "'self' 'unsafe-inline'",
        "img-src": "'self' data:",
        "connect-src": "'self'",
        "worker-src": "'self'",
        "object-src": "'none'",
        "base-uri": "'self'",
        "form-action": "'self'",
    }


def test_no_tag_carries_a_handler_and_no_script_stands_before_the_policy() -> None:
    for page in PAGES:
        head = read(page)
        assert head.handlers == [], page
        assert head.before_policy == [], page


def test_all_that_the_engine_loads_has_its_checksum() -> None:
    words = (ENGINE / "files.js").read_text(encoding="utf-8")
    files = json.loads(re.sub(r"^.*?FILES = |;\s*$", "", words, flags=re.DOTALL))
    listed = json.loads((SITE / "release.json").read_text(encoding="utf-8"))["files"]
    assert {"script", "unpacker", "wasm", "snapshot", "library"} <= set(files)
    loaded = {file["name"]: file for role, file in files.items() if role not in ("platform", "release")}
    for name, file in loaded.items():
        content = (ENGINE / name).read_bytes()
        assert hashlib.sha256(content).hexdigest() == file["sha256"] == listed[f"assets/engine/{name}"]["sha256"]
        assert len(content) == file["bytes"]
    for script in ENGINE.glob("*.js"):
        name = script.relative_to(SITE).as_posix()
        assert hashlib.sha256(script.read_bytes()).hexdigest() == listed[name]["sha256"]


def test_the_version_stands_once_and_is_what_was_built() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    assert "version" not in project["project"]
    assert project["tool"]["setuptools"]["dynamic"]["version"] == {"attr": "calc.release.VERSION"}
    release = json.loads((SITE / "release.json").read_text(encoding="utf-8"))["release"]
    assert release.startswith(f"{VERSION}, ")
    told = f'"release": "{release}"'
    assert told in (ENGINE / "files.js").read_text(encoding="utf-8")
    for page in PAGES:
        assert f"<p>Release {release}." in page.read_text(encoding="utf-8"), page


def test_the_day_of_a_release_changes_no_file_that_is_named_by_its_content() -> None:
    release = json.loads((SITE / "release.json").read_text(encoding="utf-8"))["release"]
    for path in ENGINE.iterdir():
        if path.name != "files.js" and path.suffix != ".xz":
            assert release.encode() not in path.read_bytes(), path.name


def test_what_a_phone_saves_is_no_more_than_twelve_megabytes_as_sent() -> None:
    listed = json.loads((SITE / "release.json").read_text(encoding="utf-8"))["files"]
    sent = 0
    for name, file in listed.items():
        path = SITE / name / "index.html" if (SITE / name).is_dir() else SITE / name
        sent += file["bytes"] if path.suffix in PACKED else len(gzip.compress(path.read_bytes(), 6))
    assert sent <= MOST
