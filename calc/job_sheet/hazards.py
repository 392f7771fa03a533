"""Hazards of a whole job: what it brings itself, and those of every calculator it asks."""

from collections.abc import Iterable

from calc.answer.hazards import brought, gravest_first
from calc.declare import Caution

SAID_BY_STEPS = {
    "fuel-let-out": "set-up/purge-time",
    "oxygen-let-out": "set-up/purge-time",
}
"""Hazards of setting up that a job sheet leaves to the procedure whose step they stand before, by id;
and the page of that procedure."""


def job_cautions(
    told: tuple[str, str, str | None, str], *asked: Iterable[Caution]
) -> tuple[Caution, ...]:
    """Hazards of one job, each once, the gravest first.

    Args:
        told: Ids of process, metal, other metal (or `same` or None) and coating.
        *asked: Hazards of each calculator and sheet that the job asked.

    Examples:
        >>> said = job_cautions(("welding", "stainless-steel", None, "none"))
        >>> {"closed-part", "chromium-nickel", "flux-fume", "flame-gases"} <= {one.id for one in said}
        True
    """
    process, metal, other, coating = told
    job = {"process": process, "work": process, "coating": coating, "place": "indoors"}
    metals = (metal,) if other in (None, "same") else (metal, other)
    found = [one for each in metals for one in brought({**job, "metal": each})]
    found += [one for each in asked for one in each]
    return gravest_first(one for one in found if one.id not in SAID_BY_STEPS)
