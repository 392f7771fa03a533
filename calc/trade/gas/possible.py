"""States of gas that cannot be, refused with the reason and with what will do."""

from calc.answer.sentences import degrees
from calc.ask.errors import InputError
from calc.formulas.gas.possible import GAUGE_ERROR, LIQUEFIED, coldest_for, full_gauge_at, highest_gauge
from calc.show.scales import scale
from calc.values.numbers import rounded
from calc.values.quantities import Gauge, Temperature

NAMES = {
    "oxygen": "oxygen",
    "acetylene": "acetylene",
    "propane": "propane",
    "propylene": "propylene",
    "methane": "natural gas",
    "hydrogen": "hydrogen",
    "methylacetylene-propadiene": "methylacetylene-propadiene",
}
"""Each gas in the middle of a sentence."""

NEAR_LIQUID = 0.03
"""How near to its boiling pressure a gas counts as liquid: what 1 K does to that pressure."""


def gauge_down(gauge: Gauge, rules: str) -> str:
    """A gauge rounded down, for the end of a range."""
    unit = scale("gauge", rules)
    return f"{rounded(unit.number(gauge), 3, 'down')} {unit.name}"


def why_not(gas: str, temperature: Temperature, rules: str) -> str:
    """Why a gas shows no more than `highest_gauge`, a clause that ends with that gauge.

    Args:
        gas: Id of the gas.
        temperature: Temperature of the cylinder or of the gas, K.
        rules: Rule set, for the units.
    """
    most, at = gauge_down(highest_gauge(gas, temperature), rules), degrees(temperature, rules)
    if gas in LIQUEFIED:
        return f"at {at} {NAMES[gas]} turns liquid above {most}, so it cannot push harder"
    if gas == "acetylene":
        return f"at {at} a full acetylene cylinder shows {most} at most"
    return f"at {at} a full cylinder shows {most} at most, even one made for 300 bar"


def require_possible(
    *,
    gas: str,
    gauge: Gauge,
    temperature: Temperature,
    rules: str,
    field: str,
    label: str,
    least: Gauge = 0.0,
) -> None:
    """Refuse a gauge that the gas cannot show at that temperature.

    Args:
        gas: Id of the gas.
        gauge: What was given, Pa.
        temperature: Of the cylinder, or of the gas where no cylinder is asked for, K.
        rules: Rule set, for the units.
        field: Name of the input, for the message.
        label: Its label.
        least: Least that the input takes, Pa.

    Raises:
        InputError: The state cannot exist.
    """
    most = highest_gauge(gas, temperature)
    if gauge <= most * (1 + 1e-9):
        return
    unit = scale("gauge", rules)
    if most <= least:
        range_said = "use a warmer cylinder, or another gas"
    else:
        range_said = f"give {unit.text(least)} to {gauge_down(most, rules)}"
    raise InputError(field, label, f"{why_not(gas, temperature, rules)}; {range_said}.")


def require_filled(
    *,
    gas: str, gauge: Gauge, full: Gauge, full_temperature: Temperature, temperature: Temperature, rules: str,
    field: str, label: str,
) -> None:  # fmt: skip
    """Refuse a gauge above that of the same cylinder when full, the gas stored as gas.

    Args:
        gas: `oxygen`, `hydrogen` or `methane`.
        gauge: What was given, Pa.
        full: Gauge of the full cylinder, Pa.
        full_temperature: Temperature that this is meant at, K.
        temperature: Of the cylinder now, K.
        rules: Rule set, for the units.
        field: Name of the input, for the message.
        label: Its label.

    Raises:
        InputError: The gauge is above that of a full one by more than a gauge's error of 3 %.
    """
    most = full_gauge_at(gas, full, full_temperature, temperature) * (1 + GAUGE_ERROR)
    if gauge > most * (1 + 1e-9):
        unit = scale("gauge", rules)
        raise InputError(
            field,
            label,
            f"at {degrees(temperature, rules)} a full one shows {gauge_down(most, rules)} at most; give "
            f"{unit.text(0.0)} to {gauge_down(most, rules)}, or correct what a full one reads. If the gauge is right the "
            "cylinder is overfilled or hot and can burst: leave it shut and ask its supplier.",
        )


def require_warm(
    *, gas: str, gauge: Gauge, temperature: Temperature, rules: str, field: str, label: str
) -> None:
    """Refuse a cylinder that is too cold to push with a gauge that is wanted of it.

    Args:
        gas: Id of the gas.
        gauge: What is wanted of the cylinder, Pa.
        temperature: Of the cylinder, K.
        rules: Rule set, for the units.
        field: Name of the input that tells the temperature.
        label: Its label.

    Raises:
        InputError: The state cannot exist.
    """
    if gauge <= highest_gauge(gas, temperature) * (1 + 1e-9):
        return
    wanted = scale("gauge", rules).said(gauge)
    warm = degrees(coldest_for(gas, gauge) + 0.5, rules)
    raise InputError(
        field,
        label,
        f"{why_not(gas, temperature, rules)}, and {wanted} is wanted of it; give {warm} or warmer, or use "
        "another gas. Never heat the cylinder.",
    )
