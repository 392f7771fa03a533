"""Filter shade for the eyes."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import caution
from calc.ask.errors import InputError
from calc.declare import RULE_SETS, Answer, Choice, Field, Figure, Shown, calculator
from calc.declare.inputs import FREE_GAS_FLOW, LENGTH
from calc.formulas.setup.flows import acetylene_flow
from calc.formulas.setup.ruled import NO_FIGURE
from calc.formulas.setup.shades import shade
from calc.formulas.setup.tips import brazing_tip
from calc.trade.safety.shades import every_shade, helper_row
from calc.trade.tips.heating_settings import brazing_gauge, fuel_passed

PROCESSES = {
    "welding": "Gas welding and braze welding",
    "brazing": "Torch brazing",
    "soldering": "Torch soldering",
    "cutting": "Oxygen cutting",
    "heating": "Heating, bending, straightening",
}
AS_WELDING = "No rule names heating: the shade is that of gas welding, common practice."


@dataclass(frozen=True, slots=True)
class EyeShade:
    """Filter shades, darkest first to try."""

    shade_minimum: Annotated[Figure, Shown("Least filter shade", ("",), toward="up", digits=1)]
    shade_usual: Annotated[Figure, Shown("Usual shades", words=True)]
    shade_helper: Annotated[Figure, Shown("Helper who stands close", words=True)]


@calculator("eye-shade", "Filter shade for the eyes")
def eye_shade(
    process: Annotated[str, Choice("Work", PROCESSES, example="welding")],
    thickness: Annotated[
        float,
        Field(
            "Thickness of the metal",
            LENGTH,
            example={"us": "16 ga", "iso": "1.5 mm", "uk": "1.5 mm"},
            low="0.3 mm",
            high="12 in",
            sheet_gauge=True,
            metal="low-carbon-steel",
        ),
    ],
    acetylene_flow: Annotated[
        float | None,
        Field(
            "Acetylene through the torch",
            FREE_GAS_FLOW,
            low="5 L/h",
            high="10000 L/h",
            free_gas=True,
            optional=True,
            hint="European and UK filters for welding and brazing go by this flow.",
        ),
    ],
    oxygen_flow: Annotated[
        float | None,
        Field(
            "Oxygen through the torch",
            FREE_GAS_FLOW,
            low="100 L/h",
            high="20000 L/h",
            free_gas=True,
            optional=True,
            hint="European and UK filters for cutting go by this flow.",
        ),
    ],
    rules: str,
) -> Answer[EyeShade]:
    """Least filter shade by rule set, and the shades people use.

    The US table goes by thickness, EN 169 by the flow through the torch.
    """  # fmt: skip
    heating = process == "heating"
    process = "welding" if heating else process
    flow = oxygen_flow if process == "cutting" else acetylene_flow
    basis_of_flow = AS_WELDING if heating else ""
    if flow is None and rules != "us" and heating:
        raise InputError(
            "acetylene_flow",
            "Acetylene through the torch",
            "heating tips differ too much to guess it; give 5 L/h to 10000 L/h.",
        )
    if flow is None and rules != "us" and process != "soldering":
        flow, taken = _flow_of(process, thickness)
        basis_of_flow = " ".join(part for part in (basis_of_flow, taken) if part)
    found = shade(process, rules, thickness, flow)
    lightest = max(found.lightest, found.minimum)
    usual = f"{lightest}" if lightest >= found.darkest else f"{lightest} to {found.darkest}"
    foreign = f"{RULE_SETS['us']} figure. {found.note}" if found.note else ""
    basis = " ".join(part for part in (found.basis, basis_of_flow) if part)
    sure = "practice" if heating else found.how_sure
    return Answer(
        EyeShade(
            shade_minimum=Figure(float(found.minimum), found.source, sure, basis=basis, words=foreign),
            shade_usual=Figure(
                None, found.guide_source, found.how_sure, words=usual,
                basis="Start too dark and go lighter until you see the weld zone, never below the least.",
            ),
            shade_helper=_helper(rules),
        ),
        tables=(every_shade(),),
        cautions=(
            caution("glare"),
            *((caution("flux-glare"),) if process in ("welding", "brazing") else ()),
        ),
    )  # fmt: skip


def _helper(rules: str) -> Figure:
    if rules == "us":
        return Figure(
            None, "", "practice", words="the same shade as the person at the torch",
            basis=NO_FIGURE.partition(". ")[0] + ", so the darker one.",
        )  # fmt: skip
    row = helper_row("helper")
    return Figure(
        None, row.source, row.how_sure, words=f"{row.lightest:g} to {row.darkest:g}; the nearer, the darker",
        basis=f"German guidance. {row.words.capitalize()}.",
    )  # fmt: skip


def _flow_of(process: str, thickness: float) -> tuple[float, str]:
    if process == "cutting":
        raise InputError(
            "oxygen_flow",
            "Oxygen through the torch",
            "this rule set picks the shade by flow; give 100 L/h to 20000 L/h.",
        )
    try:
        welding = acetylene_flow(thickness, "low-carbon-steel", "leftward")
        most = welding.high or welding.value or 0.0
        if process == "brazing":
            most = max(most, _brazing_flow(thickness))
    except ValueError as error:
        raise InputError(
            "acetylene_flow",
            "Acetylene through the torch",
            f"no flow is known for that thickness ({error}); give 5 L/h to 10000 L/h.",
        ) from None
    return most, "The flow was taken from the thickness, at the top of what the sources print."


def _brazing_flow(thickness: float) -> float:
    """Most acetylene that the hole of the brazing table passes, m³/s."""
    tip = brazing_tip(thickness)
    gauges = (brazing_gauge(gas) for gas in ("oxygen", "acetylene"))
    passed = fuel_passed("acetylene", tip.high or 0.0, 1.0, *gauges)
    return passed.high or 0.0
