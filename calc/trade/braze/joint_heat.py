"""How long a torch stays on a lap or a socket: the heat balance of the metal that gets hot with it."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from calc.answer.sentences import degrees, duration
from calc.data.tables import table
from calc.formulas.heat.flame_power import (
    HEATING_EFFICIENCY,
    HEATING_EFFICIENCY_BAND,
    power_into_work,
)
from calc.formulas.heat.lumped import (
    fin_length,
    heat_reach,
    lap_mass,
    radiation_coefficient,
    warm_up_time,
)
from calc.formulas.heat.steel_properties import steel_heat_capacity
from calc.trade.flame.heat import printed_heat
from calc.trade.heat.losses import AIR, EMISSIVITY
from calc.trade.heat.metals import METALS, metal_of
from calc.values.figures import Figure
from calc.values.quantities import FreeGasFlow, Length, Mass, Ratio, Temperature, Time
from calc.values.units import to_si

COLD: Temperature = to_si(20.0, "degC")
LIKE = {"bronze": "brass", "nickel": "stainless-steel", "galvanised-steel": "low-carbon-steel"}
"""Metals without hot figures of their own, and the one whose figures they take: common practice."""
TURNS = 30
AGREED: Ratio = 1e-6
"""Mass and time agree when a turn changes the time by less: the error halves in each."""
SUM = "definition heat balance"


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """A lap, or a tube in its socket.

    Attributes:
        process: `brazing` or `soldering`.
        metals: Ids of both metals.
        length: Of the lap along the seam, or the way round the tube, m.
        overlap: m.
        thickness: Of the parts, m.
        target: Heat that the filler is worked at, K.
    """

    process: str
    metals: tuple[str, ...]
    length: Length
    overlap: Length
    thickness: Length
    target: Temperature


@dataclass(frozen=True, slots=True)
class Heated:
    """What one joint takes of a flame.

    Attributes:
        mass: Metal that gets hot at once, kg.
        time: Torch on one joint, filler fed, s; None where the flame never gets there.
    """

    mass: Figure
    time: Figure | None


def _capacity(metal: str) -> Callable[[float], float]:
    if metal == "low-carbon-steel":
        return steel_heat_capacity
    return partial(_constant, metal_of(metal).heat_capacity)


def _constant(capacity: float, _temperature: float) -> float:
    return capacity


def _mass_and_time(joint: Joint, metal: str, length: Length, power: float) -> tuple[Mass, Time] | None:
    """Metal heated at once and the time it takes; the longer the flame stays, the farther heat runs."""
    kind = metal_of(metal)
    to_air = AIR + radiation_coefficient(EMISSIVITY, joint.target, COLD)
    farthest = fin_length(kind.hot_conductivity, joint.thickness, to_air)
    time: Time | None = 0.0
    mass = 0.0
    for _ in range(TURNS):
        assert time is not None
        reach = min(heat_reach(kind.hot_diffusivity, time), farthest)
        mass = lap_mass(length, joint.overlap, reach, joint.thickness, kind.density)
        before, time = time, warm_up_time(
            power=power, mass=mass, area=2.0 * mass / (kind.density * joint.thickness), heat_transfer=AIR, emissivity=EMISSIVITY, start=COLD, target=joint.target, surroundings=COLD,
            heat_capacity=_capacity(metal),
        )  # fmt: skip
        if time is None:
            return None
        if abs(time - before) <= AGREED * time:
            break
    assert time is not None
    return mass, time


def heated(joint: Joint, flow: FreeGasFlow, fuel: str, rules: str) -> Heated:
    """Metal that gets hot with a joint, and how long the torch stays on it.

    Args:
        joint: Its size, its metals and its heat.
        flow: Fuel gas, m³/s.
        fuel: Id of the fuel gas.
        rules: Rule set, for the words.

    Returns:
        Mass and time; of two metals the one that takes longer. The band of the time
        runs from 40 % of the flame's heat in the work and no time to feed, to 20 % and
        a slow hand.
    """
    row = next(row for row in table("joint-heating") if row.process == joint.process)
    at_once = min(joint.length, row.at_once)
    pieces: Ratio = joint.length / at_once
    metals = {LIKE.get(metal, metal) for metal in joint.metals}
    metals = {metal if metal in METALS else "low-carbon-steel" for metal in metals}

    def slowest(share: Ratio) -> tuple[Mass, Time] | None:
        power = power_into_work(flow, printed_heat(fuel), share)
        found = [_mass_and_time(joint, metal, at_once, power) for metal in sorted(metals)]
        if None in found:
            return None
        return max((each for each in found if each), key=lambda each: each[1])

    weak, middle, strong = (
        slowest(share) for share in (HEATING_EFFICIENCY_BAND[0], HEATING_EFFICIENCY, HEATING_EFFICIENCY_BAND[1])
    )
    said = (
        f"{METALS[sorted(metals)[0]].lower()}" if len(metals) == 1 else "the metal that takes longer of the two"
    )
    if middle is None:
        cold = lap_mass(at_once, joint.overlap, joint.overlap, joint.thickness, metal_of(sorted(metals)[0]).density)
        return Heated(Figure(cold, SUM, "computed", basis="The overlap and as much again on each side."), None)
    mass, heat = middle
    least = strong[1] if strong else heat
    most = weak[1] if weak else 3.0 * heat
    piece = (
        f" Heated {plain(pieces)} lengths after one another." if pieces > 1.0 + 1e-9 else ""
    )
    never = "" if weak else " At the weak end of the band it never gets there: a larger tip is the way."
    return Heated(
        Figure(
            mass, SUM, "computed",
            basis=f"Both parts under the overlap, and beyond it what heat runs into meanwhile, {said}; heated at once.",
        ),
        Figure(
            pieces * (heat + row.feed), SUM, "practice", low=pieces * least, high=pieces * (most + row.feed_high),
            basis=f"About {duration(heat)} to bring that metal to {degrees(joint.target, rules)} with 30 % of the flame's heat, 20 to "
            f"40 % the band, as “Warm a part” works it out, and {row.feed:.0f} s to feed the filler, common practice; a "
            f"beginner takes up to {row.feed_high:.0f} s.{piece}{never}",
        ),
    )  # fmt: skip


def plain(number: Ratio) -> str:
    """A number of pieces for a sentence."""
    return f"{number:.1f}".removesuffix(".0")
