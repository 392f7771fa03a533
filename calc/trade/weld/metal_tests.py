"""Simple tests of an unknown metal: what each says for and against every metal of our list.

A metal is out as soon as one test contradicts it. No test is weighed against
another, and of the metals that are left the gravest hazard counts.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from calc.data.tables import table
from calc.values.quantities import Density

NOT_TRIED = "not-tried"
OUTCOMES = {
    "magnet": {"sticks": "Sticks", "weak": "A weak pull", "no": "No pull"},
    "colour": {
        "grey-white": "Gray to white",
        "silvery": "Silvery",
        "dull-grey": "Dull or dark gray",
        "yellow": "Yellow",
        "red": "Red or red-brown",
    },
    "rust": {"seen": "Brown rust all over", "none": "None"},
    "spark": {
        "none": "None",
        "few-short": "Few, orange or dark red, hardly a fork",
        "long": "Long lines, straw to white, a few forks",
        "bursts": "Many bursts, bushy, white",
        "red-bursts": "Short, dull red, then many fine bursts",
        "white": "Blinding white",
    },
    "file": {"easily": "Bites easily", "bites": "Bites with effort", "skates": "Skates off"},
    "chip": {"curl": "Comes off in a curl", "bits": "Breaks into bits"},
    "origin": {
        "plumbing": "Water tube, house wire, roof sheet",
        "special": "Spring, contact, mold, tool that must not spark, aircraft part",
    },
}
"""What each test can show: id and the words a reader sees."""
NAMES = {
    "magnet": "magnet", "colour": "color", "rust": "rust", "spark": "sparks", "file": "file", "chip": "chip",
    "origin": "where it comes from", "density": "density",
}  # fmt: skip
ALLOY_SPREAD = 0.02
"""How far an alloy may lie beyond the densities of our tables: common practice."""
NEVER = 13.0
"""From this rank up a metal is not for this torch."""
NAMED = 3
"""So many metals may be left and still be named."""


def options(test: str) -> dict[str, str]:
    """Choices for one test: id and words, with the one for a test that was not tried."""
    return OUTCOMES[test] | {NOT_TRIED: "Nobody knows" if test == "origin" else "Not tried"}


@dataclass(frozen=True, slots=True)
class Candidate:
    """One metal with what the tests say of it.

    Attributes:
        kind: Its row of `metal-kinds`.
        agrees: Findings that fit it, in words.
        contradicts: Findings that do not.
    """

    kind: Any
    agrees: tuple[str, ...]
    contradicts: tuple[str, ...]

    @property
    def out(self) -> bool:
        """Whether a test contradicts it."""
        return bool(self.contradicts)


@cache
def _fits() -> dict[tuple[str, str], frozenset[str]]:
    return {(row.metal, row.test): frozenset(row.fits.split("|")) for row in table("metal-tests")}


@cache
def densities(metal: str) -> tuple[Density, Density]:
    """Least and largest density that our tables print for a metal.

    Args:
        metal: An id of `metal-kinds`.

    Examples:
        >>> low, high = densities("magnesium")
        >>> low, high
        (1740.0, 1840.0)
    """
    kind = next(row for row in table("metal-kinds") if row.metal == metal)
    names = kind.metals.split("|")
    found = [row.density for row in table("metals") if row.metal in names]
    for row in table("metal-densities"):
        if row.metal == metal:
            found.append(row.printed if row.density is None else row.density)
    return min(found), max(found)


def _density_finding(metal: str, band: tuple[Density, Density]) -> tuple[bool, str]:
    low, high = densities(metal)
    fits = band[1] >= low * (1 - ALLOY_SPREAD) and band[0] <= high * (1 + ALLOY_SPREAD)
    return fits, f"density, in print {low / 1000:.3g} to {high / 1000:.3g} g/cm³"


def candidates(
    findings: Mapping[str, str], band: tuple[Density, Density] | None = None
) -> tuple[Candidate, ...]:
    """Every metal of our list with what speaks for and against it.

    Args:
        findings: What each test showed, by test; those not tried may be left out.
        band: Least and largest density measured, kg/m³.

    Returns:
        The metals that nothing contradicts, the gravest first, then the others,
        the least contradicted first.
    """
    tried = {test: seen for test, seen in findings.items() if seen != NOT_TRIED}
    judged = []
    for kind in table("metal-kinds"):
        agrees: list[str] = []
        contradicts: list[str] = []
        for test, seen in tried.items():
            wanted = _fits().get((kind.metal, test))
            if wanted is not None:  # a test without a row says nothing of this metal
                found = agrees if seen in wanted else contradicts
                found.append(f"{NAMES[test]}: {OUTCOMES[test][seen].lower()}")
        if band is not None:
            fits, said = _density_finding(kind.metal, band)
            (agrees if fits else contradicts).append(said)
        judged.append(Candidate(kind, tuple(agrees), tuple(contradicts)))
    judged.sort(key=lambda each: (len(each.contradicts), -each.kind.gravity))
    return tuple(judged)


def names_of(kept: tuple[Candidate, ...]) -> str:
    """Names in one phrase: `a, b or c`."""
    names = [each.kind.name for each in kept]
    return " or ".join(names) if len(names) < 3 else f"{', '.join(names[:-1])} or {names[-1]}"


def told(kept: tuple[Candidate, ...], tests: int) -> bool:
    """Whether the metals that are left are few enough to be named.

    Args:
        kept: Metals that nothing contradicts.
        tests: How many tests were tried.
    """
    return bool(tests) and 0 < len(kept) <= NAMED
