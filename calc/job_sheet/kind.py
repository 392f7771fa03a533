"""One kind of work as the job sheet takes it."""

from collections.abc import Callable
from dataclasses import dataclass, field

from calc.declare import Beside, Caution
from calc.trade.tips.welding_torch import Setting
from calc.values.figures import Figure
from calc.values.quantities import Length


def nothing_beside() -> Beside:
    """No tables, no pictures."""
    return (), ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """What a kind of work needs, before hoses, purge and gas are counted.

    Attributes:
        setting: Tip, gauges at the torch, and flows.
        flame: How it is set, in words.
        time: Torch burns on the work, s.
        shown: Results by their names on the job sheet.
        cautions: Hazards of this work, the gravest first.
        beside: Makes the tables and drawings beside the answer.
        thickness: What the eye shade goes by, m.
        oxygen_flow: Where the cut takes more than the flame, m³/s with the flame's; else None.
    """

    setting: Setting
    flame: Figure
    time: Figure
    shown: dict[str, Figure | None]
    thickness: Length
    cautions: tuple[Caution, ...] = ()
    beside: Callable[[], Beside] = nothing_beside
    oxygen_flow: Figure | None = field(default=None)
