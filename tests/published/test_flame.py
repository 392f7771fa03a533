"""The flame in print: names at the edges of their bands, temperatures, looks."""

import pytest

from calc import InputError, answer
from calc.data.tables import table
from tests.published.rows import Row, case, shown

ARMY = "US Army OD0017, read"
MEMORY = "from memory"


def flame(**texts: str) -> dict[str, dict[str, object]]:
    found: dict[str, dict[str, object]] = answer("flame", **texts)["results"]
    return found


ROWS = [
    case("AWS handbook, neutral 3087 C at about 1.05", "memory", "flame", "temperature", 3085, "degC", 15 / 3085, oxygen_ratio="1.05"),
    case("TWI, hottest 3160 C", "memory", "flame", "temperature", 3159, "degC", 15 / 3159, oxygen_ratio="1.5"),
    case("TWI, propane 2828 C at 4.3", "memory", "flame", "temperature", 2828, "degC", 10 / 2828, fuel="propane", oxygen_ratio="4.3"),
    case("NAVEDTRA 14250 ch. 4, carburizing 5400 F", "read", "flame", "temperature", 5400, "degF", 0.01, oxygen_ratio="0.9"),
    case("Cantera 3.2 peak at 1.435", "computed", "flame", "peak_ratio", 1.435, "", 0.01, oxygen_ratio="1.1"),
    case("Cantera 3.2 peak 3161 C", "computed", "flame", "peak_temperature", 3161, "degC", 3 / 3161, oxygen_ratio="1.1"),
    *(
        case(f"Cantera 3.2 {fuel}", "computed", "flame", "peak_ratio", ratio, "", 0.015, fuel=fuel)
        for fuel, ratio in (("propane", 4.38), ("propylene", 3.69), ("methane", 1.83), ("hydrogen", 0.49))
    ),
    case("process table, 2.5 to burn acetylene whole", "computed", "flame", "oxygen_to_burn", 2.5, "", 1e-9, oxygen_ratio="1.1"),
    case("2/5 from the cylinder at 1:1", "read", "flame", "oxygen_from_air", 1.5, "", 1e-9, oxygen_ratio="1"),
]  # fmt: skip


@pytest.mark.parametrize("row", ROWS)
def test_the_published_flame_comes_out(row: Row) -> None:
    assert shown(row) == pytest.approx(row.figure, rel=row.within)


@pytest.mark.parametrize(
    ("fuel", "ratio", "kind"),
    [
        pytest.param("acetylene", "0.949", "carburising", id=f"0.949-{MEMORY}"),
        pytest.param("acetylene", "0.95", "slightly reducing", id=f"0.95-{MEMORY}"),
        pytest.param("acetylene", "1.039", "slightly reducing", id=f"1.039-{ARMY}"),
        pytest.param("acetylene", "1.04", "neutral", id=f"1.04-{ARMY}"),
        pytest.param("acetylene", "1.14", "neutral", id=f"1.14-{ARMY}"),
        pytest.param("acetylene", "1.141", "oxidising", id=f"1.141-{ARMY}"),
        pytest.param("methylacetylene-propadiene", "2.2", "carburising", id="2.2-TC 9-237, read in a copy"),
        pytest.param("methylacetylene-propadiene", "2.25", "between", id=f"2.25-{MEMORY}"),
        pytest.param("methylacetylene-propadiene", "2.3", "neutral", id=f"2.3-{MEMORY}"),
        pytest.param("methylacetylene-propadiene", "2.5", "neutral", id=f"2.5-{MEMORY}"),
        pytest.param("methylacetylene-propadiene", "2.51", "oxidising", id=f"2.51-{MEMORY}"),
        pytest.param("propane", "4", "no published band in our data", id="propane-none"),
        pytest.param("propylene", "3.5", "no published band in our data", id="propylene-none"),
        pytest.param("methane", "1.75", "no published band in our data", id="methane-none"),
        pytest.param("hydrogen", "0.25", "no published band in our data", id="hydrogen-none"),
    ],
)
def test_the_trades_name_changes_at_the_edge_of_its_band(fuel: str, ratio: str, kind: str) -> None:
    found = flame(fuel=fuel, oxygen_ratio=ratio, rules="uk")["flame_kind"]
    assert str(found["text"]).startswith(kind)
    assert found["how_sure"] == (
        "read in the source" if kind == "neutral" and fuel == "acetylene" else "from memory"
    )


@pytest.mark.parametrize(
    ("rules", "name"),
    [("us", "carburizing (carburising)"), ("uk", "carburising"), ("iso", "reducing (carburising)")],
)
def test_the_name_is_in_the_words_of_the_rule_set(rules: str, name: str) -> None:
    assert flame(oxygen_ratio="0.9", rules=rules)["flame_kind"]["text"] == name


