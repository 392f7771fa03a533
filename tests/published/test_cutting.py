"""Published figures of oxygen cutting, through the calculator, typed from the publications."""

import math

import pytest

from calc import InputError, answer
from calc.formulas.setup.cut_gas import TO_FERROUS_OXIDE, TO_MAGNETITE, oxygen_for_iron, slot_iron
from calc.formulas.setup.cutting import cutting_speed
from tests.published.rows import Row, case, shown

CARVILL = "Carvill 1993 p. 210"
HANDBOOK = "AWS Welding Handbook table"
PLATE = {"metal": "low-carbon-steel", "shape": "straight", "fuel": "acetylene", "length": "600 mm"}
READ = [
    # mm, hole mm, acetylene bar, oxygen bar, mm/min
    (6, 0.8, 0.14, 1.8, 430), (13, 1.2, 0.21, 2.1, 360), (25, 1.6, 0.14, 2.8, 280), (50, 1.6, 0.14, 3.2, 200),
    (100, 2.0, 0.14, 3.2, 150),
]  # fmt: skip
LARGER = [
    # in, hole in, in/min, oxygen, acetylene, natural gas, propane cfh
    ("1/8", (0.020, 0.040), (16, 32), (15, 45), (3, 9), (9, 25), (3, 10)),
    ("1/4", (0.030, 0.060), (16, 26), (30, 55), (3, 9), (9, 25), (5, 12)),
    ("3/8", (0.030, 0.060), (15, 24), (40, 70), (6, 12), (10, 25), (5, 15)),
    ("1/2", (0.040, 0.060), (12, 23), (55, 85), (6, 12), (15, 30), (5, 15)),
    ("3/4", (0.045, 0.060), (12, 21), (100, 150), (7, 14), (15, 30), (6, 18)),
    ("1", (0.045, 0.060), (9, 18), (110, 160), (7, 14), (18, 35), (6, 18)),
    ("1 1/2", (0.060, 0.080), (6, 14), (110, 175), (8, 16), (18, 35), (8, 20)),
    ("2", (0.060, 0.080), (6, 13), (130, 190), (8, 16), (20, 40), (8, 20)),
    ("3", (0.065, 0.085), (4, 11), (190, 300), (9, 20), (20, 40), (9, 22)),
    ("4", (0.080, 0.090), (4, 10), (240, 360), (9, 20), (20, 40), (9, 24)),
    ("5", (0.080, 0.095), (4, 8), (270, 360), (10, 24), (25, 50), (10, 25)),
    ("6", (0.095, 0.105), (3, 7), (260, 500), (10, 24), (25, 50), (10, 30)),
]  # fmt: skip

ROWS = [
    row
    for thickness, hole, _, oxygen, speed in READ
    for row in (
        case(CARVILL, "read", "cut-plate", "cutting_orifice", hole, "mm", 1e-6, **PLATE, thickness=f"{thickness} mm"),
        case(CARVILL, "read", "cut-plate", "oxygen_gauge", oxygen, "bar", 1e-6, **PLATE, thickness=f"{thickness} mm"),
        case(CARVILL, "read", "cut-plate", "cutting_speed", speed, "mm/min", 1e-6, **PLATE, thickness=f"{thickness} mm"),
    )
] + [
    # Hole and speed that are printed for 75 mm are passed over: 1.8 mm lies midway between 50 and 100 mm.
    case("between Carvill's rows for 50 and 100 mm", "computed", "cut-plate", "cutting_orifice", 1.8, "mm", 1e-6, **PLATE,
         thickness="75 mm"),
    case(CARVILL, "read", "cut-plate", "oxygen_gauge", 3.5, "bar", 1e-6, **PLATE, thickness="75 mm"),
]  # fmt: skip


@pytest.mark.parametrize("row", ROWS)
def test_the_table_that_was_read_comes_out(row: Row) -> None:
    assert shown(row) == pytest.approx(row.figure, rel=row.within)


