"""Pressure that a joined hose connection must hold."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import caution
from calc.declare import Answer, Field, Figure, Shown, calculator
from calc.declare.inputs import GAUGE
from calc.values.units import to_si

TIMES = 2.0
LEAST = to_si(300.0, "psi")
RULE = "cfr1910-253 (e)(5)(iv)"


@dataclass(frozen=True, slots=True)
class HoseProof:
    """Proof of a hose joint."""

    proof_gauge: Annotated[Figure, Shown("The joint must hold, without a leak", GAUGE, toward="up")]


@calculator("hose-proof", "Proof of a hose joint")
def hose_proof(
    normal_gauge: Annotated[
        float,
        Field(
            "Normal service pressure",
            GAUGE,
            low="1 psi",
            high="400 psi",
            example={"us": "60 psi", "iso": "4 bar", "uk": "4 bar"},
        ),
    ],
    rules: str,
) -> Answer[HoseProof]:
    """Pressure a hose connection must stand: twice the normal one, never under 300 psi.

    A test for the one who makes up hoses, with oil-free air or an inert gas.
    """  # fmt: skip
    note = (
        ""
        if rules == "us"
        else "United States figure. No figure for this rule set in our data; ask the local authority"
    )
    return Answer(
        HoseProof(
            proof_gauge=Figure(
                max(TIMES * normal_gauge, LEAST), RULE, "read", words=note,
                basis="Twice the normal service pressure, never under 300 psi.",
            )
        ),
        cautions=(caution("hose-test"),),
    )  # fmt: skip
