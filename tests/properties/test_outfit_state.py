"""The state of an outfit: gas goes where valves let it, and each forbidden act is refused by name."""

from dataclasses import replace

import pytest

from calc.outfit import ACTS, NAMED, TORCHES, BreachError, Outfit, act, named
from calc.outfit import breaches as breach
from calc.outfit.acts import acetylene_limit, rows
from calc.values.units import to_si

PSI = to_si(1, "psi")
torches = pytest.mark.parametrize("torch", TORCHES)


def run(outfit: Outfit, *names: str) -> Outfit:
    for name in names:
        outfit = act(outfit, name)
    return outfit


def test_every_act_is_a_row_of_the_table_and_every_row_an_act() -> None:
    assert set(ACTS) == set(rows())


# An act, the state in which it is forbidden, and what is broken. The rules: 29 CFR 1926.350 (a)(7),
# (d)(1), 1910.253 (a)(2), (b)(5)(ii)(D), (b)(5)(iii)(D); NAVEDTRA 14119 step 5 (screws out before a
# cylinder is opened); purge each line before lighting (MSHA, told in Safety and Health, August 2009).
FORBIDDEN = [
    ("stored", "open oxygen-cylinder", breach.NoRegulatorError),
    ("stored", "fit oxygen-regulator", breach.CapError),
    ("stored", "turn-in fuel-screw", breach.NoRegulatorError),
    ("stored", "take-off oxygen-regulator", breach.NoRegulatorError),
    ("stored", "fit oxygen-hose-at-torch", breach.OpenEndError),
    ("stored", "open fuel-torch-valve", breach.OpenEndError),
    ("stored", "light torch", breach.OpenEndError),
    ("let-down", "fit oxygen-regulator", breach.NoRegulatorError),
    ("closed", "open oxygen-cylinder", breach.ScrewInError),
    ("closed", "open fuel-cylinder", breach.ScrewInError),
    ("closed", "turn-in fuel-screw", breach.NoGasError),
    ("closed", "take-off oxygen-regulator", breach.UnderPressureError),
    ("closed", "take-off fuel-hose", breach.UnderPressureError),
    ("closed", "leave outfit", breach.LeftUnderPressureError),
    ("tested", "leave outfit", breach.LeftUnderPressureError),
    ("alight", "leave outfit", breach.LeftUnderPressureError),
    ("tested", "take-off fuel-regulator", breach.UnderPressureError),
    ("tested", "move fuel-cylinder", breach.CapError),
    ("tested", "cap fuel-cylinder", breach.CapError),
    ("tested", "crack fuel-cylinder", breach.NoRegulatorError),
    ("tested", "hold gauges", breach.NoGasError),
    ("tested", "let-run fuel", breach.NoGasError),
    ("tested", "fit fuel-hose-at-regulator", breach.UnderPressureError),
    ("tested", "fit oxygen-hose-at-torch", breach.UnderPressureError),
    ("closed", "brush joints", breach.NoGasError),
    ("squealing", "let-run fuel", breach.AlightError),
    ("popped", "turn-out oxygen-screw", breach.BothGasesError),
    ("popped", "take-off tip", breach.BothGasesError),
    ("hot", "move fuel-cylinder", breach.HotCylinderError),
    ("let-down", "brush joints", breach.NoGasError),
    ("let-down", "light torch", breach.NotPurgedError),
    ("purged", "light torch", breach.NotAlightError),
    ("purged", "set flame", breach.NotAlightError),
    ("alight", "close fuel-cylinder", breach.StarvedFlameError),
    ("alight", "turn-out oxygen-screw", breach.StarvedFlameError),
    ("alight", "take-off tip", breach.AlightError),
    ("alight", "clear air", breach.AlightError),
    ("popped", "open fuel-cylinder", breach.BothGasesError),
    ("hot", "close fuel-cylinder", breach.HotCylinderError),
    ("hot", "close fuel-torch-valve", breach.HotCylinderError),
    ("hot", "turn-out fuel-screw", breach.HotCylinderError),
]