@pytest.mark.parametrize(
    ("ratio", "effect"),
    [
        pytest.param("0.95", "gives carbon", id="carbon activity 15.9-Cantera"),
        pytest.param("1.00", "gives carbon", id="carbon activity 0.72-Cantera"),
        pytest.param("1.10", "little of either", id="activity 0.0012, H2O/H2 0.15-Cantera"),
        pytest.param("1.30", "oxidises alloying elements", id="H2O/H2 0.55-Cantera"),
        pytest.param("1.45", "oxidises iron", id="H2O/H2 over 0.80-Cantera"),
    ],
)
def test_the_effect_on_iron_follows_the_burnt_gas(ratio: str, effect: str) -> None:
    assert flame(oxygen_ratio=ratio)["effect_on_iron"]["text"] == effect


def test_air_in_a_neutral_flame_sets_name_and_effect_apart_and_says_why() -> None:
    found = flame(oxygen_ratio="1.1", air="3")
    assert found["flame_kind"]["text"] == "neutral"
    assert found["effect_on_iron"]["text"] == "oxidises iron"
    assert str(found["agreement"]["text"]).startswith("no: ")
    assert "air drawn in" in str(found["agreement"]["text"])
    assert flame(oxygen_ratio="1.1")["agreement"]["text"] == "yes"


@pytest.mark.parametrize(
    ("ratio", "said"),
    [("0.9", "feather pale"), ("1.1", "no feather"), ("1.3", "hiss"), ("0.6", "yellow, smoky")],
)
def test_the_look_and_the_sound_are_said(ratio: str, said: str) -> None:
    """Common training texts, from memory."""
    assert said in str(flame(oxygen_ratio=ratio)["look"]["text"])


def test_soot_stands_where_cantera_finds_it() -> None:
    """Below 0.89 of oxygen for one of acetylene; 6.3 % of all moles at 0.80: Cantera 3.2."""
    assert flame(oxygen_ratio="0.8")["soot"]["value"] == pytest.approx(6.32, abs=0.2)
    assert flame(oxygen_ratio="0.95")["soot"]["value"] == 0


def test_the_old_figure_is_shown_with_what_speaks_against_it() -> None:
    """6,300 °F is 320 K above equilibrium: Cantera 3.2, computed."""
    (printed,) = answer("flame", oxygen_ratio="1.1")["tables"]
    old = [row for row in printed["rows"] if row[0] == "6,300 °F"]
    assert {row[2].split(",")[0] for row in old} == {"Manly 1916", "FAA-H-8083-31 ch. 5"}
    for row in old:
        assert 310 < float(row[-1].split()[0]) < 330
    assert "cannot be" in printed["note"]


def test_printed_temperatures_say_the_same_in_both_units() -> None:
    for row in table("flame-temperatures-printed"):
        if "°F" in row.as_printed:
            fahrenheit = float(row.as_printed.split()[0].replace(",", ""))
            assert row.temperature == pytest.approx(273.15 + (fahrenheit - 32) / 1.8, abs=3.0)


@pytest.mark.parametrize("fuel", ["acetylene", "propane", "hydrogen", "methylacetylene-propadiene"])
def test_every_picture_has_its_sentence_and_no_figure_is_lost(fuel: str) -> None:
    got = answer("flame", fuel=fuel)
    assert len(got["pictures"]) == (4 if fuel == "acetylene" else 3)
    for picture in got["pictures"]:
        assert picture["sentence"].endswith(".")
        assert "nan" not in picture["svg"]


@pytest.mark.parametrize(
    ("texts", "says"),
    [
        ({"oxygen_ratio": "0.3"}, "too little oxygen to burn; with this fuel and air give 0.448 to 7.5"),
        ({"oxygen_ratio": "8"}, "more oxygen than this sum was checked for"),
        ({"fuel": "hydrogen", "oxygen_ratio": "1.6"}, "more oxygen"),
        ({"fuel": "coal"}, "Fuel gas"),
        ({"oxygen_ratio": "1.1", "oxygen_purity": "80 %"}, "Purity of the oxygen: 80 % is too small"),
        ({"oxygen_ratio": "1.1", "air": "26"}, "Air mixed in, for one of fuel: 26 is too large"),
        ({"oxygen_ratio": "1.1", "gas_temperature": "600 degC"}, "Temperature of the gases"),
    ],
)
def test_a_flame_that_cannot_be_is_refused_with_a_sentence(texts: dict[str, str], says: str) -> None:
    with pytest.raises(InputError, match=says):
        answer("flame", **texts)


def test_air_alone_burns_acetylene_as_printed() -> None:
    """Acetylene in air, stoichiometric, 2267 °C: Cantera, computed."""
    found = flame(oxygen_ratio="0", air="11.935", rules="iso")["temperature"]
    assert found["value"] == pytest.approx(2267, abs=8)