@pytest.mark.parametrize("row", LARGER, ids=[f"{row[0]} in [{HANDBOOK}; memory]" for row in LARGER])
def test_the_larger_table_is_the_band(row: tuple[str, ...]) -> None:
    thickness, hole, speed, oxygen, *fuels = row
    units = {
        "cutting_orifice": "in",
        "cutting_speed": "in/min",
        "cutting_oxygen_flow": "cfh",
        "fuel_flow": "cfh",
    }
    for fuel, flow in zip(("acetylene", "methane", "propane"), fuels, strict=True):
        got = answer("cut-plate", units=units, **(PLATE | {"thickness": f"{thickness} in", "fuel": fuel}))[
            "results"
        ]
        for name, (low, high) in (("cutting_orifice", hole), ("cutting_speed", speed),
                                  ("cutting_oxygen_flow", oxygen), ("fuel_flow", flow)):  # fmt: skip
            # The table that was read may widen the band to its own figure, the flows have none.
            value = got[name]["value"]
            followed = name in ("cutting_orifice", "cutting_speed")
            if name == "cutting_orifice":  # a hole within 3 % of the one that was read is the same tip: practice
                assert got[name]["low"] == pytest.approx(min(low, value / 1.03)), name
                assert got[name]["high"] == pytest.approx(max(high, value * 1.03)), name
                continue
            assert got[name]["low"] == pytest.approx(low, rel=1e-6), name
            assert got[name]["high"] == pytest.approx(high, rel=1e-6), name
            if not followed:
                assert value == pytest.approx(math.sqrt(low * high), rel=1e-6), name


@pytest.mark.parametrize(
    ("inches", "low", "high"),
    [
        pytest.param(*row, id=f"{row[0]} in [{HANDBOOK}; memory]")
        for row in ((8, 3, 5), (10, 2, 4), (12, 2, 4))
    ],
)
def test_the_thickest_rows_are_the_band_of_the_formula(inches: float, low: float, high: float) -> None:
    """The calculator ends at 6 in, where the kerfs end; hole and flows of these rows are held with the tips."""
    speed, inch_a_minute = cutting_speed(inches * 0.0254), 0.0254 / 60
    assert (speed.low, speed.high) == pytest.approx((low * inch_a_minute, high * inch_a_minute))
    assert speed.value == pytest.approx(math.sqrt(low * high) * inch_a_minute)


@pytest.mark.parametrize(
    ("thickness", "low", "high"), [(6, 16, 26), (25, 9, 18), (50, 6, 13), (100, 4, 10)]
)
def test_the_read_speeds_lie_inside_the_larger_table(thickness: float, low: float, high: float) -> None:
    got = answer("cut-plate", **PLATE, thickness=f"{thickness} mm", shown_in="us")["results"][
        "cutting_speed"
    ]
    assert low <= got["value"] <= high


@pytest.mark.parametrize("thickness", ["3 mm", "6 mm", "25 mm", "75 mm", "150 mm"])
def test_the_acetylene_has_one_pressure_whose_band_holds_what_is_printed(thickness: str) -> None:
    """Near 5 psi, common practice. Carvill, read: 0.14 to 0.21 bar; a toolbox talk 3 to 5 psi, a how-to page 5 psi, retold."""
    got = answer("cut-plate", **PLATE, thickness=thickness, units={"fuel_gauge": "psi"})["results"][
        "fuel_gauge"
    ]
    assert got["value"] == pytest.approx(5)
    assert got["low"] <= 0.14 / 0.0689476
    assert got["high"] > 5


def test_the_misprinted_row_is_passed_over() -> None:
    """Carvill prints 200 mm/min for 75 mm, the speed of the row above: 175 lies between its neighbours."""
    got = answer("cut-plate", **PLATE, thickness="75 mm", rules="iso")["results"]["cutting_speed"]
    assert got["value"] == pytest.approx(175, abs=1)


