"""When the parts of an outfit are due, what comes before a flame, and what a tip suits."""

import calendar
import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import InputError, answer
from calc.data.tables import table
from calc.trade.safety.inspections import months_later

TODAY = "2026-11-25"
KNOWN = {
    "history": "known",
    "flashback": "none",
    "today": TODAY,
    "hoses_made": "2023-05-01",
    "arrestors_fitted": "2023-05-02",
    "arrestors_tested": "2026-02-03",
    "regulators_made": "2022-01-31",
    "outfit_checked": "2026-02-03",
}
"""An outfit of which all is known and nothing due."""


def results(**texts: str) -> dict[str, str]:
    return {name: each["text"] for name, each in answer("my-outfit", **texts)["results"].items()}


def first_table(**texts: str) -> list[tuple[str, str]]:
    found = answer("my-outfit", **texts)["tables"][0]
    return list(found["rows"]) if found["title"] == "Nothing is lit until" else []


@pytest.mark.parametrize(
    ("result", "given_day", "day", "due"),
    [
        pytest.param("arrestors", "arrestors_fitted", "2021-11-26", "2026-11-26", id="bcga-cp7-read-m-arrestor-5-years"),
        pytest.param("regulators", "regulators_made", "2021-11-26", "2026-11-26", id="bcga-cp7-read-m-regulator-5-years"),
        pytest.param("hoses", "hoses_made", "2021-11-26", "2026-11-26", id="bcga-cp7-memory-hose-5-years"),
        pytest.param("arrestors_test", "arrestors_tested", "2025-11-26", "2026-11-26", id="bcga-cp7-read-m-test-yearly"),
        pytest.param("yearly_check", "outfit_checked", "2025-11-26", "2026-11-26", id="bcga-cp7-read-m-check-yearly"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
def test_a_part_is_due_on_its_day_and_not_before(
    result: str, given_day: str, day: str, due: str, rules: str
) -> None:
    texts = KNOWN | {"rules": rules, "arrestors_fitted": "2022-11-30", given_day: day}
    assert results(**texts)[result] == f"due on {due}"
    on_the_day = texts | {"today": due}
    assert results(**on_the_day)[result] == f"due since {due}"
    assert results(**on_the_day)["use_it"].startswith("No. ")


def test_the_rule_set_whose_interval_it_is_stands_beside_it() -> None:
    us, uk, iso = (answer("my-outfit", rules=r, **KNOWN)["results"] for r in ("us", "uk", "iso"))
    assert "United Kingdom figure" in us["arrestors"]["basis"]
    assert "no figure for this rule set" in us["arrestors"]["basis"]
    assert "figure" not in uk["arrestors"]["basis"]
    assert "figure" not in iso["arrestors_test"]["basis"]
    assert iso["arrestors_test"]["how_sure"] == "from memory"
    assert us["hoses"]["how_sure"] == "from memory"


def test_new_arrestors_need_no_test_for_their_first_year() -> None:
    texts = {name: text for name, text in KNOWN.items() if name != "arrestors_tested"}
    texts["arrestors_fitted"] = "2026-06-01"
    assert results(**texts)["arrestors_test"] == "due on 2027-06-01"


def test_the_29th_of_february_is_due_before_march() -> None:
    assert results(**(KNOWN | {"hoses_made": "2024-02-29"}))["hoses"] == "due on 2029-02-28"


@given(st.dates(datetime.date(1950, 1, 1), datetime.date(2099, 12, 31)), st.integers(1, 120))
def test_months_are_counted_as_a_calendar_does(day: datetime.date, months: int) -> None:
    year, month = day.year, day.month
    for _ in range(months):
        year, month = (year, month + 1) if month < 12 else (year + 1, 1)
    last = calendar.monthrange(year, month)[1]
    assert months_later(day, months) == datetime.date(year, month, min(day.day, last))


def test_when_all_is_known_and_nothing_due_nobody_says_no() -> None:
    got = results(**KNOWN)
    assert got["use_it"].startswith("Nothing is due")
    assert "against" not in got
    assert first_table(**KNOWN) == []


@pytest.mark.parametrize("missing", list(KNOWN))
def test_whatever_is_left_out_counts_against_it(missing: str) -> None:
    texts = {name: text for name, text in KNOWN.items() if name != missing}
    if missing == "arrestors_tested":
        texts["arrestors_fitted"] = "2025-01-01"
    got = results(**texts)
    assert got["use_it"].startswith("No. Nothing is lit")
    assert got["against"]
    assert first_table(**texts)


@pytest.mark.parametrize(
    "worse", [{"flashback": "unchecked"}, {"history": "unknown"}, {"hoses_made": "2001-01-01"}]
)
def test_good_dates_do_not_outweigh_what_is_bad(worse: dict[str, str]) -> None:
    got = results(**(KNOWN | worse))
    assert got["use_it"].startswith("No. ")
    assert first_table(**(KNOWN | worse))


def test_an_empty_form_says_no_and_treats_every_date_as_due() -> None:
    got = results()
    assert got["use_it"].startswith("No. ")
    parts = [got[name] for name in ("hoses", "arrestors", "arrestors_test", "regulators", "yearly_check")]
    assert parts == ["unknown: treat as due"] * 5


def test_after_a_flashback_the_whole_outfit_is_set_apart() -> None:
    texts = KNOWN | {"flashback": "unchecked"}
    got = answer("my-outfit", **texts)
    assert "Out of use, tagged" in got["results"]["use_it"]["text"]
    assert got["cautions"][0]["signal"] == "DANGER"
    wanted = dict(first_table(**texts))
    hoses = wanted["Hoses"]
    assert "scrapped" in hoses, "29 CFR 1926.350(f)(4), read: discard if in doubt"
    assert "twice the working pressure" in hoses, "29 CFR 1926.350(f)(4), read"
    assert "300 psi" in hoses, "29 CFR 1926.350(f)(4), read"
    assert "[29 CFR 1926.350 (f)(4), read in a copy or a page that repeats it]" in hoses
    assert {"Arrestors", "Torch and regulators", "Acetylene cylinder", "The cause"} <= set(wanted)


def test_after_everything_was_replaced_or_tested_the_flashback_is_past() -> None:
    assert results(**(KNOWN | {"flashback": "checked"})) == results(**KNOWN)


def test_an_inherited_outfit_is_gone_through_part_by_part() -> None:
    parts = [row[0] for row in first_table(**(KNOWN | {"history": "unknown"}))]
    assert {"Cylinders", "Hoses", "Regulators", "Arrestors", "Torch and tips", "Oil and grease"} <= set(
        parts
    )
    assert "upright for 24 h" in dict(first_table(history="unknown"))["Acetylene cylinder"], (
        "from memory: where nobody knows how long it lay"
    )


@pytest.mark.parametrize(
    "name", [name for name in KNOWN if name.endswith(("made", "fitted", "tested", "checked"))]
)
def test_a_day_to_come_is_refused_beside_its_field(name: str) -> None:
    with pytest.raises(
        InputError, match=r": 2026-11-26 is after today; give a day up to 2026-11-25\.$"
    ) as refused:
        answer("my-outfit", **(KNOWN | {name: "2026-11-26"}))
    assert refused.value.field == name


def test_every_day_to_come_is_refused_at_once() -> None:
    with pytest.raises(InputError) as refused:
        answer("my-outfit", **(KNOWN | {"hoses_made": "2030-01-01", "outfit_checked": "2030-01-01"}))
    assert [each["field"] for each in refused.value.listed()] == ["hoses_made", "outfit_checked"]


@pytest.mark.parametrize(
    ("when", "part", "source"),
    [
        pytest.param("each-use", "Hoses", "cfr1926-350 (f)(3)", id="cfr1926-350-read-hoses-each-shift"),
        pytest.param("each-use", "Torch", "cfr1926-350 (g)(2)", id="cfr1926-350-read-torch-each-shift"),
        pytest.param(
            "each-use", "Joints", "alberta-ohs-2009 171.2", id="alberta-ohs-read-leak-test-each-connection"
        ),
        pytest.param("each-year", "Arrestors", "bcga-cp7", id="bcga-cp7-read-m-arrestors-yearly"),
        pytest.param("each-year", "Regulators", "bcga-cp7", id="bcga-cp7-read-m-regulators-yearly"),
    ],
)
def test_the_lists_hold_what_the_rules_name(when: str, part: str, source: str) -> None:
    assert [
        row
        for row in table("inspection-checks")
        if (row.when, row.part, row.source) == (when, part, source)
    ]


@pytest.mark.parametrize(
    ("use", "hole", "drill", "steel"),
    [
        pytest.param("welding", "#63", "#63", "0.065 to 0.125 in", id="faa-ac43-13-1b-memory-63"),
        pytest.param("welding", "0.031 in", "#68", "0.031 to 0.065 in", id="faa-ac43-13-1b-memory-68"),
        pytest.param("brazing", "#56", "#56", "0.125 in", id="navy14119-read-56"),
        pytest.param("brazing", "0.067 in", "#51", "0.25 in", id="navy14119-read-51"),
        pytest.param("cutting", "1.2 mm", "#56", "0.512 in", id="carvill-1993-read-13-mm"),
        pytest.param("heating", "3 mm", "#31", "what its maker prints", id="no-table-heating"),
        pytest.param("welding", "5 mm", "#9", "no thickness in our tables", id="no-table-wide"),
    ],
)
def test_what_a_tip_suits_is_what_is_printed(use: str, hole: str, drill: str, steel: str) -> None:
    got = answer("my-outfit", tip_3_label="blue handle", tip_3_use=use, tip_3_orifice=hole)
    tips = next(each for each in got["tables"] if each["title"] == "The tips")
    ((name, shown_use, shown_hole, shown_steel, _),) = tips["rows"]
    assert (name, shown_use.lower(), shown_steel) == ("blue handle", use, steel)
    assert shown_hole.endswith(f"({drill})")


@pytest.mark.parametrize(
    ("rules", "refused", "taken"),
    [("us", "15.1 psi", "15 psi"), ("iso", "1.51 bar", "1.5 bar"), ("uk", "1.51 bar", "1.5 bar")],
)
@pytest.mark.parametrize("fuel", [{}, {"fuel": "acetylene"}])
def test_acetylene_above_its_limit_is_refused_for_a_tip(
    rules: str, refused: str, taken: str, fuel: dict[str, str]
) -> None:
    answer("my-outfit", rules=rules, tip_8_fuel_gauge=taken, **fuel)
    with pytest.raises(InputError, match=r"^Tip 8: fuel gas pressure its maker prints: acetylene") as error:
        answer("my-outfit", rules=rules, tip_8_fuel_gauge=refused, **fuel)
    assert error.value.field == "tip_8_fuel_gauge"


def test_another_fuel_may_have_more() -> None:
    assert answer("my-outfit", fuel="propane", tip_1_fuel_gauge="20 psi")
