"""Which filler, flux and flame suit two metals and the use of the joint, and what is refused."""

from dataclasses import dataclass
from typing import Any

from calc.answer.sentences import degrees
from calc.ask.errors import InputError
from calc.data.tables import table

METALS = {
    "low-carbon-steel": "Low-carbon steel",
    "stainless-steel": "Stainless steel",
    "cast-iron": "Cast iron, gray",
    "copper": "Copper",
    "brass": "Brass",
    "bronze": "Bronze",
    "nickel": "Nickel",
    "aluminium": "Aluminium",
    "galvanised-steel": "Galvanized steel",
    "titanium": "Titanium",
    "magnesium": "Magnesium",
    "lead": "Lead",
    "zinc": "Zinc or zinc die casting",
    "unknown": "A metal nobody knows",
}
"""Metals that are asked for, by id; some are refused with the reason."""
SERVICES = {row.service: row.words for row in table("brazing-services")}
"""Uses of the joint, by id; some are refused with the reason."""
FAMILIES = {
    "silver": "silver filler",
    "copper-phosphorus": "copper-phosphorus filler",
    "copper-zinc": "copper-zinc rod",
    "aluminium-silicon": "aluminium filler",
    "silver-cadmium": "silver filler with cadmium",
    "copper": "copper filler",
}
LABELS = {
    "metal_one": "Outside part, or first sheet",
    "metal_two": "Inside part, or second sheet",
    "service": "Use of the joint",
    "rod": "Filler you have",
}
"""Labels of the inputs that this sheet refuses."""
_MELTING = {"brass": "brass 60/40", "bronze": "tin bronze 5 %", "copper": "copper C122", "aluminium": "aluminium 1100",
            "low-carbon-steel": "mild steel", "stainless-steel": "stainless steel 304",
            "cast-iron": "grey cast iron", "nickel": "nickel"}  # fmt: skip
"""Row of `metals` that begins to melt first among the alloys of a kind."""
_PICK_ANOTHER = (
    "give copper, brass, bronze, low-carbon or stainless steel, cast iron or nickel, "
    "or aluminium with aluminium"
)


def _fillers() -> dict[str, Any]:
    return {row.filler.lower(): row for row in table("brazing-fillers-aws") if row.standing != "differs"}


def iso_name(filler: str) -> str:
    """The filler of ISO 17672 that comes nearest to an AWS class; empty where there is none.

    Examples:
        >>> iso_name("BAg-5")
        'Ag 245'
    """
    row = next(row for row in table("brazing-fillers-iso-17672") if row.filler == filler)
    return "" if row.iso == "none" else str(row.iso)


