"""Rows as their publications print them; each id says where, and how sure we are."""

import tomllib
from importlib.resources import files
from itertools import pairwise
from typing import Any

import pytest

from calc.data.tables import HOW_SURE, source_key, sources, table

INCH = 0.0254
PSI = 6894.757293168
BAR = 1e5


def row_of(name: str, **wanted: object) -> Any:
    """The one row of a table that says what is wanted."""
    found = [r for r in table(name) if all(getattr(r, c) == v for c, v in wanted.items())]
    assert len(found) == 1, f"{len(found)} rows of {name} say {wanted}"
    return found[0]


def names() -> list[str]:
    folder = files("calc").joinpath("data")
    return sorted(f.name.removesuffix(".csv") for f in folder.iterdir() if f.name.endswith(".csv"))


@pytest.mark.parametrize("name", names())
def test_every_table_reads_and_every_row_is_graded_and_sourced(name: str) -> None:
    rows = table(name)
    assert rows
    for row in rows:
        assert row.how_sure in HOW_SURE
        assert row.source or row.how_sure in ("memory", "practice")
        if row.source:
            assert source_key(row.source) in sources()


def test_publications_stand_in_alphabetical_order_and_say_who_wrote_them() -> None:
    text = files("calc").joinpath("data/sources.toml").read_text(encoding="utf-8")
    keys = list(tomllib.loads(text))
    assert keys == sorted(keys)
    for key, publication in sources().items():
        assert {"short", "title", "author"} <= set(publication), key
        assert set(publication) <= {"short", "title", "author", "year", "note", "met"}, key


@pytest.mark.parametrize(
    ("thickness", "drill", "orifice", "oxygen", "acetylene"),
    [
        pytest.param("1/16 in", "68", 0.0310, 1, 1, id="navy14119-table-9-1-read-1-16"),
        pytest.param("1/8 in", "56", 0.0465, 3, 3, id="navy14119-table-9-1-read-1-8"),
        pytest.param("1/4 in", "51", 0.0670, 5, 5, id="navy14119-table-9-1-read-1-4"),
        pytest.param("1/2 in", "40", 0.0980, 7, 7, id="navy14119-table-9-1-read-1-2"),
        pytest.param("5/8 in", "35", 0.1100, 7.5, 7.5, id="navy14119-table-9-1-read-5-8"),
    ],
)
def test_brazing_rows(thickness: str, drill: str, orifice: float, oxygen: float, acetylene: float) -> None:
    row = row_of("brazing-orifices-navy", printed=thickness)
    assert row.drill == drill
    assert row.orifice == pytest.approx(orifice * INCH, abs=1e-9)
    assert row.oxygen_gauge == pytest.approx(oxygen * PSI, rel=1e-9)
    assert row.acetylene_gauge == pytest.approx(acetylene * PSI, rel=1e-9)


@pytest.mark.parametrize("name", ["brazing-orifices-navy", "welding-orifices-faa"])
def test_printed_orifices_are_the_drills_printed_beside_them(name: str) -> None:
    drills = {row.drill: row.diameter for row in table("drills-asme-b94")}
    for row in table(name):
        assert row.orifice == pytest.approx(drills[row.drill], abs=1e-9), row.drill


@pytest.mark.parametrize(
    ("thickness", "slow", "fast", "technique"),
    [
        pytest.param(0.8, 127, 152, "leftward", id="carvill-1993-p207-read-0.8"),
        pytest.param(3.0, 90, 100, "leftward", id="carvill-1993-p207-read-3.0"),
        pytest.param(8.0, 35, 40, "rightward", id="carvill-1993-p207-read-pairing-inferred-8.0"),
    ],
)
def test_travel_rows(thickness: float, slow: float, fast: float, technique: str) -> None:
    row = next(r for r in table("welding-carvill-1993") if r.thickness == pytest.approx(thickness / 1000))
    assert (row.slow * 60000, row.fast * 60000) == pytest.approx((slow, fast))
    assert row.technique == technique


