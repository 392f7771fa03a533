"""Every printed row of tips, holes, pressures and flows, through the calculator that chooses a tip."""

import re
from typing import Any

import pytest

from calc import InputError, answer
from tests.published.rows import Row, case, shown

NAVY = "NAVEDTRA 14119 table 9-1"
FAA = "FAA AC 43.13-1B ch. 4"
DAVIES = "Davies, UK textbook"
DIN = "DIN 8543 practice"
CARVILL = "Carvill 1993 p. 210"
AWS = "AWS Welding Handbook, cutting"
MPS = "methylacetylene-propadiene"
EXACT = 1e-9


USUAL = {"metal": "low-carbon-steel", "fuel": "acetylene"}


def tip(**texts: str) -> dict[str, Any]:
    return answer("tip-choice", **(USUAL | texts))


def row(*printed: object, **texts: str) -> object:
    """A row as a test case, with the usual metal and fuel where it names none."""
    return case(*printed, **(USUAL | texts))


def band(result: dict[str, Any]) -> tuple[float, float]:
    """The band as shown, or the value twice where there is none."""
    low, high = result["low"], result["high"]
    return (result["value"] if low is None else low), (result["value"] if high is None else high)


BRAZING = (
    ("1/16 in", "68", 0.0310), ("3/32 in", "62", 0.0380), ("1/8 in", "56", 0.0465),
    ("3/16 in", "54", 0.0550), ("1/4 in", "51", 0.0670), ("5/16 in", "48", 0.0760),
    ("3/8 in", "44", 0.0860), ("1/2 in", "40", 0.0980), ("5/8 in", "35", 0.1100),
    ("3/4 in", "30", 0.1285), ("2 in", "30", 0.1285),
)  # fmt: skip
"""Thickness, drill, hole in inches. Its pressures, 1 to 9 psi, are those of the numbered tips of one old torch."""

WELDING = (
    (0.015, 0.031, 0.026), (0.031, 0.065, 0.031), (0.065, 0.125, 0.037), (0.125, 0.188, 0.042),
    (0.188, 0.250, 0.055), (0.250, 0.375, 0.067),
)  # fmt: skip
"""FAA AC 43.13-1B ch. 4, from memory: steel from, to, hole; all in inches. A row for a range holds at its middle."""
SERIES = (
    (0.9, 0.14, 28), (1.2, 0.14, 57), (2.0, 0.14, 86), (2.6, 0.14, 140), (3.2, 0.14, 200), (4.0, 0.21, 280),
    (5.0, 0.28, 370), (6.5, 0.28, 520), (8.2, 0.42, 710), (10, 0.63, 1000), (13, 0.35, 1300), (16, 0.43, 1600),
    (19, 0.49, 2000), (25, 0.63, 2500),
)  # fmt: skip
"""Davies, from memory: steel in mm, bar of each gas, L/h of each gas."""
INSERTS = (
    (0.5, 1, 80), (1, 2, 160), (2, 4, 315), (4, 6, 500), (6, 9, 800), (9, 14, 1250), (14, 20, 1800), (20, 30, 2500),
)  # fmt: skip
"""DIN 8543 practice, from memory: steel from, to in mm, acetylene in L/h."""

