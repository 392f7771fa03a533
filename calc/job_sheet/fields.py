"""What the job sheet asks, beside what several calculators ask alike."""

from calc.calculators.braze_joint import FORMS
from calc.declare import Choice, Field
from calc.declare.inputs import FREE_GAS, GAUGE, LENGTH, MASS
from calc.trade.braze import tubes
from calc.trade.braze.choice import SERVICES
from calc.trade.fields import FUELS, TORCHES
from calc.trade.safety import gate
from calc.trade.safety import gate_fields as gate_asked
from calc.trade.safety.gate_fields import COATINGS, STRIPPABLE, STRIPPED

PROCESSES = {
    "welding": "Weld",
    "braze-welding": "Braze-weld",
    "brazing": "Braze",
    "soldering": "Solder copper tube",
    "cutting": "Cut",
    "heating": "Heat: bend, straighten, preheat",
}
METALS = {
    **{key: words for key, words in gate_asked.METALS.items() if key != "unknown"},
    gate_asked.GALVANISED: "Galvanized steel",
    "unknown": gate_asked.METALS["unknown"],
}
JOINTS = {
    "outside-corner": "Outside corner",
    "square-butt": "Square butt",
    "single-v": "Single V",
    "lap": "Lap",
    "tee": "Tee",
    "edge": "Edge",
}

SEAMS = ("welding", "braze-welding")
LIQUEFIED = ("propane", "propylene", "methylacetylene-propadiene")

