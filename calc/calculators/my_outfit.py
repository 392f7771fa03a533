"""What the reader has, and what of it is due before the next flame."""

import datetime
from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.ask.errors import InputError
from calc.declare import Answer, Caution, Choice, Day, Field, Figure, Shown, Table, calculator
from calc.declare.inputs import FREE_GAS, GAUGE, LENGTH, MASS, WATER_VOLUME
from calc.show.scales import scale
from calc.trade.fields import FUELS, TORCHES
from calc.trade.gas.acetylene_limit import require_acetylene_gauge
from calc.trade.safety.inspections import Due, checks, due, to_do
from calc.trade.tips import owned as tips_held
from calc.trade.tips.owned import Tip
from calc.values.numbers import plain_number
from calc.values.units import from_si

HISTORIES = {
    "known": "Bought new, or its whole past is known",
    "unknown": "Inherited, found, lay on a shelf, or nobody knows",
}
FLASHBACKS = {
    "none": "None",
    "unchecked": "Yes, and not everything was replaced or tested since",
    "checked": "Yes, and everything was replaced or tested since",
}
PARTS = "Torch, fuel gas and hoses"
CYLINDERS = "Cylinders"


@dataclass(frozen=True, slots=True, kw_only=True)
class MyOutfit:
    """Whether it may be lit, and what is due when."""

    use_it: Annotated[Figure, Shown("Use it", words=True)]
    against: Annotated[Figure | None, Shown("What speaks against it", words=True)]
    hoses: Annotated[Figure, Shown("Replace the hoses", words=True, group="Due")]
    arrestors: Annotated[Figure, Shown("Replace the arrestors", words=True, group="Due")]
    arrestors_test: Annotated[Figure, Shown("Have the arrestors tested", words=True, group="Due")]
    regulators: Annotated[Figure, Shown("Replace the regulators", words=True, group="Due")]
    yearly_check: Annotated[Figure, Shown("Have the whole outfit checked", words=True, group="Due")]


def _day(label: str, hint: str = "") -> Day:
    return Day(label, optional=True, group="Dates", hint=hint)


DAYS = {
    "hoses_made": _day("Hoses made", "Printed on the hose; else the day they were fitted new."),
    "arrestors_fitted": _day("Arrestors fitted new", "The older one."),
    "arrestors_tested": _day("Arrestors last tested", "The one tested longest ago."),
    "regulators_made": _day("Regulators made", "Stamped on the back or the side; the older one."),
    "outfit_checked": _day("Whole outfit last checked by somebody qualified"),
}


