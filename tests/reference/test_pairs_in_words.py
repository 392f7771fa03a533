"""Two numbers that tell one figure, typed in words in a table or on a page, are one figure: 250 °F (121 °C)."""

import csv
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
FACTORS = {
    ("ft", "m"): 0.3048, ("ft", "mm"): 304.8, ("ft", "cm"): 30.48, ("in", "mm"): 25.4, ("in", "cm"): 2.54, ("in", "m"): 0.0254,
    ("in/min", "mm/min"): 25.4, ("lb", "kg"): 0.45359237, ("lb", "g"): 453.59237, ("oz", "g"): 28.349523,
    ("psi", "bar"): 0.068947573, ("psig", "bar"): 0.068947573, ("psi", "kPa"): 6.8947573, ("ft³", "m³"): 0.028316847,
    ("ft³", "L"): 28.316847, ("ft³/h", "L/h"): 28.316847, ("cfh", "L/h"): 28.316847,
}  # fmt: skip
"""What one unit is of the other, by their definitions."""
UNIT = "°F|°C|ft³/h|L/h|ft³|m³|in/min|mm/min|ft|mm|cm|m|in|psig|psi|bar|kPa|lb|kg|cfh|oz|g|L"
NUMBER = r"[−-]?\d[\d,]*(?:\.\d+)?(?:/\d+)?"
PAIR = re.compile(
    rf"(?:(?<![\w/.,])(?P<first_low>{NUMBER}) to )?(?<![\w/.,])(?P<first>{NUMBER}) (?P<first_unit>{UNIT})"
    rf"\s?\((?:(?P<second_low>{NUMBER}) to )?(?P<second>{NUMBER}) (?P<second_unit>{UNIT})\)"
)
FEWEST = 50
"""Pairs that there are at least: a search that finds none would pass."""


def number(text: str) -> float:
    top, _, under = text.replace(",", "").replace("−", "-").partition("/")
    return float(top) / float(under or 1)


def slack(text: str) -> float:
    """How far a printed number may be from what it was rounded from: half of its last digit, a twentieth at most."""
    plain = text.replace(",", "")
    if "/" in plain:  # 1/4 in plate is sold as 6 mm
        return 0.03 * number(text)
    decimals = len(plain.partition(".")[2])
    zeros = 0 if decimals else len(plain) - len(plain.rstrip("0"))
    return min(0.5 * 10.0 ** (zeros - decimals), 0.05 * abs(number(text)))


def told_alike(one: str, one_unit: str, other: str, other_unit: str) -> bool | None:
    """Whether two numbers can be roundings of one figure; None where the units are not of one kind."""
    if (one_unit, other_unit) in (("°C", "°F"), *((b, a) for a, b in FACTORS)):
        one, one_unit, other, other_unit = other, other_unit, one, one_unit
    if (one_unit, other_unit) == ("°F", "°C"):
        middle, wide = (number(one) - 32) / 1.8, slack(one) / 1.8
    elif (one_unit, other_unit) in FACTORS:
        factor = FACTORS[one_unit, other_unit]
        middle, wide = number(one) * factor, slack(one) * factor
    else:
        return None
    return abs(number(other) - middle) <= (wide + slack(other)) * 1.0001


def pairs(text: str) -> Iterator[tuple[str, bool]]:
    for found in PAIR.finditer(text):
        for end in ("", "_low"):
            if found[f"first{end}"] and found[f"second{end}"]:
                alike = told_alike(found[f"first{end}"], found["first_unit"], found[f"second{end}"], found["second_unit"])
                if alike is not None:
                    yield found[0], alike


def texts() -> Iterator[tuple[str, str]]:
    for path in sorted((ROOT / "calc" / "data").glob("*.csv")):
        with path.open(encoding="utf-8") as file:
            for row in csv.reader(file):
                yield from ((path.name, cell) for cell in row)
    for path in sorted((ROOT / "docs").rglob("*.md")):
        yield path.name, path.read_text(encoding="utf-8")


def test_what_is_told_twice_is_one_figure() -> None:
    found = [(where, *pair) for where, text in texts() for pair in pairs(text)]
    assert len(found) >= FEWEST
    assert [(where, said) for where, said, alike in found if not alike] == []


def test_a_wrong_pair_is_noticed() -> None:
    """250 °F is 121.1 °C; 35 ft is 10.67 m; 1/2 in is 12.7 mm."""
    said = "soldered to 250 °F (131 °C), clear 35 ft (10.7 m), not 35 ft (10 m), and 1/2 in (12.7 mm)"
    assert [alike for _, alike in pairs(said)] == [False, True, False, True]


def test_both_columns_of_a_figure_are_one_figure() -> None:
    """A figure in the units of the United States, and what it is called elsewhere, within a twentieth of each other.

    The trade prints 450 °C for 840 °F, which is 448.9 °C.
    """
    with (ROOT / "calc/data/figures-benchbook-2026.csv").open(encoding="utf-8") as file:
        rows = [row for row in csv.DictReader(file) if row["metric"]]
    alone, held = re.compile(rf"^({NUMBER}) ({UNIT})$"), 0
    for row in rows:
        ours, theirs = alone.match(row["us"]), alone.match(row["metric"])
        if not ours or not theirs:
            continue
        held += 1
        if ours[2] == "°F":
            assert (number(ours[1]) - 32) / 1.8 == pytest.approx(number(theirs[1]), abs=1.5), row["id"]
        else:
            assert number(ours[1]) * FACTORS[ours[2], theirs[2]] == pytest.approx(number(theirs[1]), rel=0.05), row["id"]
    assert held >= 20
