"""Which metal is this: simple tests, what is left, and what to reckon with."""

from dataclasses import dataclass
from typing import Annotated, Any

from calc.answer.hazards import brought, caution, gravest_first
from calc.ask.errors import InputError
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Answer, Caution, Choice, Field, Figure, Shown, Step, Table, calculator, worked
from calc.formulas.setup.density import piece_density
from calc.trade.safety import fumes
from calc.trade.weld.metal_tests import (
    ALLOY_SPREAD,
    NEVER,
    NOT_TRIED,
    Candidate,
    candidates,
    names_of,
    options,
    told,
)
from calc.values.quantities import Mass, Volume

SMALL_MASS = ("oz", "g", "lb", "kg")
SMALL_VOLUME = ("mL", "in^3")
DENSITY = ("lb/in^3", "g/cm^3")
LEAVE = "do not heat it, do not grind it, ask somebody who can have it analyzed"
UNKNOWN = "unknown metal"
LIST = "Only the metals of our list are compared; there are others."


@dataclass(frozen=True, slots=True, kw_only=True)
class MetalMatch:
    """What is left, what to reckon with, and what it takes."""

    best: Annotated[Figure, Shown("It is", words=True, group="Metal")]
    treat_as: Annotated[Figure, Shown("Reckon with", words=True, group="Metal")]
    density: Annotated[Figure | None, Shown("Density", DENSITY, group="Metal")]
    hazard: Annotated[Figure, Shown("Its hazard", words=True, group="Hazard")]
    coating_hazard: Annotated[Figure, Shown("What is on it", words=True, group="Hazard")]
    process_words: Annotated[Figure, Shown("What suits it", words=True, group="Work")]
    flame: Annotated[Figure | None, Shown("Flame", words=True, group="Work")]
    filler: Annotated[Figure | None, Shown("Filler", words=True, group="Work")]
    flux: Annotated[Figure | None, Shown("Flux", words=True, group="Work")]


@calculator("metal-match", "Which metal is this?")
def metal_match(
    *,
    magnet: Annotated[
        str,
        Choice("Magnet", options("magnet"), example="sticks", hint="In several places, off the screws."),
    ],
    colour: Annotated[
        str | None,
        Choice(
            "Color, filed bright",
            options("colour"),
            example=NOT_TRIED,
            optional=True,
            hint="One stroke in one place. Plating shows another color underneath.",
        ),
    ],
    rust: Annotated[str | None, Choice("Rust", options("rust"), example=NOT_TRIED, optional=True)],
    spark: Annotated[
        str | None,
        Choice(
            "Sparks on a grinder",
            options("spark"),
            example=NOT_TRIED,
            optional=True,
            hint="Only what a magnet pulls. Beside a piece you know.",
        ),
    ],
    file: Annotated[str | None, Choice("File", options("file"), example=NOT_TRIED, optional=True)],
    chip: Annotated[
        str | None,
        Choice(
            "Chip",
            options("chip"),
            example=NOT_TRIED,
            optional=True,
            hint="From a cold chisel on an edge, or a drill.",
        ),
    ],
    origin: Annotated[
        str | None, Choice("Where it comes from", options("origin"), example=NOT_TRIED, optional=True)
    ],
    coating: Annotated[str, Choice("What is on it", fumes.options("coating"), example="unknown")],
    mass: Annotated[
        float | None,
        Field(
            "Weight",
            SMALL_MASS,
            low={"us": "0.05 oz", "iso": "1 g", "uk": "1 g"},
            high={"us": "640 oz", "iso": "20 kg", "uk": "20 kg"},
            optional=True,
            hint="Dry. One metal: take screws and inserts out.",
        ),
    ],
    displaced: Annotated[
        float | None,
        Field(
            "Water it pushes aside",
            SMALL_VOLUME,
            low="1 mL",
            high="5000 mL",
            optional=True,
            hint="Wholly under water, shaken free of bubbles: the mark after less the mark before.",
        ),
    ],
    mass_mark: Annotated[
        float,
        Field(
            "Smallest mark of the scale",
            SMALL_MASS,
            assumed={"us": "0.1 oz", "iso": "1 g", "uk": "1 g"},
            low={"us": "0.0005 oz", "iso": "0.01 g", "uk": "0.01 g"},
            high={"us": "4 oz", "iso": "100 g", "uk": "100 g"},
        ),
    ],
    displaced_mark: Annotated[
        float,
        Field("Smallest mark of the measure", SMALL_VOLUME, assumed="5 mL", low="0.1 mL", high="200 mL"),
    ],
) -> Answer[MetalMatch]:
    """What a piece of metal can be, by simple tests, and what hazard to reckon with.

    A metal that one test contradicts is out. Of those that are left the gravest
    counts. What cannot be told is unknown, and unknown metal is not heated.
    """  # fmt: skip
    steps: list[Step] = []
    density = _density(steps, mass, displaced, mass_mark, displaced_mark)
    band = None if density is None else (density.low or 0.0, density.high or 0.0)
    findings = {
        "magnet": magnet, "colour": colour or NOT_TRIED, "rust": rust or NOT_TRIED, "spark": spark or NOT_TRIED,
        "file": file or NOT_TRIED, "chip": chip or NOT_TRIED,
    }  # fmt: skip
    tests = sum(seen != NOT_TRIED for seen in findings.values()) + (band is not None)
    judged = candidates(findings | {"origin": origin or NOT_TRIED}, band)
    kept = tuple(each for each in judged if not each.out)
    known = told(kept, tests)
    gravest = kept[0] if kept else None
    usable = known and gravest is not None and gravest.kind.gravity < NEVER
    flame, filler, flux = _recipe(kept) if usable else (None, None, None)
    return Answer(
        MetalMatch(
            best=_best(kept, tests, known=known),
            treat_as=_treat_as(gravest if known else None),
            density=density,
            hazard=_hazard(gravest, known=known),
            coating_hazard=_coating_hazard(coating),
            process_words=_processes(kept, known=known, usable=usable),
            flame=flame,
            filler=filler,
            flux=flux,
        ),
        cautions=_cautions(kept, coating, known=known),
        steps=tuple(steps),
        tables=(_for_and_against(judged, tests), _lookalikes()),
    )  # fmt: skip


