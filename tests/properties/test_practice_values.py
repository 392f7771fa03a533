"""Values of practice problems: as round as a teacher writes them, and near what the form shows.

What is expected is worked by hand from these two wishes; over 600 draws each end of a range is met.
"""

import pytest

from calc.declare import Choice, Field
from calc.practice.dice import Dice
from calc.practice.values import class_option, class_text, round_number

DRAWS = range(600)


def drawn(field: Field, name: str = "any", rules: str = "us") -> dict[str, float]:
    """Each text drawn, and its number."""
    texts = {class_text(name, field, rules, Dice(seed)) for seed in DRAWS}
    return {text: float(text.split()[0].removeprefix("#")) for text in texts}


@pytest.mark.parametrize(
    ("number", "round_one"),
    [(1432.0, 1400.0), (1960.0, 2000.0), (1.04, 1.0), (1.96, 2.0), (2.3, 2.5), (873.0, 850.0),
     (887.0, 900.0), (0.0463, 0.045), (99.0, 100.0), (19.4, 19.0)],
)  # fmt: skip
def test_two_figures_the_second_a_0_or_5_from_20_on(number: float, round_one: float) -> None:
    assert round_number(number) == pytest.approx(round_one)


@pytest.mark.parametrize(
    ("rules", "text", "least", "most"), [("us", "70 degF", 40, 100), ("iso", "20 degC", 8, 32), ("us", "120 degF", 90, 150)]
)
def test_weather_is_drawn_up_to_30_fahrenheit_or_12_celsius_from_the_form(
    rules: str, text: str, least: float, most: float
) -> None:
    numbers = drawn(Field("Temperature", ("degF", "degC"), example=text), rules=rules).values()
    assert (min(numbers), max(numbers)) == (least, most)


@pytest.mark.parametrize(("rules", "text", "number"), [("us", "1000 degF", 1000), ("iso", "600 degC", 600)])
def test_heat_is_drawn_within_a_fifth_of_the_form_in_tens(rules: str, text: str, number: float) -> None:
    numbers = drawn(Field("Heat", ("degF", "degC"), example=text), rules=rules).values()
    assert (min(numbers), max(numbers)) == (0.8 * number, 1.2 * number)
    assert all(each % 10 == 0 for each in numbers)


def test_other_numbers_lie_between_six_tenths_and_sixteen_tenths_of_the_form() -> None:
    numbers = drawn(Field("Length", ("ft",), example="100 ft")).values()
    assert (min(numbers), max(numbers)) == (60, 160)


def test_a_full_cylinder_is_drawn_no_higher_than_it_is_filled() -> None:
    field = Field("Oxygen cylinder gauge", ("psi",), example="2000 psi")
    for name in ("gauge", "full_gauge", "oxygen_cylinder_gauge"):
        numbers = drawn(field, name).values()
        assert (min(numbers), max(numbers)) == (1200, 2000)
    assert max(drawn(Field("Oxygen regulator", ("psi",), example="20 psi"), "gauge").values()) == 30


def test_no_share_is_drawn_above_the_whole() -> None:
    assert max(drawn(Field("Share", ("%",), example="80 %")).values()) == 100


def test_weights_before_and_after_stand_a_few_pounds_or_half_kilograms_from_the_form() -> None:
    weight = Field("Weight", ("lb", "kg"), example="30 lb")
    assert sorted(drawn(weight, "gross_weight").values()) == [26, 27, 28, 29, 31, 32]
    assert sorted(drawn(weight, "tare_weight").values()) == [28, 29, 30, 31]
    metric = Field("Weight", ("lb", "kg"), example="30 kg")
    assert sorted(drawn(metric, "gross_weight", "iso").values()) == [28, 28.5, 29, 29.5, 30.5, 31]
    gauge = Field("Gauge", ("psi", "bar"), example="10 psi")
    assert sorted(drawn(gauge, "last_gauge").values()) == [8, 8.5, 9]
    assert sorted(drawn(Field("Gauge", ("bar",), example="1 bar"), "first_gauge", "iso").values()) == [0.98, 1, 1.02]


def test_a_class_elsewhere_is_given_its_own_units() -> None:
    """100 ft is 30.48 m; 0.6 and 1.6 of it are 18.3 and 48.8, so 18 and 50."""
    texts = drawn(Field("Length", ("ft", "m"), example="100 ft"), rules="iso")
    assert all(text.endswith(" m") for text in texts)
    assert (min(texts.values()), max(texts.values())) == (18, 50)


def test_whole_numbers_stay_whole_and_between_half_and_double_of_the_form_and_three() -> None:
    numbers = drawn(Field("Torches", ("",), example="6", low="1", high="40", whole=True)).values()
    assert sorted(numbers) == list(range(3, 16))
    few = drawn(Field("Torches", ("",), example="6", low="5", high="8", whole=True)).values()
    assert sorted(few) == [5, 6, 7, 8]


def test_sheet_drills_and_inches_are_those_of_a_stock_list() -> None:
    sheet = Field("Thickness", ("in",), example="16 ga", sheet_gauge=True, metal="low-carbon-steel")
    assert sorted(drawn(sheet).values()) == [12, 14, 16, 18, 20, 22, 24]
    hole = Field("Hole", ("in",), example="#60", drill=True)
    assert sorted(drawn(hole).values()) == [54, 56, 58, 60, 62, 64, 66]
    plate = Field("Plate", ("in",), example="1/4 in")
    inches = {class_text("any", plate, "us", Dice(seed)) for seed in DRAWS}
    assert inches == {"1/8 in", "3/16 in", "1/4 in", "5/16 in", "3/8 in", "1/2 in", "5/8 in"}


def test_nothing_stays_nothing() -> None:
    assert set(drawn(Field("Leak", ("psi",), example="0 psi"))) == {"0 psi"}


def test_half_of_the_problems_take_the_usual_option() -> None:
    """The usual one of four: half of the draws, and a quarter of the other half, 5 in 8."""
    choice = Choice("Fuel", {"a": "A", "b": "B", "c": "C", "d": "D"}, example="b")
    got = [class_option(choice, "us", Dice(seed)) for seed in range(4000)]
    assert set(got) == set("abcd")
    assert got.count("b") == pytest.approx(2500, abs=130)
