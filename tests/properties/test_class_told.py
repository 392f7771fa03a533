"""A plan of a class told in tables, drawings and times of day: small evenings worked by hand."""

import pytest

from calc.ask.errors import InputError
from calc.class_plan import tables
from calc.class_plan.cost import Item
from calc.class_plan.cutting_list import CuttingList, Kind, Layout, NoRoomError, Strip, cutting_list
from calc.class_plan.gas import Taken
from calc.class_plan.kept_lessons import Kept, cells, columns, mean_factor, mean_words
from calc.class_plan.passes import Evening, TooLittleTimeError, Wanted, sessions_of
from calc.class_plan.rota import Slot, fire_watchers, last_flame, rota
from calc.class_plan.supplies import Rods
from calc.class_plan.times import clock, start_of, stock_size, whole_minutes
from calc.show.scales import scale
from calc.values.figures import Figure

EVENING = Evening(learners=7, benches=2, length=180, set_up=15, demonstration=10, shut_down=20, watch=60)
"""Seven at two benches need four rounds, two of them hot at once."""
WANTED = [Wanted("lap", "Lap", 1, 10), Wanted("tee", "Tee", 1, 12)]


def slots() -> tuple[Slot, ...]:
    return rota(EVENING, sessions_of(EVENING, WANTED))


def work(slot: Slot) -> list[str]:
    """What each learner does, with the bench where there is one."""
    return [f"{duty.work}{duty.bench or ''}" for duty in slot.duties if duty.person]


def test_who_does_what_in_each_round_by_hand() -> None:
    """By turns two hold the torch, the two next watch, the two after clean; who has just held it judges.

    Nobody comes after learner 7, so that of the last round watches at the bench: learner 1, the first.
    Who is left does problems and dry runs by turns.
    """
    turns = [slot for slot in slots() if slot.phase == "turns"]
    assert [work(slot) for slot in turns[:4]] == [
        ["operates1", "operates2", "watches1", "watches2", "cleans", "cleans", "dry-run"],
        ["judges", "judges", "operates1", "operates2", "watches1", "watches2", "cleans"],
        ["dry-run", "watches2", "judges", "judges", "operates1", "operates2", "watches1"],
        ["watches1", "dry-run", "problems", "dry-run", "judges", "judges", "operates1"],
    ]
    assert work(turns[4])[-1] == "judges"  # of the round before, though another exercise begins
    assert [(slot.start, slot.end, slot.exercise, slot.tries) for slot in turns] == [
        *((25 + 10 * n, 35 + 10 * n, "Lap", 1) for n in range(4)), *((65 + 12 * n, 77 + 12 * n, "Tee", 1) for n in range(4)),
    ]  # fmt: skip
    assert [slot.hot for slot in turns[2:4]] == [((1, 5, 7), (2, 6, 2)), ((1, 7, 1),)]


def test_what_stands_before_and_after_the_turns_by_hand() -> None:
    """The last flame goes out at 113; the watch lasts 60 in shifts of 15, shutting down 20; 7 are left over."""
    around = [slot for slot in slots() if slot.phase != "turns"]
    assert last_flame(EVENING, sessions_of(EVENING, WANTED)[0]) == 113
    assert [(slot.phase, slot.start, slot.end) for slot in around] == [
        ("set-up", 0, 15), ("demonstration", 15, 25), ("after", 113, 128), ("after", 128, 133), ("after", 133, 143),
        ("after", 143, 158), ("after", 158, 173), ("left", 173, 180),
    ]  # fmt: skip
    assert around[1].exercise == "Lap, Tee"
    assert work(around[0]) == ["sets-up"] * 7
    assert work(around[1]) == ["watches1", *["looks-on"] * 6]
    assert around[1].hot == ((1, 0, 1),)
    assert work(around[2]) == ["watches-fire", "watches-fire", *["shuts-down"] * 5]
    assert work(around[3]) == ["shuts-down"] * 2 + ["watches-fire"] * 2 + ["shuts-down"] * 3
    assert work(around[4]) == ["tidies"] * 2 + ["watches-fire"] * 2 + ["tidies"] * 3
    assert work(around[6]) == ["watches-fire", *["tidies"] * 5, "watches-fire"]
    assert work(around[7]) == ["tidies"] * 7
    assert [fire_watchers(EVENING, since) for since in (0, 14, 15, 45, 59, 60)] == [(1, 2), (1, 2), (3, 4), (7, 1), (7, 1), ()]
    three = Evening(learners=3, benches=1, length=180, set_up=0, demonstration=0, shut_down=0, watch=60)
    assert [fire_watchers(three, since) for since in (0, 15, 30, 45)] == [(1,), (2,), (3,), (1,)]


