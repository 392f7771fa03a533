"""The plan of an evening: rota, cut list, rods, gas, cost, and the files of it."""

import datetime
from collections.abc import Sequence
from typing import Annotated, Any

from calc.answer.hazards import caution, gravest_first
from calc.ask.errors import InputError
from calc.class_plan import fields as asked
from calc.class_plan import figures, files
from calc.class_plan import tables as shown
from calc.class_plan.cost import Item
from calc.class_plan.cutting_list import MOST_SHEETS, NoRoomError, cutting_list
from calc.class_plan.gas import Taken, gas_of_class, peak, summed, thirstiest
from calc.class_plan.one_try import GASES, Try, one_try
from calc.class_plan.passes import Evening, TooLittleTimeError, Wanted, sessions_of
from calc.class_plan.results import ClassPlan
from calc.class_plan.rota import rota
from calc.class_plan.supplies import Done, bought, done, kinds_of, rods_of, total_of
from calc.class_plan.times import start_of, stock_size, whole_minutes
from calc.data.texts import figures as figures_of_sentences
from calc.declare import Answer, Caution, Figure, Offered, Picture, Table, calculator
from calc.formulas.gas.supply import cylinder_share, cylinders_needed
from calc.trade.gas.banks import Bank, TooFewError, both_banks, oxygen_in
from calc.trade.gas.draws import PICKS, cold_cautions, draw_cautions
from calc.trade.safety import storage as stored
from calc.trade.safety.surroundings import fire_watch, watch_row
from calc.values.units import to_si

PRESENCE = (caution("learner-alone"), caution("watcher-untrained"))
ALONE = int(figures_of_sentences()["alone-benches"].us)
"""Benches that may be hot at once where one adult is alone with a class: common practice."""


