"""Rows of air and fume of the safety rules, through the calculators."""

import pytest

from calc import answer
from tests.published.rows import Row, case, shown

EXACT = 1e-9
OXYGEN = {"room": "20 m^3", "leak": "2000 L/h"}
CUT = {"process": "cutting", "height": "1 m", "nearest": "6 m"}
AIR = {"place": "indoors", "room": "300 m^3", "ceiling": "16 ft", "welders": "1"}

ROWS = [
    # Air: the mixed room, t = 0.0328 V/q to 23.5 % oxygen, and the reference points.
    case("reference points, scipy ODE", "computed", "oxygen-rich", "time_to_23_5", 0.327898 * 60, "min", 1e-4, **OXYGEN),
    case("reference points, scipy ODE", "computed", "oxygen-rich", "time_to_23_5", 0.70175 * 60, "min", 1e-4,
         **OXYGEN | {"fresh_air": "50 m^3/h"}),
    case("reference points, scipy ODE", "computed", "oxygen-rich", "oxygen_then", 24.805314, "%", 1e-6, **OXYGEN),
    case("reference points, scipy ODE", "computed", "oxygen-rich", "oxygen_at_last", 23.99038, "%", 1e-6,
         **OXYGEN | {"fresh_air": "50 m^3/h"}),
    case("models: t = 0.0328 V/q", "computed", "oxygen-rich", "time_to_23_5", 3.28 * 60, "min", 2e-3,
         room="100 m^3", leak="1 m^3/h", rules="iso"),
    case("by hand: 800/20 h times ln(0.7905/0.765), the leak as warm as the room", "computed", "oxygen-rich", "time_to_23_5",
         78.6956, "min", 1e-5, room="800 ft^3", leak="20 cfh", rules="us"),
    # Fire: distances and sparks.
    *(
        case("29 CFR 1910.252(a)(2)(iii)(A)(1)", "read", "hot-work-zone", "clear_distance", 35, "ft", EXACT,
             **CUT | {"process": process, "height": height})
        for process, height in (("cutting", "3 ft"), ("soldering", "0 ft"), ("heating", "90 ft"))
    ),
    case("29 CFR 1910.252(a)(2)(iii)(A)(1), as printed in metric", "read", "hot-work-zone", "clear_distance", 10.7, "m", 5e-3, **CUT),
    *(
        case("DGUV 100-500 ch. 2.26 annex 2", "read", "hot-work-zone", result, metres, "m", EXACT,
             **CUT | {"process": process, "height": height, "rules": "iso"})
        for process, height, result, metres in (
            ("soldering", "3 m", "clear_distance", 2), ("welding", "2 m", "clear_distance", 7.5),
            ("cutting", "3 m", "clear_distance", 10), ("soldering", "3 m", "upward_reach", 2),
            ("welding", "3 m", "upward_reach", 4), ("cutting", "3 m", "upward_reach", 4),
            ("soldering", "3 m", "downward_reach", 10), ("welding", "3 m", "downward_reach", 20),
            ("cutting", "3 m", "downward_reach", 20), ("cutting", "3 m", "opposite_reach", 5),
            ("soldering", "3 m", "opposite_reach", 1), ("welding", "3 m", "opposite_reach", 7.5),
        )
    ),
    case("DGUV 100-500 ch. 2.26 annex 2, 6 m high", "computed", "hot-work-zone", "clear_distance", 11.5, "m", EXACT,
         **CUT | {"height": "6 m", "rules": "iso"}),
    case("DGUV 100-500 ch. 2.26 annex 2, 6 m high", "computed", "hot-work-zone", "opposite_reach", 5.75, "m", EXACT,
         **CUT | {"height": "6 m", "rules": "iso"}),
    # Fire watch.
    case("NFPA 51B-2019 5.6.3", "read-m", "fire-watch", "fire_watch", 60, "min", EXACT, place="workshop"),
    case("NFPA 51B-2019 5.6.3", "read-m", "fire-watch", "fire_watch", 60, "min", EXACT, place="shipyard"),
    case("NFPA 51B-2019 5.6.3, three hours more", "read-m", "fire-watch", "until", 240, "min", EXACT, place="workshop",
         permit_monitoring="3 h"),
    case("NFPA 241, torch-applied roofing", "read-m", "fire-watch", "fire_watch", 120, "min", EXACT, place="roof"),
    *(
        case("UK Joint Code 10th ed. 16.15", "read-m", "fire-watch", result, figure, "min", EXACT, place="construction", rules="uk")
        for result, figure in (("fire_watch", 60), ("monitoring", 60), ("check_every", 20), ("until", 120))
    ),
    # Eyes: EN 169 and the German rule, at and past each line.
    *(
        case("DGUV Regel 112-192 annex 2", "read", "eye-shade", "shade_minimum", shade, "", EXACT,
             process="cutting", thickness="10 mm", oxygen_flow=f"{flow} L/h", rules="iso")
        for flow, shade in ((901, 5), (2001, 6), (4000, 6), (4001, 7), (8000, 7), (8001, 8))
    ),
    *(
        case("DGUV Regel 112-192 annex 2", "read", "eye-shade", "shade_minimum", shade, "", EXACT,
             process=process, thickness="10 mm", acetylene_flow=f"{flow} L/h", rules=rules)
        for flow, shade in ((70, 4), (71, 5), (200, 5), (201, 6), (800, 6), (801, 7))
        for process in ("welding", "brazing") for rules in ("iso", "uk")
    ),
    # Ventilation: triggers are words, tested below.
    *(
        case("29 CFR 1910.252(c)(2)(ii)", "read", "ventilation", "air_flow", rate, "ft^3/min", EXACT, **AIR | {"welders": n})
        for n, rate in (("1", 2000), ("3", 6000))
    ),
    case("29 CFR 1910.252(c)(2)(ii), as printed in metric", "read", "ventilation", "air_flow", 57 * 60, "m^3/h", 0.01, **AIR),
    *(
        case("29 CFR 1910.252(c)(3)(i)", "read", "ventilation", result, figure, unit, EXACT, **AIR | {"hood_distance": f"{inches} in"})
        for inches, air, duct in (("5", 150, 3), ("7", 275, 3.5), ("9", 425, 4.5), ("11", 600, 5.5), ("12", 600, 5.5),
                                  ("6", 275, 3.5), ("2", 150, 3))
        for result, figure, unit in (("hood_flow", air, "ft^3/min"), ("hood_duct", duct, "in"))
    ),
    *(
        case("by hand: 1/0.00575 - 1 of the leak, a quarter of 2.3 %", "computed", "ventilation", "leak_air_quarter", 172.9130435 * k, "m^3/h", 1e-6,
             **AIR | {"leak": "1 m^3/h", "mixing": str(k)})
        for k in (3, 10)
    ),
    *(
        case("by hand: V/q ln(1/0.99425)", "computed", "ventilation", "leak_time_quarter", hours * 60, "min", 2e-5,
             **AIR | {"room": room, "leak": leak})
        for room, leak, hours in (("2 m^3", "20 L/h", 0.5766597), ("20 m^3", "300 L/h", 0.3844398), ("100 m^3", "300 L/h", 1.9221990))
    ),
]  # fmt: skip


