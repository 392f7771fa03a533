"""Colour of hot steel to its temperature, and back."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import caution
from calc.answer.sentences import degrees
from calc.ask.errors import InputError
from calc.data.tables import source_words, table
from calc.declare import Answer, Choice, Field, Figure, Picture, Shown, Table, calculator
from calc.declare.inputs import TEMPERATURE
from calc.show.drawings import swatches
from calc.trade.heat.colours import SCALES, Colour, colour_at, colours, neighbours

OPTIONS = {scale: {colour.id: colour.name for colour in colours(scale)} for scale in SCALES}
EYE = "Eyes, light and dirt move it by a shade or two. Glow is judged in the shade: sunlight hides a red."


@dataclass(frozen=True, slots=True)
class HeatColour:
    """A colour's name and its temperature."""

    colour_name: Annotated[Figure, Shown("At that temperature clean steel shows", words=True)]
    temper_temperature: Annotated[Figure, Shown("That temper color comes at about", TEMPERATURE)]
    glow_temperature: Annotated[Figure, Shown("That glow is at about", TEMPERATURE)]
    use: Annotated[Figure, Shown("What the color is used for", words=True)]


@calculator("heat-colour", "Heat colors")
def heat_colour(
    temperature: Annotated[
        float | None,
        Field(
            "Temperature of the steel",
            TEMPERATURE,
            low="100 degF",
            high="3000 degF",
            optional=True,
            example={"us": "560 degF", "iso": "290 degC", "uk": "290 degC"},
        ),
    ],
    temper: Annotated[
        str | None,
        Choice("Temper color you see on bright steel", OPTIONS["temper"], example="straw", optional=True),
    ],
    glow: Annotated[
        str | None, Choice("Glow you see in the shade", OPTIONS["glow"], example="cherry", optional=True)
    ],
    rules: str,
) -> Answer[HeatColour]:
    """The color that steel shows at a temperature, and the temperature of a color.

    Temper colors are a thin skin of oxide on clean bright steel; glow is light that
    hot metal gives by itself.
    """  # fmt: skip
    if temperature is None and temper is None and glow is None:
        raise InputError("temperature", "Temperature of the steel", "give it, or pick a color.")
    at = None if temperature is None else colour_at(temperature)
    picked = {
        scale: next((each for each in colours(scale) if each.id == name), None)
        for scale, name in (("temper", temper), ("glow", glow))
    }
    shown = [each for each in (at, *picked.values()) if each is not None]
    scales = [scale for scale in SCALES if any(each.scale == scale for each in shown)] or list(SCALES)
    return Answer(
        HeatColour(
            colour_name=_name(temperature, at),
            temper_temperature=_temperature(picked["temper"]),
            glow_temperature=_temperature(picked["glow"]),
            use=_use(picked["temper"] or at),
        ),
        cautions=_CAUTIONS,
        tables=tuple(_both_sources(scale, rules) for scale in scales),
        pictures=tuple(_picture(scale, shown, rules) for scale in scales),
    )


def _name(temperature: float | None, at: Colour | None) -> Figure:
    if temperature is None:
        return Figure(None, "", "practice", words="give a temperature to see it")
    if at is not None:
        kind = (
            "a temper color, if it was bright before"
            if at.scale == "temper"
            else "a glow, seen in the shade"
        )
        return Figure(None, at.source, at.how_sure, words=f"{at.name}: {kind}", basis=EYE)
    cool = temperature < colours("temper")[0].temperature
    words = (
        "no color yet, and hot enough to burn you"
        if cool
        else "gray: past the temper colors, not yet glowing; it burns all the same"
    )
    return Figure(None, colours("temper")[0].source, "read", words=words, basis=EYE)


def _temperature(picked: Colour | None) -> Figure:
    if picked is None:
        return Figure(None, "", "practice", words="pick a color to see it")
    low, high = neighbours(picked)
    others = [
        row.temperature
        for name in (SCALES[picked.scale], "temper-colours-encyclopaedia")
        for row in table(name)
        if row.colour == picked.name
    ]
    return Figure(
        picked.temperature, picked.source, picked.how_sure, low=min(low, *others), high=max(high, *others),
        basis=f"The band reaches halfway to the neighbors, and to what other books give the same name. {EYE}",
    )  # fmt: skip


def _use(colour: Colour | None) -> Figure:
    if colour is not None and colour.scale == "temper":
        for row in table("temper-uses"):
            if row.colour in (colour.name, colour.name.replace("pale", "light")) or (
                row.colour == "brown" and "brown" in colour.name
            ):
                return Figure(None, row.source, row.how_sure, words=row.tools,
                              basis="Hardened tool steel drawn to this color. The steel's maker comes first.")  # fmt: skip
    return Figure(None, "", "practice", words="no use in our data")


def _both_sources(scale: str, rules: str) -> Table:
    rows = [
        (row.colour, degrees(row.temperature, rules), source_words(row.source), row.words)
        for row in table(SCALES[scale])
    ]
    if scale == "temper":
        rows += [
            (row.colour, degrees(row.temperature, rules), source_words(row.source), row.words)
            for row in table("temper-colours-encyclopaedia")
        ]
    title = "Temper colors, by who says so" if scale == "temper" else "Glow, by who says so"
    return Table(
        title, ("Color", "Temperature", "Source", "Note"), tuple(rows), "The heat color list is followed."
    )


def _picture(scale: str, shown: list[Colour], rules: str) -> Picture:
    rows = colours(scale)
    marked = [place for place, each in enumerate(rows) if each in shown]
    title = "Temper colors" if scale == "temper" else "Glow of hot steel"
    told = ", ".join(f"{rows[place].name} at {degrees(rows[place].temperature, rules)}" for place in marked)
    sentence = f"The pointer stands at {told}." if told else f"From {rows[0].name} to {rows[-1].name}."
    drawn = [(each.tint, each.name, degrees(each.temperature, rules)) for each in rows]
    return swatches.drawing(drawn, marked, title, f"{sentence} A screen changes a tint: go by the name.")


_CAUTIONS = (
    caution("hot-looks-cold"),
    caution("temper-colors"),
)
