"""Makes one page, or one answer, from the sources as they are: run anew whenever code or a table changes.

Reads a JSON text a line, `{"page": address}` or `{"ask": request}`, and writes one back:
`{"html": …}`, `{"reply": …}`, or `{}` where no page has the address. What is wrong with a page
stands on it, in plain sentences.
"""

import json
import logging
import os
import re
import sys
import traceback
from collections.abc import Iterable
from html import escape
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[3]
DOCS = ROOT / "docs"
OURS = ("calc", "site_overrides")
_FENCE = re.compile(r"^(`{3,})(\S*)", re.MULTILINE)


def _short(path: str) -> str:
    return str(Path(path).relative_to(ROOT)) if Path(path).is_relative_to(ROOT) else path


def place_of(error: BaseException) -> str:
    """File and line of ours in which an error arose; nothing where our own code raised it on purpose."""
    if isinstance(error, SyntaxError) and error.filename:
        return f"{_short(error.filename)}, line {error.lineno}"
    frames: list[traceback.FrameSummary] = []
    last = error
    chained: BaseException | None = error
    while chained is not None:
        frames += traceback.extract_tb(chained.__traceback__)
        last, chained = chained, chained.__cause__
    ours = [frame for frame in frames if _is_ours(Path(frame.filename))]
    on_purpose = isinstance(last, ValueError) or type(last).__module__.partition(".")[0] in OURS
    if not ours or (on_purpose and ours[-1] is frames[-1] and (ours[-1].line or "").startswith("raise ")):
        return ""
    return f"{_short(ours[-1].filename)}, line {ours[-1].lineno}"


def _is_ours(path: Path) -> bool:
    return path.is_relative_to(ROOT) and ".venv" not in path.parts


def ended(text: str) -> str:
    """A text as a sentence: a capital at its beginning, a stop at its end."""
    text = " ".join(text.split()) or "it stopped"
    return text[:1].upper() + text[1:] + ("" if text.endswith((".", "!", "?", "”")) else ".")


def sentence(error: BaseException) -> str:
    """An error in one plain sentence, with the place where it arose."""
    cause = error
    while cause.__cause__ is not None:
        cause = cause.__cause__
    told = str(error.msg if isinstance(error, SyntaxError) else error)
    place = place_of(error)
    return ended(
        f"{told.rstrip('. ') or 'it stopped'} ({type(cause).__name__} in {place})" if place else told
    )


