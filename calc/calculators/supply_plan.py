"""The gas of a class: what it takes in a week, what to couple, keep, order and pay."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.ask.errors import InputError
from calc.declare import Answer, Beside, Choice, Field, Figure, Shown, Step, calculator, worked
from calc.declare.inputs import FREE_GAS, FREE_GAS_FLOW, GAUGE, WATER_VOLUME
from calc.formulas.gas.acetylene import acetylene_draw_limit
from calc.formulas.gas.properties import oxygen_ratio
from calc.formulas.gas.supply import cylinder_share, cylinders_needed, gas_of_use
from calc.trade.fields import CYLINDER_TEMPERATURE
from calc.trade.gas import costs
from calc.trade.gas import plan_fields as fields
from calc.trade.gas.banks import Bank, TooFewError, both_banks, change_words, oxygen_in
from calc.trade.gas.course import by_kind, course
from calc.trade.gas.draws import DUTIES, FRACTIONS, PICKS, cold_cautions, draw_cautions, draw_limit_of
from calc.trade.gas.stocks import FIT, OXYGEN_FLOOR, filled_at
from calc.trade.gas.work import Kind, Lesson, kind
from calc.trade.safety import storage as stored
from calc.trade.tips.settings import require_welding_fuel

FUELS = {"acetylene": "Acetylene", "propane": "Propane", "propylene": "Propylene"}
ROTA = {"at-once": "All kinds at once", "in-turn": "One kind after the other"}
GUESS = 0.3
"""How far a week's gas may be out, since the share that flames burn is a guess."""

RESERVE = "What is used while an order is on its way, at least one; our own rule."


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplyPlan:
    """The plan, in the order it is used."""

    fuel_week: Annotated[Figure, Shown("Fuel gas in a week", FREE_GAS[::2], free_gas=True, toward="up")]
    oxygen_week: Annotated[Figure, Shown("Oxygen in a week", FREE_GAS[::2], free_gas=True, toward="up")]
    vented_week: Annotated[
        Figure, Shown("Of each, let out at purge and bleed", ("ft^3", "L"), free_gas=True, toward="up")
    ]
    fuel_peak: Annotated[
        Figure, Shown("Fuel gas, every flame burning", FREE_GAS_FLOW, free_gas=True, toward="up")
    ]
    oxygen_peak: Annotated[
        Figure, Shown("Oxygen, every flame burning", FREE_GAS_FLOW, free_gas=True, toward="up")
    ]
    draw_share: Annotated[
        Figure, Shown("Acetylene then drawn, share of contents when full", ("percent/h",), toward="up")
    ]
    draw_limit: Annotated[
        Figure, Shown("Most to draw from the full bank", FREE_GAS_FLOW, free_gas=True, toward="down")
    ]
    fuel_in_use: Annotated[Figure, Shown("Fuel cylinders in use, coupled", toward="up")]
    oxygen_in_use: Annotated[Figure, Shown("Oxygen cylinders in use", toward="up")]
    fuel_change_at: Annotated[
        Figure, Shown("Change the fuel bank when down to", FREE_GAS[::2], free_gas=True, toward="up")
    ]
    fuel_left_lesson: Annotated[
        Figure, Shown("In a full fuel bank after one lesson", FREE_GAS[::2], free_gas=True, toward="down")
    ]
    oxygen_left_lesson: Annotated[
        Figure, Shown("In the oxygen bank after one lesson", FREE_GAS[::2], free_gas=True, toward="down")
    ]
    fuel_cylinders_week: Annotated[Figure, Shown("Fuel cylinders used in a week", digits=2, toward="up")]
    oxygen_cylinders_week: Annotated[
        Figure, Shown("Oxygen cylinders used in a week", digits=2, toward="up")
    ]
    fuel_reserve: Annotated[Figure, Shown("Fuel cylinders in reserve", toward="up")]
    oxygen_reserve: Annotated[Figure, Shown("Oxygen cylinders in reserve", toward="up")]
    order_fuel: Annotated[Figure, Shown("Order fuel gas within", ("d", "d"), digits=2, toward="down")]
    order_oxygen: Annotated[Figure, Shown("Order oxygen within", ("d", "d"), digits=2, toward="down")]
    store_limit: Annotated[Figure, Shown("Reserve of fuel gas against the rule", words=True)]
    manifold_limit: Annotated[Figure, Shown("Fuel manifold against the rule", words=True)]
    oxygen_manifold_limit: Annotated[Figure, Shown("Oxygen manifold against the rule", words=True)]
    separation: Annotated[Figure, Shown("Stored oxygen from fuel gas", ("ft", "m"), toward="up")]
    cost_week: Annotated[Figure, Shown("Cost in a week, your money", toward="up")]
    liquid_cost_week: Annotated[Figure, Shown("Oxygen as liquid, a week, your money", toward="up")]
    liquid_or_cylinders: Annotated[Figure, Shown("Liquid oxygen or cylinders", words=True)]


