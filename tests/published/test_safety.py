"""Fire, air, eyes, storage and weather: figures in print, through the calculators that use them."""

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
             process="welding", thickness="10 mm", acetylene_flow=f"{flow} L/h", rules=rules)
        for flow, shade in ((70, 4), (200, 5), (800, 6), (801, 7)) for rules in ("iso", "uk")
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
        case("models: 159 q K at a quarter of 2.5 %", "computed", "ventilation", "leak_air_quarter", 159 * k, "m^3/h", 1e-6,
             **AIR | {"leak": "1 m^3/h", "mixing": str(k)})
        for k in (3, 10)
    ),
    *(
        case("reference points, scipy ODE", "computed", "ventilation", "leak_time_quarter", hours * 60, "min", 2e-5,
             **AIR | {"room": room, "leak": leak})
        for room, leak, hours in (("2 m^3", "20 L/h", 0.626961), ("20 m^3", "300 L/h", 0.417974), ("100 m^3", "300 L/h", 2.089871))
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
        pytest.param("22.1 %", "enriched by the shipyard rule, above 22 %", id="29 CFR 1915.12, read: 22.1"),
        pytest.param("23.5 %", "enriched by the shipyard rule", id="29 CFR 1910.146(b), read: 23.5"),
        pytest.param("23.6 %", "enriched, above 23.5 %", id="29 CFR 1910.146(b), read: 23.6"),
    ],
)
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_what_a_reading_of_oxygen_means(oxygen: str, says: str, rules: str) -> None:
    got = answer("oxygen-rich", **OXYGEN, oxygen_now=oxygen, rules=rules)["results"]["condition"]
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
        pytest.param({"room": "9999 ft^3"}, "less than 10,000", id="29 CFR 1910.252(c)(2)(i)(A), read: 9,999 ft3"),
        pytest.param({"room": "10000 ft^3"}, "not asked for", id="29 CFR 1910.252(c)(2)(i)(A), read: 10,000 ft3"),
        pytest.param({"room": "29999 ft^3", "welders": "3"}, "less than 10,000", id="(c)(2)(i)(A), read: three welders"),
        pytest.param({"ceiling": "15.9 ft"}, "a ceiling below 16", id="29 CFR 1910.252(c)(2)(i)(B), read: 15.9 ft"),
        pytest.param({"ceiling": "16 ft"}, "not asked for", id="29 CFR 1910.252(c)(2)(i)(B), read: 16 ft"),
        pytest.param({"cross_flow": "blocked"}, "partitions", id="29 CFR 1910.252(c)(2)(i)(C), read: blocked"),
        pytest.param({"place": "confined"}, "a confined space", id="29 CFR 1910.252(c)(4), read: confined"),
    ],
)
def test_when_a_fan_is_asked_for(given: dict[str, str], says: str) -> None:
    got = answer("ventilation", **(AIR | {"room": "10000 ft^3"} | given))["results"]["mechanical"]
    assert says in got["text"]
    assert "1910.252" in got["source"]