def test_an_exercise_that_goes_on_in_another_session_is_not_shown_again() -> None:
    short = Evening(learners=2, benches=1, length=120, set_up=0, demonstration=10, shut_down=0, watch=60)
    found = rota(short, sessions_of(short, [Wanted("lap", "Lap", 4, 10)]))
    shown = [slot for slot in found if slot.phase == "demonstration"]
    assert [(slot.session, slot.exercise, work(slot), slot.hot) for slot in shown] == [
        (1, "Lap", ["watches1", "looks-on"], ((1, 0, 1),)), (2, "", ["judges", "judges"], ()),
    ]  # fmt: skip


def test_tables_of_sessions_and_turns_by_hand() -> None:
    passes = sessions_of(EVENING, WANTED)
    (row,) = tables.sessions_table(EVENING, passes, 18 * 60 + 30, ["Monday"], "iso").rows
    assert row == ("1", "Monday", "Lap: 1 × 10 min; Tee: 1 × 12 min", "22 min", "20:23", "21:23", "7 min")
    assert tables.sessions_table(EVENING, passes, 0, [], "us").rows[0][1] == "no day given"
    turns, around = tables.rota_tables(slots(), 18 * 60 + 30, "us")
    assert turns.columns == ("From", "What", "Bench 1", "Bench 2", "The others")
    assert turns.rows[0] == (
        "6:55 pm", "Lap, 1 ×", "1 / 3", "2 / 4", "5, 6: clean and mark the next coupon; 7: dry run with a torch that is connected to nothing",
    )  # fmt: skip
    assert turns.rows[3][:4] == ("7:25 pm", "Lap, 1 ×", "7 / 1", "cold")
    assert turns.rows[4][:2] == ("7:35 pm", "Tee, 1 ×")
    assert around.rows[0] == ("6:30 pm", "Set up", "1 to 7: set up and leak-test")
    assert around.rows[1] == ("6:45 pm", "Demonstration: Lap, Tee", "1: watch bench 1; 2 to 7: look on through a filter, well back")
    assert around.rows[3] == ("8:38 pm", "Fire watch, shut down", "1, 2, 5 to 7: shut down and bleed; 3, 4: fire watch, nothing else")
    two = Evening(learners=2, benches=1, length=100, set_up=0, demonstration=0, shut_down=0, watch=60)
    alone, _ = tables.rota_tables(rota(two, sessions_of(two, WANTED[:1])), 0, "iso")
    assert alone.columns == ("From", "What", "Bench 1")
    assert alone.rows == (("0:00", "Lap, 1 ×", "1 / 2"), ("0:10", "Lap, 1 ×", "2 / 1"))


def test_the_drawing_of_a_session_names_each_part_at_its_time() -> None:
    (picture,) = tables.turns_pictures(EVENING, sessions_of(EVENING, WANTED), slots(), 18 * 60, "iso")
    for place, said in enumerate(
        ("18:00 set up", "18:15 demonstration", "18:25 turns", "19:53 last flame out, fire watch begins", "20:53 watch over", "21:00 end"), 1
    ):
        assert f">{place}  {said}<" in picture.svg
    bare = Evening(learners=2, benches=1, length=100, set_up=0, demonstration=0, shut_down=0, watch=60)
    passes = sessions_of(bare, WANTED[:1])
    (picture,) = tables.turns_pictures(bare, passes, rota(bare, passes), 0, "iso")
    assert ">1  0:00 turns<" in picture.svg
    assert "set up" not in picture.svg
    assert "demonstration" not in picture.svg