ROWS = [
    *(
        row(NAVY, "read", "tip-choice", "orifice", hole, "in", EXACT, process=process, thickness=thickness)
        for thickness, _, hole in BRAZING
        for process in ("brazing", "soldering", "braze-welding")
    ),
    # The welding tip with that hole runs near 5 psi: common practice; the manual's own step 10 sets 5 to 7, read.
    *(
        row("common practice", "practice", "tip-choice", result, 5, "psi", 1e-6, process="brazing", thickness=thickness)
        for thickness in ("1/16 in", "1/4 in", "2 in")
        for result in ("oxygen_gauge", "fuel_gauge")
    ),
    *(
        row(FAA, "memory", "tip-choice", "orifice", hole, "in", EXACT, process="welding",
             thickness=f"{(thinnest + thickest) / 2} in")
        for thinnest, thickest, hole in WELDING
        if thickest > 0.031
    ),
    *(
        row("common practice", "practice", "tip-choice", gauge, 5, "psi", EXACT, process="welding",
             thickness=f"{(thinnest + thickest) / 2} in")
        for thinnest, thickest, _ in WELDING
        if thickest > 0.031
        for gauge in ("oxygen_gauge", "fuel_gauge")
    ),
    *(
        row(DAVIES, "memory", "tip-choice", result, figure, unit, EXACT, process="welding", rules="iso",
             thickness=f"{millimetres} mm")
        for millimetres, bar, litres in SERIES
        if millimetres > 0.375 * 25.4  # where the table of tips ends
        for result, figure, unit in (
            ("fuel_flow", litres, "L/h"), ("fuel_gauge", bar, "bar"), ("oxygen_gauge", bar, "bar")
        )
    ),
    *(
        row(DIN, "memory", "tip-choice", "fuel_flow", flow, "L/h", EXACT, process="welding", rules="iso",
             torch_type="injector", thickness=f"{(thinnest + thickest) / 2} mm")
        for thinnest, thickest, flow in INSERTS
    ),
    row(DIN, "memory", "tip-choice", "oxygen_gauge", 2.5, "bar", EXACT, process="welding", thickness="3 mm",
         torch_type="injector", rules="iso"),
    *(
        row(CARVILL, "read", "tip-choice", result, figure, unit, EXACT, process="cutting", thickness=f"{plate} mm")
        for plate, bore, oxygen in (
            (6, 0.8, 1.8), (13, 1.2, 2.1), (25, 1.6, 2.8), (50, 1.6, 3.2), (100, 2.0, 3.2),
        )
        for result, figure, unit in (("orifice", bore, "mm"), ("oxygen_gauge", oxygen, "bar"))
    ),
    # A size larger than for steel: 0.095 in of steel takes 0.037 in, the next hole of the table is 0.042 in.
    row("Manly 1916", "read", "tip-choice", "orifice", 0.042, "in", EXACT, process="welding", metal="brass",
         thickness="0.095 in"),
    # One or two sizes larger: halfway between the next hole of the table and the one after.
    row("NAVEDTRA 14265", "read", "tip-choice", "orifice", (0.037 + 0.042) / 2, "in", EXACT, process="welding",
         fuel=MPS, thickness="0.048 in"),
    row("NAVEDTRA 14265", "read", "tip-choice", "orifice", (0.042 + 0.055) / 2, "in", EXACT, process="welding",
         fuel=MPS, thickness="0.095 in"),
    row("NAVEDTRA 14265", "read", "tip-choice", "orifice", (0.055 + 0.067) / 2, "in", EXACT, process="welding",
         fuel=MPS, thickness="0.1565 in"),
]  # fmt: skip


@pytest.mark.parametrize("printed", ROWS)
def test_the_published_figure_comes_out(printed: Row) -> None:
    assert shown(printed) == pytest.approx(printed.figure, rel=printed.within, abs=1e-12)


@pytest.mark.parametrize(
    ("thickness", "drill"),
    [pytest.param(t, drill, id=f"navy14119-table-9-1-read-{t}") for t, drill, _ in BRAZING],
)
def test_the_brazing_table_prints_its_drill(thickness: str, drill: str) -> None:
    assert tip(process="brazing", thickness=thickness)["results"]["nearest_drill"]["text"] == f"#{drill}"