PROCESS = Choice("Work", PROCESSES, example="welding")
METAL = Choice("Metal", METALS, example="low-carbon-steel")
OTHER_METAL = Choice(
    "The other metal",
    {"same": "The same metal"} | METALS,
    assumed="same",
    when={"process": ("brazing",)},
)
COATING = Choice("Coating", COATINGS, example="none")
STRIPPED_OFF = Choice(
    f"Coating gone, {gate.strip_words()} each side", STRIPPED, assumed="no", when={"coating": STRIPPABLE}
)
THICKNESS = Field(
    "Thickness of the metal",
    LENGTH,
    example={"us": "16 ga", "iso": "1.5 mm", "uk": "1.5 mm"},
    low="0.5 mm",
    high="300 mm",
    sheet_gauge=True,
    hint="16 ga, 1.5 mm, 1/16 in. Of two pieces the thinner; tube is found by its size.",
    when={"process": ("welding", "braze-welding", "brazing", "cutting", "heating")},
)
JOINT = Choice("Joint", JOINTS, example="outside-corner", when={"process": SEAMS})
FORM = Choice("Joint", FORMS, example="sleeve", when={"process": ("brazing",)})
LENGTH_OF_WORK = Field(
    "Length of the seam, cut or line",
    ("ft", "in", "m", "mm"),
    example={"us": "4 ft", "iso": "1.2 m", "uk": "1.2 m"},
    low="10 mm",
    high="100 m",
    when={"process": ("welding", "braze-welding", "cutting", "heating")},
)
DIAMETER = Field(
    "Outside of the tube or pin",
    LENGTH,
    example={"us": "3/4 in", "iso": "20 mm", "uk": "20 mm"},
    low="3 mm",
    high="150 mm",
    when={"process": ("brazing",), "form": ("sleeve",)},
)
LAP_WIDTH = Field(
    "Length of the lapped edge",
    LENGTH,
    example={"us": "2 in", "iso": "50 mm", "uk": "50 mm"},
    low="3 mm",
    high="1 m",
    when={"process": ("brazing",), "form": ("flat-lap",)},
)
COUNT = Field(
    "Number of joints",
    ("",),
    example="6",
    low="1",
    high="1000",
    whole=True,
    when={"process": ("brazing", "soldering")},
)
JOINT_TIME = Field(
    "Torch on each joint for",
    ("min", "s"),
    low="3 s",
    high="60 min",
    optional=True,
    hint="Time one of yours: it decides the gas. Empty: worked out from the flame and the metal.",
    when={"process": ("brazing", "soldering")},
)
PIERCES = Field(
    "Pierced starts", ("",), assumed="0", low="0", high="1000", whole=True, when={"process": ("cutting",)}
)
HEAT = Choice(
    "Heat it to",
    {
        "straighten": "bend or straighten: below the steel's limit",
        "preheat": "preheat before welding",
    },
    example="straighten",
    when={"process": ("heating",)},
)
BAND = Field(
    "Width of the heated band",
    LENGTH,
    assumed={"us": "2 in", "iso": "50 mm", "uk": "50 mm"},
    low="3 mm",
    high="1 m",
    when={"process": ("heating",)},
)
BRAZE_SERVICE = Choice("Use of the joint", SERVICES, example="general", when={"process": ("brazing",)})
TUBE_SERVICE = Choice(
    "What runs in the tube",
    tubes.services(),
    example="drinking-water",
    hint="Find it out before any flame: follow the line from end to end, and ask its owner.",
    when={"process": ("soldering",)},
)
TUBE_SYSTEM = Choice(
    "Tube is sold in",
    {"inch": "Inch sizes (ASTM B88)", "metric": "Metric sizes (EN 1057, ASTM B88M)"},
    example="inch",
    when={"process": ("soldering",)},
)
TUBE_INCH = Choice(
    "Size of the tube",
    tubes.sizes("inch"),
    example="1/2 in",
    when={"process": ("soldering",), "tube_system": ("inch",)},
)
TUBE_METRIC = Choice(
    "Outside of the tube",
    tubes.sizes("metric"),
    example="15 mm",
    when={"process": ("soldering",), "tube_system": ("metric",)},
)
TORCH = Choice(
    "Torch", TORCHES, assumed="equal-pressure", outfit="torch_type",
    when={"process": ("welding", "braze-welding", "brazing", "soldering")},
)
HOSE_BORE = Field(
    "Bore of the hoses",
    LENGTH,
    assumed={"us": "1/4 in", "iso": "6.3 mm", "uk": "6.3 mm"},
    low="3 mm",
    high="10 mm",
    outfit="hose_bore",
)
HOSE_LENGTH = Field(
    "Length of the hoses",
    ("ft", "m"),
    assumed={"us": "25 ft", "iso": "10 m", "uk": "10 m"},
    low="1 m",
    high="50 m",
    outfit="hose_length",
)
MAKER_ORIFICE = Field(
    "Your tip's hole, as its maker prints it",
    LENGTH,
    low="0.35 mm",
    high="4 mm",
    drill=True,
    optional=True,
)
MAKER_OXYGEN_GAUGE = Field(
    "Oxygen pressure its maker prints", GAUGE, low="0.5 psi", high="150 psi", optional=True
)
MAKER_ACETYLENE_GAUGE = Field(
    "Acetylene pressure its maker prints",
    GAUGE,
    low="0.5 psi",
    optional=True,
    high={"us": "15 psi", "iso": "1.5 bar", "uk": "1.5 bar"},
    too_high="acetylene is never used above this limit, it can explode by itself",
    when={"fuel": ("acetylene",)},
)
MAKER_FUEL_GAUGE = Field(
    "Fuel pressure its maker prints",
    GAUGE,
    low="0.2 psi",
    high="60 psi",
    optional=True,
    when={"fuel": tuple(key for key in FUELS if key != "acetylene")},
)
TORCH_DROP = Field(
    "Torch valves, mixer and arrestors take",
    GAUGE,
    assumed="0 psi",
    low="0 psi",
    high="10 psi",
    hint="Ask the makers; it is not included unless you give it.",
)
ACETYLENE_CONTENTS = Field(
    "Acetylene in its cylinder now",
    FREE_GAS,
    low="1 ft^3",
    high="500 ft^3",
    free_gas=True,
    assumed={"us": "130 ft^3", "iso": "5.7 m^3", "uk": "5.7 m^3"},
    hint="Or give both weights below; they come before this.",
    when={"fuel": ("acetylene",)},
)
GROSS_WEIGHT = Field(
    "Acetylene cylinder weighs now",
    MASS,
    low="5 lb",
    high="400 lb",
    optional=True,
    when={"fuel": ("acetylene",)},
)
TARE_WEIGHT = Field(
    "Its stamped tare",
    MASS,
    low="5 lb",
    high="400 lb",
    optional=True,
    when={"fuel": ("acetylene",)},
    outfit="acetylene_tare",
)
LIQUID_LEFT = Field(
    "Liquefied fuel left, by weight",
    MASS,
    assumed={"us": "20 lb", "iso": "11 kg", "uk": "13 kg"},
    low="0.5 lb",
    high="500 lb",
    hint="What the cylinder weighs less its stamped tare.",
    when={"fuel": LIQUEFIED},
)