@torches
@pytest.mark.parametrize(("state", "name", "error"), FORBIDDEN)
def test_what_is_forbidden_is_refused_by_name(
    torch: str, state: str, name: str, error: type[BreachError]
) -> None:
    with pytest.raises(error) as found:
        act(named(state, torch), name)
    assert type(found.value) is error
    assert str(found.value).startswith(f"{name}: ")


@torches
def test_an_act_that_no_table_has_is_refused(torch: str) -> None:
    with pytest.raises(breach.UnknownActError):
        act(named("stored", torch), "open window")


@torches
def test_a_purge_with_the_cylinders_closed_purges_nothing(torch: str) -> None:
    outfit = act(named("closed", torch), "open fuel-torch-valve")
    assert (outfit.fuel.inlet, outfit.fuel.delivery) == (0, 0)
    with pytest.raises(breach.NoGasError):
        act(outfit, "let-run fuel")


@torches
@pytest.mark.parametrize("first", ["oxygen", "fuel"])
def test_both_gases_are_never_purged_at_once(torch: str, first: str) -> None:
    other = {"oxygen": "fuel", "fuel": "oxygen"}[first]
    outfit = act(named("tested", torch), f"open {first}-torch-valve")
    with pytest.raises(breach.BothGasesError):
        run(outfit, f"open {other}-torch-valve", f"let-run {other}")


@torches
@pytest.mark.parametrize("left_out", ["oxygen", "fuel"])
def test_a_torch_is_not_lit_while_one_hose_was_not_purged(torch: str, left_out: str) -> None:
    outfit = named("purged", torch).with_side(left_out, holds="mixed")
    with pytest.raises(breach.NotPurgedError):
        run(outfit, "open fuel-torch-valve", "light torch")


@torches
@pytest.mark.parametrize("left_out", ["brushed", "held"])
def test_a_torch_is_not_lit_before_the_leak_test(torch: str, left_out: str) -> None:
    outfit = replace(named("purged", torch), **{left_out: False})
    with pytest.raises(breach.NotTestedError):
        run(outfit, "open fuel-torch-valve", "light torch")


@torches
def test_a_torch_is_not_lit_in_the_gas_of_its_purge(torch: str) -> None:
    purge = ("open fuel-torch-valve", "let-run fuel", "close fuel-torch-valve")
    outfit = run(named("purged", torch), *purge)
    assert not outfit.clear_air
    with pytest.raises(breach.GasInAirError):
        run(outfit, "open fuel-torch-valve", "light torch")
    assert run(outfit, "clear air", "open fuel-torch-valve", "light torch").alight


@pytest.mark.parametrize("gauge", [15, 15.1, 21.7])
def test_acetylene_up_to_its_limit_can_be_set(gauge: float) -> None:
    """29 CFR 1910.253 (a)(2): 15 psi; ISO 3821 scope: 1.5 bar, which is 21.76 psi."""
    outfit = act(named("tested", "injector"), "turn-in fuel-screw", pressure=gauge * PSI)
    assert outfit.fuel.delivery == pytest.approx(gauge * PSI)


@pytest.mark.parametrize("gauge", [21.8, 29.4, 100])
def test_acetylene_above_every_limit_cannot_be_set(gauge: float) -> None:
    assert acetylene_limit() == pytest.approx(1.5e5)
    with pytest.raises(breach.PressureLimitError):
        act(named("tested", "injector"), "turn-in fuel-screw", pressure=gauge * PSI)


def test_the_fuel_hose_goes_on_an_injector_torch_only_after_the_pull() -> None:
    fuel_off = {"hose": "at-regulator", "torch_valve_open": False}
    outfit = replace(named("let-down", "injector").with_side("fuel", **fuel_off), pulls=False)
    with pytest.raises(breach.PullNotFeltError):
        act(outfit, "fit fuel-hose-at-torch")
    with pytest.raises(breach.NoGasError):
        act(outfit, "feel pull")
    felt = run(
        outfit, "turn-out oxygen-screw", "open oxygen-cylinder", "turn-in oxygen-screw",
        "open fuel-torch-valve", "open oxygen-torch-valve", "feel pull",
        "close fuel-torch-valve", "close oxygen-torch-valve", "fit fuel-hose-at-torch",
    )  # fmt: skip
    assert felt.pulls
    assert felt.fuel.hose == "at-torch"