LIMITS = [
    # What stands in 29 CFR 1910 Z-1, Z-2 and the substance rules (2015 edition, read), NIOSH, and from memory.
    ({"coating": "cadmium"}, "Cadmium", ["5 µg/m³ over 8 h", "2.5 µg/m³ action"], "read in the source"),
    ({"coating": "lead-paint"}, "Lead", ["50 µg/m³ over 8 h", "30 µg/m³ action"], "read in the source"),
    ({"coating": "zinc"}, "Zinc oxide fume", ["5 mg/m³ over 8 h"], "read in the source"),
    ({"metal": "steel"}, "Iron oxide fume", ["10 mg/m³ over 8 h"], "read in the source"),
    ({"metal": "steel"}, "Manganese fume", ["5 mg/m³ ceiling"], "read in the source"),
    ({"metal": "copper"}, "Copper fume", ["0.1 mg/m³ over 8 h"], "read in the source"),
    ({"metal": "stainless-steel"}, "Hexavalent chromium", ["5 µg/m³ over 8 h", "2.5 µg/m³ action"], "read in the source"),
    ({"metal": "stainless-steel"}, "Nickel", ["1 mg/m³ over 8 h"], "read in the source"),
    ({"metal": "magnesium"}, "Magnesium oxide fume", ["15 mg/m³ over 8 h"], "read in the source"),
    ({"metal": "beryllium-copper"}, "Beryllium", ["0.2 µg/m³ over 8 h", "2 µg/m³ over 15 min"], "from memory"),
    ({"flux": "fluoride"}, "Fluorides as fluorine", ["2.5 mg/m³ over 8 h"], "read in the source"),
    ({"flux": "fluoride"}, "Hydrogen fluoride", ["3 ppm over 8 h"], "read in the source"),
    ({}, "Carbon monoxide", ["50 ppm over 8 h", "35 ppm over 8 h", "200 ppm ceiling"], "read in the source"),
    ({}, "Nitric oxide", ["25 ppm over 8 h"], "read in the source"),
    ({}, "Nitrogen dioxide", ["5 ppm ceiling"], "read in the source"),
    ({}, "Nitrogen dioxide", ["1 ppm over 15 min"], "from memory"),
    ({}, "Acetylene", ["2500 ppm ceiling"], "from memory"),
    ({"fuel": "propane"}, "Propane", ["1000 ppm over 8 h"], "read in the source"),
    ({"fuel": "mps"}, "Methylacetylene-propadiene", ["1000 ppm over 8 h"], "read in the source"),
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
        pytest.param("Acetylene", "2.5", "81", "305", "read in the source", id="acetylene, university procedure, read"),
        pytest.param("Propane", "2.1", "9.5", "450", "from memory", id="propane, USBM 627, memory"),
        pytest.param("Propylene", "2.4", "11", "460", "from memory", id="propylene, USBM 627, memory"),
        pytest.param("Methane (natural gas)", "5", "15", "540", "from memory", id="methane, USBM 627, memory"),
        pytest.param("Hydrogen", "4", "75", "400", "from memory", id="hydrogen, USBM 627, memory"),
        pytest.param("Methylacetylene-propadiene", "3.4", "10.8", "455", "repeats it", id="MPS, NAVEDTRA 14250, read-m"),
        pytest.param("n-Butane", "1.8", "8.4", "405", "from memory", id="butane, USBM 627, memory"),
        pytest.param("Ethylene", "2.7", "36", "490", "from memory", id="ethylene, USBM 627, memory"),
    ],
)
def test_flammable_limits_stand_beside_the_answer(gas: str, low: str, high: str, lights: str, sure: str) -> None:
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
        pytest.param("cadmium", "indoors", "hood at the work or air-line", id="29 CFR 1910.252(c)(9)(i), read"),
        pytest.param("cadmium", "outdoors", "fume respirator", id="29 CFR 1910.252(c)(9), read-m"),
        pytest.param("lead-paint", "confined", "hood at the work or air-line", id="29 CFR 1910.252(c)(7)(iii), read"),
        pytest.param("lead-paint", "outdoors", "fume respirator", id="29 CFR 1910.252(c)(7)(iii), read-o"),
        pytest.param("zinc", "confined", "hood at the work or air-line", id="29 CFR 1910.252(c)(6)(i), read"),
        pytest.param("zinc", "indoors", "hood at the work", id="29 CFR 1910.252(c)(6)(ii), read"),
    ],
)
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_what_the_rules_ask_against_toxic_fume(coating: str, place: str, says: str, rules: str) -> None:
    got = answer("ventilation", **AIR | {"place": place}, coating=coating, rules=rules)["results"]["fume_measure"]
    assert says in got["text"]
    assert ("no figure for this rule set" in got["basis"]) == (rules != "us")


@pytest.mark.parametrize("place", ["indoors", "confined", "outdoors"])
def test_beryllium_wants_both_everywhere(place: str) -> None:
    """29 CFR 1910.252(c)(8), read: both, unless worst-case air tests show less."""
    got = answer("ventilation", **AIR | {"place": place}, metal="beryllium-copper")["results"]["fume_measure"]
    assert got["text"].startswith("beryllium: hood at the work and air-line respirator, unless")


@pytest.mark.parametrize(
    ("process", "height", "metres"),
    [
        pytest.param("cutting", "1 m", 40 * 0.3048, id="30 to 40 ft, TC 9-237 and NAVEDTRA 14250, read"),
        pytest.param("cutting", "1 m", 10.0, id="7.5 m and 2.5 m of rolling, DGUV 205-001, read"),
        pytest.param("cutting", "20 m", 18.5, id="10 m and half a metre for each above 3, DGUV 100-500, read"),
        pytest.param("welding", "1 m", 7.5, id="welding 7.5 m, DGUV 100-500, read"),
        pytest.param("soldering", "1 m", 2.0, id="soldering 2 m, DGUV 100-500, read"),
        pytest.param("cutting", "2 m", 13.8, id="3 mm at 12 m/s from 2 m, scipy DOP853, computed"),
    ],
)
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_sparks_reach_at_least_what_is_in_print(process: str, height: str, metres: float, rules: str) -> None:
    got = answer("hot-work-zone", **CUT | {"process": process, "height": height, "rules": rules},
                 units={"spark_reach": "m"})["results"]["spark_reach"]  # fmt: skip
    assert got["value"] >= metres * (1 - 1e-6)
    assert "may go further" in got["text"]


