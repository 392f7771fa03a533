"""What people type is read as they meant it, or refused with a sentence."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.ask.errors import shown
from calc.ask.reading import LONGEST, UnreadableError, typed


@pytest.mark.parametrize(
    ("text", "number", "unit"),
    [
        ("16 ga", 16, "ga"),
        ("16ga", 16, "ga"),
        ("3/16 in", 0.1875, "in"),
        ('1 3/16"', 1.1875, "in"),
        ("1-3/16 in", 1.1875, "in"),
        ("1 - 3/16 in", 1.1875, "in"),
        ("½ in", 0.5, "in"),
        ("1½ in", 1.5, "in"),
        ("4 ft 6 in", 54, "in"),
        ("4' 6\"", 54, "in"),
        ("4'", 4, "ft"),
        ("5,5 bar", 5.5, "bar"),
        ("0,125 in", 0.125, "in"),
        ("1,234.5 psi", 1234.5, "psi"),
        ("1.234,5 psi", 1234.5, "psi"),
        ("2200 psi", 2200, "psi"),
        ("2200 psig", 2200, "psi"),
        ("40 cfh", 40, "cfh"),
        ("40 SCFH", 40, "cfh"),
        ("70 F", 70, "degF"),
        ("70°F", 70, "degF"),
        ("−20 °C", -20, "degC"),
        ("1.5 mm", 1.5, "mm"),
        (".5 mm", 0.5, "mm"),
        ("1e3 psi", 1000, "psi"),
        ("#68", 68, "#"),
        ("No. 68", 68, "#"),
        ("drill 68", 68, "#"),
        ("16 swg", 16, "swg"),
        ("8 m³", 8, "m^3"),
    ],
)
def test_the_ways_the_trade_writes_are_read(text: str, number: float, unit: str) -> None:
    got = typed(text)
    assert (got.number, got.unit) == (pytest.approx(number, rel=1e-15), unit)


@pytest.mark.parametrize("sign", ["\u202e", "\u200b", "\ufeff", "\u2066", "\0", "\ud800", "\ue000"])
def test_a_sign_that_cannot_be_seen_is_said_and_not_repeated(sign: str) -> None:
    """Unicode, general category C: a mark that turns the writing around would turn our sentence too."""
    with pytest.raises(UnreadableError, match="cannot be shown"):
        typed(f"12{sign} psi")
    assert sign not in shown(f"“{sign}psi” does not fit here")


@pytest.mark.parametrize(
    "text",
    ["", "   ", "1,234", "12,345 psi", "abc", "NaN", "inf", "--3 mm", "3/0 in", "1.2.3 mm",
     "1 2 mm", "3-4 mm", "1e999 psi", "x" * 10_000, "<b>3</b> mm", "٣ mm", "#", "drill x"],
)  # fmt: skip
def test_what_cannot_be_read_is_refused(text: str) -> None:
    with pytest.raises(UnreadableError) as refused:
        typed(text)
    assert len(str(refused.value)) < 4 * LONGEST


def test_an_ambiguous_thousand_names_both_readings() -> None:
    with pytest.raises(UnreadableError, match=r"1234 or 1\.234"):
        typed("1,234 psi")


@given(st.text(max_size=200))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        got = typed(text)
    except UnreadableError:
        return
    assert math.isfinite(got.number)


@given(st.integers(0, 200), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_a_mixed_fraction_is_its_sum(whole: int, top: int, bottom: int) -> None:
    assert typed(f"{whole} {top}/{bottom} in").number == whole + top / bottom
