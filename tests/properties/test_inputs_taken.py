"""How an input is taken and refused, worked by hand: limits at their edges, units, gauge numbers, and each sentence whole.

Definitions: inch 0.0254 m, psi 6894.757 Pa (NIST SP 811, read). Gauge 16 of sheet steel is 0.0598 in and 16 SWG 0.064 in
by the trade's tables, as tests of those tables hold.
"""

import pytest

from calc.ask.errors import InputError
from calc.ask.inputs import (
    LONGEST_LIST,
    as_printed,
    bound_si,
    convert_text,
    rules_of,
    taken_input,
    taken_inputs,
    units_of,
)  # fmt: skip
from calc.ask.reading import LONGEST, UnreadableError, typed
from calc.ask.words_and_days import day_of, words_of
from calc.declare import Choice, Day, Field, Words
from calc.declare.catalogue import calculators

PSI = 6894.757293168
GAUGE = Field("Gauge", ("psi", "bar"), example="10 psi", low="2 psi", high="40 psi")
SHARE = Field("Share", ("%",), example="50 %", low="0 %", high="100 %")
SHEET = Field("Sheet", ("in", "mm"), example="1/8 in", low="0.01 in", high="1 in", sheet_gauge=True, drill=True)


def said(field: Field | Choice, text: str, rules: str = "us", metal: str = "") -> str:
    """The sentence that a text is refused with."""
    with pytest.raises(InputError) as refused:
        taken_input("name", field, text, rules, metal)
    assert refused.value.field == "name"
    return refused.value.message


def test_a_limit_itself_will_do_and_a_hair_beyond_it_will_not() -> None:
    for text in ("2 psi", "40 psi", "40.00000001 psi", "1.99999999999 psi"):
        assert taken_input("name", GAUGE, text, "us").si == pytest.approx(typed(text).number * PSI)
    assert said(GAUGE, "1.99 psi") == "Gauge: 1.99 psi is too small; give 2 psi to 40 psi."
    assert said(GAUGE, "40.000001 psi") == "Gauge: 40.000001 psi is too large; give 2 psi to 40 psi."
    assert said(GAUGE, "4 bar") == "Gauge: 4 bar is too large; give 0.1379 bar to 2.758 bar."
    assert said(SHARE, "-0.001 %") == "Share: -0.001 % is too small; give 0 % to 100 %."
    assert taken_input("name", SHARE, "0 %", "us").si == 0


def test_a_limit_on_one_side_and_a_limit_with_words_of_its_own() -> None:
    least = Field("Length", ("ft", "m"), example="5 ft", low="1 ft")
    most = Field("Length", ("ft", "m"), example="5 ft", high="9 ft")
    assert said(least, "0.5 ft") == "Length: 0.5 ft is too small; give 1 ft or more."
    assert said(most, "10 ft") == "Length: 10 ft is too large; give 9 ft or less."
    own = Field("Heat", ("degC",), example="20 degC", low="0 degC", high="100 degC", too_low="it freezes", too_high="it boils")
    assert said(own, "-5 degC") == "Heat: it freezes; give 0 °C to 100 °C."
    assert said(own, "105 degC") == "Heat: it boils; give 0 °C to 100 °C."
    by_place = Field("Gauge", ("psi", "bar"), example="10 psi", high={"us": "15 psi", "iso": "1 bar", "uk": "0.62 bar"})
    assert taken_input("name", by_place, "0.9 bar", "iso").si == pytest.approx(90000)
    assert said(by_place, "0.9 bar", "uk") == "Gauge: 0.9 bar is too large; give 0.62 bar or less."


def test_a_share_needs_no_sign_of_its_own_and_everything_else_needs_its_unit() -> None:
    assert taken_input("name", SHARE, "50", "us").si == pytest.approx(0.5)
    assert taken_input("name", SHARE, "50", "us").unit == "%"
    one = Field("Heat", ("degC",), example="20 degC")
    assert said(one, "50") == "Heat: write the unit too, for example 20 °C."
    assert said(GAUGE, "10") == "Gauge: write the unit too, for example 10 psi."
    both = Field("Part", ("%", "ft"), example="5 %")
    assert said(both, "5") == "Part: write the unit too, for example 5 %."
    bare = Field("Ratio", ("",), example="1.1")
    assert taken_input("name", bare, "1.2", "us").si == 1.2
    assert said(bare, "1.2 psi") == "Ratio: “psi” does not fit here; use no unit, as in 1.1."


def test_another_unit_of_the_kind_is_taken_and_one_of_another_kind_is_not() -> None:
    assert taken_input("name", GAUGE, "100 kPa", "us").si == pytest.approx(1e5)
    assert said(GAUGE, "10 ft") == "Gauge: “ft” does not fit here; use psi, bar, as in 10 psi."
    assert said(GAUGE, "10 furlongs") == "Gauge: “furlongs” does not fit here; use psi, bar, as in 10 psi."
    assert said(GAUGE, "1e300 psi").startswith("Gauge: ")
    assert said(Field("Length", ("ft",), example="1 ft"), "1e308 mile").startswith("Length: ")


