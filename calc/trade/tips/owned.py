"""The tips that a reader has: what each suits, and which of them a thickness wants."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from calc.answer.sentences import distance
from calc.data.tables import source_words, table
from calc.declare import Choice, Field, Table, Words
from calc.declare.inputs import GAUGE, LENGTH
from calc.formulas.setup.cutting import cutting_orifice
from calc.formulas.setup.drills import nearest_drill
from calc.formulas.setup.tips import brazing_tip, welding_orifice
from calc.show.scales import scale
from calc.trade.tips.heating_settings import brazing_hole
from calc.values.figures import Figure

HOW_MANY = 8
"""Tips that an outfit may have here."""
USES = {"welding": "Welding", "brazing": "Brazing", "cutting": "Cutting", "heating": "Heating"}
FITS = {
    "welding": ("welding",),
    "braze-welding": ("brazing", "welding"),
    "brazing": ("brazing",),
    "cutting": ("cutting",),
}
"""Tips that do for a process, by what their owner uses them for."""


_WANTED: Mapping[str, Callable[[float], Figure]] = {
    "welding": welding_orifice,
    "cutting": cutting_orifice,
}


FOLLOWED = {"welding": "faa-ac43-13-1b", "brazing": "navy14119", "cutting": "carvill-1993"}
"""Table that tells what a tip suits, by the tip's use."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tip:
    """One tip of an outfit; what its owner did not give is None.

    Attributes:
        number: Its place in the list, from 1.
        label: Its owner's name for it.
        use: What it is used for, an id of `USES`.
        orifice: Hole, m.
        oxygen_gauge: Oxygen that its maker prints, Pa.
        fuel_gauge: Fuel gas that its maker prints, Pa.
    """

    number: int
    label: str | None = None
    use: str | None = None
    orifice: float | None = None
    oxygen_gauge: float | None = None
    fuel_gauge: float | None = None

    @property
    def name(self) -> str:
        """What it is called."""
        return self.label or f"tip {self.number}"


PARTS = ("label", "use", "orifice", "oxygen_gauge", "fuel_gauge")
"""What is asked of each tip; the inputs are `tip_1_label` and so on."""


def label(number: int) -> Words:
    """The owner's name for a tip."""
    return Words(
        f"Tip {number}: your name for it", longest=30, optional=True, group=f"Tip {number}",
        hint="As you find it in your box: a color, a mark, a place.",
    )  # fmt: skip


def use(number: int) -> Choice:
    """What a tip is used for."""
    return Choice(f"Tip {number}: used for", USES, optional=True, group=f"Tip {number}")


def orifice(number: int) -> Field:
    """Hole of a tip."""
    return Field(
        f"Tip {number}: its hole", LENGTH, low="0.35 mm", high="5.5 mm", drill=True, optional=True,
        group=f"Tip {number}",
        hint="Diameter, or a number twist drill such as #68; of a cutting tip the middle hole.",
    )  # fmt: skip


def oxygen_gauge(number: int) -> Field:
    """Oxygen pressure that the maker of a tip prints."""
    return Field(
        f"Tip {number}: oxygen pressure its maker prints", GAUGE, low="0.5 psi", high="150 psi", optional=True,
        group=f"Tip {number}",
    )  # fmt: skip


def fuel_gauge(number: int) -> Field:
    """Fuel pressure that the maker of a tip prints."""
    return Field(
        f"Tip {number}: fuel gas pressure its maker prints", GAUGE, low="0.1 psi", high="60 psi", optional=True,
        group=f"Tip {number}",
    )  # fmt: skip


def wanted_orifice(process: str, thickness: float, metal: str = "low-carbon-steel") -> Figure:
    """Hole to start from for a thickness, with what the sources print as its band.

    Args:
        process: Id of the process.
        thickness: m; of the thicker part where they differ.
        metal: Id of the metal; copper takes the brazing tip of thicker steel.

    Raises:
        ValueError: No table chooses a tip for the process, or the thickness is outside it.

    Examples:
        >>> round(wanted_orifice("welding", 0.095 * 0.0254).value * 1000, 2)
        0.94
    """
    if process not in _WANTED and "braz" not in process:
        raise ValueError("no table in our data chooses a tip for this work; take what its maker prints")
    if "braz" in process:
        return brazing_hole(process, metal, thickness)
    return _WANTED[process](thickness)


def is_within(hole: float, wanted: Figure) -> bool:
    """Whether a hole is within what the sources print, to the nearest number drill."""
    assert wanted.value is not None
    low, high = wanted.low or wanted.value, wanted.high or wanted.value
    own = nearest_drill(hole).diameter
    return nearest_drill(low).diameter <= own <= nearest_drill(high).diameter