KINDS = (Kind("Lap", "100 × 50 mm", (0.1, 0.05), 6), Kind("Tee", "200 × 100 mm", (0.2, 0.1), 2))
FIRST = (
    Strip(kind=0, x=0, y=0, width=1000, height=500, pitch=1020, count=2, across=True),
    Strip(kind=1, x=0, y=520, width=2000, height=1000, pitch=1020, count=1, across=False),
)
STOCK = tables.Stock("sheet", "1.5 mm", "300 x 400", CuttingList(0.4, 0.3, KINDS, (Layout(FIRST, 2), Layout(FIRST[:1], 1))))


def test_strips_are_told_by_sheet_and_corner_and_drawn() -> None:
    told = tables.cuts_table(STOCK, "iso")
    assert told.rows == (
        ("1 to 2", "2", "100 × 50 mm", "Lap", "0, 0"), ("1 to 2", "1", "200 × 100 mm", "Tee", "0, 52"), ("3", "2", "100 × 50 mm", "Lap", "0, 0"),
    )  # fmt: skip
    assert told.title == "How each sheet is cut: 1.5 mm"
    assert told.columns[-1] == "From the corner, mm"
    first, second = tables.cuts_pictures(STOCK)
    assert first.title == "Sheet 1.5 mm, numbers 1 to 2 of 3"
    assert first.sentence == "3 pieces from each; what is left empty is kept for the next class."
    assert second.title == "Sheet 1.5 mm, number 3 of 3"
    assert second.sentence == "2 pieces from it; what is left empty is kept for the next class."
    assert STOCK.cuts.sheets == 3
    assert STOCK.cuts.waste == pytest.approx(1 - (6 * 0.005 + 2 * 0.02) / (3 * 0.12))
    assert STOCK.cuts.layouts[0].count(0) == 2
    assert FIRST[0].pieces() == [(0, 0, 1000, 500), (1020, 0, 1000, 500)]
    assert Strip(kind=0, x=5, y=7, width=3, height=2, pitch=4, count=2, across=False).pieces() == [(5, 7, 3, 2), (5, 11, 3, 2)]


def test_only_the_first_six_ways_are_drawn() -> None:
    many = CuttingList(0.4, 0.3, KINDS, tuple(Layout(FIRST, 1) for _ in range(8)))
    assert len(tables.cuts_pictures(tables.Stock("plate", "6 mm", "", many))) == 6
    assert len(tables.cuts_table(tables.Stock("plate", "6 mm", "", many), "us").rows) == 16


@pytest.mark.parametrize(
    ("stock", "gap", "kinds", "sheets"),
    [
        ((0.3, 0.2), 0.0, [(0.1, 0.1, 6)], 1), ((0.3, 0.2), 0.0, [(0.1, 0.1, 7)], 2), ((0.3, 0.2), 0.001, [(0.1, 0.1, 6)], 3),
        ((0.302, 0.201), 0.001, [(0.1, 0.1, 6)], 1), ((0.3, 0.2), 0.0, [(0.15, 0.2, 2), (0.1, 0.1, 6)], 2), ((0.3, 0.2), 0.0, [(0.2, 0.3, 5)], 5),
    ],
)  # fmt: skip
def test_sheets_that_it_takes_by_hand(stock: tuple[float, float], gap: float, kinds: list[tuple[float, float, int]], sheets: int) -> None:
    """A gap is lost between pieces only: three of 100 and two gaps of 1 need 302; on 300 go two by one, so three sheets of two."""
    made = cutting_list(stock, gap, [Kind(f"k{n}", "", (a, b), count) for n, (a, b, count) in enumerate(kinds)])
    assert made.sheets == sheets
    assert (made.longer, made.shorter) == (max(stock), min(stock))
    for number, (*_, count) in enumerate(kinds):
        assert sum(layout.sheets * layout.count(number) for layout in made.layouts) == count


