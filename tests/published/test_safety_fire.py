"""Rows of sparks, fire watch, eyes and heat of the safety rules, through the calculators."""

import pytest

from calc import InputError, answer
from calc.data.texts import filled_text

EXACT = 1e-9
CUT = {"process": "cutting", "height": "1 m", "nearest": "6 m"}
FILLS = {
    1800: (1382, 1476, 1569, 1624, 1662, 1708, 1754, 1800, 1846, 1892, 1938, 1984, 2030, 2075),
    2015: (1534, 1642, 1749, 1813, 1856, 1909, 1962, 2015, 2068, 2121, 2174, 2227, 2279, 2332),
    2200: (1662, 1783, 1902, 1974, 2022, 2081, 2141, 2200, 2259, 2318, 2377, 2436, 2495, 2554),
    2265: (1707, 1832, 1956, 2031, 2080, 2142, 2203, 2265, 2326, 2388, 2449, 2510, 2572, 2633),
    2400: (1799, 1934, 2067, 2148, 2201, 2267, 2334, 2400, 2466, 2532, 2598, 2664, 2730, 2796),
    2640: (1961, 2113, 2264, 2355, 2415, 2490, 2565, 2640, 2715, 2790, 2864, 2939, 3013, 3087),
}


@pytest.mark.parametrize(
    ("process", "height", "metres"),
    [
        pytest.param("cutting", "1 m", 40 * 0.3048, id="30 to 40 ft, TC 9-237 and NAVEDTRA 14250, read"),
        pytest.param("cutting", "1 m", 10.0, id="7.5 m and 2.5 m of rolling, DGUV 205-001, read"),
        pytest.param(
            "cutting", "20 m", 18.5, id="10 m and half a metre for each above 3, DGUV 100-500, read"
        ),
        pytest.param("welding", "1 m", 7.5, id="welding 7.5 m, DGUV 100-500, read"),
        pytest.param("soldering", "1 m", 2.0, id="soldering 2 m, DGUV 100-500, read"),
        pytest.param("cutting", "2 m", 13.8, id="3 mm at 12 m/s from 2 m, scipy DOP853, computed"),
    ],
)
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_sparks_reach_at_least_what_is_in_print(
    process: str, height: str, metres: float, rules: str
) -> None:
    got = answer("hot-work-zone", **CUT | {"process": process, "height": height, "rules": rules},
                 units={"spark_reach": "m"})["results"]["spark_reach"]  # fmt: skip
    assert got["value"] >= metres * (1 - 1e-6)
    assert "may go further" in got["text"]


NOTHING = {"openings": "none", "floor": "bare", "wall": "none", "pipes": "none"}


@pytest.mark.parametrize(
    ("given", "says"),
    [
        pytest.param(
            {"nearest": "34 ft"}, "nearer than 35 ft", id="29 CFR 1910.252(a)(2)(iii)(A)(1), read: 34 ft"
        ),
        pytest.param(
            {"nearest": "60 ft", "stuff": "easy"},
            "sparks light easily",
            id="(A)(2), read: further but easily lit",
        ),
        pytest.param(
            {"nearest": "60 ft", "openings": "wall"}, "openings within 35 ft", id="(A)(3), read: openings"
        ),
        pytest.param(
            {"nearest": "60 ft", "wall": "metal"},
            "carry heat to the other side",
            id="(A)(4), read: metal wall",
        ),
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
        pytest.param(
            "15 m", "National Fire Code of Canada", id="15 m, National Fire Code of Canada, memory"
        ),
        pytest.param("3.05 m", "Chicago", id="10 ft, Chicago 15-26-470, read"),
        pytest.param("7.62 m to 9.14 m", "Fire Engineering", id="25 to 30 ft, Fire Engineering, read"),
        pytest.param("10 m", "a German insurer", id="10 m and more, grinding, read"),
        pytest.param("9.14 m to 12.2 m", "TC 9-237", id="30 to 40 ft, TC 9-237, read"),
    ],
)
def test_other_distances_in_print_stand_beside(figure: str, source: str) -> None:
    table = answer("hot-work-zone", **CUT | {"rules": "iso"})["tables"][1]
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


@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
@pytest.mark.parametrize(
    ("changed", "starts", "says"),
    [
        pytest.param({"stuff": "vapour"}, "What burns there: ", "explodes", id="29 CFR 1910.252(a)(2)(vi)(C), read-m"),
        pytest.param({"wall": "panel"}, "Wall, ceiling or roof near the work: ", "burns inside", id="29 CFR 1910.252(a)(2)(xi), read-m"),
    ],
)  # fmt: skip
def test_no_distance_is_given_where_the_air_or_the_wall_would_burn(
    changed: dict[str, str], starts: str, says: str, rules: str
) -> None:
    with pytest.raises(InputError) as refused:
        answer("hot-work-zone", **(CUT | changed), rules=rules)
    assert refused.value.field == next(iter(changed))
    assert refused.value.message.startswith(starts)
    assert says in refused.value.message


def test_an_unknown_wall_brings_the_hazard_of_one_that_burns_inside() -> None:
    """29 CFR 1910.252(a)(2)(xi): no hot work on panels that burn; unknown counts as the worse."""
    known, unknown = (answer("hot-work-zone", **(CUT | {"wall": wall})) for wall in ("masonry", "hidden"))
    panel = "combustible-panel"
    assert panel in [one["id"] for one in unknown["cautions"]]
    assert panel not in [one["id"] for one in known["cautions"]]


