"""Whether a job's own flow and travel melt a butt to its back, by the heat sum."""

from calc.calculators.weld_heat import SUM
from calc.formulas.heat.flame_patch import welding_spread
from calc.formulas.heat.flame_power import FLAME_EFFICIENCY, power_into_work
from calc.trade.flame.heat import BAND_SAID, printed_heat
from calc.trade.heat.metals import metal_of
from calc.trade.heat.plate import Plate, pools
from calc.trade.weld.joints import BUTTS
from calc.values.figures import Figure
from calc.values.quantities import Length
from calc.values.units import to_si

START = to_si(20.0, "degC")
"""Temperature of the metal before welding."""
_STEEL = "low-carbon-steel"


def melts_through(metal: str, joint: str, thickness: Length, flow: Figure, speed: Figure) -> Figure | None:
    """What the heat sum says of a butt at the flow and the travel of its sheet, in words.

    Args:
        metal: Id of the metal.
        joint: Id of the joint.
        thickness: Of the plate, m, counted whole: a groove needs less.
        flow: Acetylene that the torch takes, m³/s.
        speed: Travel, m/s.

    Returns:
        Words that begin with "yes" where the band of the sum holds a pool right
        through, else with "in doubt" and which of the two is doubtful; None for
        a joint that is no butt.

    Source:
        [rosenthal-1946], [carslaw-1959]
    """
    if joint not in BUTTS:
        return None
    assert flow.value is not None
    assert speed.value is not None
    kind = metal_of(metal)
    plate = Plate(
        thickness=thickness, speed=speed.value, start=START, melting=kind.liquidus, conductivity=kind.hot_conductivity, diffusivity=kind.hot_diffusivity
    )
    power = power_into_work(flow.value, printed_heat("acetylene"), FLAME_EFFICIENCY)
    try:
        weak, middle, strong = (pool.kind for pool in pools(plate, power, welding_spread(flow.value)))
    except ValueError:
        weak = middle = strong = "hole"
    return Figure(
        None, SUM, "computed", words=_said(metal, weak, middle, strong),
        basis=f"“How fast, how hot” with the flow and the travel of this sheet, on the whole plate without a groove. {BAND_SAID}",
    )  # fmt: skip


def _said(metal: str, weak: str, middle: str, strong: str) -> str:
    if weak == "hole":
        return (
            "in doubt: the heat sum burns a hole even at the weak end of its band. The flow is doubtful for metal this "
            "thin: try a smaller tip on a trial piece, and be ready to travel faster"
        )
    if strong not in ("through", "hole"):
        if metal == _STEEL:
            return (
                "in doubt: the heat sum does not melt the back. The flow is doubtful, the travel is printed: try a "
                "larger tip on a trial piece"
            )
        return (
            "in doubt: the heat sum does not melt the back. The travel is doubtful, it is that of steel: on a trial "
            "piece go slower until the root melts, and preheat"
        )
    if middle == "hole":
        return "yes, and it soon burns through: be ready to travel faster or to lift the torch"
    if middle == "through":
        return "yes: the heat sum melts the back"
    return "yes, at the strong end of the heat sum's band: travel no faster, and watch that the root melts"
