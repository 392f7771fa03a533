"""The page of rows from memory or practice is made from the tables and leaves none out."""

import csv
import re
from html import unescape
from importlib.resources import files

import pytest

from calc.data.tables import table
from site_overrides.build.fences import table_html
from site_overrides.build.unread import OWN, SAFETY, lines, names, told, unread_html

SHOWN = unread_html(lambda text: text, table_html)


def graded(name: str) -> list[list[str]]:
    """Rows from memory or practice, counted by another way than the page does."""
    text = files("calc").joinpath(f"data/{name}.csv").read_text(encoding="utf-8")
    return [
        row
        for row in csv.reader(text.splitlines())
        if row and row[-1] in ("memory", "practice") and row[2:3] != ["page"]
    ]


def test_every_table_stands_once_and_those_of_safety_come_first() -> None:
    found = {path.name.removesuffix(".csv") for path in files("calc").joinpath("data").iterdir()
             if path.name.endswith(".csv")}  # fmt: skip
    assert set(names()) == found
    assert len(names()) == len(found)
    assert names()[: len(set(SAFETY) & found)] == [name for name in SAFETY if name in found]
    assert not set(OWN) & set(SAFETY)


def test_every_row_of_the_safety_tables_is_on_the_page() -> None:
    wanted = sum(len(graded(name)) for name in SAFETY if name in names())
    rows = re.findall(r"<tr>.*?</tr>", SHOWN.partition('id="rest"')[0])
    assert len([row for row in rows if "<td>" in row]) == wanted > 100


@pytest.mark.parametrize("name", [name for name in SAFETY if name in names()])
def test_what_a_row_says_stands_there_whole(name: str) -> None:
    plain = unescape(SHOWN)
    for row, line in zip(table(name), lines(name), strict=True):
        on_page = told(line)[1] in plain
        if row.how_sure in ("memory", "practice") and line.get("kind") != "page":
            assert on_page, line


def test_the_others_are_counted() -> None:
    rest = SHOWN.partition('id="rest"')[2]
    cells = [re.findall(r">([^<]*)</t[hd]>", row) for row in re.findall(r"<tr>.*?</tr>", rest)[1:]]
    counted = sum(int(memory) + int(practice) for _, memory, practice, *_ in cells)
    assert counted == sum(len(graded(name)) for name in names() if name not in SAFETY) > 500
