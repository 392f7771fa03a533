"""No figure for the air that people breathe lies above the exposure limit of that gas."""

from typing import NamedTuple

import pytest

from calc import answer
from calc.data.tables import table

LEAST_PPM = {
    "carbon monoxide": 35, "nitrogen dioxide": 0.2, "nitric oxide": 25, "hydrogen fluoride": 3, "ozone": 0.1,
    "propane": 1000, "propyne": 1000, "methylacetylene-propadiene": 1000, "liquefied petroleum gas": 1000,
    "acetone": 1000, "acetylene": 2500,
}  # fmt: skip
"""Lowest limit in print, ppm: 29 CFR 1910.1000 tables Z-1 and Z-2, read in a copy; carbon monoxide NIOSH 1972,
read; nitrogen dioxide ACGIH and acetylene NIOSH, read in pages that repeat them."""
PPM = {"ppm": 1.0, "%": 1e4}


class Told(NamedTuple):
    """A made-up row."""

    topic: str
    words: str
    number: float
    unit: str


def too_high(rows: tuple[object, ...]) -> list[str]:
    """Gases that some rows name with more than may be breathed."""
    return [
        gas
        for row in rows
        for gas, most in LEAST_PPM.items()
        if gas in f"{row.topic.replace('-', ' ')} {row.words}".lower()  # type: ignore[attr-defined]
        and row.unit in PPM  # type: ignore[attr-defined]
        and row.number * PPM[row.unit] > most  # type: ignore[attr-defined]
    ]


def test_no_air_limit_is_above_what_may_be_breathed() -> None:
    assert too_high(table("air-limits")) == []


def test_an_explosion_figure_among_the_air_limits_would_be_found() -> None:
    """2.5 % of carbon monoxide, 30 CFR 75.321(b)(1), is set against explosions and is 700 times the NIOSH limit."""
    assert too_high((Told("mine-carbon-monoxide", "most in the air", 2.5, "%"),)) == ["carbon monoxide"]
    assert too_high((Told("mine", "acetylene in the air", 0.4, "%"),)) == ["acetylene"]
    assert too_high((Told("mine", "propane in the air", 1000, "ppm"),)) == []


def test_every_gas_with_an_exposure_limit_in_parts_is_held() -> None:
    named = {row.name.lower() for row in table("exposure-limits") if row.unit == "ppm"}
    assert named == set(LEAST_PPM)
    for row in table("exposure-limits"):
        if row.unit == "ppm":
            assert row.number >= LEAST_PPM[row.name.lower()]


@pytest.mark.parametrize(
    ("gas", "percent"),
    [
        pytest.param("acetylene", 0.4, id="30 CFR 75.321(b)(4), read-m"),
        pytest.param("propane", 0.4, id="30 CFR 75.321(b)(5), read-m"),
        pytest.param("mps", 0.3, id="30 CFR 75.321(b)(6), read-m"),
        pytest.param("hydrogen", 0.8, id="30 CFR 75.321(b)(2), read-m"),
        pytest.param("methane", 1.0, id="30 CFR 77.1112(b), read-m"),
    ],
)
def test_explosion_figures_say_what_they_are(gas: str, percent: float) -> None:
    (row,) = (row for row in table("explosion-limits") if row.gas == gas)
    assert row.number * 100 == pytest.approx(percent)
    assert "against explosions and not for breathing" in row.words
    assert row.how_sure == "read-m"


def test_no_poison_stands_among_the_explosion_figures() -> None:
    assert {row.gas for row in table("explosion-limits")} == {
        "acetylene",
        "propane",
        "mps",
        "hydrogen",
        "methane",
    }


def test_the_page_on_air_keeps_the_two_apart() -> None:
    got = answer("ventilation", place="indoors", room="300 m^3", ceiling="16 ft", welders="1")
    titles = [shown["title"] for shown in got["tables"]]
    assert "Shares of gas in the air set against explosions, not for breathing" in titles
    assert "carbon monoxide" not in str(got["tables"][titles.index("Figures in print")]).lower()
    assert "not make the air fit to breathe" in got["results"]["leak_air_quarter"]["basis"]
