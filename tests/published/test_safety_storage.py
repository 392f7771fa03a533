"""Rows of storage of the safety rules, through the calculators."""

import pytest

from calc import answer
from tests.published.rows import Row, case, shown

EXACT = 1e-9
AIR = {"place": "indoors", "room": "300 m^3", "ceiling": "16 ft", "welders": "1"}

STORE = {
    "place": "indoors",
    "oxygen": "244 ft^3",
    "fuel_gas": "130 ft^3",
    "apart": "30 ft",
    "burnable": "30 ft",
}

STORAGE = [
    case("29 CFR 1910.253(b)(4)(iii)", "read", "storage-check", "separation", 20, "ft", EXACT, **STORE),
    case("29 CFR 1910.253(b)(4)(iii), as printed in metric", "read", "storage-check", "separation", 6.1, "m", 1e-3, **STORE),
    case("29 CFR 1910.253(b)(4)(iii)", "read", "storage-check", "wall_height", 5, "ft", EXACT, **STORE),
    case("29 CFR 1910.253(b)(4)(iii), as printed in metric", "read", "storage-check", "wall_height", 1.5, "m", 0.02, **STORE),
    case("29 CFR 1910.253(b)(4)(iii)", "read", "storage-check", "wall_rating", 30, "min", EXACT, **STORE),
    case("29 CFR 1910.253(b)(2)(ii)", "read", "storage-check", "from_combustibles", 20, "ft", EXACT, **STORE),
    case("29 CFR 1910.253(b)(3)", "read", "storage-check", "fuel_limit", 2000, "ft^3", EXACT, **STORE),
    case("29 CFR 1910.253(b)(3), as printed in metric", "read", "storage-check", "fuel_limit", 56 * 288.15 / 294.261, "m^3", 0.015, **STORE),
    case("29 CFR 1910.253(b)(3)", "read", "storage-check", "lpg_limit", 300, "lb", EXACT, **STORE),
    case("29 CFR 1910.253(b)(3), as printed in metric", "read", "storage-check", "lpg_limit", 135.9, "kg", 2e-3, **STORE),
    case("29 CFR 1910.253(b)(3)", "read", "storage-check", "share_of_limit", 100, "%", EXACT, **STORE | {"fuel_gas": "2000 ft^3"}),
    case("29 CFR 1910.253(b)(3)", "read", "storage-check", "share_of_limit", 100, "%", EXACT, **STORE | {"fuel_gas": "0 ft^3", "lpg": "300 lb"}),
]  # fmt: skip


@pytest.mark.parametrize("row", STORAGE)
def test_the_storage_figure_comes_out(row: Row) -> None:
    assert shown(row) == pytest.approx(row.figure, rel=row.within)


@pytest.mark.parametrize(
    ("given", "says"),
    [
        pytest.param({"apart": "19.9 ft"}, "oxygen stands too near", id="(b)(4)(iii), read: 19.9 ft"),
        pytest.param({"apart": "20 ft"}, "nothing by the figures", id="(b)(4)(iii), read: 20 ft"),
        pytest.param({"apart": "0 ft", "wall": "5 ft", "wall_holds": "30 min"}, "nothing by the figures", id="(b)(4)(iii), read: the wall"),
        pytest.param({"apart": "0 ft", "wall": "4.9 ft", "wall_holds": "30 min"}, "oxygen stands too near", id="(b)(4)(iii), read: low wall"),
        pytest.param({"apart": "0 ft", "wall": "5 ft", "wall_holds": "29 min"}, "oxygen stands too near", id="(b)(4)(iii), read: weak wall"),
        pytest.param({"burnable": "19 ft"}, "burn easily stand too near", id="(b)(2)(ii), read: 19 ft"),
        pytest.param({"fuel_gas": "2001 ft^3"}, "too much fuel gas", id="(b)(3), read: 2,001 ft3"),
        pytest.param({"fuel_gas": "2000 ft^3"}, "nothing by the figures", id="(b)(3), read: 2,000 ft3"),
        pytest.param({"fuel_gas": "0 ft^3", "lpg": "301 lb"}, "too much fuel gas", id="(b)(3), read: 301 lb"),
        pytest.param({"place": "vehicle"}, "a vehicle is no store", id="teaching texts, read: vehicle"),
        pytest.param({"place": "confined"}, "no store in a pit", id="29 CFR 1926.350(b)(4), read: confined"),
        pytest.param({"apart": "1 ft", "cart": "yes", "next_draw": "23 h"}, "nothing by the figures", id="OSHA letter 1998-12-31, read: cart in use"),
        pytest.param({"apart": "1 ft", "cart": "yes", "next_draw": "24 h"}, "oxygen stands too near", id="OSHA letter 1998-12-31, read: cart put away"),
    ],
)  # fmt: skip
def test_what_is_to_be_put_right(given: dict[str, str], says: str) -> None:
    got = answer("storage-check", **STORE | given)["results"]["findings"]
    assert says in got["text"]