@pytest.mark.parametrize(
    ("rod", "megapascal", "elongation"),
    [
        pytest.param("R60", 413.7, 0.20, id="aws-a5-2-1992-table-1-read-R60"),
        pytest.param("R65", 448.2, 0.16, id="aws-a5-2-1992-table-1-read-R65"),
        pytest.param("R100", 689.5, 0.14, id="aws-a5-2-1992-table-1-read-R100"),
    ],
)
def test_rod_strengths(rod: str, megapascal: float, elongation: float) -> None:
    row = row_of("rods-aws-a5-2", rod=rod)
    assert row.tensile / 1e6 == pytest.approx(megapascal, abs=0.1)
    assert row.elongation == pytest.approx(elongation)


def test_rod_45_has_no_strength_specified() -> None:
    assert row_of("rods-aws-a5-2", rod="R45").tensile is None


def test_copper_tube_type_l_three_quarter_astm_b88_read() -> None:
    row = row_of("copper-tubes-astm-b88", size="3/4 in")
    assert row.outside / INCH == pytest.approx(0.875, abs=1e-9)
    assert row.wall_l / INCH == pytest.approx(0.045, abs=1e-9)
    assert (row.outside - 2 * row.wall_l) / INCH == pytest.approx(0.785, abs=1e-9)


def test_copper_tube_is_an_eighth_over_its_name_astm_b88_read() -> None:
    for row in table("copper-tubes-astm-b88"):
        whole, _, part = row.size.removesuffix(" in").rpartition(" ")
        over, _, under = part.partition("/")
        named = float(whole or 0) + float(over) / float(under or 1)
        assert row.outside / INCH == pytest.approx(named + 0.125, abs=1e-9), row.size


def test_neutral_band_army_od0017_read() -> None:
    row = row_of("flame-bands", flame="neutral", standing="followed")
    assert (row.low, row.high) == (1.04, 1.14)


def test_flame_bands_that_we_follow_do_not_overlap() -> None:
    bands = [row for row in table("flame-bands") if row.standing == "followed"]
    for leaner, richer in pairwise(bands):
        assert leaner.low < leaner.high <= richer.low, richer.flame


@pytest.mark.parametrize(
    ("name", "wanted", "expected"),
    [
        pytest.param(
            "acetylene-limits",
            {"topic": "gauge", "rules": "us"},
            (15, "psi"),
            id="cfr1910-253-(a)(2)-read-gauge",
        ),
        pytest.param(
            "acetylene-limits",
            {"topic": "absolute", "rules": "us"},
            (30, "psi"),
            id="cfr1910-253-(a)(2)-read-absolute",
        ),
        pytest.param(
            "acetylene-limits",
            {"topic": "arrestor-from", "rules": "uk"},
            (0.62, "bar"),
            id="uk-asr-2014-read-m",
        ),
        pytest.param(
            "acetylene-limits",
            {"topic": "fusible-plug"},
            (212, "degF"),
            id="army-od0017-read-fusible-plug",
        ),
        pytest.param(
            "storage",
            {"topic": "separation", "standing": "followed"},
            (20, "ft"),
            id="cfr1910-253-(b)(4)(iii)-read",
        ),
        pytest.param(
            "storage", {"topic": "separation", "rules": "uk"}, (3, "m"), id="twi-jk-27-read-m-separation"
        ),
        pytest.param(
            "storage", {"topic": "barrier-height"}, (5, "ft"), id="cfr1910-253-(b)(4)(iii)-read-h"
        ),
        pytest.param(
            "storage",
            {"topic": "barrier-rating"},
            (30, "min"),
            id="cfr1910-253-(b)(4)(iii)-read-rating",
        ),
        pytest.param(
            "storage",
            {"topic": "indoor-fuel-gas", "standing": "followed"},
            (2000, "ft^3"),
            id="cfr1910-253-(b)(3)-read",
        ),
        pytest.param("storage", {"topic": "in-storage-after"}, (24, "h"), id="osha-letter-1998-12-31-read"),
        pytest.param(
            "mps-facts",
            {"topic": "full-gauge", "source": "army-tc9-237-1993"},
            (94, "psi"),
            id="army-tc9-237-read-mps-full",
        ),
        pytest.param(
            "cylinder-temperatures",
            {"topic": "hottest", "rules": "us"},
            (125, "degF"),
            id="memory-hottest-us",
        ),
        pytest.param(
            "cylinder-temperatures",
            {"topic": "hottest", "rules": "iso"},
            (50, "degC"),
            id="memory-hottest-iso",
        ),
    ],
)
def test_rule_rows(name: str, wanted: dict[str, str], expected: tuple[float, str]) -> None:
    row = row_of(name, **wanted)
    assert (row.number, row.unit) == expected


