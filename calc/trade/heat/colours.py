"""Heat colours as rows: a name, a temperature, a tint; temper on clean steel, and glow."""

from dataclasses import dataclass
from functools import cache

from calc.data.tables import table
from calc.values.quantities import Temperature

SCALES = {"temper": "temper-colours", "glow": "glow-colours"}
HAIR = 0.6
"""A figure printed in whole °C stands this far from the same one in °F, K."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Colour:
    """One named colour of the list that is followed."""

    scale: str
    name: str
    temperature: Temperature
    tint: str
    source: str
    how_sure: str

    @property
    def id(self) -> str:
        """Its id in a choice, such as `dark-purple`."""
        return self.name.replace(",", "").replace(" ", "-")


@cache
def colours(scale: str) -> tuple[Colour, ...]:
    """Colours of one scale, coolest first.

    Args:
        scale: `temper` or `glow`.
    """
    tints = {row.colour: row.tint for row in table("colour-tints") if row.scale == scale}
    return tuple(
        Colour(
            scale=scale,
            name=row.colour,
            temperature=row.temperature,
            tint=tints[row.colour],
            source=row.source,
            how_sure=row.how_sure,
        )
        for row in table(SCALES[scale])
        if row.standing == "followed"
    )


def colour_at(temperature: Temperature) -> Colour | None:
    """The last colour reached at a temperature, or None below them and between the two scales.

    Args:
        temperature: K.

    Examples:
        >>> from calc.values.units import to_si
        >>> colour_at(to_si(465, "degF")).name, colour_at(to_si(1700, "degF")).name
        ('straw', 'cherry')
    """
    for scale in ("glow", "temper"):
        rows = colours(scale)
        if temperature >= rows[0].temperature - HAIR:
            found = [row for row in rows if row.temperature <= temperature + HAIR][-1]
            last_step = rows[-1].temperature - rows[-2].temperature
            past = scale == "temper" and temperature > rows[-1].temperature + last_step
            return None if past else found
    return None


def neighbours(colour: Colour) -> tuple[Temperature, Temperature]:
    """Halfway to the colour before and to the one after, K; the ends reach as far outward."""
    rows = colours(colour.scale)
    place = rows.index(colour)
    below = rows[place - 1].temperature if place else None
    above = rows[place + 1].temperature if place + 1 < len(rows) else None
    own = colour.temperature
    low = 0.5 * (own + below) if below is not None else None
    high = 0.5 * (own + above) if above is not None else None
    if low is None and high is not None:
        low = 2 * own - high
    if high is None and low is not None:
        high = 2 * own - low
    return low or own, high or own