@calculator("my-outfit", "My outfit and its dates")
def my_outfit(
    *,
    history: Annotated[str | None, Choice("Where it comes from", HISTORIES, optional=True)],
    flashback: Annotated[str | None, Choice("A flashback in it", FLASHBACKS, optional=True)],
    today: Annotated[
        datetime.date | None,
        Day(
            "Today",
            today=True,
            optional=True,
            hint="The page takes your phone's date; change it if that is wrong.",
        ),
    ],
    hoses_made: Annotated[datetime.date | None, DAYS["hoses_made"]],
    arrestors_fitted: Annotated[datetime.date | None, DAYS["arrestors_fitted"]],
    arrestors_tested: Annotated[datetime.date | None, DAYS["arrestors_tested"]],
    regulators_made: Annotated[datetime.date | None, DAYS["regulators_made"]],
    outfit_checked: Annotated[datetime.date | None, DAYS["outfit_checked"]],
    torch_type: Annotated[str | None, Choice("Torch", TORCHES, optional=True, group=PARTS)],
    fuel: Annotated[str | None, Choice("Fuel gas", FUELS, optional=True, group=PARTS)],
    hose_bore: Annotated[
        float | None,
        Field("Bore of the hoses", LENGTH, low="3 mm", high="1 in", optional=True, group=PARTS),
    ],
    hose_length: Annotated[
        float | None,
        Field("Length of the hoses", ("ft", "m"), low="1 m", high="100 m", optional=True, group=PARTS),
    ],
    oxygen_water_volume: Annotated[
        float | None,
        Field(
            "Water volume of the oxygen cylinder",
            WATER_VOLUME,
            low="0.5 L",
            high="150 L",
            optional=True,
            group=CYLINDERS,
            hint="Stamped on the shoulder.",
        ),
    ],
    oxygen_full_gauge: Annotated[
        float | None,
        Field(
            "A full oxygen cylinder reads",
            GAUGE,
            low="500 psi",
            high="4500 psi",
            optional=True,
            group=CYLINDERS,
        ),
    ],
    acetylene_full_contents: Annotated[
        float | None,
        Field(
            "A full acetylene cylinder holds",
            FREE_GAS,
            low="5 ft^3",
            high="500 ft^3",
            free_gas=True,
            optional=True,
            group=CYLINDERS,
        ),
    ],
    acetylene_tare: Annotated[
        float | None,
        Field(
            "Tare stamped on the acetylene cylinder",
            MASS,
            low="5 lb",
            high="400 lb",
            optional=True,
            group=CYLINDERS,
            hint="Another cylinder has another tare: change it when you swap.",
        ),
    ],
    tip_1_label: Annotated[str | None, tips_held.label(1)],
    tip_1_use: Annotated[str | None, tips_held.use(1)],
    tip_1_orifice: Annotated[float | None, tips_held.orifice(1)],
    tip_1_oxygen_gauge: Annotated[float | None, tips_held.oxygen_gauge(1)],
    tip_1_fuel_gauge: Annotated[float | None, tips_held.fuel_gauge(1)],
    tip_2_label: Annotated[str | None, tips_held.label(2)],
    tip_2_use: Annotated[str | None, tips_held.use(2)],
    tip_2_orifice: Annotated[float | None, tips_held.orifice(2)],
    tip_2_oxygen_gauge: Annotated[float | None, tips_held.oxygen_gauge(2)],
    tip_2_fuel_gauge: Annotated[float | None, tips_held.fuel_gauge(2)],
    tip_3_label: Annotated[str | None, tips_held.label(3)],
    tip_3_use: Annotated[str | None, tips_held.use(3)],
    tip_3_orifice: Annotated[float | None, tips_held.orifice(3)],
    tip_3_oxygen_gauge: Annotated[float | None, tips_held.oxygen_gauge(3)],
    tip_3_fuel_gauge: Annotated[float | None, tips_held.fuel_gauge(3)],
    tip_4_label: Annotated[str | None, tips_held.label(4)],
    tip_4_use: Annotated[str | None, tips_held.use(4)],
    tip_4_orifice: Annotated[float | None, tips_held.orifice(4)],
    tip_4_oxygen_gauge: Annotated[float | None, tips_held.oxygen_gauge(4)],
    tip_4_fuel_gauge: Annotated[float | None, tips_held.fuel_gauge(4)],
    tip_5_label: Annotated[str | None, tips_held.label(5)],
    tip_5_use: Annotated[str | None, tips_held.use(5)],
    tip_5_orifice: Annotated[float | None, tips_held.orifice(5)],
    tip_5_oxygen_gauge: Annotated[float | None, tips_held.oxygen_gauge(5)],
    tip_5_fuel_gauge: Annotated[float | None, tips_held.fuel_gauge(5)],
    tip_6_label: Annotated[str | None, tips_held.label(6)],
    tip_6_use: Annotated[str | None, tips_held.use(6)],
    tip_6_orifice: Annotated[float | None, tips_held.orifice(6)],
    tip_6_oxygen_gauge: Annotated[float | None, tips_held.oxygen_gauge(6)],
    tip_6_fuel_gauge: Annotated[float | None, tips_held.fuel_gauge(6)],
    tip_7_label: Annotated[str | None, tips_held.label(7)],
    tip_7_use: Annotated[str | None, tips_held.use(7)],
    tip_7_orifice: Annotated[float | None, tips_held.orifice(7)],
    tip_7_oxygen_gauge: Annotated[float | None, tips_held.oxygen_gauge(7)],
    tip_7_fuel_gauge: Annotated[float | None, tips_held.fuel_gauge(7)],
    tip_8_label: Annotated[str | None, tips_held.label(8)],
    tip_8_use: Annotated[str | None, tips_held.use(8)],
    tip_8_orifice: Annotated[float | None, tips_held.orifice(8)],
    tip_8_oxygen_gauge: Annotated[float | None, tips_held.oxygen_gauge(8)],
    tip_8_fuel_gauge: Annotated[float | None, tips_held.fuel_gauge(8)],
    rules: str,
) -> Answer[MyOutfit]:
    """What is due, what is looked over when, what your tips suit. Every field may stay empty.

    What is empty counts as unknown, and what is unknown counts as due.
    """
    every = (
        Tip(number=1, label=tip_1_label, use=tip_1_use, orifice=tip_1_orifice, oxygen_gauge=tip_1_oxygen_gauge,
            fuel_gauge=tip_1_fuel_gauge),
        Tip(number=2, label=tip_2_label, use=tip_2_use, orifice=tip_2_orifice, oxygen_gauge=tip_2_oxygen_gauge,
            fuel_gauge=tip_2_fuel_gauge),
        Tip(number=3, label=tip_3_label, use=tip_3_use, orifice=tip_3_orifice, oxygen_gauge=tip_3_oxygen_gauge,
            fuel_gauge=tip_3_fuel_gauge),
        Tip(number=4, label=tip_4_label, use=tip_4_use, orifice=tip_4_orifice, oxygen_gauge=tip_4_oxygen_gauge,
            fuel_gauge=tip_4_fuel_gauge),
        Tip(number=5, label=tip_5_label, use=tip_5_use, orifice=tip_5_orifice, oxygen_gauge=tip_5_oxygen_gauge,
            fuel_gauge=tip_5_fuel_gauge),
        Tip(number=6, label=tip_6_label, use=tip_6_use, orifice=tip_6_orifice, oxygen_gauge=tip_6_oxygen_gauge,
            fuel_gauge=tip_6_fuel_gauge),
        Tip(number=7, label=tip_7_label, use=tip_7_use, orifice=tip_7_orifice, oxygen_gauge=tip_7_oxygen_gauge,
            fuel_gauge=tip_7_fuel_gauge),
        Tip(number=8, label=tip_8_label, use=tip_8_use, orifice=tip_8_orifice, oxygen_gauge=tip_8_oxygen_gauge,
            fuel_gauge=tip_8_fuel_gauge),
    )  # fmt: skip
    tips = tuple(tip for tip in every if tip != Tip(number=tip.number))
    for tip in tips:
        if tip.fuel_gauge is not None:
            field = f"tip_{tip.number}_fuel_gauge"
            require_acetylene_gauge(
                fuel or "acetylene", tip.fuel_gauge, rules, field, tips_held.fuel_gauge(tip.number).label
            )
    _hold_past(today, hoses_made, arrestors_fitted, arrestors_tested, regulators_made, outfit_checked)
    days = [day for day in (arrestors_fitted, arrestors_tested) if day is not None]
    dues = {
        "hoses": due("hoses", "replace", hoses_made, today, rules),
        "arrestors": due("arrestors", "replace", arrestors_fitted, today, rules),
        "arrestors_test": due(
            "arrestors",
            "test",
            max(days, default=None),
            today,
            rules,
            counted="from the last test, or from the day new ones were fitted",
        ),
        "regulators": due("regulators", "replace", regulators_made, today, rules),
        "yearly_check": due(
            "regulators", "check", outfit_checked, today, rules, counted="from the last check"
        ),
    }
    late = [each for each in dues.values() if each.is_due]
    against = _against(history, flashback, late, today)
    lists = [
        *(["flashback"] if flashback in (None, "unchecked") else []),
        *(["unknown"] if history in (None, "unknown") else []),
    ]
    tables = (
        to_do(tuple(lists), late),
        _passport(
            torch_type=torch_type,
            fuel=fuel,
            bore=hose_bore,
            length=hose_length,
            water_volume=oxygen_water_volume,
            full_gauge=oxygen_full_gauge,
            contents=acetylene_full_contents,
            tare=acetylene_tare,
            rules=rules,
        ),
        tips_held.tips_table(tips, rules),
        checks("Before each use", "each-use"),
        checks("Once a year", "each-year", "Your maker's list comes first."),
    )
    return Answer(
        MyOutfit(
            use_it=_use_it(flashback, against),
            against=against,
            **{name: each.figure for name, each in dues.items()},
        ),
        cautions=_cautions(history, flashback, fuel),
        tables=tuple(table for table in tables if table is not None),
    )


