"""Figures and words are filled from their tables, and a failing block stops the build."""

import re

import pytest
from markdown import Markdown
from pymdownx.superfences import SuperFencesException

from calc.data.tables import table
from calc.values.units import to_si
from site_overrides.build import fences
from site_overrides.build.check_pages import DOCS, read
from site_overrides.build.figures import UnknownIdError, filled

NUMBER = r"\d[\d,]*(?:\.\d+)?"
UNITS = {"°F": "degF", "°C": "degC", "ft³": "ft^3", "m³": "m^3", "ft³/lb": "ft^3/lb", "m³/kg": "m^3/kg"}


def markdown() -> Markdown:
    custom = [
        {"name": name, "class": name, "format": getattr(fences, name)}
        for name in ("calculator", "procedure", "table", "figure", "disagreement")
    ]
    return Markdown(
        extensions=["toc", "pymdownx.superfences", "site_overrides.build.figures"],
        extension_configs={"pymdownx.superfences": {"custom_fences": custom}},
    )


def si(text: str) -> list[float]:
    """Each number of a text such as `25 to 29 psi`, in SI."""
    unit = text.rsplit(maxsplit=1)[-1]
    numbers = re.findall(NUMBER, text.removesuffix(unit))
    return [to_si(float(n.replace(",", "")), UNITS.get(unit, unit)) for n in numbers]


@pytest.mark.parametrize(
    "row", [r for r in table("figures-benchbook-2026") if r.metric], ids=lambda row: row.id
)
def test_both_units_of_a_figure_say_the_same(row: object) -> None:
    """Within the rounding of a printed pair: 3.5 %, or 1 kelvin."""
    for us, metric in zip(si(row.us), si(row.metric), strict=True):
        kelvin = 1.0 if "°" in row.us else 0.0
        assert us == pytest.approx(metric, rel=0.035, abs=kelvin)


def test_a_figure_is_filled_and_listed_with_its_source() -> None:
    html = markdown().convert("# A\n\nA full one shows {acetylene-full}.")
    assert '<span class="bb-figure">250 psi' in html
    after = html.split("Figures on this page")[1]
    assert "250 psi" in after
    assert "49 CFR 173.303" in after


def test_a_figure_that_the_rule_sets_put_differently_shows_each_its_own() -> None:
    """15 psig: 29 CFR 1910.253(a)(2). 1.5 bar: ISO 3821 scope; both read."""
    html = markdown().convert("# A\n\nAt most {acetylene-limit}.")
    assert '<span class="bb-for-us">15 psi (103 kPa)</span>' in html
    assert '<span class="bb-for-iso bb-script">1.5 bar</span>' in html
    assert '<span class="bb-for-uk bb-script">1.5 bar</span>' in html
    assert "(Europe (ISO and EN): 1.5 bar; United Kingdom: 1.5 bar)" in html
    after = html.split("Figures on this page")[1]
    assert "29 CFR 1910.253 (a)(2), read in a copy or a page that repeats it." in after
    assert "ISO 3821" in after


def test_a_page_lists_only_its_own_figures() -> None:
    md = markdown()
    md.convert("# A\n\n{acetylene-limit}")
    assert "Figures on this page" not in md.reset().convert("# B\n\nNone.")


def test_a_page_without_a_script_shows_all_words() -> None:
    html = markdown().convert("# A\n\nThe {tip} and the {equal-pressure} kind.")
    plain = re.sub(r"<[^>]+>", "", html)
    assert "The tip (nozzle) and the equal pressure (high pressure, non-injector) kind." in plain


def test_code_is_left_as_it_is() -> None:
    assert "<code>{tip}</code>" in markdown().convert("# A\n\n`{tip}`")


def test_an_unknown_id_stops_the_build() -> None:
    with pytest.raises(UnknownIdError, match="no-such-row"):
        markdown().convert("# A\n\n{no-such-row}")