@pytest.mark.parametrize(
    ("thinnest", "thickest", "hole"),
    [pytest.param(*each, id=f"faa-ac43-13-1b-memory-{each[2]}") for each in WELDING],
)
def test_a_printed_hole_is_near_over_its_whole_range(thinnest: float, thickest: float, hole: float) -> None:
    """Within the range the answer stays between the printed hole and those of the neighbouring rows."""
    holes = [each[2] for each in WELDING] + [1.0]
    place = holes.index(hole)
    for share in (0.01, 0.25, 0.75, 0.99):
        thickness = max(thinnest + share * (thickest - thinnest), 0.5 / 25.4)
        got = tip(process="welding", thickness=f"{thickness} in")["results"]["orifice"]
        low, high = band(got)
        assert low <= hole * (1 + EXACT)
        assert hole * (1 - EXACT) <= high
        assert holes[max(place - 1, 0)] <= got["value"] * (1 + EXACT)
        assert got["value"] <= holes[place + 1]
        own = tip(process="welding", thickness=f"{thickness} in", own_orifice=f"{hole} in")["results"]
        assert own["yours"]["text"].startswith("right")


@pytest.mark.parametrize(
    ("millimetres", "bar", "litres"),
    [pytest.param(*row, id=f"davies-memory-{row[0]}-mm") for row in SERIES],
)
def test_the_textbook_series_lies_in_the_bands(millimetres: float, bar: float, litres: float) -> None:
    got = tip(process="welding", thickness=f"{millimetres} mm", rules="iso")["results"]
    low, high = band(got["fuel_flow"])
    assert low * (1 - EXACT) <= litres <= high * (1 + EXACT)
    for gas in ("oxygen", "fuel"):
        low, high = band(got[f"{gas}_gauge"])
        assert low * (1 - EXACT) <= bar <= high * (1 + EXACT)
    if millimetres > 9.525:  # beyond the FAA table this series is followed
        assert got["fuel_gauge"]["value"] == pytest.approx(bar)
        assert got["fuel_gauge"]["source"] == "Davies"


@pytest.mark.parametrize(
    ("thickness", "cfh"),
    [
        pytest.param("1/4 in", 8.5, id="groover-end-of-chapter-read-8.5-cfh"),
        pytest.param("4.5 mm", 0.3 / 0.3048**3 * 294.2611 / 288.15, id="groover-memory-0.3-m3-h"),
    ],
)
def test_a_textbook_torch_lies_in_the_band(thickness: str, cfh: float) -> None:
    low, high = band(tip(process="welding", thickness=thickness)["results"]["fuel_flow"])
    assert low * (1 - 1e-4) <= cfh <= high * (1 + 1e-4)


@pytest.mark.parametrize(
    ("metal", "thickness", "least", "most"),
    [
        pytest.param("low-carbon-steel", 3, 75, 130, id="practice-steel-forehand-75-to-130"),
        pytest.param("low-carbon-steel", 8, 120, 150, id="memory-steel-backhand-120-to-150"),
        pytest.param("copper", 3, 150, 200, id="practice-copper-150-to-200"),
        pytest.param("aluminium", 3, 50, 100, id="practice-aluminium-50-to-100"),
        pytest.param("stainless-steel", 3, 75, 75, id="practice-stainless-75"),
        pytest.param("cast-iron", 5, 100, 100, id="practice-cast-iron-100"),
        pytest.param("brass", 3, 100, 100, id="practice-brass-100"),
    ],
)
def test_the_rule_for_each_metal_lies_in_the_band(
    metal: str, thickness: float, least: float, most: float
) -> None:
    """Litres an hour for each millimetre."""
    for torch_type in ("equal-pressure", "injector"):
        got = tip(
            process="welding", metal=metal, thickness=f"{thickness} mm", rules="iso", torch_type=torch_type
        )
        low, high = band(got["results"]["fuel_flow"])
        assert low <= least * thickness * (1 + EXACT)
        assert high >= most * thickness * (1 - EXACT)


def test_a_metal_that_carries_heat_off_takes_a_larger_tip_and_stainless_a_smaller_one_practice() -> None:
    """Copper much larger than steel (Manly 1916, read); stainless a size smaller (common practice)."""

    def hole(metal: str) -> float:
        got = tip(process="welding", metal=metal, thickness="0.140 in")
        return float(got["results"]["orifice"]["value"])

    assert hole("copper") >= hole("brass") > hole("low-carbon-steel") > hole("stainless-steel")
    assert hole("copper") >= 0.055  # the hole of the row in which half as much steel again lies, 0.210 in
    # Three quarters of 0.140 in is 0.105 in, between the middles 0.095 and 0.1565 in of two rows.
    assert hole("stainless-steel") == pytest.approx(0.037 + 0.005 * (0.105 - 0.095) / (0.1565 - 0.095))