@pytest.mark.parametrize(
    ("place", "says", "source"),
    [
        pytest.param(
            "workshop",
            "30 min",
            "1910.252 (a)(2)(iii)(B)",
            id="29 CFR 1910.252(a)(2)(iii)(B), read: 30 min",
        ),
        pytest.param("construction", "no number", "1926.352 (e)", id="29 CFR 1926.352(e), read: no number"),
        pytest.param(
            "shipyard",
            "30 min, unless a survey",
            "1915.504",
            id="29 CFR 1915.504(c)(2)(iv), read: 30 min unless",
        ),
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
        pytest.param(
            "United States",
            "60 min",
            "up to 3 h",
            "NFPA 51B-2019",
            id="NFPA 51B-2019, read-m: 60 and 180 min",
        ),
        pytest.param("United States", "2 h", "", "NFPA 241", id="NFPA 241, read-m: 2 h"),
        pytest.param(
            "United Kingdom",
            "60 min",
            "60 min, up to 3 h, every 20 min",
            "Joint Code",
            id="Joint Code, read-m",
        ),
        pytest.param(
            "elsewhere", "60 min", "", "Canada", id="National Fire Code of Canada, memory: 60 min"
        ),
        pytest.param(
            "elsewhere", "60 min", "up to 3 h", "data sheet 10-3", id="insurers, told: 60 and 180 min"
        ),
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


@pytest.mark.parametrize(
    ("rules", "told"),
    [
        # UK Joint Code, 10th edition, 16.15: 60 min of watch, then 60 min of checks; NFPA 51B-2019: 60 min.
        ("us", ("60 min",)), ("uk", ("60 min", "then 60 min of checks")), ("iso", ("60 min", "then 60 min of checks")),
    ],
)  # fmt: skip
def test_lists_tell_the_watch_that_the_calculator_tells(rules: str, told: tuple[str, ...]) -> None:
    text = filled_text("{fire-watch}", rules)
    assert text == ", ".join(told)
    assert all(part in answer("fire-watch", place="workshop", rules=rules)["results"]["fire_watch"]["text"] for part in told)


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
        got = answer(
            "cylinder-weather",
            gas="oxygen",
            gauge=f"{fill} psi",
            weather="131 degF",
            units={"gauge_then": "psi"},
        )
        assert got["results"]["gauge_then"]["value"] <= 1.25 * fill


def test_the_fusible_plug_of_acetylene() -> None:
    """212 °F, 100 °C: US Army OD0017, read."""
    for rules, says in (("us", "212 °F"), ("iso", "100 °C"), ("uk", "100 °C")):
        got = answer("cylinder-weather", gas="acetylene", gauge="200 psi", weather="100 degF", rules=rules)
        assert says in got["results"]["relief"]["text"]


@pytest.mark.parametrize(
    ("rules", "cold", "hot"),
    [("us", "125 degF", "126 degF"), ("iso", "50 degC", "51 degC"), ("uk", "50 degC", "51 degC")],
)
def test_a_temperature_above_the_limit_is_refused_now_and_marked_later(
    rules: str, cold: str, hot: str
) -> None:
    """125 °F in the US, 50 °C elsewhere: common rule and label, from memory."""
    texts = {"gas": "oxygen", "gauge": "2000 psi", "rules": rules}
    with pytest.raises(ValueError, match=r"too hot to use.*move people away.*Hot cylinder"):
        answer("cylinder-weather", **texts, weather="70 degF", cylinder_temperature=hot)
    assert (
        "not for use"
        not in answer("cylinder-weather", **texts, weather=cold)["results"]["gauge_then"]["text"]
    )
    assert (
        "not for use" in answer("cylinder-weather", **texts, weather=hot)["results"]["gauge_then"]["text"]
    )
    with pytest.raises(ValueError, match="this page ends there"):
        answer("cylinder-weather", **texts, weather="66 degC")


@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
@pytest.mark.parametrize("gas", ["oxygen", "acetylene", "propane", "propylene", "hydrogen", "methane"])
def test_every_row_above_the_limit_is_marked(gas: str, rules: str) -> None:
    gauge = {"acetylene": "150 psi", "propane": "90 psi", "propylene": "110 psi"}.get(gas, "2000 psi")
    rows = answer("cylinder-weather", gas=gas, gauge=gauge, weather="70 degF", rules=rules)["tables"][0][
        "rows"
    ]
    limit = 125 if rules == "us" else 50
    assert {row[2] for row in rows if float(row[0]) > limit} == {"not for use"}
    assert {row[2] for row in rows if float(row[0]) <= limit} == {""}


def test_the_sun_warms_a_cylinder_by_what_its_balance_says() -> None:
    """0.9 of 1 kW/m² taken up by the width, 16 W/m²K given off by the outline: 900/16/π = 17.9 K, by hand."""
    got = answer("cylinder-weather", gas="propane", weather="30 degC", rules="iso")["results"][
        "sun_temperature"
    ]
    assert got["value"] == pytest.approx(47.9, abs=0.01)
    assert got["how_sure"] == "from memory"
