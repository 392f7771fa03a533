"""The plan of a class: what its totals, tables and files say is the same, and a small class by hand."""

import csv
import datetime
from io import StringIO
from itertools import pairwise
from typing import Any

import pytest
from icalendar import Calendar, Event

from calc import InputError, answer
from calc.answer.answering import computed, file_of, found
from calc.class_plan.exercises import exercises
from calc.declare import RULE_SETS

CLASS = {
    "learners": "12",
    "benches": "6",
    "session_length": "3 h",
    "exercise_1": "corner",
    "exercise_2": "braze",
}
FULL = CLASS | {
    "session_length": "8 h", "exercise_1": "lap", "exercise_2": "braze", "exercise_3": "cut", "exercise_4": "solder",
    "gas_factor": "1.2", "spares": "3",
}  # fmt: skip
PRICES = {
    "sheet_price": "30",
    "plate_price": "45",
    "rod_price": "12",
    "fuel_price": "60",
    "oxygen_price": "35",
}


def rows(name: str, texts: dict[str, str]) -> list[dict[str, str]]:
    """A file read back by the library's own reader."""
    return list(csv.DictReader(StringIO(file_of("class-plan", name, texts)["text"])))


def si(texts: dict[str, str]) -> dict[str, Any]:
    return {name: result["si"] for name, result in answer("class-plan", **texts)["results"].items()}


def words(texts: dict[str, str]) -> dict[str, str]:
    return {name: result["text"] for name, result in answer("class-plan", **texts)["results"].items()}


def job(exercise: str, rules: str) -> dict[str, float | None]:
    """What the job sheet itself says of one try."""
    got = answer("job-sheet", **exercises(rules)[exercise].job)
    return {name: result["si"] for name, result in got["results"].items()}