def test_whole_numbers_only_where_they_are_wanted() -> None:
    count = Field("Holes", ("",), example="3", low="1", high="9", whole=True)
    assert taken_input("name", count, "3", "us").si == 3
    assert said(count, "2.5") == "Holes: 2.5 is not a whole number; give 1 to 9."
    assert said(count, "10") == "Holes: 10 is too large; give 1 to 9."


@pytest.mark.parametrize(
    ("text", "unit", "inches", "number"),
    [("16 ga", "ga", 0.0598, 16), ("16 gauge", "ga", 0.0598, 16), ("16 GAGE", "ga", 0.0598, 16), ("16 swg", "swg", 0.064, 16),
     ("SWG 16", "swg", 0.064, 16), ("#60", "#", 0.040, 60), ("no. 60", "#", 0.040, 60), ("1/16 in", "in", 0.0625, 0.0625)],
)  # fmt: skip
def test_gauge_numbers_and_drills_keep_their_word_and_their_number(text: str, unit: str, inches: float, number: float) -> None:
    got = taken_input("name", SHEET, text, "us")
    assert (got.unit, got.value, got.text) == (unit, number, text)
    assert got.si == pytest.approx(inches * 0.0254, rel=2e-3)
    assert bool(got.series) == (unit != "in")
    assert ("wire" in got.series.lower()) == (unit == "swg")
    assert (got.series == "number twist drills") == (unit == "#")


def test_a_gauge_number_goes_by_the_metal_and_what_a_field_does_not_offer_is_no_unit() -> None:
    steel, brass = (taken_input("name", SHEET, "16 ga", "us", metal).si for metal in ("low-carbon-steel", "brass"))
    assert steel == pytest.approx(0.0598 * 0.0254, rel=1e-3)
    assert brass == pytest.approx(0.0508 * 0.0254, rel=1e-3)  # Brown and Sharpe 16
    own = Field("Sheet", ("in",), example="1 in", sheet_gauge=True, metal="brass")
    assert taken_input("name", own, "16 ga", "us", "low-carbon-steel").si == brass
    plain = Field("Bore", ("in", "mm"), example="1/4 in")
    for text in ("16 ga", "#60", "16 swg"):
        assert "does not fit here; use in, mm, as in 1/4 in." in said(plain, text)
    for text in ("99 ga", "1.5 ga", "#99", "99 swg"):
        assert said(SHEET, text).startswith("Sheet: ")
        assert said(SHEET, text).endswith(".")
    heavy = Field("Sheet", ("in", "mm"), example="1 in", low="0.06 in", sheet_gauge=True)
    assert said(heavy, "16 ga") == "Sheet: 16 ga is too small; give 0.06 in or more."


def test_what_is_empty_or_unreadable_says_what_to_write() -> None:
    assert said(GAUGE, " ") == "Gauge: nothing is written here; write for example 10 psi."
    assert said(GAUGE, "rhubarb") == "Gauge: “rhubarb” is not a number; give 2 psi to 40 psi."
    assert said(Field("Free", ("psi",), example="5 psi"), "rhubarb") == "Free: “rhubarb” is not a number; give a number."
    assert said(Field("Free", ("psi",), low="5 psi"), "") == "Free: nothing is written here; write for example 5 psi."
    assert said(Field("Free", ("psi",)), "") == "Free: nothing is written here; write for example 1 psi."
    with pytest.raises(UnreadableError, match="61 characters"):
        typed("1" * (LONGEST + 1))
    assert typed("1" * LONGEST).number > 0


def test_an_option_is_picked_by_id_by_words_or_by_an_id_of_before() -> None:
    metal = Choice("Metal", {"low-carbon-steel": "Low-carbon steel", "copper": "Copper"}, example="copper")
    for text in ("low-carbon-steel", "LOW-CARBON STEEL", " low carbon steel ", "steel"):
        got = taken_input("name", metal, text, "us")
        assert (got.si, got.value, got.text) == ("low-carbon-steel", "low-carbon-steel", "Low-carbon steel")
    assert said(metal, "wood") == "Metal: “wood” is not one of them; pick one of: Low-carbon steel, Copper."
    assert said(metal, "") == "Metal: nothing fitting is picked; pick one of: Low-carbon steel, Copper."
    assert said(metal, "x" * (LONGEST + 1)) == "Metal: nothing fitting is picked; pick one of: Low-carbon steel, Copper."
    assert "is not one of them" in said(metal, "x" * LONGEST)


def test_a_long_list_of_options_is_cut_after_four() -> None:
    """With 10 letters and a comma each: thirty are 358 letters long; 28 of eleven, a comma and a space less one are 334."""
    def listed(count: int) -> str:
        options = {str(n): f"option {n:03d}" for n in range(count)}
        return said(Choice("Many", options, example="0"), "z")

    assert 12 * 28 - 2 <= LONGEST_LIST < 12 * 29 - 2
    assert listed(28).endswith("option 026, option 027.")
    assert listed(29).endswith("option 000, option 001, option 002, option 003 or one of 25 others.")


