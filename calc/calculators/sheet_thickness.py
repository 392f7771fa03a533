"""Thickness behind a sheet gauge number."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import brought
from calc.ask.inputs import METALS
from calc.declare import Answer, Choice, Field, Figure, Shown, Table, calculator
from calc.declare.inputs import LENGTH
from calc.formulas.setup.sheet import sheet_thickness as sheet_of_gauge
from calc.values.numbers import plain_number
from calc.values.units import from_si


@dataclass(frozen=True, slots=True)
class SheetThickness:
    """Thickness of the sheet, and the series its number belongs to."""

    thickness: Annotated[Figure, Shown("Thickness", LENGTH)]
    series: Annotated[Figure, Shown("Gauge series taken", words=True)]


def _beside(number: float) -> Table:
    rows = []
    for rules, metal, words in (
        ("us", "low-carbon-steel", "Low-carbon steel, US"),
        ("us", "galvanised-steel", "Galvanised steel, US"),
        ("us", "stainless-steel", "Stainless steel, US"),
        ("us", "aluminium", "Aluminium, copper, brass, US"),
        ("uk", "low-carbon-steel", "Any metal, UK wire gauge"),
    ):
        try:
            sheet = sheet_of_gauge(number, metal, rules)
        except ValueError:
            continue
        rows.append(
            (
                words,
                f"{from_si(sheet.thickness, 'in'):.4f}",
                f"{from_si(sheet.thickness, 'mm'):.2f}",
            )
        )
    return Table(
        f"What {plain_number(number)} gauge means, by metal",
        ("Metal and series", "in", "mm"),
        tuple(rows),
        "One number, several thicknesses: always say the metal, or measure the sheet.",
    )


@calculator("sheet-thickness", "Sheet gauge to thickness")
def sheet_thickness(
    gauge: Annotated[
        float,
        Field(
            "Sheet gauge",
            ("in", "mm"),
            example={"us": "16 ga", "iso": "1.5 mm", "uk": "16 swg"},
            low="0.2 mm",
            high="7 mm",
            sheet_gauge=True,
            hint="A gauge number such as 16 ga, or a measured thickness.",
        ),
    ],
    metal: Annotated[str, Choice("Metal", METALS, assumed="low-carbon-steel")],
    rules: str,
) -> Answer[SheetThickness]:
    """Thickness of sheet from its gauge number, by metal and rule set.

    Sources: the weight rule behind each series; `data/sheet-gauges.csv`.
    """  # fmt: skip
    near = _nearest_gauge(gauge, metal, rules)
    return Answer(
        SheetThickness(
            thickness=Figure(
                gauge, near.source, near.how_sure,
                basis="A measured sheet may differ by a mill tolerance; a gauge reading counts more.",
            ),
            series=Figure(None, near.source, near.how_sure, words=near.words),
        ),
        cautions=brought({"metal": metal}),
        tables=(_beside(near.number),) if near.number is not None else (),
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Near:
    number: float | None
    words: str
    source: str
    how_sure: str


def _nearest_gauge(thickness: float, metal: str, rules: str) -> _Near:
    found = []
    for number in range(3, 31):
        try:
            sheet = sheet_of_gauge(number, metal, rules)
        except ValueError:
            continue
        found.append((abs(sheet.thickness - thickness), number, sheet))
    if not found:
        return _Near(None, "sheet gauge is not used under this rule set", "", "practice")
    gap, number, sheet = min(found, key=lambda entry: entry[:2])
    exact = gap < 0.002 * thickness
    words = f"{number} gauge, {sheet.series}"
    return _Near(number, words if exact else f"nearest is {words}", sheet.source, sheet.how_sure)