@pytest.mark.parametrize(
    ("time", "says"), [("24 h", "in storage"), ("23.9 h", "in use"), ("15 d", "in storage")]
)
def test_in_storage_means_no_draw_within_a_day(time: str, says: str) -> None:
    """OSHA letter of 31 Dec 1998, read: 24 hours, nights included."""
    assert answer("storage-check", **STORE, next_draw=time)["results"]["counts_as"]["text"].startswith(says)


@pytest.mark.parametrize(
    ("weight", "says"), [("30 lb", "no cap is required"), ("30.1 lb", "a cap or collar is required")]
)
def test_caps_above_thirty_pounds_of_water(weight: str, says: str) -> None:
    """29 CFR 1910.253(b)(1)(iv), read: over 30 lb (13.6 kg)."""
    assert answer("storage-check", **STORE, water_weight=weight)["results"]["caps"]["text"].startswith(says)


@pytest.mark.parametrize("rules", ["iso", "uk"])
def test_a_rule_set_without_a_storage_figure_says_so(rules: str) -> None:
    got = answer("storage-check", **STORE, rules=rules)["results"]
    for name in ("separation", "wall_height", "fuel_limit", "lpg_limit"):
        assert "United States figure. There is no figure for this rule set in our data" in got[name]["text"]


@pytest.mark.parametrize(
    ("topic", "figure", "source"),
    [
        pytest.param(
            "indoor fuel gas", "2500 ft³", "NFPA 51, from memory", id="NFPA 51, memory: 2,500 ft3"
        ),
        pytest.param(
            "liquid oxygen",
            "13000 ft³",
            "(b)(4)(iv), read",
            id="29 CFR 1910.253(b)(4)(iv), read: 13,000 ft3",
        ),
        pytest.param(
            "liquid oxygen reserve",
            "25000 ft³",
            "(b)(4)(iv), read",
            id="29 CFR 1910.253(b)(4)(iv), read: 25,000 ft3",
        ),
        pytest.param(
            "generator wall", "60 min", "(b)(4)(ii), read", id="29 CFR 1910.253(b)(4)(ii), read: 1 h"
        ),
        pytest.param(
            "manifold fuel", "3000 ft³", "(c)(1)(ii), read", id="29 CFR 1910.253(c)(1)(ii), read: 3,000 ft3"
        ),
        pytest.param(
            "manifold lpg", "300 lb", "(c)(1)(ii), read", id="29 CFR 1910.253(c)(1)(ii), read: 300 lb"
        ),
        pytest.param(
            "manifold oxygen",
            "6000 ft³",
            "(c)(2)(iii), read",
            id="29 CFR 1910.253(c)(2)(iii), read: 6,000 ft3",
        ),
        pytest.param(
            "manifold apart", "50 ft", "(c)(1)(ii), read", id="29 CFR 1910.253(c)(1)(ii), read: 50 ft"
        ),
        pytest.param("in use from heat", "6 ft", "12 NYCRR", id="12 NYCRR 23-1.25(a)(3)(v), read: 6 ft"),
        pytest.param("hand truck over", "40 lb", "WAC 296-24", id="WAC 296-24-68215(2)(c), read: 40 lb"),
        pytest.param("small plant", "6", "TRAC 206", id="TRAC 206, read: 6 cylinders, repealed"),
    ],
)
def test_other_storage_figures_stand_beside(topic: str, figure: str, source: str) -> None:
    rows = answer("storage-check", **STORE)["tables"][1]["rows"]
    assert any(row[0] == topic and row[1] == figure and source in row[3] for row in rows)


