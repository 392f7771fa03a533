"""Fire, air, eyes, storage and weather: figures in print, through the calculators that use them."""

import pytest

from calc import answer
from tests.published.rows import Row, case, shown

EXACT = 1e-9
OXYGEN = {"room": "20 m^3", "leak": "2000 L/h"}

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
