"""What print says of metals told apart, through the calculator."""

import pytest

from calc import answer
from calc.ask.errors import InputError
from calc.data.tables import table
from tests.published.rows import Row, case, shown

NO = {"coating": "none"}
MARKS = {"mass_mark": "0.1 g", "displaced_mark": "0.2 mL"}


def left(**texts: str) -> set[str]:
    """First words of the metals that nothing contradicts."""
    got = answer("metal-match", **NO | texts)
    return {row[0].split(" (")[0] for row in got["tables"][0]["rows"] if row[1] == "left"}


def words(result: str, **texts: str) -> str:
    return str(answer("metal-match", **NO | texts)["results"][result]["text"])


PIECE = {"magnet": "no"} | NO
ROWS = [
    case("270 g, 100 mL, worked by hand", "computed", "metal-match", "density", 2.70, "g/cm^3", 1e-9,
         mass="270 g", displaced="100 mL", **PIECE),
    case("1 lb pushes 1.6 cu in aside", "computed", "metal-match", "density", 0.625, "lb/in^3", 1e-9,
         mass="1 lb", displaced="1.6 in^3", **PIECE),
]  # fmt: skip


@pytest.mark.parametrize("row", ROWS)
def test_the_published_figure_comes_out(row: Row) -> None:
    assert shown(row) == pytest.approx(row.figure, rel=row.within)


def test_the_band_counts_a_mark_on_each_reading() -> None:
    """270 g read to 1 g over 100 mL read to 5 mL: 269/105 to 271/95, worked by hand."""
    got = answer("metal-match", units={"density": "g/cm^3"}, mass="270 g", displaced="100 mL", mass_mark="1 g",
                 displaced_mark="5 mL", **PIECE)["results"]["density"]  # fmt: skip
    assert (got["low"], got["high"]) == pytest.approx((269 / 105, 271 / 95), rel=1e-12)


@pytest.mark.parametrize(
    ("metal", "grams", "others_out"),
    [
        pytest.param("low-carbon steel", 787.4, ("aluminium", "titanium", "lead", "magnesium alloy"), id="iron 7.874 [CRC handbook; memory]"),
        pytest.param("aluminium", 269.9, ("magnesium alloy", "titanium", "zinc", "low-carbon steel"), id="aluminium 2.699 [CRC handbook; memory]"),
        pytest.param("magnesium alloy", 173.8, ("aluminium", "titanium"), id="magnesium 1.738 [CRC handbook; memory]"),
        pytest.param("titanium", 450.6, ("aluminium", "magnesium alloy", "low-carbon steel"), id="titanium 4.506 [CRC handbook; memory]"),
        pytest.param("copper", 896.0, ("low-carbon steel", "lead", "stainless steel"), id="copper 8.96 [CRC handbook; memory]"),
        pytest.param("lead", 1134.0, ("copper", "bronze", "low-carbon steel"), id="lead 11.34 [CRC handbook; memory]"),
        pytest.param("zinc", 713.3, ("copper", "aluminium", "lead"), id="zinc 7.133 [CRC handbook; memory]"),
        pytest.param("nickel", 890.8, ("lead", "aluminium", "zinc"), id="nickel 8.908 [CRC handbook; memory]"),
        pytest.param("brass", 853.0, ("lead", "aluminium", "low-carbon steel"), id="brass 70/30 8.53 [textbook; memory]"),
        pytest.param("cast iron", 720.0, ("aluminium", "lead", "copper"), id="gray iron 7.2 [textbook; memory]"),
        pytest.param("stainless steel", 800.0, ("aluminium", "lead", "cast iron"), id="stainless 304 8.0 [textbook; memory]"),
        pytest.param("beryllium copper", 825.0, ("aluminium", "lead"), id="beryllium copper 8.25 [textbook; memory]"),
    ],
)  # fmt: skip
def test_textbook_densities_keep_their_metal_and_throw_others_out(
    metal: str, grams: float, others_out: tuple[str, ...]
) -> None:
    found = left(magnet="not-tried", mass=f"{grams} g", displaced="100 mL", **MARKS)
    assert metal in found
    assert not found & set(others_out)