@pytest.mark.parametrize("thickness", ["1/32 in", "1/8 in", "3/16 in"])
def test_the_pressures_of_methylacetylene_propadiene_navy14265_read(thickness: str) -> None:
    got = tip(process="welding", fuel=MPS, thickness=thickness)
    assert band(got["results"]["fuel_gauge"]) == pytest.approx((2, 3))
    assert band(got["results"]["oxygen_gauge"]) == pytest.approx((10, 15))
    assert "Historic" in got["results"]["orifice"]["basis"]
    assert any("one old text" in caution["text"] for caution in got["cautions"])


def test_methylacetylene_propadiene_is_one_or_two_sizes_larger_navy14265_read() -> None:
    """Sizes of the FAA table, from memory: 0.037 in for acetylene at 0.095 in, then 0.042 and 0.055."""
    got = tip(process="welding", fuel=MPS, thickness="0.095 in")["results"]["orifice"]
    assert band(got) == pytest.approx((0.042, 0.055))


CUTTING = (
    ("1/8 in", (0.020, 0.040), (15, 45), (3, 9), (9, 25), (3, 10)),
    ("1/4 in", (0.030, 0.060), (30, 55), (3, 9), (9, 25), (5, 12)),
    ("3/8 in", (0.030, 0.060), (40, 70), (6, 12), (10, 25), (5, 15)),
    ("1/2 in", (0.040, 0.060), (55, 85), (6, 12), (15, 30), (5, 15)),
    ("3/4 in", (0.045, 0.060), (100, 150), (7, 14), (15, 30), (6, 18)),
    ("1 in", (0.045, 0.060), (110, 160), (7, 14), (18, 35), (6, 18)),
    ("1 1/2 in", (0.060, 0.080), (110, 175), (8, 16), (18, 35), (8, 20)),
    ("2 in", (0.060, 0.080), (130, 190), (8, 16), (20, 40), (8, 20)),
    ("3 in", (0.065, 0.085), (190, 300), (9, 20), (20, 40), (9, 22)),
    ("4 in", (0.080, 0.090), (240, 360), (9, 20), (20, 40), (9, 24)),
    ("5 in", (0.080, 0.095), (270, 360), (10, 24), (25, 50), (10, 25)),
    ("6 in", (0.095, 0.105), (260, 500), (10, 24), (25, 50), (10, 30)),
    ("8 in", (0.095, 0.110), (460, 620), (15, 30), (30, 55), (15, 32)),
    ("10 in", (0.095, 0.110), (580, 700), (15, 35), (35, 70), (15, 35)),
    ("12 in", (0.110, 0.130), (720, 850), (20, 40), (45, 95), (20, 45)),
)
"""Hole in inches; cutting oxygen, acetylene, natural gas and propane in ft³/h."""
RATIO = {"acetylene": (1.04, 1.14), "methane": (1.5, 2.0), "propane": (4.0, 4.3)}
"""Oxygen for one of fuel: OD0017 read; the others from memory."""


@pytest.mark.parametrize(
    ("thickness", "holes", "oxygen", "fuels"),
    [pytest.param(t, h, o, fuels, id=f"{AWS}; memory; {t}") for t, h, o, *fuels in CUTTING],
)
def test_the_cutting_table_lies_in_the_bands(
    thickness: str,
    holes: tuple[float, float],
    oxygen: tuple[float, float],
    fuels: list[tuple[float, float]],
) -> None:
    for fuel, flow in zip(("acetylene", "methane", "propane"), fuels, strict=True):
        got = tip(process="cutting", thickness=thickness, fuel=fuel)["results"]
        low, high = band(got["orifice"])
        assert low <= holes[0] * (1 + EXACT)
        assert high >= holes[1] * (1 - EXACT)
        assert band(got["fuel_flow"]) == pytest.approx(flow)
        least, most = RATIO[fuel]
        assert band(got["oxygen_flow"]) == pytest.approx(
            (oxygen[0] + least * flow[0], oxygen[1] + most * flow[1])
        )
        assert got["preheat_holes"]["text"] == "2 to 6"  # TC 9-237, read