NOTHING = {"openings": "none", "floor": "bare", "wall": "none", "pipes": "none"}


@pytest.mark.parametrize(
    ("given", "says"),
    [
        pytest.param({"nearest": "34 ft"}, "nearer than 35 ft", id="29 CFR 1910.252(a)(2)(iii)(A)(1), read: 34 ft"),
        pytest.param({"nearest": "60 ft", "stuff": "easy"}, "sparks light easily", id="(A)(2), read: further but easily lit"),
        pytest.param({"nearest": "60 ft", "openings": "wall"}, "openings within 35 ft", id="(A)(3), read: openings"),
        pytest.param({"nearest": "60 ft", "wall": "metal"}, "carry heat to the other side", id="(A)(4), read: metal wall"),
    ],
)
def test_when_a_fire_watch_is_needed(given: dict[str, str], says: str) -> None:
    got = answer("hot-work-zone", **CUT | NOTHING | given)["results"]["watch"]
    assert got["text"].startswith("needed")
    assert says in got["text"]
    assert "1910.252" in got["source"]


def test_without_a_ground_a_watch_is_still_advised_and_never_ruled_out() -> None:
    got = answer("hot-work-zone", **CUT | NOTHING | {"nearest": "300 ft"})["results"]["watch"]["text"]
    assert got.startswith("no ground of the rule in what you gave")
    assert "post one" in got


@pytest.mark.parametrize(
    ("figure", "source"),
    [
        pytest.param("9.14 m to 12.2 m", "NAVEDTRA 14250", id="30 to 40 ft, NAVEDTRA 14250, read"),
        pytest.param("15 m", "National Fire Code of Canada", id="15 m, National Fire Code of Canada, memory"),
        pytest.param("3.05 m", "Chicago", id="10 ft, Chicago 15-26-470, read"),
        pytest.param("7.62 m to 9.14 m", "Fire Engineering", id="25 to 30 ft, Fire Engineering, read"),
        pytest.param("10 m", "a German insurer", id="10 m and more, grinding, read"),
        pytest.param("9.14 m to 12.2 m", "TC 9-237", id="30 to 40 ft, TC 9-237, read"),
    ],
)
def test_other_distances_in_print_stand_beside(figure: str, source: str) -> None:
    table = answer("hot-work-zone", **CUT | {"rules": "iso"})["tables"][2]
    assert any(row[1] == figure and source in row[3] for row in table["rows"])


@pytest.mark.parametrize(
    "words",
    [
        pytest.param("35 ft (11 m) round", id="29 CFR 1910.252(a)(2)(v), read: floors swept"),
        pytest.param("2-A:20-B:C within 30 ft (9.1 m)", id="IFC 2018 3504.2.6, read-m"),
        pytest.param("24 h at most", id="permit one shift, memory"),
    ],
)
def test_what_to_do_before_the_flame(words: str) -> None:
    assert any(words in row[0] for row in answer("hot-work-zone", **CUT)["tables"][0]["rows"])


def test_vapour_in_the_air_forbids_the_flame() -> None:
    """29 CFR 1910.252(a)(2)(vi), read: explosive atmospheres, sprinklers impaired."""
    got = answer("hot-work-zone", **CUT, stuff="vapour")
    assert got["results"]["watch"]["text"].startswith("no flame here at all")
    assert got["cautions"][0]["signal"] == "DANGER"


@pytest.mark.parametrize(
    ("place", "says", "source"),
    [
        pytest.param("workshop", "30 min", "1910.252 (a)(2)(iii)(B)", id="29 CFR 1910.252(a)(2)(iii)(B), read: 30 min"),
        pytest.param("construction", "no number", "1926.352 (e)", id="29 CFR 1926.352(e), read: no number"),
        pytest.param("shipyard", "30 min, unless a survey", "1915.504", id="29 CFR 1915.504(c)(2)(iv), read: 30 min unless"),
    ],
)
def test_the_legal_minimum_stands_beside_the_longer_watch(place: str, says: str, source: str) -> None:
    got = answer("fire-watch", place=place)["results"]
    assert says in got["legal_minimum"]["text"]
    assert source in got["legal_minimum"]["source"]
    assert got["fire_watch"]["value"] == 60


