"""One try of an exercise, as the job sheet sums it: flows, what is let out, rod, hazards."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from calc.answer.answering import computed, found
from calc.ask.inputs import bound_si
from calc.class_plan.exercises import Exercise, exercises
from calc.declare import Caution, by_rules
from calc.formulas.gas.hose import hose_volume
from calc.formulas.gas.purge import trapped_gas
from calc.formulas.gas.supply import gas_of_use
from calc.job_sheet.brazing import SOLDER_WIRES, WIRES
from calc.trade.gas.draws import draw_cautions
from calc.trade.gas.hoses import EXTRA_VOLUME
from calc.values.figures import Figure
from calc.values.quantities import FIFTEEN_CELSIUS, FreeGas, Length, Time

GASES = ("fuel", "oxygen")
GRAVE = ("DANGER", "WARNING")
"""Hazards that a plan of many exercises says; the lesser ones stand on the card of each exercise."""


@dataclass(frozen=True, slots=True)
class Rod:
    """Rod or filler of one try.

    Attributes:
        name: Class, in words.
        diameter: m.
        length: With least and most, m.
        mass: With least and most, kg.
    """

    name: str
    diameter: Length
    length: Figure
    mass: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Try:
    """One try under one rule set.

    Attributes:
        exercise: What is done.
        flow: Of each gas while the flame burns, m³/s.
        let_out: Of each gas at purge and bleed of one torch, m³.
        rod: Rod or filler, or None.
        shade: Least filter shade.
        clear: Distance that is cleared, m.
        cautions: Hazards of the work that can kill or maim; what hangs on the cylinder is left out.
    """

    exercise: Exercise
    flow: dict[str, Figure]
    let_out: dict[str, FreeGas]
    rod: Rod | None
    shade: Figure
    clear: Figure
    cautions: tuple[Caution, ...]

    @property
    def flame_time(self) -> Time:
        """Flame burning in it, a learner's, s."""
        return self.exercise.flame_time


@lru_cache(maxsize=64)
def one_try(exercise: str, rules: str) -> Try:
    """One try of an exercise of the ladder.

    Args:
        exercise: Its id.
        rules: Rule set.

    Examples:
        >>> one = one_try("corner", "us")
        >>> one.flame_time / 60, one.rod, one.cautions[0].id
        (4.0, None, 'closed-part')
    """
    made = exercises(rules)[exercise]
    got, taken, *_ = computed(found("job-sheet"), made.job)
    given = {name: one.si for name, one in taken.items() if one is not None}
    sheet = got.results
    flow = {"fuel": sheet.fuel_flow, "oxygen": sheet.oxygen_flow}
    used = {"fuel": sheet.fuel_used, "oxygen": sheet.oxygen_used}
    gauge = {"fuel": sheet.fuel_gauge, "oxygen": sheet.oxygen_gauge}
    held = hose_volume(given["hose_bore"], given["hose_length"]) + _beside(rules)
    let_out = {
        gas: used[gas].value
        - gas_of_use(flow[gas].value, sheet.torch_time.value)
        + trapped_gas(held, gauge[gas].value, FIFTEEN_CELSIUS)
        for gas in GASES
    }
    by_cylinder = draw_cautions(flow["fuel"].value, given["acetylene_contents"], given["duty"])
    apart = {caution.id for caution in by_cylinder}
    grave = (one for one in got.cautions if one.signal in GRAVE and one.id not in apart)
    return Try(
        exercise=made,
        flow=flow,
        let_out=let_out,
        rod=_rod(made, sheet, rules),
        shade=sheet.shade_minimum,
        clear=sheet.clear_distance,
        cautions=tuple(grave),
    )


def _beside(rules: str) -> float:
    """Regulator's low side and torch, m³, as assumed where a hose is let down."""
    assert EXTRA_VOLUME.assumed is not None
    return bound_si(EXTRA_VOLUME, by_rules(EXTRA_VOLUME.assumed, rules))


def _rod(made: Exercise, sheet: Any, rules: str) -> Rod | None:
    if not made.has_rod:
        return None
    wires = SOLDER_WIRES if made.job["process"] == "soldering" else WIRES
    diameter = wires[rules] if sheet.rod_diameter is None else sheet.rod_diameter.value
    return Rod(sheet.filler.words, diameter, sheet.rod_length, sheet.filler_mass)