def _density(
    steps: list[Step], mass: Mass | None, displaced: Volume | None, mass_mark: Mass, displaced_mark: Volume
) -> Figure | None:
    if mass is None and displaced is None:
        return None
    if mass is None:
        raise InputError(
            "mass", "Weight", "give it too, or leave the water empty; give 1 g to 20 kg (0.05 to 640 oz)."
        )
    if displaced is None:
        raise InputError(
            "displaced",
            "Water it pushes aside",
            "give it too, or leave the weight empty; give 1 mL to 5000 mL.",
        )
    if 2 * mass_mark > mass:
        raise InputError(
            "mass_mark",
            "Smallest mark of the scale",
            "too coarse for so light a piece; give half its weight or less.",
        )
    if 2 * displaced_mark > displaced:
        raise InputError(
            "displaced_mark",
            "Smallest mark of the measure",
            "too coarse for so small a piece; give half its volume or less.",
        )
    value = worked(steps, "Density", piece_density, mass=mass, displaced=displaced)
    low = worked(
        steps, "Least: the scale a mark less, the water a mark more", piece_density,
        mass=mass - mass_mark, displaced=displaced + displaced_mark,
    )  # fmt: skip
    high = worked(
        steps, "Largest: the other way round", piece_density,
        mass=mass + mass_mark, displaced=displaced - displaced_mark,
    )  # fmt: skip
    return Figure(
        value, "definition", "computed", low=low, high=high,
        basis="Both readings may be a mark off. A hollow or a bubble makes a piece read light; a steel insert makes "
        f"magnesium read like aluminium. Alloys may lie {ALLOY_SPREAD:.0%} beyond the figures in print.",
    )  # fmt: skip


def _best(kept: tuple[Candidate, ...], tests: int, *, known: bool) -> Figure:
    if not tests:
        said = "cannot be told: nothing was tried. Treat it as unknown"
    elif not kept:
        said = "cannot be told: no metal of our list fits all of it. Treat it as unknown"
    elif not known:
        said = f"cannot be told: {len(kept)} metals still fit. Treat it as unknown, or try another test"
    elif len(kept) == 1:
        few = "; one test only, try another" if tests == 1 else ""
        said = f"{names_of(kept)}: nothing else of our list fits{few}"
    else:
        said = f"{names_of(kept)}: not told apart. Work as for the gravest of them, or try another test"
    return Figure(
        None, "", "practice", words=said,
        basis=f"A metal is out as soon as one test contradicts it. {LIST} Its paper or a stamp beats every test.",
    )  # fmt: skip


def _treat_as(gravest: Candidate | None) -> Figure:
    if gravest is None:
        return Figure(None, "", "practice", words=f"{UNKNOWN}: {LEAVE}")
    return Figure(
        None, "", "practice", words=gravest.kind.name,
        basis="The gravest of the metals that nothing contradicts, in an order of our own.",
    )  # fmt: skip


