"""Cylinders in use: how many to couple, what each gives, and a lesson's course."""

from dataclasses import dataclass

from calc.formulas.gas.acetylene import MOST_SHARE, acetylene_draw_limit, acetylene_pressure
from calc.formulas.gas.contents import free_gas_volume
from calc.formulas.gas.pressures import absolute_pressure
from calc.formulas.gas.real_gas import compressibility, pressure_of_contents
from calc.formulas.gas.saturation import vapour_pressure
from calc.formulas.gas.supply import cylinder_share, cylinders_needed
from calc.show.scales import scale
from calc.trade.gas.draws import FRACTIONS, PICKS, drawn_past_any
from calc.trade.gas.stocks import acetylene_stop_gauge, kept_share
from calc.values.quantities import ATMOSPHERE, FreeGas, FreeGasFlow, Gauge, Ratio, Temperature, Volume

HOLDS_TO: Ratio = 0.5
"""Share of full down to which the draw rule is to hold: our own choice."""
MOST = 200
"""More cylinders in one bank than anyone couples."""


class TooFewError(ValueError):
    """So few acetylene cylinders are coupled that no book allows the draw; it says how many would do."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bank:
    """Cylinders of one gas, coupled.

    Attributes:
        gas: Id of the gas.
        count: Cylinders in it.
        full: Gas in a full one, m³.
        kept: Gas that stays in each when the bank is changed, m³.
        water_volume: Of one, m³; for oxygen.
        temperature: Of the cylinders, K.
    """

    gas: str
    count: int
    full: FreeGas
    kept: FreeGas
    water_volume: Volume
    temperature: Temperature

    @property
    def usable(self) -> FreeGas:
        """Gas that each gives before it is changed, m³."""
        return self.full - self.kept

    def contents(self, used: FreeGas) -> tuple[FreeGas, int]:
        """Gas in the bank after some use from full, m³, and how often it was changed by then."""
        whole = self.count * self.usable
        changes = int(used / whole * (1 - 1e-9))
        return self.count * self.full - used + changes * whole, changes

    def gauge(self, contents: FreeGas) -> Gauge:
        """What its gauge reads at rest, Pa."""
        if self.gas == "oxygen":
            pressure = pressure_of_contents(
                "oxygen", self.count * self.water_volume, contents, self.temperature
            )
        elif self.gas == "acetylene":
            share = min(max(contents / (self.count * self.full), 0.0), MOST_SHARE)
            pressure = acetylene_pressure(share, self.temperature)
        else:
            pressure = vapour_pressure(self.gas, self.temperature)
        return max(pressure - ATMOSPHERE, 0.0)


def oxygen_in(water_volume: Volume, gauge: Gauge, temperature: Temperature) -> FreeGas:
    """Oxygen in a cylinder at a gauge reading, m³."""
    pressure = absolute_pressure(gauge)
    factor = compressibility("oxygen", pressure, temperature)
    return free_gas_volume(
        water_volume=water_volume, pressure=pressure, temperature=temperature, compressibility=factor
    )


def acetylene_bank(
    *,
    full: FreeGas, peak: FreeGasFlow, lesson: FreeGas, pick: Ratio, coupled: int | None,
    temperature: Temperature,
) -> Bank:  # fmt: skip
    """Acetylene cylinders to couple so that the draw rule holds until half full and a lesson needs no change.

    Args:
        full: Gas in a full one, m³.
        peak: Most that all torches draw, m³/s.
        lesson: Gas of a lesson, m³.
        pick: Share of the contents that may be drawn an hour.
        coupled: How many are coupled all the same, or None.
        temperature: Of the cylinders, K.

    Raises:
        TooFewError: So few are coupled that all torches draw past what every book allows.
        ValueError: No bank that anyone couples would do.
    """
    most = acetylene_draw_limit(full, pick)
    if coupled is not None and drawn_past_any(peak, coupled * full):
        raise TooFewError(
            "with every flame burning these are drawn at more than 1/7 of their contents an hour even when full, and no "
            f"flame may be lit on them; give {cylinders_needed(cylinder_share(peak, most))} or more, or fewer benches, "
            "smaller tips or larger cylinders"
        )
    count = coupled or cylinders_needed(cylinder_share(peak, most * HOLDS_TO))

    def kept(cylinders: int) -> FreeGas:
        by_rule = peak / (most * cylinders)
        floor = kept_share(temperature)
        return full * (max(floor, by_rule) if by_rule < 1 else floor)

    while coupled is None and count <= MOST and count * (full - kept(count)) < lesson:
        count += 1
    if count > MOST:
        raise ValueError("That is more gas than cylinders can be coupled for; ask the supplier.")
    return Bank(
        gas="acetylene", count=count, full=full, kept=kept(count), water_volume=0.0, temperature=temperature
    )


def plain_bank(
    *,
    gas: str, full: FreeGas, kept: FreeGas, lesson: FreeGas, coupled: int | None,
    temperature: Temperature, water_volume: Volume = 0.0,
) -> Bank:  # fmt: skip
    """Cylinders to couple so that a lesson needs no change, for a gas without a draw rule.

    Raises:
        ValueError: No bank that anyone couples would do.
    """
    count = coupled or cylinders_needed(cylinder_share(lesson, full - kept))
    if count > MOST:
        raise ValueError("That is more gas than cylinders can be coupled for; ask the supplier.")
    return Bank(
        gas=gas, count=count, full=full, kept=kept, water_volume=water_volume, temperature=temperature
    )


def both_banks(
    *,
    fuel: str, full: dict[str, FreeGas], kept_oxygen: FreeGas, peak: FreeGasFlow, lesson: dict[str, FreeGas],
    pick: Ratio, coupled: dict[str, int | None], temperature: Temperature, water_volume: Volume,
) -> dict[str, Bank]:  # fmt: skip
    """Cylinders of `fuel` and of `oxygen` to couple for a lesson.

    Args:
        fuel: Id of the fuel gas.
        full: Gas in a full cylinder of `fuel` and of `oxygen`, m³.
        kept_oxygen: Oxygen that stays in one when it is changed, m³.
        peak: Most fuel gas that all torches draw, m³/s.
        lesson: Of each gas in a lesson, m³.
        pick: Share of the acetylene that may be drawn an hour.
        coupled: How many are coupled all the same, by gas, or None.
        temperature: Of the cylinders, K.
        water_volume: Of an oxygen cylinder, m³.

    Raises:
        ValueError: No bank that anyone couples would do.
    """
    if fuel == "acetylene":
        burnt = acetylene_bank(
            full=full["fuel"],
            peak=peak,
            lesson=lesson["fuel"],
            pick=pick,
            coupled=coupled["fuel"],
            temperature=temperature,
        )
    else:
        burnt = plain_bank(
            gas=fuel,
            full=full["fuel"],
            kept=0.0,
            lesson=lesson["fuel"],
            coupled=coupled["fuel"],
            temperature=temperature,
        )
    oxygen = plain_bank(
        gas="oxygen",
        full=full["oxygen"],
        kept=kept_oxygen,
        lesson=lesson["oxygen"],
        coupled=coupled["oxygen"],
        temperature=temperature,
        water_volume=water_volume,
    )
    return {"fuel": burnt, "oxygen": oxygen}


def change_words(peak: FreeGasFlow, bank: Bank, duty: str, temperature: Temperature, rules: str) -> str:
    """The one floor of acetylene, beside the gas at which the bank is changed; and whether a full one is enough.

    Args:
        peak: Flow with every flame burning, m³/s of free gas.
        bank: The acetylene bank.
        duty: On and off, or without a stop: an id of `draws.DUTIES`.
        temperature: Of the cylinders, K.
        rules: Rule set.
    """
    floor = scale("gauge", rules).said(acetylene_stop_gauge(temperature).value or 0.0)
    words = f"and never with the gauge below {floor} at rest"
    if peak <= acetylene_draw_limit(bank.count * bank.full, PICKS[duty]):
        return words
    return f"{words}; with every flame burning even the full bank is drawn at more than {FRACTIONS[duty]} an hour"