@calculator("class-plan", "Plan a class")
def class_plan(
    *,
    learners: Annotated[float, asked.LEARNERS],
    benches: Annotated[float, asked.BENCHES],
    session_length: Annotated[float, asked.SESSION_LENGTH],
    exercise_1: Annotated[str, asked.EXERCISE_1],
    tries_1: Annotated[float | None, asked.TRIES_1],
    exercise_2: Annotated[str | None, asked.EXERCISE_2],
    tries_2: Annotated[float | None, asked.TRIES_2],
    exercise_3: Annotated[str | None, asked.EXERCISE_3],
    tries_3: Annotated[float | None, asked.TRIES_3],
    exercise_4: Annotated[str | None, asked.EXERCISE_4],
    tries_4: Annotated[float | None, asked.TRIES_4],
    start: Annotated[str, asked.START],
    day: Annotated[datetime.date | None, asked.DAY],
    set_up: Annotated[float, asked.SET_UP],
    demonstration: Annotated[float, asked.DEMONSTRATION],
    shut_down: Annotated[float, asked.SHUT_DOWN],
    sheet_size: Annotated[str, asked.SHEET_SIZE],
    plate_size: Annotated[str, asked.PLATE_SIZE],
    gap: Annotated[float, asked.GAP],
    spares: Annotated[float, asked.SPARES],
    gas_factor: Annotated[float, asked.GAS_FACTOR],
    acetylene_contents: Annotated[float, asked.ACETYLENE_CONTENTS],
    fuel_coupled: Annotated[float | None, asked.FUEL_COUPLED],
    water_volume: Annotated[float, asked.WATER],
    oxygen_full_gauge: Annotated[float, asked.FULL_GAUGE],
    duty: Annotated[str, asked.DUTY],
    term_sessions: Annotated[float, asked.TERM],
    sheet_price: Annotated[float | None, asked.SHEET_PRICE],
    plate_price: Annotated[float | None, asked.PLATE_PRICE],
    rod_price: Annotated[float | None, asked.ROD_PRICE],
    fuel_price: Annotated[float | None, asked.FUEL_PRICE],
    oxygen_price: Annotated[float | None, asked.OXYGEN_PRICE],
    rules: str,
) -> Answer[ClassPlan]:
    """One evening as a plan: who is at which bench and who watches, what to cut, lay ready, couple and pay.

    Everyone has the same time at the torch; nobody works unwatched.
    """  # fmt: skip
    begin = start_of("start", asked.START.label, start)
    picked = _picked(
        ((exercise_1, tries_1), (exercise_2, tries_2), (exercise_3, tries_3), (exercise_4, tries_4)), rules
    )
    tries = {one.id: one_try(one.id, rules) for one in picked}
    every = list(tries.values())
    watch = fire_watch(rules)
    evening = Evening(
        learners=int(learners), benches=int(benches), length=whole_minutes(session_length, up=False), set_up=whole_minutes(set_up, up=True),
        demonstration=whole_minutes(demonstration, up=True), shut_down=whole_minutes(shut_down, up=True), watch=whole_minutes(watch.value or 0.0, up=True),
    )  # fmt: skip
    try:
        sessions = sessions_of(evening, picked)
    except TooLittleTimeError as error:
        raise InputError(error.field, asked.SESSION_LENGTH.label, f"{error.says}.") from None
    slots = rota(evening, sessions)
    all_done = done(evening, picked, tries, int(spares))
    stocks = _stocks(all_done, {"sheet": sheet_size, "plate": plate_size}, gap, rules)
    rods, ready = rods_of(all_done, rules), bought(all_done)
    gas = gas_of_class(evening, sessions, tries, gas_factor)
    peaks = {name: peak(evening, every, name, gas_factor) for name in GASES}
    banks = _banks(
        gas=gas,
        peaks=peaks,
        full=acetylene_contents,
        coupled=fuel_coupled,
        water_volume=water_volume,
        full_gauge=oxygen_full_gauge,
        duty=duty,
        rules=rules,
    )
    used = {name: cylinder_share(summed(gas, name)[1], banks[name].usable) for name in GASES}
    pound = "lb" if rules == "us" else "kg"
    heavy = total_of([one.mass for one in rods]).value or 0.0 if rods else 0.0
    items = [
        *(
            Item(one.name, one.cuts.sheets, "whole", sheet_price if one.stock == "sheet" else plate_price)
            for one in stocks
        ),
        *([Item("Rod and filler", heavy / to_si(1.0, pound), pound, rod_price)] if rods else []),
        Item("Acetylene", used["fuel"], "cylinders", fuel_price),
        Item("Oxygen", used["oxygen"], "cylinders", oxygen_price),
    ]
    reserve = {
        name: cylinders_needed(max(cylinder_share(thirstiest(gas, name), banks[name].usable), 1e-9))
        for name in GASES
    }
    compared = stored.held("acetylene", reserve["fuel"] * acetylene_contents, banks, rules)
    days = files.session_days(day, len(sessions))

    def drawn() -> tuple[tuple[Table, ...], tuple[Picture, ...]]:
        sheets = tuple(picture for one in stocks for picture in shown.cuts_pictures(one))
        cuts = tuple(shown.cuts_table(one, rules) for one in stocks)
        return cuts, (*shown.turns_pictures(evening, sessions, slots, begin, rules), *sheets)

    def calendar_file() -> str:
        row = watch_row(rules).row
        return files.plan_calendar(
            evening=evening,
            sessions=sessions,
            slots=slots,
            start=begin,
            days=days,
            monitoring=row.monitoring or 0.0,
            check_every=row.check_every or 0.0,
        )

    told = [one.isoformat() for one in days]
    tables = (
        shown.sessions_table(evening, sessions, begin, told, rules),
        *shown.rota_tables(slots, begin, rules),
        shown.pieces_table(all_done),
        shown.rods_table(rods, ready, rules),
        shown.gas_table(gas, rules),
        shown.cost_table(items),
    )
    known: dict[str, Any] = {
        **figures.safety_figures(evening, every, watch, rules),
        **figures.material_figures(all_done, stocks, rods, ready),
        **figures.cost_figures(items, all_done, len(sessions), term_sessions, ready),
    }
    return Answer(
        ClassPlan(
            **figures.evening_figures(evening, sessions, begin, rules),
            **known,
            **figures.gas_figures(gas=gas, peaks=peaks, banks=banks, used=used, reserve=reserve, hot=evening.hot, duty=duty),
            manifold_limit=stored.manifold(compared["fuel"], banks["fuel"]),
        ),
        cautions=_cautions(tries=every, most=peaks["fuel"].value or 0.0, hot=evening.hot, banks=banks, compared=compared, duty=duty, rules=rules),
        tables=tuple(table for table in tables if table is not None),
        drawn=drawn,
        files=(
            Offered("rota.csv", "Rota as CSV", lambda: files.rota_csv(slots, begin, days)),
            Offered("cutting-list.csv", "Cut list as CSV", lambda: files.cutting_csv(stocks, rules)),
            Offered("materials.csv", "Materials as CSV", lambda: files.materials_csv(stocks, rods, ready, rules)),
            Offered("gas.csv", "Gas as CSV", lambda: files.gas_csv(gas, rules)),
            Offered("cost.csv", "Cost as CSV", lambda: files.cost_csv(items)),
            *(
                [Offered("class-plan.ics", "Plan for a calendar", calendar_file)] if days else []
            ),
        ),
    )  # fmt: skip


