"""Rota of a class: nobody twice, nobody unwatched, equal time, nothing outside the session, no watch cut short."""

import csv
import re
from collections import Counter
from dataclasses import replace
from io import StringIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.answer.answering import file_of
from calc.class_plan.passes import Evening, TooLittleTimeError, Wanted, sessions_of
from calc.class_plan.rota import INSTRUCTOR, SHIFT, Slot, rota
from calc.declare import RULE_SETS

LEAST_WATCH = {"us": 60, "uk": 60}
"""NFPA 51B-2019 5.6.3, read-m; Joint Code 10th edition 16.15, read-m."""

EVENINGS = st.builds(
    Evening,
    learners=st.integers(2, 40), benches=st.integers(1, 20), length=st.integers(30, 720), set_up=st.integers(0, 30),
    demonstration=st.integers(0, 30), shut_down=st.integers(0, 90), watch=st.sampled_from([30, 60, 120]),
)  # fmt: skip
WANTED = st.lists(
    st.builds(Wanted, id=st.text("abc", min_size=3, max_size=3), title=st.just("Lap"), tries=st.integers(1, 10),
              each=st.integers(6, 12)),
    min_size=1, max_size=4, unique_by=lambda one: one.id,
)  # fmt: skip


def planned(evening: Evening, wanted: list[Wanted]) -> list[list[Slot]]:
    """Slots of each session; none where it does not fit."""
    try:
        sessions = sessions_of(evening, wanted)
    except TooLittleTimeError:
        return []
    slots = rota(evening, sessions)
    return [[slot for slot in slots if slot.session == number + 1] for number in range(len(sessions))]


@settings(max_examples=40, deadline=None)
@given(evening=EVENINGS, wanted=WANTED)
def test_every_person_does_one_thing_in_every_minute_of_every_session(
    evening: Evening, wanted: list[Wanted]
) -> None:
    for slots in planned(evening, wanted):
        clock = 0
        for slot in slots:
            assert slot.start == clock < slot.end
            assert sorted(duty.person for duty in slot.duties) == list(range(evening.learners + 1))
            clock = slot.end
        assert clock == evening.length