RODS = {name: row.filler for name, row in _fillers().items()}
"""Fillers a reader may have, by id; those with cadmium are among them to be refused."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Match:
    """Filler, flux and flame for a joint.

    Attributes:
        filler: Row of `brazing-fillers-aws`.
        flux: Row of `brazing-fluxes-aws`, or None where none is needed.
        flame: Name of the flame.
        words: Why it suits.
        others: Further rows of `brazing-matches` that suit the pair.
        source: Of the match.
        how_sure: Of the match.
    """

    filler: Any
    flux: Any
    flame: str
    words: str
    others: tuple[Any, ...]
    source: str
    how_sure: str


def _id(name: str) -> str:
    """Id of a metal or a use as the tables name it."""
    return name.replace(" ", "-")


def _refuse(field: str, said: str) -> InputError:
    return InputError(field, LABELS[field], f"{said}.")


def begins_to_melt(metal: str) -> float:
    """Where the first alloy of a kind of metal begins to melt, K."""
    return float(next(row.solidus for row in table("metals") if row.metal == _MELTING[metal]))


def hold_to_what_is_brazed(metal_one: str, metal_two: str, service: str) -> None:
    """Refuse a metal, a pair or a use that is not brazed from this page.

    Raises:
        InputError: One of them is not; the message says why.
    """
    use = next(row for row in table("brazing-services") if row.service == service)
    if use.answered == "no":
        answered = [row.words for row in table("brazing-services") if row.answered == "yes"]
        raise _refuse("service", f"{use.why}; not from this page, which gives: {'; '.join(answered)}")
    picked = {"metal_one": metal_one, "metal_two": metal_two}
    reasons = {row.metal: row for row in table("brazing-refusals")}
    for field, metal in picked.items():
        if metal in reasons and metal != "aluminium":
            raise _refuse(field, f"{reasons[metal].why}; {_PICK_ANOTHER}")
    if metal_one != metal_two and "aluminium" in picked.values():
        field = "metal_one" if metal_one == "aluminium" else "metal_two"
        raise _refuse(field, f"{reasons['aluminium'].why}; {_PICK_ANOTHER}")


def _rows_of(metal_one: str, metal_two: str, service: str) -> list[Any]:
    """Rows that fit a pair and a use; those made for the use stand first."""
    rows = [
        row
        for row in table("brazing-matches")
        if {_id(row.first), _id(row.second)} == {metal_one, metal_two}
        and _id(row.service) in ("any", service)
    ]
    return sorted(rows, key=lambda row: (row.standing != "picked", row.service == "any"))


def never(family: str, metal_one: str, metal_two: str, service: str) -> Any | None:
    """Row that says why a family must not be used here, or None."""
    places = ("any", metal_one, metal_two, service)
    return next(
        (row for row in table("brazing-nevers") if row.family == family and _id(row.on) in places), None
    )


def _flux(named: str, filler: Any) -> Any | None:
    """Row of the flux named, or of a hotter one where the filler is used above its range."""
    if named == "none":
        return None
    rows = {row.flux: row for row in table("brazing-fluxes-aws")}
    hotter = {"FB3-A": "FB3-C"}.get(named)
    if hotter and filler.braze_high > rows[named].high:
        return rows[hotter]
    return rows[named]


def match_for(
    metal_one: str, metal_two: str, service: str, rod: str | None = None, rules: str = "us"
) -> Match:
    """What to braze two metals with.

    Args:
        metal_one: Id of the outside part or the first sheet.
        metal_two: Id of the inside part or the second sheet.
        service: Id of the use of the joint.
        rod: Id of the filler the reader has; None picks one.
        rules: Rule set, for the degrees in a message.

    Returns:
        Filler, flux and flame.

    Raises:
        InputError: Metals, use or filler are refused; the message says why.

    Examples:
        >>> match_for("copper", "brass", "general").filler.filler
        'BAg-5'
        >>> match_for("copper", "copper", "general").flux is None
        True
    """
    hold_to_what_is_brazed(metal_one, metal_two, service)
    fitting = _rows_of(metal_one, metal_two, service)
    rows = [row for row in fitting if never(row.family, metal_one, metal_two, service) is None]
    if not rows:
        row = never(fitting[0].family, metal_one, metal_two, service)
        assert row is not None
        raise _refuse("service", f"{row.why}; pick a use that is cool")
    if rod is None:
        picked = rows[0]
        filler = _fillers()[picked.filler.lower()]
    else:
        filler = _fillers()[rod]
        picked = _row_for_rod(filler, rows, (metal_one, metal_two), service, rules)
    others = tuple(row for row in rows if row.family != picked.family)
    ours = filler.filler == picked.filler
    return Match(
        filler=filler, flux=_flux(picked.flux, filler), flame=picked.flame,
        words=picked.words if ours else f"it suits; without it we would take {rows[0].filler}",
        others=others, source=picked.source, how_sure=picked.how_sure,
    )  # fmt: skip


def _row_for_rod(filler: Any, rows: list[Any], metals: tuple[str, str], service: str, rules: str) -> Any:
    """Row of the reader's own filler; refuses what must not be, or would melt the metal."""
    instead = f"leave it empty, or give {rows[0].filler}"
    row = never(filler.family, *metals, service)
    if row is not None:
        raise _refuse("rod", f"{filler.filler}: {row.why}; {instead}")
    found = next((each for each in rows if each.family == filler.family), None)
    if found is None:
        raise _refuse("rod", f"{filler.filler} is not known here for these two metals; {instead}")
    weaker = min(metals, key=begins_to_melt)
    if filler.braze_high >= begins_to_melt(weaker):
        highest, melts = (degrees(each, rules) for each in (filler.braze_high, begins_to_melt(weaker)))
        raise _refuse(
            "rod",
            f"{filler.filler} is used up to {highest}, and some {METALS[weaker].lower()} begins to melt at "
            f"{melts}; {instead}",
        )
    return found
