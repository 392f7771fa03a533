"""Brazed joints as their publications print them, through the calculator where a row can be reached."""

import re
from typing import Any

import pytest

from calc import InputError, answer
from calc.data.tables import HOW_SURE, table
from calc.values.units import from_si

STEEL, COPPER = "low-carbon-steel", "copper"
MH31, MEMORY = "Machinery's Handbook, read", "from memory"
BASE = {"form": "sleeve", "thickness": "0.045 in", "diameter": "7/8 in", "service": "general"}
ALL_OF = {"BCuP": COPPER, "BAlSi": "aluminium", "BAg": STEEL, "RBCuZn": STEEL}
"""A metal that each family brazes to itself."""

FILLERS = [
    # class, solidus, liquidus, brazing from and to in °F; Machinery's Handbook after AWS A5.8-1981 where read
    ("BCuP-1", 1310, 1695, 1450, 1700, MH31),
    ("BCuP-2", 1310, 1460, 1350, 1550, MH31),
    ("BCuP-3", 1190, 1485, 1300, 1500, MH31),
    ("BCuP-4", 1190, 1335, 1300, 1450, MH31),
    ("BCuP-5", 1190, 1475, 1300, 1500, MH31),
    ("BCuP-6", 1190, 1450, 1350, 1500, MH31),
    ("BCuP-7", 1190, 1420, 1300, 1500, MH31),
    ("BAlSi-2", 1070, 1135, 1110, 1150, MH31),
    ("BAlSi-3", 970, 1085, 1060, 1120, f"{MH31}, the printed 1160 taken as 1060"),
    ("BAlSi-4", 1070, 1080, 1080, 1120, MH31),
    ("BAlSi-5", 1070, 1095, 1090, 1120, MH31),
    ("BAg-4", 1240, 1435, 1435, 1650, MH31),
    ("BAg-5", 1250, 1370, 1370, 1550, MH31),
    ("BAg-6", 1270, 1425, 1425, 1600, MH31),
    ("BAg-7", 1145, 1205, 1205, 1400, MH31),
    ("BAg-8", 1435, 1435, 1435, 1650, MH31),
    ("BAg-20", 1250, 1410, 1410, 1600, MH31),
    ("BAg-24", 1220, 1305, 1305, 1550, MH31),
    ("BAg-28", 1200, 1310, 1310, 1550, MEMORY),
    ("BAg-36", 1195, 1251, 1251, 1495, MEMORY),
    ("RBCuZn-A", 1630, 1650, 1670, 1750, MH31),
    ("RBCuZn-C", 1590, 1630, 1670, 1750, MH31),
    ("RBCuZn-D", 1690, 1715, 1720, 1800, MH31),
]


def braze(**texts: str) -> Any:
    return answer("braze-joint", **(BASE | texts))["results"]


def alone(filler: str, **texts: str) -> Any:
    """Answer for a filler on a metal of its own family."""
    metal = ALL_OF[filler.split("-", maxsplit=1)[0]]
    return braze(metal_one=metal, metal_two=metal, rod=filler, **texts)


@pytest.mark.parametrize(
    ("filler", "solidus", "liquidus", "low", "high", "behind"),
    FILLERS,
    ids=[f"{row[0]}-{row[-1]}" for row in FILLERS],
)
def test_a_filler_melts_and_brazes_where_it_is_printed(
    filler: str, solidus: int, liquidus: int, low: int, high: int, behind: str
) -> None:
    got = alone(filler)
    melting, range_ = got["melting"], got["brazing_temperature"]
    assert got["filler"]["text"].startswith(f"{filler}, ")
    if solidus == liquidus:  # it melts at one temperature: no band of nothing
        assert (melting["low"], melting["high"], melting["text"]) == (None, None, f"{liquidus} °F")
    else:
        ends = [melting["low"], melting["value"], melting["high"]]
        assert ends == pytest.approx([solidus, liquidus, liquidus])
        assert melting["text"] == f"{liquidus} °F, begins to melt at {solidus} °F"
    assert melting["value"] == pytest.approx(liquidus)
    assert (range_["low"], range_["high"]) == pytest.approx((low, high))
    read = "read" in behind
    assert (melting["how_sure"] == HOW_SURE["read"]) is read
    assert melting["source"].startswith("Machinery's Handbook") is read