def test_all_that_is_wrong_is_told_in_the_order_of_the_form() -> None:
    calculator = calculators()["hose-volume"]
    with pytest.raises(InputError) as refused:
        taken_inputs(calculator, {"length": "x", "bore": "y", "moon": "1"}, "us")
    fields = [each["field"] for each in refused.value.listed()]
    names = [name for name in calculator.inputs if name in ("bore", "length")]
    assert fields == ["moon", *names]
    assert refused.value.listed()[0]["message"] == f"“moon” is no input of {calculator.title}."
    taken, assumed = taken_inputs(calculator, {"length": "25 ft", "bore": "1/4 in", "rules": "us", "shown_in": "us"}, "us")
    assert list(taken) == list(calculator.inputs)
    assert "length" not in assumed
    assert assumed == [name for name in calculator.inputs if name in assumed]
    with pytest.raises(InputError, match="nothing is written here; for example"):
        taken_inputs(calculator, {"length": "25 ft"}, "us")
    with pytest.raises(InputError, match="write it as text, with its unit"):
        taken_inputs(calculator, {"length": 5, "bore": "1/4 in"}, "us")  # type: ignore[dict-item]


def test_units_follow_the_place_unless_they_are_chosen() -> None:
    assert [rules_of({}), rules_of({"rules": "uk"}), rules_of({"rules": "United States"})] == ["us", "uk", "us"]
    assert [units_of({}, rules) for rules in ("us", "iso", "uk")] == ["us", "metric", "metric"]
    assert [units_of({"shown_in": one}, "us") for one in ("us", "metric")] == ["us", "metric"]
    with pytest.raises(InputError, match=r"^Units of the results: "):
        units_of({"shown_in": "furlongs"}, "us")


def test_a_number_is_told_in_another_unit_to_seven_figures() -> None:
    assert convert_text(GAUGE, "gauge", "10 psi", "bar") == "0.6894757"
    assert convert_text(GAUGE, "gauge", "0.123456789012 bar", "bar") == "0.123456789012"
    gas = Field("Gas", ("ft^3", "m^3"), example="1 ft^3", free_gas=True)
    counted = 0.3048**3 * 288.15 / ((70 + 459.67) / 1.8)  # a cubic foot at 70 °F, counted at 15 °C
    assert float(convert_text(gas, "gas", "100 ft3", "m^3")) == pytest.approx(100 * counted, rel=1e-6)
    for text, unit, told in (
        ("10", "bar", "Gauge: write the unit too."), ("10 psi", "ft", "Gauge: “ft” is not offered here."),
        ("x", "bar", "Gauge: “x” is not a number."), ("10 ft", "bar", "Gauge: write the unit too."),
    ):  # fmt: skip
        with pytest.raises(InputError) as refused:
            convert_text(GAUGE, "gauge", text, unit)
        assert refused.value.message == told


def test_declared_texts_are_printed_as_a_reader_writes_them() -> None:
    assert [as_printed(text) for text in ("12 ft^3", "70 degF", "16 ga", "3")] == ["12 ft³", "70 °F", "16 ga", "3"]
    gas = Field("Gas", ("ft^3",), example="1 ft^3", free_gas=True)
    assert bound_si(gas, "1 ft^3") < bound_si(Field("Room", ("ft^3",), example="1 ft^3"), "1 ft^3")


@pytest.mark.parametrize(
    ("text", "told"),
    [("", "nothing is written here; give 1 to 5 letters."), ("sixsix", "that is 6 letters long; give 1 to 5 letters."),
     ("a<b", "< and > cannot stand here; give 1 to 5 letters without them."), ("a>b", "< and > cannot stand here; give 1 to 5 letters without them."),
     ("a\nb", "a sign in it cannot be shown; give 1 to 5 letters on one line."), ("a\u2028b", "a sign in it cannot be shown; give 1 to 5 letters on one line.")],
)  # fmt: skip
def test_words_of_ones_own_are_held_to_their_length_and_to_one_line(text: str, told: str) -> None:
    with pytest.raises(InputError) as refused:
        words_of("name", Words("Name", longest=5), text)
    assert refused.value.message == f"Name: {told}"
    assert words_of("name", Words("Name", longest=5), " fives ") == "fives"


def test_a_day_is_held_to_the_calendar_and_to_its_limits() -> None:
    asked = Day("Made", earliest="2000-01-01", latest="2030-12-31")
    assert day_of("made", asked, " 2024-02-29 ").day == 29
    assert day_of("made", asked, "2000-01-01").year == 2000
    assert day_of("made", asked, "2030-12-31").year == 2030
    will_do = "give a day from 2000-01-01 to 2030-12-31, written as in 2026-11-25."
    for text, told in (
        ("", "nothing is written here"), ("2023-02-29", "“2023-02-29” is no day"), ("1/2/2024", "“1/2/2024” is no day"),
        ("1999-12-31", "1999-12-31 cannot be meant"), ("2031-01-01", "2031-01-01 cannot be meant"), ("x" * 30, f"“{'x' * 20}” is no day"),
    ):  # fmt: skip
        with pytest.raises(InputError) as refused:
            day_of("made", asked, text)
        assert refused.value.message == f"Made: {told}; {will_do}"
