"""What is said of a brazed joint: filler, flux and flame in words, its hazards, and what else suits."""

from calc.answer.hazards import brought, caution, gravest_first
from calc.answer.sentences import degrees, distance
from calc.data.tables import table
from calc.declare import Caution, Figure, Table
from calc.trade.braze.choice import FAMILIES, METALS, Match, iso_name, never
from calc.trade.braze.fit import Fit, Gap, rule
from calc.values.quantities import Length

ROUNDING = 0.03
"""The same gap is printed in inches and in millimetres, which differ by so much."""
FLAMES = {
    "neutral": "neutral: one bright round cone, no feather",
    "slightly reducing": "slightly reducing: a small feather left beyond the cone",
    "slightly oxidizing": "slightly oxidizing: the neutral cone shortened by about a tenth",
}


def filler_words(match: Match) -> Figure:
    """The filler by its class, with the nearest of ISO 17672."""
    near = iso_name(match.filler.filler)
    iso = f"; nearest in ISO 17672: {near} (from memory)" if near else ""
    return Figure(
        None, match.source, match.how_sure,
        words=f"{match.filler.filler}, {FAMILIES[match.filler.family]} ({match.filler.composition}){iso}",
        basis=f"{match.words[:1].upper()}{match.words[1:]}. A filler with cadmium is never given here. "
        "The safety data sheet of the filler says what is in it.",
    )  # fmt: skip


def melting(match: Match, rules: str) -> Figure:
    """Where the filler is all melted; the band runs from where it begins."""
    row = match.filler
    differs = [
        each.words
        for each in table("brazing-fillers-aws")
        if each.filler == row.filler and each.standing == "differs"
    ]
    notes = [f"{each[:1].upper()}{each[1:]}, from memory." for each in differs]
    near = next(each for each in table("brazing-fillers-iso-17672") if each.filler == row.filler)
    if near.solidus is not None:
        notes.append(
            f"ISO 17672, {near.iso}: {degrees(near.solidus, 'iso')} to {degrees(near.liquidus, 'iso')}, from memory."
        )
    note = f"{row.words[:1].upper()}{row.words[1:]}." if row.words else ""
    melts_over = row.solidus < row.liquidus
    said = "The band begins where it begins to melt." if melts_over else "It melts at one temperature."
    return Figure(
        row.liquidus, row.source, row.how_sure, low=row.solidus if melts_over else None,
        high=row.liquidus if melts_over else None,
        basis=" ".join(part for part in (said, note, *notes) if part),
        words=f"begins to melt at {degrees(row.solidus, rules)}" if melts_over else "",
    )  # fmt: skip


def brazing_temperature(match: Match) -> Figure:
    """The printed range of brazing, and its middle."""
    row = match.filler
    return Figure(
        (row.braze_low + row.braze_high) / 2, row.source, row.how_sure, low=row.braze_low, high=row.braze_high,
        basis="The printed range and its middle. It is the heat of the parts, not of the flame. Begin at the lower end: "
        "more heat burns the flux and boils the zinc.",
    )  # fmt: skip


def flux_words(match: Match, rules: str) -> Figure:
    """The flux with the range it works in, or none."""
    if match.flux is None:
        return Figure(None, match.source, match.how_sure, words=f"none: {match.words.split(';')[0]}",
                      basis="Copper to copper only. Brass, bronze and every other metal need flux.")  # fmt: skip
    row = match.flux
    range_ = f"{degrees(row.low, rules)} to {degrees(row.high, rules)}"
    return Figure(
        None, row.source, row.how_sure,
        words=f"{row.flux} {row.form}, works at {range_}; nearest in EN 1045: {row.en}",
        basis=f"For {row.words}. Flux takes away oxide, not dirt or oil: clean first.",
    )  # fmt: skip


def flame_words(match: Match) -> Figure:
    """How the flame is set and held."""
    return Figure(
        None, "", "memory",
        words=f"{FLAMES[match.flame]}; held on the parts",
        basis="The outer flame, always moving, never on the filler. The makers of filler and torch come first.",
    )  # fmt: skip


def _hazards(match: Match, metals: tuple[str, str]) -> list[Caution]:
    job = {
        "process": "brazing",
        "work": "brazing",
        "filler": _FILLERS.get(match.filler.family, match.filler.family),
        "flux": "none" if match.flux is None else "fluoride",
    }
    return [one for metal in metals for one in brought({**job, "metal": metal})]


_FILLERS = {"copper-zinc": "brass", "aluminium-silicon": "aluminium"}
"""Families of filler by the ids that the table of hazards knows them by."""
_SERVICE = {
    "load": "load-joint",
    "drinking-water": "braze-drinking-water",
    "food": "braze-food",
    "hot": "braze-hot",
}
"""Hazard of a joint's use."""


def _gap_notices(fit: Fit, gap: Gap, given: Length | None, make: Length, rules: str) -> list[Caution]:
    cold = make if given is None else given
    hot = fit.hot(cold)[1]
    told = []
    if fit.diameter is not None and fit.outer != fit.inner:
        closes = fit.inner > fit.outer
        told.append(
            caution("gap-when-hot", moves="closes" if closes else "opens", cold=distance(cold, rules), hot=distance(max(hot, 0.0), rules))
        )
    if fit.diameter is None and fit.outer != fit.inner:
        told.append(caution("shrink-unlike"))
    if given is not None and not gap.least * (1 - ROUNDING) <= hot <= gap.most * (1 + ROUNDING):
        narrow = hot < gap.least
        why = (
            "tight: filler and flux hardly get in"
            if narrow
            else "wide: the filler runs out instead of being drawn in"
        )
        told.append(
            caution("gap-unfit", hot=distance(hot, rules), why=why)
        )
    return told


def cautions(
    *,
    match: Match, metals: tuple[str, str], service: str, fit: Fit, gap: Gap, given: Length | None,
    make: Length, overlap: Length, thickness: Length, rules: str,
) -> tuple[Caution, ...]:  # fmt: skip
    """Hazards of a joint and what to mind, the gravest first.

    Args:
        match: Filler, flux and flame.
        metals: Ids of both.
        service: Use of the joint.
        fit: The two parts.
        gap: What the filler wants.
        given: Gap the reader has when cold, m.
        make: Gap to make when cold, m.
        overlap: m.
        thickness: Of the thinner part, m.
        rules: Rule set, for the lengths.
    """
    told = _hazards(match, metals)
    if service in _SERVICE:
        told.append(caution(_SERVICE[service]))
    if "cast-iron" in metals:
        told.append(caution("cast-iron-braze"))
    told += _gap_notices(fit, gap, given, make, rules)
    if overlap < rule("overlap").taken * thickness * (1 - 1e-9):
        told.append(caution("overlap-short"))
    return gravest_first(told)


def what_else(match: Match, metals: tuple[str, str], service: str) -> Table:
    """Other fillers that suit the two metals, and those that must not be; cadmium never suits any."""
    rows = [
        (
            f"{row.filler} and its like, {FAMILIES[row.family]}",
            "suits",
            f"{row.words}; flux {row.flux}" if row.flux != "none" else row.words,
        )
        for row in match.others
    ]
    for family in ("copper-phosphorus", "copper-zinc", "silver", "aluminium-silicon"):
        row = never(family, *metals, service)
        if row is not None:
            rows.append((FAMILIES[family].capitalize(), "never here", row.why))
    pair = " and ".join(METALS[metal].lower() for metal in dict.fromkeys(metals))
    return Table(f"Other fillers, for {pair}", ("Filler", "Use it?", "Why"), tuple(rows))
