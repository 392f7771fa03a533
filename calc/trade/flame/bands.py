"""What the trade calls a flame, by the published band of its ratio, and how it looks."""

from dataclasses import dataclass
from typing import Any

from calc.data.tables import table
from calc.values.quantities import Ratio

NO_BAND = "no published band in our data"

NAMES = {
    "us": {"carburising": "carburizing", "oxidising": "oxidizing"},
    "uk": {},
    "iso": {"carburising": "reducing"},
}
"""Names that differ from those of the tables, by rule set."""


@dataclass(frozen=True, slots=True)
class Kind:
    """One band of flames.

    Attributes:
        id: Name in the tables; empty where no band is published.
        source: As in a table.
        how_sure: Grade.
    """

    id: str
    source: str
    how_sure: str


def _followed(name: str) -> dict[str, Any]:
    return {row.flame: row for row in table(name) if row.standing == "followed"}


def flame_kind(fuel: str, ratio: Ratio) -> Kind:
    """Band that a flame falls in by its ratio of oxygen to fuel.

    Args:
        fuel: Id of the fuel gas.
        ratio: Volumes of oxygen for one of fuel, at the torch.

    Returns:
        The band; without an id where none is published.

    Examples:
        >>> flame_kind("acetylene", 1.0).id, flame_kind("acetylene", 1.1).id
        ('slightly-reducing', 'neutral')
        >>> flame_kind("propane", 4.0).id
        ''
    """
    if fuel == "acetylene":
        bands = _followed("flame-bands")
        if ratio < bands["carburising"].high:
            row = bands["carburising"]
        elif ratio < bands["neutral"].low:  # print leaves 1.00 to 1.04 open; the feather is still there
            row = bands["slightly-reducing"]
        elif ratio <= bands["neutral"].high:
            row = bands["neutral"]
        else:
            row = bands["oxidising"]
        return Kind(row.flame, row.source, row.how_sure)
    if fuel == "methylacetylene-propadiene":
        bands = _followed("flame-bands-mps")
        if ratio <= bands["carburising"].high:
            row = bands["carburising"]
        elif ratio < bands["neutral"].low:
            return Kind("between", "", "memory")
        elif ratio <= bands["neutral"].high:
            row = bands["neutral"]
        else:
            row = bands["oxidising"]
        return Kind(row.flame, row.source, "memory")
    return Kind("", "", "memory")


def flame_name(kind: Kind, rules: str = "us") -> str:
    """Name of a band in the words of a rule set.

    Examples:
        >>> flame_name(flame_kind("acetylene", 0.9)), flame_name(flame_kind("acetylene", 0.9), "iso")
        ('carburizing', 'reducing')
    """
    if not kind.id:
        return NO_BAND
    if kind.id == "between":
        return f"between {NAMES[rules].get('carburising', 'carburising')} and neutral: print names no flame here"
    return NAMES[rules].get(kind.id, kind.id.replace("-", " "))


def colours(kind: Kind) -> Any:
    """Row of colours and sound of a band of the acetylene flame; None without one."""
    return next((row for row in table("flame-colours") if row.flame == kind.id), None)