@pytest.mark.parametrize("rules", RULE_SETS)
def test_two_learners_at_one_bench_by_hand(rules: str) -> None:
    """Tees, two tries each: every figure by arithmetic from the job sheet's one try and the table's row [practice].

    Row of the table: 2 pieces of 2 in by 6 in, 10 min at the bench, 5 min of flame.
    """
    texts = {
        "learners": "2", "benches": "1", "session_length": "150 min", "exercise_1": "tee", "tries_1": "2", "rules": rules,
        "start": "18:00", "set_up": "12 min", "demonstration": "8 min", "shut_down": "10 min", "spares": "1", "gap": "0 mm",
        "sheet_size": "12 in x 24 in" if rules == "us" else "300 mm x 600 mm",
    }  # fmt: skip
    got, said, one = si(texts), words(texts), job("tee", rules)
    assert got["sessions_needed"] == 1
    assert got["hot_benches"] == 1
    assert got["rounds"] == 2
    assert got["torch_time"] == 2 * 10 * 60
    # 18:00 and 12 + 8 + 2 turns of 2 tries of 10 min = 60 min: the last flame at 19:00, the watch until 20:00.
    assert said["last_flame"] == ("7:00 pm" if rules == "us" else "19:00")
    assert got["fire_watch"] >= 60 * 60
    assert got["left_over"] == (150 - 60) * 60 - got["fire_watch"]
    assert got["coupons"] == 2 * 2
    assert got["pieces"] == 2 * (2 * 2 + 1 + 1)  # tries of both, one demonstrated, one set spare
    assert got["sheets"] == 1
    side = (0.0508, 0.1524, 0.3048 * 0.6096) if rules == "us" else (0.05, 0.15, 0.3 * 0.6)
    assert got["sheet_waste"] == pytest.approx(1 - 12 * side[0] * side[1] / side[2])
    assert got["rod_length"] == pytest.approx(5 * one["rod_length"])
    assert got["rod_mass"] == pytest.approx(5 * one["filler_mass"])
    rod = 0.9144 if rules == "us" else 1.0
    assert got["rods"] == -(-5 * one["rod_length"] // rod)
    burnt = 5 * 300 * one["fuel_flow"]
    purged = one["fuel_used"] - one["fuel_flow"] * one["torch_time"]
    # Bleed: the hose and 6 in³ (0.1 L) beside it, at the regulator's gauge over one atmosphere.
    bore, long = (0.25 * 0.0254, 25 * 0.3048) if rules == "us" else (0.0063, 10.0)
    beside = 6 * 0.0254**3 if rules == "us" else 1e-4
    taken = {
        t: v
        for t, v in computed(found("job-sheet"), exercises(rules)["tee"].job)[1].items()
        if v is not None
    }
    assert (taken["hose_bore"].si, taken["hose_length"].si) == pytest.approx((bore, long))
    bled = (3.141592653589793 * bore**2 / 4 * long + beside) * one["fuel_gauge"] / 101_325
    assert got["fuel_plan"] == pytest.approx(burnt + purged + bled)
    assert got["fuel_peak"] == pytest.approx(one["fuel_flow"])
    assert got["oxygen_peak"] == pytest.approx(one["oxygen_flow"])
    hot = [
        row
        for row in rows("rota.csv", texts)
        if row["work"] in ("hold the torch", "watch the operator, and for fire")
    ]
    assert [(row["from"], row["to"], row["person"], row["bench"]) for row in hot if row["exercise"] == "Tee"
            and row["part"] == "Turns"] == [
        ("18:20", "18:40", "learner 1", "1"), ("18:20", "18:40", "learner 2", "1"),
        ("18:40", "19:00", "learner 1", "1"), ("18:40", "19:00", "learner 2", "1"),
    ]  # fmt: skip


@pytest.mark.parametrize("rules", RULE_SETS)
def test_every_piece_of_the_total_is_in_a_strip_of_the_file(rules: str) -> None:
    texts = FULL | {"rules": rules}
    got, strips = si(texts), rows("cutting-list.csv", texts)
    assert sum(int(row["pieces in all"]) for row in strips) == got["pieces"]
    for row in strips:
        assert int(row["pieces in all"]) == int(row["pieces in the strip"]) * int(row["sheets cut alike"])
    made = exercises(rules)
    wanted = {
        made[name].title: made[name].pieces * (12 * made[name].tries + 1 + 3)
        for name in ("lap", "braze", "cut")
    }
    assert {
        title: sum(int(row["pieces in all"]) for row in strips if row["exercise"] == title)
        for title in wanted
    } == wanted


@pytest.mark.parametrize("rules", RULE_SETS)
def test_every_length_of_rod_and_sheet_of_the_total_is_in_the_file_of_materials(rules: str) -> None:
    texts = FULL | {"rules": rules}
    got, listed = si(texts), rows("materials.csv", texts)
    long, heavy = (("ft", 0.3048), ("lb", 0.45359237)) if rules == "us" else (("m", 1.0), ("kg", 1.0))
    fillers = [row for row in listed if row["kind"] == "rod or filler"]
    assert len(fillers) == 3, "steel, silver, solder"
    assert sum(float(row[f"length [{long[0]}]"]) for row in fillers) * long[1] == pytest.approx(
        got["rod_length"]
    )
    assert sum(float(row[f"weight [{heavy[0]}]"]) for row in fillers) * heavy[1] == pytest.approx(
        got["rod_mass"]
    )
    assert sum(int(row["count"]) for row in listed if row["kind"] == "sheet") == got["sheets"]
    assert sum(int(row["count"]) for row in listed if row["kind"] == "plate") == got["plates"]
    tries = {name: exercises(rules)[name].tries for name in ("braze", "solder")}
    assert {row["for"]: int(row["count"]) for row in listed if row["kind"] == "bought"} == {
        exercises(rules)[name].title: 12 * count + 1 + 3 for name, count in tries.items()
    }


@pytest.mark.parametrize("rules", RULE_SETS)
def test_every_volume_of_gas_of_the_total_is_in_a_row_of_the_file(rules: str) -> None:
    texts = FULL | {"rules": rules}
    got, listed = si(texts), rows("gas.csv", texts)
    # A cubic foot of gas is counted at 70 °F and 1 atm; carried at 15 °C.
    unit = 0.3048**3 * 288.15 / 294.2611111 if rules == "us" else 1.0
    at = "ft³ at 70 °F and 1 atm" if rules == "us" else "m³ at 15 °C and 1 atm"
    for gas, name in (("acetylene", "fuel_plan"), ("oxygen", "oxygen_plan")):
        assert sum(float(row[f"{gas} [{at}]"]) for row in listed) * unit == pytest.approx(
            got[name], rel=1e-6
        )
    flames = sum(float(row["flame, all torches [min]"]) for row in listed)
    made = exercises(rules)
    assert flames * 60 == pytest.approx(
        sum(
            (12 * made[name].tries + 1) * made[name].flame_time
            for name in ("lap", "braze", "cut", "solder")
        )
    )


def test_the_factor_of_the_gas_log_counts_for_all_gas_and_never_lowers_the_draw() -> None:
    plain, more, less = (si(CLASS | {"gas_factor": factor}) for factor in ("1", "1.5", "0.5"))
    assert more["fuel_plan"] == pytest.approx(1.5 * plain["fuel_plan"])
    assert less["oxygen_plan"] == pytest.approx(0.5 * plain["oxygen_plan"])
    assert more["fuel_peak"] == pytest.approx(1.5 * plain["fuel_peak"])
    assert less["fuel_peak"] == plain["fuel_peak"]


def test_prices_add_up_and_each_share_is_of_the_same_sum() -> None:
    texts = FULL | PRICES | {"term_sessions": "7"}
    got, listed = si(texts), rows("cost.csv", texts)
    by_hand = (
        30 * got["sheets"] + 45 * got["plates"] + 12 * got["rod_mass"] / 0.45359237
        + 60 * got["fuel_cylinders"] + 35 * got["oxygen_cylinders"]
    )  # fmt: skip
    assert sum(float(row["cost [your money]"]) for row in listed) == pytest.approx(by_hand)
    for row in listed:
        assert float(row["amount"]) * float(row["price of one [your money]"]) == pytest.approx(
            float(row["cost [your money]"])
        )
    assert got["coupon_cost"] * got["coupons"] == pytest.approx(by_hand)
    assert got["learner_cost"] * 12 == pytest.approx(by_hand)
    assert got["session_cost"] * got["sessions_needed"] == pytest.approx(by_hand)
    assert got["term_cost"] == pytest.approx(7 * got["session_cost"])


def test_without_prices_the_cost_is_a_sentence_and_with_some_it_names_what_is_missing() -> None:
    assert words(CLASS)["coupon_cost"] == "give your prices and it is worked out"
    assert (
        "without sheet 16 ga, rod and filler, oxygen, drain socket"
        in words(CLASS | {"fuel_price": "40"})["term_cost"]
    )


def test_tables_say_the_same_as_the_totals() -> None:
    got = answer("class-plan", **FULL, **PRICES, rules="iso")
    tables = {table["title"]: table["rows"] for table in got["tables"]}
    pieces = [row for title, each in tables.items() if title == "Pieces to cut" for row in each]
    assert sum(int(row[-1]) for row in pieces) == got["results"]["pieces"]["si"]
    strips = 0
    for title, each in tables.items():
        if title.startswith("How each"):
            for sheets, count, *_ in each:
                first, _, last = sheets.partition(" to ")
                strips += int(count) * (int(last or first) - int(first) + 1)
    assert strips == got["results"]["pieces"]["si"]
    gas = next(each for title, each in tables.items() if title.startswith("Gas of the class"))
    assert float(gas[-1][3]) == pytest.approx(got["results"]["fuel_plan"]["si"], rel=5e-3)
    assert float(gas[-1][3]) == pytest.approx(sum(float(row[3]) for row in gas[:-1]), rel=1e-2)
    assert len(tables["Sessions"]) == got["results"]["sessions_needed"]["si"]


def test_what_does_not_fit_one_session_goes_into_the_next_and_each_is_shown() -> None:
    """Twelve at six benches: 2 rounds of 3 × 10 min and 2 × 10 min is 100 min; 3 h less 15, 10 and 60 leaves 95."""
    texts = CLASS | {"exercise_1": "lap", "exercise_2": "braze"}
    got = answer("class-plan", **texts)
    assert got["results"]["sessions_needed"]["si"] == 2
    titles = [table["title"] for table in got["tables"]]
    assert {"Turns of session 1", "Turns of session 2"} <= set(titles)


def test_too_short_an_evening_is_refused_with_what_will_do() -> None:
    """One try of 10 min for six rounds takes 60 min; 2 h less 15, 10 and 60 leaves 35."""
    with pytest.raises(InputError) as refused:
        answer("class-plan", **(CLASS | {"session_length": "2 h", "benches": "2", "exercise_1": "lap"}))
    said = refused.value.listed()[0]
    assert said["field"] == "session_length"
    assert said["message"] == (
        "Length of a session: one try of “Lap” for everybody takes 60 min of turns, and 35 min are left beside the 85 min "
        "before the first flame and after the last; give 2 h 25 min or more, or 4 benches, or at most 6 learners."
    )


@pytest.mark.parametrize(
    ("field", "text"),
    [("sheet_size", "2 in x 3 in"), ("sheet_size", "48 in"), ("sheet_size", "48 x 96"), ("sheet_size", "4 lb x 8 lb"),
     ("plate_size", "wide x long"), ("sheet_size", "1 in x 1 in x 1 in"), ("start", "25:00"), ("start", "half six"),
     ("start", "13 pm"), ("start", "18"), ("exercise_2", "corner")],
)  # fmt: skip
def test_what_cannot_be_read_is_refused_with_its_label(field: str, text: str) -> None:
    with pytest.raises(InputError) as refused:
        answer("class-plan", **(CLASS | {field: text}))
    said = refused.value.listed()[0]
    assert said["field"] == field
    assert said["message"].startswith(found("class-plan").inputs[field].label + ": ")


def test_a_piece_larger_than_the_sheet_is_refused() -> None:
    with pytest.raises(InputError, match=r"^Sheet that you buy: a piece of 2 in x 6 in does not fit on it"):
        answer("class-plan", **(CLASS | {"sheet_size": "5 in x 5 in"}))


@pytest.mark.parametrize(
    ("coupled", "signal"), [("2", "WARNING"), ("4", None)],
)  # fmt: skip
def test_a_bank_too_small_for_the_peak_brings_its_signal(coupled: str, signal: str | None) -> None:
    """Six torches at the 31 cfh or so of the plan on cylinders of 130 ft³: 12 and 6 % an hour; 1/10 and 1/7 [memory]."""
    got = answer("class-plan", **(CLASS | {"fuel_coupled": coupled}))
    share = got["results"]["draw_share"]["si"] * 3600
    assert (1 / 10 < share < 1 / 7, share < 1 / 10) == (signal == "WARNING", not signal)
    drawn = [
        caution["signal"]
        for caution in got["cautions"]
        if caution["text"].startswith("This draws more than")
    ]
    assert drawn == ([signal] if signal else [])


def test_a_bank_that_must_not_be_lit_gives_no_plan() -> None:
    """Six torches at 31 cfh or so are 24 % an hour of 130 ft³, past 1/7; at 1/10 they take 310 ft³, three cylinders."""
    with pytest.raises(InputError, match=r"^Acetylene cylinders that you couple: .* give 3 or more"):
        answer("class-plan", **(CLASS | {"fuel_coupled": "1"}))


def test_a_torch_too_large_for_one_cylinder_is_told_apart() -> None:
    """Bending at 3,500 Btu/h, 0.3 of 1,470 Btu/ft³: 8 cfh, more than 1/7 of 40 ft³ an hour on a cylinder of its own."""
    got = answer("class-plan", **(CLASS | {"exercise_1": "bend", "acetylene_contents": "40 ft^3"}))
    assert got["results"]["one_torch_share"]["si"] * 3600 > 1 / 7
    assert any("full cylinder of its own" in caution["text"] for caution in got["cautions"])


@pytest.mark.parametrize("rules", RULE_SETS)
def test_each_hazard_of_each_exercise_is_said_once_and_the_teacher_is_there(rules: str) -> None:
    """One room is cleared as far as its farthest exercise asks: 35 ft, 10.668 m, of 29 CFR 1910.252 (read in a
    copy), which brazing takes wherever the place has no figure; the German 2, 7.5 and 10 m are less.
    """
    farthest = "35 ft" if rules == "us" else "10.7 m"
    got = answer("class-plan", **FULL, rules=rules)
    texts = [caution["text"] for caution in got["cautions"]]
    assert len(texts) == len(set(texts))
    signals = [
        ("DANGER", "WARNING", "CAUTION", "NOTICE").index(caution["signal"]) for caution in got["cautions"]
    ]
    assert all(before <= after for before, after in pairwise(signals))
    assert any("The instructor is in the room" in text for text in texts)
    for exercise in ("lap", "braze", "cut", "solder"):
        alone = answer("job-sheet", **exercises(rules)[exercise].job)
        own = alone["results"]["clear_distance"]["text"].partition(",")[0]
        for caution in alone["cautions"]:
            if caution["signal"] in ("DANGER", "WARNING"):
                assert caution["text"].replace(f"Clear {own} ", f"Clear {farthest} ") in texts


def events(texts: dict[str, str]) -> list[Event]:
    return list(Calendar.from_ical(file_of("class-plan", "class-plan.ics", texts)["text"]).walk("VEVENT"))


@pytest.mark.parametrize("rules", RULE_SETS)
def test_the_calendar_holds_the_evening_in_the_time_on_the_wall(rules: str) -> None:
    """Set-up 15, demonstration 10, turns 27, 27, 20 and 20 min from 18:30: the last flame at 20:29."""
    texts = CLASS | {"day": "2026-11-25", "start": "18:30", "rules": rules}
    got = events(texts)
    times = [(event.start, event.end) for event in got]
    assert all(start.tzinfo is None for start, _ in times)
    day = datetime.datetime(2026, 11, 25)
    minutes = [int((start - day).total_seconds()) // 60 - 1110 for start, _ in times]
    assert minutes[:6] == [0, 15, 25, 52, 79, 99]
    watch = next(event for event in got if str(event["summary"]) == "Fire watch: stay")
    assert watch.start == day + datetime.timedelta(hours=20, minutes=29)
    assert watch.end - watch.start >= datetime.timedelta(minutes=60)
    looks = [event for event in got if str(event["summary"]) == "Fire watch: look in again"]
    assert [look.start - watch.end for look in looks] == [
        datetime.timedelta(minutes=due) for due in (() if rules == "us" else (20, 40, 60))
    ]  # Joint Code 16.15, read-m; the strictest of the others where a rule set has none


def test_the_same_plan_gives_the_same_calendar_and_no_two_entries_share_a_name() -> None:
    texts = FULL | {"day": "2026-11-25", "session_length": "3 h"}
    first, second = events(texts), events(texts)
    names = [str(event["uid"]) for event in first]
    assert names == [str(event["uid"]) for event in second]
    assert len(set(names)) == len(names)
    assert {event.start.date().isoformat() for event in first} >= {"2026-11-25", "2026-12-02"}, (
        "a week apart"
    )
    assert not set(names) & {str(event["uid"]) for event in events(texts | {"day": "2026-11-26"})}


def test_without_a_day_no_calendar_is_offered() -> None:
    assert "class-plan.ics" not in [one["name"] for one in answer("class-plan", **CLASS)["files"]]
    with pytest.raises(InputError, match=r"^File: "):
        file_of("class-plan", "class-plan.ics", CLASS)
