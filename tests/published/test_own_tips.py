"""What is said of a tip of one's own, of heating tips, of other fuels, and which source is followed."""


import pytest

from tests.published.test_tip_choice import tip


@pytest.mark.parametrize(
    ("own", "says"),
    [
        ("#68", "right"),
        ("0.0312 in", "right"),
        ("#80", "smaller than wanted"),
        ("#73", "smaller than the one to start from, within the band"),
        ("#60", "larger than the one to start from, within the band"),
        ("#54", "larger than wanted: turned down it starves"),
    ],
)
def test_a_tip_of_ones_own_for_16_gauge_steel(own: str, says: str) -> None:
    """FAA, memory: 0.031 in; the sources lie between 0.0208 and 0.0455 in."""
    got = tip(process="welding", thickness="16 ga", own_orifice=own)["results"]
    assert got["yours"]["text"].startswith(says)


@pytest.mark.parametrize(
    ("texts", "suits"),
    [
        pytest.param(
            {"process": "welding", "own_orifice": "#63"}, "0.065 in to 0.125 in steel", id="faa-memory"
        ),
        pytest.param(
            {"process": "brazing", "own_orifice": "#56"}, "metal near 0.125 in", id="navy14119-read"
        ),
        pytest.param(
            {"process": "brazing", "own_orifice": "#30"}, "metal near 0.75 in and thicker", id="navy-read"
        ),
        pytest.param(
            {"process": "cutting", "own_orifice": "0.081 in"},
            "3 in to 5 in plate",
            id="aws-handbook-memory",
        ),
    ],
)
def test_a_tip_of_ones_own_is_told_what_it_suits(texts: dict[str, str], suits: str) -> None:
    assert tip(thickness="1/8 in", **texts)["results"]["yours"]["text"].endswith(
        f"Print gives such a hole to {suits}"
    )


def test_nothing_is_said_of_a_tip_that_was_not_given_nor_of_holes_that_have_no_meaning() -> None:
    got = tip(process="welding", thickness="16 ga")["results"]
    assert not {"yours", "preheat_holes", "holes", "hole_flow"} & set(got)
    assert {"holes", "hole_flow"} <= set(tip(process="heating", heat="3 kW")["results"])


@pytest.mark.parametrize(
    ("kilowatts", "signal"),
    [(2.5, "none"), (2.7, "WARNING"), (3.6, "WARNING"), (3.9, "DANGER"), (20, "DANGER")],
)
def test_a_heating_tip_that_outdraws_a_cylinder_warns(kilowatts: float, signal: str) -> None:
    """5.7 m³: a tenth is 570 L/h, a seventh 814; 0.3 of 55 MJ/m³ enters, common practice: 218 L/h for 1 kW, computed."""
    got = tip(process="heating", heat=f"{kilowatts} kW", rules="iso")
    assert got["results"]["fuel_flow"]["value"] == pytest.approx(218.2 * kilowatts, rel=0.01)
    signals = [c["signal"] for c in got["cautions"] if "contents an hour" in c["text"]]
    assert signals == ([] if signal == "none" else [signal])
    others = tip(process="heating", heat=f"{kilowatts} kW", fuel="propane", rules="iso")
    assert not [c for c in others["cautions"] if "contents an hour" in c["text"]]


def test_the_maker_of_another_fuel_is_named_and_an_acetylene_tip_refused() -> None:
    """RMA IP-7 from memory."""
    got = tip(process="brazing", thickness="1/8 in", fuel="propane")
    assert got["results"]["made_for"]["text"] == "a tip made for this gas, never an acetylene tip"
    assert any("acetylene tip on another fuel" in caution["text"] for caution in got["cautions"])
    own = tip(process="brazing", thickness="1/8 in")
    assert own["results"]["made_for"]["text"] == "an acetylene tip"
    assert not any("another fuel" in caution["text"] for caution in own["cautions"])


@pytest.mark.parametrize(
    ("process", "followed", "others"),
    [
        ("welding", "FAA AC 43.13-1B", {"NAVEDTRA 14119 table 9-1", "Davies", "DIN 8543 practice"}),
        ("brazing", "NAVEDTRA 14119 table 9-1", {"FAA AC 43.13-1B", "Davies", "DIN 8543 practice"}),
        ("cutting", "Carvill 1993 p. 210", {"AWS Welding Handbook"}),
    ],
)
def test_every_source_stands_in_the_table_and_one_is_followed(
    process: str, followed: str, others: set[str]
) -> None:
    got = tip(process=process, thickness="7 mm", rules="iso")
    rows = next(table["rows"] for table in got["tables"] if "by source" in table["title"])
    assert [row[0] for row in rows if row[-1] == "followed"] == [followed]
    assert {row[0] for row in rows if row[-1] == ""} == others
