"""What the plan of a class asks."""

from calc.ask.inputs import bound_si
from calc.class_plan.exercises import titles
from calc.declare import Choice, Day, Field, Words, by_rules
from calc.declare.inputs import FREE_GAS, GAUGE, LENGTH, TIME, WATER_VOLUME
from calc.trade.fields import CYLINDER_TEMPERATURE
from calc.trade.gas import plan_fields as fields
from calc.trade.gas.draws import DUTIES
from calc.trade.gas.stocks import OXYGEN_FLOOR
from calc.values.quantities import Gauge, Temperature

TITLES = titles()
EXERCISES = ("exercise_1", "exercise_2", "exercise_3", "exercise_4")
_TIMES, _STOCK, _GAS, _PRICES = "Times in the session", "Stock", "Cylinders and gas", "Prices"

LEARNERS = Field(
    "Learners",
    ("",),
    example="12",
    low="2",
    high="40",
    whole=True,
    hint="Two at least: one works, one watches.",
)
BENCHES = Field("Benches", ("",), example="6", low="1", high="20", whole=True, hint="One torch each.")
SESSION_LENGTH = Field(
    "Length of a session",
    ("h", "min"),
    example="3 h",
    low="30 min",
    high="12 h",
    hint="Set-up and fire watch with it.",
)
START = Words(
    "Start", longest=10, assumed={"us": "6:30 pm", "iso": "18:30", "uk": "18:30"}, hint="As in 18:30 or 6:30 pm.",
    group=_TIMES,
)  # fmt: skip
DAY = Day(
    "Day of the first session", earliest="2020-01-01", optional=True, group=_TIMES,
    hint="For the calendar; later sessions a week apart.",
)  # fmt: skip


def _minutes(label: str, minutes: str, hint: str) -> Field:
    return Field(label, TIME, assumed=minutes, low="0 min", high="2 h", group=_TIMES, hint=hint)


SET_UP = _minutes("Setting up", "15 min", "With the leak test. Counted in whole minutes, rounded up.")
DEMONSTRATION = _minutes("Demonstration", "10 min", "One try of each new exercise; 0 for none.")
SHUT_DOWN = _minutes("Shutting down", "15 min", "Beside the fire watch, by those who do not watch.")

EXERCISE_1 = Choice("Exercise 1", TITLES, example="corner")
EXERCISE_2 = Choice("Exercise 2", TITLES, example="braze", optional=True)
EXERCISE_3 = Choice("Exercise 3", TITLES, optional=True)
EXERCISE_4 = Choice("Exercise 4", TITLES, optional=True)


def _tries(number: int) -> Field:
    when = None if number == 1 else {f"exercise_{number}": tuple(TITLES)}
    return Field(
        f"Tries of exercise {number}", ("",), low="1", high="10", whole=True, optional=True, when=when,
        hint="Of each learner. Empty: the usual ones.",
    )  # fmt: skip


TRIES_1, TRIES_2, TRIES_3, TRIES_4 = (_tries(number) for number in (1, 2, 3, 4))

SHEET_SIZE = Words(
    "Sheet that you buy", longest=30, group=_STOCK, hint="Both sides.",
    assumed={"us": "24 in x 48 in", "iso": "1000 mm x 2000 mm", "uk": "1000 mm x 2000 mm"},
)  # fmt: skip
PLATE_SIZE = Words(
    "Plate that you buy", longest=30, group=_STOCK, hint="Both sides.",
    assumed={"us": "12 in x 24 in", "iso": "500 mm x 1000 mm", "uk": "500 mm x 1000 mm"},
)  # fmt: skip
GAP = Field(
    "Lost between two pieces", LENGTH, assumed={"us": "1/16 in", "iso": "2 mm", "uk": "2 mm"}, low="0 mm", high="25 mm",
    group=_STOCK, hint="A shear loses nothing, a saw or a torch its kerf.",
)  # fmt: skip
SPARES = Field(
    "Spare sets of pieces for each exercise",
    ("",),
    assumed="2",
    low="0",
    high="100",
    whole=True,
    group=_STOCK,
)
GAS_FACTOR = Field(
    "Gas really used for one reckoned",
    ("",),
    assumed="1",
    low="0.3",
    high="5",
    group=_GAS,
    hint="From your gas log.",
)
ACETYLENE_CONTENTS = Field(
    "A full acetylene cylinder holds", FREE_GAS, assumed={"us": "130 ft^3", "iso": "5.7 m^3", "uk": "5.7 m^3"},
    low="5 ft^3", high="500 ft^3", free_gas=True, outfit="acetylene_full_contents", group=_GAS,
)  # fmt: skip
FUEL_COUPLED = Field(
    "Acetylene cylinders that you couple", ("",), low="1", high="200", whole=True, optional=True, group=_GAS,
    hint="Empty: reckoned.",
)  # fmt: skip
WATER = Field(
    "Water volume of an oxygen cylinder", WATER_VOLUME, low="0.5 L", high="150 L",
    assumed={"us": "43 L", "iso": "50 L", "uk": "50 L"}, outfit="oxygen_water_volume", group=_GAS,
)  # fmt: skip
FULL_GAUGE = Field(
    "A full oxygen cylinder reads", GAUGE, low="600 psi", high="4500 psi",
    assumed={"us": "2200 psi", "iso": "200 bar", "uk": "200 bar"}, outfit="oxygen_full_gauge", group=_GAS,
)  # fmt: skip
DUTY = Choice("Flames burn", DUTIES, assumed="intermittent", group=_GAS)
TERM = Field(
    "Sessions in a term", ("",), assumed="10", low="1", high="100", whole=True, group=_PRICES,
    hint="All like those of this plan.",
)  # fmt: skip


def _price(label: str, hint: str = "In your money; any currency.") -> Field:
    plain = fields.price(label, hint)
    return Field(
        label, plain.units, low=plain.low, high=plain.high, optional=True, hint=hint, group=_PRICES
    )


SHEET_PRICE = _price("Price of a sheet")
PLATE_PRICE = _price("Price of a plate")
ROD_PRICE = _price(
    "Price of rod by weight", "A pound where the rule set is that of the United States, else a kilogram."
)
FUEL_PRICE = _price("Price of an acetylene cylinder's gas")
OXYGEN_PRICE = _price("Price of an oxygen cylinder's gas")



def cylinder_temperature(rules: str) -> Temperature:
    """Of the cylinders, as assumed elsewhere, K."""
    assert CYLINDER_TEMPERATURE.assumed is not None
    return bound_si(CYLINDER_TEMPERATURE, by_rules(CYLINDER_TEMPERATURE.assumed, rules))


def stop_gauge(rules: str) -> Gauge:
    """At which oxygen is changed, Pa."""
    return bound_si(FULL_GAUGE, OXYGEN_FLOOR[rules])
