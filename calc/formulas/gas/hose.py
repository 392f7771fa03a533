"""Gas along a hose: what is lost between the regulator and the torch, and what it holds."""

from dataclasses import dataclass, replace
from math import inf, isfinite, log, log10, pi, sqrt

from calc.formulas.gas.possible import LIQUEFIED, highest_gauge
from calc.formulas.gas.properties import TWENTY_CELSIUS, gas_molar_mass, gas_viscosity
from calc.formulas.gas.vapour import vapour_compressibility
from calc.values.quantities import (
    ATMOSPHERE,
    FIFTEEN_CELSIUS,
    GAS_CONSTANT,
    FreeGasFlow,
    Length,
    MassFlow,
    Pressure,
    Ratio,
    Temperature,
    Viscosity,
    Volume,
)

ROUGHNESS: Length = 1.5e-6
"""Inside of a smooth rubber hose; from memory."""
SMOOTH_BELOW: Ratio = 2040.0
UNCERTAIN_FROM: Ratio = 1900.0
UNCERTAIN_BELOW: Ratio = 4200.0
"""Reynolds numbers between which a flow may be smooth or swirling; the lowest leaves room
for the viscosity and the flow to be out by a few per cent."""
LEAST_OF_SWIRLING: Ratio = 0.6
"""Least friction then, as a share of that of a swirling flow."""
HOT_AND_DENSE: Ratio = 0.2
"""By how much a liquefied gas above 40 °C may be more viscous near its boiling pressure [coolprop-8]."""
HOT: Temperature = 313.15
BENDS_AND_BORE: Ratio = 0.05
"""How far bends and the true bore may move the drop, as a share of it: our guess."""
HIGHEST: Pressure = 2.6e6


def hose_volume(bore: Length, length: Length) -> Volume:
    """Volume inside a hose.

    Args:
        bore: Inside diameter, m.
        length: Length, m.

    Returns:
        Volume, m³: an ordinary volume, not free gas.

    Valid for:
        A round hose.

    Source:
        [definition]

    Examples:
        >>> round(1000 * hose_volume(0.00635, 7.62), 3)  # 1/4 in by 25 ft, in litres
        0.241
    """
    return pi * bore**2 / 4 * length


def reynolds_number(mass_flow: MassFlow, bore: Length, viscosity: Viscosity) -> Ratio:
    """Reynolds number of a flow in a round hose.

    Args:
        mass_flow: Flow, kg/s.
        bore: Inside diameter, m.
        viscosity: Viscosity of the gas, Pa·s.

    Returns:
        A plain number: small for a smooth flow, large for a swirling one.

    Valid for:
        A round hose.

    Source:
        [definition]
    """
    return 4 * mass_flow / (pi * bore * viscosity)


def friction_factor(reynolds: Ratio, roughness_share: Ratio) -> Ratio:
    """Darcy's friction factor of a round hose.

    A solver: Colebrook's equation repeated until it settles.

    Args:
        reynolds: Reynolds number, above nothing.
        roughness_share: Roughness as a share of the bore.

    Returns:
        A plain number. Below 2040 that of a smooth flow, 64 by the Reynolds number.

    Valid for:
        Any round pipe.

    Source:
        [textbook] of pipe flow, Colebrook.
    """
    return 64 / reynolds if reynolds < SMOOTH_BELOW else _swirling(reynolds, roughness_share)


def _swirling(reynolds: Ratio, roughness_share: Ratio) -> Ratio:
    root = 7.0  # one by the root of the factor
    for _ in range(100):
        renewed = -2 * log10(roughness_share / 3.7 + 2.51 * root / reynolds)
        if abs(renewed - root) < 1e-13 * root:
            break
        root = renewed
    return 1 / root**2