FAHRENHEIT = (-20, 0, 20, 32, 40, 50, 60, 70, 80, 90, 100, 110, 120, 130)
FILLS = {
    1800: (1382, 1476, 1569, 1624, 1662, 1708, 1754, 1800, 1846, 1892, 1938, 1984, 2030, 2075),
    2015: (1534, 1642, 1749, 1813, 1856, 1909, 1962, 2015, 2068, 2121, 2174, 2227, 2279, 2332),
    2200: (1662, 1783, 1902, 1974, 2022, 2081, 2141, 2200, 2259, 2318, 2377, 2436, 2495, 2554),
    2265: (1707, 1832, 1956, 2031, 2080, 2142, 2203, 2265, 2326, 2388, 2449, 2510, 2572, 2633),
    2400: (1799, 1934, 2067, 2148, 2201, 2267, 2334, 2400, 2466, 2532, 2598, 2664, 2730, 2796),
    2640: (1961, 2113, 2264, 2355, 2415, 2490, 2565, 2640, 2715, 2790, 2864, 2939, 3013, 3087),
}
METRIC = {
    150: (123, 139, 150, 161, 176, 188),
    200: (161, 184, 200, 216, 238, 254),
    300: (235, 272, 300, 328, 364, 392),
}
VAPOUR = {"propane": (24, 54, 110, 174, 259), "propylene": (33, 70, 137, 213, 313)}

