"""Which calculators problems are made from, and why others are left out."""

from functools import cache
from typing import Any

from calc.data.tables import table
from calc.declare import Calculator, Day
from calc.declare.catalogue import calculators

TABLE = "practice-calculators-benchbook-2026"
QUESTIONS = "practice-questions-benchbook-2026"

TOPICS = {
    "gas": "Gas in cylinders",
    "hoses": "Hoses, tips and gauges",
    "heat": "Flames and heat",
    "metal": "Sheet, rod, joints and cuts",
    "other": "Others",
    "all": "All of them",
}
"""Topics a set may be made from, by id."""

ASKED = ("calculators", "job_sheet", "class_plan")
"""Rooms whose calculators problems are made from."""

OWN = frozenset({"problem-set", "problem-key", "licence-questions", "licence-key"})
"""Calculators that make sets: nothing is asked about these."""

WORDS_ONLY = "it answers in words only"
DAYS = "it works from days of the calendar"
NO_QUESTION = "no question is written for it yet"


@cache
def _rows() -> dict[str, Any]:
    return {row.calculator: row for row in table(TABLE)}


@cache
def questions() -> dict[str, dict[str, Any]]:
    """The row of each result that is asked for, by calculator and result."""
    found: dict[str, dict[str, Any]] = {}
    for row in table(QUESTIONS):
        found.setdefault(row.calculator, {})[row.result] = row
    return found


def why_not(calculator: Calculator) -> str:
    """Why no problem is made from a calculator; empty where problems are made.

    Args:
        calculator: A declared calculator.

    Returns:
        A sentence without its full stop.
    """
    if calculator.id in OWN:
        return "it makes the sets"
    row = _rows().get(calculator.id)
    if row is not None and row.why_not:
        return str(row.why_not)
    if all(shown.words for shown in calculator.results.values()):
        return WORDS_ONLY
    if any(isinstance(asked, Day) and asked.example for asked in calculator.inputs.values()):
        return DAYS
    return "" if calculator.id in questions() else NO_QUESTION


def offered() -> dict[str, str]:
    """Title of every calculator that problems are made from, by id, as far as declared by now."""
    return {each.id: each.title for each in calculators(*ASKED).values() if not why_not(each)}


def topic_of(calculator_id: str) -> str:
    """Topic of a calculator; `other` where none is kept."""
    row = _rows().get(calculator_id)
    return str(row.topic) if row is not None and row.topic else "other"


def of_topic(topic: str) -> list[str]:
    """Ids of the calculators of a topic, in the order of the table, then in that of the files."""
    place = {name: number for number, name in enumerate(_rows())}
    found = [name for name in offered() if topic in ("all", topic_of(name))]
    return sorted(found, key=lambda name: (place.get(name, len(place)), name))


def asked_of(calculator: Calculator) -> tuple[str, ...]:
    """Results that a problem may ask for."""
    return tuple(questions().get(calculator.id, {}))


def varied_in(calculator: Calculator) -> tuple[str, ...]:
    """Inputs with an assumed value that a problem gives all the same."""
    row = _rows().get(calculator.id)
    return tuple(row.varied.split()) if row is not None else ()
