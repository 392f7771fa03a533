"""Every displayed formula, run on real quantities, gives the unit that it declares."""

import inspect
import math
import typing
from collections.abc import Callable

import pint
import pytest

import calc.values.quantities
from calc.values.quantities import Unit
from site_overrides.build.formulas import displayed, made

PINT = pint.UnitRegistry()
FORMULAS = displayed()


def unit_of(hint: object) -> str | None:
    return next((e.name for e in getattr(hint, "__metadata__", ()) if isinstance(e, Unit)), None)


@pytest.mark.parametrize("formula", FORMULAS.values(), ids=list(FORMULAS))
def test_the_declared_unit_comes_out(
    formula: Callable[..., float], monkeypatch: pytest.MonkeyPatch
) -> None:
    hints = typing.get_type_hints(formula, include_extras=True)
    module = inspect.getmodule(formula)
    for name, plain in vars(math).items():  # math's functions take numbers, pint's quantities do not
        if getattr(module, name, None) is plain and callable(plain):
            root = name == "sqrt"
            stand_in = _root if root else (lambda *a, f=plain: f(*(_bare(x) for x in a)))
            monkeypatch.setattr(module, name, stand_in)
    declared = typing.get_type_hints(calc.values.quantities, include_extras=True) | typing.get_type_hints(
        module, include_extras=True
    )
    for name, hint in declared.items():
        value = getattr(module, name, None)
        if isinstance(value, float) and unit_of(hint):
            monkeypatch.setattr(module, name, PINT.Quantity(value, unit_of(hint)))
    given = {}
    for name, parameter in inspect.signature(formula).parameters.items():
        unit = unit_of(hints[name])
        assert unit is not None, f"{formula.__name__}: {name} has no quantity"
        value = parameter.default if parameter.default is not inspect.Parameter.empty else 0.7
        given[name] = PINT.Quantity(float(getattr(value, "magnitude", value)), unit)
    wanted = unit_of(hints["return"])
    got = formula(**given)
    quantity = got if isinstance(got, PINT.Quantity) else PINT.Quantity(got, "dimensionless")
    assert quantity.check(PINT.Unit(wanted).dimensionality), f"{quantity.units} is not {wanted}"


def _root(value: object) -> object:
    return value**0.5


def _bare(value: object) -> object:
    return value.to("dimensionless").magnitude if isinstance(value, PINT.Quantity) else value


def test_every_displayed_formula_becomes_mathematics() -> None:
    formulas = made()
    assert set(formulas) == set(FORMULAS)
    for name, mathml in formulas.items():
        assert mathml.startswith("<math"), name
        assert "mathrm" not in mathml, name
