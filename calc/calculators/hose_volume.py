"""Gas that a hose holds: the smallest calculator, to copy from."""

from dataclasses import dataclass
from typing import Annotated

from calc.declare import Answer, Field, Figure, Shown, Step, calculator, worked
from calc.formulas.gas.hose import hose_volume as volume_of_hose
from calc.trade.gas.hoses import BORE, LENGTH_OF_HOSE


@dataclass(frozen=True, slots=True)
class HoseVolume:
    """Inside of the hoses."""

    volume: Annotated[Figure, Shown("Inside of the hoses", ("in^3", "L"))]


@calculator("hose-volume", "Inside of a hose")
def hose_volume(
    bore: Annotated[float, BORE],
    length: Annotated[float, LENGTH_OF_HOSE],
    hoses: Annotated[float, Field("Number of hoses", ("",), assumed="2", low="1", high="4", whole=True)],
) -> Answer[HoseVolume]:
    """Volume inside hoses, to see how much gas a purge must push out.

    Bore and length as printed on the hose.
    """
    steps: list[Step] = []
    one = worked(steps, "One hose", volume_of_hose, bore=bore, length=length)
    return Answer(
        HoseVolume(Figure(one * hoses, "definition", "computed", basis="Length times the bore's area.")),
        steps=tuple(steps),
    )
