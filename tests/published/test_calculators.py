"""Figures in print, through the calculators that use them."""

import pytest

from calc import answer
from tests.published.rows import Row, case, shown

OSHA = "29 CFR 1910.133(a)(5)"
EN169 = "DGUV Information 209-011 6.3"
EXACT = 1e-9

ROWS = [
    # Sheet: what the number means by metal.
    case("sheet-gauge table, 41.82 lb/ft2", "read", "sheet-thickness", "thickness", 0.0598, "in", 1e-3, gauge="16 ga"),
    case("sheet-gauge table", "read", "sheet-thickness", "thickness", 0.1345, "in", 1e-3, gauge="10 ga"),
    case("sheet-gauge table", "read", "sheet-thickness", "thickness", 0.0359, "in", 2e-3, gauge="20 ga"),
    case("sheet-gauge table", "read", "sheet-thickness", "thickness", 0.0120, "in", 5e-3, gauge="30 ga"),
    case("galvanised table", "read", "sheet-thickness", "thickness", 0.0635, "in", 1e-3, gauge="16 ga", metal="galvanised-steel"),
    case("galvanised table", "read", "sheet-thickness", "thickness", 0.0336, "in", 2e-3, gauge="22 ga", metal="galvanised-steel"),
    case("US standard gauge", "read", "sheet-thickness", "thickness", 0.0625, "in", 1e-6, gauge="16 ga", metal="stainless-steel"),
    case("B&S gauge rule", "computed", "sheet-thickness", "thickness", 0.0508, "in", 1e-3, gauge="16 ga", metal="aluminium"),
    case("British SWG", "read", "sheet-thickness", "thickness", 0.064, "in", 1e-6, gauge="16 ga", rules="uk"),
    case("British SWG", "read", "sheet-thickness", "thickness", 1.6256, "mm", 1e-6, gauge="16 swg"),
    # Eyes: the least shade.
    case(OSHA, "read", "eye-shade", "shade_minimum", 4, "", EXACT, process="welding", thickness="1/16 in"),
    case(OSHA, "read", "eye-shade", "shade_minimum", 5, "", EXACT, process="welding", thickness="1/8 in"),
    case(OSHA, "read", "eye-shade", "shade_minimum", 5, "", EXACT, process="welding", thickness="1/4 in"),
    case(OSHA, "read", "eye-shade", "shade_minimum", 6, "", EXACT, process="welding", thickness="3/4 in"),
    case(OSHA, "read", "eye-shade", "shade_minimum", 2, "", EXACT, process="soldering", thickness="1 mm"),
    case(OSHA, "read", "eye-shade", "shade_minimum", 3, "", EXACT, process="brazing", thickness="1 mm"),
    case(OSHA, "read", "eye-shade", "shade_minimum", 3, "", EXACT, process="cutting", thickness="1/2 in"),
    case(OSHA, "read", "eye-shade", "shade_minimum", 4, "", EXACT, process="cutting", thickness="2 in"),
    case(OSHA, "read", "eye-shade", "shade_minimum", 5, "", EXACT, process="cutting", thickness="8 in"),
    *(
        case(EN169, "read", "eye-shade", "shade_minimum", shade, "", EXACT, process="welding",
             thickness="2 mm", acetylene_flow=f"{flow} L/h", rules="iso")
        for flow, shade in ((70, 4), (71, 5), (200, 5), (201, 6), (800, 6), (801, 7))
    ),
    *(
        case("DGUV Regel 112-192 annex 2", "read", "eye-shade", "shade_minimum", shade, "", EXACT,
             process="cutting", thickness="10 mm", oxygen_flow=f"{flow} L/h", rules="uk")
        for flow, shade in ((900, 4), (2000, 5), (3000, 6), (6000, 7))
    ),
    # Oxygen: contents of a cylinder.
    case("printed 244 ft3 at 2200 psi, 43.0 L", "read", "oxygen-left", "gas_left", 244, "ft^3", 0.004,
         water_volume="43.0 L", gauge="2200 psi"),
    case("reference equation: 50 L at 200 bar absolute and 15 C, 10.73 m3 counted at 1 bar", "computed",
         "oxygen-left", "gas_left", 10.73 / 1.01325, "m^3", 0.001, water_volume="50 L",
         gauge="198.98675 bar", rules="iso"),
    case("reference equation: 1100 of 2200 psi is 49.3 %", "computed", "oxygen-left", "share_of_full", 49.3, "%",
         0.002, water_volume="43 L", gauge="1100 psi"),
    case("Manly 1916: 900 of 1800 is 50 %", "read", "oxygen-left", "straight_line", 50, "%", EXACT,
         water_volume="43 L", gauge="900 psi", full_gauge="1800 psi"),
    case("Manly 1916: 500 of 1800 is 28 %", "read", "oxygen-left", "straight_line", 28, "%", 0.01,
         water_volume="43 L", gauge="500 psi", full_gauge="1800 psi"),
    # Acetylene: by weight.
    case("CGA G-1 method, 14.7 ft3/lb", "memory", "acetylene-left", "gas_left", 147, "ft^3", 1e-3,
         gross_weight="130 lb", tare_weight="120 lb", full_contents="225 ft^3"),
    case("14.7 ft3/lb is 0.920 m3/kg at 70 F", "computed", "acetylene-left", "gas_left", 0.920 * 288.15 / 294.261,
         "m^3", 4e-3, gross_weight="50 kg", tare_weight="49 kg", full_contents="225 ft^3"),
]  # fmt: skip


@pytest.mark.parametrize("row", ROWS)
def test_the_published_figure_comes_out(row: Row) -> None:
    assert shown(row) == pytest.approx(row.figure, rel=row.within, abs=1e-12)


@pytest.mark.parametrize(
    ("thickness", "usual"), [("1/16 in", "4 to 5"), ("1/4 in", "5 to 6"), ("3/4 in", "6 to 8")]
)
def test_the_us_guide_shades_are_shown_beside_the_least(thickness: str, usual: str) -> None:
    """29 CFR 1910.252(b)(2)(ii)(H), read: 4-5, 5-6, 6 or 8."""
    got = answer("eye-shade", process="welding", thickness=thickness)["results"]["shade_usual"]
    assert got["text"] == usual
    assert "1910.252" in got["source"]


def test_a_missing_rule_says_so_and_names_whose_figure_is_shown() -> None:
    """EN 169 as read names no shade for torch brazing."""
    got = answer("eye-shade", process="brazing", thickness="2 mm", rules="iso")["results"]["shade_minimum"]
    assert got["value"] == 3
    assert "no figure for this rule set in our data" in got["text"]
    assert "United States" in got["text"]
    assert "ask the local authority" in got["text"]


@pytest.mark.parametrize(
    ("rules", "hot", "allowed"),
    [("us", "126 degF", "125 degF"), ("iso", "51 degC", "50 degC"), ("uk", "123 degF", "50 degC")],
)
@pytest.mark.parametrize(
    ("calculator", "texts"),
    [
        ("oxygen-left", {"water_volume": "43 L", "gauge": "1500 psi"}),
        ("acetylene-left", {"gross_weight": "118 lb", "tare_weight": "111 lb"}),
    ],
)
def test_a_cylinder_too_hot_is_refused(
    rules: str, hot: str, allowed: str, calculator: str, texts: dict[str, str]
) -> None:
    """125 °F in the US, 50 °C in ISO countries and the UK: common rule, from memory."""
    answer(calculator, rules=rules, temperature=allowed, **texts)
    with pytest.raises(ValueError, match=r"too hot to use.*move people away.*Hot cylinder"):
        answer(calculator, rules=rules, temperature=hot, **texts)
