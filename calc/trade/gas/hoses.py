"""What is asked about a hose, and the pressure it takes as a figure with its band."""

from calc.declare import Field, Figure
from calc.declare.inputs import FREE_GAS_FLOW
from calc.formulas.gas.hose import HoseFlow
from calc.trade.fields import FUELS
from calc.values.units import to_si

GASES = {"oxygen": "Oxygen", **FUELS}
BORE = Field(
    "Bore of the hose", ("in", "mm"), example={"us": "1/4 in", "iso": "6.3 mm", "uk": "6.3 mm"},
    low="3 mm", high="1 in", outfit="hose_bore",
)  # fmt: skip
LENGTH_OF_HOSE = Field(
    "Length of the hose", ("ft", "m"), example={"us": "25 ft", "iso": "10 m", "uk": "10 m"},
    low="1 m", high="100 m", outfit="hose_length",
)  # fmt: skip
LEAST_GAUGE = to_si(0.5, "psi")
SOURCE = "pipe-flow isothermal, smooth rubber of 1.5 µm"
EXTRA_VOLUME = Field(
    "Regulator's low side and torch hold",
    ("in^3", "L"),
    assumed={"us": "6 in^3", "iso": "0.1 L", "uk": "0.1 L"},
    low="0 L",
    high="20 L",
    hint="For each gas; our guess.",
)

NOT_INCLUDED = (
    "Couplings, check valves and arrestors often cost more than the hose and are not included."
)


def band_words(*, uncertain: bool) -> str:
    """What the band of a drop rests on.

    Args:
        uncertain: Whether the flow may be smooth or turbulent.
    """
    if uncertain:
        return f"The flow may be smooth or turbulent: the band runs from the one to the other. {NOT_INCLUDED}"
    return f"The hose alone, straight; the band is 5 % for bends and bore. {NOT_INCLUDED}"


def drop_figure(found: HoseFlow) -> Figure:
    """The drop with its band: wide where the flow may be smooth or turbulent."""
    return Figure(
        found.drop, SOURCE, "computed", low=found.least_drop, high=found.most_drop, basis=band_words(uncertain=found.uncertain)
    )  # fmt: skip


def flow_asked(us: str, metric: str) -> Field:
    """Gas that flows through a hose.

    Args:
        us: Example in the units of the United States.
        metric: Example elsewhere.
    """
    example = {"us": us, "iso": metric, "uk": metric}
    return Field("Flow", FREE_GAS_FLOW, low="5 L/h", high="200000 L/h", free_gas=True, example=example)
