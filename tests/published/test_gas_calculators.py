"""Figures and problems of gas in print, through the calculators that use them."""

from typing import Any

import pytest

from calc import answer
from tests.published.rows import Row, case, shown

EXACT = 1e-9
CGA = "CGA G-1"
HOSE = {
    "bore": "1/4 in",
    "fuel_gauge": "5 psi",
    "oxygen_gauge": "5 psi",
    "orifice": "#68",
    "extra_volume": "0 L",
}
SHUT = {"gas": "acetylene", "bore": "1/4 in", "length": "25 ft", "time": "10 min", "extra_volume": "0 L"}
WEIGHED = {"gross_weight": "30 lb", "tare_weight": "17 lb", "least_gauge": "30 psi"}
TORCH = {"orifice": "#68", "gauge": "5 psi"}

ROWS = [
    # Draw: a share of the contents an hour, of a 225 ft³ cylinder unless said.
    case(CGA + ", 1/10 on and off", "memory", "draw-limit", "draw_limit", 22.5, "cfh", 1e-6,
         flow="10 cfh", acetylene_contents="225 ft^3", full_contents="225 ft^3"),
    case(CGA + ", 1/15 without a stop", "memory", "draw-limit", "draw_limit", 15, "cfh", 1e-6,
         flow="10 cfh", acetylene_contents="225 ft^3", full_contents="225 ft^3", duty="continuous"),
    case(CGA + ", 1/10 of half a cylinder", "memory", "draw-limit", "draw_limit", 11.25, "cfh", 1e-6,
         flow="10 cfh", acetylene_contents="112.5 ft^3", full_contents="225 ft^3"),
    case(CGA + ", the full one beside it", "memory", "draw-limit", "full_draw_limit", 22.5, "cfh", 1e-6,
         flow="10 cfh", acetylene_contents="112.5 ft^3", full_contents="225 ft^3"),
    case("US Army OD0017: 50 ft3/h of 225 is one part in 4.5", "read", "draw-limit", "draw_share", 100 / 4.5,
         "percent/h", 1e-6, flow="50 cfh", acetylene_contents="225 ft^3", full_contents="225 ft^3"),
    case("630 kJ/kg: 10 kg at 1/7 an hour chills by 250 W", "memory", "draw-limit", "chill", 250, "W", 0.01,
         flow=f"{10 * 0.8986 / 7!r} m^3/h", acetylene_contents="8.986 m^3", full_contents="8.986 m^3"),
    # Hoses: what they hold, and what comes out of them.
    case("hose 1/4 in by 25 ft, 14.73 in3", "computed", "bleed-down", "shut_volume", 14.73, "in^3", 1e-3,
         **HOSE, length="25 ft"),
    case("a textbook's 9 in balloon is 0.97 L: wrong a hundredfold", "read", "bleed-down", "shut_volume", 0.97,
         "L", 5e-3, **HOSE, length="100 ft"),
    case("at 14.696 psi a hose lets out once its volume, at 15 C", "definition", "bleed-down", "fuel_trapped", 0.241,
         "L", 2e-3, **HOSE | {"fuel_gauge": "14.696 psi", "temperature": "15 degC"}, length="25 ft"),
    case("NAVEDTRA 14265: never under 5 s", "read", "bleed-down", "bleed_fuel_time", 5, "s", EXACT, **HOSE,
         length="25 ft"),
    # Leak test.
    case("3 K look like 0.30 psi at 15 psi", "computed", "leak-test", "cooling_drop", 0.30, "psi", 0.02, **SHUT,
         first_gauge="15 psi", last_gauge="14.7 psi", first_temperature="20 degC", last_temperature="17 degC"),
    case("3 K look like 0.35 psi at 20 psi", "computed", "leak-test", "cooling_drop", 0.355, "psi", 0.02,
         **SHUT | {"gas": "oxygen"}, first_gauge="20 psi", last_gauge="19.7 psi", first_temperature="20 degC",
         last_temperature="17 degC"),
    case("0.241 L, 1 mL/min, 0.5 psi: ideal gas law", "computed", "leak-test", "wait",
         0.241 * 0.5 / 14.696 * 288.15 / 293.15 * 1000, "min", 2e-3, **SHUT, first_gauge="14 psi",
         last_gauge="14 psi", first_temperature="20 degC", last_temperature="20 degC"),
    # Liquefied gases: gauge at rest, and gas of a weight.
    *(
        case("pure gas, reference equation", "computed", "liquid-fuel-left", "vapour_gauge", psi, "psi", 0.022,
             **WEIGHED, fuel=fuel, temperature=f"{fahrenheit} degF")
        for fuel, row in (
            ("propane", {0: 24, 32: 54, 70: 110, 100: 174}), ("propylene", {0: 33, 32: 70, 70: 137, 100: 213}),
        )
        for fahrenheit, psi in row.items()
    ),
    case("US Army TC 9-237: 94 psi at 70 F", "read", "liquid-fuel-left", "vapour_gauge", 94, "psi", 1e-6, **WEIGHED,
         fuel="methylacetylene-propadiene", temperature="70 degF"),
    case("ideal ft3 of a pound at 70 F", "computed", "liquid-fuel-left", "gas_left", 8.77, "ft^3", 3e-3,
         **WEIGHED | {"gross_weight": "18 lb"}, fuel="propane"),
    case("ideal ft3 of a pound at 70 F", "computed", "liquid-fuel-left", "gas_left", 9.19, "ft^3", 3e-3,
         **WEIGHED | {"gross_weight": "18 lb"}, fuel="propylene"),
    # How long it lasts.
    case("US Army OD0017: 1.1 of oxygen for one", "read", "hours-left", "oxygen_for_fuel", 110, "ft^3", 1e-6,
         **TORCH, fuel_contents="100 ft^3"),
    case("trade practice: stop at 29 psi at 70 F", "practice", "hours-left", "fuel_stop_gauge", 29, "psi", 1e-6,
         **TORCH, fuel_contents="100 ft^3"),
    # Straight-line rule: too high by how much.
    case("reference equation: linear 50 % is 49.3 % of all gas", "computed", "oxygen-left", "straight_line_error",
         0.7, "%", 0.1, water_volume="43 L", gauge="1100 psi"),
]  # fmt: skip