@dataclass(frozen=True, slots=True, kw_only=True)
class HoseFlow:
    """What becomes of a flow along a hose.

    Attributes:
        outlet: Absolute pressure at the torch's end, Pa.
        drop: Pressure lost, Pa.
        least_drop: Least that it may be, Pa: bends, bore, and a smooth flow where the
            flow may be smooth.
        most_drop: Most that it may be, Pa: likewise, a swirling flow where it may swirl;
            all of the pressure where the hose might then not pass the flow.
        reynolds: Reynolds number.
        uncertain: Whether the flow may be smooth or swirling.
    """

    outlet: Pressure
    drop: Pressure
    least_drop: Pressure
    most_drop: Pressure
    reynolds: Ratio
    uncertain: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class HoseLine:
    """A hose and the flow in it, at whatever pressure.

    Attributes:
        sonic: Pressure at which the gas would reach its speed of sound at constant
            temperature, Pa; 0 where nothing flows.
        loss: Friction and fittings, in speed heads.
        least_loss: Least that it may be: bends, bore, a smooth flow where it may be smooth.
        most_loss: Most that it may be.
        reynolds: Reynolds number.
        gas: Id of the gas.
        temperature: Of the gas, K.
        compressibility: Of the gas; None for its own at the mean pressure.
    """

    sonic: Pressure
    loss: Ratio
    least_loss: Ratio
    most_loss: Ratio
    reynolds: Ratio
    gas: str
    temperature: Temperature
    compressibility: Ratio | None = None

    @property
    def uncertain(self) -> bool:
        """Whether the flow may be smooth or swirling."""
        return UNCERTAIN_FROM <= self.reynolds <= UNCERTAIN_BELOW

    @property
    def least(self) -> "HoseLine":
        """The same line at its least loss."""
        return replace(self, loss=self.least_loss)

    @property
    def most(self) -> "HoseLine":
        """The same line at its most loss."""
        return replace(self, loss=self.most_loss)

    def density_share(self, inlet: Pressure, outlet: Pressure) -> Ratio:
        """Compressibility of the gas at the mean pressure of the hose; the gas never taken as liquid.

        Args:
            inlet: Pa absolute.
            outlet: Pa absolute, above 0.
        """
        if self.compressibility is not None:
            return self.compressibility
        mean = 2 / 3 * (inlet + outlet - inlet * outlet / (inlet + outlet))
        most = ATMOSPHERE + highest_gauge(self.gas, self.temperature)
        return vapour_compressibility(self.gas, min(mean, most), self.temperature)

    def leaves(self, inlet: Pressure, outlet: Pressure) -> bool:
        """Whether an inlet pressure leaves at least an outlet pressure when the flow has gone through.

        Args:
            inlet: Pressure at the start of the hose, Pa absolute, above 0.
            outlet: Pressure wanted at its end, Pa absolute, above 0.
        """
        if self.sonic == 0.0:
            return outlet <= inlet
        return self.sonic < inlet and self.drives(inlet, max(outlet, self.sonic))

    def drives(self, inlet: Pressure, outlet: Pressure) -> bool:
        """Whether the drop between two pressures drives at least the flow.

        Args:
            inlet: Pa absolute.
            outlet: Pa absolute, from the sonic pressure to the inlet.
        """
        push = (inlet - outlet) * (inlet + outlet)
        flux = self.sonic * self.sonic * self.density_share(inlet, outlet)
        return push >= flux * (self.loss + 2 * log(inlet / outlet))

    def outlet(self, inlet: Pressure) -> Pressure | None:
        """Pressure at its end, Pa absolute; None where the hose cannot pass the flow.

        Args:
            inlet: Pressure at its start, Pa absolute, above 0.
        """
        if self.sonic == 0:
            return inlet
        if not self.leaves(inlet, self.sonic):
            return None
        low, high = self.sonic, inlet
        while high - low > 1e-14 * inlet:
            middle = (low + high) / 2
            if not low < middle < high:
                break
            if self.drives(inlet, middle):
                low = middle
            else:
                high = middle
        return low


def _losses(reynolds: Ratio, roughness_share: Ratio, lengths: Ratio, fittings: Ratio) -> tuple[Ratio, Ratio, Ratio]:
    """Loss of a hose in speed heads, the least and the most that it may be.

    Args:
        reynolds: Reynolds number.
        roughness_share: Roughness as a share of the bore.
        lengths: Length of the hose in bores.
        fittings: Further losses, in speed heads.
    """
    low = middle = high = friction_factor(reynolds, roughness_share)
    if UNCERTAIN_FROM <= reynolds <= UNCERTAIN_BELOW:
        high = _swirling(reynolds, roughness_share)
        low = min(middle, max(64 / reynolds, LEAST_OF_SWIRLING * high))
    return (
        middle * lengths + fittings,
        (1 - BENDS_AND_BORE) * (low * lengths + fittings),
        (1 + BENDS_AND_BORE) * (high * lengths + fittings),
    )