@pytest.mark.parametrize(
    ("part", "cubic_feet_an_hour"),
    [
        pytest.param("one-seventh", 30, id="manly-1916-read-one-seventh-of-210"),
        pytest.param("intermittent", 21, id="draw-note-read-m-one-tenth-of-210"),
        pytest.param("continuous", 14, id="cga-g1-memory-one-fifteenth-of-210"),
    ],
)
def test_withdrawal_from_210_cubic_feet(part: str, cubic_feet_an_hour: float) -> None:
    row = row_of("withdrawal-limits", topic=part)
    assert 210 / (row.emptied_in / 3600) == pytest.approx(cubic_feet_an_hour)


def test_valve_opening_of_acetylene_cfr1910_253_read() -> None:
    row = row_of("valve-openings", gas="acetylene", rules="us", standing="followed")
    assert (row.preferred_turns, row.most_turns) == (0.75, 1.5)


@pytest.mark.parametrize(
    ("process", "level", "upward", "downward"),
    [
        pytest.param("soldering", 2, 2, 10, id="dguv-100-500-annex-2-read-soldering"),
        pytest.param("welding", 7.5, 4, 20, id="dguv-100-500-annex-2-read-welding"),
        pytest.param("cutting", 10, 4, 20, id="dguv-100-500-annex-2-read-cutting"),
    ],
)
def test_spark_reach(process: str, level: float, upward: float, downward: float) -> None:
    row = row_of("spark-reach-dguv", process=process)
    assert (row.level, row.upward, row.downward) == (level, upward, downward)


def test_spark_reach_grows_half_a_metre_a_metre_above_three_dguv_read() -> None:
    row = row_of("spark-reach-dguv", process="cutting")
    assert row.level + row.widening * (6 - row.height) == pytest.approx(11.5)
    assert row.opposite_share == 0.5


@pytest.mark.parametrize(
    ("fuel", "fahrenheit", "psi", "tolerance"),
    [
        pytest.param("propane", 0, 24, 0.5, id="coolprop-8-computed-propane-0F"),
        pytest.param("propane", 32, 54, 0.5, id="coolprop-8-computed-propane-32F"),
        pytest.param("propane", 70, 110, 0.5, id="coolprop-8-computed-propane-70F"),
        pytest.param("propane", 100, 174, 0.5, id="coolprop-8-computed-propane-100F"),
        pytest.param("propylene", 32, 70, 0.5, id="coolprop-8-computed-propylene-32F"),
        pytest.param("propylene", 70, 137, 0.5, id="coolprop-8-computed-propylene-70F"),
        pytest.param("propylene", 100, 213, 0.5, id="coolprop-8-computed-propylene-100F"),
    ],
)
def test_vapour_pressure_rows(fuel: str, fahrenheit: float, psi: float, tolerance: float) -> None:
    kelvin = (fahrenheit - 32) / 1.8 + 273.15
    row = next(
        r
        for r in table("vapour-pressures")
        if r.fuel == fuel and r.temperature == pytest.approx(kelvin, abs=1e-6)
    )
    assert row.gauge / PSI == pytest.approx(psi, abs=tolerance)
    assert row.pressure / BAR == pytest.approx(row.gauge / BAR + 1.01325, abs=0.02)