@pytest.mark.parametrize("row", ROWS)
def test_the_published_figure_comes_out(row: Row) -> None:
    assert shown(row) == pytest.approx(row.figure, rel=row.within, abs=1e-12)


def signals(got: dict[str, Any]) -> list[str]:
    return [caution["signal"] for caution in got["cautions"]]


@pytest.mark.parametrize(
    ("flow", "duty", "signal"),
    [
        pytest.param("22.4 cfh", "intermittent", None, id="cga-g1-memory-below-a-tenth"),
        pytest.param("22.6 cfh", "intermittent", "WARNING", id="cga-g1-memory-above-a-tenth"),
        pytest.param("14.9 cfh", "continuous", None, id="cga-g1-memory-below-a-fifteenth"),
        pytest.param("15.1 cfh", "continuous", "WARNING", id="cga-g1-memory-above-a-fifteenth"),
        pytest.param("32.1 cfh", "intermittent", "WARNING", id="manly-1916-read-below-a-seventh"),
        pytest.param("32.2 cfh", "intermittent", "DANGER", id="manly-1916-read-above-a-seventh"),
        pytest.param("32.2 cfh", "continuous", "DANGER", id="manly-1916-read-above-a-seventh-whatever"),
        pytest.param("50 cfh", "intermittent", "DANGER", id="army-od0017-read-flat-50-is-not-followed"),
    ],
)
def test_a_draw_past_the_rule_is_warned_of(flow: str, duty: str, signal: str | None) -> None:
    got = answer(
        "draw-limit", flow=flow, acetylene_contents="225 ft^3", full_contents="225 ft^3", duty=duty
    )
    drawn = [one["signal"] for one in got["cautions"] if "of the contents an hour" in one["text"]]
    assert drawn == ([signal] if signal else [])
    assert signals(got)[0] == (signal or "WARNING")  # of acetylene itself, whatever is drawn


def test_a_heating_nozzle_wants_several_ordinary_cylinders() -> None:
    """30 ft³/h of a tenth an hour wants 300 ft³: three of 130."""
    got = answer("draw-limit", flow="30 cfh", acetylene_contents="130 ft^3", full_contents="130 ft^3")
    assert got["results"]["cylinders"]["value"] == 3
    assert got["results"]["contents_needed"]["value"] == pytest.approx(300)
    assert [one["signal"] for one in got["cautions"] if "manifold made for acetylene" in one["text"]] == ["WARNING"]


def test_more_gas_than_a_cylinder_holds_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^Acetylene in the cylinder now: .*more than a full one holds; give 130 ft³ or less"):
        answer("draw-limit", flow="10 cfh", acetylene_contents="300 ft^3", full_contents="130 ft^3")


def test_however_little_gas_it_burns_at_the_hose_end() -> None:
    for length, room in (("10 ft", "100000 m^3"), ("300 ft", "300 L")):
        got = answer("bleed-down", length=length, room_volume=room, **HOSE)
        assert "at the hose end it burns at any amount" in got["results"]["room_share"]["text"]
        assert {caution["id"] for caution in got["cautions"]} >= {"fuel-let-out", "oxygen-let-out"}


STEADY = {"first_temperature": "20 degC", "last_temperature": "20 degC"}
COOLED = {"first_temperature": "20 degC", "last_temperature": "17 degC"}