def test_the_iron_and_its_oxygen_by_stoichiometry() -> None:
    """Atomic weights 55.845 and 15.999; a mole of gas at 15 °C and 1 atm by R T / p."""
    got = answer("cut-plate", **PLATE, thickness="12.7 mm", rules="iso")["results"]
    kerf = got["kerf"]["si"]
    iron = 0.6 * 0.0127 * kerf * 7850
    assert got["iron_burnt"]["si"] == pytest.approx(iron, rel=1e-9)
    mole = 8.314462618 * 288.15 / 101325
    oxygen = iron / 0.055845 * 2 / 3 * mole  # 3 Fe + 2 O2 = Fe3O4
    assert got["oxygen_for_iron"]["si"] == pytest.approx(oxygen, rel=1e-5)
    assert got["oxygen_for_iron"]["si"] / got["iron_burnt"]["si"] == pytest.approx(0.282, abs=0.001)


def test_what_a_minute_of_cutting_burns() -> None:
    """12.7 mm plate, 1.5 mm kerf, 400 mm/min, steel of 7850 kg/m³: 0.0598 kg and 16.9 L at 15 °C, or 35.8 cfh; computed."""
    iron = slot_iron(0.400, 0.0127, 0.0015, 7850.0)
    assert iron == pytest.approx(0.0598, abs=5e-5)
    oxygen = oxygen_for_iron(iron, TO_MAGNETITE)
    assert 1000 * oxygen == pytest.approx(16.9, abs=0.05)
    assert 60 * oxygen / 0.3048**3 == pytest.approx(35.8, abs=0.05)


@pytest.mark.parametrize(
    ("by_iron", "iron", "oxygen", "printed"),
    [(TO_MAGNETITE, 3, 2, 0.282), (TO_FERROUS_OXIDE, 2, 1, 0.212)],
    ids=["3 Fe + 2 O2 = Fe3O4 [computed]", "2 Fe + O2 = 2 FeO [computed]"],
)
def test_oxygen_for_a_kilogram_from_molecular_weights(
    by_iron: float, iron: int, oxygen: int, printed: float
) -> None:
    """By mass of oxygen over its density at 15 °C and 1 atm, not by moles of iron."""
    mass = oxygen * 31.998 / (iron * 55.845)
    density = 101325 * 0.031998 / (8.314462618 * 288.15)
    assert oxygen_for_iron(1.0, by_iron) == pytest.approx(mass / density, rel=1e-5)
    assert oxygen_for_iron(1.0, by_iron) == pytest.approx(printed, abs=5e-4)


def test_the_printed_oxygen_for_a_pound_of_iron() -> None:
    """4.62 ft³/lb at 70 °F computed, 4.6 printed in the AWS Welding Handbook, from memory."""
    got = answer(
        "cut-plate", **PLATE, thickness="1 in", units={"iron_burnt": "lb", "oxygen_for_iron": "ft^3"}
    )
    ratio = got["results"]["oxygen_for_iron"]["value"] / got["results"]["iron_burnt"]["value"]
    assert ratio == pytest.approx(4.62, abs=0.02)


@pytest.mark.parametrize(("purity", "speed", "oxygen"), [("99.5 %", 1.0, 1.0), ("98.5 %", 0.85, 1.25)])
def test_what_a_point_of_purity_costs(purity: str, speed: float, oxygen: float) -> None:
    """15 % slower, a quarter more oxygen: a distance-learning note after the AWS Welding Handbook, read."""
    texts = PLATE | {"thickness": "25 mm", "rules": "iso"}
    pure = answer("cut-plate", **texts)["results"]
    got = answer("cut-plate", **texts, purity=purity)["results"]
    assert got["cutting_speed"]["value"] == pytest.approx(speed * 280)
    assert got["cutting_oxygen_flow"]["si"] == pytest.approx(oxygen * pure["cutting_oxygen_flow"]["si"])
    if speed < 1:  # TWI, from memory: 25 % slower
        assert got["cutting_speed"]["low"] == pytest.approx(0.75 * pure["cutting_speed"]["low"])


def test_oxygen_below_95_percent_is_refused() -> None:
    with pytest.raises(InputError, match="melts and washes"):
        answer("cut-plate", **PLATE, thickness="25 mm", purity="94 %")


