"""The job sheet: one seam in low-carbon steel, from thickness to a watched, stored outfit."""

from dataclasses import dataclass
from typing import Annotated

from calc.calculators.acetylene_left import acetylene_left
from calc.calculators.eye_shade import eye_shade
from calc.calculators.oxygen_left import oxygen_left
from calc.calculators.purge_time import purge_time
from calc.calculators.regulator_mark import MARK
from calc.declare import (
    FREE_GAS,
    FREE_GAS_FLOW,
    GAUGE,
    LENGTH,
    MASS,
    Answer,
    Caution,
    Choice,
    Field,
    Figure,
    Picture,
    Shown,
    calculator,
)
from calc.errors import InputError
from calc.formulas.gas.supply import gas_of_use, running_time
from calc.formulas.setup.rods import nearest_rod, rod_diameter
from calc.sheets import seams
from calc.sheets.asked import (
    CYLINDER_TEMPERATURE,
    DUTY,
    OXYGEN_CYLINDER_GAUGE,
    OXYGEN_WATER_VOLUME,
)
from calc.sheets.draws import draw_cautions, draw_limit_of
from calc.sheets.surroundings import distance_and_watch
from calc.sheets.tips_in_print import orifices_by_source
from calc.sheets.torch import (
    RATIO,
    RATIO_SOURCE,
    equal_pressure_setting,
    insert_setting,
    marked_regulator,
)
from calc.show.drawings import flame, gauges
from calc.show.drawings import joint as joint_drawing
from calc.tables import table
from calc.units import to_si

JOINTS = {"outside-corner": "Outside corner", "square-butt": "Square butt"}
TORCHES = {"equal-pressure": "Equal pressure (no injector)", "injector": "Injector"}
BEVEL = to_si(3.2, "mm")


@dataclass(frozen=True, slots=True)
class JobSheet:
    """One sheet, in the order of the work."""

    shade_minimum: Annotated[
        Figure, Shown("Least filter shade", ("",), toward="up", digits=1, group="Eyes")
    ]
    shade_usual: Annotated[Figure, Shown("Usual shades", words=True, group="Eyes")]
    tip_orifice: Annotated[Figure, Shown("Hole in the tip", LENGTH, group="Tip and pressures")]
    nearest_drill: Annotated[Figure, Shown("Nearest twist drill", words=True, group="Tip and pressures")]
    oxygen_gauge: Annotated[
        Figure,
        Shown("Oxygen regulator, gas flowing", GAUGE, step=MARK, toward="up", group="Tip and pressures"),
    ]
    acetylene_gauge: Annotated[
        Figure,
        Shown(
            "Acetylene regulator, gas flowing", GAUGE, step=MARK, toward="down", group="Tip and pressures"
        ),
    ]
    purge_fuel_time: Annotated[
        Figure, Shown("Purge acetylene for", ("s",), toward="up", digits=2, group="Purge and light")
    ]
    purge_oxygen_time: Annotated[
        Figure, Shown("Then purge oxygen for", ("s",), toward="up", digits=2, group="Purge and light")
    ]
    flame: Annotated[Figure, Shown("Flame", words=True, group="Purge and light")]
    oxygen_flow: Annotated[
        Figure, Shown("Oxygen the torch takes", FREE_GAS_FLOW, free_gas=True, group="Purge and light")
    ]
    acetylene_flow: Annotated[
        Figure, Shown("Acetylene the torch takes", FREE_GAS_FLOW, free_gas=True, group="Purge and light")
    ]
    edges: Annotated[Figure, Shown("Edges and technique", words=True, group="Weld")]
    rod_diameter: Annotated[Figure, Shown("Rod diameter", LENGTH, group="Weld")]
    rod_length: Annotated[Figure, Shown("Rod for the seam", ("ft", "m"), toward="up", group="Weld")]
    travel_speed: Annotated[Figure, Shown("Travel speed", ("in/min", "mm/min"), digits=2, group="Weld")]
    torch_time: Annotated[
        Figure, Shown("Torch on the seam for", ("min",), toward="up", digits=2, group="Weld")
    ]
    oxygen_used: Annotated[
        Figure, Shown("Oxygen for the job", FREE_GAS, free_gas=True, toward="up", group="Gas")
    ]
    acetylene_used: Annotated[
        Figure, Shown("Acetylene for the job", FREE_GAS, free_gas=True, toward="up", group="Gas")
    ]
    oxygen_hours: Annotated[
        Figure, Shown("Oxygen lasts, flame burning", ("h", "h"), toward="down", group="Gas")
    ]
    acetylene_hours: Annotated[
        Figure, Shown("Acetylene lasts, flame burning", ("h", "h"), toward="down", group="Gas")
    ]
    ends_first: Annotated[Figure, Shown("Which ends first", words=True, group="Gas")]
    draw_share: Annotated[
        Figure, Shown("Acetylene drawn, share of contents", ("percent/h",), toward="up", group="Gas")
    ]
    draw_limit: Annotated[
        Figure,
        Shown("Most to draw from this cylinder", FREE_GAS_FLOW, free_gas=True, toward="down", group="Gas"),
    ]
    clear_distance: Annotated[
        Figure, Shown("Clear of anything that burns", ("ft", "m"), toward="up", group="Fire")
    ]
    fire_watch: Annotated[
        Figure, Shown("Fire watch after the last flame", ("min",), toward="up", group="Fire")
    ]


