"""Every page that plans acetylene tells one time, one limit and one caution of it, and none sets up what must not be lit."""

from typing import Any

import pytest

from calc import InputError, answer

WELD = {
    "process": "welding", "metal": "low-carbon-steel", "coating": "none", "fuel": "acetylene", "joint": "tee",
    "thickness": "3 mm", "length": "300 mm", "rules": "iso",
}  # fmt: skip
SETTINGS = {
    "tip_orifice", "nearest_drill", "holes", "oxygen_gauge", "fuel_gauge", "purge_fuel_time", "purge_oxygen_time", "flame",
}  # fmt: skip
SUPPLY = {
    "welding_benches": "1", "welding_hours": "2 h", "brazing_benches": "0", "brazing_hours": "0 h", "cutting_benches": "0",
    "cutting_hours": "0 h", "sessions": "1", "rules": "us",
}  # fmt: skip
BRAZED = SUPPLY | {"welding_benches": "0", "brazing_benches": "1", "brazing_hours": "2 h"}
LEFT = {
    "acetylene": {"gross_weight": "118 lb", "tare_weight": "111 lb"},
    "propane": {"gross_weight": "30 lb", "tare_weight": "17 lb", "least_gauge": "5 psi"},
}
BURNS = {"orifice": "#68", "gauge": "5 psi", "fuel_contents": "130 ft^3", "oxygen_cylinder_gauge": "1500 psi", "rules": "us"}
COLD = {"acetylene": {"acetylene-cold"}, "propane": {"liquid-cold", "cylinder-warmed"}}
"""A cold cylinder gives less gas and shows less: of acetylene 29 CFR 1910.253(b)(5)(ii)(C), read in a copy, of what is
liquefied its vapour pressure; no flame warms it: 29 CFR 1910.253(b)(2)(i)."""


def told(got: dict[str, Any]) -> set[str]:
    return {one["id"] for one in got["cautions"]}


def asked_of(calculator: str, fuel: str, temperature: str) -> dict[str, Any]:
    if calculator == "left":
        name = "acetylene-left" if fuel == "acetylene" else "liquid-fuel-left"
        return answer(name, **LEFT[fuel], temperature=temperature, rules="us")
    texts = {"supply-plan": BRAZED, "hours-left": BURNS, "job-sheet": WELD | {"process": "brazing", "metal": "copper",
             "form": "sleeve", "diameter": "22 mm", "braze_service": "general", "joints": "6", "lap_width": "20 mm",
             "rules": "us", "joint": "lap"}}  # fmt: skip
    return answer(calculator, **texts[calculator] | {"fuel": fuel, "cylinder_temperature": temperature})


@pytest.mark.parametrize("fuel", COLD)
@pytest.mark.parametrize("calculator", ["left", "supply-plan", "hours-left", "job-sheet"])
def test_a_cylinder_colder_than_it_was_filled_at_says_so(calculator: str, fuel: str) -> None:
    """US cylinders are filled to their marks at 70 °F."""
    assert told(asked_of(calculator, fuel, "30 degF")) >= COLD[fuel]
    assert not COLD[fuel] & told(asked_of(calculator, fuel, "70 degF"))


@pytest.mark.parametrize(
    ("calculator", "texts"),
    [
        ("draw-limit", {"flow": "10 cfh", "acetylene_contents": "130 ft^3"}),
        ("class-plan", {"learners": "8", "benches": "4", "session_length": "3 h", "exercise_1": "corner"}),
        ("cylinder-weather", {"gas": "acetylene", "gauge": "150 psi", "weather": "30 degF"}),
    ],
)
def test_a_page_that_does_not_ask_how_cold_it_is_says_so_always(calculator: str, texts: dict[str, str]) -> None:
    assert told(answer(calculator, **texts, rules="us")) >= COLD["acetylene"]


@pytest.mark.parametrize("share", [0.04, 0.08, 0.099, 0.101, 0.12, 0.142, 0.144, 0.2])
def test_a_draw_lasts_as_long_on_the_sheet_as_where_the_hours_are_reckoned(share: float) -> None:
    """The same cylinder, tip and draw; 1/10 an hour holds until contents fall to ten times the draw, and from 1/7 on no
    flame is lit [memory of CGA G-1; Manly 1916, read]."""
    flow = answer("job-sheet", **WELD)["results"]["fuel_flow"]["value"] / 1000.0
    contents = flow / share
    held = {"fuel_contents": f"{contents:.9g} m^3", "full_contents": f"{max(contents, 5.7):.9g} m^3"}
    sheet = answer("job-sheet", **WELD, acetylene_contents=f"{contents:.9g} m^3")
    hours = answer(
        "hours-left", fuel="acetylene", orifice="1 mm", gauge="0.3 bar", fuel_flow=f"{flow * 1000:.9g} L/h",
        oxygen_cylinder_gauge="200 bar", rules="iso", **held,
    )  # fmt: skip
    ours, theirs = sheet["results"], hours["results"]
    assert ours["fuel_hours"]["value"] == pytest.approx(theirs["fuel_hours"]["value"], rel=1e-6)
    assert ours["draw_hours"]["value"] == pytest.approx(theirs["draw_hours"]["value"], rel=1e-6, abs=1e-9)
    assert ours["draw_hours"]["value"] == pytest.approx(max(1 / share - 10, 0), rel=1e-6, abs=1e-9)
    past = share > 1 / 7
    assert (ours["fuel_hours"]["value"] == 0, "draw-never" in told(sheet), "draw-never" in told(hours)) == (past,) * 3
    assert ("draw-over" in told(sheet)) == ("draw-over" in told(hours)) == (1 / 10 < share < 1 / 7)


@pytest.mark.parametrize("thickness", ["3 mm", "6 mm", "10 mm"])
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_what_must_not_be_lit_is_given_no_setting(thickness: str, rules: str) -> None:
    """Past 1/7 of the contents an hour [Manly 1916, read] the sheet says how it becomes possible, and nothing to set."""
    texts = WELD | {"thickness": thickness, "rules": rules, "acetylene_contents": "0.5 m^3"}
    got = answer("job-sheet", **texts)
    assert not SETTINGS & set(got["results"])
    first = got["results"]["first"]["text"]
    assert first.startswith("do not light on this cylinder")
    assert "full cylinder" in first
    assert "hole of" in first
    assert not got["pictures"]
    assert [one["title"] for one in got["tables"]] == ["How to feed this tip"]
    enough = got["results"]["contents_asked"]["si"] * 1.0001
    full = answer("job-sheet", **texts | {"acetylene_contents": f"{enough:.9g} m^3"})
    assert SETTINGS - {"nearest_drill"} <= set(full["results"])


@pytest.mark.parametrize("coupled", range(1, 7))
def test_a_bank_past_every_book_is_refused_with_one_that_may_be_lit(coupled: int) -> None:
    """Eight benches at 9 cfh are 72 cfh: past 1/7 of 130 ft³ each an hour up to three cylinders, at 1/10 six do."""
    texts = SUPPLY | {"welding_benches": "8", "welding_fuel_flow": "9 cfh", "fuel_coupled": str(coupled)}
    if coupled * 130 / 7 >= 72:
        said = answer("supply-plan", **texts)
        assert ("draw-over" in told(said)) == (coupled * 13 < 72)
        assert ("more than 1/10 an hour" in said["results"]["fuel_change_at"]["text"]) == (coupled * 13 < 72)
        return
    with pytest.raises(InputError, match=r"^Fuel cylinders that you couple: .*1/7.*; give 6 or more"):
        answer("supply-plan", **texts)