@pytest.mark.parametrize(
    ("where", "watch", "then", "source"),
    [
        pytest.param("United States", "30 min", "", "IFC 2018", id="IFC 2018, read-m: 30 min"),
        pytest.param("United States", "30 min", "", "NFPA 51B-2014", id="NFPA 51B-2014, read-m: 30 min"),
        pytest.param("United States", "30 min", "", "Chicago", id="Chicago 15-26-470, read: 30 min"),
        pytest.param("United States", "60 min", "up to 3 h", "NFPA 51B-2019", id="NFPA 51B-2019, read-m: 60 and 180 min"),
        pytest.param("United States", "2 h", "", "NFPA 241", id="NFPA 241, read-m: 2 h"),
        pytest.param("United Kingdom", "60 min", "60 min, up to 3 h, every 20 min", "Joint Code", id="Joint Code, read-m"),
        pytest.param("elsewhere", "60 min", "", "Canada", id="National Fire Code of Canada, memory: 60 min"),
        pytest.param("elsewhere", "60 min", "up to 3 h", "from memory", id="insurers, memory: 60 and 180 min"),
    ],
)
def test_other_watches_in_print_stand_beside(where: str, watch: str, then: str, source: str) -> None:
    rows = answer("fire-watch", place="workshop")["tables"][0]["rows"]
    rows = [[cell.replace("120 min", "2 h") for cell in row] for row in rows]
    assert any(list(row[:3]) == [where, watch, then] and source in row[4] for row in rows)


@pytest.mark.parametrize("rules", ["iso"])
def test_a_rule_set_without_a_watch_says_so(rules: str) -> None:
    got = answer("fire-watch", place="workshop", rules=rules)["results"]["fire_watch"]
    assert "United Kingdom figure. There is no figure for this rule set in our data" in got["text"]


def test_helpers_and_light_cutting() -> None:
    """DGUV Regel 112-192 annex 2, read: light cutting 2, 2.5, 3; helper 2 to 4. Carbon arc 14: 29 CFR 1910.133(a)(5), read."""
    got = answer("eye-shade", process="welding", thickness="2 mm", rules="iso")
    assert got["results"]["shade_helper"]["text"].startswith("2 to 4")
    cells = [row[1] for row in got["tables"][0]["rows"]]
    assert cells[-3:] == ["2 to 3", "2 to 4", "14"]


@pytest.mark.parametrize(
    ("work", "least", "guide"),
    [
        ("torch soldering", "2", "2"), ("torch brazing", "3", "3 to 4"),
        ("gas welding, under 1/8 in (3.2 mm)", "4", "4 to 5"), ("gas welding, 1/8 to 1/2 in (3.2 to 12.7 mm)", "5", "5 to 6"),
        ("gas welding, over 1/2 in (12.7 mm)", "6", "6 to 8"), ("oxygen cutting, under 1 in (25 mm)", "3", "3 to 4"),
        ("oxygen cutting, 1 to 6 in (25 to 150 mm)", "4", "4 to 5"), ("oxygen cutting, over 6 in (150 mm)", "5", "5 to 6"),
    ],
)  # fmt: skip
def test_us_minimum_and_guide_stand_in_one_table(work: str, least: str, guide: str) -> None:
    """29 CFR 1910.133(a)(5) and 1910.252(b)(2)(ii)(H), both read."""
    rows = answer("eye-shade", process="welding", thickness="2 mm")["tables"][0]["rows"]
    assert (work, f"{least} at least", guide, "United States") in [tuple(row) for row in rows]


def test_heating_without_a_flow_is_refused_where_the_shade_goes_by_flow() -> None:
    with pytest.raises(ValueError, match="Acetylene through the torch: heating tips differ"):
        answer("eye-shade", process="heating", thickness="2 mm", rules="uk")
    got = answer("eye-shade", process="heating", thickness="2 mm", acetylene_flow="2000 L/h", rules="uk")
    assert got["results"]["shade_minimum"]["value"] == 7
    assert "No rule names heating" in got["results"]["shade_minimum"]["basis"]


