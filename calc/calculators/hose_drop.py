"""Pressure that a hose takes while gas flows."""

from dataclasses import dataclass
from typing import Annotated

from calc.calculators.tip_flow import FUELS, require_acetylene_gauge
from calc.declare import (
    FREE_GAS_FLOW,
    GAUGE,
    TEMPERATURE,
    Answer,
    Choice,
    Field,
    Figure,
    Shown,
    calculator,
)
from calc.errors import InputError
from calc.formulas.gas.hose import UNCERTAIN_BAND, hose_flow
from calc.formulas.gas.pressures import absolute_pressure

GASES = {"oxygen": "Oxygen", **FUELS}
BORE = Field(
    "Bore of the hose", ("in", "mm"), example={"us": "1/4 in", "iso": "6.3 mm", "uk": "6.3 mm"},
    low="3 mm", high="1 in",
)  # fmt: skip
LENGTH_OF_HOSE = Field(
    "Length of the hose", ("ft", "m"), example={"us": "25 ft", "iso": "10 m", "uk": "10 m"},
    low="1 m", high="100 m",
)  # fmt: skip
SOURCE = "pipe-flow isothermal, smooth rubber of 1.5 µm"


@dataclass(frozen=True, slots=True)
class HoseDrop:
    """What the hose takes."""

    drop: Annotated[Figure, Shown("Pressure the hose takes", ("psi", "bar", "kPa"), toward="up")]
    outlet_gauge: Annotated[
        Figure, Shown("Gauge left at the torch end", ("psi", "bar", "kPa"), toward="down")
    ]


def drop_figure(drop: float, *, uncertain: bool) -> Figure:
    """The drop with its band: wide where the flow is between smooth and rough."""
    share = UNCERTAIN_BAND if uncertain else 0.05
    basis = (
        "The flow is between smooth and turbulent, so the drop is uncertain by up to 40 %."
        if uncertain
        else "The hose alone, straight; the band is 5 % for bends and bore. Couplings, check valves and "
        "arrestors often cost more than the hose and are not included."
    )
    return Figure(drop, SOURCE, "computed", drop * (1 - share), drop * (1 + share), basis)


@calculator("hose-drop", "Pressure that a hose takes")
def hose_drop(
    gas: Annotated[str, Choice("Gas", GASES, example="oxygen")],
    gauge: Annotated[
        float,
        Field(
            "Gauge at the regulator",
            GAUGE,
            example={"us": "40 psi", "iso": "2.5 bar", "uk": "2.5 bar"},
            low="0.5 psi",
            high="350 psi",
        ),
    ],
    bore: Annotated[float, BORE],
    length: Annotated[float, LENGTH_OF_HOSE],
    flow: Annotated[
        float,
        Field(
            "Flow",
            FREE_GAS_FLOW,
            example={"us": "100 cfh", "iso": "2800 L/h", "uk": "2800 L/h"},
            low="5 L/h",
            high="200000 L/h",
            free_gas=True,
        ),
    ],
    temperature: Annotated[
        float,
        Field(
            "Gas temperature",
            TEMPERATURE,
            low="-20 degF",
            high="140 degF",
            assumed={"us": "68 degF", "iso": "20 degC", "uk": "20 degC"},
        ),
    ],
    rules: str,
) -> Answer[HoseDrop]:
    """Drop along a hose while gas flows through it.

    Refused where the hose cannot pass the flow, and where acetylene would stand
    above its limit.
    """  # fmt: skip
    require_acetylene_gauge(gas, gauge, rules, "gauge", "Gauge at the regulator")
    inlet = absolute_pressure(gauge)
    try:
        found = hose_flow(gas, flow, inlet, bore, length, temperature=temperature)
    except ValueError:
        raise InputError(
            "flow",
            "Flow: this hose cannot pass so much at this gauge; give less flow, a wider or shorter hose, "
            "or more pressure within the gas's limit.",
        ) from None
    outlet = found.outlet - absolute_pressure(0.0)
    if outlet < 0:
        raise InputError(
            "flow",
            "Flow: nothing would be left at the torch end; give less flow, or a wider or shorter hose.",
        )
    drop = drop_figure(found.drop, uncertain=found.uncertain)
    low = max(gauge - (drop.high or 0.0), 0.0)
    return Answer(
        HoseDrop(
            drop=drop,
            outlet_gauge=Figure(
                outlet,
                SOURCE,
                "computed",
                min(low, outlet),
                max(gauge - (drop.low or 0.0), outlet),
                drop.basis,
            ),
        )
    )
