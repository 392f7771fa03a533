"""Our unit definitions against pint's own."""

import re
from importlib.resources import files

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.ask.reading import UNIT_WORDS
from calc.values.quantities import FIFTEEN_CELSIUS, SEVENTY_FAHRENHEIT
from calc.values.units import from_si, registry, to_si

PINT = pint.UnitRegistry()
OURS = {"cfh": "ft^3/h", "ksi": "1000 * psi"}
NAMES = [
    match[1]
    for line in files("calc").joinpath("values/units.txt").read_text(encoding="utf-8").splitlines()
    if (match := re.match(r"(\w+) = ", line)) and not line.startswith("@")
]


@pytest.mark.parametrize("name", NAMES)
def test_a_unit_is_pints_own(name: str) -> None:
    theirs = {"cubic_foot_per_hour": "foot ** 3 / hour", "ppm": "ppm"}.get(name, name)
    if name in ("degree_Celsius", "degree_Fahrenheit"):
        ours, pints = (r.Quantity(37.0, name).to("kelvin").magnitude for r in (registry(), PINT))
    else:
        base = PINT.Quantity(1.0, theirs).to_base_units()
        ours, pints = registry().Quantity(1.0, name).to_base_units().magnitude, base.magnitude
    assert ours == pytest.approx(pints, rel=1e-6 if name == "btu" else 1e-12)


@pytest.mark.parametrize("word", sorted(set(UNIT_WORDS.values())))
def test_every_unit_word_leads_to_a_unit(word: str) -> None:
    assert to_si(1.0, word) > 0


def test_a_us_gas_volume_is_counted_at_seventy_fahrenheit() -> None:
    """The two differ by 2.1 %; ideal-gas ratio of 288.15 K to 294.261 K."""
    assert to_si(100, "ft^3", free_gas=True) / to_si(100, "ft^3") == pytest.approx(
        FIFTEEN_CELSIUS / SEVENTY_FAHRENHEIT, rel=1e-12
    )
    assert to_si(100, "L", free_gas=True) == pytest.approx(0.1)
    assert 1 - FIFTEEN_CELSIUS / SEVENTY_FAHRENHEIT == pytest.approx(0.021, abs=5e-4)


@given(
    st.floats(-1e6, 1e6),
    st.sampled_from(["psi", "bar", "degF", "degC", "in", "ft^3", "L", "cfh", "lb", "Btu/h"]),
    st.booleans(),
)
def test_a_unit_there_and_back_loses_nothing(value: float, unit: str, free_gas: bool) -> None:
    back = from_si(to_si(value, unit, free_gas=free_gas), unit, free_gas=free_gas)
    assert back == pytest.approx(value, rel=1e-12, abs=1e-9)