@pytest.mark.parametrize(
    ("filler", "solidus", "liquidus", "low", "high"),
    [
        pytest.param("BAg-1", 1125, 1145, 1145, 1400, id=f"BAg-1-{MH31}"),
        pytest.param("BAg-2", 1125, 1295, 1295, 1550, id="BAg-2-temperatures from memory"),
        pytest.param("BCu-1", 1980, 1980, 2000, 2100, id=f"BCu-1-{MH31}"),
    ],
)
def test_what_is_never_used_stands_in_the_table_and_is_refused(
    filler: str, solidus: int, liquidus: int, low: int, high: int
) -> None:
    (row,) = (row for row in table("brazing-fillers-aws") if row.filler == filler)
    printed = [from_si(each, "degF") for each in (row.solidus, row.liquidus, row.braze_low, row.braze_high)]
    assert printed == pytest.approx([solidus, liquidus, low, high])
    assert row.standing in ("never", "furnace")
    with pytest.raises(InputError, match=rf"^Filler you have: {filler}"):
        braze(metal_one=COPPER, metal_two=STEEL, rod=filler)


def test_fahrenheit_is_never_taken_for_celsius() -> None:
    """BCuP-5, Machinery's Handbook (read): 1190 and 1475 °F are 643 and 802 °C, 1300 to 1500 °F 704 to 816 °C."""
    got = alone("BCuP-5", rules="iso")
    assert got["melting"]["low"] == pytest.approx(643, abs=1)
    assert got["melting"]["value"] == pytest.approx(802, abs=1)
    assert got["melting"]["text"] == "802 °C, begins to melt at 643 °C"
    assert got["brazing_temperature"]["low"] == pytest.approx(704, abs=1)
    assert got["brazing_temperature"]["high"] == pytest.approx(816, abs=1)


@pytest.mark.parametrize(
    ("filler", "said"),
    [
        pytest.param("BAg-5", "Begins to melt at 1225 °F in a later edition, from memory.", id="later A5.8, from memory-BAg-5"),
        pytest.param("BCuP-4", "All melted at 1325 °F in a later edition, from memory.", id="later A5.8, from memory-BCuP-4"),
        pytest.param("BAlSi-3", "printed backward as 1160 to 1120 °F", id=f"{MH31}-BAlSi-3"),
    ],
)  # fmt: skip
def test_an_edition_that_differs_is_said(filler: str, said: str) -> None:
    assert said in alone(filler)["melting"]["basis"]


@pytest.mark.parametrize(
    ("filler", "near", "solidus", "liquidus"),
    [
        ("BCuP-1", "CuP 178 or CuP 179", 710, 925), ("BCuP-2", "CuP 180", 710, 793), ("BCuP-3", "CuP 281", 645, 815),
        ("BCuP-4", "CuP 283", 643, 718), ("BCuP-5", "CuP 284", 645, 800), ("BCuP-6", "CuP 280", 643, 788),
        ("BCuP-7", "CuP 282", 643, 771), ("BAlSi-2", "Al 107", 575, 615), ("BAlSi-3", "Al 210", 520, 585),
        ("BAlSi-4", "Al 112", 575, 585), ("BAlSi-5", "Al 110", 575, 590), ("BAg-4", "Ag 440", 670, 780),
        ("BAg-5", "Ag 245", 665, 745), ("BAg-6", "Ag 250", 690, 775), ("BAg-7", "Ag 156", 620, 655),
        ("BAg-8", "Ag 272", 780, 780), ("BAg-20", "Ag 230", 680, 765), ("BAg-24", "Ag 450", 660, 705),
        ("BAg-28", "Ag 140", 650, 710), ("BAg-36", "Ag 145", 640, 680), ("RBCuZn-A", "Cu 470a", 875, 895),
        ("RBCuZn-C", "Cu 680 or Cu 681", 870, 890), ("RBCuZn-D", "Cu 773", 890, 920),
    ],
    ids=lambda value: f"{value}-ISO 17672, from memory" if isinstance(value, str) else str(value),
)  # fmt: skip
def test_the_nearest_iso_filler_is_named_as_memory(
    filler: str, near: str, solidus: int, liquidus: int
) -> None:
    got = alone(filler)
    assert got["filler"]["text"].endswith(f"nearest in ISO 17672: {near} (from memory)")
    assert f"{near}: {solidus} °C to {liquidus} °C, from memory" in got["melting"]["basis"]