def _hours(name: str, held: float, flow: Figure) -> Figure:
    assert flow.value is not None
    return Figure(
        running_time(held, flow.value), flow.source, flow.how_sure,
        running_time(held, flow.high or flow.value), running_time(held, flow.low or flow.value),
        f"{name} usable over the flow, flame burning without a stop.",
    )  # fmt: skip


def _used(flow: Figure, time: Figure, vented: float, basis: str) -> Figure:
    assert flow.value is not None
    assert time.value is not None
    return Figure(
        gas_of_use(flow.value, time.value) + vented, flow.source, flow.how_sure,
        gas_of_use(flow.low or flow.value, time.low or time.value) + vented,
        gas_of_use(flow.high or flow.value, time.high or time.value) + vented, basis,
    )  # fmt: skip


@calculator("job-sheet", "Job sheet: weld one seam")
def job_sheet(
    thickness: Annotated[
        float,
        Field(
            "Thickness of the sheet",
            LENGTH,
            example={"us": "16 ga", "iso": "1.5 mm", "uk": "1.5 mm"},
            low="0.5 mm",
            high="6 mm",
            sheet_gauge=True,
            metal="low-carbon-steel",
            hint="Low-carbon steel: 16 ga, 1.5 mm, 1/16 in.",
        ),
    ],
    joint: Annotated[str, Choice("Joint", JOINTS, example="outside-corner")],
    length: Annotated[
        float,
        Field(
            "Length of the seam",
            ("ft", "in", "m", "mm"),
            example={"us": "4 ft", "iso": "1.2 m", "uk": "1.2 m"},
            low="10 mm",
            high="100 m",
        ),
    ],
    torch_type: Annotated[str, Choice("Torch", TORCHES, assumed="equal-pressure")],
    hose_bore: Annotated[
        float,
        Field(
            "Bore of the hoses",
            LENGTH,
            assumed={"us": "1/4 in", "iso": "6.3 mm", "uk": "6.3 mm"},
            low="3 mm",
            high="10 mm",
        ),
    ],
    hose_length: Annotated[
        float,
        Field(
            "Length of the hoses",
            ("ft", "m"),
            assumed={"us": "25 ft", "iso": "10 m", "uk": "10 m"},
            low="1 m",
            high="50 m",
        ),
    ],
    maker_orifice: Annotated[
        float | None,
        Field(
            "Your tip's hole, as its maker prints it",
            LENGTH,
            low="0.35 mm",
            high="4 mm",
            drill=True,
            optional=True,
        ),
    ],
    maker_oxygen_gauge: Annotated[
        float | None,
        Field("Oxygen pressure its maker prints", GAUGE, low="0.5 psi", high="60 psi", optional=True),
    ],
    maker_acetylene_gauge: Annotated[
        float | None,
        Field(
            "Acetylene pressure its maker prints",
            GAUGE,
            low="0.5 psi",
            optional=True,
            high={"us": "15 psi", "iso": "1.5 bar", "uk": "1.5 bar"},
            too_high="acetylene is never used above this limit, it can explode by itself",
        ),
    ],
    torch_drop: Annotated[
        float,
        Field(
            "Torch valves, mixer and arrestors take",
            GAUGE,
            assumed="0 psi",
            low="0 psi",
            high="10 psi",
            hint="Ask the makers; it is not included unless you give it.",
        ),
    ],
    water_volume: Annotated[float, OXYGEN_WATER_VOLUME],
    oxygen_cylinder_gauge: Annotated[float, OXYGEN_CYLINDER_GAUGE],
    cylinder_temperature: Annotated[float, CYLINDER_TEMPERATURE],
    acetylene_contents: Annotated[
        float,
        Field(
            "Acetylene in its cylinder now",
            FREE_GAS,
            low="1 ft^3",
            high="500 ft^3",
            free_gas=True,
            assumed={"us": "130 ft^3", "iso": "5.7 m^3", "uk": "5.7 m^3"},
            hint="Or give both weights below; they come before this.",
        ),
    ],
    gross_weight: Annotated[
        float | None, Field("Acetylene cylinder weighs now", MASS, low="5 lb", high="400 lb", optional=True)
    ],
    tare_weight: Annotated[
        float | None, Field("Its stamped tare", MASS, low="5 lb", high="400 lb", optional=True)
    ],
    duty: Annotated[str, DUTY],
    rules: str,
) -> Answer[JobSheet]:
    """Everything for one seam in low-carbon steel sheet with oxygen and acetylene.

    What your torch's maker prints comes before ours; ours is where to start.
    """  # fmt: skip
    if joint == "square-butt" and thickness > BEVEL * (1 + 1e-6):
        raise InputError(
            "thickness",
            "Thickness of the sheet: a square butt above 3.2 mm (1/8 in) is not fused through; bevel it: "
            "single V. For a square butt give 0.5 mm to 3.2 mm.",
        )
    technique = seams.technique(joint, thickness)
    setting = (
        insert_setting(thickness, technique, maker_oxygen_gauge, maker_acetylene_gauge)
        if torch_type == "injector"
        else equal_pressure_setting(
            thickness, technique, maker_orifice, maker_oxygen_gauge, maker_acetylene_gauge, rules
        )
    )
    marks = {
        gas: marked_regulator(gas, figure, flow, hose_bore, hose_length, torch_drop, rules)
        for gas, figure, flow in (
            ("oxygen", setting.oxygen_gauge, setting.oxygen_flow),
            ("acetylene", setting.fuel_gauge, setting.fuel_flow),
        )
    }
    fuel, oxygen = setting.fuel_flow, setting.oxygen_flow
    assert fuel.value is not None
    assert oxygen.value is not None
    purge = purge_time(
        "acetylene",
        hose_bore,
        hose_length,
        oxygen.value,
        fuel.value,
        setting.fuel_gauge.value or 0.0,
        rules,
    ).results
    contents = _contents_now(gross_weight, tare_weight, acetylene_contents, cylinder_temperature, rules)
    usable = oxygen_left(
        water_volume, oxygen_cylinder_gauge, cylinder_temperature, max(oxygen_cylinder_gauge, to_si(2200, "psi")),
        294.26, 0.0, "oxygen", rules,
    ).results.usable  # fmt: skip
    shades = eye_shade("welding", thickness, fuel.high or fuel.value, None, rules).results
    rod = rod_diameter(thickness, "low-carbon-steel", technique)
    bought = nearest_rod(rod.value or 0.0, rules)
    speed = seams.speed_for(joint, thickness)
    time = seams.time_on_seam(length, speed)
    oxygen_time = _hours("Oxygen", usable.value or 0.0, oxygen)
    fuel_time = _hours("Acetylene", contents, fuel)
    first = "oxygen" if (oxygen_time.value or 0.0) < (fuel_time.value or 0.0) else "acetylene"
    clear, watch = distance_and_watch(rules)
    vented = purge.fuel_vented.value or 0.0
    return Answer(
        JobSheet(
            shade_minimum=shades.shade_minimum,
            shade_usual=shades.shade_usual,
            tip_orifice=setting.orifice,
            nearest_drill=setting.drill,
            oxygen_gauge=marks["oxygen"],
            acetylene_gauge=marks["acetylene"],
            purge_oxygen_time=purge.purge_oxygen_time,
            purge_fuel_time=purge.purge_fuel_time,
            flame=_flame(),
            oxygen_flow=oxygen,
            acetylene_flow=fuel,
            edges=seams.edges(joint, thickness, rules),
            rod_diameter=Figure(bought, rod.source, rod.how_sure, min(rod.low or bought, bought), max(rod.high or bought, bought), f"{rod.basis}; the nearest rod sold."),
            rod_length=seams.rod_for_seam(seams.rod_area(joint, thickness), length, bought),
            travel_speed=speed,
            torch_time=time,
            oxygen_used=_used(oxygen, time, vented * RATIO, "Flow for the torch time, and the purge."),
            acetylene_used=_used(fuel, time, vented, "Flow for the torch time, and the purge."),
            oxygen_hours=oxygen_time,
            acetylene_hours=fuel_time,
            ends_first=Figure(None, "", "practice", words=first, basis="By the two times above."),
            draw_share=Figure(
                fuel.value / contents, fuel.source, fuel.how_sure, (fuel.low or fuel.value) / contents,
                (fuel.high or fuel.value) / contents, "Flow over what is in the cylinder now.",
            ),
            draw_limit=draw_limit_of(contents, duty),
            clear_distance=clear,
            fire_watch=watch,
        ),
        cautions=_cautions(thickness, torch_type, fuel.value, contents, duty),
        tables=(orifices_by_source(thickness, rules),),
        pictures=_pictures(joint, thickness, oxygen_cylinder_gauge, marks, rules),
    )  # fmt: skip