ROWS += [
    *(
        case("oxygen at constant contents, reference equation", "computed", "cylinder-weather", "gauge_then", psi, "psi", 6e-4,
             gas="oxygen", gauge=f"{fill} psi", weather=f"{degrees} degF")
        for fill, row in FILLS.items() for degrees, psi in zip(FAHRENHEIT, row, strict=True)
    ),
    *(
        case("oxygen at constant contents, reference equation", "computed", "cylinder-weather", "gauge_then", bar, "bar", 5e-3,
             gas="oxygen", gauge=f"{fill} bar", weather=f"{degrees} degC", rules="iso")
        for fill, row in METRIC.items() for degrees, bar in zip((-20, 0, 15, 30, 50, 65), row, strict=True)
    ),
    *(
        case("vapour pressure of the pure gas, reference equation", "computed", "cylinder-weather", "gauge_then", psi, "psi", 0.02,
             gas=gas, weather=f"{degrees} degF")
        for gas, row in VAPOUR.items() for degrees, psi in zip((0, 32, 70, 100, 130), row, strict=True)
    ),
    case("49 CFR 173.303(b): 250 psi at 70 F stays so", "read", "cylinder-weather", "gauge_then", 250, "psi", 1e-6,
         gas="acetylene", gauge="250 psi", weather="70 degF"),
]  # fmt: skip


@pytest.mark.parametrize("row", ROWS)
def test_the_published_figure_comes_out(row: Row) -> None:
    assert shown(row) == pytest.approx(row.figure, rel=row.within, abs=1e-12)


@pytest.mark.parametrize(
    ("oxygen", "says"),
    [
        pytest.param("19.4 %", "short of oxygen, below 19.5 %", id="29 CFR 1910.146(b), read: 19.4"),
        pytest.param("19.5 %", "between the limits", id="29 CFR 1910.146(b), read: 19.5"),
        pytest.param("22 %", "between the limits", id="29 CFR 1915.12, read: 22.0"),
        pytest.param(
            "22.1 %", "enriched by the shipyard rule, above 22 %", id="29 CFR 1915.12, read: 22.1"
        ),
        pytest.param("23.5 %", "enriched by the shipyard rule", id="29 CFR 1910.146(b), read: 23.5"),
        pytest.param("23.6 %", "enriched, above 23.5 %", id="29 CFR 1910.146(b), read: 23.6"),
    ],
)
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_what_a_reading_of_oxygen_means(oxygen: str, says: str, rules: str) -> None:
    got = answer("oxygen-rich", **(OXYGEN | {"oxygen_now": oxygen, "waiting": "0 min"}), rules=rules)["results"]["condition"]
    assert got["text"].startswith(says)
    assert ("no figure for this rule set" in got["basis"]) == (rules != "us")


def test_a_ventilated_leak_that_stays_below_the_limit_is_no_all_clear() -> None:
    """0.3 m³/h into 50 m³/h of air ends at 21.42 %: reference points, scipy ODE."""
    got = answer("oxygen-rich", room="20 m^3", leak="300 L/h", fresh_air="50 m^3/h")["results"]
    assert got["time_to_22"]["value"] is None
    assert "beside the leak at once" in got["time_to_22"]["text"]


