"""Other calculators asked by the job sheet: their refusals told with its own labels."""

from collections.abc import Callable, Mapping

from calc.ask.errors import InputError
from calc.job_sheet import fields as asked
from calc.trade.fields import FUEL_ASKED

LABELS = {
    "process": asked.PROCESS.label,
    "metal": asked.METAL.label,
    "other_metal": asked.OTHER_METAL.label,
    "fuel": FUEL_ASKED.label,
    "thickness": asked.THICKNESS.label,
    "joint": asked.JOINT.label,
    "length": asked.LENGTH_OF_WORK.label,
    "diameter": asked.DIAMETER.label,
    "lap_width": asked.LAP_WIDTH.label,
    "braze_service": asked.BRAZE_SERVICE.label,
    "tube_service": asked.TUBE_SERVICE.label,
    "torch_type": asked.TORCH.label,
    "maker_orifice": asked.MAKER_ORIFICE.label,
    "maker_oxygen_gauge": asked.MAKER_OXYGEN_GAUGE.label,
    "maker_acetylene_gauge": asked.MAKER_ACETYLENE_GAUGE.label,
    "maker_fuel_gauge": asked.MAKER_FUEL_GAUGE.label,
}


def told[T](work: Callable[[], T], names: Mapping[str, str]) -> T:
    """What the work returns; its refusals under the labels of the job sheet.

    Args:
        work: Asks another calculator or sheet.
        names: Its inputs, by name, and the job sheet's that they come from.

    Raises:
        InputError: As the work, with the job sheet's field and label.
    """
    try:
        return work()
    except InputError as error:
        ours = names.get(error.field, error.field)
        if ours not in LABELS:
            ours = "process"
        raise InputError(ours, LABELS[ours], error.reason) from None