def _picked(wanted: Sequence[tuple[str | None, float | None]], rules: str) -> list[Wanted]:
    """Exercises that were picked, each once."""
    found: list[Wanted] = []
    for name, (exercise, tries) in zip(asked.EXERCISES, wanted, strict=True):
        if exercise is None:
            continue
        made = one_try(exercise, rules).exercise
        if any(one.id == exercise for one in found):
            number = name[-1]
            raise InputError(
                name,
                f"Exercise {number}",
                f"“{made.title}” is there already; pick another, or give that one up to 10 tries.",
            )
        found.append(
            Wanted(exercise, made.title, int(tries or made.tries), whole_minutes(made.bench_time, up=True))
        )
    return found


def _stocks(
    all_done: Sequence[Done], sizes: dict[str, str], gap: float, rules: str
) -> tuple[shown.Stock, ...]:
    """Each stock packed."""
    found = []
    label = {"sheet": asked.SHEET_SIZE.label, "plate": asked.PLATE_SIZE.label}
    sides = {name: stock_size(f"{name}_size", label[name], text, rules) for name, text in sizes.items()}
    for (stock, thickness), kinds in kinds_of(all_done).items():
        try:
            cuts = cutting_list(sides[stock], gap, kinds)
        except NoRoomError as error:
            what = (
                f"this takes more than {MOST_SHEETS} of them" if error.kind is None
                else f"a piece of {error.kind.size} does not fit on it"
            )  # fmt: skip
            raise InputError(
                f"{stock}_size", label[stock], f"{what}; give a larger one, as in {_usual(stock, rules)}."
            ) from None
        found.append(shown.Stock(stock, thickness, sizes[stock], cuts))
    return tuple(found)


def _usual(stock: str, rules: str) -> str:
    size = (asked.SHEET_SIZE if stock == "sheet" else asked.PLATE_SIZE).assumed
    assert isinstance(size, dict)
    return str(size[rules])


def _banks(
    *,
    gas: Sequence[Taken], peaks: dict[str, Figure], full: float, coupled: float | None, water_volume: float,
    full_gauge: float, duty: str, rules: str,
) -> dict[str, Bank]:  # fmt: skip
    temperature = asked.cylinder_temperature(rules)
    oxygen = oxygen_in(water_volume, full_gauge, temperature)
    try:
        return both_banks(
            fuel="acetylene", full={"fuel": full, "oxygen": oxygen}, kept_oxygen=oxygen_in(water_volume, asked.stop_gauge(rules), temperature),
            peak=peaks["fuel"].value or 0.0, lesson={name: thirstiest(gas, name) for name in GASES}, pick=PICKS[duty],
            coupled={"fuel": None if coupled is None else int(coupled), "oxygen": None}, temperature=temperature, water_volume=water_volume,
        )  # fmt: skip
    except TooFewError as error:
        raise InputError("fuel_coupled", asked.FUEL_COUPLED.label, f"{error}.") from None
    except ValueError:
        raise InputError(
            "acetylene_contents",
            asked.ACETYLENE_CONTENTS.label,
            "these would be more cylinders than anyone couples; give larger ones, "
            "fewer benches, or ask the supplier.",
        ) from None


def _cautions(
    *,
    tries: Sequence[Try],
    most: float,
    hot: int,
    banks: dict[str, Bank],
    compared: dict[str, stored.Held],
    duty: str,
    rules: str,
) -> tuple[Caution, ...]:
    """Hazards of the work, of the draw and of the store, each once, the gravest first."""
    bank = banks["fuel"]
    drawn = draw_cautions(most, bank.count * bank.full, duty)
    this = "A torch on one full cylinder of its own, where the plan couples them,"
    alone = draw_cautions(most / hot, bank.full, duty, this) if bank.count > 1 and not drawn else []
    found = [
        *drawn,
        *alone,
        *(caution for one in tries for caution in one.cautions),
        *([caution("one-adult", benches=str(hot))] if hot > ALONE else []),
        *PRESENCE,
        *cold_cautions("acetylene", None, rules),
        *stored.store_cautions(stored.broken(compared, banks)),
        *([caution("home-made-coupling")] if bank.count > 1 else []),
    ]  # fmt: skip
    return gravest_first(found)