MANLY = {"lead": 0.410, "copper": 0.320, "bronze": 0.313, "brass": 0.300, "low-carbon steel": 0.283, "cast iron": 0.260,
         "zinc": 0.258, "aluminium": 0.093}  # fmt: skip


@pytest.mark.parametrize(
    ("metal", "pounds"), MANLY.items(), ids=[f"{m} {d} lb/in3 [Manly 1916; read]" for m, d in MANLY.items()]
)
def test_the_densities_of_1916_keep_their_metal(metal: str, pounds: float) -> None:
    found = left(magnet="not-tried", mass=f"{10 * pounds} lb", displaced="10 in^3", **MARKS)
    assert metal in found


def test_wrought_iron_of_1916_is_steel_here() -> None:
    """0.278 lb/in³: Manly 1916, read."""
    assert "low-carbon steel" in left(magnet="sticks", mass="2.78 lb", displaced="10 in^3", **MARKS)


IRON = {
    "low-carbon steel",
    "low-alloy steel",
    "carbon steel that hardens",
    "cast iron",
    "stainless steel",
    "nickel",
}


@pytest.mark.parametrize(
    ("texts", "wanted"),
    [
        pytest.param({"magnet": "sticks"}, IRON, id="a magnet pulls iron, steel, nickel [US Army EN0562; read-m]"),
        pytest.param({"magnet": "weak"}, {"stainless steel", "nickel"}, id="stainless and nickel-copper pull weakly [US Army EN0562; read-m]"),
        pytest.param({"magnet": "sticks", "spark": "red-bursts"}, {"cast iron"}, id="dull red, many fine spurts: gray iron [US Army OD1643; read-m]"),
        pytest.param({"magnet": "sticks", "spark": "bursts", "chip": "curl"}, {"carbon steel that hardens", "low-alloy steel"},
                     id="bushy bursts: tool steel [US Army OD1643; read-m]"),
        pytest.param({"magnet": "sticks", "spark": "long", "rust": "seen"}, {"low-carbon steel", "low-alloy steel"},
                     id="a few plain forks: low-carbon steel [US Army OD1643; read-m]"),
        pytest.param({"magnet": "sticks", "spark": "long"}, {"low-carbon steel", "low-alloy steel", "stainless steel"},
                     id="stainless 50 in, few forks [NAVEDTRA 14345; read-m]"),
        pytest.param({"magnet": "no", "colour": "red"}, {"copper", "brass", "bronze", "beryllium copper"},
                     id="copper red to yellow: brass and bronze [US Army OD1643; read-m]"),
        pytest.param({"magnet": "no", "colour": "red", "origin": "plumbing"}, {"copper", "brass", "bronze"}, id="no beryllium in water tube [practice]"),
        pytest.param({"magnet": "no", "colour": "silvery", "mass": "174 g", "displaced": "100 mL"}, {"magnesium alloy"},
                     id="magnesium a third lighter than aluminium [US Army OD1643; read-m]"),
        pytest.param({"magnet": "no", "colour": "dull-grey", "file": "easily", "mass": "1134 g", "displaced": "100 mL"}, {"lead"},
                     id="lead dull gray, a thumbnail marks it [US Army OD1643; read-m]"),
    ],
)  # fmt: skip
def test_what_print_says_is_left(texts: dict[str, str], wanted: set[str]) -> None:
    assert left(**texts) == wanted


def test_every_metal_of_the_list_leads_to_rows_that_are_there() -> None:
    there = {name: {row.metal for row in table(name)} for name in ("flames-by-metal", "metals")}
    fumes = {row.id for row in table("fume-hazards") if row.part == "metal"}
    for kind in table("metal-kinds"):
        assert set(filter(None, kind.flames.split("|"))) <= there["flames-by-metal"], kind.metal
        assert bool(kind.flames) == (kind.metal not in ("titanium", "magnesium", "beryllium-copper"))
        assert set(filter(None, kind.metals.split("|"))) <= there["metals"], kind.metal
        assert kind.fume in fumes