@pytest.mark.parametrize(
    ("given", "says"),
    [
        pytest.param(
            {"room": "9999 ft^3"}, "less than 10,000", id="29 CFR 1910.252(c)(2)(i)(A), read: 9,999 ft3"
        ),
        pytest.param(
            {"room": "10000 ft^3"}, "not asked for", id="29 CFR 1910.252(c)(2)(i)(A), read: 10,000 ft3"
        ),
        pytest.param(
            {"room": "29999 ft^3", "welders": "3"},
            "less than 10,000",
            id="(c)(2)(i)(A), read: three welders",
        ),
        pytest.param(
            {"ceiling": "15.9 ft"}, "a ceiling below 16", id="29 CFR 1910.252(c)(2)(i)(B), read: 15.9 ft"
        ),
        pytest.param({"ceiling": "16 ft"}, "not asked for", id="29 CFR 1910.252(c)(2)(i)(B), read: 16 ft"),
        pytest.param(
            {"cross_flow": "blocked"}, "partitions", id="29 CFR 1910.252(c)(2)(i)(C), read: blocked"
        ),
        pytest.param({"place": "confined"}, "a confined space", id="29 CFR 1910.252(c)(4), read: confined"),
    ],
)
def test_when_a_fan_is_asked_for(given: dict[str, str], says: str) -> None:
    got = answer("ventilation", **(AIR | {"room": "10000 ft^3"} | given))["results"]["mechanical"]
    assert says in got["text"]
    assert "1910.252" in got["source"]


LIMITS = [
    # What stands in 29 CFR 1910 Z-1, Z-2 and the substance rules (2015 edition), NIOSH, ACGIH and the 2017 rule on beryllium.
    ({"coating": "cadmium"}, "Cadmium", ["5 µg/m³ over 8 h", "2.5 µg/m³ action"], "repeats it"),
    ({"coating": "lead-paint"}, "Lead", ["50 µg/m³ over 8 h", "30 µg/m³ action"], "repeats it"),
    ({"coating": "zinc"}, "Zinc oxide fume", ["5 mg/m³ over 8 h"], "repeats it"),
    ({"metal": "steel"}, "Iron oxide fume", ["10 mg/m³ over 8 h"], "repeats it"),
    ({"metal": "steel"}, "Manganese fume", ["5 mg/m³ ceiling"], "repeats it"),
    ({"metal": "copper"}, "Copper fume", ["0.1 mg/m³ over 8 h"], "repeats it"),
    (
        {"metal": "stainless-steel"},
        "Hexavalent chromium",
        ["5 µg/m³ over 8 h", "2.5 µg/m³ action"],
        "repeats it",
    ),
    ({"metal": "stainless-steel"}, "Nickel", ["1 mg/m³ over 8 h"], "repeats it"),
    ({"metal": "magnesium"}, "Magnesium oxide fume", ["15 mg/m³ over 8 h"], "repeats it"),
    (
        {"metal": "beryllium-copper"},
        "Beryllium",
        ["0.2 µg/m³ over 8 h", "2 µg/m³ over 15 min", "0.1 µg/m³ action"],
        "repeats it",
    ),
    ({"flux": "fluoride"}, "Fluorides as fluorine", ["2.5 mg/m³ over 8 h"], "repeats it"),
    ({"flux": "fluoride"}, "Hydrogen fluoride", ["3 ppm over 8 h"], "repeats it"),
    ({}, "Carbon monoxide", ["50 ppm over 8 h"], "repeats it"),
    ({}, "Carbon monoxide", ["35 ppm over 8 h", "200 ppm ceiling"], "read in the source"),
    ({}, "Nitric oxide", ["25 ppm over 8 h"], "repeats it"),
    ({}, "Nitrogen dioxide", ["5 ppm ceiling"], "repeats it"),
    ({}, "Nitrogen dioxide", ["1 ppm over 15 min"], "repeats it"),
    ({}, "Nitrogen dioxide", ["0.2 ppm over 8 h"], "repeats it"),
    ({}, "Acetylene", ["2500 ppm ceiling"], "repeats it"),
    ({"fuel": "propane"}, "Propane", ["1000 ppm over 8 h"], "repeats it"),
    ({"fuel": "mps"}, "Methylacetylene-propadiene", ["1000 ppm over 8 h"], "repeats it"),
]


@pytest.mark.parametrize(
    ("picked", "name", "figures", "sure"), LIMITS, ids=[f"{n} {f} [{s}]" for _, n, f, s in LIMITS]
)
def test_exposure_limits_stand_beside_the_answer(
    picked: dict[str, str], name: str, figures: list[str], sure: str
) -> None:
    table = answer("ventilation", **AIR, **{"coating": "none"} | picked)["tables"][0]
    for figure in figures:
        row = next(r for r in table["rows"] if r[0] == name and r[1].startswith(figure))
        assert row[2].endswith(sure)


