"""Every page source keeps the rules, and each rule can be broken."""

from pathlib import Path

import pytest

from calc.declare.catalogue import calculators
from site_overrides.build import check_pages
from site_overrides.build.check_pages import CHECKS, DOCS, read

PAGES = sorted(DOCS.rglob("*.md"))

STEP = """```procedure
id = "p"
title = "T"
kind = "read-then-do"
revised = 2026-11-25
completion = "C"
[[pause]]
id = "a"
title = "A"
[[pause.step]]
id = "s"
do = "{do}"
want = "both gauges at zero"
{more}
```
"""


def page(tmp_path: Path, text: str) -> check_pages.Page:
    path = tmp_path / "page.md"
    path.write_text(text, encoding="utf-8")
    return read(path)


@pytest.mark.parametrize("path", PAGES, ids=lambda path: str(path.relative_to(DOCS)))
@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.__name__)
def test_page_keeps_the_rule(path: Path, check: object) -> None:
    assert check(read(path)) == []


def test_every_calculator_has_its_page() -> None:
    shown = {
        source.split()[0] for path in PAGES for kind, source in read(path).fences if kind == "calculator"
    }
    assert shown == set(calculators())


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("No heading.", "one h1"),
        ("# A\n\n# B", "one h1"),
        ("# A\n\n### B", "h3 under an h1"),
        ("# A\n\n## B\n\n## B", "heads two parts"),
    ],
)
def test_headings_out_of_order_are_found(tmp_path: Path, text: str, said: str) -> None:
    assert said in " ".join(check_pages.heading_problems(page(tmp_path, text)))


@pytest.mark.parametrize(
    ("link", "said"),
    [
        ("gone.md", "leads nowhere"),
        ("page.md#gone", "names a heading"),
        ("https://example.org/", "leads out"),
        ("../../../pyproject.toml", "leads nowhere"),
    ],
)
def test_dead_links_are_found(tmp_path: Path, link: str, said: str) -> None:
    found = check_pages.link_problems(page(tmp_path, f"# A\n\n[x]({link})"), docs=tmp_path)
    assert said in " ".join(found)


def test_a_link_to_a_heading_is_kept(tmp_path: Path) -> None:
    made = page(tmp_path, "# A\n\n## Two words\n\n[x](page.md#two-words)")
    assert check_pages.link_problems(made, docs=tmp_path) == []


@pytest.mark.parametrize(
    "typed",
    ["15 psi", "1.03 bar", "1 1/2 turns", "1/4 turn", "35 ft", "70 °F", "60 min", "5-10 s", "24 %", "3 mm"],
)
def test_typed_figures_are_found(tmp_path: Path, typed: str) -> None:
    assert check_pages.figure_problems(page(tmp_path, f"# A\n\nNever over {typed}, here."))


def test_typed_figures_in_a_step_are_found(tmp_path: Path) -> None:
    text = "# A\n\n" + STEP.format(do="Wait 5 min.", more="")
    assert check_pages.figure_problems(page(tmp_path, text))


@pytest.mark.parametrize("text", ["Never over {acetylene-limit}.", "`15 psi`", "In 2015 in print."])
def test_filled_figures_code_and_years_are_left_alone(tmp_path: Path, text: str) -> None:
    assert check_pages.figure_problems(page(tmp_path, f"# A\n\n{text}")) == []


def test_safe_as_a_verdict_is_found(tmp_path: Path) -> None:
    assert check_pages.verdict_problems(page(tmp_path, "# A\n\nNow it is safe."))
    assert check_pages.verdict_problems(page(tmp_path, "# A\n\nSafety rules.")) == []


def test_a_hazard_outside_a_step_is_found(tmp_path: Path) -> None:
    assert check_pages.hazard_problems(page(tmp_path, "# A\n\nDANGER: gas."))
    assert check_pages.hazard_problems(page(tmp_path, "# A\n\n!!! danger\n    Gas."))


def test_a_line_of_a_step_that_stands_outside_of_it_stops_the_build(tmp_path: Path) -> None:
    text = "# A\n\n" + STEP.format(do="Go.", more="") + 'hazards = ["glare"]\n\nMore.'
    with pytest.raises(ValueError, match="stands outside a step"):
        page(tmp_path, text)


def test_a_hazard_that_no_table_has_is_found(tmp_path: Path) -> None:
    text = "# A\n\n" + STEP.format(do="Go.", more='hazard = "sharks"')
    assert "no row 'sharks'" in " ".join(check_pages.hazard_problems(page(tmp_path, text)))


def test_an_unknown_calculator_is_found(tmp_path: Path) -> None:
    made = page(tmp_path, "# A\n\n```calculator\nno-such-thing\n```")
    assert check_pages.calculator_problems(made) == ["there is no calculator no-such-thing"]
