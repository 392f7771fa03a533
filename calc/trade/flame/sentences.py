"""What is said and drawn about a flame: its look, its name, its charts, its printed figures."""

from dataclasses import dataclass
from functools import cache

from calc.answer.hazards import brought, caution, gravest_first
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Caution, Picture, Table
from calc.formulas.gas.properties import oxygen_ratio as usual_ratio
from calc.formulas.heat.effect_on_iron import (
    GIVES_CARBON,
    LITTLE_OF_EITHER,
    OXIDISES_ALLOYING_ELEMENTS,
    OXIDISES_IRON,
)
from calc.formulas.heat.flame import ROOM, BurntGas, burnt_gas
from calc.show.drawings.chart import Line, Mark, line_chart
from calc.show.scales import Scale
from calc.trade.drawings import flame as flame_drawing
from calc.trade.flame.bands import Kind, colours, flame_kind, flame_name
from calc.trade.flame.curve import Point, hottest
from calc.values.figures import Figure
from calc.values.numbers import plain_number
from calc.values.quantities import Ratio, Temperature

EXPECTED = {
    "carburising": (GIVES_CARBON,),
    "slightly-reducing": (GIVES_CARBON,),
    "neutral": (LITTLE_OF_EITHER,),
    "oxidising": (OXIDISES_ALLOYING_ELEMENTS, OXIDISES_IRON),
}
"""What each name promises that the burnt gas does to iron."""

@dataclass(frozen=True, slots=True)
class Said:
    """Words with what stands behind them."""

    words: str
    source: str
    how_sure: str


def kind_words(fuel: str, ratio: Ratio, rules: str) -> tuple[str, Kind]:
    """Name of the flame in the words of a rule set, the usual spelling behind it."""
    kind = flame_kind(fuel, ratio)
    name, plain = flame_name(kind, rules), kind.id.replace("-", " ")
    return name if name == plain or kind.id in ("", "between") else f"{name} ({plain})", kind


def look_words(fuel: str, ratio: Ratio, sooty: bool) -> Said:
    """What a learner sees and hears at a ratio.

    Args:
        fuel: Id of the fuel gas.
        ratio: Volumes of oxygen for one of fuel.
        sooty: Whether the burnt gas holds soot.
    """
    if fuel == "acetylene" and ratio < flame_drawing.LOWEST:
        return Said(
            "a feather longer than three cones, down to a long, yellow, smoky flame without oxygen",
            "", "memory",
        )  # fmt: skip
    if fuel == "acetylene" and ratio <= flame_drawing.HIGHEST:
        row = colours(flame_kind(fuel, ratio))
        feather = f"; feather {row.feather}" if row.feather else "; no feather"
        return Said(
            f"cone {row.cone}{feather}; envelope {row.envelope}; you hear {row.sound}",
            row.source, row.how_sure,
        )  # fmt: skip
    soot = "a yellow, sooty flame; " if sooty else ""
    if fuel == "methylacetylene-propadiene":
        row = table("flame-bands-mps")[0]
        return Said(f"{soot}{row.words}", row.source, row.how_sure)
    return Said(f"{soot}no printed description of this flame in our data", "", "memory")


def torch_ratio_words(fuel: str) -> Figure:
    """Oxygen that a torch draws for one of fuel, as a band in words."""
    row = next(r for r in table("oxygen-ratios-benchbook-2026") if (r.fuel, r.sense) == (fuel, "torch"))
    return Figure(
        None, row.source, row.how_sure,
        words=f"{plain_number(row.low)} to {plain_number(row.high)} of oxygen to 1",
        basis="From the cylinder; the air around the flame brings the rest.",
    )  # fmt: skip


def disagreement(fuel: str, ratio: Ratio, effect: str, air: Ratio, oxygen_purity: Ratio) -> str:
    """Whether the trade's name and the effect on iron agree, and why where they do not.

    Args:
        fuel: Id of the fuel gas.
        ratio: Volumes of oxygen for one of fuel.
        effect: One of the four effects on iron.
        air: Volumes of air for one of fuel.
        oxygen_purity: Oxygen in the gas from the oxygen hose.
    """
    kind = flame_kind(fuel, ratio)
    if kind.id not in EXPECTED:
        return "there is no name to compare: go by the effect on iron"
    if effect in EXPECTED[kind.id]:
        return "yes"
    why = [
        "the name is given by the cone at the tip; the effect by the burnt gas once it has settled on molten iron"
    ]
    if air > 0:
        why.append(
            "the air drawn in brings oxygen that the name does not count: keep the cone close to the puddle"
        )
    if oxygen_purity < 1:
        why.append("impure oxygen brings less than its volume says")
    if fuel != "acetylene":
        why.append(
            "this fuel brings much hydrogen, which leaves as water vapour, and that oxidises hot iron"
        )
    elif not air and effect == LITTLE_OF_EITHER:
        why.append("near the edge of a band the gas changes more slowly than the look of the cone")
    return f"no: {'; '.join(why)}"


def flame_cautions(fuel: str, effect: str, sooty: bool, oxygen_atoms: Ratio | None) -> tuple[Caution, ...]:
    """Cautions of a flame.

    Args:
        fuel: Id of the fuel gas.
        effect: One of the four effects on iron.
        sooty: Whether the burnt gas holds soot.
        oxygen_atoms: Atoms of oxygen for one of carbon; None without carbon.
    """
    found = [caution("lit-torch"), caution("glare"), caution("flame-sum")]
    found.append(caution("flame-gases"))
    found += brought({"fuel": fuel})
    if effect in (OXIDISES_ALLOYING_ELEMENTS, OXIDISES_IRON) and fuel != "acetylene":
        found.append(caution("flame-oxidises"))
        if fuel == "methylacetylene-propadiene":
            found.append(caution("mps-in-print"))
    if sooty or (oxygen_atoms is not None and oxygen_atoms < 1):
        found.append(caution("flame-soots"))
    return gravest_first(found)