@pytest.mark.parametrize(
    "block",
    [
        "calculator\nno-such-thing",
        "calculator\nsheet-thickness\ngauge = nonsense",
        "calculator\nsheet-thickness\ngauge",
        "calculator\n",
        "procedure\nid = 1",
        "table\nno-such-table\ncaption = C",
        "table\nwords-benchbook-2026",
        "table\nwords-benchbook-2026\ncaption = C\nwhere = id: nothing",
        "table\nwords-benchbook-2026\ncaption = C\ncolumns = nothing: N",
        "figure\nno_such_drawing",
        "figure\nflame\nratio = 9",
        "disagreement\nno-such-point\nabout = A",
        "disagreement\nupright-wait",
    ],
)
def test_a_block_that_fails_stops_the_build(block: str) -> None:
    with pytest.raises(SuperFencesException):
        markdown().convert(f"# A\n\n```{block}\n```")


def test_a_table_shows_both_units_source_and_grade() -> None:
    """Drill 60 is 0.0400 in, 1.016 mm: ASME B94.11M."""
    name = next(n for n in ("drills-asme-b94",) if table(n))
    html = markdown().convert(f"# A\n\n```table\n{name}\ncaption = Drills\n```")
    row = next(r for r in re.findall(r"<tr>.*?</tr>", html) if '<th scope="row">60</th>' in r)
    cells = re.findall(r"<td>(.*?)</td>", row)
    assert float(cells[0]) == 0.04
    assert float(cells[1]) == pytest.approx(1.016, abs=0.005)
    assert "ASME B94.11M" in cells[-2]


def test_a_number_is_shown_with_the_unit_of_its_row_and_the_rule_set_by_name() -> None:
    """15 psi is 1.03 bar, 50 °C is 122 °F: by definition."""
    fence = "table\n{}\ncaption = C\ncolumns = rules: Rules, number+unit: Figure"
    limits = markdown().convert(f"# A\n\n```{fence.format('acetylene-limits')}\n```")
    assert '<th scope="row">United States</th><td>15 psi (1.03 bar)</td>' in limits
    assert "<td>15 psi</td>" not in limits
    warm = markdown().convert(f"# A\n\n```{fence.format('cylinder-temperatures')}\n```")
    assert "<td>50 °C (122 °F)</td>" in warm


def test_freezing_is_zero() -> None:
    fence = "table\nvapour-pressures\ncaption = C\ncolumns = temperature: T\nwhere = fuel: propane"
    html = markdown().convert(f"# A\n\n```{fence}\n```")
    assert '<th scope="row">32</th><td>0</td>' in html


def test_a_disagreement_names_all_sides_and_defers() -> None:
    html = markdown().convert("# A\n\n```disagreement\nupright-wait\nabout = Waiting\n```")
    for part in ("30 min", "NAVEDTRA 14250", "from memory", "This site follows", "instructions win"):
        assert part in html


def test_every_disagreement_has_its_place_on_the_page() -> None:
    shown = [
        source.split()[0]
        for kind, source in read(DOCS / "tables/disagree.md").fences
        if kind == "disagreement"
    ]
    assert sorted(shown) == sorted({row.point for row in table(fences.DISAGREEMENTS)})


def test_each_usage_of_a_word_gets_its_plural() -> None:
    bare = re.sub(r"<[^>]+>", "", filled("Old {arrestor}s and {regulator}s.", {}))
    assert bare == "Old flashback arrestors (flame arrestors) and regulators."


@pytest.mark.parametrize("path", sorted(DOCS.rglob("*.md")), ids=lambda path: str(path.relative_to(DOCS)))
def test_no_article_is_wrong_before_the_word_for_an_arrestor(path: object) -> None:
    assert not re.search(r"\ban \{(?:arrestor|regulator|torch|tip|check-valve|cylinder)\}", path.read_text(encoding="utf-8"), re.IGNORECASE)
