"""What stands in store and on manifolds, held against the rule set's limits."""

from dataclasses import dataclass

from calc.answer.hazards import caution
from calc.answer.sentences import distance
from calc.data.tables import source_words, table
from calc.declare import Caution, Table
from calc.formulas.gas.nozzle import free_gas_flow
from calc.formulas.gas.properties import gas_molar_mass
from calc.formulas.setup.ruled import Ruled, amount, ruled_row
from calc.show.scales import Scale, scale
from calc.trade.gas.banks import Bank
from calc.values.figures import Figure
from calc.values.numbers import rounded
from calc.values.quantities import FreeGas, Mass

OWN = {"us": "United States", "iso": "Europe", "uk": "United Kingdom", "any": "any rule set"}


def mass_of(gas: str, free_gas: FreeGas) -> Mass:
    """Mass of free gas, kg, counted as ideal."""
    return free_gas / free_gas_flow(1.0, gas_molar_mass(gas))


def _limit(topic: str, rules: str) -> Ruled:
    return ruled_row("storage", rules, lambda row: -amount(row, free_gas=True), topic=topic)


@dataclass(frozen=True, slots=True)
class Held:
    """One amount against one limit.

    Attributes:
        what: What is held.
        value: Amount, m³ of free gas or kg.
        limit: The limit's row.
        scale: Scale that both are read on.
    """

    what: str
    value: float
    limit: Ruled
    scale: Scale

    @property
    def most(self) -> float:
        """The limit in SI."""
        return amount(self.limit.row, free_gas=True)

    @property
    def meets(self) -> bool:
        """Whether the amount is within the limit."""
        return self.value <= self.most * (1 + 1e-9)

    @property
    def amount(self) -> str:
        """The amount as a number, never less than it is."""
        return rounded(self.scale.number(self.value), self.scale.digits, "up")

    @property
    def limit_said(self) -> str:
        """The limit with its unit, never more than it is."""
        return f"{rounded(self.scale.number(self.most), self.scale.digits, 'down')} {self.scale.name}"

    @property
    def figure(self) -> Figure:
        """The comparison in words."""
        said = f"{self.amount} of {self.limit_said}"
        verdict = "within the limit" if self.meets else "breaks the limit"
        note = f" {OWN[self.limit.rules]} figure. {self.limit.note}" if self.limit.note else ""
        return Figure(
            None, self.limit.row.source, self.limit.row.how_sure, words=f"{said}: {verdict}.{note}",
            basis=f"{self.what}: {self.limit.row.words}.",
        )  # fmt: skip


def held(fuel: str, reserve: FreeGas, banks: dict[str, Bank], rules: str) -> dict[str, Held]:
    """Reserve and manifolds against their limits.

    Args:
        fuel: Id of the fuel gas.
        reserve: Fuel gas that stands by, m³.
        banks: The bank in use of `fuel` and of `oxygen`.
        rules: Rule set.
    """
    liquefied = fuel != "acetylene"
    coupled = banks["fuel"].count * banks["fuel"].full
    gas, mass = scale("contents", rules), scale("mass", rules)

    def weighed(free: FreeGas) -> float:
        return mass_of(fuel, free) if liquefied else free

    read = mass if liquefied else gas
    oxygen = banks["oxygen"].count * banks["oxygen"].full
    store, manifold = ("indoor-lpg", "manifold-lpg") if liquefied else ("indoor-fuel-gas", "manifold-fuel")
    return {
        "store": Held("Fuel gas in reserve, indoors", weighed(reserve), _limit(store, rules), read),
        "fuel": Held("Fuel gas on one manifold, indoors", weighed(coupled), _limit(manifold, rules), read),
        "oxygen": Held("Oxygen on one manifold, indoors", oxygen, _limit("manifold-oxygen", rules), gas),
    }


def separation(rules: str) -> Figure:
    """Distance between stored oxygen and fuel gas, m."""
    found = {
        topic: ruled_row("storage", rules, amount, topic=topic)
        for topic in ("separation", "barrier-height", "barrier-rating")
    }
    row = found["separation"].row
    wall = distance(amount(found["barrier-height"].row), rules, 3, "up")
    minutes = amount(found["barrier-rating"].row) / 60
    note = (
        f" {OWN[found['separation'].rules]} figure. {found['separation'].note}"
        if found["separation"].note
        else ""
    )
    return Figure(
        amount(row), row.source, row.how_sure,
        words=f"or a wall {wall} high that resists fire for {minutes:.0f} min.{note}",
        basis="Cylinders in use on their cart or manifold are not in store; left more than a day unused they are.",
    )  # fmt: skip


def limits_table(compared: dict[str, Held], rules: str) -> Table:
    """Every amount, its limit and whose it is."""
    rows = [
        (
            one.what,
            f"{one.amount} {one.scale.name}",
            one.limit_said,
            "meets" if one.meets else "breaks",
            f"{source_words(one.limit.row.source)} ({OWN[one.limit.rules]})",
        )
        for one in compared.values()
    ]
    also = [row for row in table("storage") if row.topic == "indoor-fuel-gas" and row.standing == "also"]
    gas = scale("contents", rules)
    rows += [
        ("Fuel gas in reserve, other print", "", gas.said(amount(row, free_gas=True)), "", source_words(row.source))
        for row in also
    ]  # fmt: skip
    return Table(
        "Store and manifolds, by rule",
        ("What", "Yours", "Most", "", "Source"),
        tuple(rows),
        "The stricter figure is followed. Local fire rules can be stricter still: ask.",
    )


def broken(compared: dict[str, Held], banks: dict[str, Bank]) -> dict[str, Held]:
    """Limits that are broken; a single cylinder is no manifold."""
    return {
        one.what: one
        for name, one in compared.items()
        if not one.meets and (name == "store" or banks[name].count > 1)
    }


def manifold(one: Held, bank: Bank) -> Figure:
    """The comparison of a manifold in words; a single cylinder is none."""
    if bank.count == 1:
        return Figure(
            None, one.limit.row.source, one.limit.row.how_sure, words="one cylinder, no manifold"
        )
    return one.figure


def store_cautions(compared: dict[str, Held]) -> list[Caution]:
    """A warning for each limit that is broken."""
    return [
        caution("store-over", kept=f"{one.what} {one.amount} {one.scale.name}", limit=one.limit_said)
        for one in compared.values()
        if not one.meets
    ]