@pytest.mark.parametrize(
    ("last", "temperatures", "signal"),
    [
        ("14 psi", STEADY, "WARNING"),
        ("13.7 psi", COOLED, "WARNING"),
        ("13.5 psi", STEADY, "DANGER"),
        ("13 psi", COOLED, "DANGER"),
        ("5 psi", COOLED, "DANGER"),
        ("14.3 psi", COOLED, "WARNING"),
        ("14 psi", {"first_temperature": "17 degC", "last_temperature": "20 degC"}, "DANGER"),
    ],
)
def test_a_drop_that_cooling_does_not_explain_is_a_danger(
    last: str, temperatures: dict[str, str], signal: str
) -> None:
    """3 K take 0.29 psi off 14 psi; a steady gauge in a warming hose has lost as much."""
    got = answer("leak-test", first_gauge="14 psi", last_gauge=last, **temperatures, **SHUT)
    assert signals(got)[0] == signal
    assert [c["signal"] for c in got["cautions"] if c["id"].startswith("leak-")] == [signal]
    said = " ".join([got["results"]["verdict"]["text"], got["cautions"][0]["text"]])
    if signal == "DANGER":
        assert "Shut the cylinders, " in said
        assert "find the leak" in said
    else:
        assert "soap every joint and repeat" in said.lower()
        assert "hide" in said


@pytest.mark.parametrize("last", ["14 psi", "13.7 psi", "13 psi", "14.5 psi"])
@pytest.mark.parametrize("temperatures", [STEADY, COOLED])
def test_no_reading_ever_says_that_nothing_leaks(last: str, temperatures: dict[str, str]) -> None:
    got = answer("leak-test", first_gauge="14 psi", last_gauge=last, **temperatures, **SHUT)
    said = repr(got).lower()
    for verdict in ("no leak", "only cooling", "is tight", "does not leak", "leak-free", "passed"):
        assert verdict not in said
    assert got["results"]["smallest_leak"]["value"] > 0
    assert got["results"]["leak_rate"]["high"] >= got["results"]["smallest_leak"]["value"]


def test_acetylene_past_its_limit_is_refused_in_a_leak_test() -> None:
    with pytest.raises(ValueError, match=r"^Gauge at first: acetylene is never used above 15 psi"):
        answer("leak-test", first_gauge="20 psi", last_gauge="14 psi", **STEADY, **SHUT)


def test_seventy_pounds_of_mps_are_not_fifteen_hundred_feet_of_acetylene_by_energy() -> None:
    """[navy14250] prints 1,500 ft³; 70 lb is 690 ft³ of gas at 2,404 to 2,460 Btu/ft³, as
    about 1,150 ft³ of acetylene at 1,470: a trap.
    """
    got = answer(
        "liquid-fuel-left", fuel="methylacetylene-propadiene", gross_weight="190 lb", tare_weight="120 lb",
        full_weight="70 lb", least_gauge="30 psi",
    )  # fmt: skip
    feet = got["results"]["gas_left"]["value"]
    assert feet * 2460 / 1470 < 0.8 * 1500


def test_mps_has_one_pressure_and_no_other() -> None:
    for temperature in ("60 degF", "80 degF", "15 degC"):
        got = answer(
            "liquid-fuel-left", fuel="methylacetylene-propadiene", temperature=temperature, **WEIGHED
        )["results"]
        assert got["vapour_gauge"]["value"] is None
        assert "only the figure at 70 °F is known" in got["vapour_gauge"]["text"]
        assert got["draw_kept"]["value"] is None


@pytest.mark.parametrize(
    ("temperature", "said"),
    [("-20 degF", "no: the cylinder gives"), ("20 degF", "not for long"), ("100 degF", "perhaps")],
)
def test_cold_takes_the_torch_its_pressure(temperature: str, said: str) -> None:
    got = answer("liquid-fuel-left", temperature=temperature, flow="15 cfh", **WEIGHED)["results"]
    assert got["pressure_held"]["text"].startswith(said)


def test_a_lower_pressure_leaves_more_to_draw() -> None:
    """The lowest pressure needed decides the draw, which is a wide band."""
    draws = [
        answer("liquid-fuel-left", **WEIGHED | {"least_gauge": psi})["results"]["draw_kept"]
        for psi in ("5 psi", "30 psi", "60 psi", "100 psi", "109 psi", "112 psi")
    ]
    assert [d["value"] for d in draws] == sorted((d["value"] for d in draws), reverse=True)
    assert draws[-1]["value"] == 0
    assert "too cold" in draws[-1]["text"]
    assert draws[0]["high"] >= 2.9 * draws[0]["low"]


@pytest.mark.parametrize("gross", ["16 lb", "45 lb"])
def test_a_weight_that_cannot_be_is_refused(gross: str) -> None:
    with pytest.raises(ValueError, match=r"^Cylinder weighs now: .*(less than its tare|overfilled)"):
        answer("liquid-fuel-left", **WEIGHED | {"gross_weight": gross})
