"""The calendar file of a fire watch, read back with an independent reader of RFC 5545."""

import json
from datetime import UTC, datetime, timedelta
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from icalendar import Calendar, Event

from calc.ask.errors import InputError
from calc.bridge import run
from calc.show.calendar import calendar_text

START = datetime(2026, 11, 25, 21, 30, tzinfo=UTC)
SOME = {"start": START.timestamp(), "watch": 3600, "monitoring": 3600, "check_every": 1200}


def entries(**changed: float) -> list[Event]:
    return list(Calendar.from_ical(calendar_text(**(SOME | changed))).walk("VEVENT"))


def alarms(event: Event) -> list[datetime]:
    """Every time at which the reader says that an alarm sounds."""
    return [each.trigger for each in event.alarms.times]


def test_the_watch_ends_when_the_rule_says_and_the_alarm_sounds_then() -> None:
    watch = entries()[0]
    assert watch.start == START
    assert watch.end == START + timedelta(minutes=60)
    assert alarms(watch) == [START + timedelta(minutes=60)]


def test_each_look_has_its_own_alarm_and_the_last_one_is_at_the_end() -> None:
    """Three looks in the hour after the watch, 20 min apart: Joint Code 16.15, read-m."""
    _, *looks = entries()
    assert [alarms(look) for look in looks] == [
        [START + timedelta(minutes=minutes)] for minutes in (80, 100, 120)
    ]


def test_without_a_time_between_looks_there_is_one_at_the_end() -> None:
    _, *looks = entries(check_every=0, monitoring=3 * 3600)
    assert [alarms(look) for look in looks] == [[START + timedelta(hours=4)]]


def test_without_later_looks_there_is_one_entry() -> None:
    assert len(entries(monitoring=0)) == 1


@given(watch=st.floats(60, 86_400), monitoring=st.floats(0, 86_400), every=st.floats(60, 86_400))
def test_no_alarm_of_the_watch_is_early_and_no_look_is_late(
    watch: float, monitoring: float, every: float
) -> None:
    first, *looks = entries(watch=watch, monitoring=monitoring, check_every=every)
    (end,) = alarms(first)
    assert 0 <= (end - START).total_seconds() - watch < 1
    times = [end, *(alarms(look)[0] for look in looks)]
    for before, after in pairwise(times):
        assert (after - before).total_seconds() <= every + 1
    assert (times[-1] - end).total_seconds() >= monitoring


def test_no_line_is_longer_than_the_standard_allows() -> None:
    """RFC 5545 3.1: lines of at most 75 octets, ended by CR and LF."""
    text = calendar_text(**SOME)
    assert text.endswith("\r\n")
    assert max(len(line.encode()) for line in text.split("\r\n")) <= 75
    assert "\n" not in text.replace("\r\n", "")


def test_commas_come_back_as_they_were() -> None:
    assert "Stay, with an extinguisher at hand." in str(entries()[0].get("description"))
    assert "Stay\\, with" in calendar_text(**SOME).replace("\r\n ", "")


def test_the_same_start_gives_the_same_entries_and_another_start_others() -> None:
    assert calendar_text(**SOME) == calendar_text(**SOME)
    names = [str(event["uid"]) for event in entries()]
    assert len(set(names)) == len(names)
    assert not set(names) & {str(event["uid"]) for event in entries(start=SOME["start"] + 60)}


@pytest.mark.parametrize(
    "wrong",
    [{"watch": 0}, {"watch": 1e9}, {"start": 0}, {"start": float("nan")}, {"monitoring": -1},
     {"check_every": 1}, {"watch": float("inf")}, {"watch": "60"}, {"start": True}],
)  # fmt: skip
def test_a_time_that_no_watch_has_is_refused(wrong: dict[str, Any]) -> None:
    with pytest.raises(InputError):
        calendar_text(**(SOME | wrong))


def test_a_page_gets_the_text_or_a_sentence() -> None:
    assert json.loads(run(json.dumps({"calendar": SOME})))["text"] == calendar_text(**SOME)
    reply = json.loads(run(json.dumps({"calendar": SOME | {"watch": 0}})))
    assert reply["errors"][0]["message"].startswith("Watch:")
