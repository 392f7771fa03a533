"""What several calculators ask in the same words, with the same limits."""

from calc.data.tables import table
from calc.declare import Choice, Field, Words
from calc.declare.inputs import FREE_GAS, GAUGE, LENGTH, POWER, TEMPERATURE, WATER_VOLUME
from calc.trade.gas.draws import DUTIES
from calc.values.units import to_si

FUELS = {
    "acetylene": "Acetylene",
    "propane": "Propane",
    "propylene": "Propylene",
    "methane": "Methane (natural gas)",
    "hydrogen": "Hydrogen",
    "methylacetylene-propadiene": "Methylacetylene-propadiene",
}
"""The six fuel gases, by id."""
LIQUEFIED_FUELS = {name: FUELS[name] for name in ("propane", "propylene", "methylacetylene-propadiene")}
"""Those that a cylinder holds as liquid."""
HOTTEST = {"us": "125 degF", "iso": "50 degC", "uk": "50 degC"}
"""A cylinder hotter than this is not used; see data/cylinder-temperatures."""
HOT = "this cylinder is too hot to use. Do not open or move it, move people away, see the page Hot cylinder"

TORCHES = {"equal-pressure": "Equal pressure (no injector)", "injector": "Injector"}
"""The two kinds of torch, by id."""

FUEL = Choice("Fuel gas", FUELS, assumed="acetylene", outfit="fuel")
FUEL_ASKED = Choice("Fuel gas", FUELS, example="acetylene", outfit="fuel")
"""Asked openly, where the gas decides much."""
TIP_LABEL = Words("Your name for the tip", longest=30, optional=True)
""""Use my outfit" writes the name of the tip it chose here; an input of this kind is called `tip_label`."""
CYLINDER_TEMPERATURE = Field(
    "Cylinder temperature",
    TEMPERATURE,
    low="-10 degF",
    high=HOTTEST,
    too_high=HOT,
    assumed={"us": "70 degF", "iso": "15 degC", "uk": "15 degC"},
)
ORIFICE = Field(
    "Hole in the tip",
    LENGTH,
    example={"us": "#68", "iso": "0.8 mm", "uk": "0.8 mm"},
    low="0.2 mm",
    high="6 mm",
    drill=True,
    hint="Diameter, or a number twist drill such as #68.",
)
HEATED = Choice(
    "What you heat",
    {row.id: row.words for row in table("heated-things")},
    assumed="strip",
    hint="It decides the size of the flame.",
    when={"process": ("heating",)},
)
HEAT_WANTED = Field(
    "Heat wanted in the work, if you know it",
    POWER,
    low="0.1 kW",
    high="30 kW",
    optional=True,
    hint="What enters the metal, about a third of what burns. Empty: by what you heat.",
    when={"process": ("heating",)},
)
HOLES = Field("Number of holes", ("",), assumed="1", low="1", high="60", whole=True)
GAS_TEMPERATURE = Field(
    "Gas temperature",
    TEMPERATURE,
    low="-20 degF",
    high="140 degF",
    assumed={"us": "68 degF", "iso": "20 degC", "uk": "20 degC"},
)
EFFICIENCY = Field(
    "Share of the flame's heat that enters the work", ("%",), assumed="20 %", low="5 %", high="50 %"
)
DUTY = Choice("Flame burns", DUTIES, assumed="intermittent")
FULL_CONTENTS = Field(
    "A full one holds",
    FREE_GAS,
    assumed={"us": "130 ft^3", "iso": "5.7 m^3", "uk": "5.7 m^3"},
    low="5 ft^3",
    high="500 ft^3",
    free_gas=True,
    outfit="acetylene_full_contents",
)


def heat_of(heated: str | None, wanted: float | None) -> float | None:
    """Heat wanted in the work, W: the reader's own figure, else that of what is heated; None where neither is asked.

    Args:
        heated: Id of what is heated, or None.
        wanted: W, or None.
    """
    if wanted is not None or heated is None:
        return wanted
    return float(next(row.heat for row in table("heated-things") if row.id == heated))


def full_contents(rules: str) -> float:
    """Acetylene in a full cylinder of the usual size, m³.

    Args:
        rules: Rule set.
    """
    assert isinstance(FULL_CONTENTS.assumed, dict)
    number, unit = FULL_CONTENTS.assumed[rules].split(" ")
    return to_si(float(number), unit, free_gas=True)


OXYGEN_RATIO = Field(
    "Oxygen for one of fuel",
    ("",),
    low="0.2",
    high="6",
    optional=True,
    hint="Empty: what a torch draws, 1.1 for acetylene.",
)
OXYGEN_WATER_VOLUME = Field(
    "Water volume of the oxygen cylinder",
    WATER_VOLUME,
    low="0.5 L",
    high="150 L",
    assumed={"us": "43 L", "iso": "50 L", "uk": "50 L"},
    outfit="oxygen_water_volume",
)
OXYGEN_CYLINDER_GAUGE = Field(
    "Oxygen cylinder gauge reads",
    GAUGE,
    low="10 psi",
    high="4500 psi",
    assumed={"us": "2200 psi", "iso": "200 bar", "uk": "200 bar"},
)


def start_temperature(label: str, high: str) -> Field:
    """What the metal has before it is heated: that of a room where the reader gives nothing.

    Args:
        label: What is asked.
        high: Hottest that will do, with unit.
    """
    return Field(
        label, TEMPERATURE, low="32 degF", high=high, assumed={"us": "68 degF", "iso": "20 degC", "uk": "20 degC"}
    )


def steel_thickness(us: str, metric: str) -> Field:
    """Thickness of low-carbon steel, in sheet gauge too.

    Args:
        us: Example in the units of the United States.
        metric: Example elsewhere.
    """
    example = {"us": us, "iso": metric, "uk": metric}
    return Field(
        "Thickness", LENGTH, low="0.5 mm", high="100 mm", sheet_gauge=True, metal="low-carbon-steel", example=example
    )


def travel_speed_asked(us: str, metric: str) -> Field:
    """How fast the torch travels along a seam.

    Args:
        us: Example in the units of the United States.
        metric: Example elsewhere.
    """
    example = {"us": us, "iso": metric, "uk": metric}
    return Field("Travel", ("in/min", "mm/min"), low="5 mm/min", high="1000 mm/min", example=example)