def _hold_past(today: datetime.date | None, *days: datetime.date | None) -> None:
    wrong = [
        InputError(name, asked.label, f"{day} is after today; give a day up to {today}.")
        for (name, asked), day in zip(DAYS.items(), days, strict=True)
        if today is not None and day is not None and day > today
    ]
    if wrong:
        raise InputError(wrong[0].field, wrong[0].label, wrong[0].reason, others=tuple(wrong[1:]))


BY_WHAT_YOU_GAVE = "By what you gave; what you left out counts against it. It sees no crack and no leak."


def _against(
    history: str | None, flashback: str | None, late: list[Due], today: datetime.date | None
) -> Figure | None:
    """What speaks against a flame, or None."""
    said = []
    if flashback == "unchecked":
        said.append("a flashback, and not everything was replaced or tested since")
    elif flashback is None:
        said.append("it is not said whether it had a flashback")
    if history == "unknown":
        said.append("nobody knows its past")
    elif history is None:
        said.append("it is not said where it comes from")
    if late and today is None:
        said.append("no day to judge the dates by")
    elif late:
        said.append("a part that is due, or of unknown age")
    if not said:
        return None
    return Figure(None, "", "practice", words="; ".join(said), basis=BY_WHAT_YOU_GAVE)


def _use_it(flashback: str | None, against: Figure | None) -> Figure:
    """The verdict: words that let nobody light what is not known."""
    if flashback == "unchecked":
        words = "No. Out of use, tagged, set apart, until all of the table below is done"
    elif against:
        words = "No. Nothing is lit until all of the table below is done"
    else:
        words = "Nothing is due by what you gave: first the list for each use, then as its maker says"
    return Figure(None, "", "practice", words=words, basis=BY_WHAT_YOU_GAVE)


