"""An answer speaks in the units of its place: its tables and the axes and words of its pictures.

Which units belong to which place is typed here: customary ones in the United States, metric ones elsewhere.
"""

import re

import pytest

from calc import InputError, answer
from calc.declare import Choice, Field, by_rules
from calc.declare.catalogue import calculators

FOREIGN = {
    "us": r"°C|\b(bar|kPa|mm|cm|L/h|L/min|m³/h|kg)\b",
    "iso": r"°F|\b(psi|cfh|ft³/h|lb|oz|ft)\b",
    "uk": r"°F|\b(psi|cfh|ft³/h|oz|ft)\b",
}

BOTH = {("hot-work-zone", "Across"), ("leak-test", "An hour"), ("flame", "In print"), ("heat-colour", "Note")}
"""Columns told in one unit everywhere: drops of steel in mm, leaks in L/h; or quoted as they are printed."""


def example(calculator: str, rules: str) -> dict[str, str]:
    """What the form of a calculator shows when it is opened."""
    texts = {"rules": rules}
    for name, asked in calculators()[calculator].inputs.items():
        if isinstance(asked, Field | Choice) and name != "rules":
            text = by_rules(asked.example or asked.assumed or "", rules)
            if text:
                texts[name] = text
    return texts


@pytest.mark.parametrize("rules", FOREIGN)
@pytest.mark.parametrize("calculator", sorted(calculators()))
def test_a_picture_has_no_axis_in_another_place_s_unit(calculator: str, rules: str) -> None:
    try:
        got = answer(calculator, **example(calculator, rules))
    except InputError:
        pytest.skip("its form opens empty")
    axes = [
        text
        for picture in got["pictures"]
        for text in re.findall(r"<text[^>]*>([^<]*)</text>", picture["svg"])
        if re.search(r", [^ ]+$", text)
    ]
    wrong = [text for text in axes if re.search(FOREIGN[rules], text.rpartition(", ")[2])]
    assert not wrong


@pytest.mark.parametrize("rules", FOREIGN)
@pytest.mark.parametrize("calculator", sorted(calculators()))
def test_no_cell_of_a_table_is_a_figure_in_another_place_s_unit(calculator: str, rules: str) -> None:
    try:
        got = answer(calculator, **example(calculator, rules))
    except InputError:
        pytest.skip("its form opens empty")
    wrong = [
        (table["title"], column, cell)
        for table in got["tables"]
        for row in table["rows"]
        for column, cell in zip(table["columns"], row, strict=True)
        if re.fullmatch(rf"[\d.,/ –-]+(to [\d.,/ ]+)?({FOREIGN[rules]})", cell) and (calculator, column) not in BOTH
    ]
    assert not wrong
