"""What the calculator for copper tube refuses, and what it says of lead."""

import re

import pytest

from calc import InputError, answer
from tests.published.test_tube import joined, si

REFUSED = {
    "compressed-air": "compressed air", "fuel-gas": "licensed", "oxygen": "gas supplier", "medical-gas": "certified",
    "refrigerant": "certified", "steam": "pipefitter", "other": "designed", "unknown": "owns the line",
}  # fmt: skip


@pytest.mark.parametrize("service", REFUSED)
@pytest.mark.parametrize("method", ["soldering", "brazing"])
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_what_is_other_peoples_work_is_refused_with_reason_and_whom_to_ask(
    service: str, method: str, rules: str
) -> None:
    with pytest.raises(InputError) as refused:
        joined(method, service=service, size_inch="1/2 in", rules=rules)
    said = refused.value.message
    assert refused.value.field == "service"
    assert re.fullmatch(
        r"What runs in the tube: .* because .*; ask .*, and pick drinking water .*\.", said
    )
    assert REFUSED[service] in said


def test_the_us_limit_of_lead_is_named_sdwa_1417_read_m() -> None:
    """0.2 % in solder and flux; 0.25 % weighted in fittings."""
    for method in ("soldering", "brazing"):
        plain = joined(method, service="drinking-water", size_inch="1/2 in")["results"]["lead"]["text"]
        assert "0.2 % lead in solder and flux" in plain
        brass = joined(method, service="drinking-water", size_inch="1/2 in", fitting="brass")["results"]["lead"][
            "text"
        ]
        assert "0.25 %" in brass


@pytest.mark.parametrize("size", ["1/4 in", "5/8 in"])
def test_type_m_is_refused_where_none_is_made_astm_b88_memory(size: str) -> None:
    with pytest.raises(InputError, match=rf"^Wall: type M is not made in {size}; pick K or L\.$"):
        joined(size_inch=size, wall_inch="m")


@pytest.mark.parametrize("cup", ["1.5 mm", "40 mm", "300 mm"])
def test_a_cup_that_fits_no_such_tube_is_refused_with_the_range(cup: str) -> None:
    """A half-inch tube is 15.9 mm outside: a tenth of it to twice of it."""
    with pytest.raises(InputError, match=r"^Depth of your cup.*give 0\.0625 in to 1\.25 in\.$"):
        joined(size_inch="1/2 in", cup=cup)


def test_a_measured_cup_comes_before_the_table() -> None:
    table, own = joined(size_inch="1/2 in"), joined(size_inch="1/2 in", cup="0.25 in")
    assert si(own, "filler_length_joint") == pytest.approx(si(table, "filler_length_joint") / 2)


@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_a_tube_with_unknown_contents_gets_no_recipe_anywhere(rules: str) -> None:
    """29 CFR 1926.352 (i), read: a hollow structure that held what burns or poisons is cleaned before any heat."""
    with pytest.raises(InputError, match=r"^What runs in the tube: a line that you cannot name .* explodes at the flame; ask whoever owns"):
        joined(service="unknown", size_inch="1/2 in", rules=rules)
    sheet = {
        "process": "soldering", "metal": "copper", "coating": "none", "fuel": "propane", "tube_service": "unknown",
        "tube_system": "inch", "tube_inch": "1/2 in", "joints": "10", "rules": rules,
    }  # fmt: skip
    with pytest.raises(InputError, match=r"^What runs in the tube: a line that you cannot name") as refused:
        answer("job-sheet", **sheet)
    assert refused.value.field == "tube_service"
    assert "pick drinking water or heating water" in refused.value.message