@pytest.mark.parametrize(
    ("topic", "us", "metric", "source"),
    [
        pytest.param(
            "space per welder",
            "10000 ft³",
            "283 m³",
            "(c)(2)(i)(A), read",
            id="29 CFR 1910.252(c)(2)(i)(A), read",
        ),
        pytest.param(
            "ceiling", "16 ft", "4.877 m", "(c)(2)(i)(B), read", id="29 CFR 1910.252(c)(2)(i)(B), read"
        ),
        pytest.param(
            "rate", "2000 ft³/min", "56.6 m³/min", "(c)(2)(ii), read", id="29 CFR 1910.252(c)(2)(ii), read"
        ),
        pytest.param(
            "hood speed",
            "100 ft/min",
            "30.5 m/min",
            "(c)(3)(i), read",
            id="29 CFR 1910.252(c)(3)(i), read: 100 fpm",
        ),
        pytest.param(
            "hood speed",
            "100 ft/min",
            "30.5 m/min",
            "§1536 (a), read",
            id="Cal. Title 8 §1536(a), read: 100 fpm",
        ),
        pytest.param(
            "enclosure speed",
            "100 ft/min",
            "30.5 m/min",
            "(c)(3)(ii), read",
            id="29 CFR 1910.252(c)(3)(ii), read",
        ),
        pytest.param(
            "duct speed",
            "4000 ft/min",
            "1219 m/min",
            "(c)(3)(i), read",
            id="29 CFR 1910.252(c)(3)(i), read: duct",
        ),
        pytest.param(
            "hood width", "3 in", "76.2 mm", "(c)(3)(i), read", id="29 CFR 1910.252(c)(3)(i), read: slot"
        ),
        pytest.param(
            "screen above floor",
            "24 in",
            "609.6 mm",
            "(c)(1)(ii), read",
            id="29 CFR 1910.252(c)(1)(ii), read",
        ),
        pytest.param(
            "strip coating", "4 in", "101.6 mm", "1926.354 (c)(1), read", id="29 CFR 1926.354(c)(1), read"
        ),
        pytest.param(
            "deficient", "19.5 %", "19.5 %", "1910.146 (b), read", id="29 CFR 1910.146(b), read: 19.5"
        ),
        pytest.param(
            "enriched", "23.5 %", "23.5 %", "1910.146 (b), read", id="29 CFR 1910.146(b), read: 23.5"
        ),
        pytest.param("enriched", "22 %", "22 %", "shipyard", id="29 CFR 1915.12, read: 22.0"),
        pytest.param("normal", "20.8 %", "20.8 %", "shipyard", id="OSHA shipyard pages, read: 20.8 to 21"),
        pytest.param(
            "fuel share", "10 %", "10 %", "1910.146 (b), read", id="29 CFR 1910.146(b), read: 10 % of LFL"
        ),
        pytest.param("fuel share", "14 %", "14 %", "OD0017", id="US Army OD0017, read: 14 % of LFL"),
        pytest.param("dust", "5 ft", "1.524 m", "1910.146 (b), read", id="29 CFR 1910.146(b), read: 5 ft"),
    ],
)
def test_other_figures_of_air_stand_beside(topic: str, us: str, metric: str, source: str) -> None:
    for rules, figure in (("us", us), ("iso", metric)):
        rows = answer("ventilation", **AIR, rules=rules)["tables"][3]["rows"]
        assert any(row[0] == topic and row[1] == figure and source in row[3] for row in rows)


@pytest.mark.parametrize(("normal", "proof"), [("60 psi", 300), ("200 psi", 400)])
def test_a_hose_joint_holds_twice_its_pressure_and_never_less_than_300_psi(
    normal: str, proof: float
) -> None:
    """Row S19: 29 CFR 1910.253(e)(5)(iv), read."""
    got = answer("hose-proof", normal_gauge=normal)["results"]["proof_gauge"]
    assert got["value"] == pytest.approx(proof, rel=1e-9)
