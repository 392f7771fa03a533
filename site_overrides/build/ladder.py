"""The ladder on its pages: what an exercise takes, and all of them in order."""

from html import escape
from typing import Any

from calc.answer.answering import answer
from calc.class_plan.exercises import Exercise, exercises
from calc.data.tables import HOW_SURE
from calc.values.numbers import plain_number
from calc.values.quantities import Volume
from calc.values.units import from_si, to_si, written

GAS_UNITS = {"us": "ft^3", "iso": "L"}


def gas_of_try(exercise_id: str, rules: str) -> tuple[Volume, Volume]:
    """Oxygen and fuel gas of one try, free m³.

    Args:
        exercise_id: Its id.
        rules: Rule set.

    Returns:
        The flows of its job sheet for the minutes that a learner's flame burns.
    """
    one = exercises(rules)[exercise_id]
    texts: dict[str, Any] = dict(one.job)
    results = answer("job-sheet", **texts)["results"]
    oxygen, fuel = (
        to_si(results[name]["value"], results[name]["unit"], free_gas=True) * one.flame_time
        for name in ("oxygen_flow", "fuel_flow")
    )
    return oxygen, fuel


def _both(us: str, metric: str) -> str:
    return us if us == metric else f"{us} ({metric})"


def coupon(exercise_id: str) -> str:
    """Pieces, stock and sizes of one try, inches first."""
    us, metric = (exercises(rules)[exercise_id] for rules in ("us", "iso"))
    if not us.pieces:
        return "nothing is cut"
    stock = f"{_both(us.job['thickness'], metric.job['thickness'])} {us.stock}"
    size = _both(us.size, metric.size).replace(" x ", " × ")
    count = f"{us.pieces} pieces" if us.pieces > 1 else "1 piece"
    return f"{count} of {stock}, {'each ' if us.pieces > 1 else ''}{size}"


def gas_words(exercise_id: str) -> tuple[str, str]:
    """Oxygen and fuel gas of one try as text, cubic feet first."""
    said: list[list[str]] = [[], []]
    for rules, unit in GAS_UNITS.items():
        for gas, volume in zip(said, gas_of_try(exercise_id, rules), strict=True):
            number = plain_number(from_si(volume, unit, free_gas=True), 2)
            gas.append(f"{number} {written(unit)}")
    oxygen, fuel = (_both(*gas) for gas in said)
    return oxygen, fuel


def minutes(one: Exercise) -> tuple[str, str]:
    """Minutes at the bench and of flame, as text."""
    return plain_number(from_si(one.bench_time, "min"), 3), plain_number(from_si(one.flame_time, "min"), 3)


def facts_html(exercise_id: str) -> str:
    """What one exercise takes: pieces, minutes, gas and usual tries.

    Raises:
        ValueError: There is no such exercise.
    """
    known = exercises("us")
    if exercise_id not in known:
        raise ValueError(f"there is no exercise {exercise_id!r}")
    one = known[exercise_id]
    bench, flame = minutes(one)
    oxygen, fuel = gas_words(exercise_id)
    rung = list(known).index(exercise_id) + 1
    facts = {
        "Rung": f"{rung} of {len(known)}",
        "Coupon": coupon(exercise_id),
        "Bought": one.bought,
        "At the bench": f"{bench} minutes for one try",
        "Flame": f"{flame} minutes of them",
        "Gas for one try": f"oxygen {oxygen}, acetylene {fuel}",
        "Usually done": "once" if one.tries == 1 else f"{one.tries} times",
    }
    lines = "".join(
        f"<div><dt>{name}</dt><dd>{escape(text)}</dd></div>" for name, text in facts.items() if text
    )
    return (
        f'<dl class="bb-facts">{lines}</dl><p class="bb-worked">Pieces, minutes and tries: {HOW_SURE[one.how_sure]}. '
        "Gas: what the torch takes on the job sheet, for those minutes of flame. "
        "The sheet’s own figure counts a welder’s pace, and the purge.</p>"
    )


def rungs() -> tuple[list[str], list[list[str]]]:
    """Heads and rows of the overview, cells as HTML."""
    heads = [
        "Rung",
        "Minutes at the bench",
        "Minutes of flame",
        "Usual tries",
        "Coupon",
        "Oxygen",
        "Acetylene",
    ]
    rows = []
    for number, one in enumerate(exercises("us").values(), start=1):
        pieces = (
            "; ".join(part for part in (coupon(one.id) if one.pieces else "", one.bought) if part)
            or "nothing is cut"
        )
        cells = [f"{number}. {one.title}", *minutes(one), str(one.tries), pieces, *gas_words(one.id)]
        rows.append([escape(cell) for cell in cells])
    return heads, rows