@pytest.mark.parametrize(
    ("gas", "low", "high", "lights", "sure"),
    [
        pytest.param("Acetylene", "2.3", "100", "305", "repeats it", id="acetylene, IEC 60079-20-1, read-m"),
        pytest.param("Propane", "1.7", "10.9", "450", "repeats it", id="propane, IEC 60079-20-1, read-m"),
        pytest.param("Propylene", "2", "11.1", "455", "repeats it", id="propylene, IEC 60079-20-1, read-m"),
        pytest.param(
            "Methane (natural gas)", "4.4", "17", "600", "repeats it", id="methane, IEC 60079-20-1, read-m"
        ),
        pytest.param("Hydrogen", "4", "77", "560", "repeats it", id="hydrogen, IEC 60079-20-1, read-m"),
        pytest.param(
            "Methylacetylene-propadiene",
            "3.4",
            "10.8",
            "455",
            "repeats it",
            id="MPS, NAVEDTRA 14250, read-m",
        ),
        pytest.param("n-Butane", "1.4", "9.3", "372", "repeats it", id="butane, IEC 60079-20-1, read-m"),
        pytest.param("Ethylene", "2.3", "36", "440", "repeats it", id="ethylene, IEC 60079-20-1, read-m"),
    ],
)
def test_flammable_limits_stand_beside_the_answer(
    gas: str, low: str, high: str, lights: str, sure: str
) -> None:
    table = answer("ventilation", **AIR)["tables"][2]
    row = next(r for r in table["rows"] if r[0] == gas)
    assert list(row[1:4]) == [low, high, lights]
    assert sure in row[5]


@pytest.mark.parametrize(
    ("gas", "weight"),
    [("Acetylene", 26.04), ("Propane", 44.10), ("Propylene", 42.08), ("Methane (natural gas)", 16.04),
     ("Hydrogen", 2.016), ("Methylacetylene-propadiene", 40.06)],
)  # fmt: skip
def test_weights_of_gases_are_those_of_their_molecules(gas: str, weight: float) -> None:
    """Molar mass over that of air, 28.96 g/mol; real propane at 25 °C is 1 % heavier."""
    row = next(r for r in answer("ventilation", **AIR)["tables"][2]["rows"] if r[0] == gas)
    assert float(row[4]) == pytest.approx(weight / 28.96, rel=0.015, abs=0.005)


@pytest.mark.parametrize(
    ("coating", "place", "says"),
    [
        pytest.param(
            "cadmium", "indoors", "hood at the work or air-line", id="29 CFR 1910.252(c)(9)(i), read"
        ),
        pytest.param("cadmium", "outdoors", "fume respirator", id="29 CFR 1910.252(c)(9), read-m"),
        pytest.param(
            "lead-paint", "confined", "hood at the work or air-line", id="29 CFR 1910.252(c)(7)(iii), read"
        ),
        pytest.param("lead-paint", "outdoors", "fume respirator", id="29 CFR 1910.252(c)(7)(iii), read-o"),
        pytest.param(
            "zinc", "confined", "hood at the work or air-line", id="29 CFR 1910.252(c)(6)(i), read"
        ),
        pytest.param("zinc", "indoors", "hood at the work", id="29 CFR 1910.252(c)(6)(ii), read"),
    ],
)
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_what_the_rules_ask_against_toxic_fume(coating: str, place: str, says: str, rules: str) -> None:
    got = answer("ventilation", **AIR | {"place": place}, coating=coating, rules=rules)["results"][
        "fume_measure"
    ]
    assert says in got["text"]
    assert ("no figure for this rule set" in got["basis"]) == (rules != "us")


@pytest.mark.parametrize("place", ["indoors", "confined", "outdoors"])
def test_beryllium_wants_both_everywhere(place: str) -> None:
    """29 CFR 1910.252(c)(8), read: both, unless worst-case air tests show less."""
    got = answer("ventilation", **AIR | {"place": place}, metal="beryllium-copper")["results"][
        "fume_measure"
    ]
    assert got["text"].startswith("beryllium: hood at the work and air-line respirator, unless")