def test_the_piece_that_does_not_fit_is_named() -> None:
    with pytest.raises(NoRoomError) as refused:
        cutting_list((0.3, 0.2), 0.0, [Kind("fits", "", (0.1, 0.1), 1), Kind("too long", "", (0.31, 0.1), 1)])
    assert refused.value.kind
    assert refused.value.kind.title == "too long"


def test_rods_are_rounded_up_and_gas_and_cost_are_added() -> None:
    rod = Rods(name="RG45", diameter=0.0016, exercises=("Lap", "Tee"), length=Figure(12.341, "", "computed"), mass=Figure(0.1911, "", "computed"), count=14)
    wire = Rods(name="Solder", diameter=0.003, exercises=("Cup",), length=Figure(2.0, "", "computed"), mass=Figure(0.1, "", "computed"), count=None)
    told = tables.rods_table([rod, wire], [("Socket", "drain socket", 3)], "iso")
    assert told
    assert told.rows == (
        ("RG45", "1.6 mm", "12.4", "0.2", "14 rods", "Lap, Tee"), ("Solder", "3 mm", "2", "0.1", "as wire or rod", "Cup"),
        ("drain socket", "", "", "", "3 sets", "Socket"),
    )  # fmt: skip
    assert tables.rods_table([], [], "us") is None
    rows = [Taken(1, "Lap", 600.0, {"fuel": (0.1, 0.2, 0.3), "oxygen": (0.2, 0.3, 0.4)}), Taken(2, "Purge", 0.0, {"fuel": (0.01, 0.02, 0.03), "oxygen": (0.0, 0.01, 0.02)})]
    assert tables.gas_table(rows, "iso").rows == (
        ("1", "Lap", "10 min", "0.2", "0.3"), ("2", "Purge", "no flame", "0.02", "0.01"), ("All", "", "10 min", "0.22", "0.31"),
    )  # fmt: skip
    paid = tables.cost_table([Item("Sheet", 3, "sheets", 12.5), Item("Oxygen", 1.23456, "m³", None)]).rows
    assert paid == (("Sheet", "3 sheets", "12.5", "37.5"), ("Oxygen", "1.23 m³", "not given", ""), ("All that has a price", "", "", "37.5"))
    assert tables.cost_table([Item("Oxygen", 1, "m³", None)]).rows[-1][-1] == "no price given"


@pytest.mark.parametrize(
    ("text", "minutes"),
    [("0:00", 0), ("23:59", 1439), ("12 am", 0), ("12 pm", 720), ("1 am", 60), ("11:59 pm", 1439), ("6.30 p.m.", 1110), ("9:05", 545)],
)
def test_times_of_day_are_read(text: str, minutes: int) -> None:
    assert start_of("start", "Start", text) == minutes


@pytest.mark.parametrize("text", ["24:00", "12:60", "13 pm", "0 am", "9", "", "6:3", "-1:00", "noon"])
def test_what_is_no_time_of_day_says_what_is(text: str) -> None:
    with pytest.raises(InputError) as refused:
        start_of("start", "Start", text)
    assert refused.value.message == f"Start: “{text}” is no time of day; give 0:00 to 23:59, as in 18:30 or 6:30 pm."


def test_times_of_day_are_told_and_begin_anew_after_midnight() -> None:
    assert [clock(m, "us") for m in (0, 59, 60, 719, 720, 780, 1439, 1440, 1501)] == [
        "12:00 am", "12:59 am", "1:00 am", "11:59 am", "12:00 pm", "1:00 pm", "11:59 pm", "12:00 am", "1:01 am",
    ]  # fmt: skip
    assert [clock(m, "uk") for m in (0, 605, 1440)] == ["0:00", "10:05", "0:00"]
    assert [whole_minutes(t, up=True) for t in (60.0, 60.01, 119.9)] == [1, 2, 2]
    assert [whole_minutes(t, up=False) for t in (59.9, 60.0, 119.9)] == [0, 1, 1]