def _cautions(history: str | None, flashback: str | None, fuel: str | None) -> tuple[Caution, ...]:
    found = []
    if flashback in (None, "unchecked"):
        found.append(caution("cylinder-in-fire"))
    if history != "known":
        found.append(caution("outfit-unknown"))
    return gravest_first((*found, caution("date-sees-nothing"), *brought({"fuel": fuel})))


def _passport(
    *,
    torch_type: str | None, fuel: str | None, bore: float | None, length: float | None, water_volume: float | None,
    full_gauge: float | None, contents: float | None, tare: float | None, rules: str,
) -> Table | None:  # fmt: skip
    """What the reader has, part by part; None where nothing was given."""

    def said(kind: str, value: float | None) -> str:
        return "" if value is None else scale(kind, rules).said(value)

    rows = (
        ("Torch", TORCHES.get(torch_type or "", "")),
        ("Fuel gas", FUELS.get(fuel or "", "")),
        ("Bore of the hoses", said("bore", bore)),
        ("Length of the hoses", said("length", length)),
        (
            "Water volume of the oxygen cylinder",
            "" if water_volume is None else f"{plain_number(from_si(water_volume, 'L'), 3)} L",
        ),
        ("A full oxygen cylinder reads", said("gauge", full_gauge)),
        ("A full acetylene cylinder holds", said("contents", contents)),
        ("Tare of the acetylene cylinder", said("mass", tare)),
    )
    given = tuple((part, yours) for part, yours in rows if yours)
    return Table("What it is", ("Part", "Yours"), given) if given else None
