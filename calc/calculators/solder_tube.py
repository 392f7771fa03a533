"""Copper tube soldered or brazed: filler, flux, heat and how much, with what is refused."""

from dataclasses import dataclass
from typing import Annotated, Any

from calc.ask.errors import InputError
from calc.data.tables import table
from calc.declare import Answer, Choice, Field, Figure, Shown, Step, calculator, worked
from calc.declare.inputs import LENGTH, TEMPERATURE
from calc.formulas.setup.tube import (
    filler_mass,
    filler_volume,
    flux_for_solder,
    least_lap,
    wire_length,
)
from calc.show.drawings import tube as tube_drawing
from calc.trade.braze import tube_tables as tube_beside
from calc.trade.braze import tubes
from calc.trade.safety.surroundings import clear_distance, fire_watch
from calc.values.quantities import Length, Mass, Volume

METHODS = {"soldering": "Solder", "brazing": "Braze"}
SYSTEMS = {"inch": "Inch sizes (ASTM B88)", "metric": "Metric sizes (EN 1057, ASTM B88M)"}
FITTINGS = {"copper": "Copper", "brass": "Brass or bronze"}
SOLDERS = {row.id: f"{row.name}, {'with lead' if row.lead else 'lead-free'}" for row in table("solders")}
OUNCES = ("oz", "g")
SOLDERED, BRAZED = ("soldering",), ("brazing",)
FLUX_SHARE = 0.125
"""2 oz to the pound of solder [cda-copper-tube]."""
FLUX_SAID = "2 oz to the pound of solder, as printed: an eighth of its weight. More of it eats the tube."
GAP_KNOWN = 0.9
"""No gap between tube and cup is known closer than to a tenth: common practice."""
LAP_WALLS = 3.0
"""Overlap in thicknesses of the thinner part [cda-copper-tube]."""
BRUSHED = "Brush it on thin, never with a finger. On drinking water it is lead-free like the filler."
SERVICE_LABEL = "What runs in the tube"
CUP_LABEL = "Depth of your cup, if you measured it"


@dataclass(frozen=True, slots=True, kw_only=True)
class SolderTube:
    """What the joints take and how hot they get."""

    filler: Annotated[Figure, Shown("Filler", words=True, group="Filler and flux")]
    lead: Annotated[Figure, Shown("Lead", words=True, group="Filler and flux")]
    flux: Annotated[Figure, Shown("Flux", words=True, group="Filler and flux")]
    melting: Annotated[Figure, Shown("Filler all melted at", TEMPERATURE, group="Filler and flux", toward="up")]
    pipe_heat: Annotated[Figure, Shown("Joint works at", TEMPERATURE, group="Heat")]
    torch: Annotated[Figure, Shown("Torch", words=True, group="Heat")]
    service_limit: Annotated[
        Figure, Shown("Joint may get as hot as, in use", TEMPERATURE, toward="down", group="Heat")
    ]
    clear_distance: Annotated[
        Figure, Shown("Clear of anything that burns", ("ft", "m"), toward="up", group="Fire")
    ]
    fire_watch: Annotated[
        Figure, Shown("Fire watch after the last flame", ("min",), toward="up", group="Fire")
    ]
    filler_length_joint: Annotated[
        Figure, Shown("Wire or rod for one joint", LENGTH, toward="up", group="How much")
    ]
    filler_length: Annotated[
        Figure, Shown("Wire or rod for all joints", LENGTH, toward="up", group="How much")
    ]
    filler_mass: Annotated[Figure, Shown("Filler for all joints", OUNCES, toward="up", group="How much")]
    flux_mass: Annotated[Figure | None, Shown("Flux for all joints", OUNCES, toward="up", group="How much")]
    tube_outside: Annotated[Figure, Shown("Tube measures, outside", LENGTH, digits=4, group="Tube and cup")]
    wall: Annotated[Figure, Shown("Wall of the tube", LENGTH, group="Tube and cup")]
    cup_depth: Annotated[Figure, Shown("Depth of the cup", LENGTH, group="Tube and cup")]
    clearance: Annotated[Figure, Shown("Gap between tube and cup", LENGTH, group="Tube and cup")]
    lap: Annotated[
        Figure | None, Shown("Least overlap for a braze", LENGTH, toward="up", group="Tube and cup")
    ]