@pytest.mark.parametrize(
    ("text", "rules", "said"),
    [
        ("1000", "iso", "“1000” is no size of a sheet; give two sides of 100 to 6100 mm, as in 1000 mm x 2000 mm."),
        ("1 x 2 x 3 mm", "iso", "“1 x 2 x 3 mm” is no size of a sheet; give two sides of 100 to 6100 mm, as in 1000 mm x 2000 mm."),
        ("48 x 96", "us", "“48 x 96” is no size of a sheet; give two sides of 4 to 240 in, as in 48 in x 96 in."),
        ("48 psi x 96 in", "us", "“48 psi x 96 in” is no size of a sheet; give two sides of 4 to 240 in, as in 48 in x 96 in."),
        ("99 x 2000 mm", "iso", "“99 x 2000 mm” is too small or too large; give two sides of 100 to 6100 mm, as in 1000 mm x 2000 mm."),
        ("1000 x 6101 mm", "iso", "“1000 x 6101 mm” is too small or too large; give two sides of 100 to 6100 mm, as in 1000 mm x 2000 mm."),
    ],
)
def test_a_stock_sheet_has_two_sides_within_its_limits(text: str, rules: str, said: str) -> None:
    with pytest.raises(InputError) as refused:
        stock_size("sheet", "Sheet", text, rules)
    assert refused.value.message == f"Sheet: {said}"
    assert stock_size("sheet", "Sheet", "100 x 6100 mm", rules) == pytest.approx((0.1, 6.1))
    assert stock_size("sheet", "Sheet", "4 ft X 96 in", rules) == pytest.approx((1.2192, 2.4384))


def test_too_short_an_evening_names_all_that_would_do() -> None:
    """Five rounds of nine learners at two benches; 100 less 10 and 60 leaves 30, so three rounds of ten minutes."""
    evening = Evening(learners=9, benches=2, length=100, set_up=10, demonstration=0, shut_down=0, watch=60)
    with pytest.raises(TooLittleTimeError) as refused:
        sessions_of(evening, [Wanted("lap", "Lap", 1, 10)])
    assert refused.value.says == (
        "one try of “Lap” for everybody takes 50 min of turns, and 30 min are left beside the 70 min before the first flame "
        "and after the last; give 2 h or more, or 3 benches, or at most 6 learners"
    )
    with pytest.raises(TooLittleTimeError, match="13 sessions and a plan holds 12"):
        sessions_of(evening, [Wanted("lap", "Lap", 13, 6)])
    assert len(sessions_of(evening, [Wanted("lap", "Lap", 12, 6)])) == 12


def lesson(factor: float | None) -> Kept:
    return Kept(day="2026-11-25", fuel="Acetylene", used=(1.0, 2.0), planned=(0.8, None), factors=((1.25, 1.2, 1.3), None), next=factor)


def test_factors_of_kept_lessons_are_averaged() -> None:
    """1.0, 1.2 and 1.6: mean 1.2667, squares 0.0711 + 0.0044 + 0.1111 over two, root 0.3055."""
    mean = mean_factor([lesson(1.0), lesson(1.2), lesson(None), lesson(1.6)])
    assert (mean.count, mean.mean, mean.spread) == (3, pytest.approx(3.8 / 3), pytest.approx(0.30551, abs=1e-5))
    assert "Mean gas factor of 3 lessons: 1.3, usual spread 0.96 to 1.6 " in mean_words([lesson(1.0), lesson(1.2), lesson(1.6)])
    assert mean_words([lesson(1.11)]).startswith("One lesson gives a gas factor of 1.2.")
    assert mean_words([lesson(None)]).startswith("No lesson here has planned amounts")
    assert cells(lesson(1.234), "iso") == ("2026-11-25", "Acetylene", "1000", "800", "2000", "", "1.25", "", "1.23")
    assert columns("iso", "x")[2:6] == ("Fuel gas used [L x]", "Fuel gas planned [L x]", "Oxygen used [L x]", "Oxygen planned [L x]")
    assert columns("us")[2] == f"Fuel gas used [{scale('contents', 'us').name}]"