@cache
def _ours(fuel: str, flame: str, ratio: Ratio | None) -> tuple[Ratio, Temperature]:
    """Our ratio and temperature for a flame that print names: its ratio, else by its name."""
    if ratio is None and flame != "neutral":
        return hottest(fuel)
    at = usual_ratio(fuel) if ratio is None else ratio
    return at, burnt_gas(fuel=fuel, oxygen_ratio=at).temperature


def printed_temperatures(fuel: str, rules: str) -> Table:
    """Flame temperatures in print beside ours for the same flame.

    Args:
        fuel: Id of the fuel gas.
        rules: Rule set, for the unit.
    """
    scale = Scale("degF" if rules == "us" else "degC", 4)
    _, peak = hottest(fuel)
    rows = []
    for row in table("flame-temperatures-printed"):
        if row.fuel == fuel:
            at, ours = _ours(fuel, row.flame, row.ratio)
            above = row.temperature - peak
            rows.append(
                (
                    row.as_printed, row.flame, f"{source_words(row.source)}, {HOW_SURE[row.how_sure]}",
                    f"{scale.said(ours)} at {plain_number(at, 3)}",
                    f"{above:.0f} K above what can be" if above > 15 else "",
                )
            )  # fmt: skip
    note = (
        f"Ours is pure oxygen at {scale.said(ROOM)} without air and without loss; a flame called neutral is taken at "
        f"the torch's ratio. At its hottest it reaches {scale.said(peak)}, and nothing passes that: the hotter the "
        "gas, the more of its molecules break into atoms, and breaking them takes the heat that would make it hotter."
    )
    if fuel == "acetylene":
        note += (
            " The 6,300 °F (3,482 °C) of old books leaves part of this out, so it cannot be. Both modern families are "
            "right: about 3,087 °C is the neutral flame, about 3,160 °C the hottest, oxidizing one."
        )
    if fuel == "methylacetylene-propadiene":
        note += " The gas as sold holds other gases than the two of this sum, so print lies lower."
    return Table(
        "Flame temperatures in print", ("In print", "Flame", "Who says so, how sure", "Ours", ""),
        tuple(rows), note,
    )  # fmt: skip


def _chart(title: str, sentence: str, upward: str, lines: list[Line], marks: list[Mark]) -> Picture:
    across = "Oxygen for one of fuel"
    return Picture(line_chart(title=title, sentence=sentence, x_label=across, y_label=upward, lines=lines, marks=marks), title, sentence)


def _species_chart(title: str, sentence: str, names: tuple[str, ...], points: tuple[Point, ...], ratio: Ratio) -> Picture:  # fmt: skip
    lines = [
        Line(name, tuple((at, 100 * gas.shares.get(name, 0.0)) for at, gas in points))
        for name in names
        if any(gas.shares.get(name, 0.0) > 1e-4 for _, gas in points)
    ]
    return _chart(title, sentence, "Share, %", lines, [Mark("yours", ratio, None)])


def pictures(
    fuel: str, ratio: Ratio, gas: BurntGas, points: tuple[Point, ...], rules: str
) -> tuple[Picture, ...]:
    """The flame as it looks, where print says how, and its curves with the reader's point.

    Args:
        fuel: Id of the fuel gas.
        ratio: The reader's ratio.
        gas: Burnt gas there.
        points: Burnt gas at rising ratios.
        rules: Rule set, for words and units.
    """
    scale = Scale("degF" if rules == "us" else "degC", 4)
    drawn: list[Picture] = []
    if fuel == "acetylene" and flame_drawing.LOWEST <= ratio <= flame_drawing.HIGHEST:
        drawn.append(flame_drawing.drawing(ratio, rules))
    top_ratio, top = max(points, key=lambda point: point[1].temperature)
    line = Line("no heat lost", tuple((at, scale.number(each.temperature)) for at, each in points))
    drawn.append(
        _chart(
            "Temperature against the ratio",
            f"The curve tops out near {scale.said(top.temperature)} at about {plain_number(top_ratio, 2)}; yours "
            f"reaches {scale.said(gas.temperature)} at {plain_number(ratio, 3)}.",
            f"Flame, {scale.name}",
            [line],
            [Mark("yours", ratio, scale.number(gas.temperature))],
        )
    )
    burnt = "Hydrogen" if fuel == "hydrogen" else "Carbon monoxide and hydrogen"
    drawn.append(
        _species_chart(
            "What the burnt gas holds",
            f"{burnt} give way to burnt gas as the oxygen rises; at yours "
            f"{plain_number(100 * gas.shares['H2'], 2)} % is hydrogen.",
            ("CO", "H2", "H2O", "CO2"),
            points,
            ratio,
        )
    )
    drawn.append(
        _species_chart(
            "Broken molecules and oxygen left over",
            "Heat breaks molecules into H, O and OH; they give that heat back when they join again on the cooler metal.",
            ("H", "OH", "O", "O2"),
            points,
            ratio,
        )
    )
    return tuple(drawn)