@pytest.mark.parametrize(
    ("filler", "overlap", "least", "most"),
    [
        pytest.param("BAg-5", "1/4 in", 0.002, 0.005, id=f"silver with flux-{MH31}"),
        pytest.param("BCuP-2", "1/4 in", 0.001, 0.005, id="copper-phosphorus-AWS Brazing Handbook, from memory"),
        pytest.param("RBCuZn-A", "1/4 in", 0.002, 0.005, id="copper-zinc-AWS Brazing Handbook, from memory"),
        pytest.param("BAlSi-4", "0.24 in", 0.006, 0.010, id="aluminium, short-AWS Brazing Handbook, from memory"),
        pytest.param("BAlSi-4", "1/4 in", 0.006, 0.025, id=f"aluminium, longer-{MH31}"),
    ],
)  # fmt: skip
def test_a_filler_wants_the_printed_gap(filler: str, overlap: str, least: float, most: float) -> None:
    got = alone(filler, overlap=overlap)["clearance_wanted"]
    assert (got["low"], got["high"]) == pytest.approx((least, most))
    assert got["value"] == pytest.approx((least + most) / 2, rel=1e-6)


@pytest.mark.parametrize(
    ("family", "use", "least", "most"),
    [
        pytest.param("silver", "furnace", 0.0, 0.002, id="AWS Brazing Handbook, from memory-silver"),
        pytest.param("copper", "furnace", 0.0, 0.002, id="AWS Brazing Handbook, from memory-copper"),
        pytest.param("nickel", "flux or furnace gas", 0.002, 0.005, id="AWS Brazing Handbook, from memory-nickel"),
        pytest.param("nickel", "vacuum", 0.0, 0.002, id="AWS Brazing Handbook, from memory-nickel, vacuum"),
        pytest.param("solder", "copper tube", 0.002, 0.005, id="Copper Tube Handbook, read-solder"),
        pytest.param("any", "Navy pipe practice", 0.0, 0.012, id="NAVEDTRA 14119, read-pipe"),
    ],
)  # fmt: skip
def test_gaps_that_the_calculator_does_not_use(family: str, use: str, least: float, most: float) -> None:
    (row,) = (r for r in table("brazing-clearances") if r.family == family and r.use == use)
    assert (from_si(row.least, "in"), from_si(row.most, "in")) == pytest.approx((least, most))
    assert row.standing == "beside"


@pytest.mark.parametrize(
    ("flux", "metal", "filler", "fahrenheit", "celsius"),
    [
        pytest.param("FB1-A", "aluminium", "BAlSi-4", (1080, 1140), (580, 615), id="AWS A5.31, from memory-FB1-A"),
        pytest.param("FB3-A", STEEL, "BAg-5", (1050, 1600), (565, 870), id="AWS A5.31, from memory-FB3-A"),
        pytest.param("FB3-C", "stainless-steel", "BAg-24", (1050, 1700), (565, 925), id="AWS A5.31, from memory-FB3-C"),
        pytest.param("FB3-D", STEEL, "RBCuZn-C", (1400, 2200), (760, 1205), id="AWS A5.31, from memory-FB3-D"),
    ],
)  # fmt: skip
def test_a_flux_works_where_it_is_said(
    flux: str, metal: str, filler: str, fahrenheit: tuple[int, int], celsius: tuple[int, int]
) -> None:
    said = braze(metal_one=metal, metal_two=metal, rod=filler)["flux"]["text"]
    assert said.startswith(f"{flux} ")
    assert f"works at {fahrenheit[0]} °F to {fahrenheit[1]} °F" in said
    metric = braze(metal_one=metal, metal_two=metal, rod=filler, rules="iso")["flux"]["text"]
    ends = [int(n) for n in re.findall(r"(\d+) °C", metric)]
    assert ends == pytest.approx(celsius, abs=3)


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        ("FB3-K", 1400, 2200), ("FB4-A", 1100, 1600),
    ],
    ids=lambda value: f"{value}-AWS A5.31, from memory" if isinstance(value, str) else "",
)  # fmt: skip
def test_further_aws_fluxes(name: str, low: int, high: int) -> None:
    (row,) = (row for row in table("brazing-fluxes-aws") if row.flux == name)
    assert (from_si(row.low, "degF"), from_si(row.high, "degF")) == pytest.approx((low, high))


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        ("FH10", 550, 800), ("FH11", 550, 800), ("FH12", 550, 850), ("FH20", 700, 1000), ("FH21", 750, 1100),
        ("FH30", 1000, None), ("FH40", 600, 1000), ("FL10", 400, 700),
    ],
    ids=lambda value: f"{value}-EN 1045, from memory" if isinstance(value, str) else "",
)  # fmt: skip
def test_european_fluxes(name: str, low: int, high: int | None) -> None:
    (row,) = (row for row in table("brazing-fluxes-en-1045") if row.flux == name)
    assert from_si(row.low, "degC") == pytest.approx(low)
    assert (None if row.high is None else from_si(row.high, "degC")) == (high and pytest.approx(high))


