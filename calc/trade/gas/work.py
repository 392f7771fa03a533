"""Kinds of work at the benches, and the gas that they take."""

from collections.abc import Sequence
from dataclasses import dataclass

from calc.formulas.gas.supply import gas_of_use, oxygen_for_fuel
from calc.values.quantities import FreeGas, FreeGasFlow, Ratio, Time


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """One kind of work in a week.

    Attributes:
        name: What a reader calls it.
        benches: Torches that do it.
        fuel_flow: Fuel gas that one takes while it burns, m³/s.
        oxygen_flow: Oxygen that one takes then, cutting oxygen with it, m³/s.
        burning: Share of the time that the flame burns.
        time: Time at it in a week, on the clock, s.
    """

    name: str
    benches: float
    fuel_flow: FreeGasFlow
    oxygen_flow: FreeGasFlow
    burning: Ratio
    time: Time

    def flow(self, gas: str) -> FreeGasFlow:
        """Of all its torches burning, m³/s; `gas` is `fuel` or `oxygen`."""
        return self.benches * (self.fuel_flow if gas == "fuel" else self.oxygen_flow)

    def week(self, gas: str) -> FreeGas:
        """Burnt in a week, m³."""
        one = self.fuel_flow if gas == "fuel" else self.oxygen_flow
        return gas_of_use(one, self.time * self.burning, self.benches)


def kind(
    *,
    name: str, benches: float, fuel_flow: FreeGasFlow, burning: Ratio, time: Time, ratio: Ratio,
    cutting_oxygen: FreeGasFlow = 0.0,
) -> Kind:  # fmt: skip
    """A kind of work whose oxygen follows from its fuel.

    Args:
        name: What a reader calls it.
        benches: Torches that do it.
        fuel_flow: Fuel gas of one torch, m³/s.
        burning: Share of the time that the flame burns.
        time: Time at it in a week, s.
        ratio: Oxygen for one of fuel.
        cutting_oxygen: On top, while it burns, m³/s.
    """
    oxygen = oxygen_for_fuel(fuel_flow, ratio) + cutting_oxygen
    return Kind(
        name=name, benches=benches, fuel_flow=fuel_flow, oxygen_flow=oxygen, burning=burning, time=time
    )


@dataclass(frozen=True, slots=True)
class Lesson:
    """One lesson: who works when, and what is let out at its start.

    Attributes:
        kinds: The kinds of work that anyone does.
        sessions: Lessons in a week.
        at_once: Whether all kinds go on together, else one after the other.
        vented: Each gas that each torch lets out at purge and bleed, m³.
    """

    kinds: Sequence[Kind]
    sessions: float
    at_once: bool
    vented: FreeGas

    @property
    def torches(self) -> float:
        """Torches lit in a lesson."""
        counts = [kind.benches for kind in self.kinds]
        return sum(counts) if self.at_once else max(counts)

    @property
    def length(self) -> Time:
        """On the clock, s."""
        times = [kind.time / self.sessions for kind in self.kinds]
        return max(times) if self.at_once else sum(times)

    def peak(self, gas: str) -> FreeGasFlow:
        """With every torch of the moment burning, m³/s."""
        flows = [kind.flow(gas) for kind in self.kinds]
        return sum(flows) if self.at_once else max(flows)

    @property
    def let_out(self) -> FreeGas:
        """Of each gas in a lesson, m³."""
        return self.torches * self.vented

    def week(self, gas: str) -> FreeGas:
        """Burnt and let out in a week, m³."""
        return sum(kind.week(gas) for kind in self.kinds) + self.let_out * self.sessions

    def used(self, gas: str, time: Time) -> FreeGas:
        """Used from the start of a lesson until a time, m³; what is let out goes first."""
        start, used = 0.0, self.let_out if time > 0 else 0.0
        for kind in self.kinds:
            lasts = kind.time / self.sessions
            worked = min(max(time - start, 0.0), lasts)
            used += kind.flow(gas) * kind.burning * worked
            start += 0.0 if self.at_once else lasts
        return used