@pytest.mark.parametrize(
    ("fuel", "cone"),
    [
        pytest.param("propane", 9.6, id="chemicals-1.5-computed-propane"),
        pytest.param("propylene", 14.9, id="chemicals-1.5-computed-propylene"),
        pytest.param("methane", 1.5, id="chemicals-1.5-computed-methane"),
        pytest.param("hydrogen", 0.0, id="chemicals-1.5-computed-hydrogen"),
    ],
)
def test_a_fuel_that_does_not_weld_says_why_and_by_how_much(fuel: str, cone: float) -> None:
    """Heat of the cone, MJ/m³; acetylene 19.0."""
    with pytest.raises(
        InputError, match=r"^Fuel gas: .*burns molten iron.*; choose acetylene\.$"
    ) as refused:
        tip(process="welding", thickness="3 mm", fuel=fuel, rules="iso")
    said = [float(number) for number in re.findall(r"([\d.]+) MJ/m³", refused.value.message)]
    assert said == pytest.approx([cone, 19.0], rel=0.01, abs=1e-9)
    with pytest.raises(InputError, match=r"Btu/ft³"):
        tip(process="welding", thickness="1/8 in", fuel=fuel)


@pytest.mark.parametrize(
    ("texts", "says"),
    [
        ({"process": "welding", "thickness": "0.4 mm"}, "Thickness of the metal: .*give 0.5 mm to 25 mm"),
        ({"process": "welding", "thickness": "30 mm"}, "Thickness of the metal: .*give 0.5 mm to 25 mm"),
        (
            {"process": "welding", "thickness": "20 mm", "metal": "copper"},
            r"Thickness of the metal: .*give 0.5 mm to 14\.2 mm",
        ),
        (
            {"process": "welding", "thickness": "12 mm", "metal": "brass"},
            r"Thickness of the metal: .*give 0.5 mm to 9\.52 mm",
        ),
        ({"process": "welding", "thickness": "5 mm", "fuel": MPS}, r"Thickness of the metal: .*4\.76 mm"),
        (
            {"process": "welding", "metal": "copper", "thickness": "3 mm", "fuel": MPS},
            "Fuel gas: the one text",
        ),
        (
            {"process": "welding", "thickness": "3 mm", "fuel": MPS, "torch_type": "injector"},
            "Fuel gas: the one text",
        ),
        ({"process": "braze-welding", "thickness": "3 mm", "fuel": "propane"}, "Fuel gas: no source"),
        (
            {"process": "cutting", "thickness": "2 mm"},
            "Thickness of the metal: .*shear or saw .*give 3 mm to 304 mm",
        ),
        ({"process": "cutting", "thickness": "6 mm", "fuel": "propylene"}, "Fuel gas: no cutting table"),
        ({"process": "cutting", "thickness": "6 mm", "fuel": "hydrogen"}, "Fuel gas: no cutting table"),
        (
            {"process": "cutting", "thickness": "6 mm", "metal": "stainless-steel"},
            "Metal: oxygen does not cut",
        ),
        ({"process": "cutting", "thickness": "6 mm", "metal": "aluminium"}, "Metal: oxygen does not cut"),
        ({"process": "cutting", "thickness": "6 mm", "metal": "cast-iron"}, "Metal: oxygen does not cut"),
    ],
)
def test_what_is_refused(texts: dict[str, str], says: str) -> None:
    with pytest.raises(InputError, match=f"^{says}"):
        tip(rules="iso", **texts)
