"""Preheat before welding: how readily the steel hardens, and what rules and books ask."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought, caution, gravest_first
from calc.answer.sentences import degrees, degrees_at_least, distance
from calc.ask.errors import InputError
from calc.data.tables import source_words, table
from calc.declare import Answer, Caution, Choice, Field, Figure, Shown, Step, Table, calculator, worked
from calc.declare.inputs import LENGTH
from calc.formulas.heat.carbon_equivalent import (
    cet_carbon_equivalent,
    cracking_parameter,
    iiw_carbon_equivalent,
    preheat_parts,
    preheat_temperature,
)
from calc.trade.heat.preheats import LEAST_PREHEAT, Asked, alloy_limit, asked_of_steel, heat_treatable
from calc.values.units import to_si

METALS = {
    "steel": "Carbon or low-alloy steel",
    "cast-iron-weld": "Grey cast iron, fusion weld",
    "cast-iron-braze": "Grey cast iron, braze weld",
    "aluminium": "Aluminium, thick or cast",
    "copper": "Copper",
    "stainless-steel": "Stainless steel, 300 series",
}
_ROWS = {
    "cast-iron-weld": "grey cast iron, fusion weld",
    "cast-iron-braze": "grey cast iron, braze weld",
    "aluminium": "aluminium, thick or cast",
    "copper": "copper",
    "stainless-steel": "stainless steel 300 series",
}
EXAMPLE_CARBON = "0.18 %"
ARC = "A rule for arc welding. Gas welding puts in far more heat and has no hydrogen class: there it is only a hint."


@dataclass(frozen=True, slots=True, kw_only=True)
class Preheat:
    """What the steel and the books say."""

    usual: Annotated[Figure, Shown("Preheat", words=True)]
    after: Annotated[Figure, Shown("Afterward", words=True)]
    measure_at: Annotated[Figure, Shown("Where to measure it", words=True)]
    carbon_equivalent: Annotated[
        Figure, Shown("Carbon equivalent, IIW", ("%",), group="Deeper figures", folded=True)
    ]
    carbon_equivalent_cet: Annotated[
        Figure, Shown("Carbon equivalent, CET", ("%",), group="Deeper figures", folded=True)
    ]
    cracking_parameter: Annotated[
        Figure, Shown("Cracking parameter, Pcm", ("%",), group="Deeper figures", folded=True)
    ]
    arc_preheat: Annotated[
        Figure,
        Shown("Arc welding, method B", ("degF", "degC"), toward="up", group="Deeper figures", folded=True),
    ]
    arc_minimum: Annotated[
        Figure, Shown("Arc welding, least by thickness", words=True, group="Deeper figures", folded=True)
    ]


def _share(label: str, high: str) -> Field:
    return Field(label, ("%",), assumed="0 %", low="0 %", high=high)


@calculator("preheat", "Preheat for welding")
def preheat(
    *,
    metal: Annotated[str, Choice("Metal and joint", METALS, example="steel")],
    carbon: Annotated[
        float | None,
        Field(
            "Carbon",
            ("%",),
            example=EXAMPLE_CARBON,
            low="0 %",
            high="1.2 %",
            optional=True,
            hint="From the mill certificate; steel only.",
        ),
    ],
    manganese: Annotated[
        float | None,
        Field("Manganese", ("%",), example="1.4 %", low="0 %", high="3 %", optional=True),
    ],
    thickness: Annotated[
        float,
        Field(
            "Thickness of the thicker piece",
            LENGTH,
            low="0.5 mm",
            high="150 mm",
            sheet_gauge=True,
            metal="low-carbon-steel",
            example={"us": "1/2 in", "iso": "12 mm", "uk": "12 mm"},
        ),
    ],
    silicon: Annotated[float, _share("Silicon", "3 %")],
    chromium: Annotated[float, _share("Chromium", "10 %")],
    molybdenum: Annotated[float, _share("Molybdenum", "2 %")],
    vanadium: Annotated[float, _share("Vanadium", "1 %")],
    nickel: Annotated[float, _share("Nickel", "10 %")],
    copper: Annotated[float, _share("Copper", "3 %")],
    boron: Annotated[float, _share("Boron", "0.02 %")],
    hydrogen: Annotated[
        float,
        Field(
            "Hydrogen of the arc filler, mL in 100 g",
            ("",),
            assumed="5",
            low="1",
            high="20",
            hint="For method B only; gas welding has no such class.",
        ),
    ],
    heat_input: Annotated[
        float,
        Field(
            "Heat input of the arc",
            ("kJ/in", "kJ/mm"),
            low="0.5 kJ/mm",
            high="4 kJ/mm",
            assumed={"us": "30 kJ/in", "iso": "1.2 kJ/mm", "uk": "1.2 kJ/mm"},
        ),
    ],
    rules: str,
) -> Answer[Preheat]:
    """How readily a steel hardens beside a weld, and the preheat that practice and rules ask.

    The formulas and the tables by thickness are rules for arc welding. For gas welding
    they say which steels need care, not how hot.
    """  # fmt: skip
    if metal == "steel" and carbon is None:
        raise InputError("carbon", "Carbon", f"steel is judged by it; for example {EXAMPLE_CARBON}.")
    steps: list[Step] = []
    parts = {
        "carbon": carbon or 0.0, "manganese": manganese or 0.0, "chromium": chromium, "molybdenum": molybdenum,
        "nickel": nickel, "copper": copper,
    }  # fmt: skip
    if metal == "steel":
        found = _steel(
            steps=steps,
            parts=parts,
            silicon=silicon,
            vanadium=vanadium,
            boron=boron,
            thickness=thickness,
            hydrogen=hydrogen,
            heat_input=heat_input,
            rules=rules,
        )
    else:
        found = _other(metal, rules)
    usual, after, iiw, cet, pcm, arc, least = found
    return Answer(
        Preheat(
            usual=usual,
            after=after,
            measure_at=_measure_at(thickness, rules),
            carbon_equivalent=iiw,
            carbon_equivalent_cet=cet,
            cracking_parameter=pcm,
            arc_preheat=arc,
            arc_minimum=least,
        ),
        cautions=_cautions(metal),
        steps=tuple(steps),
        tables=(
            *_asked_table(metal=metal, carbon=carbon, iiw=iiw, arc=arc, thickness=thickness, rules=rules),
            *_tables(rules),
        ),
    )


def _steel(
    *,
    steps: list[Step],
    parts: dict[str, float],
    silicon: float,
    vanadium: float,
    boron: float,
    thickness: float,
    hydrogen: float,
    heat_input: float,
    rules: str,
) -> tuple[Figure, Figure, Figure, Figure, Figure, Figure, Figure]:
    iiw = worked(steps, "Carbon equivalent, IIW", iiw_carbon_equivalent, **parts, vanadium=vanadium)
    cet = worked(steps, "Carbon equivalent, CET", cet_carbon_equivalent, **parts)
    pcm = worked(
        steps,
        "Cracking parameter",
        cracking_parameter,
        **parts,
        silicon=silicon,
        vanadium=vanadium,
        boron=boron,
    )
    method_b = _method_b(cet, thickness, hydrogen, heat_input, rules)
    asked = asked_of_steel(parts["carbon"], iiw, method_b, thickness)
    slow = any(rule.coldest > LEAST_PREHEAT for rule in asked)
    return (
        _headline(asked, rules),
        Figure(None, "", "practice",
               words="cool slowly: cover it with dry sand, lime or a blanket" if slow else "let it cool in still air",
               basis="Slow cooling keeps the metal beside the weld from hardening."),
        Figure(iiw, "en-1011-2 annex C", "memory", basis="For steels with more than about 0.18 % carbon."),
        Figure(cet, "en-1011-2 C.3", "memory", basis="The one that method B takes."),
        Figure(pcm, "ito-bessyo-1968", "memory", basis="For low-alloy steels with less than about 0.18 % carbon."),
        method_b,
        _least(thickness, rules),
    )  # fmt: skip


def _headline(asked: tuple[Asked, ...], rules: str) -> Figure:
    """From what the rules that count this thickness ask to the most that any rule asks, in words."""
    gravest = max(asked, key=lambda rule: rule.coldest)
    most = gravest.coldest
    thick = [rule.coldest for rule in asked if rule.by_thickness]
    least = max(thick, default=most)
    warm = degrees(LEAST_PREHEAT, rules)
    if most <= LEAST_PREHEAT:
        words = f"none above {warm}"
    elif most - least < 1.0:
        words = f"{_span(most, max(gravest.hottest, most), rules)} by {gravest.name}"
    else:
        first = "none" if least <= LEAST_PREHEAT else degrees_at_least(least, rules)
        words = (
            f"{first} by the rules that count this thickness, {degrees_at_least(most, rules)} by {gravest.name}: take the higher "
            "where the part is stiff, carries a load, or its steel is not sure"
        )
    return Figure(
        None, gravest.source, gravest.how_sure, words=words,
        basis="Each rule stands in the table below. What the drawing or the procedure asks comes before all of them.",
    )  # fmt: skip


def _method_b(cet: float, thickness: float, hydrogen: float, heat_input: float, rules: str) -> Figure:
    source, content = "en-1011-2 C.8", hydrogen * 1e-5
    try:
        found = preheat_temperature(cet, thickness, content, heat_input)
        steel, thick, gas, heat = preheat_parts(cet, thickness, content, heat_input)
    except ValueError as error:
        return Figure(None, source, "memory", words=f"outside the rule. {error}", basis=ARC)
    basis = (
        f"In °C: steel {steel:.1f}, thickness {thick:.1f}, hydrogen {gas:.1f}, heat input {heat:.1f}; the "
        f"sum is the preheat. One plate's thickness, not the two together. {ARC}"
    )
    if found < LEAST_PREHEAT:
        return Figure(
            None, source, "memory", basis=basis, words=f"none above {degrees(LEAST_PREHEAT, rules)}"
        )
    return Figure(found, source, "memory", basis=basis)


def _least(thickness: float, rules: str) -> Figure:
    rows = table("preheat-aws-d1-1")
    if thickness < rows[0].over * (1 - 1e-9):
        words = f"the table begins at {distance(rows[0].over, rules)}"
    else:
        row = next(r for r in rows if r.up_to is None or thickness <= r.up_to * (1 + 1e-9))
        words = f"{degrees(row.low_hydrogen, rules)} with low-hydrogen electrodes, {degrees(row.other, rules)} with others"
    return Figure(None, rows[0].source, rows[0].how_sure, words=words, basis=ARC)


def _other(metal: str, rules: str) -> tuple[Figure, Figure, Figure, Figure, Figure, Figure, Figure]:
    rows = [row for row in table("preheat-by-metal") if row.metal == _ROWS[metal]]
    row = rows[0]
    says = "none" if row.low is None else _span(row.low, row.high, rules)
    said = "; ".join(part for part in (says, _plain(row.words, metal, rules)) if part)
    slow = metal.startswith("cast-iron")
    none = Figure(None, "", "practice", words="a measure for steel only")
    return (
        Figure(None, row.source, row.how_sure, words=said, basis="From manuals, rounded; the metal's maker comes first."),
        Figure(None, "manly-1916" if slow else "", "read" if slow else "practice",
               words="very slowly: bury it in dry ash or lime, out of draughts, until it is cold" if slow else "let it cool in still air",
               basis="Cast iron that cools fast turns hard and cracks." if slow else ""),
        none, none, none, none, none,
    )  # fmt: skip


def _plain(words: str, metal: str, rules: str) -> str:
    if metal == "aluminium":
        return f"{alloy_limit(rules)}; {heat_treatable().words}"
    return "" if metal == "stainless-steel" else words


def _span(low: float, high: float, rules: str) -> str:
    return f"{degrees_at_least(low, rules)} to {degrees(high, rules)}"


def _measure_at(thickness: float, rules: str) -> Figure:
    away = max(thickness, to_si(75.0, "mm"))
    iso = min(4 * thickness, to_si(50.0, "mm"))
    arc = f"{distance(away, rules, 2, 'up')} from the joint (AWS D1.1)"
    if thickness <= to_si(50.0, "mm"):
        arc += f"; {distance(iso, rules)} by EN ISO 13916"
    return Figure(
        None, "aws-d1-1", "memory", words=f"{arc}, on the side away from the flame",
        basis="Wait two minutes for each 25 mm (1 in) of thickness, flame away, before you measure.",
    )  # fmt: skip


def _asked_table(
    *, metal: str, carbon: float | None, iiw: Figure, arc: Figure, thickness: float, rules: str
) -> tuple[Table, ...]:
    """What each rule asks of a steel; nothing for other metals."""
    if metal != "steel":
        return ()
    rows = tuple(
        (
            rule.name,
            f"none above {degrees(LEAST_PREHEAT, rules)}" if rule.hottest <= LEAST_PREHEAT
            else degrees_at_least(rule.coldest, rules) if rule.hottest - rule.coldest < 1.0
            else _span(rule.coldest, rule.hottest, rules),
            source_words(rule.source) or "common practice",
        )
        for rule in asked_of_steel(carbon or 0.0, iiw.value or 0.0, arc, thickness)
    )  # fmt: skip
    return (
        Table(
            "What each rule asks of this steel", ("Rule", "Preheat", "Source"), rows,
            "The rules by thickness are for arc welding. Those by carbon alone know nothing of the thickness.",
        ),
    )  # fmt: skip


def _tables(rules: str) -> tuple[Table, ...]:
    rows = []
    for row in table("preheat-by-metal"):
        span = (
            "none" if row.high is None
            else f"up to {degrees(row.high, rules)}" if row.low is None
            else _span(row.low, row.high, rules)
        )  # fmt: skip
        rows.append((row.metal, span, f"{source_words(row.source) or 'from memory'}: {row.standing}"))
    note = (
        "From manuals, rounded. Where two figures differ the more careful one is followed: the higher for cast iron, which "
        "cracks, the lower for aluminium, which sags without warning."
    )
    return (Table("Preheat by metal", ("Metal", "Preheat", "Source"), tuple(rows), note),)


def _cautions(metal: str) -> tuple[Caution, ...]:
    found = [caution("closed-part"), caution("hot-looks-cold")]
    if metal == "steel":
        found.append(caution("hard-weld-cracks"))
    material = metal.removesuffix("-weld").removesuffix("-braze")
    process = "braze-welding" if metal.endswith("-braze") else "welding"
    return gravest_first((*found, *brought({"process": process, "metal": material})))