def _contents_now(
    gross: float | None, tare: float | None, contents: float, temperature: float, rules: str
) -> float:
    if gross is None and tare is None:
        return contents
    try:
        weighed = acetylene_left(gross, tare, contents, None, temperature, rules).results.gas_left
    except InputError as error:
        said = error.message.partition(": ")[2]
        raise InputError("gross_weight", f"Acetylene cylinder weighs now: {said}") from None
    return max(weighed.value or 0.0, to_si(1.0, "ft^3", free_gas=True))


def _flame() -> Figure:
    look = next(row for row in table("flame-looks") if row.flame == "neutral")
    return Figure(
        None, RATIO_SOURCE, "read",
        words=f"{look.name}: open oxygen until {look.look} beyond the bright cone",
        basis="A streamer of 1/16 to 1/8 in beyond the cone is allowed.",
    )  # fmt: skip


def _cautions(
    thickness: float, torch_type: str, flow: float, contents: float, duty: str
) -> tuple[Caution, ...]:
    found = draw_cautions(flow, contents, duty)
    if torch_type == "injector":
        found.append(
            Caution(
                "DANGER",
                "An injector torch that does not draw lets oxygen into the fuel hose, which can explode. Before the "
                "fuel hose is fitted, with oxygen flowing and the fuel valve open, a fingertip at the fuel inlet must "
                "be drawn in. No pull: do not connect, do not light.",
            )
        )
    found.append(
        Caution(
            "WARNING",
            "Zinc, paint, plating and oil on the sheet give poisonous fume. Know the metal, strip it bare and "
            "ventilate before any flame.",
            "cfr1910-252 (c)",
        )
    )
    if thickness < seams.THIN_BELOW:
        found.append(
            Caution("NOTICE", "Sheet this thin burns through in a moment: run a trial coupon first.")
        )
    return tuple(found)


def _pictures(
    joint: str, thickness: float, cylinder: float, marks: dict[str, Figure], rules: str
) -> tuple[Picture, ...]:
    gap = seams.gap_of_square_butt(thickness)[1] if joint == "square-butt" else 0.0
    return (
        joint_drawing.drawing(joint, thickness, gap, rules),
        gauges.drawing(cylinder, marks["oxygen"].value or 0.0, rules, "oxygen"),
        flame.drawing(RATIO, rules),
    )