@calculator("supply-plan", "Plan the gas of a class")
def supply_plan(
    *,
    welding_benches: Annotated[float, fields.benches("welding", "6", asked=True)],
    welding_hours: Annotated[float, fields.hours("welding", "2 h", asked=True)],
    brazing_benches: Annotated[float, fields.benches("brazing", "2", asked=True)],
    brazing_hours: Annotated[float, fields.hours("brazing", "1 h", asked=True)],
    cutting_benches: Annotated[float, fields.benches("cutting", "1", asked=True)],
    cutting_hours: Annotated[float, fields.hours("cutting", "0.5 h", asked=True)],
    sessions: Annotated[
        float, Field("Lessons in a week", ("",), example="1", low="1", high="14", whole=True)
    ],
    heating_benches: Annotated[float, fields.benches("heating", "0", asked=False)],
    heating_hours: Annotated[float, fields.hours("heating", "0 h", asked=False)],
    welding_fuel_flow: Annotated[float, fields.flow("welding", "5.5 cfh", "150 L/h")],
    brazing_fuel_flow: Annotated[float, fields.flow("brazing", "7 cfh", "200 L/h")],
    cutting_fuel_flow: Annotated[float, fields.flow("cutting", "9 cfh", "250 L/h")],
    heating_fuel_flow: Annotated[float, fields.flow("heating", "30 cfh", "850 L/h")],
    cutting_oxygen_flow: Annotated[
        float, fields.flow("cutting", "45 cfh", "1300 L/h", "Cutting oxygen, on top,")
    ],
    welding_burning: Annotated[float, fields.burning("welding", "40 %")],
    brazing_burning: Annotated[float, fields.burning("brazing", "30 %")],
    cutting_burning: Annotated[float, fields.burning("cutting", "25 %")],
    heating_burning: Annotated[float, fields.burning("heating", "30 %")],
    rota: Annotated[str, Choice("Kinds of work go on", ROTA, assumed="at-once")],
    vented: Annotated[
        float,
        Field(
            "Each torch lets out at purge and bleed, of each gas",
            ("L", "ft^3"),
            free_gas=True,
            assumed={"us": "0.04 ft^3", "iso": "1 L", "uk": "1 L"},
            low="0 L",
            high="100 L",
            hint="In a lesson; see purge-time and bleed-down.",
        ),
    ],
    fuel: Annotated[str, Choice("Fuel gas", FUELS, assumed="acetylene", outfit="fuel")],
    duty: Annotated[str, Choice("Flames burn", DUTIES, assumed="intermittent")],
    full_contents: Annotated[
        float,
        Field(
            "A full fuel cylinder holds",
            FREE_GAS,
            assumed={"us": "130 ft^3", "iso": "5.7 m^3", "uk": "5.7 m^3"},
            low="5 ft^3",
            high="5000 ft^3",
            free_gas=True,
            outfit="acetylene_full_contents",
        ),
    ],
    water_volume: Annotated[
        float,
        Field(
            "Water volume of an oxygen cylinder",
            WATER_VOLUME,
            low="0.5 L",
            high="150 L",
            assumed={"us": "43 L", "iso": "50 L", "uk": "50 L"},
            outfit="oxygen_water_volume",
        ),
    ],
    oxygen_full_gauge: Annotated[
        float,
        Field(
            "A full oxygen cylinder reads",
            GAUGE,
            low="600 psi",
            high="4500 psi",
            assumed={"us": "2200 psi", "iso": "200 bar", "uk": "200 bar"},
            outfit="oxygen_full_gauge",
        ),
    ],
    oxygen_stop_gauge: Annotated[
        float,
        Field(
            "Oxygen is changed when it reads",
            GAUGE,
            low="29 psi",
            high="500 psi",
            assumed=OXYGEN_FLOOR,
        ),
    ],
    cylinder_temperature: Annotated[float, CYLINDER_TEMPERATURE],
    lead_time: Annotated[
        float,
        Field("From order to delivery", ("d", "week"), assumed="7 d", low="0 d", high="90 d"),
    ],
    fuel_coupled: Annotated[
        float | None, fields.count("Fuel cylinders that you couple", "Empty: reckoned.")
    ],
    oxygen_coupled: Annotated[
        float | None, fields.count("Oxygen cylinders that you couple", "Empty: reckoned.")
    ],
    fuel_stock: Annotated[
        float | None,
        fields.count("Full fuel cylinders there now", "In use and standing by. Empty: as planned."),
    ],
    oxygen_stock: Annotated[
        float | None,
        fields.count("Full oxygen cylinders there now", "In use and standing by. Empty: as planned."),
    ],
    fuel_price: Annotated[float | None, fields.price("Price of a fuel cylinder's gas")],
    oxygen_price: Annotated[float | None, fields.price("Price of an oxygen cylinder's gas")],
    rent: Annotated[float | None, fields.price("Rent of one cylinder, a week")],
    liquid_price: Annotated[float | None, fields.price("Price of a litre of liquid oxygen")],
    liquid_rent: Annotated[float | None, fields.price("Rent of its container, a week")],
    liquid_contents: Annotated[
        float,
        Field("The container holds", ("L", "ft^3"), assumed="180 L", low="10 L", high="50000 L"),
    ],
    boil_off: Annotated[
        float,
        Field(
            "Boils off in a day, share of the container",
            ("%",),
            assumed="1.5 %",
            low="0 %",
            high="20 %",
            hint="From memory; ask the supplier.",
        ),
    ],
    rules: str,
) -> Answer[SupplyPlan]:
    """Gas that a class takes in a week, the cylinders to couple and to keep, when to order, and the store's rules.

    The share of the time that flames burn decides everything and is a guess:
    watch a lesson and put your own.
    """  # fmt: skip
    if welding_benches > 0 and welding_hours > 0:
        require_welding_fuel(fuel, rules)
    ratio = oxygen_ratio(fuel)
    given = (
        ("Welding", welding_benches, welding_fuel_flow, welding_burning, welding_hours, 0.0),
        ("Brazing", brazing_benches, brazing_fuel_flow, brazing_burning, brazing_hours, 0.0),
        (
            "Cutting",
            cutting_benches,
            cutting_fuel_flow,
            cutting_burning,
            cutting_hours,
            cutting_oxygen_flow,
        ),
        ("Heating", heating_benches, heating_fuel_flow, heating_burning, heating_hours, 0.0),
    )
    kinds = [
        kind(
            name=name,
            benches=benches,
            fuel_flow=flow,
            burning=share,
            time=time,
            ratio=ratio,
            cutting_oxygen=jet,
        )
        for name, benches, flow, share, time, jet in given
        if benches > 0 and time > 0
    ]
    if not kinds:
        raise InputError(
            "welding_benches", "Benches welding", "nothing burns so; give benches and hours, such as 6."
        )
    lesson = Lesson(kinds, sessions, rota == "at-once", vented)
    if lesson.length > 24 * 3600:
        raise InputError(
            "sessions", "Lessons in a week", "so each lasts longer than a day; give more lessons."
        )
    week = {gas: lesson.week(gas) for gas in ("fuel", "oxygen")}
    peak = {gas: lesson.peak(gas) for gas in ("fuel", "oxygen")}
    full_oxygen = oxygen_in(water_volume, oxygen_full_gauge, filled_at(rules))
    kept_oxygen = oxygen_in(water_volume, oxygen_stop_gauge, cylinder_temperature)
    coupled = {
        "fuel": None if fuel_coupled is None else int(fuel_coupled),
        "oxygen": None if oxygen_coupled is None else int(oxygen_coupled),
    }
    try:
        banks = both_banks(
            fuel=fuel, full={"fuel": full_contents, "oxygen": full_oxygen}, kept_oxygen=kept_oxygen, peak=peak["fuel"],
            lesson={gas: week[gas] / sessions for gas in week}, pick=PICKS[duty], coupled=coupled, temperature=cylinder_temperature, water_volume=water_volume,
        )  # fmt: skip
    except TooFewError as error:
        raise InputError("fuel_coupled", "Fuel cylinders that you couple", f"{error}.") from None
    except ValueError:
        raise InputError(
            "full_contents",
            "A full fuel cylinder holds",
            "these would be more cylinders than anyone couples; give larger ones, fewer "
            "benches or fewer hours, or ask the supplier.",
        ) from None
    steps = _steps(kinds, banks["fuel"], PICKS[duty])
    share = {
        gas: worked(
            steps,
            f"{words} cylinders in a week",
            cylinder_share,
            wanted=week[gas],
            usable=banks[gas].usable,
        )
        for gas, words in (("fuel", "Fuel"), ("oxygen", "Oxygen"))
    }
    reserve = {gas: cylinders_needed(max(share[gas] * lead_time / costs.WEEK, 1e-9)) for gas in banks}
    planned = {gas: float(bank.count + reserve[gas]) for gas, bank in banks.items()}
    order = {
        gas: costs.order_time(there or planned[gas], share[gas], lead_time, sessions)
        for gas, there in (("fuel", fuel_stock), ("oxygen", oxygen_stock))
    }
    compared = stored.held(fuel, reserve["fuel"] * full_contents, banks, rules)
    bank = banks["fuel"]
    paid = costs.cylinder_cost(
        share, {"fuel": fuel_price, "oxygen": oxygen_price}, rent,
        sum(planned.values()),
    )  # fmt: skip
    oxygen_paid = costs.cylinder_cost(
        {"oxygen": share["oxygen"]}, {"oxygen": oxygen_price}, rent,
        planned["oxygen"],
    )  # fmt: skip
    liquid = costs.liquid_cost(week["oxygen"], liquid_price, liquid_rent, liquid_contents, boil_off)
    none = Figure(None, "", "practice", words="no such rule for this gas: see liquid-fuel-left")
    sure = "Benches, flow, share of the time and hours as given or assumed, and what is let out."

    def beside() -> Beside:
        rows, pictures = course(lesson, banks, rules)
        return (by_kind(lesson, rules), rows, stored.limits_table(compared, rules)), pictures

    return Answer(
        SupplyPlan(
            fuel_week=_guess(week["fuel"], sure),
            oxygen_week=_guess(week["oxygen"], f"{sure} {ratio:g} of oxygen for one of fuel; the air brings the rest."),
            vented_week=Figure(
                lesson.let_out * sessions, "", "practice", basis="Torches times lessons times what each lets out."
            ),
            fuel_peak=Figure(peak["fuel"], "definition", "computed", basis="Every torch of the moment burning."),
            oxygen_peak=Figure(peak["oxygen"], "definition", "computed", basis="Every torch, cutting oxygen on."),
            draw_share=Figure(
                peak["fuel"] / (bank.count * bank.full), "definition", "computed", basis="Peak over a full bank."
            ) if fuel == "acetylene" else none,
            draw_limit=draw_limit_of(bank.count * bank.full, duty) if fuel == "acetylene" else none,
            fuel_in_use=Figure(
                float(bank.count), "cga-g1" if fuel == "acetylene" else "", "memory" if fuel == "acetylene" else "practice",
                basis=f"So many that the draw of {FRACTIONS[duty]} holds until half is used, and a lesson needs no change."
                if fuel == "acetylene" else "So many that a lesson needs no change; what boils off may want more.",
            ),
            oxygen_in_use=Figure(
                float(banks["oxygen"].count), FIT, "computed", basis="So many that a lesson needs no change."
            ),
            fuel_change_at=Figure(
                bank.count * bank.kept, "cga-g1" if fuel == "acetylene" else "", "memory" if fuel == "acetylene" else "practice",
                basis="All of the bank. Below it the peak draws too fast for what is left, or too little stays in.",
                words=change_words(peak["fuel"], bank, duty, cylinder_temperature, rules) if fuel == "acetylene" else "",
            ),
            fuel_left_lesson=Figure(bank.contents(week["fuel"] / sessions)[0], "", "practice", basis="Full less a lesson's gas."),
            oxygen_left_lesson=Figure(
                banks["oxygen"].contents(week["oxygen"] / sessions)[0], "", "practice", basis="Full less a lesson's gas."
            ),
            fuel_cylinders_week=_guess(share["fuel"], "Week's gas over what one gives before it is changed."),
            oxygen_cylinders_week=_guess(share["oxygen"], "Week's gas over what one gives before it is changed."),
            fuel_reserve=Figure(float(reserve["fuel"]), "", "practice", basis=RESERVE),
            oxygen_reserve=Figure(float(reserve["oxygen"]), "", "practice", basis=RESERVE),
            order_fuel=order["fuel"],
            order_oxygen=order["oxygen"],
            store_limit=compared["store"].figure,
            manifold_limit=stored.manifold(compared["fuel"], bank),
            oxygen_manifold_limit=stored.manifold(compared["oxygen"], banks["oxygen"]),
            separation=stored.separation(rules),
            cost_week=paid,
            liquid_cost_week=liquid,
            liquid_or_cylinders=costs.compared(oxygen_paid, liquid),
        ),
        cautions=gravest_first((
            *(draw_cautions(peak["fuel"], bank.count * bank.full, duty) if fuel == "acetylene" else ()),
            *stored.store_cautions(stored.broken(compared, banks)),
            *((caution("home-made-coupling"),) if fuel == "acetylene" and bank.count > 1 else ()),
            caution("cylinder-change"),
            *brought({"fuel": fuel}),
            *cold_cautions(fuel, cylinder_temperature, rules),
        )),
        steps=tuple(steps),
        beside=beside,
    )  # fmt: skip


def _steps(kinds: Sequence[Kind], fuel: Bank, pick: float) -> list[Step]:
    steps: list[Step] = []
    for one in kinds:
        worked(
            steps, f"{one.name}: fuel gas in a week", gas_of_use, flow=one.fuel_flow, burning=one.time * one.burning,
            torches=one.benches,
        )  # fmt: skip
    if fuel.gas == "acetylene":
        worked(steps, "Most from one full cylinder", acetylene_draw_limit, contents=fuel.full, share=pick)
    return steps


def _guess(value: float, basis: str) -> Figure:
    return Figure(value, "", "practice", low=value * (1 - GUESS), high=value * (1 + GUESS), basis=basis)
