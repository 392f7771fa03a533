"""States of an outfit in which a procedure begins or ends, by name."""

from collections.abc import Callable
from dataclasses import replace

from calc.outfit.state import GasSide, Outfit
from calc.values.units import to_si

CYLINDER = {"oxygen": to_si(2000, "psi"), "fuel": to_si(200, "psi")}
"""Gauge pressures of a used pair of cylinders [Pa]; common practice, no source."""
SETTING = {"oxygen": to_si(5, "psi"), "fuel": to_si(5, "psi")}
"""Delivery pressures for thin sheet on an equal-pressure torch [Pa]; common practice, no source."""


def _sides(base: GasSide) -> tuple[GasSide, GasSide]:
    """Oxygen and fuel side, alike but for their pressures."""
    oxygen, fuel = (
        replace(base, cylinder_pressure=CYLINDER[gas], setting=SETTING[gas]) for gas in ("oxygen", "fuel")
    )
    return replace(oxygen, settled=False), fuel


def stored(torch: str) -> Outfit:
    """In the cage: chained, capped, everything off."""
    oxygen, fuel = _sides(GasSide(chained=True))
    return Outfit(torch=torch, oxygen=oxygen, fuel=fuel)


def standing(torch: str) -> Outfit:
    """At the bench: chained, capped, nothing fitted; the acetylene has stood for its time."""
    oxygen, fuel = _sides(GasSide(chained=True, settled=True))
    return Outfit(torch=torch, oxygen=oxygen, fuel=fuel)


def let_down(torch: str) -> Outfit:
    """Fitted and found tight before; cylinders closed, gauges at zero, screws out."""
    base = GasSide(chained=True, capped=False, settled=True, regulator=True, hose="at-torch")
    oxygen, fuel = _sides(base)
    pulls = torch == "injector"
    return Outfit(torch=torch, oxygen=oxygen, fuel=fuel, tip=True, pulls=pulls, brushed=True, held=True)


def _pressed(torch: str, holds: str) -> Outfit:
    outfit = let_down(torch)
    for gas in ("oxygen", "fuel"):
        outfit = outfit.with_side(
            gas, cylinder_open=True, screw_in=True, inlet=CYLINDER[gas], delivery=SETTING[gas], holds=holds
        )
    return outfit


def tested(torch: str) -> Outfit:
    """Found tight; cylinders open, pressures set, torch valves closed, air still in the hoses."""
    return _pressed(torch, "mixed")


def purged(torch: str) -> Outfit:
    """As tested, and each hose holds its own gas alone."""
    return _pressed(torch, "gas")


def alight(torch: str) -> Outfit:
    """A flame burns at the tip."""
    return replace(popped(torch), alight=True)


def popped(torch: str) -> Outfit:
    """A pop has blown the flame out; both torch valves are still open."""
    outfit = purged(torch)
    for gas in ("oxygen", "fuel"):
        outfit = outfit.with_side(gas, torch_valve_open=True)
    return outfit


def closed(torch: str) -> Outfit:
    """Flame out, torch and cylinders closed, gas still in the hoses."""
    outfit = purged(torch)
    return outfit.with_side("oxygen", cylinder_open=False).with_side("fuel", cylinder_open=False)


def squealing(torch: str) -> Outfit:
    """It burns inside the torch."""
    return replace(alight(torch), fire="torch")


def hose_burning(torch: str) -> Outfit:
    """It burns at a hose."""
    return replace(alight(torch), fire="hose")


def valve_burning(torch: str) -> Outfit:
    """It burns at the valve of the fuel cylinder."""
    return replace(closed(torch).with_side("fuel", cylinder_open=True), fire="valve")


def hot(torch: str) -> Outfit:
    """A cylinder is hot."""
    return replace(alight(torch), fire="cylinder")


NAMED: dict[str, Callable[[str], Outfit]] = {
    "stored": stored, "standing": standing, "let-down": let_down, "tested": tested, "purged": purged,
    "alight": alight, "popped": popped, "closed": closed, "squealing": squealing,
    "hose-burning": hose_burning, "valve-burning": valve_burning, "hot": hot,
}  # fmt: skip
"""Every state that a procedure may name."""


def named(name: str, torch: str) -> Outfit:
    """A state by its name.

    Args:
        name: Key of `NAMED`.
        torch: `equal-pressure` or `injector`.

    Examples:
        >>> named("purged", "injector").fuel.holds
        'gas'
    """
    return NAMED[name](torch)
