"""What the pages type of sources and hazards, held to the tables; the browser's Python has no pages."""

import re
from pathlib import Path

import pytest

from calc.data.tables import graded
from calc.job_sheet.hazards import SAID_BY_STEPS
from site_overrides.build.check_pages import DOCS


@pytest.mark.parametrize("path", sorted(DOCS.rglob("*.md")), ids=lambda path: path.relative_to(DOCS).as_posix())
def test_the_grade_typed_on_a_page_is_the_one_that_is_shown(path: Path) -> None:
    typed = re.findall(r'source = "([^"]+)"\nhow_sure = "([^"]+)"', path.read_text(encoding="utf-8"))
    assert not [(source, grade) for source, grade in typed if graded(source, grade) != grade]


@pytest.mark.parametrize(("name", "page"), SAID_BY_STEPS.items())
def test_a_hazard_left_to_a_procedure_stands_before_a_step_of_it(name: str, page: str) -> None:
    assert f'"{name}"' in (DOCS / f"{page}.md").read_text(encoding="utf-8")