def test_a_bevel_and_a_stack_are_cut_as_the_steel_along_the_jet() -> None:
    """10 mm at 45° is 14.14 mm along the jet; five sheets of 2 mm are 10 mm."""
    bevel = answer("cut-plate", **(PLATE | {"shape": "bevel"}), thickness="10 mm", bevel_angle="45 deg")[
        "results"
    ]
    plain = answer("cut-plate", **PLATE, thickness=f"{10 * math.sqrt(2)} mm")["results"]
    assert bevel["cutting_speed"]["si"] == pytest.approx(plain["cutting_speed"]["si"])
    stack = answer("cut-plate", **(PLATE | {"shape": "stack"}), thickness="2 mm", sheets="5")["results"]
    ten = answer("cut-plate", **PLATE, thickness="10 mm")["results"]
    assert stack["cutting_oxygen_flow"]["si"] == pytest.approx(ten["cutting_oxygen_flow"]["si"])


@pytest.mark.parametrize(
    "metal",
    [
        "galvanised-steel", "stainless-steel", "cast-iron", "aluminium", "copper", "brass", "bronze", "nickel", "lead", "zinc",
        "magnesium", "titanium", "unknown",
    ],
)  # fmt: skip
def test_what_does_not_cut_so_is_refused_with_the_reason(metal: str) -> None:
    with pytest.raises(InputError, match=r"^Metal: .{40,}\.$"):
        answer("cut-plate", **(PLATE | {"metal": metal}), thickness="6 mm")


@pytest.mark.parametrize(("rules", "limit"), [("us", 103_421.4), ("iso", 150_000.0), ("uk", 150_000.0)])
@pytest.mark.parametrize("thickness", ["3 mm", "13 mm", "100 mm", "150 mm"])
def test_acetylene_stays_below_its_limit(rules: str, limit: float, thickness: str) -> None:
    """15 psig: 29 CFR 1910.253(a)(2); 1.5 bar: ISO 3821 scope; both read."""
    got = answer("cut-plate", **PLATE, thickness=thickness, rules=rules, units={"fuel_gauge": "bar"})
    assert got["results"]["fuel_gauge"]["high"] * 1e5 <= limit
    with pytest.raises(InputError, match=r"^Fuel gas pressure its maker prints: "):
        answer("cut-plate", **PLATE, thickness=thickness, rules=rules, maker_fuel_gauge="1.6 bar")


def test_the_flow_of_the_tables_can_burn_the_kerf() -> None:
    """A check of tables against chemistry: with what leaves unburnt, the slot never needs more than the jet brings."""
    for thickness in ("6 mm", "13 mm", "25 mm", "50 mm", "100 mm", "150 mm"):
        got = answer("cut-plate", **PLATE, thickness=thickness)["results"]["oxygen_share"]
        assert got["low"] < 100, thickness
        assert got["value"] > 15, thickness


@pytest.mark.parametrize("fuel", ["propylene", "hydrogen", "methylacetylene-propadiene"])
def test_a_fuel_that_no_table_prints_is_refused(fuel: str) -> None:
    with pytest.raises(InputError, match=r"^Fuel gas: .*acetylene, propane or methane\.$"):
        answer("cut-plate", **(PLATE | {"fuel": fuel}), thickness="6 mm")


@pytest.mark.parametrize(("rules", "least"), [("us", "0.119 in"), ("iso", "3 mm"), ("uk", "3 mm")])
def test_the_least_plate_that_a_refusal_names_is_answered(rules: str, least: str) -> None:
    with pytest.raises(InputError, match=f"run from {least} to "):
        answer("cut-plate", **PLATE, thickness="2.9 mm", rules=rules)
    assert answer("cut-plate", **PLATE, thickness=least, rules=rules)["results"]


def test_more_than_the_one_printed_point_of_purity_is_called_practice() -> None:
    """Both sources print the first point, 99.5 to 98.5 %; what two do is no figure of theirs."""
    for purity, graded in (("98.5 %", "read in the source"), ("97.5 %", "common practice, no source")):
        got = answer("cut-plate", **PLATE, thickness="25 mm", purity=purity)["results"]["cutting_speed"]
        assert got["how_sure"] == graded, purity


def test_plate_thicker_than_the_kerfs_that_are_kept_is_refused() -> None:
    with pytest.raises(InputError, match=r"^Thickness of the metal: .*6 in"):
        answer("cut-plate", **PLATE, thickness="8 in")