def test_the_tube_lap_of_the_handbook() -> None:
    """AWS Brazing Handbook, from memory: W 0.040, D 0.625 in, T 30, L 25 ksi give 0.0449 in, worked by hand."""
    got = braze(metal_one=COPPER, metal_two=COPPER, thickness="0.040 in", diameter="0.625 in")
    assert got["overlap_for_strength"]["value"] == pytest.approx(0.0449, abs=0.0001)
    assert got["overlap"]["value"] == pytest.approx(
        0.120
    )  # three times the wall: Copper Tube Handbook, read


def test_a_joint_that_carries_a_load_takes_four_to_five_times() -> None:
    """AWS Brazing Handbook, from memory: 4 x 0.0449 and 5 x 0.0449 in."""
    got = braze(
        metal_one=COPPER, metal_two=COPPER, thickness="0.040 in", diameter="0.625 in", service="load"
    )
    strength = got["overlap_for_strength"]
    assert (strength["value"], strength["high"]) == pytest.approx((0.1796, 0.2246), abs=0.0003)
    assert got["overlap"]["value"] == pytest.approx(0.1796, abs=0.0003)


CUPS = [
    # outside diameter in, cup depth in, filler lb for 100 joints: Copper Tube Handbook table 14.11
    (0.375, 0.310, 0.04), (0.500, 0.380, 0.06), (0.625, 0.500, 0.10), (0.750, 0.620, 0.15),
    (0.875, 0.750, 0.21), (1.125, 0.910, 0.32), (1.375, 0.970, 0.42), (1.625, 1.090, 0.56),
    (2.125, 1.340, 0.90), (2.625, 1.470, 1.22), (3.125, 1.660, 1.64), (4.125, 2.160, 2.81),
    (6.125, 3.090, 5.97), (8.125, 3.970, 10.20),
]  # fmt: skip


@pytest.mark.parametrize(
    ("outside", "depth", "pounds"),
    CUPS,
    ids=[f"tube of {row[0]} in-Copper Tube Handbook table 14.11, read; its gap inferred" for row in CUPS],
)
def test_filler_for_a_hundred_cups(outside: float, depth: float, pounds: float) -> None:
    """Two thirds of the cup filled, no fillet, as the table says; a gap of 0.005 in gives its weights."""
    got = braze(
        metal_one=COPPER, metal_two=COPPER, diameter=f"{outside} in", thickness="0.03 in", joints="100",
        overlap=f"{depth * 2 / 3:.6f} in", cold_clearance="0.005 in",
    )["filler_mass"]  # fmt: skip
    assert got["value"] / 16 == pytest.approx(pounds, rel=0.035, abs=0.005)


@pytest.mark.parametrize(
    ("wire", "inches"),
    [("1/16 in", 1090), ("3/32 in", 484), ("1/8 in", 268)],
    ids=lambda value: f"{value}-Copper Tube Handbook, read",
)
def test_inches_of_rod_in_a_pound(wire: str, inches: int) -> None:
    got = braze(metal_one=COPPER, metal_two=COPPER, wire=wire)
    pounds = got["filler_mass"]["value"] / 16
    assert got["filler_length"]["value"] / pounds == pytest.approx(inches, rel=0.02)


def test_real_use_is_up_to_three_times() -> None:
    """Copper Tube Handbook, read: two to three times the table."""
    got = braze(metal_one=COPPER, metal_two=COPPER)["filler_volume"]
    assert got["high"] == pytest.approx(3 * got["value"])