def test_an_equal_pressure_torch_has_no_pull() -> None:
    with pytest.raises(breach.PullNotFeltError):
        act(named("let-down", "equal-pressure"), "feel pull")


def test_acetylene_that_lay_is_not_opened() -> None:
    outfit = named("let-down", "injector").with_side("fuel", settled=False)
    with pytest.raises(breach.AcetyleneLayError):
        act(outfit, "open fuel-cylinder")


@pytest.mark.parametrize("gas", ["oxygen", "fuel"])
def test_a_loose_cylinder_is_not_uncapped(gas: str) -> None:
    outfit = act(named("stored", "injector"), f"move {gas}-cylinder")
    with pytest.raises(breach.LooseCylinderError):
        act(outfit, f"uncap {gas}-cylinder")


def test_gas_is_not_let_into_a_hose_with_an_open_end() -> None:
    outfit = named("purged", "equal-pressure").with_side("fuel", hose="at-regulator")
    with pytest.raises(breach.OpenEndError):
        act(outfit, "turn-in fuel-screw")


@torches
def test_pressure_goes_where_the_valves_let_it(torch: str) -> None:
    """By hand: cylinder 2,000 psi, setting 5 psi."""
    outfit = act(named("let-down", torch), "open oxygen-cylinder")
    assert outfit.oxygen.inlet == pytest.approx(2000 * PSI)
    assert outfit.oxygen.delivery == 0
    outfit = act(outfit, "turn-in oxygen-screw")
    assert outfit.oxygen.delivery == pytest.approx(5 * PSI)
    assert outfit.oxygen.holds == "mixed"
    outfit = act(outfit, "close oxygen-cylinder")
    assert outfit.oxygen.inlet == pytest.approx(2000 * PSI)
    outfit = run(outfit, "open oxygen-torch-valve", "close oxygen-torch-valve")
    assert outfit.oxygen.empty
    assert outfit.oxygen.holds == "air"


@torches
def test_with_the_screw_out_only_the_hose_lets_down(torch: str) -> None:
    outfit = run(named("closed", torch), "turn-out oxygen-screw", "open oxygen-torch-valve")
    assert outfit.oxygen.delivery == 0
    assert outfit.oxygen.inlet == pytest.approx(2000 * PSI)
    with pytest.raises(breach.UnderPressureError):
        run(outfit, "close oxygen-torch-valve", "take-off oxygen-regulator")


@torches
def test_the_flame_goes_out_with_the_fuel_and_not_with_the_oxygen(torch: str) -> None:
    alight = named("alight", torch)
    assert not act(alight, "close fuel-torch-valve").alight
    assert act(alight, "close oxygen-torch-valve").alight


@torches
def test_fire_inside_the_torch_ends_when_both_its_valves_are_closed(torch: str) -> None:
    outfit = act(named("squealing", torch), "close oxygen-torch-valve")
    assert outfit.fire == "torch"
    assert act(outfit, "close fuel-torch-valve").fire == ""


@torches
@pytest.mark.parametrize("state", NAMED)
def test_every_act_in_every_state_answers_or_names_its_breach(torch: str, state: str) -> None:
    before = named(state, torch)
    refused, possible = {}, {}
    for name in ACTS:
        try:
            possible[name] = act(before, name)
        except BreachError as error:
            refused[name] = str(error)
    assert before == named(state, torch), "the state before is left as it was"
    assert all(said.startswith(f"{name}: ") for name, said in refused.items())
    for name, after in possible.items():
        for side in after.sides:
            assert 0 <= side.delivery <= max(side.setting, side.inlet), name
            assert side.delivery == 0 or side.holds != "air", name
            assert side.inlet in (0, side.cylinder_pressure), name