@settings(max_examples=40, deadline=None)
@given(evening=EVENINGS, wanted=WANTED)
def test_each_hot_bench_has_one_operator_and_a_watcher_of_its_own_without_a_torch(
    evening: Evening, wanted: list[Wanted]
) -> None:
    for slots in planned(evening, wanted):
        for slot in slots:
            hot = [duty for duty in slot.duties if duty.work in ("operates", "demonstrates")]
            watching = Counter(duty.bench for duty in slot.duties if duty.work == "watches")
            assert watching == Counter(duty.bench for duty in hot)
            assert max(watching.values(), default=1) == 1
            assert all(1 <= duty.bench <= evening.benches for duty in hot)
            assert len(hot) <= min(evening.benches, evening.learners // 2)
            if slot.phase != "demonstration":
                assert INSTRUCTOR not in [duty.person for duty in hot]


@settings(max_examples=40, deadline=None)
@given(evening=EVENINGS, wanted=WANTED)
def test_everyone_has_the_same_time_at_the_torch_and_all_tries(
    evening: Evening, wanted: list[Wanted]
) -> None:
    time: Counter[int] = Counter()
    tries: Counter[int] = Counter()
    sessions = planned(evening, wanted)
    for slots in sessions:
        own: Counter[int] = Counter()
        for slot in slots:
            for duty in slot.doing("operates"):
                own[duty.person] += slot.minutes
                tries[duty.person] += slot.tries
        assert len(set(own.values())) == 1, "in each session"
        time += own
    if sessions:
        assert set(time) == set(range(1, evening.learners + 1))
        assert set(time.values()) == {sum(one.tries * one.each for one in wanted)}
        assert set(tries.values()) == {sum(one.tries for one in wanted)}


@settings(max_examples=40, deadline=None)
@given(evening=EVENINGS, wanted=WANTED)
def test_the_watch_begins_with_the_last_flame_and_has_a_watcher_all_through(
    evening: Evening, wanted: list[Wanted]
) -> None:
    for slots in planned(evening, wanted):
        last = max(slot.end for slot in slots if slot.hot)
        watched = sum(slot.minutes for slot in slots if slot.start >= last and slot.doing("watches-fire"))
        assert watched == evening.watch
        for slot in slots:
            if last <= slot.start < last + evening.watch:
                assert slot.doing("watches-fire")
                assert slot.minutes <= SHIFT
        assert sum(slot.minutes for slot in slots if slot.phase == "set-up") == evening.set_up
        shut = sum(
            slot.minutes
            for slot in slots
            if slot.phase == "after" and slot.start < last + evening.shut_down
        )
        assert shut == evening.shut_down


@settings(max_examples=100, deadline=None)
@given(evening=EVENINGS, wanted=WANTED)
def test_what_is_refused_truly_does_not_fit_and_what_the_sentence_offers_does(
    evening: Evening, wanted: list[Wanted]
) -> None:
    """One try of each for all, turns one after the other, beside all the rest."""
    turns = next(
        n for n in range(1, 99) if n * min(evening.benches, evening.learners // 2) >= evening.learners
    )
    rest = evening.set_up + evening.demonstration + max(evening.shut_down, evening.watch)
    fits = all(rest + turns * one.each <= evening.length for one in wanted)
    try:
        sessions_of(evening, wanted)
    except TooLittleTimeError as refused:
        said = refused.says
        if "try of" not in said:
            assert fits
            assert "sessions and a plan holds" in said
            return
        assert not fits
        each = next(one.each for one in wanted if rest + turns * one.each > evening.length)
        one = [Wanted("one", "Lap", 1, each)]
        offered = said.rpartition("; give ")[2]
        hours = re.match(r"(?:(\d+) h)? ?(?:(\d+) min)? or more", offered)
        assert hours
        length = 60 * int(hours[1] or 0) + int(hours[2] or 0)
        offers = {"length": length, "benches": _number(r"(\d+) benches", offered),
                  "learners": _number(r"at most (\d+) learners", offered)}  # fmt: skip
        for name, number in offers.items():
            if number is not None:
                sessions_of(replace(evening, **{name: number}), one)
                worse = number + 1 if name == "learners" else number - 1
                if name != "learners" or worse < evening.learners:
                    with pytest.raises(TooLittleTimeError):
                        sessions_of(replace(evening, **{name: worse}), one)
    else:
        assert fits


def _number(pattern: str, text: str) -> int | None:
    found = re.search(pattern, text)
    return int(found[1]) if found else None


@pytest.mark.parametrize("rules", RULE_SETS)
@given(
    learners=st.integers(2, 20), benches=st.integers(1, 8), exercise=st.sampled_from(["corner", "cut", "solder", "bend"]),
    day=st.booleans(),
)  # fmt: skip
@settings(max_examples=5, deadline=None)
def test_the_file_holds_every_minute_of_everyone_and_the_rule_s_watch(
    rules: str, learners: int, benches: int, exercise: str, day: bool
) -> None:
    texts = {
        "learners": f"{learners}", "benches": f"{benches}", "session_length": "8 h", "exercise_1": exercise,
        "tries_1": "1", "rules": rules, "start": "18:30",
    } | ({"day": "2026-11-25"} if day else {})  # fmt: skip
    rows = list(csv.DictReader(StringIO(file_of("class-plan", "rota.csv", texts)["text"])))
    minutes: Counter[str] = Counter()
    for row in rows:
        minutes[row["person"]] += int(row["time [min]"])
    assert minutes == Counter({"instructor": 480, **{f"learner {n + 1}": 480 for n in range(learners)}})
    whiles = {
        (row["from"], row["to"], int(row["time [min]"]))
        for row in rows
        if row["work"].startswith("fire watch")
    }
    assert sum(length for *_, length in whiles) >= LEAST_WATCH.get(rules, 0)
    assert {row["day"] for row in rows} == {"2026-11-25" if day else ""}