@calculator("solder-tube", "Solder or braze copper tube")
def solder_tube(
    *,
    method: Annotated[str, Choice("Way of joining", METHODS, example="soldering")],
    service: Annotated[
        str,
        Choice(
            SERVICE_LABEL,
            tubes.services(),
            example="drinking-water",
            hint="Find it out before any flame: follow the line from end to end, and ask its owner.",
        ),
    ],
    system: Annotated[str, Choice("Tube is sold in", SYSTEMS, example="inch")],
    size_inch: Annotated[
        str,
        Choice(
            "Size of the tube",
            tubes.sizes("inch"),
            example="1/2 in",
            when={"system": ("inch",)},
            hint="Its name, then what you measure across the outside. The name is smaller.",
        ),
    ],
    size_metric: Annotated[
        str,
        Choice("Outside of the tube", tubes.sizes("metric"), example="15 mm", when={"system": ("metric",)}),
    ],
    joints: Annotated[
        float,
        Field(
            "Joints to make",
            ("",),
            example="10",
            low="1",
            high="1000",
            whole=True,
            hint="Each cup counts: an elbow has two, a tee three.",
        ),
    ],
    wall_inch: Annotated[
        str,
        Choice(
            "Wall", tubes.WALLS_INCH, assumed="l", when={"system": ("inch",)}, hint="Printed on the tube."
        ),
    ],
    wall_metric: Annotated[
        str, Choice("Wall", tubes.WALLS_METRIC, assumed="b", when={"system": ("metric",)})
    ],
    fitting: Annotated[str, Choice("Fitting is of", FITTINGS, assumed="copper")],
    solder: Annotated[
        str | None,
        Choice(
            "Solder you have",
            SOLDERS,
            optional=True,
            when={"method": SOLDERED},
            hint="Left out: a lead-free one is taken.",
        ),
    ],
    brazing_filler: Annotated[
        str | None,
        Choice("Brazing filler you have", tubes.brazing_fillers(), optional=True, when={"method": BRAZED}),
    ],
    solder_wire: Annotated[
        float,
        Field(
            "Diameter of the solder wire",
            LENGTH,
            assumed={"us": "1/8 in", "iso": "3 mm", "uk": "3 mm"},
            low="0.5 mm",
            high="6.5 mm",
            when={"method": SOLDERED},
        ),
    ],
    rod: Annotated[
        float,
        Field(
            "Diameter of the brazing wire or rod",
            LENGTH,
            assumed={"us": "1/16 in", "iso": "2 mm", "uk": "2 mm"},
            low="0.5 mm",
            high="6.5 mm",
            when={"method": BRAZED},
        ),
    ],
    clearance: Annotated[
        float,
        Field(
            "Gap between tube and cup, on each side",
            LENGTH,
            assumed={"us": "0.005 in", "iso": "0.127 mm", "uk": "0.127 mm"},
            low="0.001 in",
            high="0.010 in",
            too_high="a gap that wide is past the printed table and holds filler badly; take a fitting that fits",
        ),
    ],
    cup: Annotated[
        float | None,
        Field(
            CUP_LABEL,
            LENGTH,
            low="1.5 mm",
            high="300 mm",
            optional=True,
            hint="Yours comes before the table.",
        ),
    ],
    rules: str,
) -> Answer[SolderTube]:
    """Filler, flux, heat and amounts for joints of copper tube and fittings on water lines.

    A joint is one tube end in one cup. Gas, oxygen, refrigerant, steam and compressed
    air are refused: that is other people's licensed work.
    """  # fmt: skip
    tubes.require_service(service, SERVICE_LABEL)
    own = solder if method == "soldering" else brazing_filler
    filler = tubes.picked_filler(method, own, rules)
    if filler.lead and service != "heating-water":
        raise InputError(
            "solder",
            "Solder you have", "it holds lead and is never used where people may drink the water; pick a lead-free one, or "
            "leave this out.",
        )
    size, wall = (size_inch, wall_inch) if system == "inch" else (size_metric, wall_metric)
    piece = tubes.tube(system, size, wall, cup)
    outside, depth = _value(piece.outside), _value(piece.cup)
    _require_cup(depth, outside, rules)
    share = next(row for row in table("tube-allowances") if row.method == method)
    wire = solder_wire if method == "soldering" else rod
    steps: list[Step] = []
    volume = worked(
        steps, "Filler in one joint, nothing wasted", filler_volume,
        tube_outside=outside, cup_depth=depth, clearance=clearance, filled=share.filled,
    )  # fmt: skip
    length = worked(steps, "Wire that holds it", wire_length, filler=volume, diameter=wire)
    mass = worked(
        steps, "Mass of it for all joints", filler_mass, filler=volume * joints, density=filler.density
    )
    memory = piece.cup.how_sure == "memory"
    gap = next(row for row in table("tube-gaps") if row.filler == filler.family)
    tight = min(gap.tightest / clearance, GAP_KNOWN)

    def amount(value: float, basis: str) -> Figure:
        return Figure(
            value, piece.cup.source if memory else share.source, "memory" if memory else "computed",
            low=value * tight, high=value * share.most,
            basis=f"{basis} Band: the tightest gap that is printed as good; {share.words}.",
        )  # fmt: skip

    flux = tubes.flux_row(method, filler.family, fitting, rules)
    window = next(row for row in table("tube-windows") if row.method == method)
    torch = next(row for row in table("tube-torches") if row.method == method)
    return Answer(
        SolderTube(
            filler=Figure(
                None, filler.melting.source, filler.melting.how_sure, words=filler.said,
                basis="The one you have." if own else "Our pick where you name none; what the maker of the fitting asks for comes first.",
            ),
            lead=tubes.lead_said(service, fitting, filler.lead, rules),
            flux=Figure(
                None, flux.source, flux.how_sure, words=flux.words,
                basis="Copper to copper. A brass part needs flux." if flux.id == "none" else BRUSHED,
            ),
            melting=filler.melting,
            pipe_heat=_heat(filler, window),
            torch=Figure(
                None, torch.source, torch.how_sure, words=torch.words,
                basis="The size of tube decides: the larger it is, the more heat runs off.",
            ),
            service_limit=Figure(
                window.service, window.source, window.how_sure,
                basis="Printed limit for such joints. Pressure has a limit of its own: see the fitting's maker and the local code.",
            ),
            clear_distance=clear_distance(rules, method),
            fire_watch=fire_watch(rules),
            filler_length_joint=amount(length, "The gap filled, by volume."),
            filler_length=amount(length * joints, "One joint times the joints."),
            filler_mass=amount(mass, "Volume times the density that stands behind the printed table."),
            flux_mass=amount(_flux(steps, mass), FLUX_SAID) if method == "soldering" else None,
            tube_outside=piece.outside,
            wall=piece.wall,
            cup_depth=piece.cup,
            clearance=Figure(
                clearance, gap.source, gap.how_sure,
                basis=f"The gap you gave or the one assumed. Best in print for {gap.filler}: "
                f"{tube_beside.told(gap.tightest, rules)} to {tube_beside.told(gap.loosest, rules)}.",
            ),
            lap=_lap(steps, piece) if method == "brazing" else None,
        ),
        cautions=tube_beside.cautions(filler, flux.id, fitting),
        steps=tuple(steps),
        beside=lambda: (
            _tables(method=method, piece=piece, wire=wire, joints=joints, mass=mass, clearance=clearance, volume=volume, rules=rules),
            (tube_drawing.drawing(outside=outside, wall=_value(piece.wall), depth=depth, gap=clearance, filled=share.filled, rules=rules),),
        ),
    )  # fmt: skip


