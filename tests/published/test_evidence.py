"""Every row of evidence/ comes out."""

import re
from typing import Any

import pytest

from calc import InputError, answer
from calc.values.units import to_si
from tests.published.evidence import Held, Passed, passed_on, rows, table_kind
from tests.published.evidence.charts import chart


@pytest.mark.parametrize("row", rows(), ids=lambda row: row.id)
def test_the_value_from_outside_comes_out(row: Held) -> None:
    if " @ " in row.which or row.which == "rows":
        (_rows if row.which == "rows" else _cell)(row)
        return
    if row.which == "refused":
        with pytest.raises(InputError) as refused:
            answer(row.calculator, **row.texts)
        assert row.expected
        assert refused.value.field == row.result
        assert row.expected in refused.value.message
        return
    if row.which.endswith("caution"):
        said = " ".join(c["text"] for c in answer(row.calculator, **row.texts)["cautions"])
        assert (row.expected in said) == (row.which == "caution")
        return
    if row.which.startswith("chart "):
        _drawn(row)
        return
    if row.which == "picture":
        pictures = [p for p in answer(row.calculator, **row.texts)["pictures"] if p["title"].startswith(row.result)]
        assert row.expected
        assert any(row.expected in picture["sentence"] for picture in pictures)
        return
    units = {row.result: row.unit} if row.unit and row.which in ("value", "low", "high") else {}
    results = answer(row.calculator, units=units, **row.texts)["results"]
    if row.which == "none":
        assert row.result not in results
    elif row.which.endswith("basis"):
        assert row.expected
        assert (row.expected in results[row.result]["basis"]) == (row.which == "basis")
    elif row.which == "says":
        assert row.expected
        assert row.expected in results[row.result]["text"]
    elif row.which in ("text", "rounding"):
        assert results[row.result]["text"] == row.expected
    else:
        got, number = results[row.result][row.which], row.number()
        assert got is not None, f"no {row.which}"
        assert abs(got - number) <= row.margin(number) + 1e-12, f"{got} instead of {number} {row.unit}"


def _table(row: Held) -> dict[str, Any]:
    """The table beside the answer whose title begins with `result`."""
    tables = [t for t in answer(row.calculator, **row.texts)["tables"] if t["title"].startswith(row.result)]
    assert len(tables) == 1, f"{len(tables)} tables begin with {row.result!r}"
    return dict(tables[0])


def _drawn(row: Held) -> None:
    """What can be read off a chart: where a mark stands, where a curve begins and ends, how high it is."""
    asked, _, label = row.which.removeprefix("chart ").partition(": ")
    drawn = next(p for p in answer(row.calculator, **row.texts)["pictures"] if p["title"].startswith(row.result))
    read = chart(drawn["svg"])
    if asked in ("across", "up"):
        got = read.marks[label][asked == "up"]
    elif asked in ("from", "to"):
        got = read.curves[label][-1 if asked == "to" else 0][0]
    else:
        got = read.height(label, float(asked.removeprefix("at ")))
    assert got is not None
    assert abs(got - row.number()) <= row.margin(row.number()), f"{got} instead of {row.number()}"


def _rows(row: Held) -> None:
    """Which rows the table has, by their first cells in order."""
    assert [line[0] for line in _table(row)["rows"]] == row.expected.split(" | ")


def _cell(row: Held) -> None:
    """A cell of the table beside the answer: its row begins with the first cell."""
    column, _, first = row.which.partition(" @ ")
    table = _table(row)
    lines = [line for line in table["rows"] if line[0] == first]
    assert lines, f"no row begins with {first!r}"
    place = table["columns"].index(column)
    if row.expected.startswith("="):
        number, found = row.number(), re.search(r"-?\d[\d.]*", lines[0][place].replace("−", "-"))
        assert found, lines[0][place]
        assert abs(float(found[0]) - number) <= row.margin(number), f"{lines[0][place]} instead of {number}"
    elif row.expected.startswith("…"):
        assert row.expected[1:]
        assert any(row.expected[1:] in line[place] for line in lines)
    else:
        assert row.expected in {line[place] for line in lines}


@pytest.mark.parametrize(
    "passed", passed_on(), ids=lambda each: f"{each.calculator} {each.result} from {each.other}"
)
def test_a_figure_passed_on_is_the_same_figure(passed: Passed) -> None:
    ours, theirs = answer(passed.calculator, **passed.texts), answer(passed.other, **passed.other_texts)
    if passed.result not in ours["results"]:
        tables = [
            [t for t in got["tables"] if table_kind(t["title"]) == passed.result] for got in (ours, theirs)
        ]
        assert len(tables[0]) == 1
        assert tables[0][0]["rows"] == tables[1][0]["rows"]
        return
    one, other = ours["results"][passed.result], theirs["results"][passed.other_result]
    if one["value"] is None:
        assert one["text"] == other["text"]
    for end in ("value", "low", "high"):
        if one[end] is None:
            assert other[end] is None
        else:
            assert to_si(one[end], one["unit"]) == pytest.approx(to_si(other[end], other["unit"]), rel=1e-9)


def test_table_titles_lose_the_numbers_of_the_reader() -> None:
    assert table_kind("Drops of molten steel at 12 m/s from 3 ft") == "Drops of molten steel at # m/s"
    assert table_kind("100 joints of 1/2 in, in print and by volume") == "# joints of # in"