def test_a_full_oxygen_cylinder_stays_below_five_quarters_of_its_service_pressure() -> None:
    """49 CFR 173.301a(d), read: at 131 °F no more than 5/4 of the service pressure, so the gas behaves as we reckon."""
    for fill in FILLS:
        got = answer("cylinder-weather", gas="oxygen", gauge=f"{fill} psi", weather="131 degF", units={"gauge_then": "psi"})
        assert got["results"]["gauge_then"]["value"] <= 1.25 * fill


def test_the_fusible_plug_of_acetylene() -> None:
    """212 °F, 100 °C: US Army OD0017, read."""
    for rules, says in (("us", "212 °F"), ("iso", "100 °C"), ("uk", "100 °C")):
        got = answer("cylinder-weather", gas="acetylene", gauge="200 psi", weather="100 degF", rules=rules)
        assert says in got["results"]["relief"]["text"]


@pytest.mark.parametrize(
    ("rules", "cold", "hot"), [("us", "125 degF", "126 degF"), ("iso", "50 degC", "51 degC"), ("uk", "50 degC", "51 degC")]
)
def test_a_temperature_above_the_limit_is_refused_now_and_marked_later(rules: str, cold: str, hot: str) -> None:
    """125 °F in the US, 50 °C elsewhere: common rule and label, from memory."""
    texts = {"gas": "oxygen", "gauge": "2000 psi", "rules": rules}
    with pytest.raises(ValueError, match=r"too hot to use.*move people away.*Hot cylinder"):
        answer("cylinder-weather", **texts, weather="70 degF", cylinder_temperature=hot)
    assert "not for use" not in answer("cylinder-weather", **texts, weather=cold)["results"]["gauge_then"]["text"]
    assert "not for use" in answer("cylinder-weather", **texts, weather=hot)["results"]["gauge_then"]["text"]
    with pytest.raises(ValueError, match="this page ends there"):
        answer("cylinder-weather", **texts, weather="66 degC")


@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
@pytest.mark.parametrize("gas", ["oxygen", "acetylene", "propane", "propylene", "hydrogen", "methane"])
def test_every_row_above_the_limit_is_marked(gas: str, rules: str) -> None:
    gauge = "150 psi" if gas == "acetylene" else "2000 psi"
    rows = answer("cylinder-weather", gas=gas, gauge=gauge, weather="70 degF", rules=rules)["tables"][0]["rows"]
    limit = 125 if rules == "us" else 50
    assert {row[2] for row in rows if float(row[0]) > limit} == {"not for use"}
    assert {row[2] for row in rows if float(row[0]) <= limit} == {""}


def test_the_sun_warms_a_cylinder_by_what_its_balance_says() -> None:
    """0.9 of 1 kW/m² taken up by the width, 16 W/m²K given off by the outline: 900/16/π = 17.9 K, by hand."""
    got = answer("cylinder-weather", gas="propane", weather="30 degC", rules="iso")["results"]["sun_temperature"]
    assert got["value"] == pytest.approx(47.9, abs=0.01)
    assert got["how_sure"] == "from memory"


STORE = {"place": "indoors", "oxygen": "244 ft^3", "fuel_gas": "130 ft^3", "apart": "30 ft", "burnable": "30 ft"}

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


@pytest.mark.parametrize(("time", "says"), [("24 h", "in storage"), ("23.9 h", "in use"), ("15 d", "in storage")])
def test_in_storage_means_no_draw_within_a_day(time: str, says: str) -> None:
    """OSHA letter of 31 Dec 1998, read: 24 hours, nights included."""
    assert answer("storage-check", **STORE, next_draw=time)["results"]["counts_as"]["text"].startswith(says)