def _value(figure: Figure) -> float:
    assert figure.value is not None
    return figure.value


def _require_cup(depth: Length, outside: Length, rules: str) -> None:
    deepest = tube_drawing.DEEPEST * outside
    if 0.1 * outside <= depth <= deepest:
        return
    least, most = tube_beside.told(0.1 * outside, rules), tube_beside.told(deepest, rules)
    raise InputError("cup", CUP_LABEL, f"no cup for this tube is like that; give {least} to {most}.")


def _heat(filler: tubes.Filler, window: Any) -> Figure:
    top = min(window.works_to, filler.works_to or window.works_to)
    low = max(window.works_from, filler.works_from)
    return Figure(
        (low + top) / 2, window.source, filler.melting.how_sure, low=low, high=top,
        basis="From where this filler flows to the top of the window printed for copper tube, and its middle. Begin at the lower "
        "end: beyond the upper one the flux burns.",
    )  # fmt: skip


def _flux(steps: list[Step], mass: Mass) -> Mass:
    return worked(steps, "Flux that goes with it", flux_for_solder, solder=mass, flux_share=FLUX_SHARE)


def _lap(steps: list[Step], piece: tubes.Tube) -> Figure:
    lap = worked(steps, "Overlap of a full braze", least_lap, wall=_value(piece.wall), lap_walls=LAP_WALLS)
    enough = "The cup is deeper." if _value(piece.cup) >= lap else "This cup is too shallow for it."
    return Figure(
        lap, "cda-copper-tube brazed joints", "read",
        basis=f"Three times the thinner of tube and fitting, with a full fillet: no weaker than the tube. {enough}",
    )  # fmt: skip


def _tables(
    *,
    method: str, piece: tubes.Tube, wire: Length, joints: float, mass: float, clearance: Length, volume: Volume,
    rules: str,
) -> tuple[Any, ...]:  # fmt: skip
    if method == "brazing":
        return (tube_beside.other_rods(mass, rules), *tube_beside.printed_braze(piece, rules))
    gaps = tube_beside.other_gaps(volume / clearance, wire, joints, rules)
    return (gaps, *tube_beside.printed_weight(piece, rules))