@pytest.mark.parametrize(
    ("metal", "growth"),
    [
        (STEEL, 12), ("cast-iron", 10.5), ("stainless-steel", 17.2), (COPPER, 16.8), ("brass", 20), ("bronze", 18),
        ("aluminium", 23.6), ("nickel", 13.3), ("lead", 29), ("silver", 19.7), ("hardmetal", 5),
    ],
    ids=lambda value: f"{value}-textbook, from memory" if isinstance(value, str) else "",
)  # fmt: skip
def test_how_metals_grow(metal: str, growth: float) -> None:
    (row,) = (row for row in table("expansions-textbook") if row.id == metal)
    assert row.expansion * 1e6 == pytest.approx(growth)


@pytest.mark.parametrize(
    ("metal", "inches"),
    [
        ("lead", 0.188), ("zinc", 0.168), ("aluminium", 0.148), ("silver", 0.129), ("bronze", 0.118),
        ("brass", 0.115), ("copper", 0.106), ("steel", 0.083), ("wrought iron", 0.078), ("cast iron", 0.068),
    ],
    ids=lambda value: f"{value}-Manly 1916, read" if isinstance(value, str) else "",
)  # fmt: skip
def test_how_metals_grew_in_1916(metal: str, inches: float) -> None:
    """Inches in a foot for 1000 °F: over 12 in and 1000 x 5/9 K."""
    (row,) = (row for row in table("expansions-manly-1916") if row.metal == metal)
    assert float(row.printed) == inches
    assert row.expansion == pytest.approx(inches / 12 / (1000 * 5 / 9), rel=1e-6)


@pytest.mark.parametrize(
    ("mix", "melts"),
    [("copper, tin and zinc", 1625), ("half copper and half brass", 1560), ("80 copper and 20 zinc", 1832)],
    ids=lambda value: f"{value}-US Army TM 1-1500-204-23-8, read",
)
def test_spelters(mix: str, melts: int) -> None:
    (row,) = (row for row in table("spelters-army-1992") if row.mix == mix)
    assert from_si(row.melts, "degF") == pytest.approx(melts)


@pytest.mark.parametrize(
    ("metal_one", "metal_two", "filler", "flux", "flame"),
    [
        (COPPER, COPPER, "BCuP", "none", "neutral"), ("brass", "brass", "BAg", "FB3-A", "neutral"),
        ("bronze", "bronze", "BAg", "FB3-A", "neutral"), (STEEL, STEEL, "BAg", "FB3-A", "neutral"),
        ("stainless-steel", "stainless-steel", "BAg-24", "FB3-C", "neutral"),
        ("cast-iron", "cast-iron", "BAg-24", "FB3-C", "neutral"), ("nickel", "nickel", "BAg-24", "FB3-C", "neutral"),
        ("aluminium", "aluminium", "BAlSi-4", "FB1-A", "slightly reducing"),
        (COPPER, "brass", "BAg", "FB3-A", "neutral"), (COPPER, STEEL, "BAg", "FB3-A", "neutral"),
        ("brass", STEEL, "BAg", "FB3-A", "neutral"), (COPPER, "stainless-steel", "BAg-24", "FB3-C", "neutral"),
        (STEEL, "stainless-steel", "BAg-24", "FB3-C", "neutral"),
    ],
    ids=lambda value: f"{value}-AWS Brazing Handbook, from memory",
)  # fmt: skip
@pytest.mark.parametrize("turned", [False, True])
def test_what_a_pair_is_brazed_with(
    metal_one: str, metal_two: str, filler: str, flux: str, flame: str, turned: bool
) -> None:
    pair = {
        "metal_one": metal_two if turned else metal_one,
        "metal_two": metal_one if turned else metal_two,
    }
    got = braze(**pair)
    assert got["filler"]["text"].startswith(filler)
    assert got["flux"]["text"].startswith(flux)
    assert got["flame"]["text"].startswith(flame)


def test_copper_phosphorus_needs_flux_on_brass_and_none_on_copper() -> None:
    """Machinery's Handbook and the AWS Brazing Handbook (memory): self-fluxing copper to copper only."""
    assert alone("BCuP-5")["flux"]["text"].startswith("none")
    assert braze(metal_one=COPPER, metal_two="brass", rod="BCuP-5")["flux"]["text"].startswith("FB3-A")


def test_hot_in_use_ends_at_350_fahrenheit() -> None:
    """Copper Tube Handbook, read: soldered to 250 °F, brazed to 350 °F."""
    got = answer("braze-joint", metal_one=COPPER, metal_two=COPPER, **(BASE | {"service": "hot"}))
    assert any("350 °F" in caution["text"] for caution in got["cautions"])
    assert got["results"]["filler"]["text"].startswith("BAg")