@pytest.mark.parametrize(("weight", "says"), [("30 lb", "no cap is required"), ("30.1 lb", "a cap or collar is required")])
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
        pytest.param("indoor fuel gas", "2500 ft³", "NFPA 51, from memory", id="NFPA 51, memory: 2,500 ft3"),
        pytest.param("liquid oxygen", "13000 ft³", "(b)(4)(iv), read", id="29 CFR 1910.253(b)(4)(iv), read: 13,000 ft3"),
        pytest.param("liquid oxygen reserve", "25000 ft³", "(b)(4)(iv), read", id="29 CFR 1910.253(b)(4)(iv), read: 25,000 ft3"),
        pytest.param("generator wall", "60 min", "(b)(4)(ii), read", id="29 CFR 1910.253(b)(4)(ii), read: 1 h"),
        pytest.param("manifold fuel", "3000 ft³", "(c)(1)(ii), read", id="29 CFR 1910.253(c)(1)(ii), read: 3,000 ft3"),
        pytest.param("manifold lpg", "300 lb", "(c)(1)(ii), read", id="29 CFR 1910.253(c)(1)(ii), read: 300 lb"),
        pytest.param("manifold oxygen", "6000 ft³", "(c)(2)(iii), read", id="29 CFR 1910.253(c)(2)(iii), read: 6,000 ft3"),
        pytest.param("manifold apart", "50 ft", "(c)(1)(ii), read", id="29 CFR 1910.253(c)(1)(ii), read: 50 ft"),
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
        pytest.param("space per welder", "10000 ft³", "283 m³", "(c)(2)(i)(A), read", id="29 CFR 1910.252(c)(2)(i)(A), read"),
        pytest.param("ceiling", "16 ft", "4.877 m", "(c)(2)(i)(B), read", id="29 CFR 1910.252(c)(2)(i)(B), read"),
        pytest.param("rate", "2000 ft³/min", "56.6 m³/min", "(c)(2)(ii), read", id="29 CFR 1910.252(c)(2)(ii), read"),
        pytest.param("hood speed", "100 ft/min", "30.5 m/min", "(c)(3)(i), read", id="29 CFR 1910.252(c)(3)(i), read: 100 fpm"),
        pytest.param("hood speed", "100 ft/min", "30.5 m/min", "§1536 (a), read", id="Cal. Title 8 §1536(a), read: 100 fpm"),
        pytest.param("enclosure speed", "100 ft/min", "30.5 m/min", "(c)(3)(ii), read", id="29 CFR 1910.252(c)(3)(ii), read"),
        pytest.param("duct speed", "4000 ft/min", "1219 m/min", "(c)(3)(i), read", id="29 CFR 1910.252(c)(3)(i), read: duct"),
        pytest.param("hood width", "3 in", "76.2 mm", "(c)(3)(i), read", id="29 CFR 1910.252(c)(3)(i), read: slot"),
        pytest.param("screen above floor", "24 in", "609.6 mm", "(c)(1)(ii), read", id="29 CFR 1910.252(c)(1)(ii), read"),
        pytest.param("strip coating", "4 in", "101.6 mm", "1926.354 (c)(1), read", id="29 CFR 1926.354(c)(1), read"),
        pytest.param("deficient", "19.5 %", "19.5 %", "1910.146 (b), read", id="29 CFR 1910.146(b), read: 19.5"),
        pytest.param("enriched", "23.5 %", "23.5 %", "1910.146 (b), read", id="29 CFR 1910.146(b), read: 23.5"),
        pytest.param("enriched", "22 %", "22 %", "shipyard", id="29 CFR 1915.12, read: 22.0"),
        pytest.param("normal", "20.8 %", "20.8 %", "shipyard", id="OSHA shipyard pages, read: 20.8 to 21"),
        pytest.param("fuel share", "10 %", "10 %", "1910.146 (b), read", id="29 CFR 1910.146(b), read: 10 % of LFL"),
        pytest.param("fuel share", "14 %", "14 %", "OD0017", id="US Army OD0017, read: 14 % of LFL"),
        pytest.param("dust", "5 ft", "1.524 m", "1910.146 (b), read", id="29 CFR 1910.146(b), read: 5 ft"),
        pytest.param("mine acetylene", "0.4 %", "0.4 %", "75.321(b), read", id="30 CFR 75.321(b), read: acetylene"),
        pytest.param("mine mps", "0.3 %", "0.3 %", "75.321(b), read", id="30 CFR 75.321(b), read: MPS"),
    ],
)
def test_other_figures_of_air_stand_beside(topic: str, us: str, metric: str, source: str) -> None:
    for rules, figure in (("us", us), ("iso", metric)):
        rows = answer("ventilation", **AIR, rules=rules)["tables"][3]["rows"]
        assert any(row[0] == topic and row[1] == figure and source in row[3] for row in rows)


@pytest.mark.parametrize(("normal", "proof"), [("60 psi", 300), ("200 psi", 400)])
def test_a_hose_joint_holds_twice_its_pressure_and_never_less_than_300_psi(normal: str, proof: float) -> None:
    """Row S19: 29 CFR 1910.253(e)(5)(iv), read."""
    got = answer("hose-proof", normal_gauge=normal)["results"]["proof_gauge"]
    assert got["value"] == pytest.approx(proof, rel=1e-9)
