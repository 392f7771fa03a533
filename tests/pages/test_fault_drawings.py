"""Faults of a bead and sparks are drawn whole, named, and as long as printed."""

import math
import re
from xml.etree import ElementTree

import pytest

from calc.data.tables import table
from calc.show.drawings import faults, sparks
from tests.pages.test_drawings import (
    SVG,
    test_a_drawing_has_no_color_of_its_own,
    test_a_drawing_has_title_description_and_sentence,
    test_text_is_large_enough_and_inside,
)

PICTURES = {name: faults.drawing(name) for name in ("all", *faults.FAULTS)} | {"sparks": sparks.drawing()}


@pytest.mark.parametrize("picture", PICTURES.values(), ids=PICTURES)
def test_it_is_a_whole_drawing(picture: object) -> None:
    test_a_drawing_has_title_description_and_sentence(picture)
    test_a_drawing_has_no_color_of_its_own(picture)
    test_text_is_large_enough_and_inside(picture)


def test_every_fault_of_the_table_is_drawn_under_its_name() -> None:
    assert {row.fault: row.name for row in table("bead-faults")} == faults.FAULTS
    said = {text.text for text in ElementTree.fromstring(faults.drawing().svg).iter(f"{SVG}text")}
    assert said == set(faults.FAULTS.values())


def test_no_two_faults_are_drawn_alike() -> None:
    drawn = {re.sub(r"<(title|desc)>.*?</\1>", "", faults.drawing(name).svg) for name in faults.FAULTS}
    assert len(drawn) == len(faults.FAULTS)


def test_a_fault_that_nobody_named_is_refused() -> None:
    with pytest.raises(ValueError, match="no drawing"):
        faults.drawing("rhubarb")


def reaches() -> list[float]:
    """Longest line of each stream, from the top down."""
    rows: dict[int, float] = {}
    for ends in re.findall(
        r'<line x1="38" y1="([\d.]+)" x2="([\d.]+)" y2="([\d.]+)"', sparks.drawing().svg
    ):
        y1, x2, y2 = map(float, ends)
        rows[round(y1)] = max(rows.get(round(y1), 0.0), math.hypot(x2 - 38, y2 - y1))
    return [rows[y] for y in sorted(rows)]


def test_streams_of_sparks_stand_in_the_printed_order() -> None:
    """65 in for wrought iron, 50 for stainless, 25 for gray iron: NAVEDTRA 14345, read in a copy."""
    low_carbon, hard, cast, stainless = reaches()
    assert low_carbon > hard > stainless > cast > 0
    assert cast / low_carbon == pytest.approx(25 / 65, abs=0.05)