class _Heard(logging.Handler):
    """What the generator warns of while a page is made."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.sentences: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.sentences.append(" ".join(record.getMessage().split()))


def open_fence(text: str) -> str | None:
    """What is wrong with the fences of a page: one that nothing ends."""
    opened: tuple[str, str, int] | None = None
    for found in _FENCE.finditer(text):
        marks, kind = found.groups()
        if opened is None:
            opened = (marks, kind, text.count("\n", 0, found.start()) + 1)
        elif marks == opened[0] and not kind:
            opened = None
    if opened is None:
        return None
    return (
        f"The fence “{opened[1]}” that begins in line {opened[2]} is never ended by a line of {opened[0]}."
    )


def notes_html(title: str, sentences: Iterable[str]) -> str:
    """Sentences as they stand on a page."""
    lines = "".join(f"<p>{escape(each)}</p>" for each in sentences)
    return f'<div role="alert" data-dev-error style="border:2px solid;padding:0 1em"><p><b>{title}</b></p>{lines}</div>'


class Maker:
    """The pages, each made when it is asked for."""

    def __init__(self) -> None:
        from mkdocs.config import load_config  # noqa: PLC0415 - a fault of what these import is told on the page

        import calc.bridge  # noqa: F401, PLC0415
        from site_overrides.build import formulas  # noqa: PLC0415

        self.fault_of_formulas = ""
        try:
            formulas.write()
        except Exception as error:  # the formulas of before are still there
            self.fault_of_formulas = sentence(error)
        self.config = load_config(
            str(ROOT / "mkdocs.yml"),
            plugins=[],
            site_url=os.environ.get("SITE_URL", "http://127.0.0.1:8001/"),
        )
        self.env = self.config.theme.get_env()

    def page(self, address: str) -> str | None:
        """HTML of the page at an address from the site's folder, or None where there is none."""
        from mkdocs.commands.build import get_context  # noqa: PLC0415
        from mkdocs.structure.files import get_files  # noqa: PLC0415
        from mkdocs.structure.nav import get_navigation  # noqa: PLC0415

        heard = _Heard()
        log = logging.getLogger("mkdocs")
        log.addHandler(heard)
        try:
            files = get_files(self.config)
            files.add_files_from_theme(self.env, self.config)
            nav = get_navigation(files, self.config)
            if address == "sitemap.xml":
                return self._sitemap(page.file.url for page in nav.pages)
            found = next(
                (file for file in files.documentation_pages() if file.url in (address, f"{address}./")),
                None,
            )
            if found is None and address == "":
                found = files.get_file_from_path("index.md")
            if found is None or found.page is None:
                return None
            for other in nav.pages:
                if other.title is None:
                    other.read_source(self.config)
            page = found.page
            sentences = self._rendered(page, files)
            page.content = self._noted([*sentences, *heard.sentences]) + (page.content or "")
            template = self.env.get_template(page.meta.get("template", "main.html"))
            return str(template.render(get_context(nav, files, self.config, page)))
        finally:
            log.removeHandler(heard)

    def _sitemap(self, addresses: Iterable[str]) -> str:
        """Every page's address: by this list the theme knows which links lead to a page of the site."""
        base = self.config.site_url
        told = "".join(f"<url><loc>{base}{address.removeprefix('./')}</loc></url>" for address in addresses)
        return f'<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">{told}</urlset>'

    def _rendered(self, page: Any, files: Any) -> list[str]:
        """Render a page, and tell what is wrong with it."""
        from site_overrides.build.check_pages import CHECKS, read  # noqa: PLC0415

        path = DOCS / page.file.src_uri
        try:
            page.read_source(self.config)
            page.render(self.config, files)
            unended = open_fence(path.read_text(encoding="utf-8"))
            source = read(path)
            shows_formulas = any(kind == "calculator" for kind, _ in source.fences)
            said = [self.fault_of_formulas] if self.fault_of_formulas and shows_formulas else []
            return [
                *said,
                *([unended] if unended else []),
                *(told for check in CHECKS for told in check(source)),
            ]
        except Exception as error:  # a page that cannot be made says why
            return [sentence(error)]

    @staticmethod
    def _noted(sentences: list[str]) -> str:
        told = dict.fromkeys(map(ended, sentences))
        return notes_html("This page is not as it should be:", told) if told else ""

    def reply(self, request: str) -> str:
        """The bridge's reply; a fault of the code is told in its place."""
        from calc import bridge  # noqa: PLC0415

        said = bridge.run(request)
        if not json.loads(said).get("fault"):
            return said
        try:
            bridge._reply(json.loads(request))
        except Exception as error:
            return json.dumps({"errors": [{"field": "", "message": sentence(error)}]})
        return said


def _broken(error: BaseException) -> str:
    """A page where nothing can be made, as the code itself is broken."""
    head = '<!doctype html><html lang="en"><meta charset="utf-8"><link rel="icon" href="data:,"><title>make dev</title>'
    return f"{head}<body>{notes_html('The code stops:', [sentence(error)])}</body></html>"


def answered(maker: Maker, asked: dict[str, str]) -> dict[str, str]:
    """What one line asks for."""
    try:
        if "ask" in asked:
            return {"reply": maker.reply(asked["ask"])}
        html = maker.page(asked["page"])
        return {} if html is None else {"html": html}
    except Exception as error:
        return {"html": _broken(error)}


def main() -> None:
    """Answer line by line; where the code cannot even be imported, say so to each."""
    out = os.fdopen(os.dup(sys.stdout.fileno()), "w", encoding="utf-8")
    os.dup2(sys.stderr.fileno(), sys.stdout.fileno())  # what code prints is not an answer
    maker: Maker | BaseException
    try:
        maker = Maker()
    except (Exception, SystemExit) as error:
        maker = error
    for line in sys.stdin:
        asked = json.loads(line)
        if isinstance(maker, Maker):
            answer = answered(maker, asked)
        elif "ask" in asked:
            answer = {"reply": json.dumps({"errors": [{"field": "", "message": sentence(maker)}]})}
        else:
            answer = {"html": _broken(maker)}
        out.write(f"{json.dumps(answer)}\n")
        out.flush()


if __name__ == "__main__":
    main()
