"""The state of an outfit: two gas sides and a torch, in pascals of gauge pressure."""

from dataclasses import dataclass, replace

TORCHES = ("equal-pressure", "injector")
GASES = ("oxygen", "fuel")
HOSES = ("off", "at-regulator", "at-torch")
HOLDS = ("air", "mixed", "gas")
"""What a hose holds: air or what crept in, air and gas together, or its own gas alone."""
FIRES = ("", "torch", "hose", "valve", "cylinder")
"""Where it burns that should not, gravest last; `cylinder` also stands for a hot one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GasSide:
    """One gas from its cylinder to its valve on the torch.

    Attributes:
        chained: The cylinder stands upright and chained.
        capped: Its cap is on.
        settled: It stood upright for its time; matters for acetylene only.
        cylinder_open: Its valve is open.
        cylinder_pressure: Gauge pressure in the cylinder [Pa].
        regulator: A regulator is fitted.
        screw_in: The adjusting screw presses on its spring.
        setting: Gauge pressure at which the screw, when in, stands [Pa].
        inlet: Gauge pressure between cylinder valve and regulator [Pa].
        hose: Where the hose is fitted: one of `HOSES`.
        delivery: Gauge pressure in the hose [Pa].
        holds: What the hose holds: one of `HOLDS`.
        torch_valve_open: The valve of the torch is open.
    """

    chained: bool = False
    capped: bool = True
    settled: bool = False
    cylinder_open: bool = False
    cylinder_pressure: float = 0.0
    regulator: bool = False
    screw_in: bool = False
    setting: float = 0.0
    inlet: float = 0.0
    hose: str = "off"
    delivery: float = 0.0
    holds: str = "air"
    torch_valve_open: bool = False

    @property
    def runs(self) -> bool:
        """Gas leaves at the torch."""
        return self.torch_valve_open and self.hose == "at-torch" and self.delivery > 0

    @property
    def empty(self) -> bool:
        """Both gauges show zero."""
        return self.inlet == 0 and self.delivery == 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Outfit:
    """A whole outfit at one moment.

    Attributes:
        torch: One of `TORCHES`.
        oxygen: The oxygen side.
        fuel: The acetylene side.
        tip: A tip is on the torch.
        pulls: The pull of an injector torch was felt.
        brushed: Solution was on every joint under pressure, and none bubbled.
        held: The gauges stood still with both cylinders closed.
        clear_air: No gas that was let out hangs in the air.
        alight: The torch burns at its tip.
        fire: Where else it burns: one of `FIRES`.
    """

    torch: str
    oxygen: GasSide
    fuel: GasSide
    tip: bool = False
    pulls: bool = False
    brushed: bool = False
    held: bool = False
    clear_air: bool = True
    alight: bool = False
    fire: str = ""

    @property
    def sides(self) -> tuple[GasSide, GasSide]:
        """Both gas sides, oxygen first."""
        return (self.oxygen, self.fuel)

    @property
    def torch_closed(self) -> bool:
        """Both torch valves are closed."""
        return not any(side.torch_valve_open for side in self.sides)

    def with_side(self, gas: str, **changed: object) -> "Outfit":
        """The outfit with some attributes of one gas side changed.

        Args:
            gas: One of `GASES`.
            **changed: Attributes of `GasSide` and their new values.
        """
        side = replace(getattr(self, gas), **changed)
        return replace(self, oxygen=side) if gas == "oxygen" else replace(self, fuel=side)


def _settled_side(side: GasSide) -> GasSide:
    """One side when the pressures in it have come to rest."""
    inlet = side.cylinder_pressure if side.cylinder_open and side.regulator else side.inlet
    delivery = side.delivery
    if side.screw_in and inlet > 0 and side.hose != "off":
        delivery = min(side.setting, inlet)
    if side.torch_valve_open and side.hose == "at-torch":
        if not side.cylinder_open and side.screw_in:
            inlet = delivery = 0.0
        elif not side.screw_in:
            delivery = 0.0
    holds = side.holds
    if delivery == 0 and side.delivery > 0:
        holds = "air"
    elif delivery > 0 and side.delivery == 0 and holds == "air":
        holds = "mixed"
    return replace(side, inlet=inlet, delivery=delivery, holds=holds)


def settled(outfit: Outfit) -> Outfit:
    """The outfit when every pressure has come to rest, and the flame with it.

    A hose that comes under pressure holds air and gas together until the gas has run;
    one that was let down counts as holding air, for air and the other gas creep in. A
    flame goes out when its fuel stops.
    """
    oxygen, fuel = _settled_side(outfit.oxygen), _settled_side(outfit.fuel)
    let_out = not outfit.alight and outfit.fuel.delivery > 0 and fuel.delivery == 0
    return replace(
        outfit,
        oxygen=oxygen,
        fuel=fuel,
        alight=outfit.alight and fuel.runs,
        clear_air=outfit.clear_air and not (let_out and fuel.torch_valve_open),
    )