def nearest_tip(tips: tuple[Tip, ...], process: str, wanted: Figure) -> Tip | None:
    """The tip for a process whose hole is nearest to the one wanted.

    Args:
        tips: Those at hand.
        process: Id of the process.
        wanted: Hole to start from, with its band.

    Returns:
        The tip, the smaller of two as near; None where no tip is within the band.
    """
    fit = [tip for tip in tips if tip.use in FITS.get(process, ()) and tip.orifice is not None]
    near = [tip for tip in fit if is_within(tip.orifice or 0.0, wanted)]
    ahead = wanted.value or 0.0
    return min(
        near,
        key=lambda tip: (round(abs((tip.orifice or 0.0) - ahead), 9), tip.orifice or 0.0),
        default=None,
    )


@cache
def _printed(use_of_it: str) -> tuple[tuple[float, float, Figure], ...]:
    """Thinnest, thickest and hole of every row in print."""
    if use_of_it == "welding":
        rows = [(r.thinnest, r.thickest) for r in table("welding-orifices-faa")]
        return tuple((thin, thick, welding_orifice((thin + thick) / 2)) for thin, thick in rows)
    if use_of_it == "brazing":
        return tuple(
            (r.thickness, r.thickness, brazing_tip(r.thickness))
            for r in table("brazing-orifices-navy")
        )
    if use_of_it == "cutting":
        read = [r.thickness for r in table("cutting-carvill-1993")]
        beyond = [r.thickness for r in table("cutting-aws-handbook") if r.thickness > read[-1] * 1.05]
        return tuple((each, each, cutting_orifice(each)) for each in (*read, *beyond))
    return ()


def suits(tip: Tip, rules: str) -> str:
    """Thicknesses of steel whose printed hole is nearest to a tip's own, in words.

    Args:
        tip: The tip.
        rules: Rule set, which decides the unit.
    """
    rows = _printed(tip.use or "")
    if tip.orifice is None or tip.use is None:
        return "unknown: give its use and its hole"
    if not rows:
        return "what its maker prints"
    hole = tip.orifice
    off = min(abs((wanted.value or 0.0) - hole) for _, _, wanted in rows)
    near = [row for row in rows if abs((row[2].value or 0.0) - hole) <= off * (1 + 1e-9)]
    if not any(is_within(hole, wanted) for _, _, wanted in near):
        return "no thickness in our tables"
    thin, thick = min(row[0] for row in near), max(row[1] for row in near)
    least, most = distance(thin, rules, 3), distance(thick, rules, 3)
    if least == most:
        return most
    number, _, unit = least.partition(" ")
    return f"{number if most.endswith(f' {unit}') else least} to {most}"


def tips_table(tips: tuple[Tip, ...], rules: str) -> Table | None:
    """The tips one by one; None where there is none."""
    if not tips:
        return None
    gauge = scale("gauge", rules)

    def pressures(tip: Tip) -> str:
        printed = (("oxygen", tip.oxygen_gauge), ("fuel", tip.fuel_gauge))
        return ", ".join(f"{gas} {gauge.said(value)}" for gas, value in printed if value is not None)

    def hole(tip: Tip) -> str:
        if tip.orifice is None:
            return "not given"
        return f"{distance(tip.orifice, rules, 3)} (#{nearest_drill(tip.orifice).drill})"

    rows = tuple(
        (tip.name, USES.get(tip.use or "", "not given"), hole(tip), suits(tip, rules), pressures(tip))
        for tip in tips
    )
    return Table(
        "The tips",
        ("Tip", "Use", "Hole (nearest drill)", "Steel it suits", "Its maker prints"),
        rows,
        f"Thickness of steel whose printed hole is nearest: welding {source_words(FOLLOWED['welding'])}, brazing "
        f"{source_words(FOLLOWED['brazing'])}, cutting {source_words(FOLLOWED['cutting'])}. "
        "What the maker of a tip prints comes first.",
    )  # fmt: skip


def tips_of(given: Mapping[str, Any]) -> tuple[Tip, ...]:
    """Tips out of the inputs of an outfit in SI; one of which nothing is given is left out.

    Args:
        given: Values by input, such as `tip_1_orifice`.
    """
    found = []
    for number in range(1, HOW_MANY + 1):
        parts = {part: given.get(f"tip_{number}_{part}") for part in PARTS}
        if any(value is not None for value in parts.values()):
            found.append(Tip(number=number, **parts))
    return tuple(found)