def _fume_row(part: str, name: str) -> Any:
    return next(row for row in table("fume-hazards") if row.part == part and row.id == name)


def _hazard(gravest: Candidate | None, *, known: bool) -> Figure:
    if gravest is None:
        return Figure(
            None, "", "practice",
            words="reckon with the worst: beryllium, which harms the lungs for life, or magnesium, which burns",
        )  # fmt: skip
    row = _fume_row("metal", gravest.kind.fume)
    given_off = ", ".join(fumes.name_of(name).lower() for name in row.substances.split(", ") if name)
    off = f"it gives off {given_off}" if given_off else ""
    said = f"{gravest.kind.name}: {'; '.join(part for part in (row.what, gravest.kind.care, off) if part)}"
    return Figure(
        None, row.source, row.how_sure, words=said if known else f"until it is told, the worst that fits: {said}",
        basis="The filler and the flux bring their own: see the page Ventilation.",
    )  # fmt: skip


def _coating_hazard(coating: str) -> Figure:
    row = _fume_row("coating", coating)
    said = f"{row.words.lower()}: {row.what}" if row.what else row.words.lower()
    return Figure(
        None, row.source, row.how_sure, words=said,
        basis="No bench test finds a coating: clear lacquer and thin plating look like bare metal.",
    )  # fmt: skip


def _processes(kept: tuple[Candidate, ...], *, known: bool, usable: bool) -> Figure:
    if not known:
        return Figure(None, "", "practice", words="nothing yet: leave it cold")
    if not usable:
        name = kept[0].kind.name
        alone = f"{name} is" if len(kept) == 1 else f"while it can be {name} it is"
        return Figure(None, "", "practice", words=f"nothing here: {alone} not for this torch")
    several = len(kept) > 1
    said = [f"{each.kind.name}: {each.kind.processes}" if several else each.kind.processes for each in kept]
    care = [each.kind.care for each in kept if each.kind.care]
    return Figure(
        None, "", "practice", words="; ".join(said),
        basis=" ".join(f"{part.capitalize()}." for part in dict.fromkeys(care)),
    )  # fmt: skip


def _recipe(kept: tuple[Candidate, ...]) -> tuple[Figure, Figure, Figure]:
    names = dict.fromkeys(name for each in kept for name in each.kind.flames.split("|"))
    by_name = {row.metal: row for row in table("flames-by-metal")}
    rows = [by_name[name] for name in names]
    flame, filler, flux = (
        Figure(
            None, "", "memory",
            words=getattr(rows[0], part)
            if len(rows) == 1
            else "; ".join(f"{row.metal}: {getattr(row, part)}" for row in rows),
        )
        for part in ("flame", "filler", "flux")
    )  # fmt: skip
    return flame, filler, flux


def _for_and_against(judged: tuple[Candidate, ...], tests: int) -> Table:
    def stands(each: Candidate) -> str:
        if each.out:
            return "out"
        return "left" if tests else "not tried"

    return Table(
        "What speaks for and against",
        ("Metal", "It is", "Against", "For"),
        tuple(
            (each.kind.name, stands(each), "; ".join(each.contradicts), "; ".join(each.agrees))
            for each in judged
        ),
        f"The gravest of those left comes first. {LIST}",
    )


def _lookalikes() -> Table:
    return Table(
        "Look-alikes that kill",
        ("It looks like", "It may be", "Why that matters, and what to do", "Source"),
        tuple(
            (
                row.looks,
                row.may_be,
                f"{row.why}: {row.act}",
                ", ".join(part for part in (source_words(row.source), HOW_SURE[row.how_sure]) if part),
            )
            for row in table("metal-lookalikes")
        ),
        "No bench test finds a coating or beryllium.",
    )  # fmt: skip


def _cautions(kept: tuple[Candidate, ...], coating: str, *, known: bool) -> tuple[Caution, ...]:
    left = {each.kind.metal for each in kept}
    counted = kept if known else kept[:1]
    said = [one for each in counted for one in brought({"metal": each.kind.metal})]
    said += [BURNS] if left & {"magnesium", "titanium"} else []
    said += brought({"coating": coating})
    said += [] if known else [NOT_KNOWN]
    return gravest_first((*said, BLIND))


BURNS = caution("magnesium-burns")
NOT_KNOWN = caution("unknown-metal")
BLIND = caution("unseen-metal")