def hose_line(
    *,
    gas: str,
    flow: FreeGasFlow,
    bore: Length,
    length: Length,
    fittings: Ratio = 0.0,
    temperature: Temperature = TWENTY_CELSIUS,
    roughness: Length = ROUGHNESS,
    compressibility: Ratio | None = None,
) -> HoseLine:
    """What `hose_flow` knows of a hose before it knows the pressure.

    Args:
        gas: As of `hose_flow`.
        flow: Free gas, m³/s at 15 °C and 1 atm, 0 or more.
        bore: Inside diameter, m, above 0 and below 1.
        length: m, above 0.
        fittings: Further losses, in speed heads, 0 or more.
        temperature: Of the gas, K, 243 to 338.
        roughness: Of the wall, m, below a tenth of the bore.
        compressibility: As of `hose_flow`.

    Returns:
        The line: its sonic pressure, loss and Reynolds number.

    Raises:
        ValueError: An argument outside its range, or a gas that is not known.

    Source:
        As of `hose_flow`.
    """
    if not (bore > 0 and length > 0 and fittings >= 0 and roughness >= 0):
        raise ValueError("A hose needs a bore and a length, and losses of nothing or more.")
    if not (isfinite(length + fittings) and roughness < bore / 10 and bore < 1):
        raise ValueError("A hose is no wider than a metre, of some length, and smooth inside.")
    if not 243.149 <= temperature <= 338.151:
        raise ValueError("Flow along a hose is reckoned from −30 °C to 65 °C only.")
    if not 0 <= flow < inf:
        raise ValueError("A flow is nothing or more.")
    molar_mass = gas_molar_mass(gas)
    mass_flow = flow * ATMOSPHERE / (GAS_CONSTANT * FIFTEEN_CELSIUS) * molar_mass
    if mass_flow == 0:
        return HoseLine(sonic=0.0, loss=0.0, least_loss=0.0, most_loss=0.0, reynolds=0.0, gas=gas, temperature=temperature, compressibility=compressibility)
    reynolds = reynolds_number(mass_flow, bore, gas_viscosity(gas, temperature))
    loss, least, most = _losses(reynolds, roughness / bore, length / bore, fittings)
    if gas in LIQUEFIED and temperature > HOT:
        most *= 1 + HOT_AND_DENSE
    return HoseLine(
        sonic=mass_flow / (pi * bore**2 / 4) * sqrt(GAS_CONSTANT * temperature / molar_mass),
        loss=loss,
        least_loss=least,
        most_loss=most,
        reynolds=reynolds,
        gas=gas,
        temperature=temperature,
        compressibility=compressibility,
    )


def hose_flow(
    *,
    gas: str,
    flow: FreeGasFlow,
    inlet: Pressure,
    bore: Length,
    length: Length,
    fittings: Ratio = 0.0,
    temperature: Temperature = TWENTY_CELSIUS,
    roughness: Length = ROUGHNESS,
    compressibility: Ratio | None = None,
) -> HoseFlow:
    """Pressure at the end of a hose while gas flows.

    A solver: halves the span of outlet pressures in the equation of a gas that flows
    at one temperature, P1² − P2² = Z·G²RT/M·[fL/D + K + 2 ln(P1/P2)], Z at the mean pressure.

    Args:
        gas: `oxygen` or one of the six fuels.
        flow: Flow, m³/s at 15 °C and 1 atm.
        inlet: Absolute pressure at the regulator's end, Pa.
        bore: Inside diameter, m.
        length: Length, m.
        fittings: Loss of couplings, valves and arrestors, in speed heads. They often
            cost more than the hose, and their makers' figures are the ones to use.
        temperature: Temperature of the gas, K.
        roughness: Height of the roughness inside, m.
        compressibility: Of the gas, 1 for an ideal one; none for the real gas's own.

    Returns:
        Outlet pressure, drop with its least and most, Reynolds number, and whether the
        flow may be smooth or swirling.

    Valid for:
        −30 °C to 65 °C, up to 26 bar and to the vapour pressure of a liquefied gas.

    Raises:
        ValueError: Outside that range, or the hose cannot pass the flow.

    Source:
        [fluids-1-3] for the equation; roughness from memory.

    Examples:
        >>> hundred = 100 * 0.3048**3 / 3600 * 288.15 / 294.261  # 100 ft³/h
        >>> end = hose_flow(gas="oxygen", flow=hundred, inlet=377_115.0, bore=0.00635, length=15.24)
        >>> round(end.drop / 6894.757, 1)  # psi
        1.2
    """
    line = hose_line(gas=gas, flow=flow, bore=bore, length=length, fittings=fittings, temperature=temperature, roughness=roughness, compressibility=compressibility)
    if not 0 < inlet <= HIGHEST:
        raise ValueError("Flow along a hose is reckoned up to 26 bar only.")
    outlet = line.outlet(inlet)
    if outlet is None:
        raise ValueError("The hose cannot pass that flow: a wider or shorter one, or less gas.")
    return HoseFlow(
        outlet=outlet,
        drop=inlet - outlet,
        least_drop=inlet - (line.least.outlet(inlet) or outlet),
        most_drop=inlet - (line.most.outlet(inlet) or 0.0),
        reynolds=line.reynolds,
        uncertain=line.uncertain,
    )


SOLVERS = (friction_factor, hose_flow)
