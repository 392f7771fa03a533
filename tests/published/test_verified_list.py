"""Every row of two lists of facts that were held against public texts, against what is said here.

`verified_rows.csv` names the rows of the first list 1-01 to 1-57, of the second 2-001 to 2-152. Figures and
words are typed from the publication named in the row, not from our tables. `way` says where it is met: in an
`answer`, in a `refusal`, in a `table` that pages print, or in `none`, with the reason. `quality` is how the text
was met at best; a row for which no public text was found must still say that it is from memory or practice.
"""

import csv
from pathlib import Path
from typing import NamedTuple

import pytest

from calc import InputError, answer
from calc.values.units import to_si
from tests.published.test_verified_rows import GRADES, rows

USUAL = {
    "ventilation": "place=indoors; room=12000 ft^3; ceiling=12 ft; welders=6; hood_distance=9 in; rules=us",
    "eye-shade": "process=welding; thickness=1 mm; rules=us",
    "fire-watch": "place=workshop",
    "storage-check": "place=indoors; oxygen=488 ft^3; fuel_gas=260 ft^3; apart=10 ft",
    "fuel-compare": "mass=10 kg; cold=20 degC; hot=200 degC",
    "may-i-heat": "process=welding; part=open-sheet; duty=none; metal=low-carbon-steel; coating=none; place=shop; "
    "around=none; behind=movable; people=protected; air=hood; rules=us",
    "braze-joint": "form=sleeve; thickness=0.045 in; diameter=7/8 in; cold_clearance=0.005 in; rules=us",
}
"""What is typed into a calculator beside what a row types."""


class Checked(NamedTuple):
    """A line of the list."""

    row: str
    way: str
    what: str
    says: str
    quality: str
    source: str

    def name(self) -> str:
        return self.what.partition(": ")[0]

    def cells(self) -> dict[str, str]:
        """Cells that find our row, or what is typed into a calculator."""
        return dict(pairs(self.what.partition(":")[2]))

    def texts(self) -> dict[str, str]:
        return dict(pairs(USUAL.get(self.calculator(), ""))) | self.cells()

    def calculator(self) -> str:
        return self.what.partition(":")[0]


def pairs(text: str) -> list[tuple[str, str]]:
    parts = [part.partition("=") for part in text.split("; ") if part.strip()]
    return [(name.strip(), value.strip()) for name, _, value in parts]


def listed() -> list[Checked]:
    with (Path(__file__).parent / "verified_rows.csv").open(encoding="utf-8", newline="") as file:
        return [Checked(**line) for line in csv.DictReader(file)]


LISTED = listed()
HELD = [each for each in LISTED if each.way != "none"]


def named(each: Checked) -> str:
    return f"{each.row} {each.what} [{each.source}; {each.quality}]"


@pytest.mark.parametrize("each", [h for h in HELD if h.way == "table"], ids=named)
def test_a_table_says_what_its_text_says(each: Checked) -> None:
    where = each.cells()
    found = [
        row for row in rows(each.calculator()) if all(row[name] == cell for name, cell in where.items())
    ]
    assert len(found) == 1, f"{len(found)} rows"
    for name, value in pairs(each.says):
        if value.startswith("~"):
            assert value[1:] in found[0][name]
        else:
            assert found[0][name] == value
    if each.quality:
        assert GRADES.index(found[0]["how_sure"]) >= GRADES.index(each.quality), found[0]["how_sure"]


@pytest.mark.parametrize("each", [h for h in HELD if h.way == "answer"], ids=named)
def test_an_answer_says_what_its_text_says(each: Checked) -> None:
    got = answer(each.calculator(), **each.texts())
    beside = "\n".join(" | ".join(line) for table in got["tables"] for line in table["rows"])
    for part in each.says.split("; "):
        name, tilde, said = part.partition("~")
        if not tilde:
            name, _, figure = part.partition("=")
            number, unit = figure.split(" ", 1)
            shown = got["results"][name]
            free = shown["unit"] in ("ft^3", "cfh")
            assert to_si(shown["value"], shown["unit"], free_gas=free) == pytest.approx(
                to_si(float(number), unit, free_gas=free), rel=1e-6
            )
            continue
        text = (
            beside
            if name.rstrip("!") == "beside"
            else got["results"].get(name.rstrip("!"), {}).get("text", "")
        )
        assert (said in text) != name.endswith("!"), f"{part}: {text[:200]}"


@pytest.mark.parametrize("each", [h for h in HELD if h.way == "refusal"], ids=named)
def test_what_a_text_forbids_is_refused(each: Checked) -> None:
    with pytest.raises(InputError, match=each.says):
        answer(each.calculator(), **each.texts())


def test_every_row_of_the_two_lists_is_held_or_has_its_reason() -> None:
    """57 rows in the first list and 152 in the second."""
    every = [f"1-{n:02d}" for n in range(1, 58)] + [f"2-{n:03d}" for n in range(1, 153)]
    held, left = {h.row for h in HELD}, [each.row for each in LISTED if each.way == "none"]
    assert not held & set(left)
    assert len(left) == len(set(left))
    assert sorted(held | set(left)) == sorted(every)
    assert len(every) == 209
    for each in LISTED:
        assert each.says
        assert each.source
        assert each.way in ("table", "answer", "refusal", "none")
        assert each.quality in ("", *GRADES)