def test_flame_filler_and_flux_are_those_of_the_table() -> None:
    """Cast iron: fusion neutral, RCI, flux; braze weld slightly oxidizing, RBCuZn: from memory."""
    iron = {"magnet": "sticks", "spark": "red-bursts", "chip": "bits"}
    assert words("best", **iron).startswith("cast iron: nothing else")
    assert "neutral" in words("flame", **iron)
    assert "slightly oxidising" in words("flame", **iron)
    assert "RCI" in words("filler", **iron)
    assert "RBCuZn-A" in words("filler", **iron)
    mild = {"magnet": "sticks", "spark": "long", "rust": "seen"}
    assert (
        words("flame", **mild)
        == "medium or high-carbon, low-alloy steel: slightly carburising; low-carbon steel: neutral"
    )
    assert "low-carbon steel: RG45 or RG60" in words("filler", **mild)
    aluminium = {"magnet": "no", "mass": "270 g", "displaced": "100 mL"}
    assert words("flame", **aluminium) == "slightly reducing"
    assert words("filler", **aluminium) == "R1100 or R4043"
    assert words("flux", **aluminium).startswith("yes, chloride or fluoride")


@pytest.mark.parametrize(
    ("texts", "says"),
    [
        pytest.param({"magnet": "no", "mass": "174 g", "displaced": "100 mL"}, "not for this torch", id="magnesium burns [practice]"),
        pytest.param({"magnet": "no", "colour": "yellow", "chip": "curl", "mass": "825 g", "displaced": "100 mL"}, "do not heat it",
                     id="29 CFR 1910.252(c)(8), read: beryllium copper is left"),
    ],
)  # fmt: skip
def test_no_recipe_for_what_is_not_for_this_torch(texts: dict[str, str], says: str) -> None:
    got = answer("metal-match", **NO | texts)["results"]
    assert says in got["process_words"]["text"] + got["hazard"]["text"]
    assert not {"flame", "filler", "flux"} & set(got)


def test_the_page_says_what_no_test_finds() -> None:
    got = answer("metal-match", magnet="sticks", coating="none")
    assert any(
        "No bench test finds a coating or beryllium" in caution["text"] for caution in got["cautions"]
    )
    title, rows = got["tables"][1]["title"], " ".join(" ".join(row) for row in got["tables"][1]["rows"])
    assert title == "Look-alikes that kill"
    for wanted in ("magnesium", "cadmium", "galvanized", "beryllium copper", "lead paint"):
        assert wanted in rows


def test_zinc_and_cadmium_on_steel_are_named_by_what_is_on_it() -> None:
    """29 CFR 1910.146(b), read: cadmium 12 to 72 h; zinc 4 to 12 h from memory."""
    assert "12 to 72 h later" in words("coating_hazard", magnet="sticks", coating="cadmium")
    assert "fume fever" in words("coating_hazard", magnet="sticks", coating="zinc")
    got = answer("metal-match", magnet="sticks", coating="unknown")["cautions"]
    assert got[0]["signal"] == "DANGER"
    assert "lead, cadmium" in got[0]["text"]


@pytest.mark.parametrize(
    ("texts", "field"),
    [
        ({"mass": "270 g"}, "displaced"),
        ({"displaced": "100 mL"}, "mass"),
        ({"mass": "270 g", "displaced": "8 mL", "displaced_mark": "5 mL"}, "displaced_mark"),
        ({"mass": "4 g", "displaced": "100 mL", "mass_mark": "3 g"}, "mass_mark"),
    ],
)
def test_half_a_weighing_is_refused(texts: dict[str, str], field: str) -> None:
    with pytest.raises(InputError) as refused:
        answer("metal-match", magnet="no", coating="none", **texts)
    assert refused.value.listed()[0]["field"] == field
