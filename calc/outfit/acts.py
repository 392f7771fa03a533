"""What each act needs and does: `act(outfit, name)` gives the next state, or a named error."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from typing import Any

from calc.data.tables import table
from calc.outfit import breaches as breach
from calc.outfit.state import GASES, Outfit, settled
from calc.values.units import to_si

TABLE = "outfit-acts"

Handler = Callable[[Outfit, str], Outfit]

_NEEDS_NO_GAS_BURNING = "put the flame out first"


@cache
def rows() -> dict[str, Any]:
    """Every row of the table of acts by its id."""
    return {row.id: row for row in table(TABLE)}


@cache
def acetylene_limit() -> float:
    """Most that an acetylene delivery gauge may show anywhere [Pa], by the table of limits."""
    return max(
        to_si(row.number, row.unit)
        for row in table("acetylene-limits")
        if row.topic == "gauge" and row.standing == "followed"
    )


def _demand(holds: bool, error: type[breach.BreachError], why: str) -> None:
    if not holds:
        raise error(why)


def _side(outfit: Outfit, gas: str) -> Any:
    return getattr(outfit, gas)


def _not_alight(outfit: Outfit) -> None:
    _demand(not outfit.alight and not outfit.fire, breach.AlightError, _NEEDS_NO_GAS_BURNING)


def _stand(outfit: Outfit, gas: str) -> Outfit:
    return outfit.with_side(gas, chained=True)


def _uncap(outfit: Outfit, gas: str) -> Outfit:
    _demand(_side(outfit, gas).chained, breach.LooseCylinderError, f"chain the {gas} cylinder first")
    return outfit.with_side(gas, capped=False)


def _cap(outfit: Outfit, gas: str) -> Outfit:
    side = _side(outfit, gas)
    _demand(not side.regulator, breach.CapError, f"the {gas} regulator is in the way of the cap")
    _demand(not side.cylinder_open, breach.CapError, f"close the {gas} cylinder first")
    return outfit.with_side(gas, capped=True)


def _move(outfit: Outfit, gas: str) -> Outfit:
    side = _side(outfit, gas)
    _demand(outfit.fire != "cylinder", breach.HotCylinderError, "a hot cylinder is not moved")
    _demand(
        side.capped and not side.regulator and not side.cylinder_open,
        breach.CapError, f"the {gas} cylinder moves closed, without regulator and under its cap",
    )  # fmt: skip
    return outfit.with_side(gas, chained=False, settled=False)


def _let_stand(outfit: Outfit, _: str) -> Outfit:
    _demand(outfit.fuel.chained, breach.LooseCylinderError, "chain the acetylene cylinder first")
    return outfit.with_side("fuel", settled=True)


def _bare(outfit: Outfit, gas: str) -> None:
    side = _side(outfit, gas)
    _demand(side.chained, breach.LooseCylinderError, f"chain the {gas} cylinder first")
    _demand(not side.capped, breach.CapError, f"the cap of the {gas} cylinder is on")
    _demand(not side.regulator, breach.NoRegulatorError, f"the {gas} regulator is on already")


def _crack(outfit: Outfit, gas: str) -> Outfit:
    _bare(outfit, gas)
    _not_alight(outfit)
    return outfit


def _fit_regulator(outfit: Outfit, gas: str) -> Outfit:
    # Where its screw stands is not known until it is turned out.
    _bare(outfit, gas)
    return replace(outfit.with_side(gas, regulator=True, screw_in=True), brushed=False, held=False)


def _take_off_regulator(outfit: Outfit, gas: str) -> Outfit:
    side = _side(outfit, gas)
    _demand(side.regulator, breach.NoRegulatorError, f"there is no {gas} regulator")
    _demand(not side.cylinder_open, breach.UnderPressureError, f"close the {gas} cylinder first")
    _demand(side.empty, breach.UnderPressureError, f"let the {gas} side down first")
    return replace(outfit.with_side(gas, regulator=False), brushed=False, held=False)


def _fit_at_regulator(outfit: Outfit, gas: str) -> Outfit:
    _demand(_side(outfit, gas).delivery == 0, breach.UnderPressureError, f"the {gas} hose is under pressure")
    return replace(
        outfit.with_side(gas, hose="at-regulator", holds="air"), brushed=False, held=False
    )


def _fit_at_torch(outfit: Outfit, gas: str) -> Outfit:
    side = _side(outfit, gas)
    _demand(side.hose != "off", breach.OpenEndError, f"the {gas} hose is not on its regulator")
    _demand(side.delivery == 0, breach.UnderPressureError, f"the {gas} hose is under pressure")
    needs_pull = outfit.torch == "injector" and gas == "fuel"
    _demand(outfit.pulls or not needs_pull, breach.PullNotFeltError, "feel the pull before the fuel hose goes on")
    return replace(outfit.with_side(gas, hose="at-torch"), brushed=False, held=False)


def _take_off_hose(outfit: Outfit, gas: str) -> Outfit:
    _demand(_side(outfit, gas).delivery == 0, breach.UnderPressureError, f"the {gas} hose is under pressure")
    _not_alight(outfit)
    pulls = outfit.pulls and gas != "fuel"
    return replace(outfit.with_side(gas, hose="off", holds="air"), brushed=False, held=False, pulls=pulls)


def _tip(outfit: Outfit, on: bool) -> Outfit:
    _not_alight(outfit)
    _demand(outfit.torch_closed, breach.UnderPressureError, "close both torch valves first")
    return replace(outfit, tip=on)


def _fit_tip(outfit: Outfit, _: str) -> Outfit:
    return _tip(outfit, True)


def _take_off_tip(outfit: Outfit, _: str) -> Outfit:
    return _tip(outfit, False)


def _turn_out(outfit: Outfit, gas: str) -> Outfit:
    _demand(outfit.fire != "cylinder", breach.HotCylinderError, "a cylinder is hot: leave")
    _demand(not outfit.alight, breach.StarvedFlameError, _NEEDS_NO_GAS_BURNING)
    return outfit.with_side(gas, screw_in=False)


def _turn_in(outfit: Outfit, gas: str, pressure: float | None = None) -> Outfit:
    side = _side(outfit, gas)
    _demand(side.regulator, breach.NoRegulatorError, f"there is no {gas} regulator")
    _demand(side.cylinder_open, breach.NoGasError, f"the {gas} cylinder is closed: no gauge shows what the screw does")
    _demand(side.hose == "at-torch", breach.OpenEndError, f"the {gas} hose is open at its end")
    setting = side.setting if pressure is None else pressure
    if gas == "fuel":
        _demand(setting <= acetylene_limit(), breach.PressureLimitError, "acetylene is set above its limit")
    return outfit.with_side(gas, screw_in=True, setting=setting)


def _open_cylinder(outfit: Outfit, gas: str) -> Outfit:
    side = _side(outfit, gas)
    if side.cylinder_open:
        return outfit
    _demand(outfit.fire != "cylinder", breach.HotCylinderError, "a cylinder is hot: leave")
    _demand(side.chained, breach.LooseCylinderError, f"chain the {gas} cylinder first")
    _demand(side.regulator, breach.NoRegulatorError, f"there is no {gas} regulator")
    _demand(not side.screw_in, breach.ScrewInError, f"turn the {gas} screw out first")
    _demand(not side.torch_valve_open, breach.OpenEndError, f"close the {gas} valve of the torch first")
    _demand(gas != "fuel" or side.settled, breach.AcetyleneLayError, "let the acetylene stand first")
    _not_alight(outfit)
    return outfit.with_side(gas, cylinder_open=True)


def _close_cylinder(outfit: Outfit, gas: str) -> Outfit:
    _demand(outfit.fire != "cylinder", breach.HotCylinderError, "a cylinder is hot: leave its valve")
    fed = outfit.alight and not outfit.fire
    _demand(not fed, breach.StarvedFlameError, "put the flame out at the torch first")
    closed = outfit.with_side(gas, cylinder_open=False)
    if outfit.fire in ("hose", "valve") and gas == "fuel":
        # What the fuel fed goes out, and what is left in the hose runs out with it.
        closed = replace(closed.with_side("fuel", inlet=0.0, delivery=0.0, holds="air"), fire="", alight=False)
    return closed


def _open_torch_valve(outfit: Outfit, gas: str) -> Outfit:
    _demand(outfit.tip, breach.OpenEndError, "fit a tip first")
    return outfit.with_side(gas, torch_valve_open=True)


def _close_torch_valve(outfit: Outfit, gas: str) -> Outfit:
    _demand(outfit.fire != "cylinder", breach.HotCylinderError, "a cylinder is hot: leave")
    closed = outfit.with_side(gas, torch_valve_open=False)
    return replace(closed, fire="") if outfit.fire == "torch" and closed.torch_closed else closed


def _let_run(outfit: Outfit, gas: str) -> Outfit:
    side, other = _side(outfit, gas), _side(outfit, GASES[gas == "oxygen"])
    _not_alight(outfit)
    _demand(side.torch_valve_open, breach.NoGasError, f"the {gas} valve of the torch is closed")
    _demand(side.cylinder_open and side.screw_in, breach.NoGasError, f"no {gas} comes: its cylinder is closed or its screw is out")
    _demand(not other.torch_valve_open, breach.BothGasesError, "close the valve of the other gas first")
    return replace(outfit.with_side(gas, holds="gas"), clear_air=outfit.clear_air and gas != "fuel")


def _feel_pull(outfit: Outfit, _: str) -> Outfit:
    _demand(outfit.torch == "injector", breach.PullNotFeltError, "an equal-pressure torch has no pull")
    _demand(outfit.oxygen.runs, breach.NoGasError, "no oxygen runs")
    _demand(
        outfit.fuel.torch_valve_open and outfit.fuel.hose != "at-torch",
        breach.PullNotFeltError, "the fuel inlet of the torch is shut off from the fingertip",
    )  # fmt: skip
    return replace(outfit, pulls=True)


def _pressed(outfit: Outfit) -> None:
    _not_alight(outfit)
    _demand(outfit.torch_closed, breach.NoGasError, "close both torch valves first")
    _demand(all(side.delivery > 0 for side in outfit.sides), breach.NoGasError, "a hose holds no pressure")


def _brush(outfit: Outfit, _: str) -> Outfit:
    _pressed(outfit)
    _demand(all(side.cylinder_open for side in outfit.sides), breach.NoGasError, "a cylinder is closed")
    return replace(outfit, brushed=True)


def _hold(outfit: Outfit, _: str) -> Outfit:
    _pressed(outfit)
    _demand(outfit.brushed, breach.NotTestedError, "brush the joints first")
    _demand(not any(side.cylinder_open for side in outfit.sides), breach.NoGasError, "close both cylinders first")
    return replace(outfit, held=True)


def _clear(outfit: Outfit, _: str) -> Outfit:
    _not_alight(outfit)
    _demand(outfit.torch_closed, breach.GasInAirError, "close both torch valves first")
    return replace(outfit, clear_air=True)


def _light(outfit: Outfit, _: str) -> Outfit:
    _demand(outfit.tip, breach.OpenEndError, "fit a tip first")
    _demand(outfit.brushed and outfit.held, breach.NotTestedError, "the joints were not found tight")
    for gas in GASES:
        _demand(_side(outfit, gas).holds == "gas", breach.NotPurgedError, f"the {gas} hose was not purged")
    _demand(outfit.clear_air, breach.GasInAirError, "gas that was let out still hangs in the air")
    _demand(outfit.fuel.runs, breach.NotAlightError, "no fuel runs")
    _demand(not outfit.fire, breach.AlightError, "it burns elsewhere")
    return replace(outfit, alight=True)


def _set_flame(outfit: Outfit, _: str) -> Outfit:
    _demand(outfit.alight, breach.NotAlightError, "nothing is alight")
    _demand(outfit.oxygen.runs, breach.NotAlightError, "the oxygen valve of the torch is closed")
    return outfit


def _leave(outfit: Outfit, _: str) -> Outfit:
    left = breach.LeftUnderPressureError
    _demand(not outfit.alight, left, "a flame burns")
    for gas in GASES:
        side = _side(outfit, gas)
        _demand(not side.cylinder_open, left, f"the {gas} cylinder is open")
        _demand(side.empty, left, f"the {gas} gauges are not at zero")
        _demand(not (side.regulator and side.screw_in), left, f"the {gas} screw is in")
        _demand(not side.torch_valve_open, left, f"the {gas} valve of the torch is open")
    return outfit


_OF_A_GAS: dict[str, Handler] = {
    "stand {}-cylinder": _stand, "uncap {}-cylinder": _uncap, "cap {}-cylinder": _cap, "move {}-cylinder": _move,
    "crack {}-cylinder": _crack, "fit {}-regulator": _fit_regulator, "take-off {}-regulator": _take_off_regulator,
    "fit {}-hose-at-regulator": _fit_at_regulator, "fit {}-hose-at-torch": _fit_at_torch,
    "take-off {}-hose": _take_off_hose, "turn-out {}-screw": _turn_out, "turn-in {}-screw": _turn_in,
    "open {}-cylinder": _open_cylinder, "close {}-cylinder": _close_cylinder,
    "open {}-torch-valve": _open_torch_valve, "close {}-torch-valve": _close_torch_valve, "let-run {}": _let_run,
}  # fmt: skip
_OF_ALL: dict[str, Handler] = {
    "let acetylene-stand": _let_stand, "fit tip": _fit_tip, "take-off tip": _take_off_tip, "feel pull": _feel_pull,
    "brush joints": _brush, "hold gauges": _hold, "clear air": _clear, "light torch": _light,
    "set flame": _set_flame, "leave outfit": _leave,
}  # fmt: skip

ACTS: dict[str, tuple[Handler, str]] = {
    name.format(gas): (handler, gas) for name, handler in _OF_A_GAS.items() for gas in GASES
} | {name: (handler, "") for name, handler in _OF_ALL.items()}
"""Every act by name: what it does, and its gas where it has one."""


def _unlit(outfit: Outfit) -> bool:
    """Both gases run and nothing burns."""
    return outfit.oxygen.runs and outfit.fuel.runs and not outfit.alight


def act(outfit: Outfit, name: str, pressure: float | None = None) -> Outfit:
    """The outfit after one act.

    Args:
        outfit: The state before.
        name: Id of a row of the table of acts.
        pressure: For `turn-in`: gauge pressure to set [Pa]; without it the side's own setting.

    Returns:
        The state after, with every pressure at rest.

    Raises:
        BreachError: The state does not allow it; the subclass names the rule.

    Examples:
        >>> from calc.outfit.named import named
        >>> act(named("closed", "injector"), "open oxygen-cylinder")
        Traceback (most recent call last):
        calc.outfit.breaches.ScrewInError: open oxygen-cylinder: turn the oxygen screw out first
    """
    if name not in ACTS:
        raise breach.UnknownActError(f"no act is named {name!r}")
    handler, gas = ACTS[name]
    try:
        if _unlit(outfit) and not name.startswith(("light", "close")):
            raise breach.BothGasesError("both gases run unlit: light at once, or close a valve")
        if outfit.fuel.runs and not outfit.alight and name.startswith(("open oxygen-torch", "brush", "clear")):
            raise breach.BothGasesError("the fuel gas runs unlit: light at once, or close its valve")
        after = _turn_in(outfit, gas, pressure) if handler is _turn_in else handler(outfit, gas)
    except breach.BreachError as error:
        raise type(error)(f"{name}: {error}") from None
    after = settled(after)
    let_out = outfit.fuel.runs and not outfit.alight and not after.alight
    return replace(after, clear_air=False) if let_out else after
