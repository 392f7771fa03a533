"""The coefficients of the thermodynamic data, cell by cell, as NASA/TP-2002-211556 prints them."""

import csv
from pathlib import Path

import pytest

from calc.data.tables import table

ROWS = table("thermo-nasa-2002")
ELEMENTS = ("C", "H", "O", "N", "Ar")
COLUMNS = (*(f"a{n}" for n in range(1, 8)), "b1", "b2")
POINTS = Path(__file__).parent / "points" / "nasa9_gases.csv"
PUBLISHED = {row["species"]: row for row in csv.DictReader(POINTS.read_text(encoding="utf-8").splitlines())}
SPECIES = {
    "Ar", "C", "C(gr)", "C2", "C2H", "C2H2", "C3", "C3H6", "C3H8", "C4H2", "CH3", "CH4", "CN", "CO", "CO2", "H", "H2",
    "H2O", "HCN", "HNC", "HO2", "N", "N2", "NO", "O", "O2", "OH", "propadiene", "propyne",
}  # fmt: skip
"""What burning gases of carbon and hydrogen hold above 200 K, their fuels, and graphite."""
GRAPHITE = {
    (300, 600): (
        1.132856760e5, -1.980421677e3, 1.365384188e1, -4.636096440e-2, 1.021333011e-4, -1.082893179e-7,
        4.472258860e-11, 8.943859760e3, -7.295824740e1,
    ),
    (600, 2000): (
        3.356004410e5, -2.596528368e3, 6.948841910e0, -3.484836090e-3, 1.844192445e-6, -5.055205960e-10,
        5.750639010e-14, 1.398412456e4, -4.477183040e1,
    ),
    (2000, 6000): (
        2.023105106e5, -1.138235908e3, 3.700279500e0, -1.833807727e-4, 6.343683250e-8, -7.068589480e-12,
        3.335435980e-16, 5.848134850e3, -2.350925275e1,
    ),
}  # fmt: skip
"""C(gr) of the same report, n 4/83, from memory."""


@pytest.mark.parametrize("species", sorted({row.species for row in ROWS} - {"C(gr)"}))
def test_a_gas_has_its_published_coefficients(species: str) -> None:
    published = PUBLISHED[species]
    cold, hot = sorted((row for row in ROWS if row.species == species), key=lambda row: row.coldest)
    assert ((cold.coldest, cold.hottest), (hot.coldest, hot.hottest)) == ((200, 1000), (1000, 6000))
    for row, side in ((cold, "cold"), (hot, "hot")):
        for number, column in enumerate(COLUMNS, start=1):
            assert getattr(row, column) == pytest.approx(float(published[f"{side}{number}"]), rel=1e-9), column
        assert [getattr(row, e) for e in ELEMENTS] == [float(published[e]) for e in ELEMENTS]


def test_graphite_has_its_published_coefficients() -> None:
    rows = {(row.coldest, row.hottest): row for row in ROWS if row.species == "C(gr)"}
    assert rows.keys() == GRAPHITE.keys()
    for span, numbers in GRAPHITE.items():
        assert [getattr(rows[span], column) for column in COLUMNS] == pytest.approx(numbers, rel=1e-9)
        assert [getattr(rows[span], e) for e in ELEMENTS] == [1, 0, 0, 0, 0]


def test_no_species_of_the_flame_is_left_out() -> None:
    assert {row.species for row in ROWS} == SPECIES
